/**
 * One spoken question of guidance, with every fact told with it: which room of the published tables it is
 * for, what they say, and the caution that must be heard with it. What no fact took is asked or said.
 */
import { storageOf } from '../../kitchen/index.js';
import type { Item } from '../../kitchen/model.js';
import type { Assessment, Where } from '../../safety/api.js';
import {
  anyoneAtRisk,
  cookTemperature as heatedThrough,
  feedLimit,
  formulaUntil,
  fridgeThawHours,
  guidanceFor,
  hazardNamed,
  holdingHours,
  homeCannedBoil,
  isHot,
  isTurkey,
  leftOut as leftOutGuidance,
  mayRefreeze,
  powerCutFor,
  regionFacts,
  reheatPlan,
  thawing,
  isHumanMilk,
  waterThawHours,
} from '../../safety/index.js';
import type { Say } from '../../speech/answer.js';
import { daysBetween, today, type Instant } from '../../terms/dates.js';
import type { GuidanceFacts } from '../../understanding/guidance/facts.js';
import { emptyMention, itMention, type Act, type Slots } from '../../understanding/intents.js';
import { inEachPlace } from '../age/each-place.js';
import { inNoTable } from '../age/generic-keeps.js';
import { ownVerdicts, yours } from '../age/keeps.js';
import { mayBeFrozen } from '../age/may-freeze.js';
import { heatSaid } from '../describe/heat.js';
import {
  mustSay,
  otherTable,
  reasonWords,
  reasonsOf,
  sourcesOf,
  spanWords,
  verdictWords,
} from '../describe/guidance.js';
import { type Handler, type Reply, type Turn, about, clockTime, say, seconds } from '../handler.js';
import { claim, code, labels } from './labels.js';
import { withRecord } from './with-record.js';
import { inScale, type Asked } from './asked.js';
import { chillHot, cooling, probe, reading, roasting } from './heat.js';
import { leftOut, supposedOut } from '../outages/left-out.js';
import { hersOf, whereOfItem } from '../refer/hers.js';
import { findItems } from '../refer/items.js';
import { justSpokenOf } from '../refer/need.js';
import { cookTemperature } from '../reheat/cook.js';
import { reheat } from '../reheat/reheat.js';
import { fromNow, lastOf, nextOf, bothHalves } from '../timers/wall-time.js';
import { theCut } from '../outages/the-cut.js';

const day = 86_400;
/** Seconds; our own figure for "overnight", well beyond what guidance allows at room temperature. */
const longTime = 8 * 3600;

/** Seconds; beyond what any shut freezer holds. */
const longOutage = 3 * day;

/** Hours below two days, days from there: a limit in hours is not met by a count of days. */
const ageOf = ({ facts, turn }: Asked): { readonly hours?: number; readonly days?: number } => {
  if (facts.seconds !== null) {
    const hours = facts.seconds / 3600;
    return hours < 48 ? { hours } : { days: Math.round(facts.seconds / day) };
  }
  if (facts.when) return { days: Math.max(0, daysBetween(facts.when.day, today(turn.clock))) };
  return {};
};

const datesOf = ({ facts }: Asked) =>
  Object.fromEntries(
    Object.entries(facts.dates).flatMap(([kind, said]) =>
      said && kind !== 'sellBy' ? [[kind, said.day]] : [],
    ),
  );

/** Where it is kept, as said; what is frozen is in the freezer. Null: nobody said, and each place has its answer. */
const whereOf = ({ facts }: Asked): Where | null => {
  if (facts.where) return facts.where;
  if (facts.which) return null;
  const frozen =
    facts.states.includes('frozen') && facts.thawedIn === null && !facts.states.includes('thawed');
  return frozen ? 'freezer' : null;
};

const stateOf = ({ facts: { states } }: Asked) =>
  states.includes('raw')
    ? ('raw' as const)
    : states.includes('cooked') || states.includes('homemade')
      ? ('cooked' as const)
      : null;

/** What of it is here, where it was asked about; told after what guidance says of such food. */
const ownHere = ({ turn, slots }: Asked, where: Where): readonly Item[] =>
  hersOf(turn, slots.item).filter((item) => whereOfItem(turn, item) === where);

