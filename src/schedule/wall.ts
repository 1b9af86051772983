/** What a tablet on the wall shows: days that end soon, the list to buy, what will ring. Pure. */
import { say } from '../dialogue/handler.js';
import { openReminders, shoppingList } from '../kitchen/index.js';
import type { Id, Kitchen, Purchase, Reminder } from '../kitchen/model.js';
import { rankUseFirst } from '../safety/index.js';
import type { Say } from '../speech/index.js';
import { dayOf, today, type Clock } from '../terms/dates.js';
import { concerns } from './calendar.js';

export interface WallPart {
  readonly heading: Say;
  readonly lines: readonly Say[];
  /** What is said where there are no lines. */
  readonly none: Say;
}

/** Days ahead that are shown. */
const SOON = 3;

/** Printed rather than said: what it is leads, then how much, which kind, where from and for whom. */
export const listLine = ({ people }: Kitchen, { name, amount, note, shop, forPersonId }: Purchase): Say => {
  const person = people.get(forPersonId ?? '')?.name;
  return say('list-line', {
    name,
    ...(amount ? { amount: { kind: 'amount', amount } } : {}),
    ...(note ? { note } : {}),
    ...(shop ? { shop } : {}),
    ...(person === undefined ? {} : { person }),
  });
};

const reminderLine = ({ kind, label, due, heldLeft }: Reminder, clock: Clock): Say => {
  const named = label === null ? {} : { label };
  if (heldLeft !== undefined)
    return say('timer-held', { left: { kind: 'duration', seconds: heldLeft }, ...named });
  const day = dayOf(due, clock.timeZone);
  return say('wall-reminder', {
    kind,
    time: { kind: 'time', at: due },
    ...(day === today(clock) ? {} : { day: { kind: 'date', day } }),
    ...named,
  });
};

/** `personId`: whose reminders are shown beside everybody's; null: all. */
export const wallOf = (
  kitchen: Kitchen,
  clock: Clock,
  personId: Id | null,
): { readonly days: WallPart; readonly toBuy: WallPart; readonly reminders: WallPart } => ({
  days: {
    heading: say('wall-days'),
    none: say('wall-no-days'),
    lines: rankUseFirst(kitchen, clock).flatMap(({ item, assessment: { lastDay, daysLeft } }) =>
      lastDay === null || daysLeft === null || daysLeft > SOON
        ? []
        : [
            say('wall-day', {
              item: item.name,
              day: { kind: 'date', day: lastDay },
              ...(daysLeft < 0 ? { past: 'past' } : {}),
            }),
          ],
    ),
  },
  toBuy: {
    heading: say('wall-list'),
    none: say('wall-no-list'),
    lines: shoppingList(kitchen).map((line) => listLine(kitchen, line)),
  },
  reminders: {
    heading: say('wall-reminders'),
    none: say('wall-no-reminders'),
    lines: openReminders(kitchen)
      .filter((reminder) => concerns(reminder, personId))
      .map((reminder) => reminderLine(reminder, clock)),
  },
});
