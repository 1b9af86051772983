/** Stretches of words with their moods: what the moods are learned from, and what they are judged on. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectFile } from '../../src/project-files.js';
import { moodFeatures, readMoodWords } from '../../src/understanding/learned/mood-features.js';
import { MOODS, type Mood } from '../../src/understanding/learned/mood.js';
import { normalise } from '../../src/understanding/words/index.js';
import { hasOutside, outsideFile, outsideFolder } from '../support/outside.js';
import { labelled, slurp } from './cases.js';
import { grammarSentences } from './grammar-sentences.js';
import { readDialogues } from './cookdial-read.js';
import { clincInPart, clincLabels, clincNear } from './labels.js';
import { moodOfForm, moodOfRequest } from './mood-labels.js';
import { createRandom, wordingFiles, wordingIn } from './wording.js';

export interface MoodExample {
  readonly features: readonly string[];
  readonly mood: Mood;
  readonly weight: number;
  readonly source: string;
  /** What must not be parted in cross-validation. */
  readonly group: string;
  readonly text: string;
}

const words = readMoodWords('en');

interface Labelled {
  readonly text: string;
  readonly mood: Mood;
  readonly group: string;
  readonly weight: number;
}

export const featuresOfStretch = (
  text: string,
  marked: boolean,
  awaited: string | null,
): readonly string[] => {
  const { tokens } = normalise(text, 'en-US');
  return moodFeatures(marked ? [...tokens, '?'] : tokens, words, awaited);
};

const isMarked = (text: string): boolean => text.trim().endsWith('?');
const tokensOf = (text: string): readonly string[] => normalise(text, 'en-US').tokens;

const waits = [
  'yes-no',
  'item',
  'place',
  'amount',
  'date',
  'marker',
  'person',
  'choice',
  'step',
  'length',
] as const;

/** As often as people do, in so many: an answer where one is waited for, anything else where nothing is. */
const awaitedFor = (mood: Mood, chance: number): string | null => {
  if (chance < 0.4) return null;
  const waiting = mood === 'answered' ? 0.75 : 0.5;
  if (chance < 0.4 + 0.6 * (1 - waiting)) return 'anything';
  return waits[Math.floor(chance * 997) % waits.length]!;
};

/** With the mark and without, where it has one. */
const examplesOf = (source: string, all: readonly Labelled[], seed: number): MoodExample[] => {
  const random = createRandom(seed);
  return all.flatMap(({ text, mood, group, weight }) => {
    if (tokensOf(text).length === 0) return [];
    return (isMarked(text) ? [false, true] : [false]).map((marked) => ({
      features: featuresOfStretch(text, marked, awaitedFor(mood, random())),
      mood,
      weight: isMarked(text) ? weight * 0.6 : weight,
      source,
      group,
      text,
    }));
  });
};

const isMood = (name: string): name is Mood => (MOODS as readonly string[]).includes(name);

/** What was told by hand of the talk (tests/data/talk/moods.tsv). */
const handLabelled = (): (Labelled & { readonly file: string })[] => {
  const lines = new Map<string, readonly string[]>();
  const linesIn = (file: string): readonly string[] => {
    let found = lines.get(file);
    if (!found) {
      const outside = /^outside-(.*)$/.exec(file)?.[1];
      const path = outside
        ? join(outsideFolder, 'talk', `${outside}.jsonl`)
        : projectFile('tests', 'data', 'talk', `${file}.jsonl`);
      found = existsSync(path) ? readFileSync(path, 'utf8').split('\n') : [];
      lines.set(file, found);
    }
    return found;
  };
  return readFileSync(projectFile('tests', 'data', 'talk', 'moods.tsv'), 'utf8')
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'))
    .flatMap((row) => {
      const [file, line, from, to, mood] = row.split('\t') as [string, string, string, string, string];
      if (!isMood(mood)) throw new Error(`moods.tsv: no such mood: ${row}`);
      if (linesIn(file).length === 0) return [];
      const { say, said } = JSON.parse(linesIn(file)[Number(line) - 1]!) as { say?: string; said?: string };
      const text = (say ?? said)!.split(/\s+/).slice(Number(from), Number(to)).join(' ');
      if (text === '') throw new Error(`moods.tsv: no such words: ${row}`);
      return [{ file, text, mood, group: `${file} ${line}`, weight: 4 }];
    });
};

/** Kept out of what is learned from: nobody may look at how they are worded. */
export const KEPT_OUT: ReadonlySet<string> = new Set(['spoken-b', 'judged-2026-11-30-evening-b']);

/** The talk that is judged on, by file. */
export const keptOutTalk = (): ReadonlyMap<string, readonly MoodExample[]> => {
  const all = handLabelled();
  return new Map(
    [...KEPT_OUT].map((file) => [
      file,
      examplesOf(
        file,
        all.filter((one) => one.file === file),
        1,
      ),
    ]),
  );
};

/** Sentences of one line of a request: its mood hardly varies. */
const mostOfRequest = 6;

