/** A question of guidance in any wording: what is asked, of which food, and all that was told with it. */
import { plusDays, plusMonths, today } from '../../terms/dates.js';
import { asAmount, asDate, asNumber, asRaw } from '../meaning-parts.js';
import { emptyMention, type Act, type Mention, type SaidDate } from '../intents.js';
import { foodOf, OF_NAMES } from './food.js';
import { agesOfPeople, risksIn } from './at-risk.js';
import type {
  Asked,
  CookedOver,
  FoodState,
  GuidanceFacts,
  Heard,
  KeptAt,
  LabelKind,
  Reading,
  TimedReading,
} from './facts.js';
import {
  asks,
  asksAnywhere,
  foodsIn,
  has,
  isWord,
  moodOf,
  saysWord,
  spotsOf,
  type Sentence,
} from './sentence.js';
import { matchesIn, type Match } from './spots.js';

const values = <T extends string>(sentence: Sentence, kind: string): readonly T[] => [
  ...new Set(spotsOf(sentence, kind).map(({ value }) => value as T)),
];

const gramsOf: Readonly<Record<string, number>> = {
  pound: 453.592,
  kilogram: 1000,
  kilo: 1000,
  gram: 1,
  ounce: 28.3495,
};
const gramsInPound = 453.592;

const poundsIn = (sentence: Sentence): number | null => {
  const { tokens, rules } = sentence;
  for (const { from, to, value } of matchesIn(tokens, rules, 'builtin:grammar/amount')) {
    // "Minutes a pound" weighs nothing.
    if (spotsOf(sentence, 'ask').some((asked) => asked.from < to && from < asked.to)) continue;
    const amount = asAmount(value);
    const grams = gramsOf[amount.unit];
    if (grams) return (amount.value * grams) / gramsInPound;
  }
  return null;
};

/** "A week ago", "for two weeks", "ten days": seconds; days of the calendar go by dates. */
const spansIn = ({ tokens, rules }: Sentence): readonly Match[] =>
  matchesIn(tokens, rules, 'builtin:grammar/duration');

/** A number and where it stands; "one sixty-three" is said for a hundred and sixty-three. */
const figures = ({ tokens, rules }: Sentence): readonly { value: number; from: number; to: number }[] => {
  const all = matchesIn(tokens, rules, 'builtin:grammar/number').flatMap(({ from, to, value }) =>
    typeof value === 'number' ? [{ from, to, value }] : [],
  );
  return all.map((one, at) => {
    const next = all[at + 1];
    return one.value < 3 && next?.from === one.to && next.value >= 10 && next.value < 100
      ? { from: one.from, to: next.to, value: one.value * 100 + next.value }
      : one;
  });
};

/** Degrees below and above which nobody's food is read hot, an appliance cold: other numbers are counts. */
const foodBetween = [90, 215] as const;
const applianceBetween = [-30, 80] as const;

/** Fridge or freezer by itself, no food in it. */
const applianceIn = (sentence: Sentence): boolean =>
  spotsOf(sentence, 'at').some(({ value }) => value === 'fridge' || value === 'freezer') &&
  foodsIn(sentence).length === 0;

/**
 * "It reads one sixty-three", "the salmon's one forty-seven in the thick part", "is thirty-eight right for a
 * fridge": a temperature without its scale or its degrees. It is one by the word before it, by the word after
 * it, or by what it is said of.
 */
const bareReading = (sentence: Sentence): Reading | null => {
  const { tokens } = sentence;
  const appliance = applianceIn(sentence);
  const [low, high] = appliance ? applianceBetween : foodBetween;
  const foods = foodsIn(sentence);
  const ends = (at: number): boolean =>
    tokens[at] === undefined || isWord(sentence, 'afterfigure', tokens[at]);
  const reads = (at: number): boolean =>
    spotsOf(sentence, 'reads').some(({ to }) => at === to || at === to + 1);
  const found = figures(sentence).find(({ value, from, to }) => {
    if (reads(from)) return value >= (appliance ? low : 20);
    if (!ends(to) || value < low || value > high) return false;
    const linked = isWord(sentence, 'link', tokens[from - 1]);
    // "The casserole bubbles, but it's one fifty in the middle": of what was named before.
    const pronoun =
      isWord(sentence, 'pointer', tokens[from - 2]) && foods.some((food) => food.to <= from - 2);
    const of = appliance || pronoun || foods.some((food) => food.to === from - 1 || food.to === from - 2);
    const enough =
      asks(sentence) &&
      spotsOf(sentence, 'done').some((spot) => spot.from === to && (foods.length > 0 || appliance));
    return enough || (linked && of);
  });
  return found ? { value: found.value, scale: null } : null;
};

