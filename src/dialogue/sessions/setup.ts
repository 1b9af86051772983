/** The first set-up by voice: a question at a time, in any words, put aside and taken up at will. */
import type { Say } from '../../speech/answer.js';
import type { Act, Expectation } from '../../understanding/intents.js';
import { type Handler, type Reply, type Turn, say } from '../handler.js';
import { addMarker } from '../markers/markers.js';
import { addPerson } from '../people/people.js';
import { type Session, setupKey, stateOf } from '../state.js';
import type { Instant } from '../../terms/dates.js';
import { setHousehold } from '../settings/household.js';
import { buildAll } from './setup-places.js';

type Setup = Extract<Session, { kind: 'setup' }>;

/** In this order: what everything else stands on comes first. */
const steps = [
  'places',
  'parts',
  'markers',
  'dots',
  'people',
  'watts',
  'region',
  'summary',
  'first-food',
] as const;

/** What "skip to …" may call a question, as the start of a word. */
const called: Readonly<Record<(typeof steps)[number], RegExp>> = {
  places: /\b(place|fridge|freezer|pantry|where)/,
  parts: /\b(part|shel|drawer|basket|divi)/,
  markers: /\b(marker|clip|sticker|band|bead|patch|ring)/,
  dots: /\b(dot|raised|knot|ridge|notch)/,
  people: /\b(people|person|eat|allerg|who\b)/,
  watts: /\b(watt|microwave|power)/,
  region: /\b(region|guid|countr|safety)/,
  summary: /\b(summar|evening|time)/,
  'first-food': /\b(food|last|end\b)/,
};

/** Steps one answer settles. */
const single: ReadonlySet<string> = new Set(['watts', 'region', 'summary', 'first-food']);

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

export const startSetup: Handler = (_act, turn) =>
  resumeSetup(turn) ?? {
    parts: [say('setup-start', { count: steps.length })],
    session: { kind: 'setup', step: 0, paused: false, said: 0 },
  };

export const setupPrompt = (session: Setup): Say | null => {
  const step = steps[session.step];
  if (!step) return null;
  return session.said > 0 ? say('setup-more', { step }) : say(`setup-${step}`);
};

/** What kind of answer the question of a step wants. */
export const setupExpects = (session: Setup): Expectation => {
  switch (steps[session.step]) {
    case 'places':
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

const onwards = (session: Setup): Reply => {
  const step = session.step + 1;
  return step < steps.length
    ? { parts: [], session: { ...session, step, said: 0 } }
    : { parts: [say('setup-over')], session: null };
};

/** After something was recorded: the next question, when this one is settled. */
export const setupAfterChange = (session: Setup): Setup | null => {
  const step = steps[session.step];
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
  const heard = (turn.heard ?? '').toLowerCase().replace(/^.*?\bto\b/, '');
  // "The first food" is a name, not the first of them.
  const named = steps.findLastIndex((one) => called[one].test(heard));
  const step = named >= 0 || n === null ? named : n < 0 ? steps.length + n : n - 1;
  return steps[step]
    ? { parts: [], session: { ...session, step, said: 0 } }
    : { parts: [say('setup-no-question', { count: steps.length })] };
};

const answerTo = (act: Act, turn: Turn, session: Setup): Reply | null => {
  const step = steps[session.step];
  const { words, item, number, amount, time, person } = act.slots;
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
        : { parts: [say('steps-left', { left: steps.length - 1 - session.step })] };
    case 'skip-to':
      return skipped(act, turn, session);
    case 'continue':
      return turn.cutAt === null && !turn.state.told?.cut.length ? { parts: [] } : null;
    case 'wait':
      return { parts: [say('setup-paused')], session: { ...session, paused: true }, quiet: true };
    case 'end-session':
    case 'cancel':
      return {
        parts: [say('setup-left', { left: steps.length - session.step })],
        session: { ...session, paused: true },
        quiet: true,
      };
    case 'yes':
      return { parts: [say('setup-go-ahead')] };
    case 'goodbye':
      // "That's all" ends the question, not the talk.
      return /\b(that is|that's|thats) (all|it|everything)\b/i.test(turn.heard ?? '')
        ? onwards(session)
        : null;
    case 'build-place':
      return step === 'places' && !act.slots.placeKind
        ? buildAll(turn, (turn.heard ?? '').toLowerCase())
        : null;
    case 'answer':
    case 'choose':
    case 'find': {
      const text = words ?? item?.words ?? act.slots.place?.words ?? turn.heard ?? '';
      // All that was said, not only the last of it.
      if (step === 'places') return buildAll(turn, (turn.heard ?? text).toLowerCase());
      if (act.intent === 'find') return null;
      const marker = act.slots.marker ?? (item?.touch ? item : undefined);
      if (step === 'markers' && marker?.touch)
        return addMarker({ intent: 'add-marker', slots: { marker: { ...marker, words: null } } }, turn);
      if (step === 'people' && text.split(' ').length <= 3)
        return addPerson(
          {
            intent: 'add-person',
            slots: { ...act.slots, person: person ?? { words: text, candidates: [] } },
          },
          turn,
        );
      const count = number ?? amount?.value ?? item?.ordinal ?? null;
      if (step === 'watts' && count !== null) {
        return setHousehold({ intent: 'set-household', slots: { setting: 'watts', number: count } }, turn);
      }
      if (
        step === 'region' &&
        /\b(us|usa|america|american|united|states|kingdom|uk|britain|british)\b/i.test(text)
      )
        return setHousehold({ intent: 'set-household', slots: { setting: 'region', words: text } }, turn);
      if (step === 'summary' && time)
        return setHousehold({ intent: 'set-household', slots: { setting: 'summary', time } }, turn);
      return null;
    }
    default:
      return null;
  }
};
