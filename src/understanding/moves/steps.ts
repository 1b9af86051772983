/**
 * Talk while steps are followed. What was said is cut into reports, praise and requests by `steps.gram`, whose
 * `$<steps:said>` is any run of words that asks nothing; the words of the steps themselves tell what is a report of
 * them and which of their sentences answers a question.
 */
import type { DynamicRule, SemanticValue } from '../../grammar/index.js';
import { grammarFor } from '../grammar-files.js';
import type { Guess } from '../guesses.js';
import {
  CHANGING_INTENTS,
  type Act,
  type Intent,
  type Interpretation,
  type Mention,
  type DishSteps,
  type StepsAtHand,
  emptyMention,
  itMention,
} from '../intents.js';
import { readActs } from '../meaning.js';
import type { Reader } from '../readings.js';
import { type Lexicon, lexiconFor } from '../words/lexicon.js';
import { quantityAt } from '../numbers/quantities.js';
import { anywhereIn } from './requests/bits.js';
import { toldReading } from './search.js';
import { type ReadSteps, readSteps } from './steps/at-hand.js';
import { type StepsLexicon, stepsLexicon } from './steps/lexicon.js';
import {
  type Quote,
  quoteAbout,
  quoteAmount,
  quoteFigure,
  quoteHeat,
  quoteInside,
  quoteLimit,
  quoteMinutes,
  quoteSign,
  hasTime,
  quoteTime,
} from './steps/quote.js';
import { type Report, clausesOf, eatenFrom, hasDuration, isRinging, reportOf } from './steps/report.js';

/** Longer than this is no talk of a step. */
const longest = 60;
/** A rule's reading this likely stands (natural logarithm). */
const sureRule = -1;
/** What a word costs that a request leaves to what is said beside it (natural logarithm), and each run of such words. */
const costs = { run: 0.5, known: 0.12, other: 0.45, asking: 1.6 } as const;
const confidence = 0.9;

/** Any run of words that asks nothing. */
export const saidRule = (steps: ReadSteps, lexicon: StepsLexicon): DynamicRule => ({
  matchesAt(tokens, from) {
    const found: { length: number; value: SemanticValue; weight: number }[] = [];
    let cost: number = costs.run;
    for (let to = from + 1; to <= tokens.length; to += 1) {
      const at = to - 1;
      cost +=
        lexicon.at('asking', tokens, at) > 0
          ? costs.asking
          : isKnown(tokens, at, steps, lexicon)
            ? costs.known
            : costs.other;
      found.push({ length: to - from, value: { from, to }, weight: Math.exp(-cost) });
    }
    return found;
  },
});

const isKnown = (tokens: readonly string[], at: number, steps: ReadSteps, lexicon: StepsLexicon): boolean =>
  lexicon.at('small', tokens, at) > 0 ||
  lexicon.at('praise', tokens, at) > 0 ||
  lexicon.at('state', tokens, at) > 0 ||
  lexicon.at('not', tokens, at) > 0 ||
  steps.anywhere.has(steps.stem(tokens[at]!)) ||
  steps.dish.has(steps.stem(tokens[at]!));

interface Asked {
  readonly ask?: string;
  readonly act?: SemanticValue;
  /** So many portions; how much longer, in seconds. */
  readonly number?: number;
  readonly seconds?: number;
  /** In what it is made instead. */
  readonly method?: string;
  /** What the thermometer reads. */
  readonly degrees?: SemanticValue;
}
interface Cut {
  readonly asks: readonly Asked[];
  /** Runs of words that ask nothing, in order; `before` the first request or after it. */
  readonly said: readonly { readonly tokens: readonly string[]; readonly before: boolean }[];
}

const cutOf = (
  tokens: readonly string[],
  reader: Reader,
  steps: ReadSteps,
  lexicon: StepsLexicon,
): Cut | null => {
  const dynamic = new Map(reader.rules).set('steps:said', saidRule(steps, lexicon));
  const [parse] = grammarFor(reader.language, 'steps').parse(tokens, {
    rules: ['in_steps'],
    dynamic,
    limit: 1,
  });
  if (!parse) return null;
  const { asks, said } = parse.value as unknown as {
    asks: readonly Asked[];
    said: readonly { from: number; to: number }[];
  };
  return {
    asks,
    said: said.map(({ from, to }) => ({
      tokens: tokens.slice(from, to),
      before: from === 0,
    })),
  };
};

