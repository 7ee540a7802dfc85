import { afterEach, expect, test } from 'vitest';

import { startOffice, type Office } from './office';

let office: Office;
afterEach(async () => office.end());

test('an office that hangs is told apart, and ended', async () => {
  office = await startOffice({ extension: false });
  const doc = await office.ask<string>({ do: 'open_document' });
  const pids = office.pids();
  for (const pid of pids) process.kill(pid, 'SIGSTOP');
  await expect(office.ask({ do: 'first_sheet', doc }, 2)).rejects.toThrow(
    'LibreOffice did not answer “first_sheet” within 2 s.',
  );
  const asked = Date.now();
  await expect(office.ask({ do: 'sheet_names', doc })).rejects.toThrow('“first_sheet”');
  await office.end();
  expect(Date.now() - asked).toBeLessThan(20_000);
  expect(office.pids()).toEqual([]);
});

test('an office that is killed answers nothing, and whoever asked is told', async () => {
  office = await startOffice({ extension: false });
  const doc = await office.ask<string>({ do: 'open_document' });
  for (const pid of office.pids()) process.kill(pid, 'SIGKILL');
  await expect(office.ask({ do: 'first_sheet', doc })).rejects.toThrow('The office is gone');
});

test('what goes wrong in a request is told, and the next one is answered', async () => {
  office = await startOffice({ extension: false });
  const doc = await office.ask<string>({ do: 'open_document' });
  await expect(office.ask({ do: 'values', doc, sheet: 'No such sheet', cells: 'A1' })).rejects.toThrow(
    'NoSuchElementException',
  );
  expect(await office.ask({ do: 'first_sheet', doc })).toBe('Sheet1');
});