/** Colder or hotter than this nobody's kitchen is: no reading of the air. */
const airBetween = [30, 130] as const;

/** "It's ninety-two out here": the air, without its degrees. */
const bareAir = (sentence: Sentence): Reading | null => {
  const { tokens, rules } = sentence;
  const found = matchesIn(tokens, rules, 'builtin:grammar/number').find(
    ({ to, value }) =>
      typeof value === 'number' &&
      value >= airBetween[0] &&
      value <= airBetween[1] &&
      spotsOf(sentence, 'air').some(({ from }) => from === to),
  );
  return typeof found?.value === 'number' ? { value: found.value, scale: null } : null;
};

/** "Above forty degrees for three hours". */
const aboveIn = (sentence: Sentence): boolean =>
  matchesIn(sentence.tokens, sentence.rules, 'builtin:grammar/temperature').some(({ from }) =>
    spotsOf(sentence, 'above').some(({ to }) => to === from),
  );

interface Temperatures {
  readonly air: Reading | null;
  readonly probe: Reading | null;
}

const temperaturesIn = (sentence: Sentence): Temperatures => {
  const { tokens, rules } = sentence;
  const found = matchesIn(tokens, rules, 'builtin:grammar/temperature').map(({ from, to, value }) => {
    const { value: degrees, scale } = asRaw(value, 'temperature');
    const of: Reading = {
      value: asNumber(degrees, 'degrees'),
      scale: scale === 'fahrenheit' || scale === 'celsius' ? scale : null,
    };
    return { from, to, of };
  });
  let air: Reading | null = null;
  let probe: Reading | null = null;
  for (const { from, to, of } of found) {
    const inAir = spotsOf(sentence, 'air').some((spot) => spot.from >= from - 4 && spot.from <= to + 3);
    const reading =
      spotsOf(sentence, 'probe').some((spot) => spot.to <= from && from - spot.to <= 4) ||
      spotsOf(sentence, 'probe').some(
        (spot) =>
          /inside|middle|internal|core/.test(tokens.slice(spot.from, spot.to).join(' ')) &&
          spot.from >= to &&
          spot.from - to <= 3,
      );
    const outdoors = spotsOf(sentence, 'at').some(({ value }) => value === 'counter');
    if (reading && !outdoors) probe ??= of;
    else if (inAir || outdoors) air ??= of;
    else probe ??= of;
  }
  if (found.length > 0) return { air, probe };
  air = bareAir(sentence);
  return { air, probe: air ? null : bareReading(sentence) };
};

const scaleOf = (scale: unknown): Reading['scale'] =>
  scale === 'fahrenheit' || scale === 'celsius' ? scale : null;

/**
 * "It was one-forty at four and it's eighty now": readings in the order they were taken, each with its hour;
 * null is now, or not told. Of one reading nothing can be said of how fast it fell.
 */
const readingsIn = (sentence: Sentence): readonly TimedReading[] => {
  const { tokens, rules } = sentence;
  const explicit = matchesIn(tokens, rules, 'builtin:grammar/temperature').map(({ from, to, value }) => {
    const { value: degrees, scale } = asRaw(value, 'temperature');
    return {
      from,
      to,
      value: asNumber(degrees, 'degrees'),
      scale: scaleOf(scale),
    };
  });
  const linked = figures(sentence).flatMap((one) =>
    isWord(sentence, 'link', tokens[one.from - 1]) &&
    one.value >= 35 &&
    one.value <= foodBetween[1] &&
    isWord(sentence, 'afterfigure', tokens[one.to] ?? 'now') &&
    !explicit.some(({ from, to }) => from < one.to && one.from < to)
      ? [{ ...one, scale: null }]
      : [],
  );
  const times = timesIn(sentence);
  const found = [...explicit, ...linked].sort((a, b) => a.from - b.from);
  return found.map(({ value, scale, to }, at) => {
    const next = found[at + 1]?.from ?? tokens.length;
    return { value, scale, time: times.find(({ from }) => from >= to && from < next)?.value ?? null };
  });
};

