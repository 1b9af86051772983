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
}
