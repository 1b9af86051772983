/** The facts that narrow what a question is about, each from its pieces, wherever they stand. */
import type { DateOf, Filter, Order, Who } from '../../../protocol/query.js';
import type { PlaceMention } from '../../../protocol/mentions.js';
import type { PlainDate } from '../../../terms/dates.js';
import { plusDays } from '../../../terms/dates.js';
import { is } from './asked.js';
import type { Piece, PieceOf } from './pieces.js';

export interface Narrowed {
  readonly filters: readonly Filter[];
  readonly used: ReadonlySet<Piece>;
}

const nothing: Narrowed = { filters: [], used: new Set() };
const narrowed = (filters: readonly Filter[], ...used: readonly Piece[]): Narrowed => ({
  filters,
  used: new Set(used),
});

const before = (pieces: readonly Piece[], piece: Piece, within: number): readonly Piece[] => {
  const at = pieces.indexOf(piece);
  return pieces.slice(Math.max(0, at - within), at);
};
const after = (pieces: readonly Piece[], piece: Piece, within: number): readonly Piece[] => {
  const at = pieces.indexOf(piece);
  return pieces.slice(at + 1, at + 1 + within);
};
const near = (pieces: readonly Piece[], piece: Piece, within: number): readonly Piece[] => [
  ...before(pieces, piece, within),
  ...after(pieces, piece, within),
];

/** "Has dairy in it", "milk in the pie", "without nuts": what food holds, rather than food that is asked for. */
export const contained = (
  pieces: readonly Piece[],
  tokens: readonly string[],
  allergenAt: (from: number) => { readonly length: number; readonly value: string } | null,
  /** Said after another question: an allergen alone is what it is asked of. */
  follows: boolean,
): Narrowed => {
  const found: string[] = [];
  const used: Piece[] = [];
  let free = false;
  pieces.forEach((piece, at) => {
    if (piece.kind !== 'allergen' && piece.kind !== 'thing') return;
    const hit = allergenAt(piece.from);
    if (!hit || hit.length !== piece.to - piece.from) return;
    const led = pieces.slice(Math.max(0, at - 3), at);
    const gap = led.findLastIndex((one) => !is(one, 'small', 'whether', 'filler', 'without'));
    const close = led.slice(gap + 1);
    const having = [...close, ...led.slice(gap, gap + 1)].filter((one) => is(one, 'have', 'without'));
    const owner = pieces.slice(0, at).findLast((one) => is(one, 'me', 'same') || one.kind === 'person');
    const ours = owner !== undefined && tokens.slice(owner.to, piece.from).length <= 2;
    const into = is(pieces[at + 1], 'in-it') || tokens[piece.to] === 'in';
    const followed = pieces
      .slice(at + 1, at + 4)
      .some((one) => one.kind === 'thing' || is(one, 'in-it', 'it', 'those'));
    const linked = (having.length > 0 && !ours) || (into && followed) || is(pieces[at + 1], 'without');
    const led_ = pieces[at - 1];
    const lists = is(led_, 'and') || (piece.parted === true && led_ !== undefined && used.includes(led_));
    const joined = found.length > 0 && lists;
    // "Is there any shellfish in the freezer": what is no name of a thing here is what things hold.
    const any = led.some((one) => is(one, 'any'));
    const alone = piece.kind === 'allergen' && (follows || any);
    if (!linked && !joined && !alone) return;
    found.push(hit.value);
    used.push(piece, ...having);
    const freed = is(pieces[at + 1], 'without') ? [pieces[at + 1]!] : [];
    used.push(...freed);
    if (is(pieces[at + 1], 'in-it')) used.push(pieces[at + 1]!);
    if (freed.length > 0 || close.some((one) => is(one, 'without'))) free = true;
  });
  return found.length === 0
    ? nothing
    : narrowed([{ by: free ? 'free' : 'contains', allergens: found }], ...used);
};

/** How a word is said to own. */
const possessive = /'s?$/;

