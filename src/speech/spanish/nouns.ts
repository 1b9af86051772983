/**
 * Gender, number and articles of Spanish nouns: by their endings, and by the lists of exceptions
 * in `grammars/es/phrases/nouns.ftl`. Names are the household's own, so this is a good guess:
 * a wrong one sounds foreign, but loses nothing.
 */
import { unmark } from '../marks.js';
import type { PhraseWords } from '../language.js';
import type { Gender } from './numbers.js';

/** Words that stand before the noun they belong to: "segunda repisa", "gran olla". */
const BEFORE =
  /^(?:primer|primera|segund[oa]|tercer|tercera|cuart[oa]|quint[oa]|sext[oa]|últim[oa]|otr[oa]|gran|medi[oa]|mi|mis|un|una|dos|tres)$/u;

const plainWords = (name: string): string[] =>
  unmark(name)
    .normalize('NFC')
    .toLowerCase()
    .split(/[^\p{L}\p{M}'’-]+/u)
    .filter((word) => word !== '');

/** The noun a name is about: the first word that is not counting or pointing. */
export const headOf = (name: string): string => {
  const words = plainWords(name);
  return words.find((word, at) => at === words.length - 1 || !BEFORE.test(word)) ?? '';
};

const DETERMINED =
  /^(?:el|la|los|las|un|una|unos|unas|mi|mis|tu|tus|su|sus|este|esta|estos|estas|ese|esa|todo|toda|todos|todas)\s/iu;

export interface Nouns {
  readonly isPlural: (name: string) => boolean;
  readonly gender: (name: string) => Gender;
  readonly plural: (noun: string) => string;
  readonly singular: (noun: string) => string;
  /** "el guiso", "las tortillas", "el agua"; names that begin with an article stay as they are. */
  readonly withThe: (name: string) => string;
  readonly withArticle: (name: string) => string;
}

const pluralWord = (word: string): string => {
  if (/[aeiouáéó]$/u.test(word)) return `${word}s`;
  if (/z$/u.test(word)) return word.replace(/z$/u, 'ces');
  if (/[áéíóú]n$/u.test(word))
    return `${word.slice(0, -2)}${word.at(-2)!.normalize('NFD').replace(/\p{M}/gu, '')}nes`;
  if (/[sx]$/u.test(word)) return word;
  return `${word}es`;
};

const singularWord = (word: string): string => {
  if (/ces$/u.test(word)) return word.replace(/ces$/u, 'z');
  if (/ones$/u.test(word)) return word.replace(/ones$/u, 'ón');
  if (/[aeo]s$/u.test(word) && !/[lrndj]es$/u.test(word)) return word.slice(0, -1);
  if (/[lrndj]es$/u.test(word)) return word.slice(0, -2);
  return word;
};

export const createNouns = (phrases: PhraseWords): Nouns => {
  const list = (id: string): ReadonlySet<string> => new Set(phrases.words(id));
  const [single, feminine, masculine, stressed] = [
    list('nouns-singular'),
    list('nouns-feminine'),
    list('nouns-masculine'),
    list('nouns-stressed-a'),
  ];
  const pairs = new Map(
    phrases.words('nouns-plurals').flatMap((pair): [string, string][] => {
      const [one = '', many = ''] = pair.split('/');
      return [[one, many]];
    }),
  );
  const ones = new Map([...pairs].map(([one, many]) => [many, one]));

  const isPlural = (name: string): boolean => {
    const head = headOf(name);
    return !single.has(head) && /[aeiouáéíóúnrldzj]?s$/u.test(head) && head.length > 3;
  };
  const oneOf = (word: string): string => ones.get(word) ?? singularWord(word);
  const gender = (name: string): Gender => {
    const head = headOf(name);
    const one = isPlural(name) ? oneOf(head) : head;
    if (feminine.has(one) || feminine.has(head)) return 'f';
    if (masculine.has(one) || masculine.has(head)) return 'm';
    return /(?:a|ción|sión|dad|tad|tud|umbre|ez)$/u.test(one) ? 'f' : 'm';
  };
  /** The noun and the describing words after it, up to the first "de", "con", "en". */
  const changed = (name: string, change: (word: string) => string): string => {
    const words = name.split(' ');
    const joint = words.findIndex((word, at) => at > 0 && /^(?:de|del|con|en|a|al|para|sin|y)$/iu.test(word));
    const end = joint === -1 ? words.length : joint;
    return words.map((word, at) => (at < end ? change(word) : word)).join(' ');
  };
  const article = (name: string, m: string, f: string, ms: string, fs: string): string => {
    const many = isPlural(name);
    if (gender(name) === 'm') return many ? ms : m;
    // "el agua", though it is feminine.
    return many ? fs : stressed.has(headOf(name)) && plainWords(name)[0] === headOf(name) ? m : f;
  };
  const single1 = (word: string): string => (single.has(word) ? word : oneOf(word));
  return {
    isPlural,
    gender,
    plural: (noun) => (isPlural(noun) ? noun : changed(noun, (word) => pairs.get(word) ?? pluralWord(word))),
    singular: (noun) => (isPlural(noun) ? changed(noun, single1) : noun),
    withThe: (name) =>
      unmark(name) === '' || DETERMINED.test(unmark(name))
        ? name
        : `${article(name, 'el', 'la', 'los', 'las')} ${name}`,
    withArticle: (name) =>
      unmark(name) === '' || DETERMINED.test(unmark(name))
        ? name
        : `${article(name, 'un', 'una', 'unos', 'unas')} ${name}`,
  };
};
