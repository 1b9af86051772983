/** Which things a question is about: pure over the kitchen. */
import { likeNames, livingItems } from '../../kitchen/index.js';
import type { Item } from '../../kitchen/model.js';
import type { Filter, Order, Query } from '../../protocol/query.js';
import type { Mention } from '../../protocol/mentions.js';
import { assessIn } from '../../safety/index.js';
import { ageFrom } from '../age/age-parts.js';
import type { Turn } from '../handler.js';
import { findItems, headOf } from '../refer/items.js';
import { feltLike, placeIds, testOf } from './filters.js';

export interface Selected {
  readonly items: readonly Item[];
  /** Named, but nothing here is called so. */
  readonly unknown: Mention | null;
  /** The fact that none of them has, and those it was asked of. */
  readonly failing: Filter | null;
  readonly before: readonly Item[];
  /** A place that is none of this kitchen's, as said. */
  readonly noPlace: string | null;
}

const alike = (turn: Turn, { words }: Mention, among: readonly Item[]): readonly Item[] => {
  const head = words === null ? '' : headOf(words, turn);
  if (!head || words === null) return [];
  const like = new Set(likeNames(turn.kitchen, words).map(({ item }) => item));
  return among.filter((item) => like.has(item) && headOf(item.name, turn) === head);
};

/** "Which milk": every kind of it, rather than the one that is called just so. */
const kindsToo = ({ ask, order, where }: Query): boolean =>
  ask.includes('which') ||
  order !== null ||
  ask.includes('use-first') ||
  // "Any other soup": of whatever kind.
  where.some((filter) => filter.by === 'not' && filter.filter.by === 'told');

/** Of several that a half name fits, those that were just told of. */
const talkedOf = (turn: Turn, items: readonly Item[], { ask }: Query): readonly Item[] => {
  const { asked, turns } = turn.state;
  if (!asked || turns - asked.turn > turnsFresh || ask.includes('how-many')) return items;
  if (new Set(items.map(({ name }) => name)).size < 2) return items;
  const told = items.filter(({ id }) => asked.members.includes(id));
  return told.length > 0 && asked.members.length <= fewTold ? told : items;
};
/** What was told so lately, and so few of it, is what a half name means. */
const turnsFresh = 3;
const fewTold = 3;

/** "Salmon", where some is called that and some salmon fillets: the same food by the same name, and each record of it is told. */
const inPortions = (turn: Turn, { words }: Mention, named: readonly Item[]): readonly Item[] => {
  const said = words?.toLowerCase();
  if (!said || !named.some(({ name }) => name.toLowerCase() === said)) return [];
  return livingItems(turn.kitchen).filter(
    ({ name }) => name.toLowerCase().startsWith(`${said} `) && headOf(name, turn) === headOf(said, turn),
  );
};

const byName = (turn: Turn, mention: Mention, query: Query, pool: readonly Item[]): readonly Item[] => {
  const found = findItems(turn, mention);
  const all = [...new Set([...found.items, ...inPortions(turn, mention, found.items)])];
  const inPool = all.filter((item) => pool.includes(item));
  const meant = talkedOf(turn, inPool, query);
  return kindsToo(query) ? [...new Set([...inPool, ...alike(turn, mention, pool)])] : meant;
};

const isOf = ({ candidates }: Mention, { id }: Item): boolean => candidates.some((one) => one.id === id);