const changing: ReadonlySet<Intent> = new Set(CHANGING_INTENTS);

/** Intents that mean the talk itself: said plainly, they are taken as they are. */
const plain: ReadonlySet<Intent> = new Set<Intent>([
  ...([
    'next',
    'back',
    'start-over',
    'skip-to',
    'steps-left',
    'done',
    'wait',
    'stop',
    'continue',
    'cancel',
  ] as const),
  ...([
    'slower',
    'faster',
    'louder',
    'quieter',
    'whisper',
    'shorter',
    'longer',
    'spell',
    'help',
    'what-heard',
  ] as const),
  ...([
    'undo',
    'redo',
    'set-timer',
    'change-timer',
    'cancel-timer',
    'timers',
    'goodbye',
    'why',
    'details',
  ] as const),
]);
/** Too little to be more than a way of taking note. */
const noMore: ReadonlySet<Intent> = new Set<Intent>([
  ...([
    'thanks',
    'greeting',
    'yes',
    'no',
    'maybe',
    'answer',
    'choose',
    'correct',
    'repeat',
    'just-names',
  ] as const),
  ...(['how-many', 'follow-up'] as const),
]);
/** "What should I do now", "go on": here they mean the steps. */
const ofTheSteps: ReadonlySet<Intent> = new Set<Intent>(['help', 'continue']);
/** What is asked of a dish in general, and of its step while it is made. */
const ofTheDish: ReadonlySet<Intent> = new Set<Intent>(['reheat', 'cook-temperature', 'keeps', 'left-out']);

const mentionsOf = ({ slots }: Act): readonly Mention[] =>
  [slots.item, slots.marker, ...(slots.items ?? [])].filter((one): one is Mention => one !== undefined);

/** It is about a thing that no step speaks of. */
const namesAnother = (acts: readonly Act[], steps: ReadSteps): boolean =>
  acts.flatMap(mentionsOf).some(({ words }) => {
    const all = words?.split(' ') ?? [];
    return all.length > 0 && !all.some((word) => steps.anywhere.has(steps.stem(word)));
  });

/** "In the oven instead", "for two portions": a way of making the dish that these steps do not speak of. */
const asksAnotherWay = ({ intent, slots }: Act, steps: ReadSteps): boolean => {
  if (intent !== 'reheat' && intent !== 'follow-up') return false;
  if (slots.method !== undefined)
    return !slots.method.split(' ').some((word) => steps.anywhere.has(steps.stem(word)));
  return intent === 'follow-up' && (slots.number !== undefined || slots.amount?.unit === 'portion');
};

/** What the rules are sure of and what is no talk of the steps. */
const isElsewhere = (
  tokens: readonly string[],
  parsed: Interpretation | undefined,
  score: number | undefined,
  steps: ReadSteps,
  lexicon: StepsLexicon,
  requested: boolean,
  onwards: boolean,
  held: boolean,
): boolean => {
  if (!parsed || score === undefined) return false;
  const { acts } = parsed;
  if (score >= sureRule && acts.some((act) => asksAnotherWay(act, steps))) return true;
  // Asked to wait, she goes on where she was.
  if (held && acts.every(({ intent }) => intent === 'continue')) return true;
  if (acts.every(({ intent }) => noMore.has(intent) || (requested && ofTheSteps.has(intent)))) return false;
  const sure = score >= sureRule;
  const [first, ...more] = acts;
  // "Skip it" is a way of going on while steps are read, and breaks nothing off.
  if (onwards && acts.every(({ intent }) => intent === 'cancel')) return false;
  // "Done, what's next": both were said, and a rule that took it for one of them heard the less.
  if (requested && acts.every(({ intent }) => intent === 'done' || intent === 'next')) return false;
  if (sure && more.length === 0 && (plain.has(first!.intent) || ofTheSteps.has(first!.intent))) return true;
  if (sure && lexicon.has('elsewhere', tokens)) return true;
  if (acts.every(({ intent }) => ofTheDish.has(intent))) return sure && namesAnother(acts, steps);
  return (
    sure &&
    (namesAnother(acts, steps) ||
      acts.every((act) => mentionsOf(act).length === 0 && act.slots.place !== undefined))
  );
};

