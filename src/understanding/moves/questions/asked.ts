/** What is asked of the set, and that anything is: the heads and wordings of a question, in any order. */
import type { Attribute } from '../../../protocol/query.js';
import type { Piece, PieceOf } from './pieces.js';
import type { Wordings } from './wordings.js';

export type Words = PieceOf<'words'>;

export const is = (piece: Piece | undefined, ...classes: readonly string[]): piece is Words =>
  piece?.kind === 'words' && classes.some((name) => piece.classes.has(name));

/** Words that only ask, wherever they stand. */
export const heads = [
  ...['where', 'side', 'when', 'how-long', 'since', 'how-many', 'how-old', 'who', 'whose', 'what', 'which'],
  ...['all', 'everything', 'contents', 'list', 'which-one', 'how', 'time-left', 'days-over'],
] as const;

const isSubject = (piece: Piece | undefined): boolean =>
  piece !== undefined &&
  (piece.kind === 'thing' ||
    piece.kind === 'person' ||
    piece.kind === 'unknown' ||
    piece.kind === 'place' ||
    is(piece, 'me', 'same', 'it', 'those', 'other', 'everybody', 'coeliac'));

/** "Is the milk …", "did Sam …", "any dal": a verb before its subject. */
const inverted = (pieces: readonly Piece[], at: number): boolean => {
  const piece = pieces[at];
  if (!is(piece, 'whether')) return false;
  // "In front of Sam, will he be all right": before "he" no verb tells of what stands before it.
  const next = pieces[at + 1];
  const parted = piece.parted === true && verbFirst(pieces, at);
  if (isSubject(pieces[at - 1]) && !parted && !(is(next, 'same') && is(next, 'subject'))) return false;
  // "Anything on the counter".
  if (is(piece, 'any') && at === 0) return true;
  return pieces
    .slice(at + 1, at + 4)
    .some((next) => isSubject(next) || is(next, 'whether') || next.kind === 'felt');
};

/** Words that open or close nothing but a question: what is told has none of them there. */
const outrightHeads = [
  ...['where', 'side', 'when', 'how-long', 'since', 'how-many', 'how-old', 'who', 'whose', 'what', 'which'],
  ...['which-one', 'how', 'why', 'time-left', 'days-over'],
] as const;

/** Said before a question, and no part of it: an address, a filler, what it is about. */
const leadsIn = (piece: Piece): boolean =>
  piece.kind === 'thing' ||
  piece.kind === 'person' ||
  (piece.kind === 'words' &&
    [...piece.classes].every((name) => name === 'filler' || name === 'small' || name === 'those'));

/** "Vegan", "vegetarians": how somebody eats. */
const isDiet = (piece: Piece): boolean =>
  piece.kind === 'words' && [...piece.classes].some((name) => name.startsWith('diet:'));

/** What is good, or will be, is spoken of. */
const judges = (pieces: readonly Piece[]): boolean =>
  pieces.some((piece) => is(piece, 'good', 'last', 'not-last', 'up', 'expired'));

/** "Would the ham …", "has it …", "have we …": a verb, and at once whoever it is said of. */
const verbFirst = (pieces: readonly Piece[], at: number): boolean => {
  if (!is(pieces[at], 'aux')) return false;
  // "Could you put the milk away" bids; "would you trust the milk" asks.
  if (is(pieces[at], 'may') && is(pieces[at + 1], 'you') && !judges(pieces)) return false;
  const next = pieces.slice(at + 1).find((piece) => !(is(piece, 'small') && !is(piece, 'subject', 'it')));
  return (
    next !== undefined &&
    (next.kind === 'thing' ||
      next.kind === 'person' ||
      is(
        next,
        'it',
        'those',
        'both',
        'subject',
        'other',
        'any',
        'note-verb',
        'take-off',
        'everybody',
        'coeliac',
      ) ||
      // "Would a vegan eat it".
      isDiet(next))
  );
};

/** "The salmon, it can wait until Sunday", "reckon the ham is fit to eat": what nobody can tell. */
const reckons = (pieces: readonly Piece[]): boolean => {
  const first = pieces.find((piece) => !leadsIn(piece));
  return (
    pieces.some((piece, at) => is(piece, 'last') && is(pieces[at - 1], 'aux')) ||
    (is(first, 'reckon') && judges(pieces))
  );
};

/** "Tell me the butter is not on the counter", "check if the ham is fit": whether it is. */
const bidsTell = (pieces: readonly Piece[]): boolean => {
  const from = pieces.findIndex((piece) => !leadsIn(piece) || is(piece, 'tell-whether'));
  return is(pieces[from], 'tell-whether') && pieces.slice(from + 1).some(({ kind }) => kind === 'thing');
};

/** "On which shelf does it stand", after whatever: a head, and at once a verb before who it is said of. */
const asksWithin = (pieces: readonly Piece[]): boolean =>
  pieces.some(
    (piece, at) =>
      is(piece, 'where', 'side', 'when', 'how-long', 'how-many', 'how-old', 'whose', 'how') &&
      verbFirst(pieces, at + 1),
  );

