/** Longer pieces of talk: putting away a shop, checking a place, setting up. What they ask, and what answers them. */
import type { Say } from '../../speech/answer.js';
import type { Act } from '../../understanding/intents.js';
import type { Conversation } from '../api.js';
import type { Reply, Turn } from '../handler.js';
import { stateOf } from '../state.js';
import { countAnswer, countPrompt } from './count.js';
import { setupAnswer, setupPrompt } from './setup.js';
import { queuePrompt } from './shop-queue.js';
import { shopAnswer } from './shop.js';

/** The reply of the session that is going on, when the act is meant for it; else null. */
export const sessionAnswer = (act: Act, turn: Turn): Reply | null => {
  const { session } = turn.state;
  if (!session) return null;
  switch (session.kind) {
    case 'shop':
      return shopAnswer(act, turn, session);
    case 'count':
      return session.paused ? null : countAnswer(act, turn, session);
    case 'setup':
      return session.paused ? null : setupAnswer(act, turn, session);
  }
};

/** What the session asks next, said at the end of every answer while it goes on. */
export const sessionPrompt = (turn: Turn): Say | null => {
  const { session } = turn.state;
  if (session?.kind === 'shop') return queuePrompt(turn, session);
  if (!session || session.paused) return null;
  return session.kind === 'count' ? countPrompt(turn, session) : setupPrompt(session);
};

/** A place is being checked: what is said of things is likely about that. */
export const checkAtHand = (conversation: Conversation): boolean => {
  const { session } = stateOf(conversation);
  return session?.kind === 'count' && !session.paused;
};

/** The place she stands before while she tells what is there. */
export const standingAt = (conversation: Conversation): string | null => {
  const { session } = stateOf(conversation);
  return session?.kind === 'shop' && session.survey ? session.placeId : null;
};
