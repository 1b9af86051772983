/** What this page remembers for its listener, in this browser only. */
import { useState } from 'preact/hooks';
import type { PressWay } from './voice/press.js';

export interface Settings {
  /** Who reads answers out: the page's voice, or the listener's own screen reader. */
  readonly reader: 'page' | 'screen-reader';
  /** 1 is the voice's own rate. The listener's record says it; this is what it said last. */
  readonly rate: number;
  /** 0 to 1. */
  readonly volume: number;
  /** `voiceURI` of a voice of this browser; empty for its own choice. */
  readonly voice: string;
  readonly press: PressWay;
}

const key = 'tellshelf.listener';
const usual: Settings = { reader: 'page', rate: 1, volume: 1, voice: '', press: 'both' };

const stored = (): Settings => {
  try {
    return { ...usual, ...(JSON.parse(localStorage.getItem(key) ?? '{}') as Partial<Settings>) };
  } catch {
    return usual;
  }
};

/** True once this listener was asked who reads answers. */
export const isSettled = (): boolean => {
  try {
    return localStorage.getItem(key) !== null;
  } catch {
    return false;
  }
};

export type ChangeSettings = (change: Partial<Settings>) => void;

export const useSettings = (): [Settings, ChangeSettings] => {
  const [settings, set] = useState(stored);
  return [
    settings,
    (change) => {
      const next = { ...settings, ...change };
      set(next);
      try {
        localStorage.setItem(key, JSON.stringify(next));
      } catch {
        // A browser that keeps nothing: the settings hold until the page closes.
      }
    },
  ];
};
