/** Questions of any make-up: the set they are about, then what is asked of it, the answer first. */
import type { Item } from '../../kitchen/model.js';
import type { Attribute, Filter, Query } from '../../protocol/query.js';
import type { Say } from '../../speech/answer.js';
import type { Act, PlaceMention } from '../../understanding/intents.js';
import { find } from '../find/find.js';
import {
  type Handler,
  type Reply,
  type Turn,
  about,
  day,
  list,
  say,
  notFound,
  speakerPerson,
} from '../handler.js';
import { allergenIn } from '../../safety/index.js';
import { shoppingList } from '../../kitchen/index.js';
import { nameOfGone, noneLeft } from '../refer/none-left.js';
import { useFirst } from '../age/use-first.js';
import { theCut } from '../outages/the-cut.js';
import { grouped } from '../describe/item.js';
import { answer, inHand, ofAllergens, together, toldSingly } from './answers.js';
import { inPlaceAsked, resolve } from './resolve.js';
import { type Selected, select } from './select.js';

const settling = new Set(['contains', 'free', 'suits', 'diet']);

/** What a fact that failed is answered by: "no, Aunt Bea made it". */
const factOf: Readonly<Partial<Record<string, Attribute>>> = {
  place: 'where',
  put: 'where',
  spot: 'where',
  maker: 'maker',
  owner: 'owner',
  date: 'dates',
  keeping: 'good',
  low: 'how-many',
  marked: 'feel',
  means: 'feel',
  felt: 'feel',
};

/** Things named for certain, of which what was asked does not hold. */
const notSo = (turn: Turn, query: Query, { failing, before }: Selected): Reply | null => {
  const named = query.where.some(({ by }) => by === 'named' || by === 'each');
  if (!failing || !named || before.length === 0) return null;
  // "Any other soup": none but what was just told of.
  if (failing.by === 'not' && failing.filter.by === 'told')
    return { parts: [say('no-other', { name: before[0]!.name })], count: 0, names: [] };
  if (failing.by === 'state' && failing.state === 'opened') return answer(turn, query, 'date:opened', before);
  const fact = factOf[failing.by];
  if (failing.by === 'place')
    return find(
      { intent: 'find', slots: { place: failing.places[0]! } },
      { ...turn, picked: { item: before.map(({ id }) => id) } },
    );
  return fact ? answer(turn, { ...query, whether: true }, fact, before) : null;
};

/** The day that was said, or from which day on. */
const daysOf = ({ days: { from, until } }: Extract<Filter, { by: 'put' }>) => ({
  ...(from ? { from: day(from) } : {}),
  ...(until && until !== from ? { until: day(until) } : {}),
});

/** What was put there on a day is told as that: it narrows what was asked. */
const putWhen = (query: Query, count: number): readonly Say[] =>
  query.where.flatMap((filter) =>
    filter.by === 'put' ? [say('ask-put', { ...daysOf(filter), count })] : [],
  );

const nothing = (turn: Turn, query: Query, selected: Selected): Reply => {
  const { unknown, noPlace } = selected;
  if (noPlace) return { parts: [say('no-such-place-told', { words: noPlace })] };
  if (unknown) {
    const gone = nameOfGone(
      turn,
      unknown.candidates.map(({ id }) => id),
    );
    if (gone ?? unknown.words) return noneLeft(turn, (gone ?? unknown.words)!);
  }
  const { failing } = selected;
  if (failing?.by === 'put' && !query.where.some(({ by }) => by === 'named' || by === 'each'))
    return { parts: [say('ask-put-none', daysOf(failing))], count: 0, names: [] };
  return notSo(turn, query, selected) ?? { parts: [notFound('nothing-like-that')], count: 0, names: [] };
};

const defaultAsk = ({ ask, where, whether }: Query): readonly Attribute[] => {
  if (ask.length > 0) return ask;
  const claims = new Set(where.map(({ by }) => by));
  if (whether && claims.has('maker')) return ['maker'];
  if (whether && claims.has('owner')) return ['owner'];
  const named = claims.has('named') || claims.has('each');
  if (whether && (claims.has('suits') || (named && claims.has('keeping')))) return ['good'];
  return named ? ['where'] : ['what'];
};

const tellPlaceOnly = (query: Query, pool: readonly Item[] | null): Act | null => {
  const [only, ...more] = query.where;
  const plain = query.ask.every((ask) => ask === 'what');
  if (pool || more.length > 0 || only?.by !== 'place' || only.places.length !== 1 || query.order || !plain)
    return null;
  return { intent: 'find', slots: { place: only.places[0]! } };
};

