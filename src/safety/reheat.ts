/**
 * How to heat something, one act a step, the caution before the act. The cook's own instructions come
 * first; the rules of the method fill what they leave out, and a temperature ends every one.
 */
import type { HeatMethod, Preparation, Region } from '../kitchen/model.js';
import type { Assessment, Caution, CookState, Fact, Reason, ReheatPlan, Step, Temperature } from './api.js';
import { caution, hazardNamed } from './cautions.js';
import type { CautionCode, ReasonCode, StepCode } from './codes.js';
import { kindOf, matchFood } from './match.js';
import { scalePortions, scaleTime } from './microwave.js';
import { regionFacts } from './regions/index.js';
import { cite, safetyTables } from './tables.js';
import type { SafetyTables } from './tables.js';
import { cookTemperature } from './temperature.js';

export interface ReheatQuestion {
  readonly food: string;
  readonly method: HeatMethod;
  readonly from: 'fridge' | 'freezer';
  readonly region: Region | null;
  /** The household's microwave. */
  readonly watts: number | null;
  readonly portions?: number | null;
  readonly preparations?: readonly Preparation[];
  readonly timesReheated?: number;
  readonly state?: CookState;
  /** What guidance says of it today, if it was asked. */
  readonly assessment?: Assessment | null;
  /** Said before anything else: allergens, spice, recorded cautions. */
  readonly first?: readonly Caution[];
}

/** Kinds that are stirred; the rest is turned. */
const STIRRED =
  /soup|stew|stock|gravy|sauce|rice|grain|beans|pasta-dish|cooked-dish|meat-dish|vegetables|custard|dinner|baby|general/;
const LIQUID = /soup|stock|gravy|sauce|milk/;
const INFANT = /^(formula|human-milk)/;

const reason = (code: ReasonCode, args: Reason['args'] = {}, source: Reason['source'] = null): Reason => ({
  code,
  args,
  source,
});

interface StepParts {
  readonly args?: Readonly<Record<string, Fact>>;
  readonly caution?: CautionCode;
  readonly seconds?: number | null;
  readonly temperature?: Temperature | null;
  readonly source?: Step['source'];
  readonly words?: string;
}
const step = (code: StepCode, parts: StepParts = {}): Step => ({
  code,
  args: parts.args ?? {},
  caution: parts.caution === undefined ? null : caution(parts.caution),
  seconds: parts.seconds ?? null,
  temperature: parts.temperature ?? null,
  source: parts.source ?? null,
  words: parts.words ?? null,
});

/** The preparation told for this method, best one for where it comes from. */
const toldFor = (question: ReheatQuestion): Preparation | null => {
  const told = (question.preparations ?? []).filter((each) => each.method === question.method);
  return (
    told.find((each) => each.from === question.from) ??
    told.find((each) => each.from === 'any') ??
    told[0] ??
    null
  );
};

/** How long, as far as it is known, and how that was reckoned. */
const timeFor = (
  question: ReheatQuestion,
  told: Preparation | null,
  tables: SafetyTables,
): { readonly seconds: number | null; readonly reasons: readonly Reason[] } => {
  if (told?.minutes === null || told?.minutes === undefined) return { seconds: null, reasons: [] };
  const reasons: Reason[] = [];
  let seconds = told.minutes * 60;
  if (question.from === 'freezer' && told.from === 'fridge') {
    const rule = tables.thawing.fromFrozen;
    seconds *= rule.timeFactor;
    reasons.push(reason('first-check', {}, cite(tables, rule)));
  }
  if (question.method === 'microwave') {
    if (told.watts !== null && told.watts !== question.watts) {
      const scaled = scaleTime({ seconds, fromWatts: told.watts, toWatts: question.watts }, tables);
      if (scaled === null) return { seconds: null, reasons: [...reasons, reason('watts-unknown')] };
      seconds = scaled.seconds;
      const watts = { from: told.watts, to: question.watts ?? 0 };
      reasons.push(...scaled.notes.map((note) => reason(note, watts, cite(tables, tables.microwave.rules))));
    }
    if (
      told.portions !== null &&
      question.portions !== null &&
      question.portions !== undefined &&
      told.portions !== question.portions
    ) {
      const scaled = scalePortions(seconds, told.portions, question.portions, tables);
      if (scaled === null) return { seconds: null, reasons: [...reasons, reason('portions-beyond')] };
      seconds = scaled.seconds;
      const latest = { kind: 'duration', seconds: scaled.latestSeconds ?? scaled.seconds } as const;
      reasons.push(reason('doubled-portions', { latest }, cite(tables, tables.microwave.portions)));
    }
  }
  return { seconds: Math.ceil(seconds / 5 - 1e-9) * 5, reasons };
};