/** "The sausages and that ham, are they all right still": a verb at once before who it is said of, after a pause. */
const asksParted = (pieces: readonly Piece[]): boolean =>
  pieces.some(
    (piece, at) =>
      piece.parted === true &&
      verbFirst(pieces, at) &&
      pieces.slice(0, at).some(({ kind }) => kind === 'thing') &&
      is(pieces[at + 1], 'it', 'those', 'both'),
  );

/** "Small jar, nothing on the lid, what have I got": described first, and asked at the end. */
const asksAtEnd = (pieces: readonly Piece[]): boolean => {
  const at = pieces.findLastIndex((piece) => is(piece, 'what', 'which-one'));
  const rest = pieces.slice(at + 1);
  return (
    at > 0 &&
    rest.length <= 3 &&
    pieces.slice(0, at).some(({ kind }) => kind === 'felt') &&
    rest.every((piece) =>
      is(piece, 'small', 'whether', 'it', 'me', 'have', 'subject', 'in-hand', 'filler', 'aux'),
    )
  );
};

/** Put so that it can be nothing but a question, whatever else the words could tell. */
export const isOutright = (pieces: readonly Piece[]): boolean => {
  const from = pieces.findIndex(
    (piece, at) => !leadsIn(piece) || is(piece, ...outrightHeads) || verbFirst(pieces, at),
  );
  const first = pieces[from];
  // "Butter where the eggs are" says where it is; "the butter, where is it" asks.
  const leads = pieces.slice(0, from).some(({ kind }) => kind === 'thing');
  const next = pieces.slice(from + 1).find((piece) => !is(piece, 'small') || is(piece, 'subject'));
  const within = next?.kind === 'thing' || next?.kind === 'person' || is(next, 'subject');
  const heads = is(first, ...outrightHeads) && !(leads && within);
  const asksLater =
    asksWithin(pieces) || asksParted(pieces) || asksAtEnd(pieces) || bidsTell(pieces) || reckons(pieces);
  return heads || verbFirst(pieces, from) || asksLater || is(pieces.at(-1), ...outrightHeads);
};

/** Heads that begin a question in the midst of talk. */
const strongHeads = ['where', 'side', 'how-long', 'how-many', 'how-old', 'who', 'whose'] as const;

/** "I've lost my train of thought, where was it we put …": where the question begins after what is no part of it. */
export const asideUntil = (pieces: readonly Piece[]): number => {
  const at = pieces.findIndex((piece) => is(piece, ...strongHeads));
  const before = pieces.slice(0, Math.max(0, at));
  const says = before.some(({ kind }) => kind !== 'words' && kind !== 'unknown' && kind !== 'person');
  return says ? 0 : before.length;
};

export type Asking = 'open' | 'whether' | 'not';

/** Whether it is a question at all, and one that yes or no answers. */
export const askingIn = (pieces: readonly Piece[]): Asking => {
  if (pieces.some((piece) => is(piece, ...heads))) return 'open';
  if (isOutright(pieces)) return 'whether';
  const tag =
    pieces.slice(-2).some((piece) => is(piece, 'tag')) || (pieces.length > 3 && is(pieces.at(-1), 'yes'));
  if (tag || pieces.some((_piece, at) => inverted(pieces, at))) return 'whether';
  return 'not';
};

/** "When did they go in and are they still good": what stands after "and" and a question's first word is the next question. */
const questionsIn = (pieces: readonly Piece[]): ReadonlyMap<Piece, number> => {
  const at = new Map<Piece, number>();
  let question = 0;
  pieces.forEach((piece, index) => {
    if (is(pieces[index - 1], 'and') && index > 1 && (is(piece, ...heads) || verbFirst(pieces, index)))
      question += 1;
    at.set(piece, question);
  });
  return at;
};

/** The attributes asked, in the order they are said, and the pieces that asked them. */
export const attributesIn = (
  pieces: readonly Piece[],
  wordings: Wordings,
  asking: Asking,
): { readonly asks: readonly Attribute[]; readonly by: ReadonlySet<Piece> } => {
  const free = new Set(pieces.filter((piece): piece is Words => piece.kind === 'words'));
  const found: { ask: Attribute; at: number; of: readonly Words[] }[] = [];
  const questions = questionsIn(pieces);
  for (const { ask, of } of wordings.asks) {
    for (;;) {
      const taken: Words[] = [];
      for (const name of of) {
        const next = [...free].find(
          (piece) =>
            piece.classes.has(name) &&
            !taken.includes(piece) &&
            (taken.length === 0 || questions.get(piece) === questions.get(taken[0]!)),
        );
        if (next) taken.push(next);
      }
      if (taken.length < of.length || (of.includes('whether') && asking !== 'whether')) break;
      for (const piece of taken) free.delete(piece);
      found.push({ ask, at: Math.min(...taken.map(({ from }) => from)), of: taken });
    }
  }
  // "What" and "which" ask for the things only where nothing else is asked of them.
  const strong = found.filter(({ ask }) => ask !== 'what' && ask !== 'which');
  const kept = strong.length > 0 ? strong : found;
  const inOrder = [...kept].sort((a, b) => a.at - b.at);
  return {
    asks: [...new Set(inOrder.map(({ ask }) => ask))],
    by: new Set(inOrder.flatMap(({ of }) => of)),
  };
};
