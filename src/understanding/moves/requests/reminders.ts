/** Reminders: what about, and when, said in any order; one that is set, put off or dropped. */
import type { Act, SaidDate, Slots } from '../../intents.js';
import { pointed } from '../../meaning-parts.js';
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
import { personIn } from './list/lines.js';

const partsOfDay = ['morning', 'afternoon', 'evening', 'night'] as const;
type PartOfDay = (typeof partsOfDay)[number];
/** When a part of the day is named and no hour: our own choice. */
const usualHour: Record<PartOfDay, string> = {
  morning: '09:00',
  afternoon: '14:00',
  evening: '18:00',
  night: '20:00',
};

const inPart = (time: string, part: PartOfDay | undefined): string => {
  const [hours = 0, minutes = '00'] = [Number(time.split(':')[0]), time.split(':')[1]];
  const late = part !== undefined && part !== 'morning';
  const right = late && hours < 12 ? hours + 12 : part === 'morning' && hours >= 12 ? hours - 12 : hours;
  return `${String(right).padStart(2, '0')}:${minutes}`;
};

/** "Tomorrow morning" names a part of the day, too. */
const partIn = ({ bits, tokens, says }: Request): { part: PartOfDay; bit: Bit } | null => {
  for (const bit of bits) {
    const part = partsOfDay.find((name) => is(bit, name));
    if (part) return { part, bit };
    const words = bit.kind === 'day' || bit.kind === 'time' ? tokens.slice(bit.from, bit.to) : [];
    const within = partsOfDay.find((name) => words.some((word) => says(word, name)));
    if (within) return { part: within, bit };
  }
  return null;
};

interface When {
  readonly slots: Pick<Slots, 'when' | 'time' | 'duration'>;
  readonly bits: readonly Bit[];
}

const isBefore = (bit: Bit | undefined, { tokens, beside }: Request, list: string): boolean =>
  bit !== undefined && bit.to - bit.from === 1 && beside(tokens[bit.from]!, list);

const whenIn = (request: Request): When => {
  const { bits } = request;
  const [day] = ofKind(bits, 'day');
  const times = ofKind(bits, 'time');
  // "At nine": an hour by its preposition alone; after a slip, the last of them.
  const hours = bits.flatMap((bit, at) => {
    const value = figureOf(bit);
    const hourly = value !== null && Number.isInteger(value) && value >= 1 && value <= 24;
    const before = bits[at - 1];
    const led = isBefore(before, request, 'hour-leads') || is(before, 'to', 'repair');
    return hourly && (led || is(bits[at + 1], ...partsOfDay) || before?.kind === 'day')
      ? [{ ...bit, value }]
      : [];
  });
  const clock = times.at(-1);
  const hour = clock ? undefined : hours.at(-1);
  const part = partIn(request);
  const [span] = ofKind(bits, 'span');
  const at = clock?.time ?? (hour ? `${String(hour.value % 24).padStart(2, '0')}:00` : null);
  if (span && !at && !day) return { slots: { duration: span.seconds }, bits: [span] };
  const time = at ? inPart(at, part?.part) : part ? usualHour[part.part] : undefined;
  const when: SaidDate | undefined = day?.future;
  return {
    slots: { ...(when ? { when } : {}), ...(time ? { time } : {}) },
    bits: [...(day ? [day] : []), ...times, ...hours, ...(part ? [part.bit] : [])],
  };
};

