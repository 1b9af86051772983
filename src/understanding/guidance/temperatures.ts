/** What a thermometer showed, of food, of an appliance and of the air; told with its degrees or without. */
import { asNumber, asRaw } from '../meaning-parts.js';
import { timesIn } from './clock-times.js';
import type { Reading, TimedReading } from './facts.js';
import { figures } from './figures.js';
import { asks, foodsIn, isWord, spotsOf, type Sentence } from './sentence.js';
import { matchesIn } from './spots.js';

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
  const several = figures(sentence).length > 1;
  const found = figures(sentence).find(({ value, from, to }) => {
    if (reads(from)) return value >= (appliance ? low : 20);
    if (!ends(to) || value < low || value > high) return false;
    // "Four in the deep freeze": so many are in it.
    if (appliance && several) return false;
    if (appliance && spotsOf(sentence, 'at').some((spot) => spot.from >= to && spot.from - to <= 2))
      return false;
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
export const aboveIn = (sentence: Sentence): boolean =>
  matchesIn(sentence.tokens, sentence.rules, 'builtin:grammar/temperature').some(({ from }) =>
    spotsOf(sentence, 'above').some(({ to }) => to === from),
  );

interface Temperatures {
  readonly air: Reading | null;
  readonly probe: Reading | null;
}

export const temperaturesIn = (sentence: Sentence): Temperatures => {
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
export const readingsIn = (sentence: Sentence): readonly TimedReading[] => {
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
  const times = timesIn(sentence);
  // "Was a hundred and thirty-five": the article is none of the figure.
  const isLinked = (from: number): boolean => {
    const at = isWord(sentence, 'article', tokens[from - 1]) ? from - 2 : from - 1;
    return isWord(sentence, 'link', tokens[at]);
  };
  // "Sixty-five by two": beside an hour, after a first reading.
  const timed = (one: { readonly from: number; readonly to: number }): boolean =>
    explicit.some(({ to }) => to <= one.from) ||
    figures(sentence).some(({ from, to }) => to <= one.from && isLinked(from))
      ? times.some(({ from }) => from >= one.to && from - one.to <= 1)
      : false;
  const linked = figures(sentence).flatMap((one) =>
    (isLinked(one.from) || timed(one)) &&
    one.value >= 35 &&
    one.value <= foodBetween[1] &&
    isWord(sentence, 'afterfigure', tokens[one.to] ?? 'now') &&
    !explicit.some(({ from, to }) => from < one.to && one.from < to)
      ? [{ ...one, scale: null }]
      : [],
  );
  const found = [...explicit, ...linked].sort((a, b) => a.from - b.from);
  return found.map(({ value, scale, to }, at) => {
    const next = found[at + 1]?.from ?? tokens.length;
    return { value, scale, time: times.find(({ from }) => from >= to && from < next)?.value ?? null };
  });
};

/** Two readings or more of which one fell: it cools. */
export const cooled = (readings: readonly TimedReading[]): readonly TimedReading[] => {
  const [first] = readings;
  const last = readings.at(-1);
  return first && last && last.value < first.value && readings.some(({ time }) => time !== null)
    ? readings
    : [];
};
