/** Amounts and shares: of what follows, of what was named, of a part of it, in place of a slip. */
import type { Amount } from '../../../terms/amount.js';
import { pointed as pointedAt } from '../../meaning-parts.js';
import type { Chunk, ChunkOf } from '../api.js';
import { eachOf, keepKind, partAt, placeFrom } from './places.js';
import {
  type Telling,
  applyDeed,
  begin,
  is,
  lastOf,
  leave,
  leaves,
  nextMeaning,
  odd,
  sameThing,
  use,
  weak,
} from './telling.js';

/** Mends the last amount; the unit stays where none is said. */
const mend = (t: Telling, said: Amount, names: boolean): void => {
  const before = t.amount ?? (t.drafts.length > 0 ? lastOf(t).amount : undefined);
  const mended = { ...said, unit: said.unit === 'piece' ? (before?.unit ?? 'piece') : said.unit };
  t.repaired = false;
  if (t.amount || t.drafts.length === 0 || names) t.amount = mended;
  else lastOf(t).amount = mended;
};

const endsOrdinal = ({ rules, tokens }: Telling, { from, to }: Chunk): boolean =>
  [from, from + 1].some((at) =>
    rules
      .get('builtin:grammar/ordinal')
      ?.matchesAt(tokens, at)
      .some(({ length }) => at + length === to),
  );

/** "The cooked one", "the plum one" count nothing. */
const isPronoun = (t: Telling, chunk: Chunk, at: number, value: number): boolean => {
  const before = t.chunks[at - 1];
  return (
    value === 1 &&
    chunk.to - chunk.from === 1 &&
    t.tokens[chunk.from] === 'one' &&
    (is(before, 'a', 'position') ||
      // "The second one" may be heard as a day of the month.
      (before?.kind === 'day' && endsOrdinal(t, before)) ||
      (before?.kind === 'thing' && is(t.chunks[at - 2], 'a')))
  );
};

export const takeAmount = (t: Telling, chunk: ChunkOf<'amount'> | ChunkOf<'number'>, at: number): number => {
  const { chunks } = t;
  use(t, chunk);
  // "A box of a dozen eggs": what they are in, and how many.
  const inner = chunks[nextMeaning(t, at + 1)];
  if (is(chunks[at + 1], 'of') && (inner?.kind === 'amount' || inner?.kind === 'number')) {
    use(t, chunks[at + 1]!);
    return at + 1;
  }
  const said: Amount = chunk.kind === 'amount' ? chunk.amount : { value: chunk.value, unit: 'piece' };
  // "Four more tubs": none of those that are here.
  if (
    t.tokens
      .slice(chunk.from, chunk.to)
      .some((word) => t.lexicon.phrases.longestAt([word], 0)?.value.has('more'))
  )
    t.fresh = true;
  // "Six portions, half in the garage": of those, and no half portion.
  const several = (t.drafts.at(-1)?.amount?.value ?? 0) > 1 && said.unit === 'piece';
  const fraction = (t.whole || several) && said.value < 1 ? said.value : null;
  // "Used two portions of the soup, one left": what there is now.
  const remains = chunks[at + 1];
  if (remains && is(remains, 'remain') && t.drafts.length > 0 && chunks[at + 2]?.kind !== 'place') {
    use(t, remains);
    const draft = lastOf(t);
    draft.left = said;
    if (draft.deed !== null && weak.has(draft.deed)) draft.deed = null;
    t.inRun = false;
    return at + 1;
  }
  let next = at + 1;
  while (is(chunks[next], 'of', 'a', 'fill')) next += 1;
  const names = chunks[next]?.kind === 'thing';
  if (t.repaired) {
    const named = chunks[next];
    // "A waffle, two, no, three waffles": still those.
    const again = named?.kind === 'thing' && sameThing(named.mention, t.drafts.at(-1)?.thing ?? null);
    mend(t, said, names && !again);
    return at;
  }
  if (isPronoun(t, chunk, at, said.value)) {
    leave(t, chunk);
    return at;
  }
  const there = t.drafts.length > 0 ? partAt(t, at) : null;
  if (there !== null && !names) return partOf(t, at, there, said, fraction);
  const gloss = is(chunks[at - 1], 'so') || (is(chunks[at - 1], 'fill') && is(chunks[at - 2], 'so'));
  if (gloss && t.drafts.length > 0 && (lastOf(t).share || lastOf(t).amount)) return at;
  // "And ten where they were": the others, after some went elsewhere.
  const stayed = chunks[next];
  if (stayed && is(stayed, 'same-place') && t.drafts.length > 0 && lastOf(t).place) {
    use(t, stayed);
    return next;
  }
  const ofBefore = t.style.amountsAfter && t.inRun && !is(chunks[at + 1], 'of');
  // "Four of them", "a big tub of it": of what was named.
  const ofIt = is(chunks[at + 1], 'of') && chunks[at + 2]?.kind === 'pointer' && t.drafts.length > 0;
  if (ofIt) {
    use(t, chunks[at + 1]!);
    use(t, chunks[at + 2]!);
    setAmount(t, said, chunk);
    // "The feta, I used two ounces of it".
    if (t.deed) for (const draft of t.group) applyDeed(t, draft, t.deed);
    t.deed = null;
    return at + 2;
  }
  const pointed = chunks[next]?.kind === 'pointer' && (is(chunks[at + 1], 'of') || t.drafts.length === 0);
  if ((names || pointed) && !ofBefore) {
    if (chunk.kind === 'amount' && chunk.touch) t.container = chunk.touch;
    t.amount = said;
    return at;
  }
  if (t.drafts.length > 0) {
    setAmount(t, said, chunk);
    doneToIt(t);
  } else {
    t.amount = said;
    // "Move two to the fridge": of what was spoken of.
    if (!chunks.some((one) => one.kind === 'thing')) {
      if (t.deed !== null && !weak.has(t.deed) && chunks.some((one) => one.kind === 'place'))
        t.group = t.run = [begin(t, pointedAt('it'), { definite: true })];
      else lastOf(t).amount = said;
    }
  }
  return at;
};

