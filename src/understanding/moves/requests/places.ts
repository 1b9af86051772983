/**
 * Places asked for and asked about, in any wording: which there are and how they are divided, a new one, one called
 * otherwise, one done away with, how full one is, what stands between two things, and all of one moved.
 */
import type { Intent, Mention, PlaceMention, Slots } from '../../intents.js';
import { emptyMention } from '../../intents.js';
import type { Bit, BitOf, Frame, Made, Request } from './bits.js';
import { classed, is, ofKind, some } from './bits.js';

const made = ({ tokens }: Request, intent: Intent, slots: Slots, follows = false): Made => ({
  acts: [{ intent, slots }],
  used: new Set(tokens.keys()),
  follows,
});

const surely = 0.85;
const thingsIn = (bits: readonly Bit[]): readonly BitOf<'thing'>[] =>
  ofKind(bits, 'thing').filter(({ fit, source }) => fit >= surely || source === 'food');

/** Words that say nothing beside what a frame takes. */
const isSmall = (bit: Bit): boolean => is(bit, 'fill', 'aside', 'opener', 'one', 'what-to', 'did');

/** "Shelves", "bins", with no word of which: a kind of place, and none. "The counter" is one that is called so. */
const isKind = ({ tokens, beside }: Request, bit: Bit): boolean =>
  !(bit.kind === 'place' && bit.fit >= wholeName) &&
  tokens.slice(bit.from, bit.to).every((word) => beside(word, 'parts-word') || beside(word, 'articles'));
const wholeName = 0.9;

/** A kind named outside of the places that were: not the freezer of "the garage freezer". */
const kindIn = (
  { tokens, beside }: Request,
  named: readonly Bit[],
  from = 0,
  to = tokens.length,
): string | undefined =>
  tokens.find(
    (word, at) =>
      at >= from &&
      at < to &&
      beside(word, 'parts-word') &&
      !named.some((bit) => bit.from <= at && at < bit.to),
  );

/** Every word but those is one of the lists. */
const onlySays = (request: Request, taken: readonly Bit[], ...lists: readonly string[]): boolean =>
  request.bits.every(
    (bit) => taken.includes(bit) || isSmall(bit) || is(bit, ...lists) || isKind(request, bit),
  );

/** "What bins are there", "how is the freezer divided", "take me round the kitchen". */
const partsFrame: Frame = (request) => {
  const { bits, tokens, beside } = request;
  // "Set up the shelves" bids; "how is the fridge set up" asks.
  const tour = [...classed(bits, 'tour'), ...(some(bits, 'wh') ? classed(bits, 'laid-out') : [])];
  const named = ofKind(bits, 'place').filter((bit) => !isKind(request, bit));
  const kind = kindIn(request, named);
  const asks = some(bits, 'wh', 'parts-list');
  if (tour.length === 0 && (!kind || !asks)) return null;
  // "Take me through it" is of the dish, or of whatever was spoken of.
  const ofFood = thingsIn(bits).length > 0 || tokens.some((word) => beside(word, 'points'));
  if (ofFood || some(bits, 'not', 'if', 'remind', 'timer')) return null;
  const [place, ...more] = named;
  const lists = [
    'wh',
    'parts-list',
    'tour',
    'laid-out',
    'parts-word',
    'parts-has',
    'whatever',
    'all',
    'topic-places',
    'kitchen-word',
  ];
  if (more.length > 0 || !onlySays(request, named, ...lists)) return null;
  // "Which shelf", "what drawer": of one that something is on.
  if (tour.length === 0 && !some(bits, 'parts-has') && !tokens.some((word) => beside(word, 'parts-many')))
    return null;
  const whole = place && !isKitchen(request, place) ? { place: place.place } : {};
  const generic = kind === undefined || beside(kind, 'parts-any');
  return made(request, 'places', {
    ...whole,
    ...(generic ? {} : { placeKind: kind }),
    ...(tour.length > 0 && !('place' in whole) ? { asked: 'tour' } : {}),
  });
};
const isKitchen = ({ tokens, beside }: Request, bit: Bit): boolean =>
  tokens.slice(bit.from, bit.to).some((word) => beside(word, 'kitchen-word'));

