/** An element of an XML text. */
export type Node = string;

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

/** Character data, with what XML reserves written out. */
export const text = (value: string): Node => escaped(value);

/**
 * One element; attributes in the order given.
 *
 * @example element('value', { 'xml:lang': 'en-US' }, text('Rig')) // '<value xml:lang="en-US">Rig</value>'
 */
export const element = (
  name: string,
  attributes: Readonly<Record<string, string>>,
  ...inside: readonly Node[]
): Node => {
  const told = Object.entries(attributes).map(([key, value]) => ` ${key}="${escaped(value)}"`);
  const open = `<${name}${told.join('')}`;
  const content = inside.join('');
  return content === '' ? `${open}/>` : `${open}>${content}</${name}>`;
};

const indented = (xml: string): string => {
  let depth = 0;
  return xml
    .replace(/></g, '>\n<')
    .split('\n')
    .map((line) => {
      if (line.startsWith('</')) depth -= 1;
      const told = '  '.repeat(Math.max(depth, 0)) + line;
      if (/^<[^/?!]/.test(line) && !line.endsWith('/>') && !/<\/[^>]+>$/.test(line)) depth += 1;
      return told;
    })
    .join('\n');
};

/** A whole XML text, one element a line. */
export const document = (root: Node): string => `<?xml version="1.0" encoding="UTF-8"?>\n${indented(root)}\n`;
