/**
 * Reads the constituents from left to right, as a listener does: a thing opens a statement or takes up one of
 * this sentence again, and what follows is said of it until another comes. Where roles may stand the other
 * way round, it is read both ways, and the reading with the fewest oddities stands.
 */
import type { Chunk, ChunkOf } from '../api.js';
import type { Deed, Mention } from '../../intents.js';
import { namedMention, pointed } from '../../meaning-parts.js';
import { type Draft, saysSomething } from '../draft.js';
import { takeAmount, takeShare } from './amounts.js';
import { takeDay } from './dates.js';
import { takePerson } from './people.js';
import { takePlace } from './places.js';
import {
  type Style,
  type Telling,
  begin,
  is,
  lastOf,
  leave,
  newTelling,
  nextMeaning,
  odd,
  paused,
  stateIn,
  use,
} from './telling.js';
import { cookedIn, takePointer, takeThing, takenFor } from './things.js';
import { takeWord } from './words.js';

type Given = Pick<Telling, 'chunks' | 'tokens' | 'pauses' | 'rules' | 'lexicon'>;

/** "Gave the neighbour lady a jar", "because nobody was full": to whom and why are nothing of hers. */
const other = (t: Telling, chunk: Chunk, at: number): number => {
  const said = t.reason || (givesOut(t) && t.amount === undefined) || servedOn(t, at);
  if (givenTo(t, at) || (said && isSaid(t, chunk))) use(t, chunk);
  else leave(t, chunk);
  return at;
};

/** "Both tubs of the chilli": all of what is named after it, and nothing pointed at. */
const namedAfter = (
  t: Telling,
  { mention: { pointer } }: ChunkOf<'pointer'>,
  from: number,
): { readonly chunk: ChunkOf<'thing'>; readonly at: number } | null => {
  const { chunks } = t;
  const of = chunks[from + 1]?.kind === 'container' ? from + 2 : from + 1;
  if (pointer !== 'both' && pointer !== 'all') return null;
  let at = of;
  while (is(chunks[at], 'of', 'a')) at += 1;
  if (at === of) return null;
  // "Of the fridge chilli".
  const place = chunks[at];
  const where = place?.kind === 'place' && chunks[at + 1]?.kind === 'thing' ? { at: place.place } : {};
  if (place?.kind === 'place') at += 1;
  const thing = chunks[at];
  if (thing?.kind !== 'thing') return null;
  for (const chunk of chunks.slice(from, at)) use(t, chunk);
  return { chunk: { ...thing, mention: { ...thing.mention, ...where, pointer } }, at };
};

/** "A jar of marmalade that's open": how that is, and nothing pointed at. */
const isRelative = (t: Telling, { mention }: ChunkOf<'pointer'>, at: number): boolean => {
  const state = t.chunks[at + 2];
  return (
    mention.pointer === 'that' &&
    t.chunks[at - 1]?.kind === 'thing' &&
    !paused(t, t.chunks[at]) &&
    is(t.chunks[at + 1], 'is') &&
    state?.kind === 'word' &&
    stateIn(state) !== null
  );
};

/**
 * A marker is what is said to be on something or to be put on it: led by "with", "has", "tied", or followed by
 * "on it". What is only named so, in passing, is none.
 */
const isPutOn = (t: Telling, at: number): boolean => {
  const { chunks } = t;
  const marker = chunks[at] as ChunkOf<'marker'>;
  const counted = marker.mention.touch?.dots !== undefined;
  if (t.deed !== null || t.repaired || counted || chunks.length === 1) return true;
  let before = at - 1;
  const between = (chunk: Chunk | undefined): boolean =>
    is(chunk, 'a', 'fill', 'of', 'single') || chunk?.kind === 'number' || chunk?.kind === 'amount';
  while (before >= 0 && between(chunks[before])) before -= 1;
  const lead = chunks[before];
  const told =
    lead?.kind === 'marker' ||
    lead?.kind === 'container' ||
    is(lead, 'with', 'has', 'mark', 'and', 'is', 'that', 'deed:stored', 'but', 'instead', 'repair', 'each');
  const next = chunks[nextMeaning(t, at)];
  // "One tub, middle shelf, the ribbon": one of what is told of it, said after the other.
  const alone = paused(t, chunks[before + 1]) && (next === undefined || paused(t, next));
  // "Swap the patch for the ribbon".
  const instead = is(lead, 'for') && chunks.slice(0, at).some(({ kind }) => kind === 'marker');
  return (
    told ||
    alone ||
    instead ||
    is(next, 'on-it', 'mark', 'is', 'deed:stored') ||
    (is(next, 'prep', 'direction') && !paused(t, next))
  );
};

