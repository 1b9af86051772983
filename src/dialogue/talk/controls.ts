/** Talk about the talk: again, shorter, slower, more, why, what did you hear, help, goodbye. */
import { setupStep } from '../sessions/setup-steps.js';
import { ownExample, ownNames } from './own-example.js';
import { type Act, itMention } from '../../understanding/intents.js';
import type { Length, Listener, Say } from '../../speech/answer.js';
import { type Handler, type Reply, type Turn, list, say, assent } from '../handler.js';
import { ownVerdicts } from '../age/keeps.js';
import { count } from '../find/count.js';
import { tellAbout } from '../find/whats-this.js';
import { atOrdinal, findItems } from '../refer/items.js';
import { summaryLines } from '../summary/lines.js';
import { lengths, usualListener } from '../state.js';
import { cutIndex } from '../turn/broken-off.js';
import { nextOf } from '../timers/wall-time.js';

export const verbatim = (sentences: readonly string[]): Say[] =>
  sentences.map((text) => say('verbatim', { text }));

/** Word for word, question and all. */
export const repeat: Handler = (act, turn) => {
  const n = act.slots.ordinal ?? act.slots.item?.ordinal ?? null;
  const at = n === null ? undefined : atOrdinal(turn.memory.offered, n);
  const line = n === null ? null : summaryLine(turn, n);
  if (line) return { parts: line, keepTold: true, ...(at ? { memory: { items: [at] } } : {}) };
  if (at)
    return tellAbout(
      {
        intent: 'tell-about',
        slots: { item: { ...itMention, candidates: [{ id: at, fit: 1 }], pointer: null } },
      },
      turn,
    );
  return repeatAll(turn);
};

/** "Read the second again", after a summary: its line, of those that tell what to use. */
const summaryLine = ({ state: { told } }: Turn, n: number): readonly Say[] | null => {
  const lines = summaryLines([...(told?.answer.parts ?? []), ...(told?.rest ?? [])]);
  return atOrdinal(lines.length > 0 ? lines : (told?.lines ?? []), n) ?? null;
};

const repeatAll = (turn: Turn): Reply => {
  const { told } = turn.state;
  if (told?.aside) {
    const { answer } = told;
    const question = answer.question ? [answer.question] : [];
    return {
      parts: [...answer.parts, ...question],
      keepTold: true,
      quiet: true,
      ...(answer.length ? { length: answer.length } : {}),
    };
  }
  return turn.lastSentences.length === 0
    ? { parts: [say('nothing-said-yet')] }
    : { parts: verbatim(turn.lastSentences), keepTold: true, quiet: true };
};

/** Silence. What was cut off can be heard by "go on". */
export const stop: Handler = (_act, turn) => {
  const at = cutIndex(turn.cutAt);
  const { procedure, session } = turn.state;
  return {
    parts: [],
    quiet: true,
    keepTold: true,
    dropFrames: true,
    cut: at === null ? [] : turn.lastSentences.slice(at),
    ...(procedure ? { procedure: { ...procedure, paused: true } } : {}),
    ...(session && session.kind !== 'shop' ? { session: { ...session, paused: true } } : {}),
  };
};

export const wait: Handler = (_act, turn) => {
  const { procedure, session } = turn.state;
  return {
    parts: [say('waiting')],
    quiet: true,
    keepTold: true,
    ...(procedure ? { procedure: { ...procedure, paused: true, held: true } } : {}),
    ...(session && session.kind !== 'shop' ? { session: { ...session, paused: true } } : {}),
  };
};

/** Sentences of detail told at a time. */
export const littleMore = 3;

const byOne = (from: Length, by: 1 | -1): Length =>
  lengths[Math.min(lengths.length - 1, Math.max(0, lengths.indexOf(from) + by))]!;

/** "Tell me everything from now on" goes all the way. */
const lengthNamed = ({ qualifiers }: Turn): Length | null =>
  qualifiers.has('everything')
    ? 'full'
    : qualifiers.has('short')
      ? 'short'
      : qualifiers.has('usual')
        ? 'usual'
        : null;

