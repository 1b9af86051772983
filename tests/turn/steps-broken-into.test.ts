/** In the middle of a dish: back from the door, a step skipped, minds changed; and the ways of a dish told and asked. */
import { describe, expect, test } from 'vitest';
import { talked } from '../support/said.js';

const begin = 'take me through the spring rolls step by step';

describe('while steps are read', () => {
  test('a step is skipped, and nothing broken off', async () => {
    const { answers, said } = await talked(begin, 'skip it', 'next');
    expect(answers[1]).not.toContain('I stop');
    expect(said).not.toContain('not going through any steps');
  });
  test('who comes back is told the step she was at', async () => {
    const { answers } = await talked(begin, 'next', "right, I'm back, where had we got to?");
    expect(answers[2]).toMatch(/second/i);
  });
  test('a mind changed breaks them off', async () => {
    const { said } = await talked(begin, 'actually I have changed my mind about the recipe', 'next');
    expect(said).toContain('not going through any steps');
  });
});

describe('the ways of a dish', () => {
  test('are asked for', async () => {
    const { said } = await talked('what ways of heating the spring rolls have we got?');
    expect(said).toMatch(/^Yes: for the air fryer/);
  });
  test('are told by showing how', async () => {
    const { kitchen } = await talked(
      "here's how to warm the carrot soup in the microwave: put the lid on loosely, heat it for four minutes, then stir it",
    );
    const soup = [...kitchen.items.values()].find(({ name }) => name === 'carrot soup');
    const steps = soup?.preparations.flatMap((one) => one.steps);
    expect(steps).toEqual(expect.arrayContaining(['heat it for four minutes', 'stir it']));
  });
  test('are timed, from wherever it comes', async () => {
    const { said } = await talked('how long do the spring rolls take straight from the freezer?');
    expect(said).toMatch(/minutes/);
    expect(said).not.toContain('months');
  });
});
