import js from '@eslint/js';
import importX from 'eslint-plugin-import-x';
import ts from 'typescript-eslint';

// Imports go one way: core ← functions, workbook ← taskpane ← hosts. Each room names what it must not reach.
const rooms = [
  {
    target: './addin/core',
    from: ['./addin/workbook', './addin/hosts', './addin/build', './functions', './taskpane'],
  },
  { target: './functions', from: ['./addin/workbook', './addin/hosts', './addin/build', './taskpane'] },
  { target: './addin/workbook', from: ['./functions', './addin/hosts', './addin/build', './taskpane'] },
  { target: './taskpane', from: ['./addin/hosts', './addin/build'] },
  { target: './addin/hosts', from: ['./addin/build'] },
  { target: ['./addin', './functions', './taskpane'], from: ['./tests', './sample-workbooks'] },
];

// The core gives the same answer for the same arguments: no clock, no chance, no console, no page.
const impure = ['window', 'document', 'console', 'process', 'fetch', 'localStorage', 'setTimeout'];

export default ts.config(
  { ignores: ['node_modules/**', 'dist/**', 'tests/output/**'] },
  js.configs.recommended,
  ...ts.configs.recommended,
  {
    files: ['**/*.ts', '**/*.mjs'],
    plugins: { 'import-x': importX },
    settings: { 'import-x/resolver': { node: { extensions: ['.ts', '.mjs', '.js'] } } },
    rules: {
      'import-x/no-restricted-paths': ['error', { zones: rooms }],
      'import-x/no-cycle': 'error',
      'import-x/no-default-export': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      'no-undef': 'off',
    },
  },
  {
    files: ['addin/core/**/*.ts'],
    rules: {
      'no-restricted-globals': ['error', ...impure],
      'no-restricted-properties': [
        'error',
        { object: 'Date', property: 'now', message: 'The core reads no clock.' },
        { object: 'Math', property: 'random', message: 'The core draws no lots.' },
      ],
      'no-restricted-syntax': [
        'error',
        {
          selector: "NewExpression[callee.name='Date'][arguments.length=0]",
          message: 'The core reads no clock.',
        },
      ],
    },
  },
  { files: ['addin/build/**', '**/*.config.*'], rules: { 'import-x/no-default-export': 'off' } },
);
