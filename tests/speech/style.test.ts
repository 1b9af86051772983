import { readdirSync, readFileSync } from 'node:fs';
import { parse } from '@fluent/syntax';
import { describe, expect, it } from 'vitest';
import { projectFile } from '../../src/project-files.js';
import { styleProblems } from './style.js';

const usual = { length: 'usual', kind: 'answer' } as const;

describe('the style check', () => {
  it.each([
    ['It is on the 2nd shelf.', 'digits: 2nd'],
    ['Look for the jar.', 'leans on sight: Look for'],
    ['It is the jar with the red lid.', 'leans on sight: red'],
    ['The rice is safe.', 'promises: safe'],
    ['It is here. It is here.', 'said twice: it is here.'],
    ['The stew is on the door. And the stew is on the door too.', 'said twice: the stew is on the door'],
    ['It is {$place}.', 'something was not filled in'],
    ['It is here', 'no end mark'],
    ['It is , here.', 'spaces or stops out of place'],
    [`${'word '.repeat(26).trim()}.`, '26 words, more than 25'],
  ])('finds what is wrong in "%s"', (text, problem) =>
    expect(styleProblems(text, usual).some((found) => found.startsWith(problem))).toBe(true),
  );

  it('finds nothing wrong in a good answer', () => {
    expect(
      styleProblems('The lentil stew is on the second shelf, two days old. Feel for the glass bead.', usual),
    ).toEqual([]);
  });

  it('leaves the household’s own words alone', () => {
    expect(
      styleProblems('The 2% milk and the black beans.', { ...usual, own: ['2% milk', 'black beans'] }),
    ).toEqual([]);
  });

  it('lets lists, steps and full answers be long', () => {
    const long = `${Array.from({ length: 30 }, (_, i) => String.fromCharCode(97 + (i % 26)) + 'x'.repeat(i)).join(' ')}.`;
    expect(styleProblems(long, { length: 'usual', kind: 'list' })).toEqual([]);
    expect(styleProblems(long, { length: 'full', kind: 'answer' })).toEqual([]);
  });
});

describe('the phrase files', () => {
  const folder = projectFile('grammars', 'en', 'phrases');
  const texts = readdirSync(folder)
    .filter((name) => name.endsWith('.ftl'))
    .flatMap((name) =>
      parse(readFileSync(`${folder}/${name}`, 'utf8'), {}).body.flatMap((entry) => {
        const found: { where: string; text: string }[] = [];
        if (entry.type !== 'Message') return found;
        const id = (entry as unknown as { id: { name: string } }).id.name;
        // Lists of nouns are data, not speech.
        if (id.startsWith('nouns-')) return found;
        JSON.stringify(entry, (key, value: unknown) => {
          if (
            typeof value === 'object' &&
            value !== null &&
            (value as { type?: string }).type === 'TextElement'
          )
            found.push({ where: `${name} ${id}`, text: (value as { value: string }).value });
          return value;
        });
        return found;
      }),
    );

  it('hold no digits, nothing that leans on sight and no promise of safety', () => {
    const wrong = texts.flatMap(({ where, text }) =>
      styleProblems(text, usual)
        .filter((problem) => /^(?:digits|leans|promises)/.test(problem))
        .map((problem) => `${where}: ${problem}`),
    );
    expect(texts.length).toBeGreaterThan(50);
    expect(wrong).toEqual([]);
  });
});
