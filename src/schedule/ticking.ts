/** Keeps a scheduler going, at the edge of the service. */
import { Cron } from 'croner';
import type { Scheduler } from './scheduler.js';

/** Every second what is due; every quarter of an hour all plans, for what another process left undone. */
const DUE = '* * * * * *';
const PLANS = '0 */15 * * * *';

/** Starts it. Returns how to stop: what is under way is finished first. */
export const keepTicking = async (scheduler: Scheduler): Promise<() => Promise<void>> => {
  await scheduler.planAll();
  const jobs = [
    new Cron(DUE, { protect: true, unref: true }, async () => void (await scheduler.tick())),
    new Cron(PLANS, { protect: true, unref: true }, () => scheduler.planAll()),
  ];
  return async () => {
    for (const job of jobs) job.stop();
    await scheduler.close();
  };
};