/** Takes one constituent, and says which was the last one taken; null where nothing is told. */
const take = (t: Telling, chunk: Chunk, at: number): number | null => {
  switch (chunk.kind) {
    case 'thing':
      return takeThing(t, chunk, at);
    case 'pointer': {
      if (isRelative(t, chunk, at)) {
        use(t, chunk);
        return at;
      }
      const named = namedAfter(t, chunk, at);
      if (named) return takeThing(t, named.chunk, named.at);
      if (!takePointer(t, chunk)) leave(t, chunk);
      return at;
    }
    case 'place':
      return takePlace(t, at, false, false);
    case 'amount':
    case 'number':
      return takeAmount(t, chunk, at);
    case 'share':
      return takeShare(t, chunk, at);
    case 'day':
      takeDay(t, chunk);
      return at;
    case 'person': {
      const to = takePerson(t, chunk, at);
      if (to === null) leave(t, chunk);
      return to ?? at;
    }
    case 'marker':
      if (!isPutOn(t, at)) {
        leave(t, chunk);
        return at;
      }
      use(t, chunk);
      // "Tied the ribbon round the juice": what it goes on comes after.
      if (t.drafts.length === 0 && t.deed !== null) t.held = chunk.mention;
      else lastOf(t).marker = chunk.mention;
      return at;
    case 'container': {
      const next = t.chunks[at + 1];
      use(t, chunk);
      // "The tub of rice": a tub that is here.
      if (is(next, 'of') && t.lexicon.phrases.longestAt([t.tokens[chunk.from]!], 0)?.value.has('definite'))
        t.definite = true;
      if (takenFor(t, at) || cookedIn(t, at)) return at;
      // "Kitchen roll and some wraps", to be bought: another thing, that nobody knows, and nothing it comes in.
      if (t.drafts.at(-1)?.deed === 'listed' && is(t.chunks[at - 1], 'a', 'and') && !is(next, 'of')) {
        if (next?.kind !== 'thing') leave(t, chunk);
        return at;
      }
      if (t.drafts.length > 0 && next?.kind !== 'thing' && !is(next, 'of')) lastOf(t).container = chunk.touch;
      else t.container = chunk.touch;
      return at;
    }
    case 'span':
      // "It's only a couple of days over": why, and nothing that is finished.
      if (!is(t.chunks[at + 1], 'past-by')) return other(t, chunk, at);
      use(t, chunk);
      use(t, t.chunks[at + 1]!);
      return at + 1;
    case 'word':
      return takeWord(t, chunk, at);
    default:
      return other(t, chunk, at);
  }
};

const isSaid = ({ tokens, lexicon }: Telling, { from }: Chunk): boolean => lexicon.isOrdinary(tokens[from]!);

/** "Sent the neighbour home with two jars": to whom comes before what. */
const givesOut = ({ deed, or, drafts }: Telling): boolean =>
  drafts.length === 0 && (deed === 'gave' || or === 'gave');
/** "Had a can of sardines on toast". */
const servedOn = ({ chunks, drafts }: Telling, at: number): boolean =>
  is(chunks[beforeArticles(chunks, at)], 'prep', 'direction') && isGone.has(drafts.at(-1)?.deed ?? null);
/** "To the birds", "to our two lodgers": the word that leads up to it. */
const beforeArticles = (chunks: readonly Chunk[], at: number): number => {
  let before = at - 1;
  while (before > 0 && is(chunks[before], 'a')) before -= 1;
  return before;
};
/** Whoever it was given to is nobody of this kitchen's concern, known word or not. */
const givenTo = (t: Telling, at: number): boolean =>
  [t.drafts.at(-1)?.deed, t.drafts.at(-1)?.or].includes('gave') &&
  is(t.chunks[beforeArticles(t.chunks, at)], 'direction');
const isGone: ReadonlySet<Deed | null> = new Set<Deed | null>([
  'took',
  'finished',
  'threw',
  'gave',
  'given-in',
]);

const placed = ({ place, parts }: Draft): boolean => place !== undefined || parts.length > 0;
const goesSomewhere = ({ deed, thing }: Draft): boolean =>
  (thing?.words ?? null) !== null &&
  (deed === null || deed === 'stored' || deed === 'bought' || deed === 'made');

/**
 * A verb of two meanings, by what else was told: what goes to a place here is not thrown out, and what is taken
 * from hers is not bought.
 */
