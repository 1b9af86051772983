/**
 * What is being put together while a sentence is read from left to right, and the few things every part
 * of the reader does with it. One reading in one style; `assemble.ts` tries several and keeps the cheapest.
 */
import type { DynamicRules } from '../../../grammar/api.js';
import type { Deed, Mention, PlaceMention, SaidDate } from '../../intents.js';
import type { Chunk, ChunkOf } from '../api.js';
import { newDraft, type Draft } from '../draft.js';
import type { MovesLexicon } from '../lexicon.js';

export type DateKind = keyof Draft['dates'];
export type Word = ChunkOf<'word'>;

/** Which way round roles stand: a listener finds out from the sentence. */
export interface Style {
  /** "Door: milk, eggs. Drawer: carrots": a place is of what follows. */
  readonly placesFirst: boolean;
  /** "Mackerel five tins, walnuts two bags": an amount is of what was named before. */
  readonly amountsAfter: boolean;
}

export interface Telling {
  readonly chunks: readonly Chunk[];
  readonly tokens: readonly string[];
  readonly pauses: ReadonlySet<number>;
  readonly rules: DynamicRules;
  readonly lexicon: MovesLexicon;
  readonly style: Style;
  readonly drafts: Draft[];
  readonly used: Set<number>;
  readonly left: number[];
  /** What speaks against this reading, natural logarithm. */
  cost: number;
  /** What is being talked of now. */
  group: Draft[];
  /** The last things named one after the other: "they". */
  run: Draft[];
  /** The last thing said was a thing, so that the next joins it. */
  inRun: boolean;
  /** What is talked of now was named before in this sentence. */
  again: boolean;
  /** Said before their thing. */
  deed: Deed | null;
  or: Deed | null;
  /** "Roasted": how what is named next was cooked. */
  how: string | undefined;
  amount: Draft['amount'];
  share: Draft['share'];
  definite: boolean;
  fresh: boolean;
  /** "A pineapple": one. */
  single: boolean;
  /** "Some eggs", "a pie": none that was spoken of before. */
  some: boolean;
  container: Draft['container'];
  place: PlaceMention | undefined;
  maker: string | undefined;
  /** "Dairy-free cheese": how it is eaten, before what it is. */
  diets: readonly string[];
  owner: Draft['owner'];
  early: SaidDate | null;
  dateKind: DateKind | null;
  /** What the next name is: one of the contents, or what it lacks. */
  role: 'thing' | 'contents' | 'lacks';
  /** "The rest", "the others": of what was told of. */
  whole: boolean;
  /** "The fridge has milk and ham in it": told from the place, which is what "it" is. */
  fromPlace: boolean;
  /** "No, …" opened the sentence. */
  corrects: boolean;
  /** Something of this sentence was taken back. */
  changed: boolean;
  /** How many did it: "Junie and I". */
  doers: number;
  /** How many fewer there are than was said first. */
  slip: number | null;
  /** A slip was just taken back: what follows is in its place. */
  repaired: boolean;
  /** "There's no marker on …": of what is named next. */
  bare: boolean;
  /** A marker in the hand, before what it goes on is named: "tied the ribbon round the juice". */
  held: Mention | null;
  /** "I'm keeping …": what is named next stays as it is. */
  kept: boolean;
  /** "I need …": to be bought, if it is something that is bought. */
  needs: boolean;
  /** "Quedan dos": the amount said next is what is left. */
  remains: boolean;
  /** "An open jar of …": what is named next is open already. */
  opened: boolean;
  /** One of its contents was taken back: what follows is in it instead. */
  ofContents: boolean;
  /** Why it was done is being said. */
  reason: boolean;
  /** How what was spoken of last went: "the milk's gone, and the cream too" is both. */
  lost: Deed | null;
  /** Who did it. */
  subject: string | null;
  /** The kind of the last place: "shelf", for "the top one". */
  lastKind: string | null;
}

export const newTelling = (
  given: Pick<Telling, 'chunks' | 'tokens' | 'pauses' | 'rules' | 'lexicon' | 'style'>,
): Telling => ({
  ...given,
  drafts: [],
  used: new Set(),
  left: [],
  cost: 0,
  group: [],
  run: [],
  inRun: false,
  again: false,
  deed: null,
  or: null,
  how: undefined,
  amount: undefined,
  share: undefined,
  definite: false,
  fresh: false,
  single: false,
  some: false,
  container: undefined,
  place: undefined,
  maker: undefined,
  diets: [],
  owner: undefined,
  early: null,
  dateKind: null,
  role: 'thing',
  whole: false,
  fromPlace: false,
  corrects: false,
  doers: 1,
  slip: null,
  repaired: false,
  changed: false,
  held: null,
  bare: false,
  kept: false,
  needs: false,
  remains: false,
  opened: false,
  ofContents: false,
  reason: false,
  lost: null,
  subject: null,
  lastKind: null,
});

