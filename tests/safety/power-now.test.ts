/** A power cut on record is reckoned with by whoever looks: the gate, use-first, any device. */
import { describe, expect, it } from 'vitest';
import { applyChange, demoKitchen, isRefused, tellPowerCut } from '../../src/kitchen/index.js';
import type { Kitchen, PowerCut } from '../../src/kitchen/model.js';
import { assessIn, rankUseFirst } from '../../src/safety/index.js';

const at = (hour: string) => ({ now: `2026-05-14T${hour}:00.000Z`, timeZone: 'UTC' });
const cut: PowerCut = {
  id: 'cut',
  since: at('12:00').now,
  backAt: null,
  doors: 'shut',
  freezerDoors: null,
  fullness: 'half',
  fridgeReads: null,
  placeIds: null,
  toldAt: at('12:00').now,
};
const told = (kitchen: Kitchen, one: PowerCut, came: ReadonlyMap<string, 'lost' | 'doubtful' | 'kept'>) => {
  const doing = { kitchen, clock: at('18:00'), speaker: { personId: null }, newId: () => 'id' };
  const change = tellPowerCut(doing, one, came);
  if (isRefused(change)) throw new Error(change.refused);
  return applyChange(kitchen, change);
};
const before = demoKitchen(at('12:00'));
const chicken = before.items.get('item.roast-chicken')!;

describe('a power cut on record', () => {
  it('leaves the date as it is while the door holds, and says so', () => {
    const found = assessIn(told(before, cut, new Map()), chicken, at('14:00'));
    expect(found.verdict).toBe(assessIn(before, chicken, at('14:00')).verdict);
    expect(found.reasons.map(({ code }) => code)).toContain('power-holds');
  });
  it('costs what spoils once the hours are over, also in what to use first', () => {
    const kitchen = told(before, cut, new Map());
    expect(assessIn(kitchen, chicken, at('17:00')).verdict).toBe('throw-out');
    const ranked = rankUseFirst(kitchen, at('17:00')).find(({ item }) => item.id === chicken.id);
    expect(ranked?.assessment.verdict).toBe('throw-out');
  });
  it('is not known where nobody told how the doors were', () => {
    const found = assessIn(told(before, { ...cut, doors: null }, new Map()), chicken, at('13:00'));
    expect(found.verdict).toBe('unknown');
  });
  it('stays with the food when it is over, and is put in place of what was thought before', () => {
    const over = { ...cut, backAt: at('18:00').now };
    const lost = told(before, over, new Map([[chicken.id, 'lost' as const]]));
    expect(assessIn(lost, lost.items.get(chicken.id)!, at('19:00')).verdict).toBe('throw-out');
    const held = told(
      lost,
      { ...over, fridgeReads: { degrees: 38, scale: 'fahrenheit' } },
      new Map([[chicken.id, 'kept' as const]]),
    );
    expect(held.items.get(chicken.id)!.history ?? []).toEqual([]);
  });
});
