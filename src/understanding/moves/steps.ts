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
  type StepsAtHand,
  itMention,
} from '../intents.js';
import { readActs } from '../meaning.js';
import type { Reader } from '../readings.js';
import { lexiconFor } from '../words/lexicon.js';
import { toldReading } from './search.js';
import { type ReadSteps, readSteps } from './steps/at-hand.js';
import { type StepsLexicon, stepsLexicon } from './steps/lexicon.js';
import { type Quote, quoteAbout, quoteAmount, quoteHeat, quoteSign, quoteTime } from './steps/quote.js';
import { type Report, eatenFrom, hasDuration, reportOf } from './steps/report.js';

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
  steps.anywhere.has(steps.stem(tokens[at]!)) ||
  steps.dish.has(steps.stem(tokens[at]!));

interface Asked {
  readonly ask?: string;
  readonly act?: SemanticValue;
  /** So many portions; how much longer, in seconds. */
  readonly number?: number;
  readonly seconds?: number;
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
): boolean => {
  if (!parsed || score === undefined) return false;
  const { acts } = parsed;
  if (score >= sureRule && acts.some((act) => asksAnotherWay(act, steps))) return true;
  if (acts.every(({ intent }) => noMore.has(intent) || (requested && ofTheSteps.has(intent)))) return false;
  const sure = score >= sureRule;
  const [first, ...more] = acts;
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
  more: 1,
  finished: 1,
  again: 2,
  which: 0,
  leave: 0,
  longer: 0,
  cold: 0,
  portions: 0,
};

/** Said of these, what is before them is no report of a step. */
const byThemselves: ReadonlySet<string> = new Set(['leave', 'longer', 'cold', 'portions']);

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
  slots: { item: itMention, duration: seconds },
});
const portions = (number: number): Act => ({
  intent: 'reheat',
  slots: { item: itMention, amount: { value: number, unit: 'portion' } },
});

const actsOfAsk = (
  { ask, act, number, seconds }: Asked,
  after: readonly string[],
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
      return [{ intent: 'done', slots: {} }];
    case 'leave':
      return [{ intent: 'cancel', slots: {} }];
    case 'longer':
      return seconds === undefined ? [] : [longer(seconds)];
    case 'portions':
      return number === undefined ? [] : [portions(number)];
    case 'how-long':
      return answering('how-long', quoteTime(steps, words), reported, steps);
    case 'sign':
      return answering('sign', quoteSign(steps, words), reported, steps);
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
      const quote = quoteAbout(steps, after);
      // "Can I add some salt?" asks, and never puts salt on the list.
      if (!quote && !wouldChange) return [];
      return answering('whether', quote, reported, steps);
    }
    case 'again': {
      // "What did you say about the flour": of that, rather than all of it.
      const quote = quoteAbout(steps, after);
      return [quote ? asking('whether', quote, false) : asking('again', null, reported)];
    }
    case 'finished':
    case 'which':
    case 'need':
    case 'cold':
    case 'in-all':
      return [asking(ask, null, reported)];
    default:
      return [];
  }
};

/** With the next step asked for in the same breath, these ask nothing more. */
const onTheWay: ReadonlySet<string> = new Set([
  'finished',
  'more',
  'again',
  'timer',
  'need',
  'which',
  'proceed',
]);

const reportActs: Readonly<Record<Report, Act | null>> = {
  done: { intent: 'done', slots: {} },
  placed: { intent: 'done', slots: {} },
  over: next,
  not: asking('wait', null, false),
  praise: asking('wait', null, false),
  echo: null,
  eaten: null,
  none: null,
};

const withoutSmall = (tokens: readonly string[], lexicon: StepsLexicon): readonly string[] =>
  tokens.filter((_, at) => lexicon.at('small', tokens, at) === 0);

/** "In the oven, right?", "a bowl shape": words of a step said to hear whether they are right: it is said. */
const echoOf = (tokens: readonly string[], steps: ReadSteps, lexicon: StepsLexicon): Act | null => {
  const quote = quoteAbout(steps, withoutSmall(tokens, lexicon));
  return quote ? asking('whether', quote, false) : null;
};

