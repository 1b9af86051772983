/**
 * What a sentence names, whatever its wording: things, places, people, amounts and days, put into
 * the slots that its request takes. What is missing is left out; the talk asks for it.
 */
import type { DynamicRules, SemanticValue } from '../../grammar/api.js';
import type { Intent, Mention, Pointer, Slots } from '../intents.js';
import {
  asAmount,
  asDate,
  asPlace,
  asShare,
  markerMention,
  namedMention,
  pointed,
  wordsMention,
} from '../meaning-parts.js';
import { goodsRank, type Piece, type PieceKind } from './pieces.js';

/** A sentence with what was found in it. */
export interface Found {
  readonly tokens: readonly string[];
  readonly pieces: readonly Piece[];
  readonly rules: DynamicRules;
  /** True for words that no request is known by: perhaps a name never heard. */
  readonly isStrange: (word: string) => boolean;
}

type Draft = { -readonly [K in keyof Slots]: Slots[K] };

const setOf = (...intents: Intent[]): ReadonlySet<Intent> => new Set(intents);

/** Requests about a thing: without one, "it" is meant. */
const needsItem = setOf(
  'put-away',
  'take',
  'finish',
  'move',
  'open',
  'freeze',
  'thaw',
  'reheated',
  'put-back',
  'split',
  'merge',
  'mark',
  'count',
  'tell-about',
  'how-old',
  'item-date',
  'keeps',
  'reheat',
  'thaw-plan',
  'cook-temperature',
  'left-out',
  'buy-add',
  'buy-remove',
  'amend',
);
/** Requests about something of this kitchen: a thing, a place, somebody or a marker. */
const needsAnything = setOf(
  'find',
  'who-did',
  'contains',
  'can-eat',
  'how-to-reach',
  'unmark',
  'whats-this',
  'rename-place',
  'build-place',
  'remove-place',
  'add-person',
  'leave-note',
);
const mayNameItem = setOf(
  'find',
  'unmark',
  'who-did',
  'contains',
  'can-eat',
  'how-to-reach',
  'buy-read',
  'buy-got',
  'leave-note',
  'set-timer',
  'change-timer',
  'cancel-timer',
  'timers',
  'set-reminder',
  'cancel-reminder',
  'use-first',
  'undo',
  'spell',
);
const takesSeveral = setOf('buy-add', 'buy-remove', 'buy-got', 'finish');
const takesPlace = setOf(
  'put-away',
  'take',
  'move',
  'freeze',
  'thaw',
  'put-back',
  'find',
  'count',
  'tell-about',
  'whats-this',
  'how-old',
  'keeps',
  'use-first',
  'no-date',
  'left-out',
  'what-changed',
  'how-to-reach',
  'place-state',
  'rename-place',
  'remove-place',
  'build-place',
  'start-count',
  'summary',
  'skip-to',
  'leave-note',
  'set-reminder',
  'split',
  'finish',
  'open',
  'power-cut',
  'power-back',
  'who-did',
);
const takesMarker = setOf(
  'mark',
  'define-dots',
  'unmark',
  'add-marker',
  'marker-note',
  'marker-care',
  'markers',
  'whats-this',
  'find',
);
const takesAmount = setOf('put-away', 'take', 'move', 'freeze', 'thaw', 'split', 'buy-add', 'amend');
const takesPerson = setOf(
  'who-did',
  'can-eat',
  'add-person',
  'leave-note',
  'notes',
  'who-allergic',
  'what-changed',
  'people',
);
const takesLength = setOf('set-timer', 'change-timer', 'left-out', 'set-reminder', 'power-cut');
const takesTime = setOf('left-out', 'power-cut', 'power-back', 'set-reminder');
const takesDay = setOf('use-first', 'what-changed', 'who-did', 'thaw-plan', 'set-reminder', 'keeps');
const ahead = setOf('thaw-plan', 'set-reminder');
const datedAs: Partial<Record<Intent, 'opened' | 'frozen' | 'thawed' | 'made'>> = {
  open: 'opened',
  freeze: 'frozen',
  thaw: 'thawed',
};

