/** Steps of the safety room as steps of a guided procedure. */
import type { Step as SafetyStep } from '../../safety/api.js';
import type { StepCode } from '../../safety/api.js';
import type { Value } from '../../speech/answer.js';
import { saidDuration } from '../../understanding/index.js';
import { say, seconds } from '../handler.js';
import type { Step } from '../state.js';
import { cautionWords } from './guidance.js';

/** Only these wait for something: a probe's or a stir's seconds are no timer. */
const timed: ReadonlySet<StepCode> = new Set<StepCode>([
  'set-microwave',
  'set-microwave-short',
  'heat-again',
  'stand',
  'into-oven',
  'into-air-fryer',
  'bring-to-boil',
  'simmer',
  'into-steamer',
]);

/** How long a step takes: as reckoned, or as the cook's own words tell it. */
const secondsOf = (step: SafetyStep, locale: string): number | null =>
  timed.has(step.code)
    ? step.seconds
    : step.code === 'own-words' && step.words
      ? saidDuration(step.words, locale)
      : null;

/** `label` names its timer; `locale` is the household's, in which own words were said. */
export const guidedStep = (step: SafetyStep, label: string, locale: string): Step => {
  const wait = secondsOf(step, locale);
  const args: Record<string, Value> = {
    ...step.args,
    ...(step.seconds !== null ? { seconds: seconds(step.seconds), hold: seconds(step.seconds) } : {}),
    ...(step.temperature ? { temperature: { kind: 'temperature', ...step.temperature } } : {}),
    ...(step.words ? { words: step.words } : {}),
  };
  return {
    ...(step.caution ? { caution: cautionWords(step.caution) } : {}),
    text: say(`step-${step.code}`, args),
    ...(wait === null ? {} : { timer: { seconds: wait, label } }),
    ...(step.words ? { own: step.words } : {}),
  };
};
