/**
 * What the words of a name say beside it, by the lists of `grammars/<language>/names.json`. Names are free words, as
 * they were said or as they are on record: dialogue asks here what they tell, and knows no word of them itself.
 */
import { existsSync, readFileSync } from 'node:fs';
import { z } from 'zod';
import { projectFile } from '../project-files.js';

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
