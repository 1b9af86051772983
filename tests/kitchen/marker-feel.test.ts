/** How unlike markers feel: pairs that teaching calls alike or unlike, and what the distance promises. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { demoKitchen, feelAlike, alikeNeighbours, stands, unlikeness } from '../../src/kitchen/index.js';
import type { Touch } from '../../src/terms/touch.js';

const felt = (words: string): Touch => {
  const all = Object.fromEntries(words.split(',').map((part) => part.trim().split('=') as [string, string]));
  const { dots, fastenings, ...rest } = all;
  return {
    ...rest,
    ...(dots === undefined ? {} : { dots: Number(dots) }),
    ...(fastenings === undefined ? {} : { fastenings: Number(fastenings) }),
  };
};

const pairs = readFileSync(join(import.meta.dirname, '../data/markers/pairs.tsv'), 'utf8')
  .split('\n')
  .filter((line) => line.trim() !== '' && !line.startsWith('#'))
  .map((line) => line.split('\t') as [string, string, string, string]);

const demo = demoKitchen({ now: '2026-05-14T23:00:00.000Z', timeZone: 'America/Chicago' });

describe('two markers', () => {
  it.each(pairs)('%s / %s: %s (%s)', (a, b, kind) => {
    expect(feelAlike(felt(a), felt(b)) ? 'alike' : 'unlike').toBe(kind);
  });

  it('are as unlike one way round as the other, and nothing is unlike itself', () => {
    const all = [...demo.markers.values()].map(({ touch }) => touch);
    for (const a of all) {
      expect(unlikeness(a, a)).toEqual({ distance: 0, by: [] });
      for (const b of all) expect(unlikeness(a, b).distance).toBeCloseTo(unlikeness(b, a).distance, 9);
    }
  });

  it('are told apart first by what tells them apart most', () => {
    expect(
      unlikeness(felt('fastening=bead,texture=glass'), felt('fastening=patch,texture=cloth')).by,
    ).toEqual(['fastening', 'material']);
    expect(unlikeness(felt('fastening=bead,dots=1'), felt('fastening=bead,dots=2')).by).toEqual(['count']);
  });
});

describe('neighbours that feel alike', () => {
  it('stand on one shelf, are no two tubs of one batch, and come likest first', () => {
    const found = alikeNeighbours(demo);
    expect(found.length).toBeGreaterThan(0);
    for (const [one, other] of found) {
      expect(one.item.placeId).toBe(other.item.placeId);
      expect(one.item.batchId === null || one.item.batchId !== other.item.batchId).toBe(true);
    }
    const distances = found.map(([, , { distance }]) => distance);
    expect(distances).toEqual(distances.toSorted((a, b) => a - b));
  });
});

describe('what a marker stands', () => {
  const marker = (touch: string, care: string | null = null) => ({
    id: 'm',
    touch: felt(touch),
    codes: [],
    care,
    lastItemId: null,
  });

  it('is what is recorded before what it is made of', () => {
    expect(stands(marker('fastening=collar,texture=paper'), 'wet')).toEqual({ may: false, recorded: false });
    expect(stands(marker('fastening=collar,texture=paper', 'waterproof'), 'wet')).toEqual({
      may: true,
      recorded: true,
    });
    expect(stands(marker('fastening=safety pin', 'it rusts where it is left wet'), 'wet')).toEqual({
      may: false,
      recorded: true,
    });
  });

  it('is not known of what nobody told and no table names', () => {
    expect(stands(marker('fastening=bead,texture=glass'), 'wet')).toBeNull();
  });
});
