/** What is told of a set of things, one attribute at a time. Figures of safety come from their own rooms. */
import { personNamed, totalOf } from '../../kitchen/index.js';
import type { Item, Person } from '../../kitchen/model.js';
import type { Attribute, Filter, Query, Who } from '../../protocol/query.js';
import type { Act, Mention, Slots } from '../../understanding/intents.js';
import { emptyMention } from '../../understanding/intents.js';
import { undated } from '../age/no-date.js';
import { howOld } from '../age/how-old.js';
import { itemDate } from '../age/item-date.js';
import { keptTill, ownVerdicts } from '../age/keeps.js';
import { tellOldest } from '../age/older.js';
import { useFirst } from '../age/use-first.js';
import { canEat, contains, suitsUnnamed } from '../allergens/allergens.js';
import { forEverybody } from '../allergens/for-everybody.js';
import { notFor } from '../allergens/for-somebody.js';
import { dateSaidAs } from '../describe/came.js';
import { groupName, grouped, toldGroups } from '../describe/item.js';
import { andMore, inGroups } from '../describe/lists.js';
import { placeAt } from '../describe/place.js';
import { count } from '../find/count.js';
import { find } from '../find/find.js';
import { tellAbout, whatsThis } from '../find/whats-this.js';
import { type Handler, type Reply, type Turn, about, day, list, say } from '../handler.js';
import { whoDid } from '../history/history.js';
import { whoAllergic } from '../people/people.js';
import { peopleOf, personOf } from './filters.js';

/** Things told of singly in one answer; more are a list. */
export const toldSingly = 3;

const act = (intent: Act['intent'], slots: Slots = {}): Act => ({ intent, slots });

/** An older handler, asked of just these things. */
const of = (handler: Handler, turn: Turn, items: readonly Item[], slots: Slots = {}): Reply =>
  handler(act('find', slots), { ...turn, picked: { item: items.map(({ id }) => id) } });

/** An older handler, in a kitchen that holds nothing else. */
const within = (handler: Handler, turn: Turn, items: readonly Item[], slots: Slots = {}): Reply =>
  handler(act('find', slots), {
    ...turn,
    kitchen: { ...turn.kitchen, items: new Map(items.map((item) => [item.id, item])) },
    memory: { ...turn.memory, placeId: null },
    qualifiers: new Set(),
  });

/** Several answers in one breath. */
export const together = (replies: readonly Reply[]): Reply => {
  const [first] = replies;
  if (replies.length === 1 && first) return first;
  const flat = <T>(part: (reply: Reply) => readonly T[] | undefined): T[] =>
    replies.flatMap((reply) => [...(part(reply) ?? [])]);
  return {
    ...first,
    parts: flat((reply) => reply.parts),
    more: flat((reply) => reply.more),
    details: flat((reply) => reply.details),
    sources: flat((reply) => reply.sources),
    names: [...new Set(flat((reply) => reply.names))],
  };
};

const each = (turn: Turn, items: readonly Item[], tell: (of: readonly Item[]) => Reply): Reply =>
  together(
    grouped(turn.kitchen, items)
      .slice(0, toldSingly)
      .map((group) => tell(group.items)),
  );

const whoMade = (turn: Turn, items: readonly Item[], query: Query): Reply => {
  const claim = query.where.find((filter) => filter.by === 'maker');
  const person = claim ? personOf(turn, claim.who) : null;
  const makers = [...new Set(items.map(({ maker }) => maker))];
  const known = makers.length === 1 ? makers[0] : undefined;
  // "What else did she make": whoever made it is spoken of now.
  const by = known ? personNamed(turn.kitchen, known) : undefined;
  const memory = { ...about(turn, items), ...(by ? { personId: by.id } : {}) };
  const name = items[0]!.name;
  if (known === null) return { parts: [say('ask-maker-unknown', { name })], memory };
  if (known !== undefined) {
    const yes = claim && (person ? known.toLowerCase().includes(person.name.toLowerCase()) : false);
    const how = query.whether && claim ? (yes ? 'yes' : 'no') : 'open';
    return {
      parts: [say('ask-maker', { name, maker: known, how })],
      memory,
      names: [name],
      count: items.length,
    };
  }
  return each(turn, items, (some) => whoMade(turn, some, { ...query, whether: false }));
};

