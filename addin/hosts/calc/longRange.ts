import type { RawScalar } from '../../../functions';
import { errorOfCode } from './errorCodes';
import type { LongRange } from './wire/messages';

/** Among numbers as bytes, the code of a cell that holds none. */
const NO_NUMBER = 1;

type Rows = readonly (readonly RawScalar[])[];

/** The numbers of a range; the engine may run where the highest byte comes first. */
const numbersOf = (bytes: Buffer): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.length);

const notANumber = (view: DataView, at: number): RawScalar => {
  const code = view.getUint16(8 * at, true);
  return code === NO_NUMBER ? '' : { error: errorOfCode(code) };
};

/**
 * The rows of a long range, without the blank ones at its end.
 *
 * @example rowsOf({ numbers: 'AAAAAAAA8D8=', texts: [], width: 1, height: 2000 }) // [[1]]
 */
export const rowsOf = ({ numbers, texts, width }: LongRange): Rows => {
  const view = numbersOf(Buffer.from(numbers, 'base64'));
  const height = view.byteLength / 8 / width;
  const rows: RawScalar[][] = [];
  for (let row = 0, at = 0; row < height; row += 1) {
    const cells: RawScalar[] = [];
    for (let column = 0; column < width; column += 1, at += 1) {
      const number = view.getFloat64(8 * at, true);
      cells.push(number === number ? number : notANumber(view, at));
    }
    rows.push(cells);
  }
  for (const [at, text] of texts) rows[Math.floor(at / width)]![at % width] = text;
  return rows;
};
