/**
 * Markers asked for and asked about, in any wording: two swapped, one carried over to another food, what it stands,
 * which are free, what it was on before, which to put on, and what one could be taken for.
 */
import type { Mention, Slots } from '../../intents.js';
import { itMention } from '../../intents.js';
import type { Bit, BitOf, Frame, Made, Request } from './bits.js';
import { classed, is, ofKind, some } from './bits.js';

/** Known by what it is, its shape or what can be counted on it: more than "the marker". */
const isFelt = ({ mention: { touch } }: BitOf<'marker'>): boolean =>
  (touch?.fastening !== undefined && !isPlainWord(touch.fastening)) ||
  touch?.shape !== undefined ||
  touch?.dots !== undefined;
/** "Marker" is the kind of thing, and of no feel. */
const isPlainWord = (fastening: string): boolean => fastening === 'marker';

const feltIn = (bits: readonly Bit[]): readonly BitOf<'marker'>[] => ofKind(bits, 'marker').filter(isFelt);
/** "The marker", whatever it is. */
const isPlain = (bit: Bit | undefined): boolean =>
  (bit?.kind === 'marker' && !isFelt(bit)) || is(bit, 'marker-word');
const spokenOf = (bits: readonly Bit[]): readonly Bit[] =>
  bits.filter((bit) => isPlain(bit) || (bit.kind === 'marker' && isFelt(bit)));

/** Things named that are hers, or food; a word that merely sounds like one is none. */
const thingsIn = (bits: readonly Bit[]): readonly BitOf<'thing'>[] =>
  ofKind(bits, 'thing').filter(({ fit, source }) => fit >= surely || source === 'food');
const surely = 0.8;

const made = (
  { tokens }: Request,
  intent: 'mark' | 'markers' | 'marker-care',
  slots: Slots,
  /** No rule of a whole sentence knows what it is of. */
  follows = false,
): Made => ({ acts: [{ intent, slots }], used: new Set(tokens.keys()), follows });

/** "Swap the markers of the rice and the barley", "swap those two round", after each was told of. */
const swapFrame: Frame = (request) => {
  const { bits, talkedOf } = request;
  const swaps = classed(bits, 'swap');
  if (swaps.length === 0 || some(bits, 'not', 'if', 'wh', 'remind')) return null;
  const things = thingsIn(bits);
  const felt = feltIn(bits);
  // "The bands on the milk and the soup" are known by what they are on.
  const bands =
    things.length < 2
      ? // "Round" alone, as in "swap them round", is no shape of one.
        felt.filter(({ mention: { touch }, from, to }) => touch?.fastening ?? (to - from > 1 && touch?.shape))
      : [];
  const ends: readonly Mention[] = [...things, ...bands]
    .toSorted((a, b) => a.from - b.from)
    .map(({ mention }) => mention);
  const ofMarkers = spokenOf(bits).length > 0 || talkedOf === 'marker';
  if (!ofMarkers || ends.length === 1 || ends.length > 2) return null;
  if (ends.length === 0 && talkedOf !== 'marker' && !some(bits, 'marker-word')) return null;
  return made(
    request,
    'mark',
    { asked: 'swap', ...(ends.length === 2 ? { items: ends } : {}) },
    ends.length === 0,
  );
};

/** The words right before it, articles passed over, are of that list. */
const led = ({ tokens, beside }: Request, bit: Bit, list: string): boolean => {
  let at = bit.from - 1;
  while (at >= 0 && beside(tokens[at]!, 'articles')) at -= 1;
  return at >= 0 && beside(tokens[at]!, list);
};

/** "Put the feta's ribbon on the capers", "move the heart from the pudding to the gumbo", "put its magnet on the soup". */
const carryFrame: Frame = (request) => {
  const { bits } = request;
  const puts = classed(bits, 'marker-put');
  const [marker, ...more] = spokenOf(bits);
  if (puts.length === 0 || !marker || more.length > 0 || some(bits, 'not', 'if', 'wh', 'remind')) return null;
  const things = thingsIn(bits);
  const own = ownerWord(request, marker);
  const source = things.find(
    (thing) =>
      !own &&
      (thing.to === marker.from || (thing.from >= marker.to && led(request, thing, 'off-from'))) &&
      (thing.to === marker.from || !led(request, thing, 'onto') || things.at(-1) !== thing),
  );
  const rest = things.filter((thing) => thing !== source);
  // What was said of another food before it is another matter.
  if (things.some(({ from }) => from < puts[0]!.from)) return null;
  const [target, ...others] = rest;
  if (!target || others.length > 0 || (!source && !own)) return null;
  // "Give the capers the pudding's magnet": whoever is given it needs no word before it.
  const given = target.to <= (source ?? marker).from;
  if (!given && !led(request, target, 'onto')) return null;
  return made(request, 'mark', {
    asked: 'carry',
    item: target.mention,
    items: [source ? source.mention : itMention],
    ...(marker.kind === 'marker' && isFelt(marker) ? { marker: marker.mention } : {}),
  });
};
/** "Its magnet", "that one's marker". */
const ownerWord = ({ tokens, beside }: Request, marker: Bit): boolean =>
  beside(tokens[marker.from] ?? '', 'its') || beside(tokens[marker.from - 1] ?? '', 'its');

