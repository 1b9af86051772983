/**
 * The last resort: what a sentence probably asks for, in wording that no rule covers, judged by
 * weights fitted on examples (`npm run learn`). Asks and talk may be acted on; a change is only ever
 * proposed, for a yes or no.
 */
import type { DynamicRules } from '../../grammar/api.js';
import { INTENTS, type Act, type Intent } from '../intents.js';
import { featuresOf } from './features.js';
import { piecesOf, type Piece } from './pieces.js';
import { readSenses, stemOfPiece, type Senses } from './senses.js';
import { isWhole, slotsFor } from './slots.js';
import { judge, readWeights, type Judged, type Weights } from './weights.js';

export { moodOf, MOODS, type Mood, type MoodShares } from './mood.js';

interface Learned {
  readonly weights: Weights;
  readonly senses: Senses;
}

const known = new Map<string, Learned | null>();
const learnedOf = (language: string): Learned | null => {
  let learned = known.get(language);
  if (learned === undefined) {
    const weights = readWeights(language);
    learned = weights && { weights, senses: readSenses(language) };
    known.set(language, learned);
  }
  return learned;
};

const intents: ReadonlySet<string> = new Set(INTENTS);

/** What these mean hangs on what was said before; words alone do not tell. */
const hanging: ReadonlySet<string> = new Set<Intent>(['answer', 'choose', 'correct', 'follow-up']);

/** Not about markers, where no word of the sense `mark` in senses.txt was said. */
const ofMarkers: ReadonlySet<string> = new Set<Intent>([
  'add-marker',
  'mark',
  'unmark',
  'marker-note',
  'define-dots',
  'markers',
  'marker-care',
]);

const isMarkerWord = (token: string, senses: Senses): boolean =>
  senses.get(stemOfPiece(token))?.some(({ sense, stems }) => sense === 'mark' && stems.length === 1) === true;

export interface Guessed {
  readonly act: Act;
  /** 0 to 1: its part of all that the words could mean, as learned. */
  readonly share: number;
  /** A thing that the request is about was named or pointed at, where it needs one. */
  readonly whole: boolean;
  /** Words that nothing was learned of, besides the thing named. */
  readonly strangers: number;
  /** Share of any label; `none` is what is not ours. */
  readonly shareOf: (label: Intent | 'none') => number;
}

/** `aside`: words taken away in normalising that say something where nothing else does ("thanks"). */
const textsIn = (pieces: readonly Piece[], aside: readonly string[]): readonly string[] => [
  ...pieces.map(({ text }) => text),
  ...(aside.length > 0 ? ['|', ...aside] : []),
];

/** What a sentence is judged by, as `featuresOf` takes it; `aside` as above. */
export const textsOf = (
  tokens: readonly string[],
  aside: readonly string[],
  rules: DynamicRules,
): readonly string[] => textsIn(piecesOf(tokens, rules), aside);

/** Null where nothing was learned of the language, or the sentence is likelier not ours. */
export const guessed = (
  tokens: readonly string[],
  aside: readonly string[],
  rules: DynamicRules,
  language: string,
): Guessed | null => {
  const learned = learnedOf(language);
  if (!learned) return null;
  const { weights, senses } = learned;
  const pieces = piecesOf(tokens, rules);
  const all = judge(featuresOf(textsIn(pieces, aside), senses), weights);
  const saysMarker = tokens.some((token) => isMarkerWord(token, senses));
  const best = all.find(
    ({ label }) => intents.has(label) && !hanging.has(label) && (saysMarker || !ofMarkers.has(label)),
  );
  if (!best) return null;
  const intent = best.label as Intent;
  const isStrange = (word: string): boolean =>
    word.length > 2 && !weights.rowOf.has(stemOfPiece(word)) && !senses.has(stemOfPiece(word));
  const slots = slotsFor(intent, { tokens, pieces, rules, isStrange });
  const named = new Set(
    [slots.item, ...(slots.items ?? [])].flatMap((item) => item?.words?.split(' ') ?? []),
  );
  const shares = new Map(all.map(({ label, share }: Judged) => [label, share]));
  return {
    act: { intent, slots },
    share: best.share,
    whole: isWhole(intent, slots, { tokens }),
    strangers: pieces.filter(({ kind, text }) => kind === null && isStrange(text) && !named.has(text)).length,
    shareOf: (label) => shares.get(label) ?? 0,
  };
};
