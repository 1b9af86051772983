/**
 * What a decision may ask for that is no part of the kitchen: the household's devices, who waits with a
 * code. It is looked up only then, and the turn is decided again with it.
 */
import type { Effect, Outcome, Surroundings } from '../dialogue/api.js';
import type { DecidedMove } from '../dialogue/index.js';
import type { HeardMove } from './heard-moves.js';
import type { DeviceDeed, Pairing, Store } from '../store/port.js';
import type { Id } from '../kitchen/model.js';
import { knockedOn } from './waiting-devices.js';

/** No turn needs more: devices, and one code. */
const LOOKS = 4;

type LookedUp = Pick<Surroundings, 'devices' | 'knockedOn'>;

export interface Decided {
  readonly outcome: Outcome;
  /** Move by move. */
  readonly each: readonly DecidedMove<HeardMove>[];
  readonly deeds: readonly DeviceDeed[];
  /** When the turn was committed: a device let in waits no more. It could be let in nowhere else anyway. */
  readonly afterwards: () => Promise<unknown>;
}

/** Decides, looking up what is asked for, until something was decided. */
export const decideLookingUp = async (
  store: Store,
  { householdId }: { readonly householdId: Id },
  now: string,
  decide: (found: LookedUp) => Pick<Decided, 'outcome' | 'each'>,
): Promise<Decided> => {
  let found: LookedUp = {};
  let waiting: Pairing | null = null;
  for (let look = 0; look <= LOOKS; look += 1) {
    const { outcome, each } = decide(found);
    const { lookUp } = outcome;
    if (!lookUp) {
      const deeds = deedsOf(outcome.effects, waiting, householdId, now);
      const letIn = deeds.some(({ kind }) => kind === 'let-in') ? waiting : null;
      const afterwards = async () => letIn && store.takePairing(letIn.codeHash, now);
      return { outcome, each, deeds, afterwards };
    }
    if (lookUp.kind === 'devices') {
      const devices = (await store.devices(householdId)).filter(({ revokedAt }) => revokedAt === null);
      found = {
        ...found,
        devices: devices.map(({ id, name, scope, lastSeenAt }) => ({
          id,
          name,
          owner: scope === 'own',
          lastSeenAt,
        })),
      };
    } else {
      const { code } = lookUp;
      const who = await knockedOn(store, code, householdId, now);
      waiting = typeof who === 'string' ? null : who;
      found = {
        ...found,
        knockedOn: {
          code,
          found: who === 'wrong' ? 'nobody' : who === 'too-many' ? 'too-many-guesses' : { name: who.name },
        },
      };
    }
  }
  throw new Error('a turn asked for one thing after another and never decided');
};

const deedsOf = (
  effects: readonly Effect[],
  waiting: Pairing | null,
  householdId: Id,
  now: string,
): readonly DeviceDeed[] =>
  effects.flatMap((effect): DeviceDeed[] => {
    switch (effect.kind) {
      case 'rename-device':
        return [{ kind: 'change', id: effect.deviceId, name: effect.name }];
      case 'send-away-device':
        return [{ kind: 'send-away', id: effect.deviceId }];
      case 'let-in':
        return waiting === null
          ? []
          : [
              {
                kind: 'let-in',
                device: {
                  id: effect.deviceId,
                  householdId,
                  name: waiting.name,
                  tokenHash: waiting.tokenHash,
                  // As the page does unless told otherwise: enough to talk, not to let others in.
                  scope: 'speak',
                  personId: null,
                  pairedAt: now,
                  lastSeenAt: null,
                  revokedAt: null,
                },
              },
            ];
    }
  });
