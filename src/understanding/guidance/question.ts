/** A question of guidance in any wording: what is asked, of which food, and all that was told with it. */
import { plusDays, today } from '../../terms/dates.js';
import { asAmount, asDate, asNumber, asRaw } from '../meaning-parts.js';
import { emptyMention, type Act, type Mention, type SaidDate } from '../intents.js';
import { foodOf, OF_NAMES } from './food.js';
import { agesOfPeople, risksIn } from './at-risk.js';
import type { Asked, FoodState, GuidanceFacts, KeptAt, LabelKind, Reading } from './facts.js';
import { asks, asksAnywhere, foodsIn, has, isWord, moodOf, spotsOf, type Sentence } from './sentence.js';
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
    const label =
      past && spotsOf(sentence, 'label').find(({ from }) => from >= past.to && from - past.to <= 1);
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
    const said = asDate(read.value);
    taken.push(read);
    if (kind && (printed || kinds.some((one) => one === kind))) dates[kind as keyof Dates] ??= said;
    // "From Sunday", "since the first", "six days ago": how old it is. Any other day is one it may be asked for.
    else if (isPast(sentence, read)) when ??= said;
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
  const said = new Set(values<Asked>(sentence, 'ask'));
  const cold = spotsOf(sentence, 'at').filter(({ value }) => value === 'fridge' || value === 'freezer');
  const reads = facts.probe !== null;
  // No figure for cooking, reheating or canning is one for a baby's bottle.
  const heats = said.has('cook') || said.has('boil') || (reads && !said.has('power'));
  if (facts.infant && !said.has('keep') && (has(sentence, 'ofmilk') || heats)) return 'mix';
  const askedFor = asksAnywhere(sentence);
  if (facts.claim !== null && has(sentence, 'means') && !said.has('keep')) return 'claim';
  if (food === null && facts.label !== null && (has(sentence, 'means') || asks(sentence))) return 'label';
  if (reads && cold.length > 0 && foodsIn(sentence).length === 0 && !said.has('power'))
    return cold.some(({ value }) => value === 'freezer') ? 'freezer-reads' : 'fridge-reads';
  if (said.has('power') && (food !== null || facts.infant)) return 'power';
  if (said.has('cool')) return 'cool';
  if (said.has('cook') && !(reads && !asks(sentence))) return 'cook';
  if (reads && (food !== null || has(sentence, 'done'))) return 'probe';
  if (said.has('boil')) return 'boil';
  if (has(sentence, 'homecanned') && askedFor && (facts.boiling || said.has('still'))) return 'boil';
  // "Thawed breast milk, can I refreeze it": the question need not come first.
  if (said.has('refreeze') && (asksAnywhere(sentence) || has(sentence, 'asks') || said.has('still')))
    return 'refreeze';
  if (
    facts.where === 'counter' &&
    (said.has('keep') ||
      said.has('still') ||
      facts.seconds !== null ||
      facts.since !== null ||
      facts.overnight ||
      facts.mood === 'supposed' ||
      asksAnywhere(sentence))
  )
    return 'out';
  if (said.has('thaw') && (said.has('keep') || facts.pounds !== null)) return 'thaw';
  if (
    said.has('freeze') &&
    asksAnywhere(sentence) &&
    !said.has('keep') &&
    facts.states.every((one) => one !== 'thawed' || said.has('freeze'))
  )
    return facts.states.includes('thawed') ? 'refreeze' : 'freeze';
  if (said.has('reheat') && asksAnywhere(sentence)) return 'reheat';
  if (facts.infant && facts.method !== null && asks(sentence)) return 'reheat';
  if (said.has('thaw') && asks(sentence)) return 'thaw';
  if (said.has('keep') && !(facts.seconds !== null && said.has('still'))) return 'keep';
  if (said.has('still')) return 'still';
  // "I made the bottle at ten, can the baby finish it".
  if (facts.infant && askedFor && (facts.feeding || facts.since !== null)) return 'still';
  // "Raw chicken, three days in the fridge": how old it is and where asks for one thing only.
  const printed = facts.label !== null && (askedFor || has(sentence, 'pastof'));
  const aged = facts.seconds !== null || facts.when !== null || printed;
  if (food !== null && aged) return 'still';
  // "Can my seven month old have honey", "is the pâté all right".
  if (food !== null && askedFor && (facts.risks.length > 0 || (asks(sentence) && has(sentence, 'done'))))
    return 'still';
  return null;
};

