/** Somebody is in trouble, or asks what only a clinician may answer: whom to call comes first. */
import { regionFacts } from '../../safety/index.js';
import { findItems } from '../refer/items.js';
import { type Handler, about, say } from '../handler.js';

export const urgent: Handler = ({ slots }, turn) => {
  const number = regionFacts(turn.kitchen.household.region).emergencyNumber;
  const asked = slots.asked ?? 'emergency';
  const found = slots.item ? findItems(turn, slots.item).items : [];
  const [item] = found;
  // What is recorded of the food may be wanted by whoever comes: told after, and only what was told.
  const recorded =
    item && found.length === 1 && item.contains.length > 0
      ? [
          say('urgent-recorded', {
            name: item.name,
            allergens: { kind: 'list', of: item.contains, or: false },
          }),
        ]
      : [];
  return {
    parts: [
      say(`urgent-${asked}`, { number }),
      ...(asked === 'emergency' || asked === 'ill' ? recorded : []),
    ],
    details: [say('urgent-not-a-doctor')],
    dropFrames: asked === 'emergency',
    ...(item && found.length === 1 ? { memory: about(turn, [item]) } : {}),
  };
};