/** A steam caution only where steam first gets out. */
const microwaveSteps = (
  kindId: string,
  told: Preparation | null,
  seconds: number | null,
  question: ReheatQuestion,
  tables: SafetyTables,
): Step[] => {
  const source = cite(tables, { source: 'fsis-microwave', section: 'Cooking', basis: 'copy' });
  const stirred = STIRRED.test(kindId);
  const watts: Record<string, Fact> = question.watts === null ? {} : { watts: question.watts };
  const mix = step(stirred ? 'stir' : 'turn', { caution: 'hot-steam', source });
  const liquid: StepParts = LIQUID.test(kindId) ? { caution: 'superheated' } : {};
  const heating =
    seconds === null
      ? [
          step('set-microwave-short', { args: watts, seconds: 60, ...liquid }),
          mix,
          step('heat-again', { seconds: 60 }),
        ]
      : seconds < 60
        ? [step('set-microwave', { args: watts, seconds, ...liquid }), mix]
        : [
            step('set-microwave', { args: watts, seconds: Math.ceil(seconds / 10) * 5, ...liquid }),
            mix,
            step('heat-again', { seconds: seconds - Math.ceil(seconds / 10) * 5 }),
          ];
  // A standing time somebody gave is kept as it is: standing never scales.
  const stand = told?.standMinutes ? told.standMinutes * 60 : tables.microwave.standSeconds.seconds;
  return [
    step('move-to-dish'),
    ...(question.from === 'freezer' && stirred ? [step('break-up')] : []),
    step('cover-vent', { source }),
    ...heating,
    step('stand', { seconds: stand, source: cite(tables, tables.microwave.standSeconds) }),
  ];
};

/** Only with a setting somebody told: guidance here has none of its own. */
const preheat = (told: Preparation | null): Step[] =>
  told?.heat ? [step('preheat', { temperature: told.heat })] : [];

const methodSteps = (
  kindId: string,
  told: Preparation | null,
  seconds: number | null,
  question: ReheatQuestion,
  tables: SafetyTables,
): Step[] => {
  const stirred = STIRRED.test(kindId);
  switch (question.method) {
    case 'microwave':
      return microwaveSteps(kindId, told, seconds, question, tables);
    case 'oven':
      return [
        ...preheat(told),
        step('move-to-dish'),
        step('cover-foil'),
        step('into-oven', { caution: 'hot-dish', seconds }),
        step(stirred ? 'stir' : 'turn', { caution: 'hot-steam' }),
      ];
    case 'air fryer':
      return [
        step('into-air-fryer', { seconds, temperature: told?.heat ?? null }),
        step('shake-basket', { caution: 'hot-dish' }),
      ];
    case 'hob':
      return LIQUID.test(kindId) || STIRRED.test(kindId)
        ? [
            step('into-pan'),
            step('add-splash'),
            step(LIQUID.test(kindId) ? 'bring-to-boil' : 'simmer', { caution: 'hot-steam', seconds }),
            step('stir'),
          ]
        : [step('into-pan', { caution: 'hot-oil' }), step('turn', { caution: 'hot-dish', seconds })];
    case 'steamer':
      return [step('into-steamer', { caution: 'hot-steam', seconds })];
    case 'toaster':
      return [step('into-toaster', { caution: 'hot-dish', seconds })];
    case 'slow cooker':
    case 'none':
      return [];
  }
};

