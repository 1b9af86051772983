/**
 * Statements: what was done and what is so, several in one breath, with their roles in any order. Reads the
 * constituents from left to right, as a listener does: a thing opens a statement or takes up one of this
 * sentence again, and what follows is said of it until another comes. Proposes nothing for questions, wishes
 * and what is only supposed.
 */
import type { DynamicRules } from '../../grammar/api.js';
import { type Deed, type Mention, type PlaceMention, type SaidDate } from '../intents.js';
import { pointed } from '../meaning-parts.js';
import type { Proposal } from '../intents.js';
import type { Chunk, ChunkOf } from './api.js';
import { placeLike } from './chunks.js';
import { newDraft, saysSomething, statementOf, type Draft } from './draft.js';
import type { MovesLexicon } from './lexicon.js';

type DateKind = keyof Draft['dates'];
type Word = ChunkOf<'word'>;

const dateOfDeed: Partial<Record<Deed, DateKind>> = {
  made: 'made',
  bought: 'bought',
  'given-in': 'bought',
  opened: 'opened',
  froze: 'frozen',
  thawing: 'thawed',
};
const printed: ReadonlySet<DateKind> = new Set<DateKind>(['useBy', 'bestBefore']);
/** Verbs that say little where another one follows: "I have made", "there is". */
const weak: ReadonlySet<string> = new Set(['stored']);
/** What is done to things that are there: "used two eggs and a pint of milk" goes on with the next thing. */
const ofOneThing: ReadonlySet<Deed> = new Set<Deed>(['fact']);

interface Reader {
  readonly chunks: readonly Chunk[];
  readonly tokens: readonly string[];
  readonly rules: DynamicRules;
  readonly lexicon: MovesLexicon;
}

const is = (chunk: Chunk | undefined, ...classes: readonly string[]): boolean =>
  chunk?.kind === 'word' && classes.some((name) => chunk.classes.has(name));

const deedIn = (chunk: Word): Deed | null => {
  for (const name of chunk.classes) if (name.startsWith('deed:')) return name.slice(5) as Deed;
  return null;
};
const deedsIn = (chunk: Word): readonly Deed[] =>
  [...chunk.classes].flatMap((name) => (name.startsWith('deed:') ? [name.slice(5) as Deed] : []));
const stateIn = (chunk: Word): string | null => {
  for (const name of chunk.classes) if (name.startsWith('state:')) return name.slice(6);
  return null;
};
const dateKindIn = (chunk: Word): DateKind | null => {
  for (const name of chunk.classes) if (name.startsWith('date:')) return name.slice(5) as DateKind;
  return null;
};

/** One place inside the other, whichever way round they were said: what names the fewest places. */
const oneInside = (a: string, b: string, rules: DynamicRules): PlaceMention | null => {
  const both = [
    [b, a],
    [a, b],
  ].flatMap(([inner, outer]) => {
    const place = placeLike(`${inner} of the ${outer}`.split(' '), rules);
    return place && place.candidates.length > 0 ? [place] : [];
  });
  const fitting = ({ candidates }: PlaceMention): number =>
    candidates.filter(({ fit }) => fit >= (candidates[0]?.fit ?? 0) - 0.05).length;
  return both.sort((one, other) => fitting(one) - fitting(other))[0] ?? null;
};

const headOf = (words: string): string => (words.split(' ').at(-1) ?? '').replace(/e?s$/, '');

/** A name said shorter, or again: "the salmon", of the smoked salmon of this sentence. */
const sameThing = (said: Mention, before: Mention | null): boolean => {
  if (!said.words || !before?.words) return false;
  if (said.words === before.words) return true;
  const all = new Set(before.words.split(' ').map(headOf));
  return said.words.split(' ').every((word) => all.has(headOf(word)));
};

interface Assembler {
  readonly drafts: readonly Draft[];
  readonly used: ReadonlySet<number>;
  readonly left: readonly number[];
}

