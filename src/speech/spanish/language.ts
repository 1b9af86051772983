/** Spanish: numbers, gender and number of nouns, and the words of our own tables. */
import { type FluentFunction, FluentNumber, type FluentValue } from '@fluent/bundle';
import type { Value } from '../answer.js';
import type { Language, PhraseWords, SpokenLanguage } from '../language.js';
import { CLOSE, OPEN, unmark } from '../marks.js';
import { print } from '../phrase-functions.js';
import { sourceOf } from '../spoken-value.js';
import { counted, createAmounts } from './amounts.js';
import { createNouns, type Nouns } from './nouns.js';
import { beforeNoun, dayOfMonth, letterWords, numberWords, ordinalWords, type Gender } from './numbers.js';
import { regional } from './regions.js';
import { touchWords } from './touch.js';

const genderOf = (value: FluentValue | undefined): Gender => (print(value) === 'f' ? 'f' : 'm');

/** "dos y medio" back to 2.5, so that a half can follow its noun. Only what `numberWords` says. */
const halfOf = (words: string): { whole: string; half: boolean } => {
  const whole = words.replace(/ y medio$/u, '');
  return { whole, half: whole !== words };
};

/** "de el" is "del", "a el" is "al"; "y" and "o" change before their own sound: "huevo e higos", "siete u ocho". */
const contracted = (text: string): string =>
  text
    .replace(/(?<!\p{L})(de|a) el(?=\s)/giu, '$1l')
    .replace(/ y (?=\uE000*h?[ií](?![aeou]))/giu, ' e ')
    .replace(/ o (?=\uE000*h?[oó])/giu, ' u ');

const make = (phrases: PhraseWords, nouns: Nouns): Language => {
  const amounts = createAmounts(phrases, nouns);
  return {
    region: 'us',
    number: numberWords,
    dayOfMonth,
    year: numberWords,
    minute: numberWords,
    ordinal: ordinalWords,
    letters: letterWords,
    ...amounts,
    isPlural: nouns.isPlural,
    plural: nouns.plural,
    withThe: nouns.withThe,
    withArticle: nouns.withArticle,
    joint: / (?:y|e|o|u) /u,
    smooth: contracted,
  };
};

export const spanish = (phrases: PhraseWords): SpokenLanguage => {
  let made: { readonly nouns: Nouns; readonly language: Language } | null = null;
  const byLocale = new Map<string, Language>();
  // Read when first needed: the phrase files are not open yet when a voice is being made.
  const known = (): { readonly nouns: Nouns; readonly language: Language } => {
    if (made === null) {
      const nouns = createNouns(phrases);
      made = { nouns, language: make(phrases, nouns) };
    }
    return made;
  };

  /** A word of our own tables (an allergen, a food of the guidance, a spot) in Spanish. */
  const ours = (words: string): string =>
    phrases.entry(`word-${words.toLowerCase().replace(/[^a-z0-9]+/g, '-')}`) ?? OPEN + words + CLOSE;

  const oursOf = (value: Value | undefined, fallback: string): string => {
    if (typeof value === 'string') return ours(value);
    if (
      typeof value === 'object' &&
      value.kind === 'list' &&
      value.of.every((one) => typeof one === 'string')
    )
      return new Intl.ListFormat('es', { type: value.or ? 'disjunction' : 'conjunction' }).format(
        value.of.map((one) => ours(one)),
      );
    return fallback;
  };

  const before =
    (gender: Gender): FluentFunction =>
    ([n]) =>
      beforeNoun(print(n), gender);

  return {
    as(locale) {
      let language = byLocale.get(locale);
      if (!language) {
        const reworded = regional(locale, phrases);
        language = { ...known().language, smooth: (text) => contracted(reworded(text)) };
        byLocale.set(locale, language);
      }
      return language;
    },
    functions: {
      /** UN($n) "veintiún", UNA($n) "veintiuna": a number before a noun of that gender. */
      UN: before('m'),
      UNA: before('f'),
      /** COUNTED($n, "hora", "horas", "f"): "una hora", "dos horas y media". */
      COUNTED: ([n, one, many, gender]) => {
        if (n instanceof FluentNumber) return counted(n.value, print(one), print(many), genderOf(gender));
        const { whole, half } = halfOf(print(n));
        const words = beforeNoun(whole, genderOf(gender));
        const noun = /^una?$/u.test(words) ? print(one) : print(many);
        return half
          ? `${words} ${noun} y ${genderOf(gender) === 'f' ? 'media' : 'medio'}`
          : `${words} ${noun}`;
      },
      /** GENDER($name): "m" or "f", to choose on. */
      GENDER: ([name]) => known().nouns.gender(print(name)),
      /** TOUCH($container): "large glass jar", as recorded, is "frasco grande de vidrio". */
      TOUCH: ([words]) => touchWords(unmark(print(words)), phrases, known().nouns),
      /** OURS($food): a word of our own tables in Spanish; one without is said as it is. */
      OURS: ([words]) => oursOf(sourceOf(words), print(words)),
    },
  };
};
