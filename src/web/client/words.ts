/** What a card says of a food, in words. */
import type { Board, BoardItem } from '../../../shared/wire/board.js';
import { recordWord, t } from './language.js';

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

/** "made yesterday"; that no date is known is said too. */
export const ageOf = (item: BoardItem, today: string, locale: string): string =>
  item.since === null
    ? t('age-unknown')
    : t(`age-${item.since.kind}`, { ago: ago(item.since.day, today, locale) });

/** Until when, by guidance. It never says that food is safe. */
export const untilOf = (item: BoardItem, today: string, locale: string): string => {
  const { state, lastDay, daysLeft } = item;
  switch (state) {
    case 'throw-out':
      return daysLeft !== null && daysLeft < 0 ? t('until-past-days', { days: -daysLeft }) : t('until-past');
    case 'refrigerate-now':
      return t('until-refrigerate-now');
    case 'last-day':
      return t('until-last-day');
    case 'cook-thoroughly':
      return t('until-cook-thoroughly');
    case 'past-best-quality':
      return t('until-past-best');
    case 'unknown':
      return t('until-unknown');
    case 'no-figure':
      return t('until-no-figure');
    default:
      return lastDay === null
        ? t('until-within')
        : t('until-day', { day: dayInWords(lastDay, today, locale) });
  }
};

/** Allergens of those who eat here first, then what else it is said to contain. */
export const allergensOf = (item: BoardItem): readonly string[] => [
  ...item.warnings.map(({ person, allergen, how }) =>
    t(
      how === 'said-to-contain'
        ? 'contains-not-for'
        : how === 'usually-contains'
          ? 'usually-contains'
          : 'said-free-from',
      { allergen: recordWord(allergen), person },
    ),
  ),
  ...(item.contains.length === 0
    ? []
    : [t('contains', { allergens: item.contains.map(recordWord).join(', ') })]),
];

export const placeOf = (board: Board, placeId: string | null): string =>
  placeId === null
    ? t('place-unknown')
    : [...(board.places.find(({ id }) => id === placeId)?.path ?? [])].reverse().join(', ');

export const clockTime = (at: string, locale: string, timeZone: string): string =>
  new Intl.DateTimeFormat(locale, { timeStyle: 'short', timeZone }).format(new Date(at));
