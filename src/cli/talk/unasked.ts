/** Timers, reminders and the nightly summary, spoken in a terminal conversation when they come due. */
import { rankUseFirst } from '../../safety/index.js';
import { dueNow, heardChange } from '../../schedule/index.js';
import type { Spoken } from '../../speech/index.js';
import type { Engine } from './engine.js';

const LOOK_EVERY_MS = 500;

/** Tells what is due until stopped. Each is recorded as heard once it was said. */
export const unaskedIn = (
  { households, householdId }: Engine,
  tell: (spoken: Spoken) => void,
): (() => void) => {
  const speaker = { householdId, personId: null, deviceId: null };
  let looking = false;
  const look = async (): Promise<void> => {
    const around = await households.look(householdId);
    for (const { id, answer } of dueNow(around.kitchen, around.clock, rankUseFirst)) {
      tell(households.say(around, answer));
      await households.change(speaker, { id: `heard:${id}`, said: id }, (doing) => {
        const change = heardChange(doing, id);
        return change ? { changes: [change] } : { refused: 'heard before' };
      });
    }
  };
  const timer = setInterval(() => {
    if (looking) return;
    looking = true;
    look()
      .catch((error: unknown) => console.error(error))
      .finally(() => {
        looking = false;
      });
  }, LOOK_EVERY_MS);
  return () => clearInterval(timer);
};
