/** People: who did it, who made it, whose it is, who it is not for. */
import type { Chunk, ChunkOf } from '../api.js';
import { type Telling, implied, is, nextMeaning, paused, use } from './telling.js';

const deedsOfPeople = [
  'deed:made',
  'deed:took',
  'deed:finished',
  'deed:given-in',
  'deed:bought',
  'deed:opened',
  'deed:threw',
  'deed:froze',
  'deed:stored',
] as const;

/** "Aunt Bea's made us a pudding": "has", whatever the recogniser wrote. */
const doingAt = ({ chunks }: Telling, at: number): number => {
  let next = at + 1;
  while (is(chunks[next], 'is', 'has', 'fill', 'who') && !is(chunks[next], ...deedsOfPeople)) next += 1;
  return next;
};

const isPossessive = ({ tokens, lexicon }: Telling, { to }: Chunk): boolean =>
  lexicon.clitics.some(([ending]) => tokens[to - 1]!.endsWith(ending));

/** "Amara's after dropping over a pie": her name, without the verb that hangs on it. */
const nameIn = ({ lexicon }: Telling, { words }: ChunkOf<'person'>): string => {
  const ending = lexicon.clitics.find(([one]) => words.endsWith(one));
  return ending ? words.slice(0, -ending[0].length) : words;
};

/** "Junie and I had", "Sam, Junie and Theo ate": how many did it, and where the verb stands. */
const doersFrom = (
  { chunks }: Telling,
  at: number,
): { readonly count: number; readonly to: number } | null => {
  let count = 1;
  let next = at + 1;
  for (;;) {
    const joins = is(chunks[next], 'and');
    const who = chunks[joins ? next + 1 : next];
    // "And I had": she who speaks is said with the verb.
    if (joins && is(who, 'i') && is(who, ...eaten)) return { count: count + 1, to: next + 1 };
    if (joins && is(who, 'i') && is(chunks[next + 2], ...eaten)) return { count: count + 1, to: next + 2 };
    if (who?.kind !== 'person' || (!joins && count > mostDoers)) break;
    count += 1;
    next = joins ? next + 2 : next + 1;
  }
  return count > 1 && is(chunks[next], ...eaten) ? { count, to: next } : null;
};
const eaten = ['deed:took', 'deed:finished', 'deed:opened', 'deed:threw'] as const;
const mostDoers = 6;

/** Where the person plays no part in what is told, the words are left over. */
export const takePerson = (t: Telling, chunk: ChunkOf<'person'>, at: number): number | null => {
  const { chunks } = t;
  // "Dolores says there's a meatloaf": whoever tells of her own kitchen, by whoever's mouth.
  if (t.drafts.length === 0 && is(chunks[at + 1], 'tells-us')) {
    use(t, chunk);
    use(t, chunks[at + 1]!);
    return at + 1;
  }
  if (t.deed === 'made' && t.drafts.length === 0 && !is(chunks[at - 1], 'by')) {
    use(t, chunk);
    t.owner = { words: chunk.words, candidates: chunk.candidates };
    return at;
  }
  if (is(chunks[at + 1], 'no-have')) {
    use(t, chunk);
    return at;
  }
  const joined = doersFrom(t, at);
  if (joined) {
    for (let step = at; step < joined.to; step += 1) use(t, chunks[step]!);
    t.doers = joined.count;
    // All of them, and so nobody by himself.
    const last = chunks[joined.to - 1]!;
    const named = t.tokens.slice(chunk.from, last.to).join(' ');
    t.subject = last.kind === 'person' ? named : `${named} me`;
    return joined.to - 1;
  }
  const doing = doingAt(t, at);
  const next = chunks[at + 1];
  // "Sam made it, no hang on, it was Dele".
  const maker = t.group.at(-1)?.maker;
  if (t.repaired && maker !== undefined && !is(chunks[doing], ...deedsOfPeople)) {
    use(t, chunk);
    for (const draft of t.group) if (draft.maker === maker) draft.maker = nameIn(t, chunk);
    t.repaired = false;
    return at;
  }
  // "That's Theo's": whose it is.
  if (isPossessive(t, chunk) && next?.kind !== 'thing' && !is(chunks[doing], ...deedsOfPeople)) {
    use(t, chunk);
    for (const draft of implied(t)) draft.owner = { words: chunk.words, candidates: chunk.candidates };
    t.inRun = false;
    return at;
  }
  if (!is(chunks[doing], ...deedsOfPeople)) return receives(t, chunk, at) ?? atTable(t, chunk, at);
  for (let step = at; step < doing; step += 1) use(t, chunks[step]!);
  t.subject = nameIn(t, chunk);
  t.maker = undefined;
  t.repaired = false;
  return doing - 1;
};

