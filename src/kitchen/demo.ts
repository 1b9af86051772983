/**
 * Kitchens kept as files for people to read and edit: the demo household, and what tests start from.
 * Days are written as offsets from the day of loading, so that the milk is always a little old.
 */
import { readFileSync } from 'node:fs';
import { z } from 'zod';
import { projectFile } from '../project-files.js';
import { plusDays, today, type Clock, type Instant } from '../terms/dates.js';
import type { Id, Item, Kitchen, Marker, Note, Person, Place, Purchase } from './model.js';

const day = z.int().describe('Days from the day of loading; negative is past.');
const amount = z.strictObject({
  value: z.number().positive(),
  unit: z.string().min(1),
  rough: z.boolean().optional(),
});
const touch = z.strictObject({
  size: z.string().optional(),
  container: z.string().optional(),
  texture: z.string().optional(),
  shape: z.string().optional(),
  fastening: z.string().optional(),
  fastenings: z.int().positive().optional(),
  spot: z.string().optional(),
  dots: z.int().nonnegative().optional(),
});
const preparation = z.strictObject({
  method: z.enum(['microwave', 'oven', 'hob', 'air fryer', 'steamer', 'slow cooker', 'toaster', 'none']),
  from: z.enum(['fridge', 'freezer', 'any']),
  steps: z.array(z.string()).default([]),
  minutes: z.number().positive().nullable().default(null),
  watts: z.number().positive().nullable().default(null),
  standMinutes: z.number().positive().nullable().default(null),
  heat: z
    .strictObject({ degrees: z.number(), scale: z.enum(['fahrenheit', 'celsius']) })
    .nullable()
    .default(null),
  portions: z.number().positive().nullable().default(null),
});
const texts = z.array(z.string().min(1)).default([]);
const key = z.string().regex(/^[\w.-]+$/);

const kitchenFile = z.strictObject({
  about: z.string(),
  household: z.strictObject({
    id: key,
    name: z.string(),
    timeZone: z.string(),
    locale: z.string(),
    region: z.enum(['us', 'uk']),
    measures: z.enum(['us', 'metric']),
    microwaveWatts: z.number().nullable(),
    summaryAt: z.string().nullable(),
    quietHours: z.strictObject({ from: z.string(), to: z.string() }).nullable(),
    dotMeanings: z.record(z.string().regex(/^\d+$/), z.string()),
  }),
  people: z.array(
    z.strictObject({
      key,
      name: z.string(),
      eatsHere: z.boolean(),
      allergens: texts,
      atRisk: z.boolean().default(false),
    }),
  ),
  places: z.array(
    z.strictObject({
      key,
      name: z.string(),
      kind: z.enum([
        'fridge',
        'freezer',
        'pantry',
        'counter',
        'cupboard',
        'shelf',
        'drawer',
        'basket',
        'door',
        'side',
      ]),
      in: key.nullable().default(null),
      position: z.int().positive().nullable().default(null),
      aliases: texts,
    }),
  ),
  markers: z.array(
    z.strictObject({
      key,
      touch,
      care: z.string().nullable().default(null),
      codes: texts,
      lastOn: key.nullable().default(null),
    }),
  ),
  items: z.array(
    z.strictObject({
      key,
      name: z.string().min(1),
      at: key.nullable().default(null),
      spot: z.string().nullable().default(null),
      amount: amount.nullable().default(null),
      /** What it started with, where that is more than is left. */
      first: amount.nullable().default(null),
      touch: touch.default({}),
      marker: key.nullable().default(null),
      batch: key.nullable().default(null),
      dates: z
        .strictObject({
          made: day.optional(),
          bought: day.optional(),
          opened: day.optional(),
          frozen: day.optional(),
          thawed: day.optional(),
          bestBefore: day.optional(),
          useBy: day.optional(),
        })
        .default({}),
      maker: z.string().nullable().default(null),
      owner: key.nullable().default(null),
      diets: texts,
      contains: texts,
      freeFrom: texts,
      cautions: texts,
      preparations: z.array(preparation).default([]),
      notes: texts,
      gone: z
        .strictObject({ days: day, how: z.enum(['used', 'thrown out', 'given away']) })
        .nullable()
        .default(null),
    }),
  ),
  toBuy: z
    .array(
      z.strictObject({
        name: z.string().min(1),
        amount: amount.nullable().default(null),
        section: z.string().nullable().default(null),
        replaces: key.nullable().default(null),
        days: day.default(0),
      }),
    )
    .default([]),
  notes: z
    .array(
      z.strictObject({
        for: key.nullable(),
        from: key.nullable(),
        text: z.string().min(1),
        about: key.nullable().default(null),
        days: day.default(0),
      }),
    )
    .default([]),
});
type KitchenFile = z.output<typeof kitchenFile>;
type FileItem = KitchenFile['items'][number];

/** Kinds in the id, so that a place and a food may have the same key. */
const id = (kind: string, name: string): Id => `${kind}.${name}`;
const maybe = (kind: string, name: string | null): Id | null => (name === null ? null : id(kind, name));
const byId = <T extends { readonly id: Id }>(all: readonly T[]): ReadonlyMap<Id, T> =>
  new Map(all.map((one) => [one.id, one]));

/** Leaves out what the file left out, rather than keeping it as undefined. */
const compact = <T extends object>(given: T): { [K in keyof T]: Exclude<T[K], undefined> } =>
  JSON.parse(JSON.stringify(given));

