/** The pieces of talk of the list: its own words, what is on it by name, and what measures and names anything. */
import type { DynamicRules } from '../../../../grammar/api.js';
import { asAmount } from '../../../meaning-parts.js';
import { emptyMention, type ListAtHand } from '../../../intents.js';
import type { Offer } from '../../api.js';
import { cheapestCover, constituentsAt, openNamesAt } from '../../chunks.js';
import { movesLexicon } from '../../lexicon.js';
import type { Bit } from '../bits.js';
import { is } from '../bits.js';
import type { RequestWords } from '../lexicon.js';
import { wordsOfMatter } from './words.js';

/** What is said around any request: it says nothing of the list. */
const idle = ['fill', 'aside', 'opener', 'lasting'] as const;
const costs = { word: 0.1, around: 0.12, line: 0.1, amount: 0.18, unknown: 1.4 } as const;

const stem = (word: string): string => word.replace(/'s?$/u, '').replace(/(?<=..)e?s$/u, '');
const stemsOf = (name: string): readonly string[] =>
  name
    .toLowerCase()
    .split(/[^\p{L}\p{N}']+/u)
    .filter((word) => word !== '')
    .map(stem);

/** By its whole name, or by the end of it: "the salsa" of green salsa. */
export const isLine = (words: string, { lines }: ListAtHand): boolean => {
  const said = stemsOf(words);
  return (
    said.length > 0 && lines.some((line) => stemsOf(line).slice(-said.length).join(' ') === said.join(' '))
  );
};

/** "What fruit do we need": a heading of the list, in one of it or in several. */
export const isSection = (words: string, { sections }: ListAtHand): boolean => {
  const said = stemsOf(words).join(' ');
  return said !== '' && sections.some((section) => stemsOf(section).join(' ') === said);
};

const linesAt = (tokens: readonly string[], from: number, list: ListAtHand): readonly Offer<Bit>[] => {
  const offers: Offer<Bit>[] = [];
  for (let to = from + 1; to <= tokens.length && to - from <= longestName; to += 1) {
    const words = tokens.slice(from, to).join(' ');
    if (isLine(words, list) || isSection(words, list))
      offers.push({
        chunk: { kind: 'thing', from, to, mention: { ...emptyMention, words }, fit: 1, source: 'goods' },
        cost: costs.line,
      });
  }
  return offers;
};
const longestName = 5;

/** "Another jar", "two more bottles": the words between the figure and the unit say that there are some. */
const moreAt = (
  tokens: readonly string[],
  from: number,
  rules: DynamicRules,
  words: RequestWords,
  one: string | null,
): readonly Offer<Bit>[] => {
  const amountOf = (said: readonly string[]) => rules.get('builtin:grammar/amount')?.matchesAt(said, 0) ?? [];
  const lead = words.allAt(tokens, from).filter(({ value }) => value.has('more'));
  const another = one
    ? lead.flatMap(({ length }) =>
        amountOf([one, ...tokens.slice(from + length, from + length + 3)]).map(({ length: all, value }) => ({
          to: from + length + all - 1,
          value,
        })),
      )
    : [];
  const counted = (rules.get('builtin:grammar/number')?.matchesAt(tokens, from) ?? []).flatMap(
    ({ length }) => {
      const at = from + length;
      return words
        .allAt(tokens, at)
        .filter(({ value }) => value.has('more'))
        .flatMap(({ length: more }) =>
          amountOf([...tokens.slice(from, at), ...tokens.slice(at + more, at + more + 3)]).map(
            ({ length: all, value }) => ({ to: all > length ? at + more + all - length : at + more, value }),
          ),
        );
    },
  );
  return [...another, ...counted].map(({ to, value }) => ({
    chunk: { kind: 'amount', from, to, amount: asAmount(value), more: true },
    cost: costs.amount,
  }));
};

/** "One is enough", "make it one": a figure, and no pronoun. */
const oneAt = (
  tokens: readonly string[],
  from: number,
  words: RequestWords,
  one: string | null,
): readonly Offer<Bit>[] => {
  if (one === null || tokens[from] !== one) return [];
  const after = words.allAt(tokens, from + 1).some(({ value }) => value.has('enough') || value.has('of-the'));
  const before = [1, 2, 3].some((back) =>
    words
      .allAt(tokens, from - back)
      .some(
        ({ length, value }) =>
          length === back && ['make', 'only', 'only-got'].some((name) => value.has(name)),
      ),
  );
  return after || before
    ? [{ chunk: { kind: 'number', from, to: from + 1, value: 1 }, cost: costs.line / 2 }]
    : [];
};

export const listBitsOf = (
  tokens: readonly string[],
  pauses: ReadonlySet<number>,
  rules: DynamicRules,
  language: string,
  requests: RequestWords,
  list: ListAtHand,
): readonly Bit[] | null => {
  const own = wordsOfMatter(language, 'list');
  const lexicon = movesLexicon(language);
  if (!own || !lexicon) return null;
  const wordsAt = (from: number): readonly Offer<Bit>[] => {
    const classes = new Map<number, Set<string>>();
    for (const { length, value } of own.allAt(tokens, from)) classes.set(length, new Set(value));
    const around = [...requests.allAt(tokens, from), ...lexicon.phrases.allAt(tokens, from)];
    for (const { length, value } of around)
      for (const name of idle)
        if (value.has(name)) classes.set(length, new Set([...(classes.get(length) ?? []), name]));
    return [...classes].map(([length, all]) => ({
      chunk: { kind: 'word', from, to: from + length, classes: all },
      cost: all.size === 1 && all.has('fill') ? costs.around : costs.word,
    }));
  };
  // A pause parts names: "milk, eggs", "the lemons: unwaxed".
  const unparted = ({ chunk: { from, to } }: Offer<Bit>): boolean =>
    [...pauses].every((at) => at <= from || at >= to);
  return cheapestCover<Bit>(tokens.length, (from) => [
    { chunk: { kind: 'unknown', from, to: from + 1, word: tokens[from]! }, cost: costs.unknown },
    ...wordsAt(from),
    ...[
      ...oneAt(tokens, from, own, lexicon.one),
      ...linesAt(tokens, from, list),
      ...moreAt(tokens, from, rules, own, lexicon.one),
      ...constituentsAt(tokens, from, rules),
      ...openNamesAt(tokens, from, rules, language),
    ].filter(unparted),
  ]).pieces;
};

/** Says nothing, or only how the sentence is built. */
export const isIdle = (bit: Bit | undefined): boolean => is(bit, ...idle, 'else-on', 'prep', 'and', 'is');
