/** Words with which cooks tell how a step goes: `grammars/<language>/words/steps.txt`. */
import { linesOf } from '../../word-lists.js';
import { type PhraseTable, phraseTable } from '../../words/phrases.js';

const CLASSES = [
  'done',
  'placed',
  'passed',
  'timer',
  'rang',
  'beeps',
  'appliance',
  'reached',
  'tag',
  'eaten',
  'hearing',
  'running',
  'existing',
  'lasted',
  'rooms',
  'either',
  'sub',
  'begun',
  'already',
  'clock',
  'whole',
  'remaining',
  'praise',
  'not',
  'intent',
  'self',
  'state',
  'things',
  'past',
  'ongoing',
  'small',
  'asking',
  'elsewhere',
  'deeds',
  'together',
  'cooking',
  'pointing',
  'somebody',
  'joins',
] as const;
type WordClass = (typeof CLASSES)[number];

export interface StepsLexicon {
  /** Words of a phrase of that class that begins here; 0 when none does. */
  at(name: WordClass, tokens: readonly string[], from: number): number;
  has(name: WordClass, tokens: readonly string[]): boolean;
}

const isClass = (name: string): name is WordClass => (CLASSES as readonly string[]).includes(name);

const build = (lines: readonly string[]): StepsLexicon => {
  const phrases = new Map<WordClass, PhraseTable<true>>();
  const endings = new Map<WordClass, readonly string[]>();
  for (const line of lines) {
    const [name = '', entries = ''] = line.split(':');
    if (!isClass(name)) throw new Error(`words/steps.txt: there is no class "${name}"`);
    const all = entries
      .split(',')
      .map((entry) => entry.trim())
      .filter((entry) => entry !== '');
    phrases.set(name, phraseTable(all.filter((one) => !one.startsWith('-')).map((one) => [one, true])));
    endings.set(
      name,
      all.filter((one) => one.startsWith('-')).map((one) => one.slice(1)),
    );
  }
  /** An ending alone is no word: "red" is not the past of anything. */
  const leastStem = 3;
  const at: StepsLexicon['at'] = (name, tokens, from) => {
    const phrase = phrases.get(name)?.longestAt(tokens, from);
    if (phrase) return phrase.length;
    const token = tokens[from] ?? '';
    const ends = endings
      .get(name)
      ?.some((end) => token.endsWith(end) && token.length >= end.length + leastStem);
    return ends ? 1 : 0;
  };
  return { at, has: (name, tokens) => tokens.some((_, from) => at(name, tokens, from) > 0) };
};

const known = new Map<string, StepsLexicon | null>();

/** Null where a language has no such list: steps are steered there by whole requests alone. */
export const stepsLexicon = (language: string): StepsLexicon | null => {
  let lexicon = known.get(language);
  if (lexicon === undefined) {
    const lines = linesOf(language, 'steps');
    lexicon = lines.length > 0 ? build(lines) : null;
    known.set(language, lexicon);
  }
  return lexicon;
};
