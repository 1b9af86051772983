/** Which item was meant. */
import { itemsAt, likeNames, livingItems } from '../../kitchen/index.js';
import { marksOf } from '../../kitchen/index.js';
import type { Id, Item } from '../../kitchen/model.js';
import { foodKey, foodWords, isFrozen, likeness } from '../../kitchen/index.js';
import { placeUnder } from '../../kitchen/index.js';
import { findByTouch } from '../../kitchen/index.js';
import { dietMarks, sortOf } from '../../safety/index.js';
import { plusDays, today } from '../../terms/dates.js';
import type { Touch } from '../../terms/touch.js';
import { ageIn, headOf as headWord, isLeftovers, oneIn } from '../../understanding/index.js';
import type { Mention } from '../../understanding/intents.js';
import type { Say } from '../../speech/answer.js';
import { type Turn, list, say, notFound } from '../handler.js';
import { statedIn } from './stated.js';
import { oldestFirst } from './tell-apart.js';
import { bySize } from './touch-fits.js';
import { waysMeant } from './touch-words.js';

/** Every item still in the kitchen, in the order it came. */
export const hereItems = (turn: Turn): readonly Item[] => livingItems(turn.kitchen);

const live = (turn: Turn, ids: readonly Id[]): Item[] =>
  ids.flatMap((id) => {
    const item = turn.kitchen.items.get(id);
    return item && item.gone === null ? [item] : [];
  });

const closeFit = 0.12;

/** The word of a name that says what the thing is. */
export const headOf = (name: string, { locale }: Pick<Turn, 'locale'>): string =>
  headWord(foodWords(name), locale);

/** "Black bean soup" is no black beans: of a name with more words than the record's, the head must be its own. */
const sameHead = (said: string, name: string, turn: Turn): boolean =>
  foodWords(said).length <= foodWords(name).length || headOf(said, turn) === headOf(name, turn);

/** "Sorghum" for the sorghum malt drink, when nothing better was matched. */
const byLikeness = (turn: Turn, { words }: Mention): Item[] => {
  const like = words
    ? likeNames(turn.kitchen, words).filter(({ item }) => sameHead(words, item.name, turn))
    : [];
  const top = like[0]?.fit ?? 0;
  return like.filter(({ fit }) => fit >= top - closeFit).map(({ item }) => item);
};

/** "The beef one", of several just told: the one whose name holds the word. */
const oneOfOffered = (turn: Turn, { words, oneOf }: Mention): Item[] => {
  const of = words === null ? null : oneIn(words, turn.locale);
  const kind = of ?? (oneOf ? words : null);
  if (kind === null) return [];
  return live(turn, turn.memory.offered).filter(({ name }) => likeness(name, kind) > 0);
};

/** Items whose names the words fit about equally well, best first. */
const byWords = (turn: Turn, mention: Mention): Item[] => {
  const offered = oneOfOffered(turn, mention);
  if (offered.length > 0) return offered;
  const here = mention.candidates.flatMap(({ id, fit }) => {
    const marked = turn.kitchen.markers.has(id) ? hereItems(turn).filter((item) => item.markerId === id) : [];
    const items = [...live(turn, [id]), ...marked];
    return items.map((item) => ({ item, fit }));
  });
  if (here.length === 0) return byLikeness(turn, mention);
  const top = Math.max(0, ...here.map(({ fit }) => fit));
  const best = new Set(here.filter(({ fit }) => fit >= top - closeFit).map(({ item }) => item));
  // Only so many candidates are handed over; a batch may be larger.
  const keys = new Set([...best].map((item) => foodKey(item.name)));
  for (const item of hereItems(turn)) if (keys.has(foodKey(item.name))) best.add(item);
  return [...best];
};