/** The words of a name, without what leads to it and what trails after it. */
const nameFrom = ({ tokens, bits, says, beside }: Request, from: number): string | null => {
  let start = from;
  while (start < tokens.length && (beside(tokens[start]!, 'name-leads') || says(tokens[start]!, 'the-one')))
    start += 1;
  const lasting = classed(bits, 'lasting').find((bit) => bit.from >= start);
  const more = classed(bits, 'but-so').find((bit) => bit.from > start);
  let end = Math.min(lasting?.from ?? tokens.length, more?.from ?? tokens.length);
  while (end > start && beside(tokens[end - 1]!, 'name-trails')) end -= 1;
  return end > start ? tokens.slice(start, end).join(' ') : null;
};

/** "Call the floor crate the veg box from now on", "the counter is called the bench". */
const renameFrame: Frame = (request) => {
  const { bits, talkedOf } = request;
  if (some(bits, 'wh', 'if', 'not', 'remind', 'timer')) return null;
  const opens = bits.find((bit) => !isSmall(bit) && !is(bit, 'lasting', 'heat-lead', 'set'));
  if (!opens) return null;
  const place = ofKind(bits, 'place').find((bit) => !isKind(request, bit));
  if (is(opens, 'rename')) {
    const pointed = !place || place.from > opens.to + 1;
    // "Call it the bench", of a place just told of.
    if (pointed && (talkedOf !== 'place' || !is(opens, 'rename-it'))) return null;
    const after = pointed ? opens.to : place.to;
    const again = classed(bits, 'rename-it', 'called').find((bit) => bit.from >= after);
    const words = nameFrom(request, again?.to ?? after);
    if (!words) return null;
    return made(request, 'rename-place', { place: pointed ? samePlace : place.place, words }, true);
  }
  if (opens !== place) return null;
  const called = bits.find((bit) => bit.from >= place.to && !isSmall(bit) && !is(bit, 'is-so'));
  // "The top shelf is the tin shelf from now on".
  const soFromNow = is(called, 'the-one') || (called !== undefined && some(bits, 'lasting'));
  if (!is(called, 'called', 'rename-so') && !(soFromNow && some(bits, 'lasting'))) return null;
  const words = nameFrom(request, is(called, 'called', 'rename-so') ? called!.to : called!.from);
  return words ? made(request, 'rename-place', { place: place.place, words }, true) : null;
};
const samePlace: PlaceMention = { words: null, candidates: [], pointer: 'same', spot: null };

/** "Do away with the counter", "we've taken the meat drawer out, everything from it is on the bottom shelf". */
const removeFrame: Frame = (request) => {
  const { bits, tokens, beside } = request;
  const [away] = classed(bits, 'do-away', 'do-away-out');
  if (!away || some(bits, 'if', 'remind', 'timer')) return null;
  const places = ofKind(bits, 'place');
  const [place, ...rest] = places.filter(({ from }) => from >= away.to);
  const near = place && tokens.slice(away.to, place.from).every((word) => beside(word, 'name-leads'));
  if (!place || !near || isKind(request, place)) return null;
  // "Take the milk away from the top shelf", "take everything out of the crate": of what is in it.
  if (
    thingsIn(bits).length > 0 ||
    some(
      bits.filter(({ to }) => to <= place.from),
      'all',
    )
  )
    return null;
  // "We took the meat drawer" may be what was carried: it is gone where that is said.
  if (is(away, 'do-away-out') && !tokens.slice(place.to).some((word) => beside(word, 'out-word')))
    return null;
  const all = classed(bits, 'all').find(({ from }) => from >= place.to);
  const to = all ? rest.findLast(({ from }) => from >= all.to) : undefined;
  const [outer] = rest.filter((bit) => bit !== to && (!all || bit.to <= all.from));
  const removed = outer ? within(request, place, outer) : place.place;
  return made(request, 'remove-place', to ? { from: removed, place: to.place } : { place: removed }, true);
};
const within = ({ oneInside }: Request, inner: BitOf<'place'>, outer: BitOf<'place'>): PlaceMention =>
  oneInside(inner.place.words ?? '', outer.place.words ?? '') ?? inner.place;

