import type { DynamicRules } from '../../grammar/api.js';
import { perLexicon } from '../words/lexicon.js';
import { rememberingRule } from '../words/rule.js';
import { descriptionsAt } from './descriptions.js';

/** `kitchen:touch`, the same for every household that speaks the language. */
export const touchRules = perLexicon(
  (lexicon): DynamicRules =>
    new Map([
      [
        'kitchen:touch',
        rememberingRule((tokens, from) =>
          descriptionsAt(tokens, from, lexicon).map(({ touch, length }, place) => ({
            length,
            value: { ...touch },
            // Of two ways to end, the fuller description is likelier meant.
            weight: place === 0 ? 1 : 0.5,
          })),
        ),
      ],
    ]),
);
