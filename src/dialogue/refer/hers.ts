/** Things of the household that what was said can mean, when guidance is asked for. */
import { storageOf } from '../../kitchen/index.js';
import type { Item } from '../../kitchen/model.js';
import type { Where } from '../../safety/api.js';
import { otherFood } from '../../safety/index.js';
import type { Mention } from '../../understanding/intents.js';
import type { Turn } from '../handler.js';
import { findItems } from './items.js';

/** "Boiled eggs" are not the eggs on record, nor is "deli turkey" the one in the freezer: what is another food is left out. */
export const ofThatFood = (items: readonly Item[], said: string | null | undefined): readonly Item[] =>
  said ? items.filter(({ name }) => !otherFood(said, name)) : items;

/** Empty where none fits, or only one that sounds alike. */
export const hersOf = (turn: Turn, mention: Mention | undefined): readonly Item[] => {
  const { items, near } = findItems(turn, mention);
  return near ? [] : ofThatFood(items, mention?.words);
};

export const whereOfItem = (turn: Turn, item: Item): Where | null => {
  const kind = storageOf(turn.kitchen, item.placeId);
  return kind === 'cupboard' ? 'pantry' : kind;
};
