/** A power cut: what to do while it lasts, and what became of the food when it is back. */
import { isInCut, isPlural, isRefused, lastPowerCut, storageOf, tellPowerCut } from '../../kitchen/index.js';
import type { Change, Id, Item, PowerCut } from '../../kitchen/model.js';
import {
  assessIn,
  cameOf,
  holdingHours,
  judgedUntold,
  powerCut as powerCutReport,
  powerCutFor,
  questionOf,
} from '../../safety/index.js';
import type { PowerCutReport, PowerItem } from '../../safety/api.js';
import type { Say, Value } from '../../speech/answer.js';
import { dayOf, type Instant } from '../../terms/dates.js';
import type { Act, Mention, Slots } from '../../understanding/intents.js';
import { reasonsOf, sourcesOf, verdictWords } from '../describe/guidance.js';
import { guidedStep } from '../describe/steps.js';
import { inGroups } from '../describe/lists.js';
import {
  type Handler,
  type Reply,
  type Turn,
  about,
  clockTime,
  day,
  list,
  say,
  seconds,
  todayOf,
} from '../handler.js';
import { findItems } from '../refer/items.js';
import { currentStep } from '../talk/step-words.js';
import { bothHalves, lastOf } from '../timers/wall-time.js';
import { sinceSaid } from './left-out.js';
import { powerSteps, thrownOut } from './power-steps.js';
import { theCut } from './the-cut.js';

/** A reading without a scale is in the household's own. */
const readingOf = (turn: Turn, { degrees }: Slots): PowerCut['fridgeReads'] => {
  if (!degrees) return null;
  const own = turn.kitchen.household.measures === 'us' ? 'fahrenheit' : 'celsius';
  return { degrees: degrees.value, scale: degrees.scale ?? own };
};

/** So much like the name of a place that it may be that one: in doubt the food of each that fits is judged. */
const maybeThat = 0.75;

/** "The garage freezer tripped": every fridge and freezer it may be; null where none was named. */
const appliancesIn = (turn: Turn, { place }: Slots): readonly Id[] | null => {
  const ids = (place?.candidates ?? [])
    .filter(({ fit }) => fit >= maybeThat)
    .map(({ id }) => id)
    .filter((id) => coldKind(turn, id) !== null);
  return ids.length > 0 ? ids : null;
};
const coldKind = ({ kitchen }: Turn, placeId: Id): 'fridge' | 'freezer' | null => {
  const kind = storageOf(kitchen, placeId);
  return kind === 'fridge' || kind === 'freezer' ? kind : null;
};

/** The one kind of appliance that is out; null: both, or nobody said which. */
const onlyKind = (turn: Turn, { placeIds }: PowerCut): 'fridge' | 'freezer' | null => {
  const kinds = new Set((placeIds ?? []).map((id) => coldKind(turn, id)));
  const [only] = kinds;
  return kinds.size === 1 ? (only ?? null) : null;
};

/** An hour put right by no more than so many hours is of the same cut while that goes on. */
const putRightBy = 2 * 3_600_000;

/** Told of the cut on record and of no new one: the same beginning, or one put right, or one that was earlier. */
const isThatCut = (cut: PowerCut, said: Instant, { inAll, asked }: Slots): boolean =>
  inAll === true ||
  asked === 'put-right' ||
  cut.since === said ||
  (!cut.backAt && (said < cut.since || Date.parse(said) - Date.parse(cut.since) <= putRightBy));

/** How things stood, by what was said now, settled by questions, or on record. */
const cutOf = (turn: Turn, slots: Slots, since: string): PowerCut => {
  const last = lastPowerCut(turn.kitchen);
  const before = last && isThatCut(last, since, slots) ? last : null;
  const doors = (turn.picked.doors?.[0] ?? slots.doors ?? before?.doors ?? null) as PowerCut['doors'];
  const freezerDoors = slots.freezerDoors ?? (slots.doors ? null : (before?.freezerDoors ?? null));
  const fullness = (turn.picked.fullness?.[0] ??
    slots.fullness ??
    before?.fullness ??
    null) as PowerCut['fullness'];
  const ofFreezer = slots.placeKind === 'freezer';
  return {
    id: before?.id ?? turn.newId(),
    since,
    backAt: before?.backAt ?? null,
    // Of the freezers alone was told how they were: what is not said of the fridge stays open.
    doors,
    freezerDoors: doors === freezerDoors ? null : freezerDoors,
    fullness,
    fridgeReads: (ofFreezer ? null : readingOf(turn, slots)) ?? before?.fridgeReads ?? null,
    placeIds: appliancesIn(turn, slots) ?? before?.placeIds ?? null,
    toldAt: turn.clock.now,
  };
};

