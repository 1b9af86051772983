/** Amounts and shares: of what follows, of what was named, of a part of it, in place of a slip. */
import type { Amount } from '../../../terms/amount.js';
import { emptyMention } from '../../intents.js';
import { pointed as pointedAt } from '../../meaning-parts.js';
import type { Deed, PlaceMention } from '../../intents.js';
import type { Chunk, ChunkOf } from '../api.js';
import type { Draft } from '../draft.js';
import { eachOf, keepKind, partAt, placeFrom } from './places.js';
import {
  type Telling,
  applyDeed,
  begin,
  deedsIn,
  is,
  lastOf,
  leave,
  leaves,
  nextMeaning,
  odd,
  paused,
  sameThing,
  use,
  weak,
} from './telling.js';

/** Mends the last amount; the unit stays where none is said. */
const mend = (t: Telling, said: Amount, names: boolean): void => {
  const before = t.amount ?? (t.drafts.length > 0 ? lastOf(t).amount : undefined);
  if (before) t.slip = before.value - said.value;
  const mended = { ...said, unit: said.unit === 'piece' ? (before?.unit ?? 'piece') : said.unit };
  t.repaired = false;
  if (t.amount || t.drafts.length === 0 || names) t.amount = mended;
  else lastOf(t).amount = mended;
};

/** "Ten, one was cracked so I binned a couple": how many fewer the mending made of them, said again as the reason. */
const isSlip = (t: Telling, said: Amount): boolean =>
  t.slip !== null && t.slip === said.value && t.deed !== null && isGone.has(t.deed);
const isGone: ReadonlySet<Deed> = new Set<Deed>(['threw', 'finished', 'took', 'gave']);

/**
 * "One was cracked", of ten; "one I gave to Aunt Bea", of eight that were told place by place; "one to my neighbour":
 * what became of some of them is no part that is put away. It is kept as it was said. Null: no such remark.
 */
interface Remark {
  readonly from: number;
  readonly to: number;
  readonly gone: boolean;
}
const remarkTo = (t: Telling, at: number, said: Amount): Remark | null => {
  const draft = t.drafts.at(-1);
  const many = draft?.amount?.value ?? 0;
  if (!draft || said.unit !== 'piece' || (draft.parts.length === 0 && said.value >= many)) return null;
  const { chunks } = t;
  let next = nextMeaning(t, at);
  while (is(chunks[next], 'of', 'i', 'is', 'has', 'they') || chunks[next]?.kind === 'person') next += 1;
  const does = chunks[next];
  const left = next > at + 1 && does?.kind === 'word' ? deedsIn(does) : [];
  // "I gave one to Walt": the verb stands before it.
  const before = t.deed !== null && isGone.has(t.deed);
  const gone = draft.parts.length > 0 && (before || left.some((deed) => isGone.has(deed)) || sentTo(t, at));
  const opened =
    left.includes('opened') && is(chunks[nextMeaning(t, at)], 'is') && draft.amount !== undefined;
  if (!gone && !opened) return null;
  let to = at;
  while (chunks[to + 1] && !paused(t, chunks[to + 1]) && !is(chunks[to + 1], 'and', 'so', 'but')) to += 1;
  if (before) t.deed = t.or = null;
  return { from: before ? at - 1 : at, to, gone };
};
/** "One to my neighbour": to somebody, and to no place. */
const sentTo = (t: Telling, at: number): boolean => {
  const next = t.chunks[nextMeaning(t, at)];
  const end = t.chunks[nextMeaning(t, nextMeaning(t, at))]?.kind;
  return is(next, 'direction') && end !== 'place' && end !== 'thing' && end !== undefined;
};

const remark = (t: Telling, { from, to, gone }: Remark, said: Amount): number => {
  const draft = t.drafts.at(-1)!;
  for (let step = from; step <= to; step += 1) use(t, t.chunks[step]!);
  draft.notes.push(t.tokens.slice(t.chunks[from]!.from, t.chunks[to]!.to).join(' '));
  if (gone && draft.amount) draft.amount = { ...draft.amount, value: draft.amount.value - said.value };
  t.inRun = false;
  return to;
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
    is(chunks[at + 1], 'more') ||
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
  if (t.repaired && t.drafts.length > 0 && !names) {
    const mended = mendPart(t, at, said);
    if (mended !== null) return mended;
  }
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
  if (isSlip(t, said)) {
    t.deed = t.or = null;
    return at;
  }
  const remarked = remarkTo(t, at, said);
  if (remarked) return remark(t, remarked, said);
  const there = t.drafts.length > 0 ? (partAt(t, at) ?? directAt(t, at, chunk)) : null;
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
  // "A loaf in the bread bin": what is counted is what it is.
  const itself = names || ofBefore || is(chunks[at + 1], 'of') ? null : foodCounted(t, chunk);
  if (itself !== null && (t.drafts.length === 0 || lastOf(t).amount !== undefined || joinsOn(t, at))) {
    t.amount = { ...said, unit: 'piece' };
    t.group = t.run = [begin(t, { ...emptyMention, words: itself })];
    t.inRun = true;
    return at;
  }
  if ((names || pointed) && !ofBefore) {
    if (chunk.kind === 'amount' && chunk.touch) t.container = chunk.touch;
    t.amount = said;
    return at;
  }
  if (t.drafts.length > 0) {
    const again = doneBesides(t);
    if (again) t.group = t.run = [begin(t, again, { definite: !t.fresh, amount: said })];
    else {
      setAmount(t, said, chunk);
      doneToIt(t);
    }
  } else {
    t.amount = said;
    // "Move two to the fridge": of what was spoken of.
    if (!chunks.some((one) => one.kind === 'thing')) {
      const ofThat =
        t.deed !== null && (ofWhatIsHere.has(t.deed) || chunks.some((one) => one.kind === 'place'));
      if (ofThat && t.deed !== null && !weak.has(t.deed))
        t.group = t.run = [begin(t, pointedAt('it'), { definite: true })];
      // "I bought four more": of what was spoken of, and none of those that are here.
      else if (t.fresh && bringsIn(t.deed))
        t.group = t.run = [begin(t, pointedAt('another'), { fresh: true })];
      else lastOf(t).amount = said;
    }
  }
  return at;
};

