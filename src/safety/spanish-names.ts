/**
 * Spanish names of foods, put into the words and the order of the reviewed (English) tables, by
 * `shared/tables/food-names-es.csv`: "caldo de pollo" is "soup with chicken", "pollo asado" is
 * "roast chicken". What goes with a food follows "de" or "con", as it follows "with".
 */
import type { ForeignNameRow } from '../../shared/tables/schema.js';
import { foodWords } from './words.js';

interface Known {
  readonly kind: ForeignNameRow['kind'];
  readonly words: readonly string[];
}

export interface SpanishNames {
  /** The table's words, or null when no food is among them. `words` as `foodWords` gives them. */
  readonly toTable: (words: readonly string[]) => string[] | null;
}

export const createSpanishNames = (rows: readonly ForeignNameRow[]): SpanishNames => {
  const phrases = new Map<string, Known>();
  let longest = 1;
  for (const { kind, spanish, english } of rows) {
    for (const name of spanish) {
      const words = foodWords(name);
      phrases.set(words.join(' '), { kind, words: foodWords(english) });
      longest = Math.max(longest, words.length);
    }
  }
  const knownAt = (words: readonly string[], at: number): { known: Known; length: number } | null => {
    for (let length = Math.min(longest, words.length - at); length > 0; length -= 1) {
      const known = phrases.get(words.slice(at, at + length).join(' '));
      if (known !== undefined) return { known, length };
    }
    return null;
  };
  return {
    toTable(words) {
      const out: string[] = [];
      let [manners, foods]: [string[], string[]] = [[], []];
      let found = false;
      // Spanish says how it was treated after the food, the table before it.
      const close = (): void => {
        out.push(...manners, ...foods);
        [manners, foods] = [[], []];
      };
      for (let at = 0; at < words.length;) {
        const hit = knownAt(words, at);
        if (hit === null) foods.push(words[at]!);
        else if (hit.known.kind === 'manner') manners.push(...hit.known.words);
        else if (hit.known.kind === 'food') {
          found = true;
          foods.push(...hit.known.words);
        } else {
          close();
          out.push(...hit.known.words);
        }
        at += hit?.length ?? 1;
      }
      close();
      return found ? out : null;
    },
  };
};
