/**
 * From what a cook calls a food to the reviewed table: synonyms, dish words and how it was treated.
 *
 * English puts the thing itself last ("chicken noodle soup" is soup), and what goes with it after
 * a preposition ("rice with chicken" is rice); the longest name known there is taken.
 */
import type { FoodKind, FoodRow } from '../../shared/tables/schema.js';
import type { CookState, FoodMatch, Where } from './api.js';
import type { MatchCode } from './codes.js';
import { spanEnds } from './days.js';
import { createSpanishNames, type SpanishNames } from './spanish-names.js';
import { safetyTables } from './tables.js';
import type { SafetyTables } from './tables.js';
import { foodWords } from './words.js';

/** What else is known of the food, to choose between raw and cooked. */
export interface MatchHints {
  readonly where?: Where | null;
  readonly state?: CookState;
  /** It was made (not bought), it has a maker, or it was reheated: a cooked dish. */
  readonly homeMade?: boolean;
  /** It has a day it was bought and none it was made: as bought. */
  readonly bought?: boolean;
}

const COOKED_WORDS = new Set(
  `cooked roast roasted grilled baked fried boiled steamed poached braised leftover jerk curried stewed pulled
   barbecued barbecue bbq sauteed mashed reheated seared blackened breaded battered takeaway takeout casseroled`.split(
    /\s+/,
  ),
);
const RAW_WORDS = new Set(['raw', 'uncooked', 'fresh', 'marinated', 'unbaked']);
const CUT_WORDS = new Set([
  'cut',
  'sliced',
  'slice',
  'chopped',
  'diced',
  'peeled',
  'half',
  'grated',
  'shredded',
  'cubed',
  'halved',
]);
const TIN_WORDS = new Set(['tinned', 'canned', 'tin', 'can', 'jarred', 'bottled']);
const GROUND_WORDS = new Set(['ground', 'minced', 'mince']);
/** What makes a green salad one of the chart's: egg, chicken, ham, tuna, macaroni, and their like. */
const SALAD_MEATS = new Set([
  'chicken',
  'egg',
  'ham',
  'tuna',
  'turkey',
  'shrimp',
  'prawn',
  'salmon',
  'crab',
  'bacon',
  'beef',
  'macaroni',
  'mayonnaise',
]);
const JOINING_WORDS = new Set(['with', 'in', 'on', 'from', 'for', 'and', 'without', 'plus', 'by']);
/** Words that say nothing of the food itself, so a match beside them is still exact. */
export const FILLERS: ReadonlySet<string> = new Set(
  `a an the of my our some tub jar bag bowl box pot pack packet portion carton bottle plate piece container tray
   half large small big little old new opened unopened frozen thawed defrosted chilled cold hot organic whole
   homemade home made left over last`.split(/\s+/),
);

interface Found {
  readonly row: FoodRow;
  /** The name it was found by, as the table writes it. */
  readonly name: string;
  readonly from: number;
  readonly to: number;
}
interface Reading {
  readonly found: Found | null;
  /** Every food its words name, the deciding one among them. */
  readonly parts: readonly FoodRow[];
  /** The words of the name that say of what kind it is: the last of each food it names ("butter" of "almond butter"). */
  readonly heads: ReadonlySet<number>;
  /** The name as it was read. */
  readonly read: readonly string[];
  readonly exact: boolean;
  readonly saidState: CookState;
  readonly words: ReadonlySet<string>;
}
interface Index {
  readonly phrases: ReadonlyMap<string, { readonly row: FoodRow; readonly name: string }>;
  readonly longest: number;
  readonly spanish: SpanishNames;
  readonly readings: Map<string, Reading>;
  readonly matches: Map<string, FoodMatch>;
}

/** Names seen before are remembered; this many, then the memory starts again. */
const REMEMBERED = 20_000;

const indexes = new WeakMap<SafetyTables, Index>();
const indexOf = (tables: SafetyTables): Index => {
  const known = indexes.get(tables);
  if (known !== undefined) return known;
  const phrases = new Map<string, { row: FoodRow; name: string }>();
  let longest = 1;
  for (const row of tables.foods) {
    for (const name of [row.food, ...row.also]) {
      const words = foodWords(name);
      const phrase = words.join(' ');
      if (!phrases.has(phrase)) phrases.set(phrase, { row, name });
      longest = Math.max(longest, words.length);
    }
  }
  const spanish = createSpanishNames(tables.spanishNames);
  const index = { phrases, longest, spanish, readings: new Map(), matches: new Map() };
  indexes.set(tables, index);
  return index;
};

