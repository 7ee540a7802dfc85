import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** Beside each bundle that brings code of others. */
export const LICENCES = 'LICENSES.txt';

const WORDS = /^(licen[cs]e|copying|notice)\b/i;

/** The folder of the package that a file of node_modules belongs to. */
const packageOf = (file) => {
  for (let folder = dirname(file); folder !== dirname(folder); folder = dirname(folder)) {
    const manifest = join(folder, 'package.json');
    // Some packages tell only the kind of their modules in folders of theirs.
    if (existsSync(manifest) && JSON.parse(readFileSync(manifest, 'utf8')).version !== undefined)
      return folder;
  }
  throw new Error(`${file} belongs to no package.`);
};

const NO_TEXT = 'The package brings no text of this licence.';

/** What a package says of its licence, and the licence itself. */
const told = (folder) => {
  const { name, version, license, author } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const texts = readdirSync(folder)
    .filter((file) => WORDS.test(file))
    .sort()
    .map((file) => readFileSync(join(folder, file), 'utf8').replace(/\r\n/g, '\n').trim());
  if (typeof license !== 'string' && texts.length === 0)
    throw new Error(`${name} ${version} is bundled and tells no licence.`);
  const by = author === undefined ? '' : `, by ${author.name ?? author}`;
  return {
    title: `${name} ${version}${by}: ${license ?? 'as follows'}`,
    text: texts.join('\n\n') || NO_TEXT,
  };
};

/** Files that went into a bundle, also those that were joined into one module. */
const filesOf = function* (compilation) {
  for (const chunk of compilation.chunks)
    for (const module of compilation.chunkGraph.getChunkModulesIterable(chunk))
      for (const part of module.modules ?? [module]) {
        const file = part.nameForCondition();
        if (file !== null && file.includes('node_modules')) yield file;
      }
};

const RULE = `\n\n${'-'.repeat(78)}\n\n`;

/** Packages by name, those with the very same licence together. */
const written = (packages) => {
  const byText = new Map();
  for (const { title, text } of packages.sort((a, b) => (a.title < b.title ? -1 : 1)))
    byText.set(text, [...(byText.get(text) ?? []), title]);
  return [...byText].map(([text, titles]) => `${titles.join('\n')}\n\n${text}`).join(RULE);
};

/** Writes the licences of every package that went into a bundle beside it; the same packages give the same text. */
export class Licences {
  /** @param {string} [file] another name, where several bundles lie in one folder */
  constructor(file = LICENCES) {
    this.file = file;
  }

  apply(compiler) {
    const { Compilation, sources } = compiler.webpack;
    compiler.hooks.thisCompilation.tap('Licences', (compilation) => {
      compilation.hooks.processAssets.tap(
        { name: 'Licences', stage: Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL },
        () => {
          const folders = new Set([...filesOf(compilation)].map(packageOf));
          compilation.emitAsset(this.file, new sources.RawSource(`${written([...folders].map(told))}\n`));
        },
      );
    });
  }
}
