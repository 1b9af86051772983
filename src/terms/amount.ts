/** How much of something there is: "three tubs", "half a jar", "two pounds". */
export interface Amount {
  /** Not negative; halves and thirds are decimals (0.5, 0.333…). */
  readonly value: number;
  /** Singular, spelled out ("tub", "portion", "gram", "pound"); `piece` when the food counts itself ("two eggs"). */
  readonly unit: string;
  /** Said with "about". */
  readonly rough?: boolean;
}

/** What a cook says of how much was taken or is left, when it is not a plain amount. */
export type Share = { readonly fraction: number; readonly rough?: boolean };
