/**
 * What a hand finds on a container. All parts are optional: a cook says what she feels.
 * Words are singular and lower case, as the household says them ("round", "clip", "middle of the lid").
 */
export interface Touch {
  /** Of the container or of what stands on it: "small", "large", "tall". */
  readonly size?: string;
  /** The container: "jar", "tub", "bag", "bottle", "box". */
  readonly container?: string;
  /** What it is made of or feels like: "glass", "plastic", "ribbed". */
  readonly texture?: string;
  /** The marker's outline: "round", "square", "oval", "star". */
  readonly shape?: string;
  /** How the marker holds on: "clip", "band", "sticker", "ring". */
  readonly fastening?: string;
  /** How many of that fastening, when it says something ("two bands"). */
  readonly fastenings?: number;
  /** Where on the container: "middle of the lid", "edge of the lid", "side", "neck". */
  readonly spot?: string;
  /** Raised dots on the marker; 0 is "no dots". */
  readonly dots?: number;
}
