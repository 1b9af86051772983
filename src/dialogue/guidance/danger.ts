/** A bulging tin, mould, a taste to find out: what guidance says of it whatever the date is, first words first. */
import { emptyMention } from '../../understanding/intents.js';
import { anyoneAtRisk, hazardNamed, mouldCut } from '../../safety/index.js';
import { sourcesOf } from '../describe/guidance.js';
import { type Handler, about, list, say } from '../handler.js';
import { findItems } from '../refer/items.js';

/** Told of the container or the food, it is for the bin whatever its date. */
const discards = new Set(['container', 'nameless', 'mould']);

export const danger: Handler = ({ slots }, turn) => {
  const asked = slots.asked ?? 'container';
  if (asked === 'allergy')
    return {
      parts: [say('allergy-not-taken', { allergens: list(slots.allergens ?? []) })],
      details: [say('check-the-label')],
    };
  const { items } = slots.item ? findItems(turn, slots.item) : { items: [] };
  const item = items.length === 1 ? items[0]! : null;
  // Only where the food itself was named: "it" may be anything.
  const food = slots.item?.words ?? item?.name;
  const cut = asked === 'mould' && food && !anyoneAtRisk(turn.kitchen.people) ? mouldCut(food) : null;
  if (cut)
    return {
      parts: [say('danger-mould-cut', { inches: cut.inches, name: food! })],
      details: [say('caution-look-and-smell')],
      sources: sourcesOf([cut]),
      ...(item ? { memory: about(turn, [item]) } : {}),
    };
  if (asked === 'frost')
    return {
      parts: [say('danger-frost')],
      sources: sourcesOf([hazardNamed('freezer-burn')]),
      ...(item ? { memory: about(turn, [item]) } : {}),
    };
  const hazard = hazardNamed('damaged-can');
  return {
    parts: [say(`danger-${asked}`)],
    details: [say('caution-look-and-smell'), say('caution-botulism-home-canned')],
    sources: sourcesOf([hazard]),
    ...(item ? { memory: about(turn, [item]) } : {}),
    ...(item && discards.has(asked)
      ? {
          offer: {
            question: say('offer-throw-out', { name: item.name }),
            act: {
              intent: 'finish',
              slots: { item: { ...emptyMention, candidates: [{ id: item.id, fit: 1 }] }, how: 'thrown out' },
            },
          },
        }
      : {}),
  };
};