const refuse = (
  refusal: Extract<ReheatPlan, { kind: 'refused' }>['refusal'],
  ...reasons: Reason[]
): ReheatPlan => ({
  kind: 'refused',
  refusal,
  reasons,
  source: reasons[0]?.source ?? null,
});

/**
 * Steps to reheat, or why not. US: leftovers to 165 °F, soups and sauces to a rolling boil.
 * UK: seventy degrees Celsius for two minutes, once only. With no region chosen: the hotter, and once.
 */
export const reheatPlan = (question: ReheatQuestion, tables = safetyTables()): ReheatPlan => {
  const match = matchFood(
    question.food,
    { where: question.from, state: question.state ?? null, homeMade: true },
    tables,
  );
  const kind = kindOf(match, tables);
  const { reheatOnce, riceByItself } = regionFacts(question.region);
  const once = reason('reheat-once', {}, cite(tables, tables.timeRules.ukReheatOnce));
  if (question.assessment?.verdict === 'throw-out')
    return refuse('past-guidance', ...question.assessment.reasons);
  // Neither microwaved nor boiled nor fried: a baby's milk is warmed in warm water, if at all.
  if (INFANT.test(kind.id)) return refuse('no-microwave-for-infants', reason('infant-food'));
  if (riceByItself && kind.id === 'takeaway-rice') return refuse('takeaway-rice', once);
  if (reheatOnce && (question.timesReheated ?? 0) >= tables.timeRules.ukReheatOnce.times)
    return refuse('reheated-already', once);
  if (question.method === 'slow cooker') {
    const { source } = hazardNamed('slow-cooker-reheating', tables);
    return { kind: 'refused', refusal: 'slow-cooker', reasons: [], source };
  }
  if (question.method === 'none') return refuse('method-unknown');
  if (question.method === 'toaster' && kind.hazard !== 'none' && kind.id !== 'pizza')
    return refuse('not-for-reheating');

  const told = toldFor(question);
  const { seconds, reasons } = timeFor(question, told, tables);
  const wanted = cookTemperature(
    { food: question.food, region: question.region, state: kind.state, reheating: true },
    tables,
  );
  const own = told?.steps ?? [];
  // The cook's own steps stand for the preparing and heating; standing and probing are added to any.
  const generic = methodSteps(kind.id, told, seconds, question, tables);
  const steps: Step[] = own.length > 0 ? ownSteps(own, told, seconds, question, tables) : generic;
  const boil = wanted.boil && question.method === 'hob';
  if (wanted.boil && !steps.some((each) => each.code === 'bring-to-boil')) {
    steps.push(step('bring-to-boil', { caution: 'hot-steam', source: wanted.source }));
  }
  if (kind.room !== 'stable' || kind.state === 'cooked') {
    steps.push(
      wanted.holdSeconds === null
        ? step('probe', { caution: 'hot-steam', temperature: wanted.temperature, source: wanted.source })
        : step('probe-hold', {
            caution: 'hot-steam',
            temperature: wanted.temperature,
            seconds: wanted.holdSeconds,
            source: wanted.source,
          }),
      step('more-time', { args: { more: { kind: 'duration', seconds: 60 } } }),
    );
  }
  steps.push(step('serve', { caution: 'hot-dish' }));

  const unsure: Reason[] = [];
  if (question.assessment?.verdict === 'unknown') unsure.push(reason('date-unknown'));
  if (question.region === null) unsure.push(reason('stricter-region'));
  if (reheatOnce) unsure.push(once);
  return {
    kind: 'plan',
    method: question.method,
    from: question.from,
    first: [
      ...(question.first ?? []),
      ...(told === null && (question.method === 'oven' || question.method === 'air fryer')
        ? [caution('follow-label')]
        : []),
    ],
    steps,
    target: { temperature: wanted.temperature, boil: boil || wanted.boil, holdSeconds: wanted.holdSeconds },
    setting: {
      heat: told?.heat ?? null,
      watts: question.method === 'microwave' ? question.watts : null,
      seconds,
    },
    reasons: [...reasons, ...unsure],
  };
};