/** "I gave Bea two jars", "sent two jars home with Bea": whom it went to, which nothing is recorded of. */
const receives = (t: Telling, chunk: ChunkOf<'person'>, at: number): number | null => {
  const last = t.drafts.at(-1);
  const gives = [t.deed, t.or, last?.deed, last?.or].includes('gave');
  const led = is(t.chunks[at - 1], 'direction', 'with', 'for', 'and');
  if (!gives || !(last === undefined || led)) return null;
  use(t, chunk);
  if (led) use(t, t.chunks[at - 1]!);
  // "Sam gave Bea the salami": it came from nobody. "Bea gave Sam a pie" did.
  if (last === undefined && ofHers(t, at)) t.maker = undefined;
  return at;
};
const ofHers = (t: Telling, at: number): boolean => {
  const next = t.chunks[nextMeaning(t, at)];
  const counted = next?.kind === 'amount' || next?.kind === 'number' || next?.kind === 'share';
  return is(t.chunks[at + 1], 'definite') || counted || next?.kind === 'pointer';
};

/** "I ate it with Peter", "we had the rice, Peter and me": who else ate, which nothing is recorded of. */
const atTable = (t: Telling, chunk: ChunkOf<'person'>, at: number): number | null => {
  const { chunks } = t;
  const eaten = ['took', 'finished'].includes(t.drafts.at(-1)?.deed ?? '') || t.deed === 'took';
  const beside = is(chunks[at - 1], 'with') || paused(t, chunk) || is(chunks[at - 1], 'and');
  if (!eaten || !beside || (chunk.candidates[0]?.fit ?? 0) < surelyThem) return null;
  use(t, chunk);
  return at;
};
const surelyThem = 0.9;

const personAt = (t: Telling, at: number): { person: ChunkOf<'person'>; at: number } | null => {
  const next = nextMeaning(t, at);
  const chunk: Chunk | undefined = t.chunks[next];
  return chunk?.kind === 'person' ? { person: chunk, at: next } : null;
};

/** "For Theo": whose it is; said before its name, of what is named next. */
export const takeOwner = (t: Telling, chunk: Chunk, at: number): number => {
  const { person, at: to } = personAt(t, at)!;
  use(t, chunk);
  use(t, person);
  const owner = { words: person.words, candidates: person.candidates };
  if (t.drafts.length === 0 || onlyPointed(t)) t.owner = owner;
  if (t.drafts.length > 0) for (const draft of implied(t)) draft.owner = owner;
  return to;
};

/** "This is for Junie, the sorbet": what it is is said after. */
const onlyPointed = ({ drafts }: Telling): boolean =>
  drafts.length === 1 && drafts[0]!.thing?.words === null && drafts[0]!.thing.pointer !== null;

export const takeMaker = (t: Telling, chunk: Chunk, at: number): number => {
  const { person, at: to } = personAt(t, at)!;
  use(t, chunk);
  use(t, person);
  for (const draft of implied(t)) draft.maker = person.words;
  if (is(chunk, 'made-by')) t.dateKind = 'made';
  return to;
};
