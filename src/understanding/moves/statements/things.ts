/** Things: what is told of; what is in them or not; a name said again; what "it" and "them" are. */
import { asShare, pointed } from '../../meaning-parts.js';
import type { Deed } from '../../intents.js';
import type { Chunk, ChunkOf } from '../api.js';
import type { Draft } from '../draft.js';
import {
  type Telling,
  applyDeed,
  begin,
  deedIn,
  headOf,
  is,
  isGone,
  lastOf,
  leave,
  nextMeaning,
  odd,
  paused,
  sameThing,
  use,
  weak,
} from './telling.js';

const surelyHers = 0.7;

export const addContents = (t: Telling, words: string): void => {
  const allergen = t.lexicon.allergenOf(words);
  const to = lastOf(t);
  if (allergen) {
    if (!to.contains.includes(allergen)) to.contains.push(allergen);
    // Which nut it is is worth knowing besides the group.
    const own = allergen === words || allergen.startsWith(headOf(words)) || t.lexicon.isGroup(words);
    if (!own) to.ingredients.push(words);
  } else to.ingredients.push(words);
};

const addLack = (t: Telling, words: string): boolean => {
  const diet = t.lexicon.dietWithout(words);
  const allergen = t.lexicon.allergenOf(words);
  if (diet) lastOf(t).diets.push(diet);
  else if (allergen) lastOf(t).freeFrom.push(allergen);
  return diet !== undefined || allergen !== undefined;
};

/** "No added salt", "no nuts": what it lacks, and no repair. */
export const lacksNext = ({ chunks, lexicon }: Telling, at: number): boolean => {
  const chunk = chunks[at];
  const words = chunk?.kind === 'thing' ? (chunk.mention.words ?? '') : '';
  return lexicon.dietWithout(words) !== undefined || lexicon.allergenOf(words) !== undefined;
};

/** A name nobody knows is only told by what stands before it: an amount, an article, a place, a verb. */
const namesAfter = ({ chunks }: Telling, at: number): boolean => {
  const before = chunks[at - 1];
  if (before === undefined) return true;
  if (before.kind === 'word')
    return is(before, 'a', 'of', 'and', 'fill', 'repair') || deedIn(before) !== null;
  return (
    before.kind === 'amount' || before.kind === 'number' || before.kind === 'share' || before.kind === 'place'
  );
};

/** "In it", after a name: what is in something else. */
const standsIn = ({ chunks }: Telling, at: number): boolean => {
  const beyond = chunks[at + 1];
  return (
    is(chunks[at], 'in-it') &&
    !(
      beyond?.kind === 'place' ||
      beyond?.kind === 'thing' ||
      beyond?.kind === 'day' ||
      beyond?.kind === 'container' ||
      // "The chili in two tubs".
      beyond?.kind === 'amount' ||
      is(beyond, 'a')
    )
  );
};

/** "There's cashews in the pottage": what is in another food. Null: nothing of the kind. */
const inAnother = (t: Telling, chunk: ChunkOf<'thing'>, at: number): number | null => {
  const { chunks } = t;
  const next = chunks[at + 1];
  const holderAt = is(next, 'in-it', 'prep') ? nextMeaning(t, at + 1) : -1;
  const holder = chunks[holderAt];
  const words = chunk.mention.words ?? '';
  if (
    t.deed !== 'stored' ||
    holder?.kind !== 'thing' ||
    holder.fit < surelyHers ||
    !t.lexicon.allergenOf(words)
  )
    return null;
  t.deed = null;
  t.amount = undefined;
  t.definite = true;
  t.group = t.run = [begin(t, holder.mention)];
  // "There's no milk in the pottage", "there aren't any nuts in it": free of it, and never said to hold it.
  const before = chunks.slice(0, at).findLastIndex((one) => !is(one, 'a', 'of', 'any'));
  const denial = is(chunks[before], 'without', 'not', 'repair') ? chunks[before]! : null;
  if (denial) addLack(t, words);
  else addContents(t, words);
  for (const part of [...(denial ? [denial] : []), chunk, next!, holder]) use(t, part);
  for (let step = at + 2; step < holderAt; step += 1) use(t, chunks[step]!);
  t.inRun = false;
  return holderAt;
};

