import type { BookAt } from '../bookAt';
import { sidesOf } from '../write/drawLook';
import { step } from '../write/step';

import type { Aspect } from './aspect';

const CALLS = 30;

/** Font, ground, lines, alignment and wrapping. */
export const lookAspect: Aspect = {
  load: ({ format }) => {
    format.load('horizontalAlignment,wrapText');
    format.font.load('bold,italic,size,color');
    format.fill.load('color,pattern');
    format.borders.load('items/sideIndex,items/style,items/weight,items/color');
  },
  putBack: ({ format }, area) => {
    const { horizontalAlignment, wrapText } = format;
    const { bold, italic, size, color } = format.font;
    const { color: ground, pattern } = format.fill;
    const sides = sidesOf(area).map((side) => ({
      side,
      border: format.borders.items.find(({ sideIndex }) => sideIndex === side),
    }));
    const told = [horizontalAlignment, wrapText, bold, italic, size, color, ground, pattern];
    // The program answers null where cells differ.
    const unlike = (value: unknown): boolean => value === null || value === undefined;
    if (told.some(unlike) || sides.some(({ border }) => unlike(border?.style))) return undefined;
    return step(CALLS, (at: BookAt) => {
      const { format: now } = at.range(area);
      now.horizontalAlignment = horizontalAlignment;
      now.wrapText = wrapText;
      now.font.bold = bold;
      now.font.italic = italic;
      now.font.size = size;
      now.font.color = color;
      if (pattern === 'None') now.fill.clear();
      else now.fill.color = ground;
      for (const { side, border } of sides) {
        const line = now.borders.getItem(side);
        line.style = border!.style;
        if (border!.style === 'None') continue;
        line.weight = border!.weight;
        line.color = border!.color;
      }
    });
  },
};
