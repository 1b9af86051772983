/** Markers of a household, found by how they feel. */
import type { Touch } from '../../terms/touch.js';
import type { Candidate } from '../intents.js';
import { fitTouch } from '../touch/fit.js';

interface MarkerIndex {
  set(id: string, touch: Touch): void;
  remove(id: string): void;
  readonly size: number;
  /** Best first, at most eight. */
  find(said: Touch): Candidate[];
}

/** Markers compared for one description. */
const most = 64;

const featuresOf = (touch: Touch): string[] =>
  Object.entries(touch)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => `${key}=${String(value)}`);

export const createMarkerIndex = (): MarkerIndex => {
  const touches = new Map<string, Touch>();
  const byFeature = new Map<string, Set<string>>();
  const remove = (id: string): void => {
    for (const feature of featuresOf(touches.get(id) ?? {})) {
      const there = byFeature.get(feature);
      there?.delete(id);
      if (there?.size === 0) byFeature.delete(feature);
    }
    touches.delete(id);
  };
  return {
    set(id, touch) {
      remove(id);
      touches.set(id, touch);
      for (const feature of featuresOf(touch)) {
        const there = byFeature.get(feature);
        if (there) there.add(id);
        else byFeature.set(feature, new Set([id]));
      }
    },
    remove,
    get size() {
      return touches.size;
    },
    find(said) {
      // The rarest thing said of it comes first, so that a bound loses the least.
      const lists = featuresOf(said)
        .map((feature) => byFeature.get(feature) ?? new Set<string>())
        .filter((ids) => ids.size > 0)
        .sort((a, b) => a.size - b.size);
      // "No dots" and "dots" are told by what is not recorded, or by any number.
      const looked = new Set<string>();
      for (const ids of lists.length > 0 ? lists : [touches.keys()]) {
        for (const id of ids) {
          if (looked.size >= most) break;
          looked.add(id);
        }
      }
      return [...looked]
        .map((id) => ({ id, fit: fitTouch(said, touches.get(id)!) }))
        .filter(({ fit }) => fit > 0.5)
        .sort((a, b) => b.fit - a.fit)
        .slice(0, 8);
    },
  };
};

interface CodeIndex {
  set(id: string, touch: Touch, codes: readonly string[]): void;
  remove(id: string): void;
  /** Those whose code is said there, word for word. */
  at(
    tokens: readonly string[],
    from: number,
  ): readonly { readonly id: string; readonly touch: Touch; readonly length: number }[];
}

/** Markers by what is written on them: "shelf card nine". One word alone, such as a device's number, is no name. */
export const createCodeIndex = (): CodeIndex => {
  const codesOf = new Map<string, { touch: Touch; codes: readonly (readonly string[])[] }>();
  return {
    set(id, touch, codes) {
      const spoken = codes
        .map((code) =>
          code
            .toLowerCase()
            .split(/[^\p{L}\p{N}']+/u)
            .filter(Boolean),
        )
        .filter((words) => words.length > 1);
      if (spoken.length > 0) codesOf.set(id, { touch, codes: spoken });
      else codesOf.delete(id);
    },
    remove: (id) => void codesOf.delete(id),
    at(tokens, from) {
      const found: { id: string; touch: Touch; length: number }[] = [];
      for (const [id, { touch, codes }] of codesOf)
        for (const words of codes)
          if (words.every((word, at) => tokens[from + at] === word))
            found.push({ id, touch, length: words.length });
      return found;
    },
  };
};
