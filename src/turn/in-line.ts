/**
 * Runs work of one household one after another, and of different households side by side.
 * Turns of a conversation are thereby answered in the order they came.
 */
import { TurnProblem } from './problems.js';

/**
 * `work` may call `next` once the household's next may begin, though it is not done itself; by its
 * end that happens by itself.
 */
export type InLine = <T>(household: string, work: (next: () => void) => Promise<T>) => Promise<T>;

/** Whether it settles in so many milliseconds. */
const within = async (work: Promise<void>, patience: number): Promise<boolean> => {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<false>((resolve) => (timer = setTimeout(resolve, patience, false)));
  try {
    return await Promise.race([work.then(() => true), late]);
  } finally {
    clearTimeout(timer);
  }
};

/**
 * @param longest how many may wait for one household before more are refused (`too-many-waiting`).
 * @param patience milliseconds one waits for those before it, then it is refused as well; nothing of it was begun.
 */
export const createLine = (longest: number, patience: number): InLine => {
  const lines = new Map<string, { last: Promise<void>; waiting: number }>();
  return async (household, work) => {
    const line = lines.get(household) ?? { last: Promise.resolve(), waiting: 0 };
    if (line.waiting >= longest) {
      throw new TurnProblem('too-many-waiting', `${line.waiting} turns already wait for this household`);
    }
    lines.set(household, line);
    line.waiting += 1;
    const before = line.last;
    let next = (): void => undefined;
    line.last = new Promise((resolve) => (next = resolve));
    try {
      if (!(await within(before, patience))) {
        // Whoever comes behind still waits for those before.
        void before.then(next);
        throw new TurnProblem('too-many-waiting', 'an earlier turn of this household takes too long');
      }
      try {
        return await work(next);
      } finally {
        next();
      }
    } finally {
      line.waiting -= 1;
      if (line.waiting === 0) lines.delete(household);
    }
  };
};