/** The last answer again at another length; or all answers from now on. */
const atLength =
  (by: 1 | -1): Handler =>
  (act, turn) => {
    const { told } = turn.state;
    if (act.slots.lasting) {
      const length = lengthNamed(turn) ?? byOne(turn.listener.length, by);
      return { parts: [say('length-now', { length })], listener: { ...turn.listener, length } };
    }
    if (!told) return { parts: [say('nothing-said-yet')] };
    const length = byOne(told.answer.length ?? turn.listener.length, by);
    const details = by === 1 ? told.details : [];
    const question = told.answer.question ? [told.answer.question] : [];
    return { parts: [...told.answer.parts, ...details, ...question], length, keepTold: true, quiet: true };
  };
export const shorter = atLength(-1);
export const longer = atLength(1);

/** "Details", "tell me more": what was left out, not what was said already. */
export const details: Handler = (act, turn) => {
  const { told } = turn.state;
  if (!told) return { parts: [say('nothing-said-yet')] };
  const more = told.details;
  if (more.length === 0) {
    return turn.memory.items.length === 1 && !turn.state.procedure
      ? tellAbout({ intent: 'tell-about', slots: { item: itMention } }, turn)
      : longer(act, turn);
  }
  // "More" is a little at a time; "the details" and "everything" are all of it.
  const all = more.length <= littleMore + 1 || turn.qualifiers.has('details');
  const [shown, rest] = all ? [more, []] : [more.slice(0, littleMore), more.slice(littleMore)];
  return {
    parts: [...shown, ...(rest.length > 0 ? [say('power-more')] : [])],
    length: 'full',
    keepTold: true,
    rest,
  };
};

/** "Why", "who says so". */
/** "Why the chicken": that one alone, with what is told of it on asking. */
const whyOfOne = (act: Act, turn: Turn): Reply | null => {
  const named = findItems(turn, act.slots.item).items;
  const spokenOf = named.filter(
    ({ id }) => turn.memory.items.includes(id) || turn.memory.offered.includes(id),
  );
  const [first, ...rest] = spokenOf.length > 0 ? spokenOf : named;
  if (!first) return null;
  const found = ownVerdicts(turn, [first, ...rest]);
  return { ...found, parts: [...found.parts, ...(found.details ?? []), ...(found.sources ?? [])] };
};

export const why: Handler = (act, turn) => {
  const { told } = turn.state;
  const ofOne = act.slots.item ? whyOfOne(act, turn) : null;
  if (ofOne) return ofOne;
  if (!told) return { parts: [say('nothing-said-yet')] };
  const sources = told.sources.length > 0 ? told.sources : (turn.state.procedure?.source ?? []);
  const who = turn.qualifiers.has('whose-word');
  const parts = who && sources.length > 0 ? sources : [...told.details, ...sources];
  return parts.length > 0
    ? { parts, length: 'full', keepTold: true }
    : { parts: [say('from-your-record')], keepTold: true };
};

const step = 1.2;
const slowest = 0.5;
const fastest = 3;

const speaking = (turn: Turn, change: Partial<Listener>, phrase: string): Reply => ({
  parts: [say(phrase)],
  listener: { ...turn.listener, ...change },
  keepTold: true,
  aside: true,
});

const rounded = (rate: number): number => Math.round(rate * 100) / 100;

export const faster: Handler = (_act, turn) =>
  turn.listener.rate >= fastest
    ? { parts: [say('as-fast-as-i-go')], keepTold: true }
    : speaking(turn, { rate: rounded(Math.min(fastest, turn.listener.rate * step)) }, 'faster-now');

export const slower: Handler = (_act, turn) =>
  turn.listener.rate <= slowest
    ? { parts: [say('as-slow-as-i-go')], keepTold: true }
    : speaking(turn, { rate: rounded(Math.max(slowest, turn.listener.rate / step)) }, 'slower-now');