/** "The cheese", where no name ends so: what is of that kind by the tables, rather than a dressing named after it. */
const ofKind = (turn: Turn, { words }: Mention, named: readonly Item[]): Item[] => {
  const [kind, ...more] = words === null ? [] : foodWords(words);
  if (kind === undefined || more.length > 0) return [];
  if (
    named.some(
      ({ name }) =>
        headOf(name, turn) === kind || (foodWords(name)[0] === kind && foodWords(name).length === 1),
    )
  )
    return [];
  const family = (name: string): string => foodKey(sortOf(name));
  return hereItems(turn).filter(({ name }) => family(name) === kind);
};

const sameName = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();

/** Several told of together are "them" only so many turns later, when other talk was of one thing. */
const turnsThemLasts = 3;

const themMeant = ({ memory, state }: Turn): readonly Id[] => {
  if (memory.items.length > 1) return memory.items;
  // Two portions of the dish being heated are "both".
  if (memory.items.length === 1 && memory.items[0] === state.procedure?.itemId) return memory.items;
  if (memory.them.length > 0 && state.turns - memory.themTold <= turnsThemLasts) return memory.them;
  return memory.items;
};

/** Some of it was just taken: "the rest" is what is left of it. */
const takenJustNow = ({ memory, state: { done, turns } }: Turn): boolean =>
  done?.act.intent === 'take' && memory.items.length === 1 && turns - (done.turn ?? -9) <= turnsThemLasts;

/** So many told together are a list, and not one of them is "it". */
const shortList = 3;

/** Many tubs of one batch are one thing to talk of. */
const oneDish = (turn: Turn, ids: readonly Id[]): boolean =>
  new Set(live(turn, ids).map(({ batchId, id }) => batchId ?? id)).size === 1;

/** What "it", "that", "them", "the other one" point at. */
const byPointer = (turn: Turn, mention: Mention): Item[] => {
  const { memory } = turn;
  switch (mention.pointer) {
    case 'this':
      // A marker in the hand that is on nothing known is no other food.
      if (memory.touched) return live(turn, memory.touched.itemId ? [memory.touched.itemId] : []);
      return live(turn, memory.items);
    case 'it':
    case 'that':
      // After all that is on a shelf was read, "it" is still what the talk was of.
      if (memory.items.length > shortList && memory.before.length === 1 && !oneDish(turn, memory.items))
        return live(turn, memory.before);
      return live(turn, memory.items.length > 0 ? memory.items : memory.lastAdded);
    case 'all': {
      // "Everything in the meat drawer": all there is there, whatever was spoken of.
      const there = mention.at?.candidates[0];
      if (there) return [...itemsAt(turn.kitchen, there.id)];
      return live(turn, themMeant(turn));
    }
    case 'them':
    case 'both':
      return live(turn, themMeant(turn));
    case 'other': {
      const others = memory.offered.filter((id) => !memory.items.includes(id));
      return live(turn, others.length > 0 ? others : memory.before);
    }
    case 'rest':
      if (takenJustNow(turn)) return live(turn, memory.items);
      return live(
        turn,
        memory.offered.filter((id) => !memory.items.includes(id)),
      );
    case 'last-added':
      return live(turn, memory.lastAdded).length > 0 ? live(turn, memory.lastAdded) : newest(turn);
    case 'same':
    case 'another':
      return live(turn, memory.items);
    default:
      return [];
  }
};

const newest = (turn: Turn): Item[] => {
  const here = hereItems(turn);
  const last = here.reduce<Item | null>((a, b) => (!a || b.addedAt >= a.addedAt ? b : a), null);
  return last ? [last] : [];
};

export const makerFits = (item: Item, maker: string): boolean =>
  item.maker !== null &&
  (sameName(item.maker, maker) || item.maker.toLowerCase().includes(maker.toLowerCase()));

/** "The cloth patch" beside cloth patches with ridges: the one without is meant. */
const undotted = (turn: Turn, touch: Touch, items: readonly Item[]): Item[] => {
  if (touch.dots !== undefined || touch.counted !== undefined || !(touch.shape ?? touch.fastening))
    return [...items];
  const marked = items.filter(({ markerId }) => markerId !== null);
  const plain = marked.filter(({ markerId }) => !turn.kitchen.markers.get(markerId!)?.touch.dots);
  return plain.length === 1 && marked.length === items.length ? plain : [...items];
};

