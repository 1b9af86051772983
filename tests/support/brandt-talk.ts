/** Lines said one after the other in the Brandt kitchen, by Odile: the reply to the last of them. */
import { join } from 'node:path';
import { afterAll, beforeAll } from 'vitest';
import { createPlayer, type Player } from '../accuracy/talk-play.js';
import { talkItemOf } from '../accuracy/talk-items.js';

/** Opens a player before the tests of a file and closes it after them. */
export const brandtTalk = (name: string) => {
  let player: Player;
  let played = 0;
  beforeAll(async () => {
    player = await createPlayer(join(import.meta.dirname, '../data/talk/brandt-kitchen.json'));
  });
  afterAll(() => player.close());
  return async (said: readonly string[]) => {
    const { turns } = await player.play(
      talkItemOf({
        id: `${name}-${(played += 1)}`,
        class: name,
        speaker: 'Odile',
        at: '2026-05-14T18:00',
        before: said.slice(0, -1),
        say: said.at(-1),
        want: {},
      }),
    );
    return turns[said.length - 1]!.reply;
  };
};
