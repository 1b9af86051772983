/**
 * Questions, put together from their pieces in any order: which things (by name, place, feel, maker,
 * date, state …), what is asked of them, and whether they are things told before.
 */
import type { DynamicRules } from '../../grammar/api.js';
import type { Attribute, Edit, Filter, Point, Query } from '../../protocol/query.js';
import type { PlainDate } from '../../terms/dates.js';
import { emptyMention, itMention, type Act, type Mention } from '../intents.js';
import type { AskProposal } from '../intents.js';
import { asideUntil, askingIn, attributesIn, heads, is, isOutright } from './questions/asked.js';
import { contained, dayMeant, ofMeaning, ofPeople, ofThings, orderIn } from './questions/filters.js';
import { matterIn, type MatterAsked } from './questions/matters.js';
import { forSomebody, ofEverybody } from './questions/eaters.js';
import { piecesOf, type Piece, type PieceOf } from './questions/pieces.js';
import { wordingsFor } from './questions/wordings.js';

/** From here on a name is one of hers, and no likeness. */
const surelyHers = { thing: 0.78, place: 0.7 } as const;
const wordForWord = 0.95;

/** So many pieces at most are left of a question that only asks when. */
const shortest = 5;

/** What may be asked of a food while it is asked who may have it. */
const ofFood: ReadonlySet<Attribute> = new Set<Attribute>([
  'good',
  'keeps',
  'what',
  'which',
  'contents',
  'goes-with',
]);

/** The verb that the question opens with. */
const verbOf = (pieces: readonly Piece[], name: string): boolean =>
  is(
    pieces.find((piece) => is(piece, 'aux')),
    name,
  );

/** What a word nobody used takes from a question (natural logarithm). */
const leftCost = -0.6;

const nthClass = 'nth:';
const nthOf = (piece: Piece): readonly number[] => {
  const named = piece.kind === 'words' && [...piece.classes].find((name) => name.startsWith(nthClass));
  return named ? [Number(named.slice(nthClass.length))] : [];
};

/** "In the fridge that is open": no pointing. */
const isRelative = (pieces: readonly Piece[], at: number): boolean => {
  const led = pieces[at - 1];
  return (
    is(pieces[at], 'relative') &&
    // "What do we have that Sam made".
    (((pieces[at + 1]?.kind === 'person' || is(pieces[at + 1], 'subject', 'same')) &&
      is(pieces[at + 2], 'made', 'bought', 'frozen', 'opened', 'past-aux')) ||
      led?.kind === 'place' ||
      led?.kind === 'thing' ||
      led?.kind === 'felt' ||
      // "What can Peter eat that wants using up".
      (is(led, 'eat', 'filler') && is(pieces[at + 1], 'not-last', 'past', 'expired', 'low')))
  );
};

const pointIn = (
  pieces: readonly Piece[],
  /** Said of people: "they both" points at no things. */
  people: ReadonlySet<Piece>,
): { point: Point | null; used: readonly Piece[] } => {
  const at = pieces.findIndex((piece) => piece.kind === 'ordinal');
  const nth = at >= 0 ? (pieces[at] as PieceOf<'ordinal'>) : undefined;
  const other = pieces.find((piece) => is(piece, 'other'));
  if (other) return { point: 'other', used: [other] };
  const rest = pieces.find((piece) => is(piece, 'rest'));
  if (rest) return { point: 'rest', used: [rest] };
  if (nth && is(pieces[at + 1], 'one')) return { point: { nth: nth.nth }, used: [nth] };
  const counted = pieces.flatMap((piece) => nthOf(piece).map((n) => ({ piece, n })))[0];
  if (counted) return { point: { nth: counted.n }, used: [counted.piece] };
  const both = pieces.find((piece) => is(piece, 'both') && !people.has(piece));
  if (both) return { point: 'both', used: [both] };
  const those = pieces.find((piece) => is(piece, 'those') && !people.has(piece));
  if (those) return { point: 'told', used: [those] };
  // "That pie": no pointing, but a word before a name.
  const it = pieces.find(
    (piece, index) =>
      is(piece, 'it') &&
      !isRelative(pieces, index) &&
      // "Does this have milk in it": before its verb it is no word before a name.
      (is(pieces[index + 1], 'have') ||
        !pieces.slice(index + 1, index + 3).some((next) => next.kind === 'thing' || next.kind === 'felt')),
  );
  if (it) return { point: 'it', used: [it] };
  // "Which of our dishes": of all there are.
  const which = pieces.find((piece, index) => is(piece, 'which-one') && !is(pieces[index + 1], 'me'));
  return which ? { point: 'told', used: [] } : { point: null, used: [] };
};

