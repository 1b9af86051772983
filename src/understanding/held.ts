/** Everything that stands in a meaning, and which constituents of what was said do. */
import {
  ASKING_INTENTS,
  type Act,
  type ClockAtHand,
  type Intent,
  type Mention,
  type Understanding,
} from './intents.js';
import type { Chunk } from './moves/api.js';

export interface Held {
  readonly words: Set<string>;
  readonly numbers: Set<number>;
  /** Names of the parts of it that are there: "touch", "dates", "share". */
  readonly roles: Set<string>;
}

export const bare = (word: string): string => word.replace(/[,;.!?]+$/u, '').replace(/['’]s$/u, '');

export const gather = (value: unknown, into: Held): Held => {
  if (typeof value === 'number') into.numbers.add(value);
  else if (typeof value === 'string')
    for (const word of value.split(/[^\p{L}\p{M}\p{N}'’]+|(?<=\p{Ll})(?=\p{Lu})/u))
      into.words.add(bare(word.toLowerCase()));
  else if (Array.isArray(value)) for (const part of value) gather(part, into);
  else if (typeof value === 'object' && value !== null)
    for (const [role, part] of Object.entries(value)) {
      // Records a name may mean are no more than the name; words left over are named already, and count as held.
      if (role === 'candidates' || part === null || part === undefined) continue;
      into.roles.add(role);
      // "nuts: true" holds the nuts.
      into.words.add(role.toLowerCase());
      gather(part, into);
    }
  return into;
};

export const heldInActs = (acts: readonly Act[]): Held =>
  gather(
    acts.map(({ intent, slots }) => ({ intent, slots })),
    { words: new Set(), numbers: new Set(), roles: new Set() },
  );

export const hasRole = ({ roles }: Held, ...names: readonly string[]): boolean =>
  names.some((name) => roles.has(name));

/** A name of hers, of a place or of a person that fits less may be none. */
export const surely = 0.9;

/** More than a word for a shape: "going round" is no marker. */
const isFelt = ({ touch, candidates }: Mention): boolean =>
  Object.keys(touch ?? {}).length > 1 || (candidates[0]?.fit ?? 0) >= surely;

/** Of this kitchen, for certain, and no part of the meaning. */
const isPassedOver = (chunk: Chunk, said: readonly string[], held: Held): boolean => {
  if (said.some((word) => held.words.has(bare(word)))) return false;
  switch (chunk.kind) {
    case 'thing':
      return chunk.source === 'hers' ? chunk.fit >= surely : chunk.source === 'food';
    case 'place':
      return chunk.fit >= surely && !hasRole(held, 'place', 'from', 'spot', 'beside', 'places');
    case 'person':
      return (
        (chunk.candidates[0]?.fit ?? 0) >= surely &&
        !hasRole(held, 'person', 'maker', 'owner', 'eaters', 'by')
      );
    case 'marker':
      return isFelt(chunk.mention) && !hasRole(held, 'touch', 'marker', 'container');
    case 'amount':
      return (
        chunk.amount.value !== 1 &&
        !held.numbers.has(chunk.amount.value) &&
        !hasRole(held, 'share', 'left', 'parts', 'duration', 'time', 'degrees')
      );
    default:
      return false;
  }
};

/** How many constituents of the words have no place in what was understood of them. */
export const passedOver = (...given: Parameters<typeof passedChunks>): number =>
  passedChunks(...given).length;

/** The constituents of the words that have no place in what was understood of them. */
export const passedChunks = (
  { verdict, readings: [best], question, settles }: Understanding,
  chunks: readonly Chunk[],
  tokens: readonly string[],
  clocks: readonly ClockAtHand[] = [],
): readonly Chunk[] => {
  // What is done with it holds it, or what is asked: not one for the other.
  const isDone = verdict === 'act' || verdict === 'confirm';
  const all: readonly (readonly Act[])[] = settles
    ? [[...(settles.rest.readings[0]?.acts ?? []), ...(settles.rest.question?.acts ?? [])]]
    : isDone && best
      ? // Of two that ask, the one that holds more is answered.
        [best.acts, ...(question && best.acts.every(({ intent }) => asks.has(intent)) ? [question.acts] : [])]
      : [question?.acts ?? []];
  return all
    .map((acts) => notIn(acts, settles?.narrows ?? null, chunks, tokens, clocks))
    .reduce((fewest, one) => (one.length < fewest.length ? one : fewest));
};

const asks: ReadonlySet<Intent> = new Set<Intent>(ASKING_INTENTS);

const notIn = (
  acts: readonly Act[],
  narrows: unknown,
  chunks: readonly Chunk[],
  tokens: readonly string[],
  clocks: readonly ClockAtHand[],
): readonly Chunk[] => {
  const held = gather(narrows, heldInActs(acts));
  // What food that lay out is put into is settled by how long it lay there; guidance has its facts for one food.
  const does = (...intents: readonly Intent[]): boolean =>
    acts.some(({ intent }) => intents.includes(intent));
  const ofGuidance = does('guidance');
  const ofClocks = does('set-timer', 'change-timer', 'cancel-timer', 'timers');
  if (ofGuidance || ofClocks || does('left-out')) held.roles.add('place');
  // "The stew's here, got the bead on": how it was told, in a check.
  if (acts.some(({ slots }) => slots.findings)) for (const role of ['marker', 'person']) held.roles.add(role);
  // "But leave me the beans": another that runs is left as it is.
  if (ofClocks) gather(clocks, held);
  const passed = chunks.filter((chunk) => isPassedOver(chunk, tokens.slice(chunk.from, chunk.to), held));
  const own = ofGuidance ? passed.find(({ kind }) => kind === 'thing') : undefined;
  return passed.filter((chunk) => chunk !== own);
};
