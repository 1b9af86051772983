/** Building the place tree by voice: "the chest freezer has three baskets". */
import type { Id, Op, Place, PlaceKind } from '../model.js';
import { change, op, refuse, type Doing, type Result } from '../doing.js';
import { foodKey } from '../names.js';
import { itemsAt, placesBelow, placesIn, placeUnder } from '../places.js';
import { namesCounted } from './place-names.js';

/** More shelves than this in one cupboard is a mishearing. */
const MOST = 30;

export interface PlacesToBuild {
  readonly kind: PlaceKind;
  /** Where they are; null for whole appliances and cupboards. */
  readonly parentId: Id | null;
  /** How many there are in all, counted from the top: those there are already count too. */
  readonly count?: number;
  /** Or by name: "chest freezer", "door", "left side". */
  readonly names?: readonly string[];
  /** How many there are is not known: "top shelf" is all that was said. They are counted when that is told. */
  readonly uncounted?: boolean;
}

/**
 * Adds places. Counted ones are named "first shelf", "second shelf" with "top", "middle" and "bottom"
 * as other names; names given by the household stay. Refused: unknown-place, too-few, too-many,
 * no-name, place-exists (`ids`).
 */
export const buildPlaces = (doing: Doing, wanted: PlacesToBuild): Result => {
  const { kitchen } = doing;
  if (wanted.parentId !== null && !kitchen.places.has(wanted.parentId)) {
    return refuse('unknown-place', { ids: [wanted.parentId] });
  }
  const siblings = placesIn(kitchen, wanted.parentId);
  const parent = wanted.parentId === null ? undefined : kitchen.places.get(wanted.parentId);
  const about = parent ? [parent.name] : [];
  if (wanted.names) {
    const names = wanted.names.map((name) => name.trim());
    if (names.length === 0) return refuse('too-few');
    if (names.some((name) => name === '')) return refuse('no-name');
    const known = siblings.filter((place) => names.some((name) => isCalled(place, name)));
    if (known.length > 0) return refuse('place-exists', { ids: known.map(({ id }) => id) });
    const counted = siblings.filter(({ kind }) => kind === wanted.kind).length;
    const ops = names.map((name, index) => {
      const place: Place = {
        id: doing.newId(),
        parentId: wanted.parentId,
        name,
        kind: wanted.kind,
        position: wanted.parentId === null || wanted.uncounted ? null : counted + index + 1,
        aliases: [],
      };
      return op('place', place.id, null, place);
    });
    return change('built a place', parent ? about : names, ops);
  }
  return buildCounted(doing, wanted, about);
};

const buildCounted = (doing: Doing, wanted: PlacesToBuild, about: readonly string[]): Result => {
  const count = wanted.count ?? 1;
  if (!Number.isInteger(count) || count < 1) return refuse('too-few');
  if (count > MOST) return refuse('too-many');
  const have = placesIn(doing.kitchen, wanted.parentId).filter(({ kind }) => kind === wanted.kind);
  const names = namesCounted(wanted.kind, count);
  const byName = (of: Place): number =>
    of.position === null ? names.findIndex(({ name, aliases }) => [name, ...aliases].includes(of.name)) : -1;
  const known = have.filter((place) => byName(place) >= 0);
  const inOrder = have.filter((place) => !known.includes(place));
  if (inOrder.length >= count || (known.length === 0 && have.length >= count))
    return refuse('place-exists', { ids: have.map(({ id }) => id) });
  const before = namesCounted(wanted.kind, inOrder.length);
  const ops: Op[] = [];
  names.forEach(({ name, aliases }, index) => {
    const told = known.find((place) => byName(place) === index);
    if (told) {
      const after = { ...told, position: index + 1, aliases: sameAs(told, [name, ...aliases]) };
      ops.push(op('place', told.id, told, after));
      return;
    }
    const place = inOrder.shift();
    if (!place) {
      const made: Place = {
        id: doing.newId(),
        parentId: wanted.parentId,
        name,
        kind: wanted.kind,
        position: index + 1,
        aliases,
      };
      ops.push(op('place', made.id, null, made));
      return;
    }
    // What counting named is counted again ("bottom" moves down); what the cook named is hers.
    const old = before[index];
    const own = place.aliases.filter((alias) => !old?.aliases.includes(alias));
    const after = {
      ...place,
      name: place.name === old?.name ? name : place.name,
      aliases: [...aliases, ...own],
    };
    if (JSON.stringify(after) !== JSON.stringify(place)) ops.push(op('place', place.id, place, after));
  });
  return change('built a place', about.length ? about : names.map(({ name }) => name), ops);
};

