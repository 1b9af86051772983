/** What the answers to a question of guidance work with. */
import type { GuidanceFacts, Reading } from '../../understanding/guidance/facts.js';
import type { Slots } from '../../understanding/intents.js';
import type { Turn } from '../handler.js';

export interface Asked {
  readonly turn: Turn;
  readonly slots: Slots;
  readonly facts: GuidanceFacts;
  readonly food: string;
}

/** A reading without a scale is in the household's own. */
export const inScale = ({ kitchen: { household } }: Turn, reading: Reading) => ({
  degrees: reading.value,
  scale: reading.scale ?? (household.measures === 'us' ? ('fahrenheit' as const) : ('celsius' as const)),
});