/** What it is about: all that is not the asking and not the hour, as it was said. */
const textOf = (request: Request, taken: readonly Bit[]): { words: string; at: readonly number[] } | null => {
  const { bits, tokens, beside } = request;
  /** Words that only lead to the hour, and small ones around what it is about. */
  const leads = (at: number): boolean => beside(tokens[at]!, 'when-leads');
  const around = (at: number): boolean => beside(tokens[at]!, 'around-words');
  const gone = new Set(wordsIn(taken));
  for (const bit of taken) {
    let at = bits.findIndex(({ from }) => from === bit.from) - 1;
    while (at >= 0 && leads(bits[at]!.from) && bits[at]!.to - bits[at]!.from === 1) {
      if (bit.kind !== 'word' || is(bit, ...partsOfDay)) gone.add(bits[at]!.from);
      at -= 1;
    }
  }
  let left = tokens.map((_, at) => at).filter((at) => !gone.has(at));
  for (;;) {
    const lead = [...bits].find((bit) => bit.from === left[0] && is(bit, 'what-to'));
    if (lead) left = left.filter((at) => at >= lead.to);
    else if (left.length > 0 && around(left[0]!)) left = left.slice(1);
    else break;
  }
  while (left.length > 0 && around(left.at(-1)!)) left = left.slice(0, -1);
  return left.length > 0 ? { words: left.map((at) => tokens[at]!).join(' '), at: left } : null;
};

/** One that is set already: by its name, or "the reminder". */
const known = ({ bits, clocks, expecting }: Request): { slots: Slots; bits: readonly Bit[] } | null => {
  const named = ofKind(bits, 'clock').filter(({ clock }) => clock.kind === 'reminder');
  const word = classed(bits, 'reminder-word');
  if (!clocks.some(({ kind }) => kind === 'reminder')) return null;
  if (named.length > 0) return { slots: { words: named[0]!.clock.label }, bits: [...named, ...word] };
  // "Actually call it ten", of the one set just now.
  const justSet = expecting === 'day-or-hour' && some(bits, 'repair', 'change') && !some(bits, 'wh', 'timer');
  return word.length > 0 || justSet ? { slots: { item: pointed('it') }, bits: word } : null;
};

/** Part of the request, by itself. */
const partOf = (request: Request, from: number, to: number): Request => ({
  ...request,
  tokens: request.tokens.slice(from, to),
  bits: request.bits.flatMap((bit) =>
    bit.from >= from && bit.to <= to ? [{ ...bit, from: bit.from - from, to: bit.to - from }] : [],
  ),
  pauses: new Set([...request.pauses].flatMap((at) => (at > from && at < to ? [at - from] : []))),
});

/** "In four minutes to turn the cutlets, and again in eight to take them out": one each. */
const inStages = (request: Request): Made | null => {
  const { bits, tokens } = request;
  const [again, ...more] = classed(bits, 'and-again');
  const heads = classed(bits, 'remind', 'timer');
  const [first] = heads;
  if (!again || more.length > 0 || !first) return null;
  const next = bits[bits.indexOf(again) + 1];
  const starts = [...tokens.keys()].filter((at) => at >= first.to && at < again.from);
  const from = starts.find((at) => request.lengthAt(at) !== null);
  const one = from === undefined ? null : request.lengthAt(from);
  const value = figureOf(next);
  // "And again in eight": minutes as well, or what the first is told in.
  const unit = one && one.seconds % 3600 === 0 ? 3600 : 60;
  const other =
    request.lengthAt(again.to) ?? (next && value !== null ? { seconds: value * unit, to: next.to } : null);
  if (!one || from === undefined || !other) return null;
  const lead =
    tokens[from - 1] !== undefined && request.beside(tokens[from - 1]!, 'when-leads') ? from - 1 : from;
  const said = textOf(partOf(request, one.to, again.from), []) ?? textOf(partOf(request, first.to, lead), []);
  const then = textOf(partOf(request, other.to, tokens.length), []);
  if (!said || !then) return null;
  return {
    acts: [
      { intent: 'set-reminder', slots: { words: said.words, duration: one.seconds } },
      { intent: 'set-reminder', slots: { words: then.words, duration: other.seconds } },
    ],
    used: new Set(tokens.keys()),
    whole: true,
    ours: true,
  };
};

