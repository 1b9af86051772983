/** Whether a kitchen of two thousand things is as quick as one of fifty: looking, finding, changing. */
import { Bench } from 'tinybench';
import {
  applyChange,
  emptyKitchen,
  findByTouch,
  finish,
  invertChange,
  isRefused,
  itemsAt,
  itemWithMarker,
  learnedDefaults,
  likeNames,
  livingItems,
  putAway,
  take,
  undo,
  type Doing,
  type Kitchen,
} from '../../src/kitchen/index.js';
import { bigKitchen } from './big-kitchen.js';

const clock = { now: '2026-05-14T18:00:00.000Z', timeZone: 'America/Chicago' };
const SIZES = [50, 500, 2_000];
const HUNDRED = 100;

const fiftyOf = (kitchen: Kitchen): Kitchen => {
  const few = livingItems(kitchen).slice(0, 50);
  return { ...kitchen, items: new Map(few.map((item) => [item.id, item])) };
};

const kitchenOf = (items: number): Kitchen => {
  const kitchen = bigKitchen('bench', Math.max(items, 100), clock);
  return items < 100 ? fiftyOf(kitchen) : kitchen;
};

const made = <T extends object>(result: T): T => {
  if ('refused' in result) throw new Error(String(result.refused));
  return result;
};

const tasksOf = (kitchen: Kitchen): Readonly<Record<string, () => unknown>> => {
  let serial = 0;
  const doing: Doing = { kitchen, clock, speaker: { personId: null }, newId: () => `b${++serial}` };
  const items = livingItems(kitchen);
  const item = items[items.length >> 1]!;
  const counted = items.find(({ amount }) => (amount?.value ?? 0) >= 2) ?? item;
  const fridge = [...kitchen.places.values()].find(({ kind }) => kind === 'fridge')!.id;
  const marked = items.find(({ markerId }) => markerId !== null);
  const entry = {
    ...made(finish(doing, item.id)),
    id: 'e1',
    version: 1,
    at: clock.now,
    personId: null,
    deviceId: null,
    turnId: null,
  };
  if (isRefused(entry)) throw new Error('refused');
  const finished = applyChange(kitchen, entry);
  const back = invertChange(entry);
  return {
    'look: what lives': () => livingItems({ ...kitchen, items: new Map(kitchen.items) }),
    'look: what is in the fridge': () => itemsAt(kitchen, fridge),
    'look: what a marker stands on': () => itemWithMarker(kitchen, marked?.markerId ?? ''),
    'find by touch': () => findByTouch(kitchen, { container: 'jar', texture: 'glass', fastening: 'bead' }),
    'find by name': () => likeNames(kitchen, 'lentil stew'),
    'find by name, just after a change': () =>
      likeNames({ ...kitchen, items: new Map(kitchen.items) }, 'lentil stew'),
    'learned from last time': () => learnedDefaults(kitchen, 'milk'),
    'change: put away': () =>
      applyChange(kitchen, made(putAway(doing, { name: 'milk', placeId: fridge })) as never),
    'change: take one': () => applyChange(kitchen, made(take(doing, counted.id, { fraction: 0.5 })) as never),
    'change: finish': () => applyChange(kitchen, made(finish(doing, item.id)) as never),
    'change: a hundred, one after another': () => {
      let now = kitchen;
      for (let n = 0; n < HUNDRED; n++) now = applyChange(now, n % 2 === 0 ? entry : { ops: back });
      return now;
    },
    'change: undo': () => applyChange(finished, made(undo({ ...doing, kitchen: finished }, entry)) as never),
  };
};

export const benchKitchen = async (): Promise<void> => {
  const names = Object.keys(tasksOf(emptyAsGood()));
  const medians = new Map<string, number[]>();
  for (const size of SIZES) {
    const bench = new Bench({ time: 150 });
    for (const [name, task] of Object.entries(tasksOf(kitchenOf(size)))) bench.add(name, task);
    await bench.run();
    for (const { name, result } of bench.tasks) {
      const p50 = result.state === 'completed' ? result.latency.p50 * 1000 : NaN;
      medians.set(name, [...(medians.get(name) ?? []), p50]);
    }
  }
  process.stdout.write(`Kitchen, microseconds (median) with ${SIZES.join(', ')} items\n`);
  for (const name of names) {
    const row = (medians.get(name) ?? []).map((time) => time.toFixed(1).padStart(9));
    process.stdout.write(`  ${name.padEnd(36)}${row.join('')}\n`);
  }
};

/** Any kitchen will do to learn the names of the tasks. */
const emptyAsGood = (): Kitchen => {
  const kitchen = kitchenOf(50);
  return { ...emptyKitchen(kitchen.household), ...kitchen };
};
