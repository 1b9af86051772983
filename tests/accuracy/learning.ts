/** Examples to learn from, and the fit: logistic regression over all requests at once. */
import { projectFile } from '../../src/project-files.js';
import { createUnderstander, INTENTS } from '../../src/understanding/index.js';
import { rulesFor } from '../../src/understanding/grammar-files.js';
import { featuresOf } from '../../src/understanding/learned/features.js';
import { textsOf } from '../../src/understanding/learned/index.js';
import { readSenses } from '../../src/understanding/learned/senses.js';
import { asideOf } from '../../src/understanding/guesses.js';
import { normalise } from '../../src/understanding/words/index.js';
import { outsideFile } from '../support/outside.js';
import { clock, martasNames } from '../understanding/household.js';
import { annotated, labelled, slurp, type Case } from './cases.js';
import { clincInPart, clincLabels, clincNear } from './labels.js';
import { runCases } from './score.js';
import { grammarSentences } from './grammar-sentences.js';
import { createRandom, wordingFiles, wordingIn } from './wording.js';

const data = (...parts: string[]): string => projectFile('tests', 'data', ...parts);

export interface Example {
  readonly features: readonly string[];
  /** A request, or `none`. */
  readonly label: string;
  readonly weight: number;
  /** Where it is from, and a group that must not be parted in cross-validation. */
  readonly source: string;
  readonly group: string;
  readonly text: string;
  /** The label of its file. */
  readonly original: string;
}

const rules = rulesFor(martasNames(), 'en-US', clock);
const senses = readSenses('en');
export const featuresOfText = (text: string): readonly string[] => {
  const { tokens, notes } = normalise(text, 'en-US');
  return featuresOf(textsOf(tokens, asideOf(notes), rules), senses);
};

const intents: ReadonlySet<string> = new Set(INTENTS);

const wordingExamples = (): Example[] =>
  wordingIn(wordingFiles(), createRandom(7)).flatMap(({ file, label, line, texts }) => {
    if (label !== 'none' && !intents.has(label)) throw new Error(`${file}: no such request: ${line}`);
    return texts.map((text): Example => ({
      features: featuresOfText(text),
      label,
      weight: 1,
      source: 'wording',
      group: line,
      text,
      original: label,
    }));
  });

const grammarExamples = (): Example[] =>
  grammarSentences()
    .filter(({ label }) => intents.has(label))
    .map(({ text, label, rule }): Example => ({
      features: featuresOfText(text),
      label,
      weight: 0.5,
      source: 'grammar',
      group: rule,
      text,
      original: label,
    }));

/** Labels of other people's data say less than our requests: the grammar's own reading tells which was meant. */
const labelOf = (original: string, got: string | null): string | null => {
  const ours: readonly string[] | undefined = clincLabels[original];
  if (ours) return got && ours.includes(got) ? got : got?.includes('+') ? null : ours[0]!;
  // A kitchen's own timers are learned of elsewhere; what the rules decline is no request of a kitchen.
  return original in clincInPart || (clincNear.has(original) && got !== null) ? null : 'none';
};

/** Of SLURP, what is surely not a kitchen's. */
const slurpLabel = (original: string, got: string | null): string | null => {
  if (/^(general|audio)_/.test(original)) return null;
  // What the rules take of these may be a kitchen's; what they decline is another's list or lesson.
  return /^(lists|cooking|alarm|calendar|datetime)/.test(original) && got !== null ? null : 'none';
};

const fromCases = (
  source: string,
  cases: readonly Case[],
  weight: number,
  toLabel: (original: string, got: string | null) => string | null,
): Example[] => {
  const results = runCases(cases, createUnderstander('en-US', { without: ['learned'] }), martasNames());
  return results.flatMap(({ heard, got }) => {
    const original = heard.label ?? heard.intent ?? 'none';
    const text = heard.hypotheses[0]!.text;
    const label =
      /\b(shopping|grocer(y|ies)|buy)\b/.test(text) && got === null && source === 'slurp'
        ? null
        : toLabel(original, got);
    return label === null
      ? []
      : [{ features: featuresOfText(text), label, weight, source, group: text, text, original }];
  });
};

const plainLabel = (original: string): string | null => (original.includes('+') ? null : original);

