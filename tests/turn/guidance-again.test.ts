/** A question of guidance asked again with one thing other than before, and what people are told to be, kept whole. */
import { describe, expect, test } from 'vitest';
import { talked } from '../support/said.js';

describe('guidance asked again', () => {
  test('of the same food, kept elsewhere', async () => {
    const { answers } = await talked('how long does gravy keep in the fridge', 'and if I freeze it');
    expect(answers[0]).toContain('fridge');
    expect(answers[1]).toContain('frozen');
  });
  test('of the same food, thawed otherwise', async () => {
    const { answers } = await talked(
      'can I refreeze lamb chops that I thawed in the fridge',
      'and if I thawed them in cold water',
    );
    expect(answers[0]).toMatch(/^Yes/);
    expect(answers[1]).toContain('only then');
  });
  test('of another food, with all that was told of the fridge', async () => {
    const { answers } = await talked(
      'the power was off and the fridge was above forty degrees for three hours, can I keep the yoghurt',
      'what about lobster',
    );
    expect(answers[1]).toContain('throw it out');
  });
  test('and what is told after it asks nothing', async () => {
    const { answers, changed } = await talked(
      'how long does gravy keep in the fridge',
      'and I finished the cheddar',
    );
    expect(changed).toBe(true);
    expect(answers[1]).not.toContain('guidance says');
  });
});

describe('what stood on the counter', () => {
  test('since a day is past its hours, one food of two as well', async () => {
    const { said } = await talked("I've had chilli in oil on the counter since Monday, is it alright?");
    expect(said).toMatch(/out/i);
    expect(said).toContain('two hours');
  });
  test('and what thaws there is refused with the ways that guidance has', async () => {
    const { said } = await talked('can I leave the turkey on the counter overnight to thaw');
    expect(said).toMatch(/^No/);
    expect(said).toMatch(/fridge/i);
  });
});

describe('told of people', () => {
  test('how a guest eats is kept with the day she comes', async () => {
    const { said, kitchen } = await talked("my colleague Ingrid is coming on Friday and she's a vegetarian");
    expect(said).toMatch(/tomorrow|Friday/);
    expect([...kitchen.people.values()].find(({ name }) => name === 'Ingrid')).toMatchObject({
      diets: ['vegetarian'],
    });
  });
  test('and a visit that has begun is no day gone by', async () => {
    const { said } = await talked('my aunt Wilma is pregnant and visiting this week');
    expect(said).not.toContain('last');
    expect(said).toContain('pregnant');
  });
});

describe('that something is not in a food', () => {
  test.each([
    'there are no eggs in the lentil stew',
    "there's no milk in the lentil stew, take that off",
    "there aren't any eggs in the lentil stew",
  ])('is never said to be in it: %s', async (told) => {
    const { kitchen } = await talked(told);
    const stew = [...kitchen.items.values()].find(({ name }) => name === 'lentil stew');
    expect(stew).toBeDefined();
    expect(stew!.contains).not.toContain('eggs');
    expect(stew!.contains).not.toContain('milk');
  });
});
