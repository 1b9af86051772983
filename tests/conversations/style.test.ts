/**
 * How the answers of the transcripts read aloud. They are the text of the transcripts themselves,
 * which `conversations.test.ts` holds to what is really said.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readTalk } from './script.js';

const folder = join(import.meta.dirname, 'talks');
const answers = readdirSync(folder)
  .filter((name) => name.endsWith('.talk'))
  .flatMap((name) =>
    readTalk(readFileSync(join(folder, name), 'utf8')).turns.map(({ line, expected }) => ({
      at: `${name}:${line}`,
      text: expected.join(' '),
    })),
  )
  .filter(({ text }) => text !== '');

const words = (text: string): number => text.split(/\s+/).filter(Boolean).length;
const sentences = (text: string): string[] => text.split(/(?<=[.?!])\s+/);

/** A list names several things: after a colon, with commas or semicolons between them, or after their count. */
const isList = (text: string): boolean =>
  /:[^.?!]*(,|;| and | or )/.test(text) ||
  /;/.test(text) ||
  (text.match(/,/g) ?? []).length >= 2 ||
  /^(Yes, )?\w+( things put away| of them|)\. \S/.test(text);

const most = 25;

describe('the answers of all transcripts', () => {
  test('are many', () => expect(answers.length).toBeGreaterThan(400));

  test('are written as they are spoken: no digits, no markup, nothing left unfilled', () => {
    expect(
      answers.filter(({ text }) => /\d|[<>{}[\]]|\b(undefined|null|none\b.*\bnone)\b/.test(text)),
    ).toEqual([]);
  });

  test('rely on no sight', () => {
    expect(
      answers.filter(({ text }) =>
        /\b(see below|see above|on the screen|as shown|click|tap here|look at)\b/i.test(text),
      ),
    ).toEqual([]);
  });

  test('say nothing twice', () => {
    const twice = answers.filter(({ text }) => new Set(sentences(text)).size !== sentences(text).length);
    expect(twice).toEqual([]);
  });

  test('never call food safe', () => {
    expect(answers.filter(({ text }) => /\bis safe\b|\bsafe to eat\b/i.test(text))).toEqual([]);
  });

  test(`lead with a sentence of at most ${most} words, unless it lists`, () => {
    const long = answers.filter(
      ({ text }) => words(sentences(text)[0]!) > most && !isList(sentences(text)[0]!),
    );
    expect(long).toEqual([]);
  });

  test(`are within ${most} words where they are no list`, () => {
    const plain = answers.filter(({ text }) => !isList(text));
    const long = plain.filter(({ text }) => words(text) > most);
    expect(long).toEqual([]);
  });
});