const reportFor = (turn: Turn, cut: PowerCut): PowerCutReport => {
  const { kitchen } = turn;
  const items = [...kitchen.items.values()].filter(({ placeId }) => isInCut(kitchen, cut, placeId));
  return powerCutReport({ places: kitchen.places, items }, questionOf(cut), turn.clock);
};

/** What it came to for each food once it is over; nothing while it lasts, for that is reckoned anew at each look. */
const costsOf = (turn: Turn, cut: PowerCut): ReadonlyMap<Id, 'lost' | 'doubtful' | 'kept'> => {
  if (cut.backAt === null) return new Map();
  const at: Turn = { ...turn, clock: { ...turn.clock, now: cut.backAt } };
  const { items } = reportFor(at, judgedUntold(cut));
  return new Map(
    items.flatMap((found) => {
      const item = found.itemId === null ? undefined : turn.kitchen.items.get(found.itemId);
      // What came after it was over went through none of it.
      return item && item.addedAt <= cut.backAt! ? [[item.id, cameOf(found)] as const] : [];
    }),
  );
};

/**
 * The cut as it is known now, for the household's record. One that was never said to be over has been, where another
 * began: what it came to by then is kept.
 */
const noted = (turn: Turn, cut: PowerCut): { readonly noted: readonly Change[] } => {
  const others = [...turn.kitchen.powerCuts.values()].filter(
    ({ id, backAt }) => id !== cut.id && backAt === null,
  );
  const ended = others.map((other) => ({ ...other, backAt: cut.since }));
  return {
    noted: [...ended, cut].flatMap((one) => {
      const told = tellPowerCut(turn, one, costsOf(turn, one));
      return isRefused(told) ? [] : [told];
    }),
  };
};

/** Said only when it is not today. */
const laterDay = (turn: Turn, at: string | null): { date?: Value } => {
  const on = at ? dayOf(at, turn.clock.timeZone) : null;
  return on && on !== todayOf(turn) ? { date: day(on) } : {};
};

const holding = (turn: Turn, which: 'fridge' | 'freezer', { state, until }: PowerCutReport['fridge']): Say =>
  say('power-holds', {
    which,
    state,
    ...(until ? { until: clockTime(until) } : {}),
    ...laterDay(turn, until),
  });

const askSince: Reply = {
  parts: [],
  ask: {
    slot: 'time',
    question: say('ask-power-since'),
    again: say('ask-out-since-again'),
    expecting: 'time',
  },
};

const askDoors = (question: Say): Reply => ({
  parts: [],
  ask: {
    slot: 'doors',
    question,
    again: say('ask-doors-again'),
    expecting: 'outage-state',
    guess: ['shut'],
    no: ['open'],
  },
});

/** Doors and fullness decide the hours: each is asked, and either answer will do. */
const askState = (cut: PowerCut, slots: Slots, only?: string): Reply | null => {
  const { doors, freezerDoors, fullness } = cut;
  const askFor = goesTo(cut, slots);
  if (doors === null) {
    if (freezerDoors) return { ...askDoors(say('ask-fridge-door')), askFor };
    return { ...askDoors(say('ask-doors')), askFor };
  }
  // How full the freezer is does not matter to the fridge.
  if (fullness === null && only !== 'fridge') {
    const question = say('ask-full');
    return {
      parts: [],
      askFor,
      ask: {
        slot: 'fullness',
        question,
        again: say('ask-full-again'),
        expecting: 'outage-state',
        guess: ['full'],
        no: ['half'],
      },
    };
  }
  return null;
};

/** How long each holds; in one breath where both do. */
const holdings = (turn: Turn, { fridge, freezer }: PowerCutReport): Say[] => {
  const both = fridge.state === 'holding' && freezer.state === 'holding';
  if (both && fridge.until && freezer.until && !laterDay(turn, fridge.until).date)
    return [
      say('power-both-hold', {
        fridge: clockTime(fridge.until),
        freezer: clockTime(freezer.until),
        ...laterDay(turn, freezer.until),
      }),
    ];
  return [holding(turn, 'fridge', fridge), holding(turn, 'freezer', freezer)];
};

