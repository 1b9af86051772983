/** Verbs: what was done to what follows, or to what was just named; how something is. */
import type { Deed } from '../../intents.js';
import { takePointer } from './things.js';
import type { Chunk } from '../api.js';
import { planTo, takePlan } from './purpose.js';
import {
  type Telling,
  type Word,
  applyDeed,
  begin,
  deedIn,
  deedsIn,
  implied,
  is,
  nextMeaning,
  paused,
  stateIn,
  use,
  weak,
} from './telling.js';

/** "Four tubs, on the list": of all that was named so far and not done anything else with. */
const listing = (t: Telling, told: Deed, goesOn: boolean, needs: boolean): void => {
  // "On the list put plantain, and take lemons off": what comes off is named after it.
  const before = told === 'unlisted' && goesOn ? [] : t.drafts;
  // "Put the sausages in the freezer, and put parmesan on the list": what has its place is put away.
  const things = before.filter(
    ({ deed, place }) =>
      deed === null ||
      (weak.has(deed) && !(deed === 'stored' && place !== undefined && before.length > 1)) ||
      deed === 'made' ||
      // "I bought the lemons, so take them off the list".
      (told === 'unlisted' && deed === 'bought'),
  );
  for (const draft of things) draft.deed = told;
  // "I used up the lettuce, put it on the list": gone, and to be bought besides.
  if (told === 'listed' && things.length === 0 && !goesOn)
    t.group = t.run = t.group.flatMap(({ thing, deed }) =>
      thing && deed !== null && deed !== 'listed' && deed !== 'unlisted'
        ? [begin(t, thing, { deed: told })]
        : [],
    );
  t.deed = told;
  t.needs = needs;
  t.inRun = things.length > 0 && !goesOn ? t.inRun : false;
};

/** Whoever made it stands right behind its name, with no pause between. */
const isRelative = (t: Telling, at: number): boolean => {
  const person = t.chunks[at - 1];
  return person?.kind === 'person' && t.chunks[at - 2]?.kind === 'thing' && !paused(t, person);
};

/** "Sam made it". Null: not of what was named. */
const madeBy = (t: Telling, at: number): number | null | undefined => {
  const nextAt = nextMeaning(t, at);
  const next = t.chunks[nextAt];
  if (next?.kind !== 'pointer' && t.drafts.length === 0) {
    t.maker = t.subject ?? undefined;
    return undefined;
  }
  if (next?.kind === 'thing' || next?.kind === 'amount' || next?.kind === 'number') {
    t.maker = t.subject ?? undefined;
    return undefined;
  }
  const who = t.subject!;
  if (next?.kind === 'pointer') {
    t.deed = null;
    if (!takePointer(t, next)) return null;
  }
  // "Threw out the ham and that gumbo Aunt Bea made": the gumbo alone, where she is named right after it.
  const relative = next?.kind !== 'pointer' && isRelative(t, at);
  for (const draft of relative ? t.drafts.slice(-1) : implied(t)) draft.maker = who;
  t.dateKind =
    t.chunks[nextMeaning(t, next?.kind === 'pointer' ? nextAt : at)]?.kind === 'day' ? 'made' : null;
  t.subject = null;
  return next?.kind === 'pointer' ? nextAt : at;
};

const namesNext = (t: Telling, at: number, nextAt: number): boolean => {
  // "One pudding Theo ate, one Junie ate", "that's in the bin, the cream and all": the verb comes last.
  const parted = t.chunks.slice(at + 1, nextAt + 1).some((chunk) => paused(t, chunk));
  if (parted && t.group.some(({ deed }) => deed === null)) return false;
  const kind = t.chunks[nextAt]?.kind;
  return (
    kind === 'thing' || kind === 'amount' || kind === 'share' || kind === 'number' || kind === 'container'
  );
};

/** Brought by somebody else, it is theirs; by me, bought. What I gave went out. */
const broughtBy = (t: Telling, at: number, all: readonly Deed[]): Deed | null => {
  if (all.includes('gave') && all.includes('given-in') && t.subject === 'me') return 'gave';
  if (!all.includes('bought') || !all.includes('given-in')) return null;
  const others = (t.subject !== null && t.subject !== 'me') || is(t.chunks[at - 1], 'they');
  return others ? 'given-in' : 'bought';
};

