/**
 * "How long do I roast a four-pound chicken?" Times over the heat by the USDA's storage-time data. A time is where
 * to begin looking and never an answer to whether it is done: that is the temperature inside, which is told with it.
 */
import type { RoastingRow } from '../../shared/tables/schema.js';
import type { Region } from '../kitchen/model.js';
import type { Citation } from './api.js';
import { reviewedFood } from './match.js';
import { regionFacts } from './regions/index.js';
import { cite, safetyTables } from './tables.js';
import type { SafetyTables } from './tables.js';
import { foodWords } from './words.js';

export interface RoastingQuestion {
  readonly food: string;
  /** As said; null: the oven, else whatever way the data has for it. */
  readonly method: RoastingRow['method'] | null;
  readonly pounds: number | null;
  readonly region: Region | null;
}

export interface RoastingTime {
  readonly method: RoastingRow['method'];
  /** Of the oven, in degrees Fahrenheit; null over a flame or in water. */
  readonly ovenF: { readonly low: number; readonly high: number } | null;
  /** In minutes: of all of it where `whole`, else for each pound. */
  readonly minutes: { readonly low: number; readonly high: number };
  readonly whole: boolean;
  /** Pounds the figure was published for; null: any. */
  readonly forPounds: { readonly low: number; readonly high: number } | null;
  /** The weight told lies beyond it. */
  readonly beyond: boolean;
  readonly source: Citation;
}

/** Words of a row or a question that tell no cut from another. */
const SAYS_NOTHING = new Set(
  foodWords('a an the my of in or and with such as parts raw fresh whole joint piece'),
);
const wordsOf = (text: string): readonly string[] =>
  foodWords(text).filter((word) => !SAYS_NOTHING.has(word));

/** How many of the words said the row has; null where a word was said that it has not, or its food was not. */
const fits = (row: RoastingRow, said: readonly string[]): number | null => {
  const food = wordsOf(row.food);
  const type = wordsOf(row.type);
  if (!food.some((word) => said.includes(word))) return null;
  return said.every((word) => food.includes(word) || type.includes(word)) ? said.length : null;
};

const range = (values: readonly number[]) => ({ low: Math.min(...values), high: Math.max(...values) });

const weighs = ({ size_unit, size_low, size_high }: RoastingRow, pounds: number): boolean =>
  size_unit === 'pounds' &&
  size_low !== null &&
  size_high !== null &&
  size_low <= pounds &&
  pounds <= size_high;

/** Null: no row for such food, or no such table in the region. */
export const roastingTime = (
  question: RoastingQuestion,
  tables: SafetyTables = safetyTables(),
): RoastingTime | null => {
  if (question.region !== null && !regionFacts(question.region).storageData) return null;
  // By its own name, else by any other name of the same reviewed food: "duck" is the data's duckling.
  const also = reviewedFood(question.food, tables);
  const names = [question.food, ...(also ? [also.food, ...also.also] : [])];
  const fitting =
    names
      .map((name) => [...tables.roasting.values()].filter((row) => fits(row, wordsOf(name)) !== null))
      .find((rows) => rows.length > 0) ?? [];
  const method = question.method ?? (fitting.find((row) => row.method === 'oven') ?? fitting[0])?.method;
  const ofMethod = fitting.filter((row) => row.method === method);
  const { pounds } = question;
  const ofWeight = pounds === null ? [] : ofMethod.filter((row) => weighs(row, pounds));
  const kept = ofWeight.length > 0 ? ofWeight : ofMethod;
  // Rows by the pound and rows for the whole are two kinds of figure: never put in one span.
  const [first] = kept;
  if (!first || !method) return null;
  const rows = kept.filter((row) => row.per_pound === first.per_pound);
  const minutes = range(rows.flatMap((row) => [row.minutes_low, row.minutes_high]));
  const ovens = rows.flatMap((row) => [row.oven_low_f ?? [], row.oven_high_f ?? []].flat());
  const sizes = rows.flatMap((row) =>
    row.size_unit === 'pounds' && row.size_low !== null && row.size_high !== null
      ? [row.size_low, row.size_high]
      : [],
  );
  const byWeight = first.per_pound && pounds !== null && ofWeight.length > 0;
  return {
    method,
    ovenF: ovens.length > 0 ? range(ovens) : null,
    minutes: byWeight ? { low: minutes.low * pounds, high: minutes.high * pounds } : minutes,
    whole: byWeight || !first.per_pound,
    forPounds: sizes.length > 0 ? range(sizes) : null,
    beyond: pounds !== null && sizes.length > 0 && ofWeight.length === 0,
    source: cite(tables, first),
  };
};
