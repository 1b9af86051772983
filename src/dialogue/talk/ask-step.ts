/** Questions about the steps being followed. Understood found the sentence that answers; it is said here. */
import { checkProbe, cookTemperature } from '../../safety/index.js';
import type { Value } from '../../speech/answer.js';
import type { Act, StepCalled } from '../../understanding/intents.js';
import type { Item } from '../../kitchen/model.js';
import type { Conversation, Surroundings } from '../api.js';
import { reasonWords, sourcesOf } from '../describe/guidance.js';
import { heatSaid } from '../describe/heat.js';
import { inScale } from '../guidance/asked.js';
import { type Handler, type Reply, type Turn, about, say } from '../handler.js';
import { needItem } from '../refer/need.js';
import { methodFor, stepsOf, toldWays } from '../reheat/plan.js';
import { insideToo, reheat } from '../reheat/reheat.js';
import { type Procedure, stateOf } from '../state.js';
import { repeat } from './controls.js';
import { currentStep, stepWords } from './step-words.js';
import { next, stepsLeft, toStep } from './steps.js';

/** Steps of making a dish ready; what is done in a power cut is told and asked in words of its own. */
const ofADish: ReadonlySet<Procedure['kind']> = new Set<Procedure['kind']>(['reheat', 'cook', 'thaw']);

/** The steps that what is said next may be about; null when none are read. */
export const stepsAtHand = (conversation: Conversation): Procedure | null => {
  const { procedure, frames, session } = stateOf(conversation);
  if (!procedure || session || !ofADish.has(procedure.kind)) return null;
  // Only what asks for more than a yes or a no takes what is said next for its own.
  if (frames.some(({ expecting }) => expecting !== 'yes-no')) return null;
  const reading = conversation.expecting === 'step' || (frames.length > 0 && !procedure.paused);
  return reading || procedure.unread === true || procedure.held === true ? procedure : null;
};

/** How dishes here are got ready, as somebody told it, in the order of the record. */
export const dishesTold = (
  conversation: Conversation,
  { kitchen, clock }: Surroundings,
): readonly {
  readonly procedure: Procedure;
  readonly method: string;
  readonly item: Item;
  readonly spokenOf: boolean;
}[] => {
  const { memory, procedure } = stateOf(conversation);
  const spoken = procedure && !procedure.paused ? [] : memory.items;
  return [...kitchen.items.values()].flatMap((item) =>
    item.gone !== null
      ? []
      : toldWays(item).flatMap((method) => {
          const steps = stepsOf({ kitchen, clock }, item, method);
          return steps ? [{ procedure: steps, method, item, spokenOf: spoken.join() === item.id }] : [];
        }),
  );
};

/** What the steps being followed may be called. */
export const stepNames = (conversation: Conversation): readonly StepCalled[] =>
  stateOf(conversation).procedure?.steps.map(({ text, code = text.phrase, own = null }) => ({
    code,
    words: own,
  })) ?? [];

const kept = (...parts: Reply['parts']): Reply => ({ parts, keepTold: true, aside: true });

const ordinalOf = (at: number): Value => ({ kind: 'ordinal', n: at + 1 });

/** What stands in a step in its own words, and in which when it is another than the one at hand. */
const quoted = ({ at, unread }: Procedure, { number, words }: Act['slots'], none: string): Reply => {
  if (words === undefined || number === undefined) return kept(say(none));
  const here = number - 1 === (unread ? at - 1 : at);
  return kept(say('step-quoted', here ? { words } : { words, step: ordinalOf(number - 1) }));
};

const left = ({ steps, at, unread }: Procedure): number => steps.length - at - (unread ? 0 : 1);

/** "Is it done?": only when no step is left. */
const finished = (act: Act, turn: Turn, procedure: Procedure): Reply => {
  const more = left(procedure);
  if (more <= 0) return next(act, turn);
  if (!act.slots.reported) return kept(say('steps-not-yet', { left: more }));
  const told = next(act, turn);
  return { ...told, parts: [say('not-yet'), ...told.parts] };
};

