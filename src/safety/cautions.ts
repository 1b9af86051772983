/** The cautions that belong to a kind of food, whoever asks. Built once a kind. */
import type { FoodKind } from '../../shared/tables/schema.js';
import type { Caution } from './api.js';
import { CAUTION_CODES } from './codes.js';
import type { CautionCode } from './codes.js';
import { matchFood } from './match.js';
import { cite, safetyTables } from './tables.js';
import type { SafetyTables } from './tables.js';

export const caution = (
  code: CautionCode,
  args: Caution['args'] = {},
  source: Caution['source'] = null,
): Caution => ({
  code,
  args,
  source,
});

const isCode = (code: string): code is CautionCode => (CAUTION_CODES as readonly string[]).includes(code);

export interface KindCautions {
  /** For everyone: botulism cases and the like. */
  readonly always: readonly Caution[];
  /** For people at higher risk. */
  readonly atRisk: readonly Caution[];
}

/** A hazard's row, for what is said of a container or a food whatever its date. Null when no table has it. */
export const hazardNamed = (id: string, tables = safetyTables()): { readonly source: Caution['source'] } => {
  const row = tables.hazards.get(id);
  return { source: row === undefined ? null : cite(tables, row) };
};

/** How far around mould such food may be cut, in inches; null: it is thrown out. */
export const mouldCut = (
  food: string,
  tables = safetyTables(),
): { readonly inches: number; readonly source: Caution['source'] } | null => {
  const match = matchFood(food, {}, tables);
  const row = [...tables.mould.values()].find(({ kinds }) => kinds.includes(match.family));
  return row === undefined || match.sure === 'unknown'
    ? null
    : { inches: row.cut_inches, source: cite(tables, row) };
};

const known = new WeakMap<FoodKind, KindCautions>();

/** Cautions of a kind of food, with their sources. */
export const kindCautions = (kind: FoodKind, tables: SafetyTables): KindCautions => {
  const before = known.get(kind);
  if (before !== undefined) return before;
  const always: Caution[] = [];
  const atRisk: Caution[] = [];
  const hazard = kind.hazard_row === null ? undefined : tables.hazards.get(kind.hazard_row);
  if (hazard !== undefined && isCode(hazard.caution))
    always.push(caution(hazard.caution, {}, cite(tables, hazard)));
  const row = kind.at_risk === null ? undefined : tables.atRisk.get(kind.at_risk);
  if (row !== undefined && isCode(row.caution)) atRisk.push(caution(row.caution, {}, cite(tables, row)));
  if (atRisk.length > 0) atRisk.push(caution('ask-clinician'));
  const made = { always, atRisk };
  known.set(kind, made);
  return made;
};