/** What was told of it, as guidance is asked. */
const questionOf = (asked: Asked) => {
  const { facts, food, turn } = asked;
  return {
    food,
    region: turn.kitchen.household.region,
    state: stateOf(asked),
    opened: facts.states.includes('opened') || facts.dates.opened !== undefined,
    thawed: facts.states.includes('thawed') || facts.thawedIn !== null,
    ...ageOf(asked),
    dates: datesOf(asked),
    timesReheated: facts.reheated,
    atRisk: facts.risks.length > 0 || anyoneAtRisk(turn.kitchen.people),
    clock: turn.clock,
  };
};

/**
 * What is past guidance already is not frozen, thawed or heated, whatever may be done with such food: by how long
 * it was out, or by its days in the cold. Null: nothing told proves it past.
 */
const pastAlready = (asked: Asked): Reply | null => {
  const { facts, food } = asked;
  if (facts.mood === 'supposed' || facts.infant) return null;
  const stoodOut =
    facts.where === 'counter' && (facts.seconds !== null || facts.overnight || facts.since !== null);
  if (stoodOut) return out(asked);
  const aged = facts.seconds !== null || facts.when !== null || Object.keys(facts.dates).length > 0;
  const where = whereOf(asked);
  if (!aged || where === 'freezer' || where === 'pantry' || facts.thawedIn === 'left-out') return null;
  const found = guidanceFor({ ...questionOf(asked), where: 'fridge' });
  if (found.verdict !== 'throw-out') return null;
  return saidOf(found, food);
};

/** What the gate found, as an answer by itself. */
const saidOf = (found: Assessment, food: string): Reply => {
  const { first, rest, sources } = reasonsOf(found);
  return {
    parts: [...mustSay(found), verdictWords(found, food), ...first],
    details: rest,
    sources,
    names: [food],
  };
};

const keeping = (asked: Asked): Reply => {
  const { facts, food, slots, turn } = asked;
  const where = whereOf(asked);
  const { region } = turn.kitchen.household;
  const question = questionOf(asked);
  const sellBy = facts.dates.sellBy ? [say('guidance-sell-by')] : [];
  const told = facts.risks.length > 0;
  // Thawed in water or a microwave it has been warm in places: it is cooked, and not kept.
  const cookNow = (found: Assessment): Reply | null =>
    (facts.thawedIn === 'microwave' || facts.thawedIn === 'cold-water') && found.verdict !== 'throw-out'
      ? {
          parts: [...mustSay(found, told), say('guidance-cook-now', { name: food })],
          sources: sourcesOf([mayRefreeze({ food, thawedIn: facts.thawedIn, region, clock: turn.clock })]),
          names: [food],
        }
      : null;
  if (where === null && !facts.elsewhere) {
    const cold = { coldOnly: facts.which };
    const all = inEachPlace(question, cold);
    // A figure nobody could place: how long it keeps is told, and no leave is given.
    const unheard = facts.left && all.leave ? [say('guidance-unheard', { words: facts.left })] : [];
    const { parts, details, sources, found } =
      unheard.length > 0 ? inEachPlace({ ...question, days: null, hours: null, dates: {} }, cold) : all;
    const which = facts.which ? itMention : undefined;
    const hers = facts.asked === 'keep' ? hersOf(turn, slots.item ?? which) : [];
    const spoken = facts.which ? justSpokenOf(turn, hers) : null;
    const own = yours(turn, spoken ? [spoken] : hers);
    return (
      cookNow(found) ??
      forThem(asked, found) ?? {
        parts: [...mustSay(found, told), ...unheard, ...parts, ...(facts.which ? own : []), ...sellBy],
        details: [...(facts.which ? [] : own), ...details],
        sources,
        names: [food],
      }
    );
  }
  // How cold an unknown place is nobody knows: told with it is what the fridge would give.
  const at = where ?? 'fridge';
  const found = guidanceFor({ ...question, where: at });
  const now = cookNow(found);
  if (now) return now;
  const { first, rest, sources } = reasonsOf(found);
  const must = mustSay(found, told);
  const limit = found.row?.limit;
  const keeps = found.reasons.some(({ code }) => code === 'keeps') && limit;
  // How cold that place is nobody here knows: the figure is the fridge's, and no leave to eat it.
  if (facts.elsewhere && found.verdict !== 'throw-out')
    return {
      parts: [
        ...must,
        say('guidance-elsewhere', { place: facts.elsewhere }),
        ...(limit ? [say('guidance-if-fridge', { span: spanWords(limit) })] : []),
      ],
      details: rest,
      sources,
      names: [food],
    };
  const unheard =
    facts.left && found.verdict !== 'throw-out' ? [say('guidance-unheard', { words: facts.left })] : [];
  // A figure nobody could place: how long it keeps is told, and no leave is given.
  if (unheard.length > 0 && !keeps)
    return {
      parts: [...must, ...unheard, ...(limit ? [say('guidance-if-fridge', { span: spanWords(limit) })] : [])],
      details: rest,
      sources,
      names: [food],
    };
  const parts: Say[] = keeps
    ? [
        ...must,
        say('keeps-generic', {
          food,
          where: at,
          kind: found.row?.kind ?? 'keeping',
          listed: found.match.notes.includes('not-in-table') ? 'no' : 'yes',
          span: spanWords(limit),
        }),
        ...(found.match.notes.includes('raw-assumed') ? [say('taken-as-raw')] : []),
        ...otherTable(found),
        ...(facts.asked === 'keep' ? yours(turn, ownHere(asked, at)) : []),
      ]
    : [...must, verdictWords(found, food), ...first];
  return {
    parts: [...parts, ...sellBy],
    details: rest,
    sources,
    names: [food],
  };
};

