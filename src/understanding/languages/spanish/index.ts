/** Spanish: the noun comes first, pronouns lean on the verb, the verb's ending says who. */
import type { WordForms } from '../api.js';
import { asSpelled, spelledOut } from './spelled-out.js';
import { stemOf } from './stems.js';
import { formsOfPhrase } from './verbs.js';

const articles: ReadonlySet<string> = new Set(['el', 'la', 'los', 'las', 'mi', 'mis']);
const joins: ReadonlySet<string> = new Set(['de', 'del', 'con', 'al', 'a', 'en', 'para', 'sin']);

/** "Cajón de abajo": "de" and what tells one part from its like is no place it is in. */
const positions =
  /^(?:(?:hasta )?(?:arriba|abajo|enfrente|atrás)|en medio|(?:el|la) (?:medio|izquierda|derecha)|medio)/u;

const placing = /^(?:del?|izquierd[oa]|derech[oa]|superior|inferior)$/u;

const outerOf = (place: string): string => {
  for (const found of place.matchAll(/ (?:de|del) /gu)) {
    const rest = place.slice(found.index + found[0].length);
    if (!positions.test(rest)) return rest.replace(/^(?:el|la|los|las) /u, '');
  }
  return '';
};

export const spanish: WordForms = {
  spelledOut,
  asSpelled,
  formsOf: formsOfPhrase,
  stemOf,
  headFirst: true,
  joinAt(tokens, at) {
    const word = tokens[at] ?? '';
    if (!joins.has(word)) return 0;
    return articles.has(tokens[at + 1] ?? '') ? 2 : 1;
  },
  kindOf: (place) => place.split(' ')[0] ?? '',
  inside: (inner, outer) => `${inner} de ${outer}`,
  outerOf,
  partOf(position, kind) {
    // "En la de abajo": what stands before the position is the sentence's.
    const at = position.findIndex((word) => placing.test(word));
    return [kind, ...position.slice(Math.max(0, at))];
  },
  asksInWriting: /[¿?]/u,
};
