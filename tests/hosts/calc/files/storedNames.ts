import { readFileSync, writeFileSync } from 'node:fs';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';

import { sheetOf } from '../cells';
import { built, column, openIn, SHEET, XLSX } from './book';
import type { Programs } from './programs';

/** Formulas with the prefix that files of Office hosts carry. */
export const storedNames = (programs: Programs): void => {
  describe('formulas as Office hosts store them', () => {
    const stored = async (): Promise<string> => {
      const path = await programs.save(programs.office, await built(programs.office), XLSX);
      const files = unzipSync(readFileSync(path));
      let changed = 0;
      for (const [name, bytes] of Object.entries(files)) {
        if (!/worksheets\/sheet\d+\.xml$/.test(name)) continue;
        const xml = strFromU8(bytes).replace(/<f[^>]*>[^<]*<\/f>/g, (formula) =>
          formula
            .split(/(&quot;.*?&quot;)/)
            .map((part, index) =>
              index % 2
                ? part
                : part.replace(/FEED\.([A-Z]+)\(/g, (_all, fn) => ((changed += 1), `_xldudf_FEED_${fn}(`)),
            )
            .join(''),
        );
        files[name] = strToU8(xml);
      }
      expect(changed).toBe(5);
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

    test('in a text stay as they are', async () => {
      const doc = await openIn(programs.office, await stored());
      expect((await sheetOf(programs.office, doc, SHEET).cell('A4')).shows).toBe('says FEED.SECONDS(1,4)');
    });
  });
};
