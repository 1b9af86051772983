/** Timers: several in one breath, each with its name; which of those running is stopped, kept or changed. */
import { emptyMention, itMention, type Act, type Mention, type Slots } from '../../intents.js';
import { pointed } from '../../meaning-parts.js';
import {
  classed,
  figureOf,
  is,
  ofKind,
  some,
  wordsIn,
  type Bit,
  type BitOf,
  type Frame,
  type Request,
} from './bits.js';

interface Named {
  readonly slots: Pick<Slots, 'item' | 'words'>;
  readonly bit: Bit;
}

/** Pieces that are no part of a request for a timer: what is before them is about something else. */
const isForeign = (bit: Bit): boolean =>
  bit.kind === 'unknown' || bit.kind === 'amount' || bit.kind === 'place' || bit.kind === 'marker';

/** What a timer is called: a food, a running one's own name, or a word after "for". */
const namesIn = ({ bits, tokens, beside }: Request): readonly Named[] => {
  const head = bits.findIndex((bit) => is(bit, 'timer', 'time-it') || bit.kind === 'span');
  return bits.flatMap((bit, at): Named[] => {
    if (bit.kind === 'clock' && bit.clock.kind === 'timer')
      return [{ slots: { words: bit.clock.label }, bit }];
    // "Reheat two portions of the stew and set a timer": the stew is of the other request.
    if (bit.kind === 'thing' && at < head && bits.slice(0, head).some(isForeign)) return [];
    if (bit.kind === 'thing') return [{ slots: { item: bit.mention }, bit }];
    // "For the oven": a word nobody knows, of what it is for.
    const before = bits[at - 1];
    const beyond = bits[at - 2];
    const forIt =
      before &&
      (beside(tokens[before.from]!, 'for') ||
        (is(before, 'fill') && beyond && beside(tokens[beyond.from]!, 'for')));
    return bit.kind === 'unknown' && forIt ? [{ slots: { words: bit.word }, bit }] : [];
  });
};

const hour = 3600;

/** Nobody waits longer than this for a timer, by our own choice: half a day. */
const longestTimer = 12 * hour;
const isShort = (bit: Bit): boolean => bit.kind === 'span' && bit.seconds <= longestTimer;

const runs = ({ clocks }: Request): boolean => clocks.some(({ kind }) => kind === 'timer');

const isNamed = (bit: Bit): bit is BitOf<'clock'> => bit.kind === 'clock' && bit.clock.kind === 'timer';

/** "Not three", of what it is to be instead. */
const isDenied = (bits: readonly Bit[], at: number): boolean => is(bits[at - 1], 'not', 'instead-of');

/** "The timer", "that timer", where one runs: that one. */
const definite = (request: Request): boolean =>
  runs(request) &&
  classed(request.bits, 'timer').some(({ from }) => request.says(request.tokens[from - 1] ?? '', 'the-one'));

/** "The timer, make it five": put right, with no length before it and none set. */
const mendsRunning = ({ bits }: Request): boolean => {
  const at = bits.findIndex((bit) => bit.kind === 'span' || figureOf(bit) !== null);
  return is(bits[at - 1], 'repair') && some(bits.slice(0, at - 1), 'timer') && !some(bits, 'set');
};

/** "What comes after the two minutes", behind a length that is to be set: one spoken of. */
const isSpokenOf = ({ says, tokens }: Request, { kind, from }: Bit, before: number): boolean =>
  kind === 'span' && before > 0 && says(tokens[from - 1] ?? '', 'the-one');