/** "Used the last one", "opened two": of what was spoken of. */
const ofWhatIsHere: ReadonlySet<Deed> = new Set<Deed>([
  'took',
  'finished',
  'threw',
  'gave',
  'opened',
  'froze',
]);

const bringsIn = (deed: Deed | null): boolean => deed === 'bought' || deed === 'made';

const joinsOn = ({ chunks }: Telling, at: number): boolean =>
  is(chunks[at - 1], 'and') || (chunks[at - 1]?.kind === 'word' && is(chunks[at - 1], 'deed:stored'));

/** A unit that is food itself: a loaf. */
const foodCounted = ({ rules, tokens }: Telling, { kind, to }: Chunk): string | null => {
  const unit = tokens[to - 1]!;
  const food = kind === 'amount' && (rules.get('kitchen:food')?.matchesAt([unit], 0) ?? []).length > 0;
  return food ? unit : null;
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

/** "I opened it yesterday and ate one ounce": something else that was done to the same; null where nothing else was. */
const doneBesides = (t: Telling): Draft['thing'] => {
  const draft = t.group.at(-1) ?? lastOf(t);
  const { deed } = draft;
  // "I used two of the chickpeas and bought four more": those are none of the two.
  if (t.fresh && bringsIn(t.deed) && deed !== null && (isGone.has(deed) || deed === 'opened'))
    return draft.thing && { ...draft.thing, pointer: draft.thing.words ? null : 'another' };
  if (t.deed === null || !isGone.has(t.deed) || deed === null || weak.has(deed) || deed === t.deed)
    return null;
  return isGone.has(deed) && deed !== 'took' ? null : draft.thing;
};
/** Of what was named last. */
const setAmount = (t: Telling, said: Amount, chunk: Chunk): void => {
  const draft = t.group.at(-1) ?? lastOf(t);
  // "Six eggs, in a bowl on the top shelf": what they are in, and no other count.
  const inOne =
    said.value === 1 && said.unit !== 'piece' && is(t.chunks[t.chunks.indexOf(chunk) - 1], 'prep');
  if (draft.amount?.unit === 'piece' && inOne) return;
  if (draft.amount && draft.amount.value !== said.value) t.cost += odd.twice;
  draft.amount = said;
  if (t.remains) leaves(t, draft);
  if (chunk.kind === 'amount' && chunk.touch) draft.container = chunk.touch;
};

/** "One jar fridge door, four jars right bin": so much, and where, with nothing between. */
const directAt = (t: Telling, at: number, chunk: Chunk): number | null => {
  const next = t.chunks[at + 1];
  const counted = chunk.kind === 'amount' && chunk.amount.unit !== 'piece';
  return counted && next?.kind === 'place' && !paused(t, next) && t.group.length > 0 ? at + 1 : null;
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

const idOf = ({ candidates }: PlaceMention): string | undefined => candidates[0]?.id;

/** "Four in the chest, no wait, three in the chest": that part; of another place, the one told last. Null: no part. */
const mendPart = (t: Telling, at: number, said: Amount): number | null => {
  const there = partAt(t, at);
  const draft = lastOf(t);
  if (there === null || !(draft.place ?? draft.parts[0])) return null;
  const { place, to } = placeFrom(t, there);
  for (let step = at; step <= to; step += 1) use(t, t.chunks[step]!);
  const part = draft.parts.findLastIndex((one) => idOf(one.place) === idOf(place));
  const first = draft.place && (idOf(draft.place) === idOf(place) || draft.parts.length === 0);
  if (part < 0 && first) {
    draft.amount = { ...said, unit: said.unit === 'piece' ? (draft.amount?.unit ?? said.unit) : said.unit };
    draft.place = place;
  } else draft.parts.splice(part, 1, { amount: said, share: null, place });
  t.repaired = t.inRun = false;
  keepKind(t, place);
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
  } else if (t.deed !== null && ofWhatIsHere.has(t.deed) && !t.chunks.some((one) => one.kind === 'thing')) {
    // "We got through half of it at lunch": of what was spoken of.
    t.group = t.run = [begin(t, pointedAt('it'), { definite: true, share: chunk.share })];
  } else t.share = chunk.share;
  return at;
};
