/** What a card says of a food, in words. */
import type { Board, BoardItem } from '../../../shared/wire/board.js';

const DAY = 86_400_000;
const utc = (day: string): number => Date.parse(`${day}T00:00:00Z`);
export const daysBetween = (from: string, to: string): number => Math.round((utc(to) - utc(from)) / DAY);

/** "yesterday", "3 days ago", "5 months ago". */
export const ago = (day: string, today: string, locale: string): string => {
  const days = daysBetween(day, today);
  const format = new Intl.RelativeTimeFormat(locale, { numeric: 'auto' });
  if (Math.abs(days) < 14) return format.format(-days, 'day');
  if (Math.abs(days) < 61) return format.format(-Math.round(days / 7), 'week');
  return format.format(-Math.round(days / 30.44), 'month');
};

/** "Saturday 16 May" within a week, with the year when it is another. */
export const dayInWords = (day: string, today: string, locale: string): string =>
  new Intl.DateTimeFormat(locale, {
    timeZone: 'UTC',
    weekday: Math.abs(daysBetween(today, day)) < 7 ? 'long' : undefined,
    day: 'numeric',
    month: 'long',
    year: day.slice(0, 4) === today.slice(0, 4) ? undefined : 'numeric',
  } as Intl.DateTimeFormatOptions).format(utc(day));

const kinds: Readonly<Record<string, string>> = {
  made: 'made',
  bought: 'bought',
  opened: 'opened',
  frozen: 'frozen',
  thawed: 'thawed',
};

/** "made yesterday"; that no date is known is said too. */
export const ageOf = (item: BoardItem, today: string, locale: string): string =>
  item.since === null
    ? 'no date known'
    : `${kinds[item.since.kind] ?? item.since.kind} ${ago(item.since.day, today, locale)}`;

/** Until when, by guidance. It never says that food is safe. */
export const untilOf = (item: BoardItem, today: string, locale: string): string => {
  const { state, lastDay, daysLeft } = item;
  switch (state) {
    case 'throw-out':
      return daysLeft !== null && daysLeft < 0
        ? `${-daysLeft} ${daysLeft === -1 ? 'day' : 'days'} past guidance: throw it out`
        : 'past guidance: throw it out';
    case 'refrigerate-now':
      return 'standing out: put it in the fridge now';
    case 'last-day':
      return 'today is the last day';
    case 'cook-thoroughly':
      return 'cook it thoroughly, today or tomorrow';
    case 'past-best-quality':
      return 'past its best quality';
    case 'unknown':
      return 'not known how long it keeps';
    case 'no-figure':
      return 'guidance gives no figure: go by the packet';
    default:
      return lastDay === null ? 'within guidance' : `until ${dayInWords(lastDay, today, locale)}`;
  }
};

/** Allergens of those who eat here first, then what else it is said to contain. */
export const allergensOf = (item: BoardItem): readonly string[] => [
  ...item.warnings.map(({ person, allergen, how }) =>
    how === 'said-to-contain'
      ? `Contains ${allergen}: not for ${person}`
      : how === 'usually-contains'
        ? `Such food usually contains ${allergen}: ask, for ${person}`
        : `Said to be free from ${allergen}, which such food usually contains: ask, for ${person}`,
  ),
  ...(item.contains.length === 0 ? [] : [`Contains ${item.contains.join(', ')}`]),
];

export const placeOf = (board: Board, placeId: string | null): string =>
  placeId === null
    ? 'place not known'
    : [...(board.places.find(({ id }) => id === placeId)?.path ?? [])].reverse().join(', ');

export const clockTime = (at: string, locale: string, timeZone: string): string =>
  new Intl.DateTimeFormat(locale, { timeStyle: 'short', timeZone }).format(new Date(at));
