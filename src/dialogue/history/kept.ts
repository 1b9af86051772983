/** What was just taken away is to stay after all. */
import { likeness } from '../../kitchen/index.js';
import { type Act, emptyMention } from '../../understanding/intents.js';
import { type Handler, type Reply, type Turn, assent } from '../handler.js';
import { buyAdd } from '../shopping/shopping.js';
import { undo } from './history.js';

/** "Keep the bin bags", of several lines just taken off: that one goes back on. */
const keptLine = ({ slots: { item } }: Act, turn: Turn): Act | null => {
  const lines = (turn.state.done?.changes ?? []).flatMap(({ ops }) =>
    ops.flatMap((op) => (op.kind === 'purchase' && op.before && !op.after ? [op.before] : [])),
  );
  const meant = lines.find(({ name }) => item?.words && likeness(name, item.words) > 0);
  if (!meant || lines.length < 2) return null;
  const amount = meant.amount ? { amount: meant.amount } : {};
  return { intent: 'buy-add', slots: { item: { ...emptyMention, words: meant.name }, ...amount } };
};

/** "Actually leave them": what was taken away a moment ago is to stay after all. */
const kept = (act: Act, turn: Turn): Reply | null => {
  const { done, told, turns } = turn.state;
  if (done?.turn !== turns - 1 || told?.act?.intent === 'undo')
    return { parts: [assent('left-as-it-is')], dropFrames: true };
  const line = keptLine(act, turn);
  return line ? { ...buyAdd(line, turn), dropFrames: true } : null;
};

export const undoOrKeep: Handler = (act, turn) =>
  (act.slots.asked === 'kept' ? kept(act, turn) : null) ?? undo(act, turn);
