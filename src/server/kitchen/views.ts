/** Kitchen records as pages see them. */
import { createHash } from 'node:crypto';
import pluralize from 'pluralize';
import type { z } from 'zod';
import type {
  item as itemView,
  journalRow,
  marker as markerView,
  place as placeView,
  purchase as purchaseView,
} from '../../../shared/wire/kitchen.js';
import type { person as personView } from '../../../shared/wire/home.js';
import type { reminderView } from '../../../shared/wire/reminders.js';
import {
  doerOf,
  itemsAt,
  itemWithMarker,
  pathOf,
  type Id,
  type Item,
  type JournalEntry,
  type Kitchen,
  type Marker,
  type Person,
  type Place,
  type Purchase,
  type Reminder,
} from '../../kitchen/index.js';
import type { Amount } from '../../terms/amount.js';

const fractions: readonly (readonly [number, string])[] = [
  [0.25, '¼'],
  [1 / 3, '⅓'],
  [0.5, '½'],
  [2 / 3, '⅔'],
  [0.75, '¾'],
];

/** "2 portions", "about ½ tub", "24". */
export const amountInPrint = ({ value, unit, rough }: Amount): string => {
  const whole = Math.floor(value);
  const part = fractions.find(([size]) => Math.abs(value - whole - size) < 0.01)?.[1];
  const figure = part === undefined ? String(Number(value.toFixed(2))) : `${whole === 0 ? '' : whole}${part}`;
  const counted = unit === 'piece' ? '' : ` ${value > 0 && value <= 1 ? unit : pluralize(unit)}`;
  return `${rough === true ? 'about ' : ''}${figure}${counted}`;
};

export const pathNames = (kitchen: Kitchen, placeId: Id | null): string[] =>
  pathOf(kitchen, placeId).map((place) => place.name);

export const viewItem = (kitchen: Kitchen, item: Item): z.infer<typeof itemView> => ({
  id: item.id,
  name: item.name,
  amount: item.amount,
  howMuch: item.amount && amountInPrint(item.amount),
  touch: item.touch,
  placeId: item.placeId,
  placePath: pathNames(kitchen, item.placeId),
  spot: item.spot,
  markerId: item.markerId,
  dates: item.dates,
  maker: item.maker,
  ownerId: item.ownerId,
  diets: [...item.diets],
  contains: [...item.contains],
  freeFrom: [...item.freeFrom],
  cautions: [...item.cautions],
  preparations: item.preparations.map((way) => ({ ...way, steps: [...way.steps] })),
  notes: [...item.notes],
  batchId: item.batchId,
  addedAt: item.addedAt,
  gone: item.gone,
});

/** Changes with anything an item holds, so that a page notices when somebody else changed it. */
export const etagOf = (item: Item): string =>
  `"${createHash('sha256').update(JSON.stringify(item)).digest('base64url').slice(0, 22)}"`;

export const viewPlace = (kitchen: Kitchen, place: Place): z.infer<typeof placeView> => ({
  id: place.id,
  parentId: place.parentId,
  name: place.name,
  kind: place.kind,
  position: place.position,
  aliases: [...place.aliases],
  path: pathNames(kitchen, place.id),
  items: itemsAt(kitchen, place.id).length,
});

export const viewMarker = (kitchen: Kitchen, marker: Marker): z.infer<typeof markerView> => ({
  id: marker.id,
  touch: marker.touch,
  codes: [...marker.codes],
  care: marker.care,
  onItemId: itemWithMarker(kitchen, marker.id)?.id ?? null,
});

export const viewPurchase = (kitchen: Kitchen, line: Purchase): z.infer<typeof purchaseView> => ({
  id: line.id,
  name: line.name,
  amount: line.amount,
  howMuch: line.amount && amountInPrint(line.amount),
  section: line.section,
  shop: line.shop ?? null,
  note: line.note ?? null,
  forPersonId: line.forPersonId ?? null,
  forPerson: kitchen.people.get(line.forPersonId ?? '')?.name ?? null,
  addedAt: line.addedAt,
});

export const viewPerson = (one: Person): z.infer<typeof personView> => ({
  id: one.id,
  name: one.name,
  eatsHere: one.eatsHere,
  allergens: [...one.allergens],
  diets: [...(one.diets ?? [])],
  atRisk: one.atRisk,
  needs: [...(one.needs ?? [])],
  comesOn: one.comesOn ?? null,
});

export const viewReminder = ({ id, kind, label, due, heldLeft }: Reminder): z.infer<typeof reminderView> => ({
  id,
  kind,
  label,
  due,
  ...(heldLeft === undefined ? {} : { heldLeft }),
});

export const viewEntry = (kitchen: Kitchen, entry: JournalEntry): z.infer<typeof journalRow> => ({
  id: entry.id,
  version: entry.version,
  at: entry.at,
  verb: entry.verb,
  about: [...entry.about],
  person: kitchen.people.get(doerOf(entry) ?? '')?.name ?? null,
  deviceId: entry.deviceId,
});
