/**
 * Times of day: "half past six", "six thirty pm", "noon", "18:00".
 *
 * A time without morning or evening said ("at six") is two times; the lean chooses: the next one
 * from now (future), the one just gone (past), or the evening one (evening).
 */
import { perLexicon, type Lexicon } from '../words/lexicon.js';
import { phraseSet, phraseTable } from '../words/phrases.js';
import { cardinalAt } from './cardinals.js';

export type TimeLean = 'past' | 'future' | 'evening';

interface Said {
  readonly hour: number;
  readonly minute: number;
  readonly end: number;
  /** A bare number is a weak sign of a time. */
  readonly bare?: boolean;
  /** Twenty-four hour clock: not two times. */
  readonly whole?: boolean;
}
interface TimeReading {
  readonly time: string;
  readonly length: number;
  readonly weight: number;
}

const tables = perLexicon(({ times }) => ({
  named: phraseTable(Object.entries(times.named)),
  past: new Set(times.past),
  to: new Set(times.to),
  half: new Set(times.half),
  quarter: new Set(times.quarter),
  oclock: new Set(times.oclock),
  more: new Set(times.more),
  less: new Set(times.less),
  at: phraseSet(times.at),
  am: phraseSet(times.am),
  pm: phraseSet(times.pm),
}));

const hourAt = (
  tokens: readonly string[],
  from: number,
  lexicon: Lexicon,
  most = 12,
): { hour: number; end: number } | null => {
  const read = cardinalAt(tokens, from, lexicon);
  if (!read || !Number.isInteger(read.value) || read.value < 1 || read.value > most) return null;
  return { hour: read.value, end: from + read.length };
};

const writtenAt = (tokens: readonly string[], from: number): Said | null => {
  const parts = /^(\d{1,2})[:.](\d{2})$/.exec(tokens[from] ?? '');
  if (!parts) return null;
  const [hour, minute] = [Number(parts[1]), Number(parts[2])];
  if (hour > 23 || minute > 59) return null;
  return { hour, minute, end: from + 1, whole: hour > 12 || parts[1]!.startsWith('0') };
};

/** "half past six", "quarter to seven", "ten past six", "half six". */
const relativeAt = (tokens: readonly string[], from: number, lexicon: Lexicon): Said | null => {
  const { past, to, half, quarter } = tables(lexicon);
  const start = lexicon.numbers.one.includes(tokens[from] ?? '') ? from + 1 : from;
  const word = tokens[start] ?? '';
  const number = cardinalAt(tokens, start, lexicon);
  const minutes = half.has(word)
    ? 30
    : quarter.has(word)
      ? 15
      : number && number.value > 0 && number.value < 30 && start === from
        ? number.value
        : null;
  if (minutes === null || !Number.isInteger(minutes)) return null;
  let at = start + (half.has(word) || quarter.has(word) ? 1 : number!.length);
  if (!half.has(word) && lexicon.units.durations['minute']?.words.includes(tokens[at] ?? '')) at += 1;
  const direction = tokens[at] ?? '';
  if (past.has(direction)) {
    const hour = hourAt(tokens, at + 1, lexicon);
    return hour && { hour: hour.hour, minute: minutes, end: hour.end };
  }
  if (to.has(direction) && minutes < 30) {
    const hour = hourAt(tokens, at + 1, lexicon);
    return hour && { hour: hour.hour === 1 ? 12 : hour.hour - 1, minute: 60 - minutes, end: hour.end };
  }
  // British "half six" is half past.
  const hour = half.has(word) && start === from ? hourAt(tokens, at, lexicon) : null;
  return hour && { hour: hour.hour, minute: 30, end: hour.end };
};

/** "Y media", "y diez", "menos cuarto", after the hour: so many minutes more or less. */
const addedAt = (
  tokens: readonly string[],
  at: number,
  lexicon: Lexicon,
): { minutes: number; end: number } | null => {
  const { more, less, half, quarter } = tables(lexicon);
  const word = tokens[at] ?? '';
  const sign = more.has(word) ? 1 : less.has(word) ? -1 : 0;
  if (sign === 0) return null;
  const said = tokens[at + 1] ?? '';
  if (half.has(said) && sign > 0) return { minutes: 30, end: at + 2 };
  if (quarter.has(said)) return { minutes: 15 * sign, end: at + 2 };
  const number = cardinalAt(tokens, at + 1, lexicon);
  if (!number || number.value < 1 || number.value > 30 || !Number.isInteger(number.value)) return null;
  return { minutes: number.value * sign, end: at + 1 + number.length };
};

