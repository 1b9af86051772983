/** An item as it travels in files: with names in place of ids, so that people can read and write it. */
import { readFileSync } from 'node:fs';
import { z } from 'zod';
import { projectFile } from '../../project-files.js';
import type { Id, Item, Kitchen, PlaceKind } from '../model.js';
import { amountShape, datesShape, dayShape, preparationShape, touchShape } from '../shapes.js';
import { markerOf } from '../markers.js';
import { pathOf } from '../places.js';

const text = z.string().trim().min(1).max(500);
const list = z.array(text).max(50).default([]);

export const itemRow = z.strictObject({
  name: text,
  amount: amountShape.nullable().default(null),
  /** From the appliance inwards: ["fridge", "second shelf"]. */
  place: z.array(text).max(6).default([]),
  spot: text.nullable().default(null),
  touch: touchShape.default({}),
  /** How the marker on it feels. */
  marker: touchShape.nullable().default(null),
  dates: datesShape(dayShape).default({}),
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
  preparations: z.array(preparationShape).max(10).default([]),
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
  dates: item.dates,
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

const placeWords = z
  .object({
    about: z.string(),
    wholes: z.record(z.string(), z.array(z.string())),
    parts: z.record(z.string(), z.array(z.string())),
  })
  .parse(JSON.parse(readFileSync(projectFile('shared', 'exchange', 'places.json'), 'utf8')));

/** A place's kind from its name, for places that an import makes. */
export const kindOfPlace = (name: string, whole: boolean): PlaceKind => {
  const said = name.toLowerCase().normalize('NFKD').replace(/\p{M}/gu, '');
  const found = Object.entries(whole ? placeWords.wholes : placeWords.parts).find(([, words]) =>
    words.some((word) => said.includes(word)),
  );
  return (found?.[0] ?? (whole ? 'cupboard' : 'shelf')) as PlaceKind;
};
