/**
 * What hearing words costs: tidying, number and date rules at every place of a sentence, and the
 * household's names with 100 to 10,000 items. Processor time, so that a busy machine does not tell.
 */
import { dateRules } from '../../src/understanding/dates/index.js';
import { createHouseholdNames, type HouseholdNames } from '../../src/understanding/names/index.js';
import { numberRules, timeRules } from '../../src/understanding/numbers/index.js';
import { touchRules } from '../../src/understanding/touch/index.js';
import { lexiconFor, normalise } from '../../src/understanding/words/index.js';
import type { DynamicRule } from '../../src/grammar/api.js';
import { names } from './kitchen-words.js';

const say = (line: string): void => void process.stdout.write(`${line}\n`);
const spoken = [
  'I put eight tubs of lentil stew in the chest freezer on the second shelf',
  'where is the lean till stew',
  'the label says best before the ninth of June',
  'how do I reheat the beef soup',
  'what goes bad before the end of May',
  'is there any chicken pie left in the fridge',
];

const processorTime = (): number => {
  const { user, system } = process.cpuUsage();
  return user + system;
};
/** Microseconds of processor a sentence, after warming up. */
const measure = (
  rounds: number,
  run: (sentence: readonly string[]) => void,
  sentences: readonly (readonly string[])[],
): number => {
  for (let round = 0; round < rounds; round += 1) for (const sentence of sentences) run(sentence);
  const start = processorTime();
  for (let round = 0; round < rounds; round += 1) for (const sentence of sentences) run(sentence);
  return (processorTime() - start) / rounds / sentences.length;
};

/** Every rule at every place: more than a grammar asks for. A copy, so that nothing is remembered. */
const everywhere =
  (rules: Iterable<DynamicRule>) =>
  (sentence: readonly string[]): void => {
    const tokens = [...sentence];
    for (const rule of rules)
      for (let from = 0; from < tokens.length; from += 1) rule.matchesAt(tokens, from);
  };

const household = (items: number): HouseholdNames => {
  const filled = createHouseholdNames('en-US');
  names(items).forEach((name, at) => filled.set('item', { id: `item ${at}`, name: name.join(' ') }));
  for (const name of ['Dele', 'Marta', 'Anna']) filled.set('person', { id: name, name });
  filled.set('place', {
    id: 'fridge',
    parentId: null,
    name: 'fridge',
    kind: 'fridge',
    position: null,
    aliases: [],
  });
  ['top', 'second', 'third', 'bottom'].forEach((name, at) =>
    filled.set('place', {
      id: name,
      parentId: 'fridge',
      name: `${name} shelf`,
      kind: 'shelf',
      position: at + 1,
      aliases: [],
    }),
  );
  return filled;
};

export const benchNames = async (): Promise<void> => {
  const lexicon = lexiconFor('en-US');
  const sentences = spoken.map((text) => normalise(text, 'en-US').tokens);
  const clock = { now: '2026-05-13T18:00:00.000Z', timeZone: 'America/Chicago' };
  const tidied = measure(500, (sentence) => void normalise(sentence.join(' '), 'en-US'), sentences);
  say(`tidying: ${tidied.toFixed(0)} µs a sentence`);
  const builtins = [
    ...numberRules(lexicon),
    ...timeRules(lexicon, '15:00'),
    ...touchRules(lexicon),
    ...dateRules(lexicon, clock, 'en-US'),
  ];
  say(
    `number, time, touch and date rules: ${measure(300, everywhere(builtins.map(([, rule]) => rule)), sentences).toFixed(0)} µs a sentence`,
  );
  for (const items of [100, 1000, 10_000]) {
    const start = processorTime();
    const filled = household(items);
    const built = (processorTime() - start) / items;
    const read = measure(200, everywhere([...filled.rules.values()]), sentences);
    say(`names of ${items} items: ${read.toFixed(0)} µs a sentence, ${built.toFixed(0)} µs to add one`);
  }
};