/** What counting calls it besides its own name. */
const sameAs = ({ name, aliases }: Place, counted: readonly string[]): readonly string[] => [
  ...new Set([...counted.filter((other) => other !== name), ...aliases]),
];

const isCalled = (place: Place, name: string): boolean =>
  [place.name, ...place.aliases].some((known) => foodKey(known) === foodKey(name));

/** A new name; the old one stays as another name for it. Refused: unknown-place, no-name, place-exists, nothing-changes. */
export const renamePlace = (doing: Doing, placeId: Id, name: string): Result => {
  const place = doing.kitchen.places.get(placeId);
  if (!place) return refuse('unknown-place', { ids: [placeId] });
  const wanted = name.trim();
  if (wanted === '') return refuse('no-name');
  if (place.name === wanted) return refuse('nothing-changes', { ids: [placeId], about: [place.name] });
  const clash = placesIn(doing.kitchen, place.parentId).filter(
    ({ id, name: other }) => id !== placeId && foodKey(other) === foodKey(wanted),
  );
  if (clash.length > 0) return refuse('place-exists', { ids: clash.map(({ id }) => id) });
  const aliases = [...new Set([...place.aliases, place.name])].filter((alias) => alias !== wanted);
  return change(
    'renamed a place',
    [wanted],
    [op('place', placeId, place, { ...place, name: wanted, aliases })],
  );
};

/** Another name for a place. Refused: unknown-place, no-name, nothing-changes. */
export const addPlaceName = (doing: Doing, placeId: Id, name: string): Result => {
  const place = doing.kitchen.places.get(placeId);
  if (!place) return refuse('unknown-place', { ids: [placeId] });
  if (name.trim() === '') return refuse('no-name');
  if (isCalled(place, name)) return refuse('nothing-changes', { ids: [placeId], about: [place.name] });
  return change(
    'renamed a place',
    [place.name],
    [op('place', placeId, place, { ...place, aliases: [...place.aliases, name.trim()] })],
  );
};

/** Puts a place with all in it into another. Refused: unknown-place, place-inside-itself, nothing-changes. */
export const movePlace = (doing: Doing, placeId: Id, parentId: Id | null): Result => {
  const place = doing.kitchen.places.get(placeId);
  if (!place) return refuse('unknown-place', { ids: [placeId] });
  if (parentId !== null && !doing.kitchen.places.has(parentId))
    return refuse('unknown-place', { ids: [parentId] });
  if (parentId !== null && placeUnder(doing.kitchen, parentId, placeId)) return refuse('place-inside-itself');
  if (place.parentId === parentId) return refuse('nothing-changes', { ids: [placeId], about: [place.name] });
  return change(
    'renamed a place',
    [place.name],
    [op('place', placeId, place, { ...place, parentId, position: null })],
  );
};

/** Removes a place and the empty places within it. Refused: unknown-place, place-not-empty (`ids` the items). */
export const removePlace = (doing: Doing, placeId: Id): Result => {
  const place = doing.kitchen.places.get(placeId);
  if (!place) return refuse('unknown-place', { ids: [placeId] });
  const items = itemsAt(doing.kitchen, placeId);
  if (items.length > 0)
    return refuse('place-not-empty', { ids: items.map(({ id }) => id), about: [place.name] });
  const below = [...placesBelow(doing.kitchen, placeId)].reverse();
  return change(
    'removed a place',
    [place.name],
    below.map((each) => op('place', each.id, each, null)),
  );
};

/** How full a place was said to be, in hundredths. Refused: unknown-place, bad-setting (not 0 to 100). */
export const noteFilled = (doing: Doing, placeId: Id, hundredths: number): Result => {
  const place = doing.kitchen.places.get(placeId);
  if (!place) return refuse('unknown-place', { ids: [placeId] });
  if (!(hundredths >= 0 && hundredths <= 100)) return refuse('bad-setting');
  const filled = { hundredths, at: doing.clock.now };
  return change('noted', [place.name], [op('place', placeId, place, { ...place, filled })]);
};
