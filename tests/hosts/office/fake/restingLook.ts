const RESTING: Readonly<Record<string, unknown>> = {
  'font.bold': false,
  'font.italic': false,
  'font.size': 11,
  'font.color': '#000000',
  'fill.color': '#FFFFFF',
  'fill.pattern': 'None',
  'format.horizontalAlignment': 'General',
  'format.wrapText': false,
};

/** Of a border's side, by the last part of the property's name. */
const LINES: Readonly<Record<string, string>> = { style: 'None', weight: 'Thin', color: '#000000' };

/** What a property of a cell's look is, such as "font.bold" or "border.top.style", before anything was drawn. */
export const restingLook = (property: string): unknown =>
  property in RESTING ? RESTING[property] : LINES[property.split('.')[2] ?? ''];