/** Everything that is learned from. The blind sets are not. */
export const allExamples = (): Example[] => [
  ...fromCases('clinc-train', labelled(outsideFile('clinc', 'train.tsv')), 1, labelOf),
  ...fromCases('clinc-val', labelled(outsideFile('clinc', 'val.tsv')), 1, labelOf),
  ...['wording', 'paraphrases', 'paraphrases-2'].flatMap((file) =>
    fromCases('our wording', labelled(data('kitchen', `${file}.tsv`)), 1, labelOf),
  ),
  ...['train', 'devel'].flatMap((file) =>
    fromCases('slurp', slurp(outsideFile('slurp', `${file}.tsv`)), 0.5, slurpLabel),
  ),
  ...['gold', 'fresh'].flatMap((file) =>
    fromCases('kitchen', annotated(data('kitchen', `${file}.jsonl`)), 1, plainLabel),
  ),
  ...wordingExamples(),
  ...grammarExamples(),
];

export interface Fitted {
  readonly features: readonly string[];
  readonly labels: readonly string[];
  /** Row by feature, column by label. */
  readonly weights: Float32Array;
}

const settings = { rounds: 4, step: 0.3, decay: 1e-6, seldom: 2 } as const;

/** The examples are gone through in so many orders; the weights are the mean of what each comes to. */
const orders = [3, 5, 8] as const;

/** The same examples, the same weights. */
export const fit = (examples: readonly Example[]): Fitted => {
  const [first, ...rest] = orders.map((order) => fitInOrder(examples, order));
  const weights = first!.weights.map(
    (weight, at) => rest.reduce((sum, one) => sum + one.weights[at]!, weight) / orders.length,
  );
  return { ...first!, weights };
};

/** Gradient descent with a step of its own for each weight (AdaGrad). */
const fitInOrder = (examples: readonly Example[], order: number): Fitted => {
  const counts = new Map<string, number>();
  for (const { features } of examples)
    for (const feature of features) counts.set(feature, (counts.get(feature) ?? 0) + 1);
  const features = [...counts].filter(([, count]) => count >= settings.seldom).map(([feature]) => feature);
  const rowOf = new Map(features.map((feature, at) => [feature, at]));
  const labels = [...new Set(examples.map(({ label }) => label))].sort();
  const columnOf = new Map(labels.map((label, at) => [label, at]));
  const many = labels.length;
  const weights = new Float32Array(features.length * many);
  const squares = new Float32Array(features.length * many).fill(0.01);
  const rows = examples.map(({ features: own, label, weight }) => ({
    own: Int32Array.from(own.flatMap((feature) => rowOf.get(feature) ?? [])),
    column: columnOf.get(label)!,
    weight,
  }));
  const random = createRandom(order);
  const sums = new Float64Array(many);
  for (let round = 0; round < settings.rounds; round += 1) {
    for (let at = rows.length - 1; at > 0; at -= 1) {
      const other = Math.floor(random() * (at + 1));
      [rows[at], rows[other]] = [rows[other]!, rows[at]!];
    }
    for (const { own, column, weight } of rows) {
      sums.fill(0);
      for (const row of own)
        for (let label = 0; label < many; label += 1) sums[label]! += weights[row * many + label]!;
      const most = Math.max(...sums);
      let all = 0;
      for (let label = 0; label < many; label += 1) all += sums[label] = Math.exp(sums[label]! - most);
      for (let label = 0; label < many; label += 1) {
        const off = weight * (sums[label]! / all - (label === column ? 1 : 0));
        if (Math.abs(off) < 0.001) continue;
        for (const row of own) {
          const cell = row * many + label;
          const slope = off + settings.decay * weights[cell]!;
          squares[cell]! += slope * slope;
          weights[cell]! -= (settings.step * slope) / Math.sqrt(squares[cell]!);
        }
      }
    }
  }
  return { features, labels, weights };
};

/** As `src/understanding/learned/weights.ts` reads it. Weights that hardly count are left out. */
export const asTable = ({ features, labels, weights }: Fitted, least: number): string => {
  const rows = features.flatMap((feature, row) => {
    const entries = labels.flatMap((_label, column) => {
      const weight = weights[row * labels.length + column]!;
      return Math.abs(weight) < least ? [] : [`${column} ${weight.toFixed(1)}`];
    });
    return entries.length === 0 ? [] : [[feature, ...entries].join('\t')];
  });
  return `${[labels.join('\t'), ...rows].join('\n')}\n`;
};
