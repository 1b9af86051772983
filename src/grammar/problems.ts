/** Mistakes in grammar files, told so that an editor can jump to them and a person can mend them. */
import type { GrammarProblem } from './api.js';

/** Thrown when a grammar cannot be used; `problems` holds every mistake found, in file order. */
export class GrammarError extends Error {
  readonly problems: readonly GrammarProblem[];
  constructor(problems: readonly GrammarProblem[]) {
    super(problems.map(describeProblem).join('\n'));
    this.name = 'GrammarError';
    this.problems = problems;
  }
}

/** One line: `file:line:column: message; expected …; hint`. */
export const describeProblem = (problem: GrammarProblem): string => {
  const expected = problem.expected === undefined ? '' : ` Expected ${problem.expected}.`;
  const hint = problem.hint === undefined ? '' : ` ${problem.hint}`;
  return `${problem.file}:${problem.line}:${problem.column}: ${problem.message}${expected}${hint}`;
};

/** 1-based line and column of a character offset. CR, LF and CRLF each end a line. */
export const lineAndColumn = (text: string, offset: number): { line: number; column: number } => {
  let line = 1;
  let lineStart = 0;
  const end = Math.min(offset, text.length);
  for (let i = 0; i < end; i++) {
    const code = text.charCodeAt(i);
    if (code === 10 || (code === 13 && text.charCodeAt(i + 1) !== 10)) {
      line++;
      lineStart = i + 1;
    }
  }
  return { line, column: end - lineStart + 1 };
};
