/**
 * Short talk of the clocks and of the voice: when one that runs goes off, more for it, the same again, what is due
 * tonight, which measures are told, a word spelled, and back to how it was: `grammars/<language>/asides.json`.
 */
import type { Act, SaidDate, Slots } from '../../intents.js';
import { figureOf, is, ofKind, some, type Bit } from './bits.js';
import { hourIn, isPerson, only, type AsideTalk } from './aside-talk.js';
import { personIn } from './list/lines.js';

const minute = 60;
const ofTimers = new Set(['set-timer', 'change-timer', 'timers']);

const runs = ({ clocks }: AsideTalk): boolean => clocks.some(({ kind }) => kind === 'timer');

const isClock = (bit: Bit): boolean => bit.kind === 'clock' && bit.clock.kind === 'timer';

/** Which of those that run: by its own name before any food of that name, else the one there is. */
const whichOf = (bits: readonly Bit[]): Slots => {
  const clock = bits.find(isClock);
  if (clock?.kind === 'clock') return { words: clock.clock.label };
  const [thing] = ofKind(bits, 'thing');
  return thing ? { item: thing.mention } : {};
};

const isWhich = (bit: Bit): boolean => isClock(bit) || bit.kind === 'thing' || bit.kind === 'pointer';

/** "And what time will that be?", of a timer that runs. */
const whenUp = (talk: AsideTalk): Act | null => {
  const { bits, answered } = talk;
  if (!runs(talk) || !some(bits, 'when-lead')) return null;
  if (!only(bits, ['when-lead', 'goes-off', 'timer-word'], isWhich)) return null;
  const named = some(bits, 'timer-word') && bits.some((bit) => bit.kind === 'word' && is(bit, 'goes-off'));
  const ours = bits.some(isClock) || named || ofTimers.has(answered?.intent ?? '');
  const foods = ofKind(bits, 'thing').length > 0 && !bits.some(isClock);
  return ours && !foods ? { intent: 'timers', slots: { asked: 'when', ...whichOf(bits) } } : null;
};

/** "Give it another five", "two more for the rice": minutes, where nothing else is said. */
const moreTime = (talk: AsideTalk): Act | null => {
  const { bits, answered } = talk;
  if (!runs(talk)) return null;
  const lengths = bits.filter((bit) => bit.kind === 'span' || figureOf(bit) !== null);
  const [length] = lengths;
  const adds = some(bits, 'more-of') || bits.some((bit) => bit.kind === 'amount' && bit.more === true);
  const takes = some(bits, 'take-off-it');
  if (!length || lengths.length > 1 || adds === takes) return null;
  const named = bits.some(isClock);
  const led = some(bits, 'give-it') || takes;
  if (!named && !(ofTimers.has(answered?.intent ?? '') || (led && some(bits, 'timer-word')))) return null;
  const mine = (bit: Bit): boolean => bit === length || isClock(bit) || bit.kind === 'pointer';
  const words = ['more-of', 'give-it', 'take-off-it', 'timer-word', 'for-it', 'minute-word', 'hour-word'];
  if (!only(bits, words, mine)) return null;
  const unit = some(bits, 'hour-word') ? 60 * minute : minute;
  const duration = length.kind === 'span' ? length.seconds : figureOf(length)! * unit;
  return {
    intent: 'change-timer',
    slots: { duration, ...whichOf(bits), ...(takes ? { negated: true } : {}) },
  };
};

/** "And the same again for the second tray": another, as long, by that name. */
const sameAgain = ({ bits, tokens, answered }: AsideTalk): Act | null => {
  const at = bits.findIndex((bit) => is(bit, 'same-again'));
  if (at < 0 || !ofTimers.has(answered?.intent ?? '') || !only(bits.slice(0, at), ['give-it'])) return null;
  const rest = bits.slice(at + 1).filter((bit) => !(is(bit, 'small', 'for-it') && bit !== bits.at(-1)));
  if (rest.some((bit) => bit.kind === 'span' || bit.kind === 'time')) return null;
  const words = rest.length > 0 ? tokens.slice(rest[0]!.from).join(' ') : '';
  return { intent: 'set-timer', slots: { asked: 'again', ...(words ? { words } : {}) } };
};

