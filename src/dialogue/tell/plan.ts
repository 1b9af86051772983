/**
 * What a statement comes to, given what is on record: putting away something new, or a move, an opening, a
 * fact of something that is here. The acts are those every other way of saying it ends in.
 */
import {
  foodKey,
  isMeasured,
  livingItems,
  personNamed,
  placeUnder,
  purchaseOf,
  storageOf,
} from '../../kitchen/index.js';
import { isCookedDish, isSoldRaw } from '../../safety/index.js';
import type { Item } from '../../kitchen/model.js';
import type { Amount } from '../../terms/amount.js';
import type { Act, Mention, Slots, Statement } from '../../understanding/intents.js';
import { emptyMention, itMention } from '../../understanding/intents.js';
import { todayOf, type Turn } from '../handler.js';
import { dishAmong } from '../refer/dish.js';
import { findItems } from '../refer/items.js';
import { oldestFirst } from '../refer/tell-apart.js';
import { findPlace } from '../refer/places.js';
import { makerOf, ownerOf } from './facts.js';

/** One thing to be done about it. */
export type Step =
  /** `items`: just these are meant, whatever else is called so. */
  | { readonly do: 'act'; readonly act: Act; readonly items?: readonly Item[] }
  /** Facts to be kept of these records; of what was just put away where there are none yet. */
  | {
      readonly do: 'facts';
      readonly items: readonly Item[];
      readonly statement: Statement;
      readonly amount: boolean;
    };

/** Names fit so well that no other food is meant. */
const named = 0.9;

/** Something is so, of what was last spoken of: what it is stands beside it. */
export const aFact = {
  deed: 'fact',
  thing: null,
  definite: true,
  fresh: false,
  corrects: false,
} as const satisfies Statement;

const mentionOf = ({ thing }: Statement): Mention => thing ?? itMention;
/** "Tortillas, the gluten free kind": which kind is part of what is bought. */
const toBuy = (statement: Statement): Mention => {
  const mention = mentionOf(statement);
  const kinds = (statement.diets ?? []).filter((diet) => !mention.words?.includes(diet));
  return kinds.length > 0 && mention.words
    ? { ...emptyMention, words: [...kinds, mention.words].join(' ') }
    : mention;
};

/** "A cabbage for the slaw": what it is for stands with it on the list. */
const toBuySlots = (statement: Statement): Slots => {
  const item = toBuy(statement);
  const { amount, notes } = statement;
  const counted = amount ? { amount } : {};
  return notes?.[0] ? { items: [item], lines: [{ item, note: notes[0], ...counted }] } : { item, ...counted };
};

/** What the two last puttings away of this talk brought in, the newer first, with all their tubs. */
const lastTwo = ({ journal, kitchen, clock }: Turn): readonly (readonly Item[])[] =>
  journal
    .filter(({ at }) => Date.parse(clock.now) - Date.parse(at) < aTalk)
    .flatMap(({ ops }) => {
      const brought = ops.flatMap((op) => {
        const item = op.kind === 'item' && op.before === null ? kitchen.items.get(op.id) : undefined;
        return item && item.gone === null ? [item] : [];
      });
      return brought.length > 0 ? [brought] : [];
    })
    .slice(0, 2);
/** Milliseconds: what lies further back is not what two things told one after the other are. */
const aTalk = 30 * 60_000;

/** "Both of them", "them both": the two foods put away one after the other, where only one was spoken of since. */
const bothOf = (turn: Turn, spoken: readonly Item[], pair: boolean): readonly Item[] => {
  const [newer = [], older = []] = lastTwo(turn);
  const isSpoken = ({ id }: Item): boolean => spoken.some((one) => one.id === id);
  const goesBy = newer.length > 0 && !newer.some(isSpoken) && older.some(isSpoken);
  // "Them both", after eight tubs of one dish and two of another: the dishes.
  const dishes = new Set([...older, ...newer].map(({ name }) => foodKey(name)));
  const ofOne = pair && dishes.size === 2 && newer.some(isSpoken) && !older.some(isSpoken);
  return older.length > 0 && (spoken.length < 2 || goesBy || ofOne) ? [...older, ...newer] : spoken;
};

/** Asked about while a place is checked against the record: its name said shorter is that. */
const checked = (turn: Turn, words: string): readonly Item[] => {
  const { session } = turn.state;
  if (session?.kind !== 'count' || session.paused) return [];
  const said = foodKey(words).split(' ');
  return session.itemIds
    .flatMap((id) => turn.kitchen.items.get(id) ?? [])
    .filter(
      ({ name, gone }) => gone === null && said.every((word) => foodKey(name).split(' ').includes(word)),
    );
};

/** "The gumbo": short for one that is here, where a thing that is here is spoken of. */
const takesShort = ({ definite, fresh, deed, place, marker, stands }: Statement): boolean =>
  definite &&
  !fresh &&
  (marker !== undefined ||
    // "The salmon is on the bottom shelf": nobody said that it was put there.
    stands === true ||
    (deed !== 'stored' && deed !== 'made' && deed !== 'bought') ||
    place === undefined);
