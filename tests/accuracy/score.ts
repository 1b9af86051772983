/** Runs cases through understanding and counts. */
import {
  CHANGING_INTENTS,
  DESTRUCTIVE_INTENTS,
  type Intent,
  type Understander,
  type Understanding,
} from '../../src/understanding/index.js';
import type { HouseholdNames } from '../../src/understanding/names/index.js';
import { hearing, itemNames } from '../understanding/household.js';
import type { Case } from './cases.js';
import { wrongSlots } from './slots.js';

export interface Result {
  readonly heard: Case;
  readonly understanding: Understanding;
  /** Intents joined with "+", or null when declined. */
  readonly got: string | null;
}

const changing: ReadonlySet<Intent> = new Set(CHANGING_INTENTS);

export const gotOf = ({ verdict, readings }: Understanding): string | null =>
  verdict === 'out-of-scope' || verdict === 'nothing-heard' || !readings[0]
    ? null
    : readings[0].acts.map(({ intent }) => intent).join('+');

export const runCases = (
  cases: readonly Case[],
  understander: Understander,
  names: HouseholdNames,
): Result[] =>
  cases.map((heard) => {
    const understanding = understander.understand(heard.hypotheses, names, hearing());
    return { heard, understanding, got: gotOf(understanding) };
  });

/** Something would change without a question. */
export const changes = ({ understanding }: Result): boolean =>
  understanding.verdict === 'act' &&
  (understanding.readings[0]?.acts.some(({ intent }) => changing.has(intent)) ?? false);

export const destroys = (result: Result): boolean =>
  changes(result) &&
  (result.understanding.readings[0]?.acts.some(({ intent }) => DESTRUCTIVE_INTENTS.has(intent)) ?? false);

export interface LabelCount {
  all: number;
  accepted: number;
  right: number;
  changed: number;
  destroyed: number;
  readonly confusions: Map<string, number>;
}

/** Per label: how many, how many accepted, how many with an intent that answers the label. */
export const byLabel = (
  results: readonly Result[],
  meant: (label: string) => readonly string[] | undefined,
): ReadonlyMap<string, LabelCount> => {
  const counts = new Map<string, LabelCount>();
  for (const result of results) {
    const label = result.heard.label ?? '';
    let count = counts.get(label);
    if (!count) {
      count = { all: 0, accepted: 0, right: 0, changed: 0, destroyed: 0, confusions: new Map() };
      counts.set(label, count);
    }
    count.all += 1;
    if (result.got !== null) count.accepted += 1;
    const right = result.got?.split('+').every((intent) => meant(label)?.includes(intent)) ?? false;
    if (right) count.right += 1;
    else count.confusions.set(result.got ?? '-', (count.confusions.get(result.got ?? '-') ?? 0) + 1);
    if (changes(result)) count.changed += 1;
    if (destroys(result)) count.destroyed += 1;
  }
  return counts;
};

export interface ExactCount {
  all: number;
  intent: number;
  exact: number;
  readonly misses: Result[];
}

export const intentRight = ({ heard, got }: Result): boolean => (heard.intent ?? null) === got;
export const exactlyRight = (result: Result): boolean =>
  intentRight(result) &&
  (result.heard.intent === null ||
    wrongSlots(result.heard.slots ?? {}, result.understanding.readings[0]?.acts ?? [], itemNames).length ===
      0);

export const exactness = (results: readonly Result[]): ExactCount => ({
  all: results.length,
  intent: results.filter(intentRight).length,
  exact: results.filter(exactlyRight).length,
  misses: results.filter((result) => !exactlyRight(result)),
});

/** Precision and recall per intent over cases with a known intent. */
export const perIntent = (results: readonly Result[]) => {
  const counts = new Map<string, { meant: number; got: number; right: number }>();
  const at = (intent: string) => {
    let count = counts.get(intent);
    if (!count) counts.set(intent, (count = { meant: 0, got: 0, right: 0 }));
    return count;
  };
  for (const { heard, got } of results) {
    if (heard.intent) at(heard.intent).meant += 1;
    if (got) at(got).got += 1;
    if (got && got === heard.intent) at(got).right += 1;
  }
  return counts;
};

/** Readings by tenth of confidence: how many, and how many were right. */
export const calibration = (results: readonly { confidence: number; right: boolean }[]) => {
  const bins = Array.from({ length: 10 }, () => ({ all: 0, right: 0, sum: 0 }));
  for (const { confidence, right } of results) {
    const bin = bins[Math.min(9, Math.floor(confidence * 10))]!;
    bin.all += 1;
    bin.sum += confidence;
    if (right) bin.right += 1;
  }
  return bins;
};