/** What makes food hot, in a cook's own words. */
const HEATS = /\b(heat|warm|microwave|cook|boil|simmer|bake|roast|fry|steam|toast|grill|zap|nuke)/i;
/** What lets steam out: never covering, nor opening before anything is hot. */
const OPENS =
  /\b(uncover|unwrap|open|lift|peel|drain|stir|turn|flip|break up)|\b(take|pull|remove)\b.*\b(lid|cover|foil|film|wrap|plate|off|out)\b/i;
const STEAMS = /\b(boil|simmer|steam)/i;
const OVEN = /\b(oven|tray|griddle)\b/i;
const OIL = /\boil\b/i;
const SETS_HEAT = /\b(degrees?|gas mark|preheat|heat the oven|\d{3})\b/i;
const RESTS = /\b(stand|rest|cool|wait|soak|sit|thaw|defrost)/i;
const TELLS_A_TIME = /\b(second|minute|hour|min|sec)s?\b/i;

/** The caution that belongs before this act; `hot`: something was heated before it. */
const ownCaution = (words: string, hot: boolean): CautionCode | null => {
  if (OIL.test(words)) return 'hot-oil';
  if (STEAMS.test(words)) return 'hot-steam';
  const opens = OPENS.exec(words);
  if (!opens) return OVEN.test(words) && hot ? 'hot-dish' : null;
  const heats = HEATS.exec(words);
  return hot || (heats !== null && heats.index < opens.index) ? 'hot-steam' : null;
};

const ownWords = (own: readonly string[]): Step[] =>
  own.map((words, at) => {
    const code = ownCaution(
      words,
      own.slice(0, at).some((before) => HEATS.test(before)),
    );
    return step('own-words', code === null ? { words } : { words, caution: code });
  });

/** Steps in the cook's own words, one act each, and the heating they are for if they only gave its figures. */
const ownSteps = (
  own: readonly string[],
  told: Preparation | null,
  seconds: number | null,
  question: ReheatQuestion,
  tables: SafetyTables,
): Step[] => {
  // Words that tell the time themselves are not followed by the same heating once more.
  // "Put it on the rack for fifty minutes" heats; standing and cooling do not.
  const tellsTime = own.some(
    (words) => TELLS_A_TIME.test(words) && (HEATS.test(words) || !RESTS.test(words)),
  );
  const timed =
    seconds === null || tellsTime
      ? []
      : question.method === 'microwave'
        ? [step('set-microwave', { args: question.watts === null ? {} : { watts: question.watts }, seconds })]
        : question.method === 'oven'
          ? [step('into-oven', { caution: 'hot-dish', seconds, temperature: told?.heat ?? null })]
          : question.method === 'air fryer'
            ? [step('into-air-fryer', { seconds, temperature: told?.heat ?? null })]
            : [step('simmer', { caution: 'hot-steam', seconds })];
  const standing =
    question.method === 'microwave'
      ? [
          step('stand', {
            seconds: told?.standMinutes ? told.standMinutes * 60 : tables.microwave.standSeconds.seconds,
            source: cite(tables, tables.microwave.standSeconds),
          }),
        ]
      : told?.standMinutes === null || told?.standMinutes === undefined
        ? []
        : [step('stand', { seconds: told.standMinutes * 60 })];
  // The oven's setting comes before all, unless her own words say it.
  const setting =
    question.method === 'oven' && !own.some((words) => SETS_HEAT.test(words)) ? preheat(told) : [];
  const heated = timed.length > 0 && told?.heat ? [] : setting;
  return [...heated, ...ownWords(own), ...timed, ...standing];
};
