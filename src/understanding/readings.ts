/**
 * Every way one guess of the recogniser can be read: one act, a bare answer to what is being
 * asked, or two acts joined by "and".
 */
import type { DynamicRules, Grammar, Parse } from '../grammar/index.js';
import type { PlainDate } from '../terms/dates.js';
import { answering, rulesExpected } from './expected.js';
import { asUnderstood } from './foods.js';
import {
  ASKING_INTENTS,
  CHANGING_INTENTS,
  type Act,
  type Candidate,
  type Expectation,
  type Intent,
  type Mention,
} from './intents.js';
import { actCost, sentenceCost } from './likelihood.js';
import { readActs } from './meaning.js';
import { mendedSentences, withoutStrays } from './mishearings.js';
import { lexiconFor } from './words/index.js';

export interface Reading {
  readonly acts: readonly Act[];
  /** Natural logarithm; 0 is a sentence all of whose words were expected. */
  readonly score: number;
  /** A word was put back that was not heard. */
  readonly mended?: boolean;
}

export interface Reader {
  readonly grammar: Grammar;
  readonly rules: DynamicRules;
  readonly today: PlainDate;
  readonly language: string;
  readonly expecting: Expectation;
  /** The place she stands before while she tells what is there. */
  readonly standing: string | null;
}

/** Parses looked at per sentence: the best few differ in meaning, the rest in detail. */
const parses = 4;
/** An answer to what was asked is that much likelier (natural logarithm). */
const expectedBonus = 1.5;
/** Two requests in one breath are rarer than one (natural logarithm). */
const compoundCost = -1;
/** And rarer still without a word between them. */
const unjoinedCost = -2;
/** Words between two requests, by language, longest first. */
const joints: Readonly<Record<string, readonly (readonly string[])[]>> = {
  en: [['and', 'then'], ['and', 'also'], ['and'], ['then'], ['but'], ['also']],
  es: [['y', 'luego'], ['y', 'también'], ['y'], ['luego'], ['después'], ['pero'], ['también']],
};

/** What these are about is a food, or something else that is bought. */
const ofFood: ReadonlySet<Intent> = new Set<Intent>([
  ...(['buy-add', 'buy-remove', 'put-away', 'find', 'count', 'keeps', 'cook-temperature'] as const),
  ...(['thaw-plan', 'reheat', 'contains', 'how-old', 'item-date'] as const),
]);
/** Below this no record of hers is what was said. */
const hers = 0.7;

/** A food that was heard as another word is said back as it was understood; a name of hers stays. */
const speltMention = (mention: Mention, language: string, intent: Intent): Mention => {
  const fit = mention.candidates[0]?.fit ?? 0;
  if (mention.words === null || fit === 1) return mention;
  const words = asUnderstood(mention.words, language, fit < hers && ofFood.has(intent));
  if (words === mention.words) return mention;
  return { ...mention, words, candidates: fit < hers ? [] : mention.candidates };
};
const spelt = (act: Act, language: string): Act => {
  const { item, items } = act.slots;
  if (!item && !items) return act;
  const slots = {
    ...act.slots,
    ...(item ? { item: speltMention(item, language, act.intent) } : {}),
    ...(items ? { items: items.map((one) => speltMention(one, language, act.intent)) } : {}),
  };
  return { ...act, slots };
};

const readingOf = (parse: Parse, { today, expecting, language }: Reader): Reading => {
  const bare = parse.rule.startsWith('expect_');
  const acts = readActs(parse.value, today, bare ? 'answer' : undefined).map((act) => spelt(act, language));
  const expected = bare || (acts.length > 0 && answering[expecting].has(acts[0]!.intent));
  const against = acts.reduce((sum, act) => sum + actCost(act, expecting, language), 0);
  return { acts, score: parse.score + against + (expected ? expectedBonus : 0) };
};

/** Readings of the whole as one act, best first. */
const single = (tokens: readonly string[], reader: Reader): readonly Reading[] => {
  const rules = ['act', ...rulesExpected(reader.expecting, reader.grammar)];
  return reader.grammar
    .parse(tokens, { rules, dynamic: reader.rules, limit: parses })
    .map((parse) => readingOf(parse, reader))
    .sort((a, b) => b.score - a.score);
};

/** First words that a second half may leave out: "put the oats in the pantry and the soup in the fridge". */
const carried: Readonly<Record<string, ReadonlySet<string>>> = {
  en: new Set(['put', 'move', 'take', 'freeze', 'add']),
  es: new Set(['pon', 'pongo', 'mueve', 'congela']),
};

