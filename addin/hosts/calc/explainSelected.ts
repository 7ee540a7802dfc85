import type { CellExplanation } from '../../../taskpane/services';
import type { Ask } from './calcWorkbook';

export const explainSelected = async (_ask: Ask): Promise<CellExplanation | undefined> => undefined;
