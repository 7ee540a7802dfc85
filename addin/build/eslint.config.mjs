import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import js from '@eslint/js';
import importX from 'eslint-plugin-import-x';
import officeAddins from 'eslint-plugin-office-addins';
import ts from 'typescript-eslint';

import { root } from './paths.mjs';

const hosts = readdirSync(join(root, 'addin', 'hosts')).map((host) => `./addin/hosts/${host}`);

/** Inside its room a file imports files; from outside, a room that has an index is its index. */
const behindIndex = (room, others) => ({
  target: others,
  from: room,
  except: ['./index.ts'],
  message: 'From outside, import what the index of the room gives.',
});

// Imports go one way: core ← functions, workbook ← files, taskpane ← hosts. Each room names what it must not reach.
const rooms = [
  {
    target: './addin/core',
    from: [
      './addin/workbook',
      './addin/files',
      './addin/hosts',
      './addin/build',
      './functions',
      './taskpane',
    ],
  },
  {
    target: './functions',
    from: ['./addin/workbook', './addin/files', './addin/hosts', './addin/build', './taskpane'],
  },
  {
    target: './addin/workbook',
    from: ['./functions', './addin/files', './addin/hosts', './addin/build', './taskpane'],
  },
  { target: './addin/files', from: ['./functions', './addin/hosts', './addin/build', './taskpane'] },
  { target: './taskpane', from: ['./addin/hosts', './addin/build'] },
  { target: './addin/hosts', from: ['./addin/build'] },
  { target: ['./addin', './functions', './taskpane'], from: ['./tests', './sample-workbooks'] },
  // What two hosts need belongs below them.
  ...hosts.map((host) => ({ target: host, from: hosts.filter((other) => other !== host) })),
  behindIndex('./addin/core', [
    './addin/workbook',
    './addin/files',
    './addin/hosts',
    './addin/build',
    './functions',
    './taskpane',
    './sample-workbooks',
  ]),
  behindIndex('./functions', ['./addin', './taskpane', './sample-workbooks']),
];

// The core gives the same answer for the same arguments: no clock, no chance, no console, no page.
const impure = ['window', 'document', 'console', 'process', 'fetch', 'localStorage', 'setTimeout'];

// One host's program is nobody else's: its types are seen everywhere, its names are not to be used.
const programs = ['Excel', 'Office', 'OfficeExtension', 'OfficeRuntime', 'CustomFunctions'];
const typesOfPrograms = {
  selector: `TSQualifiedName[left.name=/^(${programs.join('|')})$/]`,
  message: 'Only its host knows a program.',
};

// The object `z` carries its messages in fifty languages into every bundle; the namespace carries what is used.
const wholeZod = {
  selector: "ImportDeclaration[source.value='zod'] > ImportSpecifier[imported.name='z']",
  message: "Write: import * as z from 'zod'.",
};

// Slips with the program's objects that its own library lets pass until a user runs them.
const slips = [
  'call-sync-after-load',
  'call-sync-before-read',
  'load-object-before-read',
  'no-context-sync-in-loop',
  'no-empty-load',
  'no-navigational-load',
  'no-office-initialize',
  'test-for-null-using-isNullObject',
];

export default ts.config(
  { ignores: ['node_modules/**', 'dist/**', 'tests/output/**'] },
  js.configs.recommended,
  ...ts.configs.recommended,
  {
    files: ['**/*.ts', '**/*.mjs'],
    plugins: { 'import-x': importX },
    settings: {
      'import-x/resolver': { node: { extensions: ['.ts', '.mjs', '.js'] } },
      // Without these the rule on cycles reads no TypeScript, and says nothing.
      'import-x/extensions': ['.ts', '.mjs'],
      'import-x/parsers': { '@typescript-eslint/parser': ['.ts'] },
    },
    rules: {
      'import-x/no-restricted-paths': ['error', { zones: rooms }],
      'import-x/no-cycle': ['error', { ignoreExternal: true }],
      'import-x/no-default-export': 'error',
      'no-restricted-syntax': ['error', wholeZod],
      '@typescript-eslint/consistent-type-imports': 'error',
      'no-undef': 'off',
    },
  },
  {
    files: ['**/*.ts'],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: root } },
    rules: {
      '@typescript-eslint/await-thenable': 'error',
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-misused-promises': 'error',
    },
  },
  {
    files: ['addin/hosts/office/**/*.ts'],
    plugins: { 'office-addins': officeAddins },
    rules: Object.fromEntries(slips.map((rule) => [`office-addins/${rule}`, 'error'])),
  },
  {
    files: ['addin/**/*.ts', 'functions/**/*.ts', 'taskpane/**/*.ts'],
    ignores: ['addin/hosts/office/**', 'addin/build/**'],
    rules: {
      'no-restricted-globals': ['error', ...programs],
      'no-restricted-syntax': ['error', wholeZod, typesOfPrograms],
    },
  },
  {
    files: ['addin/files/**/*.ts'],
    rules: {
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            { group: ['@univerjs/*'], message: 'Files are read for every host; the grid is one of them.' },
          ],
        },
      ],
    },
  },
  {
    files: ['addin/core/**/*.ts'],
    rules: {
      'no-restricted-globals': ['error', ...impure, ...programs],
      'no-restricted-properties': [
        'error',
        { object: 'Date', property: 'now', message: 'The core reads no clock.' },
        { object: 'Math', property: 'random', message: 'The core draws no lots.' },
      ],
      'no-restricted-syntax': [
        'error',
        wholeZod,
        typesOfPrograms,
        {
          selector: "NewExpression[callee.name='Date'][arguments.length=0]",
          message: 'The core reads no clock.',
        },
      ],
    },
  },
  {
    files: ['**/*.cjs'],
    languageOptions: { globals: { process: 'readonly', require: 'readonly' } },
    rules: { '@typescript-eslint/no-require-imports': 'off' },
  },
  { files: ['addin/build/**', '**/*.config.*'], rules: { 'import-x/no-default-export': 'off' } },
);
