/** Amounts: "two tubs", "half a jar", "about a pound", "one and a half tubs", "three eggs". */
import type { Amount, Share } from '../../terms/amount.js';
import { isShare } from '../language.js';
import { OPEN, CLOSE, unmark } from '../marks.js';
import type { Nouns } from './nouns.js';
import { withArticle } from './nouns.js';
import { numberWords, splitFraction, type Regional } from './numbers.js';

const about = (rough: boolean | undefined, words: string): string => (rough ? `about ${words}` : words);

const shareWords = (share: Share, region: Regional): string => {
  if (share.fraction <= 0.005) return 'none';
  if (share.fraction >= 0.995) return about(share.rough, 'all');
  const split = splitFraction(share.fraction);
  if (split?.fraction) return about(share.rough, split.fraction.words);
  const percent = Math.round(share.fraction * 100);
  return about(share.rough, `${numberWords(percent, region)} percent`);
};

const measured = (amount: Amount, region: Regional, nouns: Nouns): string => {
  const { value, unit, rough } = amount;
  const split = splitFraction(value);
  if (value <= 0.005) return `no ${nouns.plural(unit)}`;
  if (split !== null && split.fraction !== null && split.whole === 0) {
    const part = split.fraction.words;
    return about(rough, part === 'half' ? `half ${withArticle(unit)}` : `${part} of ${withArticle(unit)}`);
  }
  if (Math.abs(value - 1) <= 0.005) return rough ? `about ${withArticle(unit)}` : `one ${unit}`;
  return about(rough, `${numberWords(value, region)} ${nouns.plural(unit)}`);
};

/** The amount by itself. Pieces are only counted: "three". */
export const amountWords = (amount: Amount | Share, region: Regional, nouns: Nouns): string => {
  if (isShare(amount)) return shareWords(amount, region);
  if (amount.unit !== 'piece') return measured(amount, region, nouns);
  if (amount.value <= 0.005) return 'none';
  if (amount.value < 1 && splitFraction(amount.value)?.fraction)
    return about(amount.rough, `${splitFraction(amount.value)?.fraction?.words} of one`);
  return about(amount.rough, numberWords(amount.value, region));
};

const reworded = (name: string, change: (noun: string) => string): string =>
  name.startsWith(OPEN) && name.endsWith(CLOSE) ? OPEN + change(unmark(name)) + CLOSE : change(name);

/** The amount of something: "two tubs of lentil stew", "half of the milk", "three eggs", "half an onion". */
export const amountOf = (amount: Amount | Share, name: string, region: Regional, nouns: Nouns): string => {
  if (isShare(amount)) {
    const words = shareWords(amount, region);
    return `${words} of the ${name}`;
  }
  if (amount.unit !== 'piece') return `${measured(amount, region, nouns)} of ${name}`;
  const { value, rough } = amount;
  const one = reworded(name, nouns.singular);
  const split = splitFraction(value);
  if (value <= 0.005) return `no ${name}`;
  if (split?.fraction && split.whole === 0)
    return about(
      rough,
      split.fraction.words === 'half'
        ? `half ${withArticle(one)}`
        : `${split.fraction.words} of ${withArticle(one)}`,
    );
  if (Math.abs(value - 1) <= 0.005) return about(rough, `one ${one}`);
  return about(rough, `${numberWords(value, region)} ${reworded(one, nouns.plural)}`);
};