const kinds = ['made', 'bought', 'opened', 'frozen', 'thawed'] as const;
type Dates = { -readonly [K in keyof GuidanceFacts['dates']]: GuidanceFacts['dates'][K] };

const aDay = 86_400;

/** "Three days past its best before". */
const pastLabels = (
  sentence: Sentence,
  spans: readonly Match[],
): readonly { readonly span: Match; readonly kind: keyof Dates }[] =>
  spans.flatMap((span) => {
    const past = spotsOf(sentence, 'pastof').find(({ from }) => from === span.to);
    const label = past
      ? spotsOf(sentence, 'label').find(({ from }) => from >= past.to && from - past.to <= 1)
      : // "Past its use by by two days".
        spotsOf(sentence, 'label').find(
          ({ from, to }) =>
            to <= span.from &&
            span.from - to <= 2 &&
            spotsOf(sentence, 'pastof').some((one) => one.to <= from),
        );
    return label ? [{ span, kind: label.value as keyof Dates }] : [];
  });

const isPast = (sentence: Sentence, { from, to }: Match): boolean => {
  const before = spotsOf(sentence, 'fromday').some((one) => one.to === from || one.from === from);
  return (
    before ||
    isWord(sentence, 'agoold', sentence.tokens[to - 1]) ||
    isWord(sentence, 'agoold', sentence.tokens[to])
  );
};

/** "For three months": days of the calendar, not of seconds. */
const monthsIn = (
  sentence: Sentence,
  taken: readonly Match[],
): { readonly day: string; readonly of: Match } | null => {
  for (const number of matchesIn(sentence.tokens, sentence.rules, 'builtin:grammar/number')) {
    const { to, value } = number;
    const unit = spotsOf(sentence, 'spanmonths').find(({ from }) => from === to);
    if (!unit || typeof value !== 'number' || taken.some((one) => one.from < unit.to && number.from < one.to))
      continue;
    const months = value * Number(unit.value);
    return { day: plusMonths(today(sentence.clock), -months), of: { ...number, to: unit.to } };
  }
  return null;
};

/** "A week ago Monday": the Monday on or before that day, and not the last one. */
const saidOf = (sentence: Sentence, read: Match): SaidDate => {
  const said = asDate(read.value);
  if (!isWord(sentence, 'agoold', sentence.tokens[read.to - 1])) return said;
  const day = matchesIn(sentence.tokens, sentence.rules, 'builtin:grammar/date?lean=past').find(
    ({ from }) => from === read.to,
  );
  if (!day) return said;
  let named = asDate(day.value).day;
  while (named > said.day) named = plusDays(named, -7);
  return { day: named };
};

