/**
 * Talk of the list to buy: what is asked of its lines, what goes on it and comes off, and what is put right on it.
 * It accounts for all words by itself: what no line takes makes it no talk of the list.
 */
import { itMention, type Act, type LastDone, type SaidLine, type Slots } from '../../intents.js';
import { endsBeforeWhy } from './aside-talk.js';
import { is, some, type Bit, type BitOf, type Frame, type Made } from './bits.js';
import { askedOf, isQuestion } from './list/asked.js';
import { amountOf, readLines, type ReadLines, type Talk } from './list/lines.js';
import { isIdle, isLine } from './list/pieces.js';

const named = (line: SaidLine): string | null => line.item.words;

/** A line that says no more than an item and an amount is said as the rules say it. */
const slotsOf = ({ lines, more }: ReadLines): Slots => {
  const [first, ...others] = lines;
  if (!first) return {};
  const plain = !more && lines.every((line) => line.more === undefined);
  if (others.length === 0 && plain)
    return { item: first.item, ...(first.amount ? { amount: first.amount } : {}) };
  if (plain && lines.every(({ amount }) => amount === undefined))
    return { items: lines.map(({ item }) => item) };
  return others.length === 0
    ? { item: first.item, ...(first.amount ? { amount: first.amount } : {}), lines }
    : { items: lines.map(({ item }) => item), lines };
};

const add = (slots: Slots): Act => ({ intent: 'buy-add', slots });

const isKnown = (bit: Bit): boolean => bit.kind === 'thing' && bit.source !== 'open';

/** What is wanted, with a word of the list, or with one that says that it is lacking. */
const added = (talk: Talk): Act | null => {
  const { bits, list } = talk;
  if (isQuestion(bits) || some(bits, 'if', 'off', 'drop')) return null;
  const topic = talk.implied === true || some(bits, 'topic') || (list.talk && some(bits, 'there'));
  const later = some(bits, 'some-time');
  const needs = bits.filter(
    (bit) => is(bit, 'need', 'is-low', 'noting') && (topic || later || !is(bit, 'want')),
  );
  // "Add a loaf from the bakery", "two lemons on the list".
  const shop = some(bits, 'shop-kind');
  if (!(some(bits, 'put') ? topic || shop || later : topic) && needs.length === 0) return null;
  const read = readLines(talk, ['put', 'need', 'get', 'low', 'is-low', 'noting']);
  const { lines, things, left, more } = read;
  if (left.length > 0 || lines.length === 0) return null;
  const soft = needs.every((bit) => is(bit, 'get', 'want', 'noting'));
  if (things.length === 0) {
    const again = lines.some((line) => line.more ?? line.amount);
    // "We'd better get two more bottles then": of what was just spoken of.
    return list.about.length > 0 && (topic || (again && !soft && lines.some((line) => line.more)))
      ? add(slotsOf(read))
      : null;
  }
  if (!topic && !later && !more) {
    if (!some(needs, 'low', 'is-low') && !things.every(isKnown)) return null;
    // "Get the stew" may be what is here.
    if (soft && things.some((bit) => bit.kind === 'thing' && bit.source === 'hers')) return null;
  }
  return add(slotsOf(read));
};

