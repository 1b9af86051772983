/** What the wire offers for a screen's buttons: what tells things apart, and the word that picks it. */
import { expect, it } from 'vitest';
import { say, startService } from '../support/service.js';

it('buttons are named for what tells the things apart, and say which is meant', async () => {
  const service = await startService();
  try {
    const asked = await say(service, 'finish the bean chilli');
    expect(asked.expects).toEqual({
      kind: 'choice',
      choices: [
        { label: 'Left basket', say: 'the first' },
        { label: 'First shelf', say: 'the second' },
        { label: 'Middle basket', say: 'the third' },
      ],
    });
    const picked = await say(service, asked.expects.choices[1]!.say);
    expect(picked.changes.map(({ verb }) => verb)).toEqual(['finished']);
    const freezer = await say(service, 'move the milk to the freezer', { conversation: 'another' });
    expect(freezer.expects.choices.map(({ label }) => label)).toEqual(['Chest freezer', 'Upright freezer']);
  } finally {
    await service.close();
  }
});
