/** Places: of what was named, of what follows, of a part; one inside the other; the top one, after a shelf. */
import type { DynamicRules } from '../../../grammar/api.js';
import type { Deed, PlaceMention } from '../../intents.js';
import type { ChunkOf } from '../api.js';
import type { WordForms } from '../../languages/index.js';
import { placeLike } from '../chunks.js';
import { type Telling, type Word, implied, is, leave, nextMeaning, odd, use } from './telling.js';

/** How well a place must fit to be taken for one. */
const fits = 0.7;
/** Places that fit this nearly as well are as likely. */
const near = 0.05;

/** One place inside the other, whichever way round they were said: what names the fewest places. */
export const oneInside = (
  a: string,
  b: string,
  rules: DynamicRules,
  { inside }: WordForms,
): PlaceMention | null => {
  const both = [[b, a] as const, [a, b] as const].flatMap(([inner, outer]) => {
    const place = placeLike(inside(inner, outer).split(' '), rules);
    return place && place.candidates.length > 0 ? [place] : [];
  });
  const fitting = ({ candidates }: PlaceMention): number =>
    candidates.filter(({ fit }) => fit >= (candidates[0]?.fit ?? 0) - near).length;
  return both.sort((one, other) => fitting(one) - fitting(other))[0] ?? null;
};

/** "They are all in the pantry, beans on the top shelf": the pantry's. */
const within = (t: Telling, said: PlaceMention, before: PlaceMention | undefined): PlaceMention | null => {
  const [best, next] = said.candidates;
  if (!before?.words || !said.words || !best || !next || next.fit < best.fit - near) return null;
  const joined = oneInside(said.words, before.words, t.rules, t.lexicon.forms);
  return joined && (joined.candidates[0]?.fit ?? 0) >= best.fit - 0.1 ? joined : null;
};

/** Nothing more is named before the next place, or at all. */
const namesNoMore = ({ chunks }: Telling, at: number): boolean => {
  for (let next = at + 1; next < chunks.length; next += 1) {
    const { kind } = chunks[next]!;
    if (kind === 'thing') return false;
    if (kind === 'place') return true;
  }
  return true;
};

/** Deeds that carry something from one place to another. */
const goes: ReadonlySet<Deed | null> = new Set<Deed | null>([
  'moved',
  'bought',
  'took',
  'stored',
  'froze',
  'thawing',
]);

export const setPlace = (t: Telling, said: PlaceMention, moved: boolean, at: number): void => {
  if (t.drafts.length === 0 || (t.style.placesFirst && !t.whole && !namesNoMore(t, at))) {
    t.place = said;
    if (t.drafts.length > 0) {
      t.group = [];
      t.run = [];
    }
    return;
  }
  for (const draft of t.group.length > 0 ? t.group : t.drafts.slice(-1)) {
    // "The rest are still on the counter", after some were moved: as it was.
    if (t.whole && (draft.deed === 'moved' || draft.deed === 'took')) continue;
    if (t.whole && draft.parts.length + (draft.amount ? 1 : 0) > 0)
      draft.parts.push({ amount: null, share: 'rest', place: said });
    else {
      const inner = within(t, said, draft.place);
      // "Three of those in the left bin I brought to the small freezer": from there to here.
      if (draft.place && !inner && !t.repaired && draft.definite && goes.has(draft.deed)) {
        draft.from = draft.place;
        draft.place = said;
        if (draft.deed !== 'froze' && draft.deed !== 'thawing') draft.deed = 'moved';
        continue;
      }
      if (draft.place && !inner && !t.repaired && draft.deed !== 'moved') t.cost += odd.twice;
      draft.place = inner ?? said;
    }
    if (moved) draft.moved = true;
  }
  t.whole = false;
  t.repaired = false;
};

/** "In the left cupboard, third shelf", where that has none yet: a shelf of it, and of no other that has one. */
const newInside = (t: Telling, outer: PlaceMention, inner: PlaceMention): PlaceMention | null => {
  const place = placeLike(t.lexicon.forms.inside(inner.words ?? '', outer.words ?? '').split(' '), t.rules);
  const [whole, part, ...more] = place?.path ?? [];
  return whole?.whole === true && part !== undefined && part.whole !== true && more.length === 0
    ? place
    : null;
};

/** Two places said one after the other are one inside the other: "in the fridge on the top shelf". */
export const placeFrom = (t: Telling, at: number): { place: PlaceMention; to: number } => {
  let said = (t.chunks[at] as ChunkOf<'place'>).place;
  let to = at;
  for (;;) {
    let next = to + 1;
    while (is(t.chunks[next], 'prep', 'in-it', 'of', 'a', 'direction') && !is(t.chunks[next], 'and'))
      next += 1;
    const other = t.chunks[next];
    if (other?.kind !== 'place') break;
    const joined = oneInside(said.words ?? '', other.place.words ?? '', t.rules, t.lexicon.forms);
    const known = joined && (joined.candidates[0]?.fit ?? 0) >= fits ? joined : null;
    const inner = known ?? newInside(t, said, other.place);
    if (!inner) break;
    said = inner;
    to = next;
  }
  return { place: said, to };
};

/** "The two freezers", "each freezer": every place that is meant as well by that name, on its own. */
export const eachOf = ({ candidates }: PlaceMention): readonly PlaceMention[] =>
  candidates
    .filter(({ fit }) => fit >= (candidates[0]?.fit ?? 0) - near)
    .map((one) => ({ words: null, candidates: [one], pointer: null, spot: null }));

