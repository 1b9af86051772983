/** Keeps a scheduler going, at the edge of the service. */
import { Cron } from 'croner';
import type { Scheduler } from './scheduler.js';

/** Every second. */
const DUE = '* * * * * *';

/** Starts it; nothing waits for what is planned first. Returns how to stop: what is under way is finished. */
export const keepTicking = (
  scheduler: Scheduler,
  onProblem: (error: unknown) => void,
): (() => Promise<void>) => {
  const planned = scheduler.planAll().catch(onProblem);
  const job = new Cron(DUE, { protect: true, unref: true }, async () => void (await scheduler.tick()));
  return async () => {
    job.stop();
    await scheduler.close();
    await planned;
  };
};
