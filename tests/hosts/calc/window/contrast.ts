import { expect } from 'vitest';

/** A panel's ground, and its words with colours of their own; null where the office's own is taken. */
export interface Coloured {
  readonly ground: number;
  readonly controls: readonly { readonly text: string; readonly colour: number | null }[];
}

/** Relative luminance of a colour, as the Web Content Accessibility Guidelines 2.2 (W3C, 2023) define it. */
export const luminance = (colour: number): number => {
  const [red, green, blue] = [16, 8, 0].map((shift) => {
    const share = ((colour >> shift) & 255) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
};

const contrast = (a: number, b: number): number => {
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (light + 0.05) / (dark + 0.05);
};

/** The least for text: section 1.4.3 of the same guidelines. */
const LEAST = 4.5;

/** Every word of a colour of its own stands out from the ground; returns these colours. */
export const expectReadable = ({ ground, controls }: Coloured): readonly number[] =>
  controls.flatMap(({ text, colour }) => {
    if (colour === null) return [];
    expect(contrast(colour, ground), text).toBeGreaterThanOrEqual(LEAST);
    return [colour];
  });
