import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's folder. */
export const root = fileURLToPath(new URL('../../', import.meta.url)).replace(/[\\/]$/, '');

/** Where everything that is built goes. */
export const dist = join(root, 'dist');