const jointAt = (tokens: readonly string[], at: number, language: string): number =>
  joints[language]?.find((joint) => joint.every((word, step) => tokens[at + step] === word))?.length ?? 0;

/** Below this a single reading is so odd that two acts are tried as well. */
const odd = -4;

const questions: ReadonlySet<Intent> = new Set(ASKING_INTENTS);
const changes: ReadonlySet<Intent> = new Set(CHANGING_INTENTS);

/** Words a question begins with after what it is about: "the roast chicken, can that go in the microwave". */
const asking: Readonly<Record<string, ReadonlySet<string>>> = {
  en: new Set([
    ...['can', 'could', 'may', 'should', 'is', 'are', 'was', 'were', 'does', 'do', 'did', 'will', 'would'],
    ...['has', 'have', 'how', 'when', 'where', 'what', 'who', 'which'],
  ]),
};

/** "Thank you for what you have done" is one; so is talk about the talk. */
const isTwoMatters = ([first]: readonly Act[], [question]: readonly Act[]): boolean =>
  first !== undefined &&
  question !== undefined &&
  changes.has(first.intent) &&
  questions.has(question.intent);

/** "put the soup on the second shelf and tell me what is old": each half must be a request by itself. */
const double = (tokens: readonly string[], reader: Reader): readonly Reading[] => {
  const found: Reading[] = [];
  for (let at = 1; at < tokens.length - 1; at += 1) {
    const length = jointAt(tokens, at, reader.language);
    // "The salmon's thawed, can I freeze it": a question needs no word to join it.
    const asks = length === 0 && at > 1 && asking[reader.language]?.has(tokens[at]!) === true;
    if ((length === 0 && !asks) || at + length >= tokens.length) continue;
    const [first] = single(tokens.slice(0, at), reader);
    if (!first || (asks && first.score < odd)) continue;
    const rest = tokens.slice(at + length);
    const [alone] = single(rest, reader);
    const verb = carried[reader.language]?.has(tokens[0]!) ? tokens[0]! : null;
    const [same] = verb ? single([verb, ...rest], reader) : [];
    // One request in two parts is no rarer than one.
    const led = !asks && same && same.acts[0]?.intent === first.acts[0]?.intent ? same : undefined;
    if (led && led.score >= (alone ? alone.score + compoundCost : -Infinity))
      found.push({ acts: [...first.acts, ...led.acts], score: first.score + led.score });
    else if (alone && (!asks || isTwoMatters(first.acts, alone.acts)))
      found.push({
        acts: [...first.acts, ...alone.acts],
        score: first.score + alone.score + (asks ? unjoinedCost : compoundCost),
      });
  }
  return found.sort((a, b) => b.score - a.score).slice(0, 2);
};

/** Words before such a name. */
const leads: readonly (readonly string[])[] = [['what', 'about'], ['how', 'about'], ['as', 'for'], ['and']];
/** A name first and the question after it is rarer than the name in its place (natural logarithm). */
const frontedCost = -1;

/** A name that only sounds like one of hers is no topic. */
const topicFit = 0.72;
/** A name is no longer than that. */
const longestTopic = 5;

/** "And Peter, can he have those": the person such a question is about. */
const personAt = (tokens: readonly string[], from: number, length: number, { rules }: Reader) => {
  const found = rules
    .get('kitchen:person')
    ?.matchesAt(tokens, from)
    .find((match) => match.length === length);
  const { words = '', candidates = [] } = (found?.value ?? {}) as {
    words?: string;
    candidates?: readonly Candidate[];
  };
  return (candidates[0]?.fit ?? 0) >= surelyThem ? { words, candidates } : null;
};
/** Below this, it is a name that only sounds like hers. */
const surelyThem = 0.95;

