/** A question of guidance in any wording: what is asked, of which food, and all that was told with it. */
import { asAmount, asDate, asNumber, asRaw } from '../meaning-parts.js';
import { emptyMention, type Act, type Mention, type SaidDate } from '../intents.js';
import { risksIn } from './at-risk.js';
import type { Asked, FoodState, GuidanceFacts, KeptAt, Reading } from './facts.js';
import { asks, foodsIn, has, isWord, mentionOf, moodOf, spotsOf, type Sentence } from './sentence.js';
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

const poundsIn = ({ tokens, rules }: Sentence): number | null => {
  for (const { value } of matchesIn(tokens, rules, 'builtin:grammar/amount')) {
    const amount = asAmount(value);
    const grams = gramsOf[amount.unit];
    if (grams) return (amount.value * grams) / gramsInPound;
  }
  return null;
};

/** "A week ago", "for two weeks", "ten days": seconds; days of the calendar go by dates. */
const spansIn = ({ tokens, rules }: Sentence): readonly Match[] =>
  matchesIn(tokens, rules, 'builtin:grammar/duration');

/** "It reads one sixty-three": a temperature without its scale or its degrees. */
const bareReading = (sentence: Sentence): Reading | null => {
  const { tokens, rules } = sentence;
  const [probe] = spotsOf(sentence, 'probe').filter(({ from, to }) =>
    /^(reads|read|reading|registers|shows|showed|says|hit|hits|reached|reaches|to|at)$/.test(
      tokens[to - 1] ?? tokens[from] ?? '',
    ),
  );
  if (!probe) return null;
  const numbers = matchesIn(tokens, rules, 'builtin:grammar/number').filter(
    ({ from }) => from >= probe.to && from <= probe.to + 1,
  );
  const [first] = numbers;
  if (!first || typeof first.value !== 'number') return null;
  // "One sixty-three" is said for a hundred and sixty-three.
  const [, second] = matchesIn(tokens, rules, 'builtin:grammar/number').filter(
    ({ from }) => from >= first.from,
  );
  const joined =
    first.value < 3 &&
    second &&
    typeof second.value === 'number' &&
    second.from === first.to &&
    second.value >= 10 &&
    second.value < 100
      ? first.value * 100 + second.value
      : first.value;
  return joined >= 20 ? { value: joined, scale: null } : null;
};

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
  return { air, probe: probe ?? (found.length === 0 ? bareReading(sentence) : null) };
};

