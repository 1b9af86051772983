/** Practice, and ending whatever session is going on. */
import { type Handler, type Reply, type Turn, say, assent } from '../handler.js';
import type { Practice, Session } from '../state.js';
import { endCount } from './count.js';
import { endLesson } from '../lessons/lesson.js';
import { startSetup } from './setup.js';
import { endShop } from './shop.js';

/** Putting a shop away is never put aside: it is over or it goes on. */
const putAside = (session: Session): boolean => session.kind !== 'shop' && session.paused;

/** "Learning to label things" is not yet a wish to practise. */
const saysPractice = ({ qualifiers }: Turn): boolean => qualifiers.has('practise');

/** Nothing is there to practise on: whoever "has a go" begins. */
const isEmpty = ({ kitchen }: Turn): boolean => kitchen.items.size === 0 && kitchen.places.size === 0;

export const startPractice: Handler = (act, turn) => {
  const { practice, session } = turn.state;
  if (!practice && !turn.sure && isEmpty(turn)) return startSetup({ ...act, slots: {} }, turn);
  if (practice) return { parts: [say('practice-going-on')] };
  if (!turn.sure && !saysPractice(turn)) return { parts: [], confirm: say('confirm-practice') };
  return {
    parts: [say('practice-start')],
    practice: { changes: [] },
    // What was under way in the real kitchen waits outside.
    ...(session && session.kind !== 'shop' ? { session: { ...session, paused: true } } : {}),
  };
};

const endPractice = (practice: Practice): Reply => ({
  parts: [say('practice-over', { count: practice.changes.length })],
  practice: null,
  memory: { items: [], lastAdded: [] },
});

/** Ends what was named; without a name, what was begun last and is not put aside. */
export const endSession: Handler = (act, turn) => {
  const { session, practice, procedure } = turn.state;
  const { asked } = act.slots;
  if (practice?.lesson && (asked === 'lesson' || asked === 'practice' || (!session && !procedure)))
    return endLesson(turn, practice, practice.lesson);
  if (practice && asked === 'practice') return endPractice(practice);
  if (session && (!putAside(session) || asked === session.kind)) {
    if (session.kind === 'shop') return endShop(turn, session);
    if (session.kind === 'count') return endCount(turn, session);
    return { parts: [assent('all-right')], session: { ...session, paused: true }, quiet: true };
  }
  if (practice) return endPractice(practice);
  if (procedure) return { parts: [say('procedure-ended')], procedure: null };
  return { parts: [assent('all-right')] };
};