const keepsTill = (turn: Turn, items: readonly Item[], until: string): Reply =>
  each(turn, items, (some) => keptTill(turn, some, until));

/** The set itself: each with its place while they are few, then names, a group at a time. */
const tellSet = (turn: Turn, items: readonly Item[], placed: boolean, sound: boolean): Reply => {
  const groups = grouped(turn.kitchen, items);
  const alike = new Set(groups.map(({ first }) => first.name)).size === 1;
  if (groups.length === 1 || alike || (groups.length <= toldSingly && !placed)) return of(find, turn, items);
  const { first, more, left } = inGroups(groups.map(groupName));
  const phrase = sound ? 'ask-set-within' : 'ask-set';
  return {
    parts: [say(phrase, { count: groups.length, items: list(first) }), ...andMore(left)],
    more,
    ...toldGroups(turn, items, groups),
  };
};

const newest = (turn: Turn, items: readonly Item[]): Reply => {
  const item = items[0]!;
  const dates = item.dates;
  const what = (['made', 'bought', 'frozen', 'opened'] as const).find((kind) => dates[kind]);
  const at = placeAt(turn.kitchen, item.placeId);
  const entry = what
    ? say('age-entry', { name: item.name, at, what: dateSaidAs(what, item), date: day(dates[what]!) })
    : say('age-entry-unknown', { name: item.name, at });
  return { parts: [say('ask-newest', { entry })], memory: about(turn, [item]), names: [item.name], count: 1 };
};

/** Who used it, and, of what is still here, how much of it there is. */
const whoUsed = (turn: Turn, query: Query, items: readonly Item[]): Reply => {
  const did = whoDid(act('who-did', { item: mentionOf(query, items), asked: 'finished' }), turn);
  if (did.parts.some(({ phrase }) => phrase === 'entry' || phrase === 'entries')) return did;
  const left = of(count, turn, items);
  return { ...left, parts: [say('ask-nobody-used', { name: items[0]!.name }), ...left.parts] };
};

/** Several kinds in one figure, where they are counted alike. */
const sum = (turn: Turn, items: readonly Item[]): Reply => {
  const [total, ...more] = totalOf(turn.kitchen, items).amounts;
  const groups = grouped(turn.kitchen, items);
  const entries = groups.flatMap(({ first, items: some }) => {
    const [amount] = totalOf(turn.kitchen, some).amounts;
    return amount ? [say('ask-sum-entry', { name: first.name, amount: { kind: 'amount', amount } })] : [];
  });
  const kinds = new Set(items.map(({ name }) => name)).size;
  if (!total || kinds < 2 || entries.length > toldSingly) return of(count, turn, items);
  // Eggs and sticks of butter make no sum.
  if (more.length > 0)
    return { parts: entries.map((entry) => say('list-entry', { entry })), memory: about(turn, items) };
  return {
    parts: [say('ask-sum', { total: { kind: 'amount', amount: total }, items: list(entries) })],
    memory: about(turn, items),
    names: items.map(({ name }) => name),
    count: items.length,
  };
};

/** Days in the order in which they tell how something stands. */
const began = ['opened', 'frozen', 'made', 'bought'] as const;

/** "Since when", "when": the day of what was just told, else the last that something was done to it. */
const since = (turn: Turn, items: readonly Item[]): Reply => {
  const last = turn.state.asked?.query;
  const dated = last?.ask.find((one) => one.startsWith('date:'))?.slice('date:'.length);
  const stated = last?.where.some((filter) => filter.by === 'state' && filter.state === 'opened');
  const made = last?.ask.includes('maker');
  return each(turn, items, (some) => {
    const known = began.find((kind) => some[0]!.dates[kind] !== undefined) ?? 'made';
    return of(itemDate, turn, some, { asked: dated ?? (stated ? 'opened' : made ? 'made' : known) });
  });
};

/** How much of what there was at first is gone. */
const usedUp = (turn: Turn, items: readonly Item[]): Reply =>
  each(turn, items, ([item]) => {
    const { amount, amountAtFirst: first } = item!;
    const known = amount && first && first.unit === amount.unit && first.value >= amount.value;
    const used = known ? { ...amount, value: first.value - amount.value } : null;
    return used && used.value > 0
      ? {
          parts: [
            say('ask-used-up', {
              name: item!.name,
              used: { kind: 'amount', amount: used },
              first: { kind: 'amount', amount: first! },
              left: { kind: 'amount', amount: amount! },
            }),
          ],
          memory: about(turn, [item!]),
        }
      : of(count, turn, [item!]);
  });

