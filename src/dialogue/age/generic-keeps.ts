/** How long a food keeps in general, as guidance says. */
import { storageOf } from '../../kitchen/index.js';
import type { Assessment, GuidanceQuestion, Where } from '../../safety/api.js';
import { guidanceFor } from '../../safety/guidance.js';
import type { Say } from '../../speech/answer.js';
import { daysBetween, today } from '../../terms/dates.js';
import type { Slots } from '../../understanding/intents.js';
import { reasonsOf, verdictWords } from '../describe/guidance.js';
import { type Reply, type Turn, say } from '../handler.js';
import { findPlace } from '../refer/places.js';

export const whereSaid = (turn: Turn, slots: Slots): Where | null => {
  if (slots.from_state) return slots.from_state === 'room' ? 'counter' : slots.from_state;
  const place = findPlace(turn, slots.place);
  if (place.found === 'one') {
    const kind = storageOf(turn.kitchen, place.place.id);
    return kind === 'cupboard' ? 'pantry' : kind;
  }
  const words = slots.place?.words ?? '';
  if (/freez/.test(words)) return 'freezer';
  if (/fridge|refrigerator/.test(words)) return 'fridge';
  if (/pantry|cupboard|larder/.test(words)) return 'pantry';
  return /counter|table/.test(words) ? 'counter' : null;
};

const ageSaid = (turn: Turn, slots: Slots): Pick<GuidanceQuestion, 'days' | 'hours'> => {
  const when = slots.when ?? Object.values(slots.dates ?? {})[0];
  if (when && when !== 'unknown') return { days: Math.max(0, daysBetween(when.day, today(turn.clock))) };
  if (slots.duration === undefined) return {};
  const hours = slots.duration / 3600;
  return hours < 24 ? { hours } : { days: Math.round(hours / 24) };
};

export const question = (turn: Turn, slots: Slots, food: string): GuidanceQuestion => ({
  food,
  where: whereSaid(turn, slots) ?? 'fridge',
  region: turn.kitchen.household.region,
  opened: slots.dates?.opened !== undefined || slots.asked === 'opened',
  thawed: slots.dates?.thawed !== undefined,
  atRisk: [...turn.kitchen.people.values()].some(({ eatsHere, atRisk }) => eatsHere && atRisk),
  ...ageSaid(turn, slots),
  clock: turn.clock,
});

const limitWords = (found: Assessment, food: string, where: Where): Say | null => {
  const keeps = found.reasons.find(({ code }) => code === 'keeps');
  const limit = found.row?.limit;
  if (!keeps || !limit) return null;
  const { low, high, unit } = limit;
  // A figure for anything cooked, given as that of a thing no table has, would be a made-up one.
  return say('keeps-generic', {
    food,
    where,
    kind: found.row?.kind ?? 'keeping',
    listed: found.match.notes.includes('not-in-table') ? 'no' : 'yes',
    span: low === high ? say('span-single', { high, unit }) : say('span-range', { low, high, unit }),
  });
};

/** Raw and cooked keep so differently that the guess is told with the answer. */
const assumedRaw = (found: Assessment): Say[] =>
  found.match.notes.includes('raw-assumed') ? [say('taken-as-raw')] : [];

/** What guidance says of a food in general. */
export const genericKeeps = (turn: Turn, slots: Slots): Reply | null => {
  const food = slots.item?.words ?? slots.words;
  if (!food) return null;
  const asked = question(turn, slots, food);
  const found = guidanceFor(asked);
  const { first, rest, sources } = reasonsOf(found);
  const span = limitWords(found, food, asked.where);
  const lead = span ?? verdictWords(found, food);
  return {
    parts: [lead, ...(span ? assumedRaw(found) : first.slice(0, 1))],
    details: [
      ...(span
        ? found.reasons
            .filter(({ code }) => code !== 'keeps')
            .map((one) => reasonsOf({ ...found, reasons: [one], cautions: [] }).first)
            .flat()
        : []),
      ...rest,
    ],
    sources,
    names: [food],
  };
};
