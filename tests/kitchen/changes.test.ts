import { describe, expect, it } from 'vitest';
import {
  addMarker,
  addPlaceName,
  convert,
  movePlace,
  noteFilled,
  renamePlace,
  totalOf,
  amend,
  anotherLike,
  copyItem,
  livingItems,
  refill,
  applyChange,
  bringBack,
  buildPlaces,
  buyAdd,
  checkItem,
  emptyKitchen,
  findByTouch,
  finish,
  freeze,
  isRefreeze,
  isRefused,
  itemsAt,
  itemWithMarker,
  lookAlikes,
  lastRedoable,
  lastUndoable,
  mark,
  markLot,
  marksOf,
  defineDots,
  merge,
  move,
  nextToCheck,
  pathOf,
  proposeDifference,
  putAway,
  redo,
  removePlace,
  setLeft,
  spareMarkers,
  split,
  startStockTake,
  swapMarkers,
  loseMarker,
  bringMarkerBack,
  storageOf,
  take,
  tallyOf,
  thaw,
  together,
  undo,
  type Change,
  type Doing,
  type Item,
  type JournalEntry,
  type Kitchen,
  type Result,
} from '../../src/kitchen/index.js';

const now = '2026-05-14T22:00:00.000Z';
const household = {
  id: 'h1',
  name: 'Test kitchen',
  timeZone: 'America/Chicago',
  locale: 'en-US',
  region: 'us',
  measures: 'us',
  microwaveWatts: null,
  summaryAt: null,
  quietHours: null,
  dotMeanings: {},
} as const;

/** A kitchen that is changed by what builders return, keeping a journal. */
const cook = () => {
  let n = 0;
  const journal: JournalEntry[] = [];
  const self = {
    kitchen: emptyKitchen(household) as Kitchen,
    journal,
    get doing(): Doing {
      return {
        kitchen: self.kitchen,
        clock: { now, timeZone: 'America/Chicago' },
        speaker: { personId: 'p1' },
        newId: () => `id${++n}`,
      };
    },
    do(build: (doing: Doing) => Result): Change {
      const result = build(self.doing);
      if (isRefused(result)) throw new Error(`refused: ${JSON.stringify(result)}`);
      self.kitchen = applyChange(self.kitchen, result);
      journal.unshift({
        ...result,
        id: `j${self.kitchen.version}`,
        version: self.kitchen.version,
        at: now,
        personId: 'p1',
        deviceId: null,
        turnId: null,
      });
      return result;
    },
    item: (name: string): Item => {
      const found = [...self.kitchen.items.values()].findLast((item) => item.name === name);
      if (!found) throw new Error(`no ${name}`);
      return found;
    },
    place: (name: string): string => {
      const found = [...self.kitchen.places.values()].find((place) => place.name === name);
      if (!found) throw new Error(`no ${name}`);
      return found.id;
    },
    marker: (texture: string): string => {
      const found = [...self.kitchen.markers.values()].find(({ touch }) => touch.texture === texture);
      if (!found) throw new Error(`no ${texture}`);
      return found.id;
    },
  };
  self.do((d) => buildPlaces(d, { kind: 'fridge', parentId: null, names: ['fridge'] }));
  self.do((d) => buildPlaces(d, { kind: 'freezer', parentId: null, names: ['chest freezer'] }));
  self.do((d) => buildPlaces(d, { kind: 'counter', parentId: null, names: ['counter'] }));
  self.do((d) => buildPlaces(d, { kind: 'shelf', parentId: self.place('fridge'), count: 4 }));
  self.do((d) => addMarker(d, { touch: { texture: 'glass', fastening: 'bead' } }));
  self.do((d) => addMarker(d, { touch: { texture: 'wooden', fastening: 'bead', dots: 1, counted: 'knot' } }));
  return self;
};