/** "An eleven minute timer for the first tray of cookies": called by all of that. */
const setNamed = ({ bits, tokens }: AsideTalk): Act | null => {
  const at = bits.findLastIndex(
    (bit) => is(bit, 'for-it') && !ofKind(bits, 'span').some(({ from }) => from > bit.to),
  );
  const [span, ...more] = ofKind(bits, 'span');
  const before = bits.slice(0, Math.max(0, at));
  if (!span || more.length > 0 || at < 0 || !some(before, 'timer-word')) return null;
  if (!only(before, ['set-it', 'timer-word', 'for-it'], (bit) => bit === span)) return null;
  const rest = bits.slice(at + 1).filter((bit) => !is(bit, 'small') || is(bit, 'note-word'));
  const [first, last] = [rest[0], rest.at(-1)];
  // "For the beans, sorry, make it ten": a figure is no part of a name.
  const other = rest.some(
    (bit) => ['time', 'clock', 'marker', 'span'].includes(bit.kind) || figureOf(bit) !== null,
  );
  // One thing by its name is a food of this house, or a running timer's.
  if (!first || !last || other || (rest.length === 1 && first.kind !== 'unknown') || last.kind === 'day')
    return null;
  const words = tokens.slice(first.from, last.to);
  return words.length > longestLabel
    ? null
    : { intent: 'set-timer', slots: { duration: span.seconds, words: words.join(' ') } };
};
const longestLabel = 6;

/** "Ninety seconds, go". */
const fromNow = ({ bits }: AsideTalk): Act | null => {
  const [span, ...more] = ofKind(bits, 'span');
  return span &&
    more.length === 0 &&
    is(bits.at(-1), 'go-now') &&
    only(bits, ['go-now'], (bit) => bit === span)
    ? { intent: 'set-timer', slots: { duration: span.seconds } }
    : null;
};

const parts = ['morning', 'afternoon', 'evening', 'night'] as const;

/** "What are you going to remind me about tonight?" */
const remindedThen = ({ bits, tokens, says }: AsideTalk): Act | null => {
  if (!some(bits, 'ask-what') || !some(bits, 'remind-words')) return null;
  const days = ofKind(bits, 'day');
  if (!only(bits, ['ask-what', 'remind-words'], (bit) => bit.kind === 'day' || bit.kind === 'time'))
    return null;
  const [day] = days;
  const when: SaidDate | undefined = day?.future;
  const asked = parts.find((part) => tokens.some((token) => says(token, part)));
  if (days.length > 1 || (!when && !asked)) return null;
  return { intent: 'reminders', slots: { ...(when ? { when } : {}), ...(asked ? { asked } : {}) } };
};

/** "Could we have it at eight instead", of the summary that was just spoken of. */
const summaryThen = ({ bits, answered }: AsideTalk): Act | null => {
  const hours = bits.filter((bit) => hourIn(bit) !== null);
  const [hour] = hours;
  const ofSummary = answered?.setting === 'summary' || answered?.intent === 'summary';
  if (!ofSummary || !hour || hours.length > 1 || !some(bits, 'have-it', 'in-place')) return null;
  if (!only(bits, ['have-it', 'in-place', 'summary'], (bit) => bit === hour)) return null;
  const time = hourIn(hour)!;
  // The summary is the evening's, unless another half was said.
  const late = Number(time.slice(0, 2));
  return {
    intent: 'set-household',
    slots: { setting: 'summary', time: late > 0 && late < 12 ? `${late + 12}${time.slice(2)}` : time },
  };
};

