/** Where it is kept or stands, and where it was thawed. */
import type { GuidanceFacts, KeptAt } from './facts.js';
import { values } from './figures.js';
import { foodsIn, has, isWord, spotsOf, type Sentence } from './sentence.js';
import type { Match } from './spots.js';

export const placeIn = (sentence: Sentence): KeptAt | null => {
  // "The power was out", "the freezer was full" put no food anywhere.
  const ofPower = [
    ...spotsOf(sentence, 'ask').filter(({ value }) => value === 'power'),
    ...spotsOf(sentence, 'full'),
    // "In the sink in water": how it thaws.
    ...spotsOf(sentence, 'thawedin').filter(({ value }) => value === 'cold-water'),
  ];
  const said = spotsOf(sentence, 'at').filter(
    ({ from, to }) => !ofPower.some((power) => from < power.to && power.from < to),
  );
  // What is out is out, wherever it came from: "out of the fridge".
  if (said.some(({ value }) => value === 'counter')) return 'counter';
  const [first] = said.filter(({ value, from }) => value !== 'freezer' || sentence.tokens[from] !== 'frozen');
  return (first?.value as KeptAt | undefined) ?? null;
};

/** "Back in the fridge or have I to freeze it": which of the two is asked, and neither is taken for granted. */
export const whichCold = (sentence: Sentence): boolean => {
  const freezes = spotsOf(sentence, 'ask').some(({ value }) => value === 'freeze');
  // "Is it in the fridge or the freezer" asks where it is.
  if (!has(sentence, 'mayor') || !(freezes || has(sentence, 'goesin'))) return false;
  if (placeIn(sentence) === 'counter') return false;
  const fridge = spotsOf(sentence, 'at').filter(({ value }) => value === 'fridge');
  const freezer = [
    ...spotsOf(sentence, 'at').filter(({ value }) => value === 'freezer'),
    ...spotsOf(sentence, 'ask').filter(({ value }) => value === 'freeze'),
  ];
  return fridge.some((one) =>
    freezer.some((other) =>
      sentence.tokens
        .slice(Math.min(one.to, other.to), Math.max(one.from, other.from))
        .some((word) => isWord(sentence, 'choice', word)),
    ),
  );
};

/** "On the windowsill": a place nobody here knows. */
export const elsewhereIn = (sentence: Sentence, spans: readonly Match[]): string | null => {
  const { tokens } = sentence;
  const known = (at: number): boolean =>
    spans.some(({ from, to }) => from <= at && at < to) ||
    ['at', 'method', 'thawedin', 'probe', 'air', 'nofood', 'inside', 'label', 'power'].some((kind) =>
      spotsOf(sentence, kind).some(({ from, to }) => from <= at && at < to),
    ) ||
    foodsIn(sentence).some(({ from, to }) => from <= at && at < to);
  for (let at = 0; at + 2 < tokens.length; at += 1) {
    if (!isWord(sentence, 'in', tokens[at]) || !isWord(sentence, 'the', tokens[at + 1])) continue;
    const word = tokens[at + 2]!;
    if (known(at + 2) || known(at) || isWord(sentence, 'noplace', word)) continue;
    return word;
  }
  return null;
};

/** How it was thawed; "I defrosted a roast in the fridge" says it by the place. */
export const thawedHow = (sentence: Sentence, where: KeptAt | null): GuidanceFacts['thawedIn'] => {
  const [said] = values<NonNullable<GuidanceFacts['thawedIn']>>(sentence, 'thawedin');
  if (said) return said;
  const thawed = spotsOf(sentence, 'state').some(({ value }) => value === 'thawed');
  return thawed && where === 'fridge' ? 'fridge' : null;
};
