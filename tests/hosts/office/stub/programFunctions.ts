import type { Grid } from '../../../../addin/hosts/workbench/grid/openGrid';
import { rawArgument } from '../../../../addin/hosts/workbench/grid/feedFunctions';
import { catalogue, NAMESPACE } from '../../../../functions';
import { CellError, ErrorCode } from '../fake/functionsRuntime';

type WorksheetFunction = (...given: unknown[]) => unknown;

/** The functions' runtime of the program: what the add-in associates is what the grid's formulas call. */
export const programFunctions = (grid: Grid) => {
  let calls = 0;
  const associate = (map: Record<string, WorksheetFunction>): void => {
    for (const { name, parameters } of catalogue) {
      const run = map[name];
      if (!run) throw new Error(`${name} was not associated.`);
      const called = (...given: unknown[]): unknown => {
        calls += 1;
        const args = parameters.map(({ range }, at) => {
          const raw = given[at] === undefined ? null : rawArgument(given[at]);
          const asError = (value: unknown): unknown =>
            typeof value === 'object' && value !== null && 'error' in value
              ? { basicValue: (value as { error: string }).error }
              : value;
          if (!Array.isArray(raw)) return range && raw !== null ? [[asError(raw)]] : asError(raw);
          const rows = raw.map((row) => row.map(asError));
          // The program gives a single cell to a parameter of one value, and rows to one of a range.
          return range || rows.length > 1 || (rows[0]?.length ?? 0) > 1 ? rows : (rows[0]?.[0] ?? null);
        });
        try {
          return run(...args, { functionName: name });
        } catch (error) {
          const { code } = error as { code?: unknown };
          if (typeof code === 'string') return code;
          throw error;
        }
      };
      grid.api.getFormula().registerFunction(`${NAMESPACE}.${name}`, called as never, name);
    }
    grid.api.getFormula().executeCalculation();
  };
  return { runtime: { associate, Error: CellError, ErrorCode }, calls: () => calls };
};
