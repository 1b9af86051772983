/** How a dish is got ready, as somebody told it: whether that is told at all, and all of it at once. */
import type { Item } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import { type Reply, type Turn, about, list, say } from '../handler.js';
import type { Procedure } from '../state.js';
import { stepWords } from '../talk/step-words.js';
import { toldWays } from './plan.js';

/** "Have we got any instructions for the salmon?" */
export const instructionsTold = (turn: Turn, item: Item): Reply => {
  const ways = toldWays(item).map((method) => {
    const steps = item.preparations
      .filter((one) => one.method === method)
      .reduce((most, one) => Math.max(most, one.steps.length), 0);
    return say('instructions-way', { method, ...(steps > 0 ? { count: steps } : {}) });
  });
  return {
    parts: [
      ways.length > 0
        ? say('instructions-told', { name: item.name, ways: list(ways) })
        : say('instructions-none', { name: item.name }),
    ],
    memory: about(turn, [item]),
    names: [item.name],
  };
};

/** "Read me all of it in one go": every step in order, and none is begun. */
export const allSteps = (turn: Turn, item: Item, procedure: Procedure, first: readonly Say[]): Reply => {
  const { title, steps, source } = procedure;
  return {
    parts: [...first, say('steps-begin', { title, count: steps.length }), ...steps.flatMap(stepWords)],
    count: steps.length,
    sources: source ?? [],
    memory: about(turn, [item]),
    names: [item.name],
  };
};
