/** "What temperature for chicken?" */
import { cookTemperature as cookGuidance } from '../../safety/temperature.js';
import { reasonWords, sourcesOf } from '../describe/guidance.js';
import { type Handler, say, seconds } from '../handler.js';
import { findItems } from '../refer/items.js';

export const cookTemperature: Handler = (act, turn) => {
  const { item, words } = act.slots;
  const known = findItems(turn, item).items[0];
  const food = item?.words ?? words ?? known?.name;
  if (!food) return { parts: [], ask: { slot: 'item', question: say('ask-cook'), expecting: 'words' } };
  const found = cookGuidance({ food, region: turn.kitchen.household.region });
  const { temperature, restSeconds, holdSeconds, boil } = found;
  return {
    parts: [
      say('cook-to', {
        food,
        temperature: { kind: 'temperature', ...temperature },
        ...(restSeconds ? { rest: seconds(restSeconds) } : {}),
        ...(holdSeconds ? { hold: seconds(holdSeconds) } : {}),
      }),
      ...(boil ? [say('cook-boil')] : []),
    ],
    details: found.notes.map((code) => reasonWords({ code, args: { name: food }, source: null })),
    sources: sourcesOf([found]),
    names: [food],
  };
};