/** "Is the freezer all right", "what do I need to do". */
const askedOf = (turn: Turn, slots: Slots, report: PowerCutReport, outage: PowerCut): Say[] => {
  const kind = kindAsked(turn, slots, outage);
  return kind ? [holding(turn, kind, report[kind])] : holdings(turn, report);
};

/** Fridge or freezer: the one asked about, else the only one that is out. */
const kindAsked = (turn: Turn, { placeKind }: Slots, outage = theCut(turn)): 'fridge' | 'freezer' | null =>
  placeKind === 'fridge' || placeKind === 'freezer' ? placeKind : outage ? onlyKind(turn, outage) : null;

/** The hours for shut doors, of a fridge and of a freezer full and half full. */
const hoursSay = (): Say => {
  const { fridge, full, half } = holdingHours();
  const hours = (count: number) => seconds(count * 3600);
  return say('guidance-power-hours', { fridge: hours(fridge), full: hours(full), half: hours(half) });
};

/** The best that may be hoped of the fridge: with its doors shut. */
const ifShut = (turn: Turn, outage: PowerCut): Say[] => {
  const { fridge } = reportFor(turn, { ...outage, doors: 'shut' });
  if (fridge.state === 'past') return [holding(turn, 'fridge', fridge)];
  // A thermometer says more than hours do.
  if (outage.fridgeReads) return [say('power-reads-cold')];
  if (fridge.until === null) return [say('power-first')];
  return [say('power-if-shut', { until: clockTime(fridge.until), ...laterDay(turn, fridge.until) })];
};

/** What was told is on record, hour and all: an answer goes to what is still asked, and says no hour any more. */
const goesTo = ({ backAt }: PowerCut, { asked, placeKind, items }: Slots): Act => ({
  intent: backAt === null ? 'power-cut' : 'power-back',
  slots: {
    ...(asked && asked !== 'now' && asked !== 'put-right' ? { asked } : {}),
    ...(placeKind ? { placeKind } : {}),
    ...(items ? { items } : {}),
  },
});

/** "How long has it been out?" */
const soFar = (turn: Turn, { since, backAt }: PowerCut): Reply => ({
  parts: [
    say('power-so-far', {
      hours: seconds(Math.round((Date.parse(backAt ?? turn.clock.now) - Date.parse(since)) / 1000)),
      since: clockTime(since),
      over: backAt === null ? 'no' : 'yes',
    }),
  ],
});

/** "Is everything in there all right", while it lasts: how each holds, by what rule, and what is to be thrown out by now. */
const lostSoFar = (turn: Turn, slots: Slots, outage: PowerCut): Reply => {
  const kind = kindAsked(turn, slots, outage);
  const missing = askState(outage, slots, kind ?? undefined);
  const report = reportFor(turn, judgedUntold(outage));
  const gone = report.items.filter(
    ({ verdict, where }) => verdict === 'discard' && (kind === null || where === kind),
  );
  const { first, more, left } = inGroups([...new Set(gone.map(({ name }) => name))]);
  const held =
    kind === 'freezer'
      ? outage.doors === null || outage.fullness === null
        ? []
        : [holding(turn, 'freezer', report.freezer)]
      : outage.doors === null
        ? ifShut(turn, outage)
        : kind === 'fridge' || outage.fullness === null
          ? [holding(turn, 'fridge', report.fridge)]
          : holdings(turn, report);
  return {
    ...missing,
    parts: [
      ...held,
      hoursSay(),
      ...(gone.length > 0 && outage.doors !== null
        ? [say('power-lost-so-far', { items: list(first), left })]
        : []),
    ],
    more,
    sources: sourcesOf([report.fridge, report.freezer]),
    names: gone.map(({ name }) => name),
    count: gone.length,
    ...noted(turn, outage),
  };
};

