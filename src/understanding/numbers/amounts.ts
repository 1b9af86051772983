/** "three tubs", "half a jar", "a jar and a half", "about two hundred grams", "two pounds four ounces". */
import pluralize from 'pluralize';
import type { Amount } from '../../terms/amount.js';
import { perLexicon, type Lexicon } from '../words/lexicon.js';
import { phraseSet, phraseTable } from '../words/phrases.js';
import { colloquialHundredsAt } from './cardinals.js';
import { fractionAt, numberTables, quantityAt, type Quantity } from './quantities.js';

interface AmountReading {
  readonly amount: Amount;
  readonly length: number;
  readonly weight: number;
}

const tables = perLexicon(({ units, touch }) => ({
  units: phraseTable([
    ...Object.entries(touch.containers).flatMap(([kept, ways]) =>
      ways.flatMap((said) => [said, pluralize.plural(said)].map((way) => [way, kept] as const)),
    ),
    ...Object.entries(units.units).flatMap(([kept, ways]) => ways.map((said) => [said, kept] as const)),
  ]),
  hundreds: new Set(units.colloquialHundreds.units),
  parts: new Map(Object.entries(units.parts)),
  partitives: phraseSet(units.partitives.phrases),
  qualities: phraseSet([...Object.values(touch.sizes), ...Object.values(touch.textures)].flat()),
}));

/** The unit at `from`, after "of", an article or "more" where these may stand. */
const unitAt = (
  tokens: readonly string[],
  from: number,
  quantity: Quantity,
  lexicon: Lexicon,
): { unit: string; end: number } | null => {
  const { one, of, more } = numberTables(lexicon);
  const skipTo = [from];
  if (quantity.fraction) {
    const afterOf = of.has(tokens[from] ?? '') ? from + 1 : from;
    if (one.has(tokens[afterOf] ?? '')) skipTo.push(afterOf + 1);
  }
  if (more.has(tokens[from] ?? '')) skipTo.push(from + 1);
  const partitive = quantity.article ? null : tables(lexicon).partitives.longestAt(tokens, from);
  if (partitive) skipTo.push(from + partitive.length);
  const { units, qualities } = tables(lexicon);
  for (const start of skipTo) {
    let at = start;
    for (;;) {
      const hit = units.longestAt(tokens, at);
      if (hit) return { unit: hit.value, end: at + hit.length };
      // "One big glass jar": how it feels stands between.
      const quality = qualities.longestAt(tokens, at);
      if (!quality) break;
      at += quality.length;
    }
  }
  return null;
};

const amountOf = (value: number, unit: string, rough: boolean): Amount =>
  rough ? { value, unit, rough: true } : { value, unit };

/** "and a half" after the unit; ounces after pounds. */
const withRest = (
  tokens: readonly string[],
  end: number,
  quantity: Quantity,
  unit: string,
  lexicon: Lexicon,
): { value: number; end: number } | null => {
  const { and } = numberTables(lexicon);
  const joined = and.has(tokens[end] ?? '');
  if (joined && Number.isInteger(quantity.value)) {
    const part = fractionAt(tokens, end + 1, lexicon);
    if (part && part.value < 1) return { value: quantity.value + part.value, end: end + 1 + part.length };
  }
  const part = tables(lexicon).parts.get(unit);
  if (!part) return null;
  const start = joined ? end + 1 : end;
  const small = quantityAt(tokens, start, lexicon);
  if (!small || small.rough || small.value >= part[1]) return null;
  const smallUnit = unitAt(tokens, start + small.length, small, lexicon);
  if (smallUnit?.unit !== part[0]) return null;
  return { value: quantity.value + small.value / part[1], end: smallUnit.end };
};

/** How grammars prefer readings: a number without a unit counts pieces, and gives way to one with. */
const bareWeight = 0.3;

/** Every amount at `from`: with its unit, and as bare pieces. */
export const amountsAt = (tokens: readonly string[], from: number, lexicon: Lexicon): AmountReading[] => {
  const { hundreds } = tables(lexicon);
  const readings: AmountReading[] = [];
  const quantity = quantityAt(tokens, from, lexicon);
  if (!quantity) return readings;
  const { rough } = quantity;
  const unit = unitAt(tokens, from + quantity.length, quantity, lexicon);
  if (unit) {
    const rest = withRest(tokens, unit.end, quantity, unit.unit, lexicon);
    if (rest)
      readings.push({ amount: amountOf(rest.value, unit.unit, rough), length: rest.end - from, weight: 1 });
    readings.push({
      amount: amountOf(quantity.value, unit.unit, rough),
      length: unit.end - from,
      weight: rest ? 0.5 : 1,
    });
  }
  const round = colloquialHundredsAt(tokens, from, lexicon);
  if (round) {
    const after = unitAt(tokens, from + round.length, { ...round, rough: false }, lexicon);
    if (after && hundreds.has(after.unit)) {
      readings.push({
        amount: amountOf(round.value, after.unit, false),
        length: after.end - from,
        weight: 1,
      });
    }
  }
  if (!quantity.article) {
    readings.push({
      amount: amountOf(quantity.value, 'piece', rough),
      length: quantity.length,
      weight: bareWeight,
    });
  }
  return readings;
};
