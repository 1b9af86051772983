/** How an answer stands to what is published: right, stricter, wrong, not answered, or milder: dangerous. */
import type { AnswerRead, Figure, Said, Unit } from './answer.js';

export type Want =
  /** What the answer must say, in whatever words it has for it, and what gives a leave that is not to be given. */
  | { readonly matches: RegExp; readonly never: RegExp | null }
  /** How long it keeps; `quality`: taste only, so that longer is wrong and not dangerous. */
  | { readonly span: Figure; readonly quality?: boolean }
  /** A temperature, minutes, hours or an amount that must be among the figures said. */
  | { readonly figure: Figure; readonly safer?: 'higher' | 'lower'; readonly said?: readonly Said[] }
  /** Any of these verdicts, and none of those that let more happen; with none given, what must be said is all. */
  | { readonly said: readonly Said[]; readonly figure?: undefined; readonly mention?: RegExp };

export type Verdict = 'right' | 'stricter' | 'wrong' | 'silent' | 'dangerous';

const DAYS: Readonly<Partial<Record<Unit, number>>> = {
  minutes: 1 / 1440,
  hours: 1 / 24,
  days: 1,
  weeks: 7,
  months: 30,
  years: 360,
};
const sameKind = (one: Unit, other: Unit): boolean =>
  one === other || (DAYS[one] !== undefined && DAYS[other] !== undefined);
const inDays = (value: number, unit: Unit): number => value * (DAYS[unit] ?? 1);
/** "Twelve months" is a year, "two weeks" fourteen days; a degree is a degree. */
const near = (one: number, other: number, unit: Unit): boolean =>
  DAYS[unit] === undefined ? one === other : Math.abs(one - other) <= Math.max(one, other) * 0.03;
const equal = (one: Figure, other: Figure): boolean =>
  sameKind(one.unit, other.unit) &&
  near(inDays(one.low, one.unit), inDays(other.low, other.unit), one.unit) &&
  near(inDays(one.high, one.unit), inDays(other.high, other.unit), one.unit);

/** Verdicts from the mildest. What lets more happen than the published one is dangerous. */
const MILD: ReadonlySet<Said> = new Set(['go', 'quality', 'cool-now', 'last-day']);
const STRICT: ReadonlySet<Said> = new Set(['stop', 'not-yet', 'rather-not', 'unknown', 'clinician']);
const some = (set: ReadonlySet<Said>, of: readonly Said[] | ReadonlySet<Said>): boolean =>
  [...of].some((one) => set.has(one));

const judgeSpan = (want: Figure, quality: boolean, { figures, said, text }: AnswerRead): Verdict => {
  const times = figures.filter(({ unit }) => sameKind(unit, want.unit));
  if (times.some((one) => equal(one, want))) return 'right';
  const longest = Math.max(0, ...times.map(({ high, unit }) => inDays(high, unit)));
  if (longest > inDays(want.high, want.unit) * 1.03) return quality ? 'wrong' : 'dangerous';
  if (times.length > 0) return 'stricter';
  if (said.has('stop')) return 'wrong';
  if (said.has('go') && !said.has('unknown'))
    return !quality && /room temperature/u.test(text) ? 'dangerous' : 'wrong';
  return 'silent';
};

const judgeFigure = (want: Extract<Want, { figure: Figure }>, read: AnswerRead): Verdict => {
  const { figure, safer, said } = want;
  const alike = read.figures.filter(({ unit }) => sameKind(unit, figure.unit));
  const met = alike.some((one) => equal(one, figure));
  if (said && said.every((one) => STRICT.has(one)) && some(MILD, read.said) && !some(STRICT, read.said))
    return 'dangerous';
  if (met && (!said || some(read.said, said))) return 'right';
  if (!met && said && some(read.said, said)) return 'right';
  if (alike.length === 0) return read.said.has('go') && said ? 'wrong' : 'silent';
  const below = alike.every(({ high }) => high < figure.low);
  const above = alike.every(({ low }) => low > figure.high);
  if (safer === undefined || !(below || above)) return 'wrong';
  return (safer === 'higher') === above ? 'stricter' : 'dangerous';
};

const judgeSaid = (want: readonly Said[], mention: RegExp | undefined, read: AnswerRead): Verdict => {
  if (want.length === 0)
    return mention?.test(read.text) ? 'right' : read.said.has('go') ? 'dangerous' : 'silent';
  const strictOnly = want.every((one) => STRICT.has(one));
  const given = some(read.said, want) && (mention === undefined || mention.test(read.text));
  if (strictOnly && some(MILD, read.said) && !some(STRICT, read.said)) return 'dangerous';
  // A caution that had to be said was not, and leave was given.
  if (given) return 'right';
  if (mention !== undefined && some(read.said, want))
    return strictOnly || read.said.has('go') ? 'dangerous' : 'wrong';
  if (!strictOnly && read.said.has('unknown')) return 'silent';
  return read.said.size === 0 ? 'silent' : 'wrong';
};

const judgeMatch = (matches: RegExp, never: RegExp | null, { text, said }: AnswerRead): Verdict => {
  // A right word beside a leave that is not to be given makes nothing right.
  if (never?.test(text)) return 'dangerous';
  if (matches.test(text)) return 'right';
  return said.size > 0 ? 'wrong' : 'silent';
};

export const judge = (want: Want, read: AnswerRead): Verdict =>
  'matches' in want ? judgeMatch(want.matches, want.never, read) : judgeBySort(want, read);

const judgeBySort = (want: Exclude<Want, { matches: RegExp }>, read: AnswerRead): Verdict =>
  'span' in want
    ? judgeSpan(want.span, want.quality === true, read)
    : want.figure !== undefined
      ? judgeFigure(want, read)
      : judgeSaid(want.said, want.mention, read);
