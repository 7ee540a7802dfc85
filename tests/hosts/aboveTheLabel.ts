import { describe, expect, test } from 'vitest';

/** A card of the product below at its label's rate, in some host, and what a user does to it there. */
export interface CardHost {
  /** Every cell of the card's printed area as it shows, row by row. */
  printed(): Promise<readonly (readonly string[])[]>;
  /** Whatever else the card can be read from, as one text: its print, its file. */
  copies(): Promise<Readonly<Record<string, string>>>;
  /** By the user's own hand, into a cell of a sheet or of a workbook name; '' empties it. */
  type(place: string, text: string): Promise<void>;
  /** What the pane's Round says, and whether it offers the card to be printed. */
  round(): Promise<{ readonly says: string; readonly prints: boolean }>;
  /** In the pane. */
  makeCard(reason?: string): Promise<void>;
  /** Kept for people to look at. */
  picture(name: string): Promise<void>;
}

const PRODUCT = 'Soluble powder 20-20-20';
/** Where the product and its rate stand. */
const NAME = 'Mix!A6';
const RATE = 'Mix!B6';
/** A product of the sample garden; the mix takes none that is not on its sheet. */
const OTHER = 'Fish and kelp liquid';
/** The name of the cell beside the card in which the reason stands. */
const REASON = 'Card_reason';
const WHY = 'Soil test of April, agreed with the club';

/** An amount in a measure that people own; a rate has a stroke behind its measure. */
const AMOUNT = /\d (?:cups?|tbsp|tsp|fl oz|oz|qt|mL|g)\b(?!\/)/;
const AGAIN = 'Round card: make it again';
const ABOVE = `“${PRODUCT}” is above the label. Make the card again.`;

type Printed = Awaited<ReturnType<CardHost['printed']>>;

/** What stands under each product's name, fill by fill. */
const measures = (printed: Printed): Record<string, string[]> => {
  const found: Record<string, string[]> = {};
  printed.forEach((head, row) => {
    const at = head.indexOf('Fill');
    if (at === -1) return;
    const fills = printed.slice(row + 1).findIndex((line) => !/^Fill \d+$/.test(line[at] ?? ''));
    // Between the volume to make up and the hot water, or where there is none the volume to pump.
    const last = head.findIndex((text) => text === 'Hot water' || text === 'Pump out');
    for (let column = at + 2; column < last; column += 1)
      (found[head[column]!] ??= []).push(
        ...printed.slice(row + 1, row + 1 + fills).map((line) => line[column]!),
      );
  });
  return found;
};

const amounts = (printed: Printed): string[] => printed.flat().filter((text) => AMOUNT.test(text));

/** What a user sees of a card when a rate passes its label, the same in every host. */
export const tellsTheTruth = (host: () => CardHost): void => {
  describe('a rate above the label', () => {
    let made: Printed;

    const showsMeasures = async (): Promise<void> => {
      const shown = measures(await host().printed());
      expect(shown[PRODUCT]?.length).toBeGreaterThan(1);
      for (const text of Object.values(shown).flat()) expect(text).toMatch(AMOUNT);
      for (const [where, text] of Object.entries(await host().copies())) expect(text, where).toMatch(AMOUNT);
      await expect.poll(async () => (await host().round()).prints).toBe(true);
    };
    const showsNone = async (why: string): Promise<void> => {
      const printed = await host().printed();
      const shown = measures(printed);
      expect(printed[0]![0]).toBe(AGAIN);
      expect(printed[1]![0]).toBe('This card is out of date');
      expect(printed[2]![0]).toBe(why);
      expect(shown[PRODUCT]?.length).toBeGreaterThan(1);
      expect(new Set(Object.values(shown).flat())).toEqual(new Set(['make again']));
      expect(amounts(printed)).toEqual([]);
      for (const [where, text] of Object.entries(await host().copies())) {
        expect(text, where).toContain(AGAIN);
        expect(text, where).toContain(why);
        expect(text, where).not.toMatch(AMOUNT);
      }
      await expect.poll(() => host().round()).toMatchObject({ prints: false });
      expect((await host().round()).says).toContain(`The card: ${why}`);
    };
    const isAboveTheLabel = () => showsNone(ABOVE);

    test('made at the label’s rate, the card shows its measures and may be printed', async () => {
      await host().makeCard();
      await showsMeasures();
      made = await host().printed();
      expect(made[0]![0]).not.toBe(AGAIN);
      await host().picture('above-1-within');
    });

    test('twice the rate typed in its cell leaves no measure anywhere, and the pane prints no such card', async () => {
      await host().type(RATE, '2');
      await isAboveTheLabel();
      await host().picture('above-2-twice');
    });

    test('a reason typed by hand beside a card made without one changes nothing', async () => {
      await host().type(REASON, WHY);
      await isAboveTheLabel();
      await host().type(REASON, '');
    });

    test('the label’s rate typed back brings the same card back', async () => {
      await host().type(RATE, '1');
      expect(await host().printed()).toEqual(made);
      await showsMeasures();
    });

    test('another product in the mix leaves no measure of the one that is gone', async () => {
      await host().type(NAME, OTHER);
      await showsNone(`“${PRODUCT}” is not as it was. Make the card again.`);
      await host().picture('above-3-swapped');
      await host().type(NAME, PRODUCT);
      expect(await host().printed()).toEqual(made);
    });

    test('made again with a reason, it prints the reason with both rates, and the measures', async () => {
      await host().type(RATE, '2');
      await host().makeCard(WHY);
      await showsMeasures();
      const told = [
        `${PRODUCT} at 2 tbsp/gal, above the label's greatest rate of 1 tbsp/gal`,
        `Because: ${WHY}`,
      ];
      expect((await host().printed()).flat()).toEqual(expect.arrayContaining(told));
      for (const [where, text] of Object.entries(await host().copies()))
        for (const words of told) expect(text, where).toContain(words);
      await host().picture('above-4-reason');
    });

    test('the reason deleted from its cell leaves no measure again', async () => {
      await host().type(REASON, '');
      await isAboveTheLabel();
      await host().picture('above-5-reason-deleted');
    });
  });
};
