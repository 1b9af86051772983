/**
 * What the words of a name say beside it, by the lists of `grammars/<language>/names.json`. Names are free words, as
 * they were said or as they are on record: dialogue asks here what they tell, and knows no word of them itself.
 */
import { existsSync, readFileSync } from 'node:fs';
import { z } from 'zod';
import { projectFile } from '../project-files.js';
import type { StepCalled } from './intents.js';
import { wordFormsOf } from './languages/index.js';
import { entriesOf } from './word-lists.js';
import { lexiconFor } from './words/index.js';

/** The state a food is in, which is no part of its name. `any`: what is left of it. */
const STATES = ['cooked', 'any', 'opened', 'sealed', 'frozen', 'thawed', 'raw'] as const;
export type SaidState = (typeof STATES)[number];

const PLACES = [
  'freezer',
  'door',
  'fridge',
  'pantry',
  'counter',
  'cupboard',
  'shelf',
  'drawer',
  'basket',
  'side',
] as const;
export type NamedPlace = (typeof PLACES)[number];

/** Ways of heating, as the record calls them. */
const METHODS = [
  'microwave',
  'oven',
  'hob',
  'air fryer',
  'steamer',
  'slow cooker',
  'toaster',
  'none',
] as const;

/** Which side of a thing another stands on. */
const SIDES = ['behind', 'in front of', 'on top of', 'under', 'beside'] as const;
export type Side = (typeof SIDES)[number];

const around = z.object({ before: z.array(z.string()), after: z.array(z.string()) });
const words = z.array(z.string());
const file = z.object({
  states: z.record(z.enum(STATES), around),
  leftovers: words,
  age: z.object({ old: words, new: words }),
  small: words,
  one: around,
  upright: words,
  sideways: words,
  within: words,
  /** In this order: "freezer drawer" is of the freezer. */
  places: z.array(z.tuple([z.enum(PLACES), words])),
  holders: words,
  held: words,
  regions: z.object({ uk: words, us: words }),
  metric: words,
  speaker: words,
  others: words,
  /** Say nothing of which is meant. */
  fillers: words,
  definite: words,
  /** How much of it, or what it is in: no head of a name. */
  portions: words,
  spots: z.object({
    leads: words,
    /** What may stand about the word that says the side. */
    about: words,
    by: z.record(z.enum(SIDES), words),
  }),
  steps: z.object({ last: words, endings: words, by: z.record(z.string(), words) }),
  cautions: z.object({ of: words, are: words }),
  messages: words,
  /** What else each way of heating is called. */
  methods: z.partialRecord(z.enum(METHODS), words),
  devices: z.object({ small: words, here: words }),
  /** In the words of a reminder: what points at a thing, and what stands before its name instead. */
  pointing: z.object({ words, article: z.string().nullable() }),
});
type Lists = z.infer<typeof file>;

const known = new Map<string, Lists>();

/** A language that has no such file has none of these words. Throws `ZodError` for a file of another form. */
const listsFor = (locale: string): Lists | null => {
  const language = locale.split('-')[0]!.toLowerCase();
  const before = known.get(language);
  if (before) return before;
  const path = projectFile('grammars', language, 'names.json');
  if (!existsSync(path)) return null;
  const lists = file.parse(JSON.parse(readFileSync(path, 'utf8')));
  known.set(language, lists);
  return lists;
};

const holds = (said: string, phrases: readonly string[]): boolean =>
  phrases.some((phrase) => ` ${said} `.includes(` ${phrase} `));

/** The rest of a name without what stands before or after it; null where nothing does, or nothing is left. */
const without = (
  said: string,
  { before, after }: { readonly before: readonly string[]; readonly after: readonly string[] },
): string | null => {
  const led = before.find((phrase) => said.startsWith(`${phrase} `));
  if (led !== undefined) return said.slice(led.length + 1);
  const ended = after.find((phrase) => said.endsWith(` ${phrase}`));
  return ended === undefined ? null : said.slice(0, -ended.length - 1);
};

/** "The opened sauerkraut": the sauerkraut, opened. */
export const statedIn = (
  said: string,
  locale: string,
): { readonly words: string; readonly state: SaidState } | null => {
  const lists = listsFor(locale);
  for (const state of STATES) {
    const rest = lists && without(said, lists.states[state]);
    if (rest) return { words: rest, state };
  }
  return null;
};

/** "Leftovers", and no more. */
export const isLeftovers = (said: string, locale: string): boolean =>
  listsFor(locale)?.leftovers.includes(said) === true;

