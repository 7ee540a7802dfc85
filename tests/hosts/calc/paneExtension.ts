import { readFileSync } from 'node:fs';
import { join } from 'node:path';

import { manifest, MEDIA } from '../../../addin/build/calc/manifest';
import { zipped } from '../../../addin/build/calc/oxt';
import { root } from '../../../addin/build/paths.mjs';

const COMPONENT = 'paneJob.py';

/** An extension of the tests' own, which presses buttons of the pane from within the office and tells what it shows. */
export const paneExtension = (): Uint8Array =>
  zipped({
    'META-INF/manifest.xml': manifest([[COMPONENT, MEDIA.python]]),
    [COMPONENT]: readFileSync(join(root, 'tests', 'hosts', 'calc', COMPONENT), 'utf8'),
  });
