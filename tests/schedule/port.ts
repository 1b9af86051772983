/** The households a scheduler asks, over a real store, for tests. */
import { heardChange, type Carrier, type Delivery, type HouseholdsPort } from '../../src/schedule/index.js';
import type { Carried } from '../../src/schedule/telling.js';
import { createVoice } from '../../src/speech/index.js';
import type { Kitchen } from '../../src/kitchen/model.js';
import type { Store } from '../../src/store/index.js';
import type { Clock } from '../../src/terms/dates.js';

interface Around {
  readonly kitchen: Kitchen;
  readonly clock: Clock;
}

const voice = createVoice('en-US');

export const householdsOver = (
  store: Store,
  now: () => string,
): HouseholdsPort<Around> & { heard(householdId: string, tellingId: string): Promise<void> } => {
  const look = async (householdId: string): Promise<Around> => {
    const kitchen = await store.loadKitchen(householdId);
    if (kitchen === null) throw new Error(`no household ${householdId}`);
    return { kitchen, clock: { now: now(), timeZone: kitchen.household.timeZone } };
  };
  return {
    look,
    say: ({ kitchen, clock }, answer) =>
      voice.render(
        answer,
        { length: 'usual', rate: 1, volume: 'medium', whisper: false, earcons: false },
        { clock, locale: kitchen.household.locale, measures: kitchen.household.measures },
      ),
    heard: async (householdId, tellingId) => {
      for (;;) {
        const { kitchen, clock } = await look(householdId);
        const change = heardChange(
          { kitchen, clock, speaker: { personId: null }, newId: () => tellingId },
          tellingId,
        );
        if (change === null) return;
        const { outcome } = await store.commitTurn(householdId, {
          turnId: `heard:${tellingId}`,
          conversationId: 'schedule',
          deviceId: null,
          personId: null,
          at: clock.now,
          decidedOn: kitchen.version,
          changes: [change],
          conversation: null,
          reply: null,
        });
        if (outcome !== 'stale') return;
      }
    },
  };
};

/** Keeps what it was given, and answers as told. */
export const carrier = (
  name: string,
  answer: (delivery: Delivery) => Carried | Promise<Carried> = () => 'spoken',
): Carrier & { readonly carried: Delivery[] } => {
  const carried: Delivery[] = [];
  return {
    name,
    carried,
    serves: () => true,
    carry: async (delivery) => {
      carried.push(delivery);
      return answer(delivery);
    },
    close: () => Promise.resolve(),
  };
};
