import { spawnSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';

const module = new URL('../../addin/build/programs.mjs', import.meta.url).href;

/** Asks for programs as a user who may install nothing, with these settings. */
const asked = (ids: readonly string[], env: Readonly<Record<string, string>>) => {
  const script =
    `process.getuid = () => 1000; const { ensurePrograms } = await import(${JSON.stringify(module)});` +
    `ensurePrograms(${JSON.stringify(ids)});`;
  return spawnSync(process.execPath, ['--input-type=module', '-e', script], { env, encoding: 'utf8' });
};

describe('programs that the tests drive', () => {
  test('are named with the command that installs them where the user may not install', () => {
    const { status, stderr } = asked(['chromium', 'Xvfb'], { PATH: '/nowhere' });
    expect(status).not.toBe(0);
    expect(stderr).toContain('This needs Chromium and the virtual display Xvfb.');
    expect(stderr).toContain(
      'sudo apt-get install -y --no-install-recommends chromium fonts-dejavu-core xvfb',
    );
    expect(stderr).toContain('set WANDCOUNT_CHROMIUM, WANDCOUNT_XVFB to its path');
  });

  test('may lie where a setting says', () => {
    expect(asked(['Xvfb'], { PATH: '/nowhere', WANDCOUNT_XVFB: process.execPath }).status).toBe(0);
  });

  test('must work: a Python without the office’s module is none', () => {
    const { PATH = '' } = process.env;
    const bare = asked(['uno'], { PATH, PYTHONHOME: '/nowhere' });
    expect(bare.stderr).toContain('python3-uno');
  });
});
