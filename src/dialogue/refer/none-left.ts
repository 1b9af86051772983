/** What is here no more: what became of it, and whether it is on the list. */
import { doerOf, lastGone, likeNames, purchaseOf } from '../../kitchen/index.js';
import type { Mention } from '../../understanding/intents.js';
import type { Say } from '../../speech/answer.js';
import { type Reply, type Turn, ago, say } from '../handler.js';
import { noSuch } from './items.js';

/** Nothing of it here: say what became of the last one, and whether it is on the list. */
export const noneLeft = (turn: Turn, name: string): Reply => {
  const gone = lastGone(turn.kitchen, name) ?? likeNames(turn.kitchen, name, 'gone')[0]?.item ?? null;
  const entry = gone
    ? turn.journal.find(({ ops }) =>
        ops.some((op) => op.kind === 'item' && op.id === gone.id && op.after?.gone),
      )
    : undefined;
  const doer = entry ? doerOf(entry) : null;
  const who = doer === null ? undefined : turn.kitchen.people.get(doer);
  const listed = purchaseOf(turn.kitchen, gone?.name ?? name) !== null;
  const parts: Say[] = [];
  if (gone?.gone) {
    const self = doer === turn.speaker.personId || !who;
    const args = { name: gone.name, how: gone.gone.how.replace(' ', '-'), when: ago(gone.gone.at) };
    parts.push(self ? say('none-left-gone', args) : say('none-left-gone-by', { ...args, who: who.name }));
  } else parts.push(...noSuch(turn, name));
  if (listed) parts.push(say('it-is-on-the-list'));
  return { parts, count: 0, names: [], ...(gone ? { memory: { items: [gone.id] } } : {}) };
};

/** Words that fit only things used up: what the newest of them was called. */
export const nameOfGone = (turn: Turn, ids: readonly string[]): string | null => {
  const gone = ids.flatMap((id) => turn.kitchen.items.get(id) ?? []).filter((one) => one.gone);
  return gone[0]?.name ?? null;
};

/** "When did we finish it", of what was just said to be here no more: its name. */
export const goneSpokenOf = (turn: Turn, mention: Mention | undefined): string | null => {
  const { items, touched } = turn.memory;
  if ((mention && !singular.has(mention.pointer)) || touched) return null;
  const gone = items.every((id) => turn.kitchen.items.get(id)?.gone);
  return gone ? nameOfGone(turn, items) : null;
};

const turnsItLasts = 3;
const singular: ReadonlySet<Mention['pointer']> = new Set(['it', 'that', 'this']);

/** "How old is it", of what was thrown out a moment ago: its name; null while something else is meant. */
export const itJustGone = (turn: Turn, mention: Mention | undefined): string | null => {
  const { memory, state } = turn;
  const { done, turns } = state;
  if (mention && !singular.has(mention.pointer)) return null;
  const living = memory.items.some((id) => turn.kitchen.items.get(id)?.gone === null);
  if (living || memory.touched || done?.act.intent !== 'finish') return null;
  if (turns - (done.turn ?? -9) > turnsItLasts) return null;
  return nameOfGone(
    turn,
    done.changes.flatMap(({ ops }) => ops.flatMap((op) => (op.kind === 'item' ? [op.id] : []))),
  );
};
