/** From what a household's clock shows to an instant. */
import type { Qualifier } from '../../protocol/qualifiers.js';
import { wallTime } from '../../safety/index.js';
import { type Clock, type Instant, type PlainDate, plusDays, today } from '../../terms/dates.js';

/** What was said with an hour. */
type Said = { readonly qualifiers: ReadonlySet<Qualifier> };

/** A wall time on a day. */
export const instantAt = (day: PlainDate, time: string, timeZone: string): Instant =>
  wallTime(day, time, timeZone);

/** The next time the clock shows it: today if that is still to come, else tomorrow. */
const nextAt = (time: string, clock: Clock): Instant => {
  const now = today(clock);
  const here = instantAt(now, time, clock.timeZone);
  return here > clock.now ? here : instantAt(plusDays(now, 1), time, clock.timeZone);
};

/** The last time the clock showed it. */
const lastAt = (time: string, clock: Clock): Instant => {
  const now = today(clock);
  const here = instantAt(now, time, clock.timeZone);
  return here <= clock.now ? here : instantAt(plusDays(now, -1), time, clock.timeZone);
};

/** "At five" may be either: unless the words say which half of the day. */
export const bothHalves = (time: string, { qualifiers }: Said): readonly string[] => {
  const [hour = 0, minute = '00'] = [Number(time.split(':')[0]), time.split(':')[1]];
  const told = qualifiers.has('half-of-day');
  if (told || hour < 1) return [time];
  const other = hour === 12 ? 0 : hour > 12 ? hour - 12 : hour + 12;
  return [time, `${String(other).padStart(2, '0')}:${minute}`];
};

/** "At one", on another day, is after noon: nobody cooks at night unless she says so. */
export const wakingHour = (time: string, said: Said): string =>
  bothHalves(time, said).find((one) => one >= '06:00' && one < '22:00') ?? time;

/** The hour something is to be on the table: after noon, unless the morning or breakfast was said with it. */
export const mealHour = (time: string, said: Said): string => {
  const { qualifiers } = said;
  const [hour = 0] = time.split(':').map(Number);
  const evening = (['evening-meal', 'evening', 'night'] as const).some((name) => qualifiers.has(name));
  const morning = qualifiers.has('morning') || qualifiers.has('morning-meal');
  if (hour >= 12 || hour === 0 || (morning && !evening)) return time;
  if (!evening && (qualifiers.has('half-of-day') || hour >= latestMorning)) return time;
  return `${String(hour + 12)}:${time.split(':')[1] ?? '00'}`;
};
/** "At eleven" is before noon. */
const latestMorning = 10;

/** The latest of those times that has been. */
export const lastOf = (times: readonly string[], clock: Clock): Instant =>
  times.map((time) => lastAt(time, clock)).reduce((a, b) => (b > a ? b : a));

/** The next of those times to come. */
export const nextOf = (times: readonly string[], clock: Clock): Instant =>
  times.map((time) => nextAt(time, clock)).reduce((a, b) => (b < a ? b : a));

/** `seconds` from now; negative for the past. */
export const fromNow = (clock: Clock, seconds: number): Instant =>
  new Date(Date.parse(clock.now) + seconds * 1000).toISOString();
