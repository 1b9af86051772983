import js from '@eslint/js';
import tseslint from 'typescript-eslint';

// Time is an argument: only the edge may read a clock.
const noClock = {
  'no-restricted-syntax': [
    'error',
    {
      selector: "NewExpression[callee.name='Date'][arguments.length=0]",
      message: 'Take the clock as an argument.',
    },
    {
      selector: "CallExpression[callee.object.name='Date'][callee.property.name='now']",
      message: 'Take the clock as an argument.',
    },
    { selector: "CallExpression[callee.name='Date']", message: 'Take the clock as an argument.' },
  ],
};

export default tseslint.config(
  { ignores: ['dist/**', 'node_modules/**', 'tests/data/**', 'coverage/**'] },
  js.configs.recommended,
  ...tseslint.configs.recommended,
  {
    rules: {
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      '@typescript-eslint/consistent-type-imports': 'error',
      'no-eval': 'error',
      'no-implied-eval': 'error',
      'no-new-func': 'error',
      eqeqeq: 'error',
    },
  },
  { files: ['src/**/*.ts'], ignores: ['src/cli/**', 'src/server/**', 'src/web/**'], rules: noClock },
  {
    files: ['**/*.mjs', '**/*.cjs'],
    languageOptions: { globals: { process: 'readonly', console: 'readonly' } },
  },
  {
    files: ['**/*.cjs'],
    languageOptions: { globals: { require: 'readonly', module: 'writable', __dirname: 'readonly' } },
    rules: { '@typescript-eslint/no-require-imports': 'off' },
  },
);