/** How long each is, with slips put right: "ten minutes, no, make it twelve". */
const lengthsIn = (request: Request): readonly { seconds: number; bits: readonly Bit[] }[] => {
  const { bits, tokens, beside } = request;
  const lengths: { seconds: number; bits: Bit[] }[] = [];
  const bare = some(bits, 'timer') && ofKind(bits, 'span').length === 0;
  // "Make the bread ten", of one that runs: minutes.
  const renewed = bits.some(isNamed) && some(bits, 'change', 'repair');
  bits.forEach((bit, at) => {
    const mends = [bits[at - 1], bits[at - 2]].some((before) => is(before, 'repair'));
    const last = lengths.at(-1);
    const figure = figureOf(bit);
    if (isDenied(bits, at) || isSpokenOf(request, bit, lengths.length)) return;
    if (bit.kind === 'span') {
      if (mends && last) lengths[lengths.length - 1] = { seconds: bit.seconds, bits: [...last.bits, bit] };
      else lengths.push({ seconds: bit.seconds, bits: [bit] });
    } else if (figure !== null && last) {
      const seconds = figure * (last.seconds % hour === 0 ? hour : 60);
      if (mends) lengths[lengths.length - 1] = { seconds, bits: [...last.bits, bit] };
      // "Six minutes for the eggs and ten for the rice".
      else if (beside(tokens[bit.to] ?? '', 'for') || at === bits.length - 1)
        lengths.push({ seconds, bits: [bit] });
      // "A timer, ten for the pasta": minutes, where nothing else is said.
    } else if (
      figure !== null &&
      (renewed || (bare && (beside(tokens[bit.to] ?? '', 'for') || (mends && runs(request)))))
    ) {
      lengths.push({ seconds: figure * 60, bits: [bit] });
    }
  });
  return lengths;
};

/** "Don't you cancel anything". */
const isKept = ({ bits }: Request, bit: Bit): boolean => {
  if (!is(bit, 'cancel')) return false;
  const before = bits.slice(0, bits.indexOf(bit)).filter((one) => !is(one, 'fill') || is(one, 'not'));
  const last = before.at(-1);
  return is(last, 'not') && !is(last, 'cancel', 'repair');
};

type Verb = 'set' | 'cancel' | 'keep' | 'change' | 'add' | 'less';
const verbs: readonly Verb[] = ['keep', 'cancel', 'change', 'add', 'less', 'set'];

/** What is to be done with the one named there: the last deed said before it, else the first after. */
const verbAt = (request: Request, from: number): { verb: Verb; bit: Bit } | null => {
  const found = request.bits.flatMap((bit) => {
    const verb = isKept(request, bit) ? 'keep' : verbs.find((name) => is(bit, name));
    return verb ? [{ verb, bit }] : [];
  });
  return (
    found.filter(({ bit }) => bit.to <= from).at(-1) ?? found.find(({ bit }) => bit.from >= from) ?? null
  );
};

const everyOne: Mention = pointed('all');