/** "The carrots, how old are they": the thing first, then what is asked of it. */
const fronted = (tokens: readonly string[], reader: Reader): readonly Reading[] => {
  const found: Reading[] = [];
  const led = leads.find((lead) => lead.every((word, step) => tokens[step] === word))?.length ?? 0;
  for (let at = led + 1; at <= Math.min(led + longestTopic, tokens.length - 2); at += 1) {
    if (!asking[reader.language]?.has(tokens[at]!)) continue;
    const who = personAt(tokens, led, at - led, reader);
    if (who) {
      const [best] = single(tokens.slice(at), reader);
      const [act, ...more] = best?.acts ?? [];
      if (
        best &&
        act &&
        more.length === 0 &&
        questions.has(act.intent) &&
        act.slots.person?.candidates.length === 0
      )
        found.push({
          acts: [{ intent: act.intent, slots: { ...act.slots, person: who } }],
          score: best.score + frontedCost,
        });
      continue;
    }
    const [topic] = reader.grammar
      .parse(tokens.slice(led, at), { rules: ['expect_item'], dynamic: reader.rules, limit: 1 })
      .map((parse) => readingOf(parse, { ...reader, expecting: 'anything' }));
    const item = topic?.acts[0]?.slots.item;
    if (!topic || !item || (item.candidates[0]?.fit ?? 0) < topicFit) continue;
    for (const { acts, score } of single(tokens.slice(at), reader)) {
      const [act] = acts;
      if (!act?.slots.item?.pointer || act.slots.item.words !== null || acts.length > 1) continue;
      // What would change something is said in its usual order.
      if (!questions.has(act.intent)) continue;
      const about: Act = { intent: act.intent, slots: { ...act.slots, item } };
      found.push({ acts: [about], score: score + Math.min(0, topic.score - expectedBonus) + frontedCost });
      break;
    }
  }
  return found;
};

/** Readings in any order of words: slower and less sure, for what the exact wording does not cover. */
const loose = (tokens: readonly string[], reader: Reader): readonly Reading[] =>
  reader.grammar
    .parse(tokens, { rules: ['loose'], dynamic: reader.rules, limit: 2 })
    .map((parse) => readingOf(parse, reader));

/**
 * All readings of one sentence, best first. Only a `thorough` reading tries two acts and any order of
 * words: lesser guesses of a recogniser are worth a look, not a search.
 */
export const readingsOf = (
  tokens: readonly string[],
  reader: Reader,
  thorough: boolean,
): readonly Reading[] => {
  const whole = single(tokens, reader);
  const all =
    !thorough || (whole.length > 0 && whole[0]!.score > odd)
      ? whole
      : [...whole, ...double(tokens, reader), ...fronted(tokens, reader), ...loose(tokens, reader)].sort(
          (a, b) => b.score - a.score,
        );
  const cost = sentenceCost(tokens, reader.language);
  return cost === 0 ? all : all.map(({ acts, score }) => ({ acts, score: score + cost }));
};

/** A sentence with a word put right is that much less likely what was meant (natural logarithm). */
const mendingCost = -2.5;
/** And with a second word: where one was misheard, the next often was too. */
const secondCost = -1;

/** Mended sentences that make sense, after which no others are tried. */
const enoughMended = 3;

/** Readings of a sentence in which a word or two were misheard, best first. */
export const mendedReadings = (tokens: readonly string[], reader: Reader): readonly Reading[] => {
  const found: Reading[] = [];
  for (const mended of mendedSentences(tokens, lexiconFor(reader.language))) {
    // Two words are put right only where one does not do.
    if (found.length > 0 && (mended.words > 1 || found.length >= enoughMended)) break;
    const [best] = single(mended.tokens, reader);
    if (!best || best.score < odd) continue;
    const cost = mendingCost + (mended.words - 1) * secondCost + sentenceCost(mended.tokens, reader.language);
    found.push({ acts: best.acts, mended: true, score: best.score + cost });
  }
  return found.sort((a, b) => b.score - a.score).slice(0, 3);
};

/** What a name said nearly word for word comes to. */
const plainly = 0.9;
const namesOwn = ({ slots }: Act): boolean =>
  [slots.item, ...(slots.items ?? []), slots.place, slots.person].some(
    (mention) => (mention?.candidates[0]?.fit ?? 0) >= plainly,
  );

/**
 * Readings of a sentence less a word that was perhaps put in by the recogniser. Little is needed to make
 * sense of a sentence so: what it is about must be a thing, place or person of this household.
 */
export const strayReadings = (tokens: readonly string[], reader: Reader): readonly Reading[] => {
  const lexicon = lexiconFor(reader.language);
  return withoutStrays(tokens, lexicon)
    .flatMap((rest) => {
      const [best] = single(rest, reader);
      if (!best || best.score < odd || !best.acts.some(namesOwn)) return [];
      return [
        {
          acts: best.acts,
          mended: true,
          score: best.score + mendingCost + sentenceCost(rest, reader.language),
        },
      ];
    })
    .sort((a, b) => b.score - a.score)
    .slice(0, 2);
};
