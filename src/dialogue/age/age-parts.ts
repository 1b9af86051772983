/** The age of one item, and what guidance makes of it. */
import type { DateKind, Item } from '../../kitchen/model.js';
import { assessIn } from '../../safety/index.js';
import type { Say, Value } from '../../speech/answer.js';
import { type PlainDate, dayOf, daysBetween, today } from '../../terms/dates.js';
import { dateSaidAs, madeUnknown } from '../describe/came.js';
import { reasonsOf, verdictWords } from '../describe/guidance.js';
import { type Turn, day, days, say } from '../handler.js';

/** The date an age is told by: when it was made, else bought, else frozen, else opened. */
export const ageFrom = (item: Item): { kind: DateKind; at: PlainDate } | null => {
  for (const kind of ['made', 'bought', 'frozen', 'opened'] as const) {
    const at = item.dates[kind];
    if (at) return { kind, at };
  }
  return null;
};

export const ageWords = (turn: Turn, item: Item, name: Value): Say => {
  const from = ageFrom(item);
  if (from) {
    const count = daysBetween(from.at, today(turn.clock));
    return say('age', {
      name,
      what: dateSaidAs(from.kind, item),
      date: day(from.at),
      ...(madeUnknown(item) ? { made: 'unknown' } : {}),
      ...(count >= 0 ? { days: days(count), count } : {}),
    });
  }
  const since = daysBetween(dayOf(item.addedAt, turn.clock.timeZone), today(turn.clock));
  return since > 0 ? say('age-at-least', { name, days: days(since) }) : say('age-unknown', { name });
};

const silentVerdicts = new Set(['fine', 'no-figure', 'how-long']);

/** Age and verdict of one item, for answers about it. */
export const ageParts = (turn: Turn, item: Item): { parts: Say[]; details: Say[]; sources: Say[] } => {
  const found = assessIn(turn.kitchen, item, turn.clock);
  const { first, rest, sources } = reasonsOf(found);
  const from = ageFrom(item);
  const dated = from
    ? [
        say('date-of', { what: dateSaidAs(from.kind, item), date: day(from.at) }),
        ...(madeUnknown(item) ? [say('made-when-unknown')] : []),
      ]
    : [say('no-dates')];
  const verdict = silentVerdicts.has(found.verdict) ? [] : [verdictWords(found, null)];
  // What must not be eaten is said before when it was made.
  const parts = found.verdict === 'throw-out' ? [...verdict, ...dated] : [...dated, ...verdict];
  return { parts, details: [...first, ...rest], sources };
};
