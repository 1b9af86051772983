/**
 * What was said is read in `src/understanding`, by lists of the language's folder; `src/dialogue` reads no words. That is
 * a rule of `npm run check` (`.eslint.config.mjs`): here it is held to what it must catch and what it must let be.
 */
import { ESLint } from 'eslint';
import { describe, expect, it } from 'vitest';
import { projectFile } from '../../src/project-files.js';

const eslint = new ESLint({
  cwd: projectFile(),
  overrideConfigFile: projectFile('.eslint.config.mjs'),
});
const RULES = new Set(['no-restricted-syntax', 'no-restricted-imports']);
const caught = async (code: string, filePath = 'src/dialogue/any.ts'): Promise<number> => {
  const [result] = await eslint.lintText(code, { filePath: projectFile(filePath) });
  return result!.messages.filter(({ ruleId }) => RULES.has(ruleId ?? '')).length;
};

describe('words in dialogue', () => {
  it.each([
    ['a pattern over words', 'export const a = (text: string) => /milk|cream/.test(text);'],
    ['a pattern put together', "export const a = (text: string) => new RegExp('x').test(text);"],
    ['words compared', "export const a = (words: string) => words === 'she';"],
    ['words of a part compared', "export const a = (one: { words: string }) => one.words !== 'overnight';"],
    ['an understanding with its words', "import type { Understanding } from '../understanding/intents.js';"],
    ['a reading with its words', "import type { Interpretation } from '../../understanding/index.js';"],
    ['a quotation taken apart', "import { wordsOf } from '../terms/quote.js';"],
  ])('are caught: %s', async (_what, code) => {
    expect(await caught(code)).toBe(1);
    expect(await caught(code, 'src/understanding/any.ts')).toBe(0);
  });

  it.each([
    ['no words at all', 'export const a = (one: { words: string | null }) => one.words === null;'],
    ['nothing said', "export const a = (one: { words: string }) => one.words === '';"],
    ['figures and marks', 'export const a = (time: string) => /^\\d\\d:\\d\\d$/.test(time);'],
    ['letters of any script', "export const a = (name: string) => name.replace(/\\p{Ll}/u, '');"],
    ['what was understood', "import type { Understood } from '../understanding/intents.js';"],
    ['a quotation said back', "import type { Quote } from '../terms/quote.js';"],
  ])('let be: %s', async (_what, code) => expect(await caught(code)).toBe(0));
});