const shortFor = (turn: Turn, { thing }: Statement): readonly Item[] => {
  const near = (thing?.candidates ?? []).flatMap(({ id, fit }) => {
    const item = turn.kitchen.items.get(id);
    return item && item.gone === null ? [{ item, fit, key: foodKey(item.name) }] : [];
  });
  // "The stew", after one of them was put away or told of: that one.
  const spoken = near.find(
    ({ item: { id }, fit }) =>
      fit > near[0]!.fit - clearly && (turn.memory.lastAdded.includes(id) || turn.memory.items.includes(id)),
  );
  const best = spoken ?? near[0];
  // Of two it may be short for, which one is asked; tubs of one dish are one.
  if (!best || (!spoken && near.some(({ fit, key }) => key !== best.key && fit > best.fit - clearly)))
    return [];
  return livingItems(turn.kitchen).filter(({ name }) => foodKey(name) === best.key);
};
const clearly = 0.1;

const isNewest = ({ newest, fresh, definite, amount, place, parts, deed }: Statement): boolean =>
  newest === true ||
  (fresh && definite && !amount && !place && !parts && (deed === 'fact' || deed === 'opened'));

/** Of hers that are here and called just that; where something newer was spoken of, those. */
export const recordsOf = (turn: Turn, statement: Statement): readonly Item[] => {
  const { except = [], ...said } = statement;
  const out = new Set(except.flatMap((thing) => recordsNamed(turn, { ...said, thing, definite: true })));
  return recordsNamed(turn, said).filter((item) => !out.has(item));
};

const recordsNamed = (turn: Turn, statement: Statement): readonly Item[] => {
  const { thing } = statement;
  if (thing === null || thing.words === null) {
    // "Everything on the counter": where it is, or was, says which.
    const at = statement.from ?? statement.place ?? null;
    const { items } = findItems(turn, thing?.pointer === 'all' ? { ...thing, at } : (thing ?? itMention));
    const several = thing?.pointer === 'both' || thing?.pointer === 'them';
    return several ? bothOf(turn, items, thing?.pointer === 'both') : items;
  }
  const { words } = thing;
  // "The new milk", of what is here: the one that came last.
  if (isNewest(statement)) {
    const [newest] = livingItems(turn.kitchen)
      .filter(({ name }) => foodKey(name) === foodKey(words))
      .sort((a, b) => b.addedAt.localeCompare(a.addedAt));
    return newest ? [newest] : [];
  }
  const same = livingItems(turn.kitchen).filter(({ name }) => foodKey(name) === foodKey(words));
  const close = thing.candidates.flatMap(({ id, fit }) => {
    const item = turn.kitchen.items.get(id);
    return item && item.gone === null && fit >= named ? [item] : [];
  });
  const counted = checked(turn, words);
  const exact = counted.length > 0 ? counted : same.length > 0 ? same : close;
  const all = exact.length > 0 || !takesShort(statement) ? exact : shortFor(turn, statement);
  const dish = statement.fresh ? null : dishAmong(turn, all);
  if (dish) return [dish];
  const spoken = all.filter(({ id }) => turn.memory.items.includes(id) || turn.memory.lastAdded.includes(id));
  return spoken.length > 0 && spoken.length < all.length && statement.definite ? spoken : all;
};

const itemOf = (items: readonly Item[], said: Mention): Mention =>
  items.length === 0
    ? said
    : {
        ...emptyMention,
        words: said.words,
        candidates: items.map(({ id }) => ({ id, fit: 1 })),
        pointer: items.length > 1 ? 'them' : null,
      };

const factsSaid = ({
  dates,
  maker,
  owner,
  contains,
  freeFrom,
  ingredients,
  diets,
  container,
  cautions,
  notes,
  name,
}: Statement): boolean =>
  [dates, maker, owner, contains, freeFrom, ingredients, diets, container, cautions, notes, name].some(
    (part) => part !== undefined,
  );

/** How much each part is: a fraction of the whole, and the rest what the others leave. */
const sharesOf = (statement: Statement): Slots['shares'] => {
  const { parts = [], amount } = statement;
  const unit =
    parts.find((part) => part.amount && part.amount.unit !== 'piece')?.amount?.unit ??
    amount?.unit ??
    'piece';
  const total = amount?.value ?? null;
  let given = 0;
  return parts.map(({ amount: said, share, place }) => {
    // "The other pint", of a whole that nobody told: one.
    const left = total === null ? 1 : Math.max(0, total - given);
    const value = said?.value ?? (share === 'rest' || share === null ? left : (total ?? 1) * share);
    given += value;
    return { amount: { value, unit: said && said.unit !== 'piece' ? said.unit : unit }, place };
  });
};

/** The lots of something, each in its place. */
const byPlace = (items: readonly Item[]): Map<string, Item[]> => {
  const lots = new Map<string, Item[]>();
  for (const item of items) {
    const at = item.placeId ?? '';
    lots.set(at, [...(lots.get(at) ?? []), item]);
  }
  return lots;
};

/**
 * "Four are in the top basket of the upright, four in the chest, left basket": of the lots that were just put
 * away, where each is, more exactly than before. Null where the parts are none of these lots.
 */
