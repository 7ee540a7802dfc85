import { readFileSync, writeFileSync } from 'node:fs';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';

import { sheetOf } from '../cells';
import { built, column, openIn, SHEET, XLSX } from './book';
import type { Programs } from './programs';

/** Spellings of a name that some program writes, or that some file was seen with. */
const SPELLINGS = ['_xldudf_FEED_', '_xlfn._xldudf_FEED_', '_xlfn.FEED.', 'FEED_'];

/** In place of the names' end, one more that holds a formula. */
const HELD =
  '<definedName name="Held">FEED.SECONDS(0.7,&quot;gal&quot;,1.4,&quot;gal/min&quot;)</definedName>';

/** Formulas with the names that files of other programs carry. */
export const storedNames = (programs: Programs): void => {
  describe.each(SPELLINGS)('formulas with %s before the function', (spelling) => {
    const stored = async (): Promise<string> => {
      const path = await programs.save(programs.office, await built(programs.office), XLSX);
      const files = unzipSync(readFileSync(path));
      let changed = 0;
      const respelled = (formula: string): string =>
        formula
          .split(/(&quot;.*?&quot;)/)
          .map((part, index) =>
            index % 2
              ? part
              : part.replace(/FEED\.([A-Z]+)\(/g, (_all, fn) => ((changed += 1), `${spelling}${fn}(`)),
          )
          .join('');
      for (const [name, bytes] of Object.entries(files)) {
        if (!/worksheets\/sheet\d+\.xml$|xl\/workbook\.xml$/.test(name)) continue;
        const xml = strFromU8(bytes)
          .replace('</definedNames>', `${HELD}</definedNames>`)
          .replace(/<(f|definedName)\b[^>]*>[^<]*<\/\1>/g, respelled);
        files[name] = strToU8(xml);
      }
      expect(changed).toBe(6);
      writeFileSync(path, zipSync(files));
      return path;
    };

    test('are recognised on opening, compute, and leave the document unmodified with nothing to undo', async () => {
      const doc = await openIn(programs.office, await stored());
      expect(await programs.office.ask<boolean>({ do: 'is_modified', doc })).toBe(false);
      expect(await programs.office.ask<string[]>({ do: 'undo_titles', doc })).toEqual([]);
      const cells = await column(programs.office, doc);
      expect(cells.map(({ formula }) => formula)).toEqual([
        '=FEED.SECONDS(A1;"gal";Wand_flow;"gal/min")',
        '=FEED.MEASURE(60;"tbsp")',
        '=INDEX(FEED.FILLPLAN(200;60;"gal");4;2)',
        '=FEED.SECONDS("much";"gal";2;"gal/min")',
        '=IF(A1>0;FEED.DOSE(B1;2.8;"gal/min";"gal")*2;"FEED.DOSE(")',
        '=SUM(A1:A2)',
        '=B1*2',
        '=B2&"!"',
        '=IF(COUNT(B1)=1;"known";"not known")',
      ]);
      expect(cells[0]!.value).toBeCloseTo(15, 9);
      await sheetOf(programs.office, doc, SHEET).values('A1', [[1.4]]);
      expect((await column(programs.office, doc))[0]!.value).toBeCloseTo(30, 9);
    });

    test('are recognised in a name', async () => {
      const doc = await openIn(programs.office, await stored());
      const sheet = sheetOf(programs.office, doc, SHEET);
      await sheet.put('D1', ['=Held*2']);
      expect((await sheet.cell('D1')).shows).toBe('60');
    });

    test('in a text stay as they are', async () => {
      const doc = await openIn(programs.office, await stored());
      expect((await sheetOf(programs.office, doc, SHEET).cell('A4')).shows).toBe('says FEED.SECONDS(1,4)');
    });
  });
};