/** "If we have fewer than two bags of spinach, put spinach on": the condition, and what it is of. */
const conditional = (talk: Talk): Act | null => {
  const { bits, list } = talk;
  const ifNot = bits.findIndex((bit) => is(bit, 'if-not'));
  const topic = some(bits, 'topic', 'there') || list.talk;
  if (ifNot >= 0 && topic && some(bits, 'put', 'need')) {
    if (some(bits, 'off', 'drop')) return null;
    const read = readLines({ ...talk, bits: bits.filter((_, at) => at !== ifNot) }, [
      ...(['put', 'need', 'get', 'what', 'if', 'who'] as const),
    ]);
    const { lines, left } = read;
    if (left.length > 0 || (lines.length === 0 && list.about.length === 0)) return null;
    return add(lines.length === 0 ? { item: itMention } : slotsOf(distinct(read)));
  }
  const at = bits.findIndex((bit) => is(bit, 'if') && !is(bit, 'some-time'));
  if (at < 0) return null;
  const puts = bits.findIndex((bit) => is(bit, 'put', 'need') && !is(bit, 'none', 'fewer', 'low'));
  const short = bits.find((bit) => is(bit, 'fewer', 'none', 'low'));
  if (puts < 0 || !short || !(list.talk || some(bits, 'topic', 'there'))) return null;
  const [before, after] =
    puts > at ? [bits.slice(at + 1, puts), bits.slice(puts)] : [bits.slice(at + 1), bits.slice(0, at)];
  const here = readLines({ ...talk, bits: before }, ['fewer', 'none', 'low', 'need', 'only', 'have-plenty']);
  const wanted = readLines({ ...talk, bits: after }, ['put', 'need', 'get']);
  const [first] = here.lines;
  // "Put milk on if we have less than a gallon": of the milk.
  const of: SaidLine | undefined =
    first?.item.words === undefined || first.item.words === null
      ? wanted.lines[0] && { ...first, item: wanted.lines[0].item }
      : first;
  if (here.left.length > 0 || wanted.left.length > 0 || !of?.item.words || here.lines.length > 1) return null;
  const below = is(short, 'none', 'low') && !is(short, 'fewer') ? null : (of.amount ?? null);
  const slots =
    wanted.things.length > 0
      ? slotsOf(wanted)
      : { ...slotsOf({ ...wanted, lines: [{ ...wanted.lines[0], item: of.item }] }) };
  return add({ ...slots, ifShort: { item: of.item, below } });
};

/** "Is milk on the list? If not, add it": the milk, once. */
const distinct = (read: ReadLines): ReadLines => {
  const names = new Set<string | null>();
  return {
    ...read,
    lines: read.lines.filter((line) => !names.has(named(line)) && Boolean(names.add(named(line)))),
  };
};

/** "I want six in the house. Put on however many we're short". */
const shortfall = (talk: Talk): Act | null => {
  const { bits, list } = talk;
  const short = bits.filter((bit) => is(bit, 'short', 'enough-for'));
  const whole = bits.filter((bit) => is(bit, 'in-all', 'in-house'));
  if (short.length === 0 || !some(bits, 'put', 'need', 'topic')) return null;
  const read = readLines(talk, [
    'short',
    'enough-for',
    'in-all',
    'in-house',
    'put',
    'need',
    'get',
    'only',
    'to',
  ]);
  const [line, ...others] = read.lines;
  if (!line || others.length > 0 || read.left.length > 0) return null;
  if (line.amount === undefined || (line.item.words === null && list.about.length === 0)) return null;
  // "Put on the rest" is of the talk before, where no figure says how many there are to be.
  if (whole.length === 0 && !some(bits, 'enough-for') && short.length < 1) return null;
  return add({ item: line.item, amount: line.amount, asked: 'up-to' });
};

/** "Actually, drop the radishes", "take the bin bags and the milk off". */
const dropped = (talk: Talk): Act | null => {
  const { bits, list } = talk;
  if (isQuestion(bits) || some(bits, 'if', 'put')) return null;
  const drops = bits.filter((bit) => is(bit, 'drop'));
  if (drops.length === 0) return null;
  const topic = some(bits, 'topic', 'off');
  const { lines, left, things, more } = readLines(talk, [
    'drop',
    'off',
    'from',
    'have-plenty',
    'need',
    'get',
  ]);
  if (left.length > 0 || more || lines.length === 0 || things.length === 0) return null;
  const onList = lines.every(({ item }) => item.words !== null && isLine(item.words, list));
  // Without a word of the list, only what stands on it, while it is talked of.
  if (!onList || !(list.talk || (topic && some(bits, 'topic')))) return null;
  if (lines.some(({ amount }) => amount !== undefined)) return null;
  const items = lines.map(({ item }) => item);
  return { intent: 'buy-remove', slots: items.length === 1 ? { item: items[0]! } : { items } };
};

