/**
 * What the service asks of a store. Two adapters answer: embedded SQLite and PostgreSQL.
 * Every method takes the household first; nothing crosses households.
 */
import type { Change, Household, Id, JournalEntry, Kitchen } from '../kitchen/model.js';
import type { Instant } from '../terms/dates.js';

/** A device that may speak for a household. The token itself is never stored. */
export interface Device {
  readonly id: Id;
  readonly householdId: Id;
  readonly name: string;
  /** SHA-256 of the 256-bit secret, hex. */
  readonly tokenHash: string;
  readonly scope: 'speak' | 'help' | 'own';
  readonly personId: Id | null;
  readonly pairedAt: Instant;
  readonly lastSeenAt: Instant | null;
  readonly revokedAt: Instant | null;
}

/** A device as it was at this version of the household's rights. */
export interface PresentDevice extends Device {
  readonly rights: number;
}

/** What is done about the household's devices. A device sent away is revoked for good. */
export type DeviceDeed =
  | { readonly kind: 'let-in'; readonly device: Device }
  | {
      readonly kind: 'change';
      readonly id: Id;
      /** Left out: as it is. */
      readonly name?: string | undefined;
      readonly scope?: Device['scope'] | undefined;
      readonly personId?: Id | null | undefined;
    }
  | { readonly kind: 'send-away'; readonly id: Id };

/** Deeds done together or not at all. */
export interface DeviceChange {
  readonly deeds: readonly DeviceDeed[];
  /** The device that asks for it, which must (still) be allowed to; null: whoever runs the machine. */
  readonly by: Id | null;
  readonly at: Instant;
  /** Address it was asked from. */
  readonly whence?: string | null;
}

export type DeviceRefusal =
  | 'no-such-device'
  /** It was revoked, which is for good. */
  | 'sent-away'
  /** No owner would be left. Whoever runs the machine may do it all the same. */
  | 'last-owner'
  /** Its token or its id is in use. */
  | 'let-in-already'
  /** Who asks may not (any more). */
  | 'not-an-owner';

export type DevicesChanged =
  | { readonly outcome: 'done'; readonly devices: readonly Device[] }
  | { readonly outcome: 'refused'; readonly why: DeviceRefusal };

/** One line of the devices' journal. */
export interface DeviceEntry {
  readonly at: Instant;
  readonly deed: DeviceDeed['kind'];
  readonly deviceId: Id;
  /** As they were after it. */
  readonly name: string;
  readonly scope: Device['scope'];
  readonly by: Id | null;
  readonly whence: string | null;
}

/** Everything one turn changes, written in one transaction or not at all. */
export interface TurnRecord {
  /** Client's id for the turn; a second turn with it is answered from the record. */
  readonly turnId: Id;
  readonly conversationId: Id;
  readonly deviceId: Id | null;
  readonly personId: Id | null;
  readonly at: Instant;
  /** The kitchen version the turn was decided on. */
  readonly decidedOn: number;
  /** Where it is another generation by now, the turn is `stale`. Left out: not looked at. */
  readonly generation?: string;
  /** The rights version it was decided under; where it moved, the turn is `stale`. Left out: not looked at. */
  readonly rights?: number | undefined;
  readonly changes: readonly Change[];
  /** Done with the changes, or not at all: when one no longer can be, the turn is `stale`. */
  readonly devices?: readonly DeviceDeed[];
  /** Opaque to the store: the conversation after the turn. */
  readonly conversation: unknown;
  /** Opaque to the store: the reply, kept for retries. */
  readonly reply: unknown;
}

export type CommitResult =
  | {
      readonly outcome: 'done';
      readonly version: number;
      readonly entries: readonly JournalEntry[];
      /** Devices as they are after the turn's deeds. */
      readonly devices: readonly Device[];
    }
  /** Somebody else changed the kitchen since `decidedOn`, or a device meant is no longer there: decide again. */
  | { readonly outcome: 'stale'; readonly version: number }
  /** This turn id was done before: here is its reply. */
  | { readonly outcome: 'repeat'; readonly reply: unknown };

/** What changed: the kitchen (read the journal), something is there to be told, or who may speak here. */
export type Rung = 'kitchen' | 'telling' | 'devices';

/** A household as JSON. Holds token hashes: keep it as you would the store itself. */
export interface HouseholdArchive {
  readonly format: 'tellshelf household 1';
  readonly createdAt: Instant;
  readonly version: number;
  readonly household: Household;
  /** By kind of record, all but the household. */
  readonly records: Readonly<Record<string, readonly { readonly id: Id }[]>>;
  readonly journal: readonly JournalEntry[];
  readonly devices: readonly Device[];
}

