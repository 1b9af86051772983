/** Putting away a shop: one short sentence each, a recap at the end, mistakes put right on the way. */
import { emptyMention } from '../../understanding/intents.js';
import type { Item } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import type { Act, PlaceMention } from '../../understanding/intents.js';
import { groupName, grouped } from '../describe/item.js';
import { inGroups } from '../describe/lists.js';
import { placeAt } from '../describe/place.js';
import { type Handler, type Reply, type Turn, about, list, say, assent } from '../handler.js';
import { move } from '../move/move.js';
import { putAway } from '../put-away/put-away.js';
import { findItems } from '../refer/items.js';
import { findPlace, insidePlace } from '../refer/places.js';
import type { Session } from '../state.js';
import { surveyPlace, unknownOf } from './survey.js';
import { pending, queueAnswer } from './shop-queue.js';

type Shop = Extract<Session, { kind: 'shop' }>;

/** With things from the list: those are asked about one by one. */
export const startShop: Handler = (act, turn) => {
  const { session } = turn.state;
  const queue = act.slots.items?.flatMap(({ words }) => words ?? []);
  if (session?.kind === 'shop')
    return queue
      ? { parts: [], session: { ...session, queue: [...(session.queue ?? []), ...queue] } }
      : { parts: [say('shop-going-on')] };
  const begun: Shop = { kind: 'shop', items: [], placeId: null };
  return queue
    ? { parts: [], session: { ...begun, queue } }
    : { parts: [assent('shop-start')], session: begun };
};

/** Everything put away in this spell, place by place. */
export const endShop = (turn: Turn, session: Shop): Reply => {
  // What was put right on the way is there once.
  const items = [...new Set(session.items)]
    .flatMap((id) => turn.kitchen.items.get(id) ?? [])
    .filter(({ gone }) => !gone);
  const waiting = pending(turn, session);
  const waits = waiting.length > 0 ? [say('shop-left', { items: list(waiting) })] : [];
  if (items.length === 0) return { parts: [say('shop-nothing'), ...waits], session: null };
  const places = [...new Set(items.map(({ placeId }) => placeId))];
  const here = (placeId: Item['placeId']): Say => {
    const groups = grouped(
      turn.kitchen,
      items.filter((item) => item.placeId === placeId),
    );
    return say('recap-place', { items: list(groups.map(groupName)), at: placeAt(turn.kitchen, placeId) });
  };
  const names = new Set(items.map(({ name }) => name));
  const { first, more, left } = inGroups(places.map(here));
  return {
    parts: [
      say(session.survey ? 'survey-recap' : 'shop-recap', { count: names.size }),
      ...first.map((entry) => say('list-entry', { entry })),
      ...waits,
      ...(session.survey ? unknownOf(items) : []),
      ...(left > 0 ? [say('recap-more', { left })] : [say('recap-fix')]),
    ],
    more,
    session: null,
    count: names.size,
    names: [...names],
    memory: about(turn, items),
  };
};

const samePlace: PlaceMention = { words: null, candidates: [], pointer: 'same', spot: null };

/** "The carrots too": where the last one went. "And carrots" is only the next food. */
const asWell = (act: Act, turn: Turn): Act =>
  act.slots.place || !turn.qualifiers.has('as-well')
    ? act
    : { ...act, slots: { ...act.slots, place: samePlace } };

/** "Milk." on its own: it goes where it went last time. */
const bareFood = (act: Act, turn: Turn): Reply | null => {
  const { item, items, words } = act.slots;
  return item || items || words ? putAway(asPutAway(act), turn) : null;
};

/** "In the freezer", after a food was put somewhere: that is where it goes. */
const onlyPlace = (act: Act, turn: Turn, session: Shop): Reply | null => {
  const { item, items, words } = act.slots;
  const place = act.slots.place ?? item?.at;
  const named = items ?? words ?? item?.words ?? item?.pointer ?? item?.touch;
  const lastId = session.items.at(-1);
  const last = lastId ? turn.kitchen.items.get(lastId) : undefined;
  if (!place || named || !last) return null;
  const alike = turn.memory.lastAdded.filter((id) => session.items.includes(id));
  const ids = alike.includes(last.id) ? alike : [last.id];
  const found = findPlace(turn, place, 'place', last.placeId);
  const inside = insidePlace(turn, found);
  if (found.found !== 'none' && found.found !== 'unknown' && inside(last))
    return {
      parts: [say('is-there-already', { at: placeAt(turn.kitchen, last.placeId) })],
      memory: about(turn, [last]),
    };
  const settled = { ...turn, picked: { item: ids } };
  return move({ intent: 'move', slots: { place } }, settled);
};

export const shopAnswer = (act: Act, turn: Turn, session: Shop): Reply | null => {
  const { item, items, place } = act.slots;
  const here = session.survey ? surveyPlace(act, turn) : null;
  if (here) return here;
  const queued = queueAnswer(act, turn, session);
  if (queued) return queued;
  switch (act.intent) {
    case 'answer':
    case 'choose':
      return onlyPlace(act, turn, session) ?? bareFood(act, turn);
    case 'follow-up':
      return onlyPlace(act, turn, session) ?? bareFood(asWell(act, turn), turn);
    case 'put-away':
      return item || items ? null : onlyPlace(act, turn, session);
    case 'done':
    case 'no':
    case 'end-session':
    case 'goodbye': // "That's all" is of the session, and no farewell.
      return endShop(turn, session);
    case 'correct': {
      // "No, the milk went on the door", when something else was last.
      const found =
        item && place ? findItems(turn, item).items.filter(({ id }) => session.items.includes(id)) : [];
      const last = session.items.at(-1);
      if (found.length !== 1 || found[0]!.id === last) return null;
      return move({ intent: 'move', slots: act.slots }, { ...turn, picked: { item: [found[0]!.id] } });
    }
    default:
      return null;
  }
};

const asPutAway = (act: Act): Act => {
  const { words, item, items } = act.slots;
  const mention = { ...emptyMention, words: words ?? null };
  return { intent: 'put-away', slots: item || items ? act.slots : { ...act.slots, item: mention } };
};
