/** Phrase files: what they may leave out, and how slips in them are told. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { projectFile } from '../../src/project-files.js';
import { createVoice, PhraseError, PhraseFilesError } from '../../src/speech/index.js';
import { american, listener, say, spoken, us } from './helpers.js';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'phrases-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const voiceOf = (files: Record<string, string>, name: string) => {
  const where = join(folder, name);
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(join(where, path, '..'), { recursive: true });
    writeFileSync(join(where, path), text);
  }
  return createVoice('en-GB', { folders: [projectFile('grammars'), where] });
};
const problemsOf = (run: () => unknown) => {
  try {
    run();
  } catch (error) {
    if (error instanceof PhraseFilesError) return error.problems;
    throw error;
  }
  return [];
};

describe('phrases', () => {
  it('are said at the listener’s length, and as usual where that has no form of its own', () => {
    const found = say('test-found', {
      item: 'lentil stew',
      where: 'on the door',
      days: { kind: 'days', days: 2 },
      made: { kind: 'date', day: '2026-11-23' },
    });
    const at = (length: 'short' | 'usual' | 'full') =>
      american.render({ parts: [found, say('test-extra')] }, { ...listener, length }, us).text;
    expect(at('short')).toBe('On the door.');
    expect(at('usual')).toBe('The lentil stew is on the door, two days old. You may also freeze it.');
    expect(at('full')).toBe(
      'The lentil stew is on the door. It was made last Monday. You may also freeze it.',
    );
  });

  it('take the answer’s own length before the listener’s', () => {
    const parts = [say('test-extra'), say('test-region')];
    expect(american.render({ parts, length: 'short' }, listener, us).text).toBe('Can.');
  });

  it('are never silent: what is empty when short is said as usual', () => {
    const short = { ...listener, length: 'short' } as const;
    expect(american.render({ parts: [say('test-extra')] }, short, us).text).toBe('You may also freeze it.');
  });

  it('may leave out arguments they choose on with [none], and no others', () => {
    expect(spoken(say('test-optional'))).toBe('Made.');
    expect(spoken(say('test-optional', { who: 'Dele' }))).toBe('Made by Dele.');
    expect(() => spoken(say('test-nested'))).toThrow(new PhraseError('test-nested', 'needs $place'));
    expect(american.takes('test-found')).toEqual(
      new Map([
        ['item', false],
        ['where', false],
        ['days', true],
      ]),
    );
    expect(american.takes('nowhere')).toBeNull();
  });

  it('choose by a word argument, and say it where no choice fits', () => {
    expect(spoken(say('test-where', { state: 'freezer' }))).toBe('In the cold.');
    expect(spoken(say('test-where', { state: 'pantry' }))).toBe('In the pantry.');
  });

  it('choose by words with spaces, written with a dash', () => {
    expect(spoken(say('test-method', { method: 'air fryer' }))).toBe('In hot air.');
  });

  it('nest', () => {
    expect(spoken(say('test-nested', { place: say('test-the', { x: 'jar' }) }))).toBe('Take the jar.');
  });

  it('name the phrase that is at fault, however deep it stands', () => {
    expect(() =>
      spoken(say('test-nested', { place: say('test-nested', { place: say('test-the') }) })),
    ).toThrow(new PhraseError('test-the', 'needs $x'));
  });

  it('that are missing throw, or are logged and stood in for when the service speaks', () => {
    expect(() => spoken(say('no-such-phrase'))).toThrow(PhraseError);
    const seen: PhraseError[] = [];
    const service = createVoice('en-US', { onProblem: (error) => seen.push(error) });
    const { text } = service.render({ parts: [say('no-such-phrase')] }, listener, us);
    expect(text).toMatch(/^I have an answer, but no words for it\./);
    expect(seen.map((error) => error.phrase)).toEqual(['no-such-phrase']);
  });
});

describe('sentences', () => {
  it('begin with a capital, end with one mark and have single spaces', () => {
    expect(spoken(say('test-words', { a: '  rice ', b: 'peas!' }))).toBe('Rice and peas!');
    expect(spoken(say('test-nested', { place: 'Marta’s “big” bowl.' }))).toBe('Take Marta’s “big” bowl.');
    expect(spoken(say('test-nested', { place: 'the Vol. 2 box' }))).toBe('Take the Vol. 2 box.');
  });
  it('are not said twice running', () => {
    expect(spoken(say('test-extra'), say('test-extra'))).toBe('You may also freeze it.');
  });
  it('are marked in the order of `sentences`, and said again from any of them', () => {
    const first = american.render(
      { parts: [say('test-extra'), say('test-digits')], question: say('test-nested', { place: 'it' }) },
      listener,
      us,
    );
    expect(first.sentences).toHaveLength(3);
    expect([...first.ssml.matchAll(/<mark name="(s\d)"\/>/g)].map((m) => m[1])).toEqual(['s1', 's2', 's3']);
    const again = spoken(...first.sentences.slice(1).map((text) => say('verbatim', { text })));
    expect(again).toBe('Heat it for three minutes at eight hundred watts. Take it.');
  });
});

describe('phrase files', () => {
  it('of the project can all be used', () => {
    expect(createVoice('en-US').phrases.size).toBeGreaterThan(20);
    expect(createVoice('en-GB').phrases).toEqual(createVoice('en-US').phrases);
  });

  it('of a region stand over those of its language', () => {
    const voice = voiceOf(
      { 'en/phrases/a.ftl': 'x-tin = can\nx-pan = pan\n', 'en-GB/phrases/a.ftl': 'x-tin = tin\n' },
      'region',
    );
    expect(voice.phraseText(say('x-tin'), us)).toBe('tin');
    expect(voice.phraseText(say('x-pan'), us)).toBe('pan');
  });

  it('name file, line and message of every slip', () => {
    const problems = problemsOf(() =>
      voiceOf(
        {
          'en/phrases/a.ftl':
            'x-good = good\n\nx-open = { $a\n\nx-calls = { SHOUT($a) }\nx-ref = { x-gone }\n',
          'en/phrases/b.ftl': 'x-good = twice\nx-bare =\n    .short = only\n',
        },
        'slips',
      ),
    );
    expect(problems).toEqual(
      expect.arrayContaining([
        expect.objectContaining({ file: 'a.ftl', phrase: 'x-open' }),
        expect.objectContaining({ file: 'a.ftl', line: 5, phrase: 'x-calls' }),
        { file: 'a.ftl', line: 6, phrase: 'x-ref', problem: 'speaks of x-gone, which is nowhere' },
        { file: 'b.ftl', line: 1, phrase: 'x-good', problem: 'is already in a.ftl' },
        expect.objectContaining({ file: 'b.ftl', line: 2, phrase: 'x-bare' }),
      ]),
    );
  });

  it('of a language we do not speak are refused', () => {
    expect(() => createVoice('de-DE')).toThrow(RangeError);
  });
});