export interface TurnStart {
  readonly version: number;
  readonly generation: string;
  readonly rights: number;
  /** Null when this conversation has said nothing yet. */
  readonly conversation: unknown;
  /** The reply of an earlier turn with the same id, else undefined. */
  readonly earlierReply: unknown;
}

/** Something to be sent out unasked when its time comes. Once per id, however many processes run. */
export interface PlannedTelling {
  /** Unique in the household, e.g. `timer.r12.1779550200`, `summary.2026-05-14`: no id is ever told twice. */
  readonly id: Id;
  readonly kind: 'timer' | 'reminder' | 'summary' | 'note';
  readonly due: Instant;
}

export interface Telling extends PlannedTelling {
  readonly householdId: Id;
  /** Opaque to the store: what is said. Null until it was made. */
  readonly body: unknown;
  /** How often it was leased. */
  readonly attempts: number;
}

/** For `claimDue`: who takes the work, and until when it is theirs alone. */
export interface Claim {
  readonly now: Instant;
  /** Names the process, unique to its run. */
  readonly owner: string;
  readonly until: Instant;
  readonly limit: number;
}

/**
 * Leased rows for what is sent out unasked (by webhook, by broker; what devices on a socket heard
 * is in the kitchen). A row goes: planned, leased when due, made (its body written, once), settled
 * (nothing left to send). A lease that ran out is free again: its process died. Settled rows stay
 * ten days, so that planning the same id again does nothing.
 */
export interface TellingStore {
  /**
   * Makes the household's planned rows (those without a body) exactly these: adds new ones,
   * drops others that are not leased, and leaves alone every id that was already made.
   */
  planTellings(
    householdId: Id,
    wanted: readonly PlannedTelling[],
    /** Marks it as planned for these, unless the kitchen is at another version by now. */
    as?: { readonly carriers: string; readonly version: number },
  ): Promise<void>;
  /**
   * Households whose tellings are to be planned: because something changed (`since` left out), or, after
   * this id and in its order, because they were planned for other carriers.
   */
  toPlan(limit: number, since?: { readonly carriers: string; readonly after: Id }): Promise<Id[]>;
  /** Households with a timer or reminder not heard yet that came due after the one and up to the other. */
  householdsDue(after: Instant, until: Instant): Promise<Id[]>;
  /** Across households: due at or before `now`, not settled, not leased. Earliest first; leases them. */
  claimDue(claim: Claim): Promise<Telling[]>;
  /** Writes the body if there is none and the lease is still the owner's; false otherwise. */
  makeTelling(householdId: Id, id: Id, owner: string, body: unknown, at: Instant): Promise<boolean>;
  /** Done with sending. False when the lease was lost. */
  settleTelling(householdId: Id, id: Id, owner: string, at: Instant): Promise<boolean>;
  /** Gives the lease up; it can be claimed again from `retryAt` (which does not change `due`). */
  releaseTelling(householdId: Id, id: Id, owner: string, retryAt: Instant): Promise<boolean>;
}

/** A device that waits until an owner enters its code. Neither code nor token is stored as it is. */
export interface Pairing {
  readonly codeHash: string;
  readonly name: string;
  readonly tokenHash: string;
  readonly expiresAt: Instant;
}

/** Devices that wait to be let in, seen by every server. They belong to no household yet. */
export interface PairingStore {
  /** `full` when `atMost` wait already (those past their time are dropped first), `share-full` when as many wait from there. */
  addPairing(
    pairing: Pairing,
    when: {
      readonly now: Instant;
      readonly atMost: number;
      /** Who asks, and how many of its may wait. */
      readonly from?: { readonly address: string; readonly atMost: number };
    },
  ): Promise<'waiting' | 'code-in-use' | 'full' | 'share-full'>;
  /** The device with this code, which goes on waiting; null when there is none, or it was let in meanwhile. */
  waitingPairing(codeHash: string, now: Instant): Promise<Pairing | null>;
  /** The device with this code, once: whoever asks next gets null, as does who comes too late. */
  takePairing(codeHash: string, now: Instant): Promise<Pairing | null>;
  /** Counts a code tried by a household; answers how many since the first that still counts. */
  countGuess(
    householdId: Id,
    when: { readonly now: Instant; readonly forgottenAt: Instant },
  ): Promise<number>;
  /** One of those counted was right: it does not count. The wrong ones do, whatever was right in between. */
  uncountGuess(householdId: Id): Promise<void>;
}

/** Where one device takes notices while no page of it is open: a push service's address and the browser's keys. */
export interface NoticeAddress {
  readonly deviceId: Id;
  readonly endpoint: string;
  /** Base64url, as the browser gave them (RFC 8291): its public key, its secret. */
  readonly p256dh: string;
  readonly auth: string;
}

