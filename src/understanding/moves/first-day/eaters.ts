/** Who eats here and what they must not: people by the frame around their names, allergens by what stands before. */
import type { SaidEater } from '../../../protocol/first-day.js';
import type { Reader } from '../../readings.js';
import type { MovesLexicon } from '../lexicon.js';
import { lexiconFor } from '../../words/lexicon.js';
import { placesOf } from './wholes.js';
import type { FirstDayWords } from './words.js';

interface EaterDraft {
  who: SaidEater['who'];
  name: string | null;
  relation: string | null;
  allergens: Set<string>;
  nuts: boolean;
  diets: Set<string>;
  risks: Set<string>;
}

const nobody = (
  who: SaidEater['who'],
  name: string | null = null,
  relation: string | null = null,
): EaterDraft => ({
  who,
  name,
  relation,
  allergens: new Set(),
  nuts: false,
  diets: new Set(),
  risks: new Set(),
});

const capital = (name: string): string => name.replace(/^\p{Ll}/u, (letter) => letter.toUpperCase());

/** A word that may be a name: nothing else is known of it. */
const mayBeName = (
  tokens: readonly string[],
  at: number,
  words: FirstDayWords,
  moves: MovesLexicon,
  { rules, language }: Reader,
): boolean => {
  const word = tokens[at];
  if (word === undefined || word.length < 2 || /\d/.test(word) || words.chatter.has(word)) return false;
  if (words.relations.longestAt(tokens, at) || words.watches.longestAt(tokens, at)) return false;
  if (placesOf(lexiconFor(language)).kinds.longestAt(tokens, at)) return false;
  if (words.risks.longestAt(tokens, at) || words.extra.longestAt(tokens, at)) return false;
  if (moves.allergenOf(word) !== undefined || moves.phrases.longestAt(tokens, at)) return false;
  return ['kitchen:food', 'builtin:grammar/number', 'builtin:grammar/date?lean=future'].every(
    (rule) => !rules.get(rule)?.matchesAt(tokens, at).length,
  );
};

/** The allergen named at a place, and of how many words: the longest name there is. */
const allergenAt = (
  tokens: readonly string[],
  at: number,
  moves: MovesLexicon,
): { value: string; length: number } | null => {
  for (let length = 3; length > 0; length -= 1) {
    if (at + length > tokens.length) continue;
    const value = moves.allergenOf(tokens.slice(at, at + length).join(' '));
    if (value !== undefined) return { value, length };
  }
  return null;
};

const isNuts = (word: string): boolean => word === 'nut' || word === 'nuts';

/** Words between a name and what they are to her. */
const aside: ReadonlySet<string> = new Set(['my', 'our', 'the', 'his', 'her']);

/** Words after "allergic to" that belong to the same list. */
const listed = 4;

export const eatersIn = (
  tokens: readonly string[],
  words: FirstDayWords,
  moves: MovesLexicon,
  reader: Reader,
): readonly SaidEater[] => {
  const found: EaterDraft[] = [];
  const isName = (at: number): boolean => mayBeName(tokens, at, words, moves, reader);
  const named = (name: string, relation: string | null): EaterDraft => {
    const there = found.find((one) => one.name?.toLowerCase() === name.toLowerCase());
    if (there) return there;
    const made = nobody('named', capital(name), relation);
    found.push(made);
    return made;
  };
  const me = (): EaterDraft => {
    const there = found.find(({ who }) => who === 'me');
    if (there) return there;
    const made = nobody('me');
    found.push(made);
    return made;
  };
  let current: EaterDraft | null = null;
  /** Told of whom nobody named in this sentence: of who was named before it. */
  const whom = (): EaterDraft => {
    if (current) return current;
    current = nobody('last');
    found.push(current);
    return current;
  };
  let watching = -listed;
  let lastName = -listed;
  for (let at = 0; at < tokens.length;) {
    const relation = words.relations.longestAt(tokens, at);
    const watch = words.watches.longestAt(tokens, at);
    const extra = words.extra.longestAt(tokens, at);
    const risk = words.risks.longestAt(tokens, at);
    const allergen = allergenAt(tokens, at, moves);
    const diet = moves.phrases.longestAt(tokens, at);
    const isDiet = diet?.value.has('diet') ?? false;
    const self = words.me.longestAt(tokens, at);
    const before = tokens[at - 1];
    if (extra) {
      whom().allergens.add(extra.value);
      at += extra.length;
    } else if (watch && !(self && self.length > watch.length)) {
      watching = at + watch.length;
      at += watch.length;
    } else if (
      allergen &&
      (at - watching <= listed || words.allergicAfter.has(tokens[at + allergen.length] ?? ''))
    ) {
      const eater = whom();
      if (allergen.length === 1 && isNuts(tokens[at]!)) eater.nuts = true;
      else eater.allergens.add(allergen.value);
      watching = at + allergen.length;
      at += allergen.length;
    } else if (isDiet && diet) {
      whom().diets.add(tokens.slice(at, at + diet.length).join(' '));
      at += diet.length;
    } else if (relation) {
      const end = at + relation.length;
      const called = words.called.longestAt(tokens, end);
      const nameAt = end + (called?.length ?? 0);
      if (isName(nameAt)) {
        current = named(tokens[nameAt]!, relation.value);
        at = nameAt + 1;
      } else if (current?.name && lastName === at - 2 && aside.has(before ?? '')) {
        // "Sam, my lodger".
        current.relation = relation.value;
        at = end;
      } else {
        current = named(relation.value, relation.value);
        at = end;
      }
    } else if (risk) {
      whom().risks.add(risk.value);
      at += risk.length;
    } else if (self) {
      current = me();
      at += self.length;
    } else {
      const next = at + 1;
      const joins =
        at === 0 ||
        words.and.longestAt(tokens, at - 1) !== null ||
        (before !== undefined && (words.chatter.has(before) || tokens[at - 2] === 'called'));
      const after =
        next >= tokens.length ||
        words.and.longestAt(tokens, next) !== null ||
        words.watches.longestAt(tokens, next) !== null ||
        words.chatter.has(tokens[next]!) ||
        isName(next);
      if (joins && after && isName(at)) {
        current = named(tokens[at]!, null);
        lastName = at;
      }
      at = next;
    }
  }
  return found.map(({ allergens, diets, risks, ...eater }) => ({
    ...eater,
    allergens: [...allergens],
    diets: [...diets],
    risks: [...risks],
  }));
};