export const powerCut: Handler = (act, turn) => {
  const { slots } = act;
  // Told with its end, also in answer to since when, it is over.
  if (slots.until) return powerBack(act, turn);
  const before = theCut(turn);
  // One that is over is not the one told of now.
  const known = before && (!before.backAt || slots.items) ? before.since : null;
  // How long it was in all is told of what is over, of the cut that was just talked of.
  if (slots.inAll && before) return powerBack(act, turn);
  // What was lost to one that is over is gone through as that is.
  if (slots.asked === 'lost' && before?.backAt) return powerBack(act, turn);
  if (slots.asked === 'lapse' && before) return soFar(turn, before);
  const since = sinceSaid(turn, slots) ?? (slots.asked === 'now' ? turn.clock.now : known);
  // How the doors were, told of what is over: it goes with that.
  if (!since && before?.backAt && (slots.doors ?? slots.freezerDoors ?? slots.fullness))
    return powerBack(act, turn);
  if (!since) return slots.items ? withoutCut(turn, slots.items) : askSince;
  const outage = cutOf(turn, slots, since);
  if (slots.items && slots.items.length > 0) return ofFoods(turn, slots.items, outage);
  if (slots.asked === 'lost') return lostSoFar(turn, slots, outage);
  const first = turn.picked.doors || slots.doors || slots.fullness ? [] : [say('power-first')];
  const kind = kindAsked(turn, slots, outage);
  const missing = askState(outage, slots, kind ?? undefined);
  // How long each holds with its doors shut is known before anything else is.
  const answers =
    turn.picked.doors !== undefined || turn.picked.fullness !== undefined || slots.doors !== undefined;
  if (missing && slots.asked === 'holds' && !answers)
    return {
      ...missing,
      parts: [
        outage.doors === null || kind === 'freezer'
          ? hoursSay()
          : holding(turn, 'fridge', reportFor(turn, outage).fridge),
      ],
      ...noted(turn, outage),
    };
  // Until what hour the fridge holds with its doors shut is told before they are asked about; past that, they do not matter.
  if (missing && outage.doors === null && slots.asked !== 'now')
    return { ...missing, parts: kind === 'freezer' ? first : ifShut(turn, outage), ...noted(turn, outage) };
  // The fridge does not wait for how full the freezer is.
  const toldDoors = before === null || slots.doors !== undefined;
  if (missing && toldDoors && outage.doors !== null && kind !== 'freezer')
    return {
      ...missing,
      parts: [...first, holding(turn, 'fridge', reportFor(turn, outage).fridge)],
      ...noted(turn, outage),
    };
  if (missing) return { ...missing, parts: first, ...noted(turn, outage) };
  const report = reportFor(turn, outage);
  const steps = report.steps
    .filter(({ code }) => code !== 'keep-doors-shut' && code !== 'note-time')
    .map((step) => guidedStep(step, '', turn.kitchen.household.locale));
  const told = askedOf(turn, slots, report, outage);
  const todo =
    slots.asked === 'todo' ? [say('power-first'), ...steps.slice(0, 1).map(({ text }) => text)] : null;
  return {
    parts: todo ?? [
      ...told,
      // Two sentences are enough in one breath, where something is past already.
      ...(slots.asked === 'holds' ||
      told.some(({ args }) => args?.state === 'past' || args?.state === 'at-most')
        ? []
        : [say('power-tell-back')]),
    ],
    sources: sourcesOf([report.fridge, report.freezer]),
    procedure: { kind: 'power-cut', title: say('power-title'), itemId: null, steps, at: -1, paused: true },
    details: steps.map(({ text }) => text),
    ...noted(turn, outage),
  };
};

const earlier = (at: Instant, seconds: number): Instant =>
  new Date(Date.parse(at) - seconds * 1000).toISOString();

/** When it was over: of two halves of the day the one of today, for "this morning" is said of either hour. */
const endSaid = (turn: Turn, { until, when }: Slots): Instant | null => {
  if (!until) return null;
  const isToday = (at: Instant): boolean => dayOf(at, turn.clock.timeZone) === todayOf(turn);
  const said = lastOf(bothHalves(until, turn), turn.clock);
  const either = lastOf(bothHalves(until, { qualifiers: new Set() }), turn.clock);
  return !when && !isToday(said) && isToday(either) ? either : said;
};

