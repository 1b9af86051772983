/** What was bought from the list, put away one by one: each with the place it usually has, or asked. */
import { emptyMention } from '../../understanding/intents.js';
import { foodKey } from '../../kitchen/index.js';
import type { Id } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import type { Act, Mention } from '../../understanding/intents.js';
import { placeAt } from '../describe/place.js';
import { type Reply, type Turn, say, todayOf } from '../handler.js';
import { putAway } from '../put-away/put-away.js';
import { usualPlace } from '../put-away/usual-place.js';
import type { Session } from '../state.js';

type Shop = Extract<Session, { kind: 'shop' }>;

const called = (name: string): Mention => ({ ...emptyMention, words: name });

const guessFor = (turn: Turn, name: string): Id | null => usualPlace(turn, name, {});

/** Bought, and neither put away nor passed over. */
export const pending = (turn: Turn, { queue = [], items }: Shop): readonly string[] => {
  const there = new Set(items.flatMap((id) => foodKey(turn.kitchen.items.get(id)?.name ?? '')));
  return queue.filter((name) => !there.has(foodKey(name)));
};

/** "Next, the oats. On the first shelf of the pantry, as before?" */
export const queuePrompt = (turn: Turn, session: Shop): Say | null => {
  if (!session.queue) return null;
  const [name] = pending(turn, session);
  if (name === undefined) return say('shop-anything-else');
  const usual = session.elsewhere ? null : guessFor(turn, name);
  return usual
    ? say('shop-next-there', { name, at: placeAt(turn.kitchen, usual) })
    : say('shop-next', { name });
};

/** Puts away the one that is asked about; null for what is no answer to that. */
export const queueAnswer = (act: Act, turn: Turn, session: Shop): Reply | null => {
  const [name, ...left] = pending(turn, session);
  if (name === undefined) return null;
  const { item, items, words, ...rest } = act.slots;
  const named = items ?? words ?? item?.words ?? item?.touch;
  const place = act.slots.place ?? item?.at ?? undefined;
  const passed: Reply = { parts: [], session: { ...session, queue: left, elsewhere: false } };
  const asked: Reply = { parts: [], session: { ...session, elsewhere: true } };
  const put = (slots: Act['slots']): Reply => {
    const dates = { bought: { day: todayOf(turn) }, ...slots.dates };
    const settled = { ...turn, state: { ...turn.state, session: { ...session, elsewhere: false } } };
    return putAway({ intent: 'put-away', slots: { ...slots, dates, item: called(name) } }, settled);
  };
  const guessed = !session.elsewhere && guessFor(turn, name) !== null;
  switch (act.intent) {
    case 'yes':
      return guessed ? put({}) : asked;
    case 'no':
      return guessed ? asked : passed;
    case 'next':
    case 'skip-to':
    case 'maybe':
      return passed;
    case 'answer':
    case 'choose':
    case 'put-away':
    case 'move':
      return place && !named ? put({ ...rest, place }) : null;
    default:
      return null;
  }
};
