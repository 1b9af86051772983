/** How well the moods are told on what was held out, and how far their shares can be believed. */
import { MOODS, type Mood, type MoodShares } from '../../src/understanding/learned/mood.js';
import { keptOutTalk, moodExamples } from './mood-examples.js';
import { crossJudged, fitMoods, judgeAll, type Judgement } from './mood-learning.js';

export const likeliest = (shares: MoodShares): Mood =>
  MOODS.reduce((best, mood) => (shares[best] >= shares[mood] ? best : mood));

const isRight = ({ example, shares }: Judgement): boolean => likeliest(shares) === example.mood;
export const rightOf = (judged: readonly Judgement[]): number =>
  judged.filter(isRight).length / judged.length;

const percent = (share: number): string => (Number.isNaN(share) ? '-' : `${(100 * share).toFixed(1)}%`);

/** The moods that decide what is done. */
export const DECIDING: ReadonlySet<Mood> = new Set(['told', 'asked', 'ordered']);

export const reportMoods = (
  title: string,
  judged: readonly Judgement[],
  say: (line: string) => void,
): void => {
  const deciding = judged.filter(({ example }) => DECIDING.has(example.mood));
  say(
    `\n== moods, ${title}: ${judged.length} stretches, ${percent(rightOf(judged))} right; told, asked and ordered alone ${percent(rightOf(deciding))}`,
  );
  say(`${'meant'.padEnd(10)}${MOODS.map((mood) => mood.padStart(10)).join('')}     right`);
  for (const mood of MOODS) {
    const of = judged.filter(({ example }) => example.mood === mood);
    const taken = MOODS.map((other) => of.filter(({ shares }) => likeliest(shares) === other).length);
    say(
      `${mood.padEnd(10)}${taken.map((count) => String(count).padStart(10)).join('')}${percent(rightOf(of)).padStart(10)}`,
    );
  }
};

const edges = [0.2, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.97, 1.01] as const;

const reportBelief = (judged: readonly Judgement[], say: (line: string) => void): void => {
  say('\nshare of the likeliest mood, and how often it was right');
  edges.slice(1).forEach((to, at) => {
    const from = edges[at]!;
    const of = judged.filter(({ shares }) => {
      const share = shares[likeliest(shares)];
      return share >= from && share < to;
    });
    if (of.length > 0) say(`${from} to ${Math.min(to, 1)}: ${of.length}, ${percent(rightOf(of))}`);
  });
};

/** Judged on talk that is not learned from, then each source on a fit without the fold. Takes minutes. */
export const checkMoods = (say: (line: string) => void): void => {
  const examples = moodExamples();
  const file = fitMoods(examples);
  for (const [title, kept] of keptOutTalk())
    reportMoods(`${title}, never learned from`, judgeAll(kept, file), say);
  for (const source of ['talk', 'clinc-val']) {
    const judged = crossJudged(examples, 3, new Set([source]));
    reportMoods(`${source}, a third held out at a time`, judged, say);
    reportBelief(judged, say);
  }
};