/** "Fish and milk in it", "eggs and milk inside": where the last of these names is, when all are in something. */
const contentsTo = (t: Telling, at: number): number | null => {
  const { chunks } = t;
  let last = at;
  for (;;) {
    if (standsIn(t, last + 1)) return last;
    const next = is(chunks[last + 1], 'and') ? nextMeaning(t, last + 1) : last + 1;
    const more = chunks[next];
    if (more?.kind !== 'thing' || next === last) return null;
    if (!is(chunks[last + 1], 'and') && !paused(t, more)) return null;
    last = next;
  }
};

/** "With prawns in it", "with peanuts": an allergen, or said to be inside. */
export const isContents = (t: Telling, at: number, given: boolean): boolean => {
  const chunk = t.chunks[at];
  const allergen = chunk?.kind === 'thing' && t.lexicon.allergenOf(chunk.mention.words ?? '') !== undefined;
  // "Cream with the milk" stands by it.
  return (allergen && !given) || contentsTo(t, at) !== null;
};

/** "Cream in it and celery": in it, too, where nothing of its own is said of it. */
const goesOnInside = (t: Telling, at: number): boolean => {
  const { chunks } = t;
  if (!is(chunks[at], 'and')) return false;
  const next = nextMeaning(t, at);
  const after = chunks[nextMeaning(t, next)];
  const ends = after === undefined || paused(t, after) || is(after, 'and', 'so', 'but', 'in-it', 'with');
  const placed = is(after, 'in-it') && chunks[nextMeaning(t, nextMeaning(t, next))]?.kind === 'place';
  return chunks[next]?.kind === 'thing' && ends && !placed;
};

/** Takes a list of what is in it, each an allergen or an ingredient. */
const takeContents = (t: Telling, at: number, to: number): number => {
  for (let step = at; step <= to + 1; step += 1) {
    const chunk = t.chunks[step]!;
    use(t, chunk);
    if (chunk.kind === 'thing') addContents(t, chunk.mention.words ?? '');
  }
  t.role = goesOnInside(t, to + 2) ? 'contents' : 'thing';
  t.inRun = false;
  t.definite = false;
  t.amount = undefined;
  return to + 1;
};

/** "Ham and avocados, the ham is on the shelf": what is taken up again is spoken of alone, unless it is joined. */
const joins = ({ chunks }: Telling, at: number): boolean =>
  is(chunks[is(chunks[at - 1], 'a') && !is(chunks[at - 1], 'and') ? at - 2 : at - 1], 'and');

/** Things that nothing was said of yet are one list with this: "milk, eggs and some salmon". */
const inListOf = (t: Telling, at: number): boolean =>
  is(t.chunks[at - 1], 'and', 'a', 'of') && t.run.length > 0;

/** The word before the name and its articles. */
const purposeAt = ({ chunks }: Telling, at: number): number => {
  let before = at - 1;
  while (before > 0 && (is(chunks[before], 'a') || chunks[before]?.kind === 'day')) before -= 1;
  return before;
};
const usedUp: ReadonlySet<Deed | null> = new Set<Deed | null>(['took', 'finished', 'threw', 'gave']);

/** "Two jars for tonight's soup", "into the pot": what it was taken for is nothing put away. */
const isFor = (t: Telling, at: number): boolean => {
  const before = t.chunks[purposeAt(t, at)];
  const { deed, or } = t.drafts.at(-1) ?? { deed: null, or: null };
  const went = usedUp.has(deed) || or === 'gave';
  const dish = t.chunks[at];
  // "Threw the ham out, the cream I keep": the verb's own word, and no purpose.
  const own = is(before, 'from') || paused(t, t.chunks[purposeAt(t, at) + 1]);
  const into = is(before, 'direction') && !own && dish !== undefined && isDish(t, dish);
  return t.drafts.length > 0 && (into || (is(before, 'for', 'direction', 'prep') && !own && went));
};
/** "Six pierogi into the pot": taken to be cooked. False: it is no purpose. */
export const takenFor = (t: Telling, at: number): boolean => {
  if (!isFor(t, at)) return false;
  if (is(t.chunks[purposeAt(t, at)], 'direction'))
    for (const draft of t.group)
      if (draft.deed === null || weak.has(draft.deed)) {
        draft.deed = 'took';
      }
  return true;
};
/** "Four pierogi went in the pot": hers, counted, and nowhere else. */
export const cookedIn = (t: Telling, at: number): boolean => {
  const hers = ({ thing, amount, place, deed }: Draft): boolean =>
    (thing?.candidates[0]?.fit ?? 0) >= surelyHers &&
    amount !== undefined &&
    place === undefined &&
    (deed === null || weak.has(deed));
  const into = is(t.chunks[purposeAt(t, at)], 'prep') && isDish(t, t.chunks[at]!);
  if (!into || t.group.length === 0 || !t.group.every(hers)) return false;
  for (const draft of t.group) draft.deed = 'took';
  return true;
};
const isDish = ({ tokens, lexicon }: Telling, { to }: Chunk): boolean => lexicon.isCooked(tokens[to - 1]!);

