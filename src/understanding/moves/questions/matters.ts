/**
 * What is asked that is no set of food: timers, settings, what was thrown out, what a mark means. Which
 * words together ask for it stands with the wordings; each comes to a request there is already.
 */
import type { PlainDate } from '../../../terms/dates.js';
import type { Act, Slots } from '../../intents.js';
import { askingIn, is, type Words } from './asked.js';
import type { Piece, PieceOf } from './pieces.js';
import type { Wordings } from './wordings.js';

export interface MatterAsked {
  readonly act: Act;
  /** What it was known by. */
  readonly used: ReadonlySet<Piece>;
}

/** "What is three dots again": a count and nothing else, of which is asked what it is. */
const dotsAlone = (pieces: readonly Piece[]): MatterAsked | null => {
  const felt = pieces.filter((piece): piece is PieceOf<'felt'> => piece.kind === 'felt');
  const [only, ...more] = felt;
  const { dots, counted } = only?.touch ?? {};
  const bare = Object.keys(only?.touch ?? {}).every((key) => key === 'dots' || key === 'counted');
  if (!only || more.length > 0 || dots === undefined || !bare) return null;
  const asks = pieces.find((piece) => is(piece, 'what'));
  const holds = pieces.some((piece) => is(piece, 'have', 'which', 'holding'));
  const other = pieces.some(
    (piece) => piece.kind === 'thing' || piece.kind === 'place' || is(piece, 'in-hand'),
  );
  if (!asks || holds || other) return null;
  return {
    act: { intent: 'markers', slots: { dots, ...(counted ? { counted } : {}) } },
    used: new Set<Piece>([only, asks]),
  };
};

const named = (pieces: readonly Piece[]): PieceOf<'thing'> | undefined =>
  pieces
    .filter((piece): piece is PieceOf<'thing'> => piece.kind === 'thing')
    .sort((a, b) => b.fit - a.fit)[0];

const wholeName = 0.9;

/** What is asked that is no food, or null. Of wordings that fit, the one of most words. */
export const matterIn = (
  pieces: readonly Piece[],
  tokens: readonly string[],
  { matters }: Wordings,
  today: PlainDate,
): MatterAsked | null => {
  const count = dotsAlone(pieces);
  if (count) return count;
  const asked = askingIn(pieces) !== 'not';
  const words = pieces.filter((piece): piece is Words => piece.kind === 'words');
  const thing = named(pieces);
  for (const { intent, slots, of, without, ofThing } of matters) {
    // A meaning may hold a word of some name: "no added sugar".
    // "The milk is on the list" tells; only the summary may be ordered.
    if (!asked && intent !== 'summary' && intent !== 'why') continue;
    // What is to be bought need not be here.
    const least = intent === 'markers' ? wholeName : intent === 'buy-read' ? -1 : 0;
    if (
      ofThing !== (thing !== undefined && thing.fit > least) ||
      without.some((name) => words.some((one) => is(one, name)))
    )
      continue;
    const used: Words[] = [];
    for (const name of of) {
      const next = words.find((piece) => piece.classes.has(name) && !used.includes(piece));
      if (next) used.push(next);
    }
    if (used.length < of.length) continue;
    // "Why is the sky blue" is no question of what was just told.
    if (intent === 'why' && !ofThing && pieces.some(({ kind }) => kind !== 'words' && kind !== 'person'))
      continue;
    // Why somebody must not have it is asked of who they are.
    if (intent === 'why' && ofThing && pieces.some(({ kind }) => kind === 'person')) continue;
    // What a mark is to mean stands in any words: they are looked up where the household's are known.
    const free = intent === 'markers' ? { words: tokens.join(' ') } : {};
    const day = pieces.find((piece): piece is PieceOf<'day'> => piece.kind === 'day');
    const now = pieces.some((piece) => is(piece, 'day:today')) ? { day: today, until: today } : null;
    const when = day?.window ?? now;
    const dated: Slots = when && intent === 'what-changed' ? { when } : {};
    const all: Slots = { ...slots, ...free, ...dated, ...(ofThing && thing ? { item: thing.mention } : {}) };
    return {
      act: { intent, slots: all },
      used: new Set<Piece>([...used, ...(ofThing && thing ? [thing] : [])]),
    };
  }
  return null;
};
