/**
 * A standing stock-take of what is not on record yet: place by place, each food as it comes to hand. What she
 * does not know stays unknown, and is gone through once, at the end.
 */
import type { Item } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import type { Act } from '../../understanding/intents.js';
import { placeNoun } from '../describe/place.js';
import { type Handler, type Reply, type Turn, say } from '../handler.js';
import { makingPlace, offerOf } from '../places/new-place.js';
import { needPlace } from '../refer/need.js';
import type { Session } from '../state.js';

export type Survey = Extract<Session, { kind: 'shop' }>;

const begun: Survey = { kind: 'shop', survey: true, items: [], placeId: null };
const sessionOf = ({ state: { session } }: Turn): Survey =>
  session?.kind === 'shop' ? { ...session, survey: true } : begun;

/** The place that she stands at, made where it is new: what is told next is there. */
const standAt: Handler = (act, turn) => {
  const found = needPlace(turn, act.slots.place, {
    question: say('survey-where'),
    offers: offerOf(turn),
    likely: true,
  });
  if ('reply' in found) return found.reply;
  const { place } = found.got;
  return {
    parts: [say('survey-here', { place: placeNoun(turn.kitchen, place.id) })],
    changes: [],
    session: { ...sessionOf(turn), placeId: place.id },
    memory: { placeId: place.id, items: [], lastAdded: [] },
  };
};

export const surveyAt = makingPlace(standAt);

export const startSurvey: Handler = (act, turn) =>
  act.slots.place
    ? surveyAt(act, turn)
    : {
        parts: [say('survey-start')],
        session: sessionOf(turn),
        ask: {
          slot: 'place',
          question: say('survey-where'),
          again: say('survey-where'),
          expecting: 'place',
        },
        askFor: { intent: 'start-count', slots: { asked: 'survey' } },
      };

/** "Middle shelf", and nothing of what is there yet. */
export const surveyPlace = (act: Act, turn: Turn): Reply | null => {
  const { item, items, words, amount } = act.slots;
  const place = act.slots.place ?? item?.at;
  const named = items ?? words ?? item?.words ?? item?.pointer ?? item?.touch ?? amount;
  if (!place || named) return null;
  return surveyAt({ intent: 'start-count', slots: { place, asked: 'survey' } }, turn);
};

/** What is not known of what was told, in one round: it may be told now, or stay unknown. */
export const unknownOf = (items: readonly Item[]): readonly Say[] => {
  const undated = items.filter(({ dates }) => Object.keys(dates).length === 0);
  const [first] = undated;
  return first
    ? [
        say('survey-undated', {
          count: undated.length,
          all: undated.length === items.length ? 'yes' : 'no',
          name: first.name,
        }),
      ]
    : [];
};
