/** How a dish of this kitchen gets hot, as the tables and the cook have it: in what, and the steps. */
import { heatMethodIn } from '../../understanding/index.js';
import { storageOf } from '../../kitchen/index.js';
import type { HeatMethod, Item } from '../../kitchen/model.js';
import { assessIn, eatingCautions, reheatPlan } from '../../safety/index.js';
import type { ReheatPlan } from '../../safety/api.js';
import { sourcesOf } from '../describe/guidance.js';
import { guidedStep } from '../describe/steps.js';
import { type Turn, say } from '../handler.js';
import type { Procedure } from '../state.js';

type At = Pick<Turn, 'kitchen' | 'clock'>;

/** Named, else recorded, else the microwave where there is one. */
export const methodFor = (
  turn: At & Pick<Turn, 'locale'>,
  item: Item,
  said: string | undefined,
): HeatMethod => {
  const named = said === undefined ? null : heatMethodIn(said, turn.locale);
  if (named) return named;
  const recorded = item.preparations.find(({ method }) => method !== 'none');
  return recorded?.method ?? (turn.kitchen.household.microwaveWatts === null ? 'hob' : 'microwave');
};

export const planFor = (
  turn: At,
  item: Item,
  method: HeatMethod,
  watts: number | null,
  portions?: number,
  said?: string,
): ReheatPlan =>
  reheatPlan({
    food: item.name,
    method,
    from:
      said === 'freezer' || (said === undefined && storageOf(turn.kitchen, item.placeId) === 'freezer')
        ? 'freezer'
        : 'fridge',
    region: turn.kitchen.household.region,
    watts,
    portions: portions ?? null,
    preparations: item.preparations,
    timesReheated: item.timesReheated,
    assessment: assessIn(turn.kitchen, item, turn.clock),
    first: eatingCautions(turn.kitchen, item),
  });

export const procedureOf = (
  { kitchen }: Pick<Turn, 'kitchen'>,
  item: Item,
  method: HeatMethod,
  plan: Extract<ReheatPlan, { kind: 'plan' }>,
): Procedure => ({
  kind: 'reheat',
  title: say('reheat-title', { name: item.name, method, from: plan.from }),
  itemId: item.id,
  // "Not there yet" is told when the thermometer says so, not as a step of its own.
  steps: plan.steps
    .filter(({ code }) => code !== 'more-time')
    .map((step) => guidedStep(step, item.name, kitchen.household.locale)),
  at: 0,
  paused: false,
  setting: plan.setting,
  source: sourcesOf([...plan.reasons, ...plan.steps]),
});

/** Ways of heating it that somebody told. */
export const toldWays = ({ preparations }: Item): readonly HeatMethod[] => [
  ...new Set(preparations.flatMap(({ method }) => (method === 'none' ? [] : [method]))),
];

/** Its steps in that way; null where guidance has none. */
export const stepsOf = (turn: At, item: Item, method: HeatMethod): Procedure | null => {
  const plan = planFor(turn, item, method, turn.kitchen.household.microwaveWatts);
  return plan.kind === 'plan' ? procedureOf(turn, item, method, plan) : null;
};
