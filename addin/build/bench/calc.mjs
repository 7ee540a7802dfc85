import { existsSync, readFileSync } from 'node:fs';
import { availableParallelism, loadavg } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

import { ensurePrograms } from '../programs.mjs';
import { importTypeScript } from '../typescript.mjs';

const SHEET = 'Sheet1';
const CELLS = 10_000;
const ROUNDS = 9;
const PLANTS = 5_000;

const median = (times) => [...times].sort((a, b) => a - b)[times.length >> 1];
const count = (n) => Math.round(n).toLocaleString('en');
const milliseconds = (seconds) => `${(seconds * 1000).toFixed(seconds < 0.1 ? 1 : 0)} ms`;

const timed = async (work) => {
  const from = performance.now();
  await work();
  return (performance.now() - from) / 1000;
};

/** One sheet of a new document. */
const openSheet = async (office) => {
  const doc = await office.ask({ do: 'open_document' });
  const at = { doc, sheet: SHEET };
  return {
    doc,
    ask: (request) => office.ask({ ...at, ...request }),
    formula: (cell, formula) => office.ask({ do: 'put', ...at, cells: cell, formulas: [[formula]] }),
    value: async (cell) => (await office.ask({ do: 'values', ...at, cells: cell }))[0][0],
    /** Seconds from a changed cell until others have their answers. */
    recalculated: (set, to, cells) => office.ask({ do: 'timed', ...at, set, to, cells }),
    close: () => office.ask({ do: 'close', doc }),
  };
};

const expectNear = (found, wanted, what) => {
  if (!(Math.abs(found - wanted) <= 1e-6 * Math.abs(wanted)))
    throw new Error(`${what} is ${found}, not ${wanted}.`);
};

/** Processes of the engines that were started, the last one last, as the log tells. */
const engines = (office) => {
  const log = join(office.userFolder, 'wandcount.log');
  const text = existsSync(log) ? readFileSync(log, 'utf8') : '';
  return [...text.matchAll(/engine (\d+) started/g)].map(([, pid]) => Number(pid));
};

/** Processor seconds of the office and its engines, which grow less with other work than the clock's; Linux only. */
const processorSeconds = (office) =>
  [...office.pids(), ...engines(office)]
    .map((pid) => `/proc/${pid}/stat`)
    .filter((file) => existsSync(file))
    .map((file) => readFileSync(file, 'utf8').split(') ')[1].split(' ').slice(11, 13).map(Number))
    .reduce((sum, [user, system]) => sum + (user + system) / 100, 0);

/** Processor seconds that a work takes. */
const processorTime = async (office, work) => {
  const before = processorSeconds(office);
  await work();
  return processorSeconds(office) - before;
};

/** The first call of an office, and the first one after its engine was ended. */
const startOfFirstCall = async (office, print) => {
  const sheet = await openSheet(office);
  const call = (dose) =>
    timed(async () => {
      await sheet.formula('A1', `=FEED.SECONDS(${dose};"gal";2;"gal/min")`);
      expectNear(await sheet.value('A1'), dose * 30, 'SECONDS');
    });
  const first = await call(1);
  const again = [];
  for (let run = 2; run <= 4; run += 1) {
    process.kill(engines(office).at(-1), 'SIGKILL');
    await pause(200);
    again.push(await call(run));
  }
  print(
    `first call: ${milliseconds(first)} in a new office, ${milliseconds(median(again))} where only the engine starts`,
  );
  await sheet.close();
};

const scalarCalls = async (office, print) => {
  const sheet = await openSheet(office);
  const cells = `B1:B${CELLS}`;
  const doses = Array.from({ length: CELLS }, (_, row) => [0.1 + row / 1000]);
  await sheet.ask({ do: 'put_values', cells: `A1:A${CELLS}`, values: doses });
  await sheet.ask({ do: 'put_values', cells: 'C1', values: [[2]] });
  await sheet.ask({ do: 'fill_down', cells, formula: '=FEED.SECONDS(A1;"gal";$C$1;"gal/min")' });
  const fresh = [];
  const known = [];
  const used = [0, 0];
  for (let flow = 3; flow <= 6; flow += 1) {
    used[0] += await processorTime(office, async () => {
      fresh.push(await sheet.recalculated('C1', flow, cells));
    });
    used[1] += await processorTime(office, async () => {
      known.push(await sheet.recalculated('C1', flow - 1, cells));
    });
    expectNear(await sheet.value(`B${CELLS}`), (doses[CELLS - 1][0] / (flow - 1)) * 60, 'SECONDS');
  }
  const told = (times, processor) =>
    `median ${count(CELLS / median(times))} calls/s, worst ${count(CELLS / Math.max(...times))}; ` +
    `${((processor / times.length / CELLS) * 1e6).toFixed(0)} µs of processor time a call`;
  print(`${count(CELLS)} cells of SECONDS, new arguments:       ${told(fresh, used[0])}`);
  print(`${count(CELLS)} cells of SECONDS, same arguments again: ${told(known, used[1])}`);
  await sheet.close();
};

