/** What a household's own rules say, listed: for recognisers that must know every word beforehand. */
import { livingItems, placesIn } from '../kitchen/index.js';
import type { Kitchen, Place } from '../kitchen/model.js';

const numbers = [
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];
const tens = ['fifteen', 'twenty', 'twenty five', 'thirty', 'forty', 'forty five', 'fifty', 'sixty'];
const units = ['portion', 'tub', 'jar', 'bag', 'slice', 'piece', 'cup'];

/** As a recogniser's words: letters and spaces, lower case. */
export const spoken = (text: string): string =>
  text
    .normalize('NFC')
    .toLowerCase()
    .replace(/[’]/g, "'")
    .replace(/[^\p{L}\p{N}' ]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();

const placesBelow = (kitchen: Kitchen, parent: Place | null): Place[] =>
  placesIn(kitchen, parent?.id ?? null).flatMap((place) => [place, ...placesBelow(kitchen, place)]);

const placePhrases = (kitchen: Kitchen): string[] =>
  placesBelow(kitchen, null).flatMap((place) => {
    const names = [place.name, ...place.aliases];
    const parent = place.parentId === null ? undefined : kitchen.places.get(place.parentId);
    return parent === undefined ? names : names.flatMap((name) => [name, `${name} of the ${parent.name}`]);
  });

const amounts = [
  ...units.flatMap((unit) => [`a ${unit}`, `half a ${unit}`, `one ${unit}`]),
  ...numbers.slice(1).flatMap((number) => [number, ...units.map((unit) => `${number} ${unit}s`)]),
];
const durations = [
  'one minute',
  'half an hour',
  'an hour',
  ...[...numbers.slice(1), ...tens].map((number) => `${number} minutes`),
];

/** Phrases by host rule. Rules with an open vocabulary have none. */
export const phrasesOf = (kitchen: Kitchen): ((uri: string) => readonly string[]) => {
  const by = new Map<string, readonly string[]>([
    ['kitchen:item', livingItems(kitchen).map((item) => item.name)],
    ['kitchen:place', placePhrases(kitchen)],
    [
      'kitchen:marker',
      [...kitchen.markers.values()].flatMap(({ touch }) =>
        touch.fastening === undefined
          ? []
          : [[touch.texture, touch.shape, touch.fastening].filter(Boolean).join(' ')],
      ),
    ],
    ['kitchen:person', [...kitchen.people.values()].map((person) => person.name)],
    ['kitchen:owner', [...kitchen.people.values()].map((person) => person.name)],
    ['builtin:grammar/amount', amounts],
    ['builtin:grammar/duration', durations],
  ]);
  return (uri) => [...new Set((by.get(uri) ?? []).map(spoken).filter((phrase) => phrase !== ''))];
};