/** "Poured it out", "used the last two up": a verb whose particle stands after what it was done to, where that is. */
const partedVerb = (
  t: Telling,
  chunk: Word,
  at: number,
): { readonly whole: Word; readonly to: number } | null => {
  let to = at + 1;
  const between = (next: Chunk | undefined): boolean =>
    next !== undefined &&
    !paused(t, next) &&
    (['pointer', 'thing', 'amount', 'number', 'share'].includes(next.kind) ||
      is(next, 'a', 'and', 'of', 'back'));
  while (between(t.chunks[to])) to += 1;
  const particle = t.chunks[to];
  // "Put hummus on the list" has its own word for that.
  const own = particle?.kind === 'word' && particle.to - particle.from === 1 && deedIn(particle) === null;
  if (to === at + 1 || !own || paused(t, particle)) return null;
  const words = [chunk, particle].flatMap((part) => t.tokens.slice(part.from, part.to));
  const found = t.lexicon.phrases.longestAt(words, 0);
  if (found?.length !== words.length) return null;
  const whole: Word = { ...chunk, classes: found.value };
  return deedIn(whole) === null ? null : { whole, to };
};

export const takeDeed = (t: Telling, said: Word, at: number): number | null => {
  const planned = planTo(t, said, at);
  if (planned !== null) return takePlan(t, said, at, planned);
  const parted = partedVerb(t, said, at);
  if (parted) use(t, t.chunks[parted.to]!);
  return tellDeed(t, parted?.whole ?? said, at);
};

const tellDeed = (t: Telling, chunk: Word, at: number): number | null => {
  const all = deedsIn(chunk);
  const nextAt = nextMeaning(t, at);
  const next = t.chunks[nextAt];
  use(t, chunk);
  const told = broughtBy(t, at, all) ?? all.find((one) => !weak.has(one)) ?? all[0]!;
  // "I have put", "there is … opened": the stronger verb says it.
  if (
    weak.has(told) &&
    next?.kind === 'word' &&
    deedsIn(next).some((one) => !weak.has(one) || one === 'stored') &&
    !is(next, 'listed')
  )
    return at;
  // "On the list put plantain": the list is where it goes.
  if (told === 'stored' && t.deed === 'listed' && t.drafts.length === 0) return at;
  if (told === 'listed' || told === 'unlisted') {
    listing(t, told, next?.kind === 'thing', is(chunk, 'needs'));
    return at;
  }
  if (told === 'made' && t.subject !== null && t.subject !== 'me') {
    const done = madeBy(t, at);
    if (done !== undefined) return done;
  } else if (told === 'made' && t.subject === 'me') t.maker = 'me';
  else if (told === 'given-in' && t.subject !== null && t.subject !== 'me') t.maker = t.subject;
  if (told !== 'made' && told !== 'given-in') t.maker = undefined;
  // "I carried to my sister": whom it went to is nothing of hers.
  const given = told === 'gave' && t.drafts.length > 0 && (next?.kind === 'thing' || next?.kind === 'person');
  if (given) {
    use(t, next);
    for (const draft of t.group) applyDeed(t, draft, told);
    t.inRun = false;
    return nextAt;
  }
  const or = all.find((one) => one !== told && (told !== 'bought' || one !== 'given-in')) ?? null;
  const aboutGroup = t.drafts.length > 0 && !namesNext(t, at, nextAt);
  const how =
    told === 'made' && or === 'took' && chunk.to - chunk.from === 1 ? t.tokens[chunk.from] : undefined;
  if (aboutGroup) fronted(t, at);
  if (is(chunk, 'keeps')) keeps(t, aboutGroup);
  if (aboutGroup && next?.kind !== 'pointer') {
    // "The pesto I opened", "goulash, made Monday": of what was just named.
    for (const draft of t.group) {
      applyDeed(t, draft, told);
      if (draft.deed === told) draft.or ??= or;
      if (draft.deed === told && how) draft.how ??= how;
    }
    if (t.maker) for (const draft of t.group) draft.maker = t.maker;
    t.inRun = false;
    return at;
  }
  t.deed = told;
  t.or = or;
  t.how = how;
  if (!weak.has(told) && !t.style.placesFirst) t.place = undefined;
  t.inRun = false;
  t.role = 'thing';
  if (told === 'made' && next?.kind === 'pointer') {
    const who = t.subject;
    if (!takePointer(t, next)) return null;
    if (who) for (const draft of implied(t)) draft.maker = who;
    t.dateKind = 'made';
    t.maker = undefined;
    return nextAt;
  }
  return at;
};

/** "I threw the ham and the rice, the sour cream I keep": what stands right before its own verb is of that alone. */
const fronted = (t: Telling, at: number): void => {
  const draft = t.drafts.at(-1)!;
  // "I keep" may be one piece, or two.
  const first = t.chunks[at];
  const own = first && t.lexicon.phrases.longestAt([t.tokens[first.from]!], 0)?.value.has('i') === true;
  const before = t.chunks[own ? at - 1 : at - 2];
  const says = own || is(t.chunks[at - 1], 'i');
  const named = says && before?.kind === 'thing' && before.mention === draft.thing;
  if (!named || draft.deed === null || weak.has(draft.deed)) return;
  draft.deed = null;
  t.group = t.run = [draft];
};

