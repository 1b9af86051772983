/** Words by what they do, in the order they are tried: the first rule that fits takes the word. */
import { position, setPlace, sharedAt, takePlace } from './places.js';
import { takeDeed, takeIs, takeState, takesState } from './deeds.js';
import { takeMaker, takeOwner } from './people.js';
import { pointed } from '../../meaning-parts.js';
import type { Deed, PlaceMention } from '../../intents.js';
import type { Chunk, ChunkOf } from '../api.js';
import type { Draft } from '../draft.js';
import { dishFor, purposeAt, takePurpose } from './purpose.js';
import { isContents, lacksNext, mendsContents, usedWholly } from './things.js';
import {
  type Telling,
  type Word,
  begin,
  dateKindIn,
  deedIn,
  deedsIn,
  implied,
  is,
  isGone,
  lastOf,
  leave,
  nextMeaning,
  paused,
  sameThing,
  stateIn,
  use,
  weak,
} from './telling.js';

/** One word, where it stands, and what comes next that says something. */
interface Here {
  readonly t: Telling;
  readonly chunk: Word;
  readonly at: number;
  readonly nextAt: number;
}
interface Rule {
  readonly when: (here: Here) => boolean;
  /** The last chunk taken; null where the sentence tells nothing. */
  readonly take: (here: Here) => number | null;
}

const nextOf = ({ t, nextAt }: Here) => t.chunks[nextAt];
const first = ({ t }: Here): boolean => t.drafts.length === 0 && t.deed === null && t.used.size === 0;
const afterDay = ({ t, at }: Here): boolean => {
  let next = nextMeaning(t, at);
  // "The use by on it is the twenty-first".
  while (is(t.chunks[next], 'on-it', 'is', 'prep') && !is(t.chunks[next], 'and')) {
    const led = is(t.chunks[next], 'prep');
    next = nextMeaning(t, next);
    // "The use by on the bacon is the twenty-first".
    if (led && t.chunks[next]?.kind === 'thing') next = nextMeaning(t, next);
  }
  return t.chunks[next]?.kind === 'day';
};

/** "Wants the dish back", "would like it back": where that ends; -1 where nothing is to go back. */
const wantsBackTo = ({ t, chunk, at }: Here): number => {
  if (!is(chunk, 'wants') || t.drafts.length === 0) return -1;
  const to = t.chunks.findIndex((one, step) => step > at && is(one, 'back'));
  const within = t.chunks.slice(at + 1, to + 1);
  return to > at && to - at <= 4 && !within.some((one) => paused(t, one)) ? to : -1;
};

/** "The stew what I made", "the beans what Peter cooked": "what" for "that". */
const isRelativeWhat = ({ t, chunk, at }: Here): boolean => {
  if (!is(chunk, 'wh') || t.chunks[at - 1]?.kind !== 'thing' || paused(t, chunk)) return false;
  const subject = t.chunks[at + 1];
  const who = is(subject, 'i', 'they') || subject?.kind === 'person';
  const does = t.chunks[who ? nextMeaning(t, at + 1) : at + 1];
  return does?.kind === 'word' && deedIn(does) !== null && !is(does, 'opens-question', 'aux');
};

/** A question head makes a question of it, wherever it stands. */
const asks = (here: Here): boolean => {
  const { t, chunk, at } = here;
  // "Any fish in the freezer" is no fish put there.
  if (is(chunk, 'any')) return first(here);
  // "Is raw carrot healthy", "do ducks eat meat": a verb before everything asks.
  if (at === 0 && is(chunk, 'opens-question') && !is(chunk, 'each')) return true;
  if (is(chunk, 'may')) return nextOf(here)?.kind === 'person' || nextOf(here)?.kind === 'pointer';
  if (is(chunk, 'command'))
    return first(here) && !deedIn(chunk) && !is(chunk, 'repair', 'fill') && renamedAt(here) === null;
  const before = t.chunks[at - 1];
  if (is(chunk, 'aux')) {
    // "Paneer is there, two packets"; but "is there still one left?".
    const some = is(t.chunks[at + 1], 'fill', 'a');
    const subject = before?.kind === 'pointer' || (before?.kind === 'thing' && is(chunk, 'there') && !some);
    return !(subject && is(chunk, 'is', 'there'));
  }
  if (is(chunk, 'wh'))
    return !(
      (t.drafts.length > 0 && (is(chunk, 'that') || isThere(here))) ||
      (is(chunk, 'who') && before?.kind === 'person')
    );
  return is(chunk, 'is the') && first(here);
};

const surelyHers = 0.7;
/** "Call it stewed plums", "rename the stewed something to plums": what is called so, and where its new name stands. */
const renamedAt = ({
  t,
  chunk,
  at,
}: Here): { readonly what: number | null; readonly name: number } | null => {
  if (!is(chunk, 'renames', 'called')) return null;
  const next = nextMeaning(t, at);
  const named = t.chunks[next];
  // "It is really called rendang": of what was pointed at.
  if (is(chunk, 'called'))
    return named?.kind === 'thing' && t.group.length === 1 && isHers(t.group[0]!.thing)
      ? { what: null, name: next }
      : null;
  if (named?.kind !== 'pointer' && !(named?.kind === 'thing' && named.fit >= surelyHers)) return null;
  let name = nextMeaning(t, next);
  while (is(t.chunks[name], 'direction', 'a', 'prep')) name = nextMeaning(t, name);
  return t.chunks[name]?.kind === 'thing' ? { what: next, name } : null;
};
const isHers = (thing: Draft['thing']): boolean =>
  thing !== null && (thing.words === null || (thing.candidates[0]?.fit ?? 0) >= surelyHers);

const rename = (here: Here): number => {
  const { t, at } = here;
  const { what, name: begins } = renamedAt(here)!;
  // "Barley pot": a pot may be a thing by itself.
  let name = begins;
  while (t.chunks[name + 1]?.kind === 'thing' && !paused(t, t.chunks[name + 1])) name += 1;
  const named = what === null ? null : t.chunks[what]!;
  for (let step = at; step <= name; step += 1) use(t, t.chunks[step]!);
  const draft =
    named?.kind === 'pointer' || named?.kind === 'thing'
      ? begin(t, named.mention, { definite: true })
      : t.group[0]!;
  draft.name = t.tokens.slice(t.chunks[begins]!.from, t.chunks[name]!.to).join(' ');
  t.group = t.run = [draft];
  t.deed = null;
  t.inRun = false;
  return name;
};

