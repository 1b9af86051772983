/** How lessons went: seen by a teacher only after a yes said aloud, and no longer once it is taken back. */
import request from 'supertest';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { lessonsView } from '../../shared/wire/lessons.js';
import { bearer, say, startService, type Service } from '../support/service.js';

let service: Service;
beforeEach(async () => {
  service = await startService();
});
afterEach(() => service.close());

const get = (path: string, token = service.tokens.help) =>
  request(service.app.server).get(path).set(bearer(token));
const hold = async (...said: readonly string[]): Promise<string[]> => {
  const answers: string[] = [];
  for (const text of said) answers.push((await say(service, text)).speech.text);
  return answers;
};
/** The first lesson: done at once, with a hint, passed over, done at once. */
const firstLesson = [
  'lesson one',
  'where is the butter',
  'hint',
  'hint',
  'what is the small jar with the wooden bead',
  'skip this one',
  'where is the milk',
] as const;
const view = async () => lessonsView.parse((await get('/v1/lessons').expect(200)).body);

describe('what a teacher sees', () => {
  it('is what there is to practise, and nothing of how it went before anybody was asked', async () => {
    await hold('lesson one', 'where is the butter');
    const seen = await view();
    expect(seen.lessons).toHaveLength(7);
    expect(seen.lessons[0]?.tasks[0]?.hints.length).toBeGreaterThan(0);
    expect(seen).toMatchObject({ sharing: 'not asked', held: [] });
    await get('/v1/lessons/report').expect(409);
  });

  it('is how each task went, once a yes was said aloud at the end of a lesson, and as a table', async () => {
    const answers = await hold(...firstLesson);
    expect(answers.at(-1)).toMatch(/May your teacher be told/);
    expect((await view()).held).toEqual([]);
    const [thanks] = await hold('yes');
    expect(thanks).toMatch(/stop sharing/);
    const { sharing, held } = await view();
    expect(sharing).toBe('yes');
    expect(held.map(({ key }) => key)).toEqual(['finding']);
    expect(held[0]?.tasks.map(({ how }) => how)).toEqual(['alone', 'hint', 'passed', 'alone']);
    const { body } = await get('/v1/lessons/report').expect(200);
    const table = Buffer.from((body as { file: string }).file, 'base64')
      .toString('utf8')
      .replace('\uFEFF', '');
    const [heading, ...rows] = table.trim().split('\n');
    expect(heading).toBe('lesson,day,task,what,how');
    expect(rows).toHaveLength(4);
    expect(rows[1]).toMatch(/^finding by touch,\d{4}-\d\d-\d\d,2,.*,hint$/);
  });

  it('is nothing after a no, and nothing any more once it was taken back', async () => {
    await hold(...firstLesson, 'no');
    expect(await view()).toMatchObject({ sharing: 'not asked', held: [] });
    await hold('my teacher may see how I did', 'yes');
    expect((await view()).held).toHaveLength(1);
    await hold('stop sharing my lessons');
    expect(await view()).toMatchObject({ sharing: 'no', held: [] });
    await get('/v1/lessons/report').expect(409);
  });

  it('is never given on a word that was not answered with yes', async () => {
    await hold('my teacher may see how I did', 'where is the butter');
    expect(await view()).toMatchObject({ sharing: 'not asked' });
  });

  it('is for devices that may help, and not for those that only speak', async () => {
    await get('/v1/lessons', service.tokens.speak).expect(403);
    await get('/v1/lessons/report', service.tokens.speak).expect(403);
  });
});
