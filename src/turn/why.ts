/** Why a turn was answered as it was: what each of its moves was heard as, who took it, and what was said. */
import type { DecidedMove } from '../dialogue/index.js';
import type { HeardMove } from './heard-moves.js';
import type { Answer, Say, Value } from '../speech/answer.js';
import { whyHeard, type WhyHeard } from '../understanding/index.js';
import type { Expectation } from '../understanding/intents.js';

export interface WhyMove extends WhyHeard {
  /** As it was said. */
  readonly words: string;
  /** Files of `src/dialogue` that took it, outermost first, and the handlers of `table.ts` by their intent. */
  readonly by: readonly string[];
  /** Names of the phrases in `grammars/<language>/phrases`, each with those in it; a question comes last. */
  readonly phrases: readonly string[];
  /** Nothing came of it, and another move was answered. */
  readonly passedOver: boolean;
}

const within = (value: Value): readonly string[] =>
  typeof value !== 'object'
    ? []
    : value.kind === 'say'
      ? [phraseOf(value)]
      : value.kind === 'list'
        ? value.of.flatMap(within)
        : [];

/** "list-entry (use-entry)". */
const phraseOf = ({ phrase, args = {} }: Say): string => {
  const inner = [...new Set(Object.values(args).flatMap(within))];
  return inner.length > 0 ? `${phrase} (${inner.join(', ')})` : phrase;
};

const phrasesOf = ({ parts, question }: Answer): readonly string[] =>
  [...parts, ...(question ? [question] : [])].map(phraseOf);

export const whyOf = (
  moves: readonly DecidedMove<HeardMove>[],
  locale: string,
  expecting: Expectation,
): readonly WhyMove[] =>
  moves.map(({ heard: { words, understanding }, by, answer, passedOver }, at) => ({
    words,
    ...whyHeard(words, locale, at === 0 ? expecting : 'anything', understanding),
    by,
    phrases: phrasesOf(answer),
    passedOver,
  }));
