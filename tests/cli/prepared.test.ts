/** What is kept of the project's data for the next start: read back alike, and never what it was not made of. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { dictionary } from 'cmu-pronouncing-dictionary';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { compileGrammar, grammarOf } from '../../src/grammar/index.js';
import { prepared } from '../../src/prepared.js';
import { projectFile } from '../../src/project-files.js';
import { pronunciationOf } from '../../src/understanding/names/pronunciations.js';

let folder = '';
let source = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tellshelf-prepared-'));
  source = join(folder, 'words.txt');
  writeFileSync(source, 'salt');
  vi.stubEnv('TELLSHELF_PREPARED', join(folder, 'kept'));
});
afterEach(() => {
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true, force: true });
});

const shelf = (word: string) => new Map([[word, Float32Array.of(1, 2)]]);
const ask = () => {
  let made = 0;
  const value = prepared('shelf', [source], () => {
    made += 1;
    return shelf(readFileSync(source, 'utf8'));
  });
  return { made, value };
};
const kept = (): string => join(folder, 'kept', 'shelf.bin');

describe('what is prepared', () => {
  test('is made once and read back', () => {
    expect(ask()).toEqual({ made: 1, value: shelf('salt') });
    expect(ask()).toEqual({ made: 0, value: shelf('salt') });
    expect(readdirSync(join(folder, 'kept'))).toEqual(['shelf.bin']);
  });

  test('is made anew when what it is made of changes', () => {
    ask();
    writeFileSync(source, 'pepper');
    expect(ask()).toEqual({ made: 1, value: shelf('pepper') });
    expect(ask()).toEqual({ made: 0, value: shelf('pepper') });
  });

  test.each([
    ['cut off', (bytes: Buffer) => bytes.subarray(0, bytes.length - 1)],
    ['emptied', () => Buffer.alloc(0)],
    ['changed in one bit', (bytes: Buffer) => bytes.fill(bytes.at(-1)! ^ 1, bytes.length - 1)],
    ['of something else', (bytes: Buffer) => bytes.fill(0, 0, 32)],
  ])('is made anew when the file is %s', (_, damage) => {
    ask();
    writeFileSync(kept(), damage(readFileSync(kept())));
    expect(ask()).toEqual({ made: 1, value: shelf('salt') });
    expect(ask().made).toBe(0);
  });

  test('is made each time where nobody may write, and where no folder is named', () => {
    vi.stubEnv('TELLSHELF_PREPARED', join(source, 'not-a-folder'));
    expect([ask().made, ask().made]).toEqual([1, 1]);
    vi.stubEnv('TELLSHELF_PREPARED', undefined);
    expect([ask().made, ask().made]).toEqual([1, 1]);
  });
});

test.each(['en', 'es'])('a grammar read back (%s) is the grammar', (language) => {
  const roots = [projectFile('grammars', language)];
  const compiled = compileGrammar(projectFile('grammars', language, 'main.gram'), { roots });
  expect(deserialize(serialize(compiled))).toEqual(compiled);
  const [made, readBack] = [compiled, deserialize(serialize(compiled)) as typeof compiled].map(grammarOf);
  expect(readBack!.publicRules).toEqual(made!.publicRules);
  for (const said of ['undo that', 'yes', 'no', 'deshaz eso', 'what should i use first', 'stop']) {
    const [a, b] = [made, readBack].map((grammar) =>
      grammar!.parse(said.split(' '), { rules: made!.publicRules, limit: 5 }),
    );
    expect(b, said).toEqual(a);
  }
});

test('the pronouncing dictionary is the same, word for word', () => {
  const unlike = Object.entries(dictionary).filter(([word, sounds]) => pronunciationOf(word) !== sounds);
  expect(unlike).toEqual([]);
  for (const none of ['', 'constructor', '__proto__', 'qzx', 'zzzzz', '!', '~', 'ñame', 'a\tb', 'a\nb'])
    expect(pronunciationOf(none), none).toBe(Object.hasOwn(dictionary, none) ? dictionary[none] : null);
});