/** Whom it is for was told, its age was not: what such food is to them is the answer, and its days are beside it. */
const forThem = ({ facts, food }: Asked, found: Assessment): Reply | null =>
  facts.asked === 'still' &&
  (found.verdict === 'how-long' || found.verdict === 'no-figure') &&
  isNotFor(facts, found)
    ? {
        parts: mustSay(found, true),
        details: reasonsOf(found).first,
        sources: sourcesOf(found.cautions),
        names: [food],
      }
    : null;
const isNotFor = ({ risks }: Asked['facts'], { cautions }: Assessment): boolean =>
  cautions.some(({ code }) => code === 'raw-dough' || (risks.length > 0 && code.startsWith('at-risk')));

const since = ({ facts, turn }: Omit<Asked, 'food'>): string | null => {
  if (facts.seconds !== null) return fromNow(turn.clock, -facts.seconds);
  if (facts.overnight) return fromNow(turn.clock, -longTime);
  if (facts.since) return lastOf(bothHalves(facts.since, turn), turn.clock);
  // "On the counter since Sunday": so many whole days at the least.
  const days = facts.when ? daysBetween(facts.when.day, today(turn.clock)) : 0;
  return facts.where === 'counter' && days > 0 ? fromNow(turn.clock, -days * day) : null;
};

/** When it was in the cold again, where that was told; else it is out still. */
const untilWhen = ({ facts, turn }: Asked, from: Instant | null): Instant => {
  const { now } = turn.clock;
  if (!facts.until || from === null) return now;
  const ended = lastOf(bothHalves(facts.until, turn), turn.clock);
  return ended > from ? ended : now;
};

/** "Till midnight", of what is only supposed: from now, or from the hour that was said, to then. */
const supposedSpan = ({ facts, turn }: Asked): number | null => {
  const { until, since: start, seconds: told } = facts;
  if (!until || told !== null) return told;
  const from = start ? nextOf(bothHalves(start, turn), turn.clock) : turn.clock.now;
  const to = nextOf(bothHalves(until, turn), { ...turn.clock, now: from });
  return Math.round((Date.parse(to) - Date.parse(from)) / 1000);
};