/** "Bottom shelf, about four portions, and there's celery in it": all of it of what was spoken of before. */
const saidBefore = (t: Telling): void => {
  if (t.drafts.length > 0 || (!t.place && !t.amount)) return;
  const draft = lastOf(t);
  if (t.place) draft.place = t.place;
  if (t.amount) draft.amount = t.amount;
  t.place = t.amount = undefined;
};

export const takeThing = (t: Telling, chunk: ChunkOf<'thing'>, at: number): number | null => {
  const { chunks } = t;
  const words = chunk.mention.words ?? '';
  const next = chunks[at + 1];
  const held = inAnother(t, chunk, at);
  if (held !== null) return held;
  if (takenFor(t, at)) {
    use(t, chunk);
    return at;
  }
  const inIt = !t.fromPlace && standsIn(t, at + 1);
  const contents =
    !t.fromPlace && t.drafts.length > 0 && t.role === 'thing' && !inIt ? contentsTo(t, at) : null;
  if (contents !== null) return takeContents(t, at, contents);
  if (t.role === 'lacks') {
    if (!addLack(t, words)) return null;
    use(t, chunk);
    // "No milk, celery or fish in it".
    const goesOn = next?.kind === 'thing' && paused(t, next) && lacksNext(t, at + 1);
    if (!is(next, 'and') && !goesOn) t.role = 'thing';
    if (inIt) use(t, next!);
    return inIt ? at + 1 : at;
  }
  if (t.role === 'contents' || (inIt && t.drafts.length > 0) || (inIt && t.deed === 'stored')) {
    if (t.deed === 'stored') t.deed = null;
    saidBefore(t);
    addContents(t, words);
    use(t, chunk);
    if (inIt) use(t, next!);
    const after = inIt ? chunks[at + 2] : next;
    // "It contains wheat, milk and eggs".
    const listed =
      after?.kind === 'thing' &&
      (paused(t, after) || t.lexicon.allergenOf(after.mention.words ?? '') !== undefined);
    if (inIt && is(after, 'and')) t.role = goesOnInside(t, at + 2) ? 'contents' : 'thing';
    else if (!is(after, 'and') && !listed) t.role = 'thing';
    t.inRun = false;
    return inIt ? at + 1 : at;
  }
  // "Tossed the ham, no wait, keep the ham": what was done to it is taken back.
  const saved = t.kept
    ? t.drafts.find((draft) => usedUp.has(draft.deed) && sameThing(chunk.mention, draft.thing))
    : undefined;
  if (saved) {
    use(t, chunk);
    saved.deed = saved.or = null;
    saved.kept = true;
    t.kept = t.repaired = false;
    t.deed = t.or = null;
    t.group = t.run = [saved];
    t.inRun = false;
    return at;
  }
  // "Put it on the list, the tahini I mean": the name comes after.
  const meant = is(next, 'repair') && at + 2 === chunks.length;
  if (meant) use(t, next!);
  if (t.repaired && mendsContents(t, words, at)) {
    use(t, chunk);
    return at;
  }
  if ((t.repaired || meant) && t.drafts.length > 0) {
    const draft = t.drafts.at(-1)!;
    draft.thing = chunk.mention;
    if (t.amount) draft.amount = t.amount;
    t.amount = undefined;
    t.group = t.run = [draft];
    t.repaired = false;
    use(t, chunk);
    return at;
  }
  const known =
    t.amount || t.share ? undefined : t.drafts.find((draft) => sameThing(chunk.mention, draft.thing));
  use(t, chunk);
  // "The ham's in the bin, and put ham and parmesan on the list": what went is not put anywhere.
  const went = known !== undefined && usedUp.has(known.deed) && t.deed === 'stored';
  const again =
    known && !went && !(t.deed && known.deed !== t.deed && known.deed !== null && !weak.has(t.deed));
  if (again) {
    // "A loaf of bread, and the bread goes in the freezer": of that alone, and not of the butter before it.
    t.group = t.inRun && t.again && joins(t, at) ? [...t.group, known] : [known];
    known.retold = t.group.length === 1;
    t.inRun = t.again = true;
    t.definite = false;
    return at;
  }
  // "The blue dish": what it is in, and no food.
  if (chunk.source === 'open' && next?.kind === 'container') return at;
  // After "I", and nowhere a food: a verb nobody knows.
  if (chunk.source === 'open' && (!namesAfter(t, at) || is(chunks[at - 1], 'i'))) {
    leave(t, chunk);
    return at;
  }
  if (t.amount && paused(t, chunk)) t.cost += odd.overPause;
  // "I binned both. The sour cream's still fine": what has a verb of its own is not done to.
  if (t.deed !== null && !weak.has(t.deed) && t.drafts.length > 0 && is(next, 'is') && t.definite)
    t.deed = t.or = null;
  // "It has nuts inside, all of it, the curry": what it is, said last.
  const pointedAt = t.drafts.at(-1);
  const ends = chunks.length - 1 === at || paused(t, next);
  if (t.definite && !t.deed && paused(t, chunks[at - 1]) && ends && pointedAt?.thing?.words === null) {
    pointedAt.thing = chunk.mention;
    t.definite = false;
    return at;
  }
  t.again = false;
  if (opensClause(t, at)) t.inRun = false;
  namesLast(t);
  join(t, begin(t, chunk.mention, { open: chunk.source === 'open' }), at);
  return at;
};

