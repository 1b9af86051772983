/** How long a food may stand at room temperature, by its kind, its parts and region. */
import type { FoodKind } from '../../../shared/tables/schema.js';
import type { Region } from '../../kitchen/model.js';
import type { Citation, Temperature } from '../api.js';
import { kindOf, matchFood } from '../match.js';
import { eggsByDate, regionFacts } from '../regions/index.js';
import { cite, safetyTables, type SafetyTables } from '../tables.js';
import { isAbove } from '../temperature.js';
import type { Case } from './case.js';

export interface OutLimit {
  readonly minutes: number;
  /** In air warmer than this the time is not known; null: it holds in any. */
  readonly upToF: number | null;
  readonly source: Citation;
}

/** Hotter than the limit above which guidance allows one hour only. */
export const isHot = (air: Temperature, tables = safetyTables()): boolean =>
  tables.timeRules.leftOut.some(
    ({ strictlyAboveF }) => strictlyAboveF !== null && isAbove(air, strictlyAboveF),
  );

const ofKind = (kind: FoodKind, region: Region, hot: boolean, tables: SafetyTables): OutLimit | null => {
  // Eggs are sold and kept uncooled in the UK; their best-before counts.
  if (kind.room === 'stable' || eggsByDate(kind, region)) return null;
  const rows = regionFacts(region).leftOutRows;
  const id =
    rows.humanMilk !== null && kind.id === 'human-milk'
      ? rows.humanMilk
      : rows.rice !== null && /rice/.test(kind.id)
        ? rows.rice
        : hot
          ? rows.hot
          : rows.usual;
  const rule = tables.timeRules.leftOut.find((row) => row.id === id);
  return rule === undefined ? null : { minutes: rule.minutes, upToF: rule.upToF, source: cite(tables, rule) };
};

/** "Cake with cream" keeps no longer than the cream: the parts that a name tells of. */
const partsOf = ({ subject, tables }: Pick<Case, 'subject' | 'tables'>): readonly FoodKind[] => {
  const { name, where, state } = subject;
  return name
    .split(/ with /)
    .slice(1)
    .map((part) => kindOf(matchFood(part, { where, state }, tables), tables));
};

/** The limit; null for food that needs no cold. @param hot above ninety degrees Fahrenheit (US only): one hour. */
export const outLimit = (
  of: Pick<Case, 'subject' | 'kind' | 'region' | 'tables'>,
  hot: boolean,
): OutLimit | null =>
  [of.kind, ...partsOf(of)]
    .flatMap((kind) => ofKind(kind, of.region, hot, of.tables) ?? [])
    .reduce<OutLimit | null>((least, one) => (least && least.minutes <= one.minutes ? least : one), null);
