import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';

import { catalogue, NAMESPACE } from '../../../functions';
import names from '../../hosts/calc/names.json';
import words from '../../hosts/calc/words.json';

import { markImage } from '../mark';
import { product } from '../product.mjs';

import { description } from './description';
import { helpPages } from './helpPages';
import { functionList, functionRegistration, typeDescription } from './functionRegistration';
import { manifest, MEDIA } from './manifest';
import { addons, factories, jobs, protocolHandler, sidebar } from './officeParts';
import type { PackageFiles } from './oxt';
import { wireRecords } from './wireRecords';
import { document, element } from '../xml';

const { accent: ACCENT } = product;
const SIZES = [16, 24, 26, 42];

const text = (value: object): string => `${JSON.stringify(value, undefined, 1)}\n`;

const images = (): PackageFiles =>
  Object.fromEntries(
    SIZES.flatMap((size) => [
      [`img/mark-${size}.png`, markImage(size, ACCENT.light)],
      [`img/mark-${size}-dark.png`, markImage(size, ACCENT.dark)],
    ]),
  );

/** The component's own files, under the paths they have in the package. */
const component = (folder: string): PackageFiles =>
  Object.fromEntries(
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && entry.name.endsWith('.py'))
      .map((entry) => {
        const path = join(entry.parentPath, entry.name);
        return [relative(folder, path).split(sep).join('/'), readFileSync(path, 'utf8')];
      }),
  );

const registered: Readonly<Record<string, string>> = {
  'CalcAddIns.xcu': functionRegistration(catalogue, NAMESPACE),
  'Sidebar.xcu': sidebar(),
  'Factories.xcu': factories(),
  'Addons.xcu': addons(),
  'ProtocolHandler.xcu': protocolHandler(),
  'Jobs.xcu': jobs(),
};

/** An empty window of the smallest size; the component fills it. A wider one would be cut off in a narrow sidebar. */
const panelWindow = document(
  element('dlg:window', {
    'xmlns:dlg': 'http://openoffice.org/2000/dialog',
    'dlg:id': 'wandcount',
    'dlg:left': '0',
    'dlg:top': '0',
    'dlg:width': '60',
    'dlg:height': '20',
    'dlg:withtitlebar': 'false',
  }),
);

/**
 * Every file of the Calc extension but the engine.
 *
 * @param root    the project's folder
 * @param version as the extension manager shows it
 */
export const packageFiles = (root: string, version: string): PackageFiles => ({
  'META-INF/manifest.xml': manifest([
    ['feed.idl', MEDIA.types],
    ['wandcount.py', MEDIA.python],
    ...Object.keys(registered).map((path) => [path, MEDIA.registry] as const),
  ]),
  'description.xml': description(version),
  'description.txt': `${words.description}\n`,
  LICENSE: readFileSync(join(root, 'LICENSE'), 'utf8'),
  'feed.idl': typeDescription(catalogue),
  'functions.json': functionList(catalogue),
  'start.cjs': readFileSync(join(root, 'addin', 'hosts', 'calc', 'start.cjs'), 'utf8'),
  'names.json': text(names),
  'words.json': text(words),
  'panel.xdl': panelWindow,
  ...helpPages(catalogue, NAMESPACE),
  ...registered,
  ...images(),
  ...component(join(root, 'addin', 'hosts', 'calc', 'python')),
  'pythonpath/wandcount/wire.py': wireRecords(),
});