const personSaid = ({ words, candidates }: PieceOf<'person'>): Who => ({
  who: 'named',
  person: { words: words.replace(/'s$/, ''), candidates },
});

/** A name that is hers word for word is the thing, and no part of what a mark means. */
const wholeName = 0.9;

/** "Marked no added sugar": what follows is what the mark means. */
const says = (next: Piece | undefined): boolean =>
  next?.kind === 'unknown' || next?.kind === 'thing' || next?.kind === 'allergen' || is(next, 'without');

/** The longest of the household's meanings that is said, word for word. */
const meaningSaid = (
  tokens: readonly string[],
  meanings: readonly string[],
): { readonly words: string; readonly from: number; readonly to: number } | null =>
  meanings
    .flatMap((meaning) => {
      const words = meaning.toLowerCase().split(' ');
      const from = tokens.findIndex((_, at) => words.every((word, next) => tokens[at + next] === word));
      return from < 0 ? [] : [{ words: words.join(' '), from, to: from + words.length }];
    })
    .sort((a, b) => b.to - b.from - (a.to - a.from))[0] ?? null;

/** "The no added sugar dot", "marked for Theo": the meaning stands in any words, which only the household knows. */
export const ofMeaning = (
  pieces: readonly Piece[],
  tokens: readonly string[],
  meanings: readonly string[] = [],
): Narrowed => {
  const touches = pieces.some(
    (piece) =>
      is(piece, 'dots', 'marked-so', 'marked', 'mark', 'feel', 'by-touch') ||
      (piece.kind === 'felt' && piece.touch.dots !== undefined),
  );
  const known = touches ? meaningSaid(tokens, meanings) : null;
  const marks = (piece: Piece): boolean =>
    is(piece, 'dots', 'marked-so', 'marked', 'mark') ||
    (piece.kind === 'felt' && Object.keys(piece.touch).every((key) => key === 'dots' || key === 'counted'));
  // One of hers that is called so is that: "which dot is on the no added sugar jam".
  const hers = pieces.some((piece) => piece.kind === 'thing' && piece.fit > wholeName);
  if (known && !hers)
    return narrowed(
      [{ by: 'means', words: known.words }],
      ...pieces.filter((piece) => marks(piece) || (piece.from < known.to && known.from < piece.to)),
    );
  // "The things meant for me, by feel".
  const forMe = pieces.find((piece, at) => is(piece, 'for') && is(pieces[at + 1], 'me'));
  if (
    forMe &&
    touches &&
    !hers &&
    pieces.some((piece) => is(piece, 'by-touch', 'dots', 'marked-so', 'marked'))
  )
    return narrowed(
      [{ by: 'means', words: tokens[forMe.from] ?? '', who: { who: 'me' } }],
      ...pieces.filter(marks),
      forMe,
      pieces[pieces.indexOf(forMe) + 1]!,
    );
  const mark = pieces.filter(
    (piece, at) => is(piece, 'dots', 'marked-so') || (is(piece, 'marked') && says(pieces[at + 1])),
  );
  const whole = pieces.some((piece) => piece.kind === 'thing' && piece.fit > wholeName);
  const counted = pieces.some(
    (piece) =>
      piece.kind === 'felt' &&
      (piece.touch.dots !== undefined ||
        (piece.touch.fastening !== undefined && !pieces.some((one) => is(one, 'marked-so')))),
  );
  if (mark.length === 0 || whole || counted) return nothing;
  const said = pieces.filter(
    ({ kind }) =>
      kind === 'unknown' || kind === 'thing' || kind === 'person' || kind === 'allergen' || kind === 'felt',
  );
  // "Marked as keep for Sunday": what follows asks nothing.
  const so = pieces.findIndex((piece) => is(piece, 'marked-so'));
  const rest = so < 0 ? [] : pieces.slice(so + 1);
  const end = rest.findIndex(({ kind }) => kind === 'place');
  const meaning = end < 0 ? rest : rest.slice(0, end);
  return narrowed([{ by: 'means', words: tokens.join(' ') }], ...mark, ...said, ...meaning);
};

/**
 * "Would the pie be grand for Sam", "is it okay if Theo takes a few", "does the feta suit Sam": a food and somebody
 * else, and no word of who made, owns or used it. Whoever must not have it is never told that it keeps.
 */
const wouldHave = (pieces: readonly Piece[], at: number, eating: boolean): boolean => {
  const lead = pieces[at - 1];
  const before = pieces.slice(0, at);
  const led = before.find((one) => one.kind !== 'words' || !is(one, 'filler'));
  if (is(led, 'where', 'when', 'how-many', 'how-old', 'who', 'whose', 'used')) return false;
  // "Will the milk do, Sam": only addressed.
  const after = pieces[at + 1];
  const last = after === undefined || (pieces.length - at <= 2 && is(after, 'filler'));
  const closes = is(lead, 'it', 'last', 'good', 'filler') && !is(lead, 'can', 'cannot', 'suit');
  if (last && (lead?.kind === 'thing' || lead?.kind === 'day' || closes)) return false;
  const may = before.some((one) => is(one, 'may', 'can', 'good', 'cannot', 'suit'));
  const did = before.some((one) => is(one, 'past-aux'));
  const suits =
    near(pieces, pieces[at]!, 4).some((one) => is(one, 'suit', 'cannot')) ||
    // "What goes with the pie for Sam": he is to have it.
    pieces.some((one) => is(one, 'goes-with'));
  // "Junie fancies the almond butter, is she grand to": asked of whoever was named.
  const then = pieces.some((one, then) => then > at && is(one, 'same') && is(pieces[then - 1], 'aux'));
  return suits || then || (may && !did) || (eating && !did);
};

/** "Would he be all right with the stew", "is she grand with that": the food agrees with whoever stands after the verb. */
const agrees = (pieces: readonly Piece[], at: number): boolean => {
  const rest = pieces.slice(at + 1);
  const food = rest.findIndex((one) => one.kind === 'thing' || is(one, 'it', 'those'));
  const said = rest.slice(0, Math.max(0, food));
  const verb = pieces[at - 1];
  return (
    is(verb, 'may', 'whether', 'aux') &&
    !is(verb, 'past-aux') &&
    said.some((one) => is(one, 'can', 'good', 'suit')) &&
    !said.some((one) => is(one, 'made', 'used', 'made-by'))
  );
};

interface Somebody {
  readonly piece: Piece;
  readonly who: Who;
}
/** People who are said in one breath, with nothing but "and" and "for" between them. */
const eatersIn = (pieces: readonly Piece[], people: readonly Somebody[]): readonly Somebody[] => {
  const inOrder = [...people].sort((a, b) => a.piece.from - b.piece.from);
  const isJoined = (one: Somebody, next: Somebody): boolean => {
    const [at, then] = [pieces.indexOf(one.piece), pieces.indexOf(next.piece)];
    const between = pieces.slice(at + 1, then);
    return (
      between.some((piece) => is(piece, 'and')) &&
      between.every((piece) => is(piece, 'and', 'for', 'small', 'filler', 'both'))
    );
  };
  const runs = inOrder.reduce<Somebody[][]>((all, one) => {
    const run = all.at(-1);
    const last = run?.at(-1);
    if (run && last && isJoined(last, one)) run.push(one);
    else all.push([one]);
    return all;
  }, []);
  const named = people.filter(({ who }) => who.who === 'named');
  const joined = runs.find(({ length }) => length > 1) ?? [];
  return joined.length >= named.length ? joined : named;
};

/** Who made it, whose it is, who may eat it. Somebody only addressed has no part. */
export const ofPeople = (
  pieces: readonly Piece[],
  tokens: readonly string[],
  taken: ReadonlySet<Piece>,
  /** Said after another question: a name alone is somebody it is asked of. */
  follows: boolean,
  /** Asked of food as such: nothing of its place, its dates, who used it. */
  plain: boolean,
  /** What it holds is asked. */
  holds: boolean,
): Narrowed => {
  const free = pieces.filter((piece) => !taken.has(piece));
  const things = pieces.filter((piece) => piece.kind === 'thing' && piece.fit > 0).length;
  const named = things > 0;
  // "What can they both eat": of the people, and no things that were told.
  const both = free.find((piece) => is(piece, 'both'));
  // "All right for the two of them".
  const forBoth = both
    ? pieces.slice(0, pieces.indexOf(both)).findLast((piece) => !is(piece, 'small') || is(piece, 'for'))
    : undefined;
  const ofBoth = is(forBoth, 'can', 'suit', 'for') && !is(forBoth, 'aux');
  // Whoever is named comes before who asks: "can I give Junie the butter".
  const people: { readonly piece: Piece; readonly who: Who }[] = [
    ...free.flatMap((piece) => (piece.kind === 'person' ? [{ piece, who: personSaid(piece) }] : [])),
    ...(both && ofBoth ? [{ piece: both, who: { who: 'several', each: [] } as const }] : []),
    ...free.flatMap((piece): { piece: Piece; who: Who }[] =>
      is(piece, 'same') && !is(piece, 'me')
        ? [{ piece, who: both ? { who: 'several', each: [] } : { who: 'same' } }]
        : [],
    ),
    ...free.flatMap((piece): { piece: Piece; who: Who }[] =>
      is(piece, 'me') ? [{ piece, who: { who: 'me' } }] : [],
    ),
  ];
  // "What can my granddaughter not have", of whom nobody told: hers it is all the same, and nobody else's.
  const judged = free.some((piece) => is(piece, 'can', 'cannot'));
  if (judged && !people.some(({ who }) => who.who === 'named'))
    people.unshift(
      ...free.flatMap((piece): { piece: Piece; who: Who }[] =>
        is(piece, 'kin')
          ? [
              {
                piece,
                who: {
                  who: 'named',
                  person: { words: tokens.slice(piece.from, piece.to).join(' '), candidates: [] },
                },
              },
            ]
          : [],
      ),
    );
  // "What in the fridge have I got to stay away from": who asks is within the words that ask.
  const within = free.find((piece) => is(piece, 'me-within'));
  if (within && people.length === 0 && free.some((piece) => is(piece, 'cannot')))
    people.push({ piece: within, who: { who: 'me' } });
  const filters: Filter[] = [];
  const used: Piece[] = [];
  const made = free.filter((piece) => is(piece, 'made'));
  const eats = free.filter((piece) => is(piece, 'eat'));
  const can = free.filter((piece) => is(piece, 'can', 'cannot'));
  const did = pieces.some((piece) => is(piece, 'past-aux'));
  const of = (among: readonly Piece[], piece: Piece, within: number): Piece | undefined =>
    among.find((one) => near(pieces, piece, within).includes(one));
  for (const { piece, who } of people) {
    const self = who.who !== 'named';
    const word = tokens[piece.from]!;
    const next = pieces[pieces.indexOf(piece) + 1];
    // "A carton that is just Sam's", "Sam's milk".
    const owned =
      next?.kind === 'thing' || next?.kind === 'felt' || (next === undefined && pieces.length > 2);
    const owns = possessive.test(tokens[piece.to - 1]!) && owned;
    const may = of(can, piece, 4);
    const eating = of(eats, piece, 5);
    const at = pieces.indexOf(piece);
    const agreed = who.who === 'same' && agrees(pieces, at);
    // "What can Sam eat that Bea made", "which of Bea's things can he have": one eats, another made it.
    const besides = people.length > 1 && can.length > 0;
    const led = pieces[at - 1];
    const madeBy = is(led, 'made-by') && (led.to - led.from > 1 || is(pieces[at - 2], 'made'));
    const cook = is(pieces[at + 1], 'made') || madeBy;
    const theirs = possessive.test(tokens[piece.to - 1]!) && is(pieces[at + 1], 'filler');
    if (besides && who.who === 'named' && (cook || theirs)) {
      filters.push({ by: 'maker', who });
      const by = [pieces[at - 1], pieces[at - 2], pieces[at + 1]].filter((one) => is(one, 'made', 'made-by'));
      used.push(piece, ...by.flatMap((one) => (one ? [one] : [])));
      continue;
    }
    const other =
      who.who === 'named' || (ofBoth && piece === both) || ['him', 'her', 'them'].includes(word) || agreed;
    // "What could I cook for Sam", "what is safe to feed Theo": cooked for, and not by.
    const fed = is(pieces[at - 1], 'for') || eating !== undefined;
    // "What have I got for her": of what is here.
    const wide = is(pieces[at - 1], 'for') && pieces.some((one) => is(one, 'what', 'any')) && !did;
    const cooks = fed && (wide || pieces.slice(0, at).some((one) => is(one, 'may', 'can', 'good')));
    if (
      other &&
      plain &&
      !owns &&
      (agreed || (named ? wouldHave(pieces, at, eating !== undefined) : cooks))
    ) {
      // "Is there anything in it that would bother Sam": a no must never answer that.
      const isNot = pieces.some((one) => is(one, 'cannot'));
      filters.push({ by: 'suits', who, is: !isNot });
      // "Grand for Sam", "sit well with Sam": in whatever words it is good for somebody.
      const led = pieces[at - 1];
      const how = is(led, 'for', 'have') ? pieces.slice(Math.max(0, at - 3), at) : [];
      const words = how.filter(({ kind }) => kind === 'unknown');
      const cooked = cooks ? of(made, piece, 3) : undefined;
      used.push(piece, ...words, ...[may, eating, cooked].flatMap((one) => (one ? [one] : [])));
      continue;
    }
    // "Can I stick it in my lunch box": whoever asks would eat it.
    const deed = of(
      made.filter((one) => !used.includes(one)),
      piece,
      3,
    );
    if (deed && !owns && word !== 'we' && word !== 'my') {
      filters.push({ by: 'maker', who });
      used.push(piece, deed);
      continue;
    }
    // "Could I get away with using it", "how can I find it": of the food, whoever asks.
    const ofFood = pieces.some((one) => is(one, 'good', 'how'));
    const asked = named && (!self || (word === 'i' && is(may, 'can') && !ofFood));
    const whose = ['my', 'our', 'ours', 'mine'].includes(word);
    // "What should she leave alone": what forbids counts, whatever stands beside it.
    const forbids = can.find((one) => is(one, 'cannot') && near(pieces, piece, 4).includes(one));
    // "Would I be allowed some", with no verb of eating: what one is allowed is to have it.
    const asksHow = pieces.some((one) => is(one, 'how', 'where'));
    const allowed = is(may, 'allowed') && !is(may, 'cannot') && !whose && !asksHow;
    const suited = may !== undefined && (eating !== undefined || asked || allowed || forbids !== undefined);
    if (suited && may && !owns && !(self && whose)) {
      filters.push({ by: 'suits', who, is: forbids === undefined });
      used.push(piece, may, ...[eating, forbids].flatMap((one) => (one ? [one] : [])));
      continue;
    }
    const lead = pieces[pieces.indexOf(piece) - 1];
    if (!self && is(lead, 'made-by') && tokens[lead!.from] !== 'of') {
      filters.push({ by: 'maker', who });
      used.push(piece, lead!);
      continue;
    }
    const mine = ['mine', 'ours', 'hers'].includes(word);
    // One of several things named: it is said of that one, see `topicsIn`.
    if (owns && things > 1) continue;
    // "Does it have celery in it, for Odile": whom it is asked for, and nothing that is hers.
    if (holds && !owns && is(lead, 'for')) {
      used.push(piece);
      continue;
    }
    if (owns || mine || (!self && (follows || is(lead, 'for')))) {
      filters.push({ by: 'owner', who });
      used.push(piece);
    }
  }
  const seen = new Set<string>();
  const suits = filters.flatMap((filter) => (filter.by === 'suits' ? [filter] : []));
  // "What can Zoe and Amara have", "is it safe for her and for Sam": each of them.
  const each = eatersIn(
    pieces,
    people.filter(({ who }) => suits.some((suit) => suit.who === who) || who.who !== 'me'),
  );
  if (suits[0] && each.length > 1) {
    filters.unshift({ ...suits[0], who: { who: 'several', each: each.map(({ who }) => who) } });
    used.push(...each.map(({ piece }) => piece), ...(both ? [both] : []));
  }
  if (both && suits.some(({ who }) => who.who === 'several')) used.push(both);
  return narrowed(
    filters.filter(({ by }) => !seen.has(by) && seen.add(by)),
    ...used,
  );
};

const dietClass = 'diet:';
const dietOf = (piece: Piece): string | null => {
  const named = piece.kind === 'words' && [...piece.classes].find((name) => name.startsWith(dietClass));
  return named ? named.slice(dietClass.length) : null;
};

const samePlace: PlaceMention = { words: null, candidates: [], pointer: 'same', spot: null };

const dateWords: Readonly<Record<string, DateOf>> = {
  made: 'made',
  bought: 'bought',
  opened: 'opened',
  frozen: 'frozen',
  thawed: 'thawed',
};

type State = Extract<Filter, { by: 'state' }>['state'];
const states = ['frozen', 'chilled', 'opened', 'cooked', 'raw', 'fresh'] as const satisfies readonly State[];
const statesOf = (piece: Piece): readonly State[] => states.filter((state) => is(piece, `state:${state}`));

const spotClass = 'spot:';
const spanClass = 'span:';
const daysOf = (piece: Piece): readonly number[] => {
  if (piece.kind === 'span') return [piece.days];
  if (piece.kind !== 'words') return [];
  const named = [...piece.classes].find((name) => name.startsWith(spanClass));
  return named ? [Number(named.slice(spanClass.length))] : [];
};

/** The day a question reckons to, when days are told: the last "till …", and as long again as was said. */
export const dayMeant = (pieces: readonly Piece[], today: PlainDate): PlainDate | null => {
  const told = pieces.filter((piece): piece is PieceOf<'day'> => piece.kind === 'day');
  const span = pieces.flatMap(daysOf)[0];
  const until = told.findLast(({ window }) => window.day === '1970-01-01');
  const last = until ?? told.at(-1);
  const day = last ? (until ? until.window.until : last.future.day) : null;
  if (span) return plusDays(day ?? today, span);
  return day ?? null;
};

interface Counted {
  readonly touch: Partial<PieceOf<'felt'>['touch']>;
  readonly of: readonly Piece[];
}

/** "Two ribbed bands", "and there is one dot": figures that the feel was parted from. */
const countedIn = (pieces: readonly Piece[], tokens: readonly string[]): readonly Counted[] =>
  pieces.flatMap((piece, at): Counted[] => {
    const led = pieces[at - 1];
    const value =
      led?.kind === 'number' ? led.value : is(led, 'one') && tokens[led.from] === 'one' ? 1 : null;
    if (value === null || !led) return [];
    if (is(piece, 'dots')) return [{ touch: { dots: value }, of: [led, piece] }];
    const bound = piece.kind === 'felt' && piece.touch.fastening !== undefined;
    if (!bound || piece.touch.container !== undefined || value < 2) return [];
    return [{ touch: { fastenings: value }, of: [led] }];
  });

interface Aged {
  readonly days: Extract<Filter, { by: 'date' }>['days'];
  readonly of: readonly Piece[];
}

/** "More than three days old", "frozen for longer than six months", "made in the last week". */
const agedIn = (pieces: readonly Piece[], taken: ReadonlySet<Piece>, today: PlainDate): Aged | null => {
  for (const [at, piece] of pieces.entries()) {
    const span = daysOf(piece)[0];
    const led = pieces[at - 1];
    if (span === undefined || !led || taken.has(led) || !is(led, 'longer', 'shorter')) continue;
    const next = pieces[at + 1];
    const of = is(next, 'aged') ? [led, piece, next] : [led, piece];
    return is(led, 'longer')
      ? { days: { from: null, until: plusDays(today, is(led, 'at-least') ? -span : -span - 1) }, of }
      : { days: { from: plusDays(today, -span), until: today }, of };
  }
  return null;
};

/** "Any other soup", "is there another one": besides what was just told of. "The other soup" is one of two. */
const furtherIn = (
  pieces: readonly Piece[],
  tokens: readonly string[],
  taken: ReadonlySet<Piece>,
): Piece | undefined =>
  pieces.find((piece, at) => {
    const next = pieces[at + 1];
    const named = next !== undefined && (next.kind === 'thing' || next.kind === 'felt' || is(next, 'one'));
    const asked = pieces
      .slice(0, at + 1)
      .some((one) => is(one, 'any', 'whether', 'what', 'which', 'how-many'));
    return !taken.has(piece) && is(piece, 'further') && asked && named && tokens[piece.from] !== 'the';
  });

/** State, dates, keeping, diet, amount, caution, marker, place and feel. */
export const ofThings = (
  pieces: readonly Piece[],
  tokens: readonly string[],
  taken: ReadonlySet<Piece>,
  today: PlainDate,
  cautions: readonly string[],
): Narrowed => {
  const filters: Filter[] = [];
  const used: Piece[] = [];
  const free = pieces.filter((piece) => !taken.has(piece));
  const take = (filter: Filter, ...of: readonly Piece[]): void => {
    filters.push(filter);
    used.push(...of);
  };
  const words = (name: string): Piece | undefined => free.find((piece) => is(piece, name));
  const denied = (piece: Piece): Piece | undefined =>
    before(pieces, piece, 4).find((one) => is(one, 'not', 'without') && !used.includes(one));
  const day = free.find((piece): piece is PieceOf<'day'> => piece.kind === 'day');
  const aged = agedIn(pieces, taken, today);
  for (const [name, of] of Object.entries(dateWords)) {
    const piece = words(name);
    if (!piece || used.includes(piece)) continue;
    // "Must it be cooked tonight": what is to be done is no day on which it was.
    const todo = tokens[piece.from - 1] === 'be';
    if (day && !todo) {
      const { day: from, until } = day.window;
      take(
        { by: 'date', of, days: { from: from === '1970-01-01' ? null : from, until: until ?? from } },
        piece,
        day,
      );
    } else if (aged && !todo && !used.includes(aged.of[0]!))
      take({ by: 'date', of, days: aged.days }, piece, ...aged.of);
  }
  if (aged && !used.includes(aged.of[0]!)) take({ by: 'date', of: null, days: aged.days }, ...aged.of);
  // "What I put in today", "everything that went in this week": by when it came there.
  const put = free.find((piece) => is(piece, 'put-in'));
  const since = day && !used.includes(day) ? day : free.find((piece) => is(piece, 'day:today'));
  const doer =
    put &&
    before(pieces, put, 3).some((one) => one.kind === 'person' || is(one, 'subject', 'relative', 'what'));
  const whens = pieces.some((piece) => is(piece, 'when', 'how-old', 'how-long'));
  if (put && since && doer && !whens) {
    const window = since.kind === 'day' ? since.window : { day: today, until: today };
    const from = window.day === '1970-01-01' ? null : window.day;
    take({ by: 'put', days: { from, until: window.until ?? window.day } }, put, since);
  }
  const state = free.find(
    (piece) => !used.includes(piece) && (is(piece, 'opened', 'unopened') || statesOf(piece).length > 0),
  );
  if (state) {
    const which = is(state, 'unopened') ? 'unopened' : (statesOf(state)[0] ?? 'opened');
    const not = denied(state);
    const filter: Filter = { by: 'state', state: which };
    if (not) take({ by: 'not', filter }, state, not);
    else take(filter, state);
  }
  const past = words('past');
  const going = words('not-last');
  const expired = words('expired');
  if (past) take({ by: 'keeping', is: 'past' }, past);
  else if (expired) take({ by: 'keeping', is: 'expired' }, expired);
  else if (going) {
    const until = dayMeant(pieces, today);
    take(
      { by: 'keeping', is: 'due', ...(until ? { day: until } : {}) },
      going,
      ...pieces.filter(({ kind }) => kind === 'day' || kind === 'span'),
    );
  }
  const fits = free.find((piece) => dietOf(piece) !== null);
  if (fits) take({ by: 'diet', diet: dietOf(fits)! }, fits);
  const low = words('low');
  if (low) take({ by: 'low' }, low);
  const hot = words('hot');
  if (hot) take({ by: 'caution', words: cautions }, hot);
  // "Which foods carry a warning": whatever it says.
  const warned = words('warned');
  if (warned && !hot) take({ by: 'caution', words: [] }, warned);
  const [marked, unmarked] = [words('marked'), words('unmarked')];
  const notMarked = marked && denied(marked);
  if (unmarked) take({ by: 'marked', is: false }, unmarked);
  // "That have not got a marker".
  else if (marked && notMarked) take({ by: 'marked', is: false }, marked, notMarked);
  else if (marked) take({ by: 'marked', is: true }, marked);
  const undated = words('undated');
  if (undated) take({ by: 'dated', is: false }, undated);
  const further = furtherIn(pieces, tokens, taken);
  if (further) take({ by: 'not', filter: { by: 'told' } }, further);
  const places = free.filter((piece): piece is PieceOf<'place'> => piece.kind === 'place');
  const notThere = places.filter((piece) => denied(piece));
  const there = places.filter((piece) => !notThere.includes(piece));
  for (const piece of notThere)
    take({ by: 'not', filter: { by: 'place', places: [piece.place] } }, piece, denied(piece)!);
  if (there.length > 0) take({ by: 'place', places: there.map(({ place }) => place) }, ...there);
  const inThere = words('in-there');
  const named = pieces.some((piece) => piece.kind === 'thing' && piece.fit > 0);
  if (inThere && there.length === 0 && !named) take({ by: 'place', places: [samePlace] }, inThere);
  for (const piece of free) {
    const side = piece.kind === 'words' && [...piece.classes].find((name) => name.startsWith(spotClass));
    // "In the middle of the lid" is no part of a shelf.
    if (!side || tokens[piece.to] === 'of') continue;
    const filter: Filter = { by: 'spot', spot: side.slice(spotClass.length) };
    const not = denied(piece);
    if (not) take({ by: 'not', filter }, piece, not);
    else take(filter, piece);
  }
  const felt = free.filter((piece): piece is PieceOf<'felt'> => piece.kind === 'felt');
  const counted = countedIn(pieces, tokens);
  if (felt.length > 0) {
    const touch = Object.assign(
      {},
      ...felt.map((piece) => piece.touch),
      ...counted.map(({ touch: more }) => more),
    ) as PieceOf<'felt'>['touch'];
    used.push(...counted.flatMap(({ of }) => of));
    take({ by: 'felt', touch, candidates: felt.length === 1 ? felt[0]!.candidates : [] }, ...felt);
  }
  return narrowed(filters, ...used);
};

const orders = ['oldest', 'newest', 'use-first', 'most', 'least'] as const;
export const orderIn = (
  pieces: readonly Piece[],
  taken: ReadonlySet<Piece>,
): { readonly order: Order | null; readonly used: readonly Piece[] } => {
  for (const name of orders) {
    const piece = pieces.find(
      (one, at) =>
        !taken.has(one) &&
        is(one, name) &&
        // "Three days old", "more than a week": how long, and no order.
        !(is(one, 'aged') && at > 0 && daysOf(pieces[at - 1]!)[0] !== undefined),
    );
    if (piece) return { order: name === 'use-first' ? 'first-to-use' : name, used: [piece] };
  }
  return { order: null, used: [] };
};
