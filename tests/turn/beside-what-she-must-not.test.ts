/** What is told of somebody beside what she must not have: the day she comes, how her food is to be, whether she is at risk. */
import { describe, expect, test } from 'vitest';
import { talked } from '../support/said.js';

const personOf = ({ kitchen }: Awaited<ReturnType<typeof talked>>, name: string) =>
  [...kitchen.people.values()].find((one) => one.name === name);

describe('a guest', () => {
  test.each([
    ["Ingrid comes on Saturday, she's coeliac", ['gluten']],
    ["Ingrid is coming on Saturday and she can't have sesame", ['sesame']],
    ['Ingrid is coming on Saturday', []],
  ])('is kept with the day: %s', async (said, allergens) => {
    const after = await talked(said);
    expect(personOf(after, 'Ingrid')).toMatchObject({ comesOn: '2026-05-16', allergens });
    expect(after.said).toContain('Ingrid comes on Saturday');
  });
  test('is told of when it is asked who comes', async () => {
    const { said } = await talked(
      "Ingrid is coming on Saturday, she can't have sesame",
      'who is coming on Saturday',
    );
    expect(said).toBe('Ingrid comes on Saturday. Ingrid watches for sesame.');
  });
  test('nobody comes of whom nobody told', async () => {
    expect((await talked('who is coming on Friday')).said).toBe('Nobody is recorded as coming.');
  });
  test.each(['the delivery is coming on Saturday', 'remind me that Ingrid is coming on Saturday'])(
    'is nobody in: %s',
    async (said) => {
      const { kitchen, before } = await talked(said);
      expect(kitchen.people.size).toBe(before.people.size);
    },
  );
});

describe('shellfish told of somebody', () => {
  test('is kept as told, in place of the narrower group', async () => {
    const after = await talked("Peter can't have shellfish");
    expect(personOf(after, 'Peter')?.allergens).toEqual(['shellfish']);
  });
});

describe('how the food of somebody is to be', () => {
  test.each([
    ['Dele needs her meat minced', 'meat minced'],
    ['from now on Dele has to have her meals pureed, doctor says', 'meals pureed'],
    ['Dele can only manage soft food', 'soft food'],
    ['Dele has trouble swallowing', 'trouble swallowing'],
  ])('%s', async (said, need) => {
    const after = await talked(said, 'what do you know about Dele');
    expect(personOf(after, 'Dele')?.needs).toEqual([need]);
    expect(after.said).toContain(need);
  });
});

describe('whether care is to be taken', () => {
  test('of somebody at risk it is', async () => {
    const { said } = await talked('Ruth is pregnant', 'do we need to be careful with Ruth');
    expect(said).toMatch(/^Yes, Ruth is pregnant, so at higher risk/);
  });
  test('of nobody else a promise is made', async () => {
    expect((await talked('is Peter at higher risk')).said).toMatch(/^Not as recorded/);
  });
  test('who is at risk', async () => {
    expect((await talked('Ruth is pregnant', 'who here is at risk')).said).toContain(
      'Ruth are at higher risk',
    );
  });
});
