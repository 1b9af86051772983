/**
 * The reference tables in `shared/tables`, read and checked once. Every row names its source;
 * `cite` gives the full citation.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import type { z } from 'zod';
import * as schema from '../../shared/tables/schema.js';
import { prepared } from '../prepared.js';
import { projectFile } from '../project-files.js';
import type { Basis, Citation } from './api.js';

/** A table that cannot be used: which file, and what is wrong with it. */
export class TableError extends Error {
  constructor(
    readonly file: string,
    problem: string,
  ) {
    super(`${file}: ${problem}`);
    this.name = 'TableError';
  }
}

const FOLDER = projectFile('shared', 'tables');
const read = (file: string): string => readFileSync(join(FOLDER, file), 'utf8');

const checked = <T extends z.ZodType>(file: string, where: string, shape: T, value: unknown): z.infer<T> => {
  const result = shape.safeParse(value);
  if (result.success) return result.data;
  const [first] = result.error.issues;
  throw new TableError(file, `${where}${first?.path.join('.') ?? ''} ${first?.message ?? 'does not fit'}`);
};

/** Reads a CSV table; the problem of a bad row is told with its line. */
const csv = <T extends z.ZodType>(file: string, shape: T): readonly z.infer<T>[] => {
  const rows = parse(read(file), { columns: true, skip_empty_lines: true, info: true }) as {
    record: unknown;
    info: { lines: number };
  }[];
  return rows.map(({ record, info }) => checked(file, `line ${info.lines}: `, shape, record));
};

const json = <T extends z.ZodType>(file: string, shape: T): z.infer<T> =>
  checked(file, '', shape, JSON.parse(read(file)));

const byId = <T extends { readonly id: string }>(
  file: string,
  rows: readonly T[],
): ReadonlyMap<string, T> => {
  const map = new Map<string, T>();
  for (const row of rows) {
    if (map.has(row.id)) throw new TableError(file, `"${row.id}" stands twice`);
    map.set(row.id, row);
  }
  return map;
};

const load = () => {
  const tables = {
    sources: byId('sources.csv', csv('sources.csv', schema.sourceRow)),
    storage: {
      us: byId('storage-us.csv', csv('storage-us.csv', schema.storageRow)),
      uk: byId('storage-uk.csv', csv('storage-uk.csv', schema.storageRow)),
    },
    storageData: byId('storage-usda.csv', csv('storage-usda.csv', schema.storageDataRow)),
    kinds: byId('food-kinds.csv', csv('food-kinds.csv', schema.foodKind)),
    foods: csv('foods.csv', schema.foodRow),
    spanishNames: csv('food-names-es.csv', schema.foreignNameRow),
    cooking: byId('cooking-temperatures.csv', csv('cooking-temperatures.csv', schema.cookingRow)),
    roasting: byId('roasting.csv', csv('roasting.csv', schema.roastingRow)),
    ukTimeTemperature: csv('uk-time-temperature.csv', schema.timeTemperatureRow),
    holding: byId('holding-temperatures.csv', csv('holding-temperatures.csv', schema.holdingRow)),
    powerFridge: byId('power-cut-fridge.csv', csv('power-cut-fridge.csv', schema.powerFridgeRow)),
    powerFreezer: byId('power-cut-freezer.csv', csv('power-cut-freezer.csv', schema.powerFreezerRow)),
    powerRules: json('power-cut-rules.json', schema.powerRules),
    allergens: csv('allergens.csv', schema.allergenRow),
    claims: byId('claims.csv', csv('claims.csv', schema.claimRow)),
    frontOfPack: csv('front-of-pack-uk.csv', schema.frontOfPackRow),
    atRisk: byId('at-risk.csv', csv('at-risk.csv', schema.atRiskRow)),
    mould: byId('mould.csv', csv('mould.csv', schema.mouldRow)),
    hazards: byId('hazards.csv', csv('hazards.csv', schema.hazardRow)),
    packageDates: csv('package-dates.csv', schema.packageDateRow),
    timeRules: json('time-rules.json', schema.timeRules),
    thawing: json('thawing.json', schema.thawing),
    labelRules: json('label-rules.json', schema.labelRules),
    microwave: json('microwave.json', schema.microwave),
  };
  checkReferences(tables);
  return tables;
};