/** "Make it six lemons instead of four", "one's enough", "two cartons, please". */
const changed = (talk: Talk): Act | null => {
  const { bits, list } = talk;
  if (isQuestion(bits) || some(bits, 'if', 'put', 'drop', 'off', 'bought', 'short')) return null;
  const makes = bits.filter((bit) => is(bit, 'make', 'enough', 'more'));
  const instead = bits.findIndex((bit) => is(bit, 'instead-of', 'not'));
  const kept = instead < 0 ? bits : withoutFigure(bits, instead);
  if (!kept) return null;
  const { lines, left, things, more } = readLines({ ...talk, bits: kept }, [
    ...(['make', 'to', 'enough', 'instead-of', 'one', 'only', 'need', 'get', 'instead'] as const),
  ]);
  const [line, ...others] = lines;
  const amount = line?.amount;
  if (!line || others.length > 0 || left.length > 0 || more || !amount) return null;
  const onList = line.item.words !== null && isLine(line.item.words, list);
  if (things.length > 0 && !onList) return null;
  if (things.length === 0 && !(list.talk && list.about.length > 0)) return null;
  // A bare amount is of the one line that was spoken of.
  if (things.length === 0 && makes.length === 0 && list.about.length !== 1) return null;
  if (things.length > 0 && makes.length === 0 && !list.talk) return null;
  const plus = line.more ? { lines: [line] } : {};
  return add({ item: line.item, amount, asked: 'amount', ...plus });
};

/** "Instead of four", "not four": the figure that was said before. */
const withoutFigure = (bits: readonly Bit[], at: number): readonly Bit[] | null => {
  const figure = bits.findIndex((bit, index) => index > at && amountOf(bit) !== null);
  const between = bits.slice(at + 1, Math.max(at + 1, figure));
  return figure < 0 || !between.every(isIdle)
    ? null
    : bits.filter((_, index) => index < at || index > figure);
};

/** "I only got two of the four lemons": so many of them, and the others are still wanted. */
const boughtSome = (talk: Talk): Act | null => {
  const { bits, list } = talk;
  if (isQuestion(bits) || some(bits, 'if', 'not', 'put', 'drop')) return null;
  const got = bits.find((bit) => is(bit, 'bought', 'only-got'));
  if (!got) return null;
  const [place, ...more_] = bits.filter((bit) => bit.kind === 'place');
  if (place?.kind === 'place') return more_.length > 0 ? null : boughtAndPut(talk, place);
  const part = is(got, 'only-got') || some(bits, 'only', 'of-the');
  const figures = bits.filter((bit) => amountOf(bit) !== null);
  const [figure] = figures;
  const whole = figures.length > 1 && some(bits, 'of-the') ? [figures[1]!] : [];
  const kept = bits.filter((bit) => !whole.includes(bit) && !is(bit, 'by-hand'));
  const { lines, left, more } = readLines({ ...talk, bits: kept }, [
    'bought',
    'only-got',
    'only',
    'of-the',
    'need',
    'get',
  ]);
  const [line, ...others] = lines;
  if (!line || others.length > 0 || left.length > 0 || more) return null;
  const onList = line.item.words ? isLine(line.item.words, list) : list.talk && list.about.length > 0;
  if (!onList) return null;
  if (part && figure && line.amount)
    return { intent: 'buy-got', slots: { item: line.item, amount: line.amount, asked: 'some' } };
  // "I bought them", of what was just read from the list.
  return line.item.words === null && !line.amount && list.talk
    ? { intent: 'buy-got', slots: { item: line.item } }
    : null;
};

/** "I bought them. They are on the counter": off the list, and put away there. */
const boughtAndPut = (talk: Talk, { place, from }: BitOf<'place'>): Act | null => {
  const bits = talk.bits.filter((bit) => bit.from !== from);
  const { lines, left, more } = readLines({ ...talk, bits }, ['bought', 'put', 'need', 'get', 'whatever']);
  const { list } = talk;
  const onList = lines.every(({ item }) => (item.words ? isLine(item.words, list) : list.talk));
  const plain = lines.every(({ amount }) => amount === undefined);
  if (left.length > 0 || more || lines.length === 0 || !onList || !plain) return null;
  // One thing by name is told as any other.
  if (lines.length === 1 && lines[0]!.item.words !== null) return null;
  const items = lines.map(({ item }) => item);
  return { intent: 'buy-got', slots: { ...(items.length === 1 ? { item: items[0]! } : { items }), place } };
};

/** "Change the lemons to limes": what takes its place, as much of it. */
const swapped = ({ bits, list }: Talk): Act | null => {
  const things = bits.flatMap((bit) => (bit.kind === 'thing' ? [bit] : []));
  const [was, is_] = things;
  if (isQuestion(bits) || things.length !== 2 || !was || !is_ || !some(bits, 'swap')) return null;
  const between = bits.slice(bits.indexOf(was) + 1, bits.indexOf(is_));
  const rest = bits.every(
    (bit) =>
      isIdle(bit) ||
      bit.kind === 'thing' ||
      is(bit, 'swap', 'to', 'topic', 'there', 'for', 'of-kind', 'instead-of', 'put', 'instead'),
  );
  if (!rest) return null;
  const [not, item] = some(between, 'instead-of') ? [is_, was] : [was, is_];
  const known = not.mention.words !== null && isLine(not.mention.words, list);
  return known ? add({ item: item.mention, not: not.mention }) : null;
};

