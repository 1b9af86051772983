/** What figures on a package mean: an egg carton's pack day, traffic-light levels, percent of daily value. */
import type { Region } from '../kitchen/model.js';
import { plusDays } from '../terms/dates.js';
import type { PlainDate } from '../terms/dates.js';
import type { Citation } from './api.js';
import { cite, safetyTables } from './tables.js';

export interface EggCarton {
  readonly packed: PlainDate;
  /** "Sell by" may be no later, with the grade shield. */
  readonly sellByAtLatest: PlainDate;
  /** "Use by" or "best before" may be no later. */
  readonly useByAtLatest: PlainDate;
  readonly source: Citation;
}

/**
 * The three-digit pack day of a US egg carton: 001 is 1 January, 182 is 1 July of a common year.
 * @returns null when that year has no such day.
 */
export const eggCarton = (dayOfYear: number, year: number, tables = safetyTables()): EggCarton | null => {
  const first = `${year}-01-01`;
  const packed = plusDays(first, dayOfYear - 1);
  if (!Number.isInteger(dayOfYear) || dayOfYear < 1 || packed.slice(0, 4) !== String(year)) return null;
  const rule = tables.labelRules.eggCarton;
  return {
    packed,
    sellByAtLatest: plusDays(packed, rule.sellByWithinDays),
    useByAtLatest: plusDays(packed, rule.useByWithinDays),
    source: cite(tables, rule),
  };
};

export interface LevelAnswer {
  readonly level: 'low' | 'medium' | 'high';
  readonly source: Citation;
}

/**
 * UK front-of-pack level of fat, saturates, sugars or salt, grams per 100 g; a portion over 100 g is
 * also judged by the portion.
 * @returns null for another nutrient.
 */
export const frontOfPack = (
  question: { readonly nutrient: string; readonly per100g: number; readonly portionGrams?: number | null },
  tables = safetyTables(),
): LevelAnswer | null => {
  const row = tables.frontOfPack.find((each) => each.nutrient === question.nutrient);
  if (row === undefined) return null;
  const portion = question.portionGrams ?? 0;
  const inPortion = portion > 100 ? (question.per100g * portion) / 100 : 0;
  const high = question.per100g > row.high_above || inPortion > row.high_per_portion_above;
  return {
    level: high ? 'high' : question.per100g <= row.low_at_most ? 'low' : 'medium',
    source: cite(tables, row),
  };
};

/** US percent of daily value: five or less is low, twenty or more is high. */
export const dailyValue = (percent: number, tables = safetyTables()): LevelAnswer => {
  const rule = tables.labelRules.percentDailyValue;
  const level = percent <= rule.lowAtMost ? 'low' : percent >= rule.highAtLeast ? 'high' : 'medium';
  return { level, source: cite(tables, rule) };
};

const dateRows = { useBy: 'use-by', bestBefore: 'best-before', sellBy: 'sell-by' } as const;

/** What a kind of date on a label means in a region: of safety, or of quality only. */
export const labelDate = (
  kind: 'useBy' | 'bestBefore' | 'sellBy',
  region: Region,
  tables = safetyTables(),
): { readonly safety: boolean; readonly meaning: string | null; readonly source: Citation | null } => {
  const row = tables.packageDates.find(({ id }) => id === `${region}-${dateRows[kind]}`);
  return row === undefined
    ? { safety: false, meaning: null, source: null }
    : { safety: row.meaning.startsWith('safety'), meaning: row.meaning, source: cite(tables, row) };
};
