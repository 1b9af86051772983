/** The first set-up by voice: a question at a time, in any words, put aside and taken up at will. */
import type { Say } from '../../speech/answer.js';
import type { Act, Expectation } from '../../understanding/intents.js';
import { type Handler, type Reply, type Turn, say, speakerPerson } from '../handler.js';
import { addMarker } from '../markers/markers.js';
import { type FirstDayDraft, type Session, setupKey, stateOf } from '../state.js';
import type { Instant } from '../../terms/dates.js';
import { firstDay, steps } from './setup-steps.js';
import { setHousehold } from '../settings/household.js';
import {
  asksNuts,
  draftQuestion,
  draftWith,
  keepDraft,
  lacks,
  withoutWhose,
  nameless,
  notKept,
  withName,
  withNuts,
} from './first-day.js';

type Setup = Extract<Session, { kind: 'setup' }>;

/** Steps one answer settles. */
const single: ReadonlySet<string> = new Set(['watts', 'region', 'summary']);

const millis = (at: Instant | undefined): number => (at === undefined ? 0 : Date.parse(at));

/** The set-up as it stands, here or where another device of the household put it aside. */
const openSetup = (turn: Turn): Setup | null => {
  const states = [turn.state, ...turn.elsewhere.map(stateOf)];
  const over = Math.max(...states.map((one) => (one.over?.key === setupKey ? millis(one.over.at) : -1)));
  const open = states
    .flatMap(({ session, practice }) =>
      session?.kind === 'setup' && (!practice || turn.state.practice) ? [session] : [],
    )
    .filter(({ touchedAt }) => millis(touchedAt) > over)
    .sort((a, b) => millis(b.touchedAt) - millis(a.touchedAt));
  return open[0] ?? null;
};

export const resumeSetup = (turn: Turn): Reply | null => {
  const open = openSetup(turn);
  return open ? { parts: [say('setup-again')], session: { ...open, paused: false } } : null;
};

/** The question after the last of those that follow one another. */
const endOf = ({ step }: Setup): number => (step < firstDay ? firstDay : steps.length);

/** The first question that nothing is on record for: a kitchen begun another way is not asked again. */
const firstOpen = ({ kitchen, speaker }: Turn): number => {
  if (kitchen.places.size === 0) return 0;
  const others = [...kitchen.people.values()].filter(({ id }) => id !== speaker.personId);
  return others.length === 0 ? 1 : firstDay;
};

/** "Set up the markers", "help me set up", "go on with it". */
export const startSetup: Handler = (act, turn) => {
  const named = steps.findIndex((step) => step === act.slots.asked);
  if (named >= 0)
    return { parts: [], session: { kind: 'setup', step: named, paused: false, said: 0, alone: true } };
  const resumed = act.slots.asked === 'more' ? null : resumeSetup(turn);
  if (resumed) return resumed;
  const step = act.slots.asked === 'more' ? firstDay : firstOpen(turn);
  return {
    parts: [step < firstDay ? say('setup-start', { count: firstDay - step }) : say('setup-more-to-come')],
    session: { kind: 'setup', step, paused: false, said: 0 },
  };
};

/** What keeps food, told in an empty kitchen before it was asked: the first answer, and so the beginning. */
export const beginWith = ({ slots }: Act, turn: Turn): Reply | null => {
  if (!slots.wholes || turn.kitchen.places.size > 0) return null;
  const draft = draftWith({}, slots, false, speakerPerson(turn)?.name ?? null);
  return { parts: [], session: { kind: 'setup', step: 0, paused: false, said: 0, draft } };
};

export const setupPrompt = (session: Setup): Say | null => {
  const step = steps[session.step];
  if (!step) return null;
  return (
    draftQuestion(session.draft) ?? (session.said > 0 ? say('setup-more', { step }) : say(`setup-${step}`))
  );
};

