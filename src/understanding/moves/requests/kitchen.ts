/** Requests about the kitchen that a phrase gives away: help with a matter, reaching a thing, thawing it, a power cut. */
import type { Act, Slots } from '../../intents.js';
import { classed, figureOf, is, ofKind, some, wordsIn, type Bit, type Frame } from './bits.js';

/** What help is wanted with, by the words for it; the first that is named. */
const topics: readonly (readonly [list: string, topic: string])[] = [
  ['timer', 'timers'],
  ['topic-reminders', 'timers'],
  ['topic-list', 'list'],
  ['topic-notes', 'notes'],
  ['topic-touch', 'touch'],
  ['dots', 'markers'],
  ['topic-freezing', 'freezing'],
  ['topic-heating', 'heating'],
  ['topic-people', 'people'],
  ['topic-dates', 'dates'],
  ['topic-places', 'places'],
];

export const helpFrame: Frame = ({ bits, tokens, says }) => {
  const able = classed(bits, 'able');
  if (able.length === 0) return null;
  const named = topics.find(
    ([list]) =>
      some(bits, list) || bits.some((bit) => bit.kind !== 'word' && says(tokens[bit.to - 1]!, list)),
  );
  // With no matter named, nothing else may be said: "what can you do about my knee" is not ours.
  if (!named && !bits.every((bit) => is(bit, 'able', 'fill', 'aside'))) return null;
  if (!named && !able.some((bit) => is(bit, 'able') && bit.to - bit.from > 3)) return null;
  return {
    acts: [{ intent: 'help', slots: named ? { words: named[1] } : {} }],
    used: named ? new Set(tokens.keys()) : wordsIn(able),
  };
};

/** The one thing it is about; what is said of where it stands is known already. */
const about = (bits: readonly Bit[]): { slots: Pick<Slots, 'item'>; used: readonly Bit[] } | null => {
  const things = ofKind(bits, 'thing').filter(({ fit, source }) => fit >= leastFit || source === 'food');
  const [thing] = things.filter(({ fit }) => fit >= leastFit);
  const known = thing ?? things[0];
  if (!known) return null;
  const setting = bits.filter(({ kind }) =>
    ['place', 'container', 'day', 'marker', 'pointer'].includes(kind),
  );
  return { slots: { item: known.mention }, used: [known, ...setting] };
};
const leastFit = 0.6;

/** A phrase that says it all, of one thing. */
const ofOne =
  (list: string, act: (slots: Slots) => Act): Frame =>
  ({ bits, tokens }) => {
    const words = classed(bits, list);
    const one = words.length > 0 && !some(bits, 'remind', 'timer') ? about(bits) : null;
    if (!one) return null;
    // "How do I know the chicken is done" asks something else of it.
    const last = words.at(-1)!;
    const after = bits.filter(({ from }) => from >= last.to);
    if (!after.every((bit) => is(bit, 'fill', 'aside', 'out-there', 'set') || one.used.includes(bit))) {
      if (list === 'reach') return null;
    }
    // What leads to the question is its setting: "it's in there somewhere, have I got to dig for it".
    const before = tokens.map((_, at) => at).filter((at) => at < words[0]!.from);
    return { acts: [act(one.slots)], used: new Set([...before, ...wordsIn([...words, ...one.used])]) };
  };

export const reachFrame = ofOne('reach', (slots) => ({ intent: 'how-to-reach', slots }));

export const mustThawFrame = ofOne('must-thaw', (slots) => ({
  intent: 'thaw-plan',
  slots: { ...slots, asked: 'needed' },
}));

/** "Say I take it out Friday night, when will it be thawed". */
export const thawedByFrame: Frame = ({ bits }) => {
  const words = classed(bits, 'thawed-by');
  const one = words.length > 0 ? about(bits) : null;
  if (!one || !some(bits, 'take-out')) return null;
  const [day] = ofKind(bits, 'day');
  const [time] = ofKind(bits, 'time');
  const slots: Slots = {
    ...one.slots,
    asked: 'ready',
    ...(day ? { when: day.future } : {}),
    ...(time ? { time: time.time } : {}),
  };
  return {
    acts: [{ intent: 'thaw-plan', slots }],
    used: wordsIn([
      ...words,
      ...one.used,
      ...classed(bits, 'take-out', 'if', 'night', 'evening', 'morning', 'wh'),
    ]),
  };
};

