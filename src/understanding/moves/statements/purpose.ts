/** "For tomorrow", "for Sam's lunch", "for the picnic": what food is kept for, which is a note of it. */
import type { Chunk, ChunkOf } from '../api.js';
import type { Deed } from '../../intents.js';
import type { Draft } from '../draft.js';
import { pointed } from '../../meaning-parts.js';
import { type Telling, begin, implied, is, nextMeaning, paused, use } from './telling.js';

interface Purpose {
  /** The last of its chunks. */
  readonly at: number;
  readonly person: ChunkOf<'person'> | null;
  /** As it was said, without whose it is. */
  readonly words: string;
}

/** So many words of an occasion stand there; they end with a chunk. */
const occasionAt = ({ chunks, tokens, lexicon }: Telling, at: number): number | null => {
  const from = chunks[at]?.from;
  const length = from === undefined ? 0 : lexicon.occasionAt(tokens, from);
  const to = length === 0 ? -1 : chunks.findIndex((chunk) => chunk.to === from! + length);
  return to < 0 ? null : to;
};

/** What the word for "for" leads to, where that is when or for whose meal it will be eaten. */
export const purposeAt = (t: Telling, chunk: Chunk, at: number): Purpose | null => {
  const { chunks, tokens } = t;
  const next = nextMeaning(t, at);
  const whose = chunks[next]?.kind === 'person' ? next : null;
  for (const start of new Set([at + 1, next, ...(whose === null ? [] : [nextMeaning(t, whose)])])) {
    const to = occasionAt(t, start) ?? (chunks[start]?.kind === 'day' && whose === null ? start : null);
    if (to === null) continue;
    const said = tokens.slice(chunks[start]!.from, chunks[to]!.to);
    const lead = tokens.slice(chunk.from, chunk.to);
    const person = start > next && whose !== null ? (chunks[whose] as ChunkOf<'person'>) : null;
    return { at: to, person, words: [...lead.slice(-1), ...said].join(' ') };
  }
  return null;
};

/** Of what is used up, when it was eaten is told by the day. */
const isKept = (deed: Deed | null): boolean =>
  deed === null ||
  ['listed', 'stored', 'made', 'bought', 'given-in', 'froze', 'moved', 'fact', 'thawing'].includes(deed);

/** "A cabbage for the slaw": what it goes into; null where that is no dish that is named as known. */
export const dishFor = (t: Telling, chunk: Chunk, at: number): Purpose | null => {
  const { chunks, tokens } = t;
  const dish = chunks[at + 2];
  const before = chunks[at - 1];
  if (!is(chunks[at + 1], 'definite') || dish?.kind !== 'thing' || before?.kind !== 'thing') return null;
  const draft = t.drafts.at(-1);
  if (!draft || (draft.deed !== 'listed' && draft.deed !== 'bought') || paused(t, chunk)) return null;
  return { at: at + 2, person: null, words: tokens.slice(chunk.from, dish.to).join(' ') };
};

/** Kept as a note of what is talked of; of a part ("two in the fridge for this week") there is none. */
const note = (t: Telling, words: string, ofLast = false): readonly Draft[] => {
  t.inRun = false;
  if (t.drafts.length === 0) return [];
  const meant = ofLast ? t.drafts.slice(-1) : implied(t);
  const kept = meant.filter(({ deed, parts }) => isKept(deed) && parts.length === 0);
  for (const draft of kept) draft.notes.push(words);
  return kept;
};

export const takePurpose = (t: Telling, { at, person, words }: Purpose, from: number): number => {
  for (let step = from; step <= at; step += 1) use(t, t.chunks[step]!);
  // What goes on the list is one thing after the other, each for itself.
  const ofLast = person === null && t.drafts.at(-1)?.deed === 'listed';
  for (const draft of note(t, words, ofLast))
    if (person) draft.owner ??= { words: person.words, candidates: person.candidates };
  return at;
};

/** The last chunk of the stretch that begins there. */
const stretchTo = (t: Telling, at: number): number => {
  let to = at;
  while (t.chunks[to + 1] && !paused(t, t.chunks[to + 1]) && !is(t.chunks[to + 1], 'and', 'but', 'so'))
    to += 1;
  return to;
};
const longestFuture = 3;

/** "I'll finish that tonight": where what is yet to be done ends; null where it is said as done. */
export const planTo = (t: Telling, chunk: Chunk, at: number): number | null => {
  const { tokens, lexicon, chunks } = t;
  const before = Array.from({ length: longestFuture }, (_, less) =>
    tokens.slice(Math.max(0, chunk.from - less - 1), chunk.from).join(' '),
  );
  // "We are having it Saturday" says it in the verb itself.
  const own = Array.from({ length: chunk.to - chunk.from }, (_, less) =>
    tokens.slice(chunk.from + less, chunk.to).join(' '),
  );
  if (![...before, ...own].some((words) => lexicon.isFuture(words))) return null;
  const to = stretchTo(t, at);
  const end = chunks[to]!.to;
  for (let from = chunk.to; from < end; from += 1) if (lexicon.occasionAt(tokens, from) > 0) return to;
  return null;
};

/** What somebody means to do with it later is a note of it, and nothing that was done. */
export const takePlan = (t: Telling, chunk: Chunk, at: number, to: number): number => {
  const own = t.chunks.slice(at, to + 1);
  for (const part of own) use(t, part);
  const named = own.find((part) => part.kind === 'thing');
  const group =
    named?.kind === 'thing'
      ? [begin(t, named.mention, { definite: true })]
      : t.drafts.length > 0
        ? t.group.length > 0
          ? t.group
          : t.drafts.slice(-1)
        : [begin(t, pointed('it'), { definite: true })];
  // "Finish that tonight" is kept as "finish tonight": of what, the record says.
  const words = own
    .filter((part) => part !== named && part.kind !== 'pointer' && !is(part, 'definite'))
    .map((part) => t.tokens.slice(part.from, part.to).join(' '))
    .join(' ');
  for (const draft of group) {
    draft.deed ??= 'fact';
    draft.notes.push(words);
  }
  t.group = t.run = [...group];
  t.inRun = false;
  t.deed = t.or = null;
  return to;
};

/** "For tonight" may be heard as one day: whether a purpose, and no date, is said by it. */
export const isPurpose = ({ lexicon, tokens, dateKind }: Telling, { from }: ChunkOf<'day'>): boolean =>
  dateKind === null && lexicon.phrases.longestAt([tokens[from]!], 0)?.value.has('for') === true;

export const takePurposeDay = (t: Telling, chunk: ChunkOf<'day'>): void => {
  use(t, chunk);
  note(t, t.tokens.slice(chunk.from, chunk.to).join(' '));
};