const eachWhere = (turn: Turn, items: readonly Item[], { parts = [] }: Statement): readonly Step[] | null => {
  const lots = byPlace(items);
  const countOf = ([first, ...others]: readonly Item[]): number | undefined =>
    others.length > 0 ? others.length + 1 : first?.amount?.value;
  const moves = parts.map(({ amount, place }): Step[] | null => {
    const to = findPlace(turn, place, 'place', null);
    if (to.found !== 'one') return null;
    const { id } = to.place;
    const lot = [...lots].find(([at, some]) => {
      const count = countOf(some);
      const near = placeUnder(turn.kitchen, id, at) || placeUnder(turn.kitchen, at, id);
      return near && (amount === null || count === undefined || amount.value === count);
    });
    if (!lot) return null;
    const [at, some] = lot;
    lots.delete(at);
    const item = itemOf(some, { ...emptyMention, words: some[0]!.name });
    return at === id ? [] : [{ do: 'act', act: { intent: 'move', slots: { item, place } }, items: some }];
  });
  return moves.every((steps) => steps !== null) ? moves.flat() : sharedAnew(turn, items, parts);
};

/** "It was four in the tall one and four in the chest", of three and five: one goes from where there are too many. */
const sharedAnew = (
  turn: Turn,
  items: readonly Item[],
  parts: NonNullable<Statement['parts']>,
): readonly Step[] | null => {
  const lots = byPlace(items);
  const wanted = parts.flatMap(({ amount, place }) => {
    const to = findPlace(turn, place, 'place', null);
    if (to.found !== 'one' || !amount) return [];
    const { id } = to.place;
    const here = [...lots].filter(([at]) => placeUnder(turn.kitchen, at, id)).flatMap(([, some]) => some);
    return [{ place, many: amount.value, here }];
  });
  const all = wanted.reduce((sum, { many }) => sum + many, 0);
  if (wanted.length !== parts.length || all !== items.length) return null;
  const spare = wanted.flatMap(({ many, here }) => here.slice(many));
  return wanted.flatMap(({ place, many, here }): Step[] => {
    const some = spare.splice(0, Math.max(0, many - here.length));
    if (some.length === 0) return [];
    const item = itemOf(some, { ...emptyMention, words: some[0]!.name });
    return [{ do: 'act', act: { intent: 'move', slots: { item, place } }, items: some }];
  });
};

/** What the last putting away brought in. */
const justNow = ({ kitchen, memory }: Turn): readonly Item[] =>
  memory.lastAdded.flatMap((id) => kitchen.items.get(id) ?? []).filter(({ gone }) => gone === null);

/** A day gone by on which nobody said what was done: it is at least that old. */
const stoodSince = (turn: Turn, when: Statement['when']): boolean =>
  when !== undefined && when.day < todayOf(turn);

/**
 * "The chilli's been in the fridge since Sunday": what that day was to it, of all it may have been the one that gives
 * it no day more.
 */
const stoodAs = (
  turn: Turn,
  { place, thing }: Statement,
  when: NonNullable<Statement['when']>,
): NonNullable<Slots['dates']> => {
  // Of two freezers either is one.
  const frozen = place?.candidates.some(({ id }) => storageOf(turn.kitchen, id) === 'freezer');
  if (frozen) return { frozen: when };
  const name = thing?.words ?? '';
  return isCookedDish(name) && !isSoldRaw(name) ? { made: when } : { bought: when };
};

/** What was made or bought and nobody said when: today, which is said back. */
const datesOf = (turn: Turn, statement: Statement, [item]: readonly Item[] = []): Slots['dates'] => {
  const { deed, dates, when, maker } = statement;
  const kind = deed === 'made' ? 'made' : deed === 'bought' ? 'bought' : deed === 'opened' ? 'opened' : null;
  // "She brought it, she didn't buy it": of what is here, the day it came stands.
  const known = deed === 'bought' || deed === 'given-in' ? item?.dates.bought : undefined;
  if (known && !dates?.bought) return { ...dates, bought: when ?? { day: known } };
  // "Janet made me a pie": when, only she knows.
  const byOthers = deed === 'made' && maker !== undefined && maker !== 'me' && !when;
  const day = when ?? { day: todayOf(turn) };
  if (byOthers) return dates;
  if (kind === null && stoodSince(turn, when)) return { ...stoodAs(turn, statement, when!), ...dates };
  if (kind && !dates?.[kind]) return { ...dates, [kind]: day };
  return dates;
};

/** "Four more tubs of it": what was just put away or spoken of. */
const moreOf = (turn: Turn, statement: Statement): Item | null => {
  const [item] = recordsOf(turn, { ...statement, thing: itMention });
  return item ?? null;
};

/** Of the same dish: what is on record of it holds of this as well, unless it was told otherwise. */
const likeIt = (
  { kitchen }: Turn,
  statement: Statement,
  { name, amount, dates, maker, contains }: Item,
): Statement => {
  const { made = null } = dates;
  return {
    ...statement,
    thing: { ...emptyMention, words: name, pointer: 'another' },
    definite: false,
    // "Two of the same", of tubs: tubs.
    ...(statement.amount?.unit === 'piece' && amount && !isMeasured(amount.unit)
      ? { amount: { ...statement.amount, unit: amount.unit } }
      : {}),
    ...(made && !statement.dates?.made ? { dates: { ...statement.dates, made: { day: made } } } : {}),
    ...(maker && !statement.maker ? { maker: personNamed(kitchen, maker)?.name ?? maker } : {}),
    ...(contains.length > 0 ? { contains: [...new Set([...contains, ...(statement.contains ?? [])])] } : {}),
  };
};

