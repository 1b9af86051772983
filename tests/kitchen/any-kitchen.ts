/** Random lives of a kitchen: what cooks may do, in any order, with any numbers. */
import fc from 'fast-check';
import {
  addMarker,
  addPerson,
  amend,
  applyChange,
  bringBack,
  buildPlaces,
  buyAdd,
  buyClear,
  buyGot,
  checkItem,
  defineDots,
  emptyKitchen,
  finish,
  finishStockTake,
  freeze,
  isRefused,
  leaveNote,
  mark,
  merge,
  move,
  movePlace,
  open,
  putAway,
  putBack,
  reheated,
  removePlace,
  renamePlace,
  setHousehold,
  setLeft,
  setTimer,
  cancelReminder,
  split,
  startStockTake,
  take,
  takeOut,
  thaw,
  together,
  undo,
  unmark,
  type Doing,
  type Household,
  type Id,
  type JournalEntry,
  type Kitchen,
  type Refused,
  type Result,
} from '../../src/kitchen/index.js';

export const household: Household = {
  id: 'h1',
  name: 'Any kitchen',
  timeZone: 'America/Chicago',
  locale: 'en-US',
  region: 'us',
  measures: 'us',
  microwaveWatts: 800,
  summaryAt: null,
  quietHours: null,
  dotMeanings: {},
};

/** One thing done: which, and numbers that pick what it is done to. */
export interface Deed {
  readonly what: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly amount: number;
}

export const deed: fc.Arbitrary<Deed> = fc.record({
  what: fc.nat(1_000),
  a: fc.nat(50),
  b: fc.nat(50),
  c: fc.nat(50),
  // Thirds and quarters as cooks say them, and numbers that no cook should.
  amount: fc.oneof(
    fc.constantFrom(0, 0.25, 1 / 3, 0.5, 2 / 3, 1, 1.5, 2, 3, 12),
    fc.double({ min: -2, max: 20, noNaN: false }),
  ),
});

const pick = <T>(all: Iterable<T>, n: number): T | undefined => {
  const list = [...all];
  return list.length === 0 ? undefined : list[n % list.length];
};

const NAMES = ['milk', 'bean chilli', 'rice', 'caraway sauerkraut', 'stew'];
const UNITS = ['tub', 'gram', 'pound', 'piece', 'portion'];
const SHAPES = ['round', 'square', 'oval', 'star'];

type Act = (doing: Doing, deed: Deed) => Result | null;

const itemAt = ({ kitchen }: Doing, n: number): Id => pick(kitchen.items.keys(), n) ?? 'none';
const placeAt = ({ kitchen }: Doing, n: number): Id => pick(kitchen.places.keys(), n) ?? 'none';
const markerAt = ({ kitchen }: Doing, n: number): Id => pick(kitchen.markers.keys(), n) ?? 'none';
const amountOf = ({ amount, c }: Deed) => ({ value: amount, unit: UNITS[c % UNITS.length] ?? 'tub' });