/** What kind of answer the question of a step wants. */
export const setupExpects = (session: Setup): Expectation => {
  const step = steps[session.step];
  if (asksNuts(session.draft)) return 'allergen';
  if (session.draft?.asksName) return 'person';
  switch (step) {
    case 'wholes':
    case 'eaters':
    case 'manner':
      return step;
    case 'region':
      return 'words';
    case 'watts':
      return 'amount';
    case 'summary':
      return 'time';
    default:
      return 'anything';
  }
};

const isTold = (draft: FirstDayDraft, step: number): boolean => {
  const named = steps[step];
  return (named === 'wholes' || named === 'eaters' || named === 'manner') && draft[named] !== undefined;
};

/** `told`: what was kept just now, with the answers to questions that need not be asked any more. */
const onwards = (session: Setup, told: FirstDayDraft = {}): Reply => {
  const { draft: _done, ...now } = session;
  let step = session.step + 1;
  while (isTold(told, step)) step += 1;
  if (session.alone) return { parts: [say('setup-part-over')], session: null };
  if (step === firstDay) return { parts: [say('setup-first-over')], session: null };
  return step < steps.length
    ? { parts: [], session: { ...now, step, said: 0 } }
    : { parts: [say('setup-over')], session: null };
};

/** After something was recorded: the next question, when this one is settled. */
export const setupAfterChange = (session: Setup): Setup | null => {
  const step = steps[session.step];
  // What is told between the questions of the first day answers none of them.
  if (session.step < firstDay) return session;
  if (step && single.has(step) && session.alone) return null;
  if (!step || !single.has(step)) return { ...session, said: session.said + 1 };
  return session.step + 1 < steps.length ? { ...session, step: session.step + 1, said: 0 } : null;
};

/** An answer that changes nothing, because it is so already, settles its question all the same. */
export const setupAnswer = (act: Act, turn: Turn, session: Setup): Reply | null => {
  const reply = answerTo(act, turn, session);
  const step = steps[session.step];
  const settled =
    reply && step && single.has(step) && !reply.changes && !reply.ask && reply.session === undefined;
  return settled && (act.intent === 'answer' || act.intent === 'choose') ? onwards(session) : reply;
};

/** "Skip to the microwave", "skip to the last question". */
const skipped = ({ slots }: Act, turn: Turn, session: Setup): Reply => {
  const n = slots.ordinal ?? slots.number ?? slots.item?.ordinal ?? null;
  // "The first food" is a name, not the first of them.
  const named = steps.findLastIndex((one) => turn.qualifiers.has(`question-${one}`));
  const step = named >= 0 || n === null ? named : n < 0 ? steps.length + n : n - 1;
  return steps[step]
    ? { parts: [], session: { ...session, step, said: 0 } }
    : { parts: [say('setup-no-question', { count: steps.length })] };
};

const keeping = (turn: Turn, session: Setup, draft: FirstDayDraft): Reply => {
  const kept = keepDraft(turn, draft);
  const { draft: _kept, ...without } = session;
  const step = steps[session.step];
  const other = (step === 'wholes' || step === 'eaters' || step === 'manner') && !draft[step];
  const next: Reply = other ? { parts: [], session: without } : onwards(session, draft);
  return { ...kept, ...next, parts: [...kept.parts, ...next.parts] };
};

