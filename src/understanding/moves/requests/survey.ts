/** A stock-take: what is there told from the start, or checked against the record. */
import { classed, ofKind, some, wordsIn, type Frame } from './bits.js';
import { asks } from './last.js';

export const surveyFrame: Frame = ({ bits, tokens, beside }) => {
  const told = classed(bits, 'survey');
  // "Check the upright against your record, basket by basket": of a place; of markers it is another check.
  const ofPlace = ofKind(bits, 'place').length > 0 && ofKind(bits, 'marker').length === 0;
  const take = classed(bits, 'stock-take', ...(ofPlace ? ['against-record'] : []));
  if (told.length + take.length === 0 || asks(bits) || some(bits, 'not', 'if', 'remind', 'timer'))
    return null;
  if (beside(tokens[0] ?? '', 'asks-first')) return null;
  if (ofKind(bits, 'thing').some(({ fit, source }) => fit >= surelyNamed && source === 'hers')) return null;
  // "I'm out in the garage at the freezer, let's check the left bin": what is gone through is named last.
  const place = ofKind(bits, 'place').at(-1);
  const [first] = [...told, ...take].sort((a, b) => a.from - b.from);
  return {
    acts: [
      {
        intent: 'start-count',
        slots: { ...(told.length > 0 ? { asked: 'survey' } : {}), ...(place ? { place: place.place } : {}) },
      },
    ],
    // "I want to", "let me", "shall we": whatever leads to it.
    used: wordsIn([
      ...told,
      ...take,
      ...(place ? [place] : []),
      ...tokens.flatMap((word, from) =>
        from < (first?.from ?? 0) || beside(word, 'again') ? [{ from, to: from + 1 }] : [],
      ),
    ]),
  };
};
const surelyNamed = 0.9;
