/** Short talk of timers, reminders, messages and the voice, each on what the talk before was of. */
import { describe, expect, test } from 'vitest';
import { brandtTalk } from '../support/brandt-talk.js';

const talk = brandtTalk('clock-talk');
const answerTo = async (said: readonly string[]) => {
  const reply = await talk(said);
  return { text: reply.speech.text, changes: reply.changes.length };
};

const lentils = 'start a fifteen minute timer for the lentils';

describe('of a timer that runs', () => {
  test.each([
    [[lentils, 'when will that go off'], /six fifteen/u],
    [[lentils, 'what time will the lentils be done'], /six fifteen/u],
    [[lentils, 'how long have the lentils got'], /[Ff]ifteen/u],
    [[lentils, 'give them another ten'], /[Tt]wenty-five/u],
    [[lentils, 'add three more minutes to the lentils'], /[Ee]ighteen/u],
    [[lentils, 'hold the lentils timer, I need the burner for the stew'], /paused/u],
    [[lentils, 'the same again for the bottom rack'], /bottom rack.*fifteen/iu],
    [['two minutes, starting now'], /Timer, two minutes/u],
    [['put on a nine minute timer for the second pan of buns'], /pan of buns timer, nine/iu],
  ])('%j', async (said, answer) => {
    expect((await answerTo(said)).text).toMatch(answer);
  });
});

describe('of reminders, messages and settings', () => {
  const vet = 'remind me on Sunday at noon to phone my sister';
  const bread = 'remind me at seven this evening to feed the sourdough';
  test('only what is due then is told', async () => {
    const { text } = await answerTo([vet, bread, 'what do I have reminders for tonight']);
    expect(text).toMatch(/sourdough/u);
    expect(text).not.toMatch(/sister/u);
    expect((await answerTo([vet, 'anything to remind me of tomorrow'])).text).toMatch(/[Nn]o reminder/u);
  });
  test.each([
    [['leave a message for everybody that supper is late'], /whoever asks next: supper is late/u],
    [
      ['leave Theo a message that his boots are wet', 'forget that note I left Theo, he knows already'],
      /Taken back/u,
    ],
    [['when does the summary come', 'move it to nine'], /at nine at night/u],
    [['how would you spell gnocchi, please'], /G, N, O, C, C, H, I/u],
    [['switch to grams and centigrade'], /metric/u],
    [['use celsius', 'yes', 'always use fahrenheit instead of celsius'], /Measures/u],
    [['keep your answers short', 'no good, back to how you were'], /usual length/u],
  ])('%j', async (said, answer) => {
    expect((await answerTo(said)).text).toMatch(answer);
  });
  test('a message is no list, and a food no timer', async () => {
    expect((await answerTo(['what time will the stew be done'])).changes).toBe(0);
    expect((await answerTo(['another five'])).changes).toBe(0);
  });
});
