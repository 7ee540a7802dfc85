import type { PrintedCell, PrintedPage } from './printedPage';

/** A row across which the eye must follow gets a rule under it. */
const FULL_ROW = 3;

const drawCell = (cell: PrintedCell, columns = cell.columns): HTMLTableCellElement => {
  const { text, rows, size, bold, italic, aligned, lines } = cell;
  const drawn = document.createElement('td');
  drawn.textContent = text;
  drawn.rowSpan = rows;
  drawn.colSpan = columns;
  drawn.style.setProperty('--size', `${size}pt`);
  if (bold) drawn.style.fontWeight = 'bold';
  if (italic) drawn.style.fontStyle = 'italic';
  drawn.style.textAlign = aligned;
  for (const side of lines) drawn.style[`border${side}Style`] = 'solid';
  return drawn;
};

/** A row of the page; a text that stands alone in its row has the rest of it for itself. */
const drawRow = (line: readonly PrintedCell[]): HTMLTableRowElement => {
  const row = document.createElement('tr');
  const filled = line.filter(({ text, lines }) => text !== '' || lines.length > 0);
  const texts = line.filter(({ text }) => text !== '').length;
  if (filled.length === 0) row.className = 'empty';
  if (texts >= FULL_ROW) row.className = 'ruled';
  const alone = filled.length === 1 ? line.indexOf(filled[0]!) : -1;
  const across = line.reduce((sum, { columns }) => sum + columns, 0);
  const before = line.slice(0, alone).reduce((sum, { columns }) => sum + columns, 0);
  row.append(
    ...(alone < 0
      ? line.map((cell) => drawCell(cell))
      : [...line.slice(0, alone).map((cell) => drawCell(cell)), drawCell(line[alone]!, across - before)]),
  );
  return row;
};

/** The page as a table, black on white, as wide as the paper. Its print grows and shrinks with `--scale`. */
export const drawPage = ({ title, landscape, repeatRows, widths, rows }: PrintedPage): HTMLElement => {
  const view = document.createElement('section');
  view.id = 'print-view';
  const table = document.createElement('table');
  table.setAttribute('aria-label', title);
  const columns = document.createElement('colgroup');
  const total = widths.reduce((sum, width) => sum + width, 0);
  for (const width of widths) {
    const column = document.createElement('col');
    column.style.width = `${((width / total) * 100).toFixed(2)}%`;
    columns.append(column);
  }
  const part = (name: 'thead' | 'tbody', lines: PrintedPage['rows']): HTMLElement => {
    const element = document.createElement(name);
    element.append(...lines.map(drawRow));
    return element;
  };
  table.append(columns);
  if (repeatRows > 0) table.append(part('thead', rows.slice(0, repeatRows)));
  table.append(part('tbody', rows.slice(repeatRows)));
  const paper = document.createElement('style');
  paper.textContent = `@page { size: ${landscape ? 'landscape' : 'portrait'}; margin: 10mm; }`;
  view.append(paper, table);
  return view;
};