/** What of care is asked, by the word for it. */
const kinds = [
  ['care-dishwasher', 'dishwasher'],
  ['care-freezer', 'freezer'],
  ['care-microwave', 'microwave'],
  ['care-heat', 'heat'],
  ['care-wet', 'wet'],
] as const;

/** "May I wash the lid with that on", "will the felt stand the dishwasher", of a marker named or just told of. */
const careFrame: Frame = (request) => {
  const { bits, talkedOf, beside, says, tokens } = request;
  // "In the freezer" is a place, too.
  const what = kinds.find(([list]) => some(bits, list) || tokens.some((word) => says(word, list)));
  // "The bead is washed by hand" tells how it is looked after.
  const opens = bits.find((bit) => !is(bit, 'opener', 'aside') || beside(tokens[bit.from]!, 'may'));
  const asks = some(bits, 'wh', 'asking-word') || beside(tokens[opens?.from ?? 0] ?? '', 'may');
  const wholly = some(bits, 'care-any');
  if ((!what && !wholly) || !asks || some(bits, 'remind', 'timer')) return null;
  const [marker, ...more] = spokenOf(bits);
  if (more.length > 0) return null;
  const things = thingsIn(bits);
  const [thing, ...others] = things;
  if (others.length > 0) return null;
  // No food goes in the dishwasher.
  const pointed = !thing && (talkedOf === 'marker' || what?.[0] === 'care-dishwasher');
  if (!marker && !pointed) return null;
  // "Which of them must not get wet" is asked of all; "the jar with the bead" is food, unless its marker is named.
  if (marker && !isPlain(marker) && (thing ?? holds(marker))) return null;
  if (marker && isPlain(marker) && !thing && !pointed) return null;
  if (some(bits, 'all') || tokens.some((word) => beside(word, 'of-all'))) return null;
  const felt = marker?.kind === 'marker' && isFelt(marker) ? { marker: marker.mention } : {};
  return made(
    request,
    'marker-care',
    { ...(what ? { words: what[1] } : {}), ...felt, ...(thing ? { item: thing.mention } : {}) },
    true,
  );
};
const holds = (bit: Bit): boolean => bit.kind === 'marker' && bit.mention.touch?.container !== undefined;

/** "Which are going spare", "what's free now", after one came off. */
const freeFrame: Frame = (request) => {
  const { bits, talkedOf } = request;
  const free = classed(bits, 'marker-free');
  const asks = some(bits, 'wh', 'whatever', 'marker-list');
  if (free.length === 0 || !asks || thingsIn(bits).some(({ from }) => !free.some((one) => one.from === from)))
    return null;
  const marked = spokenOf(bits);
  if (feltIn(marked).length > 0) return null;
  if (marked.length === 0 && talkedOf !== 'marker' && talkedOf !== 'markers') return null;
  if (ofKind(bits, 'place').length > 0 || ofKind(bits, 'person').length > 0) return null;
  return made(request, 'markers', {}, marked.length === 0);
};

/** "What was the ribbon on before", "what did it use to be on". */
const wasOnFrame: Frame = (request) => {
  const { bits, talkedOf } = request;
  const was = classed(bits, 'was-on');
  if (was.length === 0 || !some(bits, 'wh', 'asking-word') || thingsIn(bits).length > 0) return null;
  const [marker, ...more] = spokenOf(bits);
  if (more.length > 0 || (!marker && talkedOf !== 'marker')) return null;
  const felt = marker?.kind === 'marker' && isFelt(marker) ? { marker: marker.mention } : {};
  return { ...made(request, 'markers', { asked: 'was-on', ...felt }, !marker), ours: true };
};

/** "How many markers have I got", "read me all my markers". */
const allMarkersFrame: Frame = (request) => {
  const { bits } = request;
  const many = bits.filter((bit) => is(bit, 'markers-word'));
  if (many.length === 0 || !some(bits, 'wh', 'marker-list') || some(bits, 'marker-free', 'not')) return null;
  const own = bits.every(
    (bit) =>
      many.includes(bit) ||
      isPlain(bit) ||
      is(bit, 'fill', 'wh', 'marker-list', 'all', 'aside', 'opener', 'whatever', 'set', 'did'),
  );
  return own ? made(request, 'markers', { asked: 'all' }) : null;
};