describe('places', () => {
  it('counts from the top, and counts again when more are built', () => {
    const c = cook();
    const fridge = c.place('fridge');
    c.do((d) => buildPlaces(d, { kind: 'shelf', parentId: fridge, count: 5 }));
    const shelves = [...c.kitchen.places.values()].filter(({ kind }) => kind === 'shelf');
    expect(shelves.map(({ name, aliases, position }) => [name, aliases, position])).toEqual([
      ['first shelf', ['top shelf'], 1],
      ['second shelf', [], 2],
      ['third shelf', ['middle shelf'], 3],
      ['fourth shelf', [], 4],
      ['fifth shelf', ['bottom shelf'], 5],
    ]);
    expect(pathOf(c.kitchen, c.place('fifth shelf')).map(({ name }) => name)).toEqual([
      'fridge',
      'fifth shelf',
    ]);
    expect(storageOf(c.kitchen, c.place('fifth shelf'))).toBe('fridge');
  });

  it('answer to every name they were given, and to no name twice', () => {
    const c = cook();
    const shelf = c.place('second shelf');
    c.do((d) => addPlaceName(d, shelf, 'sauce shelf'));
    c.do((d) => renamePlace(d, shelf, 'jar shelf'));
    expect(c.kitchen.places.get(shelf)).toMatchObject({
      name: 'jar shelf',
      aliases: ['sauce shelf', 'second shelf'],
    });
    expect(renamePlace(c.doing, shelf, 'First Shelf')).toMatchObject({ refused: 'place-exists' });
    expect(addPlaceName(c.doing, shelf, 'the sauce shelf')).toMatchObject({ refused: 'nothing-changes' });
    // A shelf built later leaves a name the cook gave alone.
    c.do((d) => buildPlaces(d, { kind: 'shelf', parentId: c.place('fridge'), count: 5 }));
    expect(c.kitchen.places.get(shelf)?.name).toBe('jar shelf');
  });

  it('named one by one are counted when it is told how many there are', () => {
    const c = cook();
    const chest = c.place('chest freezer');
    for (const name of ['bottom basket', 'second basket'])
      c.do((d) => buildPlaces(d, { kind: 'basket', parentId: chest, names: [name], uncounted: true }));
    const baskets = () => [...c.kitchen.places.values()].filter(({ kind }) => kind === 'basket');
    expect(baskets().map(({ position }) => position)).toEqual([null, null]);
    c.do((d) => buildPlaces(d, { kind: 'basket', parentId: chest, count: 3 }));
    expect(
      baskets()
        .toSorted((a, b) => a.position! - b.position!)
        .map(({ name, aliases, position }) => [name, aliases, position]),
    ).toEqual([
      ['first basket', ['top basket'], 1],
      ['second basket', ['middle basket'], 2],
      ['bottom basket', ['third basket'], 3],
    ]);
    expect(buildPlaces(c.doing, { kind: 'basket', parentId: chest, count: 3 })).toMatchObject({
      refused: 'place-exists',
    });
  });

  it('are never put inside themselves', () => {
    const c = cook();
    expect(movePlace(c.doing, c.place('fridge'), c.place('first shelf'))).toEqual({
      refused: 'place-inside-itself',
    });
    c.do((d) => movePlace(d, c.place('first shelf'), c.place('chest freezer')));
    expect(storageOf(c.kitchen, c.place('first shelf'))).toBe('freezer');
  });

  it('removes only what is empty', () => {
    const c = cook();
    c.do((d) => putAway(d, { name: 'milk', placeId: c.place('first shelf') }));
    expect(removePlace(c.doing, c.place('fridge'))).toMatchObject({
      refused: 'place-not-empty',
      ids: [c.item('milk').id],
    });
    c.do((d) => finish(d, c.item('milk').id));
    c.do((d) => removePlace(d, c.place('fridge')));
    expect([...c.kitchen.places.values()].map(({ name }) => name)).toEqual(['chest freezer', 'counter']);
  });
});

