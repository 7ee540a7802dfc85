import { spawn } from 'node:child_process';
import { join } from 'node:path';

import { ensurePackages } from './dependencies.mjs';
import { dist } from './paths.mjs';

/** `npm start`: installs what is missing, builds, serves the workbench on this machine only. */

/** The command that opens a page where there is a desktop to show it on. */
const opener = () => {
  if (process.env.CI || process.argv.includes('--no-open')) return undefined;
  if (process.platform === 'darwin') return ['open'];
  if (process.platform === 'win32') return ['cmd', '/c', 'start', ''];
  return process.env.DISPLAY || process.env.WAYLAND_DISPLAY ? ['xdg-open'] : undefined;
};

try {
  ensurePackages();
  const { buildWorkbench } = await import('./targets.mjs');
  const { serve } = await import('./serve.mjs');
  console.log('Building the workbench …');
  await buildWorkbench();
  const { address } = await serve(join(dist, 'workbench'), Number(process.env.PORT ?? 8417));
  console.log(`\nWandcount is at ${address}\nThe sample list is open. Stop with Ctrl+C.`);
  const [command, ...words] = opener() ?? [];
  if (command) {
    spawn(command, [...words, address], { stdio: 'ignore', detached: true })
      .on('error', () => console.log('Open that address in a browser.'))
      .unref();
  }
} catch (error) {
  console.error(`\n${error.message}`);
  process.exitCode = 1;
}