const out = (asked: Asked): Reply => {
  const { facts, food } = asked;
  const { region } = asked.turn.kitchen.household;
  // By when it must be cold again, of a time to come: the limit is what helps.
  const from = facts.asked === 'out' && facts.where === 'fridge' ? null : since(asked);
  const turn = { ...asked.turn, clock: { ...asked.turn.clock, now: untilWhen(asked, from) } };
  const air = facts.air ? inScale(turn, facts.air) : null;
  const hot = facts.hot || (air !== null && isHot(air));
  const span = supposedSpan(asked);
  if (facts.mood === 'supposed')
    return supposedOut(asked.turn, {
      food,
      item: null,
      since:
        span !== null
          ? fromNow(asked.turn.clock, -span)
          : facts.overnight && facts.seconds === null
            ? null
            : from,
      long: facts.overnight,
      hot,
    });
  const answer = leftOutGuidance({
    food,
    since: from,
    clock: turn.clock,
    region,
    state: stateOf(asked),
    hot,
    ...(air ? { air } : {}),
  });
  const inHeat = leftOutGuidance({
    food,
    since: from,
    clock: turn.clock,
    region,
    state: stateOf(asked),
    hot: true,
  });
  const warm =
    !hot && inHeat.limitMinutes < answer.limitMinutes ? { hot: seconds(inHeat.limitMinutes * 60) } : {};
  if (from === null || answer.verdict === 'no-figure')
    return {
      parts: [
        answer.verdict === 'no-figure'
          ? say('left-out-no-figure', { name: food })
          : say('left-out-limit', { name: food, limit: seconds(answer.limitMinutes * 60), ...warm }),
      ],
      details: answer.reasons.slice(1).map(reasonWords),
      sources: sourcesOf(answer.reasons),
      names: [food],
    };
  // It is back in the cold: how long of how much is all there is to say.
  if (facts.until && answer.verdict === 'refrigerate-now')
    return {
      parts: answer.reasons.slice(0, 1).map(reasonWords),
      details: answer.reasons.slice(1).map(reasonWords),
      sources: sourcesOf(answer.reasons),
      names: [food],
    };
  return {
    parts: [
      say(`left-out-${answer.verdict}`, {
        name: food,
        cold: 'fridge',
        ...(answer.backBy ? { by: clockTime(answer.backBy) } : {}),
      }),
      ...(facts.overnight && facts.seconds === null ? [] : answer.reasons.slice(0, 1).map(reasonWords)),
    ],
    details: answer.reasons.slice(1).map(reasonWords),
    sources: sourcesOf(answer.reasons),
    names: [food],
  };
};

const refreeze = (asked: Asked): Reply => {
  const { facts, food } = asked;
  const { may, source } = mayRefreeze({ ...questionOf(asked), thawedIn: facts.thawedIn });
  return {
    parts: [say(`guidance-refreeze-${may}`, { name: food })],
    sources: sourcesOf([{ source }]),
    names: [food],
  };
};

const power = (asked: Asked): Reply => {
  const { facts, food, turn } = asked;
  const hours = facts.seconds === null ? null : facts.seconds / 3600;
  // What ice or its want tells does not hang on how long the power was out.
  const known = facts.icy === null ? undefined : fromNow(turn.clock, -longOutage);
  // "Since four" counts as well as "for two hours".
  const from = since(asked) ?? theCut(turn)?.since ?? known;
  if (!from) return { parts: [say('guidance-power-since', { name: food })] };
  const reads = facts.probe ?? facts.air;
  const warm = facts.above && hours !== null ? { hoursAbove40: hours } : {};
  const doors = facts.doors ?? theCut(turn)?.doors ?? null;
  const ifShut = (): Reply | null => {
    const held = findingIn('fridge', 'shut');
    return held.reason === 'door-shut-within-hours'
      ? {
          parts: [say('power-one-if-shut-held', { name: food })],
          sources: sourcesOf([held]),
          names: [food],
        }
      : null;
  };
  // How long it was is how long the power was out: of its own age only days that were told count.
  const { region, state, opened, thawed, dates, atRisk } = questionOf(asked);
  const kept = { region, state, opened, thawed, dates, atRisk };
  const findingIn = (where: Cold, door = doors) => ({
    ...powerCutFor(
      { ...kept, name: food, where },
      {
        ...warm,
        since: from,
        backAt: turn.clock.now,
        doors: door,
        fullness: facts.fullness ?? theCut(turn)?.fullness ?? null,
        iceCrystals: facts.icy,
        ...(reads && !facts.above ? { [`${where}Reads`]: inScale(turn, reads) } : {}),
      },
      turn.clock,
    ),
  });
  const where = coldWhere(asked);
  const found = where === null ? [findingIn('fridge'), findingIn('freezer')] : [findingIn(where)];
  const [past] = found.flatMap((one) => one.past ?? []);
  if (past && found.every((one) => one.past)) return saidOf(past, food);
  // Nobody told how the door was: shut, it held so long, and that is the answer with its condition.
  const shut = where === 'freezer' || doors !== null || reads || facts.icy !== null ? null : ifShut();
  if (shut) return shut;
  const alike = new Set(found.map(({ verdict, reason }) => `${verdict} ${reason}`)).size === 1;
  return {
    parts: found.slice(0, alike ? 1 : 2).map(({ where: at, verdict, reason }) => {
      const places = say('stored-at', { where: at });
      return say('power-one', {
        name: alike ? food : say('food-stored-at', { food, places }),
        many: 'no',
        verdict,
        reason: say(`power-${reason}`),
      });
    }),
    sources: sourcesOf(found),
    names: [food],
  };
};