/** A food that comes in: everything told of it in one act; what no act holds is kept right after. */
const comesIn = (turn: Turn, statement: Statement): readonly Step[] => {
  const { amount, place, marker, container, contains, freeFrom, diets = [], ingredients, fresh } = statement;
  const { cautions, notes } = statement;
  const model = fresh && !statement.thing?.words ? moreOf(turn, statement) : null;
  if (model) return comesIn(turn, likeIt(turn, statement, model));
  const maker = makerOf(turn, statement);
  const owner = ownerOf(turn, statement);
  const shares = sharesOf(statement);
  const dates = datesOf(turn, statement);
  const thing = mentionOf(statement);
  const shared = shares && shares.length > 0;
  const slots: Slots = {
    item:
      (fresh || statement.deed === 'given-in') && thing.pointer === null
        ? { ...thing, pointer: 'another' }
        : thing,
    ...(amount && !shared ? { amount } : {}),
    ...(shared ? { shares, amount: amount ?? totalOf(shares) } : {}),
    ...(place && !shared ? { place } : {}),
    ...(statement.stands ? { stands: true as const } : {}),
    ...(dates ? { dates } : {}),
    ...(maker ? { maker } : {}),
    ...(owner ? { person: { words: '', candidates: [{ id: owner, fit: 1 }] } } : {}),
    ...(marker ? { marker } : {}),
    ...(container ? { container } : {}),
    ...(contains ? { allergens: contains } : freeFrom ? { allergens: freeFrom, free: true } : {}),
    ...(diets[0] ? { diet: diets[0] } : {}),
  };
  const more: Statement = {
    ...aFact,
    ...(contains && freeFrom ? { freeFrom } : {}),
    ...(diets.length > 1 ? { diets: diets.slice(1) } : {}),
    ...(ingredients ? { ingredients } : {}),
    ...(cautions ? { cautions } : {}),
    ...(notes ? { notes } : {}),
  };
  // With the act, so that a question about it in between does not leave them to another food.
  const besides = factsSaid(more) ? { besides: more } : {};
  return [{ do: 'act', act: { intent: 'put-away', slots: { ...slots, ...besides } } }];
};

const totalOf = (shares: NonNullable<Slots['shares']>): Amount => ({
  value: shares.reduce((sum, { amount }) => sum + amount.value, 0),
  unit: shares[0]!.amount.unit,
});

/** It stands there already. */
const isThere = (turn: Turn, items: readonly Item[], { place }: Statement): boolean => {
  const found = findPlace(turn, place, 'place', items[0]?.placeId ?? null);
  return (
    found.found === 'one' && items.every(({ placeId }) => placeUnder(turn.kitchen, placeId, found.place.id))
  );
};

/** What else was told of something here: where it is now, its marker, its facts. */
const besides = (turn: Turn, items: readonly Item[], statement: Statement, dated = true): readonly Step[] => {
  const { place, marker } = statement;
  const item = itemOf(items, mentionOf(statement));
  const dates = datesOf(turn, statement, items);
  const facts = dated ? { ...statement, ...(dates ? { dates } : {}) } : statement;
  return [
    ...(factsSaid(facts) ? [{ do: 'facts' as const, items, statement: facts, amount: false }] : []),
    ...(place && !isThere(turn, items, statement)
      ? [{ do: 'act' as const, act: { intent: 'move' as const, slots: { item, place } } }]
      : []),
    ...(marker ? [{ do: 'act' as const, act: { intent: 'mark' as const, slots: { item, marker } } }] : []),
  ];
};

const howGone = { finished: 'used', threw: 'thrown out', gave: 'given away' } as const;

/** "We've eaten both tubs": taken whole, it is used up. */
const takesAll = ({ deed, thing, amount, share, left }: Statement): boolean => {
  if (deed !== 'took' || left) return false;
  // "The half chicken I ate, all": half is what there was of it, and no part of that.
  const asCalled = amount === undefined || (amount.unit === 'piece' && amount.value < 1);
  if (share) return share.fraction === 1 && !share.rough && asCalled;
  return (thing?.pointer === 'both' || thing?.pointer === 'all') && amount === undefined;
};

const wholly = ({ amount: _amount, share: _share, ...said }: Statement): Statement => ({
  ...said,
  deed: 'finished',
});

