/** What dots mean here: asked, told, or told anew. */
import type { Touch } from '../../../terms/touch.js';
import type { Bit, Frame, Request } from './bits.js';
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

export const meaningsFrame: Frame = (request) => {
  const { bits, tokens, beside } = request;
  const dots = dotsIn(request);
  if (!dots) return null;
  const kind = dots.counted === undefined ? {} : { counted: dots.counted };
  const means = classed(bits, 'means');
  const asks = classed(bits, 'wh', 'again');
  const reminds = classed(bits, 'remind');
  // "What five knots is": of nothing but them.
  const alone = bits.every((bit) => dots.bits.includes(bit) || is(bit, 'fill', 'wh'));
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
  let to = tokens.length;
  while (to > last.to && beside(tokens[to - 1]!, 'trailing')) to -= 1;
  const words = tokens.slice(last.to, to).join(' ');
  if (words === '') return null;
  return {
    acts: [{ intent: 'define-dots', slots: { dots: dots.count, words, ...kind } }],
    used: new Set(tokens.map((_, at) => at).filter((at) => at >= dots.bits[0]!.from)),
  };
};
