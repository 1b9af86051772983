/**
 * What a hand finds on a container. All parts are optional: a cook says what she feels.
 * Words are singular and lower case, as the household says them ("wooden", "bead", "middle of the lid").
 */
export interface Touch {
  /** Of the container or of what stands on it: "small", "large", "tall". */
  readonly size?: string;
  /** The container: "jar", "tub", "bag", "bottle", "box". */
  readonly container?: string;
  /** What it is made of or feels like: "glass", "plastic", "ribbed". */
  readonly texture?: string;
  /** The marker's outline, where it tells: "round", "long". */
  readonly shape?: string;
  /** How the marker holds on, or what it is: "bead", "band", "patch", "ring". */
  readonly fastening?: string;
  /** How many of that fastening, when it says something ("two bands"). */
  readonly fastenings?: number;
  /** Where on the container: "middle of the lid", "edge of the lid", "side", "neck". */
  readonly spot?: string;
  /** How many a finger counts on the marker: raised dots, knots, ridges, notches; 0 is "no dots". */
  readonly dots?: number;
  /** What is counted, where it is no dot: "knot", "ridge", "notch". Without `dots`: any number of them. */
  readonly counted?: string;
}

/** A finger that says "dots" or "bumps" may have met any of them; one that says "knots" has met knots. */
export const sameCounted = (felt: string | undefined, kept: string | undefined): boolean =>
  felt === undefined || felt === 'dot' || felt === (kept ?? 'dot');
