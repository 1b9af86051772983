/** "When does the yogurt expire": the dates of one thing. */
import { assessIn } from '../../safety/index.js';
import { dayOf } from '../../terms/dates.js';
import { ageWords } from './age-parts.js';
import { dateSaidAs } from '../describe/came.js';
import { reasonsOf, verdictWords } from '../describe/guidance.js';
import { nameOfGone, noneLeft } from '../refer/none-left.js';
import { frozenBefore } from '../find/frozen-before.js';
import { type Handler, about, day, say } from '../handler.js';
import { needItem } from '../refer/need.js';
import { askedKind, it } from './by-age.js';
import { genericKeeps } from './generic-keeps.js';

/** "When does the yogurt expire", "when did I freeze it": the date first, then what guidance makes of it. */
export const itemDate: Handler = (act, turn) => {
  const gone = nameOfGone(turn, act.slots.item?.candidates.map(({ id }) => id) ?? []);
  const found = needItem(turn, act.slots.item ?? it(turn), {
    question: say('ask-date-of'),
    anyOfBatch: true,
    lastOne: true,
  });
  if ('reply' in found) {
    if (found.reply.ask) return found.reply;
    return gone ? noneLeft(turn, gone) : (genericKeeps(turn, act.slots) ?? found.reply);
  }
  const item = found.got;
  const { asked } = act.slots;
  const kind = asked ? askedKind[asked] : undefined;
  const memory = about(turn, [item]);
  const more = { memory, names: [item.name], count: 1 };
  const verdict = assessIn(turn.kitchen, item, turn.clock);
  const { first, rest, sources } = reasonsOf(verdict);
  if (asked === 'added') {
    return {
      parts: [say('added-on', { name: item.name, date: day(dayOf(item.addedAt, turn.clock.timeZone)) })],
      ...more,
    };
  }
  const expiry = kind === 'useBy' || kind === 'bestBefore';
  const printed = item.dates.useBy ? 'useBy' : item.dates.bestBefore ? 'bestBefore' : null;
  if (expiry || !kind) {
    const dates = printed ? ([printed] as const) : [];
    const parts = dates.map((of) =>
      say('item-date', { name: item.name, what: of, date: day(item.dates[of]!) }),
    );
    if (parts.length > 0)
      return {
        parts: [...parts, verdictWords(verdict, null)],
        details: [...first, ...rest],
        sources,
        ...more,
      };
    if (asked !== 'any') {
      return {
        parts: [verdictWords(verdict, item.name), say('no-printed-date')],
        details: [...first, ...rest],
        sources,
        ...more,
      };
    }
    return {
      parts: [ageWords(turn, item, item.name), verdictWords(verdict, null)],
      details: [...first, ...rest],
      sources,
      ...more,
    };
  }
  const at = item.dates[kind];
  if (at)
    return {
      parts: [
        say('item-date', { name: item.name, what: dateSaidAs(kind, item), date: day(at) }),
        ...(kind === 'frozen' ? frozenBefore(item) : []),
      ],
      details: [...first, ...rest],
      sources,
      ...more,
    };
  // "Has it been opened?" is answered with no more than was asked.
  const whether = kind === 'opened' && turn.qualifiers.has('has-been');
  if (whether) return { parts: [say('not-opened', { name: item.name })], ...more };
  return {
    parts: [say('date-not-recorded', { name: item.name, what: kind }), ageWords(turn, item, item.name)],
    ...more,
  };
};
