import type { Area } from '../../../workbook/change';
import type { BookAt } from '../bookAt';

import type { Look, Side } from './looks';
import { step, type Step } from './step';

const EDGES: readonly Side[] = ['EdgeTop', 'EdgeRight', 'EdgeBottom', 'EdgeLeft'];

/** The sides that an area has; those inside only where there is more than one row or column. */
export const sidesOf = ({ rows, columns }: Area): Side[] => [
  ...EDGES,
  ...(rows > 1 ? (['InsideHorizontal'] as const) : []),
  ...(columns > 1 ? (['InsideVertical'] as const) : []),
];

const CALLS = 26;

/** Draws a look on an area's cells. */
export const drawLook = (area: Area, look: Look): Step =>
  step(CALLS, (at: BookAt) => {
    const { format } = at.range(area);
    format.font.bold = look.bold;
    format.font.italic = look.italic;
    format.font.size = look.size;
    format.font.color = look.ink;
    format.horizontalAlignment = look.align;
    if (look.ground === undefined) format.fill.clear();
    else format.fill.color = look.ground;
    for (const side of sidesOf(area)) {
      const border = format.borders.getItem(side);
      const line = look.lines[side];
      border.style = line?.style ?? 'None';
      if (!line) continue;
      border.weight = line.weight;
      border.color = line.color;
    }
  });
