/** Journal entries to rows and back. */
import type { Insertable, Kysely, Selectable } from 'kysely';
import type { Change, Id, JournalEntry, Verb } from '../kitchen/model.js';
import type { Database, JournalTable } from './tables.js';
import type { TurnRecord } from './port.js';

/** Changes of a turn as the entries they become; an entry's id is its version, unique in its household. */
export const entriesOf = (turn: TurnRecord, after: number): readonly JournalEntry[] =>
  turn.changes.map((change: Change, index) => ({
    ...change,
    id: `e${after + index + 1}`,
    version: after + index + 1,
    at: turn.at,
    personId: turn.personId,
    deviceId: turn.deviceId,
    turnId: turn.turnId,
  }));

export const entryRow = (householdId: Id, entry: JournalEntry): Insertable<JournalTable> => ({
  household_id: householdId,
  version: entry.version,
  id: entry.id,
  at: entry.at,
  person_id: entry.personId,
  device_id: entry.deviceId,
  turn_id: entry.turnId,
  verb: entry.verb,
  undoes: entry.undoes ?? null,
  body: JSON.stringify({
    about: entry.about,
    ops: entry.ops,
    ...(entry.doerId ? { doerId: entry.doerId } : {}),
  }),
});

const entryOf = (row: Selectable<JournalTable>): JournalEntry => ({
  ...(JSON.parse(row.body) as Pick<JournalEntry, 'about' | 'ops' | 'doerId'>),
  verb: row.verb as Verb,
  id: row.id,
  version: row.version,
  at: row.at,
  personId: row.person_id,
  deviceId: row.device_id,
  turnId: row.turn_id,
  ...(row.undoes === null ? {} : { undoes: row.undoes }),
});

export const readJournal = async (
  db: Kysely<Database>,
  householdId: Id,
  which: { readonly after: number; readonly limit: number; readonly order: 'asc' | 'desc' },
): Promise<JournalEntry[]> => {
  const rows = await db
    .selectFrom('journal')
    .selectAll()
    .where('household_id', '=', householdId)
    .where('version', '>', which.after)
    .orderBy('version', which.order)
    .limit(which.limit)
    .execute();
  return rows.map(entryOf);
};
