/** Where what was heard goes: the store here, or a service elsewhere. */
import type { TurnReply, TurnRequest } from '../../../shared/wire/turn.js';
import type { Lists } from './ears/ear.js';

/** What is said without being asked: a timer, a reminder, the summary. */
export interface Unasked {
  readonly text: string;
  readonly ssml: string;
}

export interface Talker {
  /** @throws Error in plain words when it was refused. */
  turn(request: TurnRequest): Promise<TurnReply>;
  readonly lists: Lists;
  /** The household's, BCP 47; null while it is not known. */
  readonly locale: () => string | null;
  close(): Promise<void>;
}

export interface TalkerEvents {
  /** Noted as heard once this resolves. */
  readonly onUnasked: (unasked: Unasked) => Promise<void>;
  /** Names may have changed. */
  readonly onChanged: () => void;
  /** Something to tell whoever watches over it. */
  readonly tell: (line: string) => void;
}
