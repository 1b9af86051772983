/** What one label says, for eye, hand and phone. */
import type { Item, Kitchen, Marker } from '../kitchen/model.js';
import type { PlainDate } from '../terms/dates.js';
import type { Touch } from '../terms/touch.js';
import { format } from 'date-fns';
import { tz } from '@date-fns/tz';

export interface Label {
  /** Printed largest, and first in Braille. */
  readonly title: string;
  /** Printed below it, in order of importance. */
  readonly lines: readonly string[];
  /** In Braille after the title. Kept short: a hand has little room. */
  readonly brailleLines: readonly string[];
  /** What the square code holds: an address that opens the talk page with this thing as "this". */
  readonly address: string | null;
}

const printed = (day: PlainDate, locale: string): string =>
  format(new Date(`${day}T00:00:00Z`), locale === 'en-US' ? 'MMM d, yyyy' : 'd MMM yyyy', { in: tz('UTC') });

const plural = (word: string, n: number): string => (n === 1 ? word : `${word}s`);

/** A touch as print: "square clip, 2 dots, edge of the lid". */
export const touchInPrint = (touch: Touch): string => {
  const marker = [touch.shape, touch.fastening].filter(Boolean).join(' ');
  return [
    [touch.size, touch.texture, touch.container].filter(Boolean).join(' '),
    touch.fastenings !== undefined && touch.fastenings > 1
      ? `${touch.fastenings} ${plural(marker, 2)}`
      : marker,
    touch.dots === undefined ? '' : `${touch.dots} ${plural('dot', touch.dots)}`,
    touch.spot ?? '',
  ]
    .filter((part) => part !== '')
    .join(', ');
};

/** The address a touched or photographed code opens: the talk page, with the thing as "this". */
export const addressOf = (service: string, kind: 'item' | 'marker', id: string): string =>
  new URL(`/this/${kind}/${encodeURIComponent(id)}`, service).href;

/** The date that says most about an item's age, in print. */
const dateLine = (item: Item, locale: string): string => {
  const { useBy, frozen, made, opened, bought, bestBefore } = item.dates;
  const known: readonly (readonly [string, PlainDate | undefined])[] = [
    ['Use by', useBy],
    ['Frozen', frozen],
    ['Made', made],
    ['Opened', opened],
    ['Bought', bought],
    ['Best before', bestBefore],
  ];
  const said = known.find((entry): entry is readonly [string, PlainDate] => entry[1] !== undefined);
  return said === undefined ? 'No date known' : `${said[0]} ${printed(said[1], locale)}`;
};

/** A label for what is in a container. */
export const labelForItem = (kitchen: Kitchen, item: Item, service: string | null): Label => {
  const { locale } = kitchen.household;
  const date = dateLine(item, locale);
  const lines = [date];
  if (item.contains.length > 0) lines.push(`Contains ${item.contains.join(', ')}`);
  if (item.diets.length > 0) lines.push(item.diets.join(', '));
  if (item.maker !== null) lines.push(`From ${item.maker}`);
  return {
    title: item.name,
    lines,
    brailleLines: item.contains.length > 0 ? [date, `Contains ${item.contains.join(', ')}`] : [date],
    address: service === null ? null : addressOf(service, 'item', item.id),
  };
};

/** A label for a marker itself, so that sighted people keep the system intact. */
export const labelForMarker = (kitchen: Kitchen, marker: Marker, service: string | null): Label => {
  const meaning =
    marker.touch.dots === undefined ? undefined : kitchen.household.dotMeanings[marker.touch.dots];
  const on = [...kitchen.items.values()].find((item) => item.gone === null && item.markerId === marker.id);
  const lines = [on === undefined ? 'Spare' : `On: ${on.name}`];
  if (meaning !== undefined)
    lines.push(`${marker.touch.dots} ${plural('dot', marker.touch.dots ?? 0)}: ${meaning}`);
  if (marker.care !== null) lines.push(marker.care);
  return {
    title: touchInPrint(marker.touch) || 'Marker',
    lines,
    brailleLines: [],
    address: service === null ? null : addressOf(service, 'marker', marker.id),
  };
};