/** What the thermometer reads, held against what the dish is to reach; hot enough, the next step follows. */
const readingSaid = (act: Act, turn: Turn, { itemId, at, steps }: Procedure): Reply => {
  const { degrees } = act.slots;
  const dish = itemId ? turn.kitchen.items.get(itemId) : undefined;
  if (!degrees || !dish) return kept(say('steps-do-not-say'));
  const { region } = turn.kitchen.household;
  const wanted = cookTemperature({ food: dish.name, region, reheating: true });
  const answer = checkProbe(wanted, { reads: inScale(turn, degrees), seconds: null, boiling: false });
  const sources = sourcesOf(answer.reasons);
  if (!answer.reached)
    return { ...kept(say('step-more-time')), details: answer.reasons.map(reasonWords), sources };
  const probing = at >= steps.length - probed;
  const told = probing ? next(act, turn) : kept(say('say-next'));
  return { ...told, parts: [say('guidance-probe-yes'), ...told.parts], sources };
};

/** What is to be minded at this step or the next. */
const careful = ({ steps, at }: Procedure): Reply => {
  const cautions = steps.slice(at, at + 2).flatMap(({ caution }) => caution ?? []);
  return cautions.length > 0 ? kept(...cautions.slice(0, 1)) : kept(say('steps-no-caution'));
};

/** "Is there anything else to do?": whether there is, and what. */
const anyMore = (act: Act, turn: Turn, procedure: Procedure): Reply => {
  const told = next(act, turn);
  const more = left(procedure);
  return more <= 0 ? told : { ...told, parts: [say('steps-more', { left: more }), ...told.parts] };
};

/** A question about the steps was answered last: "say that again" means the step. */
const wasAsked = ({ state: { told, turns } }: Turn): boolean =>
  told?.turn !== turns - 1 || told.act?.intent === 'ask-step';

/** What the oven or the microwave is set to, where that is on record; when the thermometer is read, what it should say. */
const howHot = (turn: Turn, procedure: Procedure, { number }: Act['slots']): Reply | null => {
  const { steps, at } = procedure;
  const probing = number !== undefined && number - 1 === at && at >= steps.length - probed;
  return probing ? null : ofPower(turn, procedure);
};
const ofPower = (turn: Turn, { setting }: Procedure): Reply | null => {
  if (setting?.heat) return kept(say('steps-heat', { heat: heatSaid(turn, setting.heat) }));
  return setting?.watts ? kept(say('steps-watts', { watts: setting.watts })) : null;
};
/** The last steps but one are of the thermometer. */
const probed = 2;

const inAll = ({ setting }: Procedure): Reply =>
  setting?.seconds
    ? kept(say('steps-whole-time', { time: { kind: 'duration', seconds: setting.seconds } }))
    : kept(say('steps-untimed'));

/** Something of a step is not so yet: back to that step where it was gone past, and wait. */
const notYet = (procedure: Procedure, { number }: Act['slots']): Reply => {
  const here = procedure.unread ? procedure.at - 1 : procedure.at;
  const back = number !== undefined && number - 1 < here ? toStep(procedure, number - 1) : null;
  return back ? { ...back, parts: [say('back-to-step'), ...back.parts] } : kept(say('wait-until-so'));
};

/** Which step comes before it, and what it is: "when do I take the foil off". */
const whenDone = (procedure: Procedure, slots: Act['slots']): Reply => {
  const { number, words } = slots;
  const before = number === undefined ? undefined : procedure.steps[number - 2];
  if (words === undefined || !before) return quoted(procedure, slots, 'steps-do-not-say');
  return kept(say('step-before', { text: before.text }), say('step-then', { words }));
};