const narrow = (turn: Turn, filter: Filter, query: Query, items: readonly Item[]): readonly Item[] => {
  switch (filter.by) {
    case 'named':
      return byName(turn, filter.mention, query, items);
    case 'each':
      return [...new Set(filter.mentions.flatMap((mention) => byName(turn, mention, query, items)))];
    case 'felt': {
      const felt = feltLike(turn, filter, items);
      // "Tins of chickpeas", of cans: of what is named, the container only counts it.
      const counts = Object.keys(filter.touch).join() === 'container' && query.ask.includes('how-many');
      return felt.length === 0 && counts ? items : felt;
    }
    default: {
      // "Minus the ham": all but what goes by that name.
      if (filter.by === 'not' && filter.filter.by === 'named') {
        const out = byName(turn, filter.filter.mention, query, items);
        return items.filter((item) => !out.includes(item));
      }
      const test = testOf(turn, filter);
      if (!test) return items;
      // "The sausages and that ham in the meat drawer": where one of them lies takes the other out of no answer.
      const each = query.where.find((one) => one.by === 'each');
      if (filter.by === 'place' && each?.by === 'each')
        return items.filter((item) => {
          const kind = each.mentions.filter((mention) => isOf(mention, item));
          const here = (mention: Mention): boolean => items.some((one) => isOf(mention, one) && test(one));
          return test(item) || kind.some((mention) => !here(mention));
        });
      return items.filter(test);
    }
  }
};

/** What it is called first, then all else. */
const inTurn = (where: readonly Filter[]): readonly Filter[] => [
  ...where.filter(({ by }) => by === 'named' || by === 'each'),
  ...where.filter(({ by }) => by !== 'named' && by !== 'each'),
];

/** Names as they are meant: what is called just so, or every kind of it. */
type Naming = 'just so' | 'every kind';

const named = (filter: Filter): readonly Mention[] =>
  filter.by === 'named' ? [filter.mention] : filter.by === 'each' ? filter.mentions : [];

const selectBy = (turn: Turn, query: Query, pool: readonly Item[] | null, naming: Naming): Selected => {
  let items = pool ?? livingItems(turn.kitchen);
  for (const filter of inTurn(query.where)) {
    const place = filter.by === 'place' && !placeIds(turn, filter) ? (filter.places[0]?.words ?? null) : null;
    if (place !== null) return { items: [], unknown: null, failing: filter, before: items, noPlace: place };
    const kinds =
      naming === 'every kind' ? named(filter).flatMap((mention) => alike(turn, mention, items)) : [];
    const left = [...new Set([...narrow(turn, filter, query, items), ...kinds])];
    if (left.length === 0) {
      const unknown = named(filter)[0] ?? null;
      return { items: [], unknown, failing: unknown ? null : filter, before: items, noPlace: null };
    }
    items = left;
  }
  return {
    items: ordered(turn, items, query.order),
    unknown: null,
    failing: null,
    before: items,
    noPlace: null,
  };
};

/** "Sam's milk", where what is called just milk is nobody's: of every kind of milk, the one that is. */
export const select = (turn: Turn, query: Query, pool: readonly Item[] | null): Selected => {
  const plainly = selectBy(turn, query, pool, 'just so');
  if (plainly.failing?.by !== 'owner' && plainly.failing?.by !== 'maker') return plainly;
  const anyKind = selectBy(turn, query, pool, 'every kind');
  return anyKind.items.length > 0 ? anyKind : plainly;
};

const latest = '9999-12-31';

export const ordered = (turn: Turn, items: readonly Item[], order: Order | null): readonly Item[] => {
  const by = (key: (item: Item) => string | number, down = false): readonly Item[] =>
    [...items].sort((a, b) => {
      const [x, y] = [key(a), key(b)];
      const way = x < y ? -1 : x > y ? 1 : 0;
      return down ? -way : way;
    });
  switch (order) {
    case null:
      return items;
    case 'oldest':
    case 'longest-open':
      return by((item) => ageFrom(item)?.at ?? latest);
    case 'newest':
      return by((item) => ageFrom(item)?.at ?? '', true);
    case 'first-to-use':
      return by((item) => assessIn(turn.kitchen, item, turn.clock).lastDay ?? latest);
    case 'most':
      return by(({ amount }) => amount?.value ?? 0, true);
    case 'least':
      return by(({ amount }) => amount?.value ?? Number.MAX_SAFE_INTEGER);
  }
};
