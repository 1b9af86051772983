/** What was said of a food beside its name and place. */
import type { Draft } from '../../kitchen/index.js';
import type { Preparation } from '../../kitchen/model.js';
import type { Slots } from '../../understanding/intents.js';
import type { Turn } from '../handler.js';
import { surelyThem } from '../people/people.js';
import { makerName } from './maker-name.js';
import { preparationOf } from './preparation.js';
import { isSoldRaw } from '../../safety/index.js';
import { dateKindSaid } from './date-kind.js';
import { saidDates, type Dates } from './said-dates.js';

/**
 * "I put the ground beef in the fridge on Sunday": raw as it is sold, and nobody said it was cooked. The day is when
 * it came, for made that day it would be given the longer time of what was cooked.
 */
const asBought = (turn: Turn, { item, maker, dates: told }: Slots, dates: Dates): Dates => {
  const { made, ...others } = dates;
  const cooked = maker !== undefined || dateKindSaid(turn) === 'made';
  return made && told?.made && !cooked && !dates.bought && isSoldRaw(item?.words ?? '')
    ? { ...others, bought: made }
    : dates;
};

export const saidDraft = (turn: Turn, slots: Slots): Omit<Draft, 'name'> => {
  const told = asBought(turn, slots, saidDates(slots.dates));
  // Found where a place is checked: nobody froze it today.
  const found = turn.state.session?.kind === 'count' && told.frozen === undefined;
  const dates: Dates = found && Object.keys(told).length > 0 ? { ...told, frozen: null } : told;
  const maker = slots.maker ?? slots.item?.maker;
  const preparation: Preparation | null = slots.preparation ? preparationOf(slots.preparation, turn) : null;
  // Whose it is, only where the name was heard.
  const owner = slots.person?.candidates.find(({ fit }) => fit >= surelyThem)?.id;
  return {
    ...(Object.keys(dates).length > 0 ? { dates } : {}),
    ...(slots.container ? { touch: slots.container } : {}),
    ...(maker ? { maker: makerName(turn, maker) } : {}),
    ...(slots.diet ? { diets: [slots.diet] } : {}),
    ...(slots.allergens ? { [slots.free ? 'freeFrom' : 'contains']: slots.allergens } : {}),
    ...(slots.caution ? { cautions: [slots.caution] } : {}),
    ...(preparation ? { preparations: [preparation] } : {}),
    ...(owner && turn.kitchen.people.has(owner) ? { ownerId: owner } : {}),
  };
};