const usesUp = (turn: Turn, said: Statement): readonly Step[] => {
  const statement: Statement = takesAll(said) ? wholly(said) : said;
  const { deed, share, thing, left } = statement;
  // "Take the lemons off": not here, but on the list to buy.
  if (deed === 'took' && thing?.words && recordsOf(turn, statement).length === 0)
    if (purchaseOf(turn.kitchen, thing.words))
      return [{ do: 'act', act: { intent: 'buy-remove', slots: { item: thing } } }];
  const how = deed === 'threw' ? howGone.threw : deed === 'gave' ? howGone.gave : howGone.finished;
  const items = recordsOf(turn, statement);
  const { amount } = statement;
  const item = thing?.words && items.length === 0 ? thing : itemOf(items, mentionOf(statement));
  const at = statement.from ?? statement.place;
  const placed = at ? { ...item, at } : item;
  // "One of the dals is gone", of two tubs.
  const fewer = amount !== undefined && items.length > 1 && amount.value < items.length;
  const lessOfOne = items.length === 1 && amount !== undefined && isLess(amount, items[0]!);
  const some = deed === 'finished' && (fewer || lessOfOne);
  // "That's for Amara now, and Dele had a bowl": whose it is, besides.
  const facts: readonly Step[] =
    statement.owner && items.length > 0
      ? [{ do: 'facts', items, statement: { ...aFact, owner: statement.owner }, amount: false }]
      : [];
  if (deed === 'took' || some || ((amount || share) && deed !== 'finished')) {
    const half = amount && amount.value < 1 && amount.unit === 'piece' ? { fraction: amount.value } : null;
    return [
      ...facts,
      {
        do: 'act',
        act: {
          intent: 'take',
          slots: {
            item: placed,
            ...(left ? { left } : half ? { share: half } : amount ? { amount } : share ? { share } : {}),
            ...(deed === 'took' ? {} : { how }),
          },
        },
      },
    ];
  }
  // Of several tubs the oldest is the one that is empty.
  const one = items.length > 1 && thing?.pointer === null ? [oldestFirst(items)[0]!] : items;
  const gone = one.length === items.length ? placed : itemOf(items, mentionOf(statement));
  return [
    {
      do: 'act',
      act: { intent: 'finish', slots: { item: { ...gone, pointer: thing?.pointer ?? null }, how } },
    },
  ];
};

/** "Half the turkey breast", of one pound: half a pound. Null where nothing says how much that is. */
const partOf = (items: readonly Item[], { amount, share }: Statement): Amount | null => {
  const [item] = items;
  if (items.length !== 1 || !item?.amount) return null;
  const fraction = share?.fraction ?? (amount?.unit === 'piece' && amount.value < 1 ? amount.value : null);
  return fraction === null || fraction >= 1
    ? null
    : { value: item.amount.value * fraction, unit: item.amount.unit };
};

/** "One tin is over", of three: not all of it. */
const isLess = (amount: Amount, { amount: there }: Item): boolean =>
  there !== null && amount.value < there.value && amount.unit !== 'piece';

/**
 * "One portion of the soup in the top drawer, the other two are still in the fridge": of one that is here, what goes
 * elsewhere is moved, and what is where it was stays. Null where it is none that is here, or not so much of it.
 */
const movesParts = (turn: Turn, items: readonly Item[], statement: Statement): readonly Step[] | null => {
  const { parts = [], from } = statement;
  const [item] = items;
  const amounts = parts.flatMap(({ amount }) => (amount ? [amount] : []));
  if (parts.length < 2 || items.length !== 1 || !item?.amount || amounts.length < parts.length) return null;
  const said = amounts.reduce((sum, { value }) => sum + value, 0);
  const counted = amounts.every(({ unit }) => unit === 'piece' || unit === item.amount!.unit);
  if (!counted || said > item.amount.value) return null;
  const mention = itemOf(items, mentionOf(statement));
  return parts.flatMap(({ amount, place }): Step[] => {
    if (isThere(turn, items, { ...aFact, place })) return [];
    const slots: Slots = {
      item: from ? { ...mention, at: from } : mention,
      place,
      ...(amount ? { amount } : {}),
    };
    return [{ do: 'act', act: { intent: 'move', slots }, items }];
  });
};

/** It went from one place here to another. */
const moves = (turn: Turn, items: readonly Item[], statement: Statement): readonly Step[] => {
  const { amount, place, from, parts } = statement;
  const item = itemOf(items, mentionOf(statement));
  const each = movesParts(turn, items, statement);
  if (each) return [...each, ...besides(turn, items, { ...without(statement, 'place'), deed: 'fact' })];
  const [to] = parts ?? [];
  const where = place ?? to?.place;
  const much = partOf(items, statement) ?? amount ?? to?.amount ?? undefined;
  return [
    {
      do: 'act',
      act: {
        intent: 'move',
        slots: {
          item: from ? { ...item, at: from } : item,
          ...(where ? { place: where } : {}),
          ...(much ? { amount: much } : {}),
        },
      },
    },
    ...besides(turn, items, { ...without(statement, 'place'), deed: 'fact' }),
  ];
};

const without = <K extends keyof Statement>(statement: Statement, key: K): Omit<Statement, K> & Statement => {
  const { [key]: _gone, ...rest } = statement;
  return rest as Omit<Statement, K> & Statement;
};

const holds = (items: readonly Item[], { value, unit }: Amount): boolean =>
  items.length === 1 &&
  items[0]!.amount !== null &&
  // "Two fillets", of two that are only counted on record.
  (unit === 'piece' ||
    items[0]!.amount.unit === unit ||
    (items[0]!.amount.unit === 'piece' && !isMeasured(unit))) &&
  value <= items[0]!.amount.value;

