/** Timers under way, counted down by the second for the eye, named for the ear. */
import { useEffect, useState } from 'preact/hooks';
import type { Reminder } from '../../../shared/client/http.js';
import { t } from './language.js';
import { OutcomeHere } from './outcome.js';
import type { BoardState } from './use-board.js';

const left = ({ due, heldLeft }: Reminder, now: number): string => {
  const seconds = Math.max(0, Math.ceil(heldLeft ?? (Date.parse(due) - now) / 1_000));
  const minutes = Math.floor(seconds / 60);
  const hours = Math.floor(minutes / 60);
  if (hours > 0) return t('left-hours', { hours, minutes: minutes % 60 });
  return minutes > 0 ? t('left-minutes', { minutes, seconds: seconds % 60 }) : t('left-seconds', { seconds });
};

const labelOf = ({ label, kind }: Reminder): string => label ?? t(kind);

export const Timers = ({ timers, state }: { timers: readonly Reminder[]; state: BoardState }) => {
  const [now, tick] = useState(() => Date.now());
  useEffect(() => {
    if (timers.length === 0) return;
    const timer = setInterval(() => tick(Date.now()), 1_000);
    return () => clearInterval(timer);
  }, [timers.length]);
  // What came of ending the last one is still to be read.
  if (timers.length === 0 && state.outcome?.where !== 'timers') return null;
  return (
    <section aria-labelledby="timers">
      <h2 id="timers">{t('timers')}</h2>
      <ul class="lines">
        {timers.map((timer) => (
          <li key={timer.id}>
            <span>
              {t(timer.heldLeft === undefined ? 'timer-left' : 'timer-held', {
                label: labelOf(timer),
                left: left(timer, now),
              })}
            </span>
            <button
              type="button"
              onClick={() =>
                void state.act({
                  where: 'timers',
                  done: t('timer-ended', { label: labelOf(timer) }),
                  edits: [
                    { method: 'DELETE', path: `/v1/kitchen/reminders/${encodeURIComponent(timer.id)}` },
                  ],
                })
              }
            >
              {t('timer-end')}
              <span class="hidden"> {labelOf(timer)}</span>
            </button>
          </li>
        ))}
      </ul>
      <OutcomeHere state={state} where="timers" takesFocus />
    </section>
  );
};