const mentionOf = (query: Query, items: readonly Item[]): Mention => {
  const named = query.where.find((filter) => filter.by === 'named');
  return named?.mention ?? { ...emptyMention, words: items[0]?.name ?? null };
};

const filterOf = <B extends Filter['by']>(query: Query, by: B): Extract<Filter, { by: B }> | undefined =>
  query.where.find((filter): filter is Extract<Filter, { by: B }> => filter.by === by);

const ofDays: ReadonlySet<Attribute> = new Set<Attribute>(['keeps', 'until', 'use-first', 'people', 'where']);

/** What somebody warned of is read whole, each with what it says: who is warned must not have to ask for more. */
const cautionsOf = (turn: Turn, pool: readonly Item[]): Reply | null => {
  const warned = pool.filter(({ cautions }) => cautions.length > 0);
  if (warned.length === 0) return null;
  const entries = warned.map(({ name, cautions }) =>
    say('caution-entry', { name, cautions: list(cautions) }),
  );
  return {
    parts: [say('cautions-told', { count: warned.length, items: list(entries) })],
    memory: about(turn, warned),
    names: warned.map(({ name }) => name),
    count: warned.length,
  };
};

/** Who may have it, or what of these holds an allergen: the allergen rooms answer. */
export const ofAllergens = (turn: Turn, query: Query, pool: readonly Item[]): Reply | null => {
  if (filterOf(query, 'caution')?.words.length === 0) return cautionsOf(turn, pool);
  const holds = filterOf(query, 'contains') ?? filterOf(query, 'free');
  const suits = filterOf(query, 'suits');
  const keeps = suits !== undefined && query.by === null;
  const plain = query.ask.every(
    (ask) =>
      ask === 'what' ||
      ask === 'which' ||
      ask === 'good' ||
      (ask === 'keeps' && keeps) ||
      // Whoever may have it comes before all that it seems to ask of its days.
      ((suits?.who.who === 'everybody' || suits?.who.who === 'unnamed') && ofDays.has(ask)),
  );
  const named = filterOf(query, 'named') ?? filterOf(query, 'each');
  // "What goes with the pie for Sam": whether he may have the pie comes first, and what goes with it is answered, too.
  if (suits && named && query.ask.includes('goes-with')) {
    const may = ofAllergens(turn, { ...query, ask: [] }, pool);
    const goes = answer(turn, query, 'goes-with', pool);
    return may ? together([may, goes]) : goes;
  }
  // "What can she have from the freezer": of a whole set, who may have it comes before all else that it seems to ask.
  // And what a named food holds comes before its days.
  const first =
    plain ||
    (suits !== undefined && !named && query.order === null) ||
    (holds !== undefined && named !== undefined && query.whether);
  if (!first || pool.length === 0) return null;
  const one = new Set(pool.map(({ name }) => name)).size === 1;
  const diet = filterOf(query, 'diet');
  if (diet && (named || one))
    return each(turn, pool, (some) => of(contains, turn, some, { diet: diet.diet }));
  // "That they can both have, without milk or fish": without what either watches for, too.
  if (holds?.by === 'free' && suits && !named) {
    const { who } = suits;
    const people = peopleOf(turn, who);
    const allergens = [...new Set([...holds.allergens, ...people.flatMap((one) => one.allergens)])];
    return together([...strangersIn(who), within(contains, turn, pool, { allergens, free: true })]);
  }
  if (holds) {
    const slots: Slots = {
      allergens: holds.allergens,
      ...(holds.by === 'free' && !named ? { free: true } : {}),
    };
    if (one) return of(contains, turn, pool, slots);
    return within(contains, turn, pool, slots);
  }
  if (!suits) return null;
  const people = peopleOf(turn, suits.who);
  if (suits.who.who === 'unnamed') {
    const { allergens } = suits.who;
    return named
      ? each(turn, pool, (some) => suitsUnnamed(turn, some, allergens))
      : within(contains, turn, pool, { allergens, free: true });
  }
  if (suits.who.who === 'everybody') return forAll(turn, query, pool, suits);
  // "Which of those could both have": what is nobody's trouble of them.
  const plainly = people.every((one) => !one.atRisk && (one.diets ?? []).length === 0);
  if (people.length > 1 && plainly && !named && !(one && query.whether) && suits.is)
    return noneWatched(turn, people, pool, true);
  if (people.length > 1) {
    // "Is the pie safe for her and for Sam": for each by name.
    if ((named || (one && query.whether)) && plainly && suits.is) {
      const told = forEverybody(turn, pool, people);
      return { ...told, memory: { ...told.memory, people: people.toReversed().map(({ id }) => id) } };
    }
    // For each of them, and both are spoken of after it.
    const replies = people.map((person) => forPerson(turn, query, pool, suits, person));
    return {
      ...together(replies),
      memory: { ...replies.at(-1)?.memory, people: people.toReversed().map(({ id }) => id) },
    };
  }
  const [person] = people;
  if (!person) {
    // "Can my mum have some": what it holds is known, and what she must not have is not.
    const { who } = suits;
    if (named && who.who === 'named' && who.person.candidates.length === 0)
      return together([
        { parts: [say('unknown-eater', { name: who.person.words })] },
        each(turn, pool, (some) => of(contains, turn, some)),
      ]);
    if (suits.who.who === 'named') return canEat(act('can-eat', { person: suits.who.person }), turn);
    // Nobody knows who speaks: what anybody here must avoid.
    const all = [
      ...new Set(
        [...turn.kitchen.people.values()].flatMap(({ allergens, eatsHere }) => (eatsHere ? allergens : [])),
      ),
    ];
    return all.length > 0 ? within(contains, turn, pool, { allergens: all }) : null;
  }
  return forPerson(turn, query, pool, suits, person);
};

