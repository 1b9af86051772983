/** Whether a thing has a fact that a question narrows by. */
import { isFrozen, placeUnder, standing, storageOf } from '../../kitchen/index.js';
import type { Id, Item, Person } from '../../kitchen/model.js';
import type { Days, Filter, Who } from '../../protocol/query.js';
import { allergenIn, assessIn, dietMarks, isCookedFood, isHomeMade } from '../../safety/index.js';
import { marksOf, meaningIn } from '../../kitchen/index.js';
import { dayOf, plusDays } from '../../terms/dates.js';
import { type Turn, speakerPerson, todayOf } from '../handler.js';
import { fittingTouch, makerFits } from '../refer/items.js';
import { findPlace } from '../refer/places.js';

/** Below this a name only sounds like hers. */
const surelyThem = 0.79;

/** "They both": the last two who were spoken of. */
const bothOf = 2;

/** Everybody who was meant. */
export const peopleOf = (turn: Turn, said: Who): readonly Person[] => {
  if (said.who === 'everybody')
    return [...turn.kitchen.people.values()].filter(({ allergens }) => allergens.length > 0);
  if (said.who === 'unnamed') return [];
  if (said.who !== 'several') {
    const one = personOf(turn, said);
    return one ? [one] : [];
  }
  if (said.each.length > 0) return said.each.flatMap((one) => personOf(turn, one) ?? []);
  const spoken = turn.memory.people.slice(0, bothOf).toReversed();
  return spoken.flatMap((id) => turn.kitchen.people.get(id) ?? []);
};

/** Who was meant; null for somebody the household does not know, or when it is not known who speaks. */
export const personOf = (turn: Turn, said: Who): Person | null => {
  switch (said.who) {
    case 'me':
      return speakerPerson(turn) ?? null;
    case 'same':
      return (turn.memory.personId && turn.kitchen.people.get(turn.memory.personId)) || null;
    case 'several':
    case 'everybody':
    case 'unnamed':
      return peopleOf(turn, said)[0] ?? null;
    case 'named': {
      const [near] = said.person.candidates;
      return near && near.fit >= surelyThem ? (turn.kitchen.people.get(near.id) ?? null) : null;
    }
  }
};

/** A place's own name. */
const plainly = 0.9;

/** Ids of the places meant: one, or each that it may be. Null for no place of this kitchen. */
export const placeIds = (turn: Turn, filter: Extract<Filter, { by: 'place' }>): readonly Id[] | null => {
  const each = filter.places.map((mention): readonly Id[] => {
    // Named for certain: the likeliest of those so called, and each of them where none is.
    const [best] = mention.candidates;
    const so = mention.candidates.filter(({ fit }) => fit === best?.fit);
    if (best && so.length === 1 && best.fit >= plainly) return [best.id];
    const found = findPlace(turn, mention);
    if (found.found === 'one') return [found.place.id];
    return found.found === 'several' ? found.choices.flatMap(({ ids }) => ids) : [];
  });
  const all = [...new Set(each.flat())];
  // "The upright freezer", in two words: what lies in both, where anything does.
  const inner = all.filter((id) =>
    each.every((ids) => ids.some((other) => placeUnder(turn.kitchen, id, other))),
  );
  const meant = inner.length > 0 ? inner : all;
  return meant.length > 0 ? meant : null;
};

/** So little is left that it is soon gone: our own word for it. */
const lowShare = 0.34;
const isLow = ({ amount, amountAtFirst: first }: Item): boolean => {
  if (!amount) return false;
  if (first && first.unit === amount.unit && first.value > amount.value)
    return amount.value / first.value <= lowShare;
  return amount.value > 0 && amount.value <= lowShare;
};

/** Days ahead that count as soon, when no day was told. */
const soonDays = 2;

type Test = (item: Item) => boolean;

/** Cooked by its name, or made here. */
const isCooked: Test = (item) => isCookedFood(item.name, { homeMade: isHomeMade(item) });

/** Verdicts by which guidance speaks for a thing: where it gives no figure or no day is known, it does not. */
const within: ReadonlySet<string> = new Set(['fine', 'use-soon', 'last-day', 'past-best-quality']);

const keepingTest = (turn: Turn, { is, day }: Extract<Filter, { by: 'keeping' }>): Test => {
  const today = todayOf(turn);
  const until = day ?? plusDays(today, soonDays + 1);
  return (item) => {
    const { verdict, lastDay } = assessIn(turn.kitchen, item, turn.clock);
    const printed = item.dates.useBy;
    const past = verdict === 'throw-out' || (printed !== undefined && printed < today);
    if (is === 'past') return past;
    if (is === 'expired') return printed !== undefined && printed < today;
    if (is === 'within') return !past && within.has(verdict);
    return !past && lastDay !== null && lastDay < until;
  };
};

const dateTest = ({ of, days: { from, until } }: Extract<Filter, { by: 'date' }>): Test => {
  const inside = (at: string | undefined): boolean =>
    at !== undefined && (from === null || at >= from) && (until === null || at <= until);
  return ({ dates }) => (of ? inside(dates[of]) : Object.values(dates).some(inside));
};

