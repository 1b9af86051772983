/**
 * Markers as they are met with: one that came off, was lost or broke or turned up again; "it" put on a food; one
 * guessed at; which there are of a kind; where on its food one sits; and what one is on, after another was told of.
 */
import type { Slots } from '../../intents.js';
import { itMention } from '../../intents.js';
import type { Bit, BitOf, Frame, Made, Request } from './bits.js';
import { classed, is, ofKind, some } from './bits.js';

const made = (
  { tokens }: Request,
  intent: 'mark' | 'unmark' | 'add-marker' | 'markers' | 'tell-about' | 'whats-this',
  slots: Slots,
): Made => ({ acts: [{ intent, slots }], used: new Set(tokens.keys()), follows: true, ours: true });

const isFelt = ({ mention: { touch } }: BitOf<'marker'>): boolean =>
  (touch?.fastening !== undefined && touch.fastening !== 'marker') ||
  touch?.shape !== undefined ||
  touch?.dots !== undefined;

/** One marker that is known by what it is, and no food that is known by it: "the jar with the bead" is food. */
const oneMarker = ({ bits, tokens, beside }: Request): BitOf<'marker'> | null => {
  const [marker, ...more] = ofKind(bits, 'marker').filter(isFelt);
  if (!marker || more.length > 0) return null;
  const within = tokens.slice(marker.from, marker.to);
  const before = tokens[marker.from - 1] ?? '';
  const ofFood =
    marker.mention.touch?.container !== undefined ||
    within.some((word) => beside(word, 'with-word')) ||
    beside(before, 'with-word');
  return ofFood ? null : marker;
};

const surely = 0.8;
const thingsIn = (bits: readonly Bit[]): readonly BitOf<'thing'>[] =>
  ofKind(bits, 'thing').filter(({ fit, source }) => fit >= surely || source === 'food');

/** "The bead's come off the vinegar", "we've lost the ribbon", "the star magnet broke". */
const offFrame: Frame = (request) => {
  const spelled = request.spelledOut();
  return (
    offOf(request) ??
    (spelled.tokens.length === request.tokens.length ? null : offOf({ ...request, ...spelled }, request))
  );
};
const offOf = (request: Request, said: Request = request): Made | null => {
  const { bits, beside, tokens } = request;
  if (some(bits, 'wh', 'asking-word', 'if', 'not', 'remind', 'timer')) return null;
  if (beside(tokens[0] ?? '', 'asks-first')) return null;
  const marker = oneMarker(request);
  const [off] = classed(bits, 'marker-off');
  const [lost] = classed(bits, 'marker-lost');
  if (!marker || (!off && !lost)) return null;
  const [item, ...others] = thingsIn(bits);
  if (others.length > 0) return null;
  return made(said, 'unmark', {
    ...(lost ? { asked: 'lost' } : {}),
    marker: marker.mention,
    ...(item ? { item: item.mention } : {}),
  });
};

/** "I've found the ribbon again", "the pin turned up". */
const foundFrame: Frame = (request) => {
  const { bits } = request;
  if (!some(bits, 'marker-found') || some(bits, 'wh', 'asking-word', 'if', 'not', 'remind')) return null;
  const marker = oneMarker(request);
  if (!marker || thingsIn(bits).length > 0) return null;
  return made(request, 'add-marker', { asked: 'found', marker: marker.mention });
};

const leads = ({ tokens, beside }: Request, bit: Bit, list: string): boolean => {
  let at = bit.from - 1;
  while (at >= 0 && beside(tokens[at]!, 'articles')) at -= 1;
  return at >= 0 && beside(tokens[at]!, list);
};

/** "Put it on the edamame instead", "that one can go on the salami": the marker that was just told of. */
const putItFrame: Frame = (request) => {
  const { bits, tokens, beside, talkedOf } = request;
  if (talkedOf !== 'marker' && talkedOf !== 'markers') return null;
  if (!some(bits, 'marker-put', 'put-on') || some(bits, 'not', 'if', 'wh', 'remind', 'timer')) return null;
  if (ofKind(bits, 'marker').some(isFelt) || ofKind(bits, 'place').length > 0) return null;
  const [item, ...others] = thingsIn(bits);
  if (!item || others.length > 0 || !leads(request, item, 'onto')) return null;
  const points = tokens.slice(0, item.from).some((word) => beside(word, 'marker-it'));
  return points ? made(request, 'mark', { marker: itMention, item: item.mention }) : null;
};

