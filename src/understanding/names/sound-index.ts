/** Finds which known words sound like what was heard. Look-ups are by consonant skeleton and its one-letter losses. */
import { alike, skeletonOf } from './sounds.js';

export interface SoundEntry {
  readonly sounds: string;
  /** The stems it stands for: one word, or a whole name's. */
  readonly stems: readonly string[];
}
export interface SoundHit {
  readonly entry: SoundEntry;
  /** 0 to 1. */
  readonly likeness: number;
}

/** At most this many entries are compared for one look-up, however large the household. */
const most = 48;
const mostOfAKey = 24;
/** Words of few sounds must be nearer: one vowel is a different food. */
const leastLikeness = (length: number): number => (length <= 4 ? 0.85 : length <= 6 ? 0.8 : 0.76);

const keysOf = (skeleton: string): string[] => {
  const keys = [skeleton];
  if (skeleton.length >= 3) {
    for (let at = 0; at < skeleton.length; at += 1) keys.push(skeleton.slice(0, at) + skeleton.slice(at + 1));
  }
  return keys;
};

export interface SoundIndex {
  add(entry: SoundEntry): void;
  remove(entry: SoundEntry): void;
  /** Best first, at most four. */
  like(sounds: string): readonly SoundHit[];
}

export const createSoundIndex = (): SoundIndex => {
  const byKey = new Map<string, Set<SoundEntry>>();
  return {
    add(entry) {
      for (const key of keysOf(skeletonOf(entry.sounds))) {
        const there = byKey.get(key);
        if (there) there.add(entry);
        else byKey.set(key, new Set([entry]));
      }
    },
    remove(entry) {
      for (const key of keysOf(skeletonOf(entry.sounds))) {
        const there = byKey.get(key);
        there?.delete(entry);
        if (there?.size === 0) byKey.delete(key);
      }
    },
    like(sounds) {
      const hits: SoundHit[] = [];
      const seen = new Set<SoundEntry>();
      const least = leastLikeness(sounds.length);
      for (const key of keysOf(skeletonOf(sounds))) {
        let ofKey = 0;
        for (const entry of byKey.get(key) ?? []) {
          if (seen.size >= most || ofKey >= mostOfAKey) break;
          ofKey += 1;
          if (seen.has(entry)) continue;
          seen.add(entry);
          if (Math.abs(entry.sounds.length - sounds.length) > 3) continue;
          const likeness = alike(entry.sounds, sounds);
          if (likeness >= Math.max(least, leastLikeness(entry.sounds.length))) hits.push({ entry, likeness });
        }
      }
      return hits.sort((a, b) => b.likeness - a.likeness).slice(0, 4);
    },
  };
};
