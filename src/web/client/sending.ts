/** Sends what was kept, first things first: each once, none lost, and none past a question that is open. */
import { ConversationClosed, TurnRefused } from '../../../shared/client/conversation.js';
import { ServiceProblem, ServiceUnreachable, type ChangeDone } from '../../../shared/client/http.js';
import type { TurnReply, TurnRequest } from '../../../shared/wire/turn.js';
import { plainly } from './service.js';
import { nextOf, wordsOf, type Edit, type Unsent, type UnsentList } from './unsent.js';

export interface Senders {
  turn(request: TurnRequest): Promise<TurnReply>;
  edit(edit: Edit, key: string): Promise<ChangeDone>;
}

/** What came of sending the list. */
export interface Sent {
  readonly turns: readonly { readonly id: string; readonly words: string; readonly reply: TurnReply }[];
  readonly edits: number;
  readonly refused: readonly { readonly words: string; readonly why: string }[];
  /** Said on another day, or answers whose question is long past: their person decides. */
  readonly asked: readonly Unsent[];
}

/** Codes of refusals that say nothing against what was sent, only against this moment. */
const notNow = new Set([
  'too-many-requests',
  'too-many-waiting',
  'too-many-sockets',
  'too-busy',
  'overloaded',
  'closing',
  'not-known',
  'storage-full',
  'not-identified',
  'csrf-token-missing',
]);

/** True where the same may be sent again later: nobody heard it, or had the time for it. */
export const isForLater = (error: unknown): boolean => {
  if (error instanceof ServiceUnreachable || error instanceof ConversationClosed) return true;
  if (error instanceof TurnRefused) return notNow.has(error.code);
  if (!(error instanceof ServiceProblem)) return false;
  const { code, status } = error.problem;
  // A gateway before the service answers in its stead, and knows no codes of ours.
  return notNow.has(code) || (code === 'unknown' && status >= 502 && status <= 504);
};

export const sendKept = async (
  list: UnsentList,
  senders: Senders,
  clock: { readonly now: () => string; readonly today: (at: string) => string },
  held: {
    /** Turns that are on their way already. */
    readonly onItsWay: (id: string) => boolean;
    /** The kitchen asked something: further turns wait until it is answered. */
    readonly byQuestion: boolean;
  } = { onItsWay: () => false, byQuestion: false },
): Promise<Sent> => {
  const turns: { id: string; words: string; reply: TurnReply }[] = [];
  const refused: { words: string; why: string }[] = [];
  const asked: Unsent[] = [];
  let edits = 0;
  let openQuestion = held.byQuestion;
  for (const one of list.all()) {
    const now = clock.now();
    const next = nextOf(one, now, clock.today(now));
    if (next === 'ask') asked.push(one);
    // A further turn would be taken for the answer to what the kitchen just asked.
    if (next !== 'send' || held.onItsWay(one.id) || (one.kind === 'turn' && openQuestion)) continue;
    try {
      if (one.kind === 'edit') {
        await senders.edit(one.edit, one.id);
        edits += 1;
      } else {
        const reply = await senders.turn(one.request);
        turns.push({ id: one.id, words: wordsOf(one), reply });
        openQuestion = reply.expects.kind !== 'open';
      }
      list.drop(one.id);
    } catch (error) {
      if (isForLater(error)) break;
      const why = error instanceof TurnRefused ? error.message : plainly(error);
      list.change(one.id, { refused: why, wanted: false });
      refused.push({ words: wordsOf(one), why });
    }
  }
  return { turns, edits, refused, asked };
};
