/** What dialogue takes and gives. `decide` is pure: the same arguments, the same outcome. */
import type { Change, Id, JournalEntry, Kitchen } from '../kitchen/model.js';
import type { Answer, Listener } from '../speech/answer.js';
import type { Clock, Instant } from '../terms/dates.js';
import type { Expectation, Understood } from '../understanding/intents.js';

/** Who speaks, and on what. */
export interface Speaker {
  readonly personId: Id | null;
  readonly deviceId: Id | null;
  /** May decide who else speaks here. */
  readonly owner?: boolean;
}

/** A device of the household, as far as it is spoken of. */
export interface KnownDevice {
  readonly id: Id;
  readonly name: string;
  readonly owner: boolean;
  readonly lastSeenAt: Instant | null;
}

/** What was found under a code that was said: the waiting device's name, or why there is none. */
export interface KnockedOn {
  readonly code: string;
  readonly found: { readonly name: string } | 'nobody' | 'too-many-guesses';
}

/** What is done about devices: no change of the kitchen, but committed with the turn like one. */
export type Effect =
  | { readonly kind: 'let-in'; readonly code: string; readonly deviceId: Id }
  | { readonly kind: 'rename-device'; readonly deviceId: Id; readonly name: string }
  | { readonly kind: 'send-away-device'; readonly deviceId: Id };

/** What decide may look at besides the conversation. */
export interface Surroundings {
  readonly kitchen: Kitchen;
  /** Newest first; enough to tell and take back what was done. */
  readonly journal: readonly JournalEntry[];
  readonly clock: Clock;
  readonly speaker: Speaker;
  /**
   * The household's other conversations, latest first; only given to a turn that may pick up there
   * (`picksUp`). What was begun on the phone goes on in the kitchen.
   */
  readonly elsewhere?: readonly Conversation[];
  /** Devices let in and not sent away; only given to a decision that asked for them (`Outcome.lookUp`). */
  readonly devices?: readonly KnownDevice[];
  /** Who waits with the code that was said; given as `devices` is. */
  readonly knockedOn?: KnockedOn;
  /** A fresh id at each call; the same sequence when the turn is decided again. */
  readonly newId: () => Id;
}

export interface Heard {
  readonly understanding: Understood;
  /** Text of the marker touched with this turn. */
  readonly touched: string | null;
  /** The last SSML mark reached, when the last answer was cut off. */
  readonly cutAt: string | null;
  /** Entries of the journal this listener was told of, unasked, since the last turn. */
  readonly told?: readonly Id[];
}

/** One conversation so far, as plain JSON: a store keeps it between turns. `state` is dialogue's own. */
export interface Conversation {
  readonly format: 1;
  readonly listener: Listener;
  readonly expecting: Expectation;
  readonly lastAt: Instant | null;
  /** Sentences of the last answer, for "repeat", "go on" and "what did you say". */
  readonly lastSentences: readonly string[];
  readonly state: unknown;
}

export interface Outcome {
  readonly conversation: Conversation;
  /** In order; all are committed with the turn, or none. */
  readonly changes: readonly Change[];
  /** Committed with the changes, or none is. */
  readonly effects: readonly Effect[];
  readonly answer: Answer;
  /** Who took what was heard, outermost first, for whoever asks why: files of this room, handlers by their intent. */
  readonly by: readonly string[];
  /** Nothing was decided yet: look this up and decide again with it. */
  readonly lookUp?: LookUp;
}

/** What the kitchen does not hold, and only few turns need. */
export type LookUp = { readonly kind: 'devices' } | { readonly kind: 'code'; readonly code: string };

export type Decide = (conversation: Conversation, heard: Heard, around: Surroundings) => Outcome;
