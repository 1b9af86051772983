import { perLexicon } from '../lexicon.js';
import { phraseSet, phraseTable } from '../phrases.js';
import type { Word } from '../tokens.js';
import { textOf, textsOf, type Pass } from './pass.js';

const tables = perLexicon(({ tidying }) => ({
  anywhere: phraseTable<boolean>([
    ...tidying.fillersAnywhere.map((phrase) => [phrase, true] as const),
    // A longer phrase in which the filler means something wins and is kept.
    ...tidying.keepPhrases.phrases.map((phrase) => [phrase, false] as const),
  ]),
  kept: phraseSet(tidying.keepPhrases.phrases),
  betweenCommas: new Set(tidying.fillersBetweenCommas),
  atStart: phraseSet(tidying.fillersAtStart),
  orderStarts: phraseSet(tidying.orderStarts.starts),
  orders: new Set(tidying.orderStarts.before),
  tellMe: phraseSet(tidying.tellMeBefore.starts),
  questions: new Set(tidying.tellMeBefore.words),
  atEnd: new Set(tidying.fillersAtEnd),
  longestEnd: Math.max(0, ...tidying.fillersAtEnd.map((phrase) => phrase.split(' ').length)),
}));

/** "um", "please", "you know", wherever they stand. */
export const fillersAnywhere: Pass = (words, lexicon, note) => {
  const { anywhere } = tables(lexicon);
  const texts = textsOf(words);
  const out: Word[] = [];
  let paused = false;
  for (let at = 0; at < words.length;) {
    const hit = anywhere.longestAt(texts, at);
    if (hit?.value) {
      note({ pass: 'fillers', from: texts.slice(at, at + hit.length).join(' '), to: '' });
      paused = true;
      at += hit.length;
      continue;
    }
    const many = hit ? hit.length : 1;
    for (const word of words.slice(at, at + many)) {
      out.push(paused ? { ...word, pause: true } : word);
      paused = false;
    }
    at += many;
  }
  return out.length === words.length ? words : out;
};

/** ", like," and ", well," stand alone between pauses. */
export const fillersBetweenCommas: Pass = (words, lexicon, note) => {
  const { betweenCommas } = tables(lexicon);
  const out = words.filter((word, at) => {
    const alone = at > 0 && word.pause && words[at + 1]?.pause === true && betweenCommas.has(word.text);
    if (alone) note({ pass: 'fillers', from: word.text, to: '' });
    return !alone;
  });
  return out.length === words.length ? words : out;
};

/** How many words of politeness a sentence starts with. */
const startLength = (texts: readonly string[], from: number, lexicon: Parameters<Pass>[1]): number => {
  const { atStart, orderStarts, orders, tellMe, questions, kept } = tables(lexicon);
  if (kept.longestAt(texts, from)) return 0;
  const order = orderStarts.longestAt(texts, from);
  if (order && orders.has(texts[from + order.length] ?? '')) return order.length;
  const tell = tellMe.longestAt(texts, from);
  if (tell && questions.has(texts[from + tell.length] ?? '')) return tell.length;
  return atStart.longestAt(texts, from)?.length ?? 0;
};

/** "okay so could you tell me where the milk is" is "where the milk is". */
export const fillersAtStart: Pass = (words, lexicon, note) => {
  const texts = textsOf(words);
  let from = 0;
  for (;;) {
    const length = startLength(texts, from, lexicon);
    if (length === 0) break;
    from += length;
  }
  if (from === 0 || from >= words.length) return words;
  note({ pass: 'fillers', from: texts.slice(0, from).join(' '), to: '' });
  return words.slice(from);
};

/** "thank you", "would you", "or so" at the end. */
export const fillersAtEnd: Pass = (words, lexicon, note) => {
  const { atEnd, longestEnd, kept } = tables(lexicon);
  const texts = textsOf(words);
  // "How do you know": the end of a phrase that means something.
  const meant = (many: number): boolean =>
    texts.some(
      (_, from) => texts.length - from > many && kept.longestAt(texts, from)?.length === texts.length - from,
    );
  for (let many = Math.min(longestEnd, words.length - 1); many > 0; many -= 1) {
    const tail = textOf(words.slice(-many));
    if (!atEnd.has(tail) || meant(many)) continue;
    note({ pass: 'fillers', from: tail, to: '' });
    return words.slice(0, -many);
  }
  return words;
};