/** "Add a drawer called the cheese drawer to the fridge", "put a shelf in the pantry and call it the spice shelf". */
const namedNewFrame: Frame = (request) => {
  const { bits, tokens, beside } = request;
  if (some(bits, 'wh', 'if', 'not', 'remind', 'timer')) return null;
  const kind = tokens.findIndex(
    (word, at) => beside(word, 'parts-word') && beside(tokens[at - 1] ?? '', 'any-one'),
  );
  const called = classed(bits, 'called', 'rename-it').find(({ from }) => from > kind);
  if (kind < 0 || !called || !tokens.slice(0, kind).some((word) => beside(word, 'makes-place'))) return null;
  const places = request.anywhere('place').filter((bit) => bit.from > kind && !isKind(request, bit));
  // Where it is may stand before its name, or after it.
  const into = (bit: BitOf<'place'>): boolean =>
    [1, 2].some((back) => beside(tokens[bit.from - back] ?? '', 'into-place'));
  const outer =
    places.find((bit) => bit.to <= called.from) ??
    places.findLast((bit) => bit.from > called.to && into(bit));
  let end = outer && outer.from > called.to ? outer.from : tokens.length;
  while (
    end > called.to &&
    (beside(tokens[end - 1]!, 'into-place') || beside(tokens[end - 1]!, 'name-trails'))
  )
    end -= 1;
  let start = called.to;
  while (start < end && beside(tokens[start]!, 'name-leads')) start += 1;
  if (start >= end) return null;
  // "A shelf in the pantry" may be read as the shelves that are there: it is part of what they are part of.
  const part = request
    .anywhere('place')
    .find((bit) => bit.from <= kind && bit.to > kind + 1 && bit.to <= called.from);
  const inside = outer ?? part;
  return made(
    request,
    'build-place',
    {
      ...(inside ? { place: inside.place } : {}),
      placeNames: [tokens.slice(start, end).join(' ')],
      placeKind: tokens[kind]!,
      asked: outer || !part ? 'new' : 'new part',
    },
    true,
  );
};

/** "There's a new place in the pantry, called the spice rack", "I want to add a place". */
const addFrame: Frame = (request) => {
  const { bits, tokens, beside } = request;
  if (some(bits, 'wh', 'if', 'not', 'remind', 'timer')) return null;
  // "A new shelf in the pantry": the kind stands in the place, which no shelf of hers is.
  const part = ofKind(bits, 'place').find(
    (bit) => beside(tokens[bit.from]!, 'parts-word') && is(bits[bits.indexOf(bit) - 1], 'new-word'),
  );
  const fresh = classed(bits, 'new-place')[0] ?? part;
  const asked = request.expecting === 'words' && some(bits, 'called', 'rename-it');
  if (!fresh && !asked) return null;
  const begins = fresh?.from ?? 0;
  if (thingsIn(bits.filter(({ to }) => to <= begins)).length > 0) return null;
  const called = classed(bits, 'called', 'rename-it').find(({ from }) => from >= begins);
  const words = called ? nameFrom(request, called.to) : null;
  // What it is called answers what was asked of it.
  if (!fresh && bits.every((bit) => isSmall(bit) || bit === called || bit.from >= called!.to))
    return words ? { ...made(request, 'answer', { words }), follows: true } : null;
  const places = ofKind(bits, 'place').filter(
    (bit) =>
      bit !== part && !isKind(request, bit) && (!called || bit.to <= called.from) && !isKitchen(request, bit),
  );
  const kind = part ? tokens[part.from] : kindIn(request, places, begins, called?.from);
  const [place] = places.filter(({ fit }) => fit >= wholeName);
  const lists = ['new-place', 'new-word', 'heat-lead', 'set', 'add', 'existing', 'parts-word', 'new-lead'];
  if (!called && !onlySays(request, part ? [...places, part] : places, ...lists)) return null;
  const inside = place?.place ?? part?.place;
  return made(
    request,
    'build-place',
    {
      ...(inside ? { place: inside } : {}),
      ...(words ? { placeNames: [words] } : {}),
      ...(kind && !beside(kind, 'parts-any') ? { placeKind: kind } : {}),
      asked: place || !part ? 'new' : 'new part',
    },
    true,
  );
};