const pointers: ReadonlyMap<string, Pointer> = new Map([
  ['it', 'it'],
  ['this', 'this'],
  ['that', 'that'],
  ['them', 'them'],
  ['these', 'this'],
  ['those', 'them'],
]);

const matchAt = (found: Found, uri: string, at: number) =>
  [...(found.rules.get(uri)?.matchesAt(found.tokens, at) ?? [])].sort((a, b) => b.length - a.length)[0];

const ofKind = ({ pieces }: Found, kind: PieceKind): readonly Piece[] =>
  pieces.filter((piece) => piece.kind === kind);

/** Places are not things, and neither are things within a day's name: the first match outside any piece but `allowed`. */
const firstOutside = (found: Found, uri: string): SemanticValue | undefined => {
  const taken = new Set(
    found.pieces
      .filter(({ kind }) => kind === 'food' || kind === 'place' || kind === 'day')
      .flatMap(({ from, length }) => Array.from({ length }, (_, step) => from + step)),
  );
  for (let at = 0; at < found.tokens.length; at += 1) {
    const match = taken.has(at) ? undefined : matchAt(found, uri, at);
    if (match && !Array.from({ length: match.length }, (_, step) => at + step).some((one) => taken.has(one)))
      return match.value;
  }
  return undefined;
};

/** The longest run of words that no request is known by: a food not met before. */
const strangeName = ({ pieces, isStrange }: Found): Mention | null => {
  let best: readonly Piece[] = [];
  let run: Piece[] = [];
  for (const piece of pieces) {
    if (piece.kind === null && isStrange(piece.text)) run.push(piece);
    else run = [];
    if (run.length > best.length) best = [...run];
  }
  return best.length === 0 ? null : wordsMention(best.map(({ text }) => text).join(' '));
};

/** "lavender honey": strange words before a food that is not hers belong to its name. */
const withStrangeBefore = ({ pieces, isStrange }: Found, food: Piece): Mention => {
  const mention = namedMention(food.value!);
  if (mention.candidates.length > 0) return mention;
  let words = mention.words ?? '';
  for (let at = pieces.indexOf(food) - 1; at >= 0; at -= 1) {
    const { kind, text } = pieces[at]!;
    if (kind !== null || !isStrange(text)) break;
    words = `${text} ${words}`;
  }
  return { ...mention, words };
};

/** Foods, her own before others and those before goods, without what is part of a marker's description. */
const foodsIn = (found: Found, but: readonly [from: number, to: number] | null): readonly Mention[] => {
  const apart = ofKind(found, 'food').filter(
    ({ from, length }) => but === null || from >= but[1] || from + length <= but[0],
  );
  const foods = apart.filter(({ rank }) => rank < goodsRank);
  return (foods.length > 0 ? foods : apart)
    .toSorted((a, b) => a.rank - b.rank || a.from - b.from)
    .map((food) => withStrangeBefore(found, food))
    .filter(({ words }, at, all) => all.findIndex((other) => other.words === words) === at);
};

const itemsIn = (found: Found, but: readonly [from: number, to: number] | null): readonly Mention[] => {
  const foods = foodsIn(found, but);
  if (foods.length > 0) return foods;
  const strange = strangeName(found);
  return strange ? [strange] : [];
};

const pointerIn = ({ tokens }: Found): Pointer | null => {
  const word = tokens.find((token) => pointers.has(token));
  return word === undefined ? null : pointers.get(word)!;
};

interface Marker {
  readonly span: readonly [from: number, to: number];
  readonly mention: Mention;
}

/** Best of what was said of touch: a marker is known by what it is fastened with, its shape or what is counted on it. */
const markerIn = (found: Found): Marker | null => {
  let best: Marker | null = null;
  for (let at = 0; at < found.tokens.length; at += 1) {
    const match = matchAt(found, 'kitchen:marker', at);
    if (!match || match.length <= (best ? best.span[1] - best.span[0] : 0)) continue;
    const mention = markerMention(match.value);
    const { fastening, dots, counted, shape } = mention.touch ?? {};
    if ((fastening ?? dots ?? counted ?? shape) !== undefined)
      best = { span: [at, at + match.length], mention };
  }
  return best;
};