/** Each date with what was done that day: the nearest deed before it, else the nearest after. */
const datesIn = (
  sentence: Sentence,
): { readonly dates: Dates; readonly when: SaidDate | null; readonly taken: readonly Match[] } => {
  const { tokens, rules } = sentence;
  const deeds = [
    ...spotsOf(sentence, 'did').map(({ value, from, to }) => ({ kind: value, from, to })),
    ...spotsOf(sentence, 'label').map(({ value, from, to }) => ({ kind: value, from, to })),
  ];
  const dates: Dates = {};
  let when: SaidDate | null = null;
  const taken: Match[] = [];
  const spans = spansIn(sentence);
  for (const { span, kind } of pastLabels(sentence, spans)) {
    dates[kind] ??= {
      day: plusDays(today(sentence.clock), -Math.round(asNumber(span.value, 'span') / aDay)),
    };
    taken.push(span);
  }
  for (const { from, to, weight } of matchesIn(tokens, rules, 'builtin:grammar/date?lean=past')) {
    if (weight < 0.5 && to - from < 2) continue;
    if (taken.some((one) => one.from < to && from < one.to)) continue;
    // The weekday of "a week ago Monday" is told with the week.
    if (taken.some((one) => one.to === from && isWord(sentence, 'agoold', tokens[from - 1]))) continue;
    // "Nine hours ago" is nine hours, and no day.
    if (spans.some((one) => one.from < to && from < one.to && asNumber(one.value, 'span') < 2 * aDay))
      continue;
    const before = deeds.filter((one) => one.to <= from && from - one.to <= 8).at(-1);
    const after = deeds.find((one) => one.from >= to && one.from - to <= 5);
    const kind = (before ?? after)?.kind;
    const printed = kind === 'useBy' || kind === 'bestBefore' || kind === 'sellBy';
    const [read] = matchesIn(
      tokens,
      rules,
      // "Use by the twenty-sixth", said the day after, is yesterday.
      printed ? 'builtin:grammar/date' : 'builtin:grammar/date?lean=past',
    ).filter((one) => one.from <= from && one.to >= to);
    if (!read) continue;
    const said = saidOf(sentence, read);
    taken.push(read);
    if (kind && (printed || kinds.some((one) => one === kind))) dates[kind as keyof Dates] ??= said;
    // "From Sunday", "since the first", "six days ago": how old it is. Any other day is one it may be asked for.
    else if (isPast(sentence, read)) when ??= said;
  }
  const months = when === null && agesOfPeople(sentence).length === 0 ? monthsIn(sentence, taken) : null;
  if (months) {
    when = { day: months.day };
    taken.push(months.of);
  }
  return { dates, when, taken };
};

const placeIn = (sentence: Sentence): KeptAt | null => {
  // "The power was out", "the freezer was full" put no food anywhere.
  const ofPower = [
    ...spotsOf(sentence, 'ask').filter(({ value }) => value === 'power'),
    ...spotsOf(sentence, 'full'),
  ];
  const said = spotsOf(sentence, 'at').filter(
    ({ from, to }) => !ofPower.some((power) => from < power.to && power.from < to),
  );
  // What is out is out, wherever it came from: "out of the fridge".
  if (said.some(({ value }) => value === 'counter')) return 'counter';
  const [first] = said.filter(({ value, from }) => value !== 'freezer' || sentence.tokens[from] !== 'frozen');
  return (first?.value as KeptAt | undefined) ?? null;
};

/** "On the windowsill": a place nobody here knows. */
const elsewhereIn = (sentence: Sentence, spans: readonly Match[]): string | null => {
  const { tokens } = sentence;
  const known = (at: number): boolean =>
    spans.some(({ from, to }) => from <= at && at < to) ||
    ['at', 'method', 'thawedin', 'probe', 'air', 'nofood', 'inside', 'label', 'power'].some((kind) =>
      spotsOf(sentence, kind).some(({ from, to }) => from <= at && at < to),
    ) ||
    foodsIn(sentence).some(({ from, to }) => from <= at && at < to);
  for (let at = 0; at + 2 < tokens.length; at += 1) {
    if (!isWord(sentence, 'in', tokens[at]) || !isWord(sentence, 'the', tokens[at + 1])) continue;
    const word = tokens[at + 2]!;
    if (known(at + 2) || known(at) || isWord(sentence, 'noplace', word)) continue;
    return word;
  }
  return null;
};

/** What was told beside the question: enough that the household's record alone does not answer it. */
export const saysMore = (facts: GuidanceFacts): boolean =>
  facts.seconds !== null ||
  facts.when !== null ||
  facts.since !== null ||
  facts.until !== null ||
  facts.overnight ||
  facts.where !== null ||
  facts.states.length > 0 ||
  Object.keys(facts.dates).length > 0 ||
  facts.air !== null ||
  facts.probe !== null ||
  facts.icy !== null ||
  facts.thawedIn !== null ||
  facts.risks.length > 0 ||
  facts.reheated > 0 ||
  facts.pounds !== null ||
  facts.infant ||
  facts.elsewhere !== null;

