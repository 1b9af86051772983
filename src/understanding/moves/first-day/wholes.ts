/** What keeps food: places by their known kinds, and how each is divided. */
import type { SaidWhole } from '../../../protocol/first-day.js';
import { cardinalAt } from '../../numbers/cardinals.js';
import type { Lexicon } from '../../words/lexicon.js';
import { phraseSet, phraseTable, type PhraseTable } from '../../words/phrases.js';
import type { FirstDayWords } from './words.js';

interface PlaceWords {
  readonly kinds: PhraseTable<string>;
  readonly wholes: ReadonlySet<string>;
  readonly qualifiers: PhraseTable<true>;
  readonly articles: ReadonlySet<string>;
}
const spoken = (of: Readonly<Record<string, readonly string[]>>): readonly (readonly [string, string])[] =>
  Object.entries(of).flatMap(([kept, ways]) => ways.map((way) => [way, kept] as const));
const tables = new WeakMap<Lexicon, PlaceWords>();
export const placesOf = (lexicon: Lexicon): PlaceWords => {
  let table = tables.get(lexicon);
  if (!table) {
    const { kinds, plurals, wholes, qualifiers, articles } = lexicon.places;
    table = {
      kinds: phraseTable([...spoken(kinds), ...spoken(plurals)]),
      wholes: new Set(wholes),
      qualifiers: phraseSet(qualifiers),
      articles: new Set(articles),
    };
    tables.set(lexicon, table);
  }
  return table;
};

interface Draft {
  name: string;
  readonly kind: string;
  readonly parts: { kind: string; count: number }[];
  readonly none?: true;
}

/** "Two freezers": the first and the second of them. */
const asMany = (draft: Draft, count: number): Draft[] =>
  count < 2
    ? [draft]
    : ['first', 'second', 'third', 'fourth']
        .slice(0, count)
        .map((which) => ({ ...draft, name: `${which} ${draft.kind}`, parts: [] }));

export const wholesIn = (
  tokens: readonly string[],
  words: FirstDayWords,
  lexicon: Lexicon,
): readonly SaidWhole[] => {
  const { kinds, wholes, qualifiers, articles } = placesOf(lexicon);
  const found: Draft[] = [];
  let denied = false;
  let count = 1;
  let one = false;
  let said: string[] = [];
  for (let at = 0; at < tokens.length;) {
    const none = words.none.longestAt(tokens, at);
    const kind = kinds.longestAt(tokens, at);
    const number = cardinalAt(tokens, at, lexicon);
    const store = words.inside.longestAt(tokens, at);
    const where = store ? words.stores.longestAt(tokens, at + store.length) : null;
    const another = words.another.longestAt(tokens, at);
    const last = found.filter(({ none: absent }) => !absent).at(-1);
    if (where && last && store) {
      // "A freezer in the garage" is the garage freezer.
      if (!last.name.startsWith(where.value)) last.name = `${where.value} ${last.name}`;
      at += store.length + where.length;
    } else if (kind) {
      const noun = tokens.slice(at, at + kind.length).join(' ');
      // "One of those little freezers".
      const plural = lexicon.places.plurals[kind.value]?.includes(noun) === true;
      const singular = count > 1 || (one && plural) ? kind.value : noun;
      // "Fridge freezer": the one before the other is what kind it is.
      const next = kinds.longestAt(tokens, at + kind.length);
      if (next && wholes.has(next.value) && wholes.has(kind.value)) said.push(noun);
      else if (wholes.has(kind.value)) {
        if (denied) found.push({ name: noun, kind: kind.value, parts: [], none: true });
        else {
          const telling = said.filter((word) => !words.sizes.has(word));
          const rival = found.some((one) => one.kind === kind.value);
          const name = [...(rival ? said : telling), singular].join(' ');
          const called = found.some((one) => one.name === name) ? `second ${name}` : name;
          found.push(...asMany({ name: called, kind: kind.value, parts: [] }, count));
        }
        said = [];
        count = 1;
        denied = false;
      } else if (last && !denied) {
        const there = last.parts.find((part) => part.kind === kind.value);
        if (there) there.count += count;
        else last.parts.push({ kind: kind.value, count });
        said = [];
        count = 1;
      }
      at += kind.length;
    } else if (none) {
      denied = true;
      at += none.length;
    } else if (another) {
      said = ['second'];
      at += another.length;
    } else if (number && Number.isInteger(number.value) && number.value > 0 && number.value <= 30) {
      count = number.value;
      one = count === 1;
      said = [];
      at += number.length;
    } else {
      const qualifier = qualifiers.longestAt(tokens, at);
      if (qualifier) said.push(tokens.slice(at, at + qualifier.length).join(' '));
      else if (articles.has(tokens[at]!) || tokens[at] === 'an') {
        said = [];
        count = 1;
      } else if (!words.sizes.has(tokens[at]!)) {
        said = [];
        if (words.and.longestAt(tokens, at)) denied = false;
      }
      at += qualifier?.length ?? 1;
    }
  }
  return found;
};