/** Talk about what was told and read back: agreed to, put right, added to. */
const ofDraft = (act: Act, turn: Turn, session: Setup): Reply | null => {
  const { draft } = session;
  const { slots } = act;
  const name = draft?.asksName
    ? (slots.words ?? slots.person?.words ?? slots.eaters?.find((one) => one.name !== null)?.name)
    : null;
  if (draft && name) return keeping(turn, session, withName(draft, name));
  const told = slots.wholes ?? slots.eaters ?? slots.manner;
  if (told) {
    // "No, two freezers" begins anew.
    const anew = slots.negated === true;
    return {
      parts: [],
      session: { ...session, draft: draftWith(draft ?? {}, slots, anew, speakerPerson(turn)?.name ?? null) },
    };
  }
  if (!draft) return null;
  const { draft: _dropped, ...without } = session;
  if (asksNuts(draft)) {
    const kinds = slots.allergens?.filter((one) => one === 'tree nuts' || one === 'peanuts') ?? [];
    const all = act.intent === 'yes' || slots.item?.pointer === 'both' || slots.item?.pointer === 'all';
    if (kinds.length > 0 || all)
      return {
        parts: [],
        session: { ...session, draft: withNuts(draft, kinds.length > 0 ? kinds : 'both') },
      };
    // Not knowing which, both are watched for.
    if (act.intent === 'maybe')
      return { parts: [say('setup-both-nuts')], session: { ...session, draft: withNuts(draft, 'both') } };
  }
  const passes = ['no', 'next', 'maybe', 'done'].includes(act.intent);
  if (lacks(draft) && passes) {
    const { draft: left, told: letGo } = withoutWhose(draft);
    return { parts: letGo, session: { ...session, draft: left } };
  }
  switch (act.intent) {
    case 'yes':
    case 'done': {
      // A yes does not say whose it is.
      if (lacks(draft)) return { parts: [say('setup-say-who')], session };
      return nameless(turn, draft)
        ? { parts: [], session: { ...session, draft: { ...draft, asksName: true } } }
        : keeping(turn, session, draft);
    }
    case 'no':
    case 'correct':
      return { parts: [say('setup-tell-again')], session: without };
    case 'next': {
      const next = onwards(session);
      return { ...next, parts: [...notKept(draft), ...next.parts] };
    }
    default:
      return null;
  }
};

const answerTo = (act: Act, turn: Turn, session: Setup): Reply | null => {
  const step = steps[session.step];
  const drafted = ofDraft(act, turn, session);
  if (drafted) return drafted;
  const { item, number, amount, time } = act.slots;
  switch (act.intent) {
    case 'next':
    case 'no':
    case 'done':
    case 'maybe':
      return onwards(session);
    case 'back':
      return { parts: [], session: { ...session, step: Math.max(0, session.step - 1), said: 0 } };
    case 'start-over':
      return { parts: [], session: { ...session, step: 0, said: 0 } };
    case 'steps-left':
      return act.slots.asked === 'time'
        ? { parts: [say('steps-untimed')] }
        : { parts: [say('steps-left', { left: endOf(session) - 1 - session.step })] };
    case 'skip-to':
      return skipped(act, turn, session);
    case 'continue':
      return turn.cutAt === null && !turn.state.told?.cut.length ? { parts: [] } : null;
    case 'wait':
      return { parts: [say('setup-paused')], session: { ...session, paused: true }, quiet: true };
    case 'end-session':
    case 'cancel':
      return {
        parts: [say('setup-left', { left: endOf(session) - session.step })],
        session: { ...session, paused: true },
        quiet: true,
      };
    case 'yes':
      return { parts: [say('setup-go-ahead')] };
    case 'goodbye':
      // "That's all" ends the question, not the talk.
      return turn.qualifiers.has('that-is-all') ? onwards(session) : null;
    case 'answer':
    case 'choose':
    case 'find': {
      if (act.intent === 'find') return null;
      const marker = act.slots.marker ?? (item?.touch ? item : undefined);
      if (step === 'markers' && marker?.touch)
        return addMarker({ intent: 'add-marker', slots: { marker: { ...marker, words: null } } }, turn);
      const count = number ?? amount?.value ?? item?.ordinal ?? null;
      if (step === 'watts' && count !== null) {
        return setHousehold({ intent: 'set-household', slots: { setting: 'watts', number: count } }, turn);
      }
      const region = turn.beside?.region;
      if (step === 'region' && region)
        return setHousehold({ intent: 'set-household', slots: { setting: 'region', region } }, turn);
      if (step === 'summary' && time)
        return setHousehold({ intent: 'set-household', slots: { setting: 'summary', time } }, turn);
      return null;
    }
    default:
      return null;
  }
};
