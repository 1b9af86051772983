/** English: contracted endings are words of their own; a noun comes last; most words have two forms. */
import pluralize from 'pluralize';
import type { DynamicRules } from '../../grammar/api.js';
import type { WordForms } from './api.js';

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

/** "The halloumi's middle shelf": an ending that is a word of its own, unless it is part of a name or a person's. */
const spelledOut: WordForms['spelledOut'] = (said, pauses, rules, { clitics, endings, phrases }) => {
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

export const english: WordForms = {
  spelledOut,
  formsOf: (phrase) => [phrase],
  asSpelled: (phrase) => [phrase],
  stemOf: (word) => pluralize.singular(word),
  headFirst: false,
  joinAt: () => 0,
  kindOf: (place) => place.split(' ').at(-1) ?? '',
  inside: (inner, outer) => `${inner} of the ${outer}`,
  outerOf: (place) => place.split(' of the ').slice(1).join(' of the '),
  partOf: (position, kind) => [...position, kind],
  asksInWriting: null,
};