const askedIn = (
  sentence: Sentence,
  facts: Omit<GuidanceFacts, 'asked'>,
  food: Mention | null,
): Asked | null => {
  const said = new Set(values<Heard>(sentence, 'ask'));
  const cold = spotsOf(sentence, 'at').filter(({ value }) => value === 'fridge' || value === 'freezer');
  const reads = facts.probe !== null;
  // No figure for cooking, reheating or canning is one for a baby's bottle.
  const heats = said.has('cook') || said.has('boil') || (reads && !said.has('power'));
  if (facts.infant && !said.has('keep') && (has(sentence, 'ofmilk') || heats)) return 'mix';
  const askedFor = asksAnywhere(sentence);
  if (facts.claim !== null && has(sentence, 'means') && !said.has('keep')) return 'claim';
  if (food === null && facts.label !== null && (has(sentence, 'means') || asks(sentence))) return 'label';
  // What it holds may be told after its reading: "the fridge has been at fifty, it holds milk".
  const first = foodsIn(sentence)[0]?.from ?? Number.POSITIVE_INFINITY;
  const ofAppliance = cold.some(({ from }) => from < first && from <= 3);
  if (reads && cold.length > 0 && (first === Number.POSITIVE_INFINITY || ofAppliance) && !said.has('power'))
    return cold.some(({ value }) => value === 'freezer') ? 'freezer-reads' : 'fridge-reads';
  // With no food it is about fridge and freezer: how long they hold.
  if (said.has('power')) return 'power';
  if (said.has('cool') || facts.readings.length > 1) return 'cool';
  if (cooksFor(sentence)) return 'roast';
  if (said.has('cook') && !(reads && !asks(sentence))) return 'cook';
  if (reads && (food !== null || has(sentence, 'done'))) return 'probe';
  if (said.has('boil') && (food === null || has(sentence, 'homecanned'))) return 'boil';
  if (has(sentence, 'homecanned') && askedFor && (facts.boiling || said.has('still'))) return 'boil';
  // "Thawed breast milk, can I refreeze it": the question need not come first.
  const thawed = facts.thawedIn !== null || facts.states.includes('thawed');
  if (
    said.has('refreeze') &&
    (thawed || asksAnywhere(sentence) || has(sentence, 'asks') || said.has('still'))
  )
    return 'refreeze';
  if (said.has('thaw') && facts.where === 'counter' && askedFor && !facts.states.includes('thawed'))
    return 'thaw';
  if (food !== null && said.has('chill') && askedFor) return 'out';
  if (
    facts.where === 'counter' &&
    (said.has('keep') ||
      said.has('still') ||
      facts.seconds !== null ||
      facts.since !== null ||
      facts.overnight ||
      facts.mood === 'supposed' ||
      asks(sentence) ||
      has(sentence, 'inverted'))
  )
    return 'out';
  // "Three pounds of chicken in cold water, how long": in water nothing is kept.
  const inWater =
    facts.thawedIn === 'cold-water' && !facts.states.includes('thawed') && facts.pounds !== null;
  if ((said.has('thaw') || inWater) && (said.has('keep') || facts.pounds !== null)) return 'thaw';
  if (
    said.has('freeze') &&
    asksAnywhere(sentence) &&
    !said.has('keep') &&
    facts.states.every((one) => one !== 'thawed' || said.has('freeze'))
  )
    return facts.states.includes('thawed') ? 'refreeze' : 'freeze';
  if (said.has('reheat') && asksAnywhere(sentence)) return 'reheat';
  // A baby's milk and the microwave in one sentence, asked or told: the caution is what matters.
  if (
    facts.infant &&
    facts.method !== null &&
    (asks(sentence) || said.has('reheat') || facts.method === 'microwave')
  )
    return 'reheat';
  if (said.has('thaw') && asks(sentence)) return 'thaw';
  if (said.has('keep') && !(facts.seconds !== null && said.has('still'))) return 'keep';
  if (said.has('still')) return 'still';
  // "I made the bottle at ten, can the baby finish it".
  if (facts.infant && askedFor && (facts.feeding || facts.since !== null)) return 'still';
  // "Raw chicken, three days in the fridge": how old it is and where asks for one thing only.
  const printed = facts.label !== null && (askedFor || has(sentence, 'pastof'));
  const dated = Object.keys(facts.dates).length > 0 || facts.thawedIn !== null;
  const aged = facts.seconds !== null || facts.when !== null || printed || dated;
  if (food !== null && aged) return 'still';
  // "Can my seven month old have honey", "is the pâté all right".
  if (food !== null && askedFor && (facts.risks.length > 0 || has(sentence, 'done'))) return 'still';
  // "Can the kids have some of the cookie dough".
  if (food !== null && askedFor && saysWord(sentence, 'eating') && has(sentence, 'relation')) return 'still';
  // "Mum is eighty-four and wants a soft-boiled egg": whom it is for is told, and what of such food is not for her.
  if (food !== null && facts.risks.length > 0 && saysWord(sentence, 'eating')) return 'still';
  return null;
};

