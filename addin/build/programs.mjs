import { spawnSync } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

/** Programs that the tests drive: where they may be, and the Debian packages that bring them. */
const PROGRAMS = {
  chromium: {
    says: 'Chromium',
    setting: 'WANDCOUNT_CHROMIUM',
    names: ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'],
    places: [
      '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
      '/Applications/Chromium.app/Contents/MacOS/Chromium',
      'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
    ],
    packages: ['chromium', 'fonts-dejavu-core'],
  },
  pdftoppm: {
    says: 'pdftoppm',
    setting: 'WANDCOUNT_PDFTOPPM',
    names: ['pdftoppm'],
    places: [],
    packages: ['poppler-utils'],
  },
  soffice: {
    says: 'LibreOffice Calc',
    setting: 'WANDCOUNT_SOFFICE',
    names: ['soffice', 'libreoffice'],
    places: [
      '/Applications/LibreOffice.app/Contents/MacOS/soffice',
      'C:\\Program Files\\LibreOffice\\program\\soffice.exe',
    ],
    packages: ['libreoffice-calc', 'fonts-dejavu-core'],
  },
  uno: {
    says: 'a Python with LibreOffice’s own module',
    setting: 'WANDCOUNT_OFFICE_PYTHON',
    names: [],
    places: ['/usr/bin/python3'],
    works: ['-c', 'import uno'],
    packages: ['python3-uno'],
  },
  gtk3: {
    says: 'LibreOffice’s windows in GTK 3',
    setting: 'WANDCOUNT_OFFICE_GTK3',
    names: [],
    places: [
      '/usr/lib/libreoffice/program/libvclplug_gtk3lo.so',
      '/usr/lib64/libreoffice/program/libvclplug_gtk3lo.so',
    ],
    library: true,
    packages: ['libreoffice-gtk3'],
  },
  Xvfb: {
    says: 'the virtual display Xvfb',
    setting: 'WANDCOUNT_XVFB',
    names: ['Xvfb'],
    places: [],
    packages: ['xvfb'],
  },
  openbox: {
    says: 'the window manager openbox',
    setting: 'WANDCOUNT_OPENBOX',
    names: ['openbox'],
    places: [],
    packages: ['openbox'],
  },
  xdotool: {
    says: 'xdotool, which presses keys',
    setting: 'WANDCOUNT_XDOTOOL',
    names: ['xdotool'],
    places: [],
    packages: ['xdotool'],
  },
  import: {
    says: 'ImageMagick, which takes pictures of a screen',
    setting: 'WANDCOUNT_IMPORT',
    names: ['import'],
    places: [],
    packages: ['imagemagick'],
  },
};

const may = (path, mode) => {
  try {
    accessSync(path, mode);
    return true;
  } catch {
    return false;
  }
};

const executable = (path) => may(path, constants.X_OK);

/** The path of a program, or undefined. A path in its environment setting wins. */
export const findProgram = (id) => {
  const { names, places, setting, works, library = false } = PROGRAMS[id];
  const folders = (process.env.PATH ?? '').split(delimiter).filter(Boolean);
  const endings = process.platform === 'win32' ? ['.exe'] : [''];
  const candidates = [
    process.env[setting],
    ...folders.flatMap((folder) =>
      names.flatMap((name) => endings.map((ending) => join(folder, name + ending))),
    ),
    ...places,
  ];
  return candidates.find(
    (path) =>
      path &&
      (library ? may(path, constants.R_OK) : executable(path)) &&
      (works === undefined || spawnSync(path, works).status === 0),
  );
};

const run = (command, words) =>
  spawnSync(command, words, {
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  }).status === 0;

/**
 * Makes sure that the programs are there: through the system's package manager where this user may, otherwise
 * throws with the command to run.
 */
export const ensurePrograms = (ids) => {
  const missing = ids.filter((id) => !findProgram(id));
  if (missing.length === 0) return;
  const packages = missing.flatMap((id) => PROGRAMS[id].packages);
  const words = ['install', '-y', '--no-install-recommends', ...packages];
  const mayInstall = process.getuid?.() === 0 && executable('/usr/bin/apt-get');
  if (mayInstall) {
    console.log(`Installing ${packages.join(', ')} …`);
    if (run('apt-get', ['update', '-q']) && run('apt-get', ['-q', ...words]) && ids.every(findProgram))
      return;
  }
  const said = missing.map((id) => PROGRAMS[id].says).join(' and ');
  const settings = missing.map((id) => PROGRAMS[id].setting).join(', ');
  throw new Error(
    `This needs ${said}. On Debian or Ubuntu run:\n  sudo apt-get update && sudo apt-get ${words.join(' ')}\n` +
      `Elsewhere install it your way; if it is not on PATH, set ${settings} to its path.`,
  );
};
