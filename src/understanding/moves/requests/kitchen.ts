/** Requests about the kitchen that a phrase gives away: help with a matter, reaching a thing, thawing it, a power cut. */
import type { Act, Expectation, Slots } from '../../intents.js';
import { classed, figureOf, is, ofKind, some, wordsIn, type Bit, type Frame, type Request } from './bits.js';

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
  ['topic-finding', 'finding'],
];

const leastFit = 0.6;

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

/** "Can you print something so I know what to say": the page that tells of this kitchen's own system. */
export const guideFrame: Frame = ({ bits, tokens, beside }) => {
  const asked = ['guide-print', 'guide-word'].every((list) => tokens.some((word) => beside(word, list)));
  const ofFood = ofKind(bits, 'thing').some(({ fit }) => fit >= leastFit);
  if (!asked || ofFood || some(bits, 'not', 'remind')) return null;
  return { acts: [{ intent: 'help', slots: { words: 'guide' } }], used: new Set(tokens.keys()) };
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

const hourAt = (bit: Bit, tokens: readonly string[]): number | null =>
  // A rough figure is an hour as well as a sure one.
  (bit.kind === 'amount' && bit.amount.unit === 'piece' ? bit.amount.value : figureOf(bit)) ??
  (bit.to - bit.from === 1 && tokens[bit.from] === 'one' ? 1 : null);

type Says = Request['says'];

/** What is said while a power cut is talked of needs no word for it. */
const ofOutage: ReadonlySet<Expectation> = new Set<Expectation>(['outage', 'outage-state']);

/** Hours of the day that were told, each with whether it is the end of something: "from two till half past seven". */
interface Hour {
  readonly bit: Bit;
  readonly time: string;
  readonly end: boolean;
}
/** "At four this afternoon": the half of the day told after the hour is the hour's. */
const inHalf = (time: string, after: readonly string[], says: Says): string => {
  const hour = Number(time.slice(0, 2));
  const told = (list: string): boolean => after.some((word) => says(word, list));
  const later = told('afternoon') || told('evening') || (hour >= nightFrom && told('night'));
  return later && hour >= 1 && hour < 12 ? `${hour + 12}${time.slice(2)}` : time;
};
/** "At two at night" is no afternoon. */
const nightFrom = 6;

const hoursIn = ({ bits, tokens, says, beside }: Request): readonly Hour[] => {
  const isRough = ({ from, to }: Bit): boolean => to - from === 1 && beside(tokens[from]!, 'rough-leads');
  return bits.flatMap((bit, at): Hour[] => {
    const before = bits
      .slice(0, at)
      .findLast((one) => (is(one, 'till') || !is(one, 'fill')) && !isRough(one));
    const end = is(before, 'till', 'power-on');
    if (bit.kind === 'time')
      return [{ bit, time: inHalf(bit.time, tokens.slice(bit.to, bit.to + 3), says), end }];
    // "At one" is an hour, too, though "one" alone is any one thing.
    const lead = bits.slice(0, at).findLast((one) => !isRough(one)) ?? bits[at - 1];
    // "Around four" is an hour by its rough word alone.
    const rough = (at > 0 && isRough(bits[at - 1]!)) || (bit.kind === 'amount' && bit.amount.rough === true);
    const led =
      lead !== undefined && (rough || beside(tokens[lead.to - 1]!, 'since-leads') || is(lead, 'till'));
    const value = led ? (hourAt(bit, tokens) ?? 0) : 0;
    return value >= 1 && value <= 12 && Number.isInteger(value)
      ? [
          {
            bit,
            time: inHalf(`${String(value).padStart(2, '0')}:00`, tokens.slice(bit.to, bit.to + 3), says),
            end: end || is(lead, 'till'),
          },
        ]
      : [];
  });
};

/** A fridge or freezer named before its power went, with nothing but small words between. */
const applianceOff = (bits: readonly Bit[], off: readonly Bit[]) =>
  ofKind(bits, 'place').filter(({ to }) => off.some(({ from }) => from >= to && from - to <= wordsBetween));
const wordsBetween = 3;

/** The power went, or is back: since and until when, how the doors were, how full the freezer is, what is lost. */
export const powerFrame: Frame = (request) => {
  const { bits, expecting } = request;
  const power = classed(bits, 'power');
  const off = classed(bits, 'power-off');
  const on = classed(bits, 'power-on');
  const lost = classed(bits, 'power-lost');
  const known = ofOutage.has(expecting) || (expecting === 'step' && on.length > 0 && lost.length > 0);
  if ((power.length === 0 && !known) || some(bits, 'remind', 'watts')) return null;
  const shut = classed(bits, 'doors-shut');
  const opened = classed(bits, 'doors-open');
  const half = [...classed(bits, 'freezer-half'), ...(known ? classed(bits, 'half-so') : [])];
  const full = classed(bits, 'freezer-full');
  if (
    off.length + on.length + lost.length === 0 &&
    (!known || shut.length + opened.length + half.length + full.length === 0)
  )
    return null;
  const hours = hoursIn(request);
  // The clock on the cooker may be told of, a timer not.
  if (some(bits, 'timer') && (off.length === 0 || hours.length === 0)) return null;
  const start = hours.find(({ end }) => !end);
  const until = hours.length > 1 ? hours.find(({ end }) => end) : undefined;
  const first = start ?? hours[0];
  const [span] = ofKind(bits, 'span');
  const shares = half.length + full.length > 0 ? [] : known ? ofKind(bits, 'share') : [];
  const [share] = shares;
  // "The garage freezer lost power": only that one, where it is named before what happened to it.
  const [appliance] = applianceOff(bits, off);
  const slots: Slots = {
    ...(appliance ? { place: appliance.place } : {}),
    ...(first ? { time: first.time } : span ? { duration: span.seconds } : {}),
    ...(until ? { until: until.time } : {}),
    // One door opened counts for all: in doubt the hours are not the shut ones.
    ...(opened.length > 0 ? { doors: 'open' } : shut.length > 0 ? { doors: 'shut' } : {}),
    // Of two freezers that are not alike, the one that warms first.
    ...(half.length > 0 || share ? { fullness: 'half' } : full.length > 0 ? { fullness: 'full' } : {}),
    ...(lost.length > 0 ? { asked: 'lost' } : {}),
  };
  const back = on.length > 0 || until !== undefined;
  if (Object.keys(slots).length === 0 && !(known && back)) return null;
  const told = power.length > 0 || back;
  const used = wordsIn([
    ...power,
    ...off,
    ...on,
    ...lost,
    ...shut,
    ...opened,
    ...half,
    ...full,
    ...shares,
    ...classed(bits, 'till', 'wh', 'morning', 'night', 'afternoon', 'evening', 'all-night'),
    ...ofKind(bits, 'place'),
    ...hours.map(({ bit }) => bit),
    ...(span ? [span] : []),
    ...ofKind(bits, 'day'),
  ]);
  const lasts = off.length > 0 && !back;
  const intent =
    back || (lost.length > 0 && power.length > 0 && !lasts) ? 'power-back' : told ? 'power-cut' : 'answer';
  return { acts: [{ intent, slots }], used };
};

/** "I left the salmon on the side about two hours"; "if I leave the cod out, what happens". */
export const leftOutFrame: Frame = ({ bits, beside }) => {
  const left = classed(bits, 'left-there');
  const there = classed(bits, 'out-there');
  const counter = ofKind(bits, 'place').filter(({ place }) => beside(place.words ?? '', 'the-side'));
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
      ? { overnight: true }
      : span
        ? { duration: span.seconds }
        : time
          ? { time: time.time }
          : null;
  if (!since || some(bits, 'not')) return null;
  return {
    acts: [{ intent: 'left-out', slots: { ...one.slots, ...since } }],
    used: wordsIn([
      ...used,
      // How hot it is where it stood the guidance ear hears, whoever reads the rest.
      ...classed(bits, 'hot'),
      ...(span ? [span] : []),
      ...(time ? [time] : []),
      ...ofKind(bits, 'thing'),
    ]),
  };
};
