/** What is past and what is to be used, asked loosely; several questions of one thing; what a marker is to mean; a part that no freezer has. */
import { describe, expect, it } from 'vitest';
import { talked } from '../support/said.js';

describe('what is past and what is to be used', () => {
  it.each([
    "right what's wanting eating up",
    'any of it on its way out',
    'is owt gone off',
    "what's past it",
  ])('is of the whole kitchen: %s', async (line) => {
    const { said } = await talked(line);
    expect(said).toContain('past guidance, to throw out');
    expect(said).not.toContain('basket');
  });

  it.each([
    "what have I got in the fridge that's still in date",
    "what's in the fridge that hasn't gone off",
  ])('is left out where what is good is asked for: %s', async (line) => {
    const { said } = await talked(line);
    expect(said).toContain('within guidance');
    expect(said).not.toContain('throw');
  });

  it('is still a side, where a side is pointed at', async () => {
    expect((await talked("what's in the right basket")).said).toContain('right basket');
  });

  it.each(["why's the jollof gotta go", 'why should I chuck the ham'])('has a reason: %s', async (line) => {
    expect((await talked(line)).said).toMatch(/past guidance.*Guidance gives/u);
  });
});

describe('several questions of one thing', () => {
  it('are all answered', async () => {
    const { said } = await talked(
      'no stop just tell me the eggs where are they and how old and how long have they got',
    );
    expect(said).toMatch(/fourth shelf.*days ago.*Within guidance until/su);
  });

  it('are of what was named last, and not of a list read before', async () => {
    const { said } = await talked(
      "what have I got in the fridge that's still in date",
      "where's the hummus",
      'when did it go in and is it still within guidance',
    );
    expect(said).toMatch(/^Hummus/u);
    expect(said).not.toContain('Shall I go on');
  });
});

describe('what a marker is to mean', () => {
  it.each([
    'the leather tie means gluten free',
    'everything with a leather tie is gluten free',
    'make the leather tie mean nut free',
  ])('is not dropped in silence: %s', async (line) => {
    const { said, changed } = await talked(line);
    expect(said).toContain('Not kept');
    expect(changed).toBe(false);
  });

  it('is no meaning where it is put on a food', async () => {
    expect((await talked('the leather tie is for the chicken thighs')).said).toContain('marked with');
  });

  it('is not another marker that is taken off', async () => {
    const { said, changed } = await talked('take the collar off the lentil stew');
    expect(said).toContain('cloth patch');
    expect(changed).toBe(false);
  });
});

describe('a part that is not there', () => {
  it('is no part of another place', async () => {
    const { said } = await talked(
      "what's in the second drawer of the upright freezer and what have I got from tonight",
    );
    expect(said).toContain('second drawer of the upright freezer');
    expect(said).not.toContain('fruit drawer');
  });

  it('is asked about where it may be of either freezer', async () => {
    const { said, changed } = await talked('move the hummus to the freezer, top drawer');
    expect(said).toMatch(/chest freezer or .*upright freezer/u);
    expect(changed).toBe(false);
  });
});