const filled = 'filled:';
/** How full, in hundredths. */
const fullnessOf = (bit: Bit): number | null => {
  const list = bit.kind === 'word' ? [...bit.classes].find((name) => name.startsWith(filled)) : undefined;
  return list === undefined ? null : Number(list.slice(filled.length));
};

/** The place meant: by its name, or "the middle one", of that kind just told of. */
const placeIn = ({ bits, after }: Request): PlaceMention | null => {
  const [named, ...more] = ofKind(bits, 'place');
  if (more.length > 0) return null;
  if (named) return named.place;
  const [part] = ofKind(after, 'place');
  return part?.place ?? null;
};

/** "The left bin is about half full", "how full did I say the middle one was". */
const fullnessFrame: Frame = (request) => {
  const { bits, talkedOf } = request;
  const told = bits.flatMap((bit) => fullnessOf(bit) ?? []);
  const asks = some(bits, 'how-full');
  if (
    (told.length === 0 && !asks) ||
    thingsIn(bits).length > 0 ||
    some(bits, 'if', 'remind', 'timer', 'power')
  )
    return null;
  const place = placeIn(request) ?? (talkedOf === 'place' ? samePlace : null);
  if (!place) return null;
  if (asks) return made(request, 'place-state', { place, asked: 'fullness' }, true);
  if (some(bits, 'wh', 'asking-word', 'not') || request.beside(request.tokens[0]!, 'asks-first')) return null;
  const places = ofKind(bits, 'place');
  if (!onlySays(request, places, 'existing', 'is-so', 'filled-words', ...filledLists)) return null;
  return made(request, 'build-place', { place, asked: 'fullness', number: told.at(-1)! }, true);
};
const filledLists = ['0', '10', '25', '33', '50', '66', '75', '90', '100'].map(
  (share) => `${filled}${share}`,
);

/** "What stands between the soup and the dal", on whichever shelf both are. */
const betweenFrame: Frame = (request) => {
  const { bits } = request;
  const between = classed(bits, 'in-between').at(-1);
  if (!between || !some(bits, 'wh', 'whatever', 'asking-word') || some(bits, 'remind', 'timer')) return null;
  const things = ofKind(bits, 'thing').filter(({ from }) => from >= between.to);
  const [one, other, ...more] = things;
  if (!one || !other || more.length > 0) return null;
  const [place] = ofKind(bits, 'place');
  const at = (mention: Mention): Mention => (place ? { ...mention, at: place.place } : mention);
  return made(
    request,
    'how-to-reach',
    { asked: 'between', item: at(one.mention), items: [at(other.mention)] },
    true,
  );
};

/** "Move all of it to the bottom shelf, except the garlic". */
const moveAllFrame: Frame = (request) => {
  const { bits, tokens, beside } = request;
  const all = classed(bits, 'all')[0];
  const [lead] = classed(bits, 'move-all');
  const but = classed(bits, 'all-but')[0];
  if (!all || !lead || !but || some(bits, 'wh', 'if', 'remind', 'timer')) return null;
  const kept = ofKind(bits, 'thing').filter(({ from }) => from >= but.to);
  if (kept.length === 0 || thingsIn(bits).some(({ to }) => to <= but.from)) return null;
  const places = ofKind(bits, 'place');
  // "Everything on the counter": what all is of, where it goes comes after it.
  const leads = (bit: Bit): boolean =>
    beside(tokens[bit.from - 1] ?? '', 'out-of') || (places.length > 1 && bit.from - all.to === 1);
  const from = places.find(leads);
  const to = places.find((bit) => bit !== from);
  if (!to || places.length > 2) return null;
  const item: Mention = from
    ? { ...emptyMention, pointer: 'all', at: from.place }
    : { ...emptyMention, pointer: 'them' };
  return made(
    request,
    'move',
    { item, place: to.place, items: kept.map(({ mention }) => mention), negated: true },
    true,
  );
};

