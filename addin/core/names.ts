/** What a cell says as a name: numbers to twelve figures; 0 and FALSE say nothing, as a blank cell does in some hosts. */
export const saidBy = (value: unknown): string => {
  if (typeof value === 'string') return value.trim();
  const number = Number(value ?? 0);
  return number === 0 || !Number.isFinite(number) ? '' : String(Number(number.toPrecision(12)));
};

/** Two spellings of one bed, station, size class or product differ in letter case and outer spaces only. */
export const nameKey = (name: string): string => name.trim().toLowerCase();
