import { writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { format, resolveConfig } from 'prettier';

import { root } from './paths.mjs';
import { importTypeScript } from './typescript.mjs';

/** `node addin/build/reference.mjs`: writes functions/REFERENCE.md from the catalogue. */
const path = join(root, 'functions', 'REFERENCE.md');
const { referencePage } = await importTypeScript('addin/build/referencePage.ts');
writeFileSync(path, await format(referencePage(), { ...(await resolveConfig(path)), parser: 'markdown' }));