const remember = <V>(memory: Map<string, V>, key: string, value: V): V => {
  if (memory.size >= REMEMBERED) memory.clear();
  memory.set(key, value);
  return value;
};

const better = (one: Found, other: Found | null): boolean =>
  other === null || one.to > other.to || (one.to === other.to && one.from < other.from);

/** A name as it stands; one in which the table's own language finds nothing is read as Spanish. */
const read = (name: string, index: Index): Reading => {
  const words = foodWords(name);
  const reading = readWords(words, index);
  const table = reading.found === null ? index.spanish.toTable(words) : null;
  return table === null ? reading : readWords(table, index);
};

const readWords = (words: readonly string[], index: Index): Reading => {
  const joint = words.findIndex((word, at) => at > 0 && JOINING_WORDS.has(word));
  const headEnd = joint === -1 ? words.length : joint;
  let inHead: Found | null = null;
  let anywhere: Found | null = null;
  const parts: FoodRow[] = [];
  const heads = new Set<number>();
  let past = 0;
  for (let from = 0; from < words.length; from++) {
    for (let to = Math.min(words.length, from + index.longest); to > from; to--) {
      const known = index.phrases.get(words.slice(from, to).join(' '));
      if (known === undefined) continue;
      const found = { ...known, from, to };
      // The longest name at a place covers those within it: "peanut butter" is no butter.
      if (from >= past) {
        parts.push(known.row);
        heads.add(to - 1);
        past = to;
      }
      if (from < headEnd && better(found, inHead)) inHead = found;
      if (better(found, anywhere)) anywhere = found;
      break;
    }
  }
  // "chicken and rice soup": after a mere "and", a dish at the end names the whole.
  const dishLast =
    anywhere !== null &&
    anywhere.to === words.length &&
    anywhere.row.usual === 'cooked' &&
    words.every((word, at) => at === 0 || word === 'and' || !JOINING_WORDS.has(word));
  const found = dishLast ? anywhere : (inHead ?? anywhere);
  const beside = words.filter((_, at) => found === null || at < found.from || at >= found.to);
  const saidState = beside.some((word) => RAW_WORDS.has(word))
    ? 'raw'
    : beside.some((word) => COOKED_WORDS.has(word))
      ? 'cooked'
      : null;
  const plain = (word: string): boolean =>
    FILLERS.has(word) || COOKED_WORDS.has(word) || RAW_WORDS.has(word) || CUT_WORDS.has(word);
  return {
    found,
    parts,
    heads,
    read: words,
    exact: found !== null && beside.every(plain),
    saidState,
    words: new Set(words),
  };
};

const some = (words: ReadonlySet<string>, set: ReadonlySet<string>): boolean => {
  for (const word of words) if (set.has(word)) return true;
  return false;
};

