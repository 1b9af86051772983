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

/**
 * What was said is read in `src/understanding`, by lists of the language's folder. Dialogue is given what it comes to
 * (`Understood`), which has no words but to say them back: it reads none, of any language.
 */
const noWords = {
  'no-restricted-syntax': [
    ...noClock['no-restricted-syntax'],
    {
      // Two letters in a row, beside classes: a pattern over words, not over figures or marks.
      selector: 'Literal[regex.pattern=/(?<!p\\{)[a-z]{2}/i]',
      message: 'Read words in src/understanding, and give dialogue a field.',
    },
    {
      selector: ":matches(NewExpression, CallExpression)[callee.name='RegExp']",
      message: 'Read words in src/understanding, and give dialogue a field.',
    },
    {
      selector:
        "BinaryExpression:matches([left.name='words'], [left.property.name='words'])[right.value=/./]:not([right.raw='null'])",
      message: 'What words mean is a field of its own.',
    },
  ],
  'no-restricted-imports': [
    'error',
    {
      patterns: [
        { group: ['**/terms/quote.js'], importNames: ['wordsOf'], message: 'Words are only said back.' },
        {
          group: ['**/understanding/*'],
          importNames: [
            'Understanding',
            'Interpretation',
            'Hypothesis',
            'Understander',
            'accounted',
            'given',
          ],
          message: 'Dialogue is given what was understood without its words: Understood, Reading.',
        },
      ],
    },
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
  { files: ['src/dialogue/**/*.ts'], rules: noWords },
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