/** "How do you spell pierogi?" */
const spelled = ({ bits, tokens }: AsideTalk): Act | null => {
  const at = bits.findIndex((bit) => is(bit, 'spell-lead'));
  if (at < 0 || !only(bits.slice(0, at), [])) return null;
  const said = (bit: Bit): boolean => !is(bit, 'small', 'spell-tail') && bit.kind !== 'pointer';
  const rest = bits.slice(at + 1);
  const [from, to] = [rest.findIndex(said), rest.findLastIndex(said)];
  return from < 0
    ? null
    : { intent: 'spell', slots: { words: tokens.slice(rest[from]!.from, rest[to]!.to).join(' ') } };
};

const settingAnswered = ({ answered }: AsideTalk): string | null => {
  const { intent, setting = null } = answered ?? {};
  if (intent === 'set-household') return setting;
  if (intent === 'shorter' || intent === 'longer') return 'length';
  if (intent === 'slower' || intent === 'faster') return 'rate';
  return intent === 'louder' || intent === 'quieter' ? 'volume' : null;
};
const ofVoice = new Set(['length', 'rate', 'volume']);

/** "Too short. Go back to how you were": of what was just set. */
const asBefore = (talk: AsideTalk): Act | null => {
  const setting = settingAnswered(talk);
  if (!setting || !some(talk.bits, 'as-you-were')) return null;
  if (!only(talk.bits, ['as-you-were', 'too-much'])) return null;
  return ofVoice.has(setting)
    ? { intent: 'set-household', slots: { setting, words: 'usual' } }
    : { intent: 'undo', slots: {} };
};

/** "From now on use Celsius and grams": not the ones after "instead of". */
const measures = ({ bits }: AsideTalk): Act | null => {
  const instead = bits.findIndex((bit) => is(bit, 'in-place'));
  const meant = instead < 0 ? bits : bits.slice(0, instead);
  const metric = some(meant, 'metric');
  if (metric === some(meant, 'us-units') || !some(bits, 'use-units')) return null;
  return only(bits, ['metric', 'us-units', 'use-units', 'in-place'])
    ? { intent: 'set-household', slots: { setting: 'measures', metric, words: metric ? 'metric' : 'us' } }
    : null;
};

/** "Message for everyone: we're eating at quarter to seven". */
const forEverybody = ({ bits, tokens }: AsideTalk): Act | null => {
  const at = bits.findIndex((bit) => is(bit, 'message-lead'));
  const to = bits.findIndex((bit, index) => index > at && is(bit, 'everyone'));
  if (at < 0 || to < 0 || !only(bits.slice(0, at), []) || !only(bits.slice(at + 1, to), [])) return null;
  let from = to + 1;
  while (is(bits[from], 'to-say')) from += 1;
  const words = tokens.slice(bits[from]?.from ?? tokens.length).join(' ');
  return words === '' ? null : { intent: 'leave-note', slots: { words, asked: 'alone' } };
};

/** "Scrap that note I left Junie about the pudding": the message goes, whatever it was about. */
const messageBack = ({ bits }: AsideTalk): Act | null => {
  const at = bits.findIndex((bit) => is(bit, 'drop-note'));
  const note = bits.findIndex((bit, index) => index > at && is(bit, 'note-word'));
  if (at < 0 || note < 0 || !only(bits.slice(0, at), []) || !only(bits.slice(at + 1, note), [])) return null;
  const about = bits.findIndex((bit, index) => index > note && is(bit, 'about-it') && !is(bit, 'small'));
  const whom = bits.slice(note + 1, about < 0 ? bits.length : about);
  const persons = whom.flatMap((bit) => personIn(bit) ?? []);
  if (persons.length > 1 || !only(whom, ['hers', 'for-it'], (bit) => isPerson(bit) || bit.kind === 'day'))
    return null;
  const [person] = persons;
  return { intent: 'leave-note', slots: { negated: true, ...(person ? { person } : {}) } };
};

export const clockReaders = [
  ...[whenUp, moreTime, sameAgain, setNamed, fromNow, remindedThen, summaryThen],
  ...[spelled, asBefore, measures, forEverybody, messageBack],
] as const;