type Cold = 'fridge' | 'freezer';

/** Where it stood: as said, else as it is on record. Null: nobody said, and each has its answer. */
const coldWhere = ({ facts, turn, slots }: Asked): Cold | null => {
  if (facts.where === 'freezer' || facts.states.includes('frozen') || facts.icy !== null) return 'freezer';
  if (facts.where === 'fridge') return 'fridge';
  const { items, near } = findItems(turn, slots.item);
  const kinds = new Set(near ? [] : items.map(({ placeId }) => storageOf(turn.kitchen, placeId)));
  const [only] = kinds;
  return kinds.size === 1 && (only === 'fridge' || only === 'freezer') ? only : null;
};

const thaw = ({ facts, food, turn }: Asked): Reply => {
  // Refused with what guidance gives in its place.
  if (facts.where === 'counter') return { parts: [say('thaw-counter-no'), say('thaw-ways')], names: [food] };
  const pounds = facts.pounds ?? 1;
  const turkey = isTurkey(food);
  const fridge = fridgeThawHours(pounds);
  const water = waterThawHours(pounds, turkey);
  const inFridge = say('guidance-thaw-fridge', {
    low: seconds(fridge.low * 3600),
    ...(fridge.low === fridge.high ? {} : { high: seconds(fridge.high * 3600) }),
  });
  const inWater = say('guidance-thaw-water', { time: seconds(Math.round(water.high * 3600)) });
  const inWaterToo = regionFacts(turn.kitchen.household.region).waterThaw;
  const ways =
    facts.thawedIn === 'cold-water' && inWaterToo
      ? [inWater]
      : facts.where === 'fridge' || !inWaterToo
        ? [inFridge]
        : [inFridge, inWater];
  return { parts: [...ways, ...(facts.pounds === null ? [say('guidance-thaw-weight')] : [])], names: [food] };
};

/** "It", of which something is known: the record's own answer. */
const ownOr = (turn: Turn, slots: Slots, facts: GuidanceFacts): Reply | null => {
  const plain =
    facts.asked === 'still' &&
    facts.seconds === null &&
    facts.when === null &&
    !facts.overnight &&
    Object.keys(facts.dates).length === 0 &&
    facts.probe === null &&
    !facts.infant &&
    facts.states.every((state) => state === 'cooked' || state === 'opened');
  if (!plain) return null;
  const items = hersOf(turn, slots.item);
  if (items.length === 0) return null;
  const told = ownVerdicts(turn, items);
  const risks =
    facts.risks.length > 0
      ? riskWords(
          turn,
          // As it was called, too: "a runny egg" is one of the eggs, and more than that.
          [...items.map(({ name }) => name), ...(slots.item?.words ? [slots.item.words] : [])],
        )
      : [];
  // Whom it is for was told, and it is not for them: its days are beside the point.
  return risks.length > 0
    ? { ...told, parts: [...risks, say('caution-ask-clinician')], details: [...told.parts] }
    : told;
};

const riskWords = (turn: Turn, names: readonly string[]): Say[] =>
  [
    ...new Set(
      names.flatMap((food) =>
        guidanceFor({
          food,
          where: 'fridge',
          region: turn.kitchen.household.region,
          atRisk: true,
          clock: turn.clock,
        })
          .cautions.filter(({ code }) => code.startsWith('at-risk'))
          .map(({ code }) => code),
      ),
    ),
  ].map((code) => say(`caution-${code}`));

