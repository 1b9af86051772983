/** "A fridge with four shelves and a door, a chest freezer and a pantry": all of it in one answer. */
import { applyChange, buildPlaces, isRefused, joinChanges } from '../../kitchen/index.js';
import type { Change, PlaceKind } from '../../kitchen/model.js';
import { type Reply, type Turn, list, say } from '../handler.js';
import { buildWhole } from '../places/places.js';

const kindOf = (name: string): PlaceKind =>
  /freez|ice ?box/.test(name)
    ? 'freezer'
    : /fridge|refrigerator/.test(name)
      ? 'fridge'
      : /pantry|larder/.test(name)
        ? 'pantry'
        : /counter|table|worktop/.test(name)
          ? 'counter'
          : 'cupboard';

const isPlace =
  /fridge|freez|pantry|larder|cupboard|cabinet|counter|box|cellar|shel|refrigerator|cooler|drawer|rack/i;

const counts = ['a', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve']; // prettier-ignore
const partKinds: readonly (readonly [RegExp, PlaceKind])[] = [
  [/^(shelf|shelves|racks?)$/, 'shelf'],
  [/^drawers?$/, 'drawer'],
  [/^(baskets?|bins?)$/, 'basket'],
  [/^doors?$/, 'door'],
];

interface Part {
  readonly kind: PlaceKind;
  readonly count: number;
}

/** "four shelves"; null for what is no part of a place. */
const partIn = (words: string): Part | null => {
  const [, said = 'a', noun = ''] = /^(?:(\w+) )?(\w+)$/.exec(words.trim()) ?? [];
  const kind = partKinds.find(([pattern]) => pattern.test(noun))?.[1];
  const number = /^(an|one)$/.test(said) ? 1 : /^\d+$/.test(said) ? Number(said) : counts.indexOf(said) + 1;
  return kind && number > 0 ? { kind, count: number } : null;
};

/** What tells one fridge from another; any other word before the noun is talk, and part of no name. */
const qualities = new Set(
  `chest upright big bigger large small smaller little tall low second third spare mini old new main other drinks
   beer wine garage basement cellar kitchen utility hall room corner top wall dry spice bread deep store storage
   walk walk-in ice back front outside upstairs downstairs counter under left right cool cold food cake tin
   vegetable fruit medicine glass wire cooling white black steel wooden metal`.split(/\s+/),
);

/** "Oh dear, right, the big chest freezer" is "big chest freezer"; null where no place is named. */
const placeNamed = (words: string): string | null => {
  const said = words.toLowerCase().match(/[\p{L}\d'-]+/gu) ?? [];
  const noun = said.findLastIndex((word) => isPlace.test(word));
  if (noun < 0) return null;
  let first = noun;
  while (first > 0 && qualities.has(said[first - 1]!) && !opensTalk(said, first - 1)) first -= 1;
  return said.slice(first, noun + 1).join(' ');
};

/** "Right, fridge": at the head of what was said it opens the talk; "the right freezer" is a place. */
const opensTalk = (said: readonly string[], at: number): boolean =>
  (said[at] === 'right' || said[at] === 'left') && !/^(the|my|our|a)$/.test(said[at - 1] ?? '');

const wholes = (words: string): { name: string; parts: Part[] }[] => {
  const found: { name: string; parts: Part[] }[] = [];
  for (const piece of words.split(/[,.;!?]|\band\b/)) {
    const [head = '', ...tail] = piece.split(/\b(?:with|that has|which has)\b/);
    const loose = partIn(head);
    const last = found.at(-1);
    if (loose) {
      // "Four shelves" alone are of nothing yet: the next question asks how places are divided.
      if (last) last.parts.push(loose);
      continue;
    }
    const name = placeNamed(head);
    if (name) found.push({ name, parts: tail.flatMap((of) => partIn(of) ?? []) });
  }
  return found;
};

/** Null when no place was named. What is there already is passed over. */
export const buildAll = (turn: Turn, words: string): Reply | null => {
  if (!isPlace.test(words)) return null;
  const changes: Change[] = [];
  const built: ReturnType<typeof say>[] = [];
  let { kitchen } = turn;
  for (const { name, parts } of wholes(words)) {
    const now = { ...turn, kitchen };
    const made =
      parts.length > 0
        ? (buildWhole(now, name, kindOf(name), parts).changes ?? [])
        : [buildPlaces(now, { kind: kindOf(name), parentId: null, names: [name] })].filter(
            (result): result is Change => !isRefused(result),
          );
    if (made.length === 0) continue;
    changes.push(...made);
    const told = parts.map(({ kind, count }) => say('place-part', { kind, count }));
    built.push(
      parts.length > 0 ? say('built-with', { name, parts: list(told) }) : say('place-whole', { name }),
    );
    kitchen = made.reduce(applyChange, kitchen);
  }
  const [first, ...rest] = changes;
  return first
    ? { parts: [say('built', { names: list(built) })], changes: [joinChanges(first, ...rest)] }
    : { parts: [say('setup-not-understood')] };
};
