/**
 * A kitchen as a file for people to read and edit. Things have keys in place of ids; days are written as
 * offsets from the day of loading, so that the milk is always a little old.
 */
import { z } from 'zod';
import { amountShape, datesShape, placeKindShape, preparationShape, touchShape } from '../shapes.js';

const day = z.int().describe('Days from the day of loading; negative is past.');
const texts = z.array(z.string().min(1)).default([]);
const key = z.string().regex(/^[\w.-]+$/);

export const kitchenFile = z.strictObject({
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
      kind: placeKindShape,
      in: key.nullable().default(null),
      position: z.int().positive().nullable().default(null),
      aliases: texts,
    }),
  ),
  markers: z.array(
    z.strictObject({
      key,
      touch: touchShape,
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
      amount: amountShape.nullable().default(null),
      /** What it started with, where that is more than is left. */
      first: amountShape.nullable().default(null),
      touch: touchShape.default({}),
      marker: key.nullable().default(null),
      batch: key.nullable().default(null),
      dates: datesShape(day).default({}),
      maker: z.string().nullable().default(null),
      owner: key.nullable().default(null),
      diets: texts,
      contains: texts,
      freeFrom: texts,
      cautions: texts,
      preparations: z.array(preparationShape).default([]),
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
        amount: amountShape.nullable().default(null),
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
export type KitchenFile = z.output<typeof kitchenFile>;

/** Words for what a file gets wrong beyond its shape: names that lead nowhere, a marker on two things. */
export const faultsOf = (file: KitchenFile): readonly string[] => {
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
