import { describe, expect, it } from 'vitest';
import { demoKitchen, livingItems, resolveCode } from '../../src/kitchen/index.js';
import { addressOf } from '../../src/labels/index.js';

const clock = { now: '2026-05-14T23:00:00.000Z', timeZone: 'America/Chicago' };
const kitchen = demoKitchen(clock);

describe('the address on one of our labels', () => {
  it('leads to its item and its marker, under any host name', () => {
    for (const item of livingItems(kitchen)) {
      const found = resolveCode(kitchen, addressOf('http://kitchen.test:8080', 'item', item.id), clock);
      expect(found.items.map(({ id }) => id)).toEqual([item.id]);
      if (item.markerId === null) continue;
      const marked = resolveCode(kitchen, addressOf('https://other.test', 'marker', item.markerId), clock);
      expect(marked.marker?.id).toBe(item.markerId);
      expect(marked.items.map(({ id }) => id)).toEqual([item.id]);
    }
  });
  it('leads nowhere when the thing is not here, or the address is broken', () => {
    for (const address of [
      'http://k.test/this/item/none',
      'http://k.test/this/item/%E0%A4',
      'http://k.test/this/place/x',
    ])
      expect(resolveCode(kitchen, address, clock)).toMatchObject({ marker: null, items: [], lastGone: null });
  });
});