/** "No, not the chocolate": both in one. */
const endsInNot = ({ t, chunk }: Here): boolean =>
  is(chunk, 'repair') &&
  chunk.to - chunk.from > 1 &&
  t.lexicon.phrases.longestAt([t.tokens[chunk.to - 1]!], 0)?.value.has('not') === true;

/** The thing of this sentence that "not" takes out again; -1 where there is none. */
const takenOut = (here: Here): number => {
  const { t, at } = here;
  const next = nextOf(here);
  const back = t.repaired || is(t.chunks[at - 1], 'repair') || endsInNot(here);
  if (next?.kind !== 'thing' || t.drafts.length < 2 || !back) return -1;
  return t.drafts.findIndex((draft) => sameThing(next.mention, draft.thing));
};

/** What something is denied of, where what became of it is said right after; null where it is not. */
const deniedFor = ({ t, chunk, at, nextAt }: Here): { thing: ChunkOf<'thing'>; to: number } | null => {
  const [before, next] = [t.chunks[at - 1], t.chunks[nextAt]];
  if (!is(chunk, 'not') || t.drafts.length === 0) return null;
  const follows = (from: number): boolean => {
    const to = nextMeaning(t, from);
    const who = is(t.chunks[from + 1], 'that') || t.chunks[from + 1]?.kind === 'pointer' ? from + 1 : from;
    const subject = t.chunks[nextMeaning(t, who)];
    const said = is(subject, 'i') ? t.chunks[nextMeaning(t, nextMeaning(t, who))] : t.chunks[to];
    return said?.kind === 'word' && deedsIn(said).some((deed) => !weak.has(deed));
  };
  if (next?.kind === 'thing') return follows(nextAt) ? { thing: next, to: nextAt } : null;
  const parted = t.chunks[at + 1] === undefined || paused(t, t.chunks[at + 1]);
  return before?.kind === 'thing' && parted && follows(at) ? { thing: before, to: at } : null;
};

/** "There is no ice cream": none, right after a verb of being somewhere; "no added salt" is what food lacks. */
const saysNone = (here: Here): boolean => {
  const { t, chunk, at, nextAt } = here;
  const before = t.chunks[at - 1];
  return (
    is(chunk, 'without') &&
    is(before, 'deed:stored') &&
    before!.to - before!.from > 1 &&
    !paused(t, chunk) &&
    nextOf(here)?.kind === 'thing' &&
    !lacksNext(t, nextAt)
  );
};

/** "Not for my sister", "not for Theo": where the words of whom it is not for end; null where no person is named. */
const notForTo = ({ t, at }: Here): number | null => {
  const { chunks } = t;
  if (!is(chunks[at + 1], 'for')) return null;
  let to = at + 1;
  let person = false;
  for (let next = at + 2; next < chunks.length; next += 1) {
    const chunk = chunks[next]!;
    if (paused(t, chunk) || is(chunk, 'and', 'so', 'but', 'is', 'has', 'prep')) break;
    const theirs = chunk.kind === 'unknown' || (chunk.kind === 'thing' && chunk.source === 'open');
    const whose = is(chunks[next - 1], 'definite') && (theirs || is(chunk, 'nameless', 'they'));
    if (chunk.kind === 'person' || whose) person = true;
    else if (!is(chunk, 'definite', 'a')) break;
    to = next;
  }
  return person ? to : null;
};

/** Foods one after the other, bare: "oats and butter". */
const isFoodList = ({ chunks }: Telling, at: number): boolean => {
  const last = is(chunks[at + 1], 'and') ? chunks[at + 2] : chunks[at + 1];
  return chunks[at]?.kind === 'thing' && last?.kind === 'thing';
};

/** Where a sentence that denies turns to what is so: "so", "but". Null where it does not. */
const turnsAt = ({ t, at }: Here): number | null => {
  const turn = t.chunks.findIndex(
    (chunk, step) => step > at && is(chunk, 'so', 'but', 'instead') && !is(chunk, 'because'),
  );
  if (turn < 0 || turn >= t.chunks.length - 1) return null;
  return is(t.chunks[turn], 'instead') ? turn - 1 : turn;
};

const takeBack = (t: Telling, { from, to }: Chunk): void => {
  for (let at = t.left.length - 1; at >= 0; at -= 1)
    if (t.left[at]! >= from && t.left[at]! < to) t.used.add(t.left.splice(at, 1)[0]!);
};

/** What was just said to be left, of what was told of. */
const remains = ({ t, at, nextAt }: Here): Draft | null => {
  const before = t.chunks[at - 1];
  const draft = t.group.at(-1) ?? t.drafts.at(-1);
  const counted =
    before?.kind === 'amount' ||
    before?.kind === 'number' ||
    before?.kind === 'share' ||
    // "One portion of soup left": of what was just counted.
    (before?.kind === 'thing' &&
      before.mention === draft?.thing &&
      (draft.deed === null || weak.has(draft.deed)));
  if (!counted || !draft || (draft.amount === undefined && draft.share === undefined)) return null;
  return t.chunks[nextAt]?.kind === 'place' ? null : draft;
};

/** What a spot is the spot of: the last thing told of that has a place. */
const spotted = (t: Telling) => [...t.group, ...t.drafts].reverse().find(({ place }) => place?.words);

/** The place something stands beside: that of a thing of this sentence, else of one on record. */
const besideWhat = (here: Here): PlaceMention | null => {
  const { t } = here;
  const next = nextOf(here);
  if (next?.kind === 'pointer') return t.drafts.findLast(({ place }) => place !== undefined)?.place ?? null;
  if (next?.kind !== 'thing') return null;
  const told = t.drafts.find((draft) => sameThing(next.mention, draft.thing));
  if (told?.place) return told.place;
  if (next.mention.candidates.length === 0) return null;
  return { words: null, candidates: [], pointer: null, spot: null, beside: next.mention };
};

/** "On the shelf where also the pickles stand". */
const isThere = ({ t, chunk, at }: Here): boolean => is(chunk, 'there') && t.chunks[at - 1]?.kind === 'place';

/** "Pint", "tub": what an amount is counted in, and nothing to eat. */
const isUnit = ({ tokens, rules, lexicon }: Telling, { from, to }: Chunk): boolean =>
  to - from === 1 &&
  lexicon.one !== null &&
  (rules.get('builtin:grammar/amount')?.matchesAt([lexicon.one, tokens[from]!], 0) ?? []).some(
    ({ length }) => length === 2,
  );