const timersOf = (request: Request): { acts: readonly Act[]; used: readonly Bit[] } | null => {
  const { bits } = request;
  const lengths = lengthsIn(request);
  const names = namesIn(request);
  // "When twenty minutes is up", "two minutes, tell me when that's up" ask nothing.
  const isTime = (bit: Bit | undefined): boolean =>
    bit?.kind === 'span' || (lengths.length > 0 && is(bit, 'timer'));
  const wh = classed(bits, 'wh').filter(
    (bit) => !(is(bit, 'if') && isTime(bits.slice(bits.indexOf(bit) + 1).find((next) => !is(next, 'fill')))),
  );
  const stops = classed(bits, 'cancel').filter((bit) => !isKept(request, bit));
  const first = classed(bits, 'soonest');
  if (first.length > 0 && wh.length > 0)
    return {
      acts: [{ intent: 'timers', slots: { asked: 'first' } }],
      used: [...first, ...wh, ...classed(bits, 'one')],
    };
  const name = classed(bits, 'for-that');
  // With a length it is another timer.
  if (name.length > 0 && names[0] && wh.length === 0 && lengths.length === 0)
    return {
      acts: [{ intent: 'change-timer', slots: { ...names[0].slots, asked: 'name' } }],
      used: [...name, names[0].bit, ...classed(bits, 'timer', 'called')],
    };
  // "A timer that goes off at quarter to seven".
  const [hour, ...hours] = ofKind(bits, 'time');
  const until = classed(bits, 'until-hour', 'till', 'to');
  if (
    hour &&
    hours.length === 0 &&
    lengths.length === 0 &&
    until.length > 0 &&
    wh.length === 0 &&
    stops.length === 0
  )
    return {
      acts: [{ intent: 'set-timer', slots: { time: hour.time, ...(names[0]?.slots ?? {}) } }],
      used: [hour, ...until, ...names.slice(0, 1).map(({ bit }) => bit), ...classed(bits, 'set')],
    };
  const one = definite(request);
  const kept = bits.filter((bit) => isKept(request, bit));
  if (kept.length > 0 && stops.length === 0 && lengths.length === 0)
    return {
      acts: [{ intent: 'timers', slots: { negated: true } }],
      used: [...kept, ...classed(bits, 'not', 'meant', 'all'), ...names.map(({ bit }) => bit)],
    };
  if (stops.length > 0 && lengths.length === 0) {
    const running = names.filter(({ bit }) => bit.kind === 'clock');
    const spoken = running.length > 0 ? running : names;
    const meant = spoken.filter(({ bit }) => verbAt(request, bit.from)?.verb !== 'keep');
    const kept = spoken.filter((name) => !meant.includes(name));
    const used = [...stops, ...spoken.map(({ bit }) => bit), ...classed(bits, 'keep', 'all')];
    const [but] = kept;
    const not = but
      ? { not: { ...emptyMention, words: but.slots.words ?? but.slots.item?.words ?? null } }
      : {};
    if (meant.length === 0 && (but || some(bits, 'all')))
      return { acts: [{ intent: 'cancel-timer', slots: { item: everyOne, ...not } }], used };
    if (meant.length === 0) return { acts: [{ intent: 'cancel-timer', slots: {} }], used };
    return { acts: meant.map(({ slots }) => ({ intent: 'cancel-timer', slots })), used };
  }
  if (lengths.length === 0) {
    // "And the rice timer?": its name and no more.
    const bare = bits.every(
      (bit) => is(bit, 'timer', 'fill', 'opener') || names.some((name) => name.bit === bit),
    );
    // "There's just the one timer then", "are both of those timers running".
    const counted =
      bits.every(
        (bit) => is(bit, 'timer', 'fill', 'opener', 'one', 'repair', 'existing') || figureOf(bit) !== null,
      ) && some(bits, 'existing');
    const runs = some(bits, 'timer') && some(bits, 'ticking');
    // "How long does it go for, and set a timer for that": asked, and then ordered.
    const set = classed(bits, 'set').at(-1);
    const ordered =
      set &&
      wh.some(({ to }) => to <= set.from) &&
      classed(bits, 'timer').some(({ from }) => from > set.from);
    if (ordered) return { acts: [{ intent: 'set-timer', slots: {} }], used: [set, ...wh] };
    if (wh.length === 0 && !counted && !runs && !(bare && (names.length > 0 || one))) return null;
    const [name] = names;
    const asked = [
      ...wh,
      ...classed(bits, 'ticking', 'all', 'both', 'existing'),
      ...names.slice(0, 1).map(({ bit }) => bit),
    ];
    return { acts: [{ intent: 'timers', slots: name?.slots ?? {} }], used: asked };
  }
  // "Twelve minutes for the rice, what comes after that": asked beside it.
  const end = Math.max(...lengths.flatMap((length) => length.bits.map(({ to }) => to)));
  const begins = (at: number): boolean =>
    request.pauses.has(bits[at]?.from ?? 0) || (is(bits[at - 1], 'fill') && begins(at - 1));
  if (wh.some((bit) => bit.from < end || !begins(bits.indexOf(bit)))) return null;
  // "Cancel that timer, make it five", "the timer, five minutes, not three": it is to be so long instead.
  const denied = bits.filter(
    (bit, at) => isDenied(bits, at) && (bit.kind === 'span' || figureOf(bit) !== null),
  );
  const [length, ...others] = lengths;
  const instead =
    stops.length > 0 ||
    ((one || names.some(({ bit }) => bit.kind === 'clock')) && denied.length > 0) ||
    mendsRunning(request);
  if (length && others.length === 0 && runs(request) && instead) {
    const slots = { ...(names[0]?.slots ?? (one ? { item: itMention } : {})), duration: length.seconds };
    return {
      acts: [{ intent: 'change-timer', slots: { ...slots, asked: 'to' } }],
      used: [
        ...length.bits,
        ...names.slice(0, 1).map(({ bit }) => bit),
        ...stops,
        ...denied,
        ...classed(bits, 'set', 'repair', 'not', 'instead-of', 'change', 'to'),
      ],
    };
  }
  const change = changes(request, lengths, names);
  if (change) return change;
  // "Eggs six minutes and rice ten", or "six minutes for the eggs and ten for the rice".
  const called = names.filter(({ bit }) => !is(bits[bits.indexOf(bit) - 1], 'keep'));
  const nameFirst = (called[0]?.bit.from ?? Infinity) < lengths[0]!.bits[0]!.from;
  const each = lengths.map(({ seconds, bits: own }, at) => {
    const next = lengths[at + 1]?.bits[0]?.from ?? Infinity;
    const before = lengths[at - 1]?.bits.at(-1)?.to ?? 0;
    const name = nameFirst
      ? called.filter(({ bit }) => bit.to <= own[0]!.from && bit.from >= before).at(-1)
      : called.find(({ bit }) => bit.from >= own[0]!.to && bit.from < next);
    return { seconds, name };
  });
  const own = each.flatMap(({ name }) => name?.bit ?? []);
  return {
    acts: each.map(({ seconds, name }): Act => ({
      intent: 'set-timer',
      slots: { duration: seconds, ...(name?.slots ?? {}) },
    })),
    used: [
      ...lengths.flatMap((length) => length.bits),
      ...own,
      // "Two minutes, that's the stew", "say ten minutes", "one called cornbread".
      ...bits.filter(
        (bit, at) =>
          (is(bit, 'meant', 'called') && own.includes(bits[at + 1]!)) ||
          (is(bit, 'heat-oven', 'heat-hob', 'heat-microwave') && own.includes(bits[at - 1]!)) ||
          (is(bit, 'means') && bits[at + 1]?.kind === 'span'),
      ),
      ...classed(bits, 'set', 'time-it', 'repair', 'one-more'),
      ...(lengths.length > 1
        ? classed(bits, 'meant').filter(({ from }) => from > lengths[0]!.bits[0]!.from)
        : []),
      // "Two timers, one for five minutes and one for ten".
      ...bits.filter((bit, at) => figureOf(bit) === lengths.length && is(bits[at + 1], 'timer')),
    ],
  };
};

