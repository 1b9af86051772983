/** Reckoning with amounts. Never negative; thirds stay thirds when added up again. */
import type { Amount, Share } from '../terms/amount.js';
import type { Region } from './model.js';

type UnitTable = ReadonlyMap<string, number>;

/** A map, since a unit is whatever was said, and every plain object has a "constructor". */
const unitTable = (units: Readonly<Record<string, number>>): UnitTable => new Map(Object.entries(units));

/**
 * Grams and millilitres in one of each unit.
 * Sources: pound and ounce, US customary volumes: NIST Special Publication 811 (2008), appendix B.8;
 * imperial volumes: Weights and Measures Act 1985 (UK), schedule 1.
 */
const MASS = unitTable({
  milligram: 0.001,
  gram: 1,
  kilogram: 1000,
  ounce: 28.349523125,
  pound: 453.59237,
});
const VOLUME: Readonly<Record<Region, UnitTable>> = {
  us: unitTable({
    millilitre: 1,
    milliliter: 1,
    litre: 1000,
    liter: 1000,
    teaspoon: 4.92892159375,
    tablespoon: 14.78676478125,
    'fluid ounce': 29.5735295625,
    cup: 236.5882365,
    pint: 473.176473,
    quart: 946.352946,
    gallon: 3785.411784,
  }),
  uk: unitTable({
    millilitre: 1,
    milliliter: 1,
    litre: 1000,
    liter: 1000,
    'fluid ounce': 28.4130625,
    pint: 568.26125,
    quart: 1136.5225,
    gallon: 4546.09,
  }),
};
const COUNTS = unitTable({ piece: 1, dozen: 12 });

/** Two words for one container: a tin is a can, whichever the record says. Common practice. */
const ALIKE: ReadonlyMap<string, string> = new Map(
  [
    ['can', 'tin'],
    ['packet', 'package', 'pack', 'pouch'],
    ['tub', 'container'],
    ['bag', 'freezer bag'],
  ].flatMap((units) => units.map((unit) => [unit, units[0]!] as const)),
);

const MEASURED: ReadonlySet<string> = new Set(
  [MASS, VOLUME.us, VOLUME.uk].flatMap((table) => [...table.keys()]).concat('dozen'),
);
/** Whether a unit is a weight or a volume, rather than a container or a count. */
export const isMeasured = (unit: string): boolean => MEASURED.has(unit);

const factor = (unit: string, region: Region): { readonly kind: string; readonly of: number } => {
  const mass = MASS.get(unit);
  if (mass !== undefined) return { kind: 'mass', of: mass };
  const volume = VOLUME[region].get(unit);
  if (volume !== undefined) return { kind: 'volume', of: volume };
  const count = COUNTS.get(unit);
  if (count !== undefined) return { kind: 'count', of: count };
  return { kind: ALIKE.get(unit) ?? unit, of: 1 };
};

/** Floating error of adding thirds and tenths back; far below what a kitchen measures. */
const tidy = (value: number): number => {
  const rounded = Math.round(value * 1e6) / 1e6;
  const whole = Math.round(value);
  return Math.abs(value - whole) < 1e-5 ? whole : rounded;
};

/** The value in another unit, or null when the two cannot be compared (tubs and grams). */
export const convert = (amount: Amount, unit: string, region: Region): number | null => {
  if (amount.unit === unit) return amount.value;
  const from = factor(amount.unit, region);
  const to = factor(unit, region);
  return from.kind === to.kind ? (amount.value * from.of) / to.of : null;
};

const rough = (...of: readonly (Amount | Share)[]): { readonly rough?: true } =>
  of.some((one) => one.rough) ? { rough: true } : {};

/** True for a number that can be an amount: finite and not negative. */
export const isAmount = (amount: Amount): boolean =>
  Number.isFinite(amount.value) && amount.value >= 0 && amount.unit.trim() !== '';

/** "two" of three tubs is two tubs: a bare count counts what the other amount counts, unless that is measured. */
export const countedAs = (amount: Amount, like: Amount): Amount =>
  amount.unit === 'piece' && !MEASURED.has(like.unit) ? { ...amount, unit: like.unit } : amount;

/** An amount of something that is there: nothing is not put away, split off or moved. */
export const isSome = (amount: Amount): boolean => isAmount(amount) && amount.value > 0;

/** `from` less `taken`, in `from`'s unit. */
export const lessAmount = (
  from: Amount,
  taken: Amount,
  region: Region,
): Amount | 'unit-differs' | 'more-than-there-is' => {
  const value = convert(countedAs(taken, from), from.unit, region);
  if (value === null) return 'unit-differs';
  const left = tidy(from.value - value);
  if (left < 0) return 'more-than-there-is';
  return { value: left, unit: from.unit, ...rough(from, taken) };
};

/** The two together in the first's unit, or null when they cannot be added. */
export const sumAmounts = (a: Amount, b: Amount, region: Region): Amount | null => {
  const value = convert(b, a.unit, region);
  return value === null ? null : { value: tidy(a.value + value), unit: a.unit, ...rough(a, b) };
};

/** That fraction of an amount. */
export const shareOf = (amount: Amount, share: Share): Amount => ({
  value: tidy(amount.value * share.fraction),
  unit: amount.unit,
  ...rough(amount, share),
});

/** `n` parts that add up to the whole: 3 into 2 is 1.5 and 1.5. */
export const partsOf = (amount: Amount, n: number): readonly Amount[] =>
  Array.from({ length: n }, () => shareOf(amount, { fraction: 1 / n }));

export const isShare = (of: Amount | Share): of is Share => 'fraction' in of;
