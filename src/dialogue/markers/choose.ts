/**
 * Which marker to put on something: a free one that feels unlike what stands around it, and why; and which
 * neighbours feel alike already.
 */
import {
  alikeNeighbours,
  type Care,
  feelAlike,
  isFrozen,
  itemWithMarker,
  markedNear,
  marksOf,
  proposeDifference,
  spareMarkers,
  stands,
  type Stood,
  unlikeness,
} from '../../kitchen/index.js';
import type { Item, Marker } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import { itMention } from '../../understanding/intents.js';
import { placeAt } from '../describe/place.js';
import { markerFull, markerNoun, touchNoun } from '../describe/touch.js';
import { type Handler, type Reply, type Turn, about, list, say } from '../handler.js';
import { needItem } from '../refer/need.js';
import { markersMeant } from '../refer/markers.js';
import { difference } from './difference.js';

/** Told apart from nothing: nothing near is marked. */
const far = Infinity;

interface Fit {
  readonly marker: Marker;
  readonly distance: number;
  /** What it is likest to, near it. */
  readonly nearest: Stood | null;
}

/** What two knots mean here has to be true of it. */
const meaningFits = (turn: Turn, item: Item, { touch }: Marker): boolean => {
  const meaning = touch.dots ? turn.kitchen.household.dotMeanings[touch.dots] : undefined;
  if (!meaning) return true;
  const { diets, contains } = marksOf(turn.kitchen, item);
  return [...diets, ...contains.map((what) => `contains ${what}`)].some(
    (one) => one.toLowerCase() === meaning.toLowerCase(),
  );
};

/** What it would have to stand where that food is. */
const mustStand = (turn: Turn, item: Item): readonly Care[] => (isFrozen(turn, item) ? ['freezer'] : []);

const fitOf = (marker: Marker, near: readonly Stood[]): Fit =>
  near.reduce<Fit>(
    (best, stood) => {
      const { distance } = unlikeness(marker.touch, stood.marker.touch);
      return distance < best.distance ? { marker, distance, nearest: stood } : best;
    },
    { marker, distance: far, nearest: null },
  );

const reason = ({ marker, nearest }: Fit): Say => {
  if (!nearest) return say('suggest-nothing-near');
  const [by = 'fastening'] = unlikeness(marker.touch, nearest.marker.touch).by;
  return say('suggest-unlike', {
    by,
    name: nearest.item.name,
    marker: markerNoun(nearest.marker),
  });
};

/** "What should I put on the second soup?" */
export const suggestMarker: Handler = (act, turn) => {
  const found = needItem(turn, act.slots.item ?? (turn.memory.items.length === 1 ? itMention : undefined), {
    question: say('ask-suggest-for'),
  });
  if ('reply' in found) return found.reply;
  const item = found.got;
  const near = markedNear(turn.kitchen, item);
  const cares = mustStand(turn, item);
  const fits = spareMarkers(turn.kitchen)
    .filter((marker) => Object.keys(marker.touch).length > 0 && meaningFits(turn, item, marker))
    .filter((marker) => cares.every((care) => stands(marker, care)?.may !== false))
    .map((marker) => fitOf(marker, near))
    .toSorted((a, b) => b.distance - a.distance);
  const [best, second] = fits;
  const memory = about(turn, [item]);
  if (!best) return { ...noneFree(turn, item, near), memory };
  const { marker } = best;
  const close = best.nearest && feelAlike(marker.touch, best.nearest.marker.touch);
  return {
    parts: [
      say('suggest', { marker: markerNoun(marker), name: item.name }),
      close
        ? say('suggest-close', { name: best.nearest!.item.name, marker: markerNoun(best.nearest!.marker) })
        : reason(best),
    ],
    details: second ? [say('suggest-second', { marker: markerFull(second.marker) })] : [],
    memory: { ...memory, markerId: marker.id },
    names: [item.name],
    offer: {
      question: say('suggest-put-on'),
      act: {
        intent: 'mark',
        slots: {
          item: { ...itMention, pointer: null, candidates: [{ id: item.id, fit: 1 }], words: item.name },
          marker: {
            ...itMention,
            pointer: null,
            candidates: [{ id: marker.id, fit: 1 }],
            touch: marker.touch,
          },
        },
      },
    },
  };
};

/** No marker is free: what would make one of those near tell more, or what to get. */
const noneFree = (turn: Turn, item: Item, near: readonly Stood[]): Reply => {
  const [one] = near;
  const way = one ? proposeDifference(turn.kitchen, one.marker.touch) : null;
  return {
    parts: [
      say('suggest-none', { name: item.name }),
      way && one
        ? say('suggest-make', { marker: touchNoun(one.marker.touch), way: difference(way) })
        : say('suggest-get'),
    ],
  };
};

