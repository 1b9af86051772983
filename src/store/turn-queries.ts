/** The queries every turn asks, compiled once for a database. */
import { compiledOnce } from './compiled-once.js';

/** @param lockRows see `createSqlStore`. */
export const turnQueries = (lockRows: boolean) => ({
  begin: compiledOnce(
    ['household', 'conversation', 'turn'],
    (db, values: { readonly household: string; readonly conversation: string; readonly turn: string }) =>
      db
        .selectFrom('household')
        .leftJoin('conversation', (join) =>
          join
            .onRef('conversation.household_id', '=', 'household.household_id')
            .on('conversation.id', '=', values.conversation),
        )
        .leftJoin('turn', (join) =>
          join.onRef('turn.household_id', '=', 'household.household_id').on('turn.id', '=', values.turn),
        )
        .select([
          'household.version',
          'household.generation',
          'household.rights',
          'conversation.body as conversation',
          'turn.reply',
        ])
        .where('household.household_id', '=', values.household),
  ),

  /** Takes the household's row, so that two who write to one household go one after the other. */
  takeVersion: compiledOnce(['household'], (db, { household }: { readonly household: string }) => {
    const version = db
      .selectFrom('household')
      .select(['version', 'generation', 'rights'])
      .where('household_id', '=', household);
    return lockRows ? version.forNoKeyUpdate() : version;
  }),

  rights: compiledOnce(['household'], (db, { household }: { readonly household: string }) =>
    db.selectFrom('household').select('rights').where('household_id', '=', household),
  ),

  earlierReply: compiledOnce(
    ['household', 'turn'],
    (db, values: { readonly household: string; readonly turn: string }) =>
      db
        .selectFrom('turn')
        .select('reply')
        .where('household_id', '=', values.household)
        .where('id', '=', values.turn),
  ),

  keepReply: compiledOnce(
    ['household_id', 'id', 'conversation_id', 'at', 'version', 'reply'],
    (
      db,
      values: {
        readonly household_id: string;
        readonly id: string;
        readonly conversation_id: string;
        readonly at: string;
        readonly version: number;
        readonly reply: string;
      },
    ) => db.insertInto('turn').values(values),
  ),

  keepConversation: compiledOnce(
    ['household_id', 'id', 'at', 'body'],
    (
      db,
      values: {
        readonly household_id: string;
        readonly id: string;
        readonly at: string;
        readonly body: string;
      },
    ) =>
      db
        .insertInto('conversation')
        .values(values)
        .onConflict((conflict) =>
          conflict
            .columns(['household_id', 'id'])
            .doUpdateSet((set) => ({ at: set.ref('excluded.at'), body: set.ref('excluded.body') })),
        ),
  ),

  /** The same, of a change to what is told unasked: that is to be planned again. */
  raiseVersionAndPlan: compiledOnce(
    ['household', 'version'],
    (db, values: { readonly household: string; readonly version: number }) =>
      db
        .updateTable('household')
        .set({ version: values.version, planned: '' })
        .where('household_id', '=', values.household),
  ),

  raiseVersion: compiledOnce(
    ['household', 'version'],
    (db, values: { readonly household: string; readonly version: number }) =>
      db
        .updateTable('household')
        .set({ version: values.version })
        .where('household_id', '=', values.household),
  ),
});

export type TurnQueries = ReturnType<typeof turnQueries>;
