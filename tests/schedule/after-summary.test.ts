/** After a summary that was told unasked, "freeze it" means what it spoke of first. */
import { expect, it } from 'vitest';
import { nightlySummary } from '../../src/dialogue/summary/nightly.js';
import { rankUseFirst } from '../../src/safety/index.js';
import { dueNow, heardChange } from '../../src/schedule/index.js';
import { say, startService } from '../support/service.js';

const SUMMARY_AT = '2026-05-15T01:00:00.000Z';

it('the cook can act on it at once, and ask for the second', async () => {
  const service = await startService();
  try {
    const { households, kitchen } = service;
    await say(service, 'where is the milk');
    service.setNow(SUMMARY_AT);
    const around = await households.look(kitchen.household.id);
    const [due] = dueNow(around.kitchen, around.clock);
    if (due?.kind !== 'summary') throw new Error('no summary was due');
    const { about } = nightlySummary(
      around.kitchen,
      rankUseFirst(around.kitchen, around.clock),
      around.clock,
    );
    const nameOf = (n: number): string => around.kitchen.items.get(about[n]?.[0] ?? '')?.name ?? '?';
    await households.change(
      { householdId: kitchen.household.id, personId: null, deviceId: null },
      { id: 'heard', said: 'heard' },
      (doing) => {
        const change = heardChange(doing, due.id);
        return change ? { changes: [change] } : { refused: 'not due' };
      },
    );
    service.setNow('2026-05-15T01:01:00.000Z');
    // Two conversations of the same device: each comes to it afresh.
    const first = await say(service, 'how old is it');
    expect(first.speech.text.toLowerCase()).toContain(nameOf(0));
    const second = await say(service, 'tell me about the second one', { conversation: 'another' });
    expect(second.speech.text.toLowerCase()).toContain(nameOf(1));
    expect(nameOf(1)).not.toBe(nameOf(0));
  } finally {
    await service.close();
  }
});

it('"undo" after it takes back what the cook did, not that it was told', async () => {
  const service = await startService();
  try {
    const { households, kitchen } = service;
    const put = await say(service, 'put oats on the list');
    expect(put.changes).toHaveLength(1);
    service.setNow(SUMMARY_AT);
    await households.change(
      { householdId: kitchen.household.id, personId: null, deviceId: null },
      { id: 'heard', said: 'heard' },
      (doing) => {
        const change = heardChange(doing, 'summary.2026-05-14');
        return change ? { changes: [change] } : { refused: 'not due' };
      },
    );
    service.setNow('2026-05-15T01:01:00.000Z');
    const undone = await say(service, 'undo');
    expect(undone.changes.map((change) => change.verb)).toEqual(['undid']);
    expect(undone.speech.text).toContain('oats');
    const { kitchen: after } = await households.look(kitchen.household.id);
    expect(after.reminders.get('summary')?.deliveredAt).toBe(SUMMARY_AT);
  } finally {
    await service.close();
  }
});
