/** What is said when a timer or reminder is due. */
import { placeAt } from '../dialogue/describe/place.js';
import type { Kitchen, Reminder } from '../kitchen/model.js';
import type { Answer, Say, Value } from '../speech/index.js';
import type { Clock } from '../terms/dates.js';

/** Seconds after which it is said to be late. */
const LATE = { timer: 60, reminder: 300 } as const;

/** "The rice timer is done." or, late, "The rice timer was done ten minutes ago." */
export const reminderAnswer = (kitchen: Kitchen, reminder: Reminder, clock: Clock): Answer => {
  const lateBy = (Date.parse(clock.now) - Date.parse(reminder.due)) / 1000;
  const late = lateBy > LATE[reminder.kind];
  const args: Record<string, Value> = {
    ...(reminder.label === null ? {} : { label: reminder.label }),
    ...(late ? { late: { kind: 'ago', at: reminder.due } } : {}),
  };
  const parts: Say[] = [{ kind: 'say', phrase: `${reminder.kind}-due`, args }];
  const item = reminder.itemId === null ? undefined : kitchen.items.get(reminder.itemId);
  if (reminder.kind === 'reminder' && item !== undefined && item.gone === null && item.placeId !== null)
    parts.push({
      kind: 'say',
      phrase: 'reminder-where',
      args: { item: item.name, at: placeAt(kitchen, item.placeId, item.spot) },
    });
  return { parts, earcon: 'alert' };
};
