/**
 * Carrying a microwave time over to another oven: the energy stays the same, so time × watts does.
 * The answer is when to check first; what ends the heating is the temperature.
 */
import type { ScaledTime } from './api.js';
import type { ReasonCode } from './codes.js';
import { safetyTables } from './tables.js';

const roundUp = (seconds: number, step: number): number => Math.ceil(seconds / step - 1e-9) * step;

export interface ScaleQuestion {
  readonly seconds: number;
  /** Watts the time is for; null when not known. */
  readonly fromWatts: number | null;
  /** Watts of the oven at hand. */
  readonly toWatts: number | null;
}

/**
 * The energy-equal time, rounded up to five seconds, its ratio kept between a half and two.
 * Null when either wattage is not known. Standing time is never scaled: do not pass it here.
 *
 * @example scaleTime({ seconds: 240, fromWatts: 650, toWatts: 750 })?.seconds // 210
 */
export const scaleTime = (question: ScaleQuestion, tables = safetyTables()): ScaledTime | null => {
  const { seconds, fromWatts, toWatts } = question;
  if (fromWatts === null || toWatts === null || fromWatts <= 0 || toWatts <= 0) return null;
  const { rules } = tables.microwave;
  const ratio = fromWatts / toWatts;
  const capped = Math.min(rules.ratioHigh, Math.max(rules.ratioLow, ratio));
  const notes: ReasonCode[] = ['energy-equal'];
  if (toWatts > fromWatts) notes.push('first-check');
  if (capped !== ratio) notes.push('ratio-capped');
  return {
    seconds: roundUp(seconds * capped, rules.stepSeconds),
    exactSeconds: seconds * ratio,
    latestSeconds: null,
    notes,
  };
};

/**
 * A time printed for this very oven beats the formula. Given columns by watts and by heating letter,
 * the longer of those that fit; null when none does.
 */
export const printedTime = (
  columns: Readonly<Record<string, number>>,
  oven: { readonly watts: number | null; readonly letter: string | null },
): ScaledTime | null => {
  const fitting = [oven.watts === null ? '' : String(oven.watts), oven.letter ?? '']
    .map((column) => columns[column])
    .filter((seconds) => seconds !== undefined);
  if (fitting.length === 0) return null;
  const seconds = Math.max(...fitting);
  return { seconds, exactSeconds: seconds, latestSeconds: null, notes: ['printed-column'] };
};

/**
 * A time for other portions. Published for one plate and two: twice the food takes one and three
 * quarters to two times as long. Null outside half to twice: heat it in lots.
 */
export const scalePortions = (
  seconds: number,
  from: number,
  to: number,
  tables = safetyTables(),
): ScaledTime | null => {
  if (from <= 0 || to <= 0) return null;
  const ratio = to / from;
  if (ratio > 2 || ratio < 0.5) return null;
  const { rules, portions } = tables.microwave;
  if (ratio === 1) return { seconds, exactSeconds: seconds, latestSeconds: null, notes: [] };
  const low = ratio > 1 ? 1 + (ratio - 1) * (portions.doubleLow - 1) : ratio;
  const high =
    ratio > 1
      ? 1 + (ratio - 1) * (portions.doubleHigh - 1)
      : 1 - (1 - ratio) * 2 * (1 - 1 / portions.doubleLow);
  return {
    seconds: roundUp(seconds * low, rules.stepSeconds),
    exactSeconds: seconds * low,
    latestSeconds: roundUp(seconds * high, rules.stepSeconds),
    notes: ['doubled-portions', 'first-check'],
  };
};
