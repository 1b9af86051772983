/** Amounts: "dos envases", "medio kilo", "dos kilos y medio", "la mitad de la leche", "tres huevos". */
import type { Amount, Share } from '../../terms/amount.js';
import { isShare, type PhraseWords } from '../language.js';
import { CLOSE, OPEN, unmark } from '../marks.js';
import type { Nouns } from './nouns.js';
import { beforeNoun, numberWords, splitFraction, type Gender } from './numbers.js';

const about = (rough: boolean | undefined, words: string): string => (rough ? `más o menos ${words}` : words);

export interface Amounts {
  readonly amount: (amount: Amount | Share) => string;
  readonly amountOf: (amount: Amount | Share, name: string) => string;
}

/** "una hora", "dos horas y media", "medio kilo", "veintiún gramos". */
export const counted = (value: number, one: string, many: string, gender: Gender): string => {
  const split = splitFraction(value);
  const half = gender === 'm' ? 'medio' : 'media';
  if (split?.fraction) {
    const { words, after } = split.fraction;
    if (split.whole === 0) return after === 'medio' ? `${half} ${one}` : `${words} de ${one}`;
    const whole = beforeNoun(numberWords(split.whole), gender);
    return `${whole} ${split.whole === 1 ? one : many} y ${after === 'medio' ? half : after}`;
  }
  return `${beforeNoun(numberWords(value), gender)} ${Math.abs(value - 1) <= 0.005 ? one : many}`;
};

const shareWords = ({ fraction, rough }: Share): string => {
  if (fraction <= 0.005) return 'nada';
  if (fraction >= 0.995) return about(rough, 'todo');
  const split = splitFraction(fraction);
  if (split?.fraction) return about(rough, split.fraction.words);
  return about(rough, `${beforeNoun(numberWords(Math.round(fraction * 100)), 'm')} por ciento`);
};

/** The household's words changed, and still marked as theirs. */
const reworded = (name: string, change: (noun: string) => string): string =>
  name.startsWith(OPEN) && name.endsWith(CLOSE) ? OPEN + change(unmark(name)) + CLOSE : change(name);

export const createAmounts = (phrases: PhraseWords, nouns: Nouns): Amounts => {
  /** A unit in Spanish by the phrase `unit-…`; one that has no phrase is said as recorded. */
  const unitOf = (unit: string): { one: string; many: string; gender: Gender } => {
    const id = `unit-${unit.replaceAll(' ', '-')}`;
    const one = phrases.entry(id) ?? unit;
    return {
      one,
      many: phrases.entry(id, 'many') ?? nouns.plural(one),
      gender: phrases.entry(id, 'gender') === 'f' ? 'f' : nouns.gender(one),
    };
  };
  const measured = ({ value, unit, rough }: Amount): string => {
    const { one, many, gender } = unitOf(unit);
    if (value <= 0.005) return `${gender === 'f' ? 'ninguna' : 'ningún'} ${one}`;
    return about(rough, counted(value, one, many, gender));
  };
  return {
    amount(amount) {
      if (isShare(amount)) return shareWords(amount);
      if (amount.unit !== 'piece') return measured(amount);
      return amount.value <= 0.005 ? 'nada' : about(amount.rough, numberWords(amount.value));
    },
    amountOf(amount, name) {
      if (isShare(amount)) return `${shareWords(amount)} de ${nouns.withThe(name)}`;
      if (amount.unit !== 'piece') return `${measured(amount)} de ${name}`;
      const gender = nouns.gender(name);
      if (amount.value <= 0.005) return `nada de ${name}`;
      const one = reworded(name, nouns.singular);
      return about(amount.rough, counted(amount.value, one, reworded(one, nouns.plural), gender));
    },
  };
};
