/**
 * The talk itself in wording that no rule covers: "that was really useful", "i do not believe so",
 * "scrap that". Cue words of `grammars/<language>/words/cues.txt` are counted for each request; the
 * one that gathers most wins when it gathers enough. Only requests that lose nothing when misheard
 * may have cues: reading the file throws for any other.
 */
import type { Intent } from './intents.js';
import { sentenceCost } from './likelihood.js';
import { linesOf } from './word-lists.js';

/** Requests that cost a sentence at most when misheard. Never one that changes the kitchen. */
const harmless: ReadonlySet<Intent> = new Set<Intent>([
  'thanks',
  'greeting',
  'goodbye',
  'yes',
  'no',
  'maybe',
  'repeat',
  'help',
  'cancel',
  'stop',
  'slower',
  'faster',
]);

type Strength = 'strong' | 'some' | 'against';

/** What each cue counts for, and what is enough. Fitted by `tests/accuracy/fit.ts`. */
export interface CueModel {
  readonly strong: number;
  readonly some: number;
  readonly against: number;
  readonly stranger: number;
  /** A reading needs this much … */
  readonly enough: number;
  /** … and this much more than the next request. */
  readonly ahead: number;
  /** To go before a doubtful reading of the grammar: so much more than that reading's own request gathers. */
  readonly overrule: number;
}

export const cueModel: CueModel = {
  strong: 3,
  some: 0.3,
  against: -4,
  stranger: -0.9,
  enough: 1.6,
  ahead: 0.5,
  overrule: 3,
};

interface Cue {
  readonly words: readonly string[];
  readonly strength: Strength;
}
interface Cues {
  readonly small: ReadonlySet<string>;
  /** By request, then by first word, longest first. */
  readonly byIntent: ReadonlyMap<Intent, ReadonlyMap<string, readonly Cue[]>>;
}

const read = (language: string): Cues => {
  const small = new Set<string>();
  const byIntent = new Map<Intent, Map<string, Cue[]>>();
  for (const line of linesOf(language, 'cues')) {
    const [head = '', entries = ''] = line.split(':');
    const phrases = entries
      .split(',')
      .map((entry) => entry.trim())
      .filter((entry) => entry !== '');
    if (head === 'small') {
      for (const word of phrases) small.add(word);
      continue;
    }
    const [intent, strength] = head.split(' ') as [Intent, Strength];
    if (!harmless.has(intent) || !['strong', 'some', 'against'].includes(strength))
      throw new Error(`cues.txt: "${head}" is no request that may have cues, or no strength`);
    const index = byIntent.get(intent) ?? new Map<string, Cue[]>();
    byIntent.set(intent, index);
    for (const phrase of phrases) {
      const words = phrase.split(' ');
      index.set(words[0]!, [...(index.get(words[0]!) ?? []), { words, strength }]);
    }
  }
  for (const index of byIntent.values())
    for (const cues of index.values()) cues.sort((a, b) => b.words.length - a.words.length);
  return { small, byIntent };
};

const known = new Map<string, Cues>();
const cuesOf = (language: string): Cues => {
  let cues = known.get(language);
  if (!cues) known.set(language, (cues = read(language)));
  return cues;
};

/** Requests for which the same words speak, and whose mix-up costs nothing. */
const kin: Partial<Record<Intent, Intent>> = {
  cancel: 'stop',
  stop: 'cancel',
  slower: 'faster',
  faster: 'slower',
};

/** Longer sentences are hardly about the talk alone. */
const longestSentence = 24;

/** How much each request gathers from the words, most first. Empty where nothing speaks for any. */
export const gathered = (
  tokens: readonly string[],
  language: string,
  model: CueModel = cueModel,
): readonly { readonly intent: Intent; readonly score: number }[] => {
  if (tokens.length > longestSentence) return [];
  const { small, byIntent } = cuesOf(language);
  const elsewhere = sentenceCost(tokens, language);
  const scores: { intent: Intent; score: number }[] = [];
  for (const [intent, index] of byIntent) {
    let score = elsewhere;
    let speaks = false;
    for (let at = 0; at < tokens.length;) {
      const from = at;
      const cue = index
        .get(tokens[at]!)
        ?.find(({ words }) => words.every((word, step) => tokens[from + step] === word));
      if (cue) {
        score += model[cue.strength];
        speaks ||= cue.strength === 'strong';
        at += cue.words.length;
      } else {
        if (!small.has(tokens[at]!)) score += model.stranger;
        at += 1;
      }
    }
    if (speaks) scores.push({ intent, score });
  }
  return scores.sort((a, b) => b.score - a.score);
};

/**
 * The request that cue words speak for, or null. `parsed` is what the grammar doubtfully made of it:
 * then the cues must speak clearly louder for another.
 */
export const cuedIntent = (
  tokens: readonly string[],
  language: string,
  parsed: Intent | null = null,
  model: CueModel = cueModel,
): Intent | null => {
  if (parsed !== null && !harmless.has(parsed)) return null;
  const all = gathered(tokens, language, model);
  const [best] = all;
  const next = all.find(({ intent }) => best && intent !== best.intent && intent !== kin[best.intent]);
  if (!best || best.score < model.enough || best.score - (next?.score ?? 0) < model.ahead) return null;
  if (parsed === null) return best.intent;
  const own = all.find(({ intent }) => intent === parsed)?.score ?? 0;
  return best.intent !== parsed && best.score - own >= model.overrule ? best.intent : null;
};
