/** English: numbers, nouns, articles and agreement. */
import type { FluentFunction } from '@fluent/bundle';
import type { Language, PhraseWords, SpokenLanguage } from '../language.js';
import { isMany, print } from '../phrase-functions.js';
import { amountOf, amountWords } from './amounts.js';
import { createNouns, possessive, withArticle, withThe, type Nouns } from './nouns.js';
import { letterWords, numberWords, ordinalWords, yearWords, type Regional } from './numbers.js';

const regionOf = (locale: string): Regional => (/^en-US\b/i.test(locale) || locale === 'en' ? 'us' : 'gb');

const asSpokenIn = (region: Regional, nouns: Nouns): Language => ({
  region,
  number: (n) => numberWords(n, region),
  dayOfMonth: (n) => ordinalWords(n, region),
  year: (n) => yearWords(n, region),
  minute: (n) => `${n < 10 ? 'oh ' : ''}${numberWords(n, region)}`,
  ordinal: (n) => ordinalWords(n, region),
  letters: (text) => letterWords(text, region),
  amount: (amount) => amountWords(amount, region, nouns),
  amountOf: (amount, name) => amountOf(amount, name, region, nouns),
  isPlural: nouns.isPlural,
  plural: nouns.plural,
  withThe,
  withArticle,
  joint: / (?:and|or) /,
  smooth: (text) => text,
});

export const english = (phrases: PhraseWords): SpokenLanguage => {
  let known: Nouns | null = null;
  // Read when first needed: the phrase files are not open yet when a voice is being made.
  const nouns = (): Nouns =>
    (known ??= createNouns(phrases.words('nouns-singular'), phrases.words('nouns-plural')));
  const spoken = new Map<Regional, Language>();
  const agreeing =
    (one: string, many: string): FluentFunction =>
    ([value]) =>
      isMany(value, nouns().isPlural) ? many : one;
  return {
    as(locale) {
      const region = regionOf(locale);
      const language = spoken.get(region) ?? asSpokenIn(region, nouns());
      spoken.set(region, language);
      return language;
    },
    functions: {
      POSS: ([value]) => possessive(print(value), nouns()),
      IS: agreeing('is', 'are'),
      WAS: agreeing('was', 'were'),
      HAS: agreeing('has', 'have'),
      DOES: agreeing('does', 'do'),
      IT: agreeing('it', 'they'),
      THEM: agreeing('it', 'them'),
      ITS: agreeing('its', 'their'),
      THAT: agreeing('that', 'those'),
    },
  };
};