const itemOf = (given: FileItem, clock: Clock, at: (days: number) => Instant): Item => {
  const dates = Object.fromEntries(
    Object.entries(given.dates).map(([kind, days]) => [kind, plusDays(today(clock), days ?? 0)]),
  );
  const { bought, made, frozen } = given.dates;
  const known = [bought, made, frozen].filter((days) => days !== undefined);
  // Things nobody dated were put on record a month ago.
  const added = known.length > 0 ? Math.max(...known) : -30;
  const first = given.first ?? given.amount;
  return {
    id: id('item', given.key),
    name: given.name,
    batchId: maybe('batch', given.batch),
    amount: given.amount && compact(given.amount),
    amountAtFirst: first && compact(first),
    touch: compact(given.touch),
    placeId: maybe('place', given.at),
    spot: given.spot,
    markerId: maybe('marker', given.marker),
    dates,
    outSince: null,
    timesReheated: 0,
    maker: given.maker,
    ownerId: maybe('person', given.owner),
    diets: given.diets,
    contains: given.contains,
    freeFrom: given.freeFrom,
    cautions: given.cautions,
    preparations: given.preparations,
    notes: given.notes,
    addedAt: at(added),
    addedBy: null,
    gone: given.gone && { at: at(given.gone.days), how: given.gone.how },
  };
};

/** Words for what a file gets wrong beyond its shape: names that lead nowhere, a marker on two things. */
const faultsOf = (file: KitchenFile): readonly string[] => {
  const keys = (all: readonly { readonly key: string }[]): Set<string> => new Set(all.map((one) => one.key));
  const [people, places, markers, items] = [file.people, file.places, file.markers, file.items].map(keys) as [
    Set<string>,
    Set<string>,
    Set<string>,
    Set<string>,
  ];
  const missing = (from: string, name: string | null, among: Set<string>): readonly string[] =>
    name === null || among.has(name) ? [] : [`${from}: there is no "${name}"`];
  const twice = (what: string, names: readonly string[]): readonly string[] =>
    names
      .filter((name, index) => names.indexOf(name) !== index)
      .map((name) => `${what} "${name}" is there twice`);
  const living = file.items.filter(({ gone }) => gone === null);
  return [
    ...twice(
      'person',
      file.people.map((one) => one.key),
    ),
    ...twice(
      'place',
      file.places.map((one) => one.key),
    ),
    ...twice(
      'marker',
      file.markers.map((one) => one.key),
    ),
    ...twice(
      'item',
      file.items.map((one) => one.key),
    ),
    ...twice(
      'on a living item, marker',
      living.flatMap(({ marker }) => marker ?? []),
    ),
    ...file.places.flatMap((one) => missing(one.key, one.in, places)),
    ...file.markers.flatMap((one) => missing(one.key, one.lastOn, items)),
    ...file.items.flatMap((one) => [
      ...missing(one.key, one.at, places),
      ...missing(one.key, one.marker, markers),
      ...missing(one.key, one.owner, people),
    ]),
    ...file.toBuy.flatMap((one) => missing(one.name, one.replaces, items)),
    ...file.notes.flatMap((one) => [
      ...missing('note', one.for, people),
      ...missing('note', one.from, people),
      ...missing('note', one.about, items),
    ]),
  ];
};

/**
 * A kitchen from the text of such a file.
 * @throws ZodError for the wrong shape, Error with every broken reference for what does not fit together.
 */
export const kitchenFromFile = (text: string, clock: Clock): Kitchen => {
  const file = kitchenFile.parse(JSON.parse(text));
  const faults = faultsOf(file);
  if (faults.length > 0) throw new Error(`kitchen file: ${faults.join('; ')}`);
  // Two hours before now for today's: nothing in it is from the future.
  const at = (days: number): Instant =>
    new Date(Date.parse(clock.now) + days * 86_400_000 - 2 * 3_600_000).toISOString();
  return {
    household: file.household,
    people: byId<Person>(
      file.people.map(({ key: name, ...person }) => ({ ...person, id: id('person', name) })),
    ),
    places: byId<Place>(
      file.places.map(({ key: name, in: parent, ...place }) => ({
        ...place,
        id: id('place', name),
        parentId: maybe('place', parent),
      })),
    ),
    markers: byId<Marker>(
      file.markers.map(({ key: name, lastOn, ...marker }) => ({
        ...marker,
        id: id('marker', name),
        touch: compact(marker.touch),
        lastItemId: maybe('item', lastOn),
      })),
    ),
    items: byId<Item>(file.items.map((item) => itemOf(item, clock, at))),
    purchases: byId<Purchase>(
      file.toBuy.map(({ days, replaces, ...line }, index) => ({
        ...line,
        id: id('purchase', String(index + 1)),
        amount: line.amount && compact(line.amount),
        addedAt: at(days),
        addedBy: null,
        replaces: maybe('item', replaces),
      })),
    ),
    notes: byId<Note>(
      file.notes.map((note, index) => ({
        id: id('note', String(index + 1)),
        forPersonId: maybe('person', note.for),
        fromPersonId: maybe('person', note.from),
        text: note.text,
        itemId: maybe('item', note.about),
        at: at(note.days),
        heard: false,
      })),
    ),
    reminders: new Map(),
    stockTakes: new Map(),
    version: 0,
  };
};

/** Marta Okafor's kitchen, as it would be on the clock's day. Made up; see the file. */
export const demoKitchen = (clock: Clock): Kitchen =>
  kitchenFromFile(readFileSync(projectFile('shared', 'demo', 'marta-okafor.json'), 'utf8'), clock);
