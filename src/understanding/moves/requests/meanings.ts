/** What dots mean here: asked, told, or told anew. */
import type { Touch } from '../../../terms/touch.js';
import type { Act } from '../../intents.js';
import type { Bit, BitOf, Frame, Made, Request } from './bits.js';
import { classed, figureOf, is, ofKind, some, wordsIn } from './bits.js';

/** How many dots, knots or ridges are spoken of. */
const dotsIn = ({
  bits,
  tokens,
  says,
}: Request): {
  count: number | null;
  counted?: Touch['counted'] | undefined;
  bits: readonly Bit[];
} | null => {
  for (const [at, bit] of bits.entries()) {
    if (bit.kind === 'marker') {
      const { dots, fastening, shape, counted } = bit.mention.touch ?? {};
      const raised = dots !== undefined || says(tokens[bit.to - 1]!, 'dots');
      if (raised && fastening === undefined && shape === undefined)
        return { count: dots ?? null, counted, bits: [bit] };
    }
    if (is(bit, 'dots')) {
      const before = bits[at - 1];
      const count = figureOf(before);
      return before && count !== null ? { count, bits: [before, bit] } : { count: null, bits: [bit] };
    }
  }
  return null;
};

/** "Do the knots match what's on the shelf", "are the things marked hot really hot": what is felt against the record. */
export const marksCheckedFrame: Frame = (request) => {
  const { bits, tokens, beside } = request;
  const held = classed(bits, 'held-against');
  const dots = dotsIn(request);
  const marked = classed(bits, 'marked-so');
  if (held.length === 0 || (!dots && marked.length === 0)) return null;
  // With no knots named, it has to be asked: "I really could not say" is about nothing.
  if (!dots && !beside(tokens[0] ?? '', 'asks-first') && held[0]!.from > 0) return null;
  if (ofKind(bits, 'thing').some(({ fit, source }) => fit >= surelyNamed || source === 'food')) return null;
  const count = dots?.count ?? null;
  return {
    acts: [
      {
        intent: 'markers',
        slots: { asked: 'checked', ...(count === null ? { words: tokens.join(' ') } : { dots: count }) },
      },
    ],
    used: new Set(tokens.keys()),
  };
};
const surelyNamed = 0.8;

/** Markers known by what they are and how they feel, whatever is counted on them. */
const markersIn = (bits: readonly Bit[]): readonly BitOf<'marker'>[] =>
  ofKind(bits, 'marker').filter(
    ({ mention }) => (mention.touch?.fastening ?? mention.touch?.shape) !== undefined,
  );

/** A meaning and the marker that is to have it: by a verb, or by what is said of all that bears it. */
const markerMeant = (bits: readonly Bit[]): { marker: BitOf<'marker'>; verb: Bit } | null => {
  const markers = markersIn(bits);
  const said = bits.find((bit) => is(bit, 'means-so') && markers.some(({ to }) => to <= bit.from));
  const of = (verb: Bit) => {
    const marker = markers.findLast(({ to }) => to <= verb.from);
    return marker ? { marker, verb } : null;
  };
  if (said) return of(said);
  const all = bits.find((bit) => is(bit, 'all-with'));
  const so =
    all &&
    bits.find((bit) => is(bit, 'is-so') && markers.some(({ from, to }) => from >= all.to && to <= bit.from));
  if (so) return of(so);
  // "The leather tie is for Denise's food": of no food that it could be put on.
  const [first] = bits.filter((bit) => !is(bit, 'fill', 'opener', 'lasting'));
  const serves = bits.find((bit) => is(bit, 'means') && markers.some(({ to }) => to === bit.from));
  const food = serves && bits.find((bit) => bit.from >= serves.to && !is(bit, 'fill'))?.kind === 'thing';
  return serves && !food && first?.kind === 'marker' ? of(serves) : null;
};

/**
 * "From now on the leather tie means gluten free", "everything with a leather tie is Denise's", "what does the rubber
 * band mean": of a marker itself, and of no count. What can be kept of it is known where meanings are.
 */