/** Those that fit what the hand describes best, read in the first way that fits any. */
export const fittingTouch = (turn: Turn, said: Touch, among: readonly Item[]): Item[] => {
  for (const touch of waysMeant(said)) {
    const matches = findByTouch(turn.kitchen, touch, among).filter(({ differs }) => differs.length === 0);
    const top = matches[0]?.fit ?? 0;
    if (matches.length > 0)
      return undotted(
        turn,
        touch,
        matches.filter(({ fit }) => fit === top).map(({ of }) => of),
      );
  }
  return [];
};

/** Narrows by what else was said of it. A detail that fits nothing is reported, not ignored. */
const narrow = (turn: Turn, mention: Mention, items: readonly Item[]): { items: Item[]; failed: boolean } => {
  let left = [...items];
  let failed = false;
  const keep = (test: (item: Item) => boolean): void => {
    const kept = left.filter(test);
    if (kept.length === 0 && left.length > 0) failed = true;
    else left = kept;
  };
  const { touch } = mention;
  if (touch && Object.keys(touch).length > 0) {
    const fitting = fittingTouch(turn, touch, left);
    const onlySize = Object.keys(touch).length === 1 && touch.size !== undefined;
    const sized = fitting.length === 0 && onlySize ? bySize(touch.size!, left) : fitting;
    if (sized.length > 0) left = sized;
    else if (left.length > 0) failed = true;
  }
  // "Shepherd's pie" is a name, and no shepherd's.
  const { maker } = mention;
  if (maker)
    keep((item) => makerFits(item, maker) || foodWords(item.name).includes(foodWords(maker)[0] ?? ''));
  if (mention.diet) {
    // What is marked vegan is vegetarian, too.
    const fits = dietMarks(mention.diet.toLowerCase());
    keep((item) => marksOf(turn.kitchen, item).diets.some((diet) => fits.includes(diet.toLowerCase())));
  }
  if (mention.at && mention.at.candidates.length > 0) {
    const top = mention.at.candidates[0]!.fit;
    const ids = mention.at.candidates.filter(({ fit }) => fit >= top - closeFit).map(({ id }) => id);
    keep((item) => ids.some((id) => placeUnder(turn.kitchen, item.placeId, id)));
  }
  return { items: left, failed };
};

export interface Found {
  readonly items: readonly Item[];
  /** Named, but nothing here is called that. */
  readonly unknown: string | null;
  /** Some detail said of it fits none of them: these are near. */
  readonly near: boolean;
  /** Nothing was named at all. */
  readonly missing: boolean;
}

/** What was made longer ago is put by, and no leftover: our own word for it, and no guidance. */
const leftoverDays = 10;

const nothing: Found = { items: [], unknown: null, near: false, missing: true };

/** "the second one", "the last one", of a list. */
export const atOrdinal = <T>(of: readonly T[], n: number): T | undefined => (n < 0 ? of.at(n) : of[n - 1]);

/** "The older one", of those told apart; "old lasagna" is none of them where none is a lasagna. */
const offeredOf = (turn: Turn, kind: string): Item[] =>
  live(turn, turn.memory.offered).filter(({ name }) => kind === '' || likeness(name, kind) > 0);

/**
 * Everything the mention fits. Words narrow by touch, maker, diet and place; a pointer is
 * followed; an ordinal counts in what was last told apart.
 */