/** No slip taken back: it opens what is told, or is said to be there. */
const isOn = ({ t, at, nextAt }: Here): boolean => {
  const before = t.chunks[at - 1];
  const ends = t.tokens[t.chunks[nextAt]!.to - 1] ?? '';
  const after = t.chunks[nextMeaning(t, nextAt)];
  return (
    (is(before, 'deed:stored', 'has', 'is') || before === undefined || paused(t, t.chunks[at])) &&
    (is(before, 'deed:stored', 'has') || is(after, 'on-it', 'prep') || ends === 'it')
  );
};

/** "The other one", with nothing after it that it is the other one of. */
const pointsToOther = (t: Telling, chunk: Word, at: number): boolean => {
  const said = t.lexicon.phrases.longestAt(t.tokens, chunk.from);
  const next = t.chunks[at + 1];
  const alone = next === undefined || paused(t, next) || (next.kind === 'word' && !isUnit(t, next));
  return said?.length === chunk.to - chunk.from && said.value.has('pointer:other') && alone;
};

/** What is done to all that was spoken of, and asked about first. */
const undoable: ReadonlySet<Deed> = new Set<Deed>([
  ...(['threw', 'finished', 'gave', 'moved', 'froze', 'thawing', 'took'] as const),
]);

const skip: Rule['take'] = ({ t, chunk, at }) => {
  use(t, chunk);
  return at;
};

/** "I said a gallon on the door but it won't fit": what was said before, which is so no longer, up to where that ends; -1: it stands. */
const saidBeforeTo = ({ t, chunk, at }: Here): number => {
  if (!is(chunk, 'said-before')) return -1;
  const but = t.chunks.findIndex((one, step) => step > at && is(one, 'but'));
  if (but < 0 || t.chunks.slice(at + 1, but).some((one) => paused(t, one))) return -1;
  let to = but;
  while (t.chunks[to + 1] && !paused(t, t.chunks[to + 1])) to += 1;
  return to;
};

/** "Behind the open one": by another of its kind, up to where that ends; -1 where it is by something named. */
const besideOneTo = ({ t, chunk, at }: Here): number => {
  if (!is(chunk, 'beside') || t.drafts.length === 0) return -1;
  const state = is(t.chunks[at + 1], 'definite') ? at + 2 : at + 1;
  const one = t.chunks[state + 1];
  const word = t.chunks[state];
  const known = word?.kind === 'word' && (stateIn(word) !== null || is(word, 'more', 'position'));
  return known && one && t.lexicon.isOne(t.tokens[one.from]!) && one.to - one.from === 1 ? state + 1 : -1;
};