/** "What's gone past it", "anything in the fridge on its way out": what is past and what is to be used, of one place or of all. */
const tellKeepingOnly = (turn: Turn, query: Query, pool: readonly Item[] | null): Reply | null => {
  const [keeping, ...twice] = query.where.filter(({ by }) => by === 'keeping');
  const [place, ...more] = query.where.filter(({ by }) => by !== 'keeping');
  const plain = query.ask.every((ask) => ask === 'what' || ask === 'which') && query.order === null;
  // What a power cut spoiled is told by itself.
  if (theCut(turn) !== null) return null;
  if (pool || !plain || keeping?.by !== 'keeping' || twice.length + more.length > 0) return null;
  if ((keeping.is !== 'past' && keeping.is !== 'due') || keeping.day) return null;
  if (place && (place.by !== 'place' || place.places.length !== 1)) return null;
  const slots = place?.by === 'place' ? { place: place.places[0]! } : {};
  const past = keeping.is === 'past' ? (['past'] as const) : [];
  return useFirst(
    { intent: 'use-first', slots },
    { ...turn, qualifiers: new Set([...turn.qualifiers, ...past]) },
  );
};

/** "What have we got that I could eat, is any of it old", of whoever watches for nothing: what is past, then what to use first. */
const tellToEat = (turn: Turn, query: Query, pool: readonly Item[] | null): Reply | null => {
  const mine = query.where.some((filter) => filter.by === 'suits' && filter.is && filter.who.who === 'me');
  const me = speakerPerson(turn);
  const watches = me && (me.atRisk || me.allergens.length + (me.diets ?? []).length > 0);
  const plain = query.ask.every((ask) => toEat.has(ask)) && query.order === null && query.by === null;
  if (pool || !mine || watches || !plain || theCut(turn) !== null) return null;
  const rest = query.where.filter(({ by }) => by !== 'suits' && by !== 'keeping');
  const [place, ...more] = rest;
  if (more.length > 0 || (place && (place.by !== 'place' || place.places.length !== 1))) return null;
  const slots = place?.by === 'place' ? { place: place.places[0]! } : {};
  return useFirst({ intent: 'use-first', slots: { ...slots, asked: 'past' } }, turn);
};
const toEat: ReadonlySet<Attribute> = new Set<Attribute>(['what', 'which', 'good', 'use-first']);
/** "Did I make it": of one thing that is meant, a fact to confirm rather than one that it must have. */
const asClaims = (query: Query, definite: boolean): Query => {
  const claim = query.where.some(({ by }) => by === 'maker');
  if (!definite || !claim || query.ask.includes('maker') || (query.ask.length === 0 && query.whether))
    return query;
  const asked = query.ask.filter((one) => one !== 'what' && one !== 'which');
  return asked.length > 0 && query.ask.length === asked.length
    ? { ...query, ask: [...asked, 'maker'], whether: true }
    : query;
};

/** "Is that the lentil one", of three just told: the same is asked of it. */
const ofThoseTold = (turn: Turn, query: Query): Query => {
  const { asked, turns } = turn.state;
  const [only, ...more] = query.where;
  const bare = query.ask.length === 0 && query.whether && only?.by === 'named' && more.length === 0;
  if (!bare || !asked || turns - asked.turn !== 1 || asked.members.length < 2) return query;
  const told = only.mention.candidates.some(({ id }) => asked.members.includes(id));
  return told && asked.query.ask.length > 0 ? { ...query, ask: asked.query.ask, whether: false } : query;
};

/** "What on the list has milk in it": by what such food usually holds, since a line to buy has a name and no more. */
const onListWith = (turn: Turn, { where }: Query): Reply => {
  const allergens = where.flatMap((filter) =>
    filter.by === 'contains' || filter.by === 'free' ? filter.allergens : [],
  );
  const lines = shoppingList(turn.kitchen);
  const holds = lines.filter(({ name }) =>
    allergens.some((one) => {
      const { answer: found } = allergenIn({ name, contains: [], freeFrom: [] }, one);
      return found === 'usually-contains' || found === 'said-to-contain';
    }),
  );
  const rest = lines.length - holds.length;
  return {
    parts: [
      holds.length > 0
        ? say('listed-with', { items: list(holds.map(({ name }) => name)), allergens: list(allergens, true) })
        : say('listed-with-none', { allergens: list(allergens, true) }),
      ...(rest > 0 ? [say('listed-unknown', { count: rest })] : []),
    ],
    details: [say('check-the-label')],
    memory: { purchases: holds.map(({ id }) => id) },
    names: holds.map(({ name }) => name),
    count: holds.length,
  };
};

/** "In the second drawer of the upright freezer, and in the fridge": a part that the whole does not have is said. */
const noSuchPart = (places: readonly PlaceMention[]): readonly Say[] =>
  places.flatMap(({ words, candidates, path = [] }) =>
    words !== null && candidates.length === 0 && path.length > 1
      ? [say('no-such-place-told', { words })]
      : [],
  );

