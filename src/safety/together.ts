/** "These go together": only where the cook's own notes say so. Nothing is made up. */
import type { Item } from '../kitchen/model.js';
import { foodWords } from './words.js';

export interface Together {
  readonly item: Item;
  /** The other item its note names. */
  readonly other: Item;
  /** The note, word for word. */
  readonly note: string;
}

/**
 * Living items whose notes name another living item, in the order given: pass them ranked and the
 * most urgent come first.
 */
export const goTogether = (items: readonly Item[]): readonly Together[] => {
  const living = items.filter((item) => item.gone === null);
  const names = living.map((item) => ({ item, phrase: ` ${foodWords(item.name).join(' ')} ` }));
  return living.flatMap((item) =>
    item.notes.flatMap((note) => {
      const said = ` ${foodWords(note).join(' ')} `;
      return names
        .filter(
          ({ item: other, phrase }) =>
            other.id !== item.id && other.name !== item.name && said.includes(phrase),
        )
        .map(({ item: other }) => ({ item, other, note }));
    }),
  );
};
