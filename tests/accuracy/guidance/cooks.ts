/** What cooks asked and told, in their own words: `tests/data/guidance/asked-by-cooks.jsonl`. */
import { readFileSync } from 'node:fs';
import { projectFile } from '../../../src/project-files.js';
import type { Question } from './tables.js';

interface Row {
  readonly id: string;
  readonly said: string;
  readonly locale?: string;
  /** A pattern the answer must match; without one the item stands for its first run only. */
  readonly want?: string;
  readonly never?: string;
}

export const cooksQuestions = (): readonly Question[] =>
  readFileSync(projectFile('tests', 'data', 'guidance', 'asked-by-cooks.jsonl'), 'utf8')
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as Row)
    .flatMap(({ id, said, locale, want, never }): Question[] =>
      want === undefined
        ? []
        : [
            {
              table: `asked by cooks, ${id.split('-')[0] ?? ''}`,
              id,
              asked: [said],
              want: {
                matches: new RegExp(want, 'u'),
                never: never === undefined ? null : new RegExp(never, 'u'),
              },
              ...(locale === undefined ? {} : { locale }),
            },
          ],
    );