/** "Give the capers a marker", "which marker would you put on the feta": one that is free and unlike those around. */
const suggestFrame: Frame = (request) => {
  const { bits, tokens, beside } = request;
  const marked = spokenOf(bits);
  const [thing, ...more] = thingsIn(bits);
  if (marked.length !== 1 || !isPlain(marked[0]) || !thing || more.length > 0) return null;
  // "That I can not mix up with the others" is what it is wanted for.
  if ((some(bits, 'not') && !some(bits, 'mix-up', 'mix')) || some(bits, 'remind', 'if')) return null;
  const any = anyOne(request, marked[0]!);
  // "The feta's marker" is the one it has, "what marker is on the capers" asks what there is.
  if (thing.to === marked[0]!.from && !any) return null;
  const wanted = some(bits, 'marker-suggest') || (some(bits, 'marker-put') && any);
  const which = some(bits, 'wh') && tokens.some((word) => beside(word, 'would'));
  if (!wanted && !(which && some(bits, 'marker-put', 'marker-suits', 'put-on', 'set', 'agree'))) return null;
  return { ...made(request, 'markers', { asked: 'suggest', item: thing.mention }), ours: true };
};
/** "What should I put on the marmalade so I know it from the jam": the feel of one is what is asked for. */
const knownByFrame: Frame = (request) => {
  const { bits, tokens, beside } = request;
  const why = classed(bits, 'known-by');
  // "Honey" alone may be somebody who is spoken to: here it is what the marker goes on.
  const named = [...thingsIn(bits), ...request.anywhere('thing')];
  const [thing] = named.filter(({ from }) => from < (why[0]?.from ?? 0));
  const puts = some(bits, 'marker-put', 'put-on', 'marker-suits', 'set', 'agree');
  const asks = some(bits, 'wh') && tokens.some((word) => beside(word, 'would'));
  // What there is to mark with is told in a move of its own.
  if (!thing || !puts || !asks || feltIn(bits).length > 0 || some(bits, 'not', 'remind')) return null;
  return { ...made(request, 'markers', { asked: 'suggest', item: thing.mention }), ours: true };
};

/** "Tengo", which says who has it by itself. */
const ownsByVerb = (word: string, beside: Request['beside']): boolean => beside(word, 'have-alone');

/** "I've got some rubber bands and a bag of clothes pegs": what there is to mark with. */
const ownedFrame: Frame = (request) => {
  const { bits, tokens, beside } = request;
  // "It's got a bead on it" is of a thing.
  const have = tokens.findIndex(
    (word, at) =>
      beside(word, 'have-some') &&
      (ownsByVerb(word, beside) || tokens.slice(0, at).some((one) => beside(one, 'owners'))),
  );
  const felt = feltIn(bits).filter(({ mention: { touch } }) => touch?.fastening !== undefined);
  if (have < 0 || felt.length === 0 || have > felt[0]!.from) return null;
  const others = bits.some(
    (bit) =>
      (bit.kind === 'thing' && !felt.some(({ from, to }) => from <= bit.from && bit.to <= to)) ||
      bit.kind === 'place' ||
      is(bit, 'wh', 'not', 'asking-word'),
  );
  if (others) return null;
  return {
    acts: felt.map(({ mention: { touch, ...mention } }) => {
      // The bag is what they come in.
      const { container: _box, ...feel } = touch ?? {};
      return { intent: 'add-marker', slots: { marker: { ...mention, words: null, touch: feel } } };
    }),
    used: new Set(tokens.keys()),
    ours: true,
    whole: true,
  };
};

const anyOne = ({ tokens, beside }: Request, { from }: Bit): boolean =>
  beside(tokens[from] ?? '', 'any-one') || beside(tokens[from - 1] ?? '', 'any-one');

/** "What could I mix the wooden bead up with", "what is the harissa's string like". */
const mixUpFrame: Frame = (request) => {
  const { bits } = request;
  // "What could I mix it up with": the marker stands within the words for it.
  const parted = some(bits, 'mix') && request.tokens.some((word) => request.beside(word, 'up'));
  if ((!some(bits, 'mix-up') && !parted) || !some(bits, 'wh', 'whatever')) return null;
  const [marker, ...more] = spokenOf(bits);
  const [thing, ...others] = thingsIn(bits);
  if (more.length > 0 || others.length > 0 || (!marker && !thing && request.talkedOf !== 'marker'))
    return null;
  // One that is to be put there is asked about as such; with nothing named, of all there are.
  if (marker && isPlain(marker) && !thing && request.talkedOf !== 'marker') return null;
  const felt = marker?.kind === 'marker' && isFelt(marker) ? { marker: marker.mention } : {};
  return made(request, 'markers', { asked: 'alike', ...felt, ...(thing ? { item: thing.mention } : {}) });
};

/** What is told apart by one word comes first. */
export const markerFrames: readonly Frame[] = [
  swapFrame,
  carryFrame,
  wasOnFrame,
  knownByFrame,
  ownedFrame,
  suggestFrame,
  mixUpFrame,
  careFrame,
  freeFrame,
  allMarkersFrame,
];
