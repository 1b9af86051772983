/** What a poor recogniser makes of the kitchen's sentences never loses anything that was not said. */
import { expect, test } from 'vitest';
import { decide, startConversation } from '../../src/dialogue/index.js';
import { demoKitchen } from '../../src/kitchen/index.js';
import type { Change } from '../../src/kitchen/model.js';
import { projectFile } from '../../src/project-files.js';
import { createUnderstander, given, type Hypothesis } from '../../src/understanding/index.js';
import { annotated, saidPlainly } from '../accuracy/cases.js';
import { readConfusions } from '../accuracy/corrupt.js';
import { misheardCases } from '../accuracy/misheard.js';
import { clock, hearing, martasNames } from '../understanding/household.js';

const data = (...parts: string[]): string => projectFile('tests', 'data', ...parts);
const table = readConfusions(data('asr', 'word-pairs.tsv'));
const sentences = [
  ...annotated(data('kitchen', 'gold.jsonl')),
  ...saidPlainly(data('asr', 'meanings.jsonl')),
].filter((_, at) => at % 2 === 0);

const understander = createUnderstander('en-US');
const names = martasNames();
const kitchen = demoKitchen(clock);

/** Records that are no more: taken away, or food that is used up. */
const lostBy = ({ ops }: Change): string[] =>
  ops.filter((op) => op.before !== null && (op.after === null || isGone(op.after))).map(({ id }) => id);
const isGone = (record: object): boolean => 'gone' in record && record.gone !== null;

const lost = (hypotheses: readonly Hypothesis[]): string[] => {
  let ids = 0;
  const heard = understander.understand(hypotheses, names, hearing());
  const understanding = given(heard, hypotheses[0]?.text ?? '', names, hearing());
  const { changes } = decide(
    startConversation(),
    { understanding, touched: null, cutAt: null },
    {
      kitchen,
      journal: [],
      clock,
      speaker: { personId: 'person.marta', deviceId: 'd' },
      newId: () => `new-${(ids += 1)}`,
    },
  );
  return changes.flatMap(lostBy);
};

test.each([
  [0.1, 1],
  [0.16, 1],
  [0.16, 5],
  [0.25, 1],
  [0.25, 5],
])('at a word error of %d, %d guesses', (rate, guesses) => {
  const wrongly = misheardCases(sentences, rate, guesses, table).flatMap(({ said, hypotheses }) => {
    const rightly = lost([{ text: said }]);
    const wrong = lost(hypotheses).filter((id) => !rightly.includes(id));
    return wrong.length > 0 ? [{ said, heard: hypotheses.map(({ text }) => text), wrong }] : [];
  });
  expect(wrongly).toEqual([]);
});

test('what is said plainly does lose what it names', () => {
  expect(lost([{ text: 'i finished the hummus' }])).toEqual(['item.hummus']);
});