const wordingLabelled = (): Labelled[] =>
  wordingIn(wordingFiles(), createRandom(7), mostOfRequest).flatMap(({ label, line, texts }) =>
    texts.flatMap((text) => {
      const of = moodOfRequest(label, tokensOf(text), false);
      const weight = (of?.sure ? 1 : 0.3) / Math.sqrt(texts.length);
      return of === null ? [] : [{ text, mood: of.mood, group: line, weight }];
    }),
  );

const ownLabelled = (): Labelled[] =>
  wordingIn(['mood-lines'], createRandom(9)).flatMap(({ label, line, texts }) => {
    if (!isMood(label)) throw new Error(`mood-lines: no such mood: ${line}`);
    return texts.map((text) => ({ text, mood: label, group: line, weight: 2 / Math.sqrt(texts.length) }));
  });

const ownFile = (file: string): Labelled[] =>
  labelled(projectFile('tests', 'data', 'kitchen', `${file}.tsv`)).flatMap(({ hypotheses, label }) => {
    const text = hypotheses[0]!.text;
    const mood = clincMood(label ?? 'none', text);
    return mood ? [{ text, mood, group: text, weight: 1 }] : [];
  });

const clincMood = (label: string, text: string): Mood | null => {
  if (label in clincInPart || clincNear.has(label)) return null;
  const [request] = clincLabels[label] ?? ['none' as const];
  if (label === 'shopping_list_update')
    return moodOfRequest('buy-add', tokensOf(text), isMarked(text))?.mood ?? null;
  return moodOfRequest(request!, tokensOf(text), isMarked(text))?.mood ?? null;
};

const clincLabelled = (part: string): Labelled[] =>
  labelled(outsideFile('clinc', `${part}.tsv`)).flatMap(({ hypotheses, label }) => {
    const text = hypotheses[0]!.text;
    const mood = clincMood(label ?? 'none', text);
    return mood ? [{ text, mood, group: text, weight: mood === 'not-ours' ? 0.3 : 1 }] : [];
  });

/** Of SLURP only what is surely not a kitchen's. */
const slurpLabelled = (part: string): Labelled[] =>
  slurp(outsideFile('slurp', `${part}.tsv`)).flatMap(({ hypotheses, label }) => {
    const text = hypotheses[0]!.text;
    if (/^(general|audio|lists|cooking|alarm|calendar|datetime)_/.test(label ?? '')) return [];
    if (/\b(shopping|grocer(y|ies)|buy|timer|remind|reminder|oven|food)\b/.test(text)) return [];
    return [{ text, mood: 'not-ours' as const, group: text, weight: 0.3 }];
  });

const sentences = /[^.?!;]+[.?!;]*/g;

/** Cooks led through recipes: each sentence by its form. */
const cookdialLabelled = (): Labelled[] => {
  const file = join(outsideFolder, 'cookdial', 'dialogues.jsonl');
  if (!existsSync(file)) return [];
  return readDialogues(file).flatMap(({ id, turns }) =>
    turns.flatMap((turn) => {
      if (turn.who !== 'cook') return [];
      return [...turn.text.matchAll(sentences)].flatMap(([sentence]): Labelled[] => {
        const text = sentence.trim();
        const tokens = tokensOf(text);
        if (tokens.length === 0 || /\d$/.test(text)) return [];
        const form = moodOfForm(tokens, isMarked(text));
        const short = tokens.length <= 3 && form !== 'asked' && form !== 'ordered';
        return [
          { text, mood: short ? 'answered' : (form ?? 'answered'), group: `cookdial ${id}`, weight: 0.5 },
        ];
      });
    }),
  );
};

/** Once in a while a rule says what nobody would. */
const grammarLabelled = (): Labelled[] =>
  grammarSentences().flatMap(({ text, label, rule }) => {
    const of = moodOfRequest(label, tokensOf(text), false);
    return of === null ? [] : [{ text, mood: of.mood, group: rule, weight: of.sure ? 0.25 : 0.1 }];
  });

/** Everything that moods are learned from. */
export const moodExamples = (): MoodExample[] => [
  ...examplesOf(
    'talk',
    handLabelled().filter(({ file }) => !KEPT_OUT.has(file)),
    2,
  ),
  ...examplesOf('wording', wordingLabelled(), 3),
  ...examplesOf('grammar', grammarLabelled(), 11),
  ...examplesOf('own', ownLabelled(), 4),
  ...examplesOf('ours', ['wording', 'paraphrases', 'paraphrases-2'].flatMap(ownFile), 5),
  ...examplesOf('cookdial', cookdialLabelled(), 6),
  ...(hasOutside('clinc')
    ? [
        ...examplesOf('clinc-train', clincLabelled('train'), 7),
        ...examplesOf('clinc-val', clincLabelled('val'), 8),
      ]
    : []),
  ...(hasOutside('slurp')
    ? [
        ...examplesOf('slurp-train', slurpLabelled('train'), 9),
        ...examplesOf('slurp-devel', slurpLabelled('devel'), 10),
      ]
    : []),
];