const before = ({ tokens }: Found, { from }: Piece, words: readonly string[]): boolean => {
  const skipped = ['the', 'my', 'our', 'that'].includes(tokens[from - 1] ?? '') ? from - 2 : from - 1;
  return words.includes(tokens[skipped] ?? '');
};

/** Places that are surely meant, and where there are none also half-known ones ("the freezer" of two). */
const placesIn = (found: Found): readonly Piece[] => {
  const sure = ofKind(found, 'place');
  const taken = new Set(
    found.pieces
      .filter(({ kind }) => kind !== null)
      .flatMap(({ from, length }) => Array.from({ length }, (_, step) => from + step)),
  );
  const half: Piece[] = [];
  for (let at = 0; at < found.tokens.length; at += 1) {
    const match = taken.has(at) ? undefined : matchAt(found, 'kitchen:place', at);
    if (!match) continue;
    half.push({
      kind: 'place',
      text: '<place>',
      from: at,
      length: match.length,
      value: match.value,
      rank: 0,
    });
    at += match.length - 1;
  }
  return [...sure, ...half].toSorted((a, b) => a.from - b.from);
};

const putPlaces = (found: Found, intent: Intent, slots: Draft): void => {
  // "Not the freezer, what wants using": the one place that is not asked of.
  const places = placesIn(found).filter((piece) => !before(found, piece, ['not']));
  const mention = (piece: Piece) => asPlace({ named: piece.value! });
  if (intent === 'move') {
    const from =
      places.find((piece) => before(found, piece, ['from', 'of', 'off'])) ??
      (places.length > 1 ? places[0] : undefined);
    const to = places.findLast((piece) => piece !== from);
    if (from) slots.from = mention(from);
    if (to) slots.place = mention(to);
    // "I'm out in the garage, let's check the left bin": what is gone through is named last.
  } else if (intent === 'start-count' && places.length > 1) slots.place = mention(places.at(-1)!);
  else if (places[0]) slots.place = mention(places[0]);
};

/** Words after the last of `cues`, up to the end. */
const wordsAfter = ({ tokens }: Found, cues: readonly string[], from = 0): string | null => {
  const at = tokens.findIndex((token, index) => index >= from && cues.includes(token));
  const rest = at < 0 ? [] : tokens.slice(at + 1);
  return rest.length === 0 ? null : rest.join(' ');
};

/** Numbers said, in order. */
const countsIn = (found: Found): readonly number[] => {
  const counts: number[] = [];
  for (let at = 0; at < found.tokens.length;) {
    const match = matchAt(found, 'builtin:grammar/number', at);
    if (typeof match?.value === 'number') counts.push(match.value);
    at += match?.length ?? 1;
  }
  return counts;
};

const countedKinds = ['dot', 'knot', 'ridge', 'notch'] as const;
const countedIn = ({ tokens }: Found) =>
  countedKinds.find((kind) =>
    tokens.some((token) => token === kind || token === `${kind}s` || token === `${kind}es`),
  );

const putWords = (found: Found, intent: Intent, slots: Draft): void => {
  const people = ofKind(found, 'person');
  const said =
    intent === 'leave-note' && people[0]
      ? (wordsAfter(found, ['that', 'saying', 'to', 'say', 'know'], people[0].from + 1) ??
        found.tokens.slice(people[0].from + people[0].length).join(' '))
      : intent === 'set-reminder'
        ? (wordsAfter(found, ['to', 'about', 'forget', 'that', 'whether']) ?? found.tokens.join(' '))
        : intent === 'rename-place' && ofKind(found, 'place')[0]
          ? wordsAfter(found, ['as', 'be', 'called', 'to', 'it', 'say'], ofKind(found, 'place')[0]!.from + 1)
          : // Several counts in one breath have a meaning each: which words are whose is asked.
            intent === 'define-dots' && countsIn(found).length < 2
            ? wordsAfter(found, ['mean', 'means', 'be', 'for', 'is', 'are'])
            : null;
  if (said) slots.words = said.replace(/^(that|to|the|be|is|know|not just) /, '');
};