describe('a batch', () => {
  it('is kept as one item a place, freezing those that go in the freezer', () => {
    const c = cook();
    c.do((d) =>
      putAway(d, {
        name: 'bean chilli',
        dates: { made: '2026-05-14' },
        touch: { container: 'tub' },
        shares: [
          { amount: { value: 2, unit: 'tub' }, placeId: c.place('first shelf') },
          { amount: { value: 6, unit: 'tub' }, placeId: c.place('chest freezer') },
        ],
      }),
    );
    const [cold] = itemsAt(c.kitchen, c.place('fridge'));
    const [frozen] = itemsAt(c.kitchen, c.place('chest freezer'));
    expect(cold?.batchId).toBe(frozen?.batchId);
    expect(cold?.dates).toEqual({ made: '2026-05-14' });
    expect(frozen?.dates).toEqual({ made: '2026-05-14', frozen: '2026-05-14' });
    c.do((d) =>
      amend(d, frozen!.id, { contains: { add: ['soybeans'] }, spot: 'left side', wholeBatch: true }),
    );
    const after = itemsAt(c.kitchen, c.place('fridge'))[0];
    expect(after).toMatchObject({ contains: ['soybeans'], spot: null });
  });

  it('moves a part, keeps the sum, and cautions before freezing again', () => {
    const c = cook();
    c.do((d) =>
      putAway(d, { name: 'stew', amount: { value: 6, unit: 'tub' }, placeId: c.place('chest freezer') }),
    );
    const id = c.item('stew').id;
    c.do((d) => move(d, id, { placeId: c.place('first shelf'), amount: { value: 2, unit: 'piece' } }));
    const out = itemsAt(c.kitchen, c.place('fridge'))[0]!;
    expect(out.amount).toEqual({ value: 2, unit: 'tub' });
    expect(c.kitchen.items.get(id)?.amount).toEqual({ value: 4, unit: 'tub' });
    expect(out.dates).toEqual({ thawed: '2026-05-14' });
    expect(isRefreeze(c.doing, out)).toBe(true);
    expect(isRefreeze(c.doing, c.kitchen.items.get(id)!)).toBe(false);
    c.do((d) => merge(d, [id, out.id]));
    expect(c.kitchen.items.get(id)).toMatchObject({
      amount: { value: 6, unit: 'tub' },
      dates: { thawed: '2026-05-14' },
    });
  });

  it('is divided into equal parts that add up', () => {
    const c = cook();
    c.do((d) => putAway(d, { name: 'stew', amount: { value: 2, unit: 'pound' } }));
    c.do((d) => split(d, c.item('stew').id, 3));
    const parts = [...c.kitchen.items.values()].map(({ amount }) => amount!.value);
    expect(parts).toHaveLength(3);
    expect(parts.reduce((a, b) => a + b)).toBeCloseTo(2, 5);
    expect(split(c.doing, c.item('stew').id, 1)).toEqual({ refused: 'too-few' });
  });
});

describe('amounts', () => {
  it('come down, across units of one kind, to nothing and no further', () => {
    const c = cook();
    c.do((d) => putAway(d, { name: 'rice', amount: { value: 2, unit: 'pound' } }));
    const id = c.item('rice').id;
    c.do((d) => take(d, id, { value: 8, unit: 'ounce' }));
    expect(c.item('rice').amount).toEqual({ value: 1.5, unit: 'pound' });
    expect(take(c.doing, id, { value: 2, unit: 'pound' })).toMatchObject({
      refused: 'more-than-there-is',
      have: { value: 1.5, unit: 'pound' },
    });
    expect(take(c.doing, id, { value: 1, unit: 'tub' })).toMatchObject({ refused: 'unit-differs' });
    c.do((d) => take(d, id, { value: 1.5, unit: 'pound' }));
    expect(c.item('rice').gone).toEqual({ at: now, how: 'used' });
  });

  // NIST Special Publication 811 (2008), appendix B.8; Weights and Measures Act 1985 (UK), schedule 1.
  it.each([
    [{ value: 1, unit: 'pound' }, 'gram', 'us', 453.59237],
    [{ value: 16, unit: 'ounce' }, 'pound', 'us', 1],
    [{ value: 1, unit: 'gallon' }, 'litre', 'us', 3.785411784],
    [{ value: 1, unit: 'gallon' }, 'litre', 'uk', 4.54609],
    [{ value: 2, unit: 'cup' }, 'pint', 'us', 1],
    [{ value: 20, unit: 'fluid ounce' }, 'pint', 'uk', 1],
    [{ value: 1, unit: 'dozen' }, 'piece', 'us', 12],
  ] as const)('%j is so many of a %s (%s)', (amount, unit, region, value) => {
    expect(convert(amount, unit, region)).toBeCloseTo(value, 6);
  });

  it('of different kinds are never turned into each other', () => {
    expect(convert({ value: 1, unit: 'pound' }, 'cup', 'us')).toBeNull();
    expect(convert({ value: 1, unit: 'cup' }, 'litre', 'uk')).toBeNull();
    expect(convert({ value: 1, unit: 'constructor' }, 'gram', 'us')).toBeNull();
    expect(totalOf(cook().kitchen, [])).toEqual({ amounts: [], unknown: 0 });
  });

  it('halves of an unknown amount are halves of its container', () => {
    const c = cook();
    c.do((d) => putAway(d, { name: 'sauerkraut', touch: { container: 'jar' } }));
    c.do((d) => setLeft(d, c.item('sauerkraut').id, { fraction: 0.5, rough: true }));
    expect(c.item('sauerkraut').amount).toEqual({ value: 0.5, unit: 'jar', rough: true });
    // A share left is of what it started with, so the same words twice say the same.
    c.do((d) => setLeft(d, c.item('sauerkraut').id, { fraction: 0.25 }));
    expect(c.item('sauerkraut').amount).toEqual({ value: 0.25, unit: 'jar' });
    expect(take(c.doing, c.item('sauerkraut').id, { value: -1, unit: 'jar' })).toEqual({
      refused: 'not-an-amount',
    });
  });
});

