/** A talk item's verdict is as strict as its form says. */
import { beforeAll, describe, expect, it } from 'vitest';
import { projectFile } from '../../src/project-files.js';
import { createPlayer, type Player } from './talk-play.js';
import { talkItemOf } from './talk-items.js';

let player: Player;
beforeAll(async () => {
  player = await createPlayer(projectFile('shared', 'demo', 'marta-okafor.json'));
  return () => player.close();
});

let count = 0;
const play = (say: string, want: object, before: readonly string[] = []) =>
  player.play(
    talkItemOf({
      id: `item-${(count += 1)}`,
      class: 'test',
      speaker: 'Marta',
      at: '2026-05-14T18:00',
      before,
      say,
      want,
    }),
  );

describe('talk items', () => {
  it('are right when the record and the words are as wanted', async () => {
    const { verdict, lacking } = await play('set a timer for ten minutes', {
      state: [{ timer: 10 }],
      answer: ['ten minutes'],
    });
    expect(lacking).toEqual([]);
    expect(verdict).toBe('right');
  });

  it('are wrong when something was changed that should not be, or said that should not', async () => {
    expect((await play('set a timer for ten minutes', { state: [{ nothing: true }] })).verdict).toBe('wrong');
    expect((await play('set a timer for ten minutes', { not: ['ten'] })).verdict).toBe('wrong');
    expect((await play('set a timer for ten minutes', { state: [{ timer: 11 }] })).verdict).toBe('wrong');
  });

  it('are missed when nothing was understood', async () => {
    expect((await play('what is the capital of france', { answer: ['paris'] })).verdict).toBe('missed');
  });

  it('are asked when one yes makes them right, and a question when it does not', async () => {
    const gone = { item: 'milk', gone: true };
    const sure = await play('the milk is finished', { state: [gone] });
    expect(['right', 'asked']).toContain(sure.verdict);
    const before = ['set a timer for ten minutes', 'set a timer for twenty minutes'];
    const which = await play('cancel the timer', { state: [{ timer: 999 }] }, before);
    expect(which.turns.length).toBeGreaterThan(before.length);
    expect(which.verdict).toBe('question');
  });

  it('find an item by its very name first, by its place, its amount and its list', async () => {
    const bought = 'put two jars of strawberry jam in the fridge door';
    const { verdict, turns } = await play(bought, { state: [{ item: 'strawberry jam', place: 'door' }] });
    expect(verdict, turns.map(({ reply }) => reply.speech.text).join(' / ')).toBe('right');
    const without = async (part: object) =>
      (await play(bought, { state: [{ item: 'strawberry jam', place: 'door', amount: [1, 2], ...part }] }))
        .verdict;
    expect(await without({})).toBe('right');
    expect(await without({ amount: 30 })).toBe('wrong');
    expect(await without({ place: 'freezer' })).toBe('wrong');
    const listed = { state: [{ list: 'oat biscuits', on: true }] };
    expect((await play('put oat biscuits on the list', listed)).verdict).toBe('right');
  });
});