/** "Put a note on the lemons: unwaxed", "the lemons should be unwaxed ones". */
const annotated = ({ bits, tokens, list }: Talk): Act | null => {
  const at = bits.findIndex((bit) => bit.kind === 'thing' && isLine(bit.mention.words ?? '', list));
  const thing = bits[at];
  if (thing?.kind !== 'thing' || isQuestion(bits)) return null;
  const notes = some(bits.slice(0, at), 'note');
  const ought = some(bits.slice(at + 1, at + 2), 'of-kind', 'ought');
  if (!notes && !ought) return null;
  if (!bits.slice(0, at).every((bit) => isIdle(bit) || is(bit, 'note', 'put', 'for'))) return null;
  let from = at + 1;
  while (from < bits.length && is(bits[from], 'saying', 'ought')) from += 1;
  const rest = bits.slice(from);
  if (rest.length === 0 || rest.some((bit) => ['place', 'marker', 'time', 'span', 'day'].includes(bit.kind)))
    return null;
  return add({
    item: thing.mention,
    lines: [{ item: thing.mention, note: tokens.slice(bits[from]!.from).join(' ') }],
  });
};

/** "In juice, not in syrup", "the big ones", of what was just put on. */
const noted = (talk: Talk): Act | null => {
  const { bits, tokens, list } = talk;
  if (!list.talk || list.about.length !== 1 || isQuestion(bits)) return null;
  if (some(bits, 'topic', 'put', 'drop', 'off', 'bought', 'need', 'if', 'not-food')) return null;
  const from = bits.findIndex(
    (bit) => !is(bit, 'fill', 'aside', 'opener', 'repair') || is(bit, 'of-kind', 'kind-is'),
  );
  const head = bits[from];
  const last = bits.at(-1);
  const kind = is(head, 'of-kind') || (is(head, 'kind-is', 'make') && is(last, 'kind-head') && last !== head);
  if (!head || !kind || tokens.length - head.from > longestNote || head.to === tokens.length) return null;
  if (bits.some((bit) => ['place', 'marker', 'day', 'time', 'span'].includes(bit.kind))) return null;
  const begin = is(head, 'make') ? (bits[from + 1]?.from ?? head.from) : head.from;
  return add({ item: itMention, lines: [{ item: itMention, note: tokens.slice(begin).join(' ') }] });
};
const longestNote = 9;

/** Whatever runs low: what the record says there is least of. */
const low = ({ bits }: Talk): Act | null =>
  some(bits, 'whatever') && some(bits, 'low', 'is-low') && some(bits, 'topic', 'there') && some(bits, 'put')
    ? add({ asked: 'low' })
    : null;

/** "They're out of green salsa so leave that on, but I've got the other two." */
const othersBought = (talk: Talk): Act | null => {
  const { bits, list } = talk;
  const [out] = bits.filter((bit) => is(bit, 'out-there', 'stays'));
  if (!out || !list.talk || !some(bits, 'others') || isQuestion(bits)) return null;
  const skips = ['out-there', 'stays', 'others', 'bought', 'came-home', 'need', 'get', 'put'];
  const { lines, left } = readLines(talk, skips);
  const known = lines.every(({ item }) => item.words !== null && isLine(item.words, list));
  if (left.length > 0 || lines.length === 0 || !known) return null;
  const items = lines.map(({ item }) => item);
  return {
    intent: 'buy-got',
    slots: { asked: 'but', ...(items.length === 1 ? { item: items[0]! } : { items }) },
  };
};

/** "Sam's just come back with the lot, so all that can come off." */
const allBought = ({ bits, list }: Talk): Act | null => {
  const got = bits.some((bit) => is(bit, 'bought', 'came-home'));
  if (!list.talk || !got || !some(bits, 'all-of-it') || isQuestion(bits)) return null;
  const whole = bits.every(
    (bit) =>
      isIdle(bit) ||
      bit.kind === 'person' ||
      bit.kind === 'pointer' ||
      is(
        bit,
        ...(['bought', 'came-home', 'all-of-it', 'come-off', 'off', 'topic', 'there', 'it', 'them'] as const),
      ),
  );
  return whole ? { intent: 'buy-got', slots: {} } : null;
};