/** Of no food: how long fridge and freezer hold, and until when the fridge, where it was told since when. */
const holding = (asked: Omit<Asked, 'food'>): Reply => {
  const { turn } = asked;
  const { fridge, full, half, source } = holdingHours();
  const hours = (count: number) => seconds(count * 3600);
  const all = say('guidance-power-hours', { fridge: hours(fridge), full: hours(full), half: hours(half) });
  const from = since(asked);
  if (from === null) return { parts: [all], sources: sourcesOf([{ source }]) };
  const until = new Date(Date.parse(from) + fridge * 3600_000).toISOString();
  const past = until <= turn.clock.now;
  return {
    parts: [
      // Open doors warm it sooner: past its hours it is so either way, before them only with the doors shut.
      past
        ? say('guidance-power-past', { until: clockTime(until) })
        : say('guidance-power-until', { until: clockTime(until) }),
    ],
    details: [all],
    sources: sourcesOf([{ source }]),
  };
};

/** So many turns a food that is not on record is what "it" means. */
const spokenLasts = 2;

/** "Can I put them back in the freezer", of the chops that were just told of and are not on record: that, and all that was told of it. */
const ofSpoken = (turn: Turn, { item, guidance: facts }: Slots): Slots | null => {
  const { spoken } = turn.memory;
  if (!spoken || turn.state.turns - spoken.turn > spokenLasts || item?.words || facts?.infant) return null;
  const before = spoken.facts;
  const now: Partial<GuidanceFacts> = facts ?? { asked: 'still' };
  return {
    item: { ...emptyMention, words: spoken.words },
    guidance: {
      ...before,
      ...now,
      states: [...new Set([...before.states, ...(now.states ?? [])])],
      dates: { ...before.dates, ...now.dates },
      where: now.where ?? before.where,
      thawedIn: now.thawedIn ?? before.thawedIn,
      when: now.when ?? before.when,
      seconds: now.seconds ?? before.seconds,
      since: now.since ?? before.since,
      overnight: now.overnight === true || before.overnight,
      reheated: Math.max(now.reheated ?? 0, before.reheated),
      risks: [...new Set([...before.risks, ...(now.risks ?? [])])],
    },
  };
};

/** The same, asked with no fact of guidance in it: "has it gone bad". Null where nothing of the kind was spoken of. */
export const keepsSpoken = (act: Act, turn: Turn): Reply | null => {
  const { item, place, when, asked, duration } = act.slots;
  if (place ?? when ?? item?.touch ?? item?.at) return null;
  if (item && item.pointer === null) return null;
  const slots = ofSpoken(turn, { ...(item ? { item } : {}) });
  if (!slots?.guidance) return null;
  const facts: GuidanceFacts = {
    ...slots.guidance,
    asked: asked === 'freeze' ? 'freeze' : 'still',
    ...(duration === undefined ? {} : { seconds: duration, when: null }),
  };
  return guidance({ intent: 'guidance', slots: { ...slots, guidance: facts } }, turn);
};

export const guidance: Handler = (act, turn) => {
  const slots = ofSpoken(turn, act.slots) ?? act.slots;
  const reply = guidanceOf({ ...act, slots }, turn);
  const { item, guidance: facts, noFood } = slots;
  const words = item?.words;
  if (!words || !facts || noFood || reply.memory?.items) return reply;
  const hers = hersOf(turn, item);
  if (hers.length > 0) return { ...reply, memory: { ...about(turn, hers), ...reply.memory } };
  return { ...reply, memory: { ...reply.memory, spoken: { words, facts, turn: turn.state.turns } } };
};

