/**
 * What the first day left open is offered when it would have helped, one thing a day and each once: how the
 * fridge is divided, when several things stand in it; a marker, when several tubs feel alike.
 */
import { itemsAt, livingItems, placesIn } from '../../kitchen/index.js';
import type { Kitchen } from '../../kitchen/model.js';
import { placeNoun } from '../describe/place.js';
import { say } from '../handler.js';
import type { Frame } from '../state.js';
import { today } from '../../terms/dates.js';
import { type Work, pushFrame, withState } from '../turn/work.js';
import { cutTalkedOf } from '../outages/the-cut.js';

/** So many things in one undivided place, and its shelves would have told them apart. Our own figure. */
const severalThings = 4;
/** So many containers of one kind, and a marker would have. Our own figure. */
const severalAlike = 3;

type Offer = { readonly key: 'parts' | 'markers'; readonly question: Frame['question'] };

const parts = (kitchen: Kitchen): Offer | null => {
  const whole = placesIn(kitchen, null).find(
    ({ id, kind }) =>
      (kind === 'fridge' || kind === 'freezer' || kind === 'pantry') &&
      placesIn(kitchen, id).length === 0 &&
      itemsAt(kitchen, id).length >= severalThings,
  );
  return whole
    ? { key: 'parts', question: say('offer-parts', { place: placeNoun(kitchen, whole.id) }) }
    : null;
};

const markers = (kitchen: Kitchen): Offer | null => {
  if (kitchen.markers.size > 0) return null;
  const counts = new Map<string, number>();
  for (const { touch } of livingItems(kitchen))
    if (touch.container) counts.set(touch.container, (counts.get(touch.container) ?? 0) + 1);
  const [alike] = [...counts].filter(([, count]) => count >= severalAlike);
  return alike ? { key: 'markers', question: say('offer-markers', { container: alike[0] }) } : null;
};

/** The turn with an offer at its end, where food was put away and nothing else is being asked. */
export const withLater = (work: Work): Work => {
  const { session, frames, practice, procedure, offered = { keys: [], on: null } } = work.state;
  const put = work.changes.some(({ verb }) => verb === 'put away');
  if (!put || session || practice || procedure || cutTalkedOf(work) || frames.length > 0) return work;
  const day = today(work.around.clock);
  if (offered.on === day) return work;
  const offer = [parts(work.kitchen), markers(work.kitchen)].find(
    (one) => one && !offered.keys.includes(one.key),
  );
  if (!offer) return work;
  const frame: Frame = {
    kind: 'offer',
    slot: 'offer',
    question: offer.question,
    expecting: 'yes-no',
    act: { intent: 'start-setup', slots: { asked: offer.key } },
    picked: {},
    asked: 1,
  };
  return pushFrame(withState(work, { offered: { keys: [...offered.keys, offer.key], on: day } }), frame);
};
