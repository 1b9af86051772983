/** How to get a dish hot: the cook's own way when one is recorded, ended by a temperature, a step at a time. */
import { emptyMention } from '../../understanding/intents.js';
import type { HeatMethod, Item } from '../../kitchen/model.js';
import { assessIn, cookTemperature, regionFacts } from '../../safety/index.js';
import type { StepCode } from '../../safety/api.js';
import type { Say } from '../../speech/answer.js';
import { heatSaid } from '../describe/heat.js';
import { cautionWords, reasonWords, sourcesOf } from '../describe/guidance.js';
import { type Handler, type Reply, type Turn, about, say } from '../handler.js';
import type { Act, Slots } from '../../understanding/intents.js';
import { needItem } from '../refer/need.js';
import { beginSteps } from '../talk/steps.js';
import { allSteps, instructionsTold } from './instructions.js';
import { methodFor, planFor, procedureOf } from './plan.js';

/** Steps in which a microwave runs. */
const heats: ReadonlySet<StepCode> = new Set<StepCode>([
  'set-microwave',
  'set-microwave-short',
  'heat-again',
]);

/** How long in all in a microwave of so many watts, by the time somebody told; and how that was reckoned. */
const microwaveTime = (turn: Turn, item: Item, watts: number | null, portions?: number) => {
  if (!item.preparations.some(({ method, minutes }) => method === 'microwave' && minutes)) return null;
  // Without the words of its steps, which tell times for the power and the portions they were told for.
  const figures = item.preparations.map((told) => ({ ...told, steps: [] }));
  const plan = planFor(turn, { ...item, preparations: figures }, 'microwave', watts, portions);
  if (plan.kind !== 'plan') return null;
  const total = plan.steps.reduce(
    (sum, { code, seconds: of }) => sum + (of !== null && heats.has(code) ? of : 0),
    0,
  );
  return { plan, total };
};

/**
 * Steps in own words tell times for the power and the portions they were told for: at others, the whole time is
 * said first; and where no guidance scales it so far, that it is heated in lots.
 */
const otherThanTold = (
  turn: Turn,
  item: Item,
  method: HeatMethod,
  watts: number | null,
  portions: number | undefined,
): Say[] => {
  const told = item.preparations.find((one) => one.method === 'microwave' && one.steps.length > 0);
  if (method !== 'microwave' || !told) return [];
  const [power, share] = [told.watts, told.portions];
  const time = microwaveTime(turn, item, watts, portions);
  if (!time) return [];
  const said = { kind: 'duration', seconds: time.total } as const;
  if (portions !== undefined && share !== null && portions !== share) {
    const beyond = time.plan.reasons.some(({ code }) => code === 'portions-beyond');
    return beyond
      ? [say('reheat-in-lots', { told: share })]
      : [say('reheat-other-portions', { time: said, portions, told: share })];
  }
  return watts !== null && power && power !== watts
    ? [say('reheat-other-power', { time: said, watts, told: power })]
    : [];
};

const minutesOnly = (turn: Turn, item: Item, watts: number): Reply | null => {
  const time = microwaveTime(turn, item, watts);
  if (!time) return null;
  const { plan, total } = time;
  return {
    parts: [
      say('reheat-minutes', { name: item.name, time: { kind: 'duration', seconds: total }, watts }),
      ...insideToo(turn, item),
    ],
    details: plan.reasons.map(reasonWords),
    sources: sourcesOf(plan.reasons),
    memory: about(turn, [item]),
  };
};

/** What guidance wants inside, whatever was told of the time. */
export const insideToo = (turn: Turn, { name }: Item): Say[] => {
  const { region } = turn.kitchen.household;
  const { temperature } = cookTemperature({ food: name, region, reheating: true });
  return [say('inside-too', { temperature: heatSaid(turn, temperature) })];
};

/** "How long does the chicken take in the oven": the figure, where one was told; the steps are another question. */
const recordedMinutes = (turn: Turn, item: Item, slots: Slots): Reply | null => {
  const asked = slots.asked === 'minutes' || turn.qualifiers.has('how-long-takes');
  const method = methodFor(turn, item, slots.method ?? slots.preparation?.method ?? undefined);
  const told = item.preparations.find((one) => one.method === method && one.minutes !== null);
  if (!asked || method === 'microwave' || !told?.minutes) return null;
  if (assessIn(turn.kitchen, item, turn.clock).verdict === 'throw-out') return null;
  return {
    parts: [
      say('reheat-recorded-minutes', {
        method,
        time: { kind: 'duration', seconds: told.minutes * 60 },
        ...(told.heat ? { heat: heatSaid(turn, told.heat) } : {}),
      }),
      ...insideToo(turn, item),
    ],
    memory: about(turn, [item]),
    names: [item.name],
  };
};

