/**
 * Parts of a meaning: what the shared grammar rules (`things.gram`, `places.gram`, dates,
 * amounts) give, made into the contract's types. A grammar that gives something else is a
 * mistake in its file; it is reported by name, and the tests parse every example.
 */
import { emptyMention } from './intents.js';
import type { SemanticValue } from '../grammar/api.js';
import type { Amount, Share } from '../terms/amount.js';
import { isPlainDate } from '../terms/dates.js';
import type { PlaceStep } from '../protocol/mentions.js';
import type { Touch } from '../terms/touch.js';
import type { Candidate, Mention, PlaceMention, Pointer, SaidDate } from './intents.js';

/** A grammar gave a value that no slot can hold. */
export class MeaningError extends Error {}

export type Raw = Readonly<Record<string, SemanticValue>>;

export const isRaw = (value: SemanticValue | undefined): value is Raw =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

export const asRaw = (value: SemanticValue | undefined, what: string): Raw => {
  if (isRaw(value)) return value;
  throw new MeaningError(`${what} should be an object, but is ${JSON.stringify(value)}`);
};

export const asText = (value: SemanticValue | undefined, what: string): string => {
  if (typeof value === 'string') return value;
  throw new MeaningError(`${what} should be words, but is ${JSON.stringify(value)}`);
};

export const asNumber = (value: SemanticValue | undefined, what: string): number => {
  if (typeof value === 'number') return value;
  throw new MeaningError(`${what} should be a number, but is ${JSON.stringify(value)}`);
};

export const asAmount = (value: SemanticValue | undefined): Amount => {
  const raw = asRaw(value, 'amount');
  const amount = { value: asNumber(raw.value, 'amount.value'), unit: asText(raw.unit, 'amount.unit') };
  return raw.rough === true ? { ...amount, rough: true } : amount;
};

export const asShare = (value: SemanticValue | undefined): Share => {
  const raw = asRaw(value, 'share');
  const share = { fraction: asNumber(raw.fraction, 'share.fraction') };
  return raw.rough === true ? { ...share, rough: true } : share;
};

export const asDate = (value: SemanticValue | undefined): SaidDate => {
  const raw = asRaw(value, 'date');
  const day = asText(raw.day, 'date.day');
  if (!isPlainDate(day)) throw new MeaningError(`date.day is no day: ${day}`);
  return {
    day,
    ...(typeof raw.until === 'string' ? { until: raw.until } : {}),
    ...(raw.rough === true ? { rough: true } : {}),
    ...(raw.monthOnly === true ? { monthOnly: true } : {}),
  };
};

const textParts = ['size', 'container', 'texture', 'shape', 'fastening', 'counted', 'spot'] as const;
const countParts = ['fastenings', 'dots'] as const;

export const asTouch = (value: SemanticValue | undefined): Touch => {
  const raw = asRaw(value, 'touch');
  const touch: { -readonly [K in keyof Touch]: Touch[K] } = {};
  for (const part of textParts) if (typeof raw[part] === 'string') touch[part] = raw[part];
  for (const part of countParts) if (typeof raw[part] === 'number') touch[part] = raw[part];
  return touch;
};

export const asCandidates = (value: SemanticValue | undefined): readonly Candidate[] => {
  if (value === undefined) return [];
  if (!Array.isArray(value)) throw new MeaningError('candidates should be a list');
  return (value as readonly SemanticValue[]).map((entry) => {
    const raw = asRaw(entry, 'candidate');
    return { id: asText(raw.id, 'candidate.id'), fit: asNumber(raw.fit, 'candidate.fit') };
  });
};

/** Who made it. A question takes the name it sounds like; a change is made with the name as it was said. */
export const asMaker = (value: SemanticValue | undefined, asking: boolean): string => {
  const raw = asRaw(value, 'maker');
  return asking && typeof raw.recorded === 'string' ? raw.recorded.toLowerCase() : asNamed(value).words;
};

/** Words of a name match: `{words, candidates, maker}`. */
export const asNamed = (value: SemanticValue | undefined) => {
  const raw = asRaw(value, 'name');
  return {
    words: asText(raw.words, 'name.words'),
    candidates: asCandidates(raw.candidates),
    maker: typeof raw.maker === 'string' ? raw.maker : null,
  };
};

const pointers: ReadonlySet<string> = new Set<Pointer>([
  'it',
  'this',
  'that',
  'them',
  'other',
  'another',
  'same',
  'last-added',
  'all',
  'both',
  'none',
  'rest',
]);
const asPointer = (value: SemanticValue | undefined): Pointer => {
  if (typeof value === 'string' && pointers.has(value)) return value as Pointer;
  throw new MeaningError(`no such pointer: ${JSON.stringify(value)}`);
};

export const pointed = (pointer: SemanticValue | undefined): Mention => ({
  ...emptyMention,
  pointer: asPointer(pointer),
});

/** From `kitchen:item` or `kitchen:food`. */
export const namedMention = (value: SemanticValue | undefined): Mention => {
  const { words, candidates, maker } = asNamed(value);
  return { ...emptyMention, words, candidates, maker };
};

export const wordsMention = (words: string): Mention => ({ ...emptyMention, words });

