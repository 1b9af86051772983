/** Every `@example` in the English grammar files parses by the rule it stands above. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadGrammar } from '../../src/grammar/index.js';
import { projectFile } from '../../src/project-files.js';
import { INTENTS } from '../../src/understanding/index.js';
import { rulesFor } from '../../src/understanding/grammar-files.js';
import { readActs } from '../../src/understanding/meaning.js';
import { normalise } from '../../src/understanding/words/index.js';
import { clock, martasNames } from './household.js';

const folder = projectFile('grammars', 'en');

interface Example {
  readonly file: string;
  readonly rule: string;
  readonly text: string;
}

const examplesIn = (file: string): Example[] => {
  const source = readFileSync(`${folder}/${file}`, 'utf8');
  const found: Example[] = [];
  for (const [, comment, rule] of source.matchAll(/\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\s*public \$(\w+)\s*=/g)) {
    for (const [, text] of comment!.matchAll(/@example (.+)/g))
      found.push({ file, rule: rule!, text: text!.replace(/\*\/?$/, '').trim() });
  }
  return found;
};

const files = readdirSync(folder).filter((name) => name.endsWith('.gram'));
const examples = files.flatMap(examplesIn);
const rules = rulesFor(martasNames(), 'en-US', clock);

describe('examples in the grammar files', () => {
  it.each(files.filter((file) => examplesIn(file).length > 0))('%s', (file) => {
    const grammar = loadGrammar(`${folder}/${file}`, { roots: [folder] });
    const failing = examples
      .filter((example) => example.file === file)
      .filter(({ rule, text }) => {
        const { tokens } = normalise(text, 'en-US');
        return grammar.parse(tokens, { rules: [rule], dynamic: rules }).length === 0;
      })
      .map(({ rule, text }) => `${rule}: ${text}`);
    expect(failing).toEqual([]);
  });

  it('give meanings that slots can hold, and cover every intent but the bare answer and what is told', () => {
    const grammar = loadGrammar(`${folder}/main.gram`, { roots: [folder] });
    // What is told, and what the guidance ear hears, is put together from constituents, by no rule.
    const intents = new Set<string>([
      ...['answer', 'tell', 'ask', 'ask-step', 'guidance', 'urgent', 'danger'],
      ...['change-reminder'],
    ]);
    for (const { text } of examples) {
      const { tokens } = normalise(text, 'en-US');
      for (const parse of grammar.parse(tokens, { rules: ['act'], dynamic: rules, limit: 4 }))
        for (const act of readActs(parse.value, '2026-05-14')) intents.add(act.intent);
    }
    expect(INTENTS.filter((intent) => !intents.has(intent))).toEqual([]);
  });
});
