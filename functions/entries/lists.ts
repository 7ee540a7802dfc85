import { fingerprint, nameKey } from '../../addin/core';
import { defineFunction } from '../defineFunction';
import { labels, name } from '../parameters';
import { show } from '../telling';
import { standsTwice, unknownInList } from '../sentences';

export const rowOf = defineFunction({
  name: 'ROWOF',
  summary: 'The place of a name in a list that has it once',
  parameters: {
    name: name('Name to look for; letter case and outer spaces do not count'),
    names: labels('The list, one row or one column of cells'),
  },
  result: { kind: 'number', description: 'Cells from the first one on, which is 1' },
  errors: ['#N/A for a name that is not in the list', '#VALUE! for a name that stands there twice'],
  examples: [
    { args: ['north fence', [['Front walk'], [''], ['North fence ']]], answer: 3 },
    { args: ['Bed *', [['Bed 1', 'Bed *']]], answer: 2 },
  ],
  source: 'Definition: no part of a name stands for others',
  compute: (v) => {
    const wanted = nameKey(v.name);
    const list = v.names.flat().map(nameKey);
    const first = list.indexOf(wanted);
    if (first < 0) return unknownInList('name', v.name);
    const second = list.indexOf(wanted, first + 1);
    return second < 0 ? first + 1 : standsTwice('name', v.name, first + 1, second + 1);
  },
  working: (v, answer) => [
    `${v.names.flat().length} cells, “${v.name}” stands in one of them: number ${show(answer)}`,
  ],
});

export const fingerprintOf = defineFunction({
  name: 'FINGERPRINT',
  summary: 'A short text that changes when any cell of a range does',
  parameters: {
    cells: labels('Cells to watch; a blank one and 0 count as the same, empty rows at the end do not count'),
  },
  result: { kind: 'text', description: 'Eight letters' },
  examples: [
    {
      args: [
        [
          ['Front walk', 1],
          ['North fence', 2],
        ],
      ],
      answer: 'bvbrxrxd',
    },
    { args: [''], answer: 'crbkxvrc' },
  ],
  source: 'FNV-1a, 32 bit (IETF draft-eastlake-fnv), in twenty letters',
  compute: (v) => fingerprint(v.cells),
  working: (v, answer) => [
    `${v.cells.flat().filter((cell) => cell !== '').length} cells with something in them: ${answer}`,
  ],
});
