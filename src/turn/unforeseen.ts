/**
 * What a turn answers when something broke that nobody foresaw, in understanding it, deciding it or
 * wording it: a plain sentence, a line for the log, and nothing changed.
 */
import { randomUUID } from 'node:crypto';
import type { Conversation } from '../dialogue/api.js';
import type { Id } from '../kitchen/model.js';
import { StoreError } from '../store/errors.js';
import { TurnProblem } from './problems.js';

/** For the log. The error's message may hold what was said. */
export interface TurnFault {
  /** To find it by; the reply holds it too. */
  readonly id: Id;
  readonly householdId: Id;
  readonly error: unknown;
}

/** A store that cannot be reached or a turn that is refused is told as what it is. */
export const isForeseen = (error: unknown): boolean =>
  error instanceof TurnProblem || error instanceof StoreError;

export const newFaultId = (): Id => `f${randomUUID().replaceAll('-', '').slice(0, 12)}`;

/**
 * A conversation as the store keeps it. Marked when its last turn broke: if the next breaks as well,
 * what it holds may be the cause, and it begins afresh instead of breaking for ever.
 */
type Kept = Conversation & { readonly broke?: true };

export const keptAfterFault = (earlier: Conversation): Kept => ({ ...earlier, broke: true });

export const readKept = (
  kept: unknown,
): { readonly earlier: Conversation | null; readonly broke: boolean } => {
  if (kept === null || kept === undefined) return { earlier: null, broke: false };
  const { broke, ...earlier } = kept as Kept;
  return { earlier, broke: broke === true };
};