const rules: readonly Rule[] = [
  {
    when: (here) => besideOneTo(here) >= 0,
    take: (here) => {
      const { t, chunk, at } = here;
      const to = besideOneTo(here);
      for (let step = at; step <= to; step += 1) use(t, t.chunks[step]!);
      for (const draft of implied(t))
        draft.notes.push(t.tokens.slice(chunk.from, t.chunks[to]!.to).join(' '));
      t.inRun = false;
      return to;
    },
  },
  {
    when: (here) => saidBeforeTo(here) >= 0,
    take: (here) => {
      const to = saidBeforeTo(here);
      for (let step = here.at; step <= to; step += 1) use(here.t, here.t.chunks[step]!);
      return to;
    },
  },
  // "It's oats and butter and walnuts": what was named before is made of them.
  {
    when: ({ t, chunk, at, nextAt }) =>
      is(chunk, 'is') && t.chunks[at - 1]?.kind === 'pointer' && t.drafts.length > 0 && isFoodList(t, nextAt),
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      t.role = 'contents';
      return at;
    },
  },
  // "She'd like the dish back": to be remembered, as it was said.
  {
    when: (here) => wantsBackTo(here) >= 0,
    take: (here) => {
      const { t, at } = here;
      const to = wantsBackTo(here);
      for (let step = at; step <= to; step += 1) use(t, t.chunks[step]!);
      const said = t.tokens.slice(t.chunks[at]!.from, t.chunks[to]!.to).join(' ');
      for (const draft of t.drafts.slice(-1)) draft.notes.push(said);
      t.inRun = false;
      return to;
    },
  },
  // "The freezer has peas and a loaf": what stands there, told from the place.
  {
    when: ({ t, chunk, at }) =>
      is(chunk, 'has') &&
      t.drafts.length === 0 &&
      Boolean(t.place) &&
      t.deed === null &&
      t.chunks[at - 1]?.kind === 'place' &&
      t.chunks.slice(at + 1).some(({ kind }) => kind === 'thing'),
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      t.deed = 'stored';
      t.fromPlace = true;
      return at;
    },
  },
  // What is supposed, wished or said of others; what is asked: nothing is told.
  // "She said it has pecans in it": whoever made it knows what is in it, and that is never dropped.
  {
    when: ({ t, chunk, at }) =>
      is(chunk, 'reported') &&
      t.chunks.slice(at + 1).some((one, from) => is(one, 'has') && t.chunks[at + 2 + from]?.kind === 'thing'),
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      return at;
    },
  },
  { when: ({ chunk }) => is(chunk, 'if', 'wished', 'reported') && !is(chunk, 'so'), take: () => null },
  { when: isRelativeWhat, take: skip },
  { when: (here) => renamedAt(here) !== null, take: rename },
  { when: asks, take: () => null },
  { when: ({ chunk }) => is(chunk, 'no-have'), take: skip },
  // "The pears have gone soft": how they are, and not that they are gone.
  {
    when: ({ t, chunk, at }) => {
      const next = t.chunks[at + 1];
      const gone = is(chunk, 'state:finished') && t.tokens[chunk.to - 1] === 'gone';
      // "Soft" may be how a bag feels.
      const felt = next?.kind === 'container' && next.touch.container === undefined;
      return (
        gone &&
        next !== undefined &&
        !paused(t, next) &&
        (felt || (next.kind === 'unknown' && t.lexicon.isOrdinary(next.word)))
      );
    },
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      use(t, t.chunks[at + 1]!);
      t.inRun = false;
      return at + 1;
    },
  },
  // "The eggs I just put away": those, and nothing that is done now.
  {
    when: ({ t, chunk }) =>
      is(chunk, 'just-put') && t.drafts.length > 0 && t.group.length > 0 && !paused(t, chunk),
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      for (const draft of t.group) {
        draft.newest = draft.definite = true;
        draft.fresh = false;
        if (draft.deed !== null && weak.has(draft.deed)) draft.deed = null;
      }
      return at;
    },
  },
  // "Fine. The milk …": how the last matter stands.
  { when: (here) => is(here.chunk, 'state:fine') && first(here), take: skip },
  {
    when: ({ chunk }) => is(chunk, 'because'),
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      t.reason = true;
      t.inRun = false;
      return at;
    },
  },
  // "It's got barley in it, so gluten": in it, too.
  {
    when: (here) => {
      const next = nextOf(here);
      const draft = here.t.drafts.at(-1);
      const words = next?.kind === 'thing' ? (next.mention.words ?? '') : '';
      const holds = draft !== undefined && draft.contains.length + draft.ingredients.length > 0;
      return is(here.chunk, 'so') && holds && here.t.lexicon.allergenOf(words) !== undefined;
    },
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      t.role = 'contents';
      return at;
    },
  },
  // "So Junie can have some": why.
  {
    when: (here) =>
      is(here.chunk, 'so') && nextOf(here)?.kind === 'person' && is(here.t.chunks[here.nextAt + 1], 'may'),
    take: ({ t, chunk, nextAt }) => {
      for (const part of [chunk, t.chunks[nextAt]!, t.chunks[nextAt + 1]!]) use(t, part);
      t.reason = true;
      t.inRun = false;
      return nextAt + 1;
    },
  },
  {
    when: ({ chunk }) => is(chunk, 'same-place'),
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      const next = t.chunks[at + 1];
      if (next && is(next, 'last-time', 'fill')) use(t, next);
      // "On the bottom shelf with the other ones": where that is was said.
      if (t.group.length > 0 && t.group.every(({ place }) => place !== undefined)) return at;
      setPlace(t, { words: null, candidates: [], pointer: 'same', spot: null }, false, at);
      t.inRun = false;
      return at;
    },
  },
  // "Eggs and bacon, actually not the bacon": of this sentence, and taken out of it again.
  {
    when: (here) => (is(here.chunk, 'not') || endsInNot(here)) && takenOut(here) >= 0,
    take: (here) => {
      const { t, at, nextAt } = here;
      const gone = takenOut(here);
      for (let step = at; step <= nextAt; step += 1) use(t, t.chunks[step]!);
      t.drafts.splice(gone, 1);
      t.group = t.run = t.drafts.slice(-1);
      t.repaired = t.inRun = false;
      return nextAt;
    },
  },
  // "There's no marker on it", "no bead on that turkey": of what is named next, else of what is spoken of.
  {
    when: (here) => is(here.chunk, 'without') && nextOf(here)?.kind === 'marker' && isOn(here),
    take: ({ t, at, nextAt }) => {
      for (let step = at; step <= nextAt; step += 1) use(t, t.chunks[step]!);
      t.deed = t.or = null;
      const on = t.chunks[nextMeaning(t, nextAt)];
      if (on) use(t, on);
      const to = is(on, 'on-it', 'prep') ? nextMeaning(t, nextAt) : nextAt;
      const what = t.chunks[nextMeaning(t, to)];
      if (to > nextAt && what?.kind === 'thing' && !paused(t, what)) t.bare = true;
      else {
        if (to === nextAt && on) t.used.delete(on.from);
        for (const draft of implied(t)) {
          draft.unmarked = draft.definite = true;
          if (draft.deed !== null && weak.has(draft.deed)) draft.deed = null;
        }
      }
      return to;
    },
  },
  // "No, two": a slip taken back; "no nuts" is what is not in it.
  {
    when: (here) => {
      const { t, chunk, at, nextAt } = here;
      const next = nextOf(here);
      // "The hummus, no, the yogurt": what it lacks has no article.
      const articled = t.chunks.slice(at + 1, nextAt).some((one) => is(one, 'definite', 'single'));
      const lack =
        is(chunk, 'without') &&
        !articled &&
        (next?.kind === 'thing' || is(next, 'a')) &&
        // "It's got no milk in it": of what was spoken of before.
        (t.drafts.length > 0 || is(t.chunks[at - 1], 'has')) &&
        lacksNext(t, nextAt);
      return is(chunk, 'repair') && !lack && !saysNone(here);
    },
    take: (here) => {
      const { t, chunk, at } = here;
      // "Aunt Bea, no, Junie made it": what was said first is taken back.
      const before = t.chunks[at - 1];
      if (before && before.kind === nextOf(here)?.kind) takeBack(t, before);
      // "A cloth, no, a rubber patch": a marker half said, and nothing it is kept in.
      if (before?.kind === 'container' && !before.touch.container && nextOf(here)?.kind === 'marker') {
        for (const draft of t.drafts) if (draft.container === before.touch) delete draft.container;
        if (t.container === before.touch) t.container = undefined;
      }
      if (!first(here)) t.repaired = t.changed = true;
      else if (!is(chunk, 'apology')) t.corrects = true;
      use(t, chunk);
      return at;
    },
  },
  // "There's no ice cream in here": that there is none tells of nothing that is.
  { when: (here) => saysNone(here), take: () => null },
  {
    when: ({ chunk }) => is(chunk, 'without'),
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      t.role = 'lacks';
      return at;
    },
  },
  // "She brought it, she didn't buy it": how it did not come, where how it did is told.
  {
    when: ({ t, chunk }) =>
      is(chunk, 'not-bought') && t.chunks.some((one) => is(one, 'deed:given-in', 'deed:made')),
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      return at;
    },
  },
  // "For Amara now, not Dele": whose it is no longer.
  {
    when: (here) =>
      is(here.chunk, 'not') && nextOf(here)?.kind === 'person' && Boolean(here.t.drafts.at(-1)?.owner),
    take: ({ t, chunk, nextAt }) => {
      use(t, chunk);
      use(t, t.chunks[nextAt]!);
      return nextAt;
    },
  },
  // "Not the jollof, I ate that", "hummus not, that I eat": of that alone is said what follows.
  {
    when: (here) => deniedFor(here) !== null,
    take: (here) => {
      const { t, chunk } = here;
      const { thing, to } = deniedFor(here)!;
      use(t, chunk);
      use(t, thing);
      const before = t.drafts.find((draft) => draft.thing === thing.mention);
      const draft = before ?? begin(t, thing.mention, { deed: null, or: null, definite: true });
      draft.denied = true;
      draft.deed = draft.or = null;
      t.group = t.run = [draft];
      t.inRun = false;
      return to;
    },
  },
  // "It has walnut in, not for my sister": a caution, in her words.
  {
    when: (here) => is(here.chunk, 'not') && here.t.drafts.length > 0 && notForTo(here) !== null,
    take: (here) => {
      const { t, chunk, at } = here;
      const to = notForTo(here)!;
      for (let step = at; step <= to; step += 1) use(t, t.chunks[step]!);
      const said = t.tokens.slice(t.chunks[at + 1]!.from, t.chunks[to]!.to).join(' ');
      for (const draft of implied(t)) draft.cautions.push(`${t.tokens[chunk.to - 1]!} ${said}`);
      t.inRun = false;
      return to;
    },
  },
  // "Not the raw brisket": what is not meant.
  {
    when: (here) => is(here.chunk, 'not') && nextOf(here)?.kind === 'thing' && here.t.drafts.length > 0,
    take: ({ t, chunk, nextAt }) => {
      use(t, chunk);
      const denied = t.chunks[nextAt] as ChunkOf<'thing'>;
      use(t, denied);
      if (t.repaired) mendsContents(t, denied.mention.words ?? '', nextAt);
      return nextAt;
    },
  },
  // "They won't be eaten today, so I froze them": what is not so only leads up to what is.
  {
    when: (here) => is(here.chunk, 'not') && turnsAt(here) !== null,
    take: (here) => {
      const { t, at } = here;
      const to = turnsAt(here)!;
      for (let step = at; step <= to; step += 1) {
        const chunk = t.chunks[step]!;
        use(t, chunk);
        if (chunk.kind === 'thing')
          t.group = t.run = [begin(t, chunk.mention, { deed: null, definite: true })];
      }
      t.deed = null;
      t.inRun = false;
      return to;
    },
  },
  // "Take the eggs off, I never bought any": why it comes off the list.
  {
    when: ({ t, chunk }) =>
      is(chunk, 'not') &&
      t.subject === 'me' &&
      t.drafts.length > 0 &&
      t.drafts.every(({ deed }) => deed === 'unlisted'),
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      t.reason = true;
      return at;
    },
  },
  // "Ten portions, split between the two freezers": as many in each.
  {
    when: (here) =>
      is(here.chunk, 'shared') && here.t.drafts.length > 0 && sharedAt(here.t, here.at) !== null,
    take: ({ t, at }) => {
      const { places, to } = sharedAt(t, at)!;
      for (let step = at; step <= to; step += 1) use(t, t.chunks[step]!);
      for (const draft of implied(t))
        draft.parts.push(...places.map((place) => ({ amount: null, share: 1 / places.length, place })));
      t.deed = null;
      t.inRun = false;
      return to;
    },
  },
  // "The half chicken I ate with Peter, all".
  {
    when: (here) => {
      const next = nextOf(here);
      const ends = next === undefined || paused(here.t, next) || is(next, 'and', 'but', 'so');
      return is(here.chunk, 'each') && ends && usedWholly(here.t, here.chunk);
    },
    take: ({ at }) => at,
  },
  { when: ({ chunk }) => is(chunk, 'not'), take: () => null },
  // "On the pot with the potatoes", "the box with the waffles": what is beside it, what is in it.
  {
    when: ({ chunk }) => is(chunk, 'there'),
    take: (here) => {
      const { t, chunk, at } = here;
      use(t, chunk);
      if (isThere(here)) {
        t.place = t.drafts.at(-1)?.place;
        t.group = [];
      }
      return at;
    },
  },
  // "Opened Monday", "use by the tenth".
  {
    when: (here) =>
      dateKindIn(here.chunk) !== null &&
      afterDay(here) &&
      !(deedIn(here.chunk) && here.t.subject === 'me' && here.t.drafts.length === 0),
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      t.dateKind = dateKindIn(chunk);
      if (t.dateKind === 'made' && is(chunk, 'deed:made'))
        for (const draft of t.group) {
          if (draft.deed === null || weak.has(draft.deed)) draft.deed = 'made';
          if (t.subject) draft.maker ??= t.subject;
        }
      return at;
    },
  },
  // "Tied with a cord": the marker follows.
  {
    when: (here) =>
      is(here.chunk, 'mark') &&
      nextOf(here)?.kind === 'marker' &&
      (here.t.drafts.length > 0 || !deedIn(here.chunk)),
    take: skip,
  },
  // "I've put on the bottom shelf": no marker, but where it went.
  {
    when: (here) => is(here.chunk, 'mark') && nextOf(here)?.kind === 'place' && here.t.drafts.length > 0,
    take: skip,
  },
  // "Left side, at the back": where on its place.
  {
    when: ({ t, chunk }) => is(chunk, 'spot') && spotted(t) !== undefined,
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      const draft = spotted(t)!;
      const said = [draft.place!.spot, t.tokens.slice(chunk.from, chunk.to).join(' ')];
      draft.place = { ...draft.place!, spot: said.filter(Boolean).join(' ') };
      t.inRun = false;
      return at;
    },
  },
  // "Next to it", "beside the couscous": where that is.
  {
    when: (here) => is(here.chunk, 'beside') && besideWhat(here) !== null,
    take: (here) => {
      const { t, chunk, nextAt } = here;
      use(t, chunk);
      use(t, t.chunks[nextAt]!);
      const where = besideWhat(here)!;
      // "Next to it I stuck a tub": of what is named next.
      const after = t.chunks[nextMeaning(t, nextAt)];
      if (is(after, 'i') || (after?.kind === 'word' && deedIn(after) !== null) || after?.kind === 'amount') {
        t.place = where;
        t.group = t.run = [];
      } else setPlace(t, where, false, nextAt);
      t.inRun = false;
      return nextAt;
    },
  },
  // "Eight altogether": no more of them, but all there are. What nothing was told of before is one lot.
  {
    when: ({ t, chunk }) => is(chunk, 'in-all') && t.drafts.at(-1)?.amount !== undefined,
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      const draft = t.drafts.at(-1)!;
      if (draft.parts.length === 0 && draft.place === undefined && (draft.deed === null || draft.corrects)) {
        draft.total = draft.amount!;
        delete draft.amount;
      }
      return at;
    },
  },
  // "Quedan dos": said before its amount.
  {
    when: (here) => {
      const kind = nextOf(here)?.kind;
      return is(here.chunk, 'remains') && (kind === 'amount' || kind === 'number' || kind === 'share');
    },
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      t.remains = true;
      t.inRun = false;
      return at;
    },
  },
  // "So there's two left": what is there now.
  {
    when: (here) => is(here.chunk, 'remain') && remains(here) !== null,
    take: (here) => {
      const { t, chunk, at } = here;
      use(t, chunk);
      const draft = remains(here)!;
      draft.left = draft.amount ?? draft.share!;
      delete draft.amount;
      delete draft.share;
      if (draft.deed !== null && weak.has(draft.deed)) draft.deed = null;
      t.inRun = false;
      return at;
    },
  },
  // "A note on the brisket: needs twelve hours": of what is named next, the rest.
  {
    when: (here) => is(here.chunk, 'note-on', 'warn-that') && nextOf(here)?.kind === 'thing',
    take: (here) => {
      const { t, chunk, nextAt } = here;
      use(t, chunk);
      const next = nextOf(here)!;
      use(t, next);
      if (next.kind !== 'thing') return null;
      const draft = begin(t, next.mention, { deed: null, definite: true });
      t.group = t.run = [draft];
      const last = t.chunks.length - 1;
      if (nextAt >= last) return nextAt;
      const rest = t.chunks.slice(nextAt + 1);
      for (const one of rest) use(t, one);
      const from = rest.find((one) => !is(one, 'is', 'that', 'says'))?.from ?? next.to;
      const said = t.tokens.slice(from).join(' ');
      draft[is(chunk, 'warn-that') ? 'cautions' : 'notes'].push(said);
      return last;
    },
  },
  // "With a note that …", "put a warning on it, …": the rest of the sentence as it was said.
  {
    when: (here) => is(here.chunk, 'note-that', 'warn-that'),
    take: ({ t, chunk, at }) => {
      let to = at;
      while (t.chunks[to + 1] && !(to > at && paused(t, t.chunks[to + 1]))) to += 1;
      for (let step = at; step <= to; step += 1) use(t, t.chunks[step]!);
      const said = t.tokens.slice(chunk.to, t.chunks[to]!.to).join(' ');
      const into = is(chunk, 'warn-that') ? 'cautions' : 'notes';
      if (said !== '') for (const draft of implied(t)) draft[into].push(said);
      return to;
    },
  },
  {
    when: ({ chunk }) => is(chunk, 'caution'),
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      for (const draft of implied(t)) draft.cautions.push(t.tokens.slice(chunk.from, chunk.to).join(' '));
      t.inRun = false;
      return at;
    },
  },
  {
    when: (here) => {
      const kind = nextOf(here)?.kind;
      return (
        is(here.chunk, 'position') &&
        deedIn(here.chunk) !== null &&
        (kind === 'thing' || kind === 'pointer' || kind === 'container' || kind === 'amount')
      );
    },
    take: ({ t, chunk, at }) => takeDeed(t, chunk, at),
  },
  { when: ({ chunk }) => is(chunk, 'position'), take: ({ t, chunk, at }) => position(t, chunk, at) },
  { when: ({ chunk }) => is(chunk, 'is', 'is the'), take: ({ t, chunk, at }) => takeIs(t, chunk, at) },
  // "A tub with mole": what it is a tub of.
  {
    when: (here) =>
      is(here.chunk, 'with') &&
      here.t.amount !== undefined &&
      here.t.chunks[here.at - 1]?.kind === 'amount' &&
      nextOf(here)?.kind === 'thing',
    take: skip,
  },
  {
    when: ({ chunk }) => is(chunk, 'with'),
    take: (here) => {
      const { t, chunk, at, nextAt } = here;
      const next = nextOf(here);
      // "With the milk" is where it stands; no rule of mine.
      const known = next !== undefined && ['marker', 'container', 'pointer', 'person'].includes(next.kind);
      // "A chowder with prawns in it": what is in it, or what anybody should know of it.
      const given = t.chunks.slice(at + 1, nextAt).some((one) => is(one, 'definite'));
      if (next?.kind === 'thing' && t.drafts.length > 0 && isContents(t, nextAt, given)) {
        use(t, chunk);
        t.role = 'contents';
        t.inRun = false;
        return at;
      }
      if (t.drafts.length === 0 && (t.deed === 'gave' || t.or === 'gave')) {
        use(t, chunk);
        return at;
      }
      // "Made a salad with two cans of the chickpeas and a can of beans": that much of what is here went into it.
      if (next?.kind === 'amount' && t.drafts.at(-1)?.deed === 'made' && t.subject === 'me') {
        use(t, chunk);
        t.deed = 'took';
        t.or = null;
        t.maker = undefined;
        t.inRun = false;
        return at;
      }
      const place = t.drafts.at(-1)?.place !== undefined;
      const before = t.chunks[at - 1];
      // "In the crate with the potatoes", "the box with the waffles".
      if (next?.kind === 'thing' && (place || before?.kind === 'container')) {
        use(t, chunk);
        if (!place) return at;
        use(t, next);
        // Of several drawers, the one where that is.
        for (const draft of t.group.length > 0 ? t.group : t.drafts.slice(-1))
          if (draft.place && next.mention.candidates.length > 0)
            draft.place = { ...draft.place, beside: next.mention };
        return nextAt;
      }
      if (!known && !is(next, 'without', 'note-that', 'warn-that')) leave(t, chunk);
      else use(t, chunk);
      return at;
    },
  },
  {
    when: ({ chunk }) => is(chunk, 'has') && !deedIn(chunk),
    take: (here) => {
      const { t, chunk, at } = here;
      use(t, chunk);
      // "I'm going to have a waffle" says of nothing what is in it.
      const of = t.drafts.length > 0 || t.subject !== 'me';
      if (of && (nextOf(here)?.kind === 'thing' || is(nextOf(here), 'no'))) t.role = 'contents';
      return at;
    },
  },
  // "A jar of marmalade that's open": of that alone, and what is named next joins it all the same.
  {
    when: ({ t, chunk, at }) =>
      stateIn(chunk) === 'opened' &&
      is(t.chunks[at - 1], 'that') &&
      t.group.length > 0 &&
      t.chunks[at + 1]?.kind !== 'day' &&
      t.chunks[at + 1]?.kind !== 'thing',
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      t.group.at(-1)!.dates.opened ??= 'unknown';
      return at;
    },
  },
  {
    when: (here) => takesState(here.t, here.chunk, here.at, afterDay(here)),
    take: ({ t, chunk, at }) => takeState(t, chunk, at),
  },
  // "The bean chilli of the fridge": the one that is there.
  {
    when: (here) =>
      is(here.chunk, 'of') && here.t.chunks[here.at - 1]?.kind === 'thing' && nextOf(here)?.kind === 'place',
    take: ({ t, chunk, nextAt }) => {
      use(t, chunk);
      for (const draft of t.group) draft.definite = true;
      return takePlace(t, nextAt, false, true);
    },
  },
  {
    when: (here) => is(here.chunk, 'from') && nextOf(here)?.kind === 'place',
    take: ({ t, chunk, nextAt }) => {
      use(t, chunk);
      return takePlace(t, nextAt, false, true);
    },
  },
  // "Out of the garage to thaw", "off the meatloaf": where a marker was is nothing told of it.
  {
    when: (here) => is(here.chunk, 'from') && here.t.held !== null && nextOf(here)?.kind === 'thing',
    take: ({ t, chunk, nextAt }) => {
      use(t, chunk);
      use(t, t.chunks[nextAt]!);
      return nextAt;
    },
  },
  // "Put the harissa back".
  {
    when: ({ t, chunk }) => is(chunk, 'back') && t.group.length > 0,
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      for (const draft of t.group) if (draft.deed === null || weak.has(draft.deed)) draft.deed = 'put-back';
      return at;
    },
  },
  // "In the bread bin": no throwing away, but a place nobody told of.
  {
    when: ({ t, chunk, at }) =>
      deedIn(chunk) !== null &&
      t.chunks[at - 1]?.kind === 'thing' &&
      is(t.chunks[at - 2], 'a') &&
      is(t.chunks[at - 3], 'prep'),
    take: ({ t, chunk, at }) => {
      leave(t, chunk);
      return at;
    },
  },
  // "We had a can" is eaten, "we had made" is not.
  {
    when: (here) => is(here.chunk, 'i') && deedIn(here.chunk) === 'took',
    take: (here) => {
      const { t, chunk, at } = here;
      t.subject = t.doers > 1 ? t.subject : 'me';
      const next = nextOf(here);
      if (next?.kind === 'word' && deedIn(next) !== null) {
        use(t, chunk);
        return at;
      }
      return takeDeed(t, chunk, at);
    },
  },
  // "An open jar of marmalade": how it is, and nothing that was done.
  {
    when: ({ t, chunk, at }) =>
      deedsIn(chunk).includes('opened') &&
      is(t.chunks[at - 1], 'a') &&
      (t.chunks[at + 1]?.kind === 'amount' ||
        t.chunks[at + 1]?.kind === 'container' ||
        t.chunks[at + 1]?.kind === 'thing'),
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      t.opened = true;
      return at;
    },
  },
  { when: ({ chunk }) => deedIn(chunk) !== null, take: ({ t, chunk, at }) => takeDeed(t, chunk, at) },
  {
    when: (here) => {
      const kind = nextOf(here)?.kind;
      return is(here.chunk, 'in-it') && kind !== 'place' && kind !== 'container' && kind !== 'marker';
    },
    take: skip,
  },
  {
    when: ({ chunk }) => is(chunk, 'mine'),
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      for (const draft of implied(t)) draft.owner = { words: 'me', candidates: [], points: 'speaker' };
      return at;
    },
  },
  // "One for tonight", "a bowl for Sam's lunch": when it will be eaten is no date of it.
  {
    when: ({ t, chunk, at }) =>
      is(chunk, 'for') && t.dateKind === null && (purposeAt(t, chunk, at) ?? dishFor(t, chunk, at)) !== null,
    take: ({ t, chunk, at }) => takePurpose(t, (purposeAt(t, chunk, at) ?? dishFor(t, chunk, at))!, at),
  },
  // "Es de Lucía": whose it is.
  {
    when: (here) => is(here.chunk, 'for', 'whose') && nextOf(here)?.kind === 'person',
    take: ({ t, chunk, at }) => takeOwner(t, chunk, at),
  },
  {
    when: (here) => is(here.chunk, 'by', 'from') && nextOf(here)?.kind === 'person',
    take: ({ t, chunk, at }) => takeMaker(t, chunk, at),
  },
  {
    when: (here) =>
      is(here.chunk, 'by', 'from') &&
      nextOf(here)?.kind === 'thing' &&
      here.t.drafts.length > 0 &&
      lastOf(here.t).contains.length > 0,
    take: ({ t, chunk, nextAt }) => {
      use(t, chunk);
      use(t, t.chunks[nextAt]!);
      return nextAt;
    },
  },
  {
    when: (here) => is(here.chunk, 'direction', 'prep') && nextOf(here)?.kind === 'place',
    take: ({ t, chunk, nextAt }) => {
      use(t, chunk);
      return takePlace(t, nextAt, is(chunk, 'direction') && !is(chunk, 'prep'), false);
    },
  },
  // "By the milk", after its place: the spot it stands at.
  {
    when: (here) => {
      const next = nextOf(here);
      return (
        is(here.chunk, 'prep') &&
        (next?.kind === 'marker' || next?.kind === 'thing') &&
        here.t.drafts.at(-1)?.place !== undefined &&
        !is(here.chunk, 'in-it')
      );
    },
    take: (here) => {
      const { t, chunk, nextAt } = here;
      const next = nextOf(here)!;
      const draft = lastOf(t);
      use(t, chunk);
      use(t, next);
      if (draft.place) draft.place = { ...draft.place, spot: t.tokens.slice(chunk.from, next.to).join(' ') };
      return nextAt;
    },
  },
  {
    when: ({ t, chunk, at }) =>
      is(chunk, 'diet') && t.chunks[at + 1]?.kind === 'thing' && !is(t.chunks[at - 1], 'is'),
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      t.diets = [...t.diets, t.tokens.slice(chunk.from, chunk.to).join(' ')];
      return at;
    },
  },
  {
    when: ({ chunk }) => is(chunk, 'diet'),
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      lastOf(t).diets.push(t.tokens.slice(chunk.from, chunk.to).join(' '));
      return at;
    },
  },
  // "The bread on the counter and the rest in the fridge": of what was told of before, which nobody can tell here.
  {
    when: (here) => {
      const before = here.t.drafts.at(-1);
      return (
        is(here.chunk, 'whole') &&
        before?.place !== undefined &&
        before.amount === undefined &&
        before.share === undefined &&
        before.parts.length === 0 &&
        is(nextOf(here), 'prep', 'direction', 'is', 'deed:stored')
      );
    },
    take: ({ t, at }) => {
      let to = at;
      while (t.chunks[to + 1] && t.chunks[to]!.kind !== 'place' && !is(t.chunks[to + 1], 'and')) to += 1;
      for (let step = at; step <= to; step += 1) leave(t, t.chunks[step]!);
      t.inRun = false;
      return to;
    },
  },
  // "And the other one, that's gone as well": of those that were told of before.
  {
    when: ({ t, chunk, at }) =>
      is(chunk, 'whole') && t.drafts.length === 0 && pointsToOther(t, chunk, at) && t.chunks.some(isGone),
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      t.group = t.run = [begin(t, pointed('other'), { definite: true })];
      t.inRun = true;
      return at;
    },
  },
  {
    when: ({ chunk }) => is(chunk, 'whole'),
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      t.whole = t.drafts.length > 0;
      if (!t.whole) t.definite = true;
      // "The other pint": of what it is a pint of.
      const next = t.chunks[at + 1];
      if (!t.whole || !next || !isUnit(t, next)) return at;
      use(t, next);
      return at + 1;
    },
  },
  {
    when: ({ chunk }) => is(chunk, 'i'),
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      t.subject = t.doers > 1 ? t.subject : 'me';
      return at;
    },
  },
  // "I'm having that", and nothing it stands before: what was just spoken of.
  {
    when: (here) => {
      const { t, chunk, at } = here;
      const next = t.chunks[at + 1];
      const names = next !== undefined && !is(next, 'and', 'so', 'but', 'fill') && !paused(t, next);
      return is(chunk, 'that') && t.deed !== null && !weak.has(t.deed) && t.drafts.length === 0 && !names;
    },
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      t.group = t.run = [begin(t, pointed('that'), { definite: true })];
      return at;
    },
  },
  {
    when: ({ chunk }) => is(chunk, 'a'),
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      if (is(chunk, 'definite')) t.definite = true;
      if (is(chunk, 'more')) t.fresh = true;
      t.single = is(chunk, 'single');
      t.some = !is(chunk, 'definite');
      return at;
    },
  },
  { when: ({ chunk }) => is(chunk, 'and'), take: skip },
  // "Pears I keep in the drawer now": those that are here.
  {
    when: ({ t, chunk }) =>
      is(chunk, 'now') && t.group.some(({ place, name }) => (place ?? name) !== undefined),
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      for (const draft of t.group) if (draft.amount === undefined) draft.definite = true;
      return at;
    },
  },
  { when: (here) => is(here.chunk, 'may') && is(nextOf(here), 'deed:stored'), take: skip },
  // "Everything in the salad drawer is gone": of all that is there.
  {
    when: ({ t, chunk, at }) =>
      is(chunk, 'each') &&
      is(chunk, 'nameless') &&
      t.drafts.length === 0 &&
      t.deed === null &&
      is(t.chunks[at + 1], 'in-it', 'prep') &&
      t.chunks[at + 2]?.kind === 'place',
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      use(t, t.chunks[at + 1]!);
      use(t, t.chunks[at + 2]!);
      const { place } = t.chunks[at + 2] as ChunkOf<'place'>;
      t.group = t.run = [begin(t, pointed('all'), { definite: true, from: place })];
      return at + 2;
    },
  },
  // "Except the zucchini": of none of the things named after it.
  {
    when: (here) =>
      is(here.chunk, 'except') &&
      nextOf(here)?.kind === 'thing' &&
      here.t.drafts.at(-1)?.thing?.pointer === 'all',
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      const draft = t.drafts.at(-1)!;
      let next = nextMeaning(t, at);
      for (;;) {
        const named = t.chunks[next];
        if (named?.kind !== 'thing') break;
        (draft.except ??= []).push(named.mention);
        for (let step = at; step <= next; step += 1) use(t, t.chunks[step]!);
        const more = is(t.chunks[next + 1], 'and') ? nextMeaning(t, next + 1) : -1;
        if (t.chunks[more]?.kind !== 'thing') break;
        next = more;
      }
      t.definite = false;
      t.inRun = false;
      return next;
    },
  },
  // "Binned the lot", of nothing that was named: all that was just spoken of.
  {
    when: ({ chunk, t }) =>
      is(chunk, 'each') && t.drafts.length === 0 && t.deed !== null && undoable.has(t.deed),
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      t.group = t.run = [begin(t, pointed('all'), { definite: true })];
      return at;
    },
  },
  {
    when: ({ chunk, t }) => is(chunk, 'each') && t.group.length > 0,
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      if (t.run.length > 1) t.group = t.run;
      // "Junie and I had three each": so many times three.
      if (t.doers > 1)
        for (const draft of t.group)
          if (draft.deed === 'took' && draft.amount)
            draft.amount = { ...draft.amount, value: draft.amount.value * t.doers };
      // "We ate them all": nothing of it is left.
      for (const draft of t.group)
        if (draft.deed === 'took' && draft.thing?.words === null && draft.amount === undefined)
          draft.thing = pointed('all');
      // "Pantry bottom shelf, the lot": where the last one is, all are.
      const place = t.group.at(-1)?.place;
      if (place) for (const draft of t.group) draft.place ??= place;
      return at;
    },
  },
  { when: ({ chunk }) => is(chunk, 'is-not'), take: () => null },
  {
    when: ({ chunk }) =>
      is(
        chunk,
        'fill',
        'instead',
        'so',
        'but',
        'said-before',
        'of',
        'you',
        'they',
        'that',
        'on-it',
        'prep',
        'direction',
        'for',
        'by',
        'last-time',
        'each',
        'from',
      ),
    take: ({ t, chunk, at }) => {
      use(t, chunk);
      if (!is(chunk, 'fill', 'of')) t.inRun = t.inRun && is(chunk, 'that');
      return at;
    },
  },
];

export const takeWord = (t: Telling, chunk: Word, at: number): number | null => {
  const here: Here = { t, chunk, at, nextAt: nextMeaning(t, at) };
  const rule = rules.find(({ when }) => when(here));
  if (rule) return rule.take(here);
  if (t.reason) use(t, chunk);
  else leave(t, chunk);
  return at;
};
