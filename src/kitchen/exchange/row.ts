/** An item as it travels in files: with names in place of ids, so that people can read and write it. */
import { z } from 'zod';
import { isPlainDate, type PlainDate } from '../../terms/dates.js';
import type { Touch } from '../../terms/touch.js';
import type { DateKind, Id, Item, Kitchen, PlaceKind } from '../model.js';
import { markerOf } from '../markers.js';
import { pathOf } from '../places.js';

const text = z.string().trim().min(1).max(500);
const list = z.array(text).max(50).default([]);
const day = z
  .string()
  .refine(isPlainDate, 'not a day like 2026-05-14')
  .transform((value): PlainDate => value);
const touch = z
  .strictObject({
    size: text.optional(),
    container: text.optional(),
    texture: text.optional(),
    shape: text.optional(),
    fastening: text.optional(),
    fastenings: z.int().positive().max(12).optional(),
    spot: text.optional(),
    dots: z.int().nonnegative().max(12).optional(),
  })
  .transform((given): Touch => JSON.parse(JSON.stringify(given)));

export const DATE_KINDS = [
  'made',
  'bought',
  'opened',
  'frozen',
  'thawed',
  'bestBefore',
  'useBy',
] as const satisfies readonly DateKind[];

export const itemRow = z.strictObject({
  name: text,
  amount: z
    .strictObject({ value: z.number().positive(), unit: text, rough: z.boolean().optional() })
    .nullable()
    .default(null),
  /** From the appliance inwards: ["fridge", "second shelf"]. */
  place: z.array(text).max(6).default([]),
  spot: text.nullable().default(null),
  touch: touch.default({}),
  /** How the marker on it feels. */
  marker: touch.nullable().default(null),
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
  maker: text.nullable().default(null),
  /** A person's name. */
  owner: text.nullable().default(null),
  diets: list,
  contains: list,
  freeFrom: list,
  cautions: list,
  notes: list,
  codes: list,
  /** Containers with the same word here were filled from one pot. */
  batch: text.nullable().default(null),
  preparations: z
    .array(
      z.strictObject({
        method: z.enum([
          'microwave',
          'oven',
          'hob',
          'air fryer',
          'steamer',
          'slow cooker',
          'toaster',
          'none',
        ]),
        from: z.enum(['fridge', 'freezer', 'any']),
        steps: z.array(text).max(50).default([]),
        minutes: z.number().positive().nullable().default(null),
        watts: z.number().positive().nullable().default(null),
        standMinutes: z.number().positive().nullable().default(null),
        heat: z
          .strictObject({ degrees: z.number(), scale: z.enum(['fahrenheit', 'celsius']) })
          .nullable()
          .default(null),
        portions: z.number().positive().nullable().default(null),
      }),
    )
    .max(10)
    .default([]),
});
export type ItemRow = z.output<typeof itemRow>;

/** What an item is, in names. */
export const rowOfItem = (kitchen: Kitchen, item: Item): ItemRow => ({
  name: item.name,
  amount: item.amount,
  place: pathOf(kitchen, item.placeId).map(({ name }) => name),
  spot: item.spot,
  touch: item.touch,
  marker: markerOf(kitchen, item)?.touch ?? null,
  dates: item.dates as ItemRow['dates'],
  maker: item.maker,
  owner: item.ownerId === null ? null : (kitchen.people.get(item.ownerId)?.name ?? null),
  diets: [...item.diets],
  contains: [...item.contains],
  freeFrom: [...item.freeFrom],
  cautions: [...item.cautions],
  notes: [...item.notes],
  codes: [...(item.codes ?? [])],
  batch: item.batchId === null ? null : batchName(item.batchId),
  preparations: item.preparations.map((preparation) => ({ ...preparation, steps: [...preparation.steps] })),
});

const batchName = (batchId: Id): string => batchId.replace(/^batch\./, '');

/** A place's kind from its name, for places that an import makes. */
export const kindOfPlace = (name: string, whole: boolean): PlaceKind => {
  const kinds: readonly PlaceKind[] = whole
    ? ['fridge', 'freezer', 'pantry', 'counter', 'cupboard']
    : ['shelf', 'drawer', 'basket', 'door', 'side', 'freezer'];
  return kinds.find((kind) => name.toLowerCase().includes(kind)) ?? (whole ? 'cupboard' : 'shelf');
};