/** Whoever was named of whom the household knows nothing: what they must not have nobody told. */
const strangersIn = (who: Who): readonly Reply[] => {
  const each = who.who === 'several' ? who.each : [who];
  return each.flatMap((one) =>
    one.who === 'named' && one.person.candidates.length === 0
      ? [{ parts: [say('unknown-eater', { name: one.person.words })] }]
      : [],
  );
};

/** Of a whole set: what is said to be free from all that any of these watches for, and of what nobody said it. */
const noneWatched = (turn: Turn, people: readonly Person[], pool: readonly Item[], free: boolean): Reply => {
  const allergens = [...new Set(people.flatMap((one) => one.allergens))];
  const reply =
    allergens.length === 0
      ? { parts: [say('nobody-allergic')] }
      : within(contains, turn, pool, { allergens, ...(free ? { free } : {}) });
  return { ...reply, memory: { ...reply.memory, people: people.toReversed().map(({ id }) => id) } };
};

/** Who may have it, where nobody is named: everybody who watches for something; and whether it keeps, if asked as well. */
const forAll = (
  turn: Turn,
  query: Query,
  pool: readonly Item[],
  suits: Extract<Filter, { by: 'suits' }>,
): Reply => {
  const people = peopleOf(turn, { who: 'everybody' });
  const named = filterOf(query, 'named') ?? filterOf(query, 'each');
  if (!named && new Set(pool.map(({ name }) => name)).size > 1)
    return noneWatched(turn, people, pool, suits.is);
  const verdict = forEverybody(turn, pool);
  if (people.length > 0 && query.by === null) return verdict;
  const kept = query.by
    ? keepsTill(turn, pool.slice(0, 1), query.by)
    : each(turn, pool, (some) => of(contains, turn, some));
  // That it keeps until then is no more than was asked for; that it does not is.
  const fine = kept.parts.some(({ args }) => args?.enough === 'yes');
  return together([verdict, ...(fine ? [] : [kept])]);
};

/** What of these somebody may have, or must not. */
const forPerson = (
  turn: Turn,
  query: Query,
  pool: readonly Item[],
  suits: Extract<Filter, { by: 'suits' }>,
  person: Person,
): Reply => {
  const named = filterOf(query, 'named') ?? filterOf(query, 'each');
  const slots: Slots = { person: { words: person.name, candidates: [{ id: person.id, fit: 1 }] } };
  // "Would it harm Theo": a yes or no of what is in it.
  if (named && !suits.is && person.allergens.length > 0)
    return each(turn, pool, (some) => of(contains, turn, some, { allergens: person.allergens }));
  // "May Sam have some", of the one that was just told: a yes or no of that.
  const one = query.whether && new Set(pool.map(({ name }) => name)).size === 1;
  if (named || one) return each(turn, pool, (some) => of(canEat, turn, some, slots));
  return suits.is ? within(canEat, turn, pool, slots) : notFor(turn, person, pool);
};