const volumes: readonly Listener['volume'][] = ['x-soft', 'soft', 'medium', 'loud', 'x-loud'];

const volumeBy = (turn: Turn, by: 1 | -1, phrase: string, end: string): Reply => {
  const at = volumes.indexOf(turn.listener.volume) + by;
  const volume = volumes[at];
  return volume ? speaking(turn, { volume, whisper: false }, phrase) : { parts: [say(end)], keepTold: true };
};
export const louder: Handler = (_act, turn) => volumeBy(turn, 1, 'louder-now', 'as-loud-as-i-go');
export const quieter: Handler = (_act, turn) => volumeBy(turn, -1, 'quieter-now', 'as-quiet-as-i-go');

/** An evening's whispering is over when the household gets up. Our own choice. */
const morning = '06:00';

export const whisper: Handler = (act, turn) => {
  if (act.slots.negated) return { ...speaking(turn, { whisper: false }, 'no-whisper'), whisperUntil: null };
  if (act.slots.lasting && turn.qualifiers.has('this-day'))
    return {
      ...speaking(turn, { whisper: true }, 'whispering-tonight'),
      whisperUntil: nextOf([morning], turn.clock),
    };
  const on = act.slots.lasting === true || !turn.listener.whisper;
  return { ...speaking(turn, { whisper: on }, on ? 'whispering' : 'no-whisper'), whisperUntil: null };
};

/** "Turn on the sounds": whether a short sound comes before an answer. Outranks what the client offers. */
export const sounds: Handler = (act, turn) => {
  const on = act.slots.negated !== true;
  return speaking(turn, { earcons: on, earconsChosen: true }, on ? 'sounds-on' : 'sounds-off');
};

/** "Always use short answers". */
export const lengthSetting: Handler = (act, turn) => {
  const length = lengths.find((one) => one === act.slots.words) ?? 'usual';
  return { parts: [say('length-now', { length })], listener: { ...turn.listener, length } };
};

/** "Back to your normal speed". */
export const usualVoice: Handler = (act, turn) =>
  act.slots.setting === 'rate'
    ? speaking(turn, { rate: usualListener.rate }, 'usual-speed')
    : speaking(turn, { volume: usualListener.volume, whisper: false }, 'usual-volume');

/** Letter by letter: what was named, else what the last answer was about. */
export const spell: Handler = (act, turn) => {
  const { item, words } = act.slots;
  const known = turn.memory.items.flatMap((id) => turn.kitchen.items.get(id)?.name ?? []);
  const text = words ?? item?.words ?? turn.state.told?.names[0] ?? known[0];
  return text
    ? { parts: [say('spelled', { letters: { kind: 'letters', text } })], keepTold: true }
    : { parts: [say('spell-what')] };
};

export const justNames: Handler = (_act, turn) => {
  const names = [...new Set(turn.state.told?.names ?? [])];
  return names.length > 0
    ? { parts: [say('names-only', { names: list(names) })], keepTold: true }
    : { parts: [say('no-names')], keepTold: true };
};

export const howMany: Handler = (_act, turn) => {
  const { told, procedure } = turn.state;
  if (procedure && !told?.count)
    return { parts: [say('steps-in-all', { count: procedure.steps.length })], keepTold: true };
  // Of one thing, how much of it there is; of several, how many they are.
  if (turn.memory.items.length === 1 && (told?.count ?? 1) === 1 && !told?.rest.length)
    return count({ intent: 'count', slots: { item: itMention } }, turn);
  return told && told.count !== null
    ? { parts: [say('that-many', { count: told.count })], keepTold: true }
    : { parts: [say('nothing-to-count')], keepTold: true };
};

export const whatHeard: Handler = (_act, turn) => {
  const heard = turn.state.told?.quote;
  return heard
    ? { parts: [say('i-heard', { heard })], keepTold: true }
    : { parts: [say('heard-nothing-yet')], keepTold: true };
};

