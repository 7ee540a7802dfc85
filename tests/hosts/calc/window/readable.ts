import { expect } from 'vitest';

import { contrast } from '../../../contrast';

/** A panel's ground, and its words with colours of their own; null where the office's own is taken. */
export interface Coloured {
  readonly ground: number;
  readonly controls: readonly { readonly text: string; readonly colour: number | null }[];
}

/** The least for text: section 1.4.3 of the Web Content Accessibility Guidelines 2.2. */
const LEAST = 4.5;

/** Every word of a colour of its own stands out from the ground; returns these colours. */
export const expectReadable = ({ ground, controls }: Coloured): readonly number[] =>
  controls.flatMap(({ text, colour }) => {
    if (colour === null) return [];
    expect(contrast(colour, ground), text).toBeGreaterThanOrEqual(LEAST);
    return [colour];
  });
