import { join } from 'node:path';

import webpack from 'webpack';

import { Licences } from './licences.mjs';
import { dist, root } from './paths.mjs';
import { minimizer, styleFiles, styleRule } from './webpackPage.mjs';
import { resolve, typeScriptRule } from './webpackTypeScript.mjs';

/** The grid brings hyphenation for seventy languages and asks for English ones only. */
const otherHyphenation = new webpack.IgnorePlugin({
  resourceRegExp: /^\.\/(?!en-)[\w-]+-[\w-]{8}\.js$/,
  contextRegExp: /engine-render/,
});

/** Chunks that the page needs in any case; fetched beside its own script, they are there when it asks for them. */
const SOON = ['grid'];

/** Puts the page itself beside its scripts. */
class CopyPage {
  apply(compiler) {
    const { Compilation, sources } = compiler.webpack;
    const page = join(root, 'addin', 'hosts', 'workbench', 'index.html');
    compiler.hooks.thisCompilation.tap('CopyPage', (compilation) => {
      compilation.fileDependencies.add(page);
      compilation.hooks.processAssets.tap(
        { name: 'CopyPage', stage: Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL },
        () => {
          const text = String(compiler.inputFileSystem.readFileSync(page));
          const links = SOON.filter((name) => compilation.namedChunks.has(name)).map(
            (name) => `  <link rel="preload" href="${name}.js" as="script" />\n  `,
          );
          compilation.emitAsset(
            'index.html',
            new sources.RawSource(text.replace('</head>', `${links.join('')}</head>`)),
          );
        },
      );
    });
  }
}

/**
 * The browser page: dist/workbench with index.html, its script and style, and chunks that are fetched when needed
 * (spreadsheet files, charts).
 *
 * @param options mode; `entry` and `folder` for a test page that opens more of the inside
 */
export default ({ mode, entry = 'addin/hosts/workbench/main.ts', folder = join(dist, 'workbench') }) => ({
  mode,
  context: root,
  entry: { workbench: join(root, entry) },
  output: { path: folder, filename: '[name].js', chunkFilename: '[name].js', clean: mode === 'production' },
  // Source maps by eval would need a looser content security policy.
  devtool: false,
  resolve,
  module: {
    rules: [typeScriptRule, styleRule],
  },
  // The grid is one file, so that the page can have it fetched beside its own.
  optimization: { minimizer: minimizer(), splitChunks: false },
  performance: { hints: false },
  plugins: [styleFiles(), otherHyphenation, new CopyPage(), new Licences()],
});