const guidanceOf: Handler = (act, turn) => {
  const { slots } = act;
  const facts = slots.guidance;
  if (!facts) return { parts: [], ask: { slot: 'item', question: say('ask-keeps'), expecting: 'item' } };
  if (facts.asked === 'power' && (!slots.item || slots.noFood) && !facts.infant)
    return holding({ turn, slots, facts });
  if (slots.noFood) return inNoTable(slots);
  if (facts.asked === 'fridge-reads') return reading('fridge', { turn, slots, facts });
  if (facts.asked === 'freezer-reads') return reading('freezer', { turn, slots, facts });
  if (facts.asked === 'boil') {
    const { minutes, source } = homeCannedBoil(facts.feet ?? 0);
    return {
      parts: [
        facts.feet === null
          ? say('guidance-boil', { time: seconds(minutes * 60) })
          : say('guidance-boil-there', { time: seconds(minutes * 60) }),
      ],
      sources: sourcesOf([{ source }]),
    };
  }
  if (facts.asked === 'cool') return cooling({ facts, turn });
  if (facts.asked === 'claim' && facts.claim) return claim(turn, facts.claim);
  if (facts.asked === 'label' && facts.labels.length > 0) return labels(turn, facts.labels);
  if (facts.asked === 'chill-hot') return chillHot();
  if (facts.asked === 'from-frozen')
    return { parts: [say('thaw-cook-from-frozen')], sources: sourcesOf([thawing().fromFrozen]) };
  if (facts.asked === 'code') return code(turn, facts.code ?? '');
  const slow = facts.method === 'slow-cooker' ? slowCooker({ turn, slots, facts }) : null;
  if (slow) return slow;
  const own =
    withRecord(turn, slots, facts, questionOf({ turn, slots, facts, food: '' })) ?? ownOr(turn, slots, facts);
  if (own) return own;
  const known =
    turn.memory.items.length === 1 ? turn.kitchen.items.get(turn.memory.items[0]!)?.name : undefined;
  const spoken = facts.which ? justSpokenOf(turn, hersOf(turn, slots.item))?.name : undefined;
  const food =
    spoken ?? slots.item?.words ?? (slots.item?.pointer || !slots.item ? known : undefined) ?? slots.words;
  if (!food) return { parts: [], ask: { slot: 'item', question: say('ask-keeps'), expecting: 'item' } };
  const asked: Asked = { turn, slots, facts, food };
  switch (facts.asked) {
    case 'out':
      return facts.mood !== 'supposed' && isHers(turn, slots) && tellsOut(facts)
        ? leftOut(outAct(asked), turn)
        : out(asked);
    case 'refreeze':
      return pastAlready(asked) ?? refreeze(asked);
    case 'freeze':
      return pastAlready(asked) ?? mayBeFrozen(turn, slots, facts.dates.useBy?.day ?? null);
    case 'cook':
      return cookTemperature(
        { intent: 'cook-temperature', slots: { item: { ...(slots.item ?? emptyMention), words: food } } },
        turn,
      );
    case 'probe':
      return facts.probe ? probe(asked) : keeping(asked);
    case 'roast':
      return roasting(asked);
    case 'power':
      return power(asked);
    case 'reheat':
      return facts.infant
        ? warmInfant(food)
        : (pastAlready(asked) ??
            neverAgain(asked) ??
            heatingOf(asked) ??
            reheat({ intent: 'reheat', slots }, turn));
    case 'mix':
      return mixing(asked);
    case 'thaw':
      return thaw(asked);
    default:
      return feeding(asked) ?? neverAgain(asked) ?? keeping(asked);
  }
};

/** "Takeaway rice from last night, okay to heat up": of what no record has, how long it keeps and how hot it is to be. */
const heatingOf = (asked: Asked): Reply | null => {
  const { facts, slots, turn, food } = asked;
  const aged = facts.seconds !== null || facts.when !== null || Object.keys(facts.dates).length > 0;
  if (!aged || !slots.item?.words || hersOf(turn, slots.item).length > 0) return null;
  const kept = keeping(asked);
  const { region } = turn.kitchen.household;
  const { temperature } = heatedThrough({ food, region, reheating: true });
  return { ...kept, parts: [...kept.parts, say('inside-too', { temperature: heatSaid(turn, temperature) })] };
};

/** Too slow for what is cooked already, and for what is frozen: whichever food it is. */
const slowCooker = ({ facts }: Omit<Asked, 'food'>): Reply | null => {
  if (facts.asked !== 'reheat' && facts.asked !== 'still') return null;
  const frozen = facts.states.includes('frozen') && !facts.states.includes('cooked');
  return frozen
    ? {
        parts: [say('guidance-slow-cooker-frozen')],
        sources: sourcesOf([hazardNamed('slow-cooker-frozen')]),
      }
    : facts.reheating
      ? {
          parts: [say('refusal-slow-cooker')],
          sources: sourcesOf([hazardNamed('slow-cooker-reheating')]),
        }
      : null;
};

/**
 * Refused of any such food, whichever of it is meant: a second time, in a slow cooker, or at all. "I got takeaway rice
 * yesterday, can I microwave it": how old it is does not matter where it is never to be heated.
 */