/** "The older one": how old, and what it is of. */
export const ageIn = (
  said: string,
  locale: string,
): { readonly age: 'old' | 'new'; readonly of: string } | null => {
  const lists = listsFor(locale);
  const age = (['old', 'new'] as const).find((one) => lists && holds(said, lists.age[one]));
  if (!lists || !age) return null;
  const drop = [...lists.age.old, ...lists.age.new, ...lists.small].sort((a, b) => b.length - a.length);
  const of = drop.reduce(
    (rest, phrase) => rest.replaceAll(` ${phrase} `, ' '),
    ` ${said.replaceAll(' ', '  ')} `,
  );
  return { age, of: of.split(' ').filter(Boolean).join(' ') };
};

/** "The beef one": what kind of those just told; null where it is no one of them. */
export const oneIn = (said: string, locale: string): string | null => {
  const lists = listsFor(locale);
  return lists && without(said, lists.one);
};

/** "The top basket" lies over others, "the left one" beside them. */
export const standsIn = (
  said: string,
  locale: string,
): { readonly upright: boolean; readonly sideways: boolean } => {
  const lists = listsFor(locale);
  return { upright: !!lists && holds(said, lists.upright), sideways: !!lists && holds(said, lists.sideways) };
};

/** "Door of the fridge": the door, and what it is of. */
export const partedPlace = (
  said: string,
  locale: string,
): { readonly inner: string; readonly outer: string | undefined } => {
  const joint = (listsFor(locale)?.within ?? []).find((phrase) => said.includes(` ${phrase} `));
  if (joint === undefined) return { inner: said, outer: undefined };
  const [inner = said, outer] = said.split(` ${joint} `);
  return { inner, outer };
};

/** What kinds of place a name speaks of, by the word that weighs most first; none of most names. */
export const placesNamed = (said: string, locale: string): readonly NamedPlace[] => {
  const lists = listsFor(locale);
  if (!lists) return [];
  const name = said.toLowerCase();
  const found = lists.places.flatMap(([kind, some]) =>
    some.some((word) => name.includes(word)) ? [kind] : [],
  );
  const [first = '', second = '', ...more] = name.split(' ');
  const [holder, held] = lists.holders.includes(first) ? [first, more.at(-1) ?? second] : [second, first];
  const stands = lists.holders.includes(holder) && lists.held.includes(held) && more.length < 2;
  return stands && found[0] !== 'freezer' ? ['cupboard'] : found;
};

/** Whose guidance is named. */
export const regionIn = (said: string, locale: string): 'uk' | 'us' | null => {
  const lists = listsFor(locale);
  return (
    (['uk', 'us'] as const).find((region) => lists && holds(said.toLowerCase(), lists.regions[region])) ??
    null
  );
};

export const isMetric = (said: string, locale: string): boolean =>
  (listsFor(locale)?.metric ?? []).some((word) => said.toLowerCase().includes(word));

/** A word that says nothing of which thing is meant. */
export const isFiller = (word: string, locale: string): boolean =>
  listsFor(locale)?.fillers.includes(word) === true;

/** "The milk", rather than milk. */
export const isDefinite = (before: string | undefined, locale: string): boolean =>
  before !== undefined && listsFor(locale)?.definite.includes(before) === true;

/** "The beef one": that word after it. */
export const isOneOf = (after: string | undefined, locale: string): boolean =>
  after !== undefined && listsFor(locale)?.one.after.includes(after) === true;

/** The word of a name that says what the thing is; empty where all of it says how much there is, or what it is in. */
export const headOf = (words: readonly string[], locale: string): string => {
  const lists = listsFor(locale);
  const says = words.filter((word) => !lists?.portions.includes(word));
  const { headFirst } = wordFormsOf(locale.split('-')[0]!.toLowerCase());
  return (headFirst ? says[0] : says.at(-1)) ?? '';
};

/** Where within a place something stands: on which side of it, or by what else. */
export const spotIn = (
  spot: string,
  locale: string,
): { readonly side: string; readonly by: { readonly side: Side; readonly name: string } | null } => {
  const lists = listsFor(locale);
  if (!lists) return { side: spot, by: null };
  const { leads, about, by } = lists.spots;
  const said = spot.toLowerCase();
  const led = (text: string): string => {
    const lead = leads.find((phrase) => text.startsWith(`${phrase} `));
    return lead === undefined ? text : led(text.slice(lead.length + 1));
  };
  const side = led(said)
    .split(' ')
    .filter((word) => !about.includes(word))
    .join(' ');
  for (const one of SIDES)
    for (const phrase of by[one])
      if (said.startsWith(`${phrase} `))
        return { side, by: { side: one, name: led(said.slice(phrase.length + 1)) } };
  return { side, by: null };
};