const settle = (t: Telling, draft: Draft): void => {
  const { deed, or, thing, definite, fresh } = draft;
  const hersAlready = (thing?.candidates[0]?.fit ?? 0) >= surelyHers;
  if (draft.fine && deed === null && hersAlready && !placed(draft)) draft.deed = 'kept';
  if (draft.kept && (deed === null || deed === 'stored')) {
    // "Leaving one": what is left, where it was said what went.
    if (!placed(draft)) draft.deed = 'kept';
    else draft.definite = true;
    return;
  }
  // "The last of the capers and half of the feta": of that, half is left.
  const part = draft.share ?? (draft.amount?.unit === 'piece' ? { fraction: draft.amount.value } : null);
  if (deed === 'finished' && part && part.fraction < 1) draft.deed = 'took';
  if (deed === 'threw' && or === 'stored' && placed(draft)) draft.deed = 'stored';
  if (deed === 'took' && or === 'made' && placed(draft) && !(hersAlready && definite)) draft.deed = 'made';
  if (deed === 'took' && draft.setDown && placed(draft)) draft.deed = 'moved';
  const gives = deed === 'given-in' && or === 'gave' && draft.maker === undefined;
  if (gives && (thing?.candidates[0]?.fit ?? 0) >= surelyHers && !fresh) draft.deed = 'gave';
  // "Out of the crisper and on the counter".
  if (
    draft.from &&
    draft.place &&
    (deed === null || deed === 'stored' || deed === 'finished' || deed === 'took')
  )
    draft.deed = 'moved';
  const hers = (thing?.candidates[0]?.fit ?? 0) >= surelyHers && definite && !fresh;
  const both = (deed === 'bought' && or === 'took') || (deed === 'took' && or === 'bought');
  if (deed === 'made' && isEaten(draft, hers)) {
    // What was cooked of hers came from nobody and is not new: the day is when.
    draft.deed = 'took';
    delete draft.maker;
    if (draft.dates.made && draft.dates.made !== 'unknown') draft.when ??= draft.dates.made;
    delete draft.dates.made;
  } else if (deed === 'made' && draft.how && thing?.words) draft.thing = cookedSo(t, thing, draft.how);
  if (both) draft.deed = hers && !placed(draft) ? 'took' : 'bought';
};
const surelyHers = 0.78;
const nearlyHers = 0.6;

/** Six eggs that were boiled are boiled eggs: they keep for other times than raw ones, and are not those. */
const cookedSo = ({ rules }: Telling, thing: Mention, how: string): Mention => {
  const said = [how, ...thing.words!.split(' ')];
  const own = rules
    .get('kitchen:item')
    ?.matchesAt(said, 0)
    .find(({ length }) => length === said.length);
  return { ...thing, words: said.join(' '), candidates: own ? namedMention(own.value).candidates : [] };
};

/**
 * "Boiled up ten of the pierogi", "we grilled the salmon": hers, and cooked. Where it stands somewhere, in tubs
 * or portions, or one whole ("I roasted a chicken"), it was made.
 */
const isEaten = (draft: Draft, hers: boolean): boolean => {
  const { or, amount, thing, dates, fresh } = draft;
  if (placed(draft)) return false;
  if (hers && amount !== undefined) return true;
  if (or !== 'took' || fresh) return false;
  if (amount !== undefined && amount.unit !== 'piece') return false;
  return hers || (thing?.candidates[0]?.fit ?? 0) >= surelyHers || Object.keys(dates).length === 0;
};

/** "And the last two in the fridge door": of what was just put somewhere else, so many more. */
const goesOnWithMore = ({ chunks }: Telling, { thing, amount, place, deed }: Draft): boolean =>
  (thing === null || thing.words === null) &&
  amount !== undefined &&
  place !== undefined &&
  (deed === null || deed === 'stored') &&
  chunks.some((chunk) => is(chunk, 'and', 'whole', 'more')) &&
  is(chunks[0], 'and', 'whole', 'more', 'a', 'fill');

/**
 * "The milk's gone, and the oat milk too": what is only named after something that went, went too. What was denied
 * and said nothing more of is no part of what was told.
 */
const joinLosses = (t: Telling): void => {
  // "I threw the soup out, but left the jollof": left as it is, where nothing says where it went.
  if (t.drafts.some(({ deed }) => deed !== null && isGone.has(deed)))
    for (const draft of t.drafts)
      if (draft.deed === 'stored' && !placed(draft) && (draft.thing?.candidates[0]?.fit ?? 0) >= nearlyHers)
        draft.deed = 'kept';
  for (const draft of [...t.drafts]) {
    if (saysSomething(draft) || draft.kept || draft.fine) continue;
    if (draft.denied) t.drafts.splice(t.drafts.indexOf(draft), 1);
    else if (draft.alsoLost && draft.thing?.words) draft.deed = draft.alsoLost;
  }
};