export const findItems = (turn: Turn, mention: Mention | undefined): Found => {
  if (!mention) return nothing;
  if (mention.ordinal !== null && mention.candidates.length === 0) {
    const at = atOrdinal(turn.memory.offered, mention.ordinal);
    return { ...nothing, items: at ? live(turn, [at]) : [], missing: !at };
  }
  const named = byWords(turn, mention);
  const kinds = ofKind(turn, mention, named);
  const worded = kinds.length > 0 ? kinds : named;
  if (worded.length > 0) {
    const { items, failed } = narrow(turn, mention, worded);
    // "Lactose free milk" may be marked so, or called so.
    if (failed && mention.diet && mention.words) {
      const words = `${mention.diet} ${mention.words}`;
      const called = findItems(turn, { ...mention, words, diet: null, candidates: [] });
      if (called.items.length > 0 && !called.near) return called;
    }
    const told = items.filter((item) => turn.memory.items.includes(item.id));
    // "Take two of the chilli out", just after the chilli of one shelf was spoken of, means those.
    const settled =
      told.length > 0 && told.length < items.length && mention.pointer !== null && mention.words !== null
        ? told
        : items;
    return { items: settled, unknown: null, near: failed, missing: false };
  }
  if (mention.pointer && mention.pointer !== 'none') {
    const pointed = byPointer(turn, mention);
    const { items, failed } = narrow(turn, mention, pointed);
    return { items, unknown: null, near: failed, missing: pointed.length === 0 };
  }
  // "Leftovers": what was cooked and stands ready.
  if (isLeftovers(mention.words ?? '', turn.locale) && named.length === 0) {
    const since = plusDays(today(turn.clock), -leftoverDays);
    const ready = hereItems(turn).filter((item) => (item.dates.made ?? '') >= since && !isFrozen(turn, item));
    const { items, failed } = narrow(turn, mention, ready);
    if (items.length > 0 && !failed) return { items, unknown: null, near: false, missing: false };
  }
  const stated = mention.words && mention.candidates.length === 0 ? statedIn(turn, mention.words) : null;
  if (stated) {
    const plain = findItems(turn, { ...mention, words: stated.words });
    const all = plain.items.filter((item) => stated.is(item));
    // "Cooked chicken" is the roast one rather than the stock.
    const heads = all.filter(({ name }) => headOf(name, turn) === headOf(stated.words, turn));
    const so = heads.length > 0 ? heads : all;
    if (plain.items.length > 0) return { ...plain, items: so.length > 0 ? so : plain.items };
  }
  if (mention.words) {
    const aged = ageIn(mention.words, turn.locale);
    if (aged) {
      const sorted = oldestFirst(offeredOf(turn, aged.of));
      const end = aged.age === 'old' ? sorted[0] : sorted.at(-1);
      if (end) return { items: [end], unknown: null, near: false, missing: false };
    }
    return { items: [], unknown: mention.words, near: false, missing: false };
  }
  const described =
    mention.touch || mention.maker || mention.diet || (mention.at?.candidates.length ?? 0) > 0;
  if (!described) return nothing;
  // "The one on the top shelf", just after several were told, is one of those.
  const told = live(turn, [...new Set([...turn.memory.items, ...turn.memory.offered])]);
  const among = told.length > 1 && turn.qualifiers.has('one') ? narrow(turn, mention, told) : null;
  if (among && !among.failed && among.items.length < told.length)
    return { items: among.items, unknown: null, near: false, missing: false };
  const { items, failed } = narrow(turn, mention, hereItems(turn));
  return { items: failed ? [] : items, unknown: null, near: failed, missing: false };
};

/** Most that are offered in place of what is not here. */
const nearestTold = 3;

/** What is nearest to a name that is not here: of the same kind of thing, then of the same stuff. */
export const nearestTo = (turn: Turn, words: string): readonly string[] => {
  const here = hereItems(turn);
  const head = headOf(words, turn);
  const said = foodWords(words);
  if (said.length < 2) return [];
  const kind = here.filter(({ name }) => headOf(name, turn) === head);
  const stuff = here.filter(({ name }) => foodWords(name).every((word) => said.includes(word)));
  return [...new Set([...kind, ...stuff].map(({ name }) => name))].slice(0, nearestTold);
};

/** That there is none of that name; and what is nearest, where anything is. */
export const noSuch = (turn: Turn, name: string): Say[] => {
  const near = nearestTo(turn, name);
  return [
    notFound('no-such-item', { name }),
    ...(near.length > 0 ? [say('nearest-is', { items: list(near, true), count: near.length })] : []),
  ];
};
