import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  applyChange,
  demoKitchen,
  emptyKitchen,
  exportItems,
  invertChange,
  livingItems,
  pathOf,
  planImport,
  putAway,
  isRefused,
  markerOf,
  type Doing,
  type Kitchen,
} from '../../src/kitchen/index.js';
import { readCsv, writeCsv } from '../../src/kitchen/exchange/csv.js';
import { rowOfItem } from '../../src/kitchen/exchange/row.js';

const clock = { now: '2026-05-14T18:00:00.000Z', timeZone: 'America/Chicago' };
let serial = 0;
const doing = (kitchen: Kitchen): Doing => ({
  kitchen,
  clock,
  speaker: { personId: null },
  newId: () => `id${++serial}`,
});
const demo = demoKitchen(clock);
const bare: Kitchen = { ...emptyKitchen(demo.household), people: demo.people };
const said = (kitchen: Kitchen) =>
  livingItems(kitchen)
    .map((item) => {
      const { batch, ...row } = rowOfItem(kitchen, item);
      return { ...row, inBatch: batch !== null };
    })
    .sort((a, b) => JSON.stringify(a).localeCompare(JSON.stringify(b)));

describe('a kitchen, exported and imported elsewhere', () => {
  it.each(['csv', 'json'] as const)('is the same as %s', (form) => {
    const plan = planImport(doing(bare), exportItems(demo, form), form, { makePlaces: true });
    expect(plan.faults).toEqual([]);
    const there = applyChange(bare, plan.change!);
    const without = (rows: ReturnType<typeof said>) =>
      form === 'json' ? rows : rows.map((row) => ({ ...row, preparations: [] }));
    expect(said(there)).toEqual(without(said(demo)));
    const chilli = livingItems(there).filter(
      ({ name, batchId }) => name === 'bean chilli' && batchId !== null,
    );
    expect(new Set(chilli.map(({ batchId }) => batchId)).size).toBe(1);
    expect([...there.places.values()].find(({ name }) => name === 'upright freezer')?.kind).toBe('freezer');
    // Once more adds nothing, and one undo takes all of it back.
    const again = planImport(doing(there), exportItems(demo, form), form, { makePlaces: true });
    expect([again.change, again.already]).toEqual([null, livingItems(demo).length]);
    expect(applyChange(there, { ops: invertChange(plan.change!) }).items.size).toBe(0);
  });
});

