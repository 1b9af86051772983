import { perLexicon } from '../lexicon.js';
import { phraseSet } from '../phrases.js';
import type { Word } from '../tokens.js';
import { textsOf, type Pass } from './pass.js';

const tables = perLexicon(({ tidying, joining }) => {
  const articles = new Set(joining.articles);
  const inside = new Set(joining.inside);
  return {
    vocatives: phraseSet(tidying.vocatives.words),
    subjects: new Set(tidying.vocatives.subjects),
    definite: new Set(tidying.vocatives.definite),
    questions: new Set(tidying.tellMeBefore.words),
    leads: phraseSet([
      ...tidying.fillersAtStart,
      ...tidying.fillersAnywhere,
      ...tidying.fillersBetweenCommas,
    ]),
    // What begins a clause, and goes on with no list.
    clause: new Set(joining.stops.filter((word) => !articles.has(word) && !inside.has(word))),
  };
});

/** "…the turkey, sugar, that's raw": who is spoken to. "Milk, sugar, eggs" is a list, and stays. */
export const vocatives: Pass = (words, lexicon, note) => {
  const { vocatives: named, subjects, definite, questions, leads, clause } = tables(lexicon);
  const texts = textsOf(words);
  /** "Alright honey": nothing but what leads to it stands before it, at the start or after a pause. */
  const opens = (at: number): boolean => {
    if (at === 0) return true;
    let start = at - 1;
    while (start > 0 && !words[start]!.pause) start -= 1;
    for (let length = 0; start < at && (length = leads.longestAt(texts, start)?.length ?? 0) > 0;)
      start += length;
    return start === at;
  };
  for (let at = 0; at < words.length; at += 1) {
    const length = named.longestAt(texts, at)?.length ?? 0;
    if (length === 0 || length === words.length) continue;
    const next = words[at + length];
    const first = opens(at);
    if (!first && !words[at]!.pause) continue;
    // "The turkey, sugar": nothing of a list, which names what nobody spoke of yet.
    const after = first || definite.has(texts[at - 1]!) || definite.has(texts[at - 2]!);
    const addressed = next
      ? after && ((next.pause && clause.has(next.text)) || (first && subjects.has(next.text)))
      : after || questions.has(texts[0]!);
    if (!addressed) continue;
    note({ pass: 'vocatives', from: texts.slice(at, at + length).join(' '), to: '' });
    const rest: Word[] = words.filter((_, place) => place < at || place >= at + length);
    return rest.map((word, place) => (place === at ? { ...word, pause: place > 0 } : word));
  }
  return words;
};
