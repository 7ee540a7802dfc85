import { readFileSync } from 'node:fs';
import { join } from 'node:path';

import { root } from './paths.mjs';

const { name, version, description } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));

/** What every host's package tells of the program: one place for the name, the version and the words. */
export const product = {
  /** The name as people read it. */
  title: name.charAt(0).toUpperCase() + name.slice(1),
  version,
  /** One sentence, with its full stop. */
  description,
  /** Colours of the mark on light and on dark grounds. */
  accent: { light: '#6a3470', dark: '#d5a6dc' },
};