/** "The top and the bottom shelf of the pantry": the part said by where it is alone is of the other's kind. */
const partBeside = (
  { tokens, beside, oneInside }: Request,
  position: Bit,
  other: BitOf<'place'>,
): PlaceMention | null => {
  const words = tokens.slice(other.from, other.to);
  const kind = words.findIndex((word) => beside(word, 'parts-word'));
  const outer = words.slice(kind + 1).filter((word) => !beside(word, 'articles') && !beside(word, 'out-of'));
  if (kind < 0 || outer.length === 0) return null;
  const side = tokens.slice(position.from, position.to).filter((word) => !beside(word, 'articles'));
  return oneInside([...side, words[kind]!].join(' '), outer.join(' '));
};

/** The two places that are spoken of, in the order in which they stand. */
const twoPlaces = (request: Request): readonly [PlaceMention, PlaceMention] | null => {
  const { bits } = request;
  const [one, other, ...more] = ofKind(bits, 'place').filter((bit) => !isKind(request, bit));
  if (!one || more.length > 0) return null;
  if (other) return [one.place, other.place];
  const position = classed(bits, 'position')[0];
  const part = position ? partBeside(request, position, one) : null;
  if (!part || !position) return null;
  return position.from < one.from ? [part, one.place] : [one.place, part];
};

/** "Swap over what's in the two drawers", "swap the top and the bottom shelf round": what is in each goes to the other. */
const swapPlacesFrame: Frame = (request) => {
  const { bits } = request;
  if (!some(bits, 'swap') || some(bits, 'not', 'if', 'remind', 'timer', 'marker-word')) return null;
  if (thingsIn(bits).length > 0 || ofKind(bits, 'marker').length > 0) return null;
  const both = twoPlaces(request);
  if (both) return made(request, 'move', { asked: 'swap', from: both[0], place: both[1] }, true);
  // "The two kitchen freezer drawers": two of a kind, said at once.
  const [one, ...more] = ofKind(bits, 'place');
  return one && more.length === 0 && one.place.candidates.length === 2
    ? made(request, 'move', { asked: 'swap', place: one.place }, true)
    : null;
};

/** "Clear the top drawer into the bottom one": all of it moved. */
const emptyIntoFrame: Frame = (request) => {
  const { bits, tokens, beside } = request;
  const opens = bits.findIndex((bit) => !isSmall(bit));
  const verb = bits[opens];
  if (!verb || !tokens.slice(verb.from, verb.to).some((word) => beside(word, 'empties'))) return null;
  if (thingsIn(bits).length > 0 || some(bits, 'not', 'if', 'remind', 'timer', 'wh')) return null;
  if (!tokens.some((word) => beside(word, 'into-place'))) return null;
  const both = twoPlaces(request);
  if (!both) return null;
  const item: Mention = { ...emptyMention, pointer: 'all', at: both[0] };
  return made(request, 'move', { item, place: both[1] }, true);
};

/** "Which bin has the most room", "which of the fridge shelves is fullest": of one kind of place, by what is in each. */
const roomFrame: Frame = (request) => {
  const { bits, tokens } = request;
  const room = some(bits, 'most-room');
  if ((!room && !some(bits, 'least-room')) || !some(bits, 'wh', 'asking-word', 'parts-list')) return null;
  if (thingsIn(bits).length > 0 || some(bits, 'not', 'if', 'remind', 'timer')) return null;
  const [place, ...more] = ofKind(bits, 'place').filter((bit) => !isKind(request, bit));
  const kind = tokens.find((word) => request.beside(word, 'parts-word'));
  if (!kind || more.length > 0) return null;
  const acts = made(
    request,
    'place-state',
    { placeKind: kind, ...(place ? { place: place.place } : {}), asked: room ? 'room' : 'full' },
    true,
  );
  // No other reading says more of it: it is asked of no food that was told of before.
  return { ...acts, ours: true };
};

/** What is told apart by one word comes first. */
export const placeFrames: readonly Frame[] = [
  namedNewFrame,
  swapPlacesFrame,
  emptyIntoFrame,
  roomFrame,
  addFrame,
  removeFrame,
  fullnessFrame,
  betweenFrame,
  moveAllFrame,
  partsFrame,
  renameFrame,
];
