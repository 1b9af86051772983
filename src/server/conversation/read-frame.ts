/** One frame to one message, or to the problem with it. */
import secureJson from 'secure-json-parse';
import { clientMessage, type ClientMessage } from '../../../shared/wire/socket.js';
import { wireId } from '../../../shared/wire/turn.js';
import { issuesOf } from '../errors.js';
import { ProblemError } from '../problems.js';

export type ReadFrame =
  { readonly message: ClientMessage } | { readonly problem: ProblemError; readonly turn?: string };

/** The turn's id, when that much of a wrong message is readable, so that the client knows which failed. */
const turnIdIn = (json: unknown): string | undefined => {
  const id = wireId.safeParse((json as { turn?: { id?: unknown } } | null)?.turn?.id);
  return id.success ? id.data : undefined;
};

export const readFrame = (data: Buffer, binary: boolean): ReadFrame => {
  if (binary) return { problem: new ProblemError('binary-frame') };
  let json: unknown;
  try {
    json = secureJson.parse(data.toString('utf8'));
  } catch {
    return { problem: new ProblemError('malformed-json') };
  }
  const read = clientMessage.safeParse(json);
  if (read.success) return { message: read.data };
  const turn = turnIdIn(json);
  const problem = new ProblemError('invalid-request', { errors: issuesOf(read.error) });
  return turn === undefined ? { problem } : { problem, turn };
};
