/** A question of guidance as one proposal among others: which words it used, which it left, how surely it was asked. */
import type { HearingContext, Proposal, Understanding } from '../intents.js';
import { movesLexicon } from '../moves/lexicon.js';
import { evidenceFor } from './evidence.js';
import { isFiller } from './food.js';
import { figuresIn, spansIn } from './figures.js';
import { guidanceAct, namedIn } from './question.js';
import { isWord, type Sentence } from './sentence.js';
import { matchesIn } from './spots.js';
import { weighed } from './weigh.js';

/** Small words of the guidance lexicon that say nothing by themselves. */
const small = [
  ...['noname', 'opening', 'opensonly', 'hedge', 'link', 'in', 'the', 'subject', 'being', 'between'],
  ...['pointer', 'shehe', 'mine', 'myself', 'own', 'eating', 'tocome', 'afterfigure', 'justthat', 'doer'],
];
/** Classes of the moves lexicon that carry no content. */
const empty = /^(fill|a|of|and|but|so|i|you|they|is|has|prep|that|definite|nameless|now|any|apology)$/;

/** Words that some part of the question took, by index. */
const usedIn = (sentence: Sentence): ReadonlySet<number> => {
  const { tokens, rules, spots } = sentence;
  const named = namedIn(sentence);
  const spans = [
    ...spots,
    ...spansIn(sentence),
    ...figuresIn(sentence),
    ...matchesIn(tokens, rules, 'builtin:grammar/date?lean=past'),
    ...(named ? [named] : []),
  ];
  return new Set(
    tokens.flatMap((_, at) => (spans.some(({ from, to }) => from <= at && at < to) ? [at] : [])),
  );
};

/** Words that say something and that nothing took, by index. */
const leftIn = (sentence: Sentence, used: ReadonlySet<number>): readonly number[] => {
  const { tokens, language } = sentence;
  const lexicon = movesLexicon(language);
  const says = (token: string, at: number): boolean =>
    !used.has(at) &&
    !isFiller(token, language) &&
    !small.some((kind) => isWord(sentence, kind, token)) &&
    ![...(lexicon?.phrases.longestAt([token], 0)?.value ?? [])].some((name) => empty.test(name));
  return tokens.flatMap((token, at) => (says(token, at) ? [at] : []));
};

/** How likely something this much spoken for is, as a natural logarithm. */
const likelihood = (worth: number): number => -Math.log(1 + Math.exp(-worth));

/** Likelier than not. */
const evens = Math.log(1 / 2);
export const isLikely = ({ score }: Proposal): boolean => score > evens;

/** Null where nothing that guidance answers was asked. */
export const guidanceProposal = (
  sentence: Sentence,
  base: Understanding,
  expecting: HearingContext['expecting'],
): Proposal | null => {
  const act = guidanceAct(sentence);
  if (!act) return null;
  const used = usedIn(sentence);
  const left = leftIn(sentence, used);
  const { mood } = act.slots.guidance!;
  const evidence = evidenceFor(act, base, sentence, expecting);
  return {
    acts: [act],
    mood: mood === 'told' && evidence.asking !== 'not' ? 'asked' : mood,
    used,
    left,
    score: likelihood(weighed(evidence, left.length)),
    by: 'guidance',
  };
};