describe('how full a place is', () => {
  it('is what was said of it, and when', () => {
    const c = cook();
    const shelf = c.place('first shelf');
    c.do((d) => noteFilled(d, shelf, 75));
    expect(c.kitchen.places.get(shelf)?.filled).toEqual({ hundredths: 75, at: now });
    expect(noteFilled(c.doing, shelf, 140)).toMatchObject({ refused: 'bad-setting' });
    expect(noteFilled(c.doing, 'nowhere', 50)).toMatchObject({ refused: 'unknown-place' });
  });
});

describe('markers', () => {
  it('change places between two foods, and back with an undo', () => {
    const c = cook();
    c.do((d) => putAway(d, { name: 'rice', touch: { container: 'tub' } }));
    c.do((d) => putAway(d, { name: 'barley', touch: { container: 'tub' } }));
    const [rice, barley] = [c.item('rice').id, c.item('barley').id];
    expect(swapMarkers(c.doing, rice, barley)).toMatchObject({ refused: 'no-marker' });
    c.do((d) => mark(d, rice, c.marker('wooden')));
    c.do((d) => swapMarkers(d, rice, barley));
    expect(c.item('rice').markerId).toBeNull();
    expect(itemWithMarker(c.kitchen, c.marker('wooden'))?.id).toBe(barley);
    expect(swapMarkers(c.doing, rice, rice)).toMatchObject({ refused: 'nothing-changes' });
  });

  it('that is lost is on nothing and not spare, and comes back as it was', () => {
    const c = cook();
    c.do((d) => putAway(d, { name: 'rice', touch: { container: 'tub' } }));
    const wooden = c.marker('wooden');
    const lost = c.kitchen.markers.get(wooden)!;
    c.do((d) => mark(d, c.item('rice').id, wooden));
    c.do((d) => loseMarker(d, wooden));
    expect(c.item('rice').markerId).toBeNull();
    expect(c.kitchen.markers.has(wooden)).toBe(false);
    expect(loseMarker(c.doing, wooden)).toMatchObject({ refused: 'unknown-marker' });
    c.do((d) => bringMarkerBack(d, lost));
    expect(c.kitchen.markers.get(wooden)).toEqual(lost);
    expect(bringMarkerBack(c.doing, lost)).toMatchObject({ refused: 'nothing-changes' });
  });

  it('put on a lot are as many as its tubs, alike, and each is freed with its own', () => {
    const c = cook();
    const tub = { amount: { value: 1, unit: 'tub' }, placeId: c.place('first shelf') };
    const made = c.do((d) => putAway(d, { name: 'chilli', shares: [tub, tub, tub] }));
    const ids = made.ops.flatMap(({ kind, id }) => (kind === 'item' ? [id] : []));
    const before = c.kitchen.markers.size;
    c.do((d) => markLot(d, ids, c.marker('wooden')));
    const worn = ids.map((id) => c.kitchen.items.get(id)?.markerId ?? '');
    expect(new Set(worn).size).toBe(3);
    expect(worn[0]).toBe(c.marker('wooden'));
    expect(worn.map((id) => c.kitchen.markers.get(id)?.touch)).toEqual(
      worn.map(() => c.kitchen.markers.get(c.marker('wooden'))?.touch),
    );
    c.do((d) => finish(d, ids[1]!));
    expect(spareMarkers(c.kitchen).map(({ id }) => id)).toContain(worn[1]);
    expect(itemWithMarker(c.kitchen, worn[0]!)?.id).toBe(ids[0]);
    // What is spare and feels the same is used before another is made.
    expect(markLot(c.doing, ids.slice(2), c.marker('wooden'))).toMatchObject({ refused: 'nothing-changes' });
    expect(c.kitchen.markers.size).toBe(before + 2);
  });

  it('stand on one living item, are freed with its food and taken back with it', () => {
    const c = cook();
    c.do((d) =>
      putAway(d, {
        name: 'ginger stock',
        markerId: c.marker('wooden'),
        diets: ['eat soon'],
        freeFrom: ['eggs'],
        dates: { bought: '2026-05-01', useBy: '2026-05-20' },
        placeId: c.place('first shelf'),
      }),
    );
    c.do((d) => putAway(d, { name: 'aioli' }));
    const stock = c.item('ginger stock').id;
    const aioli = c.item('aioli').id;
    expect(mark(c.doing, aioli, c.marker('wooden'))).toMatchObject({
      refused: 'marker-in-use',
      ids: [stock],
    });
    c.do((d) => mark(d, stock, c.marker('glass')));
    expect(spareMarkers(c.kitchen).map(({ touch }) => touch.texture)).toEqual(['wooden']);
    c.do((d) => finish(d, stock));
    expect(itemWithMarker(c.kitchen, c.marker('glass'))).toBeNull();
    expect(c.kitchen.markers.get(c.marker('glass'))?.lastItemId).toBe(stock);
    c.do((d) => buyAdd(d, { name: 'ginger stock', replaces: stock }));
    c.do((d) => bringBack(d, stock, { dates: { bought: '2026-05-14' } }));
    const again = c.item('ginger stock');
    expect(again.id).not.toBe(stock);
    // Both markers last stood on the old stock; either would do, and it is one of them.
    expect(again.markerId).not.toBeNull();
    expect(again).toMatchObject({ diets: ['eat soon'], freeFrom: [], dates: { bought: '2026-05-14' } });
    expect(c.kitchen.purchases.size).toBe(0);
  });

  it('that feel alike are refused with what would tell them apart', () => {
    const c = cook();
    const touch = { texture: 'glass', fastening: 'bead' };
    expect(addMarker(c.doing, { touch })).toEqual({ refused: 'looks-alike', ids: [c.marker('glass')] });
    expect(proposeDifference(c.kitchen, touch)).toEqual({ dots: 1, counted: 'knot' });
    expect(isRefused(addMarker(c.doing, { touch: { ...touch, dots: 1, counted: 'knot' } }))).toBe(false);
  });

  it('give the meaning of their knots to what they stand on', () => {
    const c = cook();
    c.do((d) => defineDots(d, 1, 'eat soon'));
    c.do((d) => putAway(d, { name: 'ginger stock', markerId: c.marker('wooden') }));
    expect(marksOf(c.kitchen, c.item('ginger stock'))).toMatchObject({
      diets: ['eat soon'],
      dots: 'eat soon',
    });
    c.do((d) => defineDots(d, 1, 'contains peanuts'));
    expect(marksOf(c.kitchen, c.item('ginger stock'))).toMatchObject({ diets: [], contains: ['peanuts'] });
  });

  it('and containers are found by feel, near misses only when nothing fits', () => {
    const c = cook();
    c.do((d) =>
      putAway(d, {
        name: 'sauerkraut',
        touch: { size: 'large', container: 'jar' },
        markerId: c.marker('glass'),
      }),
    );
    c.do((d) =>
      putAway(d, {
        name: 'ginger stock',
        touch: { size: 'small', container: 'jar' },
        markerId: c.marker('wooden'),
      }),
    );
    const names = (felt: object) => findByTouch(c.kitchen, felt).map(({ of, differs }) => [of.name, differs]);
    expect(names({ container: 'jar' }).map(([name]) => name)).toEqual(['sauerkraut', 'ginger stock']);
    expect(names({ texture: 'glass', fastening: 'bead' })).toEqual([['sauerkraut', []]]);
    expect(names({ texture: 'wooden', dots: 1 })).toEqual([['ginger stock', []]]);
    c.do((d) => putAway(d, { name: 'pickle', touch: { container: 'jar' } }));
    // The pickle might be small too, but the stock is known to be.
    expect(names({ size: 'small', container: 'jar' })).toEqual([['ginger stock', []]]);
    expect(names({ size: 'tiny', container: 'jar' })).toEqual([['pickle', []]]);
    c.do((d) => finish(d, c.item('pickle').id));
    expect(names({ dots: 0 })).toEqual([['sauerkraut', []]]);
    expect(names({ texture: 'glass', dots: 2 })).toEqual([['sauerkraut', ['dots']]]);
    expect(names({ fastening: 'bead', fastenings: 2, texture: 'wooden' })).toEqual([
      ['ginger stock', ['fastenings']],
    ]);
    expect(names({ size: 'small', container: 'jar', texture: 'glass' })).toEqual([
      ['sauerkraut', ['size']],
      ['ginger stock', ['texture']],
    ]);
  });

  it('missing, two containers alike in one place are noticed', () => {
    const c = cook();
    const jar = { touch: { container: 'jar' }, placeId: c.place('first shelf') };
    c.do((d) => putAway(d, { ...jar, name: 'sauerkraut' }));
    c.do((d) => putAway(d, { ...jar, name: 'pickle' }));
    expect(lookAlikes(c.kitchen, c.item('sauerkraut')).map(({ name }) => name)).toEqual(['pickle']);
    c.do((d) => mark(d, c.item('pickle').id, c.marker('glass')));
    expect(lookAlikes(c.kitchen, c.item('sauerkraut'))).toEqual([]);
  });
});

