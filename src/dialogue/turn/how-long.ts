/** "How long for?": of whatever was just asked, it is heating, thawing, freezing or keeping that takes so long. */
import { openReminders } from '../../kitchen/index.js';
import { type Act, type Intent, type Slots, itMention } from '../../understanding/intents.js';
import type { Work } from './work.js';

const asks: Readonly<Partial<Record<Intent, Slots['asked']>>> = {
  reheat: 'minutes',
  'thaw-plan': 'long',
  'left-out': 'limit',
};

/** "How long's it got", right after a timer: of that. */
const ofTimers: ReadonlySet<Intent> = new Set<Intent>(['set-timer', 'change-timer', 'timers']);
const ofTimer = ({ state: { told, turns } }: Work, { intent, slots: { item } }: Act): boolean =>
  intent === 'keeps' &&
  (item?.words ?? null) === null &&
  (item?.candidates.length ?? 0) === 0 &&
  told?.turn === turns - 1 &&
  told.act !== null &&
  told.act !== undefined &&
  ofTimers.has(told.act.intent);

/** "And how long have we got with it", while no timer runs and none is named: of the food just spoken of. */
const ofFood = ({ kitchen, state: { memory }, qualifiers }: Work, { intent, slots }: Act): boolean =>
  intent === 'timers' &&
  !slots.item &&
  !slots.words &&
  !slots.negated &&
  memory.items.length > 0 &&
  qualifiers.has('how-long-keeps') &&
  !qualifiers.has('clock-named') &&
  openReminders(kitchen, 'timer').length === 0;

export const howLongOf = (work: Work, act: Act): Act => {
  const { told, procedure } = work.state;
  if (!procedure && ofFood(work, act)) return { intent: 'keeps', slots: { item: itMention } };
  if (ofTimer(work, act)) return { intent: 'timers', slots: {} };
  if (act.intent !== 'keeps' || act.slots.asked !== 'long') return act;
  const last = told?.act;
  const { asked: _asked, ...rest } = act.slots;
  const asked = last ? asks[last.intent] : undefined;
  if (last && asked) return { intent: last.intent, slots: { ...last.slots, asked } };
  if (last?.intent === 'keeps' || last?.intent === 'cook-temperature') return last;
  return procedure?.kind === 'reheat' && procedure.itemId
    ? { intent: 'reheat', slots: { ...rest, asked: 'minutes' } }
    : { intent: 'keeps', slots: rest };
};
