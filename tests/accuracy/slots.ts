/** Are the slots right? Expected ones are written as plain words and numbers. */
import type { Act, Mention, PlaceMention, SaidDate } from '../../src/understanding/index.js';

const tidy = (words: string): string =>
  words
    .toLowerCase()
    .replace(/^(the|a|an|my|some) /, '')
    .replace(/[^\p{L}\p{N}' ]/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();

const mention = (said: Mention | undefined): string => said?.words ?? said?.pointer ?? '';

/** Names of records, by id: words half heard are right when the record is. */
export type NameOf = (id: string) => string | undefined;
const place = (said: PlaceMention | undefined): string => said?.words ?? said?.pointer ?? said?.spot ?? '';
const day = (said: SaidDate | 'unknown' | undefined): string =>
  said === undefined || said === 'unknown' ? (said ?? '') : said.day;

const actual = ({ slots }: Act, slot: string): string | number | readonly string[] | boolean | undefined => {
  switch (slot) {
    case 'item':
      return mention(slots.item ?? slots.items?.[0]);
    case 'items':
      return (slots.items ?? (slots.item ? [slots.item] : [])).map(mention);
    case 'marker':
      // What a marker is on comes along in its words: "this one with the glass bead".
      return mention(slots.marker)
        .replace(/^.*\bwith the /, '')
        .replace(/ on it$/, '');
    case 'place':
      return place(slots.place ?? slots.item?.at ?? undefined);
    case 'from':
      return place(slots.from);
    case 'amount':
      return slots.amount ? `${slots.amount.value} ${slots.amount.unit}` : undefined;
    case 'left':
      return slots.left && 'fraction' in slots.left ? slots.left.fraction : slots.left?.value;
    case 'share':
      return slots.share?.fraction;
    case 'person':
      return slots.person?.words;
    case 'maker':
      return slots.maker ?? slots.item?.maker ?? undefined;
    case 'diet':
      return slots.diet ?? slots.item?.diet ?? undefined;
    case 'when':
      return day(slots.when);
    case 'made':
    case 'bought':
    case 'opened':
    case 'frozen':
    case 'bestBefore':
    case 'useBy':
      return day(slots.dates?.[slot]);
    default:
      return (slots as Record<string, string | number | boolean | undefined>)[slot];
  }
};

const same = (expected: unknown, got: unknown): boolean => {
  if (Array.isArray(expected))
    return (
      Array.isArray(got) &&
      expected.length === got.length &&
      expected.every((part, at) => same(part, got[at]))
    );
  if (typeof expected === 'number') return typeof got === 'number' && Math.abs(expected - got) < 0.01;
  if (typeof expected === 'string') return typeof got === 'string' && tidy(expected) === tidy(got);
  return expected === got;
};

/** "salsa" means the record "tomato salsa". */
const wordsWithin = (words: string, name: string | undefined): boolean => {
  const named = new Set(tidy(name ?? '').split(' '));
  return tidy(words)
    .split(' ')
    .every((word) => named.has(word));
};

/** Names of the expected slots that are missing or wrong in `acts`. */
export const wrongSlots = (
  expected: Readonly<Record<string, unknown>>,
  acts: readonly Act[],
  nameOf: NameOf = () => undefined,
): readonly string[] =>
  Object.entries(expected)
    .filter(([slot, value]) => {
      if (slot === 'items' && acts.length > 1)
        return !same(
          value,
          acts.map(({ slots }) => mention(slots.item)),
        );
      const meant = (act: Act): string | undefined => {
        const record = slot === 'item' ? act.slots.item?.candidates[0]?.id : undefined;
        return record === undefined ? undefined : nameOf(record);
      };
      return !acts.some(
        (act) =>
          same(value, actual(act, slot)) || (typeof value === 'string' && wordsWithin(value, meant(act))),
      );
    })
    .map(([slot]) => slot);
