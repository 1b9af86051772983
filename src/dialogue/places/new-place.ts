/** "In the bread bin", of which nobody told yet: it is offered, and made along with what goes there. */
import { applyChange, buildPlaces, isRefused } from '../../kitchen/index.js';
import { refusal } from '../describe/refusals.js';
import { type Handler, say } from '../handler.js';
import { isWholeKind, kindNamed } from './place-kinds.js';

const NEW = 'new:';

/** What a "yes" to the offer settles the place as; null for what can only be part of another place. */
export const offerOf = (words: string): string | null => {
  const kind = kindNamed(words);
  return kind && isWholeKind(kind) ? `${NEW}${words}` : null;
};

/** The handler, on a kitchen that has the place which was offered and agreed to. */
export const makingPlace =
  (handler: Handler): Handler =>
  (act, turn) => {
    const settled = turn.picked['place']?.[0];
    if (!settled?.startsWith(NEW)) return handler(act, turn);
    const name = settled.slice(NEW.length);
    const made = buildPlaces(turn, { kind: kindNamed(name) ?? 'cupboard', parentId: null, names: [name] });
    if (isRefused(made)) return refusal(turn, made);
    const placeIds = made.ops.map(({ id }) => id);
    const picked = { ...turn.picked, place: placeIds };
    const reply = handler(act, { ...turn, kitchen: applyChange(turn.kitchen, made), picked });
    if (!reply.changes) return reply;
    return {
      ...reply,
      parts: [say('built', { names: name }), ...reply.parts],
      changes: [made, ...reply.changes],
    };
  };
