/** What is said unasked: leased rows. Instants are ISO 8601 in UTC, so they compare as text. */
import {
  sql,
  type Expression,
  type ExpressionBuilder,
  type Kysely,
  type Selectable,
  type SqlBool,
} from 'kysely';
import type { Id } from '../kitchen/model.js';
import type { Scope } from './scope.js';
import type { PlannedTelling, Telling, TellingStore } from './port.js';
import type { Database, TellingTable } from './tables.js';

const tellingOf = (row: Selectable<TellingTable>): Telling => ({
  householdId: row.household_id,
  id: row.id,
  kind: row.kind as Telling['kind'],
  due: row.due,
  body: row.body === null ? null : JSON.parse(row.body),
  attempts: row.attempts,
});

/** Settled rows are kept so long, to be known when they are planned again. */
const KEPT_MS = 10 * 86_400_000;

export const createTellings = (scope: Scope): TellingStore => {
  const one = (db: Kysely<Database>, householdId: Id, id: Id) =>
    db.updateTable('telling').where('household_id', '=', householdId).where('id', '=', id);

  const isFree =
    (now: string) =>
    (where: ExpressionBuilder<Database, 'telling'>): Expression<SqlBool> =>
      where.and([
        where('settled_at', 'is', null),
        where('claim_from', '<=', now),
        where.or([where('owner', 'is', null), where('leased_until', '<=', now)]),
      ]);

  const changed = (rows: { readonly numUpdatedRows: bigint }): boolean => rows.numUpdatedRows > 0n;

  const plan = async (
    db: Kysely<Database>,
    householdId: Id,
    wanted: readonly PlannedTelling[],
  ): Promise<void> => {
    const free = db
      .deleteFrom('telling')
      .where('household_id', '=', householdId)
      .where('body', 'is', null)
      .where('owner', 'is', null);
    const ids = wanted.map(({ id }) => id);
    await (ids.length > 0 ? free.where('id', 'not in', ids) : free).execute();
    for (const { id, kind, due } of wanted) {
      await db
        .insertInto('telling')
        .values({ household_id: householdId, id, kind, due, claim_from: due })
        .onConflict((conflict) =>
          conflict
            .columns(['household_id', 'id'])
            .doUpdateSet({ due, claim_from: due })
            .where('telling.body', 'is', null)
            .where('telling.owner', 'is', null)
            .where('telling.due', '!=', due),
        )
        .execute();
    }
  };

  return {
    planTellings: (householdId, wanted, as) =>
      scope.write(
        householdId,
        async (db) => {
          await plan(db, householdId, wanted);
          if (as)
            await db
              .updateTable('household')
              .set({ planned: as.carriers })
              .where('household_id', '=', householdId)
              .where('version', '=', as.version)
              .execute();
        },
        // Lost in a power cut, it is planned again.
        { surely: false },
      ),

    toPlan: (limit, since) =>
      scope.everyone('read', async (db) => {
        const rows = await db
          .selectFrom('household')
          .select('household_id')
          .where((where) =>
            since
              ? where.and([where('planned', '!=', since.carriers), where('household_id', '>', since.after)])
              : where(sql.ref('planned'), '=', sql.lit('')),
          )
          .orderBy('household_id')
          .limit(limit)
          .execute();
        return rows.map(({ household_id }) => household_id);
      }),

    householdsDue: (after, until) =>
      scope.everyone('read', async (db) => {
        const rows = await db
          .selectFrom('reminder')
          .select('household_id')
          .distinct()
          .where(sql.ref('delivered_at'), 'is', null)
          .where('due', '>', after)
          .where('due', '<=', until)
          .execute();
        return rows.map(({ household_id }) => household_id);
      }),

    // Read without locks, over all households; then each row is taken by an update of its own, which names its
    // household and looks again whether it is free. Of two who want a row one gets it, and nobody waits.
    claimDue: async ({ now, owner, until, limit }) => {
      const due = await scope.everyone('read', (db) =>
        db
          .selectFrom('telling')
          .select(['household_id', 'id'])
          .where(isFree(now))
          .orderBy('claim_from')
          .orderBy('id')
          // More than are wanted, for others are taking from the same.
          .limit(2 * limit)
          .execute(),
      );
      const lease = ({ household_id, id }: (typeof due)[number]) =>
        scope.write(
          household_id,
          (db) =>
            one(db, household_id, id)
              .where(isFree(now))
              .set((set) => ({ owner, leased_until: until, attempts: set('attempts', '+', 1) }))
              .returningAll()
              .executeTakeFirst(),
          // A lease lost in a power cut is a row that is free.
          { surely: false },
        );
      const claimed: Telling[] = [];
      let failed: unknown = null;
      for (const row of due) {
        if (claimed.length === limit) break;
        try {
          const leased = await lease(row);
          if (leased) claimed.push(tellingOf(leased));
        } catch (error) {
          // One household's node may be out of reach while those of others are not.
          failed = error;
        }
      }
      if (failed !== null && claimed.length === 0) throw failed;
      return claimed;
    },

    makeTelling: (householdId, id, owner, body, at) =>
      scope.write(householdId, async (db) =>
        changed(
          await one(db, householdId, id)
            .set({ body: JSON.stringify(body), made_at: at })
            .where('body', 'is', null)
            .where('owner', '=', owner)
            .where('leased_until', '>', at)
            .executeTakeFirst(),
        ),
      ),

    settleTelling: (householdId, id, owner, at) =>
      scope.write(householdId, async (db) => {
        const settled = changed(
          await one(db, householdId, id)
            .set({ settled_at: at, owner: null, leased_until: null })
            .where('owner', '=', owner)
            .where('leased_until', '>', at)
            .executeTakeFirst(),
        );
        await db
          .deleteFrom('telling')
          .where('household_id', '=', householdId)
          .where('settled_at', '<', new Date(Date.parse(at) - KEPT_MS).toISOString())
          .execute();
        return settled;
      }),

    releaseTelling: (householdId, id, owner, retryAt) =>
      scope.write(householdId, async (db) =>
        changed(
          await one(db, householdId, id)
            .set({ owner: null, leased_until: null, claim_from: retryAt })
            .where('owner', '=', owner)
            .executeTakeFirst(),
        ),
      ),
  };
};