/** "Can I reheat it again?": what guidance says of another time, without beginning. */
const anotherTime = (turn: Turn, item: Item): Reply => {
  const { region } = turn.kitchen.household;
  const plan = planFor(turn, item, methodFor(turn, item, undefined), turn.kitchen.household.microwaveWatts);
  const times = item.timesReheated;
  const past = plan.kind === 'refused' && plan.refusal === 'past-guidance';
  const found = cookTemperature({ food: item.name, region, reheating: true });
  const temperature = { kind: 'temperature', ...found.temperature } as const;
  const memory = about(turn, [item]);
  if (past)
    return {
      parts: [
        say('verdict-throw-out', { name: item.name, many: 'no' }),
        ...plan.reasons.slice(0, 1).map(reasonWords),
      ],
      sources: sourcesOf(plan.reasons),
      memory,
    };
  if (plan.kind === 'refused' && plan.refusal !== 'method-unknown')
    return { parts: [say(`refusal-${plan.refusal}`)], sources: sourcesOf(plan.reasons), memory };
  return {
    parts: [
      // The United States publish no count; the United Kingdom says once, and so do we where neither was chosen.
      regionFacts(region).reheatOnce
        ? say('reheat-again-once', { temperature, done: times > 0 ? 'yes' : 'no' })
        : say('reheat-again-counts', { temperature }),
      times > 0 ? say('reheat-again-before', { times }) : say('reheat-none-noted'),
    ],
    sources: sourcesOf([found, ...plan.reasons]),
    memory,
    names: [item.name],
  };
};

/** "Can I do it in the oven instead", "for four of us", while its steps are followed: the dish, whatever was spoken of since. */
const dishMeant = (
  { slots: { item, method, amount } }: Act,
  { state: { procedure } }: Turn,
): Slots['item'] => {
  const dish = procedure?.kind === 'reheat' && !procedure.paused ? procedure.itemId : null;
  const it = item?.pointer === 'it' && item.words === null && (method ?? amount) !== undefined;
  return dish !== null && it ? { ...emptyMention, candidates: [{ id: dish, fit: 1 }] } : item;
};

export const reheat: Handler = (act, turn) => {
  const { slots } = act;
  const found = needItem(turn, dishMeant(act, turn), {
    question: say('ask-reheat'),
    anyOfBatch: true,
    lastOne: true,
  });
  if ('reply' in found) return found.reply;
  const item = found.got;
  if (slots.asked === 'again') return anotherTime(turn, item);
  if (slots.asked === 'told') return instructionsTold(turn, item);
  const memory = about(turn, [item]);
  const watts = slots.number && slots.number >= 300 ? slots.number : turn.kitchen.household.microwaveWatts;
  const way = methodFor(turn, item, slots.method ?? slots.preparation?.method ?? undefined);
  if (slots.asked === 'minutes' && watts && way === 'microwave') {
    const minutes = minutesOnly(turn, item, watts);
    if (minutes) return minutes;
  }
  const recorded = recordedMinutes(turn, item, slots);
  if (recorded) return recorded;
  const method = methodFor(turn, item, slots.method ?? slots.preparation?.method ?? undefined);
  const portions = slots.amount?.unit === 'portion' ? slots.amount.value : undefined;
  const plan = planFor(turn, item, method, watts, portions, slots.from_state);
  if (plan.kind === 'refused') {
    const past = plan.refusal === 'past-guidance';
    const discard = {
      intent: 'finish',
      slots: {
        item: { ...emptyMention, candidates: [{ id: item.id, fit: 1 }] },
        how: 'thrown out',
      },
    } as const;
    return {
      parts: past
        ? [
            say('verdict-throw-out', { name: item.name, many: 'no' }),
            ...plan.reasons.slice(0, 1).map(reasonWords),
          ]
        : [say(`refusal-${plan.refusal}`)],
      details: plan.reasons.slice(past ? 1 : 0).map(reasonWords),
      sources: sourcesOf(plan.reasons),
      memory,
      ...(past ? { offer: { question: say('offer-throw-out', { name: item.name }), act: discard } } : {}),
    };
  }
  // Allergens and what the cook warned of come before any step.
  const undated = plan.reasons.some(({ code }) => code === 'date-unknown');
  const first: Say[] = [
    ...plan.first.map(cautionWords),
    ...(undated ? [say('reheat-undated')] : []),
    ...otherThanTold(turn, item, method, watts, portions),
  ];
  if (slots.asked === 'all') return allSteps(turn, item, procedureOf(turn, item, method, plan), first);
  const begun = beginSteps(procedureOf(turn, item, method, plan), first);
  return { ...begun, details: plan.reasons.map(reasonWords), memory, names: [item.name] };
};
