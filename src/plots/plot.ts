/** What a plot shows, before it is drawn, listed or said. */
import type { Say, Value } from '../speech/answer.js';

export interface Plot {
  readonly id: 'ages' | 'calendar' | 'use-and-waste';
  readonly title: Say;
  /** One name a bar group: an age, a day, a month. */
  readonly groups: readonly Value[];
  /** One series a kind of bar; `counts` run beside `groups`. */
  readonly series: readonly { readonly name: Say; readonly counts: readonly number[] }[];
  /** The same in one spoken sentence. */
  readonly sentence: Say;
}

export const say = (phrase: string, args?: Readonly<Record<string, Value>>): Say =>
  args === undefined ? { kind: 'say', phrase } : { kind: 'say', phrase, args };