/** Which step is meant, counted from one, -1 for the last; null where none is called so. */
export const stepCalled = (said: string, steps: readonly StepCalled[], locale: string): number | null => {
  const lists = listsFor(locale);
  const wanted = said.toLowerCase();
  if (!lists || wanted === '') return null;
  if (lists.steps.last.some((word) => ` ${wanted} `.includes(` ${word} `))) return -1;
  const ending = lists.steps.endings.find((one) => wanted.endsWith(one)) ?? '';
  const cut = ending === '' ? wanted : wanted.slice(0, -ending.length);
  const stem = cut.at(-1) === cut.at(-2) ? cut.slice(0, -1) : cut;
  if (stem === '') return null;
  const at = steps.findIndex(({ code, words }) =>
    [...(lists.steps.by[code] ?? []), ...(words === null ? [] : [words])].some((called) =>
      called.toLowerCase().includes(stem),
    ),
  );
  return at < 0 ? null : at + 1;
};

/** "The pepper sauce is spicy", of the pepper sauce, leaves "spicy". */
export const cautionAlone = (caution: string, name: string | null, locale: string): string => {
  const lists = listsFor(locale);
  if (!lists) return caution;
  const past = (text: string, phrases: readonly string[]): string => {
    const lead = phrases.find((phrase) => text.toLowerCase().startsWith(`${phrase} `));
    return lead === undefined ? text : text.slice(lead.length + 1);
  };
  const of = past(past(caution, lists.cautions.of), name === null ? [] : [name.toLowerCase()]);
  const rest = past(of, lists.cautions.are);
  // Without a verb nothing stood before it.
  return rest === of ? caution : rest;
};

/** A message without "that", "saying" and what else leads to it. */
export const messageAlone = (said: string, locale: string): string => {
  const text = said.replace(/^[\s,]+/, '');
  const lead = listsFor(locale)?.messages.find((phrase) => text.startsWith(`${phrase} `));
  return lead === undefined ? text.trim() : messageAlone(text.slice(lead.length), locale);
};

/** The way of heating a word names; null when it names none we know. */
export const heatMethodIn = (said: string, locale: string): (typeof METHODS)[number] | null => {
  const word = said.toLowerCase().trim();
  const lists = listsFor(locale);
  return METHODS.find((method) => method === word || lists?.methods[method]?.includes(word)) ?? null;
};

/** What a device is called, without small words; `here`: the one that is spoken to. */
export const deviceCalled = (
  said: string,
  locale: string,
): { readonly words: readonly string[]; readonly here: boolean } => {
  const lists = listsFor(locale);
  const name = said
    .toLowerCase()
    .normalize('NFKD')
    .replace(/['\u2019]s\b/g, '')
    .replace(/[^\p{L}\p{N} ]/gu, ' ');
  const words = name.split(' ').filter((word) => word !== '' && lists?.devices.small.includes(word) !== true);
  return { words, here: lists?.devices.here.includes(said.toLowerCase()) === true };
};

/** "Move it down", of the stew: "move the stew down"; null where nothing points, or the language cannot say it so. */
export const pointedAway = (said: string, locale: string): readonly [string, string] | null => {
  const { words: pointers, article } = listsFor(locale)?.pointing ?? { words: [], article: null };
  const words = said.split(' ');
  const at = words.findIndex((word) => pointers.includes(word));
  if (at < 0 || article === null) return null;
  return [[...words.slice(0, at), article].join(' '), words.slice(at + 1).join(' ')];
};

/** How readers of every language write who is pointed at. */
const pointers: Readonly<Record<string, 'speaker' | 'other'>> = {
  me: 'speaker',
  he: 'other',
  she: 'other',
  they: 'other',
};

/** Whether it is no name but points: at whoever speaks, or at somebody just spoken of. */
export const personPointed = (said: string, locale: string): 'speaker' | 'other' | null => {
  const lists = listsFor(locale);
  const word = said.toLowerCase();
  if (lists?.speaker.includes(word)) return 'speaker';
  return lists?.others.includes(word) ? 'other' : (pointers[word] ?? null);
};

/** "Paper towels", "birthday candles": what a household buys and nobody eats, by the end of its name. */
export const isGoods = (name: string, locale: string): boolean => {
  const { language } = lexiconFor(locale);
  const { stemOf, headFirst } = wordFormsOf(language);
  const stems = (words: string): string => words.toLowerCase().split(/\s+/u).map(stemOf).join(' ');
  const said = stems(name);
  const ends = (entry: string): boolean =>
    said === entry || (headFirst ? said.startsWith(`${entry} `) : said.endsWith(` ${entry}`));
  if (entriesOf(language, 'foods').some((entry) => stems(entry) === said)) return false;
  return entriesOf(language, 'goods').some((entry) => ends(stems(entry)));
};