const asking = (asked: string, quote: Quote | null, reported: boolean): Act => ({
  intent: 'ask-step',
  slots: {
    asked,
    ...(quote ? { number: quote.step + 1, words: quote.text } : {}),
    ...(reported ? { reported } : {}),
  },
});

const next: Act = { intent: 'next', slots: {} };

/** Content words after a request that nothing explains: so many, and it was about something else. */
const strangersAtMost: Readonly<Record<string, number>> = {
  next: 0,
  more: 0,
  placed: 1,
  'time-left': 0,
  reading: 1,
  careful: 1,
  finished: 1,
  again: 2,
  which: 0,
  leave: 1,
  longer: 0,
  cold: 4,
  'bare-reading': 0,
  check: 4,
  portions: 0,
};

/** The thermometer is read in one of the last steps. */
const probing = 3;
/** Said of these, what is before them is no report of a step. */
const byThemselves: ReadonlySet<string> = new Set(['leave', 'time-left', 'longer', 'cold', 'portions']);

const strangers = (cut: Cut, ask: string, steps: ReadSteps, lexicon: StepsLexicon): number =>
  cut.said
    .filter(({ before }) => !before || byThemselves.has(ask))
    .reduce(
      (sum, { tokens }) => sum + tokens.filter((_, at) => !isKnown(tokens, at, steps, lexicon)).length,
      0,
    );

/** Of what is asked: the sentence that answers, where a step has one; what is told of the next step is told with it. */
const answering = (
  asked: string,
  quote: Quote | null,
  reported: boolean,
  steps: ReadSteps,
): readonly Act[] => [reported && quote?.step === steps.at + 1 ? next : asking(asked, quote, reported)];

const longer = (seconds: number): Act => ({
  intent: 'change-timer',
  slots: { asked: 'longer', duration: seconds },
});
const portions = (number: number): Act => ({
  intent: 'reheat',
  slots: { item: itMention, amount: { value: number, unit: 'portion' } },
});

const actsOfAsk = (
  { ask, act, number, seconds, degrees, method }: Asked,
  after: readonly string[],
  all: readonly string[],
  reported: boolean,
  steps: ReadSteps,
  reader: Reader,
  wouldChange: boolean,
): readonly Act[] => {
  if (act !== undefined) return readActs(act, reader.today).slice(0, 1);
  const words = lexiconFor(reader.language);
  switch (ask) {
    case 'next':
      return [next];
    case 'more':
      return [asking('more', null, reported)];
    case 'meanwhile':
      return reported ? [next] : [asking('meanwhile', null, false)];
    case 'timer':
      // It runs already.
      return [{ intent: steps.waiting ? 'timers' : 'done', slots: {} }];
    case 'nth':
      return number === undefined ? [] : [{ intent: 'steps-left', slots: { ordinal: number } }];
    case 'other-way':
      return method === undefined || method.split(' ').some((word) => steps.anywhere.has(steps.stem(word)))
        ? []
        : [{ intent: 'reheat', slots: { item: itMention, method } }];
    case 'leave':
      return [{ intent: 'cancel', slots: {} }];
    case 'longer':
      return seconds === undefined ? [] : [longer(seconds)];
    case 'portions':
      return number === undefined ? [] : [portions(number)];
    case 'placed':
      return [{ intent: 'done', slots: {} }];
    case 'bare-reading':
      // Elsewhere a figure alone may be anything.
      if (steps.at + probing < steps.steps.length) return [];
      return actsOfAsk(
        { ask: 'reading', degrees: degrees ?? null },
        after,
        all,
        reported,
        steps,
        reader,
        wouldChange,
      );
    case 'check': {
      const quote = quoteAbout(steps, all);
      return quote ? [asking('whether', quote, false)] : [];
    }
    case 'reading':
      return degrees === undefined || degrees === null
        ? []
        : readActs({ intent: 'ask-step', asked: 'reading', degrees }, reader.today).slice(0, 1);
    case 'time-left':
      return steps.waiting
        ? [{ intent: 'timers', slots: {} }]
        : answering('how-long', quoteTime(steps, words), reported, steps);
    case 'minutes':
      return answering('how-long', quoteMinutes(steps, words), reported, steps);
    case 'how-long':
      return answering('how-long', quoteTime(steps, words), reported, steps);
    case 'when': {
      const quote = quoteAbout(steps, after);
      return quote
        ? [asking('when', quote, reported)]
        : answering('how-long', quoteTime(steps, words), reported, steps);
    }
    case 'batch':
      return [asking('batch', quoteLimit(steps, words), reported)];
    case 'sign':
      return answering('sign', quoteSign(steps, words), reported, steps);
    case 'power':
      return [asking('power', null, reported)];
    case 'target':
      return [asking('target', quoteHeat(steps, words), reported)];
    case 'inside':
      return [asking('inside', quoteInside(steps, words), reported)];
    case 'how-hot':
      return answering('how-hot', quoteHeat(steps, words), reported, steps);
    case 'how-much':
      return answering('how-much', quoteAmount(steps, words, after), reported, steps);
    case 'proceed': {
      // With what is made by now, the next thing is to be done; else what the step says of it.
      const quote = reported ? null : quoteAbout(steps, after);
      return quote && quote.step <= steps.at ? [asking('whether', quote, false)] : [next];
    }
    case 'may': {
      const quote = quoteAbout(steps, after);
      if (reported && (quote === null || quote.step <= steps.at + 1)) return [next];
      return quote || wouldChange ? [asking('whether', quote, reported)] : [];
    }
    case 'whether': {
      // "Does it have to stand longer": of two that speak of it, the one that says how long.
      const quote = quoteAbout(steps, after, hasTime(words));
      // "Can I add some salt?" asks, and never puts salt on the list.
      if (!quote && !wouldChange) return [];
      return answering('whether', quote, reported, steps);
    }
    case 'again': {
      // "What did you say about the flour": of that, rather than all of it.
      const quote = quoteAbout(steps, after);
      return [quote ? asking('whether', quote, false) : asking('again', null, reported)];
    }
    case 'told-of': {
      const quote = quoteAbout(steps, all);
      return [quote ? asking('whether', quote, false) : asking('again', null, false)];
    }
    case 'finished':
    case 'which':
    case 'need':
    case 'cold':
    case 'in-all':
    case 'careful':
      return [asking(ask, null, reported)];
    default:
      return [];
  }
};