export interface NoticeStore {
  /** Of devices that are still let in, each with whose it is. */
  noticeAddresses(householdId: Id): Promise<readonly (NoticeAddress & { readonly personId: Id | null })[]>;
  /** One a device: a later one takes its place. */
  keepNoticeAddress(householdId: Id, address: NoticeAddress): Promise<void>;
  /** The device's; with an endpoint, only while it is still that one. */
  dropNoticeAddress(householdId: Id, deviceId: Id, endpoint?: string): Promise<void>;
}

export interface Store extends TellingStore, PairingStore, NoticeStore {
  /** Applies migrations under a lock. Safe to call from many processes. */
  migrate(): Promise<void>;
  close(): Promise<void>;
  /** Reads, writes and keeps something of no meaning, as a turn would. @throws StoreError when it cannot. */
  probe(): Promise<void>;

  /** Writes a whole new household. Fails if the id is taken. */
  createHousehold(kitchen: Kitchen, at: Instant): Promise<void>;
  /** Deletes all of a household: records, journal, conversations, devices. */
  deleteHousehold(householdId: Id): Promise<void>;
  /** Household ids, for schedulers and the command line. */
  householdIds(): Promise<Id[]>;
  /** The kitchen at its present version, or null when there is no such household. */
  loadKitchen(householdId: Id): Promise<Kitchen | null>;

  /** One cheap read before a turn: version, conversation, and an earlier reply. */
  beginTurn(householdId: Id, conversationId: Id, turnId: Id): Promise<TurnStart | null>;
  /**
   * Writes a turn. When it settles, changes are on the disk; `seen` is called as soon as they can be
   * read, which may be earlier: whoever goes on from there acknowledges nothing before it settles.
   * A turn without changes outlasts a killed process, not always a power cut.
   */
  commitTurn(householdId: Id, turn: TurnRecord, seen?: (result: CommitResult) => void): Promise<CommitResult>;

  /** Entries with version above `after`, oldest first; for catching up and for "what changed". */
  journalAfter(householdId: Id, after: number, limit?: number): Promise<JournalEntry[]>;
  /** The newest entries, newest first. */
  journalLatest(householdId: Id, limit: number): Promise<JournalEntry[]>;

  /** Lets a device in from the machine itself. Fails if its id or token is in use. */
  addDevice(device: Device): Promise<void>;
  /** Changes who may speak here: decided on the devices as they are, one change after another. */
  changeDevices(householdId: Id, change: DeviceChange): Promise<DevicesChanged>;
  /** By token hash, across households: the only look-up that starts without a household. */
  deviceByTokenHash(tokenHash: string): Promise<PresentDevice | null>;
  devices(householdId: Id): Promise<Device[]>;
  /** The household's rights version; null when there is no such household. */
  rightsOf(householdId: Id): Promise<number | null>;
  /** The newest lines of the devices' journal, newest first. */
  deviceJournal(householdId: Id, limit: number): Promise<DeviceEntry[]>;
  /** A device was heard from. Changes no rights. */
  deviceHeard(householdId: Id, deviceId: Id, at: Instant): Promise<void>;

  /** A copy of everything, while in use: to a file (SQLite), or as one archive a household in a directory. */
  backup(target: string): Promise<void>;

  /** All that is kept of a household, as one JSON document, or null when there is no such household. */
  archiveHousehold(householdId: Id): Promise<HouseholdArchive | null>;
  /**
   * Brings back what `archiveHousehold` gave (as read from a file: it is checked), whole or not at all.
   * Fails if the id is taken, unless told to replace what is there: its records and journal go, its
   * devices stay as they are (one that was revoked stays so), and the archive's others come back.
   */
  restoreHousehold(archive: unknown, how?: { readonly replace: boolean }): Promise<Id>;

  /** The household's conversations spoken in since an instant, latest first, as they were kept; at most `limit`. */
  recentConversations(householdId: Id, since: Instant, limit: number): Promise<readonly unknown[]>;

  /**
   * Drops replies kept for retries and conversations not spoken in, both from before an instant.
   * Answers how many of each went.
   */
  forgetTalk(
    householdId: Id,
    before: Instant,
  ): Promise<{ readonly replies: number; readonly conversations: number }>;

  /**
   * Hears that a household changed in another process. It may ring without a change; on PostgreSQL a
   * change goes unrung when the process that made it dies right after. Stops with what it returns.
   */
  subscribe(householdId: Id, hear: (what: Rung) => void): Promise<() => void>;
}
