/** Drops what is kept of talk only so that it can go on: replies for retries, conversations not spoken in. */
import type { Logger } from 'pino';
import type { Store } from '../../store/port.js';

/** deploy/settings.md says this figure too. */
const KEPT_DAYS = 7;
const DAY = 24 * 60 * 60 * 1000;
const LOOK_EVERY = DAY / 4;
/** Not at once: a machine's clock may be wrong until it has asked the time. */
const FIRST_LOOK = DAY / 24;

/** An hour after the start and every six hours, until stopped. Several servers may do it: the second finds nothing. */
export const startForgetting = (store: Store, now: () => string, logger: Logger): (() => void) => {
  const forget = async (): Promise<void> => {
    const before = new Date(Date.parse(now()) - KEPT_DAYS * DAY).toISOString();
    let [replies, conversations] = [0, 0];
    for (const id of await store.householdIds()) {
      const gone = await store.forgetTalk(id, before);
      replies += gone.replies;
      conversations += gone.conversations;
    }
    if (replies + conversations > 0) logger.info({ replies, conversations }, 'old talk dropped');
  };
  const look = (): void =>
    void forget().catch((error: unknown) => logger.error({ err: error }, 'could not drop old talk'));
  const first = setTimeout(look, FIRST_LOOK).unref();
  const timer = setInterval(look, LOOK_EVERY).unref();
  return () => {
    clearTimeout(first);
    clearInterval(timer);
  };
};
