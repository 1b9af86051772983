/** What goes out to a webhook or a broker: one thing said unasked, as JSON. */
import type { Id } from '../kitchen/model.js';
import type { Spoken } from '../speech/index.js';
import type { PlannedTelling } from '../store/port.js';
import type { Instant } from '../terms/dates.js';

export interface Delivery {
  /** The same however often it is sent: a receiver that has seen it lets it pass. */
  readonly id: Id;
  readonly household: Id;
  readonly kind: PlannedTelling['kind'];
  readonly due: Instant;
  readonly sentAt: Instant;
  readonly speech: Spoken;
}

/**
 * `spoken`: handed to something that speaks it. `nobody`: the carrier works and nobody listens
 * there; it is kept and tried again. `unwanted`: nobody asked for it this way; it is not tried again.
 */
export type Carried = 'spoken' | 'nobody' | 'unwanted';

/** Whom a delivery is for, and how it is to come. */
export interface For {
  /** Null: everybody. */
  readonly personId: Id | null;
  /** In quiet hours: without a sound. */
  readonly quiet: boolean;
}

/** A way out. One that cannot carry it now throws; it is tried again later. */
export interface Carrier {
  /** Short, unique, letters only: part of the row's id. */
  readonly name: string;
  /** Whether this household's tellings go this way. */
  serves(householdId: Id): boolean;
  carry(delivery: Delivery, signal: AbortSignal, to: For): Promise<Carried>;
  close(): Promise<void>;
}

/** A carrier's refusal that says when to come back, or that there is no point. */
export class CarrierError extends Error {
  override readonly name = 'CarrierError';
  constructor(
    message: string,
    /** Seconds to wait at least; null: as usual. */
    readonly retryAfter: number | null = null,
    /** Never again, for this telling. */
    readonly final = false,
  ) {
    super(message);
  }
}