/** "Give the rice two more minutes", "knock a minute off the eggs", "make the pasta twelve minutes": of one that runs. */
const changes = (
  request: Request,
  lengths: readonly { seconds: number; bits: readonly Bit[] }[],
  names: readonly Named[],
): { acts: readonly Act[]; used: readonly Bit[] } | null => {
  const { bits } = request;
  const [length, ...more] = lengths;
  const running = names.filter(({ bit }) => bit.kind === 'clock');
  const one = running[0] ?? (runs(request) && names.length === 0 ? null : undefined);
  if (!length || more.length > 0 || one === undefined) return null;
  const adds = classed(bits, 'add').filter(
    (bit) => (running.length > 0 || !is(bit, 'set')) && !is(bits[bits.indexOf(bit) + 1], 'timer'),
  );
  const lessens = classed(bits, 'less').filter((bit) => !is(bit, 'cancel') || running.length > 0);
  const sets = classed(bits, 'change');
  const slots = { ...(one?.slots ?? {}), duration: length.seconds };
  const used = [
    ...length.bits,
    ...(one ? [one.bit] : []),
    ...adds,
    ...lessens,
    ...sets,
    ...classed(bits, 'to'),
  ];
  if (lessens.length > 0)
    return { acts: [{ intent: 'change-timer', slots: { ...slots, negated: true } }], used };
  if (adds.length > 0) return { acts: [{ intent: 'change-timer', slots }], used };
  if (sets.length > 0 && (one || definite(request)))
    return { acts: [{ intent: 'change-timer', slots: { ...slots, asked: 'to' } }], used };
  return null;
};