/** Said of something that is here, rather than of something that comes in. */
const isHere = (turn: Turn, items: readonly Item[], statement: Statement): boolean => {
  const { thing, fresh, amount, definite, parts, deed, dates, when } = statement;
  if (items.length === 0 || (fresh && !isNewest(statement))) return false;
  if (thing === null || thing.words === null || isNewest(statement)) return true;
  // In a check, how much there is is no food that comes in.
  if (turn.state.session?.kind === 'count' && deed === 'stored' && !parts) return true;
  if (deed === 'bought' || deed === 'given-in') return false;
  // "The chili: four in the garage, one in the fridge", of what was just put away: where it is.
  if (parts) return definite && items.every(({ id }) => turn.memory.lastAdded.includes(id));
  // "Two portions of the soup went in the freezer": of those that are here.
  if (amount) return definite && deed === 'stored' && statement.place !== undefined && holds(items, amount);
  if (deed === 'made')
    return definite && statement.place === undefined && (dates?.made ?? when) !== undefined;
  return definite || deed === 'opened' || deed === 'fact';
};

/** "I opened it, there's two ounces left". */
const leaves = (items: readonly Item[], { thing, left }: Statement): readonly Step[] =>
  left
    ? [{ do: 'act', act: { intent: 'take', slots: { item: itemOf(items, thing ?? itMention), left } } }]
    : [];

/** What else was told than that it was opened, and when. */
const onceOpened = ({ dates, when: _when, ...rest }: Statement): Statement => {
  const { opened: _opened, ...others } = dates ?? {};
  return { ...rest, ...(Object.keys(others).length > 0 ? { dates: others } : {}) };
};

/** "One can of the chickpeas, into the small bowl, in the fridge": of several, so many go there, open. */
const opensSome = (turn: Turn, items: readonly Item[], statement: Statement): readonly Step[] | null => {
  const { amount, place, container } = statement;
  const [item] = items;
  const some = amount && place && item && holds(items, amount) && amount.value < item.amount!.value;
  if (!some || isThere(turn, items, statement)) return null;
  const opened = statement.dates?.opened ?? statement.when ?? { day: todayOf(turn) };
  const fact: Statement = {
    ...aFact,
    dates: { opened },
    ...(container ? { container } : {}),
  };
  return [
    {
      do: 'act',
      act: { intent: 'move', slots: { item: itemOf(items, mentionOf(statement)), amount, place } },
    },
    { do: 'facts', items: [], statement: fact, amount: false },
  ];
};

/** The day it was opened is the deed's; what else was told of it is kept besides. */
const opens = (turn: Turn, items: readonly Item[], statement: Statement): readonly Step[] => {
  const opened = statement.dates?.opened ?? statement.when;
  return [
    {
      do: 'act',
      act: {
        intent: 'open',
        slots: { item: itemOf(items, mentionOf(statement)), ...(opened ? { dates: { opened } } : {}) },
      },
    },
  ];
};

/** "The six have two bands on", "the chest ones": of the lots just put away or spoken of, that one. */
const lotOf = (turn: Turn, statement: Statement): readonly Item[] => {
  const { deed, thing, amount, place, marker, parts, definite, fresh } = statement;
  const plain = (amount ?? place) !== undefined && parts === undefined && !fresh;
  const ofThese = deed === 'fact' || (deed === 'stored' && definite && place !== undefined && thing?.words);
  if (!plain || !ofThese || !(marker !== undefined || factsSaid(statement))) return [];
  const lots = byPlace(
    thing?.words
      ? recordsOf(turn, statement)
      : [...new Set([...justNow(turn), ...findItems(turn, itMention).items])],
  );
  if (lots.size < 2) return [];
  const to = place ? findPlace(turn, place, 'place', null) : null;
  const there = to?.found === 'one' ? to.place.id : null;
  if (to && !there) return [];
  const fits = ([at, lot]: readonly [string, readonly Item[]]): boolean =>
    there
      ? placeUnder(turn.kitchen, at, there)
      : lot.length === amount?.value || lot[0]?.amount?.value === amount?.value;
  const [lot, ...others] = [...lots].filter(fits);
  return lot && others.length === 0 ? lot[1] : [];
};

/**
 * "Cooked half the rice, it's on the top shelf": that much of what is here went into it, and what was cooked of it is
 * put away. Null where no part was said of just one food that was not cooked yet.
 */
const cooksPart = (turn: Turn, statement: Statement): readonly Step[] | null => {
  const { deed, definite, thing, share, fresh, parts = [] } = statement;
  // "Half the rice, in a tub on the top shelf": the tub is what it is in now.
  const [tub, ...more] = parts;
  const place = statement.place ?? tub?.place;
  const counted = tub?.amount ?? (share ? statement.amount : undefined);
  const said = share ? undefined : statement.amount;
  const half = said && said.unit === 'piece' && said.value < 1 ? { fraction: said.value } : null;
  const measured = said && definite && isMeasured(said.unit) ? said : null;
  const took = share ? { share } : half ? { share: half } : measured ? { amount: measured } : null;
  if (deed !== 'made' || fresh || !thing?.words || !place || !took || more.length > 0) return null;
  const called = recordsOf(turn, { ...statement, deed: 'took', definite: true });
  // "The rice", of white rice and rice that is cooked already: the white.
  const like = thing.candidates.flatMap(({ id }) => turn.kitchen.items.get(id) ?? []);
  const raw = (called.length > 0 ? called : like).filter(({ dates, gone }) => !dates.made && gone === null);
  const [from, ...others] = raw;
  if (!from || others.length > 0) return null;
  const { share: _share, amount: _amount, parts: _parts, ...rest } = statement;
  const made: Statement = { ...rest, place, ...(counted ? { amount: counted } : {}) };
  return [
    {
      do: 'act',
      act: { intent: 'take', slots: { item: itemOf([from], thing), ...took } },
      items: [from],
    },
    ...comesIn(turn, { ...made, thing: { ...thing, candidates: [] }, definite: false }),
  ];
};

