/**
 * Short talk about messages, timers that run, the summary and quiet hours. Each reader knows by a word or two what it
 * is about, and takes it only where every word is one of its own: `grammars/<language>/asides.json`.
 */
import type { DynamicRules } from '../../../grammar/api.js';
import { emptyMention, type Act, type ClockAtHand, type Slots } from '../../intents.js';
import { pointed } from '../../meaning-parts.js';
import { cheapestCover, constituentsAt } from '../chunks.js';
import { endsBeforeWhy, hourIn, isPerson, only, type AsideTalk as Talk } from './aside-talk.js';
import { clocksAt, is, ofKind, some, type Bit, type Frame } from './bits.js';
import { clockReaders } from './clock-talk.js';
import { personIn } from './list/lines.js';
import { wordsOfMatter } from './list/words.js';

const costs = { word: 0.1, unknown: 1.1 } as const;

export const asideBitsOf = (
  tokens: readonly string[],
  rules: DynamicRules,
  language: string,
  clocks: readonly ClockAtHand[],
): readonly Bit[] | null => {
  const own = wordsOfMatter(language, 'asides');
  return own
    ? cheapestCover<Bit>(tokens.length, (from) => [
        { chunk: { kind: 'unknown', from, to: from + 1, word: tokens[from]! }, cost: costs.unknown },
        ...own.allAt(tokens, from).map(({ length, value }) => ({
          chunk: { kind: 'word' as const, from, to: from + length, classes: value },
          cost: costs.word,
        })),
        ...clocksAt(tokens, from, clocks),
        ...constituentsAt(tokens, from, rules),
      ]).pieces
    : null;
};

/** "Anything for me?" */
const hearsMessages = ({ bits }: Talk): Act | null =>
  some(bits, 'for-me') && only(bits, ['for-me']) ? { intent: 'notes', slots: {} } : null;

/** "Who's that from, and when did they leave it?", of what was just read. */
const sentBy = ({ bits, answered }: Talk): Act | null =>
  answered?.intent === 'notes' && some(bits, 'sent-by', 'sent-when') && only(bits, ['sent-by', 'sent-when'])
    ? { intent: 'notes', slots: { asked: 'from' } }
    : null;

/** "Has Junie heard the message I left her yesterday?" */
const wasHeard = ({ bits }: Talk): Act | null => {
  const [who, ...others] = bits.flatMap((bit) => personIn(bit) ?? []);
  const asks = some(bits, 'heard-it') && some(bits, 'note-word');
  const whole = only(bits, ['heard-it', 'note-word', 'hers'], (bit) => isPerson(bit) || bit.kind === 'day');
  return who && others.length === 0 && asks && whole && is(bits[0], 'small')
    ? { intent: 'notes', slots: { asked: 'heard', person: who } }
    : null;
};

/** "Sorry, he's coming at ten, not nine", of the message just left: the word that was wrong, and the right one. */
const mendsMessage = ({ bits, tokens, answered }: Talk): Act | null => {
  const at = bits.findIndex((bit) => is(bit, 'in-place'));
  const [before, after] = [bits[at - 1], bits[at + 1]];
  if (answered?.intent !== 'leave-note' || !before || !after || at + 2 < bits.length) return null;
  const text = (bit: Bit): string => tokens.slice(bit.from, bit.to).join(' ');
  return {
    intent: 'leave-note',
    slots: {
      asked: 'put-right',
      words: text(before),
      not: { ...emptyMention, words: text(after) },
    },
  };
};

/** "When Junie comes in, tell her her bus card is on the hall table": a message, whenever she asks. */
const whenSheComes = ({ bits, tokens }: Talk): Act | null => {
  const at = bits.findIndex((bit) => is(bit, 'comes-in'));
  const person = personIn(bits[at + 1]);
  const tells = bits.findIndex((bit, index) => index > at && is(bit, 'tell-them'));
  if (at < 0 || !person || !is(bits[at + 2], 'comes') || tells < 0 || !is(bits[tells + 1], 'hers'))
    return null;
  if (!only(bits.slice(0, at), []) || !only(bits.slice(at + 3, tells), [])) return null;
  const words = tokens.slice(bits[tells + 1]!.to).join(' ');
  return words === '' ? null : { intent: 'leave-note', slots: { person, words, asked: 'alone' } };
};