/** "The day before the goat cheese is up, at noon": by the date on it. */
const beforeDate = (request: Request): Made | null => {
  const { bits } = request;
  const [before] = classed(bits, 'day-before');
  const heads = classed(bits, 'remind');
  const [thing, ...others] = before ? ofKind(bits, 'thing').filter(({ from }) => from >= before.to) : [];
  if (!before || heads.length === 0 || thing?.source !== 'hers' || others.length > 0) return null;
  const when = whenIn({ ...request, bits: bits.filter(({ kind }) => kind !== 'day') });
  return {
    acts: [
      {
        intent: 'set-reminder',
        slots: {
          item: thing.mention,
          asked: 'day-before',
          ...(when.slots.time ? { time: when.slots.time } : {}),
        },
      },
    ],
    used: new Set(request.tokens.keys()),
  };
};

/** What is said after a pause is why: "he'll have forgotten". */
const withoutWhy = (request: Request): Request => {
  const { pauses, tokens, beside, bits } = request;
  const begun = classed(bits, 'remind')[0]?.to ?? 0;
  const at = [...pauses]
    .sort((a, b) => a - b)
    .find((one) => one > begun && beside(tokens[one] ?? '', 'reason-leads'));
  return at === undefined || bits.some(({ from, to }) => from < at && to > at)
    ? request
    : partOf(request, 0, at);
};

export const remindersFrame: Frame = (whole) => {
  const several = inStages(whole) ?? beforeDate(whole);
  if (several) return several;
  const request = withoutWhy(whole);
  const made = reminderOf(request);
  return made && request !== whole
    ? { ...made, used: new Set([...made.used, ...[...whole.tokens.keys()].slice(request.tokens.length)]) }
    : made;
};

const reminderOf: Frame = (request) => {
  const { bits } = request;
  const when = whenIn(request);
  const one = known(request);
  const told = Object.keys(when.slots).length > 0;
  if (one && !classed(bits, 'remind').some((bit) => !is(bit, 'reminder-word'))) {
    const drops = classed(bits, 'cancel');
    if (drops.length > 0 && !told)
      return {
        acts: [{ intent: 'cancel-reminder', slots: one.slots }],
        used: wordsIn([...one.bits, ...drops]),
      };
    const moves = classed(bits, 'change', 'repair');
    if (moves.length > 0 && told) {
      const acts: Act[] = [{ intent: 'change-reminder', slots: { ...one.slots, ...when.slots } }];
      return { acts, used: wordsIn([...one.bits, ...when.bits, ...moves, ...classed(bits, 'to', 'back')]) };
    }
    return null;
  }
  const heads = classed(bits, 'remind');
  const [head] = heads;
  if (!head) return null;
  const next = bits[bits.indexOf(head) + 1];
  // "Remind me what it was" asks; "remind Sam" is for Sam, at an hour a reminder and else a message.
  if (is(next, 'wh', 'not', 'if', 'asking-word')) return null;
  const person = personIn(next);
  if (next?.kind === 'person' && (!person || !told)) return null;
  // "Read my reminder list" and "put it on the list" are of what is written down.
  const bare = heads.every((bit) => is(bit, 'reminder-word'));
  if (some(bits, 'listed-there') || (bare && !is(next, 'what-to', 'fill') && next?.kind !== 'day'))
    return null;
  if (bare && some(bits, 'topic-list')) return null;
  if (some(bits, 'wh') && !some(bits, 'what-to')) return null;
  const whom = person && next ? [next] : [];
  const text = textOf(request, [...heads, ...whom, ...when.bits]);
  if (!text) return null;
  // "Remind me about it later" is of what was spoken of.
  if (text.at.length === 1 && ['it', 'that', 'this', 'later'].includes(text.words)) return null;
  return {
    acts: [
      { intent: 'set-reminder', slots: { words: text.words, ...when.slots, ...(person ? { person } : {}) } },
    ],
    used: new Set([...wordsIn([...heads, ...whom, ...when.bits]), ...text.at]),
  };
};