/** "Eight altogether": borne out by what is on record, or of the one lot there is; else it is asked where the others are. */
const inAll = (turn: Turn, items: readonly Item[], statement: Statement, total: Amount): readonly Step[] => {
  const counted = items.reduce((sum, { amount }) => sum + (amount?.value ?? 1), 0);
  const item = itemOf(items, mentionOf(statement));
  if (items.length === 1 && counted !== total.value)
    return [{ do: 'facts', items, statement: { ...aFact, amount: total }, amount: true }];
  return [{ do: 'act', act: { intent: 'count', slots: { item } } }];
};

/** The marker first; then what else was told of it. */
const takesMarkerOff = (turn: Turn, statement: Statement): readonly Step[] => {
  const { unmarked: _bare, ...told } = statement;
  const items = recordsOf(turn, told).filter(({ markerId }) => markerId !== null);
  const item = itemOf(items, mentionOf(told));
  const more = factsSaid(told) || told.place !== undefined || told.deed !== 'fact';
  return [
    { do: 'act', act: { intent: 'unmark', slots: { item } } },
    ...(more ? stepsFor(turn, { ...told, definite: true }) : []),
  ];
};

export const stepsFor = (turn: Turn, statement: Statement): readonly Step[] => {
  const { by } = statement;
  const steps = stepsOf(turn, statement);
  if (by === undefined) return steps;
  return steps.map((step) =>
    step.do === 'act' ? { ...step, act: { ...step.act, slots: { ...step.act.slots, by } } } : step,
  );
};

const stepsOf = (turn: Turn, statement: Statement): readonly Step[] => {
  if (statement.unmarked) return takesMarkerOff(turn, statement);
  const lot = lotOf(turn, statement);
  if (lot.length > 0) {
    const { amount: _counted, place: _there, ...told } = statement;
    const { marker, ...facts } = told;
    const item = itemOf(lot, { ...emptyMention, words: lot[0]!.name });
    return [
      ...(factsSaid(facts) ? [{ do: 'facts' as const, items: lot, statement: facts, amount: false }] : []),
      ...(marker
        ? [{ do: 'act' as const, act: { intent: 'mark' as const, slots: { item, marker } }, items: lot }]
        : []),
    ];
  }
  const cooked = cooksPart(turn, statement);
  if (cooked) return cooked;
  const items = recordsOf(turn, statement);
  const { deed, amount, thing, place, definite } = statement;
  const item = itemOf(items, mentionOf(statement));
  switch (deed) {
    case 'listed':
      return [
        // "Butter's down to one stick, so pop it on the list".
        ...(items.length === 1 ? leaves(items, statement) : []),
        {
          do: 'act',
          act: { intent: 'buy-add', slots: toBuySlots(statement) },
        },
      ];
    case 'unlisted':
      return [{ do: 'act', act: { intent: 'buy-remove', slots: { item: toBuy(statement) } } }];
    case 'finished':
    case 'threw':
    case 'gave':
    case 'took':
      return usesUp(turn, statement);
    case 'froze':
    case 'thawing': {
      if (thing?.words && (items.length === 0 || (statement.parts && !definite)))
        return comesIn(turn, statement);
      const intent = deed === 'froze' ? ('freeze' as const) : ('thaw' as const);
      const kind = deed === 'froze' ? ('frozen' as const) : ('thawed' as const);
      const day = statement.dates?.[kind] ?? statement.when;
      const much = partOf(items, statement) ?? amount;
      const slots: Slots = {
        item: statement.from ? { ...item, at: statement.from } : item,
        ...(much ? { amount: much } : {}),
        ...(place ? { place } : {}),
        ...(day ? { dates: { [kind]: day } } : {}),
      };
      return [{ do: 'act', act: { intent, slots } }];
    }
    case 'fact':
      if (statement.total) return inAll(turn, items, statement, statement.total);
      if (statement.left && items.length > 0)
        return [{ do: 'act', act: { intent: 'take', slots: { item, left: statement.left } } }];
      break;
    case 'reheated':
    case 'put-back':
      return [{ do: 'act', act: { intent: deed, slots: { item, ...(place ? { place } : {}) } } }];
    case 'opened': {
      const part = opensSome(turn, items, statement);
      if (part) return part;
      break;
    }
    case 'kept':
      // Of several of one name all stay.
      return items.length > 0
        ? [{ do: 'facts', items, statement, amount: false }]
        : [{ do: 'act', act: { intent: 'find', slots: { item: mentionOf(statement) } } }];
    case 'moved':
      return items.length > 0 ? moves(turn, items, statement) : comesIn(turn, statement);
    default:
  }
  if (statement.moved && items.length > 0 && !amount && !statement.fresh && deed === 'stored')
    return moves(turn, items, statement);
  const shared =
    definite && !statement.fresh && deed === 'stored' ? movesParts(turn, items, statement) : null;
  if (shared && shared.length > 0) return shared;
  if (!isHere(turn, items, statement)) {
    // "All of it. The two portions": of nothing by name, and nothing that comes in.
    const nameless = (thing === null || thing.words === null) && !statement.fresh;
    return nameless && deed === 'fact' && items.length === 0 ? [] : comesIn(turn, statement);
  }
  const lots = thing === null || thing.words === null ? [...new Set([...items, ...justNow(turn)])] : items;
  const apart = statement.parts ? eachWhere(turn, lots, statement) : null;
  if (apart) return apart;
  // Of several of one name, which one the marker goes on is asked.
  if (statement.marker && deed === 'fact' && !place && !factsSaid(statement))
    return [{ do: 'act', act: { intent: 'mark', slots: { item, marker: statement.marker } } }];
  const several =
    thing?.pointer && thing.pointer !== 'it' && thing.pointer !== 'this' && thing.pointer !== 'that';
  const meant = items.length > 1 && !several ? justThese(turn, items, statement) : items;
  const pointed =
    thing === null ||
    thing.words === null ||
    turn.state.session?.kind === 'count' ||
    (amount !== undefined && definite && deed === 'stored' && place !== undefined);
  if (deed === 'opened' || (deed === 'fact' && statement.dates?.opened !== undefined))
    return [
      ...opens(turn, meant, statement),
      ...leaves(meant, statement),
      ...besides(turn, meant, onceOpened(statement), false),
    ];
  // "Four of those are in the other freezer", of six: those four are moved.
  const some = deed === 'fact' && amount !== undefined && isSome(meant, amount);
  if ((deed === 'stored' || some) && place && amount && pointed) return moves(turn, meant, statement);
  if (deed === 'stored' && place && !amount) return besides(turn, meant, statement, false);
  // "Both, I said, five and five", of tubs that are a record each: how many there are, and not how much is in one.
  if (amount && pointed && oneRecordEach(meant) && !place && !factsSaid(statement))
    return [...byPlace(meant).values()].some((lot) => lot.length === amount.value)
      ? [{ do: 'act', act: { intent: 'find', slots: { item } } }]
      : inAll(turn, meant, statement, amount);
  // Of tubs that are a record each, how many there are is what none of them holds.
  const counted = amount !== undefined && pointed && !oneRecordEach(meant);
  const facts: Step[] = counted ? [{ do: 'facts', items: meant, statement, amount: true }] : [];
  return [...facts, ...besides(turn, meant, facts.length > 0 ? onlyPlaced(statement) : statement)];
};

