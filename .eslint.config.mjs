import js from '@eslint/js';
import tseslint from 'typescript-eslint';

/** What is past, due or lost is the gate's to say (`src/safety/gate`): no other room reckons it or makes a verdict. */
const byTheGate = [
  {
    selector:
      'BinaryExpression[operator=/^[<>]=?$/]:has(MemberExpression[property.name=/^(useBy|bestBefore)$/])',
    message: 'Whether food is past its date is asked of src/safety.',
  },
  {
    selector:
      "Property[key.name='verdict'][value.value=/^(throw-out|refrigerate-now|last-day|use-soon|past-best-quality|cook-thoroughly)$/]",
    message: 'A verdict on food comes from src/safety, and is made nowhere else.',
  },
];
/** Within the room itself the rules of the tables that decide on food are read by the gate alone. */
const rulesByTheGate = {
  selector:
    "MemberExpression[object.property.name='timeRules'][property.name=/^(leftOut|refreezing|ukUseByFreeze|ukEggs|fridgeAfterFreezing)$/]",
  message: 'Ask src/safety/gate: it alone reads the rules that decide on food.',
};

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

const withMore = (rules, more) => ({
  ...rules,
  'no-restricted-syntax': [...rules['no-restricted-syntax'], ...more],
});

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
  { files: ['src/**/*.{ts,tsx}'], rules: { 'no-restricted-syntax': ['error', ...byTheGate] } },
  {
    files: ['src/**/*.ts'],
    ignores: ['src/cli/**', 'src/server/**', 'src/web/**'],
    rules: withMore(noClock, byTheGate),
  },
  { files: ['src/dialogue/**/*.ts'], rules: withMore(noWords, byTheGate) },
  { files: ['src/safety/**/*.ts'], rules: withMore(noClock, [rulesByTheGate]) },
  { files: ['src/safety/gate/**/*.ts'], rules: noClock },
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