/** How the food was treated can move it to another kind: cut fruit, a tin, minced meat. */
const treated = (kind: string, words: ReadonlySet<string>): string => {
  const cut = some(words, CUT_WORDS);
  const homeCanned =
    words.has('home') &&
    (words.has('canned') || words.has('canning') || words.has('bottled') || words.has('jarred'));
  if (homeCanned) return 'home-canned';
  if (some(words, TIN_WORDS)) {
    if (/^(raw-.*fish|cooked-fish|shrimp|crab-meat|molluscs|squid)/.test(kind)) return 'tinned-meat-fish';
    if (/^(raw-|cooked-meat|cooked-poultry)/.test(kind) && kind !== 'raw-milk') return 'tinned-meat-fish';
    if (/^(whole-fruit|cut-fruit|cooked-fruit)/.test(kind)) return 'tinned-fruit';
    if (
      /^(whole-vegetables|cut-vegetables|cooked-vegetables|frozen-vegetables|cooked-beans|dry-goods)/.test(
        kind,
      )
    )
      return 'tinned-vegetables';
    if (/^(soup-stew|stew|stock|gravy|cooked-sauce|jarred-sauce|custard|pasta-dish|milk)$/.test(kind))
      return 'tin';
  }
  // Garlic, herbs or vegetables under oil, at home: the one food of that name a row is published for is the strictest.
  if (words.has('in') && words.has('oil') && /^(whole|cut|cooked)-vegetables$/.test(kind))
    return 'garlic-oil-home';
  if (kind === 'packaged-greens' && words.has('salad') && some(words, SALAD_MEATS)) return 'mixed-salad';
  if (kind === 'ham-slices' && (words.has('raw') || words.has('uncooked'))) return 'ham-fresh';
  if (words.has('creamy') && kind === 'vinegar-dressing') return 'creamy-dressing';
  if (words.has('dried') && /fruit/.test(kind)) return 'dried-fruit';
  if (words.has('frozen') && kind === 'whole-fruit') return 'frozen-fruit';
  if (words.has('frozen') && kind === 'whole-vegetables') return 'frozen-vegetables';
  if (cut && kind === 'whole-fruit')
    return [...words].some((word) => /melon$|^cantaloupe$|^honeydew$/.test(word)) ? 'cut-melon' : 'cut-fruit';
  if (cut && kind === 'whole-vegetables') return 'cut-vegetables';
  if ((words.has('grated') || words.has('shredded')) && kind === 'hard-cheese') return 'grated-cheese';
  if ((words.has('low') || words.has('reduced')) && words.has('fat') && /^(hard|soft)-cheese$/.test(kind))
    return 'low-fat-cheese';
  if (some(words, GROUND_WORDS)) {
    if (/^raw-(poultry|duck)/.test(kind)) return 'raw-ground-poultry';
    if (/^raw-(steak|roast|chop|stew|deer|rabbit)/.test(kind)) return 'raw-ground-meat';
  }
  if (words.has('stuffed') && /^raw-(chop|poultry-pieces)$/.test(kind)) return 'raw-stuffed';
  if (
    words.has('whole') &&
    kind === 'raw-poultry-pieces' &&
    !/breast|thigh|leg|wing/.test([...words].join(' '))
  )
    return 'raw-poultry-whole';
  // Sliced at the counter it was open before it was sold; so may be what is only called sliced.
  const sealed = words.has('unopened') || words.has('sealed') || words.has('package');
  if (words.has('deli') && /^(cooked-|ham-slices|luncheon|raw-poultry)/.test(kind)) return 'deli-sliced';
  if (kind === 'luncheon-meat' && some(words, CUT_WORDS) && !sealed) return 'deli-sliced';
  return kind;
};

/** The kind a match names. */
export const kindOf = (match: FoodMatch, tables: SafetyTables): FoodKind => {
  const kind = tables.kinds.get(match.family) ?? tables.kinds.get('general');
  if (kind === undefined) throw new Error('food-kinds.csv has no "general"');
  return kind;
};

const fridgeDays = (name: string | null, tables: SafetyTables): number | null => {
  const row = name === null ? null : tables.kinds.get(name)?.us;
  const span = row === null || row === undefined ? null : tables.storage.us.get(row)?.fridge;
  return span ? spanEnds(0, span).high : null;
};

/** Words after which a food is only a flavour, or dry: crisps, crackers, a cube. Common practice. */
const ONLY_FLAVOUR =
  /^(flavou?r(ed)?|crisp|cracker|cube|bouillon|seasoning|powder|granule|chip|sauce|oil|vinegar|stuffing mix|mix|rub|spice|free|style)$/;
/** A vegetable or a bread treated so is a cooked dish, and no longer whole. Common practice. */
const MADE_A_DISH = /^(stuffed|creamed|filled|scalloped|loaded|gratin|mousse|salad|curried)$/;

/**
 * What keeps without the cold, but holds meat or fish by its name or was made a dish, is as perishable as its
 * riskiest part: "lobster roll" is no bread, "stuffed pepper" no whole vegetable. Null: the row stands.
 */
const riskiestPart = (
  row: FoodRow,
  family: string,
  reading: Reading,
  tables: SafetyTables,
): string | null => {
  const own = tables.kinds.get(family);
  if (own === undefined || (own.room !== 'stable' && own.hazard !== 'none' && own.hazard !== 'low'))
    return null;
  const { words } = reading;
  if ([...words].some((word) => ONLY_FLAVOUR.test(word))) return null;
  for (const part of reading.parts) {
    if (part === row) continue;
    const cooked = tables.kinds.get(part.cooked ?? part.bought ?? '');
    // The table of power cuts holds raw and cooked meat, poultry, fish and seafood as one group.
    if (cooked !== undefined && cooked.hazard === 'high' && cooked.room === 'perishable') return cooked.id;
  }
  const treated = [...words].some((word) => MADE_A_DISH.test(word));
  return treated && own.room === 'stable' ? 'cooked-dish' : null;
};

/** The family of the name's deciding word, unless another part of it is riskier. */
const choose = (
  reading: Reading,
  hints: MatchHints,
  tables: SafetyTables,
): Pick<FoodMatch, 'family' | 'state' | 'notes'> => {
  const plain = byDecidingWord(reading, hints, tables);
  const row = reading.found?.row;
  const carried = row === undefined ? null : riskiestPart(row, plain.family, reading, tables);
  return carried === null
    ? plain
    : { family: carried, state: 'cooked', notes: ['taken-as', 'riskiest-part'] };
};

