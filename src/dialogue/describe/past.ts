/** "The milk was opened eight days ago": what is told of a date may be past guidance, and is not noted in silence. */
import type { Change, Item } from '../../kitchen/model.js';
import { assessIn } from '../../safety/index.js';
import type { Say } from '../../speech/answer.js';
import type { Turn } from '../handler.js';
import { distinct, verdictWords } from './guidance.js';

/** What guidance comes to for these, where that is to throw them out. */
export const pastNow = (turn: Turn, items: readonly Item[]): Say[] =>
  distinct(
    items.flatMap((item) => {
      const found = assessIn(turn.kitchen, item, turn.clock);
      return found.verdict === 'throw-out' ? [verdictWords(found, item.name)] : [];
    }),
  ).slice(0, mostSaid);
const mostSaid = 2;

/** What guidance comes to for things whose date these changes tell, where that is to throw them out. */
export const pastByIt = (turn: Turn, changes: readonly Pick<Change, 'ops'>[]): Say[] =>
  pastNow(
    turn,
    changes.flatMap(({ ops }) => ops.flatMap((op) => (op.kind === 'item' && op.after ? [op.after] : []))),
  );