/** "Do any of my markers feel alike?": pairs on one shelf. */
export const alikeMarkers: Handler = (_act, turn) => {
  const pairs = alikeNeighbours(turn.kitchen);
  if (pairs.length === 0) return { parts: [say('none-alike')], count: 0 };
  const told = pairs.slice(0, pairsTold).map(([one, other]) =>
    say('alike-pair', {
      one: markerNoun(one.marker),
      first: one.item.name,
      other: markerNoun(other.marker),
      second: other.item.name,
      at: placeAt(turn.kitchen, one.item.placeId),
    }),
  );
  const [first] = pairs;
  const way = proposeDifference(turn.kitchen, first![1].marker.touch);
  return {
    parts: [
      say('alike-count', { count: pairs.length }),
      ...told,
      ...(way ? [say('alike-way', { way: difference(way), name: first![1].item.name })] : []),
    ],
    count: pairs.length,
    memory: about(turn, [first![0].item, first![1].item]),
  };
};
const pairsTold = 2;

/**
 * "What would I take the wooden bead for?", "if I put string on the capers, what is it like?": those that feel nearly
 * so, the ones that stand near it first.
 */
export const likeMarker: Handler = ({ slots }, turn) => {
  const found = slots.item ? needItem(turn, slots.item, { question: say('ask-suggest-for') }) : null;
  if (found && 'reply' in found) return found.reply;
  const item = found?.got;
  const said = slots.marker?.touch ?? {};
  const named = slots.marker ? markersMeant(turn, slots.marker)[0] : undefined;
  const worn = item?.markerId ? turn.kitchen.markers.get(item.markerId) : undefined;
  const touch = slots.marker ? { ...named?.touch, ...said } : worn?.touch;
  if (!touch || Object.keys(touch).length === 0)
    return { parts: [item ? say('no-marker-on', { name: item.name }) : say('ask-which-marker')] };
  const own = item ?? (named ? itemWithMarker(turn.kitchen, named.id) : null);
  const near = own ? markedNear(turn.kitchen, own) : [];
  const standing = [...turn.kitchen.markers.values()].flatMap((marker): readonly Stood[] => {
    const on = itemWithMarker(turn.kitchen, marker.id);
    return on && on.id !== own?.id ? [{ marker, item: on }] : [];
  });
  const like = standing
    .filter(({ marker }) => feelAlike(touch, marker.touch))
    .toSorted(
      (a, b) => unlikeness(touch, a.marker.touch).distance - unlikeness(touch, b.marker.touch).distance,
    );
  const beside = like.filter(({ item: other }) => near.some((one) => one.item.id === other.id));
  const told = [...new Set([...beside, ...like])].slice(0, pairsTold + 1);
  const noun = touchNoun(touch);
  if (told.length === 0) return { parts: [say('none-like', { marker: noun })], count: 0 };
  const way = proposeDifference(turn.kitchen, touch);
  return {
    parts: [
      say('marker-feels-near', {
        marker: noun,
        others: list(
          told.map((one) =>
            say('marker-on-at', {
              marker: markerNoun(one.marker),
              name: one.item.name,
              at: placeAt(turn.kitchen, one.item.placeId),
            }),
          ),
        ),
      }),
      ...(way ? [say('told-apart-by', { way: difference(way) })] : []),
    ],
    count: told.length,
    names: told.map((one) => one.item.name),
    memory: about(
      turn,
      own ? [own] : told.map((one) => one.item),
      told.map((one) => one.item),
    ),
  };
};

const cares: readonly Care[] = ['wet', 'dishwasher', 'freezer', 'heat', 'microwave'];

/** What of care was asked. */
export const caredFor = (words: string | undefined): Care | undefined => cares.find((one) => one === words);

/** "Which of these can't get wet?": by what is recorded, and by what they are made of, each said as such. */
export const careOfAll: Handler = (act, turn) => {
  const what = caredFor(act.slots.words);
  if (!what) return { parts: [say('ask-which-marker')] };
  const told = turn.memory.items.flatMap((id) => {
    const markerId = turn.kitchen.items.get(id)?.markerId;
    const marker = markerId ? turn.kitchen.markers.get(markerId) : undefined;
    return marker ? [marker] : [];
  });
  const among =
    told.length > 1 && act.slots.asked === 'cares of those' ? told : [...turn.kitchen.markers.values()];
  if (among.length === 0) return { parts: [say('no-markers')], count: 0 };
  const not = among.filter((marker) => stands(marker, what)?.may === false);
  const recorded = not.filter((marker) => stands(marker, what)?.recorded);
  const made = not.filter((marker) => !recorded.includes(marker));
  const unknown = among.filter((marker) => stands(marker, what) === null).length;
  return {
    parts: [
      not.length === 0 ? say('none-care', { what }) : say('care-count', { what, count: not.length }),
      ...(recorded.length > 0 ? [say('care-recorded', { markers: list(recorded.map(markerNoun)) })] : []),
      ...(made.length > 0 ? [say('care-made-of', { markers: list(made.map(markerNoun)) })] : []),
      ...(unknown > 0 ? [say('care-unknown-of', { count: unknown })] : []),
    ],
    count: not.length,
  };
};
