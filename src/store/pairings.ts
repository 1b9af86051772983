/** Devices that wait to be let in. Instants are ISO 8601 in UTC, so they compare as text. */
import type { PairingStore } from './port.js';
import { columnText } from './records.js';
import type { Scope } from './scope.js';

/** Whose guesses are counted: the household's together, for an owner can let in more owners. */
const ALL = 'all';

export const createPairings = (scope: Scope): PairingStore => ({
  addPairing: ({ codeHash, name, tokenHash, expiresAt }, { now, atMost, from }) =>
    scope.everyone('write', async (db) => {
      await db.deleteFrom('pairing').where('expires_at', '<=', now).execute();
      const { count } = await db
        .selectFrom('pairing')
        .select((select) => select.fn.countAll().as('count'))
        .executeTakeFirstOrThrow();
      if (Number(count) >= atMost) return 'full';
      if (from) {
        const theirs = await db
          .selectFrom('pairing')
          .select((select) => select.fn.countAll().as('count'))
          .where('asked_from', '=', from.address)
          .executeTakeFirstOrThrow();
        if (Number(theirs.count) >= from.atMost) return 'share-full';
      }
      const { numInsertedOrUpdatedRows } = await db
        .insertInto('pairing')
        .values({
          code_hash: codeHash,
          name: columnText(name),
          token_hash: tokenHash,
          expires_at: expiresAt,
          asked_from: from?.address ?? '',
        })
        .onConflict((conflict) => conflict.column('code_hash').doNothing())
        .executeTakeFirst();
      return numInsertedOrUpdatedRows === 1n ? 'waiting' : 'code-in-use';
    }),

  waitingPairing: (codeHash, now) =>
    scope.everyone('read', async (db) => {
      const row = await db
        .selectFrom('pairing')
        .selectAll()
        .where('code_hash', '=', codeHash)
        .where('expires_at', '>', now)
        .executeTakeFirst();
      if (!row) return null;
      // Asked apart: who waits and who was let in may lie on different nodes.
      const token = await db
        .selectFrom('device_token')
        .selectAll()
        .where('token_hash', '=', row.token_hash)
        .executeTakeFirst();
      return token
        ? null
        : { codeHash, name: row.name, tokenHash: row.token_hash, expiresAt: row.expires_at };
    }),

  takePairing: (codeHash, now) =>
    scope.everyone('write', async (db) => {
      // Of two who take it at once, one finds the row gone.
      const row = await db
        .deleteFrom('pairing')
        .where('code_hash', '=', codeHash)
        .returningAll()
        .executeTakeFirst();
      return row && row.expires_at > now
        ? { codeHash, name: row.name, tokenHash: row.token_hash, expiresAt: row.expires_at }
        : null;
    }),

  countGuess: (householdId, { now, forgottenAt }) =>
    scope.write(householdId, async (db) => {
      await db
        .deleteFrom('pairing_guess')
        .where('household_id', '=', householdId)
        .where('forgotten_at', '<=', now)
        .execute();
      const { guesses } = await db
        .insertInto('pairing_guess')
        .values({
          household_id: householdId,
          device_id: ALL,
          guesses: 1,
          forgotten_at: forgottenAt,
        })
        .onConflict((conflict) =>
          conflict
            .columns(['household_id', 'device_id'])
            .doUpdateSet((set) => ({ guesses: set('pairing_guess.guesses', '+', 1) })),
        )
        .returning('guesses')
        .executeTakeFirstOrThrow();
      return guesses;
    }),

  uncountGuess: async (householdId) => {
    await scope.write(householdId, (db) =>
      db
        .updateTable('pairing_guess')
        .set((set) => ({ guesses: set('guesses', '-', 1) }))
        .where('household_id', '=', householdId)
        .where('device_id', '=', ALL)
        .where('guesses', '>', 0)
        .execute(),
    );
  },
});