/** Null where the sentence asks, wishes, supposes or denies. */
const assemble = (reader: Reader): Assembler | null => {
  const { chunks, tokens, rules, lexicon } = reader;
  const drafts: Draft[] = [];
  const used = new Set<number>();
  const left: number[] = [];
  /** What is being talked of now. */
  let group: Draft[] = [];
  /** The last things named one after the other: "they". */
  let run: Draft[] = [];
  let deed: Deed | null = null;
  let amount: Draft['amount'];
  let share: Draft['share'];
  let definite = false;
  let fresh = false;
  let container: Draft['container'];
  let place: PlaceMention | undefined;
  let maker: string | undefined;
  let owner: Draft['owner'];
  let dateKind: DateKind | null = null;
  /** Dates said before their thing: "yesterday I made soup". */
  let early: SaidDate | null = null;
  /** What the next name is: one of the contents, or what it lacks. */
  let role: 'thing' | 'contents' | 'lacks' = 'thing';
  let whole = false;
  let corrects = false;
  let repaired = false;
  let subject: string | null = null;
  /** The last thing said was a thing, so that the next joins it. */
  let inRun = false;

  const use = (chunk: Chunk): void => {
    for (let at = chunk.from; at < chunk.to; at += 1) used.add(at);
  };
  const leave = (chunk: Chunk): void => {
    for (let at = chunk.from; at < chunk.to; at += 1) left.push(at);
  };
  const implied = (): readonly Draft[] => {
    if (group.length > 0) return group;
    const draft = newDraft(null, { deed: null, corrects });
    drafts.push(draft);
    group = run = [draft];
    return group;
  };
  const last = (): Draft => implied().at(-1)!;

  const begin = (thing: Mention, part: Partial<Draft> = {}): Draft => {
    const draft = newDraft(thing, {
      deed,
      definite,
      fresh,
      corrects,
      ...(amount ? { amount } : {}),
      ...(share ? { share } : {}),
      ...(container ? { container } : {}),
      ...(place ? { place } : {}),
      ...(maker ? { maker } : {}),
      ...(owner ? { owner } : {}),
      ...part,
    });
    const kind = deed ? dateOfDeed[deed] : undefined;
    if (kind && early) draft.dates[kind] = early;
    amount = share = container = owner = undefined;
    definite = fresh = false;
    drafts.push(draft);
    return draft;
  };

  const onward = (at: number): Chunk | undefined => chunks[at];
  /** The next that is no filler or article. */
  const nextMeaning = (at: number): number => {
    let next = at + 1;
    while (is(onward(next), 'fill', 'a') && !is(onward(next), 'has')) next += 1;
    return next;
  };

  /** "They are all in the pantry, beans on the top shelf": the pantry's. */
  const within = (said: PlaceMention, before: PlaceMention | undefined): PlaceMention => {
    const [best, next] = said.candidates;
    if (!before?.words || !said.words || !best || !next || next.fit < best.fit - 0.05) return said;
    const joined = oneInside(said.words, before.words, rules);
    return joined && (joined.candidates[0]?.fit ?? 0) >= best.fit - 0.1 ? joined : said;
  };

  const setPlace = (said: PlaceMention, moved: boolean): void => {
    if (drafts.length === 0) {
      place = said;
      return;
    }
    for (const draft of group.length > 0 ? group : drafts.slice(-1)) {
      // "The rest are still on the counter", after some were moved: as it was.
      if (whole && (draft.deed === 'moved' || draft.deed === 'took')) continue;
      if (whole && draft.parts.length + (draft.amount ? 1 : 0) > 0)
        draft.parts.push({ amount: null, share: 'rest', place: said });
      else draft.place = within(said, draft.place);
      if (moved) draft.moved = true;
    }
    whole = false;
  };

  /** "Two in the fridge", "half of them are on the bottom shelf": a part and where it is. */
  const partAt = (at: number): number | null => {
    let next = nextMeaning(at);
    while (is(onward(next), 'of', 'is', 'deed:stored') || onward(next)?.kind === 'pointer')
      next = nextMeaning(next);
    let direction = false;
    while (is(onward(next), 'prep', 'direction', 'in-it', 'deed:stored')) {
      direction = true;
      next = nextMeaning(next);
    }
    return direction && onward(next)?.kind === 'place' ? next : null;
  };

  /** Two places said one after the other are one inside the other: "in the fridge on the top shelf". */
  const placeFrom = (at: number): { place: PlaceMention; to: number } => {
    const chunk = onward(at) as ChunkOf<'place'>;
    let said = chunk.place;
    let to = at;
    for (;;) {
      let next = to + 1;
      while (is(onward(next), 'prep', 'in-it', 'of', 'a', 'direction') && !is(onward(next), 'and')) next += 1;
      const other = onward(next);
      if (other?.kind !== 'place') break;
      const joined = oneInside(said.words ?? '', other.place.words ?? '', rules);
      if (!joined || (joined.candidates[0]?.fit ?? 0) < 0.7) break;
      said = joined;
      to = next;
    }
    return { place: said, to };
  };

  const takePlace = (at: number, moved: boolean, from: boolean): number => {
    const { place: said, to } = placeFrom(at);
    for (let step = at; step <= to; step += 1) use(onward(step)!);
    const kind = said.words?.split(' ').at(-1);
    if (from) for (const draft of implied()) draft.from = said;
    else setPlace(said, moved);
    if (kind) lastKind = kind;
    inRun = false;
    return to;
  };
  let lastKind: string | null = null;

  const addContents = (words: string): void => {
    const allergen = lexicon.allergenOf(words);
    const to = last();
    if (allergen) {
      if (!to.contains.includes(allergen)) to.contains.push(allergen);
      // Which nut it is is worth knowing besides the group.
      if (allergen !== words && !allergen.startsWith(headOf(words))) to.ingredients.push(words);
    } else to.ingredients.push(words);
  };

  const addLack = (words: string): boolean => {
    const diet = lexicon.dietWithout(words);
    const allergen = lexicon.allergenOf(words);
    if (diet) last().diets.push(diet);
    else if (allergen) last().freeFrom.push(allergen);
    return diet !== undefined || allergen !== undefined;
  };

  const namesAfter = (before: Chunk): boolean =>
    before.kind === 'amount' ||
    before.kind === 'number' ||
    before.kind === 'share' ||
    before.kind === 'place' ||
    (before.kind === 'word' && (is(before, 'a', 'of', 'and', 'fill', 'repair') || deedIn(before) !== null));

  const thing = (chunk: ChunkOf<'thing'>, at: number): number | null => {
    const words = chunk.mention.words ?? '';
    const next = onward(at + 1);
    const beyond = onward(at + 2);
    const inIt =
      is(next, 'in-it') &&
      !(
        beyond?.kind === 'place' ||
        beyond?.kind === 'thing' ||
        beyond?.kind === 'day' ||
        beyond?.kind === 'container'
      ) &&
      !is(beyond, 'a');
    // "There's cashews in the pottage": what is in another food.
    const holderAt = is(next, 'in-it', 'prep') ? nextMeaning(at + 1) : -1;
    const holder = onward(holderAt);
    if (deed === 'stored' && holder?.kind === 'thing' && holder.fit >= 0.7 && lexicon.allergenOf(words)) {
      deed = null;
      amount = undefined;
      definite = true;
      group = run = [begin(holder.mention)];
      addContents(words);
      for (const part of [chunk, next!, holder]) use(part);
      for (let step = at + 2; step < holderAt; step += 1) use(onward(step)!);
      inRun = false;
      return holderAt;
    }
    if (role === 'lacks') {
      if (!addLack(words)) return null;
      use(chunk);
      if (!is(next, 'and')) role = 'thing';
      if (inIt) use(next!);
      return inIt ? at + 1 : at;
    }
    if (role === 'contents' || (inIt && drafts.length > 0) || (inIt && deed === 'stored')) {
      if (deed === 'stored') deed = null;
      addContents(words);
      use(chunk);
      if (inIt) use(next!);
      const more = is(inIt ? beyond : next, 'and');
      if (!more) role = 'thing';
      inRun = false;
      return inIt ? at + 1 : at;
    }
    // "Put it on the list, the tahini I mean": the name comes after.
    const meant = is(next, 'repair') && at + 2 === chunks.length;
    if (meant) use(next!);
    if ((repaired || meant) && drafts.length > 0) {
      const draft = drafts.at(-1)!;
      draft.thing = chunk.mention;
      if (amount) draft.amount = amount;
      amount = undefined;
      group = run = [draft];
      repaired = false;
      use(chunk);
      return at;
    }
    const known = amount || share ? undefined : drafts.find((draft) => sameThing(chunk.mention, draft.thing));
    use(chunk);
    if (known && !(deed && known.deed !== deed && known.deed !== null && !weak.has(deed))) {
      group = inRun ? [...group, known] : [known];
      inRun = true;
      definite = false;
      return at;
    }
    // A name nobody knows is only told by what stands before it.
    if (chunk.source === 'open' && at > 0 && !namesAfter(onward(at - 1)!)) {
      for (let step = chunk.from; step < chunk.to; step += 1) used.delete(step);
      leave(chunk);
      return at;
    }
    const draft = begin(chunk.mention, { open: chunk.source === 'open' });
    if (inRun) {
      group = [...group, draft];
      run = [...run, draft];
    } else {
      group = [draft];
      run = inListOf(at) ? [...run, draft] : [draft];
    }
    inRun = true;
    return at;
  };

  /** Things that nothing was said of yet are one list with this: "milk, eggs and some salmon". */
  const inListOf = (at: number): boolean => is(onward(at - 1), 'and', 'a', 'of') && run.length > 0;

  const pointer = (chunk: ChunkOf<'pointer'>): boolean => {
    const which = chunk.mention.pointer;
    use(chunk);
    if (which === 'another') {
      const before = drafts.at(-1)?.thing;
      const draft = begin(before?.words ? { ...before, candidates: [] } : pointed('another'), {
        fresh: true,
        definite: false,
      });
      group = run = [draft];
    } else if (which === 'rest' || which === 'other') {
      if (drafts.length === 0) return false;
      whole = true;
    } else if (drafts.length === 0) {
      const draft = begin(chunk.mention, { definite: true });
      group = run = [draft];
    } else if (which === 'them' || which === 'both' || which === 'all')
      group = run.length > 1 ? run : drafts.slice(-2);
    else if (!ofOneThing.has(last().deed ?? 'stored') || group.length === 0) group = [drafts.at(-1)!];
    // "I made it this morning": the deed is a fact of what was named.
    if (drafts.length > 0 && deed && group.every((draft) => draft.thing !== null || draft.deed === null))
      for (const draft of group) applyDeed(draft, deed);
    inRun = false;
    return true;
  };

  /** A deed told of something already spoken of in this sentence. */
  const applyDeed = (draft: Draft, told: Deed): void => {
    const kind = dateOfDeed[told];
    if (draft.deed === null || weak.has(draft.deed)) {
      if (!weak.has(told) || draft.deed === null) draft.deed = told;
    }
    if (kind && kind !== 'bought') dateKind = kind;
    if (told === 'made' && subject) draft.maker = subject;
  };

  const takeAmount = (chunk: ChunkOf<'amount'> | ChunkOf<'number'>, at: number): number => {
    use(chunk);
    const said = chunk.kind === 'amount' ? chunk.amount : { value: chunk.value, unit: 'piece' };
    const fraction = whole && said.value < 1 ? said.value : null;
    let next = at + 1;
    while (is(onward(next), 'of', 'a', 'fill')) next += 1;
    if (repaired) {
      repaired = false;
      if (amount) amount = { ...said, unit: said.unit === 'piece' ? amount.unit : said.unit };
      else if (drafts.length > 0)
        last().amount = {
          ...said,
          unit: said.unit === 'piece' ? (last().amount?.unit ?? 'piece') : said.unit,
        };
      else amount = said;
      if (onward(next)?.kind !== 'thing' || !amount) return at;
      amount = said.unit === 'piece' && amount ? { ...amount, value: said.value } : said;
      return at;
    }
    // "The cooked one", "the plum one" count nothing.
    const one = said.value === 1 && chunk.to - chunk.from === 1 && tokens[chunk.from] === 'one';
    const before = onward(at - 1);
    if (one && (is(before, 'a', 'position') || (before?.kind === 'thing' && is(onward(at - 2), 'a')))) {
      for (let step = chunk.from; step < chunk.to; step += 1) used.delete(step);
      leave(chunk);
      return at;
    }
    const there = drafts.length > 0 ? partAt(at) : null;
    const gloss = is(onward(at - 1), 'so') || (is(onward(at - 1), 'fill') && is(onward(at - 2), 'so'));
    if (gloss && drafts.length > 0 && (last().share || last().amount)) return at;
    if (there !== null && onward(next)?.kind !== 'thing') {
      const { place: where, to } = placeFrom(there);
      for (let step = at; step <= to; step += 1) use(onward(step)!);
      const draft = last();
      const shared = fraction ?? null;
      if (!draft.place && draft.parts.length === 0 && !draft.amount && !whole) {
        draft.amount = said;
        draft.place = where;
      } else draft.parts.push({ amount: shared === null ? said : null, share: shared, place: where });
      whole = false;
      lastKind = where.words?.split(' ').at(-1) ?? lastKind;
      inRun = false;
      return to;
    }
    if (onward(next)?.kind === 'thing' || onward(next)?.kind === 'pointer') {
      amount = said;
      return at;
    }
    if (drafts.length > 0)
      for (const draft of group.length === 1 ? group : group.slice(-1)) draft.amount = said;
    else {
      amount = said;
      if (!chunks.some((one) => one.kind === 'thing')) last().amount = said;
    }
    return at;
  };

  const takeShare = (chunk: ChunkOf<'share'>, at: number): number => {
    use(chunk);
    const there = drafts.length > 0 && last().amount ? partAt(at) : null;
    if (there !== null) {
      const { place: where, to } = placeFrom(there);
      for (let step = at; step <= to; step += 1) use(onward(step)!);
      last().parts.push({ amount: null, share: chunk.share.fraction, place: where });
      inRun = false;
      return to;
    }
    if (drafts.length > 0 && onward(nextMeaning(at))?.kind !== 'thing') last().share = chunk.share;
    else share = chunk.share;
    return at;
  };

  const takeDay = (chunk: ChunkOf<'day'>): void => {
    use(chunk);
    inRun = false;
    const kind = dateKind;
    dateKind = null;
    if (kind) {
      for (const draft of implied()) draft.dates[kind] = printed.has(kind) ? chunk.future : chunk.past;
      return;
    }
    if (drafts.length === 0) {
      early = chunk.past;
      return;
    }
    if (repaired) {
      repaired = false;
      const [told] = Object.keys(last().dates) as DateKind[];
      if (told) {
        for (const draft of implied()) draft.dates[told] = printed.has(told) ? chunk.future : chunk.past;
        return;
      }
    }
    for (const draft of group.length > 0 ? group : drafts.slice(-1)) {
      const ofDeed = draft.deed ? dateOfDeed[draft.deed] : undefined;
      if (ofDeed && !draft.dates[ofDeed]) draft.dates[ofDeed] = chunk.past;
      else draft.when = chunk.past;
    }
  };

  const takePerson = (chunk: ChunkOf<'person'>, at: number): boolean => {
    const next = onward(at + 1);
    use(chunk);
    if (deed === 'made' && drafts.length === 0 && !is(onward(at - 1), 'by')) {
      owner = { words: chunk.words, candidates: chunk.candidates };
      return true;
    }
    if (is(next, 'no-have')) return true;
    subject = chunk.words;
    return is(
      next,
      'deed:made',
      'deed:took',
      'deed:finished',
      'deed:given-in',
      'deed:bought',
      'deed:opened',
      'deed:threw',
    );
  };

  /** A question head makes a question of it, wherever it stands: what is told and asked in one breath is parted before. */
  const asks = (chunk: Word, at: number, first: boolean): boolean => {
    if (is(chunk, 'command')) return first && !deedIn(chunk) && !is(chunk, 'repair', 'fill');
    if (is(chunk, 'aux')) return !(onward(at - 1)?.kind === 'pointer' && is(chunk, 'is'));
    if (is(chunk, 'wh')) return !(is(chunk, 'that') && drafts.length > 0);
    return is(chunk, 'is the') && first;
  };

  const word = (chunk: Word, at: number): number | null => {
    const next = onward(nextMeaning(at));
    const nextAt = nextMeaning(at);
    const first = drafts.length === 0 && deed === null && used.size === 0;
    if (is(chunk, 'if', 'wished', 'reported') && !is(chunk, 'so')) return null;
    if (asks(chunk, at, first)) return null;
    if (is(chunk, 'no-have')) {
      use(chunk);
      return at;
    }
    if (is(chunk, 'same-place')) {
      use(chunk);
      if (is(onward(at + 1), 'last-time', 'fill')) use(onward(at + 1)!);
      setPlace(
        {
          words: null,
          candidates: [],
          pointer: 'same',
          spot: null,
        },
        false,
      );
      inRun = false;
      return at;
    }
    if (
      is(chunk, 'repair') &&
      !(
        is(chunk, 'without') &&
        (next?.kind === 'thing' || is(next, 'a')) &&
        drafts.length > 0 &&
        lacksNext(nextAt)
      )
    ) {
      use(chunk);
      if (first) corrects = true;
      else repaired = true;
      return at;
    }
    if (is(chunk, 'without')) {
      use(chunk);
      role = 'lacks';
      return at;
    }
    if (is(chunk, 'not')) {
      // "So Junie can't have it": a consequence, and no denial.
      return null;
    }
    const kind = dateKindIn(chunk);
    const afterDay = next?.kind === 'day' || (is(onward(at + 1), 'prep') && onward(at + 2)?.kind === 'day');
    if (kind && afterDay && !(deedIn(chunk) && subject === 'me' && drafts.length === 0)) {
      use(chunk);
      dateKind = kind;
      if (kind === 'made' && is(chunk, 'deed:made'))
        for (const draft of group) if (draft.deed === null || weak.has(draft.deed)) draft.deed = 'made';
      return at;
    }
    if (is(chunk, 'mark')) {
      const marker = onward(nextAt)?.kind === 'marker' ? nextAt : null;
      if (marker !== null && (drafts.length > 0 || !deedIn(chunk))) {
        use(chunk);
        return at;
      }
    }
    if (is(chunk, 'position')) return position(chunk, at);
    if (is(chunk, 'is', 'is the')) {
      use(chunk);
      const told = onward(nextAt);
      const beyond = onward(nextMeaning(nextAt));
      // "It's gone a bit soft": how it is, and not that it is finished.
      const goesOn =
        (is(onward(nextAt + 1), 'a') && tokens[onward(nextAt + 1)!.from] === 'a') ||
        beyond?.kind === 'unknown' ||
        (beyond?.kind === 'thing' && beyond.source === 'open');
      const state = told?.kind === 'word' && !goesOn ? stateIn(told) : null;
      if (goesOn && told?.kind === 'word' && stateIn(told)) return null;
      if (
        state &&
        group.length > 0 &&
        !(
          told?.kind === 'word' &&
          is(told, 'date:opened', 'date:made', 'date:frozen') &&
          onward(nextMeaning(nextAt))?.kind === 'day'
        )
      ) {
        use(told!);
        for (const draft of group) {
          if (state === 'fine') draft.fine = true;
          else draft.deed = state as Deed;
        }
        deed = null;
        inRun = false;
        return nextAt;
      }
      // "It's milk and eggs": what is in it.
      if (
        told?.kind === 'thing' &&
        group.length > 0 &&
        onward(at - 1)?.kind === 'pointer' &&
        lexicon.allergenOf(told.mention.words ?? '')
      )
        role = 'contents';
      else if (told?.kind !== 'thing' || onward(at - 1)?.kind !== 'pointer') inRun = false;
      return at;
    }
    if (is(chunk, 'with')) {
      use(chunk);
      // "With the milk" is where it stands; no rule of mine.
      if (next?.kind !== 'marker' && next?.kind !== 'container' && !is(next, 'without')) leave(chunk);
      return at;
    }
    if (is(chunk, 'has') && !deedIn(chunk)) {
      use(chunk);
      if (next?.kind === 'thing' || is(next, 'no')) role = 'contents';
      return at;
    }
    const state = stateIn(chunk);
    if (
      state &&
      inRun &&
      group.length > 0 &&
      onward(nextAt)?.kind !== 'thing' &&
      onward(nextAt)?.kind !== 'pointer' &&
      !afterDay
    ) {
      use(chunk);
      for (const draft of group) {
        if (state === 'fine') draft.fine = true;
        else if (draft.deed === null || weak.has(draft.deed)) draft.deed = state as Deed;
      }
      inRun = false;
      return at;
    }
    // "In the bread bin": no throwing away, but a place nobody told of.
    if (
      deedIn(chunk) &&
      onward(at - 1)?.kind === 'thing' &&
      is(onward(at - 2), 'a') &&
      is(onward(at - 3), 'prep')
    ) {
      leave(chunk);
      return at;
    }
    const told = deedIn(chunk);
    if (told) return takeDeed(chunk, at);
    if (
      is(chunk, 'in-it') &&
      next?.kind !== 'place' &&
      next?.kind !== 'container' &&
      next?.kind !== 'marker'
    ) {
      use(chunk);
      return at;
    }
    if (is(chunk, 'mine')) {
      use(chunk);
      for (const draft of implied()) draft.owner = { words: 'me', candidates: [] };
      return at;
    }
    if (is(chunk, 'for') && next?.kind === 'person') {
      use(chunk);
      use(next);
      for (const draft of implied()) draft.owner = { words: next.words, candidates: next.candidates };
      return nextAt;
    }
    if (is(chunk, 'by', 'from') && next?.kind === 'person') {
      use(chunk);
      use(next);
      for (const draft of implied()) draft.maker = next.words;
      return nextAt;
    }
    if (is(chunk, 'from') && next?.kind === 'place') {
      use(chunk);
      return takePlace(nextAt, false, true);
    }
    if (is(chunk, 'by', 'from') && next?.kind === 'thing' && last().contains.length > 0) {
      use(chunk);
      use(next);
      return nextAt;
    }
    if (is(chunk, 'direction', 'prep') && next?.kind === 'place') {
      use(chunk);
      return takePlace(nextAt, is(chunk, 'direction') && !is(chunk, 'prep'), false);
    }
    if (
      is(chunk, 'prep') &&
      (next?.kind === 'marker' || next?.kind === 'thing') &&
      drafts.length > 0 &&
      drafts.at(-1)!.place &&
      !is(chunk, 'in-it')
    ) {
      const draft = last();
      use(chunk);
      use(next);
      if (draft.place) draft.place = { ...draft.place, spot: tokens.slice(chunk.from, next.to).join(' ') };
      return nextAt;
    }
    if (is(chunk, 'diet')) {
      use(chunk);
      const diet = tokens.slice(chunk.from, chunk.to).join(' ');
      last().diets.push(diet);
      return at;
    }
    if (is(chunk, 'whole')) {
      use(chunk);
      whole = drafts.length > 0;
      if (!whole) definite = true;
      return at;
    }
    if (is(chunk, 'i')) {
      use(chunk);
      subject = 'me';
      return at;
    }
    if (is(chunk, 'a')) {
      use(chunk);
      const said = tokens.slice(chunk.from, chunk.to);
      if (
        said.some((one) =>
          ['the', 'that', 'this', 'my', 'our', 'these', 'those', 'your', 'her', 'his', 'their'].includes(one),
        )
      )
        definite = true;
      if (said.some((one) => ['more', 'another', 'new', 'fresh', 'extra'].includes(one))) fresh = true;
      return at;
    }
    if (is(chunk, 'and')) {
      use(chunk);
      return at;
    }
    if (is(chunk, 'each') && group.length > 0) {
      use(chunk);
      if (run.length > 1) group = run;
      return at;
    }
    if (
      is(
        chunk,
        'fill',
        'so',
        'but',
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
        'is-not',
      )
    ) {
      if (is(chunk, 'is-not')) return null;
      use(chunk);
      if (!is(chunk, 'fill', 'of')) inRun = inRun && is(chunk, 'that');
      return at;
    }
    leave(chunk);
    return at;
  };

  /** "The top, no the middle shelf"; "in the middle", after a shelf was named. */
  const position = (chunk: Word, at: number): number => {
    const there = lastKind ? placeLike([...tokens.slice(chunk.from, chunk.to), lastKind], rules) : null;
    if (is(onward(at + 1), 'repair')) use(chunk);
    else if (there && (there.candidates[0]?.fit ?? 0) >= 0.7) {
      use(chunk);
      setPlace(there, false);
      inRun = false;
    } else if (is(chunk, 'fill')) use(chunk);
    else leave(chunk);
    return at;
  };

  /** "No added salt", "no nuts": what it lacks, and no repair. */
  const lacksNext = (at: number): boolean => {
    const chunk = onward(at);
    const words = chunk?.kind === 'thing' ? (chunk.mention.words ?? '') : '';
    return lexicon.dietWithout(words) !== undefined || lexicon.allergenOf(words) !== undefined;
  };

  const takeDeed = (chunk: Word, at: number): number | null => {
    const all = deedsIn(chunk);
    const nextAt = nextMeaning(at);
    const next = onward(nextAt);
    use(chunk);
    const told = all.find((one) => !weak.has(one)) ?? all[0]!;
    // "I have put", "there is … opened": the stronger verb says it.
    if (
      weak.has(told) &&
      next?.kind === 'word' &&
      deedsIn(next).some((one) => !weak.has(one) || one === 'stored') &&
      !is(next, 'listed')
    )
      return at;
    if (told === 'listed' || told === 'unlisted') {
      const things = drafts.filter(
        ({ deed: one }) => one === null || weak.has(one) || one === 'took' || one === 'made',
      );
      for (const draft of things) draft.deed = told;
      deed = told;
      inRun = things.length > 0 && onward(nextAt)?.kind !== 'thing' ? inRun : false;
      return at;
    }
    if (told === 'made' && subject !== null && subject !== 'me') {
      // "Sam made it".
      if (next?.kind === 'pointer' || drafts.length > 0) {
        const who = subject;
        if (next?.kind === 'pointer') {
          deed = null;
          if (!pointer(next)) return null;
        }
        for (const draft of implied()) draft.maker = who;
        dateKind = onward(nextMeaning(nextAt))?.kind === 'day' ? 'made' : null;
        subject = null;
        return next?.kind === 'pointer' ? nextAt : at;
      }
      maker = subject;
    } else if (told === 'made' && subject === 'me') maker = 'me';
    else if (told === 'given-in' && subject !== null && subject !== 'me') maker = subject;
    if (told !== 'made' && told !== 'given-in') maker = undefined;
    const aboutGroup =
      drafts.length > 0 &&
      next?.kind !== 'thing' &&
      next?.kind !== 'amount' &&
      next?.kind !== 'share' &&
      next?.kind !== 'number' &&
      next?.kind !== 'container';
    if (aboutGroup && next?.kind !== 'pointer') {
      // "The pesto I opened", "goulash, made Monday": of what was just named.
      for (const draft of group) applyDeed(draft, told);
      if (maker) for (const draft of group) draft.maker = maker;
      inRun = false;
      return at;
    }
    deed = told;
    if (!weak.has(told)) place = undefined;
    inRun = false;
    role = 'thing';
    if (told === 'made' && next?.kind === 'pointer') {
      const who = subject;
      if (!pointer(next)) return null;
      if (who) for (const draft of implied()) draft.maker = who;
      dateKind = 'made';
      maker = undefined;
      return nextAt;
    }
    return at;
  };

  for (let at = 0; at < chunks.length; at += 1) {
    const chunk = chunks[at]!;
    let next: number | null = at;
    switch (chunk.kind) {
      case 'thing':
        next = thing(chunk, at);
        break;
      case 'pointer':
        if (!pointer(chunk)) leave(chunk);
        break;
      case 'place':
        next = takePlace(at, false, false);
        break;
      case 'amount':
      case 'number':
        next = takeAmount(chunk, at);
        break;
      case 'share':
        next = takeShare(chunk, at);
        break;
      case 'day':
        takeDay(chunk);
        break;
      case 'person':
        if (!takePerson(chunk, at)) leave(chunk);
        break;
      case 'marker':
        use(chunk);
        last().marker = chunk.mention;
        break;
      case 'container':
        use(chunk);
        if (drafts.length > 0 && onward(at + 1)?.kind !== 'thing' && !is(onward(at + 1), 'of'))
          last().container = chunk.touch;
        else container = chunk.touch;
        break;
      case 'word':
        next = word(chunk, at);
        break;
      default:
        leave(chunk);
    }
    if (next === null) return null;
    at = next;
  }
  if (drafts.length === 0) return null;
  return { drafts, used, left };
};