/** "How many can I do at a time": as a step has it, else what the times were told for. */
const atATime = (turn: Turn, { slots }: Act, procedure: Procedure): Reply => {
  const { itemId } = procedure;
  if (slots.words !== undefined) return quoted(procedure, slots, 'steps-do-not-say');
  const told = (itemId ? turn.kitchen.items.get(itemId) : undefined)?.preparations.find(
    (one) => one.portions !== null && (slots.method === undefined || one.method === slots.method),
  );
  return told?.portions
    ? kept(say('reheat-in-lots', { told: told.portions }))
    : kept(say('steps-do-not-say'));
};

/** A dish that was named, and whose steps are not followed: as they would be read. */
const ofNamed = (act: Act, turn: Turn): Reply => {
  const found = needItem(turn, act.slots.item, {
    question: say('ask-reheat'),
    anyOfBatch: true,
    lastOne: true,
  });
  if ('reply' in found) return found.reply;
  const item = found.got;
  const method = methodFor(turn, item, act.slots.method);
  const procedure = stepsOf(turn, item, method);
  if (!procedure) return reheat({ intent: 'reheat', slots: { item: act.slots.item! } }, turn);
  const { item: _named, ...slots } = act.slots;
  // None of them is read: each is told by its number.
  const said = answer({ ...act, slots }, turn, { ...procedure, at: -1 });
  const inside = slots.asked === 'sign' || slots.asked === 'how-hot' ? insideToo(turn, item) : [];
  return {
    ...said,
    parts: [...said.parts, ...inside],
    keepTold: false,
    sources: procedure.source ?? [],
    memory: about(turn, [item]),
    names: [item.name],
  };
};

export const askStep: Handler = (act, turn) => {
  if (act.slots.item) return ofNamed(act, turn);
  const { procedure } = turn.state;
  return procedure ? answer(act, turn, procedure) : { parts: [say('no-steps')], keepTold: true };
};

const answer = (act: Act, turn: Turn, procedure: Procedure): Reply => {
  const { slots } = act;
  switch (slots.asked) {
    case 'how-long':
      return quoted(procedure, slots, 'steps-untimed');
    case 'when':
      return whenDone(procedure, slots);
    case 'batch':
      return atATime(turn, act, procedure);
    case 'in-all':
      return inAll(procedure);
    case 'how-hot':
      return howHot(turn, procedure, slots) ?? quoted(procedure, slots, 'steps-no-heat');
    case 'inside':
      return quoted(procedure, slots, 'steps-no-heat');
    case 'power':
      return ofPower(turn, procedure) ?? kept(say('steps-no-heat'));
    case 'target':
      return quoted(procedure, slots, 'steps-no-heat');
    case 'sign':
      return quoted(procedure, slots, 'steps-no-sign');
    case 'how-much':
      return quoted(procedure, slots, 'steps-no-amount');
    case 'whether':
      return quoted(procedure, slots, 'steps-do-not-say');
    case 'reading':
      return readingSaid(act, turn, procedure);
    case 'careful':
      return careful(procedure);
    case 'more':
      return anyMore(act, turn, procedure);
    case 'cold':
      return kept(say('step-more-time'));
    case 'finished':
      return finished(act, turn, procedure);
    case 'meanwhile': {
      const following = procedure.steps[procedure.at + (procedure.unread ? 0 : 1)];
      return following ? kept(say('step-coming', { text: following.text })) : kept(say('steps-none-coming'));
    }
    case 'which':
      return {
        ...kept(
          say('step-number', { step: ordinalOf(procedure.at), count: procedure.steps.length }),
          ...currentStep(procedure),
        ),
        // Asked where they were, after a wait, she is back.
        ...(procedure.held ? { procedure: { ...procedure, paused: false, held: false } } : {}),
      };
    case 'not-yet':
      return notYet(procedure, slots);
    case 'wait':
      return kept(say('say-next'));
    case 'need':
      return kept(...currentStep(procedure));
    case 'again': {
      if (!wasAsked(turn)) return repeat({ intent: 'repeat', slots: {} }, turn);
      const step = procedure.steps[procedure.unread ? procedure.at - 1 : procedure.at];
      return step ? kept(...stepWords(step)) : stepsLeft(act, turn);
    }
    default:
      return kept(...currentStep(procedure));
  }
};