/** "How long should I cook a fourteen-pound turkey", "how many minutes a pound": how long over the heat. */
const cooksFor = (sentence: Sentence): boolean => {
  if (spotsOf(sentence, 'ask').some(({ value }) => value === 'roast')) return true;
  if (!spotsOf(sentence, 'ask').some(({ value }) => value === 'keep') && !has(sentence, 'howlong'))
    return false;
  return (
    has(sentence, 'cooktime') ||
    spotsOf(sentence, 'cookverb').some(({ from }) => isWord(sentence, 'doer', sentence.tokens[from - 1]))
  );
};

/** Two readings or more of which one fell: it cools. */
const cooled = (readings: readonly TimedReading[]): readonly TimedReading[] => {
  const [first] = readings;
  const last = readings.at(-1);
  return first && last && last.value < first.value && readings.some(({ time }) => time !== null)
    ? readings
    : [];
};

/** How it was thawed; "I defrosted a roast in the fridge" says it by the place. */
const thawedHow = (sentence: Sentence, where: KeptAt | null): GuidanceFacts['thawedIn'] => {
  const [said] = values<NonNullable<GuidanceFacts['thawedIn']>>(sentence, 'thawedin');
  if (said) return said;
  const thawed = spotsOf(sentence, 'state').some(({ value }) => value === 'thawed');
  return thawed && where === 'fridge' ? 'fridge' : null;
};

/** "Since about two": rough words stand between, and the hour is the hour. */
const leadOf = (sentence: Sentence, from: number): number => {
  let at = from - 1;
  while (isWord(sentence, 'hedge', sentence.tokens[at])) at -= 1;
  return at;
};

/** A bare "one" to "twelve" after "at", "since": an hour of the clock where nothing is counted by it. */
const hoursOfDay = 12;

interface ClockTime {
  readonly from: number;
  readonly value: string;
  /** "Till midnight", "found at noon": the end of something. */
  readonly ends: boolean;
}

const timesIn = (sentence: Sentence): readonly ClockTime[] => {
  const { tokens, rules } = sentence;
  // "At ten" is a time where it is no ten of anything; "at ten, can she" counts no cans.
  const counted = ['amount', 'temperature', 'duration'].flatMap((rule) =>
    matchesIn(tokens, rules, `builtin:grammar/${rule}`, 0.5).filter(
      ({ to }) => !isWord(sentence, 'aux', tokens[to - 1]),
    ),
  );
  const free = ({ from, to }: { from: number; to: number }): boolean =>
    !counted.some((one) => one.from < to && from < one.to);
  const led = (from: number): boolean =>
    isWord(sentence, 'fromtime', tokens[leadOf(sentence, from)]) ||
    isWord(sentence, 'totime', tokens[leadOf(sentence, from)]);
  const read = (from: number): boolean => spotsOf(sentence, 'reads').some(({ to }) => to === from);
  const said = matchesIn(tokens, rules, 'builtin:grammar/time?lean=past').flatMap(
    ({ from, to, value, weight }) =>
      (led(from) || isWord(sentence, 'fromtime', tokens[from])) &&
      typeof value === 'string' &&
      !read(from) &&
      (weight >= 0.5 || free({ from, to }))
        ? [{ from, to, value }]
        : [],
  );
  const bare = figures(sentence).flatMap(({ from, to, value }) => {
    const hour = value >= 1 && value <= hoursOfDay && Number.isInteger(value) && led(from) && !read(from);
    const alone = hour && free({ from, to }) && !said.some((one) => one.from < to && from < one.to);
    return alone ? [{ from, to, value: `${String(value).padStart(2, '0')}:00` }] : [];
  });
  return [...said, ...bare]
    .sort((a, b) => a.from - b.from)
    .map(({ from, value }) => ({
      from,
      value,
      ends:
        isWord(sentence, 'totime', tokens[leadOf(sentence, from)]) ||
        spotsOf(sentence, 'ended').some(({ to }) => to <= from && from - to <= wordsBetween),
    }));
};

