/**
 * Runs work of one household one after another, and of different households side by side.
 * Turns of a conversation are thereby answered in the order they came.
 */
import { TurnProblem } from './problems.js';

export type InLine = <T>(household: string, work: () => Promise<T>) => Promise<T>;

/** @param longest how many may wait for one household before more are refused (`too-many-waiting`). */
export const createLine = (longest: number): InLine => {
  const lines = new Map<string, { last: Promise<unknown>; waiting: number }>();
  return async (household, work) => {
    const line = lines.get(household) ?? { last: Promise.resolve(), waiting: 0 };
    if (line.waiting >= longest) {
      throw new TurnProblem('too-many-waiting', `${line.waiting} turns already wait for this household`);
    }
    lines.set(household, line);
    line.waiting += 1;
    const mine = line.last.then(work, work);
    line.last = mine.catch(() => undefined);
    try {
      return await mine;
    } finally {
      line.waiting -= 1;
      if (line.waiting === 0) lines.delete(household);
    }
  };
};
