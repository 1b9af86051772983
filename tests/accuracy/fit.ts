/**
 * `npx tsx tests/accuracy/fit.ts`: fits the numbers of src/understanding/cues.ts and
 * src/understanding/confidence.ts on the sentences (tests/data, tests/support/outside.ts) that we develop on, and prints
 * them beside the ones in use. Nothing is written: whoever changes the numbers looks at them first.
 */
import { projectFile } from '../../src/project-files.js';
import { confidenceModel, type Evidence } from '../../src/understanding/confidence.js';
import { cuedIntent, cueModel, type CueModel } from '../../src/understanding/cues.js';
import { createUnderstander } from '../../src/understanding/index.js';
import { normalise } from '../../src/understanding/words/index.js';
import { outsideFile } from '../support/outside.js';
import { martasNames } from '../understanding/household.js';
import { annotated, labelled, recognised, slurp, type Case } from './cases.js';
import { clincInPart, clincLabels } from './labels.js';
import { gotOf, intentRight, runCases } from './score.js';

const data = (...parts: string[]): string => projectFile('tests', 'data', ...parts);
const say = (line: string): void => console.log(line);

// ---------------------------------------------------------------- cues
const talk = Object.keys(clincLabels).filter((label) => !/^(food_last|shopping_list)/.test(label));
const clinc = labelled(outsideFile('clinc', 'train.tsv'));
const strangers = slurp(outsideFile('slurp', 'train.tsv')).filter(
  ({ label }) => !/^(lists|cooking|general|audio)_/.test(label ?? ''),
);
const tokensOf = ({ hypotheses }: Case): readonly string[] => normalise(hypotheses[0]!.text, 'en-US').tokens;
const wanted = clinc
  .filter(({ label }) => talk.includes(label!))
  .map((heard) => [tokensOf(heard), heard.label!] as const);
const unwanted = [
  ...clinc.filter(({ label }) => !(label! in clincLabels) && !(label! in clincInPart)),
  ...strangers,
].map(tokensOf);

/** One stranger taken for ours is as bad as so many of ours declined: strangers are far more common. */
const dear = 2;
const judge = (model: CueModel) => {
  const right = wanted.filter(([tokens, label]) => {
    const intent = cuedIntent(tokens, 'en', null, model);
    return intent !== null && clincLabels[label]!.includes(intent);
  }).length;
  const wrong = unwanted.filter((tokens) => cuedIntent(tokens, 'en', null, model) !== null).length;
  return { right, wrong, worth: right - dear * wrong };
};
const show = (model: CueModel): string => {
  const { right, wrong } = judge(model);
  return `${JSON.stringify(model)}: by cues alone ${right} of ${wanted.length} right, ${wrong} of ${unwanted.length} strangers taken`;
};

const grid: { readonly [Key in keyof CueModel]?: readonly number[] } = {
  some: [0.3, 0.6, 0.9],
  against: [-4, -3, -2],
  stranger: [-1.5, -1.2, -0.9, -0.6],
  enough: [1.2, 1.6, 2, 2.4, 2.8],
  ahead: [0.3, 0.5, 1],
};

/** One number after the other, twice round: the numbers hang together little. */
const fitCues = (): CueModel => {
  let best = cueModel;
  let worth = judge(best).worth;
  for (let round = 0; round < 2; round += 1) {
    for (const [key, values] of Object.entries(grid)) {
      for (const value of values) {
        const tried = { ...best, [key]: value };
        const found = judge(tried).worth;
        if (found > worth) [best, worth] = [tried, found];
      }
    }
  }
  return best;
};

say('== cues');
say(`in use ${show(cueModel)}`);
say(`fitted ${show(fitCues())}`);

// ---------------------------------------------------------------- confidence
const understander = createUnderstander('en-US');
const names = martasNames();
const exact = [
  ...annotated(data('kitchen', 'gold.jsonl')),
  ...annotated(data('kitchen', 'fresh.jsonl')),
  ...recognised(data('asr', 'asr-corpus.jsonl'), data('asr', 'meanings.jsonl')),
];
const samples: { evidence: Evidence; right: boolean }[] = [];
const collect = (
  cases: readonly Case[],
  rightIs: (result: ReturnType<typeof runCases>[number]) => boolean,
) => {
  for (const result of runCases(cases, understander, names)) {
    const evidence = result.understanding.readings[0]?.evidence;
    if (evidence) samples.push({ evidence, right: rightIs(result) });
  }
};
collect(exact, (result) =>
  intentRight({ ...result, got: gotOf({ ...result.understanding, verdict: 'act' }) }),
);
collect(clinc, ({ heard, understanding }) => {
  const meant = clincLabels[heard.label!] ?? clincInPart[heard.label!];
  return understanding.readings[0]!.acts.every(({ intent }) => meant?.includes(intent) ?? false);
});

const features = ({ score, part, mended }: Evidence): readonly number[] => [
  1,
  score,
  part - 1,
  mended ? 1 : 0,
];
const logistic = (x: number): number => 1 / (1 + Math.exp(-x));

/** Logistic regression by gradient descent, held a little towards nought. */
const fitConfidence = (): readonly number[] => {
  const weights = [0, 0, 0, 0];
  for (let step = 0; step < 4000; step += 1) {
    const slope = weights.map((weight) => -0.001 * weight);
    for (const { evidence, right } of samples) {
      const x = features(evidence);
      const off = (right ? 1 : 0) - logistic(x.reduce((sum, value, at) => sum + value * weights[at]!, 0));
      x.forEach((value, at) => (slope[at]! += (off * value) / samples.length));
    }
    slope.forEach((value, at) => (weights[at]! += 0.5 * value));
  }
  return weights;
};
const lossOf = (weights: readonly number[]): number =>
  samples.reduce((sum, { evidence, right }) => {
    const sure = logistic(features(evidence).reduce((all, value, at) => all + value * weights[at]!, 0));
    return sum - Math.log(Math.max(1e-6, right ? sure : 1 - sure));
  }, 0) / samples.length;

const inUse = Object.values(confidenceModel);
const fitted = fitConfidence();
const wrong = samples.filter(({ right }) => !right).length;
say(`\n== confidence: ${samples.length} readings, ${wrong} wrong (bias, score, part, mended; mean log loss)`);
say(`in use ${inUse.join(', ')}: ${lossOf(inUse).toFixed(4)}`);
say(`fitted ${fitted.map((weight) => weight.toFixed(2)).join(', ')}: ${lossOf(fitted).toFixed(4)}`);