const leads: ReadonlySet<string> = new Set(['at', 'since', 'from', 'around', 'about']);
const hourAt = (bit: Bit, tokens: readonly string[]): number | null =>
  figureOf(bit) ?? (bit.to - bit.from === 1 && tokens[bit.from] === 'one' ? 1 : null);

/** The power went, or is back: since when, how the doors were and how full the freezer is. */
export const powerFrame: Frame = ({ bits, tokens }) => {
  const power = classed(bits, 'power');
  if (power.length === 0 || some(bits, 'remind', 'timer', 'watts')) return null;
  const off = classed(bits, 'power-off');
  const on = classed(bits, 'power-on');
  if (off.length + on.length === 0) return null;
  const clock = ofKind(bits, 'time')[0];
  // "At one" is an hour, too, though "one" alone is any one thing.
  const hour = bits.find((bit, at) => {
    const lead = bits[at - 1];
    const led = lead !== undefined && leads.has(tokens[lead.to - 1]!);
    return led && (hourAt(bit, tokens) ?? 0) >= 1 && (hourAt(bit, tokens) ?? 0) <= 12;
  });
  const [span] = ofKind(bits, 'span');
  const value = hour ? hourAt(hour, tokens) : null;
  const time = clock?.time ?? (value === null ? undefined : `${String(value).padStart(2, '0')}:00`);
  const shut = classed(bits, 'doors-shut');
  const opened = shut.length > 0 ? [] : classed(bits, 'doors-open');
  const half = classed(bits, 'freezer-half');
  const full = half.length > 0 ? [] : classed(bits, 'freezer-full');
  const slots: Slots = {
    ...(time ? { time } : span ? { duration: span.seconds } : {}),
    ...(shut.length > 0 ? { doors: 'shut' } : opened.length > 0 ? { doors: 'open' } : {}),
    ...(half.length > 0 ? { fullness: 'half' } : full.length > 0 ? { fullness: 'full' } : {}),
  };
  if (Object.keys(slots).length === 0) return null;
  return {
    acts: [{ intent: on.length > 0 ? 'power-back' : 'power-cut', slots }],
    used: wordsIn([
      ...power,
      ...off,
      ...on,
      ...shut,
      ...opened,
      ...half,
      ...full,
      ...ofKind(bits, 'place'),
      ...(clock ? [clock] : hour ? [hour] : []),
      ...(span ? [span] : []),
    ]),
  };
};

/** "I left the salmon on the side about two hours"; "if I leave the cod out, what happens". */
export const leftOutFrame: Frame = ({ bits }) => {
  const left = classed(bits, 'left-there');
  const there = classed(bits, 'out-there');
  const counter = ofKind(bits, 'place').filter(({ place }) => onTheSide.has(place.words ?? ''));
  const one = left.length > 0 && there.length + counter.length > 0 ? about(bits) : null;
  if (!one || some(bits, 'remind', 'timer')) return null;
  const [span] = ofKind(bits, 'span');
  const [time] = ofKind(bits, 'time');
  const night = classed(bits, 'all-night');
  const asks = [...classed(bits, 'what-then'), ...classed(bits, 'wh')];
  const used = [...left, ...there, ...counter, ...one.used, ...asks, ...night, ...classed(bits, 'if')];
  if (some(bits, 'if') && asks.length > 0 && !span)
    return { acts: [{ intent: 'left-out', slots: { ...one.slots, asked: 'limit' } }], used: wordsIn(used) };
  const since: Slots | null =
    night.length > 0
      ? { words: 'overnight' }
      : span
        ? { duration: span.seconds }
        : time
          ? { time: time.time }
          : null;
  if (!since || some(bits, 'not')) return null;
  // No figure, but hot: the shorter time is kept, for in doubt it is thrown out.
  const hot = classed(bits, 'hot-room');
  const heat: Slots = hot.length > 0 ? { setting: 'hot' } : {};
  return {
    acts: [{ intent: 'left-out', slots: { ...one.slots, ...since, ...heat } }],
    used: wordsIn([
      ...used,
      ...hot,
      ...(span ? [span] : []),
      ...(time ? [time] : []),
      ...ofKind(bits, 'thing'),
    ]),
  };
};
const onTheSide: ReadonlySet<string> = new Set([
  'counter',
  'the counter',
  'side',
  'the side',
  'table',
  'worktop',
]);