describe('the same again', () => {
  const pot = {
    name: 'groundnut soup',
    dates: { made: '2026-05-10', frozen: '2026-05-10' },
    contains: ['peanuts'],
    freeFrom: ['milk'],
    cautions: ['very hot'],
    notes: ['shake it'],
    maker: 'Amara',
    amount: { value: 1, unit: 'tub' },
  } as const;

  it('in more containers is one batch with all its facts, and nobody else’s', () => {
    const c = cook();
    c.do((d) => putAway(d, { ...pot, placeId: c.place('first shelf') }));
    const first = c.item('groundnut soup').id;
    const shares = [{ amount: pot.amount }, { amount: pot.amount }];
    const before = c.kitchen;
    const undo = c.do((d) => copyItem(d, first, { shares }));
    const all = livingItems(c.kitchen).filter(({ name }) => name === pot.name);
    expect(all).toHaveLength(3);
    expect(new Set(all.map(({ batchId }) => batchId)).size).toBe(1);
    expect(all[0]!.batchId).not.toBeNull();
    for (const one of all) {
      const { amount: _, ...facts } = pot;
      expect(one).toMatchObject(facts);
    }
    expect(undo.ops.length).toBe(3);
    expect(before.items.get(first)?.batchId).toBeNull();
  });

  it('made anew has its own dates, and promises nothing of what it is free from', () => {
    const c = cook();
    c.do((d) => putAway(d, { ...pot, placeId: c.place('first shelf') }));
    c.do((d) => anotherLike(d, c.item('groundnut soup').id, { dates: { made: '2026-05-14' } }));
    const made = livingItems(c.kitchen).find(({ dates }) => dates.made === '2026-05-14');
    expect(made).toMatchObject({
      contains: ['peanuts'],
      freeFrom: [],
      cautions: ['very hot'],
      batchId: null,
    });
    expect(made!.dates).toEqual({ made: '2026-05-14' });
  });

  it('in its own container: the old is used up, its marker and place are kept', () => {
    const c = cook();
    c.do((d) => putAway(d, { ...pot, placeId: c.place('first shelf'), markerId: c.marker('wooden') }));
    const old = c.item('groundnut soup').id;
    c.do((d) => refill(d, old, { dates: { made: '2026-05-14' } }));
    expect(c.kitchen.items.get(old)?.gone).toMatchObject({ how: 'used' });
    expect(itemWithMarker(c.kitchen, c.marker('wooden'))).toMatchObject({
      placeId: c.place('first shelf'),
      dates: { made: '2026-05-14' },
    });
  });
});