const putDays = (found: Found, intent: Intent, slots: Draft): void => {
  const [day] = ofKind(found, 'day');
  if (!day) return;
  const lean = ahead.has(intent) ? 'future' : intent === 'use-first' ? 'window' : 'past';
  const match = matchAt(found, `builtin:grammar/date?lean=${lean}`, day.from);
  const said = asDate(match?.value ?? day.value!);
  const kind = datedAs[intent];
  if (kind) slots.dates = { [kind]: said };
  else if (intent === 'put-away') {
    const bought = found.tokens.some((token) => ['bought', 'got', 'buy'].includes(token));
    const made = found.tokens.some((token) => ['made', 'cooked', 'baked', 'make'].includes(token));
    if (bought || made) slots.dates = { [bought ? 'bought' : 'made']: said };
  } else if (takesDay.has(intent)) slots.when = said;
};

/** False where the request lacks what it must be about. */
export const isWhole = (intent: Intent, slots: Slots, { tokens }: Pick<Found, 'tokens'>): boolean => {
  const thing = slots.item !== undefined || slots.items !== undefined;
  if (needsItem.has(intent)) return thing;
  if (!needsAnything.has(intent)) return true;
  const { place, person, marker, allergens } = slots;
  const other = [place, person, marker, allergens].some((slot) => slot !== undefined);
  return thing || other || tokens.some((token) => pointers.has(token));
};

export const slotsFor = (intent: Intent, found: Found): Slots => {
  const slots: Draft = {};
  const marker = takesMarker.has(intent) ? markerIn(found) : null;
  if (needsItem.has(intent) || mayNameItem.has(intent)) {
    const but = marker?.span ?? null;
    const items = needsItem.has(intent) ? itemsIn(found, but) : foodsIn(found, but);
    if (items.length > 1 && takesSeveral.has(intent)) slots.items = items;
    else if (items[0]) slots.item = items[0];
    else if (needsItem.has(intent)) {
      const pointer = pointerIn(found);
      if (pointer) slots.item = pointed(pointer);
    }
  }
  if (takesPlace.has(intent)) putPlaces(found, intent, slots);
  if (marker) {
    if (marker && intent === 'find' && !slots.item)
      slots.item = { ...wordsMention(''), words: null, touch: marker.mention.touch };
    else if (marker && intent !== 'find') slots.marker = marker.mention;
  }
  if (takesPerson.has(intent)) {
    const [who] = ofKind(found, 'person');
    if (who) {
      const { words, candidates } = namedMention(who.value!);
      slots.person = { words: words ?? '', candidates };
    }
  }
  if (takesAmount.has(intent)) {
    const share = intent === 'take' ? firstOutside(found, 'builtin:grammar/share') : undefined;
    const amount = share === undefined ? firstOutside(found, 'builtin:grammar/amount') : undefined;
    if (share !== undefined) {
      const left = found.tokens.some((token) => ['left', 'remaining', 'only', 'down'].includes(token));
      if (left) slots.left = asShare(share);
      else slots.share = asShare(share);
    } else if (amount !== undefined) slots.amount = asAmount(amount);
  }
  const [length] = ofKind(found, 'length');
  if (length && takesLength.has(intent) && typeof length.value === 'number') slots.duration = length.value;
  const [time] = ofKind(found, 'time');
  if (time && takesTime.has(intent) && typeof time.value === 'string') slots.time = time.value;
  const [number] = ofKind(found, 'number');
  if (number && typeof number.value === 'number') {
    if (intent === 'skip-to') slots.ordinal = number.value;
    if (intent === 'split') slots.number = number.value;
  }
  const [count] = intent === 'define-dots' ? countsIn(found) : [];
  if (count !== undefined) slots.dots = count;
  const counted = intent === 'define-dots' ? countedIn(found) : undefined;
  if (counted) slots.counted = counted;
  putDays(found, intent, slots);
  putWords(found, intent, slots);
  return slots;
};
