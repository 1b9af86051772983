/** Practice, and ending whatever session is going on. */
import { type Handler, say } from '../handler.js';
import { endCount } from './count.js';
import { endShop } from './shop.js';

export const startPractice: Handler = (_act, turn) =>
  turn.state.practice
    ? { parts: [say('practice-going-on')] }
    : { parts: [say('practice-start')], practice: { changes: [] } };

export const endSession: Handler = (_act, turn) => {
  const { session, practice, procedure } = turn.state;
  if (session?.kind === 'shop') return endShop(turn, session);
  if (session?.kind === 'count') return endCount(turn, session);
  if (session) return { parts: [say('all-right')], session: { ...session, paused: true }, quiet: true };
  if (practice)
    return {
      parts: [say('practice-over', { count: practice.changes.length })],
      practice: null,
      memory: { items: [], lastAdded: [] },
    };
  if (procedure) return { parts: [say('procedure-ended')], procedure: null };
  return { parts: [say('all-right')] };
};
