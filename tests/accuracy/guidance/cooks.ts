/** What cooks asked and told, in their own words: the `.jsonl` files of `tests/data/guidance`. */
import { readFileSync } from 'node:fs';
import { projectFile } from '../../../src/project-files.js';
import type { Question } from './tables.js';

interface Row {
  readonly id: string;
  readonly said: string;
  readonly locale?: string;
  readonly region?: 'us' | 'uk';
  /** A pattern the answer must match; without one the item stands for its first run only. */
  readonly want?: string;
  readonly never?: string;
}

const FILES = ['asked-by-cooks.jsonl', 'asked-by-another-cook.jsonl', 'asked-by-a-third-cook.jsonl'];

export const cooksQuestions = (): readonly Question[] =>
  FILES.flatMap((file) => readFileSync(projectFile('tests', 'data', 'guidance', file), 'utf8').split('\n'))
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as Row)
    .flatMap(({ id, said, locale, region, want, never }): Question[] =>
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
              ...(region === undefined ? {} : { region }),
            },
          ],
    );