export type SafetyTables = ReturnType<typeof load>;

/** Every name one table uses for a row of another must be there. */
const checkReferences = (tables: SafetyTables): void => {
  const needs = (file: string, row: string, map: ReadonlyMap<string, unknown>, name: string | null): void => {
    if (name !== null && !map.has(name))
      throw new TableError(file, `"${row}" names "${name}", which is not there`);
  };
  for (const kind of tables.kinds.values()) {
    const file = 'food-kinds.csv';
    for (const name of [kind.us, kind.us_opened, kind.after_thaw])
      needs(file, kind.id, tables.storage.us, name);
    needs(file, kind.id, tables.storage.uk, kind.uk);
    needs(file, kind.id, tables.powerFridge, kind.power_fridge);
    needs(file, kind.id, tables.powerFreezer, kind.power_freezer);
    needs(file, kind.id, tables.cooking, kind.cook);
    needs(file, kind.id, tables.atRisk, kind.at_risk);
    needs(file, kind.id, tables.hazards, kind.hazard_row);
  }
  const known = new Set(tables.foods.flatMap(({ food, also }) => [food, ...also]));
  for (const { kind, spanish, english } of tables.spanishNames) {
    if (kind === 'food' && !known.has(english))
      throw new TableError(
        'food-names-es.csv',
        `"${spanish.join('|')}" names "${english}", which is not there`,
      );
  }
  for (const food of tables.foods) {
    needs('foods.csv', food.food, tables.kinds, food.bought);
    needs('foods.csv', food.food, tables.kinds, food.cooked);
    const allergens = new Map(tables.allergens.map((row) => [row.id, row]));
    for (const name of food.contains) needs('foods.csv', food.food, allergens, name);
  }
  const seen = new Set<unknown>();
  const walk = (value: unknown): void => {
    if (typeof value !== 'object' || value === null || seen.has(value)) return;
    seen.add(value);
    if (value instanceof Map) {
      for (const row of value.values()) walk(row);
      return;
    }
    for (const [key, part] of Object.entries(value)) {
      if (/^source(_us|_uk)?$/.test(key) && typeof part === 'string' && !tables.sources.has(part)) {
        throw new TableError('sources.csv', `"${part}" is named as a source and is not there`);
      }
      walk(part);
    }
  };
  walk({ ...tables, sources: null });
};

const tableFiles = (): string[] =>
  readdirSync(FOLDER)
    .filter((name) => /\.(csv|json)$/.test(name))
    .sort()
    .map((name) => join(FOLDER, name));

let loaded: SafetyTables | null = null;

/**
 * The tables, read at the first call and kept.
 * @throws TableError when a file does not fit its schema.
 */
export const safetyTables = (): SafetyTables => (loaded ??= prepared('tables', tableFiles(), load));

interface Cited {
  readonly source: string;
  readonly section: string | null;
  readonly basis: Basis;
}
const cited = new WeakMap<Cited, Citation>();

/** The full citation of a row; the same object at every call for the same row. */
export const cite = (tables: SafetyTables, row: Cited): Citation => {
  const known = cited.get(row);
  if (known !== undefined) return known;
  const citation = citationOf(tables, row);
  cited.set(row, citation);
  return citation;
};

const citationOf = (tables: SafetyTables, row: Cited): Citation => {
  const source = tables.sources.get(row.source);
  if (source === undefined) throw new TableError('sources.csv', `"${row.source}" is not there`);
  return {
    agency: source.agency,
    document: source.document,
    section: row.section,
    year: source.year,
    edition: source.edition,
    region: source.region,
    basis: row.basis,
  };
};
