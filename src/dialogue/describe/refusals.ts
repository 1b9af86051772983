/** Why a change was not made, said plainly, with the nearest thing that is possible. */
import { type Change, type Refused, type Result, isRefused } from '../../kitchen/index.js';
import { type Reply, type Turn, list, say } from '../handler.js';
import { groupName, grouped } from './item.js';
import { placeNoun } from './place.js';

/** One phrase for each reason: `refused-<reason>`. */
export const refusal = (turn: Turn, refused: Refused): Reply => {
  const { about = [], ids = [], have } = refused;
  const items = ids.flatMap((id) => turn.kitchen.items.get(id) ?? []);
  const places = ids.filter((id) => turn.kitchen.places.has(id));
  const named = about.length > 0 ? list(about) : list(grouped(turn.kitchen, items).map(groupName));
  return {
    parts: [
      say(`refused-${refused.refused}`, {
        ...(about.length > 0 || items.length > 0 ? { name: named } : {}),
        ...(have ? { have: { kind: 'amount', amount: have } } : {}),
        ...(places.length > 0
          ? {
              places: list(
                places.map((id) => placeNoun(turn.kitchen, id)),
                true,
              ),
            }
          : {}),
      }),
    ],
  };
};

/** Goes on with the change, or says why it cannot be. */
export const withChange = (turn: Turn, result: Result, then: (change: Change) => Reply): Reply =>
  isRefused(result) ? refusal(turn, result) : then(result);
