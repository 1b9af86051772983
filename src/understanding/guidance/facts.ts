/** What one spoken question of guidance holds, typed: what is asked, and every fact told with it. */
import type { PlainDate } from '../../terms/dates.js';

/** A day that was said. */
interface DaySaid {
  readonly day: PlainDate;
  readonly until?: PlainDate;
}

export type Asked =
  /** How long it keeps. */
  | 'keep'
  /** Whether it is still within guidance, after what was told. */
  | 'still'
  | 'out'
  | 'freeze'
  | 'refreeze'
  | 'thaw'
  /** Whether it may be cooked without thawing. */
  | 'from-frozen'
  | 'cook'
  /** A thermometer in the food was read: is that enough? */
  | 'probe'
  /** How long over the heat, by its weight. */
  | 'roast'
  | 'fridge-reads'
  | 'freezer-reads'
  | 'power'
  | 'reheat'
  /** Minutes to boil home-canned food of doubtful making. */
  | 'boil'
  /** How a baby's milk is made up, and how hot it or its water is to be. */
  | 'mix'
  /** How fast cooked food must get cold. */
  | 'cool'
  /** Whether what is hot goes straight into the cold. */
  | 'chill-hot'
  /** A date in the digits of a pack's code. */
  | 'code'
  /** What a claim on a label comes to, or what a kind of date on it means. */
  | 'claim'
  | 'label'
  | 'feeding';

/** What is heard as asked: some of it is a way of asking one of those. */
export type Heard = Asked | 'chill';

export type FoodState =
  'raw' | 'cooked' | 'opened' | 'sealed' | 'thawed' | 'live' | 'frozen' | 'homemade' | 'mixed';
export type KeptAt = 'fridge' | 'freezer' | 'pantry' | 'counter';

/** It tells of what is so, or supposes it, or has it from somebody else. */
export type Mood = 'told' | 'supposed' | 'reported';

export type LabelKind = 'useBy' | 'bestBefore' | 'sellBy';

export interface Reading {
  readonly value: number;
  readonly scale: 'fahrenheit' | 'celsius' | null;
}

/** A reading and the time of day it was taken; null: now. */
export interface TimedReading extends Reading {
  readonly time: string | null;
}

/** How it is cooked, where that was said. */
export type CookedOver = 'oven' | 'grill' | 'braise' | 'simmer' | 'skillet';

export interface GuidanceFacts {
  readonly asked: Asked;
  readonly states: readonly FoodState[];
  readonly where: KeptAt | null;
  /** A place was said that is none of these: nothing is taken for granted. */
  readonly elsewhere: string | null;
  /** "In the fridge, or shall I freeze it": which of the two is asked. */
  readonly which: boolean;
  /** How long, in seconds. */
  readonly seconds: number | null;
  /** "Overnight", "all day": longer than any limit at room temperature, and no hour. */
  readonly overnight: boolean;
  readonly since: string | null;
  /** Time of day at which it ended, or is to: "till midnight", "found at noon". */
  readonly until: string | null;
  /** Time of day at which a baby began a bottle. */
  readonly feedSince: string | null;
  readonly dates: Readonly<
    Partial<
      Record<'made' | 'bought' | 'opened' | 'frozen' | 'thawed' | 'useBy' | 'bestBefore' | 'sellBy', DaySaid>
    >
  >;
  readonly when: DaySaid | null;
  readonly air: Reading | null;
  /** "A scorching day": hot, by nobody's thermometer. */
  readonly hot: boolean;
  readonly probe: Reading | null;
  /** Readings of food that cools, in order; empty unless one fell. */
  readonly readings: readonly TimedReading[];
  /** Seconds it rested or was held. */
  readonly held: number | null;
  readonly icy: boolean | null;
  readonly thawedIn: 'fridge' | 'cold-water' | 'microwave' | 'left-out' | null;
  readonly reheated: number;
  readonly pounds: number | null;
  readonly doors: 'shut' | 'open' | null;
  readonly fullness: 'full' | 'half' | null;
  readonly boiling: boolean;
  /** It is being heated again. */
  readonly reheating: boolean;
  /** A bottle was begun, or is to be finished. */
  readonly feeding: boolean;
  /** Figures that no fact took, as said; null when every one has its place. */
  readonly left: string | null;
  /** The reading is a time spent above it: "above forty degrees for three hours". */
  readonly above: boolean;
  /** A claim of a label, as `claims.csv` names it without its region. */
  /** Digits of a code, read out. */
  readonly code: string | null;
  /** How high one lives, in feet. */
  readonly feet: number | null;
  readonly claim: string | null;
  /** Every kind of date that was named, in order. */
  readonly labels: readonly LabelKind[];
  readonly method: string | null;
  readonly over: CookedOver | null;
  readonly risks: readonly string[];
  /** Of somebody's milk or formula, which has rules of its own. */
  readonly infant: boolean;
  readonly mood: Mood;
}

/** How long, where, in what state or at what heat it stood was told. */
export const tellsHowKept = ({
  seconds,
  where,
  states,
  dates,
  air,
  probe,
  overnight,
  boiling,
}: GuidanceFacts): boolean =>
  [seconds, where, air, probe].some((fact) => fact !== null) ||
  overnight ||
  boiling ||
  states.length + Object.keys(dates).length > 0;
