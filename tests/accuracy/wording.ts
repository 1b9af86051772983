/** The sentences to learn from under `grammars/<language>/learned`, each line made into those that it stands for. */
import { readdirSync } from 'node:fs';
import { demoKitchen } from '../../src/kitchen/index.js';
import { projectFile } from '../../src/project-files.js';
import { entriesOf, linesOf } from '../../src/understanding/word-lists.js';
import { clock } from '../understanding/household.js';

/** The same row of numbers each time, from 0 up to 1. */
export const createRandom = (seed: number): (() => number) => {
  let state = seed;
  return () => {
    state = (state * 1664525 + 1013904223) >>> 0;
    return state / 4294967296;
  };
};
export type Random = () => number;
export const pick = <T>(of: readonly T[], random: Random): T => of[Math.floor(random() * of.length)]!;

const kitchen = demoKitchen(clock);
const ownFoods = [...kitchen.items.values()].map(({ name }) => name.toLowerCase());
const ownPlaces = [...kitchen.places.values()].map(({ name }) => name.toLowerCase());
const commonPlaces =
  'fridge, freezer, top shelf, second drawer, bottom shelf of the fridge, fridge door, chest freezer, pantry, middle basket, cupboard, crisper'.split(
    ', ',
  );
const foods = entriesOf('en', 'foods');
/** Foods that no list holds. */
export const strangeFoods =
  'labneh, zaatar, gochujang, moin moin, ogbono, suya, kedgeree, colcannon, ackee, callaloo, freekeh, shakshuka, injera, dulse'.split(
    ', ',
  );

const fillings: Readonly<Record<string, readonly string[]>> = {
  place: [...ownPlaces, ...commonPlaces],
  person: ['dele', 'ruth', 'amara', 'marta', 'theo', 'joan', 'marek'],
  mark: 'wooden bead, cloth patch, rubber band, elastic band, safety pin, soft string, cork disc, felt, star, two knots, one knot, three ridges, glass bead, rough patch, peg, three bumps, two notches'.split(
    ', ',
  ),
  n: 'one, two, three, four, five, six, eight, seventy, twelve'.split(', '),
  length:
    'ten minutes, an hour, two hours, half an hour, three days, a week, twenty minutes, six minutes, ninety seconds, two weeks, five hours'.split(
      ', ',
    ),
  day: 'yesterday, on monday, last sunday, on tuesday, last week, two days ago, this morning'.split(', '),
  date: 'friday, the twelfth, sunday, tomorrow, saturday, the third of june, thursday'.split(', '),
  time: "six, noon, half past five, two, eight o'clock, ten".split(', '),
};
export const fill = (slot: string, random: Random): string => {
  if (slot !== 'food') {
    const of = fillings[slot];
    if (!of) throw new Error(`wording: no such part as {${slot}}`);
    return pick(of, random);
  }
  const chance = random();
  return pick(chance < 0.5 ? ownFoods : chance < 0.9 ? foods : strangeFoods, random);
};

/** One sentence of a line such as "(i | we) ate the {food}". */
const sentenceOf = (line: string, random: Random): string => {
  let text = line;
  for (;;) {
    const choice = /\(([^()]*)\)/.exec(text);
    if (!choice) break;
    const chosen = pick(choice[1]!.split('|'), random).trim();
    text = text.slice(0, choice.index) + chosen + text.slice(choice.index + choice[0].length);
  }
  return text
    .replace(/\{(\w+)\}/g, (_whole, slot: string) => fill(slot, random))
    .replace(/\s+/g, ' ')
    .trim();
};

/** Sentences of one line at most. */
const mostOfLine = 25;
const sentencesIn = (line: string): number => {
  let count = line.includes('{') ? 2 : 1;
  for (const [, choice] of line.matchAll(/\(([^()]*)\)/g)) count *= choice!.split('|').length;
  return Math.min(count, mostOfLine);
};

/** `wording-1`, `wording-2` and so on, in the order of their numbers. */
export const wordingFiles = (): string[] =>
  readdirSync(projectFile('grammars', 'en', 'learned'))
    .flatMap((name) => /^(wording-\d+)\.txt$/.exec(name)?.[1] ?? [])
    .sort((one, other) => one.localeCompare(other, 'en', { numeric: true }));

export interface WordingLine {
  readonly file: string;
  readonly label: string;
  readonly line: string;
  readonly texts: readonly string[];
}

/** Of files of lines `label: sentence`, in their order. */
export const wordingIn = (files: readonly string[], random: Random, most = mostOfLine): WordingLine[] =>
  files.flatMap((file) =>
    linesOf('en', `../learned/${file}`).map((line) => {
      const colon = line.indexOf(':');
      const texts = new Set<string>();
      for (let count = Math.min(sentencesIn(line), most); count > 0; count -= 1)
        texts.add(sentenceOf(line.slice(colon + 1).trim(), random));
      return { file, label: line.slice(0, colon).trim(), line, texts: [...texts] };
    }),
  );