/** "Two pizzas in the drawer and the garlic bread too": there as well. */
const inherit = (t: Telling, stored: readonly Draft[]): void => {
  stored.forEach((draft, at) => {
    const before = stored[at - 1]?.place;
    // "Milk and eggs, the milk's in the door": what was taken up again to say where it is says nothing of the next.
    if (placed(draft) || !before || stored[at - 1]!.retold) return;
    draft.place = before;
    t.cost += odd.inherited;
  });
};

/** "Move the waffles to the garage, and the burritos too": to where the others went. */
const goAlong = (t: Telling): void => {
  t.drafts.forEach((draft, at) => {
    const before = t.drafts[at - 1];
    if (draft.deed === 'moved' && !placed(draft) && !draft.from && before?.deed === 'moved' && before.place)
      draft.place = before.place;
  });
};

const isServed = ({ lexicon }: Telling, { deed, thing, definite, place, amount, dates }: Draft): boolean =>
  deed === 'made' &&
  definite &&
  place === undefined &&
  amount === undefined &&
  Object.keys(dates).length === 0 &&
  lexicon.isCooked(thing?.words?.split(' ').at(-1) ?? '');

/** Words of "ate the lot", "had it all". */
const verbAndAll = 3;

/** Null where the sentence asks, wishes, supposes or denies, or tells of nothing. */
const inStyle = (given: Given, style: Style): Telling | null => {
  const t = newTelling({ ...given, style });
  for (let at = 0; at < t.chunks.length; at += 1) {
    if (paused(t, t.chunks[at])) t.reason = false;
    const to = take(t, t.chunks[at]!, at);
    if (to === null) return null;
    at = to;
  }
  // "We ate the lot": a verb with what was eaten in it, and nothing by name.
  const [eaten] = t.chunks.filter(
    (chunk) => is(chunk, 'deed:finished') && chunk.to - chunk.from >= verbAndAll,
  );
  if (t.drafts.length === 0 && eaten && t.deed === 'finished')
    t.group = t.run = [begin(t, pointed('all'), { definite: true })];
  if (t.drafts.length === 0) return null;
  // "The upright, middle basket, only one of the packs": a place said first, of what nobody named.
  const bare = t.place
    ? t.drafts.find(({ thing, place, parts }) => !thing && !place && parts.length === 0)
    : undefined;
  if (bare && t.place) bare.place = t.place;
  for (const draft of t.drafts) settle(t, draft);
  joinLosses(t);
  goAlong(t);
  const [only, ...others] = t.drafts;
  if (only && others.length === 0 && goesOnWithMore(t, only)) only.fresh = true;
  // "One tin is over now, I made the salad": what it went into is nothing put away.
  const into = t.drafts.filter((draft) => isServed(t, draft));
  if (into.length < t.drafts.length && t.drafts.some(({ deed }) => isGone.has(deed)))
    for (const draft of into) t.drafts.splice(t.drafts.indexOf(draft), 1);
  const stored = t.drafts.filter(goesSomewhere);
  inherit(t, stored);
  if (stored.some(placed)) t.cost += odd.placeless * stored.filter((draft) => !placed(draft)).length;
  if (t.amount) t.cost += odd.twice;
  if (style.placesFirst) t.cost += odd.placesFirst;
  if (style.amountsAfter) t.cost += odd.amountsAfter;
  return t;
};

/** The ways of reading that the order of its parts leaves open. */
const stylesFor = (chunks: readonly Chunk[]): readonly Style[] => {
  const telling = chunks.filter(({ kind }) => kind === 'thing' || kind === 'place' || kind === 'amount');
  const places = telling.filter(({ kind }) => kind === 'place').length;
  const opens = telling.find(({ kind }) => kind !== 'amount')?.kind === 'place';
  const trails = telling.some(({ kind }, at) => kind === 'thing' && telling[at + 1]?.kind === 'amount');
  const ways = (first: boolean): readonly boolean[] => (first ? [false, true] : [false]);
  return ways(opens && places > 1).flatMap((placesFirst) =>
    ways(trails).map((amountsAfter) => ({ placesFirst, amountsAfter })),
  );
};

/** What a word that nothing took costs, natural logarithm. */
export const leftover = 1.5;
const costOf = ({ cost, left }: Telling): number => cost + leftover * left.length;

export const assemble = (given: Given): Telling | null =>
  stylesFor(given.chunks).reduce<Telling | null>((best, style) => {
    const told = inStyle(given, style);
    return told && (!best || costOf(told) < costOf(best)) ? told : best;
  }, null);