/** "I'm off out at seven, so give me tonight's summary now": read, and not set. */
const summaryNow = ({ bits }: Talk): Act | null =>
  some(bits, 'summary') && some(bits, 'give-summary') && some(bits, 'at-once')
    ? { intent: 'summary', slots: {} }
    : null;

/** "Make it start at ten, leave the morning as it is", of the quiet hours. */
const quietPart = ({ bits, answered }: Talk): Act | null => {
  const hours = bits.filter((bit) => hourIn(bit) !== null);
  const [hour, ...more] = hours;
  if (answered?.setting !== 'quiet' || !hour || more.length > 0) return null;
  const kept = bits.filter((bit) => !is(bit, 'as-it-is'));
  const starts = some(kept, 'quiet-start');
  if (starts === some(kept, 'quiet-end')) return null;
  const classes = ['quiet-start', 'quiet-end', 'as-it-is', 'in-place'];
  return only(bits, classes, (bit) => bit === hour)
    ? {
        intent: 'set-household',
        slots: { setting: 'quiet', asked: starts ? 'from' : 'until', time: hourIn(hour)! },
      }
    : null;
};

/** "OK, kill them all", while timers run and nothing else is named. */
const killsAll = ({ bits, clocks }: Talk): Act | null =>
  clocks.some(({ kind }) => kind === 'timer') &&
  some(bits, 'kill') &&
  some(bits, 'all-of') &&
  only(bits, ['kill', 'all-of', 'timer-word'])
    ? { intent: 'cancel-timer', slots: { item: pointed('all') } }
    : null;

/** Which timer: by a food's name, by its own, or the one there is. */
const timerNamed = (bits: readonly Bit[]): Slots => {
  const clock = bits.find(({ kind }) => kind === 'clock');
  if (clock?.kind === 'clock') return { words: clock.clock.label };
  const [thing] = ofKind(bits, 'thing');
  return thing ? { item: thing.mention } : {};
};

/** "Pause the stew timer", "right, carry on with it". */
const holds = ({ bits, clocks }: Talk): Act | null => {
  const timers = clocks.filter(({ kind }) => kind === 'timer');
  const things = ofKind(bits, 'thing');
  const ours = (bit: Bit): boolean => bit.kind === 'thing' || bit.kind === 'clock';
  const named = bits.some(ours) || some(bits, 'timer-word');
  if (timers.length === 0 || things.length > 1) return null;
  if (some(bits, 'pause-it') && named && only(bits, ['pause-it', 'timer-word'], ours))
    return { intent: 'change-timer', slots: { asked: 'pause', ...timerNamed(bits) } };
  const held = timers.some(({ held: one }) => one);
  return held && some(bits, 'resume-it') && only(bits, ['resume-it', 'timer-word'], ours)
    ? { intent: 'change-timer', slots: { asked: 'resume', ...timerNamed(bits) } }
    : null;
};

const readers = [
  hearsMessages,
  sentBy,
  wasHeard,
  mendsMessage,
  whenSheComes,
  summaryNow,
  quietPart,
  killsAll,
  holds,
  ...clockReaders,
] as const;

export const asidesFrame: Frame = ({ asAsides, clocks, answered, tokens, says, beside }) => {
  const said = asAsides();
  if (!said) return null;
  const { bits, tokens: all, pauses } = said;
  const ends = endsBeforeWhy(bits, all, pauses, (word) => beside(word, 'reason-leads'));
  for (const end of [all.length, ...ends]) {
    const talk = {
      bits: bits.filter(({ to }) => to <= end),
      tokens: all.slice(0, end),
      clocks,
      answered,
      says,
    };
    for (const read of readers) {
      const act = read(talk);
      if (act) return { acts: [act], used: new Set(tokens.keys()), whole: true, ours: true };
    }
  }
  return null;
};