/** "It's got nuts in it, no wait, not nuts, eggs": what is in it was put right, and not what it is. */
export const mendsContents = (t: Telling, words: string, at: number): boolean => {
  const draft = t.drafts.at(-1);
  const allergen = t.lexicon.allergenOf(words);
  if (!draft || allergen === undefined || (draft.contains.length === 0 && !t.ofContents)) return false;
  const before = t.chunks.slice(0, at).findLast((one) => !is(one, 'a', 'fill'));
  if (is(before, 'not', 'without')) {
    draft.contains = draft.contains.filter((one) => one !== allergen);
    draft.ingredients = draft.ingredients.filter((one) => t.lexicon.allergenOf(one) !== allergen);
    t.ofContents = true;
  } else {
    addContents(t, words);
    t.repaired = false;
  }
  return true;
};

/** "Leftovers, two tubs of yam pottage": one thing, that is named second. */
const namesLast = (t: Telling): void => {
  const last = t.drafts.at(-1);
  const general = last?.thing?.words && t.lexicon.isWhole(last.thing.words);
  if (!general || !t.inRun || !t.amount || last.amount || last.place) return;
  t.drafts.pop();
  t.group = t.run = [];
};

/** "A gallon of milk, and the peas are in the freezer": the peas alone, after what was only counted. */
const opensClause = (t: Telling, at: number): boolean =>
  t.inRun &&
  t.definite &&
  t.amount === undefined &&
  is(t.chunks[at + 1], 'is') &&
  t.group.length > 0 &&
  t.group.every(({ definite, amount, place }) => !definite && amount !== undefined && place === undefined);

const join = (t: Telling, draft: Draft, at: number): void => {
  if (t.inRun) {
    t.group = [...t.group, draft];
    t.run = [...t.run, draft];
  } else {
    t.group = [draft];
    t.run = inListOf(t, at) ? [...t.run, draft] : [draft];
  }
  t.inRun = true;
};

/** "They", after a dozen eggs: those; else what was named one after the other. */
const severalOf = ({ run, group, drafts }: Telling, which: 'them' | 'both' | 'all'): readonly Draft[] => {
  if (run.length > 1) return run;
  if (group.length > 1) return group;
  const last = drafts.at(-1);
  const counted = last?.amount !== undefined && last.amount.value > 1;
  if (counted && which !== 'both') return [last];
  // "Butter in the fridge and Priya brought samosas, they're in the freezer": what has its place already is not meant.
  const two = drafts.slice(-2);
  const open = which === 'both' ? two : two.filter(({ place, parts }) => !place && parts.length === 0);
  return open.length > 0 ? open : two;
};