const neverAgain = ({ facts, food, turn }: Asked): Reply | null => {
  const plan = reheatPlan({
    food,
    method: facts.method === 'slow-cooker' ? 'slow cooker' : 'hob',
    from: 'fridge',
    region: turn.kitchen.household.region,
    watts: null,
    timesReheated: facts.reheated,
  });
  if (plan.kind !== 'refused') return null;
  // How long it keeps, and whether it is good still, has an answer however it may be heated.
  const ofHeating = facts.asked === 'reheat' || (facts.asked === 'still' && facts.reheating);
  const outright =
    plan.refusal === 'takeaway-rice'
      ? ofHeating
      : facts.asked !== 'still' &&
        facts.asked !== 'keep' &&
        (facts.reheated > 0 || plan.refusal === 'slow-cooker');
  return outright
    ? { parts: [say(`refusal-${plan.refusal}`)], sources: sourcesOf([plan, ...plan.reasons]), names: [food] }
    : null;
};

/** Nobody here looked up how formula is mixed: its label has that. What is known is what not to do with it. */
const mixing = ({ food }: Asked): Reply =>
  isHumanMilk(food)
    ? warmInfant(food)
    : {
        parts: [say('guidance-mix-formula')],
        details: [say('caution-infant-no-microwave')],
        names: [food],
      };

const warmInfant = (food: string): Reply => ({
  parts: [say('guidance-warm-infant'), say('caution-infant-no-microwave')],
  names: [food],
});

/** A bottle that was begun, or made up at a time that was told: no longer than that, whatever else is so. */
const feeding = ({ facts, food, turn }: Asked): Reply | null => {
  if (!facts.infant) return null;
  const milk = isHumanMilk(food) ? 'human' : 'formula';
  if (milk === 'formula' && (facts.since !== null || facts.feedSince !== null)) return bottle(facts, turn);
  if (!facts.feeding) return null;
  const limit = feedLimit(milk);
  if (limit === null) return null;
  if (facts.seconds === null)
    return facts.dates.opened || facts.when
      ? null
      : {
          parts: [say('guidance-feed-limit', { limit: seconds(limit.minutes * 60), of: milk })],
          sources: sourcesOf([limit]),
        };
  const over = facts.seconds > limit.minutes * 60;
  return {
    parts: [
      say(over ? 'guidance-feed-over' : 'guidance-feed-within', { limit: seconds(limit.minutes * 60) }),
    ],
    sources: sourcesOf([limit]),
  };
};

/** Made up and begun by the clock; kept cold and not begun, its days in the fridge count instead. */
const bottle = (
  { since: made, feedSince, where, feeding: begun }: GuidanceFacts,
  turn: Turn,
): Reply | null => {
  if (where !== null && where !== 'counter' && !begun) return null;
  const at = (time: string): string => lastOf(bothHalves(time, turn), turn.clock);
  const feedBegan = feedSince === null ? null : at(feedSince);
  const madeAt = made === null ? feedBegan : at(made);
  if (madeAt === null) return null;
  const { until, source } = formulaUntil({ made: madeAt, feedBegan });
  return {
    parts: [
      until <= turn.clock.now
        ? say('guidance-bottle-over')
        : say('guidance-bottle-until', { by: clockTime(until), begun: feedBegan === null ? 'no' : 'yes' }),
    ],
    sources: sourcesOf([{ source }]),
  };
};

const isHers = (turn: Turn, { item }: Slots): boolean => findItems(turn, item).items.length === 1;
const tellsOut = (facts: GuidanceFacts): boolean =>
  facts.seconds !== null || facts.overnight || facts.since !== null;
const outAct = ({ slots, facts, turn }: Asked) => ({
  intent: 'left-out' as const,
  slots: {
    ...(slots.item ? { item: slots.item } : {}),
    ...(facts.seconds !== null ? { duration: facts.seconds } : {}),
    ...(facts.since ? { time: facts.since } : {}),
    ...(facts.overnight && facts.seconds === null ? { overnight: true as const } : {}),
    ...(facts.mood === 'reported' ? { asked: 'reported' } : {}),
    ...(facts.hot ? { setting: 'hot' } : {}),
    ...(facts.air ? { degrees: { value: facts.air.value, scale: inScale(turn, facts.air).scale } } : {}),
  },
});
