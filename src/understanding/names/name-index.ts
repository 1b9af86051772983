/**
 * Names of one kind, by word, by pair of words, by whole name and by sound. Adding and removing
 * cost as much as the name is long; looking up is bounded, whatever the number of names.
 */
import { LRUCache } from 'lru-cache';
import type { Candidate } from '../intents.js';
import { wordFormsOf } from '../languages/index.js';
import type { Lexicon } from '../words/lexicon.js';
import type { NamedAt } from './api.js';
import { confusionsOf } from './confusables.js';
import { createSoundIndex, type SoundEntry } from './sound-index.js';
import { joinedSounds, soundsOf, waysToSay } from './sounds.js';
import { contentStems, joiningWords, stemOf, withoutPossessive } from './stems.js';

export interface Named {
  readonly id: string;
  readonly names: readonly string[];
  /** Names it has elsewhere, and how well each fits. */
  readonly others?: readonly { readonly name: string; readonly fit: number }[];
  readonly gone: boolean;
}

/** One name of one record. */
interface Entry {
  readonly id: string;
  readonly stems: readonly string[];
  readonly gone: boolean;
  /** How well the whole name fits: less than 1 for one it has elsewhere. */
  readonly fit: number;
}
interface Posting {
  readonly living: Set<Entry>;
  readonly gone: Set<Entry>;
  readonly sounds: readonly SoundEntry[];
}

/** A stretch of a sentence read as names. */
export interface NameSpan {
  readonly length: number;
  /** Best first, at most `mostCandidates`. */
  readonly candidates: readonly Candidate[];
  /** 0 to 1: how surely these words were said, whatever they name. */
  readonly likeness: number;
}

export interface NameIndex {
  set(record: Named): void;
  remove(id: string): void;
  readonly size: number;
  /** Spans from `from`, one a length. */
  spansAt(tokens: readonly string[], from: number): NameSpan[];
  /** True when some name holds a word of this stem. */
  hasStem(stem: string): boolean;
  /** Every record some word of whose names stands among these. */
  holding(tokens: readonly string[]): readonly Omit<NamedAt, 'kind'>[];
}

const mostCandidates = 8;
/** Records looked at for one span. */
const mostScored = 64;
const mostWords = 6;
const mostChains = 24;
const longestJoin = 4;
/** A name that was only heard by sound is never as sure as one said word for word. */
const heardFit = 0.92;
const goneFit = 0.9;
/** A name's head says what the thing is: "chicken" alone is hardly the chicken broth. */
const headlessFit = 0.87;

interface Segment {
  readonly stems: readonly string[];
  readonly length: number;
  readonly fit: number;
}
interface Chain {
  readonly stems: readonly string[];
  readonly end: number;
  readonly fit: number;
}

const key = (stems: readonly string[]): string => stems.join(' ');

/** Where `part` lies in `whole` in the same order: whether all was found, and the first and the last word were. */
const inOrder = (
  part: readonly string[],
  whole: readonly string[],
): { all: boolean; first: boolean; last: boolean } => {
  let at = 0;
  let last = false;
  const first = part[0] === whole[0];
  for (const stem of part) {
    const found = whole.indexOf(stem, at);
    if (found < 0) return { all: false, first: false, last: false };
    last = found === whole.length - 1;
    at = found + 1;
  }
  return { all: true, first, last };
};

