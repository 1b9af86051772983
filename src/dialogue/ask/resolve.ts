/** A follow-up, read against what was asked and told last: the whole question it stands for. */
import { likeNames } from '../../kitchen/index.js';
import type { Id, Item } from '../../kitchen/model.js';
import type { Attribute, Edit, Filter, Query } from '../../protocol/query.js';
import type { Turn } from '../handler.js';
import { atOrdinal } from '../refer/items.js';
import type { Asked } from '../state.js';

export interface Resolved {
  readonly query: Query;
  /** The things it is asked of; null for all that is here. */
  readonly pool: readonly Item[] | null;
}

/** What was told so many turns ago is no longer "those". */
const turnsTold = 4;

const living = (turn: Turn, ids: readonly Id[]): readonly Item[] =>
  ids.flatMap((id) => {
    const item = turn.kitchen.items.get(id);
    return item && item.gone === null ? [item] : [];
  });

const withWho = (filter: Filter, by: Filter): Filter =>
  'who' in filter && 'who' in by ? { ...filter, who: by.who } : filter;

const names = new Set<Filter['by']>(['named', 'each']);
const sameKind = (a: Filter, b: Filter): boolean => a.by === b.by || (names.has(a.by) && names.has(b.by));

/** "What about Sam", "and in the garage": the part it stands for put in its place, else one more. */
const swapped = (where: readonly Filter[], by: Filter): readonly Filter[] => {
  if (where.some((filter) => sameKind(filter, by)))
    return where.map((filter) => (sameKind(filter, by) ? by : filter));
  if (by.by === 'owner' && where.some((filter) => 'who' in filter))
    return where.map((filter) => withWho(filter, by));
  return [...where, by];
};

/** Things that go by much the same name as what was asked for. */
const kin = (turn: Turn, { where }: Query): readonly Item[] => {
  const words = where.flatMap((filter) => (filter.by === 'named' ? [filter.mention.words ?? ''] : []));
  return words.flatMap((one) => (one ? likeNames(turn.kitchen, one).map(({ item }) => item) : []));
};

const merged = (last: Query, edit: Query): Query => ({
  where: edit.where.reduce(swapped, last.where),
  ask: edit.ask.length > 0 ? edit.ask : last.ask,
  whether: edit.ask.length > 0 ? edit.whether : last.whether,
  order: edit.order ?? (edit.ask.length > 0 ? null : last.order),
  by: edit.by ?? last.by,
});

const comparing: ReadonlySet<Attribute> = new Set<Attribute>(['which', 'use-first', 'sum', 'good', 'keeps']);

const among = (turn: Turn, asked: Asked, { query, point }: Edit): Resolved | null => {
  const told = living(turn, asked.members);
  const sameAsked: Query = {
    ...query,
    ask: query.ask.length > 0 ? query.ask : asked.query.ask,
    order: query.order,
  };
  if (point === 'told' || point === 'both') {
    // One was asked about, then another: "which was made first" is about the two.
    const [one, two] = asked.subjects.slice(-2);
    // "How many sausages, and where are they" sets nothing side by side.
    const compares = point === 'both' || query.order !== null || query.ask.some((ask) => comparing.has(ask));
    const pair = compares && told.length === 1 && one && two ? living(turn, [...one, ...two]) : told;
    return told.length > 0 ? { query, pool: [...new Set(pair)] } : null;
  }
  // "What's that altogether", after one and then another.
  if (point === 'it' && query.ask.includes('sum') && told.length === 1) {
    const pair = living(turn, asked.subjects.slice(-2).flat());
    return { query, pool: [...new Set([...pair, ...told])] };
  }
  if (point === 'it') return told.length > 0 ? { query, pool: told } : null;
  if (point === 'other' || point === 'rest') {
    const { items } = turn.memory;
    const unread = told.filter(({ id }) => !items.includes(id));
    const others = unread.length > 0 ? unread : kin(turn, asked.query).filter((item) => !told.includes(item));
    return others.length > 0 ? { query: sameAsked, pool: others } : null;
  }
  if (typeof point === 'object' && point !== null) {
    const one = atOrdinal(told, point.nth);
    if (told.length > 1 && one) return { query: sameAsked, pool: [one] };
    const subject = atOrdinal(asked.subjects, point.nth);
    return subject ? { query: sameAsked, pool: living(turn, subject) } : null;
  }
  return null;
};

/** "Anything in there", of the place that was last asked about. */
export const inPlaceAsked = (turn: Turn, query: Query): Query => {
  const { asked, turns } = turn.state;
  const last = asked?.query.where.find(({ by }) => by === 'place');
  const same = (filter: Filter): boolean =>
    filter.by === 'place' && filter.places.every(({ pointer }) => pointer === 'same');
  // "Is there a carton in here", with no place spoken of: in this kitchen.
  if (!last && turn.memory.placeId === null && query.where.length > 1)
    return { ...query, where: query.where.filter((filter) => !same(filter)) };
  if (!asked || !last || turns - asked.turn > turnsTold) return query;
  return { ...query, where: query.where.map((filter) => (same(filter) ? last : filter)) };
};

/** Null where nothing was told that it could be about. */
export const resolve = (turn: Turn, edit: Edit): Resolved | null => {
  const { asked } = turn.state;
  const { query, point, only } = edit;
  const fresh = asked !== null && turn.state.turns - asked.turn <= turnsTold;
  if (!asked || !fresh) {
    // "Which is the oldest", with nothing told: of all there is.
    const whole =
      point === 'told' && (query.order !== null || query.where.length > 0) && query.ask.includes('which');
    return whole ? { query, pool: null } : null;
  }
  if (point !== null) return among(turn, asked, edit);
  const told = living(turn, asked.members);
  if (told.length > 0 && (only || (query.order !== null && query.where.length === 0))) {
    // Of one kind it is how many of it, of a shelf which they are.
    const ofKind = asked.query.where.some(({ by }) => names.has(by));
    const again = asked.query.ask.filter((one) => ofKind || one !== 'how-many');
    const wanted = query.ask.length > 0 ? query.ask : again.length > 0 ? again : (['what'] as const);
    return { query: { ...query, ask: wanted }, pool: told };
  }
  // "Does anything in the freezer have milk" asks whether; what was done to a thing asks nothing.
  if (asked.query.ask.length === 0 && asked.query.where.length === 0) return null;
  return { query: merged(asked.query, query), pool: null };
};
