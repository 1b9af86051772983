/** What a tablet on the wall shows: days that end soon, the list to buy, what will ring. Pure. */
import { say } from '../dialogue/handler.js';
import { openReminders } from '../kitchen/index.js';
import type { Id, Kitchen } from '../kitchen/model.js';
import { rankUseFirst } from '../safety/index.js';
import type { Say } from '../speech/index.js';
import { dayOf, today, type Clock } from '../terms/dates.js';

export interface WallPart {
  readonly heading: Say;
  readonly lines: readonly Say[];
  /** What is said where there are no lines. */
  readonly none: Say;
}

/** Days ahead that are shown. */
const SOON = 3;

/** `personId`: whose reminders are shown beside everybody's; null: all. */
export const wallOf = (
  kitchen: Kitchen,
  clock: Clock,
  personId: Id | null,
): { readonly days: WallPart; readonly reminders: WallPart } => ({
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
  reminders: {
    heading: say('wall-reminders'),
    none: say('wall-no-reminders'),
    lines: openReminders(kitchen)
      .filter(({ setBy }) => personId === null || setBy === null || setBy === personId)
      .map(({ kind, label, due }) =>
        say('wall-reminder', {
          kind,
          time: { kind: 'time', at: due },
          ...(dayOf(due, clock.timeZone) === today(clock)
            ? {}
            : { day: { kind: 'date', day: dayOf(due, clock.timeZone) } }),
          ...(label === null ? {} : { label }),
        }),
      ),
  },
});
