/** What is said in the middle of steps beside "next": several done at once, not yet, another way, somebody at the door. */
import { describe, expect, it } from 'vitest';
import { talked } from '../support/said.js';

const stew = 'walk me through heating the lentil stew in the microwave';

describe('in the middle of steps', () => {
  it('goes on behind the last of several that are told as done', async () => {
    const { said } = await talked(stew, 'next', "I've covered it and given it two minutes, what now?");
    expect(said).toContain('Stir right to the bottom');
  });

  it('goes back to what is not so yet', async () => {
    const { said } = await talked(stew, 'next', 'next', "wait, the lid isn't on yet");
    expect(said).toContain('Cover it with the vented lid');
    const here = await talked(stew, "no, I haven't got the bowl yet");
    expect(here.said).not.toContain('Cover it');
  });

  it('tells the last step of her own without moving', async () => {
    const { answers } = await talked(stew, 'just tell me the final step', 'next');
    expect(answers[1]).toContain('Let it stand and stir again');
    expect(answers[2]).toContain('Cover it');
  });

  it('waits when somebody calls her away, and reads nothing', async () => {
    const { said, changed } = await talked(stew, "hold on, the neighbour's at the door");
    expect(said).not.toContain('Cover it');
    expect(changed).toBe(false);
  });

  it('changes to another way of heating it', async () => {
    const { said } = await talked(stew, "actually, I'll do it on the stove instead");
    expect(said).toContain('on the hob');
    expect(said).toContain('Tip it into the small pot');
  });

  it('tells how many are left, hers and those of guidance', async () => {
    const { said } = await talked(stew, 'next', 'how many more after this?');
    expect(said).toMatch(/four you told me, and .* of guidance/);
  });
});

describe('told and asked of the record', () => {
  it('takes "only" for how many there are, and puts none away', async () => {
    const { kitchen, before } = await talked('there are only two eggs');
    const eggs = (of: typeof kitchen): number =>
      [...of.items.values()].filter(({ name, gone }) => name === 'eggs' && gone === null).length;
    expect(eggs(kitchen)).toBe(eggs(before));
    expect([...kitchen.items.values()].find(({ name }) => name === 'eggs')?.amount?.value).toBe(2);
  });

  it('undoes what is named and leaves what is to stay', async () => {
    const { kitchen, said } = await talked(
      'I used an egg',
      'I moved the cheddar to the second shelf of the fridge',
      'undo the eggs but leave the cheddar where it is',
    );
    expect(said).toMatch(/^Undone: eggs/);
    const cheddar = [...kitchen.items.values()].find(({ name }) => name.includes('cheddar'));
    expect(kitchen.places.get(cheddar!.placeId!)?.name).toBe('second shelf');
  });

  it('knows when a place was checked last', async () => {
    const { said } = await talked('check the pantry', 'stop', 'when did we last check the pantry?');
    expect(said).toContain('Just now');
    const never = await talked('when was the upright freezer last checked?');
    expect(never.said).toMatch(/No check of .*upright freezer is recorded/);
  });
});
