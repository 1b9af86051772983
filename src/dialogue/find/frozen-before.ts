/** What was frozen, thawed and frozen again keeps its first days. */
import type { Item } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import { day, list, say } from '../handler.js';

/** "Frozen before, on May fourth." */
export const frozenBefore = ({ frozenBefore: days = [] }: Item): Say[] =>
  days.length > 0
    ? [say('frozen-before', { dates: list(days.map((at) => say('on-day', { date: day(at) }))) })]
    : [];
