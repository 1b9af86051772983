/**
 * What is the same in "tamal, tamales", "rojo, roja, rojos", "limón, limones", "nuez, nueces", "frijolitos". Not the
 * dictionary's form, and never said: two words with one stem name one thing.
 */
import { entriesOf } from '../../word-lists.js';

let own: ReadonlySet<string> | undefined;
/** Words that end like small ones and are none: "carnitas". */
const ownDiminutives = (): ReadonlySet<string> => (own ??= new Set(entriesOf('es', 'own-diminutives')));

export const stemOf = (word: string): string => {
  const plain = word
    .normalize('NFD')
    .replace(/\u0301/gu, '')
    .normalize('NFC');
  const single = plain.length > 3 ? plain.replace(/s$/u, '') : plain;
  const small =
    single.length > 5 && !ownDiminutives().has(word)
      ? single.replace(/(?:(?<=[nre])c)?it[oa]$/u, '')
      : single;
  if (small !== single) return small.replace(/qu$/u, 'c').replace(/gu$/u, 'g').replace(/[ae]$/u, '');
  return single.length > 3 ? single.replace(/ce$/u, 'z').replace(/[aeo]$/u, '') : single;
};
