/** Every phrase that the code names is in the phrase files, with the arguments it cannot do without. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectFile } from '../../src/project-files.js';
import { createVoice } from '../../src/speech/index.js';

const voice = createVoice('en-US');

const sources = readdirSync(projectFile('src'), { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts') && !name.startsWith('web'))
  .map((name) => ({ name, text: readFileSync(join(projectFile('src'), name), 'utf8') }));

/** `say('name', { a, b: … })` where all arguments are written out on the spot. */
const said = sources.flatMap(({ name, text }) =>
  [
    ...text.matchAll(/\b(?:say|tell)\(\s*'([\w-]+)'(\s*\)|\s*,\s*\{([^{}]*(?:\{[^{}]*\}[^{}]*)*)\}\s*\))?/g),
  ].map(([, phrase = '', rest, args]) => ({ name, phrase, rest, args })),
);

const named = (args: string): string[] | null => {
  if (args.includes('...')) return null;
  // What stands inside inner braces and parentheses belongs to the values.
  let flat = args;
  for (let before = ''; before !== flat;)
    [before, flat] = [flat, flat.replace(/\{[^{}]*\}|\([^()]*\)|\[[^[\]]*\]|'[^']*'|`[^`]*`/g, '_')];
  return flat
    .split(',')
    .map((part) => /^\s*(\w+)\s*(?::|$)/.exec(part)?.[1] ?? '')
    .filter((key) => key !== '');
};

describe('phrases named in the code', () => {
  it('are in the phrase files', () => {
    expect(said.length).toBeGreaterThan(100);
    const missing = said
      .filter(({ phrase }) => !voice.phrases.has(phrase))
      .map(({ name, phrase }) => `${name}: ${phrase}`);
    expect([...new Set(missing)]).toEqual([]);
  });

  it('are given what they need, where that can be told from the code', () => {
    const lacking = said.flatMap(({ name, phrase, rest, args }) => {
      if (rest === undefined) return [];
      const given = args === undefined ? [] : named(args);
      if (given === null) return [];
      return [...(voice.takes(phrase) ?? [])]
        .filter(([arg, optional]) => !optional && !given.includes(arg))
        .map(([arg]) => `${name}: ${phrase} lacks $${arg}`);
    });
    expect([...new Set(lacking)]).toEqual([]);
  });
});