const byDecidingWord = (
  reading: Reading,
  hints: MatchHints,
  tables: SafetyTables,
): Pick<FoodMatch, 'family' | 'state' | 'notes'> => {
  const row = reading.found?.row;
  if (row === undefined) {
    return reading.words.has('home') && (reading.words.has('canned') || reading.words.has('bottled'))
      ? { family: 'home-canned', state: 'cooked', notes: ['taken-as'] }
      : { family: 'general', state: hints.state ?? reading.saidState, notes: ['not-in-table'] };
  }
  const { bought, cooked } = row;
  const asBought = treated(bought ?? cooked ?? 'general', reading.words);
  const notes: MatchCode[] = reading.exact ? [] : ['taken-as'];
  const side = (state: CookState, ...more: MatchCode[]) => {
    // Cutting or mincing does not outlast cooking; a tin, a mixed salad or grated cheese stays what it is.
    const stays = asBought !== bought && !/^(raw|cut|frozen)-/.test(asBought);
    const family = state === 'cooked' && !stays ? (cooked ?? asBought) : asBought;
    return { family, state: state ?? tables.kinds.get(family)?.state ?? null, notes: [...notes, ...more] };
  };
  const said = hints.state ?? reading.saidState;
  if (said !== null) return side(said);
  if (bought === null) return side('cooked');
  if (cooked === null || cooked === bought) return side(tables.kinds.get(asBought)?.state ?? 'raw');
  // Cut, tinned or minced: that names the kind already.
  if (asBought !== bought) return side('raw');
  if (hints.homeMade === true) return side('cooked', 'cooked-assumed');
  if (row.usual === 'cooked') return side('cooked');
  const raw = tables.kinds.get(asBought);
  if (row.usual === 'bought') return raw?.hazard === 'high' ? side('raw', 'raw-assumed') : side('raw');
  // Either: on a shelf it is as bought; in the cold, the shorter of the two.
  if (hints.where === 'pantry') return side('raw');
  // Bought, and not something dry that must have been cooked to be in the cold.
  if (
    raw?.room !== 'stable' &&
    (hints.bought === true || (hints.where === 'freezer' && asBought.startsWith('frozen-')))
  )
    return side('raw');
  const [rawDays, cookedDays] = [fridgeDays(asBought, tables), fridgeDays(cooked, tables)];
  if (cookedDays !== null && (rawDays === null || cookedDays < rawDays)) return side('cooked', 'several-fit');
  return side('raw', 'raw-assumed');
};

/**
 * The table's food that a name stands for, and how sure that is. Names nobody reviewed come back
 * as `unknown` with the family `general`.
 *
 * @example matchFood("amara's white beans", { where: 'fridge' }).family // 'cooked-beans'
 */
export const matchFood = (name: string, hints: MatchHints = {}, tables = safetyTables()): FoodMatch => {
  const index = indexOf(tables);
  const key = `${hints.where ?? ''}|${hints.state ?? ''}|${hints.homeMade === true}|${hints.bought === true}|${name}`;
  const known = index.matches.get(key);
  if (known !== undefined) return known;
  const reading = index.readings.get(name) ?? remember(index.readings, name, read(name, index));
  const { family, state, notes } = choose(reading, hints, tables);
  return remember(index.matches, key, {
    name,
    food: reading.found?.name ?? null,
    family,
    state,
    sure: reading.found === null ? 'unknown' : reading.exact ? 'exact' : 'contains',
    notes,
  });
};

/** Every reviewed food that a name names, as "turkey burger" names two. */
export const namedParts = (name: string, tables = safetyTables()): readonly FoodRow[] => {
  const index = indexOf(tables);
  return (index.readings.get(name) ?? remember(index.readings, name, read(name, index))).parts;
};

/** The words of a name that say more than its kind: "cashew" of "cashew cream", "mushroom" of "mushroom soup". */
export const besideKind = (name: string, tables = safetyTables()): readonly string[] => {
  const index = indexOf(tables);
  const { read: words, heads } =
    index.readings.get(name) ?? remember(index.readings, name, read(name, index));
  return words.filter((_, at) => !heads.has(at));
};

/** The reviewed row behind a name, for allergens it usually holds. */
export const reviewedFood = (name: string, tables = safetyTables()): FoodRow | null => {
  const index = indexOf(tables);
  const reading = index.readings.get(name) ?? remember(index.readings, name, read(name, index));
  return reading.found?.row ?? null;
};