/** "I've got it in the microwave already": done with all that comes before that. */
const placedIn = (
  tokens: readonly string[],
  report: Report,
  steps: ReadSteps,
  lexicon: StepsLexicon,
): Act | null => {
  const act = reportActs[report];
  const at = tokens.findIndex((_, from) => lexicon.at('appliance', tokens, from) > 0);
  if (act?.intent !== 'done' || at < 0) return act;
  const method = tokens.slice(at, at + lexicon.at('appliance', tokens, at)).join(' ');
  return { ...act, slots: { method } };
};

const actsOf = (
  tokens: readonly string[],
  cut: Cut,
  steps: ReadSteps,
  lexicon: StepsLexicon,
  reader: Reader,
  wouldChange: boolean,
): readonly Act[] | null => {
  const reading = { lexicon, words: lexiconFor(reader.language), steps };
  const nexts = cut.asks.some(({ ask }) => ask === 'next');
  const asks = nexts ? cut.asks.filter(({ ask }) => !onTheWay.has(ask ?? '')) : cut.asks;
  const [first] = asks;
  const before = cut.said.filter((one) => first === undefined || one.before).flatMap((one) => one.tokens);
  const report = reportOf(before, reading);
  // What was eaten is told of the kitchen, whatever else is said with it.
  if (report === 'eaten') return null;
  if (!first) {
    const act = report === 'echo' ? echoOf(tokens, steps, lexicon) : placedIn(tokens, report, steps, lexicon);
    // A thing of the kitchen's own, bought or put away: no word of the steps speaks for it.
    const ofSteps = tokens.some((word) => steps.anywhere.has(steps.stem(word)));
    if (act === null || (lexicon.has('deeds', tokens) && !ofSteps && report !== 'over')) return null;
    return [act];
  }
  const reported = report === 'done' || report === 'over' || report === 'placed';
  const ask = first.ask ?? '';
  if (strangers(cut, ask, steps, lexicon) > (strangersAtMost[ask] ?? 2)) return null;
  // "Set a timer for three minutes": its own, and not the step's.
  if (ask === 'timer' && hasDuration(tokens, reading.words)) return null;
  // "It" and "the" stand in every step: only words that say something find the one meant.
  const after = cut.said.filter((one) => !one.before).flatMap((one) => withoutSmall(one.tokens, lexicon));
  const acts = asks.flatMap((asked) => actsOfAsk(asked, after, reported, steps, reader, wouldChange));
  const all = [...new Map(acts.map((act) => [JSON.stringify(act), act])).values()];
  return all.length > 0 ? all : null;
};

/**
 * "It's all hot, we've eaten both tubs, that's the lot": what comes before it tells of steps that are over by then.
 * All of it, with nothing else named, is the dish; what more is told is told of the kitchen.
 */
const eatenUp = (
  guess: Guess,
  steps: ReadSteps,
  lexicon: StepsLexicon,
  reader: Reader,
): readonly Act[] | null => {
  const { tokens } = guess;
  const from = eatenFrom(tokens, { lexicon, words: lexiconFor(reader.language), steps });
  if (from < 0) return null;
  const rest = tokens.slice(from);
  const small = rest.every(
    (_, at) =>
      (['self', 'eaten', 'small', 'praise', 'whole', 'state'] as const).some(
        (name) => lexicon.at(name, rest, at) > 0,
      ) || lexicon.at('whole', rest, at - 1) > 1,
  );
  if (small && lexicon.has('whole', rest)) return [{ intent: 'finish', slots: { item: itMention } }];
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
  if (!asks && isElsewhere(tokens, parsed, score, steps, lexicon, (cut?.asks.length ?? 0) > 0)) return null;
  const wouldChange = parsed?.acts.some(({ intent }) => changing.has(intent)) === true;
  const acts =
    eatenUp(guess, steps, lexicon, reader) ??
    (cut && actsOf(tokens, cut, steps, lexicon, reader, wouldChange));
  return acts ? { acts, confidence, heard, normalised: tokens.join(' ') } : null;
};
