/** What was named is never left out of an answer, and what was told before a question narrows it by nothing. */
import { describe, expect, it } from 'vitest';
import { brandtTalk } from '../support/brandt-talk.js';

const talk = brandtTalk('asked-of-all');
const answer = async (...said: readonly string[]): Promise<string> => (await talk(said)).speech.text;

describe('what is to be used first', () => {
  it.each([
    ['How old is the brisket?', 'And what should I use first then?'],
    ['The sausages are on the top shelf now. What wants eating first?'],
    ['I put the cod in the middle bin, what should I use first?'],
  ])('is of all there is after other talk: %s', async (...said) => {
    const told = await answer(...said);
    expect(told).toMatch(/meatloaf/i);
    expect(told).toMatch(/cooked ham/i);
  });

  it('is of those alone where it is said so', async () => {
    expect(await answer('of the rice pudding and the meatloaf, which should I use first')).not.toMatch(
      /ham/i,
    );
  });
});

describe('several foods in one question', () => {
  it.each([
    ['What about the salami and the feta, are both of those still okay?', /salami/i, /feta/i],
    ['and those sausages and that ham in the meat drawer, are they all right still?', /sausages/i, /ham/i],
    ['Is the lasagna or the ham still good?', /no lasagna/i, /ham: past/i],
  ])('are each answered: %s', async (said, one, other) => {
    const told = await answer(said);
    expect(told).toMatch(one);
    expect(told).toMatch(other);
  });
});

describe('a verdict on what is on record', () => {
  const past = /Feta: past guidance/;
  it('does not turn about with what is told while it is asked', async () => {
    const said = [
      "the feta's open, but it says it's good for another week, is it okay?",
      'I only opened the feta six days ago though, is it all right?',
      "that's not what you said a second ago, is the feta okay to eat or not?",
    ];
    for (let at = 1; at <= said.length; at += 1) expect(await answer(...said.slice(0, at))).toMatch(past);
    expect(await answer(...said.slice(0, 2))).toMatch(/counts from May second, when it was bought/);
  });

  it('is the stricter where what was told is', async () => {
    expect(await answer('is the goat cheese still alright, I opened it two weeks ago')).toMatch(
      /past guidance/,
    );
  });
});

describe('for several eaters', () => {
  const guest = "Lena's coming on Saturday, she can't have celery.";
  it('is answered for each by name', async () => {
    const told = await answer(guest, "I'm thinking of the shepherd's pie, is that safe for her and for Sam?");
    expect(told).toMatch(/Not Lena: .*celery/);
    expect(told).toMatch(/Not Sam: .*milk/);
  });

  it('is without all that any of them must not have, and asks of no food by the name of an allergen', async () => {
    const told = await answer(
      guest,
      'What in the freezers can Lena and Sam both have, without eggs or fish?',
    );
    expect(told).toMatch(/free from eggs, fish, celery, and milk/);
    expect(told).not.toMatch(/sardines/);
  });
});

it('what is in no table of allergens is asked about before it is kept', async () => {
  expect(await answer("Sam can't have the coffee ice cream")).toMatch(/Yes or no\.$/);
});

it('what is denied is no subject, and a name before questions is theirs', async () => {
  const told = await answer(
    "Marianne's coming, she can't have celery.",
    'what can Marianne and Sam both have from the freezer?',
    "I wasn't asking about the cod. The pulled pork then. Is that all right for the two of them?",
  );
  expect(told).toMatch(/pulled pork/);
  expect(told).not.toMatch(/cod/i);
});

describe('a list that was offered', () => {
  it.each(["yeah go on, what's the rest", 'and the others?', 'what else is there'])(
    'goes on where it stopped: %s',
    async (said) =>
      expect(await answer("what's past its date", said)).toMatch(/^Past guidance, to throw out: feta/),
  );

  it('is narrowed to what was put there on a day, and that is said', async () => {
    const put = 'I put two bags of peas in the right bin of the garage freezer';
    const told = await answer(put, "Where's everything I've put in the garage today?");
    expect(told).toMatch(/put there today/);
    expect(told).not.toMatch(/peaches|dal/);
  });
});

it.each(['Have I got anything for tonight then?', "what's there to eat", 'is there anything in for supper'])(
  'what there is to eat is what to use first, and what is past: %s',
  async (said) => {
    const told = await answer(said);
    expect(told).toMatch(/past guidance, to throw out/);
    expect(told).toMatch(/to use first/);
  },
);
