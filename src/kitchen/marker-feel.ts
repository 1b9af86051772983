/**
 * How unlike two markers feel, feature by feature, and what a marker stands. The figures are in
 * `shared/markers/feel.json`, which says whose they are.
 */
import { readFileSync } from 'node:fs';
import { z } from 'zod';
import { projectFile } from '../project-files.js';
import type { Touch } from '../terms/touch.js';
import { reckoned } from './index-of.js';
import { itemWithMarker } from './markers.js';
import type { Id, Item, Kitchen, Marker } from './model.js';
import { pathOf } from './places.js';

export const MARKER_FEATURES = [
  'fastening',
  'material',
  'shape',
  'spot',
  'count',
  'number',
  'counted',
  'size',
] as const;
export type MarkerFeature = (typeof MARKER_FEATURES)[number];

const CARES = ['wet', 'dishwasher', 'freezer', 'heat', 'microwave'] as const;
/** What a marker may or may not stand. */
export type Care = (typeof CARES)[number];

const words = z.array(z.string());
const table = z
  .object({
    weights: z.record(z.enum(MARKER_FEATURES), z.number().positive()),
    alikeBelow: z.number().positive(),
    alike: z.array(z.object({ feature: z.enum(MARKER_FEATURES), words, by: z.number().min(0).max(1) })),
    countNearFrom: z.number().int(),
    materials: z.array(z.object({ word: z.string(), not: z.array(z.enum(CARES)) })),
    careWords: z.record(z.enum(CARES), z.object({ not: words, may: words })),
  })
  .parse(JSON.parse(readFileSync(projectFile('shared', 'markers', 'feel.json'), 'utf8')));

/** Two words of one feature: 0 the same to a hand, 1 wholly unlike. One that was not told is half known. */
const unlikeWords = (feature: MarkerFeature, a: string | undefined, b: string | undefined): number => {
  if (a === b) return 0;
  if (a === undefined || b === undefined) return 0.5;
  const near = table.alike.filter(
    (one) => one.feature === feature && one.words.includes(a) && one.words.includes(b),
  );
  return Math.min(1, ...near.map(({ by }) => by));
};

/** One and two are told at once; four and five hardly. None against some is plain. */
const unlikeCounts = (a: number, b: number): number => {
  if (a === b) return 0;
  if (a === 0 || b === 0) return 1;
  return Math.min(a, b) >= table.countNearFrom ? 0.3 : Math.min(1, Math.abs(a - b) * 0.5 + 0.25);
};

export interface Unlikeness {
  /** Of the weights in the table; 0 is the same to a hand. */
  readonly distance: number;
  /** What tells them apart, the plainest first. */
  readonly by: readonly MarkerFeature[];
}

const unlikeIn = (feature: MarkerFeature, a: Touch, b: Touch): number => {
  switch (feature) {
    case 'fastening':
      return unlikeWords(feature, a.fastening, b.fastening);
    case 'material':
      return unlikeWords(feature, a.texture, b.texture);
    case 'shape':
      return a.shape === b.shape ? 0 : unlikeWords(feature, a.shape ?? 'plain', b.shape ?? 'plain');
    case 'spot':
      return unlikeWords(feature, a.spot, b.spot);
    case 'count':
      return unlikeCounts(a.dots ?? 0, b.dots ?? 0);
    case 'number':
      return unlikeCounts(a.fastenings ?? 1, b.fastenings ?? 1);
    case 'counted':
      return (a.dots ?? 0) > 0 && (b.dots ?? 0) > 0 && (a.counted ?? 'dot') !== (b.counted ?? 'dot') ? 1 : 0;
    case 'size':
      return a.size === b.size ? 0 : unlikeWords(feature, a.size, b.size);
  }
};

export const unlikeness = (a: Touch, b: Touch): Unlikeness => {
  const each = MARKER_FEATURES.map((feature) => ({
    feature,
    adds: table.weights[feature] * unlikeIn(feature, a, b),
  })).filter(({ adds }) => adds > 0);
  return {
    distance: each.reduce((sum, { adds }) => sum + adds, 0),
    by: each.toSorted((x, y) => y.adds - x.adds).map(({ feature }) => feature),
  };
};

/** A wet, cold or hurried hand may take one for the other. */
export const feelAlike = (a: Touch, b: Touch): boolean => unlikeness(a, b).distance < table.alikeBelow;

export interface Stood {
  readonly marker: Marker;
  readonly item: Item;
}

const allStanding = reckoned((kitchen: Kitchen): readonly Stood[] =>
  [...kitchen.markers.values()].flatMap((marker) => {
    const item = itemWithMarker(kitchen, marker.id);
    return item ? [{ marker, item }] : [];
  }),
);

/** How far apart two foods stand: 0 on one shelf, 1 in one fridge, 2 elsewhere. */
const apart = (kitchen: Kitchen, a: Item, b: Item): 0 | 1 | 2 => {
  if (a.placeId !== null && a.placeId === b.placeId) return 0;
  const root = (item: Item): Id | undefined => pathOf(kitchen, item.placeId)[0]?.id;
  const whole = root(a);
  return whole !== undefined && whole === root(b) ? 1 : 2;
};

/** Marked foods that a hand meets where this one stands: of its shelf first, then of its fridge. */
export const markedNear = (kitchen: Kitchen, item: Item): readonly Stood[] =>
  allStanding(kitchen)
    .filter(({ item: other }) => other.id !== item.id && apart(kitchen, item, other) < 2)
    .toSorted((a, b) => apart(kitchen, item, a.item) - apart(kitchen, item, b.item));

/** Pairs on one shelf whose markers feel alike, the likest first. */
export const alikeNeighbours = (kitchen: Kitchen): readonly (readonly [Stood, Stood, Unlikeness])[] => {
  const all = allStanding(kitchen);
  return all
    .flatMap((one, at) =>
      all.slice(at + 1).flatMap((other): (readonly [Stood, Stood, Unlikeness])[] => {
        const same = one.item.batchId !== null && one.item.batchId === other.item.batchId;
        if (same || apart(kitchen, one.item, other.item) > 0) return [];
        const how = unlikeness(one.marker.touch, other.marker.touch);
        return how.distance < table.alikeBelow ? [[one, other, how]] : [];
      }),
    )
    .toSorted(([, , a], [, , b]) => a.distance - b.distance);
};

/** Whether it stands that: by what is recorded of it, else by what it is made of; null where neither says. */
export const stands = (
  { care, touch }: Marker,
  what: Care,
): { readonly may: boolean; readonly recorded: boolean } | null => {
  const { not, may } = table.careWords[what];
  const said = care?.toLowerCase() ?? '';
  if (may.some((one) => said.includes(one))) return { may: true, recorded: true };
  if (not.some((one) => said.includes(one))) return { may: false, recorded: true };
  const made = table.materials.filter(({ word }) => word === touch.texture || word === touch.fastening);
  return made.some((one) => one.not.includes(what)) ? { may: false, recorded: false } : null;
};