/** "All of it": as much as a share may say, too. */
const isWhole = ({ rules, tokens }: Telling, { from, to }: Chunk): boolean =>
  (rules.get('builtin:grammar/share')?.matchesAt(tokens, from) ?? []).some(
    ({ length, value }) => from + length === to && asShare(value).fraction === 1,
  );
const isUsed = ({ deed, amount, left }: Draft): boolean =>
  deed === 'took' && (amount === undefined || amount.value < 1) && left === undefined;

/** How much of it was used, said after that it was; false where nothing was. */
export const usedWholly = (t: Telling, chunk: Chunk): boolean => {
  const used = isWhole(t, chunk) && t.drafts.length > 0 ? severalOf(t, 'them').filter(isUsed) : [];
  if (used.length === 0 || (t.deed !== null && t.deed !== used.at(-1)!.deed)) return false;
  for (const draft of used) draft.share = { fraction: 1 };
  use(t, chunk);
  t.inRun = false;
  return true;
};

/** "I made a curry with two tins of the chickpeas, it's on the top shelf": the curry, which has no place yet. */
const dishOf = ({ drafts }: Telling): Draft | undefined => {
  const made = drafts.findLast(({ deed }) => deed === 'made');
  const [next, ...more] = made ? drafts.slice(drafts.indexOf(made) + 1) : [];
  const usedIn = next !== undefined && [next, ...more].every(({ deed }) => deed === 'took');
  return usedIn && made?.place === undefined ? made : undefined;
};

/** False: it points at nothing here. */
const lessens: ReadonlySet<Deed> = new Set<Deed>(['took', 'threw', 'gave']);

export const takePointer = (t: Telling, chunk: ChunkOf<'pointer'>): boolean => {
  const which = chunk.mention.pointer;
  use(t, chunk);
  if (t.held) return true;
  // "We ate the cooked rice, all of it": how much of it, where it was said what became of it.
  if (usedWholly(t, chunk)) return true;
  // "The chest ones": another lot than the one before.
  if (chunk.mention.at) {
    const lot = begin(
      t,
      { ...chunk.mention, at: null },
      { definite: true, deed: null, place: chunk.mention.at },
    );
    t.group = t.run = [lot];
    t.inRun = false;
    return true;
  }
  // "I had another": one more of what was taken before, and nothing that comes in.
  if (which === 'another' && t.drafts.length === 0 && t.deed !== null && lessens.has(t.deed)) {
    const one = t.amount ?? { value: 1, unit: 'piece' as const };
    t.group = t.run = [begin(t, pointed('it'), { definite: true, amount: one })];
  } else if (which === 'another') {
    const before = t.drafts.at(-1)?.thing;
    const draft = begin(t, before?.words ? { ...before, candidates: [] } : pointed('another'), {
      fresh: true,
      definite: false,
    });
    t.group = t.run = [draft];
  } else if (which === 'rest' || which === 'other') {
    if (t.drafts.length > 0) t.whole = true;
    // "And the other one, that's gone as well": of those that were told of before.
    else if (which === 'other' && t.chunks.some(isGone)) {
      t.group = t.run = [begin(t, chunk.mention, { definite: true })];
      t.inRun = true;
    } else return false;
  } else if (t.drafts.length === 0) {
    const draft = begin(t, chunk.mention, { definite: true });
    t.group = t.run = [draft];
  } else if (which === 'them' || which === 'both' || which === 'all') t.group = [...severalOf(t, which)];
  else if (lastOf(t).deed !== 'fact' || t.group.length === 0) t.group = [dishOf(t) ?? t.drafts.at(-1)!];
  // "I made it this morning": the deed is a fact of what was named.
  const { deed } = t;
  if (t.drafts.length > 0 && deed && t.group.every((draft) => draft.thing !== null || draft.deed === null))
    for (const draft of t.group) applyDeed(t, draft, deed);
  t.inRun = false;
  return true;
};
