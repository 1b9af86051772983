/** What a reader of short talk is given, and what all of them ask of it. */
import type { Answered, ClockAtHand } from '../../intents.js';
import { figureOf, is, type Bit } from './bits.js';
import { personIn } from './list/lines.js';

export interface AsideTalk {
  readonly bits: readonly Bit[];
  readonly tokens: readonly string[];
  readonly clocks: readonly ClockAtHand[];
  readonly answered: Answered | null;
  /** Whether a word stands in a list of `requests.json`. */
  readonly says: (word: string, list: string) => boolean;
}

/** Nothing was said but words of these lists, and what `besides` allows. */
export const only = (
  bits: readonly Bit[],
  classes: readonly string[],
  besides: (bit: Bit) => boolean = () => false,
): boolean => bits.every((bit) => is(bit, 'small', ...classes) || besides(bit));

export const isPerson = (bit: Bit): boolean => personIn(bit) !== null;

export const hourIn = (bit: Bit): string | null => {
  const figure = figureOf(bit);
  if (bit.kind === 'time') return bit.time;
  return figure !== null && Number.isInteger(figure) && figure >= 1 && figure <= 12
    ? `${String(figure).padStart(2, '0')}:00`
    : null;
};

/**
 * What is said after a pause, and why: "pause it, I've had to turn the burner off". No figure and no hour stands in
 * it, so that nothing that was to be done is lost with it. Ends of what stands before, the last first.
 */
export const endsBeforeWhy = (
  bits: readonly Bit[],
  tokens: readonly string[],
  pauses: ReadonlySet<number>,
  leadsToWhy: (word: string) => boolean,
): readonly number[] =>
  [...pauses]
    .filter((at) => at > 0 && at < tokens.length && leadsToWhy(tokens[at]!))
    .filter((at) => bits.every(({ from, to }) => to <= at || from >= at))
    .filter((at) =>
      bits.every(
        (bit) =>
          bit.from < at ||
          !(['time', 'span', 'place', 'marker'].includes(bit.kind) || figureOf(bit) !== null),
      ),
    )
    .sort((a, b) => b - a);