/** How it was thawed; "I defrosted a roast in the fridge" says it by the place. */
const thawedHow = (sentence: Sentence, where: KeptAt | null): GuidanceFacts['thawedIn'] => {
  const [said] = values<NonNullable<GuidanceFacts['thawedIn']>>(sentence, 'thawedin');
  if (said) return said;
  const thawed = spotsOf(sentence, 'state').some(({ value }) => value === 'thawed');
  return thawed && where === 'fridge' ? 'fridge' : null;
};

/** "Made at ten and she started it at twenty past eleven": since when it is so, and since when it is drunk from. */
const clockTimesIn = (sentence: Sentence): Pick<GuidanceFacts, 'since' | 'feedSince'> => {
  const { tokens, rules } = sentence;
  // "At ten" is a time where it is no ten of anything; "at ten, can she" counts no cans.
  const counted = ['amount', 'temperature', 'duration'].flatMap((rule) =>
    matchesIn(tokens, rules, `builtin:grammar/${rule}`, 0.5).filter(
      ({ to }) => !isWord(sentence, 'aux', tokens[to - 1]),
    ),
  );
  const said = matchesIn(tokens, rules, 'builtin:grammar/time?lean=past').flatMap(
    ({ from, to, value, weight }) =>
      [from - 1, from].some((at) => isWord(sentence, 'fromtime', tokens[at])) &&
      typeof value === 'string' &&
      (weight >= 0.5 || !counted.some((one) => one.from < to && from < one.to))
        ? [{ from, value }]
        : [],
  );
  const ofFeed = said.find(({ from }) =>
    spotsOf(sentence, 'feed').some(({ to }) => to <= from && from - to <= wordsBetween),
  );
  return {
    since: said.find((one) => one !== ofFeed)?.value ?? null,
    feedSince: ofFeed?.value ?? null,
  };
};
/** "Started it at": so many words at most between a deed and its time. */
const wordsBetween = 3;

/** Everything told, before what is asked of it is settled. */
export const guidanceAct = (sentence: Sentence): Act | null => {
  const { tokens } = sentence;
  const heard = ['ask', 'probe', 'infant', 'risk', 'span', 'claim', 'label', 'done'].some((kind) =>
    has(sentence, kind),
  );
  if (!heard && !spotsOf(sentence, 'at').some(({ value }) => value === 'counter')) return null;
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
  const { since, feedSince } = clockTimesIn(sentence);
  const times = values<string>(sentence, 'times');
  const [icy] = values<string>(sentence, 'icy');
  const asking = values<string>(sentence, 'ask');
  // "If I freeze it, how long does it keep": in the freezer.
  const where =
    placeIn(sentence) ?? (asking.includes('freeze') && asking.includes('keep') ? 'freezer' : null);
  const named = infant ? null : foodOf(sentence, said);
  const food: Mention | null = infant
    ? { ...emptyMention, words: tokens.slice(infant.from, infant.to).join(' ') }
    : withStates(sentence, named);
  const facts: Omit<GuidanceFacts, 'asked'> = {
    states: statesIn(sentence, named),
    where,
    elsewhere: where === null ? elsewhereIn(sentence, said) : null,
    seconds: age.length > 0 ? age.reduce((sum, one) => sum + secondsOf(sentence, one), 0) : null,
    overnight: has(sentence, 'overnight'),
    since,
    feedSince,
    dates,
    when,
    air,
    hot: has(sentence, 'hot'),
    probe,
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
