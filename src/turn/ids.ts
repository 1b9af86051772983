/** Ids that come out the same when a turn is decided again. */
import { createHash } from 'node:crypto';

/**
 * A source of ids for one turn. Derived from the household and the turn, so a turn that is
 * decided a second time (after a retry, or because someone else changed the kitchen) names
 * its records alike, and two turns never share a name.
 */
export const idsOf = (household: string, turn: string): (() => string) => {
  const stem = createHash('sha256').update(`${household}\n${turn}`).digest('base64url').slice(0, 16);
  let count = 0;
  return () => {
    count += 1;
    return `${stem}.${count}`;
  };
};

/** What a turn said, in short, to notice an id that is used for two different turns. */
export const fingerprint = (said: unknown): string =>
  createHash('sha256').update(JSON.stringify(said)).digest('base64url').slice(0, 22);
