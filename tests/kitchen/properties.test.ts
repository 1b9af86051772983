import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  applyChange,
  invertChange,
  isRefused,
  livingItems,
  pathOf,
  spareMarkers,
  undo,
  type Kitchen,
} from '../../src/kitchen/index.js';
import type { Amount } from '../../src/terms/amount.js';
import { withEdits } from '../../src/kitchen/layered.js';
import { deed, household, live, recordsOf } from './any-kitchen.js';

const lives = fc.array(deed, { minLength: 1, maxLength: 60 });

/** What must hold in every kitchen there can be; faults by name. */
const faultsOf = (kitchen: Kitchen): readonly string[] => {
  const faults: string[] = [];
  const amountIsRight = (amount: Amount | null): boolean =>
    amount === null || (Number.isFinite(amount.value) && amount.value >= 0 && amount.unit !== '');
  const borne = new Set<string>();
  for (const item of kitchen.items.values()) {
    if (!amountIsRight(item.amount) || !amountIsRight(item.amountAtFirst))
      faults.push(`amount of ${item.id}`);
    if (item.gone && item.markerId !== null) faults.push(`${item.id} is gone and still marked`);
    if (item.markerId === null) continue;
    if (!kitchen.markers.has(item.markerId)) faults.push(`${item.id} bears a marker that is not there`);
    if (borne.has(item.markerId)) faults.push(`${item.markerId} is on two items`);
    borne.add(item.markerId);
  }
  for (const item of livingItems(kitchen)) {
    if (item.amount?.value === 0) faults.push(`${item.id} is empty and not finished`);
    if (item.placeId !== null && !kitchen.places.has(item.placeId)) faults.push(`${item.id} is nowhere`);
    if (item.contains.some((allergen) => item.freeFrom.includes(allergen)))
      faults.push(`${item.id} contradicts itself`);
  }
  for (const place of kitchen.places.values()) {
    if (pathOf(kitchen, place.id)[0]?.parentId !== null) faults.push(`${place.id} is in a ring`);
    if (place.parentId !== null && !kitchen.places.has(place.parentId))
      faults.push(`${place.id} lost its parent`);
  }
  for (const marker of spareMarkers(kitchen)) {
    if (borne.has(marker.id)) faults.push(`${marker.id} is spare and in use`);
  }
  return faults;
};

describe('in any life of a kitchen', () => {
  it('amounts are never negative, no marker is on two items, nothing is lost', () => {
    fc.assert(
      fc.property(lives, (deeds) => {
        live(deeds, (kitchen) => expect(faultsOf(kitchen)).toEqual([]));
      }),
      { numRuns: 300 },
    );
  });

  it('what lives is told after each change as it would be told anew', () => {
    fc.assert(
      fc.property(lives, (deeds) => {
        live(deeds, (kitchen) =>
          expect(livingItems(kitchen)).toEqual(livingItems({ ...kitchen, items: new Map(kitchen.items) })),
        );
      }),
      { numRuns: 200 },
    );
  });

  it('records in layers are the same as records in one map, through any changes', () => {
    const id = fc.integer({ min: 0, max: 120 }).map(String);
    const edits = fc.array(fc.tuple(id, fc.option(fc.nat(), { nil: null })), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(
        fc.uniqueArray(id, { maxLength: 100 }),
        fc.array(edits, { maxLength: 60 }),
        (had, steps) => {
          const plain = new Map<string, number>(had.map((one) => [one, -1]));
          let layered: ReadonlyMap<string, number> = new Map(plain);
          for (const step of steps) {
            const before = layered;
            const was = new Map(before);
            layered = withEdits(before, step);
            for (const [one, after] of step) {
              if (after === null) plain.delete(one);
              else plain.set(one, after);
            }
            expect(new Map(layered)).toEqual(plain);
            expect(layered.size).toBe(plain.size);
            expect([...layered.values()].sort()).toEqual([...plain.values()].sort());
            expect([...layered.keys()].every((one) => layered.has(one))).toBe(true);
            expect(layered.get('7')).toBe(plain.get('7'));
            expect(new Map(before)).toEqual(was);
          }
        },
      ),
      { numRuns: 200 },
    );
  });

  it('undoing everything, newest first, gives back the very kitchen it began with', () => {
    fc.assert(
      fc.property(lives, (deeds) => {
        const { start, kitchen, journal } = live(deeds);
        let now = kitchen;
        for (const entry of [...journal].reverse()) {
          const undone = undo(
            {
              kitchen: now,
              clock: { now: entry.at, timeZone: household.timeZone },
              speaker: { personId: null },
              newId: () => 'never',
            },
            entry,
          );
          if (isRefused(undone)) throw new Error(`${entry.verb}: ${JSON.stringify(undone)}`);
          now = applyChange(now, undone);
          expect(faultsOf(now)).toEqual([]);
        }
        expect(recordsOf(now)).toEqual(recordsOf(start));
      }),
      { numRuns: 200 },
    );
  });

  it('each change and its inverse cancel out, at once', () => {
    fc.assert(
      fc.property(lives, (deeds) => {
        let before: Kitchen | null = null;
        const { start, journal } = live(deeds);
        before = start;
        for (const entry of journal) {
          const after = applyChange(before, entry);
          expect(recordsOf(applyChange(after, { ops: invertChange(entry) }))).toEqual(recordsOf(before));
          before = after;
        }
      }),
      { numRuns: 100 },
    );
  });

  it('the journal, written down and read back, replays to the same kitchen', () => {
    fc.assert(
      fc.property(lives, (deeds) => {
        const { start, kitchen, journal } = live(deeds);
        const written = JSON.parse(JSON.stringify(journal)) as typeof journal;
        const replayed = written.reduce(applyChange, start);
        expect(recordsOf(replayed)).toEqual(JSON.parse(JSON.stringify(recordsOf(kitchen))));
        expect(replayed.version).toBe(kitchen.version);
      }),
      { numRuns: 200 },
    );
  });

  it('most kinds of change do happen (or the properties above say little)', () => {
    const verbs = new Set<string>();
    const reasons = new Set<string>();
    fc.assert(
      fc.property(fc.array(deed, { minLength: 60, maxLength: 120 }), (deeds) => {
        const { journal, refusals } = live(deeds);
        for (const { verb } of journal) verbs.add(verb);
        for (const { refused } of refusals) reasons.add(refused);
      }),
      { numRuns: 60, seed: 5 },
    );
    expect(verbs.size).toBeGreaterThan(22);
    expect(reasons.size).toBeGreaterThan(18);
  });
});