const markerMeans = ({ bits, tokens, beside }: Request): Made | null => {
  const meant = markerMeant(bits);
  if (!meant) return null;
  const { marker, verb } = meant;
  // "What does it mean": asked of whatever stands between the question word and the verb.
  if (bits.some((bit) => is(bit, 'wh') && bit.to <= marker.from))
    return {
      acts: [{ intent: 'whats-this', slots: { marker: marker.mention } }],
      used: new Set(tokens.keys()),
    };
  // "… and the rubber patch goes on the yogurt": another marker after it is another matter.
  const other = markersIn(bits).find(({ from }) => from >= verb.to);
  const item = other && ofKind(bits, 'thing').find(({ from }) => from >= other.to);
  const more: readonly Act[] =
    other && item ? [{ intent: 'mark', slots: { marker: other.mention, item: item.mention } }] : [];
  let to = other?.from ?? tokens.length;
  while (to > verb.to && beside(tokens[to - 1]!, 'trailing')) to -= 1;
  const words = tokens.slice(verb.to, to).join(' ');
  if (words === '') return null;
  return {
    acts: [{ intent: 'define-dots', slots: { marker: marker.mention, words } }, ...more],
    used: new Set([
      ...wordsIn(classed(bits, 'all-with')),
      ...[...tokens.keys()].filter((at) => at >= marker.from),
    ]),
  };
};

/** The words of a meaning after its verb, without what trails. */
const meantAfter = ({ tokens, beside }: Request, verb: Bit): string => {
  let to = tokens.length;
  while (to > verb.to && beside(tokens[to - 1]!, 'trailing')) to -= 1;
  return tokens.slice(verb.to, to).join(' ');
};

/** "Then let's have them mean gluten free", of a count just asked about. */
const sameMeans = (request: Request): Made | null => {
  const { bits, tokens, talkedOf, beside } = request;
  if (talkedOf !== 'meaning' || some(bits, 'wh', 'remind', 'not')) return null;
  const verb = classed(bits, 'means-so').at(-1);
  if (!verb || !tokens.slice(0, verb.from).some((word) => beside(word, 'those-dots'))) return null;
  if (!bits.every((bit) => bit.from >= verb.from || bit.kind === 'pointer' || !ownWords(bit))) return null;
  const words = meantAfter(request, verb);
  return words === ''
    ? null
    : {
        acts: [{ intent: 'define-dots', slots: { asked: 'same', words } }],
        used: new Set(tokens.keys()),
        follows: true,
      };
};
const ownWords = (bit: Bit): boolean => bit.kind === 'thing' || bit.kind === 'marker' || bit.kind === 'place';

/** "And two dots?", "what about one", after what others mean was told. */
const andOthers = ({ bits, tokens, talkedOf }: Request, dots: ReturnType<typeof dotsIn>): Made | null => {
  if (talkedOf !== 'meaning') return null;
  const figure = bits.find((bit) => figureOf(bit) !== null);
  const count = dots?.count ?? figureOf(figure);
  const about = dots?.bits ?? (figure ? [figure] : []);
  if (count === null || !bits.every((bit) => about.includes(bit) || is(bit, 'fill', 'again', 'opener', 'wh')))
    return null;
  return {
    acts: [
      {
        intent: 'markers',
        slots: { asked: 'dots', dots: count, ...(dots?.counted ? { counted: dots.counted } : {}) },
      },
    ],
    used: new Set(tokens.keys()),
    follows: true,
  };
};

