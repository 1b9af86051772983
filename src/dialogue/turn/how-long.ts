/** "How long for?": of whatever was just asked, it is heating, thawing, freezing or keeping that takes so long. */
import type { Act, Intent, Slots } from '../../understanding/intents.js';
import type { Work } from './work.js';

const asks: Readonly<Partial<Record<Intent, Slots['asked']>>> = {
  reheat: 'minutes',
  'thaw-plan': 'long',
  'left-out': 'limit',
};

export const howLongOf = ({ state: { told, procedure } }: Work, act: Act): Act => {
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