/** So few of more than one name that each can be counted by itself. */
const countedApart = (turn: Turn, items: readonly Item[]): boolean =>
  new Set(items.map(({ name }) => name)).size > 1 && grouped(turn.kitchen, items).length <= toldSingly;

const dateAsked = (ask: Attribute): string | null =>
  ask.startsWith('date:') ? ask.slice('date:'.length) : null;

/** One attribute of the things selected, which are at least one. */
export const answer = (turn: Turn, query: Query, ask: Attribute, items: readonly Item[]): Reply => {
  const date = dateAsked(ask);
  if (date) return each(turn, items, (some) => of(itemDate, turn, some, { asked: date }));
  const place = filterOf(query, 'place')?.places[0];
  switch (ask) {
    case 'where':
    case 'spot':
      // Where it is, asked or told, is no yes unless that was the question.
      return of(find, query.whether ? turn : { ...turn, qualifiers: new Set() }, items);
    case 'sum':
      return sum(turn, items);
    case 'since':
      return since(turn, items);
    case 'how-many':
      // "How many of this and how many of that": of each.
      // And of what is called alike: each record of it is told.
      if (filterOf(query, 'each') || (filterOf(query, 'named') && countedApart(turn, items)))
        return each(turn, items, (some) => of(count, turn, some));
      return of(count, turn, items, place ? { place } : {});
    case 'how-old':
      return of(howOld, turn, items);
    case 'until':
      return query.by
        ? keepsTill(turn, items, query.by)
        : each(turn, items, (some) => of(itemDate, turn, some, { asked: 'any' }));
    case 'good':
    case 'keeps':
      return query.by ? keepsTill(turn, items, query.by) : ownVerdicts(turn, items);
    case 'contents':
      return each(turn, items, (some) => of(contains, turn, some));
    case 'maker':
      return whoMade(turn, items, query);
    case 'owner':
      return each(turn, items, (some) => of(tellAbout, turn, some, { asked: 'owner' }));
    case 'feel':
      return each(turn, items, (some) => of(tellAbout, turn, some, { asked: 'feel' }));
    case 'everything':
      return each(turn, items, (some) =>
        of(tellAbout, { ...turn, listener: { ...turn.listener, length: 'full' } }, some),
      );
    case 'all':
    case 'dates':
      return each(turn, items, (some) => of(tellAbout, turn, some));
    case 'who-used':
      return whoUsed(turn, query, items);
    case 'used-up':
      return usedUp(turn, items);
    case 'people': {
      // "Who may not eat from these": by what is in them.
      const holds = items.length <= toldSingly ? [...new Set(items.flatMap((item) => item.contains))] : [];
      const allergens = filterOf(query, 'contains')?.allergens ?? holds;
      return whoAllergic(act('who-allergic', { allergens }), turn);
    }
    case 'goes-with':
      return {
        parts: [say('goes-with-unknown', { items: list([...new Set(items.map(({ name }) => name))]) })],
        memory: about(turn, items),
      };
    case 'use-first':
      return within(useFirst, turn, items);
    default:
      if (filterOf(query, 'dated')?.is === false) return undated(turn, items);
      return (
        ofOrder(turn, query, items) ??
        tellSet(turn, items, place !== undefined, filterOf(query, 'keeping')?.is === 'within')
      );
  }
};

const ofOrder = (turn: Turn, query: Query, items: readonly Item[]): Reply | null => {
  switch (query.order) {
    case null:
      return null;
    case 'oldest':
    case 'longest-open':
      return tellOldest(turn, items);
    case 'newest':
      return newest(turn, items);
    case 'first-to-use':
      return ownVerdicts(turn, items.slice(0, 1));
    case 'most':
    case 'least':
      return of(count, turn, items.slice(0, 1));
  }
};

/** Something in the hand, and nothing else said of it. */
export const inHand = (turn: Turn, query: Query): Reply | null => {
  const felt = filterOf(query, 'felt');
  const only = query.where.length === 1 && query.ask.every((ask) => ask === 'what' || ask === 'which');
  return felt && only
    ? whatsThis(act('whats-this', { item: { ...emptyMention, touch: felt.touch } }), turn)
    : null;
};