/** What it is about: things of hers before foods that are only spoken of; several where they are joined. */
const topicsIn = (
  pieces: readonly Piece[],
  tokens: readonly string[],
  taken: ReadonlySet<Piece>,
  /** Whether they are here at all: each that was named is to be answered for. */
  whetherHere: boolean,
): { readonly mentions: readonly Mention[]; readonly of: readonly Piece[] } => {
  const all = pieces.filter(
    (piece): piece is PieceOf<'thing'> => piece.kind === 'thing' && !taken.has(piece),
  );
  // "Peanut butter", where there is only butter: one name, of something that is not here.
  const whole = all.map((piece) => {
    const led = pieces[pieces.indexOf(piece) - 1];
    const stuck =
      led && !taken.has(led) && (led.kind === 'allergen' || (led.kind === 'thing' && led.fit === 0));
    if (!stuck) return { piece, mention: piece.mention, fit: piece.fit };
    const words = tokens.slice(led.from, piece.to).join(' ');
    return { piece, mention: { ...emptyMention, words }, fit: 0.5 };
  });
  const hers = whole.filter(({ fit }) => fit > 0);
  // "The lasagna or the ham": said in one breath, each is asked about.
  const inOneBreath = all.every((piece, nth) => {
    const next = all[nth + 1];
    const between = next ? pieces.slice(pieces.indexOf(piece) + 1, pieces.indexOf(next)) : [];
    const joined = between.some((one) => is(one, 'and')) || next?.parted === true;
    return !next || (joined && between.every((one) => is(one, 'and', 'small')));
  });
  const listed =
    (whetherHere || inOneBreath) &&
    hers.length > 0 &&
    hers.length < whole.length &&
    pieces.some((piece) => is(piece, 'and'));
  const kept = (listed ? whole : hers.length > 0 ? hers : whole.slice(0, 1)).map((one) => {
    const led = pieces[pieces.indexOf(one.piece) - 1];
    const maker = hers.length > 1 && led?.kind === 'person' ? led.words.replace(/'s?$/, '') : null;
    return maker === null ? one : { ...one, mention: { ...one.mention, maker } };
  });
  return { mentions: kept.map(({ mention }) => mention), of: all };
};

/**
 * "What in the fridge is still good", "is anything past its best": of a set that nobody named, whether a thing is
 * good narrows it. What is asked is which they are.
 */
const soundOf = (
  pieces: readonly Piece[],
  asks: readonly Attribute[],
  by: ReadonlySet<Piece>,
): Extract<Filter, { by: 'keeping' }> | null => {
  if (asks.join() !== 'good') return null;
  const at = pieces.findIndex((piece) => by.has(piece) && is(piece, 'good', 'can'));
  if (at < 0 || pieces.some((piece) => is(piece, 'eat', 'can') || piece.kind === 'day')) return null;
  // "Fine, what is the oldest": said before anything was asked. "Is what is in there still good" asks yes or no of it.
  const asked = pieces.findIndex((piece) => is(piece, 'whether', ...heads));
  if (asked < 0 || asked > at || (asked < at - 1 && closes(pieces, asked))) return null;
  const denied = pieces.slice(Math.max(0, at - 3), at).some((piece) => is(piece, 'not'));
  return { by: 'keeping', is: is(pieces[at], 'gone-off') === denied ? 'within' : 'past' };
};

/** "Fine anyway, what's the oldest": a word of praise before a question of its own is said of what went before. */
const withoutAssent = (pieces: readonly Piece[]): readonly Piece[] => {
  const said = pieces.findIndex((piece) => !is(piece, 'filler') && piece.kind !== 'unknown');
  const next = pieces.slice(said + 1).find((piece) => !is(piece, 'filler') && piece.kind !== 'unknown');
  return said >= 0 && is(pieces[said], 'good') && is(next, ...heads) ? pieces.slice(said + 1) : pieces;
};

/**
 * "I put the ham on the door, what should I use first": of all there is, unless it is said of which ("of those",
 * "which of them", "what ham"). So many pieces before it are told.
 */
const toldUntil = (pieces: readonly Piece[]): number => {
  const head = pieces.findLastIndex((piece) => is(piece, 'what') && !is(piece, 'which'));
  const rest = pieces.slice(head + 1);
  const first = rest.some((piece) => is(piece, 'use-first') || is(piece, 'first'));
  const before = pieces.slice(0, Math.max(0, head));
  const thing = before.findIndex(({ kind }) => kind === 'thing');
  const ofWhich = before.slice(Math.max(0, thing - 2), thing).some((piece) => is(piece, 'of-which'));
  return first && thing >= 0 && !ofWhich ? head : 0;
};

/** A yes or no is asked of what a second question word tells. */
const closes = (pieces: readonly Piece[], first: number): boolean =>
  is(pieces[first], 'whether') &&
  !is(pieces[first], 'any') &&
  pieces.slice(first + 1, first + 3).some((piece) => is(piece, 'what', 'whatever'));

const positions = (pieces: Iterable<Piece>): ReadonlySet<number> => {
  const at = new Set<number>();
  for (const { from, to } of pieces) for (let word = from; word < to; word += 1) at.add(word);
  return at;
};

/** Words of no use in it, which for what is asked of the household are few or it was about something else. */
const ofMatter = ({ act, used }: MatterAsked, pieces: readonly Piece[]): AskProposal => {
  const left = pieces.flatMap((piece) =>
    !used.has(piece) && (piece.kind === 'unknown' || (piece.kind === 'thing' && act.intent !== 'markers'))
      ? [piece.from]
      : [],
  );
  return {
    acts: [act],
    mood: 'asked',
    used: positions(pieces.filter(({ kind }) => kind !== 'unknown')),
    left: act.intent === 'markers' ? [] : left,
    score: leftCost * left.length - 0.1,
    by: 'questions',
    ownSubject: true,
    outright: isOutright(pieces),
    hers: false,
    fragment: false,
  };
};

/** What a question says, or null where it is none, or in no wording of this language. */
export const questionIn = (
  tokens: readonly string[],
  rules: DynamicRules,
  today: PlainDate,
  language: string,
  /** What marks mean in this household. */
  meanings: readonly string[] = [],
  /** Before which words a pause was written. */
  pauses: ReadonlySet<number> = new Set(),
): AskProposal | null => {
  const wordings = wordingsFor(language);
  if (!wordings || tokens.length === 0) return null;
  const said = withoutAssent(piecesOf(tokens, rules, wordings, pauses));
  // "Is that all right for her, and how do I do it from frozen": both are asked, of the same.
  const then = said.findIndex((piece, at) => at > 1 && is(piece, 'how-do') && is(said[at - 1], 'and'));
  if (then > 0) {
    const first = questionIn(tokens.slice(0, said[then - 1]!.from), rules, today, language, meanings, pauses);
    const frozen = said.slice(then).some((piece) => is(piece, 'state:frozen'));
    const heats: Act = {
      intent: 'reheat',
      slots: { item: itMention, ...(frozen ? { from_state: 'freezer' as const } : {}) },
    };
    const one = said.slice(then).every(({ kind }) => kind === 'words');
    if (first?.outright && !first.fragment && one) return { ...first, acts: [...first.acts, heats] };
  }
  const from = toldUntil(said);
  const pieces = said.slice(from);
  const matter = matterIn(pieces, tokens, wordings, today);
  // "What on the list has milk in it": of the list, but of what is in it.
  const holdsIt =
    matter?.act.intent === 'buy-read' &&
    pieces.some((piece) => is(piece, 'in-it')) &&
    contained(pieces, tokens, (from) => wordings.allergens.longestAt(tokens, from), false).filters.length > 0;
  if (matter && !holdsIt) return ofMatter(matter, pieces);
  // Why a thing is so is told by whoever knows what was said of it.
  if (pieces.some((piece) => is(piece, 'why'))) return null;
  // "For her and for Sam": of both, and nothing again.
  const again = pieces.some(
    (piece, at) =>
      is(piece, 'again') &&
      !(is(piece, 'and') && (pieces[at - 1]?.kind === 'person' || is(pieces[at - 1], 'same', 'me'))),
  );
  // "Minus whatever is in the door" takes from what was told, and asks nothing of its own.
  const leavesOut = is(
    pieces.find((piece) => !is(piece, 'filler')),
    'not',
  );
  // "Not the milk" puts right; "minus the milk" takes it from what was told.
  const minus = pieces.some((piece) => is(piece, 'minus'));
  const asking = leavesOut && !pieces.some((piece) => is(piece, 'past-aux')) ? 'not' : askingIn(pieces);
  const follows = asking === 'not' || again;
  const taken = new Set<Piece>();
  const takeAll = (of: Iterable<Piece>): void => {
    for (const piece of of) taken.add(piece);
  };
  const meaning = ofMeaning(pieces, tokens, meanings);
  takeAll(meaning.used);
  const allergenAt = (from: number): { readonly length: number; readonly value: string } | null =>
    wordings.allergens.longestAt(tokens, from);
  const unnamed = asking === 'not' ? null : forSomebody(pieces, allergenAt);
  const eaters =
    asking === 'not'
      ? null
      : unnamed && unnamed.filters.length > 0
        ? unnamed
        : ofEverybody(pieces, allergenAt);
  const forAll = eaters !== null && eaters.filters.length > 0;
  if (forAll) takeAll(eaters.used);
  const holding = contained(
    pieces,
    tokens,
    (from) => (pieces.some((piece) => piece.from === from && taken.has(piece)) ? null : allergenAt(from)),
    follows,
  );
  takeAll(holding.used);
  // "And there is one dot, what is it": how many there are is told, not asked.
  const isTold = (piece: Piece, at: number): boolean =>
    is(piece, 'dots') && (pieces[at - 1]?.kind === 'number' || is(pieces[at - 1], 'one'));
  const free = pieces.filter((piece, at) => !taken.has(piece) && !isTold(piece, at));
  const attributes = attributesIn(free, wordings, asking);
  const { by } = attributes;
  // "May Sam finish the pudding": not whether he did.
  const would = verbOf(pieces, 'may') && !pieces.some((piece) => is(piece, 'past-aux'));
  const found = attributes.asks.filter(
    (ask) => !(ask === 'who-used' && would) && !(asking === 'not' && leavesOut && ask === 'what'),
  );
  const people = ofPeople(
    pieces,
    tokens,
    new Set([...taken, ...(found.includes('maker') || found.includes('who-used') ? by : [])]),
    follows,
    asking !== 'not' && found.every((ask) => ofFood.has(ask)),
    holding.filters.some(({ by: kind }) => kind === 'contains'),
  );
  takeAll(by);
  takeAll(people.used);
  const { order, used: ordered } = orderIn(pieces, taken);
  takeAll(ordered);
  const facts = ofThings(pieces, tokens, taken, today, wordings.cautions);
  takeAll(facts.used);
  const things = topicsIn(pieces, tokens, taken, asking === 'whether' && found.length === 0);
  takeAll(things.of);
  // "The first thing I ought to eat" asks what comes first, and points at nothing told.
  const comesFirst = found.includes('use-first');
  const { point, used: pointed } = pointIn(
    pieces.filter(
      (piece) => !(facts.used.has(piece) && is(piece, 'other')) && !(comesFirst && by.has(piece)),
    ),
    people.used,
  );
  takeAll(pointed);
  const [first, ...more] = things.mentions;
  const topic: Filter[] =
    leavesOut && minus
      ? things.mentions.map((mention) => ({ by: 'not', filter: { by: 'named', mention } }))
      : first && more.length > 0
        ? [{ by: 'each', mentions: things.mentions }]
        : first
          ? [{ by: 'named', mention: first }]
          : [];
  let asks = found;
  const suiting = [...facts.filters, ...people.filters, ...(eaters?.filters ?? [])].some(
    ({ by }) => by === 'suits' || by === 'diet',
  );
  const wide = pieces.some((piece) => is(piece, 'what', 'which', 'which-one'));
  // "Which of them could a vegan eat": which they are.
  if (suiting && wide && !first && (asks.join() === 'good' || asks.join() === 'until')) asks = ['what'];
  let where: readonly Filter[] = [
    ...topic,
    ...meaning.filters,
    ...facts.filters,
    ...(forAll ? [...eaters.filters, ...people.filters.filter(({ by }) => by !== 'suits')] : people.filters),
    ...holding.filters,
    ...(holding.filters.length > 0 && pieces.some((piece) => is(piece, 'listed', 'to-buy'))
      ? [{ by: 'listed' } as const]
      : []),
  ];
  // "Have I got anything for tonight", "anything in for supper": what there is to eat.
  const meal = pieces.some((piece) => is(piece, 'meal', 'today') || (is(piece, 'eat') && is(piece, 'used')));
  const stocks = pieces.some((piece) => is(piece, 'what', 'any') && !is(piece, 'whatever'));
  const owns = pieces.some((piece) => is(piece, 'have', 'me-within', 'whether'));
  const onlyPlaced = where.every(({ by: kind }) => kind === 'place');
  const plainly = asks.length === 0 || asks.join() === 'what';
  if (asking !== 'not' && meal && stocks && owns && onlyPlaced && plainly && !first) {
    where = [...where, { by: 'suits', who: { who: 'me' }, is: true }];
    asks = ['what'];
  }
  const sorted = first || suiting || people.filters.length > 0 ? null : soundOf(pieces, asks, by);
  const open = asking === 'whether' ? pieces.some((piece) => is(piece, 'any')) : asking === 'open' && wide;
  if (sorted && open && point !== 'it') {
    asks = ['what'];
    where = [...where, sorted];
  }
  // "How many tubs is that": what they are counted in.
  const counting = asks.some((ask) => ask === 'how-many' || ask === 'sum') && point !== null;
  if (counting)
    where = where.filter(
      (filter) => filter.by !== 'felt' || Object.keys(filter.touch).join() !== 'container',
    );
  const reckoned = asks.every((ask) => ask === 'keeps' || ask === 'good' || ask === 'until');
  const dated = facts.filters.some(({ by }) => by === 'date' || by === 'keeping');
  // "That has been in there for a week": so long ago, and no day to come.
  // "Three days I have had it, should I toss it": nor what is perhaps to be thrown out.
  const gone = pieces.some((piece) => is(piece, 'stay', 'must-go'));
  const reckon = pieces.filter((piece) => !meaning.used.has(piece));
  const until = reckoned && !dated && !gone ? dayMeant(reckon, today) : null;
  // "Will the pie do for Sunday", in whatever words: yes or no of a thing and a day to come.
  const ahead = (until !== null && until >= today) || pieces.some((piece) => is(piece, 'day:today'));
  if (asks.length === 0 && ahead && reckoned && !dated && asking === 'whether' && first) asks = ['keeps'];
  // "Both have string on, which one is the tahini": how to tell it, and no fact it must have.
  const told =
    first !== undefined &&
    (asks.includes('which') || asks.includes('feel')) &&
    facts.filters.some(({ by }) => by === 'felt');
  if (told) {
    asks = ['feel'];
    where = where.filter(({ by }) => by !== 'felt');
  }
  // "Did you take the ham off": where it is now answers that, and no yes or no to it does.
  const whether =
    asking === 'whether' && !(asks.includes('where') && [...by].some((piece) => is(piece, 'take-off')));
  const query: Query = { where, ask: asks, whether, order, by: until };
  const ownSubject = topic.length > 0 && topic[0]!.by !== 'not';
  const hers = pieces.some(
    (piece) =>
      (piece.kind === 'thing' && piece.fit >= surelyHers.thing) ||
      (piece.kind === 'place' && piece.fit >= surelyHers.place),
  );
  const inFull = pieces.some(
    (piece) => piece.kind === 'thing' && piece.fit >= wordForWord && piece.to - piece.from > 1,
  );
  const begins = asideUntil(pieces);
  const before = said.slice(0, from).filter(({ kind }) => kind !== 'words');
  const unknown = pieces
    .slice(begins)
    .filter((piece) => piece.kind === 'unknown' && !meaning.used.has(piece));
  const left = [...before, ...unknown].map((piece) => piece.from);
  const proposal = (slots: Act['slots'], fragmentary: boolean): AskProposal => ({
    acts: [{ intent: 'ask', slots }],
    mood: 'asked',
    used,
    left,
    score: leftCost * left.length - 0.1,
    by: 'questions',
    ownSubject,
    // Words that nothing is known of are a stranger's, unless a name of several words was said in full.
    outright: isOutright(pieces),
    hers: hers && (left.length === 0 || inFull),
    fragment: fragmentary,
  });
  const used = positions(pieces.filter(({ kind }) => kind !== 'unknown'));
  // "Is there a carton that is just Sam's" narrows nothing that was told.
  const opening = pieces.find((piece) => is(piece, 'any', 'only'));
  const only =
    ((leavesOut && !ownSubject) || pieces.some((piece) => is(piece, 'only'))) && !is(opening, 'any');
  // "What about the ham and the pork, are they all right still": all of it is said.
  const goesOn = again && !(ownSubject && asks.length > 0 && isOutright(pieces));
  const fragment = asking === 'not' || goesOn || (only && !ownSubject);
  // With nothing it is about, it is about what was just told: "how many is that in all", "when is it up".
  const bare = where.length === 0 && order === null;
  const wanted = asks.filter((ask) => ask !== 'what' && ask !== 'which' && ask !== 'use-first');
  // "May Sam have some", of no food: of what was just told, as "is it all right for Sam" is.
  const ofWhom =
    asking === 'whether' &&
    where.length > 0 &&
    where.every((filter) => filter.by === 'suits' && filter.who.who !== 'unnamed') &&
    !wide &&
    !pieces.some((piece) => is(piece, 'any', 'all', 'everything'));
  const meant = point === null && ((bare && wanted.length > 0) || ofWhom) ? 'it' : point;
  if (bare && meant === null && !asks.includes('use-first')) return null;
  // "When", alone: of what was just told. With words of its own it is about something else.
  if (asks.join() === 'since' && (left.length > 0 || pieces.length > shortest)) return null;
  // "What on the bottom shelf has milk in it, let me not give it to Sam": of a place, and nothing told before.
  const placedWhole =
    (asks.includes('what') || asks.includes('which')) &&
    where.length > 1 &&
    where.some(({ by }) => by === 'place');
  const edits = fragment || (meant !== null && !ownSubject && !(placedWhole && meant === 'it'));
  // Told, not asked: only what could follow a question, and nothing that states a fact.
  const bits = only || again || order !== null || holding.filters.length > 0 || people.filters.length > 0;
  const points = point === 'other' || point === 'rest' || typeof point === 'object';
  const placed =
    facts.filters.length > 0 &&
    facts.filters.every(({ by }) => by === 'place' || by === 'state' || by === 'not');
  // "Bag with a safety pin, what is that": in the hand, and nothing told before.
  const described = facts.filters.some(
    (filter) =>
      filter.by === 'felt' &&
      (filter.touch.fastening ?? filter.touch.shape ?? filter.touch.dots) !== undefined,
  );
  const thisOne = described && point === 'it' && asks.every((ask) => ask === 'what' || ask === 'which');
  const held = thisOne || pieces.some((piece) => is(piece, 'in-hand'));
  const hand = held && facts.filters.some(({ by }) => by === 'felt');
  if (asking === 'not' && !hand) {
    const states = pieces.some((piece) => is(piece, 'subject'));
    if (states || left.length > 0 || asks.length > 0 || until !== null) return null;
    if (!(bits || (points && point !== null) || placed || (ownSubject && pieces.length <= 3))) return null;
    if (facts.filters.some(({ by }) => by === 'felt' || by === 'date') && !only && !again) return null;
  }
  if (hand && !ownSubject)
    return proposal(
      { query: { ...query, ask: ['what'], where: facts.filters.filter(({ by }) => by === 'felt') } },
      false,
    );
  // "The same for them beans": the beans, and nothing that was told.
  const ofItself = ownSubject && (meant === 'it' || (again && meant === 'told'));
  const edit: Edit = { query, point: ofItself ? null : meant, only, again: goesOn };
  return proposal(edits ? { edit } : { query }, fragment);
};
