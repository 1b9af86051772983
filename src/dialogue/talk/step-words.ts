/** One step as it is said: its caution first. */
import type { Say } from '../../speech/answer.js';
import { say } from '../handler.js';
import type { Procedure, Step } from '../state.js';

export const stepWords = ({ caution, text }: Step): Say[] => [
  ...(caution ? [caution] : []),
  say('step', { text }),
];

export const currentStep = (procedure: Procedure): Say[] => {
  const step = procedure.steps[procedure.at];
  return step ? stepWords(step) : [say('steps-over')];
};
