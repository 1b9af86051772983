/** A power cut: what to do while it lasts, and what became of the food when it is back. */
import { isPlural, isRefused, placeUnder, storageOf, wentThroughPowerCut } from '../../kitchen/index.js';
import type { Id, Item } from '../../kitchen/model.js';
import { powerCut as powerCutReport } from '../../safety/index.js';
import type { PowerCutReport } from '../../safety/api.js';
import type { Say, Value } from '../../speech/answer.js';
import { dayOf, type Instant } from '../../terms/dates.js';
import type { Slots } from '../../understanding/intents.js';
import { sourcesOf } from '../describe/guidance.js';
import { guidedStep } from '../describe/steps.js';
import { inGroups } from '../describe/lists.js';
import {
  type Handler,
  type Reply,
  type Turn,
  clockTime,
  day,
  list,
  say,
  seconds,
  todayOf,
} from '../handler.js';
import type { Outage } from '../state.js';
import { currentStep } from '../talk/step-words.js';
import { bothHalves, lastOf } from '../timers/wall-time.js';
import { sinceSaid } from './left-out.js';
import { powerSteps, thrownOut } from './power-steps.js';

/** A reading without a scale is in the household's own. */
const readingOf = (turn: Turn, { degrees }: Slots): Outage['fridgeReads'] => {
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
const onlyKind = (turn: Turn, { placeIds }: Outage): 'fridge' | 'freezer' | null => {
  const kinds = new Set((placeIds ?? []).map((id) => coldKind(turn, id)));
  const [only] = kinds;
  return kinds.size === 1 ? (only ?? null) : null;
};

/** How things stood, by what was said now, settled by questions, or told before. */
const outageOf = (turn: Turn, slots: Slots, since: string): Outage => {
  const before = turn.state.outage?.since === since ? turn.state.outage : null;
  const doors = (turn.picked.doors?.[0] ?? slots.doors ?? before?.doors ?? null) as Outage['doors'];
  const fullness = (turn.picked.fullness?.[0] ??
    slots.fullness ??
    before?.fullness ??
    null) as Outage['fullness'];
  const ofFreezer = slots.placeKind === 'freezer';
  const fridgeReads = (ofFreezer ? null : readingOf(turn, slots)) ?? before?.fridgeReads ?? null;
  const placeIds = appliancesIn(turn, slots) ?? before?.placeIds ?? null;
  return { since, backAt: before?.backAt ?? null, doors, fullness, fridgeReads, placeIds };
};

const reportFor = (turn: Turn, outage: Outage): PowerCutReport => {
  const { fridgeReads, backAt = null, placeIds = null, ...rest } = outage;
  const { kitchen } = turn;
  const items =
    placeIds === null
      ? kitchen.items
      : new Map(
          [...kitchen.items].filter(([, { placeId }]) =>
            placeIds.some((id) => placeUnder(kitchen, placeId, id)),
          ),
        );
  return powerCutReport(
    { places: kitchen.places, items },
    { ...rest, backAt, ...(fridgeReads ? { fridgeReads } : {}) },
    turn.clock,
  );
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

/** Doors and fullness decide the hours: each is asked, and either answer will do. */
const askState = ({ doors, fullness }: Outage, only?: string): Reply | null => {
  if (doors === null) {
    const question = say('ask-doors');
    return {
      parts: [],
      ask: {
        slot: 'doors',
        question,
        again: say('ask-doors-again'),
        expecting: 'outage-state',
        guess: ['shut'],
        no: ['open'],
      },
    };
  }
  // How full the freezer is does not matter to the fridge.
  if (fullness === null && only !== 'fridge') {
    const question = say('ask-full');
    return {
      parts: [],
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
const askedOf = (turn: Turn, slots: Slots, report: PowerCutReport, outage: Outage): Say[] => {
  const kind = kindAsked(turn, slots, outage);
  return kind ? [holding(turn, kind, report[kind])] : holdings(turn, report);
};

/** Fridge or freezer: the one asked about, else the only one that is out. */
const kindAsked = (
  turn: Turn,
  { placeKind }: Slots,
  outage = turn.state.outage,
): 'fridge' | 'freezer' | null =>
  placeKind === 'fridge' || placeKind === 'freezer' ? placeKind : outage ? onlyKind(turn, outage) : null;

/** The best that may be hoped of the fridge: with its doors shut. */
const ifShut = (turn: Turn, outage: Outage): Say[] => {
  const { fridge } = reportFor(turn, { ...outage, doors: 'shut' });
  if (fridge.state === 'past') return [holding(turn, 'fridge', fridge)];
  // A thermometer says more than hours do.
  if (outage.fridgeReads) return [say('power-reads-cold')];
  if (fridge.until === null) return [say('power-first')];
  return [say('power-if-shut', { until: clockTime(fridge.until), ...laterDay(turn, fridge.until) })];
};

/** Asked about doors and fullness, the hour stands as it was first understood: "yes" says no morning any more. */
const sinceTold = ({ picked, state }: Turn): Instant | null =>
  picked.doors || picked.fullness ? (state.outage?.since ?? null) : null;

export const powerCut: Handler = (act, turn) => {
  const { slots } = act;
  // Told with its end, also in answer to since when, it is over.
  if (slots.until) return powerBack(act, turn);
  const before = turn.state.outage;
  // One that is over is not the one told of now.
  const known = before && !before.backAt ? before.since : null;
  const since = sinceTold(turn) ?? sinceSaid(turn, slots) ?? (slots.asked === 'now' ? turn.clock.now : known);
  if (!since) return askSince;
  const outage = outageOf(turn, slots, since);
  const first = turn.picked.doors || slots.doors || slots.fullness ? [] : [say('power-first')];
  const kind = kindAsked(turn, slots, outage);
  const missing = askState(outage, kind ?? undefined);
  // Until what hour the fridge holds with its doors shut is told before they are asked about; past that, they do not matter.
  if (missing && outage.doors === null && slots.asked !== 'now')
    return { ...missing, parts: kind === 'freezer' ? first : ifShut(turn, outage), outage };
  // The fridge does not wait for how full the freezer is.
  if (missing && before === null && outage.doors !== null && kind !== 'freezer')
    return { ...missing, parts: [...first, holding(turn, 'fridge', reportFor(turn, outage).fridge)], outage };
  if (missing) return { ...missing, parts: first, outage };
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
      ...(slots.asked === 'holds' || told.some(({ args }) => args?.state === 'past')
        ? []
        : [say('power-tell-back')]),
    ],
    sources: sourcesOf([report.fridge, report.freezer]),
    procedure: { kind: 'power-cut', title: say('power-title'), itemId: null, steps, at: -1, paused: true },
    details: steps.map(({ text }) => text),
    outage,
  };
};

/** What the table made of each food that did not simply hold. */
const costs = ({ items }: PowerCutReport): ReadonlyMap<string, 'lost' | 'doubtful'> =>
  new Map(
    items.flatMap(({ itemId, verdict }): (readonly [string, 'lost' | 'doubtful'])[] =>
      itemId === null
        ? []
        : verdict === 'discard' || verdict === 'discard-in-doubt'
          ? [[itemId, 'lost']]
          : verdict === 'check'
            ? [[itemId, 'doubtful']]
            : [],
    ),
  );

export const powerBack: Handler = (act, turn) => {
  const { slots } = act;
  const until = slots.until ? lastOf(bothHalves(slots.until, turn.heard), turn.clock) : null;
  // It began before it was over: of two hours that may be meant, the last one before that.
  const ended = until ? { ...turn, clock: { ...turn.clock, now: until } } : turn;
  const since = sinceTold(turn) ?? sinceSaid(ended, slots) ?? turn.state.outage?.since ?? null;
  if (!since) return askSince;
  const before = outageOf(turn, slots, since);
  const backAt = until ?? before.backAt ?? turn.clock.now;
  const outage: Outage = { ...before, backAt };
  const only = onlyKind(turn, outage);
  const missing = askState(outage, only ?? undefined);
  if (missing) {
    // Past its hours with the doors shut, the fridge is so whatever they were.
    const { fridge } = reportFor(turn, { ...outage, doors: outage.doors ?? 'shut' });
    const sure =
      only !== 'freezer' &&
      turn.state.outage === null &&
      !turn.picked.doors &&
      (fridge.state === 'past' || outage.doors !== null);
    return {
      ...missing,
      parts: !sure
        ? []
        : fridge.state === 'holding'
          ? [say('power-held')]
          : [holding(turn, 'fridge', fridge)],
      outage,
    };
  }
  const report = reportFor(turn, outage);
  const hours = seconds(Math.round((Date.parse(backAt) - Date.parse(since)) / 1000));
  const sources = sourcesOf(report.items.slice(0, 3));
  const steps = powerSteps(turn.kitchen, report);
  // What it cost stays on the record of each food: tomorrow it is no better.
  const lost = wentThroughPowerCut(turn, { from: since, to: backAt }, costs(report));
  const changes = isRefused(lost) ? {} : { changes: [lost] };
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
      outage,
      ...changes,
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
    outage,
    ...changes,
  };
};

/** What a power cut that is talked of makes of each of these, where they stand in fridge or freezer. */
export const afterOutage = (turn: Turn, items: readonly Item[]): Say[] => {
  const { outage } = turn.state;
  if (!outage) return [];
  const report = reportFor(turn, outage);
  return items.flatMap((item) => {
    const found = report.items.find(({ itemId }) => itemId === item.id);
    if (!found) return [];
    const held = report[storageOf(turn.kitchen, item.placeId) === 'freezer' ? 'freezer' : 'fridge'];
    // While it lasts, "keep" holds only as long as the doors do.
    const until = !outage.backAt && found.verdict === 'keep' ? held.until : null;
    return [
      say('power-one', {
        name: item.name,
        many: isPlural(item.name) ? 'yes' : 'no',
        verdict: found.verdict,
        reason: say(`power-${found.reason}`),
        ...(until ? { until: clockTime(until), ...laterDay(turn, until) } : {}),
      }),
    ];
  });
};
