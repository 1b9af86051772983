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
  /** Before what something stands by, which keeps nothing for that. */
  readonly beside: PhraseTable<true>;
}
const spoken = (of: Readonly<Record<string, readonly string[]>>): readonly (readonly [string, string])[] =>
  Object.entries(of).flatMap(([kept, ways]) => ways.map((way) => [way, kept] as const));
const tables = new WeakMap<Lexicon, PlaceWords>();
export const placesOf = (lexicon: Lexicon): PlaceWords => {
  let table = tables.get(lexicon);
  if (!table) {
    const { kinds, plurals, wholes, qualifiers, articles, beside } = lexicon.places;
    table = {
      kinds: phraseTable([...spoken(kinds), ...spoken(plurals)]),
      wholes: new Set(wholes),
      qualifiers: phraseSet(qualifiers),
      articles: new Set(articles),
      beside: phraseSet(beside),
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
  /** "The", so that it may be one that was told before. */
  readonly definite?: boolean;
}

/** "Two freezers": the first and the second of them. */
const asMany = (draft: Draft, count: number): Draft[] =>
  count < 2
    ? [draft]
    : ['first', 'second', 'third', 'fourth']
        .slice(0, count)
        .map((which) => ({ ...draft, name: `${which} ${draft.kind}`, parts: [] }));

/** How far what something stands by reaches from `at`: "by the back door", "over the worktop"; null for none. */
const landmarkAt = (
  tokens: readonly string[],
  at: number,
  words: FirstDayWords,
  { kinds, articles, beside }: PlaceWords,
): number | null => {
  const near = beside.longestAt(tokens, at);
  if (!near) return null;
  let next = at + near.length;
  if (!articles.has(tokens[next] ?? '') || tokens[next] === 'a') return null;
  next += 1;
  for (const last = next + 2; next <= last; next += 1) {
    const kind = kinds.longestAt(tokens, next);
    if (kind) return next + kind.length - at;
    if (words.and.longestAt(tokens, next)) return null;
  }
  return null;
};

/** "A fridge freezer" is both in one. */
const bothInOne = (of: string, next: string | undefined): next is string =>
  of === 'fridge' && next === 'freezer';

/** "The chest freezer … a chest freezer in the garage" is one; of two that are called alike, one is the second. */
const toldApart = (found: readonly Draft[]): readonly SaidWhole[] => {
  const apart: SaidWhole[] = [];
  for (const [at, { definite, ...one }] of found.entries()) {
    const more = found.filter((other, n) => n !== at && !other.none && other.kind === one.kind);
    const sameAgain =
      !one.none &&
      ((definite && one.name.includes(' ') && more.some(({ name }) => name.endsWith(` ${one.name}`))) ||
        (definite && apart.some(({ name }) => name === one.name)));
    if (sameAgain) continue;
    const called = apart.some(({ name, none }) => name === one.name && !none);
    apart.push(called ? { ...one, name: `second ${one.name}` } : one);
  }
  return apart;
};

export const wholesIn = (
  tokens: readonly string[],
  words: FirstDayWords,
  lexicon: Lexicon,
): readonly SaidWhole[] => {
  const places = placesOf(lexicon);
  const { kinds, wholes, qualifiers, articles } = places;
  const found: Draft[] = [];
  let denied = false;
  let count = 1;
  let said: string[] = [];
  let definite = false;
  for (let at = 0; at < tokens.length;) {
    const none = words.none.longestAt(tokens, at);
    const kind = kinds.longestAt(tokens, at);
    const number = cardinalAt(tokens, at, lexicon);
    const store = words.inside.longestAt(tokens, at);
    const where = store ? words.stores.longestAt(tokens, at + store.length) : null;
    const another = words.another.longestAt(tokens, at);
    const last = found.filter(({ none: absent }) => !absent).at(-1);
    const landmark = landmarkAt(tokens, at, words, places);
    const several = words.counts.longestAt(tokens, at);
    if (where && last && store) {
      // "A freezer in the garage" is the garage freezer.
      if (!last.name.startsWith(where.value)) last.name = `${where.value} ${last.name}`;
      at += store.length + where.length;
    } else if (landmark !== null) {
      at += landmark;
    } else if (several) {
      count = Number(several.value);
      said = [];
      at += several.length;
    } else if (kind) {
      const noun = tokens.slice(at, at + kind.length).join(' ');
      // "One of those little freezers".
      const plural = lexicon.places.plurals[kind.value]?.includes(noun) === true;
      const singular = count > 1 || plural ? kind.value : noun;
      // "Fridge freezer": the one before the other is what kind it is.
      const next = kinds.longestAt(tokens, at + kind.length);
      if (bothInOne(kind.value, next?.value) && !found.some((known) => known.kind === kind.value)) {
        found.push({ name: noun, kind: kind.value, parts: [], ...(denied ? { none: true } : {}) });
        said = [];
      } else if (next && wholes.has(next.value) && wholes.has(kind.value)) said.push(noun);
      else if (wholes.has(kind.value)) {
        if (denied) found.push({ name: noun, kind: kind.value, parts: [], none: true });
        else {
          const telling = said.filter((word) => !words.sizes.has(word));
          const rival = found.some((one) => one.kind === kind.value);
          const name = [...(rival ? said : telling), singular].join(' ');
          found.push(...asMany({ name, kind: kind.value, parts: [], definite }, count));
          definite = false;
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
      said = [];
      at += number.length;
    } else {
      // "Right, a larder" is no right larder.
      const side = at > 0 && articles.has(tokens[at - 1]!) ? words.sides.longestAt(tokens, at) : null;
      const qualifier = qualifiers.longestAt(tokens, at) ?? side;
      if (qualifier) said.push(tokens.slice(at, at + qualifier.length).join(' '));
      else if (articles.has(tokens[at]!) || tokens[at] === 'an') {
        said = [];
        count = 1;
        definite = tokens[at] !== 'a' && tokens[at] !== 'an';
      } else if (!words.sizes.has(tokens[at]!)) {
        said = [];
        if (words.and.longestAt(tokens, at)) denied = false;
      }
      at += qualifier?.length ?? 1;
    }
  }
  return toldApart(found);
};
