/** Times as a person types them on the command line, in the household's zone. */
import { TZDate } from '@date-fns/tz';
import { InvalidArgumentError } from 'commander';
import type { Instant } from '../terms/dates.js';

const WALL = /^(\d{4})-(\d{2})-(\d{2})(?:[T ](\d{2}):(\d{2}))?$/;

/**
 * `2026-05-14T18:00` is six in the evening in the household's zone; with `Z` or an offset it is
 * that instant. A day alone is its noon. @throws InvalidArgumentError
 */
export const instantOf = (text: string, timeZone: string): Instant => {
  const parts = WALL.exec(text);
  const [year, month, day, hour, minute] = (parts ?? []).slice(1).map((part) => Number(part ?? NaN));
  const date =
    parts && year !== undefined && month !== undefined && day !== undefined
      ? new TZDate(year, month - 1, day, parts[4] ? (hour ?? 0) : 12, parts[5] ? (minute ?? 0) : 0, timeZone)
      : new Date(/T.*(Z|[+-]\d{2}:?\d{2})$/.test(text) ? text : NaN);
  const real = !parts || (date.getMonth() + 1 === month && date.getDate() === day);
  if (Number.isNaN(date.getTime()) || !real) {
    throw new InvalidArgumentError(`"${text}" is not a time. Write it like 2026-05-14T18:00.`);
  }
  return new Date(date.getTime()).toISOString();
};