describe('cold and heat', () => {
  it('freezes in the only freezer, thaws, and notes standing out', () => {
    const c = cook();
    c.do((d) => putAway(d, { name: 'chicken', placeId: c.place('first shelf') }));
    const id = c.item('chicken').id;
    expect(thaw(c.doing, id)).toMatchObject({ refused: 'not-frozen' });
    c.do((d) => freeze(d, id, { day: '2026-05-13' }));
    expect(c.item('chicken')).toMatchObject({
      placeId: c.place('chest freezer'),
      dates: { frozen: '2026-05-13' },
    });
    expect(freeze(c.doing, id)).toMatchObject({ refused: 'already-frozen' });
    c.do((d) => move(d, id, { placeId: c.place('counter') }));
    expect(c.item('chicken')).toMatchObject({ outSince: now, dates: { thawed: '2026-05-14' } });
    c.do((d) => move(d, id, { placeId: c.place('second shelf') }));
    expect(c.item('chicken').outSince).toBeNull();
    expect(freeze(c.doing, id, { placeId: c.place('counter') })).toMatchObject({ refused: 'not-a-freezer' });
  });
});

describe('allergens', () => {
  it('said to be in it are not dropped on a word', () => {
    const c = cook();
    c.do((d) => putAway(d, { name: 'curry', contains: ['peanuts'] }));
    const id = c.item('curry').id;
    expect(amend(c.doing, id, { freeFrom: { add: ['peanuts'] } })).toMatchObject({
      refused: 'contains-it',
      about: ['peanuts'],
    });
    c.do((d) => amend(d, id, { freeFrom: { add: ['peanuts'] }, sure: true }));
    expect(c.item('curry')).toMatchObject({ contains: [], freeFrom: ['peanuts'] });
    c.do((d) => amend(d, id, { contains: { add: ['peanuts'] } }));
    expect(c.item('curry')).toMatchObject({ contains: ['peanuts'], freeFrom: [] });
  });
});