/** Costs of what is odd in a reading, natural logarithms: fitted by ear, on what strangers told. */
export const odd = {
  /** A role said twice of one thing. */
  twice: 1.6,
  /** A thing put away that nobody said the place of, where others have theirs. */
  placeless: 0.8,
  /** A place taken from what was named before. */
  inherited: 0.5,
  /** An amount that goes on over a pause. */
  overPause: 0.4,
  placesFirst: 0.3,
  amountsAfter: 0.3,
} as const;

export const is = (chunk: Chunk | undefined, ...classes: readonly string[]): boolean =>
  chunk?.kind === 'word' && classes.some((name) => chunk.classes.has(name));

const named = (chunk: Word, prefix: string): readonly string[] =>
  [...chunk.classes].flatMap((name) => (name.startsWith(prefix) ? [name.slice(prefix.length)] : []));
export const deedsIn = (chunk: Word): readonly Deed[] => named(chunk, 'deed:') as readonly Deed[];
export const deedIn = (chunk: Word): Deed | null => deedsIn(chunk)[0] ?? null;
export const stateIn = (chunk: Word): string | null => named(chunk, 'state:')[0] ?? null;
export const dateKindIn = (chunk: Word): DateKind | null => (named(chunk, 'date:')[0] as DateKind) ?? null;

/** It says that something went. */
export const isGone = (chunk: Chunk): boolean =>
  is(chunk, 'state:finished', 'state:threw', 'deed:finished', 'deed:threw', 'deed:gave', 'deed:took');

/** When a deed was done is a date of the thing. */
export const dateOfDeed: Partial<Record<Deed, DateKind>> = {
  made: 'made',
  bought: 'bought',
  // The record holds one date for the day something came in; what somebody made or brought is not said to be bought.
  'given-in': 'bought',
  opened: 'opened',
  froze: 'frozen',
  thawing: 'thawed',
};
/** Dates that stand on the package lie ahead. */
export const printed: ReadonlySet<DateKind> = new Set<DateKind>(['useBy', 'bestBefore']);
/** Verbs that say little where another one follows: "I have made", "there is". */
export const weak: ReadonlySet<string> = new Set(['stored']);

export const use = (t: Telling, chunk: Chunk): void => {
  for (let at = chunk.from; at < chunk.to; at += 1) t.used.add(at);
};
export const leave = (t: Telling, chunk: Chunk): void => {
  for (let at = chunk.from; at < chunk.to; at += 1) {
    t.used.delete(at);
    t.left.push(at);
  }
};

/** What something is said of: what is talked of now, else of what was last spoken of before. */
export const implied = (t: Telling): readonly Draft[] => {
  if (t.group.length > 0) return t.group;
  const draft = newDraft(null, { corrects: t.corrects });
  t.drafts.push(draft);
  t.group = t.run = [draft];
  return t.group;
};
export const lastOf = (t: Telling): Draft => implied(t).at(-1)!;

const one = { value: 1, unit: 'piece' } as const;
/** "I put a pineapple", "I ate a pear" count one; "I opened a jar" says nothing of how many there are. */
const COUNTS_ONE: ReadonlySet<Deed> = new Set<Deed>([
  'stored',
  'bought',
  'given-in',
  'took',
  'gave',
  'threw',
]);
const countsOne = (deed: Deed | null): boolean => deed === null || COUNTS_ONE.has(deed);

/** "And the ham", "sour cream too": named after something else and no more, it goes the same way. */
const joins = (t: Telling, thing: Mention): boolean => {
  let at = t.chunks.findIndex((chunk) => chunk.kind === 'thing' && chunk.mention === thing);
  for (; at > 0 && !paused(t, t.chunks[at]); at -= 1) {
    const before = t.chunks[at - 1]!;
    if (is(before, 'and')) return true;
    const ofIt = ['amount', 'share', 'number', 'pointer', 'container'].includes(before.kind);
    if (!ofIt && !is(before, 'definite', 'a', 'that')) return false;
  }
  return true;
};

/** A thing is named: what was said before it is its. */
const doneBy = ({ subject }: Telling): { by?: string } =>
  subject !== null && subject !== 'me' ? { by: subject } : {};

