import { readFileSync } from 'node:fs';
import { join } from 'node:path';

import { markImage } from '../mark';
import { root } from '../paths.mjs';
import { product } from '../product.mjs';

import { functionMetadata } from './functionMetadata';
import { manifest } from './manifest';
import { FILES, ICON_SIZES, iconFile } from './package';
import { supportPage } from './supportPage';

/** Files of the package by path; text is UTF-8. */
export type PackageFiles = Readonly<Record<string, string | Uint8Array>>;

const page = (name: string): string => readFileSync(join(root, 'addin', 'hosts', 'office', name), 'utf8');

/** Every file of dist/office but the scripts. */
export const packageFiles = (base: string): PackageFiles => ({
  [FILES.manifest]: manifest(base),
  [FILES.metadata]: `${JSON.stringify(functionMetadata(base), undefined, 1)}\n`,
  [FILES.support]: supportPage(),
  [FILES.pane]: page(FILES.pane),
  [FILES.message]: page(FILES.message),
  ...Object.fromEntries(ICON_SIZES.map((size) => [iconFile(size), markImage(size, product.accent.light)])),
});