const ACTS: readonly Act[] = [
  (d, x) =>
    putAway(d, {
      name: NAMES[x.a % NAMES.length] ?? 'x',
      amount: x.b % 3 === 0 ? null : amountOf(x),
      placeId: x.b % 4 === 0 ? null : placeAt(d, x.b),
      markerId: x.c % 2 === 0 ? null : markerAt(d, x.c),
      dates: x.a % 2 === 0 ? { bought: '2026-05-10' } : {},
      contains: x.c % 3 === 0 ? ['milk'] : [],
    }),
  (d, x) =>
    putAway(d, {
      name: 'batch',
      shares: [1, 2, 3].map((n) => ({
        amount: { value: n, unit: 'tub' },
        placeId: placeAt(d, x.a + n),
        ...(n === 1 && x.b % 2 === 0 ? { markerId: markerAt(d, x.b) } : {}),
      })),
    }),
  (d, x) => take(d, itemAt(d, x.a), x.b % 3 === 0 ? { fraction: x.amount } : amountOf(x)),
  (d, x) => setLeft(d, itemAt(d, x.a), x.b % 2 === 0 ? { fraction: x.amount, rough: true } : amountOf(x)),
  (d, x) => finish(d, itemAt(d, x.a), (['used', 'thrown out', 'given away'] as const)[x.b % 3]),
  (d, x) =>
    move(d, itemAt(d, x.a), { placeId: placeAt(d, x.b), ...(x.c % 3 === 0 ? { amount: amountOf(x) } : {}) }),
  (d, x) => freeze(d, itemAt(d, x.a), x.b % 2 === 0 ? {} : { placeId: placeAt(d, x.b) }),
  (d, x) => thaw(d, itemAt(d, x.a), x.b % 2 === 0 ? {} : { placeId: placeAt(d, x.b), amount: amountOf(x) }),
  (d, x) => open(d, itemAt(d, x.a)),
  (d, x) => takeOut(d, itemAt(d, x.a)),
  (d, x) => putBack(d, itemAt(d, x.a), x.b % 2 === 0 ? {} : { placeId: placeAt(d, x.b) }),
  (d, x) => reheated(d, itemAt(d, x.a)),
  (d, x) =>
    split(d, itemAt(d, x.a), x.b % 2 === 0 ? x.b % 6 : [{ amount: amountOf(x), markerId: markerAt(d, x.b) }]),
  (d, x) => merge(d, [itemAt(d, x.a), itemAt(d, x.b), itemAt(d, x.c)], { anyway: x.b % 2 === 0 }),
  (d, x) => mark(d, itemAt(d, x.a), markerAt(d, x.b), { takeIt: x.c % 2 === 0 }),
  (d, x) => unmark(d, itemAt(d, x.a)),
  (d, x) =>
    addMarker(d, { touch: { shape: SHAPES[x.a % 4] ?? 'round', dots: x.b % 3 } }, { anyway: x.c % 2 === 0 }),
  (d, x) => defineDots(d, x.a % 4, x.b % 3 === 0 ? null : `meaning ${x.b}`),
  (d, x) =>
    buildPlaces(d, {
      kind: (['fridge', 'freezer', 'shelf', 'basket', 'counter'] as const)[x.a % 5] ?? 'shelf',
      parentId: x.b % 2 === 0 ? null : placeAt(d, x.b),
      count: x.c % 6,
    }),
  (d, x) => renamePlace(d, placeAt(d, x.a), `place ${x.b}`),
  (d, x) => movePlace(d, placeAt(d, x.a), x.c % 3 === 0 ? null : placeAt(d, x.b)),
  (d, x) => removePlace(d, placeAt(d, x.a)),
  (d, x) =>
    amend(d, itemAt(d, x.a), {
      ...(x.b % 2 === 0 ? { amount: amountOf(x) } : {}),
      contains: { add: ['peanuts'] },
      dates: { useBy: x.c % 2 === 0 ? '2026-06-01' : null },
      wholeBatch: x.c % 3 === 0,
    }),
  (d, x) => bringBack(d, itemAt(d, x.a)),
  (d, x) =>
    buyAdd(d, { name: NAMES[x.a % NAMES.length] ?? 'x', replaces: x.b % 2 === 0 ? itemAt(d, x.b) : null }),
  (d, x) => buyGot(d, [pick(d.kitchen.purchases.keys(), x.a) ?? 'none']),
  (d) => buyClear(d),
  (d, x) => addPerson(d, { name: `person ${x.a % 5}` }),
  (d, x) => leaveNote(d, { text: 'soup is yours', forPersonId: pick(d.kitchen.people.keys(), x.a) ?? null }),
  (d, x) => setTimer(d, { seconds: Math.abs(x.amount) * 60 }),
  (d, x) => cancelReminder(d, pick(d.kitchen.reminders.keys(), x.a) ?? 'none'),
  (d, x) => startStockTake(d, placeAt(d, x.a)),
  (d, x) =>
    checkItem(
      d,
      pick(d.kitchen.stockTakes.keys(), x.a) ?? 'none',
      itemAt(d, x.b),
      (['there', 'gone', 'changed', 'unsure'] as const)[x.c % 4] ?? 'there',
    ),
  (d, x) => finishStockTake(d, pick(d.kitchen.stockTakes.keys(), x.a) ?? 'none'),
  (d, x) =>
    setHousehold(d, { microwaveWatts: Number.isFinite(x.amount) ? Math.round(x.amount * 100) : null }),
  (d, x) =>
    together(d, [
      (one) => finish(one, itemAt(one, x.a)),
      (two) => mark(two, itemAt(two, x.b), markerAt(two, x.c), { takeIt: true }),
      (three) => mark(three, itemAt(three, x.c), markerAt(three, x.b), { takeIt: true }),
    ]),
];