/** "How many can I do at a time", "can they all go in at once": how many are made together. */
const atATime = (
  asks: readonly Asked[],
  tokens: readonly string[],
  lexicon: StepsLexicon,
): readonly Asked[] =>
  lexicon.has('together', tokens)
    ? asks.map((asked) => (counting.has(asked.ask ?? '') ? { ...asked, ask: 'batch' } : asked))
    : asks;
const counting: ReadonlySet<string> = new Set(['how-much', 'whether', 'may']);

/** Ways of asking to go on: with a plainer one in the same breath, the others ask nothing more. */
const onwards: readonly string[] = [
  ...['next', 'longer', 'placed', 'more', 'finished', 'proceed', 'again', 'need', 'which', 'cold', 'timer'],
];

const besides: ReadonlySet<string> = new Set(['placed', 'finished']);
/** Asked of the steps, with what is reported beside it said for the question. */
const questions: ReadonlySet<string> = new Set([
  'whether',
  'check',
  'may',
  'reading',
  'how-long',
  'minutes',
  'how-much',
]);

const plainest = (asks: readonly Asked[]): readonly Asked[] => {
  const asked = asks.some(({ ask }) => questions.has(ask ?? ''));
  const said = onwards.find((name) => asks.some(({ ask }) => ask === name) && !(asked && besides.has(name)));
  const first = asks.find(({ ask }) => ask === said);
  if (said === 'again' && asks.some(({ ask }) => ask === undefined))
    return asks.filter(({ ask }) => !onwards.includes(ask ?? ''));
  return asks.filter((asked) => asked === first || !onwards.includes(asked.ask ?? ''));
};

const reportActs: Readonly<Record<Report, Act | null>> = {
  done: { intent: 'done', slots: {} },
  placed: { intent: 'done', slots: {} },
  over: next,
  not: asking('wait', null, false),
  praise: asking('wait', null, false),
  echo: null,
  eaten: null,
  away: { intent: 'wait', slots: {} },
  none: null,
};

const withoutSmall = (tokens: readonly string[], lexicon: StepsLexicon): readonly string[] =>
  tokens.filter((_, at) => lexicon.at('small', tokens, at) === 0);

/** "In the oven, right?", "a bowl shape": words of a step said to hear whether they are right: it is said. */
const echoOf = (tokens: readonly string[], steps: ReadSteps, lexicon: StepsLexicon): Act | null => {
  const quote = quoteAbout(steps, withoutSmall(tokens, lexicon));
  return quote ? asking('whether', quote, false) : null;
};

