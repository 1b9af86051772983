/** Which table's figure decides, where more than one has the food. */
import type { FoodKind } from '../../../shared/tables/schema.js';
import type { ClockState, Span } from '../api.js';
import type { Chosen } from '../storage.js';
import { asChartRow, spanDays, storageDataFor, type Cell } from '../storage-data.js';
import type { SafetyTables } from '../tables.js';
import type { Case, Subject } from './case.js';

/** What decides, and what another table says of the same food, where it says otherwise. */
type Figures = Pick<Case, 'chosen' | 'other'>;

const sameSpan = (one: Span, other: Span): boolean =>
  one.unit === other.unit
    ? one.low === other.low && one.high === other.high
    : spanDays(one) === spanDays(other);

/**
 * The USDA's storage data beside the chart, asked by the food's name: where the chart has no figure of its own,
 * it decides; where both have one, the shorter time holds, and what the other says is told. A freezer's times
 * are of taste only: there the chart's stands, unless the chart's row is a guess or a general one.
 */
export const withData = (
  subject: Subject,
  kind: FoodKind,
  chart: Chosen | null,
  opened: boolean,
  clock: ClockState,
  guessed: boolean,
  tables: SafetyTables,
): Figures => {
  const alone: Figures = { chosen: chart, other: null };
  if (subject.homeMade || subject.state === 'cooked') return alone;
  // Of whole fruit and the like its times are of taste: told when asked, and nothing is thrown out by them.
  if (kind.hazard === 'none' && !subject.ageless) return alone;
  const frozen = clock.phase === 'frozen';
  const thawed = subject.thawed && storageDataFor(subject.name, 'fridge_thawed', tables) !== null;
  const cell: Cell = frozen ? 'freezer' : thawed ? 'fridge_thawed' : opened ? 'fridge_opened' : 'fridge';
  const figure = (frozen ? chart?.row.freezer : chart?.row.fridge) ?? null;
  // Against a current chart's own row, only a row of the data that was named wholly.
  const held = figure !== null && !chart!.general && chart!.row.standing === 'current' && !guessed;
  const row = storageDataFor(subject.name, cell, tables, held);
  const own = row === null ? null : asChartRow(row, cell);
  const ours = (frozen ? own?.freezer : own?.fridge) ?? null;
  if (own === null || ours === null) return alone;
  const data: Chosen = { row: own, fromOpening: cell === 'fridge_opened', general: false };
  // That a chart says not to freeze it is a figure too.
  if (frozen && figure === null && chart !== null && chart.row.freezer_note !== null) return alone;
  if (figure === null || chart === null || chart.general) return { chosen: data, other: null };
  if (sameSpan(ours, figure)) return alone;
  const better = frozen ? guessed : spanDays(ours) < spanDays(figure);
  return better
    ? { chosen: data, other: { span: figure, table: 'chart' } }
    : { chosen: chart, other: { span: ours, table: 'data' } };
};