export interface Life {
  readonly start: Kitchen;
  readonly kitchen: Kitchen;
  /** Oldest first. */
  readonly journal: readonly JournalEntry[];
  readonly refusals: readonly Refused[];
}

/** Where lives begin: a few places, and four things of which two bear markers, so that deeds have something to act on. */
const furnished = (): Kitchen => {
  let serial = 0;
  let kitchen = emptyKitchen(household);
  const doing = (): Doing => ({
    kitchen,
    clock: { now: '2026-05-14T10:00:00.000Z', timeZone: household.timeZone },
    speaker: { personId: null },
    newId: () => `s${++serial}`,
  });
  const steps: readonly ((d: Doing) => Result)[] = [
    (d) => buildPlaces(d, { kind: 'fridge', parentId: null, names: ['fridge'] }),
    (d) => buildPlaces(d, { kind: 'freezer', parentId: null, names: ['freezer'] }),
    (d) => buildPlaces(d, { kind: 'shelf', parentId: placeAt(d, 0), count: 3 }),
    ...SHAPES.map((shape) => (d: Doing) => addMarker(d, { touch: { shape, fastening: 'clip' } })),
    ...NAMES.slice(0, 4).map(
      (name, n) => (d: Doing) =>
        putAway(d, {
          name,
          amount: { value: 4, unit: 'tub' },
          placeId: placeAt(d, n),
          ...(n < 2 ? { markerId: markerAt(d, n) } : {}),
        }),
    ),
  ];
  for (const step of steps) {
    const result = step(doing());
    if (isRefused(result)) throw new Error(result.refused);
    kitchen = applyChange(kitchen, result);
  }
  return { ...kitchen, version: 0 };
};
const START = furnished();

/** Lives through the deeds; `seen` looks at each kitchen on the way. */
export const live = (deeds: readonly Deed[], seen: (kitchen: Kitchen) => void = () => undefined): Life => {
  let serial = 0;
  let kitchen = START;
  const journal: JournalEntry[] = [];
  const refusals: Refused[] = [];
  deeds.forEach((one, n) => {
    const doing: Doing = {
      kitchen,
      // A minute between deeds, so that what came first is known.
      clock: { now: new Date(Date.UTC(2026, 4, 14, 12, n)).toISOString(), timeZone: household.timeZone },
      speaker: { personId: null },
      newId: () => `i${++serial}`,
    };
    const last = journal.at(-1);
    const act = ACTS[one.what % ACTS.length];
    const result = one.what % 17 === 0 && last ? undo(doing, last) : act?.(doing, one);
    if (!result) return;
    if (isRefused(result)) {
      refusals.push(result);
      return;
    }
    kitchen = applyChange(kitchen, result);
    journal.push({
      ...result,
      id: `e${kitchen.version}`,
      version: kitchen.version,
      at: doing.clock.now,
      personId: null,
      deviceId: null,
      turnId: null,
    });
    seen(kitchen);
  });
  return { start: START, kitchen, journal, refusals };
};

/** A kitchen's records, whatever their order and version. */
export const recordsOf = (kitchen: Kitchen): unknown => {
  const { version: _, ...rest } = kitchen;
  return Object.fromEntries(
    Object.entries(rest).map(([key, value]) => [
      key,
      value instanceof Map ? Object.fromEntries([...value].sort(([a], [b]) => (a < b ? -1 : 1))) : value,
    ]),
  );
};
