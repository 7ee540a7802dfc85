// The tests that are about a room; more would only repeat what they say.
const ROOMS = {
  'addin/core': ['tests/core/', 'tests/functions/', 'tests/properties/', 'tests/oracles/'],
  functions: ['tests/core/', 'tests/functions/', 'tests/properties/', 'tests/oracles/'],
  'addin/workbook': ['tests/workbook/'],
  taskpane: ['tests/taskpane/'],
};

/** Folders of the tests that are to see a mutant of these sources. */
export const testsFor = (paths) => [
  ...new Set(
    paths.flatMap((path) => {
      const room = Object.keys(ROOMS).find((name) => `${path}/`.startsWith(`${name}/`));
      if (room === undefined) throw new Error(`${path}: name its tests, such as --tests tests/workbook.`);
      return ROOMS[room];
    }),
  ),
];
