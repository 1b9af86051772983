/** The kitchen's sentences as a poor recogniser would have written them, and what is then made of them. */
import { DESTRUCTIVE_INTENTS, type Understander } from '../../src/understanding/index.js';
import type { HouseholdNames } from '../../src/understanding/names/index.js';
import type { Case } from './cases.js';
import { corruptGuesses, wordErrorRate, type Confusions } from './corrupt.js';
import { changes, exactlyRight, intentRight, runCases, type Result } from './score.js';

/** A case and the words really said. */
export interface MisheardCase extends Case {
  readonly said: string;
}

/** One sentence each, said once; what was recorded several times counts once. */
export const misheardCases = (
  clean: readonly Case[],
  rate: number,
  guesses: number,
  table: Confusions,
): MisheardCase[] => {
  const bySaid = new Map(clean.map((one) => [one.hypotheses[0]!.text, one]));
  return [...bySaid].map(([said, one], at) => ({
    ...one,
    said,
    hypotheses: corruptGuesses(said, rate, at + 1, table, guesses).map((text) => ({ text })),
  }));
};

export const rateOf = (cases: readonly MisheardCase[]): number =>
  wordErrorRate(cases.flatMap(({ said, hypotheses }) => hypotheses.map(({ text }) => [said, text] as const)));

/** Done unasked, and wrong: another request, or the right one of another thing. */
export const destroyedWrongly = (result: Result): boolean =>
  result.understanding.verdict === 'act' &&
  !exactlyRight(result) &&
  (result.understanding.readings[0]?.acts.some(({ intent }) => DESTRUCTIVE_INTENTS.has(intent)) ?? false);

const slotsOf = ({ understanding: { readings } }: Result): string =>
  JSON.stringify({ acts: readings[0]?.acts.map(({ slots }) => slots) }, (_key, value: unknown) =>
    value === null || (Array.isArray(value) && value.length === 0) ? undefined : value,
  ).slice(0, 200);

const percent = (part: number, whole: number): string => `${((100 * part) / whole).toFixed(1)}%`;

export const reportMisheard = (
  clean: readonly Case[],
  table: Confusions,
  understander: Understander,
  names: HouseholdNames,
  wantsMisses: boolean,
  say: (line: string) => void,
): void => {
  say('\n== kitchen sentences misheard as a recogniser was seen to mishear');
  say('word error  guesses      of  intent   exact   asked  declined  acted wrongly  changed so  lost so');
  for (const rate of [0.1, 0.16, 0.25])
    for (const guesses of [1, 5]) {
      const cases = misheardCases(clean, rate, guesses, table);
      const results = runCases(cases, understander, names);
      const share = (holds: (result: Result) => boolean): string =>
        percent(results.filter(holds).length, results.length);
      const acted = ({ understanding: { verdict } }: Result): boolean => verdict === 'act';
      const wrong = results.filter((result) => acted(result) && !intentRight(result));
      const cells = [
        percent(Math.round(1000 * rateOf(cases)), 1000).padStart(10),
        String(guesses).padStart(9),
        String(results.length).padStart(8),
        share(intentRight).padStart(8),
        share(exactlyRight).padStart(8),
        share(({ understanding: { verdict } }) => verdict === 'confirm' || verdict === 'ask-again').padStart(
          8,
        ),
        share(({ got }) => got === null).padStart(10),
        percent(wrong.length, results.length).padStart(15),
        String(wrong.filter(changes).length).padStart(12),
        String(results.filter(destroyedWrongly).length).padStart(9),
      ];
      say(cells.join(''));
      if (!wantsMisses) continue;
      for (const [at, result] of results.entries()) {
        if (exactlyRight(result) || (rate !== 0.16 && !destroyedWrongly(result))) continue;
        const best = result.understanding.readings[0];
        say(
          `  ${cases[at]!.said} [${result.heard.intent} ${JSON.stringify(result.heard.slots ?? {})}]\n     heard ${result.heard.hypotheses.map(({ text }) => text).join(' | ')}\n     ${result.understanding.verdict} ${result.got ?? '-'} ${best?.confidence.toFixed(2) ?? ''} ${slotsOf(result)}`,
        );
      }
    }
};
