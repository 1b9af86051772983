/** How long a food keeps in general, as guidance says. */
import { storageOf } from '../../kitchen/index.js';
import type { Assessment, GuidanceQuestion, Where } from '../../safety/api.js';
import { anyoneAtRisk, guidanceFor } from '../../safety/index.js';
import type { Say } from '../../speech/answer.js';
import { daysBetween, today } from '../../terms/dates.js';
import { placesNamed } from '../../understanding/index.js';
import type { Slots } from '../../understanding/intents.js';
import { mustSay, otherTable, reasonsOf, spanWords, verdictWords } from '../describe/guidance.js';
import { type Reply, type Turn, say } from '../handler.js';
import { findPlace } from '../refer/places.js';
import { type Placeless, inEachPlace } from './each-place.js';

export const whereSaid = (turn: Turn, slots: Slots): Where | null => {
  if (slots.from_state) return slots.from_state === 'room' ? 'counter' : slots.from_state;
  // "Chicken that has been in the fridge": the place may be said with the food.
  const said = slots.place ?? slots.item?.at ?? undefined;
  const place = findPlace(turn, said);
  if (place.found === 'one') {
    const kind = storageOf(turn.kitchen, place.place.id);
    return kind === 'cupboard' ? 'pantry' : kind;
  }
  for (const named of placesNamed(said?.words ?? '', turn.locale)) {
    if (named === 'cupboard') return 'pantry';
    if (named === 'freezer' || named === 'fridge' || named === 'pantry' || named === 'counter') return named;
  }
  return null;
};

const ageSaid = (turn: Turn, slots: Slots): Pick<GuidanceQuestion, 'days' | 'hours'> => {
  const when = slots.when ?? Object.values(slots.dates ?? {})[0];
  if (when && when !== 'unknown') return { days: Math.max(0, daysBetween(when.day, today(turn.clock))) };
  if (slots.duration === undefined) return {};
  const hours = slots.duration / 3600;
  return hours < 24 ? { hours } : { days: Math.round(hours / 24) };
};

const question = (turn: Turn, slots: Slots, food: string): Placeless => ({
  food,
  region: turn.kitchen.household.region,
  opened: slots.dates?.opened !== undefined || slots.asked === 'opened',
  thawed: slots.dates?.thawed !== undefined,
  atRisk: anyoneAtRisk(turn.kitchen.people),
  ...ageSaid(turn, slots),
  clock: turn.clock,
});

const limitWords = (found: Assessment, food: string, where: Where): Say | null => {
  const keeps = found.reasons.find(({ code }) => code === 'keeps');
  const limit = found.row?.limit;
  if (!keeps || !limit) return null;
  // A figure for anything cooked, given as that of a thing no table has, would be a made-up one.
  return say('keeps-generic', {
    food,
    where,
    kind: found.row?.kind ?? 'keeping',
    listed: found.match.notes.includes('not-in-table') ? 'no' : 'yes',
    span: spanWords(limit),
  });
};

/** Raw and cooked keep so differently that the guess is told with the answer. */
const assumedRaw = (found: Assessment): Say[] =>
  found.match.notes.includes('raw-assumed') ? [say('taken-as-raw')] : [];

/** What guidance says of a food in general: where it was said to be, else in each place it may be. */
export const genericKeeps = (turn: Turn, slots: Slots): Reply | null => {
  const food = slots.item?.words ?? slots.words;
  if (!food) return null;
  const asked = question(turn, slots, food);
  const where = whereSaid(turn, slots);
  if (where === null) {
    const { parts, details, sources, found } = inEachPlace(asked);
    return { parts: [...mustSay(found), ...parts], details, sources, names: [food] };
  }
  const found = guidanceFor({ ...asked, where });
  const { first, rest, sources } = reasonsOf(found);
  const span = limitWords(found, food, where);
  const lead = span ?? verdictWords(found, food);
  return {
    parts: [
      ...mustSay(found),
      lead,
      ...(span ? [...assumedRaw(found), ...otherTable(found)] : first.slice(0, 1)),
    ],
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

/** What is nothing to eat: no figure is anywhere near it. */
export const inNoTable = ({ item, words }: Slots): Reply => ({
  parts: [say('in-no-table', { name: item?.words ?? words ?? '' })],
  keepTold: true,
});