/** Less of it than there is, counted as it is. */
const isSome = (items: readonly Item[], { value, unit }: Amount): boolean => {
  const here = items.flatMap(({ amount }) => (amount ? [amount] : []));
  const alike = here.length === items.length && here.every((one) => one.unit === unit || unit === 'piece');
  return alike && value < here.reduce((sum, one) => sum + one.value, 0);
};

const oneRecordEach = (items: readonly Item[]): boolean =>
  items.length > 1 && items.every(({ amount }) => amount?.value === 1 && !isMeasured(amount.unit));

const onlyPlaced = ({ deed, thing, definite, fresh, corrects, place, marker }: Statement): Statement => ({
  deed: deed === 'made' || deed === 'opened' ? 'fact' : deed,
  thing,
  definite,
  fresh,
  corrects,
  ...(place ? { place } : {}),
  ...(marker ? { marker } : {}),
});

/** Of several of one name: those of one batch are one dish; else the one in the place said, else the oldest not opened. */
const justThese = (turn: Turn, items: readonly Item[], { deed, place }: Statement): readonly Item[] => {
  const batch = items[0]!.batchId;
  if (batch !== null && items.every(({ batchId }) => batchId === batch)) return [items[0]!];
  const there = place
    ? items.filter((item) =>
        isThere(turn, [item], {
          ...aFact,
          place,
        }),
      )
    : [];
  const some = there.length > 0 ? there : items;
  const closed = deed === 'opened' ? some.filter(({ dates }) => !dates.opened) : some;
  return [oldestFirst(closed.length > 0 ? closed : some)[0]!];
};

/** Only that it is to be bought was told of it. */
const isListed = ({ deed, amount, thing, notes }: Statement): boolean =>
  (deed === 'listed' || deed === 'unlisted') && amount === undefined && notes === undefined && thing !== null;

/** Statements one after the other that are said back in one sentence: what goes on the list, or off it. */
export const together = (statements: readonly Statement[]): readonly (readonly Statement[])[] =>
  statements.reduce<(readonly Statement[])[]>((groups, statement) => {
    const group = groups.at(-1);
    const joins = group?.every((one) => isListed(one) && one.deed === statement.deed) && isListed(statement);
    return joins && group ? [...groups.slice(0, -1), [...group, statement]] : [...groups, [statement]];
  }, []);

/** The steps of statements that stand together. */
export const stepsForAll = (turn: Turn, statements: readonly Statement[]): readonly Step[] => {
  if (statements.length < 2) return statements.flatMap((statement) => stepsFor(turn, statement));
  const intent = statements[0]!.deed === 'listed' ? ('buy-add' as const) : ('buy-remove' as const);
  const nameOf = intent === 'buy-add' ? toBuy : mentionOf;
  return [{ do: 'act', act: { intent, slots: { items: statements.map(nameOf) } } }];
};
