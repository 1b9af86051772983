/** What a number on a label may be called: "low sodium", "gluten free". Thresholds by region, with their law. */
import type { ClaimRow } from '../../shared/tables/schema.js';
import type { Region } from '../kitchen/model.js';
import type { Citation } from './api.js';
import { cite, safetyTables } from './tables.js';

export interface ClaimAnswer {
  readonly claim: string;
  readonly met: boolean;
  /** The amount compared, in the claim's unit and for what the claim is reckoned on. */
  readonly amount: number;
  readonly unit: string;
  readonly per: string;
  /** At most so much, or strictly below. */
  readonly threshold: number;
  readonly strict: boolean;
  readonly note: string | null;
  readonly source: Citation;
}

/** Claims of a region's law that have a figure. */
export const claimsOf = (region: Region, tables = safetyTables()): readonly ClaimRow[] =>
  [...tables.claims.values()].filter(
    (row) => row.region === region && (row.at_most !== null || row.below !== null),
  );

/** A claim as a region's law has it: at most so much, or below it; neither for "unsalted". Null when it has none. */
export const claimNamed = (
  name: string,
  region: Region,
  tables = safetyTables(),
): {
  readonly claim: string;
  readonly nutrient: string;
  readonly atMost: number | null;
  readonly below: number | null;
  readonly unit: string;
  readonly per: string;
  readonly source: Citation;
} | null => {
  const row = tables.claims.get(`${region}-${name}`);
  if (row === undefined) return null;
  const { claim, nutrient, at_most: atMost, below, unit, per } = row;
  return { claim, nutrient, atMost, below, unit, per, source: cite(tables, row) };
};

/**
 * Whether an amount meets a claim. A meal's claim is reckoned per hundred grams: give the meal's `grams`.
 * @returns null when there is no such claim.
 */
export const checkClaim = (
  question: { readonly claim: string; readonly amount: number; readonly grams?: number | null },
  tables = safetyTables(),
): ClaimAnswer | null => {
  const row = tables.claims.get(question.claim);
  if (row === undefined || (row.at_most === null && row.below === null)) return null;
  const amount =
    question.grams === null || question.grams === undefined
      ? question.amount
      : (question.amount * 100) / question.grams;
  const strict = row.below !== null;
  const threshold = row.below ?? row.at_most ?? 0;
  return {
    claim: row.claim,
    met: strict ? amount < threshold : amount <= threshold + 1e-9,
    amount,
    unit: row.unit,
    per: row.per,
    threshold,
    strict,
    note: row.note,
    source: cite(tables, row),
  };
};