/** "Oh no, put them back on", of what was just taken off. */
const backOn = ({ bits }: Talk, last: LastDone | null): Act | null => {
  const off = last?.intent === 'buy-remove' || last?.intent === 'buy-got';
  return off &&
    some(bits, 'put-back') &&
    bits.every((bit) => isIdle(bit) || is(bit, 'put-back', 'repair', 'topic', 'there'))
    ? { intent: 'undo', slots: {} }
    : null;
};

/** "Scratch the lemons and get limes instead": taken off, and what takes its place. */
const dropsFor = (talk: Talk): Act | null => {
  const { bits } = talk;
  const drop = bits.findIndex((bit) => is(bit, 'drop'));
  const get = bits.findIndex(
    (bit, at) => at > drop && is(bit, 'get', 'put', 'need', 'have-it') && !is(bit, 'drop'),
  );
  if (drop < 0 || get < 0 || !some(bits, 'instead') || isQuestion(bits)) return null;
  const things = bits.filter(({ kind }) => kind === 'thing');
  const [was, now] = things;
  const rest = bits.every(
    (bit) =>
      isIdle(bit) ||
      bit.kind === 'thing' ||
      is(bit, ...(['drop', 'get', 'put', 'need', 'instead', 'topic', 'there', 'off', 'make'] as const)),
  );
  if (!rest || things.length !== 2 || was?.kind !== 'thing' || now?.kind !== 'thing') return null;
  const known = was.mention.words !== null && isLine(was.mention.words, talk.list);
  return known && was.from < bits[get]!.from ? add({ item: now.mention, not: was.mention }) : null;
};

/** Where another verb begins: "take the salsa off, and put on dish soap". */
const clausesOf = ({ bits }: Talk): readonly (readonly Bit[])[] => {
  const verbs = bits.flatMap((bit, at) => (is(bit, 'put', 'drop') ? [at] : []));
  const [first, ...others] = verbs;
  if (first === undefined || !bits.slice(0, first).every(isIdle)) return [];
  const starts = others.filter(
    (at) => is(bits[at - 1], 'and', 'else-on') && is(bits[at], 'put') !== is(bits[at - 2], 'put'),
  );
  if (starts.length === 0) return [];
  return [0, ...starts].map((from, index) => bits.slice(from, starts[index]));
};

const readers = [
  dropsFor,
  othersBought,
  allBought,
  conditional,
  askedOf,
  shortfall,
  low,
  dropped,
  boughtSome,
  swapped,
  annotated,
  changed,
  added,
  noted,
] as const;

/** What was said of the list; null where it is no talk of it. */
export const onTheList = (talk: Talk): Act | null => {
  for (const read of readers) {
    const act = read(talk);
    if (act) return act;
  }
  return null;
};

/** One after the other, where each by itself is talk of the list. */
const clauses = (talk: Talk): readonly Act[] | null => {
  const acts = clausesOf(talk).map((bits) =>
    onTheList({ ...talk, bits, implied: true, list: { ...talk.list, talk: true } }),
  );
  const all = acts.flatMap((act) => act ?? []);
  return acts.length > 1 && all.length === acts.length ? all : null;
};

export const listFrame: Frame = ({ list, onList, tokens, last, beside }): Made | null => {
  const said = list ? onList() : null;
  if (!said || !list) return null;
  const ends = endsBeforeWhy(said.bits, said.tokens, said.pauses, (word) => beside(word, 'reason-leads'));
  const acts = [said.tokens.length, ...ends]
    .map((end) => {
      const talk = {
        bits: said.bits.filter(({ to }) => to <= end),
        tokens: said.tokens.slice(0, end),
        list,
      };
      const one = backOn(talk, last) ?? onTheList(talk);
      return one ? [one] : clauses(talk);
    })
    .find((one) => one !== null);
  if (!acts) return null;
  const known = said.bits.every((bit) => bit.kind !== 'thing' || isKnown(bit));
  const ours = known || list.talk || some(said.bits, 'topic', 'shop-kind', 'some-time');
  return { acts, used: new Set(tokens.keys()), whole: true, ours };
};
