/** How a dish is got ready, as it was told: asked about, read out, told anew and changed, without its steps being followed. */
import { describe, expect, it } from 'vitest';
import { talked } from '../support/said.js';

const stepsOf = (kitchen: Awaited<ReturnType<typeof talked>>['kitchen'], name: string) =>
  [...kitchen.items.values()].find((item) => item.name === name)?.preparations.map(({ steps }) => steps);

describe('the instructions of a dish', () => {
  it('are begun however they are asked for', async () => {
    for (const asked of [
      'take me through the spring rolls step by step',
      'give me the spring roll steps one at a time',
      'what are the instructions for the spring rolls?',
    ]) {
      const { said, changed } = await talked(asked);
      expect(said, asked).toContain('Vegetable spring rolls in the air fryer');
      expect(changed, asked).toBe(false);
    }
  });

  it('are read out in one go', async () => {
    const { said } = await talked('read me all the spring roll instructions in one go');
    expect(said).toMatch(/165|hundred sixty-five/);
    expect(said).toContain('It is ready');
  });

  it('are told to be there or not, and nothing is begun', async () => {
    const none = await talked('have we got any instructions for the cheddar?', 'next');
    expect(none.answers[0]).toMatch(/^No/);
    expect(none.said).toContain('not going through any steps');
    const some = await talked('do you have instructions for the spring rolls?');
    expect(some.said).toMatch(/^Yes: for the air fryer, two steps/);
  });

  it('are told anew, act by act, and read as they were told', async () => {
    const { kitchen, answers } = await talked(
      'new instructions for the carrot soup: pour it into the blue saucepan, warm it gently, then simmer it for a minute',
      'take me through the carrot soup on the hob',
    );
    expect(stepsOf(kitchen, 'carrot soup')).toContainEqual([
      'pour it into the blue saucepan',
      'warm it gently',
      'simmer it for a minute',
    ]);
    expect(answers[0]).toContain('warm it gently');
    expect(answers[1]).toContain('Pour it into the blue saucepan');
  });

  it('have steps put in, changed and taken out', async () => {
    const [spread, turn] = ['spread them in one layer in the basket', 'turn them over after six minutes'];
    const rolls = 'vegetable spring rolls';
    const added = await talked('add a last step to the spring rolls: shake the basket');
    expect(stepsOf(added.kitchen, rolls)).toEqual([[spread, turn, 'shake the basket']]);
    const changed = await talked('change the first step of the spring rolls to brush them with oil');
    expect(changed.said).toContain('first step, brush them with oil');
    expect(stepsOf(changed.kitchen, rolls)).toEqual([['brush them with oil', turn]]);
    const out = await talked('take the last step of the spring rolls out');
    expect(out.said).toContain('no longer, turn them over');
    expect(stepsOf(out.kitchen, rolls)).toEqual([[spread]]);
  });
});

describe('what is asked of a dish that somebody told how to heat', () => {
  const told =
    'new instructions for the carrot soup in the oven: put the lid on, bake it in two lots at most, take the lid off when it bubbles';

  it('is answered from its own steps before any table', async () => {
    const { said } = await talked(told, 'when do I take the lid off the carrot soup?');
    expect(said).toMatch(/^First: bake it in two lots at most\. Then: take the lid off/);
    const many = await talked(told, 'how much of the carrot soup can I bake at a time?');
    expect(many.said).toContain('two lots at most');
  });

  it('has the inside temperature of guidance beside its own figures', async () => {
    const { said } = await talked('how long do the spring rolls take in the air fryer, and how hot?');
    expect(said).toMatch(/^Twelve minutes in the air fryer at three hundred ninety/);
    expect(said).toContain('one hundred sixty-five degrees Fahrenheit inside');
    const celsius = await talked('how hot is the air fryer for the spring rolls in celsius?');
    expect(celsius.said).toContain('degrees Celsius');
    expect(celsius.said).not.toContain('Fahrenheit');
  });

  it('asks nothing of how it keeps, and a question of that is none of the steps', async () => {
    expect((await talked('how long do the spring rolls keep?')).said).not.toContain('step');
    expect((await talked('can I freeze the carrot soup?')).said).not.toContain('step');
  });

  it('leads on to being taken through it', async () => {
    const { said } = await talked(
      'how long do the spring rolls take?',
      'please take me through it step by step',
    );
    expect(said).toContain('Vegetable spring rolls in the air fryer');
  });
});
