/** Settings in any wording: what is set is told by a word or two, its value by a figure, an hour or a word. */
import type { Act, Slots } from '../../intents.js';
import {
  classed,
  figureOf,
  is,
  ofKind,
  some,
  wordsIn,
  type Bit,
  type Frame,
  type Made,
  type Request,
} from './bits.js';

const made = (acts: readonly Act[], used: readonly Bit[]): Made => ({ acts, used: wordsIn(used) });
const household = (slots: Slots): Act => ({ intent: 'set-household', slots });

/** "Not so short", "too long", "do not": what turns a word round. */
const turned = (bits: readonly Bit[], bit: Bit): boolean => {
  const at = bits.indexOf(bit);
  return bits.slice(Math.max(0, at - 5), at).some((before) => is(before, 'not', 'less-of'));
};

/** Fewer watts than this, or more, is no microwave oven. */
const fewestWatts = 300;
const mostWatts = 3000;

const watts: Frame = ({ bits }) => {
  const words = classed(bits, 'watts', 'microwave');
  const figures = [
    ...ofKind(bits, 'number').map((bit) => ({ bit, value: bit.value })),
    ...ofKind(bits, 'amount').map((bit) => ({ bit, value: bit.amount.value })),
  ].filter(({ value }) => value >= fewestWatts && value <= mostWatts);
  const figure = figures.at(-1);
  if (words.length === 0 || !figure || some(bits, 'wh', 'if')) return null;
  if (!some(bits, 'watts') && ofKind(bits, 'thing').length > 0) return null;
  return made(
    [household({ setting: 'watts', number: figure.value })],
    [...words, ...figures.map(({ bit }) => bit), ...classed(bits, 'repair')],
  );
};

const hourAlone = (value: number | null): string | null =>
  value !== null && Number.isInteger(value) && value >= 1 && value <= 12
    ? `${String(value).padStart(2, '0')}:00`
    : null;

/** An hour of the clock, with its half of the day where it was said. */
const hoursIn = ({ bits, tokens }: Request): readonly { time: string; bits: readonly Bit[] }[] =>
  bits.flatMap((bit, at) => {
    const hour = bit.kind === 'time' ? bit.time : hourAlone(figureOf(bit));
    if (hour === null) return [];
    const next = bits[at + 1];
    const said = tokens.slice(bit.from, next ? next.to : bit.to);
    const late =
      is(next, 'evening', 'night', 'afternoon') || said.includes('night') || said.includes('evening');
    const early = is(next, 'morning') || said.includes('morning');
    const [hours = 0, minutes = '00'] = [Number(hour.split(':')[0]), hour.split(':')[1]];
    const right = late && hours < 12 && hours > 3 ? hours + 12 : early && hours >= 12 ? hours - 12 : hours;
    const time = `${String(right).padStart(2, '0')}:${minutes}`;
    return [{ time, bits: next && (late || early) && next.kind === 'word' ? [bit, next] : [bit] }];
  });

const quiet: Frame = (request) => {
  const { bits } = request;
  const words = classed(bits, 'quiet');
  if (words.length === 0 || some(bits, 'wh', 'remind', 'timer') || ofKind(bits, 'thing').length > 0)
    return null;
  const [from, to, ...more] = hoursIn(request);
  if (!from || !to || more.length > 0) return null;
  return made(
    [household({ setting: 'quiet', time: from.time, words: to.time })],
    [...words, ...from.bits, ...to.bits, ...classed(bits, 'not', 'between-hours', 'keep')],
  );
};

const summary: Frame = (request) => {
  const { bits } = request;
  const words = classed(bits, 'summary');
  const [at, ...more] = hoursIn(request);
  // "At seven instead of six".
  const instead = more.length === 1 && some(bits, 'instead-of');
  if (words.length === 0 || !at || (more.length > 0 && !instead)) return null;
  if (some(bits, 'wh', 'remind', 'timer', 'if')) return null;
  if (ofKind(bits, 'thing').length > 0) return null;
  // The summary is the evening's, unless the morning was named.
  const early = at.bits.length > 1 || !/^0[1-9]|^1[01]/u.test(at.time);
  const time = early ? at.time : `${Number(at.time.slice(0, 2)) + 12}${at.time.slice(2)}`;
  return made(
    [household({ setting: 'summary', time })],
    [...words, ...at.bits, ...more.flatMap((other) => other.bits), ...classed(bits, 'change', 'instead-of')],
  );
};

const lengths = ['usual', 'short', 'long'] as const;

const speechLength: Frame = ({ bits }) => {
  if (ofKind(bits, 'thing').length > 0 || some(bits, 'timer', 'remind', 'wh')) return null;
  const lasting = classed(bits, 'lasting');
  const words = classed(bits, ...lengths).filter((bit) => !is(bit, 'speed', 'volume'));
  const [bit] = words;
  if (lasting.length === 0 || !bit || some(bits, 'speed', 'volume', 'slower', 'faster')) return null;
  // "You don't have to be so short, tell me the whole thing": what is wanted comes last.
  const wanted = words.at(-1)!;
  const name = lengths.find((one) => is(wanted, one))!;
  const other = name === 'short' ? 'full' : name === 'long' ? 'short' : 'usual';
  const plain = name === 'short' ? 'short' : name === 'long' ? 'full' : 'usual';
  const length = turned(bits, wanted) && words.length === 1 ? other : plain;
  return made(
    [household({ setting: 'length', words: length })],
    [...lasting, ...words, ...classed(bits, 'not', 'keep')],
  );
};

const speechRate: Frame = ({ bits, pauses, tokens }) => {
  if (ofKind(bits, 'thing').length > 0) return null;
  const usual = classed(bits, 'usual');
  const of = classed(bits, 'speed', 'volume');
  const [what] = of;
  if (usual.length > 0 && what) {
    const setting = is(what, 'speed') ? 'rate' : 'volume';
    return made(
      [household({ setting, words: 'usual' })],
      [...usual, ...of, ...classed(bits, 'back', 'change', 'keep')],
    );
  }
  const again = classed(bits, 'again');
  const ways = ['slower', 'faster', 'louder', 'quieter'] as const;
  const way = ways.find((name) => some(bits, name));
  // "Speak up, I've got the extractor on": why stands after a pause.
  const opens = bits.find((bit) => !is(bit, 'fill', 'opener'));
  if (way && opens && is(opens, way) && pauses.has(opens.to) && !some(bits, 'timer', 'remind', 'not'))
    return { acts: [{ intent: way, slots: {} }], used: new Set(tokens.keys()) };
  // "A bit slower, what was all that": said again, slower.
  if (!way || again.length === 0 || classed(bits, way).some((bit) => is(bit, 'again'))) return null;
  return made(
    [
      { intent: way, slots: {} },
      { intent: 'repeat', slots: {} },
    ],
    [...classed(bits, way), ...again],
  );
};

export const settingFrames: readonly Frame[] = [watts, quiet, summary, speechRate, speechLength];
