/** How many words the longest name that stands there has, by the household's rules; 0 where none of them does. */
import type { DynamicRules } from '../../grammar/api.js';

export const lengthNamed = (
  rules: DynamicRules,
  tokens: readonly string[],
  at: number,
  ...uris: readonly string[]
): number =>
  Math.max(
    0,
    ...uris.flatMap((uri) => (rules.get(uri)?.matchesAt(tokens, at) ?? []).map(({ length }) => length)),
  );
