/** "The halloumi's middle shelf": an ending that is a word of its own, unless it is part of a name or a person's. */
import type { DynamicRules } from '../../grammar/api.js';
import type { MovesLexicon } from './lexicon.js';

interface Spelled {
  readonly tokens: readonly string[];
  readonly pauses: ReadonlySet<number>;
}

/** Some name of food or of somebody holds this word as it is. */
const isPartOfName = (tokens: readonly string[], at: number, rules: DynamicRules): boolean => {
  if (rules.get('kitchen:person')?.matchesAt(tokens, at).length) return true;
  const before = Math.max(0, at - 1);
  for (let from = before; from <= at; from += 1)
    for (const uri of ['kitchen:person', 'kitchen:item', 'kitchen:food', 'kitchen:place'])
      if (
        rules
          .get(uri)
          ?.matchesAt(tokens, from)
          .some(
            ({ length }) =>
              length > 1 &&
              from + length > at &&
              (uri === 'kitchen:person' || uri === 'kitchen:food' || from + length > at + 1),
          )
      )
        return true;
  return false;
};

/** The words with such endings spelled out. Pauses stay before the words they stood before. */
export const withoutClitics = (
  said: readonly string[],
  pauses: ReadonlySet<number>,
  rules: DynamicRules,
  { clitics, endings, phrases }: MovesLexicon,
): Spelled => {
  const tokens: string[] = [];
  const kept = new Set<number>();
  said.forEach((word, at) => {
    if (pauses.has(at)) kept.add(tokens.length);
    const clitic = clitics.find(([ending]) => word.length > ending.length + 1 && word.endsWith(ending));
    const whole = endings.flatMap(([said, meant]) =>
      word.endsWith(said) && phrases.longestAt([word], 0) === null
        ? [word.slice(0, -said.length) + meant]
        : [],
    )[0];
    if (whole !== undefined && phrases.longestAt([whole], 0) !== null) tokens.push(whole);
    else if (clitic && !isPartOfName(said, at, rules))
      tokens.push(word.slice(0, -clitic[0].length), clitic[1]);
    else tokens.push(word);
  });
  return { tokens, pauses: kept };
};
