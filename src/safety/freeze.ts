/** "Shall I freeze it?" */
import { today } from '../terms/dates.js';
import type { GuidanceQuestion, Reason } from './api.js';
import { guidanceFor } from './guidance.js';
import { chartOnFreezing, regionFacts } from './regions/index.js';
import { safetyTables } from './tables.js';

export interface FreezeAnswer {
  /** `poorly`: the table says it does not freeze well. */
  readonly may: 'yes' | 'no' | 'poorly';
  readonly reasons: readonly Reason[];
}

/**
 * Whether it may still be frozen: what the gate says of it frozen today, with its use-by and all else that was told.
 * Where a use-by is of safety that is up to the end of its day, never after; where it is of quality it stops nothing,
 * and how long the food was kept decides.
 */
export const mayFreeze = (
  question: Omit<GuidanceQuestion, 'where' | 'days' | 'hours'>,
  tables = safetyTables(),
): FreezeAnswer => {
  const facts = regionFacts(question.region);
  const frozen = { ...question.dates, frozen: today(question.clock) };
  const inFreezer = guidanceFor({ ...question, where: 'freezer', dates: frozen }, tables);
  if (inFreezer.verdict === 'throw-out') return { may: 'no', reasons: inFreezer.reasons.slice(0, 1) };
  if (facts.chartOnFreezing) {
    const bare = { food: question.food, state: question.state ?? null, clock: question.clock };
    const charted = guidanceFor({ ...bare, where: 'freezer', opened: true, region: chartOnFreezing }, tables);
    const against = charted.reasons.find(({ code }) => code === 'not-for-freezing');
    if (against) return { may: 'poorly', reasons: [against] };
  }
  const { dates = {} } = question;
  const last =
    dates.useBy === undefined
      ? undefined
      : guidanceFor({ ...question, where: 'fridge' }, tables).reasons.find(
          ({ code }) => code === 'use-by-today',
        );
  return { may: 'yes', reasons: [last ?? { code: 'frozen-keeps', args: {}, source: null }] };
};
