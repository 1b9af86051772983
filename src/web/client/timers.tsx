/** Timers under way, counted down by the second for the eye, named for the ear. */
import { useEffect, useState } from 'preact/hooks';
import type { Reminder } from '../../../shared/client/http.js';

const left = (due: string, now: number): string => {
  const seconds = Math.max(0, Math.ceil((Date.parse(due) - now) / 1_000));
  const minutes = Math.floor(seconds / 60);
  const hours = Math.floor(minutes / 60);
  if (hours > 0) return `${hours} h ${minutes % 60} min`;
  return minutes > 0 ? `${minutes} min ${seconds % 60} s` : `${seconds} s`;
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
      <h2 id="timers">Timers and reminders</h2>
      <ul>
        {timers.map((timer) => (
          <li key={timer.id}>
            {timer.label ?? (timer.kind === 'timer' ? 'Timer' : 'Reminder')}: {left(timer.due, now)} left
          </li>
        ))}
      </ul>
    </section>
  );
};