export const powerBack: Handler = (act, turn) => {
  const { slots } = act;
  const known = theCut(turn);
  const goesOn = known && !known.backAt ? known.since : null;
  const said = slots.time && !slots.until && !slots.when ? sinceSaid(turn, slots) : null;
  // "If it comes back at nine tonight", of one that goes on: it is not back yet, and how long all holds is told.
  if (goesOn && said && said < goesOn) {
    const { time: _ahead, ...rest } = slots;
    return powerCut({ intent: 'power-cut', slots: rest }, turn);
  }
  const until = endSaid(turn, slots);
  // It began before it was over: of two hours that may be meant, the last one before that.
  const ended = until ? { ...turn, clock: { ...turn.clock, now: until } } : turn;
  const over = theCut(turn)?.backAt ?? null;
  const whole = slots.inAll && slots.duration !== undefined ? slots.duration : null;
  const since =
    (whole === null ? sinceSaid(ended, slots) : earlier(until ?? over ?? turn.clock.now, whole)) ??
    theCut(turn)?.since ??
    null;
  if (!since) return askSince;
  const before = cutOf(turn, slots, since);
  const backAt = until ?? before.backAt ?? turn.clock.now;
  const outage: PowerCut = { ...before, backAt };
  if (slots.items && slots.items.length > 0) return ofFoods(turn, slots.items, outage);
  const only = onlyKind(turn, outage);
  const hours = seconds(Math.round((Date.parse(backAt) - Date.parse(since)) / 1000));
  const missing = askState(outage, slots, only ?? undefined);
  if (missing) {
    // Past its hours with the doors shut, the fridge is so whatever they were.
    const { fridge } = reportFor(turn, { ...outage, doors: outage.doors ?? 'shut' });
    const toldNow = known === null || known.backAt === null;
    const short = fridge.state === 'holding' && only !== 'freezer';
    return {
      ...missing,
      parts: !toldNow
        ? []
        : short
          ? [outage.doors === null ? say('power-if-shut-held', { hours }) : say('power-held')]
          : [only === 'freezer' ? say('power-was-out', { hours }) : holding(turn, 'fridge', fridge)],
      ...noted(turn, outage),
    };
  }
  const report = reportFor(turn, outage);
  const sources = sourcesOf(report.items.slice(0, 3));
  const steps = powerSteps(turn.kitchen, report);
  if (steps) {
    const discards = thrownOut(report);
    const items = steps.steps[0]?.items ?? [];
    return {
      parts: [
        say('power-back', { hours, discards }),
        say('power-steps', { count: steps.steps.length }),
        ...currentStep(steps),
      ],
      details: [say('step-when-in-doubt')],
      sources,
      procedure: { ...steps, source: sources },
      dropFrames: true,
      count: discards,
      memory: { items },
      ...noted(turn, outage),
    };
  }
  const kept = [...new Set(report.items.map(({ name }) => name))];
  const { first, left } = inGroups(kept);
  return {
    parts: [
      say('power-back', { hours, discards: 0 }),
      kept.length > 0
        ? say('power-keep', { count: kept.length, items: list(first), left })
        : say('power-nothing'),
    ],
    details: [say('step-never-taste'), say('step-when-in-doubt')],
    sources,
    procedure: null,
    ...noted(turn, outage),
  };
};

/** No cut is talked of any more: what such food is by its days, and by what it went through. */
const withoutCut = (turn: Turn, mentions: readonly Mention[]): Reply => {
  const items = mentions.flatMap((mention) => findItems(turn, mention).items);
  if (items.length === 0) return askSince;
  return {
    parts: items.slice(0, toldAtOnce).flatMap((item) => {
      const found = assessIn(turn.kitchen, item, turn.clock);
      return [verdictWords(found, item.name), ...reasonsOf(found).first];
    }),
    memory: about(turn, items),
    names: items.map(({ name }) => name),
    count: items.length,
  };
};