export const createNameIndex = (lexicon: Lexicon): NameIndex => {
  const records = new Map<string, Entry[]>();
  const words = new Map<string, Posting>();
  const pairs = new Map<string, Posting>();
  const wholes = new Map<string, Posting>();
  const sounds = createSoundIndex();
  const { inside, stops, articles, counting } = joiningWords(lexicon);
  const { headFirst, joinAt } = wordFormsOf(lexicon.language);
  // What a token or a run of tokens sounds like, until a word comes or goes.
  const heard = new LRUCache<string, readonly Segment[]>({ max: 5000 });

  const put = (
    table: Map<string, Posting>,
    at: string,
    entry: Entry,
    sounding: () => readonly SoundEntry[],
  ): void => {
    let posting = table.get(at);
    if (!posting) {
      posting = { living: new Set(), gone: new Set(), sounds: sounding() };
      table.set(at, posting);
      for (const sound of posting.sounds) sounds.add(sound);
      if (posting.sounds.length > 0) heard.clear();
    }
    (entry.gone ? posting.gone : posting.living).add(entry);
  };
  const drop = (table: Map<string, Posting>, at: string, entry: Entry): void => {
    const posting = table.get(at);
    if (!posting) return;
    posting.living.delete(entry);
    posting.gone.delete(entry);
    if (posting.living.size + posting.gone.size > 0) return;
    table.delete(at);
    for (const sound of posting.sounds) sounds.remove(sound);
    if (posting.sounds.length > 0) heard.clear();
  };
  const pairsOf = (stems: readonly string[]): string[] =>
    stems.slice(1).map((stem, at) => `${stems[at]} ${stem}`);

  const add = (entry: Entry, said: readonly string[]): void => {
    const saidFor = new Map(said.map((word) => [stemOf(word, lexicon), word]));
    for (const stem of new Set(entry.stems)) {
      put(words, stem, entry, () =>
        waysToSay(saidFor.get(stem) ?? stem, lexicon).map((way) => ({ sounds: way, stems: [stem] })),
      );
    }
    for (const pair of pairsOf(entry.stems)) put(pairs, pair, entry, () => []);
    put(wholes, key(entry.stems), entry, () =>
      entry.stems.length > 1 && entry.stems.length <= longestJoin
        ? [{ sounds: joinedSounds(said, lexicon), stems: entry.stems }]
        : [],
    );
  };
  const removeEntry = (entry: Entry): void => {
    for (const stem of new Set(entry.stems)) drop(words, stem, entry);
    for (const pair of pairsOf(entry.stems)) drop(pairs, pair, entry);
    drop(wholes, key(entry.stems), entry);
  };

  const remove = (id: string): void => {
    for (const entry of records.get(id) ?? []) removeEntry(entry);
    records.delete(id);
  };

  const soundSegments = (tokens: readonly string[], from: number, length: number): readonly Segment[] => {
    const run = length === 1 ? tokens[from]! : tokens.slice(from, from + length).join(' ');
    const known = heard.get(run);
    if (known) return known;
    const spoken =
      length === 1 ? soundsOf(withoutPossessive(run), lexicon) : joinedSounds(run.split(' '), lexicon);
    const segments = sounds
      .like(spoken)
      .map(({ entry, likeness }) => ({ stems: entry.stems, length, fit: heardFit * likeness ** 2 }));
    heard.set(run, segments);
    return segments;
  };

  /** Every way to read the tokens at `at` as words of names. */
  const segmentsAt = (tokens: readonly string[], at: number): Segment[] => {
    const token = tokens[at];
    if (token === undefined) return [];
    const segments: Segment[] = [];
    const stem = stemOf(token, lexicon);
    const exact = words.has(stem);
    if (exact) segments.push({ stems: [stem], length: 1, fit: 1 });
    const stop = stops.has(token) || articles.has(token) || inside.has(token);
    if (!stop && !counting.has(token) && token.length > 2 && !/\d/.test(token)) {
      for (const segment of soundSegments(tokens, at, 1)) {
        // A word she has is what she said; only a word of the same sound may stand beside it.
        if (exact && (segment.fit < heardFit * 0.98 || segment.stems[0] === stem)) continue;
        segments.push(segment);
      }
      for (const [other, fit] of confusionsOf(token, lexicon)) {
        const otherStem = stemOf(other, lexicon);
        if (otherStem !== stem && words.has(otherStem)) segments.push({ stems: [otherStem], length: 1, fit });
      }
    }
    if (stop && !exact) return segments;
    for (let length = 2; length <= longestJoin && at + length <= tokens.length; length += 1) {
      const run = tokens.slice(at, at + length);
      if (run.every((part) => words.has(stemOf(part, lexicon)))) continue;
      if (run.some((part) => /[\d:/]/.test(part))) break;
      // A joined run must take in letters that matter, not only small words around a known one.
      const carrying = run.filter((part) => !stops.has(part) && !articles.has(part));
      const carried = key(carrying.map((part) => stemOf(part, lexicon)));
      const exact = new Set(run.map((part) => stemOf(part, lexicon)).filter((stem) => words.has(stem)));
      const counted = carrying.filter((part) => counting.has(part)).map((part) => stemOf(part, lexicon));
      for (const segment of soundSegments(tokens, at, length)) {
        // Other words around a known one are no mishearing of it, and neither is one number for another.
        if (key(segment.stems) === carried || segment.stems.every((stem) => exact.has(stem))) continue;
        if (counted.some((stem) => !segment.stems.includes(stem))) continue;
        segments.push(segment);
      }
    }
    return segments;
  };

  /** Records that hold the stems in order: whole names first, then living, then gone. */
  const entriesOf = (stems: readonly string[]): Entry[] => {
    const found = new Set<Entry>();
    const take = (posting: Posting | undefined, check: boolean): void => {
      for (const entries of [posting?.living, posting?.gone]) {
        let looked = 0;
        for (const entry of entries ?? []) {
          if (looked >= mostScored / 2 || found.size >= mostScored) break;
          looked += 1;
          if (!check || inOrder(stems, entry.stems).all) found.add(entry);
        }
      }
    };
    take(wholes.get(key(stems)), false);
    if (stems.length === 1) take(words.get(stems[0]!), false);
    else {
      for (const pair of pairsOf(stems)) take(pairs.get(pair), true);
      let rarest: Posting | undefined;
      for (const stem of stems) {
        const posting = words.get(stem);
        if (!posting) return [];
        const size = posting.living.size + posting.gone.size;
        if (!rarest || size < rarest.living.size + rarest.gone.size) rarest = posting;
      }
      if (found.size < mostCandidates) take(rarest, true);
    }
    return [...found];
  };

  const candidateOf = (entry: Entry, chain: Chain): Candidate => {
    const covered = chain.stems.length / entry.stems.length;
    const { first, last } = inOrder(chain.stems, entry.stems);
    const head = headFirst ? first : last;
    const fit =
      chain.fit *
      (0.6 + 0.4 * Math.min(1, covered)) *
      (head ? 1 : headlessFit) *
      (entry.gone ? goneFit : 1) *
      entry.fit;
    return { id: entry.id, fit: Math.round(fit * 1000) / 1000 };
  };

  const spansAt = (tokens: readonly string[], from: number): NameSpan[] => {
    let chains: Chain[] = segmentsAt(tokens, from).map((segment) => ({
      stems: segment.stems,
      end: from + segment.length,
      fit: segment.fit,
    }));
    const byLength = new Map<number, { best: Map<string, number>; likeness: number }>();
    for (let round = 0; round < mostWords && chains.length > 0; round += 1) {
      const next: Chain[] = [];
      for (const chain of chains.sort((a, b) => b.fit - a.fit).slice(0, mostChains)) {
        const length = chain.end - from;
        // A small word alone is a word of the sentence ("using up"), not half of "stand-up freezer".
        const small = tokens.slice(from, chain.end).every((token) => stops.has(token));
        const entries = entriesOf(chain.stems).filter(
          ({ stems }) => !small || stems.length === chain.stems.length,
        );
        if (entries.length === 0 && !small) continue;
        let span = byLength.get(length);
        if (!span && entries.length > 0) byLength.set(length, (span = { best: new Map(), likeness: 0 }));
        if (span) span.likeness = Math.max(span.likeness, chain.fit);
        for (const entry of entries) {
          const { id, fit } = candidateOf(entry, chain);
          if (span && fit > (span.best.get(id) ?? 0)) span.best.set(id, fit);
        }
        const joins = inside.has(tokens[chain.end] ?? '') && !words.has(tokens[chain.end]!) ? 1 : 0;
        const joiner = Math.max(joins, joins && joinAt(tokens, chain.end));
        for (const segment of segmentsAt(tokens, chain.end + joiner)) {
          const many = chain.stems.length;
          next.push({
            stems: [...chain.stems, ...segment.stems],
            end: chain.end + joiner + segment.length,
            fit: (chain.fit * many + segment.fit * segment.stems.length) / (many + segment.stems.length),
          });
        }
      }
      chains = next;
    }
    return [...byLength].map(([length, { best, likeness }]) => ({
      length,
      likeness,
      candidates: [...best]
        .map(([id, fit]) => ({ id, fit }))
        .sort((a, b) => b.fit - a.fit)
        .slice(0, mostCandidates),
    }));
  };

  return {
    set(record) {
      remove(record.id);
      const entries = [...record.names.map((name) => ({ name, fit: 1 })), ...(record.others ?? [])]
        .map(({ name, fit }) => ({
          fit,
          said: name
            .toLowerCase()
            .normalize('NFC')
            .split(/[^\p{L}\p{M}\p{N}']+/u)
            .filter(Boolean),
        }))
        .filter(({ said }) => said.length > 0)
        .map(({ said, fit }) => ({
          said,
          entry: { id: record.id, stems: contentStems(said, lexicon), gone: record.gone, fit },
        }));
      for (const { said, entry } of entries) add(entry, said);
      records.set(
        record.id,
        entries.map(({ entry }) => entry),
      );
    },
    remove,
    get size() {
      return records.size;
    },
    spansAt,
    hasStem: (stem) => words.has(stem),
    holding(tokens) {
      const stems = tokens.map((token) => stemOf(token, lexicon));
      const said = new Set(stems);
      const found = new Map<string, { readonly id: string; readonly at: Set<number>; whole: boolean }>();
      for (const [at, stem] of stems.entries()) {
        const posting = words.get(stem);
        if (!posting) continue;
        for (const entry of [...posting.living, ...posting.gone]) {
          const one = found.get(entry.id) ?? { id: entry.id, at: new Set<number>(), whole: false };
          one.at.add(at);
          one.whole ||= entry.fit === 1 && entry.stems.every((part) => said.has(part));
          found.set(entry.id, one);
        }
      }
      return [...found.values()].map(({ id, at, whole }) => ({ id, at: [...at], whole }));
    },
  };
};