/** "six", "six thirty", "six oh five", "six o'clock", "eighteen thirty", "eighteen hundred". */
const plainAt = (tokens: readonly string[], from: number, lexicon: Lexicon): Said[] => {
  const { oclock } = tables(lexicon);
  const said: Said[] = [];
  const word = lexicon.numbers.words[tokens[from] ?? ''];
  const hour =
    word !== undefined && word >= 1 && word <= 23
      ? { hour: word, end: from + 1 }
      : hourAt(tokens, from, lexicon, 23);
  if (!hour) return said;
  const whole = hour.hour > 12;
  const next = tokens[hour.end] ?? '';
  if (whole && lexicon.numbers.scales[next] === 100)
    said.push({ hour: hour.hour, minute: 0, end: hour.end + 1, whole });
  if (lexicon.numbers.nought.includes(next)) {
    const digit = lexicon.numbers.words[tokens[hour.end + 1] ?? ''];
    if (digit !== undefined && digit < 10)
      said.push({ hour: hour.hour, minute: digit, end: hour.end + 2, whole });
  }
  const minute = cardinalAt(tokens, hour.end, lexicon);
  if (minute && minute.value >= 10 && minute.value < 60 && Number.isInteger(minute.value)) {
    said.push({ hour: hour.hour, minute: minute.value, end: hour.end + minute.length, whole });
  }
  const added = whole ? null : addedAt(tokens, hour.end, lexicon);
  if (added)
    said.push({
      hour: added.minutes < 0 ? (hour.hour === 1 ? 12 : hour.hour - 1) : hour.hour,
      minute: added.minutes < 0 ? 60 + added.minutes : added.minutes,
      end: added.end,
    });
  if (!whole && oclock.has(next)) said.push({ hour: hour.hour, minute: 0, end: hour.end + 1 });
  if (!whole) said.push({ hour: hour.hour, minute: 0, end: hour.end, bare: true });
  return said;
};

const pad = (value: number): string => String(value).padStart(2, '0');
const clock = (hour: number, minute: number): string => `${pad(hour)}:${pad(minute)}`;

/** The half of the day that a lean means. `now` is household wall time, `HH:MM`. */
const leaning = (said: Said, lean: TimeLean, now: string): string => {
  const early = clock(said.hour % 12, said.minute);
  const late = clock((said.hour % 12) + 12, said.minute);
  if (lean === 'evening') return late;
  if (lean === 'past') return late <= now ? late : early <= now ? early : late;
  return early > now ? early : late > now ? late : early;
};

/** Every time at `from`, by word count. `now` is household wall time, `HH:MM`. */
export const timesAt = (
  tokens: readonly string[],
  from: number,
  lexicon: Lexicon,
  lean: TimeLean,
  now: string,
): TimeReading[] => {
  const { named, am, pm, at } = tables(lexicon);
  const readings: TimeReading[] = [];
  const led = at.longestAt(tokens, from);
  // "A las siete": what leads to the hour is part of saying it, and makes a bare number one.
  if (led)
    for (const { time, length, weight } of timesAt(tokens, from + led.length, lexicon, lean, now))
      readings.push({ time, length: length + led.length, weight: Math.max(weight, 0.9) });
  for (const hit of named.allAt(tokens, from))
    readings.push({ time: hit.value, length: hit.length, weight: 1 });
  const written = writtenAt(tokens, from);
  const relative = relativeAt(tokens, from, lexicon);
  for (const said of [written, relative, ...plainAt(tokens, from, lexicon)]) {
    if (!said) continue;
    const weight = said.bare ? 0.3 : 1;
    if (said.whole || said.hour === 0) {
      readings.push({ time: clock(said.hour, said.minute), length: said.end - from, weight });
      continue;
    }
    const morning = am.longestAt(tokens, said.end);
    const evening = morning ? null : pm.longestAt(tokens, said.end);
    if (morning ?? evening) {
      const hour = (said.hour % 12) + (evening ? 12 : 0);
      const length = said.end - from + (morning ?? evening)!.length;
      readings.push({ time: clock(hour, said.minute), length, weight: 1 });
    }
    readings.push({ time: leaning(said, lean, now), length: said.end - from, weight });
  }
  return readings;
};