/** "The lid's on", before the step that says so was read: its words, and none of the step at hand. */
const tellsOfNext = (tokens: readonly string[], steps: ReadSteps, lexicon: StepsLexicon): boolean => {
  const next = steps.steps[steps.at + 1];
  const last = clausesOf(tokens, { lexicon }).at(-1) ?? [];
  const stems = withoutSmall(last, lexicon).map(steps.stem);
  return (
    !steps.waiting &&
    next !== undefined &&
    stems.some((stem) => next.stems.has(stem)) &&
    !stems.some((stem) => steps.here.has(stem))
  );
};

/** "I've covered it and given it its two minutes": the step that the last of what is told in a breath is of. */
const reachedIn = (tokens: readonly string[], steps: ReadSteps, lexicon: StepsLexicon): number => {
  const parts = tokens.reduce<string[][]>(
    (all, word, at) => {
      if (lexicon.at('joins', tokens, at) > 0) all.push([]);
      else all.at(-1)!.push(word);
      return all;
    },
    [[]],
  );
  let at = steps.at;
  for (const part of parts) {
    const stems = withoutSmall(part, lexicon).map(steps.stem);
    const speaks = (step: number): number =>
      stems.filter((stem) => steps.steps[step]?.stems.has(stem)).length;
    if (parts.length > 1 && speaks(at + 1) > 0 && speaks(at) === 0) at += 1;
  }
  return at;
};

/** "I've got it in the microwave already": done with all that comes before that. */
const placedIn = (
  tokens: readonly string[],
  report: Report,
  steps: ReadSteps,
  lexicon: StepsLexicon,
): Act | null => {
  const act = reportActs[report];
  // "The water isn't boiling yet": of which step, where one before speaks of it.
  if (report === 'not') return asking('not-yet', quoteAbout(steps, withoutSmall(tokens, lexicon)), false);
  const reached = reachedIn(tokens, steps, lexicon);
  if (act && report === 'over' && reached > steps.at) return { ...next, slots: { number: reached + 1 } };
  if (act?.intent !== 'done') return act;
  const running = lexicon.has('running', tokens);
  const at = tokens.findIndex((_, from) => lexicon.at('appliance', tokens, from) > 0);
  if (at < 0 && running) return { ...act, slots: { reported: true } };
  if (at < 0) return tellsOfNext(tokens, steps, lexicon) ? { ...act, slots: { number: steps.at + 2 } } : act;
  const method = tokens.slice(at, at + lexicon.at('appliance', tokens, at)).join(' ');
  return {
    ...act,
    slots: { method, ...(running || lexicon.has('begun', tokens) ? { reported: true } : {}) },
  };
};

/** Food of hers that no step speaks of: what was done to that is told of the kitchen. */
const namesOther = (tokens: readonly string[], steps: ReadSteps, { rules }: Reader): boolean =>
  anywhereIn(
    tokens,
    rules,
  )('thing').some(
    ({ source, fit, from, to }) =>
      source === 'hers' &&
      fit >= surelyHers &&
      !tokens.slice(from, to).some((word) => {
        const stem = steps.stem(word);
        return steps.anywhere.has(stem) || steps.dish.has(stem);
      }),
  );
const surelyHers = 0.95;

