/** What one label says, for eye, hand and phone. */
import type { Item, Kitchen, Marker } from '../kitchen/model.js';
import type { PlainDate } from '../terms/dates.js';
import type { Touch } from '../terms/touch.js';
import { format } from 'date-fns';
import { tz } from '@date-fns/tz';
import pluralize from 'pluralize';

export interface Label {
  /** Printed largest, and first in Braille. */
  readonly title: string;
  /** Printed below it, in order of worth: a small label drops the last first. */
  readonly lines: readonly string[];
  /** In Braille after the title, in order of worth. Kept short: a hand has little room. */
  readonly brailleLines: readonly string[];
  /** How many of `lines` and of `brailleLines`, from the first, outrank the square code: allergens do. */
  readonly vital: number;
  /** What the square code holds: an address that opens the talk page with this thing as "this". */
  readonly address: string | null;
}

const printed = (day: PlainDate, locale: string): string =>
  format(new Date(`${day}T00:00:00Z`), locale === 'en-US' ? 'MMM d, yyyy' : 'd MMM yyyy', { in: tz('UTC') });

/**
 * A day for the fingers. A year is four cells more: two digits of it, and none where the food does not
 * keep for a year.
 */
const brailled = (day: PlainDate, locale: string, keeps: 'long' | 'short'): string =>
  format(
    new Date(`${day}T00:00:00Z`),
    `${locale === 'en-US' ? 'MMM d' : 'd MMM'}${keeps === 'long' ? ' ’yy' : ''}`,
    { in: tz('UTC') },
  );

const plural = (word: string, n: number): string => (n === 1 ? word : pluralize.plural(word));

/** "2 knots"; nothing where nothing is counted. */
const counted = ({ dots, counted: what = 'dot' }: Touch): string =>
  dots === undefined ? '' : `${dots} ${plural(what, dots)}`;

/** A touch as print: "wooden bead, 2 knots, edge of the lid". */
export const touchInPrint = (touch: Touch): string => {
  const marker = [touch.container === undefined ? touch.texture : undefined, touch.shape, touch.fastening]
    .filter(Boolean)
    .join(' ');
  return [
    [touch.size, touch.container === undefined ? undefined : touch.texture, touch.container]
      .filter(Boolean)
      .join(' '),
    touch.fastenings !== undefined && touch.fastenings > 1
      ? `${touch.fastenings} ${plural(marker, 2)}`
      : marker,
    counted(touch),
    touch.spot ?? '',
  ]
    .filter((part) => part !== '')
    .join(', ');
};

/** The address a touched or photographed code opens: the talk page, with the thing as "this". */
export const addressOf = (service: string, kind: 'item' | 'marker', id: string): string =>
  new URL(`/this/${kind}/${encodeURIComponent(id)}`, service).href;

/** The date that says most about an item's age. */
const dateLine = (
  item: Item,
  written: (day: PlainDate, locale: string, keeps: 'long' | 'short') => string,
  locale: string,
): string => {
  const { useBy, frozen, made, opened, bought, bestBefore } = item.dates;
  const known: readonly (readonly [string, PlainDate | undefined, 'long' | 'short'])[] = [
    ['Use by', useBy, 'long'],
    ['Frozen', frozen, 'long'],
    ['Made', made, 'short'],
    ['Opened', opened, 'short'],
    ['Bought', bought, 'long'],
    ['Best before', bestBefore, 'long'],
  ];
  for (const [what, day, keeps] of known)
    if (day !== undefined) return `${what} ${written(day, locale, keeps)}`;
  return 'No date known';
};

/** A label for what is in a container. */
export const labelForItem = (kitchen: Kitchen, item: Item, service: string | null): Label => {
  const { locale } = kitchen.household;
  const contains = item.contains.length > 0 ? [`Contains ${item.contains.join(', ')}`] : [];
  const lines = [...contains, dateLine(item, printed, locale)];
  if (item.diets.length > 0) lines.push(item.diets.join(', '));
  if (item.maker !== null) lines.push(`From ${item.maker}`);
  return {
    title: item.name,
    lines,
    brailleLines: [...contains, dateLine(item, brailled, locale)],
    vital: contains.length,
    address: service === null ? null : addressOf(service, 'item', item.id),
  };
};

/** A label for a marker itself, so that sighted people keep the system intact. */
export const labelForMarker = (kitchen: Kitchen, marker: Marker, service: string | null): Label => {
  const meaning =
    marker.touch.dots === undefined ? undefined : kitchen.household.dotMeanings[marker.touch.dots];
  const on = [...kitchen.items.values()].find((item) => item.gone === null && item.markerId === marker.id);
  const lines = [on === undefined ? 'Spare' : `On: ${on.name}`];
  if (meaning !== undefined) lines.push(`${counted(marker.touch)}: ${meaning}`);
  if (marker.care !== null) lines.push(marker.care);
  return {
    title: touchInPrint(marker.touch) || 'Marker',
    lines,
    brailleLines: [],
    vital: 0,
    address: service === null ? null : addressOf(service, 'marker', marker.id),
  };
};