/** "Wooden disc with one dot, that's the bread flour, isn't it?": a guess at what is in the hand. */
const guessFrame: Frame = (request) => {
  const { bits, tokens, beside } = request;
  const [marker, ...more] = ofKind(bits, 'marker').filter(isFelt);
  const [thing, ...others] = thingsIn(bits);
  if (!marker || more.length > 0 || !thing || others.length > 0 || thing.from < marker.to) return null;
  if (some(bits, 'wh', 'asking-word', 'remind', 'if')) return null;
  const tag = classed(bits, 'guess-end').some(({ from }) => from >= thing.to);
  const asks = beside(tokens[0] ?? '', 'asks-first');
  // "That's the flour", and not "on the flour": that is asked of where the marker is.
  const between = tokens.slice(marker.to, thing.from);
  if (!(tag || asks) || !(asks || between.some((word) => beside(word, 'guess-is')))) return null;
  if (leads(request, thing, 'onto')) return null;
  return made(request, 'whats-this', { asked: 'guess', marker: marker.mention, item: thing.mention });
};

/** "Which magnets have we got and what are they on", "how many beads are there". */
const kindFrame: Frame = (request) => {
  const { bits, tokens, beside } = request;
  const marker = oneMarker(request);
  if (!marker || !some(bits, 'wh', 'marker-list') || some(bits, 'remind', 'if', 'not')) return null;
  const { fastening } = marker.mention.touch ?? {};
  const many = fastening !== undefined && tokens[marker.to - 1]!.endsWith('s');
  const free = some(bits, 'marker-free');
  const has = some(bits, 'parts-has', 'markers-have') || tokens.some((word) => beside(word, 'holds'));
  if (!many || !(free || has) || thingsIn(bits).length > 0 || some(bits, 'things-word')) return null;
  if (ofKind(bits, 'place').length > 0 || ofKind(bits, 'person').length > 0) return null;
  return made(request, 'markers', { ...(free ? {} : { asked: 'all' }), marker: marker.mention });
};

/** "What's shelf card nine on", "what is the pin fixed to": asked of the marker, and of nothing in the hand. */
const onWhatFrame: Frame = (request) => {
  const { bits, tokens, beside } = request;
  const [marker, ...more] = ofKind(bits, 'marker').filter(
    (bit) => isFelt(bit) || bit.mention.candidates.length > 0,
  );
  if (!marker || more.length > 0 || !beside(tokens.at(-1) ?? '', 'onto')) return null;
  const small = bits.every((bit) => bit === marker || is(bit, 'fill', 'opener', 'wh', 'is-so', 'on-its-lid'));
  return small && some(bits, 'wh', 'asking-word')
    ? made(request, 'whats-this', { marker: marker.mention })
    : null;
};

/** "Is the bead free", "is the ribbon on anything". */
const isFreeFrame: Frame = (request) => {
  const { bits, tokens, beside } = request;
  const marker = oneMarker(request);
  const opens = bits.find((bit) => !is(bit, 'opener', 'aside'));
  if (!marker || !opens || !beside(tokens[opens.from]!, 'asks-first')) return null;
  if (!some(bits, 'marker-free') || thingsIn(bits).length > 0 || some(bits, 'remind')) return null;
  return made(request, 'markers', { marker: marker.mention });
};

/** "Where on the lid exactly", "whereabouts is the marker on the pie": where on its food it sits. */
const spotFrame: Frame = (request) => {
  const { bits, tokens, beside, talkedOf } = request;
  const where = tokens.some((word) => beside(word, 'where-word'));
  if (!where || ofKind(bits, 'marker').some(isFelt) || ofKind(bits, 'place').length > 0) return null;
  const [thing, ...others] = thingsIn(bits);
  if (others.length > 0 || some(bits, 'remind', 'timer', 'if')) return null;
  const marker = some(bits, 'marker-word') || ofKind(bits, 'marker').length > 0;
  const onIt = some(bits, 'on-its-lid');
  if (!(thing ? marker && (onIt || thing.from > 0) : talkedOf === 'marker' && (onIt || marker))) return null;
  return made(request, 'tell-about', { asked: 'feel', item: thing ? thing.mention : itMention });
};

/** "And the heart?", after what another marker is on: that of this one. */
const andMarkerFrame: Frame = (request) => {
  const { bits, tokens, beside, talkedOf } = request;
  if (talkedOf !== 'felt') return null;
  const [marker, ...more] = ofKind(bits, 'marker').filter(isFelt);
  if (!marker || more.length > 0) return null;
  const small = bits.every(
    (bit) =>
      bit === marker || is(bit, 'fill', 'opener', 'again', 'wh') || beside(tokens[bit.from]!, 'and-what'),
  );
  return small ? made(request, 'whats-this', { marker: marker.mention }) : null;
};

export const markersMetFrames: readonly Frame[] = [
  offFrame,
  foundFrame,
  putItFrame,
  guessFrame,
  kindFrame,
  onWhatFrame,
  isFreeFrame,
  spotFrame,
  andMarkerFrame,
];
