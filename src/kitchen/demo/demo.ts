/** The demo household, and what tests start from. */
import { readFileSync } from 'node:fs';
import { projectFile } from '../../project-files.js';
import { plusDays, today, type Clock, type Instant } from '../../terms/dates.js';
import type { Id, Item, Kitchen, Marker, Note, Person, Place, Purchase } from '../model.js';
import { faultsOf, kitchenFile, type KitchenFile } from './kitchen-file.js';

/** Kinds in the id, so that a place and a food may have the same key. */
const id = (kind: string, name: string): Id => `${kind}.${name}`;
const maybe = (kind: string, name: string | null): Id | null => (name === null ? null : id(kind, name));
const byId = <T extends { readonly id: Id }>(all: readonly T[]): ReadonlyMap<Id, T> =>
  new Map(all.map((one) => [one.id, one]));

const itemOf = (given: KitchenFile['items'][number], clock: Clock, at: (days: number) => Instant): Item => {
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
    amount: given.amount,
    amountAtFirst: first,
    touch: given.touch,
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
        lastItemId: maybe('item', lastOn),
      })),
    ),
    items: byId<Item>(file.items.map((item) => itemOf(item, clock, at))),
    purchases: byId<Purchase>(
      file.toBuy.map(({ days, replaces, ...line }, index) => ({
        ...line,
        id: id('purchase', String(index + 1)),
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
    powerCuts: new Map(),
    version: 0,
  };
};

/** Marta Okafor's kitchen, as it would be on the clock's day. Made up; see the file. */
export const demoKitchen = (clock: Clock): Kitchen =>
  kitchenFromFile(readFileSync(projectFile('shared', 'demo', 'marta-okafor.json'), 'utf8'), clock);