/** What a power cut makes of each of these, where they stand in fridge or freezer; what is to be thrown out first. */
const verdictsIn = (turn: Turn, items: readonly Item[], outage: PowerCut): Say[] => {
  const report = reportFor(turn, judgedUntold(outage));
  // Nobody told how the doors were: until when it holds where they stayed shut.
  const shut = outage.doors === null ? reportFor(turn, { ...outage, doors: 'shut' }) : null;
  const ids = new Set(items.map(({ id }) => id));
  const all = report.items
    .filter(({ itemId }) => itemId !== null && ids.has(itemId))
    .map((found) => {
      const item = turn.kitchen.items.get(found.itemId!)!;
      // A day that is past stays past, cold or not.
      const past = assessIn(turn.kitchen, item, turn.clock);
      return past.verdict === 'throw-out' && past.reasons[0]?.code !== 'power-lost'
        ? { item, worst: true, words: [verdictWords(past, item.name), ...reasonsOf(past).first] }
        : {
            item,
            worst: false,
            words: [ifShutOf(turn, found, shut) ?? oneOf(turn, found, item.name, report, outage)],
          };
    })
    .sort((a, b) => Number(b.worst) - Number(a.worst));
  return all.flatMap(({ words }) => words);
};

/** Held by a door that stayed shut, if it did; null where that is told, or would not help. */
const ifShutOf = (
  turn: Turn,
  { itemId, name, where }: PowerItem,
  shut: PowerCutReport | null,
): Say | null => {
  const found = shut?.items.find((one) => one.itemId === itemId);
  const until = shut?.[where === 'freezer' ? 'freezer' : 'fridge'].until;
  return found?.reason === 'door-shut-within-hours' && until
    ? say('power-one-if-shut', { name, until: clockTime(until), ...laterDay(turn, until) })
    : null;
};

const oneOf = (
  turn: Turn,
  found: PowerItem,
  name: string,
  report: PowerCutReport,
  outage: PowerCut,
  where = found.itemId ? storageOf(turn.kitchen, turn.kitchen.items.get(found.itemId)!.placeId) : 'fridge',
): Say => {
  const held = report[where === 'freezer' ? 'freezer' : 'fridge'];
  // While it lasts, "keep" holds only as long as the doors do; of what was opened no longer than that.
  const timed = found.verdict === 'keep' || found.reason === 'opened-within-hours';
  const until = !outage.backAt && timed ? held.until : null;
  return say('power-one', {
    name,
    many: isPlural(name) ? 'yes' : 'no',
    verdict: found.verdict,
    reason: say(`power-${found.reason}`),
    ...(until ? { until: clockTime(until), ...laterDay(turn, until) } : {}),
  });
};

/** So many are told in one breath. */
const toldAtOnce = 4;

const distinctOf = (parts: readonly Say[]): Say[] => [
  ...new Map(parts.map((part) => [JSON.stringify(part), part])).values(),
];

/** What is asked of foods in a cut: each that is here by the record, any other as such food in the fridge. */
const ofFoods = (turn: Turn, mentions: readonly Mention[], outage: PowerCut): Reply => {
  const found = mentions.map((mention) => ({ mention, items: findItems(turn, mention).items }));
  const cold = found
    .flatMap(({ items }) => items)
    .filter(({ placeId }) => coldKind(turn, placeId ?? '') !== null);
  const report = reportFor(turn, outage);
  const others = found
    .filter(({ items }) => items.length === 0)
    .flatMap(({ mention: { words } }) => {
      if (!words) return [];
      const one = powerCutFor({ name: words, where: 'fridge' }, questionOf(outage), turn.clock);
      return [oneOf(turn, one, words, report, outage, 'fridge')];
    });
  const parts = distinctOf([...verdictsIn(turn, cold, outage), ...others]);
  // What stood nowhere that lost its power is judged as ever.
  if (parts.length === 0) return withoutCut(turn, mentions);
  return {
    parts: [...parts.slice(0, toldAtOnce)],
    more: [],
    details: parts.slice(toldAtOnce),
    sources: sourcesOf([report.fridge]),
    ...noted(turn, outage),
    memory: { items: cold.map(({ id }) => id) },
    names: cold.map(({ name }) => name),
    count: cold.length + others.length,
  };
};

/**
 * While a power cut is talked of, whatever is asked of food in fridge or freezer is answered for the cut and never by
 * the plain date alone. Null: none is, or none of these stands in the cold.
 */
export const inCut = (turn: Turn, items: readonly Item[]): Reply | null => {
  const outage = theCut(turn);
  const parts = outage ? distinctOf(verdictsIn(turn, items, outage)) : [];
  if (parts.length === 0) return null;
  return {
    parts: parts.slice(0, toldAtOnce),
    details: parts.slice(toldAtOnce),
    memory: about(turn, items),
    names: items.map(({ name }) => name),
    count: items.length,
  };
};