/** "Made at ten and she started it at twenty past eleven": since when it is so, until when, and since when it is drunk from. */
const clockTimesIn = (sentence: Sentence): Pick<GuidanceFacts, 'since' | 'until' | 'feedSince'> => {
  const said = timesIn(sentence);
  const ofFeed = said.find(({ from }) =>
    spotsOf(sentence, 'feed').some(({ to }) => to <= from && from - to <= wordsBetween),
  );
  const others = said.filter((one) => one !== ofFeed);
  const since = others.find(({ ends }) => !ends);
  return {
    since: since?.value ?? null,
    until: others.find(({ ends }) => ends)?.value ?? null,
    feedSince: ofFeed?.value ?? null,
  };
};
/** "Started it at": so many words at most between a deed and its time. */
const wordsBetween = 3;

/** "Baby is bottle", as it was taken apart, is the baby's. */
const together = (words: readonly string[]): string => words.join(' ').replace(/ is (?=\w)/u, "'s ");

/** Everything told, before what is asked of it is settled. */
export const guidanceAct = (sentence: Sentence): Act | null => {
  const { tokens } = sentence;
  const [infant] = spotsOf(sentence, 'infant');
  const spans = spansIn(sentence);
  const heldFor = spans.find(
    ({ from }) => isWord(sentence, 'held', tokens[from - 1]) || isWord(sentence, 'held', tokens[from - 2]),
  );
  const { dates, when, taken } = datesIn(sentence);
  const people = agesOfPeople(sentence);
  const age = spans.filter(
    (one) => one !== heldFor && ![...taken, ...people].some(({ from, to }) => one.from < to && from < one.to),
  );
  const { air, probe } = temperaturesIn(sentence);
  const said = [...spans, ...taken, ...figuresIn(sentence)];
  const { since, until, feedSince } = clockTimesIn(sentence);
  const times = values<string>(sentence, 'times');
  const [icy] = values<string>(sentence, 'icy');
  const asking = values<string>(sentence, 'ask');
  // "If I freeze it, how long does it keep": in the freezer.
  const where =
    placeIn(sentence) ?? (asking.includes('freeze') && asking.includes('keep') ? 'freezer' : null);
  const named = infant ? null : foodOf(sentence, said);
  const food: Mention | null = infant
    ? { ...emptyMention, words: together(tokens.slice(infant.from, infant.to)) }
    : withStates(sentence, named);
  const facts: Omit<GuidanceFacts, 'asked'> = {
    states: statesIn(sentence, named),
    where,
    elsewhere: where === null ? elsewhereIn(sentence, said) : null,
    seconds: age.length > 0 ? age.reduce((sum, one) => sum + secondsOf(sentence, one), 0) : null,
    overnight: has(sentence, 'overnight'),
    since,
    until,
    feedSince,
    dates,
    when,
    air,
    hot: has(sentence, 'hot'),
    probe,
    readings: cooled(readingsIn(sentence)),
    held: heldFor
      ? asNumber(heldFor.value, 'held')
      : probe !== null && age[0]
        ? asNumber(age[0].value, 'held')
        : null,
    icy:
      icy === undefined
        ? null
        : spotsOf(sentence, 'icy').some(({ value }) => value === 'no')
          ? false
          : icy === 'yes',
    thawedIn: thawedHow(sentence, where),
    reheated: times.includes('twice') ? 2 : times.includes('once') ? 1 : 0,
    pounds: poundsIn(sentence),
    doors: values<'shut' | 'open'>(sentence, 'doors').at(-1) ?? null,
    fullness: values<string>(sentence, 'full').includes('half')
      ? 'half'
      : values<string>(sentence, 'full').includes('full')
        ? 'full'
        : null,
    boiling: has(sentence, 'boiling') || asking.includes('boil'),
    reheating: asking.includes('reheat') || has(sentence, 'method') || has(sentence, 'reheating'),
    feeding: has(sentence, 'feed'),
    left: leftIn(sentence, [...spans, ...taken, ...people], named),
    above: aboveIn(sentence),
    claim: values<string>(sentence, 'claim')[0] ?? null,
    label: values<LabelKind>(sentence, 'label')[0] ?? null,
    method: values<string>(sentence, 'method')[0] ?? null,
    over: values<CookedOver | 'any'>(sentence, 'cookverb').find((one) => one !== 'any') ?? null,
    risks: infant ? risksIn(sentence).filter((risk) => risk !== 'infant') : risksIn(sentence),
    infant: infant !== undefined,
    mood: moodOf(sentence),
  };
  const asked = askedIn(sentence, facts, food);
  if (!asked) return null;
  const of: GuidanceFacts = { ...facts, asked };
  return { intent: 'guidance', slots: { ...(food ? { item: food } : {}), guidance: of } };
};