describe('checking a place', () => {
  it('goes item by item and finishes what is gone', () => {
    const c = cook();
    for (const name of ['milk', 'butter']) c.do((d) => putAway(d, { name, placeId: c.place('first shelf') }));
    c.do((d) => startStockTake(d, c.place('fridge')));
    const check = () => [...c.kitchen.stockTakes.values()][0]!;
    expect(startStockTake(c.doing, c.place('fridge'))).toMatchObject({
      refused: 'check-open',
      ids: [check().id],
    });
    expect(nextToCheck(c.kitchen, check())?.name).toBe('milk');
    c.do((d) => checkItem(d, check().id, c.item('milk').id, 'gone'));
    expect(c.item('milk').gone?.how).toBe('used');
    expect(nextToCheck(c.kitchen, check())?.name).toBe('butter');
    expect(tallyOf(c.kitchen, check())).toEqual({ there: 0, gone: 1, changed: 0, unsure: 0, toGo: 1 });
  });
});

describe('undo', () => {
  it('takes back what still stands, then does it again', () => {
    const c = cook();
    c.do((d) => putAway(d, { name: 'milk', markerId: c.marker('glass') }));
    const before = c.kitchen;
    c.do((d) => finish(d, c.item('milk').id));
    c.do((d) => undo(d, lastUndoable(c.journal, 'p1')!));
    expect({ ...c.kitchen, version: before.version }).toEqual(before);
    c.do((d) => redo(d, lastRedoable(c.journal, 'p1')!));
    expect(c.item('milk').gone).not.toBeNull();
    expect(lastRedoable(c.journal)).toBeNull();
    // The finishing stands again; undone once more, the putting away is next.
    c.do((d) => undo(d, lastUndoable(c.journal)!));
    c.do((d) => undo(d, lastUndoable(c.journal)!));
    expect(c.kitchen.items.size).toBe(0);
    expect(lastUndoable(c.journal, 'somebody else')).toBeNull();
  });

  it('names what was changed since', () => {
    const c = cook();
    c.do((d) => putAway(d, { name: 'milk' }));
    const first = c.journal[0]!;
    c.do((d) => amend(d, c.item('milk').id, { maker: 'Dele' }));
    expect(undo(c.doing, first)).toEqual({
      refused: 'changed-since',
      ids: [c.item('milk').id],
      about: ['milk'],
    });
  });

  it('takes several steps made together back together', () => {
    const c = cook();
    c.do((d) => putAway(d, { name: 'milk', amount: { value: 2, unit: 'bottle' } }));
    const before = c.kitchen;
    const id = c.item('milk').id;
    const made = c.do((d) =>
      together(d, [
        (one) => take(one, id, { value: 1, unit: 'bottle' }),
        (two) => move(two, id, { placeId: c.place('first shelf') }),
      ]),
    );
    expect(made.ops).toHaveLength(1);
    c.do((d) => undo(d, c.journal[0]!));
    expect(c.kitchen.items).toEqual(before.items);
  });
});
