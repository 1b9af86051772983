/** Bare answers: which rules of `main.gram` fit what the conversation waits for. */
import type { Grammar } from '../grammar/index.js';
import type { Expectation, Intent } from './intents.js';

/** Public rules tried beside `$act`, each with the intent its reading stands for. */
const expectedRules: Readonly<Record<Expectation, readonly string[]>> = {
  anything: [],
  'yes-no': [],
  allergen: [],
  'outage-state': ['expect_state'],
  outage: ['expect_state'],
  item: ['expect_item'],
  place: ['expect_place'],
  amount: ['expect_amount'],
  date: ['expect_date'],
  marker: ['expect_marker'],
  person: ['expect_person'],
  choice: [],
  words: ['expect_words'],
  name: ['expect_words'],
  step: [],
  method: ['expect_method'],
  time: ['expect_time'],
  spelling: ['expect_spelling'],
  code: ['expect_code'],
  'count-answer': ['expect_count'],
  wholes: [],
  eaters: [],
  manner: [],
  detail: ['expect_place', 'expect_date', 'expect_tubs'],
  'day-or-hour': ['expect_date', 'expect_time'],
  length: ['expect_length'],
};

/** Those of them that the language has: one that came later hears the rest all the same. */
export const rulesExpected = (
  expecting: Expectation,
  { publicRules }: Pick<Grammar, 'publicRules'>,
): readonly string[] => expectedRules[expecting].filter((rule) => publicRules.includes(rule));

const steering: readonly Intent[] = [
  'next',
  'back',
  'repeat',
  'start-over',
  'skip-to',
  'steps-left',
  'wait',
  'stop',
  'continue',
];

/** Intents that answer the open question: they are likelier than their words alone say. */
export const answering: Readonly<Record<Expectation, ReadonlySet<Intent>>> = {
  anything: new Set(),
  'yes-no': new Set<Intent>(['yes', 'no', 'maybe', 'cancel']),
  allergen: new Set<Intent>(['answer', 'choose', 'yes', 'no', 'maybe']),
  'outage-state': new Set<Intent>(['yes', 'no', 'maybe', 'cancel', 'answer']),
  outage: new Set(),
  item: new Set<Intent>(['answer', 'choose']),
  place: new Set<Intent>(['answer']),
  amount: new Set<Intent>(['answer']),
  date: new Set<Intent>(['answer']),
  marker: new Set<Intent>(['answer', 'choose']),
  person: new Set<Intent>(['answer']),
  choice: new Set<Intent>(['choose', 'yes', 'no']),
  // Any words may answer; those that steer the talk steer it.
  words: new Set<Intent>(['answer', ...steering]),
  name: new Set<Intent>(['answer', ...steering]),
  step: new Set<Intent>([...steering, 'done']),
  method: new Set<Intent>(['answer']),
  time: new Set<Intent>(['answer']),
  spelling: new Set<Intent>(['answer']),
  code: new Set<Intent>(['answer']),
  'count-answer': new Set<Intent>(['answer', 'yes', 'no', 'next']),
  wholes: new Set(),
  eaters: new Set(),
  manner: new Set(),
  detail: new Set(),
  'day-or-hour': new Set(),
  length: new Set(),
};
