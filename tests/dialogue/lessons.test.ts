/** Every lesson can be done by its own last hints, in a kitchen of its own, and is judged by what holds. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { lessonKitchen, lessonsIn } from '../../src/dialogue/lessons/files.js';
import { demoKitchen, livingItems } from '../../src/kitchen/index.js';
import { projectFile } from '../../src/project-files.js';
import { replay, type Replayed } from '../conversations/replay.js';
import { readTalk } from '../conversations/script.js';

const lessons = lessonsIn('en');
const clock = { now: '2026-05-14T15:00:00.000Z', timeZone: 'America/Chicago' };

const play = (lines: readonly string[]): Promise<readonly Replayed[]> =>
  replay(
    readTalk(
      ['kitchen demo', 'at 2026-05-14 10:00', 'as Marta', ...lines.map((line) => `> ${line}`)].join('\n'),
    ),
  );

/** What a last hint says to say: "Say: next." or "Say: tea in the cupboard. Then: no, the fridge." */
const wordsOf = (hint: string): readonly string[] =>
  [...hint.matchAll(/(?:Say|Then): ([^.]+)\./g)].map(([, words]) => words!);

describe('lessons', () => {
  it('are seven, in order, and none promises that food is safe', () => {
    expect(lessons.map(({ key }) => key)).toEqual([
      ...['finding', 'putting-away', 'use-first', 'reheating', 'check', 'power-cut', 'misheard'],
    ]);
    const text = JSON.stringify(lessons);
    expect(text).not.toMatch(/\bsafe\b/i);
  });

  it('take place among twelve things', () => {
    const kitchen = lessonKitchen(demoKitchen(clock).household, clock);
    expect(livingItems(kitchen)).toHaveLength(12);
    expect(kitchen.household).toMatchObject({ id: 'demo', timeZone: 'America/Chicago', region: 'us' });
  });

  it('say the cautions of heat and steam', () => {
    const reheating = lessons.find(({ key }) => key === 'reheating');
    expect(reheating?.cautions.join(' ')).toMatch(/steam burns/i);
    expect(reheating?.cautions.join(' ')).toMatch(/local professional guidance/);
  });

  it.each(lessons.map(({ key }, n) => [n + 1, key] as const))(
    'lesson %i, %s: the last hints do every task, and nothing reaches her own kitchen',
    async (number, key) => {
      const lesson = lessons[number - 1]!;
      const said = [`lesson ${number}`];
      const ends: number[] = [];
      for (const { hints } of lesson.tasks) {
        const words = wordsOf(hints.at(-1)!);
        expect(words.length, `${key}: ${hints.at(-1)}`).toBeGreaterThan(0);
        if (/Ask where the cheddar is/.test(JSON.stringify(hints))) said.push('where is the cheddar');
        said.push(...words);
        ends.push(said.length - 1);
      }
      // Steps are gone through to their end.
      if (key === 'reheating') {
        said.push('next', 'next', 'next', 'next', 'next', 'next', 'done');
        ends.pop();
      }
      const replies = await play([...said, 'stop the lesson', 'where is the sorghum']);
      const texts = replies.map(({ reply }) => reply.speech.text);
      for (const end of ends) expect(texts[end], `${said[end]}\n${texts.join('\n')}`).toMatch(/Done/);
      expect(replies.flatMap(({ reply }) => reply.changes)).toEqual([]);
      expect(texts.at(-2)).toMatch(/back in your own kitchen/);
      expect(texts.at(-1)).toMatch(/sorghum malt drink is/);
    },
  );

  it('are read from files of the form that a teacher writes', () => {
    expect(
      () =>
        JSON.parse(
          readFileSync(projectFile('grammars', 'en', 'lessons', '1-finding.json'), 'utf8'),
        ) as unknown,
    ).not.toThrow();
    expect(lessonsIn('xx')).toEqual([]);
  });
});
