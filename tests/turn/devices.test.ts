/** The household's devices, told by voice. */
import { expect, it } from 'vitest';
import { letIn, say, startService } from '../support/service.js';

it('names the devices that are let in, and none of another household or sent away', async () => {
  const service = await startService();
  try {
    const { device } = await letIn(service.store, service.kitchen.household.id, 'speak');
    await service.store.updateDevice({ ...device, name: 'hall speaker' });
    await service.store.updateDevice({
      ...service.devices.help,
      name: 'lost tablet',
      revokedAt: '2026-05-14T10:00:00.000Z',
    });
    const { speech, changes } = await say(service, 'which devices are there', { conversation: 'devices' });
    expect(speech.text).toContain('hall speaker');
    expect(speech.text).not.toContain('lost tablet');
    expect(changes).toEqual([]);
  } finally {
    await service.close();
  }
});
