/** Timers under way, counted down by the second for the eye, named for the ear. */
import { useEffect, useState } from 'preact/hooks';
import type { Reminder } from '../../../shared/client/http.js';
import { t } from './language.js';

const left = (due: string, now: number): string => {
  const seconds = Math.max(0, Math.ceil((Date.parse(due) - now) / 1_000));
  const minutes = Math.floor(seconds / 60);
  const hours = Math.floor(minutes / 60);
  if (hours > 0) return t('left-hours', { hours, minutes: minutes % 60 });
  return minutes > 0 ? t('left-minutes', { minutes, seconds: seconds % 60 }) : t('left-seconds', { seconds });
};

export const Timers = ({ timers }: { timers: readonly Reminder[] }) => {
  const [now, tick] = useState(() => Date.now());
  useEffect(() => {
    if (timers.length === 0) return;
    const timer = setInterval(() => tick(Date.now()), 1_000);
    return () => clearInterval(timer);
  }, [timers.length]);
  if (timers.length === 0) return null;
  return (
    <section aria-labelledby="timers">
      <h2 id="timers">{t('timers')}</h2>
      <ul>
        {timers.map((timer) => (
          <li key={timer.id}>
            {t('timer-left', { label: timer.label ?? t(timer.kind), left: left(timer.due, now) })}
          </li>
        ))}
      </ul>
    </section>
  );
};