/** From `kitchen:marker`. */
export const markerMention = (value: SemanticValue | undefined): Mention => {
  const raw = asRaw(value, 'marker');
  return {
    ...emptyMention,
    words: asText(raw.words, 'marker.words'),
    candidates: asCandidates(raw.candidates),
    touch: asTouch(raw.touch),
  };
};

const withoutPreposition = (spot: string): string => spot.replace(/^(on|at|in) /, '').replace(/^the /, '');

export const asPlace = (value: SemanticValue | undefined): PlaceMention => {
  const raw = asRaw(value, 'place');
  const named = raw.named === undefined ? null : asRaw(raw.named, 'place.named');
  const pointer = raw.pointer ?? null;
  if (pointer !== null && pointer !== 'here' && pointer !== 'same' && pointer !== 'other')
    throw new MeaningError(`no such place pointer: ${JSON.stringify(pointer)}`);
  const spot =
    raw.text ?? raw.spot ?? (named && typeof named.spot === 'string' ? (named.spot as string) : null) ?? null;
  return {
    words: named ? asText(named.words, 'place.words') : typeof raw.words === 'string' ? raw.words : null,
    candidates: asCandidates(named?.candidates),
    pointer,
    spot: typeof spot === 'string' ? withoutPreposition(spot) : null,
    ...(named?.path === undefined ? {} : { path: named.path as unknown as readonly PlaceStep[] }),
  };
};

/** What stood beside a mention and belongs to the sentence rather than to the thing. */
export interface Aside {
  /** The request only asks. */
  readonly asking?: boolean;
  from?: SaidDate;
}

const applyAfter = (mention: Mention, value: SemanticValue | undefined, aside: Aside): Mention => {
  if (!isRaw(value)) return mention; // "left", "that is left": adds nothing
  if (value.touch !== undefined)
    return { ...mention, touch: { ...(mention.touch ?? {}), ...asTouch(value.touch) } };
  if (value.at !== undefined) return { ...mention, at: asPlace(value.at) };
  if (value.maker !== undefined) return { ...mention, maker: asMaker(value.maker, aside.asking === true) };
  if (value.from !== undefined) aside.from = asDate(value.from);
  return mention;
};

/** From `$thing`, `$anything`, `$namedthing`. */
export const asMention = (value: SemanticValue | undefined, aside: Aside = {}): Mention => {
  const raw = asRaw(value, 'thing');
  if (raw.pointer !== undefined) return pointed(raw.pointer);
  const phrase = raw.phrase === undefined ? raw : asRaw(raw.phrase, 'thing.phrase');
  let mention: Mention =
    phrase.named !== undefined
      ? namedMention(phrase.named)
      : typeof phrase.words === 'string'
        ? wordsMention(phrase.words)
        : emptyMention;
  if (phrase.ordinal !== undefined) mention = { ...mention, ordinal: asNumber(phrase.ordinal, 'ordinal') };
  if (phrase.touch !== undefined) mention = { ...mention, touch: asTouch(phrase.touch) };
  if (phrase.maker !== undefined)
    mention = { ...mention, maker: asMaker(phrase.maker, aside.asking === true) };
  if (phrase.diet !== undefined) mention = { ...mention, diet: asText(phrase.diet, 'diet') };
  if (phrase.at !== undefined) mention = { ...mention, at: asPlace(phrase.at) };
  if (phrase.marker !== undefined) {
    // "shorter" may be felt, too; a marker is fastened or known.
    const { touch, candidates } = markerMention(phrase.marker);
    if (touch?.fastening !== undefined || candidates.length > 0) mention = { ...mention, touch };
  }
  mention = applyAfter(mention, phrase.after, aside);
  return applyAfter(mention, phrase.after2, aside);
};

/** One thing with how much of it. */
export interface Line {
  readonly mention: Mention;
  readonly amount: Amount | null;
}

const lineOf = (value: SemanticValue | undefined, aside: Aside): Line => {
  const raw = asRaw(value, 'line');
  const amount = raw.amount === undefined ? null : asAmount(raw.amount);
  if (raw.thing !== undefined) return { mention: asMention(raw.thing, aside), amount };
  if (raw.goods !== undefined) return { mention: namedMention(raw.goods), amount };
  return { mention: asMention(raw, aside), amount };
};

/** From `$things` (first, more) and from lists (a, b, c …). */
export const asLines = (value: SemanticValue | undefined, aside: Aside = {}): readonly Line[] => {
  const raw = asRaw(value, 'things');
  if (raw.first !== undefined) {
    const rest = raw.more === undefined ? [] : asLines(raw.more, aside);
    return [{ mention: asMention(raw.first, aside), amount: null }, ...rest];
  }
  const letters = ['a', 'b', 'c', 'd', 'e'].filter((letter) => raw[letter] !== undefined);
  if (letters.length > 0) return letters.map((letter) => lineOf(raw[letter], aside));
  return [lineOf(raw, aside)];
};

export const asTexts = (value: SemanticValue | undefined): readonly string[] => {
  const raw = asRaw(value, 'list');
  return ['a', 'b', 'c', 'd', 'e']
    .filter((letter) => raw[letter] !== undefined)
    .map((letter) => asText(raw[letter], letter));
};
