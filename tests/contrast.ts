/** Relative luminance of a colour, as the Web Content Accessibility Guidelines 2.2 (W3C, 2023) define it. */
export const luminance = (colour: number): number => {
  const [red, green, blue] = [16, 8, 0].map((shift) => {
    const share = ((colour >> shift) & 255) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
};

/** Contrast ratio of two colours by the same guidelines, 1 to 21. */
export const contrast = (one: number, other: number): number => {
  const [bright, dim] = [luminance(one), luminance(other)].sort((a, b) => b - a) as [number, number];
  return (bright + 0.05) / (dim + 0.05);
};