const actsOf = (
  tokens: readonly string[],
  cut: Cut,
  steps: ReadSteps,
  lexicon: StepsLexicon,
  reader: Reader,
  wouldChange: boolean,
): readonly Act[] | null => {
  const reading = { lexicon, words: lexiconFor(reader.language), steps };
  if (isRinging(tokens, lexicon, steps.waiting))
    return [reportOf(tokens, reading) === 'over' ? next : { intent: 'timers', slots: {} }];
  const lead = cut.said.filter((one) => one.before).flatMap((one) => withoutSmall(one.tokens, lexicon));
  // "The oven is at a hundred and seventy" tells of a step: no thermometer in the food reads that.
  const ofStep = lead.some((word) => steps.anywhere.has(steps.stem(word)));
  const asks = plainest(atATime(cut.asks, tokens, lexicon)).filter(
    ({ degrees }) => degrees === undefined || !ofStep,
  );
  const [first] = asks;
  // Put where no step puts it, and a timer by its own name: neither tells of a step.
  const away = tokens.some(
    (word, at) => lexicon.at('rooms', tokens, at) > 0 && !steps.anywhere.has(steps.stem(word)),
  );
  if ((!first || first.ask === 'placed') && (away || lexicon.has('clock', tokens)))
    if (reportOf(tokens, reading) !== 'over') return null;
  // "A hundred and sixty-five or a hundred and seventy-five": two of them are no reading.
  const figures = asks.filter(({ degrees }) => degrees !== undefined).length;
  if (figures > 1 || (figures === 1 && hasDuration(tokens, reading.words))) return null;
  const before = cut.said.filter((one) => first === undefined || one.before).flatMap((one) => one.tokens);
  const report = reportOf(before, reading);
  // What was eaten is told of the kitchen, whatever else is said with it.
  if (report === 'eaten') return null;
  if (!first) {
    const act = report === 'echo' ? echoOf(tokens, steps, lexicon) : placedIn(tokens, report, steps, lexicon);
    // A thing of the kitchen's own, bought or put away: no word of the steps speaks for it.
    const ofSteps =
      tokens.some((word) => steps.anywhere.has(steps.stem(word))) &&
      !tokens.some(
        (word, at) => lexicon.at('rooms', tokens, at) > 0 && !steps.anywhere.has(steps.stem(word)),
      );
    // "Put some on the shopping list": of no step that does not speak of one.
    const beyond = tokens.some(
      (word, at) => lexicon.at('elsewhere', tokens, at) > 0 && !steps.anywhere.has(steps.stem(word)),
    );
    if (beyond && report !== 'over' && report !== 'not') return null;
    if (act === null || (lexicon.has('deeds', tokens) && !ofSteps && report !== 'over')) return null;
    if (lexicon.has('deeds', tokens) && namesOther(tokens, steps, reader)) return null;
    return [act];
  }
  const reported = report === 'done' || report === 'over' || report === 'placed';
  const ask = first.ask ?? '';
  if (strangers(cut, ask, steps, lexicon) > (strangersAtMost[ask] ?? 2)) return null;
  // A timer called so is no question of the steps.
  if (ask !== 'timer' && ask !== 'next' && lexicon.has('clock', tokens) && !reported) return null;
  // "Set a timer for three minutes": its own, and not the step's.
  if (ask === 'timer' && hasDuration(tokens, reading.words)) return null;
  // "It" and "the" stand in every step: only words that say something find the one meant.
  const after = cut.said.filter((one) => !one.before).flatMap((one) => withoutSmall(one.tokens, lexicon));
  const said = withoutSmall(tokens, lexicon);
  const onNext: Act = { intent: 'done', slots: { number: steps.at + 2 } };
  const acts = asks.flatMap((asked): readonly Act[] =>
    asked.ask === 'timer' && report === 'over' && !steps.waiting
      ? // "They're floating, so time the last bit": the step that comes now, with its time begun.
        [onNext]
      : asked.ask === 'next' && report === 'over' && reachedIn(before, steps, lexicon) > steps.at
        ? [{ ...next, slots: { number: reachedIn(before, steps, lexicon) + 1 } }]
        : asked.ask === 'next' && reported && tellsOfNext(before, steps, lexicon)
          ? [onNext]
          : actsOfAsk(asked, after, said, reported, steps, reader, wouldChange),
  );
  const all = [...new Map(acts.map((act) => [JSON.stringify(act), act])).values()];
  return all.length > 0 ? all : null;
};

/**
 * "It's all hot, we've eaten both tubs, that's the lot": what comes before it tells of steps that are over by then.
 * All of it, with nothing else named, is the dish; what more is told is told of the kitchen.
 */