/** "Stop using three dots", "two dots don't mean anything any more": the count has no meaning from then on. */
const meansNoMore = (
  { bits, tokens }: Request,
  dots: NonNullable<ReturnType<typeof dotsIn>>,
): Made | null => {
  if (dots.count === null || some(bits, 'wh', 'if', 'remind')) return null;
  const drops =
    some(bits, 'do-away', 'cancel') || (some(bits, 'means', 'means-so') && some(bits, 'no-more', 'not'));
  const only = bits.every(
    (bit) =>
      dots.bits.includes(bit) ||
      is(
        bit,
        'fill',
        'opener',
        'aside',
        'do-away',
        'cancel',
        'means',
        'means-so',
        'no-more',
        'not',
        'whatever',
      ),
  );
  return drops && only
    ? {
        acts: [
          {
            intent: 'define-dots',
            slots: { asked: 'none', dots: dots.count, ...(dots.counted ? { counted: dots.counted } : {}) },
          },
        ],
        used: new Set(tokens.keys()),
      }
    : null;
};

const asksWithin = 3;

export const meaningsFrame: Frame = (request) => {
  const { bits, tokens, beside } = request;
  const ofMarker = markerMeans(request);
  if (ofMarker) return ofMarker;
  const same = sameMeans(request);
  if (same) return same;
  const dots = dotsIn(request);
  const others = andOthers(request, dots);
  if (others) return others;
  if (!dots) return null;
  const dropped = meansNoMore(request, dots);
  if (dropped) return dropped;
  // "Which things have two dots": what bears them is asked, of the food.
  const before = bits.filter(({ to }) => to <= dots.bits[0]!.from);
  const bears = dots.bits.some((bit) => bit.kind === 'marker' && bit.mention.touch?.container !== undefined);
  if (some(bits, 'wh', 'marker-list') && (some(before, 'things-word') || bears)) return null;
  const kind = dots.counted === undefined ? {} : { counted: dots.counted };
  const means = classed(bits, 'means');
  const asks = classed(bits, 'wh', 'again');
  const reminds = classed(bits, 'remind');
  // "What five knots is": of nothing but them.
  const holds = tokens.slice(0, dots.bits[0]!.from).some((word) => beside(word, 'holds'));
  const alone = !holds && bits.every((bit) => dots.bits.includes(bit) || is(bit, 'fill', 'wh'));
  if (
    asks.some((bit) => is(bit, 'wh')) &&
    (means.length > 0 || some(bits, 'again') || reminds.length > 0 || alone)
  ) {
    if (ofKind(bits, 'thing').some(({ fit }) => fit > 0)) return null;
    // "Which ridges mean hot" asks the other way round: that is a question like others.
    const meant = means.at(-1);
    if (dots.count === null && meant && bits.some((bit) => bit.from >= meant.to && !is(bit, 'fill', 'again')))
      return null;
    const slots = { asked: 'dots', ...(dots.count === null ? {} : { dots: dots.count }), ...kind };
    return {
      acts: [{ intent: 'markers', slots }],
      used: wordsIn([...asks, ...means, ...dots.bits, ...reminds]),
    };
  }
  // Several told together, or one told without its count, are parted by the dialogue, each asked about.
  const last = means[0];
  if (
    last &&
    bits.some(
      (bit) => bit.from >= last.to && (is(bit, 'dots') || bit.kind === 'marker' || bit.kind === 'number'),
    )
  )
    return null;
  if (!last || asks.length > 0 || dots.count === null || dots.bits[0]!.from > last.from) return null;
  const words = meantAfter(request, last);
  if (words === '') return null;
  // "Five dots, does that mean anything": what has any meaning is asked, and none is given.
  const opens = bits.find((bit) => !is(bit, 'opener', 'aside'));
  // Right before the verb: "two dots is not for her any more, make it mean …" asks nothing.
  const turned = tokens
    .slice(Math.max(0, last.from - asksWithin), last.from)
    .some((word) => beside(word, 'means-asks'));
  if (turned || beside(tokens[opens?.from ?? 0] ?? '', 'means-asks') || beside(words, 'any-meaning'))
    return {
      acts: [{ intent: 'markers', slots: { asked: 'dots', dots: dots.count, ...kind } }],
      used: new Set(tokens.keys()),
    };
  return {
    acts: [{ intent: 'define-dots', slots: { dots: dots.count, words, ...kind } }],
    used: new Set(tokens.map((_, at) => at).filter((at) => at >= dots.bits[0]!.from)),
  };
};
