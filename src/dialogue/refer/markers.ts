/** Which marker was meant; and a new one when it is not known yet. */
import { addMarker, applyChange, findMarkers, isRefused, itemWithMarker } from '../../kitchen/index.js';
import type { Change, Kitchen, Marker } from '../../kitchen/model.js';
import type { Mention } from '../../understanding/intents.js';
import { markerFull, touchNoun } from '../describe/touch.js';
import { plainTouch } from './touch-words.js';
import { type Reply, type Turn, list, say } from '../handler.js';

export type MarkerNeeded =
  | { readonly got: Marker | null; readonly kitchen: Kitchen; readonly changes: readonly Change[] }
  | { readonly reply: Reply };

/** The markers the mention fits: by name, by feel, by pointing. */
export const markersMeant = (turn: Turn, mention: Mention): Marker[] => {
  const settled = (turn.picked.marker ?? []).flatMap((id) => turn.kitchen.markers.get(id) ?? []);
  if (settled.length > 0) return settled;
  const { touched, markerId, items } = turn.memory;
  const byItem = mention.candidates.flatMap(({ id }) => {
    const item = turn.kitchen.items.get(id);
    return item?.markerId ? [item.markerId] : [];
  });
  if (mention.pointer === 'this' && touched) {
    const held = touched.markerId ? turn.kitchen.markers.get(touched.markerId) : undefined;
    return held ? [held] : [];
  }
  if (mention.pointer) {
    const first = turn.kitchen.items.get(items[0] ?? '')?.markerId ?? null;
    const id =
      (mention.pointer === 'this' ? touched?.markerId : null) ??
      mention.candidates[0]?.id ??
      markerId ??
      first;
    const marker = id ? turn.kitchen.markers.get(id) : undefined;
    if (marker) return [marker];
  }
  if (mention.touch) {
    const fits = findMarkers(turn.kitchen, plainTouch(mention.touch)).filter(
      ({ differs }) => differs.length === 0,
    );
    // "The wooden bead" without a word of knots means the one with none, when there is such a one.
    const plain =
      mention.touch.dots === undefined && mention.touch.counted === undefined
        ? fits.filter(({ of }) => !of.touch.dots)
        : fits;
    const best = plain.length > 0 && plain.length < fits.length ? plain : fits;
    const top = best[0]?.fit;
    return best.filter(({ fit }) => fit === top).map(({ of }) => of);
  }
  const top = mention.candidates[0]?.fit ?? 0;
  const named = mention.candidates
    .filter(({ fit }) => fit >= top - 0.05)
    .flatMap(({ id }) => turn.kitchen.markers.get(id) ?? []);
  return named.length > 0 ? named : byItem.flatMap((id) => turn.kitchen.markers.get(id) ?? []);
};

export interface NeedMarker {
  /** Make a record of a marker that is described but not known. */
  readonly create: boolean;
  /** Prefer those in the spare box: one is about to be put on something. */
  readonly spareFirst?: boolean;
}

const nothingNew = (turn: Turn, got: Marker | null): MarkerNeeded => ({
  got,
  kitchen: turn.kitchen,
  changes: [],
});

/** The one marker, or nothing when none was named. */
export const needMarker = (turn: Turn, mention: Mention | undefined, need: NeedMarker): MarkerNeeded => {
  if (!mention) {
    const settled = turn.picked.marker?.[0];
    return nothingNew(turn, settled ? (turn.kitchen.markers.get(settled) ?? null) : null);
  }
  const meant = markersMeant(turn, mention);
  const spare = meant.filter(({ id }) => !itemWithMarker(turn.kitchen, id));
  // "Two dots on the lid", where the only ones are on another food's marker: these are new ones.
  const { touch: felt, pointer } = mention;
  const drawn = need.create && felt !== null && pointer === null && !felt.fastening && !felt.shape;
  const markers = need.spareFirst !== false && (spare.length > 0 || drawn) ? spare : meant;
  if (markers.length === 1) return nothingNew(turn, markers[0]!);
  if (markers.length > 1) {
    const labels = markers.map((marker) => say('apart-marker-itself', { marker: markerFull(marker) }));
    const distinct = new Set(labels.map((label) => JSON.stringify(label))).size === labels.length;
    if (!distinct) return nothingNew(turn, markers[0]!);
    const choices = markers.map(({ id }, at) => ({ ids: [id], label: labels[at]! }));
    const question = say('which-marker', { choices: list(labels.slice(0, 4), true) });
    return { reply: { parts: [], ask: { slot: 'marker', question, expecting: 'choice', choices } } };
  }
  const { touched } = turn.memory;
  const code = mention.pointer === 'this' && touched && !touched.markerId ? touched.code : null;
  const touch = mention.touch ?? {};
  if (!need.create || (!code && Object.keys(touch).length === 0)) {
    const noun =
      Object.keys(touch).length > 0
        ? touchNoun(touch)
        : say('marker-plain', { name: mention.words ?? 'marker' });
    return { reply: { parts: [say('no-such-marker', { marker: noun })] } };
  }
  if (code && Object.keys(touch).length === 0) {
    const change = codedMarker(turn, code);
    const kitchen = applyChange(turn.kitchen, change);
    const made = [...kitchen.markers.values()].at(-1)!;
    return { got: made, kitchen, changes: [change] };
  }
  const result = addMarker(turn, { touch, codes: code ? [code] : [] }, { anyway: true });
  if (isRefused(result)) return { reply: { parts: [say('no-such-marker', { marker: touchNoun(touch) })] } };
  const kitchen = applyChange(turn.kitchen, result);
  return { got: [...kitchen.markers.values()].at(-1)!, kitchen, changes: [result] };
};

/** A marker known only by its code: how it feels can be told later. */
const codedMarker = (turn: Turn, code: string): Change => {
  const id = turn.newId();
  const marker: Marker = { id, touch: {}, codes: [code], care: null, lastItemId: null };
  return { verb: 'set', about: [], ops: [{ kind: 'marker', id, before: null, after: marker }] };
};