/** Costs of a word that nothing took, natural logarithm. */
const leftCost = 1.5;

export const statementsProposal = (
  chunks: readonly Chunk[],
  cost: number,
  tokens: readonly string[],
  rules: DynamicRules,
  lexicon: MovesLexicon,
): Proposal | null => {
  const made = assemble({ chunks, tokens, rules, lexicon });
  if (!made) return null;
  const told = made.drafts.filter((draft) => !draft.fine || draft.deed !== null);
  const statements = told.filter((draft) => saysSomething(draft) && !guessedName(draft)).map(statementOf);
  if (statements.length === 0) return null;
  // A bare name with nothing said of it is no part of what is told, nor is a word that only might be a name.
  const bare = told.filter((draft) => !saysSomething(draft) || guessedName(draft));
  const left = [...made.left, ...bare.flatMap((draft) => wordsOf(draft, tokens))];
  return {
    acts: [
      {
        intent: 'tell',
        slots: { statements, ...(left.length > 0 ? { unused: left.map((at) => tokens[at]!) } : {}) },
      },
    ],
    mood: 'told',
    used: made.used,
    left,
    score: -cost / 2 - leftCost * left.length,
    by: 'statements',
  };
};

/** Nobody's word for a food, with nothing that foods are told with: an amount, a place, that it was made or bought. */
const guessedName = ({ thing, open, amount, place, parts, deed }: Draft): boolean => {
  if (thing === null || thing.words === null) return false;
  const placed = place !== undefined || parts.length > 0;
  if (open && deed === null && amount === undefined) return true;
  if (open) return !placed && deed !== 'made' && deed !== 'bought' && deed !== 'listed';
  return !placed && amount === undefined && deed === 'stored';
};

const wordsOf = ({ thing }: Draft, tokens: readonly string[]): readonly number[] => {
  const words = thing?.words?.split(' ') ?? [];
  return tokens.flatMap((token, at) => (words.includes(token) ? [at] : []));
};