/** "The sour cream stays", "I'm keeping the cheese": nothing was done to it, unless a place says where it is. */
const keeps = (t: Telling, aboutGroup: boolean): void => {
  if (!aboutGroup) t.kept = true;
  else
    for (const draft of t.group) {
      draft.kept = true;
      // "Throw out the quinoa, no, keep it".
      if (t.changed && draft.deed !== null && undone.has(draft.deed)) draft.deed = null;
    }
};

const undone: ReadonlySet<Deed> = new Set<Deed>(['threw', 'finished', 'gave', 'took']);

const applyState = (t: Telling, state: string, over: boolean): void => {
  t.lost = state === 'threw' || state === 'finished' ? state : null;
  for (const draft of t.group) {
    // That it is open says nothing of when it was opened.
    if (state === 'opened') draft.dates.opened ??= 'unknown';
    else if (state === 'fine') draft.fine = true;
    // "Three of the waffles … they're gone": those three.
    else if (state === 'finished' && draft.deed === 'took' && draft.amount) continue;
    else if (
      over ||
      draft.deed === null ||
      weak.has(draft.deed) ||
      (state === 'threw' && draft.deed === 'took')
    )
      draft.deed = state as Deed;
  }
  t.inRun = false;
};

/** "Is finished", "was opened Monday", "it's milk and eggs". */
export const takeIs = (t: Telling, chunk: Word, at: number): number | null => {
  const { chunks, tokens } = t;
  const nextAt = nextMeaning(t, at);
  use(t, chunk);
  const told = chunks[nextAt];
  const beyond = chunks[nextMeaning(t, nextAt)];
  // "It's gone a bit soft": how it is, and not that it is finished.
  const goesOn =
    (is(chunks[nextAt + 1], 'a') && tokens[chunks[nextAt + 1]!.from] === 'a') ||
    beyond?.kind === 'unknown' ||
    (beyond?.kind === 'thing' && beyond.source === 'open');
  // "The brack is on the counter": what stands somewhere is a thing, known or not.
  if (is(told, 'prep', 'in-it', 'deed:stored'))
    for (const draft of t.group) {
      draft.open = false;
      // "Capers are in the door": those that are here, where there are some.
      if (draft.amount === undefined && !draft.fresh && !draft.some) draft.definite = true;
    }
  const state = told?.kind === 'word' ? stateIn(told) : null;
  if (goesOn && state) return null;
  const dated =
    told?.kind === 'word' && is(told, 'date:opened', 'date:made', 'date:frozen') && beyond?.kind === 'day';
  if (state && t.group.length > 0 && !dated) {
    use(t, told!);
    // "A jar of jam that's open and some butter": of the jam alone, and the butter joins it all the same.
    // "There are four pears. The sourdough is finished": one thing, named after a pause, is what one verb is of.
    const led = [at - 1, at - 2].some((before) => paused(t, chunks[before]));
    const own = is(chunk, 'one-is') && chunks[at - 1]?.kind === 'thing' && t.group.length > 1 && led;
    const clause = (chunks[at - 1]?.kind === 'pointer' && t.inRun) || own;
    const { group, inRun } = t;
    if (clause) t.group = group.slice(-1);
    applyState(t, state, true);
    if (clause) Object.assign(t, { group, inRun });
    t.deed = null;
    return nextAt;
  }
  const pointedAt = chunks[at - 1]?.kind === 'pointer';
  const what = told?.kind === 'thing' ? (told.mention.words ?? '') : null;
  // "It's milk and eggs": what is in it; "it's only the eggs that go there" names another.
  const another = chunks.slice(at + 1, nextAt).some((one) => is(one, 'definite'));
  if (what !== null && !another && t.group.length > 0 && pointedAt && t.lexicon.allergenOf(what))
    t.role = 'contents';
  else if (is(chunk, 'each') && t.run.length > 1) t.group = t.run;
  else if (what === null || !pointedAt) t.inRun = false;
  return at;
};

/** "The hummus all gone". */
export const takesState = (t: Telling, chunk: Word, at: number, afterDay: boolean): boolean => {
  const kind = t.chunks[nextMeaning(t, at)]?.kind;
  return (
    stateIn(chunk) !== null &&
    t.inRun &&
    t.group.length > 0 &&
    kind !== 'thing' &&
    kind !== 'pointer' &&
    // "The jollof I finished": what I did to that alone.
    !(is(t.chunks[at - 1], 'i') && deedIn(chunk) !== null) &&
    !afterDay
  );
};
export const takeState = (t: Telling, chunk: Word, at: number): number => {
  use(t, chunk);
  applyState(t, stateIn(chunk)!, false);
  return at;
};
