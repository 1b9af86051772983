import type { AllergenRow, FoodKind } from '../../../shared/tables/schema.js';
import type { Temperature } from '../api.js';
import type { ThawAdviceCode } from '../codes.js';

/** What differs from one region to another and is no figure of a table. */
export interface RegionFacts {
  /** The number that brings an ambulance, digit by digit as it is dialled. Common knowledge, from memory. */
  readonly emergencyNumber: string;
  /** A use-by is of safety: nothing is frozen or eaten after it. Else it is of quality, and said to be. */
  readonly useByIsSafety: boolean;
  /** Eggs are sold and kept uncooled, and go by their best-before. */
  readonly eggsByBestBefore: boolean;
  /** Limits in days are meant to the hour, where hours are known. */
  readonly daysToTheHour: boolean;
  /** Cooked rice has rules of its own. */
  readonly riceByItself: boolean;
  /** Whatever it was, defrosted food is used within the time of one row; null: by its kind. */
  readonly thawedRow: string | null;
  /** The USDA's storage data are asked beside the chart. */
  readonly storageData: boolean;
  /** Why there is no figure, where the tables of the region have none. */
  readonly noFigure: 'no-uk-figure' | 'label-decides';
  /** Food is heated again once only. */
  readonly reheatOnce: boolean;
  /** That freezing stopped the clock is said. */
  readonly clockStopped: boolean;
  /** Rows of `time-rules.json` for how long food may stand out; null where such food has none of its own. */
  readonly leftOutRows: {
    readonly usual: string;
    readonly hot: string;
    readonly rice: string | null;
    readonly humanMilk: string | null;
  };
  /** Thawing in cold water is among the ways advised. */
  readonly waterThaw: boolean;
  /** What a chart says of freezing badly is a reason against it. */
  readonly chartOnFreezing: boolean;
  /** What is said of food that thaws in the fridge. */
  readonly fridgeThawAdvice: readonly ThawAdviceCode[];
  /** Rows of `time-rules.json` for freezing again, by how it thawed; null: nothing is said of it so. */
  readonly refreezeRows: Readonly<Record<'fridge' | 'cold-water' | 'microwave' | 'unknown', string | null>>;
  /** One row of `cooking-temperatures.csv` for every food; null: each by its kind. */
  readonly cookRow: string | null;
  readonly scale: Temperature['scale'];
  /** Rows of `holding-temperatures.csv`. */
  readonly thermometerRows: Readonly<Record<'fridge' | 'freezer', string>>;
  /** Rows of the region's storage table for a kind of food. */
  readonly storageRows: {
    readonly own: (kind: FoodKind) => string | null;
    readonly opened: (kind: FoodKind) => string | null;
    /** What is home-made and has no row of its own, or none with a time in the fridge where that gives way. */
    readonly leftovers: string;
    readonly undatedGivesWay: boolean;
  };
  readonly allergenSource: (row: AllergenRow) => string | null;
}
