/** What this page remembers for its listener, in this browser only. */
import { useState } from 'preact/hooks';

export interface Settings {
  /** Who reads answers out: the page's voice, or the listener's own screen reader. */
  readonly reader: 'page' | 'screen-reader';
  /** 1 is the voice's own rate. */
  readonly rate: number;
  /** 0 to 1. */
  readonly volume: number;
}

const key = 'tellshelf.listener';
const usual: Settings = { reader: 'page', rate: 1, volume: 1 };

const stored = (): Settings => {
  try {
    return { ...usual, ...(JSON.parse(localStorage.getItem(key) ?? '{}') as Partial<Settings>) };
  } catch {
    return usual;
  }
};

export const useSettings = (): [Settings, (change: Partial<Settings>) => void] => {
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
