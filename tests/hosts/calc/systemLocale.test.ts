import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import type { PaneEvent } from '../../../taskpane/view';
import { sheetOf } from './cells';
import { startOffice, type Office } from './office';

/* A user who chose no region in LibreOffice, so that the computer's own is taken. */

describe.each([
  { locale: 'de_DE.UTF-8', shown: '1,5', bucket: 'The bucket holds 10' },
  { locale: 'en_US.UTF-8', shown: '1.5', bucket: 'The bucket holds 2' },
])('on a computer set to $locale', ({ locale, shown, bucket }) => {
  let office: Office;
  let doc: string;
  beforeAll(async () => {
    office = await startOffice({ env: { LC_ALL: locale } });
    doc = await office.ask<string>({ do: 'open_document' });
  });
  afterAll(async () => office?.end());

  const happens = async (event: PaneEvent): Promise<string> => {
    const { pieces } = await office.ask<{ pieces: { text?: string; label?: string; value?: string }[] }>({
      do: 'job',
      doc,
      request: { event },
    });
    return pieces.map(({ text = '', label = '', value = '' }) => `${text}${label} ${value}`).join('\n');
  };

  test('cells show their decimals as there', async () => {
    expect((await sheetOf(office, doc).shows('=3/2')).shows).toBe(shown);
  });

  test('the pane begins in the measures used there', async () => {
    await happens({ kind: 'press', action: 'garden.new' });
    expect(await happens({ kind: 'open', section: 'rig' })).toMatch(new RegExp(`${bucket}\\b`));
  });
});
