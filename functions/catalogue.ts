import type { FunctionEntry } from './definition';
import { dilute, stock, strengthOfMix } from './entries/mixing';

/** Every worksheet function, in the order of the reference page. */
export const catalogue: readonly FunctionEntry[] = [dilute, strengthOfMix, stock];
