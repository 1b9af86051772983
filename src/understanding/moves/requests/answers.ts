/** What was asked for, wherever it stands among other words: "whatever you think, no, tell you what, the fridge". */
import { emptyMention, type Expectation, type Slots } from '../../intents.js';
import { classed, figureOf, is, ofKind, some, wordsIn, type Bit, type Frame, type Made } from './bits.js';

const answerIn = (bit: Bit, expecting: Expectation): Slots | null => {
  const figure = figureOf(bit);
  if (expecting === 'place' && bit.kind === 'place') return { place: bit.place };
  if (expecting === 'amount' && bit.kind === 'amount') return { amount: bit.amount };
  if (expecting === 'amount' && bit.kind === 'share') return { share: bit.share };
  if (expecting === 'amount' && figure !== null) return { amount: { value: figure, unit: 'piece' } };
  if (expecting === 'date' && bit.kind === 'day') return { when: bit.past };
  if (expecting === 'marker' && bit.kind === 'marker') return { marker: bit.mention };
  if (expecting === 'time' && bit.kind === 'time') return { time: bit.time };
  if (expecting === 'time' && bit.kind === 'span') return { duration: bit.seconds };
  return null;
};

/** Which of several, by where it is, and how many: "make it two of the ones in the left bin". */
const chosenIn = (bits: readonly Bit[]): Made | null => {
  const places = ofKind(bits, 'place');
  const [place, ...more] = places;
  const amounts = bits.filter((bit) => (figureOf(bit) ?? 1) !== 1);
  const [amount] = amounts;
  if (!place || more.length > 0 || amounts.length > 1 || some(bits, 'not', 'set')) return null;
  const count = figureOf(amount);
  return {
    acts: [
      {
        intent: 'choose',
        slots: {
          item: { ...emptyMention, at: place.place },
          ...(count === null ? {} : { amount: { value: count, unit: 'piece' } }),
        },
      },
    ],
    used: wordsIn([...places, ...amounts, ...ofKind(bits, 'thing'), ...classed(bits, 'repair', 'back')]),
  };
};

/** Two places said one after the other are one inside the other: heard together by the rule of places. */
export const answersFrame: Frame = ({ bits, expecting, oneInside }) => {
  if (some(bits, 'wh', 'if', 'timer', 'remind')) return null;
  if (expecting === 'choice') return chosenIn(bits);
  const found = bits.flatMap((bit) => {
    const slots = answerIn(bit, expecting);
    return slots ? [{ slots, bit }] : [];
  });
  // "Two this morning till half past seven": since when, and until when.
  const [start, end, ...others] = found;
  const between = start && end ? bits.slice(bits.indexOf(start.bit) + 1, bits.indexOf(end.bit)) : [];
  if (
    expecting === 'time' &&
    start?.slots.time &&
    end?.slots.time &&
    others.length === 0 &&
    some(between, 'till')
  )
    return {
      acts: [{ intent: 'answer', slots: { time: start.slots.time, until: end.slots.time } }],
      used: wordsIn([
        start.bit,
        end.bit,
        ...classed(bits, 'till', 'morning', 'night', 'evening', 'afternoon'),
      ]),
    };
  const last = found.at(-1);
  const before = found.at(-2);
  const mended = found.length > 1 && some(bits, 'repair');
  if (!last) return null;
  const beside = before?.slots.place && before.bit.to === last.bit.from ? before.slots.place.words : null;
  const joined = beside ? oneInside(beside, last.slots.place?.words ?? '') : null;
  if (found.length > 1 && !mended && !joined) return null;
  // Something else named, or a deed of its own, makes it more than an answer.
  const more = bits.some((bit) => bit.kind === 'thing' || bit.kind === 'person' || is(bit, 'not', 'cancel'));
  if (more) return null;
  return {
    acts: [{ intent: 'answer', slots: joined ? { place: joined } : last.slots }],
    used: wordsIn([...found.map(({ bit }) => bit), ...classed(bits, 'repair')]),
  };
};
