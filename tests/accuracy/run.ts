/**
 * `npm run accuracy`: how well understanding does on the data under tests/data and on other people's (tests/support/outside.ts).
 * `npm run accuracy -- FILE.tsv` any file of `utterance<TAB>label`, labels as in CLINC150.
 * `npm run accuracy -- FILE.jsonl` lines of `{"text" | "nbest", "intent", "slots"}`.
 * `--misheard` runs only the kitchen's sentences with words misheard. `--misses` lists what went wrong; `--compare` trains `@nlpjs/basic` on the same sentences beside it.
 */
import { extname } from 'node:path';
import { projectFile } from '../../src/project-files.js';
import { createUnderstander } from '../../src/understanding/index.js';
import { itemNames, martasNames } from '../understanding/household.js';
import { hasOutside, OUTSIDE_SETS, outsideFile, type OutsideSet } from '../support/outside.js';
import { blindCases, reportBlind, runBlind } from './blind.js';
import { annotated, labelled, recognised, saidPlainly, slurp, type Case } from './cases.js';
import { compareWithToolkit } from './compare.js';
import { readConfusions } from './corrupt.js';
import { clincInPart, clincLabels, clincNear } from './labels.js';
import { reportMisheard } from './misheard.js';
import {
  byLabel,
  calibration,
  destroys,
  exactness,
  intentRight,
  perIntent,
  runCases,
  type LabelCount,
  type Result,
} from './score.js';

const data = (...parts: string[]): string => projectFile('tests', 'data', ...parts);
const understander = createUnderstander('en-US');
const names = martasNames();

const percent = (part: number, whole: number): string =>
  whole === 0 ? '-' : `${((100 * part) / whole).toFixed(1)}%`;
const say = (line = ''): void => console.log(line);
const textOf = ({ heard }: Result): string => heard.hypotheses[0]!.text;

const options = process.argv.slice(2);
const wantsMisses = options.includes('--misses');
const files = options.filter((option) => !option.startsWith('--'));

const known: { confidence: number; right: boolean }[] = [];

const meant = (label: string): readonly string[] | undefined => clincLabels[label] ?? clincInPart[label];

const sum = (
  of: readonly LabelCount[],
  part: 'all' | 'right' | 'accepted' | 'changed' | 'destroyed',
): number => of.reduce((total, count) => total + count[part], 0);

const reportOthers = (others: readonly (readonly [string, LabelCount])[]): void => {
  const all = others.map(([, count]) => count);
  say(
    `false accepts over the other ${others.length} labels: ${sum(all, 'accepted')} of ${sum(all, 'all')}, ${percent(sum(all, 'accepted'), sum(all, 'all'))}` +
      `; of these would change something unasked: ${sum(all, 'changed')}, lose something: ${sum(all, 'destroyed')}`,
  );
  const near = others.filter(([label]) => clincNear.has(label)).map(([, count]) => count);
  say(
    `  of these timers, reminders and voice (a kitchen's own, but not ours by the rule): ${sum(near, 'accepted')}; all else ${sum(all, 'accepted') - sum(near, 'accepted')} of ${sum(all, 'all') - sum(near, 'all')}`,
  );
  const most = others.filter(([, count]) => count.accepted > 0).sort((a, b) => b[1].accepted - a[1].accepted);
  say(`  ${most.map(([label, count]) => `${label} ${count.accepted}/${count.all}`).join(', ')}`);
};

