import { beforeEach, describe, expect, test, vi } from 'vitest';

import { keptLook } from '../../../addin/hosts/office/documentSettings';

import { fakeSettings, type FakeSettings } from './fake/documentSettings';

let settings: FakeSettings;
beforeEach(() => {
  settings = fakeSettings();
  settings.answersItself = false;
  Object.assign(globalThis, { Office: { AsyncResultStatus: { Failed: 'failed', Succeeded: 'succeeded' } } });
});

const RIG = { section: 'rig', folds: { 'rig.more': true } };

describe('how the pane stands', () => {
  test('is nothing in a workbook that was never opened with the pane', () => {
    expect(keptLook(settings.open()).recall()).toBeNull();
  });

  test('is in the workbook for the next runtime, once it is saved there', () => {
    keptLook(settings.open()).keep(RIG);
    expect(keptLook(settings.open()).recall()).toBeNull();
    settings.answer();
    expect(keptLook(settings.open()).recall()).toEqual(RIG);
    expect(settings.saved).toEqual({ pane: RIG });
  });

  test('is saved once at a time, the last of several in the end', () => {
    const look = keptLook(settings.open());
    for (const section of ['rig', 'mix', 'round', 'log']) look.keep({ section, folds: {} });
    expect(settings.saves).toBe(1);
    settings.answer();
    expect(settings.saved).toEqual({ pane: { section: 'rig', folds: {} } });
    settings.answer();
    expect(settings.saves).toBe(2);
    expect(settings.saved).toEqual({ pane: { section: 'log', folds: {} } });
    expect(settings.answer).toThrow('Nothing is being saved.');
  });

  test('is not kept in a workbook open for reading, and the pane goes on', () => {
    const warn = vi.spyOn(console, 'warn').mockImplementation(() => undefined);
    settings.readOnly = true;
    const look = keptLook(settings.open());
    look.keep(RIG);
    settings.answer();
    expect(warn).toHaveBeenCalledOnce();
    expect(settings.saved).toEqual({});
    settings.readOnly = false;
    look.keep(RIG);
    settings.answer();
    expect(settings.saved).toEqual({ pane: RIG });
    warn.mockRestore();
  });
});

describe('the fake of the settings', () => {
  test.each([
    ['a member that is not faked', () => (settings.open() as Office.Settings).remove('pane')],
    ['a function as a setting', () => settings.open().set('pane', () => 0)],
    ['a save with the option of old', () => settings.open().saveAsync({ overwriteIfStale: true })],
    ['a save during a save', () => [1, 2].forEach(() => settings.open().saveAsync(() => undefined))],
    ['setting a setting as a property', () => void Object.assign(settings.open(), { pane: RIG })],
  ])('refuses %s', (_what, mistake) => {
    expect(mistake).toThrow();
  });

  test('gives a copy, which changes nothing in the document', () => {
    const open = settings.open();
    open.set('pane', RIG);
    (open.get('pane') as { section: string }).section = 'mix';
    expect(open.get('pane')).toEqual(RIG);
  });
});