/** "Have you got the pie and the eggs": what is not here is said, too. */
const notHere = (query: Query): readonly Say[] =>
  query.where.flatMap((filter) =>
    filter.by === 'each'
      ? filter.mentions.flatMap(({ words, candidates }) =>
          words !== null && candidates.length === 0 ? [notFound('no-such-item', { name: words })] : [],
        )
      : [],
  );

/** How old one thing is, is told with how long it is good for, and how many there are with where: not told again. */
const saidOnce = (
  { by }: Query,
  asks: readonly Attribute[],
  kinds: number,
  counted: boolean,
): readonly Attribute[] => {
  const once =
    asks.includes('how-old') && by === null && kinds === 1
      ? asks.filter((ask) => ask !== 'good' && ask !== 'keeps')
      : asks;
  return counted && once.includes('how-many') ? once.filter((ask) => ask !== 'where') : once;
};

/** The answer, or null where nothing was told that the question could follow. */
export const askReply = (act: Act, turn: Turn): Reply | null => {
  const { query: whole, edit } = act.slots;
  const resolved = whole ? { query: whole, pool: null } : edit ? resolve(turn, edit) : null;
  if (!resolved) return null;
  const query = asClaims(inPlaceAsked(turn, ofThoseTold(turn, resolved.query)), edit?.point === 'it');
  const { pool } = resolved;
  if (query.where.some(({ by }) => by === 'listed')) return onListWith(turn, query);
  const inPlace = tellPlaceOnly(query, pool);
  if (inPlace) return told(query, find(inPlace, turn), []);
  const turning = tellKeepingOnly(turn, query, pool);
  if (turning) return told(query, turning, []);
  const food = tellToEat(turn, query, pool);
  if (food) return told(query, food, []);
  const held = pool ? null : inHand(turn, query);
  if (held) return told(query, held, []);
  // "Would the kids be okay with that chilli, it's getting on": of the chilli, old or not.
  const judged = query.where.some(({ by }) => by === 'suits') && query.where.some(({ by }) => by === 'named');
  const narrowing = query.where.filter(({ by }) => !settling.has(by) && !(judged && by === 'keeping'));
  const first = select(turn, { ...query, where: narrowing }, pool);
  const settled = first.items.length > 0 ? ofAllergens(turn, query, first.items) : null;
  // Where none of it was named, "those" are all that it was asked of.
  if (settled) return told(query, settled, settled.memory?.items?.length ? [] : first.items);
  const claimed = query.whether && query.ask.includes('maker') && query.ask.length > 1;
  const plain = {
    ...query,
    where: query.where.filter(({ by }) => by !== 'suits' && !(claimed && by === 'maker')),
  };
  const selected = select(turn, plain.where.length > 0 || pool ? plain : query, pool);
  if (selected.items.length === 0) return told(query, nothing(turn, query, selected), []);
  const kinds = grouped(turn.kitchen, selected.items).length;
  const asks = saidOnce(
    query,
    defaultAsk(query),
    kinds,
    selected.items.every(({ amount }) => amount !== null),
  );
  // A long list is never read once for each thing that was asked: which of them is meant, is.
  if (edit && asks.length > 1 && kinds > toldSingly) return told(query, { parts: [say('ask-keeps')] }, []);
  // "For Sunday I fancy the pie, has it anything in it that would upset Sam": whom it is not for is said before all else.
  const safe = judged ? ofAllergens(turn, { ...query, ask: ['good'], by: null }, selected.items) : null;
  const replies = asks.map((ask) => answer(turn, query, ask, selected.items));
  const reply = together(safe ? [safe, ...replies] : replies);
  const lacking = query.where.flatMap((filter) => (filter.by === 'place' ? noSuchPart(filter.places) : []));
  const missing = notHere(query);
  return told(
    query,
    {
      ...reply,
      parts: [...putWhen(query, kinds), ...reply.parts, ...missing, ...lacking],
      memory: { ...about(turn, selected.items), ...reply.memory },
    },
    selected.items,
  );
};

/** With the question and what was told of it, for what follows. */
const told = (query: Query, reply: Reply, items: readonly Item[]): Reply => {
  const { items: spoken = [], offered = [] } = reply.memory ?? {};
  const ids =
    query.order === null && items.length > 0
      ? items.map(({ id }) => id)
      : offered.length > spoken.length
        ? offered
        : spoken;
  return { ...reply, asked: { query, members: [...new Set(ids)] } };
};

export const ask: Handler = (act, turn) =>
  askReply(act, turn) ?? { parts: [], ask: { slot: 'item', question: say('ask-find'), expecting: 'item' } };
