/** How long a food has stood out of the cold, over all its outings: what was warm once stays counted. */
import type { FoodEvent, Item } from '../kitchen/model.js';
import type { Instant } from '../terms/dates.js';
import type { Exposure } from './api.js';

const MS_PER_MINUTE = 60_000;
const between = (from: Instant, to: Instant): number =>
  Math.max(0, (Date.parse(to) - Date.parse(from)) / MS_PER_MINUTE);

/** Outings that are over, and the one that is not. */
export const exposureOf = (
  item: Pick<Item, 'outSince' | 'outHot' | 'outAtLeast' | 'history'>,
  now: Instant,
): Exposure => {
  const outings = (item.history ?? []).filter((one) => one.kind === 'out');
  const before = outings.reduce((sum, { from, to }) => sum + between(from, to), 0);
  const open = item.outSince === null ? 0 : between(item.outSince, now);
  return {
    minutes: before + open,
    hot: (item.outSince !== null && item.outHot === true) || outings.some(({ hot }) => hot),
    atLeast: (item.outSince !== null && item.outAtLeast === true) || outings.some(({ atLeast }) => atLeast),
    now: item.outSince !== null,
  };
};

/** The power cut that cost it most; null when none did. */
export const worstPowerCut = (
  history: readonly FoodEvent[] = [],
): Extract<FoodEvent, { kind: 'power' }> | null => {
  const cuts = history.filter((one) => one.kind === 'power');
  return cuts.find(({ came }) => came === 'lost') ?? cuts.find(({ came }) => came === 'doubtful') ?? null;
};