/** Amounts, temperatures and times of day: figures that are no name. */
const figuresIn = ({ tokens, rules }: Sentence): readonly Match[] =>
  ['amount', 'temperature', 'time?lean=past', 'number'].flatMap((rule) =>
    matchesIn(tokens, rules, `builtin:grammar/${rule}`, 0.5),
  );

/** "Over two hours" is past two hours: a minute more than was said. */
const secondsOf = (sentence: Sentence, span: Match): number =>
  asNumber(span.value, 'duration') +
  (spotsOf(sentence, 'morethan').some(({ from, to }) => to === span.from || from === span.from) ? 60 : 0);

/** A number that belongs to no day, time, temperature, weight or name: something was told that nobody took. */
const leftIn = (
  sentence: Sentence,
  taken: readonly Match[],
  named: { readonly from: number; readonly to: number } | null,
): string | null => {
  const { tokens, rules } = sentence;
  const others = ['amount', 'temperature', 'time?lean=past', 'share'].flatMap((rule) =>
    matchesIn(tokens, rules, `builtin:grammar/${rule}`).filter(
      ({ from, to }) => to - from > 1 || rule === 'temperature',
    ),
  );
  const placed = [
    ...taken,
    ...others,
    ...(named ? [named] : []),
    ...sentence.spots.filter(({ kind }) => kind !== 'span'),
  ];
  const lost = matchesIn(tokens, rules, 'builtin:grammar/number').find(
    ({ from, to, value }) =>
      typeof value === 'number' && value > 1 && !placed.some((one) => one.from < to && from < one.to),
  );
  return lost ? tokens.slice(lost.from, lost.to).join(' ') : null;
};

/** States told beside the name; what stands in it ("roast beef", "fresh ham") is the name's. */
const statesIn = (
  sentence: Sentence,
  named: { readonly from: number; readonly to: number } | null,
): readonly FoodState[] => [
  ...new Set(
    spotsOf(sentence, 'state')
      .filter(({ value, from, to }) => !named || !OF_NAMES.has(value) || to <= named.from || from >= named.to)
      .map(({ value }) => value as FoodState),
  ),
];

/**
 * "Eggnog I made myself", "lobsters that are still alive", "a can of ham", "ham that says keep refrigerated": told
 * beside the name, and a row of its own.
 */
const withStates = (sentence: Sentence, named: ReturnType<typeof foodOf>): Mention | null => {
  if (!named) return null;
  const { mention, from, to } = named;
  const beside = [
    ...statesIn(sentence, named).filter((state) => state === 'homemade' || state === 'live'),
    ...spotsOf(sentence, 'tinof').flatMap((one) => (one.to === from ? [one.value] : [])),
    ...spotsOf(sentence, 'quality')
      .filter((one) => one.value !== '' && (one.to <= from || one.from >= to))
      .map(({ value }) => value),
  ].filter((word) => !mention.words?.split(' ').includes(word));
  return beside.length === 0 ? mention : { ...mention, words: [...beside, mention.words].join(' ') };
};
