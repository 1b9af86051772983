/**
 * Told and asked in one breath: "I've put the tart on the counter, can Sam eat that?" The sentence is cut where
 * a question may begin or end; both halves must be understood whole, one by its statements or a sure rule that
 * changes something, the other as a question.
 */
import type { Guess } from '../guesses.js';
import { type Act, ASKING_INTENTS, CHANGING_INTENTS, type Intent } from '../intents.js';
import { learnedReading } from '../learned-reading.js';
import { readingsOf, type Reader } from '../readings.js';
import { chunksOf } from './chunks.js';
import { classAt, movesLexicon, type MovesLexicon } from './lexicon.js';
import { questionIn } from './questions.js';
import { statementsProposal } from './statements/index.js';

interface Half {
  readonly does: 'tells' | 'asks';
  readonly acts: readonly Act[];
  readonly score: number;
}

/** A rule's reading of half a sentence that is sure enough, natural logarithm. */
const sureRule = -1.2;
/** And a half that is told. */
const sureTold = -4;
/** More places to cut are not tried. */
const mostCuts = 8;
/** A half of fewer words says nothing by itself. */
const shortest = 2;

const asking: ReadonlySet<Intent> = new Set<Intent>(ASKING_INTENTS);
const changing: ReadonlySet<Intent> = new Set<Intent>(CHANGING_INTENTS);

/** Words that only join the halves. */
const withoutJoint = (tokens: readonly string[], lexicon: MovesLexicon): readonly string[] => {
  let from = 0;
  for (;;) {
    const joint = classAt(lexicon, tokens, from, 'and', 'so', 'but', 'fill');
    if (joint === 0 || classAt(lexicon, tokens, from, 'wh', 'aux') > 0) break;
    from += joint;
  }
  let to = tokens.length;
  while (to > from && classAt(lexicon, tokens.slice(0, to), to - 1, 'and', 'so', 'but') > 0) to -= 1;
  return tokens.slice(from, to);
};

/** A question may begin or end here. */
const cutsIn = (
  tokens: readonly string[],
  pauses: ReadonlySet<number>,
  lexicon: MovesLexicon,
): readonly number[] => {
  const cuts: number[] = [];
  for (let at = shortest; at <= tokens.length - shortest && cuts.length < mostCuts; at += 1)
    if (pauses.has(at) || classAt(lexicon, tokens, at, 'wh', 'aux', 'may', 'and') > 0) cuts.push(at);
  return cuts;
};

const told = (tokens: readonly string[], reader: Reader, lexicon: MovesLexicon): Half | null => {
  const found = chunksOf(tokens, reader.rules, reader.language);
  const proposal =
    found && statementsProposal(found.chunks, found.cost, tokens, new Set(), reader.rules, lexicon);
  if (!proposal || proposal.left.length > 0 || proposal.score < sureTold) return null;
  const names = proposal.acts
    .flatMap(({ slots }) => slots.statements ?? [])
    // "Between the two milks, which …" names them, and tells nothing of them.
    .some(({ thing, deed, place }) => thing !== null && deed !== 'fact' && (deed !== 'stored' || place));
  return names ? { does: 'tells', acts: proposal.acts, score: proposal.score } : null;
};

const byRule = (tokens: readonly string[], reader: Reader): Half | null => {
  const [best] = readingsOf(tokens, { ...reader, expecting: 'anything' }, false);
  if (!best || best.score < sureRule) return null;
  const { acts, score } = best;
  if (acts.every(({ intent }) => asking.has(intent))) return { does: 'asks', acts, score };
  return acts.every(({ intent }) => changing.has(intent)) ? { does: 'tells', acts, score } : null;
};

const asked = (tokens: readonly string[], { rules, today, language }: Reader): Half | null => {
  const question = questionIn(tokens, rules, today, language);
  if (!question || question.fragment || !question.hers || question.left.length > 0) return null;
  return { does: 'asks', acts: question.acts, score: sureRule };
};

/** What was learned knows questions by their wording; what is told, its parts say. */
const learned = (tokens: readonly string[], reader: Reader): Half | null => {
  const heard = tokens.join(' ');
  const found = learnedReading([{ heard, tokens, aside: [], share: 1 }], undefined, undefined, {
    ...reader,
    expecting: 'anything',
  });
  const sure = found !== null && found.reading.confidence >= sureLearned;
  return sure && found.reading.acts.every(({ intent }) => asking.has(intent))
    ? { does: 'asks', acts: found.reading.acts, score: sureRule }
    : null;
};
const sureLearned = 0.6;

const half = (tokens: readonly string[], reader: Reader, lexicon: MovesLexicon): Half | null =>
  tokens.length < shortest
    ? null
    : (told(tokens, reader, lexicon) ??
      byRule(tokens, reader) ??
      asked(tokens, reader) ??
      learned(tokens, reader));

/** What both halves say, in the order they were said; null where it is not one of each. */
export const compoundActs = (guess: Guess, reader: Reader): readonly Act[] | null => {
  const lexicon = movesLexicon(reader.language);
  if (!lexicon) return null;
  const { tokens, pauses } = lexicon.forms.spelledOut(guess.said, guess.pauses, reader.rules, lexicon);
  let best: { acts: readonly Act[]; score: number } | null = null;
  for (const cut of cutsIn(tokens, pauses, lexicon)) {
    const first = half(withoutJoint(tokens.slice(0, cut), lexicon), reader, lexicon);
    const second = first && half(withoutJoint(tokens.slice(cut), lexicon), reader, lexicon);
    if (!first || !second || first.does === second.does) continue;
    const score = first.score + second.score;
    if (!best || score > best.score) best = { acts: [...first.acts, ...second.acts], score };
  }
  return best && best.acts;
};
