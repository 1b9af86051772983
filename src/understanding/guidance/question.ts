/** A question of guidance in any wording: what is asked, of which food, and all that was told with it. */
import { asNumber } from '../meaning-parts.js';
import { emptyMention, type Act, type Mention, type Slots } from '../intents.js';
import { foodOf } from './food.js';
import { agesOfPeople, risksIn } from './at-risk.js';
import { askedIn } from './asked.js';
import { clockTimesIn } from './clock-times.js';
import { datesIn } from './days.js';
import type { CookedOver, GuidanceFacts, LabelKind } from './facts.js';
import { codeIn, feetIn, figuresIn, leftIn, poundsIn, secondsOf, spansIn, values } from './figures.js';
import { placeIn, elsewhereIn, thawedHow, whichCold } from './kept-at.js';
import { has, isWord, moodOf, spotsOf, type Sentence } from './sentence.js';
import { doorOf } from './outage.js';
import { statesIn, withStates } from './states.js';
import { aboveIn, temperaturesIn, readingsIn, cooled } from './temperatures.js';

/** "Baby is bottle", as it was taken apart, is the baby's. */
const together = (words: readonly string[]): string => words.join(' ').replace(/ is (?=\w)/u, "'s ");

/** Where the food's name stands. */
export const namedIn = (sentence: Sentence): ReturnType<typeof foodOf> =>
  foodOf(sentence, [...spansIn(sentence), ...datesIn(sentence).taken, ...figuresIn(sentence)]);

interface Told {
  readonly facts: Omit<GuidanceFacts, 'asked'>;
  readonly food: Mention | null;
}

/** Everything told, before what is asked of it is settled. */
const toldIn = (sentence: Sentence): Told => {
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
  const which = whichCold(sentence);
  const where = which
    ? null
    : (placeIn(sentence) ?? (asking.includes('freeze') && asking.includes('keep') ? 'freezer' : null));
  const named = infant ? null : foodOf(sentence, said);
  const food: Mention | null = infant
    ? { ...emptyMention, words: together(tokens.slice(infant.from, infant.to)) }
    : withStates(sentence, named);
  const facts: Omit<GuidanceFacts, 'asked'> = {
    states: statesIn(sentence, named),
    where,
    which,
    elsewhere: where === null && !which ? elsewhereIn(sentence, said) : null,
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
    doors: doorOf(sentence, where),
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
    code: codeIn(sentence),
    feet: feetIn(sentence),
    claim: values<string>(sentence, 'claim')[0] ?? null,
    labels: values<LabelKind>(sentence, 'label'),
    method: values<string>(sentence, 'method')[0] ?? null,
    over: values<CookedOver | 'any'>(sentence, 'cookverb').find((one) => one !== 'any') ?? null,
    risks: infant ? risksIn(sentence).filter((risk) => risk !== 'infant') : risksIn(sentence),
    infant: infant !== undefined,
    mood: moodOf(sentence),
  };
  return { facts, food };
};

export const guidanceAct = (sentence: Sentence): Act | null => {
  const { facts, food } = toldIn(sentence);
  const asked = askedIn(sentence, facts, food);
  if (!asked) return null;
  const of: GuidanceFacts = { ...facts, asked };
  return { intent: 'guidance', slots: { ...(food ? { item: food } : {}), guidance: of } };
};

/** More words than that ask something of their own. */
const longestAgain = 10;

/**
 * "And if I froze it", "what if I'd done it in the microwave instead", "and the butter": what was asked last, with what
 * is told now in place of what was told then.
 */
export const guidanceAgain = (sentence: Sentence, last: Slots): Act | null => {
  const { item } = last;
  const follows = spotsOf(sentence, 'followson').find(({ from }) => from === 0);
  if (!follows || sentence.tokens.length > longestAgain) return null;
  const { facts: now, food } = toldIn(sentence);
  // How long it keeps, asked of the record with nothing told of it.
  const plain = { states: [], where: null, thawedIn: null, method: null, seconds: null, risks: [] };
  const before: GuidanceFacts = last.guidance ?? { ...now, ...plain, asked: 'keep' };
  if (before.infant || (!last.guidance && food !== null && food.words !== item?.words)) return null;
  // "And if I freeze it", of how long it keeps: frozen.
  const freezes = before.asked === 'keep' && values<string>(sentence, 'ask').includes('freeze');
  const told = freezes ? [...now.states, 'frozen' as const] : now.states;
  const states = told.filter((state) => !before.states.includes(state));
  const elsewhere = now.where ?? (states.includes('frozen') ? null : before.where);
  const other = food !== null && food.words !== item?.words;
  const differs =
    other ||
    states.length > 0 ||
    (now.where !== null && now.where !== before.where) ||
    (now.thawedIn !== null && now.thawedIn !== before.thawedIn) ||
    (now.method !== null && now.method !== before.method) ||
    (now.seconds !== null && now.seconds !== before.seconds) ||
    now.risks.some((risk) => !before.risks.includes(risk));
  if (!differs) return null;
  const mention = food ?? item;
  return {
    intent: 'guidance',
    slots: {
      ...(mention ? { item: mention } : {}),
      guidance: {
        ...before,
        // How another food was kept is asked alike; when it was made or opened was told of the one before.
        dates: other ? now.dates : { ...before.dates, ...now.dates },
        states: other ? now.states : [...before.states.filter((one) => !opposite(one, states)), ...states],
        where: elsewhere,
        thawedIn: now.thawedIn ?? before.thawedIn,
        method: now.method ?? before.method,
        seconds: now.seconds ?? before.seconds,
        risks: [...new Set([...before.risks, ...now.risks])],
        mood: now.mood === 'told' ? before.mood : now.mood,
      },
    },
  };
};

/** What is frozen is not thawed, and what is cooked not raw. */
const opposite = (one: string, now: readonly string[]): boolean =>
  [
    ['frozen', 'thawed'],
    ['raw', 'cooked'],
    ['opened', 'sealed'],
  ].some((pair) => pair.includes(one) && now.some((state) => state !== one && pair.includes(state)));