const reportLabels = (title: string, results: readonly Result[]): void => {
  const counts = byLabel(results, meant);
  say(`\n== ${title}: ${results.length} sentences`);
  say('label                     right     of  recall  taken for');
  for (const [label, { right, all, confusions }] of counts) {
    if (!meant(label)) continue;
    const taken = [...confusions].map(([intent, many]) => `${intent} ${many}`).join(', ');
    say(
      `${label.padEnd(24)} ${String(right).padStart(6)} ${String(all).padStart(6)}  ${percent(right, all).padStart(6)}  ${taken}`,
    );
  }
  const ours = [...counts].filter(([label]) => label in clincLabels).map(([, count]) => count);
  if (ours.length > 0)
    say(
      `all of ours: ${sum(ours, 'right')} of ${sum(ours, 'all')}, ${percent(sum(ours, 'right'), sum(ours, 'all'))}`,
    );
  const others = [...counts].filter(([label]) => !meant(label));
  if (others.length > 0) reportOthers(others);
  for (const result of results) {
    if (result.understanding.readings[0] && result.got !== null)
      known.push({
        confidence: result.understanding.readings[0].confidence,
        right: result.got
          .split('+')
          .every((intent) => meant(result.heard.label ?? '')?.includes(intent) ?? false),
      });
  }
  if (wantsMisses) {
    for (const result of results) {
      const expected = meant(result.heard.label ?? '');
      const right = expected
        ? (result.got?.split('+').every((intent) => expected.includes(intent)) ?? false)
        : result.got === null;
      if (!right) say(`  ${result.heard.label}: ${textOf(result)} -> ${result.got ?? 'declined'}`);
    }
  }
};

const reportExact = (title: string, results: readonly Result[]): void => {
  const { all, intent, exact, misses } = exactness(results);
  say(
    `\n== ${title}: ${all} sentences; intent right ${percent(intent, all)}, intent and slots exact ${percent(exact, all)}`,
  );
  const wrongDestroyed = results.filter((result) => destroys(result) && !intentRight(result)).length;
  const unasked = results.filter(
    (result) => result.understanding.verdict === 'act' && result.got !== null && !intentRight(result),
  ).length;
  say(`acted on a wrong intent: ${unasked}; lost something by it: ${wrongDestroyed}`);
  for (const result of results) {
    const best = result.understanding.readings[0];
    if (best && result.got !== null) known.push({ confidence: best.confidence, right: intentRight(result) });
  }
  if (wantsMisses)
    for (const miss of misses) {
      const best = miss.understanding.readings[0];
      say(
        `  ${textOf(miss)}\n     meant ${miss.heard.intent} ${JSON.stringify(miss.heard.slots ?? {})}\n     got   ${miss.got ?? 'declined'} ${best ? best.confidence.toFixed(2) : ''} ${miss.understanding.verdict} ${JSON.stringify(best?.acts.map(({ slots }) => slots) ?? [], (_key, value: unknown) => (value === null || (Array.isArray(value) && value.length === 0) ? undefined : value))?.slice(0, 300) ?? ''}`,
      );
    }
};

const reportIntents = (results: readonly Result[]): void => {
  say('\nintent            meant    got  right  precision  recall');
  for (const [intent, { meant: wanted, got, right }] of [...perIntent(results)].sort()) {
    say(
      `${intent.padEnd(18)}${String(wanted).padStart(5)}${String(got).padStart(7)}${String(right).padStart(7)}${percent(right, got).padStart(11)}${percent(right, wanted).padStart(8)}`,
    );
  }
};

const reportCalibration = (): void => {
  say('\n== calibration: of readings about this sure, how many were right');
  say('confidence     readings  mean   right');
  calibration(known).forEach(({ all, right, sum }, at) => {
    if (all > 0)
      say(
        `${(at / 10).toFixed(1)} to ${((at + 1) / 10).toFixed(1)}   ${String(all).padStart(10)}  ${(sum / all).toFixed(2)}  ${percent(right, all).padStart(6)}`,
      );
  });
};

const run = (cases: readonly Case[]): Result[] => runCases(cases, understander, names);

const here = (set: OutsideSet): boolean => {
  if (!hasOutside(set)) say(`\n== ${set} is not here, so nothing is told of it: ${OUTSIDE_SETS[set]}`);
  return hasOutside(set);
};

