import { ensurePackages } from './dependencies.mjs';

/**
 * `npm run earlier <name>`: saves gardens as this program saves them into tests/workbook/earlier/<name>, from the
 * workbench and from Calc. Run it before the sheets change, with a name that tells before what.
 */
ensurePackages();
const [shape] = process.argv.slice(2);
if (shape === undefined || !/^[\w-]+$/.test(shape)) {
  console.error('Say under which name: npm run earlier before-live-card');
  process.exit(1);
}
const { ensurePrograms } = await import('./programs.mjs');
ensurePrograms(['chromium', 'soffice', 'uno']);
const { importTypeScript } = await import('./typescript.mjs');
const { makeEarlier } = await importTypeScript('tests/hosts/earlier/makeEarlier.ts');
try {
  await makeEarlier(shape, (line) => console.log(line));
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}
// The programs that were driven are ended; what is left of their pipes does not keep this one.
process.exit();