/** "The salami, I ate half", "waffles, I had three": the deed is of what was named before. */
const doneToIt = (t: Telling): void => {
  if (t.deed === null || weak.has(t.deed)) return;
  const group = t.group.length > 0 ? t.group : [lastOf(t)];
  // "I made a pot of stew, ten tubs": it was said of that already.
  if (group.every(({ deed }) => deed === t.deed)) return;
  for (const draft of group) applyDeed(t, draft, t.deed);
  t.deed = null;
};

/** Of what was named last. */
const setAmount = (t: Telling, said: Amount, chunk: Chunk): void => {
  const draft = t.group.at(-1) ?? lastOf(t);
  if (draft.amount && draft.amount.value !== said.value) t.cost += odd.twice;
  draft.amount = said;
  if (t.remains) leaves(t, draft);
  if (chunk.kind === 'amount' && chunk.touch) draft.container = chunk.touch;
};

const partOf = (t: Telling, at: number, there: number, said: Amount, fraction: number | null): number => {
  const { place: where, to } = placeFrom(t, there);
  for (let step = at; step <= to; step += 1) use(t, t.chunks[step]!);
  const draft = lastOf(t);
  // "Five in each freezer".
  const { phrases } = t.lexicon;
  const ofEach = t.tokens
    .slice(t.chunks[at]!.to, t.chunks[to]!.from)
    .some((word) => phrases.longestAt([word], 0)?.value.has('each'));
  const each = ofEach ? eachOf(where) : [];
  if (each.length > 1) {
    for (const place of each)
      draft.parts.push({ amount: fraction === null ? said : null, share: fraction, place });
  } else if (!draft.place && draft.parts.length === 0 && !draft.amount && !t.whole) {
    draft.amount = said;
    draft.place = where;
  } else draft.parts.push({ amount: fraction === null ? said : null, share: fraction, place: where });
  t.whole = false;
  keepKind(t, where);
  t.inRun = false;
  return to;
};

export const takeShare = (t: Telling, chunk: ChunkOf<'share'>, at: number): number => {
  use(t, chunk);
  const next = nextMeaning(t, at);
  const direct = t.chunks[next]?.kind === 'place' ? next : null;
  const there = t.drafts.length > 0 && lastOf(t).amount ? (partAt(t, at) ?? direct) : null;
  if (there !== null) {
    const { place: where, to } = placeFrom(t, there);
    for (let step = at; step <= to; step += 1) use(t, t.chunks[step]!);
    lastOf(t).parts.push({ amount: null, share: chunk.share.fraction, place: where });
    t.inRun = false;
    return to;
  }
  if (t.drafts.length > 0 && t.chunks[nextMeaning(t, at)]?.kind !== 'thing') {
    lastOf(t).share = chunk.share;
    doneToIt(t);
  } else t.share = chunk.share;
  return at;
};
