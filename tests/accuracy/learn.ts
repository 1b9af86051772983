/**
 * `npm run learn`: fits what is learned from examples and writes `grammars/en/learned/weights.tsv` and `mood.bin`
 * (`npm run learn -- moods`: only the moods).
 * `npm run learn -- check` writes nothing: it fits on a part and judges the rest, in turn (`moods check`: the moods).
 */
import { writeFileSync } from 'node:fs';
import { projectFile } from '../../src/project-files.js';
import { judge, type Weights, weightsFrom } from '../../src/understanding/learned/weights.js';
import { clincLabels } from './labels.js';
import { allExamples, asTable, fit, type Example, type Fitted } from './learning.js';
import { moodExamples } from './mood-examples.js';
import { fitMoods } from './mood-learning.js';
import { checkMoods } from './moods.js';

const say = (line: string): void => console.log(line);
/** Smaller weights are not written. */
const least = 0.25;

const weightsOf = ({ features, labels, weights }: Fitted): Weights =>
  weightsFrom(
    labels,
    features.map((feature, row) => {
      const entries: number[] = [];
      for (let label = 0; label < labels.length; label += 1) {
        const weight = Number(weights[row * labels.length + label]!.toFixed(1));
        if (Math.abs(weight) >= least) entries.push(label, weight);
      }
      return [feature, entries];
    }),
  );

const check = (examples: readonly Example[]): void => {
  const folds = 5;
  const groups = new Map<string, number>();
  for (const { group } of examples) if (!groups.has(group)) groups.set(group, groups.size % folds);
  const judged: { example: Example; label: string; share: number }[] = [];
  for (let fold = 0; fold < folds; fold += 1) {
    const weights = weightsOf(fit(examples.filter(({ group }) => groups.get(group) !== fold)));
    for (const example of examples.filter(({ group }) => groups.get(group) === fold)) {
      const [best] = judge(example.features, weights);
      judged.push({ example, ...best! });
    }
  }
  for (const enough of [0.4, 0.5, 0.6, 0.7, 0.8, 0.9]) {
    const shown = ['clinc-train', 'clinc-val', 'our wording', 'kitchen', 'wording', 'grammar', 'slurp'].map(
      (source) => {
        const of = judged.filter(({ example }) => example.source === source);
        const ours = of.filter(({ example }) => example.label !== 'none');
        const others = of.filter(({ example }) => example.label === 'none');
        const right = ours.filter(({ example, label, share }) => {
          const meant: readonly string[] = clincLabels[example.original] ?? [example.label];
          return share >= enough && meant.includes(label);
        });
        const taken = others.filter(({ label, share }) => label !== 'none' && share >= enough);
        const part = (some: number, all: number): string =>
          all === 0 ? '-' : `${((100 * some) / all).toFixed(1)}%`;
        return `${source} ${part(right.length, ours.length)}/${part(taken.length, others.length)}`;
      },
    );
    say(`share ${enough}: recall/false accepts ${shown.join(', ')}`);
  }
};

const written = (name: string): string => projectFile('grammars', 'en', 'learned', name);

const learnMoods = (): void => {
  const file = fitMoods(moodExamples());
  writeFileSync(written('mood.bin'), file);
  say(`moods: ${file.length} bytes written`);
};

const learnRequests = (examples: readonly Example[]): void => {
  const table = asTable(fit(examples), least);
  writeFileSync(
    written('weights.tsv'),
    `# Fitted by npm run learn: do not edit. The requests; then each feature, and what it counts for each request by its number from 0.\n${table}`,
  );
  say(`${table.split('\n').length - 2} features written`);
};

const wants = (word: string): boolean => process.argv.includes(word);
if (wants('moods')) {
  if (wants('check')) checkMoods(say);
  else learnMoods();
} else {
  const examples = allExamples();
  say(`${examples.length} examples`);
  if (wants('check')) check(examples);
  else {
    learnRequests(examples);
    learnMoods();
  }
}