/** A formula of ours and one of Calc's own, by turns; and how long a change takes that leads to no work at all. */
const against = async (sheet, ours, native, rounds) => {
  const formulas = [ours, native, '=A1+1'];
  const times = formulas.map(() => []);
  for (let round = 1; round <= rounds; round += 1)
    for (const [index, formula] of formulas.entries()) {
      await sheet.formula('D1', formula);
      await sheet.recalculated('A1', 0, 'D1');
      times[index].push(await sheet.recalculated('A1', round, 'D1'));
    }
  return times.map(median);
};

const needAgainstNative = async (office, print) => {
  const sheet = await openSheet(office);
  const rows = Array.from({ length: CELLS }, (_, row) => [1 + (row % 40), 0.1 + row / 1000]);
  await sheet.ask({ do: 'put_values', cells: `A1:B${CELLS}`, values: rows });
  for (const [what, a, b, rounds] of [
    [`${count(CELLS)} rows`, `A1:A${CELLS}`, `B1:B${CELLS}`, ROUNDS],
    [`whole columns, ${count(CELLS)} rows in use`, 'A:A', 'B:B', 3],
  ]) {
    const [ours, native, nothing] = await against(
      sheet,
      `=FEED.NEED(${a};${b};"gal";"gal")`,
      `=SUMPRODUCT(${a};${b})`,
      rounds,
    );
    await sheet.formula('D1', `=FEED.NEED(${a};${b};"gal";"gal")`);
    await sheet.formula('E1', `=SUMPRODUCT(${a};${b})`);
    expectNear(await sheet.value('D1'), await sheet.value('E1'), 'NEED');
    print(
      `NEED over ${what}: ${milliseconds(ours)}, SUMPRODUCT ${milliseconds(native)}, ratio ${(ours / native).toFixed(1)}; ` +
        `a change without either ${milliseconds(nothing)} (medians of ${rounds}, by turns)`,
    );
  }
  await sheet.close();
};

const CLASSES = ['HT', 'Floribunda', 'Mini', 'Cl'];

/** From the press of the button until the pane shows that the sheets are made. */
const buildingPlants = async (office, print) => {
  const list = [
    ['Variety', 'Bed', 'Class', 'How many'],
    ...Array.from({ length: PLANTS }, (_, row) => [
      `Rose ${row % 900}`,
      `Bed ${row % 140}`,
      CLASSES[row % CLASSES.length],
      1,
    ]),
  ];
  const times = [];
  const used = [];
  for (let run = 0; run < 3; run += 1) {
    const sheet = await openSheet(office);
    await sheet.ask({ do: 'put_values', cells: `A1:D${list.length}`, values: list });
    const job = (request) => office.ask({ do: 'job', doc: sheet.doc, request });
    await job({});
    const press = () => job({ event: { kind: 'press', action: 'garden.adopt' } });
    used.push(await processorTime(office, async () => times.push(await timed(press))));
    const made = await office.ask({ do: 'values', doc: sheet.doc, sheet: 'Plants', cells: 'A1:A5200' });
    const lines = made.filter(([cell]) => /^Rose \d+$/.test(String(cell))).length;
    if (lines !== PLANTS) throw new Error(`${lines} of ${PLANTS} plants are on the Plants sheet.`);
    await sheet.close();
  }
  print(
    `Plants for ${count(PLANTS)} plants, from the press until the pane is done: ` +
      `median ${milliseconds(median(times))}, worst ${milliseconds(Math.max(...times))}; ` +
      `${milliseconds(median(used))} of processor time`,
  );
};

/** In a real LibreOffice without a window. */
export const run = async (print) => {
  ensurePrograms(['soffice', 'uno']);
  const { startOffice } = await importTypeScript('tests/hosts/calc/office.ts');
  const office = await startOffice();
  try {
    for (const part of [startOfFirstCall, scalarCalls, needAgainstNative, buildingPlants])
      await part(office, print);
    print(`load ${loadavg()[0].toFixed(1)} on ${availableParallelism()} processors`);
  } finally {
    await office.end();
  }
};