export const begin = (t: Telling, thing: Mention, part: Partial<Draft> = {}): Draft => {
  const { deed, or, how, single, definite, fresh, corrects, amount, share, container, place, maker, owner } =
    t;
  const draft = newDraft(thing, {
    deed,
    or,
    definite,
    fresh,
    corrects,
    ...(how && deed === 'made' ? { how } : {}),
    ...(amount ? { amount } : single && !share && countsOne(deed) ? { amount: one } : {}),
    ...(share ? { share } : {}),
    ...(container ? { container } : {}),
    ...(place ? { place } : {}),
    ...(maker ? { maker } : {}),
    ...(owner ? { owner } : {}),
    ...doneBy(t),
    ...part,
  });
  if (deed !== null && isLoss.has(deed)) t.lost = deed;
  else if (deed !== null) t.lost = null;
  draft.alsoLost = deed === null && joins(t, thing) ? t.lost : null;
  const kind = deed ? dateOfDeed[deed] : undefined;
  if (kind && t.early) draft.dates[kind] = t.early;
  if (t.needs && deed === 'listed') draft.needed = true;
  if (t.kept && deed === 'stored') draft.kept = true;
  if (t.remains) leaves(t, draft);
  if (t.opened) draft.dates.opened = 'unknown';
  t.opened = false;
  draft.diets.push(...t.diets);
  t.diets = [];
  draft.some = t.some;
  t.some = false;
  t.amount = t.share = t.container = t.owner = undefined;
  t.definite = t.fresh = t.single = false;
  if (t.bare) {
    draft.unmarked = draft.definite = true;
    draft.deed = draft.or = null;
    delete draft.amount;
    t.deed = t.or = null;
    t.bare = false;
  }
  if (t.held) {
    draft.marker = t.held;
    draft.definite = true;
    draft.deed = draft.or = null;
    delete draft.amount;
    t.held = t.deed = t.or = null;
  }
  t.drafts.push(draft);
  return draft;
};

/** What was said of how many there are is what is left. */
export const leaves = (t: Telling, draft: Draft): void => {
  const left = draft.amount ?? draft.share;
  if (left === undefined) return;
  draft.left = left;
  delete draft.amount;
  delete draft.share;
  draft.definite = true;
  if (draft.deed !== null && weak.has(draft.deed)) draft.deed = null;
  t.remains = false;
};

const isLoss: ReadonlySet<Deed> = new Set<Deed>(['threw', 'finished', 'gave']);

/** A deed told of something already spoken of in this sentence. */
export const applyDeed = (t: Telling, draft: Draft, told: Deed): void => {
  const kind = dateOfDeed[told];
  // "I take the tub and pop it on the top shelf": it only changes its place.
  if (told === 'stored' && draft.deed === 'took') draft.setDown = true;
  if (draft.deed === null || weak.has(draft.deed)) {
    if (!weak.has(told) || draft.deed === null) {
      draft.deed = told;
      if (t.deed === told) draft.or = t.or;
    }
  }
  if (kind && kind !== 'bought') t.dateKind = kind;
  // Taken out to thaw, moved to freeze: what it is for says more.
  if ((told === 'thawing' || told === 'froze') && (draft.deed === 'took' || draft.deed === 'moved'))
    draft.deed = told;
  if ((told === 'threw' || told === 'finished') && draft.deed === 'took') draft.deed = told;
  // "It's gone, poured it out": how it went says more than that it did.
  if ((told === 'threw' || told === 'gave') && draft.deed === 'finished') draft.deed = told;
  if (isLoss.has(told)) t.lost = told;
  if (told === 'made' && t.subject) draft.maker ??= t.subject;
  Object.assign(draft, doneBy(t));
};

/** The next after this that is no filler or article. */
export const nextMeaning = ({ chunks }: Telling, at: number): number => {
  let next = at + 1;
  while (is(chunks[next], 'fill', 'a') && !is(chunks[next], 'has')) next += 1;
  return next;
};

export const paused = ({ pauses }: Telling, chunk: Chunk | undefined): boolean =>
  chunk !== undefined && pauses.has(chunk.from);

export const headOf = (words: string): string =>
  (words.split(' ').at(-1) ?? '').replace(/s$/, '').replace(/e$/, '');

/** A name said shorter, or again: "the salmon", of the smoked salmon of this sentence. */
export const sameThing = (said: Mention, before: Mention | null): boolean => {
  if (!said.words || !before?.words) return false;
  if (said.words === before.words) return true;
  const all = new Set(before.words.split(' ').map(headOf));
  return said.words.split(' ').every((word) => all.has(headOf(word)));
};
