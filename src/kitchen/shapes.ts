/** The records' shapes as schemas, for what comes from files. What has one of these fits `model.ts`. */
import { z } from 'zod';
import { isPlainDate, type PlainDate } from '../terms/dates.js';
import type { Touch } from '../terms/touch.js';
import type { DateKind, RecordKind, Records } from './model.js';

/** Leaves out what was left out, rather than keeping it as undefined. */
const compact = <T extends object>(given: T): { [K in keyof T]: Exclude<T[K], undefined> } =>
  JSON.parse(JSON.stringify(given));

export const amountShape = z
  .strictObject({ value: z.number().positive(), unit: z.string().min(1), rough: z.boolean().optional() })
  .transform(compact);

export const touchShape = z
  .strictObject({
    size: z.string().min(1).optional(),
    container: z.string().min(1).optional(),
    texture: z.string().min(1).optional(),
    shape: z.string().min(1).optional(),
    fastening: z.string().min(1).optional(),
    fastenings: z.int().positive().max(12).optional(),
    spot: z.string().min(1).optional(),
    dots: z.int().nonnegative().max(12).optional(),
    counted: z.string().min(1).optional(),
  })
  .transform((given): Touch => compact(given));

export const preparationShape = z.strictObject({
  method: z.enum(['microwave', 'oven', 'hob', 'air fryer', 'steamer', 'slow cooker', 'toaster', 'none']),
  from: z.enum(['fridge', 'freezer', 'any']),
  steps: z.array(z.string().min(1)).max(50).default([]),
  minutes: z.number().positive().nullable().default(null),
  watts: z.number().positive().nullable().default(null),
  standMinutes: z.number().positive().nullable().default(null),
  heat: z
    .strictObject({ degrees: z.number(), scale: z.enum(['fahrenheit', 'celsius']) })
    .nullable()
    .default(null),
  portions: z.number().positive().nullable().default(null),
});

export const placeKindShape = z.enum([
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
]);

export const dayShape = z
  .string()
  .refine(isPlainDate, 'not a day like 2026-05-14')
  .transform((day): PlainDate => day);

export const DATE_KINDS = [
  'made',
  'bought',
  'opened',
  'frozen',
  'thawed',
  'bestBefore',
  'useBy',
] as const satisfies readonly DateKind[];

/** An object with any of the kinds of date, each of the given shape. */
export const datesShape = <T extends PlainDate | number>(each: z.ZodType<T>) =>
  z
    .strictObject({
      made: each.optional(),
      bought: each.optional(),
      opened: each.optional(),
      frozen: each.optional(),
      thawed: each.optional(),
      bestBefore: each.optional(),
      useBy: each.optional(),
    })
    .transform((given): Partial<Record<DateKind, T>> => compact(given) as Partial<Record<DateKind, T>>);

const id = z.string().regex(/^[\w.:-]{1,128}$/, 'not an id');
const maybeId = id.nullable();
const instant = z.iso.datetime();
const text = z.string();
const texts = z.array(text);
const wallTime = z.string().regex(/^(?:[01]\d|2[0-3]):[0-5]\d$/, 'not a time like 20:00');

const foodEventShape = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('out'),
    from: instant,
    to: instant,
    hot: z.boolean().exactOptional(),
    atLeast: z.boolean().exactOptional(),
  }),
  z.strictObject({
    kind: z.literal('power'),
    cutId: id.exactOptional(),
    from: instant,
    to: instant,
    came: z.enum(['lost', 'doubtful', 'kept']),
  }),
]);

const doors = z.enum(['shut', 'open']);

/** One schema for each kind of record. */
export const recordShapes = {
  household: z.strictObject({
    id,
    name: text,
    timeZone: text,
    locale: text,
    region: z.enum(['us', 'uk']),
    measures: z.enum(['us', 'metric']),
    microwaveWatts: z.number().nullable(),
    summaryAt: wallTime.nullable(),
    quietHours: z.strictObject({ from: wallTime, to: wallTime }).nullable(),
    dotMeanings: z.record(z.string().regex(/^\d+$/), text),
  }),
  person: z.strictObject({
    id,
    name: text,
    eatsHere: z.boolean(),
    allergens: texts,
    diets: texts.exactOptional(),
    atRisk: z.boolean(),
    risks: texts.exactOptional(),
    needs: texts.exactOptional(),
    comesOn: dayShape.exactOptional(),
  }),
  place: z.strictObject({
    id,
    parentId: maybeId,
    name: text,
    kind: placeKindShape,
    position: z.number().nullable(),
    aliases: texts,
    filled: z.strictObject({ hundredths: z.number().min(0).max(100), at: instant }).exactOptional(),
  }),
  marker: z.strictObject({
    id,
    touch: touchShape,
    codes: texts,
    care: text.nullable(),
    lastItemId: maybeId,
  }),
  item: z
    .strictObject({
      id,
      name: text.min(1),
      batchId: maybeId,
      amount: amountShape.nullable(),
      amountAtFirst: amountShape.nullable(),
      touch: touchShape,
      placeId: maybeId,
      spot: text.nullable(),
      markerId: maybeId,
      dates: datesShape(dayShape),
      outSince: instant.nullable(),
      open: z.boolean().optional(),
      outHot: z.boolean().optional(),
      outAtLeast: z.boolean().optional(),
      history: z.array(foodEventShape).optional(),
      timesReheated: z.int().nonnegative(),
      frozenBefore: z.array(dayShape).optional(),
      thawedBefore: z.array(dayShape).optional(),
      maker: text.nullable(),
      ownerId: maybeId,
      diets: texts,
      contains: texts,
      freeFrom: texts,
      cautions: texts,
      preparations: z.array(preparationShape),
      notes: texts,
      codes: texts.optional(),
      addedAt: instant,
      addedBy: maybeId,
      gone: z.strictObject({ at: instant, how: z.enum(['used', 'thrown out', 'given away']) }).nullable(),
    })
    .transform(compact),
  purchase: z
    .strictObject({
      id,
      name: text.min(1),
      amount: amountShape.nullable(),
      section: text.nullable(),
      addedAt: instant,
      addedBy: maybeId,
      replaces: maybeId,
      shop: text.nullable().optional(),
      note: text.nullable().optional(),
      forPersonId: maybeId.optional(),
    })
    .transform(compact),
  note: z.strictObject({
    id,
    forPersonId: maybeId,
    fromPersonId: maybeId,
    text,
    itemId: maybeId,
    at: instant,
    heard: z.boolean(),
  }),
  reminder: z
    .strictObject({
      id,
      kind: z.enum(['timer', 'reminder']),
      label: text.nullable(),
      due: instant,
      setAt: instant,
      setBy: maybeId,
      itemId: maybeId,
      deliveredAt: instant.nullable(),
      heldLeft: z.number().nonnegative().optional(),
      forPersonId: id.optional(),
    })
    .transform(compact),
  stockTake: z.strictObject({
    id,
    placeId: id,
    startedAt: instant,
    finishedAt: instant.nullable(),
    seen: z.record(z.string(), z.enum(['there', 'gone', 'changed', 'unsure'])),
  }),
  powerCut: z.strictObject({
    id,
    since: instant,
    backAt: instant.nullable(),
    doors: doors.nullable(),
    freezerDoors: doors.nullable(),
    fullness: z.enum(['full', 'half']).nullable(),
    fridgeReads: z.strictObject({ degrees: z.number(), scale: z.enum(['fahrenheit', 'celsius']) }).nullable(),
    placeIds: z.array(id).nullable(),
    toldAt: instant,
  }),
} as const satisfies { readonly [K in RecordKind]: z.ZodType<Records[K]> };
