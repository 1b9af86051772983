/**
 * Talk while steps are followed. What was said is cut into reports, praise and requests by `steps.gram`, whose
 * `$<steps:said>` is any run of words that asks nothing; the words of the steps themselves tell what is a report of
 * them and which of their sentences answers a question.
 */
import { type DynamicRule, type Grammar, type SemanticValue, loadGrammar } from '../../grammar/index.js';
import { projectFile } from '../../project-files.js';
import type { Guess } from '../guesses.js';
import {
  CHANGING_INTENTS,
  type Act,
  type Intent,
  type Interpretation,
  type Mention,
  type StepsAtHand,
} from '../intents.js';
import { readActs } from '../meaning.js';
import type { Reader } from '../readings.js';
import { lexiconFor } from '../words/lexicon.js';
import { type ReadSteps, readSteps } from './steps/at-hand.js';
import { type StepsLexicon, stepsLexicon } from './steps/lexicon.js';
import { type Quote, quoteAbout, quoteAmount, quoteHeat, quoteSign, quoteTime } from './steps/quote.js';
import { type Report, reportOf } from './steps/report.js';

const grammars = new Map<string, Grammar>();
const grammarOf = (language: string): Grammar => {
  let grammar = grammars.get(language);
  if (!grammar) {
    const folder = projectFile('grammars', language);
    grammar = loadGrammar(projectFile('grammars', language, 'steps.gram'), { roots: [folder] });
    grammars.set(language, grammar);
  }
  return grammar;
};

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
  steps.anywhere.has(steps.stem(tokens[at]!));

interface Asked {
  readonly ask?: string;
  readonly act?: SemanticValue;
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
  const [parse] = grammarOf(reader.language).parse(tokens, { rules: ['in_steps'], dynamic, limit: 1 });
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
  return intent === 'follow-up' && slots.number !== undefined;
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
  finished: 1,
  again: 2,
  which: 0,
};

const strangers = (cut: Cut, steps: ReadSteps, lexicon: StepsLexicon): number =>
  cut.said
    .filter(({ before }) => !before)
    .reduce(
      (sum, { tokens }) => sum + tokens.filter((_, at) => !isKnown(tokens, at, steps, lexicon)).length,
      0,
    );

const actOf = (
  { ask, act }: Asked,
  after: readonly string[],
  reported: boolean,
  steps: ReadSteps,
  reader: Reader,
  wouldChange: boolean,
): Act | null => {
  if (act !== undefined) return readActs(act, reader.today)[0] ?? null;
  const words = lexiconFor(reader.language);
  // What is told of the next step is told with it, when this one is done.
  const quoted = (asked: string, quote: Quote | null): Act =>
    reported && quote?.step === steps.at + 1 ? next : asking(asked, quote, reported);
  switch (ask) {
    case 'next':
    case 'more':
      return next;
    case 'meanwhile':
      return reported ? next : asking('meanwhile', null, false);
    case 'timer':
      return { intent: 'done', slots: {} };
    case 'in-all':
      return asking('in-all', null, false);
    case 'how-long':
      return quoted('how-long', quoteTime(steps, words));
    case 'sign':
      return quoted('sign', quoteSign(steps, words));
    case 'how-hot':
      return quoted('how-hot', quoteHeat(steps, words));
    case 'how-much':
      return quoted('how-much', quoteAmount(steps, words, after));
    case 'whether': {
      const quote = quoteAbout(steps, after);
      // "Can I add some salt?" asks, and never puts salt on the list.
      return quote || wouldChange ? quoted('whether', quote) : null;
    }
    case 'finished':
    case 'which':
    case 'need':
    case 'again':
      return asking(ask, null, reported);
    default:
      return null;
  }
};

const reportActs: Readonly<Record<Report, Act | null>> = {
  done: { intent: 'done', slots: {} },
  placed: { intent: 'done', slots: {} },
  over: next,
  not: asking('wait', null, false),
  praise: asking('wait', null, false),
  none: null,
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
  const [first] = cut.asks;
  const before = cut.said.filter((one) => first === undefined || one.before).flatMap((one) => one.tokens);
  const report = reportOf(before, reading);
  if (!first) {
    const act = reportActs[report];
    // A thing of the kitchen's own, bought or put away: no word of the steps speaks for it.
    const ofSteps = tokens.some((word) => steps.anywhere.has(steps.stem(word)));
    if (act === null || (lexicon.has('deeds', tokens) && !ofSteps && report !== 'over')) return null;
    return [act];
  }
  const reported = report === 'done' || report === 'over' || report === 'placed';
  if (strangers(cut, steps, lexicon) > (strangersAtMost[first.ask ?? ''] ?? 2)) return null;
  // "It" and "the" stand in every step: only words that say something find the one meant.
  const after = cut.said
    .filter((one) => !one.before)
    .flatMap((one) => one.tokens.filter((_, at) => lexicon.at('small', one.tokens, at) === 0));
  const acts = cut.asks.flatMap((asked) => actOf(asked, after, reported, steps, reader, wouldChange) ?? []);
  return acts.length > 0 ? acts.slice(0, 1) : null;
};

/** What was said as talk of the steps being followed; null when it is about something else. */
export const stepsReading = (
  { tokens, heard }: Guess,
  parsed: Interpretation | undefined,
  score: number | undefined,
  reader: Reader,
  given: StepsAtHand,
  locale: string,
): Interpretation | null => {
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
  const acts = cut && actsOf(tokens, cut, steps, lexicon, reader, wouldChange);
  return acts ? { acts, confidence, heard, normalised: tokens.join(' ') } : null;
};