/** "Split between the two freezers": in how many places it is, and the last of its words; null: none, or others. */
export const sharedAt = (
  t: Telling,
  at: number,
): { readonly places: readonly PlaceMention[]; readonly to: number } | null => {
  let next = nextMeaning(t, at);
  let many: number | null = null;
  for (let chunk = t.chunks[next]; chunk && chunk.kind !== 'place'; chunk = t.chunks[next]) {
    if (chunk.kind === 'number' && many === null) many = chunk.value;
    else if (chunk.kind === 'amount' && many === null) many = chunk.amount.value;
    else if (chunk.kind === 'pointer' && chunk.mention.pointer === 'both' && many === null) many = 2;
    else if (!is(chunk, 'each', 'definite')) return null;
    next = nextMeaning(t, next);
  }
  const there = t.chunks[next];
  if (there?.kind !== 'place') return null;
  const places = eachOf(there.place);
  return places.length > 1 && (many ?? places.length) === places.length ? { places, to: next } : null;
};

/** "Bottom drawer of the freezer": a drawer. */
export const keepKind = (t: Telling, { words }: PlaceMention): void => {
  if (!words) return;
  const said = words.split(' ');
  const of = said.findIndex((word) =>
    [...(t.lexicon.phrases.longestAt([word], 0)?.value ?? [])].some(
      (name) => name === 'of' || name === 'prep',
    ),
  );
  const end = of > 0 ? of : said.length;
  t.lastKind = said[t.lexicon.forms.headFirst ? 0 : end - 1] ?? t.lastKind;
};

export const takePlace = (t: Telling, at: number, moved: boolean, from: boolean): number => {
  const { place: said, to } = placeFrom(t, at);
  // "Six in the freezer on the second shelf", which has no shelves: of no part, and not of the whole.
  const parted = t.drafts.at(-1)?.parts.length ?? 0;
  if (!from && parted > 0 && !t.whole) {
    for (let step = at; step <= to; step += 1) leave(t, t.chunks[step]!);
    return to;
  }
  for (let step = at; step <= to; step += 1) use(t, t.chunks[step]!);
  if (from) for (const draft of implied(t)) draft.from = said;
  else setPlace(t, said, moved, to);
  keepKind(t, said);
  t.inRun = false;
  return to;
};

/** "Two in the fridge", "half of them are on the bottom shelf": a part and where it is. Null: no part. */
export const partAt = (t: Telling, at: number): number | null => {
  const { chunks } = t;
  let next = nextMeaning(t, at);
  let direction = false;
  while (is(chunks[next], 'of', 'is', 'deed:stored', 'i') || chunks[next]?.kind === 'pointer') {
    // "One kilo, all in the pantry": where all of them are.
    if (is(chunks[next], 'each') && t.run.length > 1) return null;
    // "Four I left on the middle shelf".
    if (is(chunks[next], 'i')) direction = true;
    next = nextMeaning(t, next);
  }
  for (;;) {
    const after = nextMeaning(t, next);
    const forPlace = is(chunks[next], 'for') && chunks[after]?.kind === 'place';
    if (forPlace || is(chunks[next], 'prep', 'direction', 'in-it', 'deed:stored')) {
      direction = true;
      // "On the tray on the third shelf": the tray stands there.
      next = chunks[after]?.kind === 'container' ? nextMeaning(t, after) : after;
      // "One for tonight in the fridge": when it will be eaten is between.
    } else if (is(chunks[next], 'for') && chunks[after]?.kind === 'day') next = nextMeaning(t, after);
    else break;
  }
  return direction && chunks[next]?.kind === 'place' ? next : null;
};

/** "The top, no the middle shelf"; "in the middle", "the top one", after a shelf was named. */
export const position = (t: Telling, chunk: Word, at: number): number => {
  const after = t.chunks[at + 1];
  const counts =
    after?.kind === 'number' ? after.value : after?.kind === 'amount' ? after.amount.value : null;
  const one = after && counts === 1 && after.to - after.from === 1 ? after : null;
  const kind = t.lastKind;
  const there = kind
    ? placeLike(t.lexicon.forms.partOf(t.tokens.slice(chunk.from, chunk.to), kind), t.rules)
    : null;
  if (is(after, 'repair')) use(t, chunk);
  else if (there && (there.candidates[0]?.fit ?? 0) >= fits) {
    use(t, chunk);
    if (one) use(t, one);
    const before = t.drafts.findLast(({ place }) => place !== undefined)?.place ?? t.place;
    setPlace(t, within(t, there, before) ?? beside(t, there, before) ?? there, false, at);
    t.inRun = false;
    return one ? at + 1 : at;
  } else if (is(chunk, 'fill')) use(t, chunk);
  else leave(t, chunk);
  return at;
};

/** "The top one", of the drawers of the freezer that was just spoken of: what lies beside it there. */
const beside = (t: Telling, said: PlaceMention, before: PlaceMention | undefined): PlaceMention | null => {
  const { outerOf, inside } = t.lexicon.forms;
  const outer = outerOf(before?.words ?? '');
  if (outer === '' || !said.words) return null;
  const there = placeLike(inside(said.words, outer).split(' '), t.rules);
  return there && (there.candidates[0]?.fit ?? 0) >= fits ? there : null;
};