/** Put where it is on one of these days, by the journal; what was taken back since was not. */
const putTest = (turn: Turn, { from, until }: Days): Test => {
  const put = new Set(
    standing(turn.journal).flatMap((entry) => {
      const at = dayOf(entry.at, turn.clock.timeZone);
      if (entry.verb === 'imported' || (from !== null && at < from) || (until !== null && at > until))
        return [];
      return entry.ops.flatMap((op) =>
        op.kind === 'item' && op.after?.placeId && op.before?.placeId !== op.after.placeId ? [op.id] : [],
      );
    }),
  );
  return ({ id }) => put.has(id);
};

const personTest = (turn: Turn, filter: Extract<Filter, { by: 'maker' | 'owner' | 'suits' }>): Test => {
  const person = personOf(turn, filter.who);
  const name = person?.name ?? (filter.who.who === 'named' ? filter.who.person.words : null);
  if (name === null) return () => false;
  if (filter.by === 'maker') return (item) => makerFits(item, name);
  if (filter.by === 'owner')
    return (item) => (person !== null && item.ownerId === person.id) || makerFits(item, name);
  const allergens = [...new Set(peopleOf(turn, filter.who).flatMap((one) => one.allergens))];
  return (item) => {
    const answers = allergens.map((allergen) => allergenIn(item, allergen).answer);
    return filter.is
      ? answers.every((answer) => answer === 'said-free-from')
      : answers.includes('said-to-contain');
  };
};

/** A test of each thing; null for a filter that takes the whole set to settle (a name, a feel). */
export const testOf = (turn: Turn, filter: Filter): Test | null => {
  switch (filter.by) {
    case 'named':
    case 'each':
    case 'felt':
      return null;
    case 'place': {
      const ids = placeIds(turn, filter);
      return ({ placeId }) => ids?.some((id) => placeUnder(turn.kitchen, placeId, id)) ?? false;
    }
    case 'spot':
      return ({ spot }) => (spot ?? '').toLowerCase().split(' ').includes(filter.spot);
    case 'maker':
    case 'owner':
    case 'suits':
      return personTest(turn, filter);
    case 'contains':
      return (item) => filter.allergens.some((one) => allergenIn(item, one).answer === 'said-to-contain');
    case 'free':
      return (item) => filter.allergens.every((one) => allergenIn(item, one).answer === 'said-free-from');
    case 'diet': {
      const fits = dietMarks(filter.diet.toLowerCase());
      return (item) => marksOf(turn.kitchen, item).diets.some((diet) => fits.includes(diet.toLowerCase()));
    }
    case 'date':
      return dateTest(filter);
    case 'put':
      return putTest(turn, filter.days);
    case 'keeping':
      return keepingTest(turn, filter);
    case 'listed':
      return () => true;
    case 'low':
      return isLow;
    case 'caution':
      // Written on it, or what the marks on its marker mean in this household.
      if (filter.words.length === 0) return (item) => item.cautions.length > 0;
      return (item) =>
        [...item.cautions, ...marksOf(turn.kitchen, item).diets].some((one) =>
          filter.words.some((word) => one.toLowerCase().split(' ').includes(word)),
        );
    case 'means': {
      const person = filter.who ? personOf(turn, filter.who) : null;
      const words = person ? `${filter.words} ${person.name.toLowerCase()}` : filter.words;
      const meaning = meaningIn(turn.kitchen, words) ?? words;
      return (item) =>
        meaning !== null && marksOf(turn.kitchen, item).diets.some((one) => one.toLowerCase() === meaning);
    }
    case 'dated':
      return ({ dates }) => Object.keys(dates).length > 0 === filter.is;
    case 'told': {
      const told = new Set([...turn.memory.items, ...turn.memory.offered]);
      return ({ id }) => told.has(id);
    }
    case 'marked':
      return ({ markerId }) => (markerId !== null) === filter.is;
    case 'state':
      switch (filter.state) {
        case 'frozen':
          return (item) => isFrozen(turn, item);
        case 'opened':
          return ({ dates }) => dates.opened !== undefined;
        case 'unopened':
          return ({ dates }) => dates.opened === undefined;
        case 'cooked':
          return isCooked;
        case 'raw':
          return (item) => !isCooked(item);
        case 'fresh':
          return (item) => !isCooked(item) && !isFrozen(turn, item);
        case 'chilled':
          return ({ placeId }) => storageOf(turn.kitchen, placeId) === 'fridge';
        case 'room':
          return ({ placeId }) =>
            !['fridge', 'freezer'].includes(storageOf(turn.kitchen, placeId) ?? 'fridge');
      }
      break;
    case 'not': {
      const test = testOf(turn, filter.filter);
      return test && ((item) => !test(item));
    }
  }
  return null;
};

/** Those that feel as described: as one set, since the nearest fit counts. */
export const feltLike = (
  turn: Turn,
  { touch }: Extract<Filter, { by: 'felt' }>,
  among: readonly Item[],
): readonly Item[] => fittingTouch(turn, touch, among);
