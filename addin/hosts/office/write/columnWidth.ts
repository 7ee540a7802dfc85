/** The ordinary font's digits are 7 pixels wide, and 5 pixels are beside them (ECMA-376-1, 18.3.1.13); 0.75 pt a pixel. */
const PIXELS_A_CHARACTER = 7;
const PIXELS_BESIDE = 5;
const POINTS_A_PIXEL = 0.75;

/** A width in characters, as the program takes it: points. */
export const pointsOf = (characters: number): number =>
  Math.round(characters * PIXELS_A_CHARACTER + PIXELS_BESIDE) * POINTS_A_PIXEL;

export const charactersOf = (points: number): number =>
  Math.max(0, (points / POINTS_A_PIXEL - PIXELS_BESIDE) / PIXELS_A_CHARACTER);
