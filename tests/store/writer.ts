/**
 * A process that writes turns as fast as it can until it is killed, and says each that was
 * acknowledged. Each turn takes one from a shared jar and puts one thing away: two records that must
 * change together.
 * Run: node --import tsx writer.ts sqlite|postgres PATH-OR-URL HOUSEHOLD WRITER-NAME
 */
import { writeSync } from 'node:fs';
import { isRefused, putAway, take, together } from '../../src/kitchen/index.js';
import { openPostgresStore, openSqliteStore, StoreError } from '../../src/store/index.js';

const [kind, target = '', household = '', name = ''] = process.argv.slice(2);
const store = kind === 'postgres' ? openPostgresStore(target, { connections: 2 }) : openSqliteStore(target);
const at = '2026-05-14T18:00:00.000Z';

const attempt = async (turnId: string): Promise<boolean> => {
  const kitchen = await store.loadKitchen(household);
  if (!kitchen) throw new Error('no household');
  let serial = 0;
  const change = together(
    {
      kitchen,
      clock: { now: at, timeZone: 'UTC' },
      speaker: { personId: null },
      newId: () => `${turnId}.${++serial}`,
    },
    [(doing) => take(doing, 'jar', { value: 1, unit: 'spoon' }), (doing) => putAway(doing, { name: turnId })],
  );
  if (isRefused(change)) throw new Error(change.refused);
  const result = await store.commitTurn(household, {
    turnId,
    conversationId: name,
    deviceId: null,
    personId: null,
    at,
    decidedOn: kitchen.version,
    changes: [change],
    conversation: { last: turnId },
    reply: { turnId },
  });
  return result.outcome !== 'stale';
};

for (let n = 1; ; n += 1) {
  const turnId = `${name}.${n}`;
  // Said before it is tried, and after it is acknowledged: straight to the pipe, so that a kill loses no line.
  writeSync(1, `try ${turnId}\n`);
  for (let done = false; !done;) {
    try {
      done = await attempt(turnId);
    } catch (error) {
      if (!(error instanceof StoreError) || error.fault !== 'busy') throw error;
    }
  }
  writeSync(1, `ack ${turnId}\n`);
}