const reportSlurp = (): void => {
  const lists = ['devel.tsv', 'train.tsv'].flatMap((file) => slurp(outsideFile('slurp', file)));
  const slurpResults = run(lists);
  const accepted = (some: readonly Result[]): number => some.filter(({ got }) => got !== null).length;
  const inScenario = (scenario: string): Result[] =>
    slurpResults.filter(({ heard }) => heard.label?.startsWith(`${scenario}_`));
  const others = slurpResults.filter(({ heard }) => !/^(lists|cooking|general)_/.test(heard.label ?? ''));
  say(`\n== slurp and its parent: ${lists.length} sentences`);
  const shopping = inScenario('lists').filter((result) =>
    /\b(shopping|grocer(y|ies))\b.*\blist\b/.test(textOf(result)),
  );
  say(
    `lists that name shopping or groceries: understood ${accepted(shopping)} of ${shopping.length}; other lists taken for ours ${accepted(inScenario('lists')) - accepted(shopping)} of ${inScenario('lists').length - shopping.length}`,
  );
  say(
    `cooking (recipes are not ours): accepted ${accepted(inScenario('cooking'))} of ${inScenario('cooking').length}`,
  );
  say(
    `all other scenarios: accepted ${accepted(others)} of ${others.length}, ${percent(accepted(others), others.length)}; would lose something ${others.filter(destroys).length}`,
  );
  if (wantsMisses)
    for (const result of [...inScenario('lists'), ...inScenario('cooking'), ...others])
      say(`  ${result.heard.label}: ${textOf(result)} -> ${result.got ?? 'declined'}`);
};

const misheard = (): void =>
  reportMisheard(
    [...annotated(data('kitchen', 'gold.jsonl')), ...saidPlainly(data('asr', 'meanings.jsonl'))],
    readConfusions(data('asr', 'word-pairs.tsv')),
    understander,
    names,
    wantsMisses,
    say,
  );

if (options.includes('--misheard')) misheard();
else if (files.length > 0) {
  for (const file of files) {
    if (extname(file) === '.jsonl') {
      const results = run(annotated(file));
      reportExact(file, results);
      reportIntents(results);
    } else reportLabels(file, run(labelled(file)));
  }
} else {
  if (here('clinc')) {
    reportLabels('clinc, developed on (train)', run(labelled(outsideFile('clinc', 'train.tsv'))));
    reportLabels(
      'clinc, developed on since (val; 87.7% when first run)',
      run(labelled(outsideFile('clinc', 'val.tsv'))),
    );
  }
  reportLabels('wording of our own', run(labelled(data('kitchen', 'wording.tsv'))));
  reportLabels(
    'wording of our own, written afterwards (83.5% when first run)',
    run(labelled(data('kitchen', 'paraphrases.tsv'))),
  );
  reportLabels(
    'wording of our own, written after that (83.0% when first run)',
    run(labelled(data('kitchen', 'paraphrases-2.tsv'))),
  );

  const blind = blindCases(data('kitchen', 'blind-1.tsv'));
  const unseen = blindCases(data('kitchen', 'blind-2.tsv'));
  const unseenToo = blindCases(data('kitchen', 'blind-3.tsv'));
  const without = createUnderstander('en-US', { without: ['learned'] });
  for (const [title, one] of [
    ['rules and cues only', without],
    ['with what was learned', understander],
  ] as const)
    for (const [which, cases] of [
      ['the first set (at first run, by rules and cues, 77.3%, 20.5%, 95.8%)', blind],
      ['the second set, whose misses nobody has read', unseen],
      ['the third set, whose misses nobody has read', unseenToo],
    ] as const)
      reportBlind(
        `written by somebody who had not seen the grammar, ${title}: ${which}`,
        runBlind(cases, one, names),
        itemNames,
        wantsMisses && one === understander && cases === blind,
        say,
      );

  if (here('slurp')) reportSlurp();

  const gold = annotated(data('kitchen', 'gold.jsonl'));
  const goldResults = run(gold);
  reportExact('kitchen sentences, developed on', goldResults);
  const fresh = run(annotated(data('kitchen', 'fresh.jsonl')));
  reportExact('kitchen sentences, written afterwards (75% exact when first run, learned from since)', fresh);
  const heardResults = run(recognised(data('asr', 'asr-corpus.jsonl'), data('asr', 'meanings.jsonl')));
  reportExact('recognised speech, n-best', heardResults);
  misheard();
  reportIntents([...goldResults, ...heardResults]);
  reportCalibration();
  if (options.includes('--compare') && here('clinc'))
    await compareWithToolkit(
      labelled(outsideFile('clinc', 'train.tsv')),
      labelled(outsideFile('clinc', 'val.tsv')),
      clincLabels,
      say,
    );
}
