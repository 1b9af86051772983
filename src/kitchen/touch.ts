/** Finding by hand: how well what a cook feels fits what is recorded. */
import { type Touch, sameCounted } from '../terms/touch.js';
import type { Item, Kitchen, Marker } from './model.js';
import { livingItems } from './items.js';
import { countedHere, markerOf } from './markers.js';

const PARTS = [
  'size',
  'container',
  'texture',
  'shape',
  'fastening',
  'fastenings',
  'spot',
  'dots',
  'counted',
] as const satisfies readonly (keyof Touch)[];
type Part = (typeof PARTS)[number];

/** What tells most when it fits: an outline or dots more than a size, which is a matter of opinion. */
const WEIGHT: Readonly<Record<Part, number>> = {
  size: 1,
  container: 1.5,
  texture: 1,
  shape: 2,
  fastening: 2,
  fastenings: 2,
  spot: 1,
  dots: 2,
  counted: 1,
};

const MOST_KNOWN = 5_000;
const known = new Map<string, readonly string[]>();

/** The words of a feel. There are few such texts in the world, and each is compared thousands of times. */
const words = (text: string): readonly string[] => {
  const found = known.get(text);
  if (found) return found;
  const made = text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '' && !['the', 'of', 'a', 'an', 'on', 'its'].includes(word));
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(text, made);
  return made;
};

/** "lid" fits "middle of the lid", "clip" fits "spring clip": every felt word is in the record, or the reverse. */
const sameWords = (felt: string, kept: string): boolean => {
  if (felt === kept) return true;
  const one = words(felt);
  const two = words(kept);
  return one.every((word) => two.includes(word)) || two.every((word) => one.includes(word));
};

const fits = (felt: string | number, kept: string | number): boolean =>
  typeof felt === 'string' && typeof kept === 'string' ? sameWords(felt, kept) : felt === kept;

/** What a part is when nothing was said of it. */
const UNSAID: Readonly<Partial<Record<Part, number | string>>> = { dots: 0, fastenings: 1, counted: 'dot' };

/** How one part compares: what a marker or container does not record can neither fit nor speak against. */
const compare = (part: Part, felt: Touch, kept: readonly Touch[]): 'fits' | 'differs' | 'unknown' => {
  const wanted = felt[part];
  if (wanted === undefined) return 'unknown';
  // "With knots" asks for one that has any; "two knots" is told from two ridges by its number.
  if (part === 'counted')
    return kept.some(({ dots, counted }) => (dots ?? 0) > 0 && sameCounted(felt.counted, counted))
      ? 'fits'
      : felt.dots === 0
        ? 'unknown'
        : 'differs';
  const counts = part === 'dots' ? kept.filter(({ counted }) => sameCounted(felt.counted, counted)) : kept;
  const recorded = counts.map((touch) => touch[part]).filter((value) => value !== undefined);
  // Nobody says "no dots" or "one clip" when recording a marker: leaving it out means that.
  if (recorded.length === 0 && UNSAID[part] !== undefined)
    return wanted === UNSAID[part] ? 'fits' : 'differs';
  if (recorded.length === 0) return 'unknown';
  return recorded.some((value) => fits(wanted, value)) ? 'fits' : 'differs';
};

/** Fit from 0 to 1 of a felt touch to what is recorded, and the parts that speak against it. */
export const touchFit = (
  felt: Touch,
  ...kept: readonly Touch[]
): { readonly fit: number; readonly differs: readonly (keyof Touch)[] } => {
  let total = 0;
  let good = 0;
  const differs: Part[] = [];
  for (const part of PARTS) {
    if (felt[part] === undefined) continue;
    total += WEIGHT[part];
    const found = compare(part, felt, kept);
    if (found === 'fits') good += WEIGHT[part];
    if (found === 'differs') differs.push(part);
  }
  return { fit: total === 0 ? 0 : good / total, differs };
};

export interface TouchMatch<T> {
  readonly of: T;
  /** 0 to 1. 1: every part that was felt is recorded and fits. */
  readonly fit: number;
  /** Parts that are recorded otherwise. Empty for a match; one for a near miss. */
  readonly differs: readonly (keyof Touch)[];
}

const best = <T>(matches: readonly TouchMatch<T>[]): readonly TouchMatch<T>[] => {
  const fitting = matches.filter(({ fit, differs }) => fit > 0 && differs.length === 0);
  // Where something fits in every part that was felt, what merely might fit is not meant.
  const whole = fitting.filter(({ fit }) => fit === 1);
  if (whole.length > 0) return whole;
  // A near miss is offered only when nothing fits: "no wooden bead here; there is a glass one".
  const found =
    fitting.length > 0 ? fitting : matches.filter(({ fit, differs }) => fit > 0 && differs.length === 1);
  return [...found].sort((a, b) => b.fit - a.fit);
};

/** Living items by feel: the container's own touch and its marker's together. Best first. */
export const findByTouch = (
  kitchen: Kitchen,
  felt: Touch,
  among: readonly Item[] = livingItems(kitchen),
): readonly TouchMatch<Item>[] =>
  best(
    among.map((item) => {
      const marker = markerOf(kitchen, item);
      return { of: item, ...touchFit(felt, item.touch, ...(marker ? [marker.touch] : [])) };
    }),
  );

/** Markers by feel, on an item or spare. Best first. */
export const findMarkers = (
  kitchen: Kitchen,
  felt: Touch,
  among: readonly Marker[] = [...kitchen.markers.values()],
): readonly TouchMatch<Marker>[] =>
  best(among.map((marker) => ({ of: marker, ...touchFit(felt, marker.touch) })));

/** True when no recorded part tells two touches apart. */
export const feelsAlike = (a: Touch, b: Touch, parts: readonly (keyof Touch)[] = PARTS): boolean =>
  parts.every((part) => {
    const one = a[part] ?? UNSAID[part as Part];
    const two = b[part] ?? UNSAID[part as Part];
    return one === two || (typeof one === 'string' && typeof two === 'string' && sameWords(one, two));
  });

/** Other living items in the same place that a hand cannot tell from this one. */
export const lookAlikes = (kitchen: Kitchen, item: Item): readonly Item[] => {
  const feel = (one: Item): Touch => ({ ...one.touch, ...markerOf(kitchen, one)?.touch });
  return livingItems(kitchen).filter(
    (other) => other.id !== item.id && other.placeId === item.placeId && feelsAlike(feel(item), feel(other)),
  );
};

/** The smallest change that would make a marker's feel the only one of its kind here, or null. */
export const proposeDifference = (kitchen: Kitchen, touch: Touch): Touch | null => {
  const counted = touch.counted ?? countedHere(kitchen);
  const others = [...kitchen.markers.values()].map((marker) => marker.touch);
  const alone = (tried: Touch): boolean => !others.some((other) => feelsAlike(tried, other));
  const ways: readonly Touch[] = [
    ...[1, 2, 3].map((dots) => (counted === 'dot' ? { dots } : { dots, counted })),
    ...['edge of the lid', 'middle of the lid', 'side', 'neck'].map((spot) => ({ spot })),
    ...(touch.fastening === undefined ? [] : [{ fastenings: 2 }]),
  ];
  return ways.find((way) => alone({ ...touch, ...way })) ?? null;
};