/** Whether it is of timers at all: the word, one that is running, or another one just after one was set. */
const headOf = (request: Request): readonly Bit[] | null => {
  const { bits, expecting, clocks } = request;
  if (some(bits, 'remind', 'summary', 'watts')) return null;
  const word = classed(bits, 'timer');
  if (word.length > 0) return word;
  // "Which one's up first", "that one's for the eggs", while one runs.
  const soonest = runs(request) ? classed(bits, 'soonest') : [];
  if (soonest.length > 0 && some(bits, 'wh') && ofKind(bits, 'thing').length === 0) return soonest;
  const naming = runs(request) && request.last?.intent === 'set-timer' ? classed(bits, 'for-that') : [];
  if (naming.length > 0) return naming;
  const ticking = classed(bits, 'ticking');
  const running = bits.filter(isNamed);
  // "Don't you cancel anything", while something runs and nothing else is named.
  const kept = bits.filter((bit) => isKept(request, bit));
  if (kept.length > 0 && runs(request) && bits.every((bit) => bit.kind === 'word' || isNamed(bit)))
    return kept;
  // "Set another one for the cornbread, twenty-five minutes".
  const more = classed(bits, 'one-more');
  const placed = bits.some(
    (bit) => (bit.kind === 'place' || bit.kind === 'marker') && bit.from > (more[0]?.from ?? 0),
  );
  if (more.length > 0 && some(bits, 'set') && !placed && bits.some(isShort)) return more;
  const food = ofKind(bits, 'thing').length > 0;
  if (ticking.length > 0 && some(bits, 'wh', 'cancel') && clocks.length > 0 && !food) return ticking;
  // "How much longer has the stew got", of one that runs by that name, and no more is said.
  const howLong = classed(bits, 'wh').length > 0 && running.length > 0;
  if (howLong && bits.every((bit) => isNamed(bit) || is(bit, 'wh', 'fill', 'opener', 'ticking', 'aside')))
    return running;
  if (running.length > 0 && some(bits, 'cancel', 'add', 'less', 'change')) return running;
  const spans = ofKind(bits, 'span');
  // "Rice twelve minutes, and twenty for the oven, no, twenty-five": a slip in one of several.
  const several = spans.length > 0 && some(bits, 'repair') && lengthsIn(request).length > 1;
  if (spans.length === 0 || (some(bits, 'repair') && !several)) return null;
  if (is(bits[0], 'time-it') && (food || running.length > 0)) return [bits[0]!];
  if (expecting === 'length' && bits.some((bit) => is(bit, 'set', 'time-it'))) return [];
  // "Eight minutes for the pasta", and nothing else.
  const named = namesIn(request).map(({ bit }) => bit);
  const bare = bits.every(
    (bit) =>
      bit.kind === 'span' ||
      named.includes(bit) ||
      figureOf(bit) !== null ||
      is(bit, 'fill', 'opener', 'set', ...(several ? ['repair'] : [])),
  );
  const lead = bits.find((bit) => !is(bit, 'opener'));
  const length = bits.findIndex((bit) => bit.kind === 'span' || figureOf(bit) !== null);
  const opens = lead === bits[length] || some(bits.slice(0, length), 'set');
  const of = named.length > 0 && opens;
  // While steps are followed, minutes of a food are told of it, unless they are to be given.
  const free =
    expecting === 'anything' || expecting === 'length' || (expecting === 'step' && some(bits, 'set'));
  return bare && of && free ? [] : null;
};

export const timersFrame: Frame = (request) => {
  const head = headOf(request);
  const made = head ? timersOf(request) : null;
  return made && head ? { acts: made.acts, used: wordsIn([...head, ...made.used]) } : null;
};