const eatenUp = (
  guess: Guess,
  dish: StepsAtHand['dish'],
  steps: ReadSteps,
  lexicon: StepsLexicon,
  reader: Reader,
): readonly Act[] | null => {
  const { tokens } = guess;
  const from = eatenFrom(tokens, { lexicon, words: lexiconFor(reader.language), steps });
  // "Can I eat it now", "I am about to eat it": nothing is gone by that.
  const supposed = tokens
    .slice(0, from + 1)
    .some((_, at) => (['asking', 'intent', 'sub'] as const).some((name) => lexicon.at(name, tokens, at) > 0));
  if (from < 0 || supposed) return null;
  const rest = tokens.slice(from);
  const small = rest.every(
    (word, at) =>
      steps.dish.has(steps.stem(word)) ||
      (['self', 'eaten', 'small', 'praise', 'whole', 'state'] as const).some(
        (name) => lexicon.at(name, rest, at) > 0,
      ) ||
      lexicon.at('whole', rest, at - 1) > 1,
  );
  if (small && lexicon.has('whole', rest) && dish)
    return [
      {
        intent: 'finish',
        slots: { item: { ...emptyMention, words: dish.name, candidates: [{ id: dish.id, fit: 1 }] } },
      },
    ];
  if (from === 0) return null;
  const pauses = new Set([...guess.pauses].flatMap((at) => (at > from ? [at - from] : [])));
  const told = toldReading(
    [{ ...guess, heard: rest.join(' '), tokens: rest, said: rest, pauses }],
    undefined,
    undefined,
    reader,
    true,
  );
  return told && !told.partial && told.verdict === 'act' ? told.reading.acts : null;
};

/** Two figures with nothing but "or" between them, in words; null where there are none. */
const eitherOf = (
  said: readonly string[],
  lexicon: StepsLexicon,
  words: Lexicon,
): readonly string[] | null => {
  const figureFrom = (from: number): number => quantityAt(said, from, words)?.length ?? 0;
  for (let at = 1; at < said.length - 1; at += 1) {
    const or = lexicon.at('either', said, at);
    const begins = said.findIndex((_, from) => from < at && from + figureFrom(from) === at);
    const length = or > 0 ? figureFrom(at + or) : 0;
    // "One or two" of something counts.
    const counts = begins >= 0 && (quantityAt(said, begins, words)?.value ?? 0) < coldestAsked;
    if (or > 0 && begins >= 0 && length > 0 && !counts)
      return [said.slice(begins, at).join(' '), said.slice(at + or, at + or + length).join(' ')];
  }
  return null;
};
/** Degrees that are asked of a dish or an oven begin here; below, figures between "or" count something. */
const coldestAsked = 50;

/** Of these, a sentence of the steps answers without their being followed. */
const ofWords: ReadonlySet<string> = new Set([
  ...['how-much', 'whether', 'may', 'told-of', 'when', 'sign', 'batch'],
]);
const ofTimes: ReadonlySet<string> = new Set(['how-long', 'minutes', 'in-all']);
const ofHeat: ReadonlySet<string> = new Set(['how-hot', 'power', 'target']);

const opening: ReadonlySet<string> = new Set(['whether', 'may']);

export interface DishQuestion {
  readonly acts: readonly Act[];
  /** The way of making it whose steps answer. */
  readonly method: string | null;
}

/**
 * What is asked of the ways of making a dish, its name put as "it"; null where no word of them answers. `heats`: it
 * is said to be heated. `bare`: nothing names it or points at it but what was spoken of before.
 */