const kinds = ['made', 'bought', 'opened', 'frozen', 'thawed'] as const;
type Dates = { -readonly [K in keyof GuidanceFacts['dates']]: GuidanceFacts['dates'][K] };

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
  for (const { from, to, weight } of matchesIn(tokens, rules, 'builtin:grammar/date?lean=past')) {
    if (weight < 0.5 && to - from < 2) continue;
    const before = deeds.filter((one) => one.to <= from && from - one.to <= 8).at(-1);
    const after = deeds.find((one) => one.from >= to && one.from - to <= 5);
    const kind = (before ?? after)?.kind;
    const printed = kind === 'useBy' || kind === 'bestBefore' || kind === 'sellBy';
    const [read] = matchesIn(
      tokens,
      rules,
      printed ? 'builtin:grammar/date?lean=future' : 'builtin:grammar/date?lean=past',
    ).filter((one) => one.from <= from && one.to >= to);
    if (!read) continue;
    const said = asDate(read.value);
    taken.push(read);
    if (kind && (printed || kinds.some((one) => one === kind))) dates[kind as keyof Dates] ??= said;
    else when ??= said;
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
const elsewhereIn = (sentence: Sentence): string | null => {
  const { tokens } = sentence;
  const known = (at: number): boolean =>
    ['at', 'method', 'thawedin', 'probe', 'air', 'nofood', 'inside', 'label', 'power'].some((kind) =>
      spotsOf(sentence, kind).some(({ from, to }) => from <= at && at < to),
    ) || foodsIn(sentence).some(({ from, to }) => from <= at && at < to);
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
  facts.overnight ||
  facts.where !== null ||
  facts.states.length > 0 ||
  Object.keys(facts.dates).length > 0 ||
  facts.air !== null ||
  facts.probe !== null ||
  facts.icy !== null ||
  facts.thawedIn !== null ||
  facts.risks.length > 0 ||
  facts.pounds !== null ||
  facts.infant ||
  facts.elsewhere !== null;

const askedIn = (
  sentence: Sentence,
  facts: Omit<GuidanceFacts, 'asked'>,
  food: Mention | null,
): Asked | null => {
  const said = new Set(values<Asked>(sentence, 'ask'));
  const cold = spotsOf(sentence, 'at').filter(({ value }) => value === 'fridge' || value === 'freezer');
  const reads = facts.probe !== null;
  // No figure for cooking, reheating or canning is one for a baby's bottle.
  const heats = said.has('cook') || said.has('boil') || (reads && !said.has('power'));
  if (facts.infant && !said.has('keep') && (said.has('mix') || heats)) return 'mix';
  if (reads && cold.length > 0 && foodsIn(sentence).length === 0 && !said.has('power'))
    return cold.some(({ value }) => value === 'freezer') ? 'freezer-reads' : 'fridge-reads';
  if (said.has('power') && (food !== null || facts.infant)) return 'power';
  if (said.has('cook') && !(reads && !asks(sentence))) return 'cook';
  if (reads && (food !== null || has(sentence, 'done'))) return 'probe';
  if (said.has('boil')) return 'boil';
  // "Thawed breast milk, can I refreeze it": the question need not come first.
  if (said.has('refreeze') && (has(sentence, 'asks') || said.has('still'))) return 'refreeze';
  if (
    facts.where === 'counter' &&
    (said.has('keep') ||
      said.has('still') ||
      facts.seconds !== null ||
      facts.since !== null ||
      facts.mood === 'supposed' ||
      asks(sentence))
  )
    return 'out';
  if (said.has('keep') && said.has('thaw')) return 'thaw';
  if (
    said.has('freeze') &&
    asks(sentence) &&
    !said.has('keep') &&
    facts.states.every((one) => one !== 'thawed' || said.has('freeze'))
  )
    return facts.states.includes('thawed') ? 'refreeze' : 'freeze';
  if (said.has('reheat') && asks(sentence)) return 'reheat';
  if (said.has('thaw') && asks(sentence)) return 'thaw';
  if (said.has('keep') && !(facts.seconds !== null && said.has('still'))) return 'keep';
  if (said.has('still')) return 'still';
  return null;
};

/** Everything told, before what is asked of it is settled. */
export const guidanceAct = (sentence: Sentence): Act | null => {
  const { tokens, rules } = sentence;
  if (
    spotsOf(sentence, 'ask').length === 0 &&
    spotsOf(sentence, 'probe').length === 0 &&
    !spotsOf(sentence, 'at').some(({ value }) => value === 'counter')
  )
    return null;
  const [infant] = spotsOf(sentence, 'infant');
  const spans = spansIn(sentence);
  const foods = foodsIn(sentence, infant ? [infant] : []).map((one) => withoutAge(sentence, one, spans));
  const food: Mention | null = infant
    ? { ...emptyMention, words: tokens.slice(infant.from, infant.to).join(' ') }
    : foods[0]
      ? withQualities(sentence, mentionOf(foods[0]), foods[0])
      : null;
  const heldFor = spans.find(
    ({ from }) =>
      /^(rested|rest|held|hold|stood|standing|resting)$/.test(tokens[from - 1] ?? '') ||
      tokens[from - 2] === 'rested' ||
      tokens[from - 2] === 'held',
  );
  const { dates, when, taken } = datesIn(sentence);
  const age = spans.filter(
    (one) => one !== heldFor && !taken.some(({ from, to }) => one.from < to && from < one.to),
  );
  const { air, probe } = temperaturesIn(sentence);
  const [clockTime] = matchesIn(tokens, rules, 'builtin:grammar/time?lean=past', 0.5).filter(({ from }) =>
    /^(since|from|at)$/.test(tokens[from - 1] ?? ''),
  );
  const times = values<string>(sentence, 'times');
  const [icy] = values<string>(sentence, 'icy');
  const facts: Omit<GuidanceFacts, 'asked'> = {
    states: values<FoodState>(sentence, 'state'),
    where: placeIn(sentence),
    elsewhere: placeIn(sentence) === null ? elsewhereIn(sentence) : null,
    seconds: age.length > 0 ? age.reduce((sum, { value }) => sum + asNumber(value, 'duration'), 0) : null,
    overnight: has(sentence, 'overnight'),
    since: typeof clockTime?.value === 'string' ? clockTime.value : null,
    dates,
    when,
    air,
    hot: has(sentence, 'hot'),
    probe,
    held: heldFor ? asNumber(heldFor.value, 'held') : null,
    icy:
      icy === undefined
        ? null
        : spotsOf(sentence, 'icy').some(({ value }) => value === 'no')
          ? false
          : icy === 'yes',
    thawedIn: values<NonNullable<GuidanceFacts['thawedIn']>>(sentence, 'thawedin')[0] ?? null,
    reheated: times.includes('twice') ? 2 : times.includes('once') ? 1 : 0,
    pounds: poundsIn(sentence),
    doors: values<'shut' | 'open'>(sentence, 'doors').at(-1) ?? null,
    fullness: values<string>(sentence, 'full').includes('half')
      ? 'half'
      : values<string>(sentence, 'full').includes('full')
        ? 'full'
        : null,
    boiling: has(sentence, 'boiling'),
    method: values<string>(sentence, 'method')[0] ?? null,
    risks: infant ? risksIn(sentence).filter((risk) => risk !== 'infant') : risksIn(sentence),
    infant: infant !== undefined,
    mood: moodOf(sentence),
  };
  const asked = askedIn(sentence, facts, food);
  if (!asked) return null;
  const of: GuidanceFacts = { ...facts, asked };
  return { intent: 'guidance', slots: { ...(food ? { item: food } : {}), guidance: of } };
};

/** "Two day old lasagna": how old it is, and no name of it. */
const withoutAge = <T extends Match>(sentence: Sentence, food: T, spans: readonly Match[]): T => {
  const { value } = food;
  const aged =
    isWord(sentence, 'ofage', sentence.tokens[food.from]) && spans.some(({ to }) => to === food.from);
  if (!aged || value === null || typeof value !== 'object' || Array.isArray(value)) return food;
  const { words } = value as { readonly words?: unknown };
  if (typeof words !== 'string') return food;
  return { ...food, from: food.from + 1, value: { ...value, words: words.replace(/^\S+\s+/, '') } };
};

/** "Raw ground turkey", "pollo crudo": qualities that the name leaves out decide its row. */
const withQualities = (sentence: Sentence, mention: Mention, { from, to }: Match): Mention => {
  const { tokens } = sentence;
  let first = from;
  while (isWord(sentence, 'quality', tokens[first - 1])) first -= 1;
  let end = to;
  while (isWord(sentence, 'qualityafter', tokens[end])) end += 1;
  if ((first === from && end === to) || mention.words === null) return mention;
  const words = [tokens.slice(first, from), mention.words, tokens.slice(to, end)].flat().join(' ');
  return { ...mention, words };
};