/** What can be said just now: to the open question, in the procedure, in the session, or at all. */
export const help: Handler = (act, turn) => {
  const { frames, procedure, session, practice } = turn.state;
  // "What can you do with the list?"
  const topic = act.slots.words;
  if (topic) {
    const ways = say('help-topic', { topic });
    const own = ownExample(turn, topic);
    return act.slots.asked === 'explain'
      ? { parts: [say('explained', { topic }), ...own], more: [ways], details: [ways] }
      : { parts: [ways, ...own], keepTold: true };
  }
  const frame = frames.at(-1);
  if (frame && frame.kind !== 'offer') {
    const labels = frame.choices?.slice(0, 4).map(({ label }) => label) ?? [];
    const choices = labels.length > 0 ? { choices: list(labels, true) } : {};
    return { parts: [say('help-question', { expecting: frame.expecting, ...choices })], keepTold: true };
  }
  if (session && !(session.kind !== 'shop' && session.paused))
    return {
      parts: [
        say('help-session', {
          session: session.kind,
          step: session.kind === 'setup' ? setupStep(session) : 'none',
        }),
      ],
      keepTold: true,
    };
  if (procedure && !procedure.paused) return { parts: [say('help-steps')], keepTold: true };
  const empty = turn.kitchen.items.size === 0;
  return {
    parts: [
      say(
        practice?.lesson ? 'help-lesson' : practice ? 'help-practice' : empty ? 'help-start' : 'help-general',
        empty ? {} : ownNames(turn),
      ),
    ],
    more: empty ? [] : [say('help-more-food'), say('help-more-kitchen'), say('help-more-talk')],
    details: [say('help-more-food'), say('help-more-kitchen'), say('help-more-talk')],
    // Asked what it is for, with nothing in it: the first step stays on offer.
    ...(empty && turn.kitchen.places.size === 0
      ? { offer: { question: say('offer-begin'), act: { intent: 'start-setup' as const, slots: {} } } }
      : {}),
  };
};

/** "No", or "never mind", right after something was done: shall it be taken back? */
export const offerUndo = (turn: Turn): Reply | null => {
  const { done, turns } = turn.state;
  if (done?.turn !== turns - 1) return null;
  const about = [...new Set(done.changes.flatMap((change) => change.about))];
  return {
    parts: [],
    offer: {
      question: say('offer-undo', about.length > 0 ? { about: list(about) } : {}),
      act: { intent: 'undo', slots: {} },
    },
  };
};

export const cancel: Handler = (_act, turn) => {
  const { frames, procedure, session } = turn.state;
  if (frames.length > 0) return { parts: [assent('left-as-it-is')], dropFrames: true };
  if (procedure) return { parts: [say('procedure-ended')], procedure: null };
  if (session && session.kind !== 'shop')
    return {
      parts: [say('where-we-stopped', { session: session.kind })],
      session: { ...session, paused: true },
      quiet: true,
    };
  const back = offerUndo(turn);
  if (back) return back;
  return { parts: [assent('nothing-open')] };
};

export const thanks: Handler = () => ({ parts: [assent('welcome')], keepTold: true });
export const greeting: Handler = (_act, turn) => {
  const person = turn.speaker.personId ? turn.kitchen.people.get(turn.speaker.personId) : undefined;
  const name = person ? { name: person.name } : {};
  // A kitchen with nothing in it yet: what it is for, and a first step.
  if (turn.kitchen.items.size === 0 && turn.kitchen.places.size === 0)
    return {
      parts: [say('hello-empty', name)],
      offer: { question: say('offer-begin'), act: { intent: 'start-setup', slots: {} } },
    };
  return { parts: [assent('hello', name)] };
};
export const goodbye: Handler = (_act, turn) => {
  const { session } = turn.state;
  return {
    parts: [say('goodbye')],
    quiet: true,
    dropFrames: true,
    ...(session && session.kind !== 'shop' ? { session: { ...session, paused: true } } : {}),
  };
};
