/** The number rules that a grammar may refer to. See the table in `../names/api.ts`. */
import type { DynamicMatch, DynamicRule, DynamicRules, SemanticValue } from '../../grammar/api.js';
import { perLexicon, type Lexicon } from '../words/lexicon.js';
import { phraseTable } from '../words/phrases.js';
import { rememberingRule } from '../words/rule.js';
import { amountsAt } from './amounts.js';
import { timesAt, type TimeLean } from './clock-times.js';
import { durationsAt } from './durations.js';
import { degreesAt, wattsAt } from './heat.js';
import { ordinalAt } from './ordinals.js';
import { quantityAt } from './quantities.js';
import { sharesAt } from './shares.js';
import { digitsAt, lettersAt } from './spelling.js';

const one = (length: number, value: SemanticValue, weight?: number): DynamicMatch =>
  weight === undefined ? { length, value } : { length, value, weight };
const oneOrNone = <T extends { length: number }>(
  read: T | null,
  value: (read: T) => SemanticValue,
): DynamicMatch[] => (read ? [one(read.length, value(read))] : []);

type Reader = (tokens: readonly string[], from: number) => readonly DynamicMatch[];

const readers = (lexicon: Lexicon): Record<string, Reader> => {
  const answers = phraseTable<boolean>([
    ...lexicon.numbers.no.map((phrase) => [phrase, false] as const),
    ...lexicon.numbers.yes.map((phrase) => [phrase, true] as const),
  ]);
  return {
    number: (tokens, from) => {
      const read = quantityAt(tokens, from, lexicon);
      return read && !read.article ? [one(read.length, read.value)] : [];
    },
    // A place in a row: no "third" of a cake.
    whole: (tokens, from) => {
      const read = quantityAt(tokens, from, lexicon);
      return read && !read.article && Number.isInteger(read.value) ? [one(read.length, read.value)] : [];
    },
    ordinal: (tokens, from) => oneOrNone(ordinalAt(tokens, from, lexicon), ({ value }) => value),
    amount: (tokens, from) =>
      amountsAt(tokens, from, lexicon).map(({ amount, length, weight }) =>
        one(length, { ...amount }, weight),
      ),
    share: (tokens, from) =>
      sharesAt(tokens, from, lexicon).map(({ share, length }) => one(length, { ...share })),
    duration: (tokens, from) =>
      durationsAt(tokens, from, lexicon).map(({ value, length }) => one(length, value)),
    temperature: (tokens, from) =>
      degreesAt(tokens, from, lexicon).map(({ value, scale, length }) => one(length, { value, scale })),
    watts: (tokens, from) => oneOrNone(wattsAt(tokens, from, lexicon), ({ value }) => value),
    digits: (tokens, from) => oneOrNone(digitsAt(tokens, from, lexicon), ({ text }) => text),
    letters: (tokens, from) => oneOrNone(lettersAt(tokens, from, lexicon), ({ text }) => text),
    boolean: (tokens, from) => answers.allAt(tokens, from).map(({ value, length }) => one(length, value)),
  };
};

/** Number rules, by URI; the same for every household that speaks the language. */
export const numberRules = perLexicon(
  (lexicon): DynamicRules =>
    new Map(
      Object.entries(readers(lexicon)).map(([name, read]): [string, DynamicRule] => [
        `builtin:grammar/${name}`,
        rememberingRule(read),
      ]),
    ),
);

/** Clock time rules. `now` is household wall time, `HH:MM`. */
export const timeRules = (lexicon: Lexicon, now: string): DynamicRules => {
  const rule = (lean: TimeLean): DynamicRule =>
    rememberingRule((tokens, from) =>
      timesAt(tokens, from, lexicon, lean, now).map(({ time, length, weight }) => one(length, time, weight)),
    );
  return new Map([
    ['builtin:grammar/time', rule('future')],
    ['builtin:grammar/time?lean=past', rule('past')],
    ['builtin:grammar/time?lean=evening', rule('evening')],
  ]);
};
