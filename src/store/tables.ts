/**
 * The tables, as both databases hold them. Every row begins with its household's id, and so does
 * every key: a database that is sharded by household never has to look in two shards for one turn.
 *
 * Records are kept whole, as JSON, in `body`. Beside it stand only the columns that something
 * looks up, counts or guards; they are written from the record and never read back into it.
 */
import type { Generated } from 'kysely';

/** What every record's table has. */
export interface RecordTable {
  household_id: string;
  id: string;
  /** The record as JSON text. */
  body: string;
}

/** `version` rises by one with each journal entry; writing it is what decides between two who write at once. */
export interface HouseholdTable {
  household_id: string;
  version: number;
  name: string;
  time_zone: string;
  body: string;
  created_at: string;
  /** Rises with each change of who may do what here; what was decided under an older one is decided again. */
  rights: Generated<number>;
  /** Another one when the household was made or brought back: what is remembered of an older one is not of this. */
  generation: Generated<string>;
  /** For which carriers what is told unasked was planned; empty when it is to be planned (again). */
  planned: Generated<string>;
}

export interface PersonTable extends RecordTable {
  name: string;
}

export interface PlaceTable extends RecordTable {
  name: string;
  parent_id: string | null;
  kind: string;
}

export interface MarkerTable extends RecordTable {
  last_item_id: string | null;
}

/** `marker_id` is unique among a household's items that are not gone: a marker stands on one thing. */
export interface ItemTable extends RecordTable {
  name: string;
  place_id: string | null;
  marker_id: string | null;
  batch_id: string | null;
  added_at: string;
  /** Null while the food is there. */
  gone_at: string | null;
}

export interface PurchaseTable extends RecordTable {
  name: string;
}

export interface NoteTable extends RecordTable {
  for_person_id: string | null;
  at: string;
}

export interface ReminderTable extends RecordTable {
  due: string;
  delivered_at: string | null;
}

export interface StockTakeTable extends RecordTable {
  place_id: string;
  finished_at: string | null;
}

export interface PowerCutTable extends RecordTable {
  since: string;
  back_at: string | null;
}

/** One row a change, never rewritten. `body` holds what it was about and its ops, before and after. */
export interface JournalTable {
  household_id: string;
  version: number;
  id: string;
  at: string;
  person_id: string | null;
  device_id: string | null;
  turn_id: string | null;
  verb: string;
  undoes: string | null;
  body: string;
}

/** How far each conversation has got. */
export interface ConversationTable {
  household_id: string;
  id: string;
  at: string;
  body: string;
}

/** Replies by turn id, so that a retried turn is answered and not done again. */
export interface TurnTable {
  household_id: string;
  id: string;
  conversation_id: string;
  at: string;
  version: number;
  reply: string;
}

export interface DeviceTable {
  household_id: string;
  id: string;
  name: string;
  token_hash: string;
  scope: string;
  person_id: string | null;
  paired_at: string;
  last_seen_at: string | null;
  revoked_at: string | null;
}

/**
 * Which household a token belongs to: the one table that is looked into before the household is
 * known. It says nothing else; the device itself is then read within its household.
 */
export interface DeviceTokenTable {
  token_hash: string;
  household_id: string;
  device_id: string;
}

/** What is to be said unasked: planned, leased to one process when due, made, settled. */
export interface TellingTable {
  household_id: string;
  id: string;
  kind: string;
  due: string;
  /** When it may be claimed (again); `due` until a process gave it back. */
  claim_from: string;
  body: string | null;
  made_at: string | null;
  attempts: Generated<number>;
  owner: string | null;
  leased_until: string | null;
  settled_at: string | null;
}

/** A device that waits to be let in; it has no household yet. */
export interface PairingTable {
  code_hash: string;
  name: string;
  token_hash: string;
  expires_at: string;
  /** Whose share of the desk it takes: an address. */
  asked_from: Generated<string>;
}

/** Codes an owner entered, to limit the wrong ones. */
export interface PairingGuessTable {
  household_id: string;
  device_id: string;
  guesses: number;
  forgotten_at: string;
}

/** Where a device's browser takes notices (W3C Push API). */
export interface NoticeAddressTable {
  household_id: string;
  device_id: string;
  endpoint: string;
  p256dh: string;
  auth: string;
}

/** One line a device and change of it, never rewritten: who did what, from where. */
export interface DeviceJournalTable {
  household_id: string;
  rights: number;
  device_id: string;
  at: string;
  deed: string;
  name: string;
  scope: string;
  /** Null: whoever runs the machine. */
  by_device_id: string | null;
  /** Address it was asked from, where there was one. */
  whence: string | null;
}

export interface Database {
  household: HouseholdTable;
  person: PersonTable;
  place: PlaceTable;
  marker: MarkerTable;
  item: ItemTable;
  purchase: PurchaseTable;
  note: NoteTable;
  reminder: ReminderTable;
  stock_take: StockTakeTable;
  power_cut: PowerCutTable;
  journal: JournalTable;
  conversation: ConversationTable;
  turn: TurnTable;
  device: DeviceTable;
  device_token: DeviceTokenTable;
  device_journal: DeviceJournalTable;
  telling: TellingTable;
  pairing: PairingTable;
  pairing_guess: PairingGuessTable;
  notice_address: NoticeAddressTable;
}