describe('a table', () => {
  const heading = 'name,amount,unit,place,use by,owner';
  const plan = (...lines: string[]) => planImport(doing(demo), [heading, ...lines].join('\n'), 'csv');

  it('adds what it says, at the places that are there by any of their names', () => {
    const { change, faults } = plan(
      'Quince paste,1/2,jar,fridge > top shelf,2026-06-01,dele',
      'rice flour,2,,pantry > second shelf,,',
    );
    expect(faults).toEqual([]);
    const kitchen = applyChange(demo, change!);
    const quince = livingItems(kitchen).find(({ name }) => name === 'Quince paste')!;
    expect(quince).toMatchObject({
      amount: { value: 0.5, unit: 'jar' },
      dates: { useBy: '2026-06-01' },
      ownerId: 'person.dele',
    });
    expect(pathOf(kitchen, quince.placeId).map(({ name }) => name)).toEqual(['fridge', 'first shelf']);
  });

  it('with anything wrong adds nothing, and says row and column of each', () => {
    const { change, faults, items } = plan(
      'good jam,1,jar,fridge,,',
      ',1,jar,fridge,,',
      '',
      'bad date,1,jar,fridge,2026-02-30,',
      'lost,1,jar,attic,,',
      'whose,1,jar,fridge,,Zebedee',
      'minus,-1,jar,fridge,,',
      'much,about a lot,jar,fridge,,',
      'long,1,jar,fridge,,,extra',
    );
    expect([change, items]).toEqual([null, 0]);
    expect(faults.map(({ row, column }) => [row, column])).toEqual([
      [3, 'name'],
      [5, 'use by'],
      [6, 'place'],
      [7, 'owner'],
      [8, 'amount'],
      [9, 'amount'],
      [10, null],
    ]);
    expect(faults[1]?.problem).toBe('not a day like 2026-05-14');
    expect(faults[2]?.problem).toBe('there is no place "attic"');
  });

  it.each([
    ['an unknown column', 'name,colour\nx,red', { row: 1, column: 'colour' }],
    ['no names', 'amount\n1', { row: 1, column: 'name' }],
    ['a quotation that never ends', 'name\n"half', { column: null }],
    ['nothing', '', { row: 1, column: 'name' }],
  ])('with %s is refused', (_, text, fault) => {
    expect(planImport(doing(demo), text, 'csv')).toMatchObject({ change: null, faults: [fault] });
  });

  it('never hands a spreadsheet a formula', () => {
    const names = ['=1+1', '+cmd', '-2', '@x', "'=kept", '\tx', 'plain'];
    let kitchen = bare;
    for (const name of names) {
      const change = putAway(doing(kitchen), { name: `${name}` });
      if (isRefused(change)) throw new Error('refused');
      kitchen = applyChange(kitchen, change);
    }
    const csv = exportItems(kitchen, 'csv');
    const first = csv
      .split('\n')
      .slice(1)
      .filter(Boolean)
      .map((line) => (line[0] === '"' ? line[1] : line[0]));
    expect(first.every((start) => !/[=+\-@\t]/.test(start ?? ''))).toBe(true);
    const { rows } = readCsv(csv);
    expect(rows.map(({ item }) => item.name).sort()).toEqual(names.map((name) => name.trim()).sort());
  });

  it('gives back any words that were put in it', () => {
    const word = fc
      .string({ unit: 'grapheme', minLength: 1, maxLength: 40 })
      .filter((text) => text.trim() === text && text !== '');
    fc.assert(
      fc.property(
        word,
        word,
        fc.array(word, { maxLength: 3 }),
        fc.array(word, { maxLength: 3 }),
        (name, spot, notes, place) => {
          const base = rowOfItem(demo, livingItems(demo)[0]!);
          const { rows, faults } = readCsv(
            writeCsv([{ ...base, name, spot, notes, place, preparations: [] }]),
          );
          expect(faults).toEqual([]);
          expect(rows[0]?.item).toMatchObject({ name, spot, notes, place });
        },
      ),
    );
  });
});

describe('JSON', () => {
  it.each([
    ['not JSON', '{', { row: 0 }],
    ['another format', '{"format":"x","items":[]}', { row: 0 }],
    ['no list', '{"format":"tellshelf items 1","items":{}}', { row: 0 }],
    [
      'a part there is not',
      '{"format":"tellshelf items 1","items":[{"name":"a"},{"name":"b","__proto__x":1}]}',
      { row: 2 },
    ],
    [
      'a wrong day',
      '{"format":"tellshelf items 1","items":[{"name":"a","dates":{"made":"yesterday"}}]}',
      { row: 1, column: 'dates.made' },
    ],
  ])('that is %s is refused', (_, text, fault) => {
    const { change, faults } = planImport(doing(demo), text, 'json');
    expect(change).toBeNull();
    expect(faults).toMatchObject([fault]);
  });

  it('takes a spare marker that feels right before making another', () => {
    const spare = [...demo.markers.values()].find(({ id }) => id === 'marker.safety-pin')!;
    const text = JSON.stringify({
      format: 'tellshelf items 1',
      items: [
        { name: 'one', marker: spare.touch },
        { name: 'two', marker: spare.touch },
      ],
    });
    const plan = planImport(doing(demo), text, 'json');
    expect([plan.items, plan.markers]).toEqual([2, 1]);
    const kitchen = applyChange(demo, plan.change!);
    const [one, two] = ['one', 'two'].map((name) => livingItems(kitchen).find((item) => item.name === name)!);
    expect(one?.markerId).toBe(spare.id);
    expect(markerOf(kitchen, two!)?.touch).toEqual(spare.touch);
  });
});
