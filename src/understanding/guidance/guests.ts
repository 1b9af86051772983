/** "We've a vegan coming on Saturday": how somebody eats who has no name yet. */
import type { Act } from '../intents.js';
import { classAt, movesLexicon } from '../moves/lexicon.js';
import { asks, guestIn, isWord, personIn, type Sentence } from './sentence.js';

export const dietGuest = (sentence: Sentence): Act | null => {
  const { tokens, language } = sentence;
  const lexicon = movesLexicon(language);
  if (!lexicon || asks(sentence)) return null;
  const at = tokens.findIndex((_, from) => classAt(lexicon, tokens, from, 'diet') > 0);
  if (at < 0) return null;
  const named = personIn(sentence);
  // "A vegan is coming, what is there for her": she is the guest, and nobody spoken of before.
  const known = named !== null && named.words !== 'me' && named.words !== 'she';
  // "I've gone vegetarian", "she's a strict vegan": with nothing else between who it is and how she eats.
  const from = tokens.findLastIndex((word, to) => to < at && !isWord(sentence, 'becoming', word));
  const becomes =
    from + 1 < at &&
    from >= 0 &&
    (isWord(sentence, 'mine', tokens[from]) || isWord(sentence, 'shehe', tokens[from]));
  const person = known || (named !== null && becomes) ? named : guestIn(sentence);
  if (!person) return null;
  const diet = tokens.slice(at, at + classAt(lexicon, tokens, at, 'diet')).join(' ');
  const { words, candidates } = person;
  return { intent: 'add-person', slots: { person: { words, candidates }, diet } };
};
