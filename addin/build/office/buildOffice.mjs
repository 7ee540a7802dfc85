import { existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

import { bundle } from '../bundle.mjs';
import { unlessFresh } from '../freshness.mjs';
import { dist } from '../paths.mjs';
import { importTypeScript } from '../typescript.mjs';

/** Where the package is built. */
export const officeFolder = join(dist, 'office');

/**
 * dist/office: the add-in for programs that load Office Add-ins.
 *
 * @param {string} [base] the address that it will be served from; https
 * @throws Error where the package does not keep the platform's rules
 */
export const buildOffice = async (base) => {
  const { baseAddress, DEFAULT_BASE } = await importTypeScript('addin/build/office/package.ts');
  const address = baseAddress(base ?? DEFAULT_BASE);
  await unlessFresh('office', () => make(address), address);
  return address;
};

const make = async (base) => {
  const { default: configuration } = await import('../webpack.office.mjs');
  await bundle(configuration({ mode: 'production' }));
  const { packageFiles } = await importTypeScript('addin/build/office/packageFiles.ts');
  for (const [path, content] of Object.entries(packageFiles(base))) {
    const file = join(officeFolder, path);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, content);
  }
  const { packageFaults } = await importTypeScript('addin/build/office/packageFaults.ts');
  const faults = packageFaults(base, (path) => {
    const file = join(officeFolder, path);
    return existsSync(file) && statSync(file).isFile() ? readFileSync(file) : undefined;
  });
  if (faults.length > 0) throw new Error(`The package is not in order:\n${faults.join('\n')}`);
};
