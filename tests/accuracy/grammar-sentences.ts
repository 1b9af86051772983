/** Sentences that the exact rules can say: so that what is learned agrees with them. */
import { readdirSync, readFileSync } from 'node:fs';
import { openGrammarFile, createSampler } from '../../src/grammar/tools.js';
import { projectFile } from '../../src/project-files.js';
import { createRandom, fill, pick, strangeFoods, type Random } from './wording.js';

export interface GrammarSentence {
  readonly text: string;
  /** The request that the rule says it is. */
  readonly label: string;
  readonly rule: string;
}

/** What the grammar says where it refers to names, days and numbers. */
const saidFor = (uri: string, random: Random): string => {
  const said = (slot: string): string => fill(slot, random);
  if (/item|food/.test(uri)) return said('food');
  if (/goods/.test(uri)) return pick(['bin bags', 'soap', 'foil', 'paper towels'], random);
  if (/place/.test(uri)) return said('place');
  if (/person/.test(uri)) return said('person');
  if (/marker|touch/.test(uri)) return said('mark');
  if (/duration/.test(uri)) return said('length');
  if (/amount/.test(uri)) return `${said('n')} tubs`;
  if (/share/.test(uri)) return 'half';
  if (/date/.test(uri)) return said('date');
  if (/time/.test(uri)) return said('time');
  if (/ordinal/.test(uri)) return pick(['second', 'third', 'last'], random);
  if (/words/.test(uri)) return pick(strangeFoods, random);
  if (/temperature/.test(uri)) return 'seventy degrees';
  if (/watts/.test(uri)) return 'eight hundred watts';
  return said('n');
};

const sampledPerRule = 60;
const longestSample = 25;

/** The same each time; none twice. */
export const grammarSentences = (): GrammarSentence[] => {
  const random = createRandom(11);
  const folder = projectFile('grammars', 'en');
  const without = new Set([
    'main.gram',
    'common.gram',
    'answers.gram',
    'listen.gram',
    'things.gram',
    'sketch.gram',
  ]);
  const sentences = new Map<string, GrammarSentence>();
  for (const file of readdirSync(folder).filter((name) => name.endsWith('.gram') && !without.has(name))) {
    const grammar = openGrammarFile(projectFile('grammars', 'en', file), { roots: [folder] });
    const sample = createSampler(grammar);
    const source = readFileSync(projectFile('grammars', 'en', file), 'utf8');
    for (const [, rule] of source.matchAll(/public \$(\w+)\s*=\s*\{out\.intent/g)) {
      for (let count = 0; count < sampledPerRule; count += 1) {
        const { tokens, value } = sample(rule!, {
          random,
          host: (uri, chance) => {
            const words = saidFor(uri, chance);
            return { tokens: words.split(' '), value: words };
          },
        });
        const label = (value as { intent?: string } | null)?.intent;
        const text = tokens.join(' ');
        if (!label || tokens.length > longestSample || sentences.has(text)) continue;
        sentences.set(text, { text, label, rule: `${file} ${rule}` });
      }
    }
  }
  return [...sentences.values()];
};