export const dishQuestion = (
  tokens: readonly string[],
  ways: readonly DishSteps[],
  reader: Reader,
  { heats, bare, locale }: { readonly heats: boolean; readonly bare: boolean; readonly locale: string },
): DishQuestion | null => {
  const lexicon = stepsLexicon(reader.language);
  if (!lexicon || tokens.length > longest) return null;
  // With nothing that names or points at it, only its own words are of it.
  const heating = !bare && (heats || lexicon.has('cooking', tokens));
  const read = ways.map(({ method, texts, dish }) => ({
    method,
    steps: readSteps({ title: '', dish, texts, at: 0, waiting: false, held: false }, locale),
  }));
  const lexis = lexiconFor(reader.language);
  // Of how many at a time, the way that says so answers.
  const limited = lexicon.has('together', tokens) ? read.filter(({ steps }) => quoteLimit(steps, lexis)) : [];
  for (const { method, steps } of limited.length > 0 ? limited : read) {
    const cut = cutOf(tokens, reader, steps, lexicon);
    const asks = atATime(cut?.asks ?? [], tokens, lexicon);
    if (!cut || asks.length === 0) continue;
    const isStrange = (word: string, at: number, all: readonly string[]): boolean =>
      !isKnown(all, at, steps, lexicon) &&
      !(['asking', 'cooking', 'together', 'intent'] as const).some((name) => covers(lexicon, name, all, at));
    if (cut.said.some(({ tokens: said }) => said.some(isStrange))) continue;
    const after = cut.said.flatMap(({ tokens: said }) => withoutSmall(said, lexicon));
    const words = lexis;
    const about = quoteAbout(steps, after, hasTime(words));
    // "How long does it take": what says that it is heated finds no step.
    const others = after.filter((_, at) => lexicon.at('cooking', after, at) === 0);
    const timed = quoteAbout(steps, others, hasTime(words));
    const answers = asks.map(({ ask = '' }): readonly Act[] | null => {
      if (ofTimes.has(ask) && timed) return [asking('whether', timed, false)];
      if (ofTimes.has(ask))
        return heating ? [{ intent: 'reheat', slots: { item: itMention, asked: 'minutes' } }] : null;
      if (ofHeat.has(ask)) return heats && !bare ? [asking('how-hot', null, false)] : null;
      if (!ofWords.has(ask)) return null;
      if (ask === 'batch')
        return heating || timed || bare ? [asking('batch', quoteLimit(steps, words), false)] : null;
      if (ask === 'sign') {
        const sign = quoteSign(steps, words);
        return heating && sign ? [asking('sign', sign, false)] : null;
      }
      const quote = ask === 'how-much' ? quoteAmount(steps, words, others) : ask === 'when' ? about : timed;
      return quote ? [asking(ask === 'when' ? 'when' : 'whether', quote, false)] : null;
    });
    // "How hot does it need to be" asks once: "does it" asks nothing more.
    const lost = answers.some((acts, at) => acts === null && !opening.has(asks[at]!.ask ?? ''));
    const acts = answers.flatMap((one) => one ?? []);
    if (lost || acts.length === 0) continue;
    // How long and how hot are told together.
    const long = acts.find(({ intent }) => intent === 'reheat');
    const all = long ? acts.filter((act) => act === long || act.slots.asked !== 'how-hot') : acts;
    return { acts: [...new Map(all.map((act) => [JSON.stringify(act), act])).values()], method };
  }
  return null;
};

/** The word lies in a phrase of that class. */
const covers = (
  lexicon: StepsLexicon,
  name: Parameters<StepsLexicon['at']>[0],
  tokens: readonly string[],
  at: number,
): boolean => tokens.some((_, from) => from <= at && at < from + lexicon.at(name, tokens, from));

/** What was said as talk of the steps being followed; null when it is about something else. */
export const stepsReading = (
  guess: Guess,
  parsed: Interpretation | undefined,
  score: number | undefined,
  reader: Reader,
  given: StepsAtHand,
  locale: string,
): Interpretation | null => {
  const { tokens, heard } = guess;
  const lexicon = stepsLexicon(reader.language);
  if (!lexicon || tokens.length > longest || given.texts.length === 0) return null;
  const steps = readSteps(given, locale);
  const cut = cutOf(tokens, reader, steps, lexicon);
  // Asked whether to: whatever it names, nothing is to be done yet.
  const asks =
    cut?.asks[0]?.ask === 'which' ||
    (cut?.asks[0]?.ask === 'whether' && parsed?.acts.every(({ intent }) => changing.has(intent)));
  const rings = steps.waiting && isRinging(tokens, lexicon, true);
  if (
    !asks &&
    !rings &&
    isElsewhere(
      tokens,
      parsed,
      score,
      steps,
      lexicon,
      (cut?.asks.length ?? 0) > 0,
      cut?.asks.some(({ ask }) => ask === 'next') ?? false,
      given.held,
    )
  )
    return null;
  // "A hundred and sixty-five or a hundred and seventy-five?" asks which, and reads no thermometer.
  const either = eitherOf(guess.said, lexicon, lexiconFor(reader.language));
  if (either)
    return {
      acts: [
        asking(
          'inside',
          quoteFigure(steps, either) ?? quoteInside(steps, lexiconFor(reader.language)),
          false,
        ),
      ],
      confidence,
      agenda: true,
      heard,
      normalised: guess.said.join(' '),
    };
  const mended = guess.said.length !== tokens.length;
  if (mended && cut?.asks.some(({ ask }) => ask === 'bare-reading')) return null;
  const wouldChange = parsed?.acts.some(({ intent }) => changing.has(intent)) === true;
  const acts =
    eatenUp(guess, given.dish, steps, lexicon, reader) ??
    (cut && actsOf(tokens, cut, steps, lexicon, reader, wouldChange));
  return acts ? { acts, confidence, agenda: true, heard, normalised: tokens.join(' ') } : null;
};
