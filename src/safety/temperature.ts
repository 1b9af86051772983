/** Temperatures: converting, comparing, and what a probe must read. */
import type { Region } from '../kitchen/model.js';
import type { CookState, CookTemperature, Reason, Temperature } from './api.js';
import type { ReasonCode } from './codes.js';
import { kindOf, matchFood, namedParts } from './match.js';
import { regionFacts } from './regions/index.js';
import { cite, safetyTables } from './tables.js';
import type { SafetyTables } from './tables.js';

/** Degrees in the other scale, unrounded. 40 °F is 4.44 °C; 5 °C is 41 °F. */
export const inScale = (temperature: Temperature, scale: Temperature['scale']): number => {
  if (temperature.scale === scale) return temperature.degrees;
  return scale === 'celsius' ? ((temperature.degrees - 32) * 5) / 9 : (temperature.degrees * 9) / 5 + 32;
};

/** Strictly above so many degrees Fahrenheit. */
export const isAbove = (temperature: Temperature, fahrenheit: number): boolean =>
  inScale(temperature, 'fahrenheit') > fahrenheit + 1e-9;

const row = (tables: SafetyTables, id: string) => {
  const found = tables.cooking.get(id);
  if (found === undefined) throw new Error(`cooking-temperatures.csv has no "${id}"`);
  return found;
};

const groundMeat = 'us-ground-meat';

export interface CookQuestion {
  readonly food: string;
  readonly region: Region | null;
  readonly state?: CookState;
  /** Heating again something already cooked. */
  readonly reheating?: boolean;
  /** Fully cooked ham: sealed at an inspected plant, or not. */
  readonly plantSealed?: boolean;
}

/** The row for reheating a kind of food in the US. */
const reheatRow = (kindId: string, cook: string | null, plantSealed: boolean): string => {
  if (/^ham-(vacuum|canned)/.test(kindId) || (plantSealed && kindId.startsWith('ham')))
    return 'us-ham-reheat-plant';
  if (kindId.startsWith('ham')) return 'us-ham-reheat-other';
  if (cook === 'us-soups' || cook === 'us-casseroles') return cook;
  return 'us-leftovers';
};

/** "Turkey burgers", "chicken satay": the part that wants the most heat decides, not the last word. */
const hottestPart = (food: string, cook: string | null, tables: SafetyTables): string | null => {
  const own = cook === null ? 0 : (tables.cooking.get(cook)?.fahrenheit ?? 0);
  let hottest: string | null = null;
  let degrees = own;
  for (const { bought, cooked } of namedParts(food, tables)) {
    const part = tables.kinds.get(bought ?? cooked ?? '')?.cook ?? null;
    const wants = part === null ? 0 : (tables.cooking.get(part)?.fahrenheit ?? 0);
    if (wants > degrees && part !== null && /poultry/.test(part)) [hottest, degrees] = [part, wants];
  }
  return hottest;
};

/**
 * What the thermometer should read inside, and how long to rest or hold it. UK: seventy degrees Celsius
 * for two minutes. With no region chosen the US figures are given: they are the hotter.
 */
export const cookTemperature = (question: CookQuestion, tables = safetyTables()): CookTemperature => {
  const state = question.state ?? (question.reheating === true ? 'cooked' : null);
  const named = matchFood(question.food, { state }, tables);
  const raw = state === null ? matchFood(question.food, { state: 'raw' }, tables) : named;
  // "What temperature for lamb" is asked of raw lamb, even where the shorter storage row would be the cooked one;
  // and meatloaf is made of ground meat, though what is kept of it is cooked.
  const ofGroundMeat = kindOf(raw, tables).cook === groundMeat;
  const match = named.notes.includes('several-fit') || ofGroundMeat ? raw : named;
  const kind = kindOf(match, tables);
  const cooked = kind.state === 'cooked' || question.reheating === true;
  const { cookRow } = regionFacts(question.region);
  const hotter = cookRow !== null ? null : hottestPart(question.food, kind.cook, tables);
  const id =
    cookRow !== null
      ? cookRow
      : hotter !== null
        ? hotter
        : cooked && !/^us-(egg|poultry)/.test(kind.cook ?? '')
          ? reheatRow(kind.id, kind.cook, question.plantSealed === true)
          : (kind.cook ?? 'us-leftovers');
  const found = row(tables, id);
  const notes: ReasonCode[] = [];
  if (id === 'us-shellfish-flesh' || id === 'us-fish') notes.push('look-unusable');
  if (found.boil) notes.push('boil-wanted');
  if (question.region === null) notes.push('stricter-region');
  if (match.sure === 'unknown') notes.push('general-answer');
  if (match.notes.includes('raw-assumed')) notes.push('raw-assumed');
  return {
    match,
    row: { id: found.id, food: found.food },
    temperature:
      regionFacts(found.region).scale === 'fahrenheit'
        ? { degrees: found.fahrenheit, scale: 'fahrenheit' }
        : { degrees: found.celsius, scale: 'celsius' },
    // A dish of ground meat, whose name does not say of which.
    ifPoultry:
      id === groundMeat && named.family !== match.family
        ? { degrees: row(tables, 'us-ground-poultry').fahrenheit, scale: 'fahrenheit' }
        : null,
    restSeconds: found.rest_minutes === null ? null : found.rest_minutes * 60,
    holdSeconds: found.hold_seconds,
    boil: found.boil,
    source: cite(tables, found),
    notes,
  };
};

export interface Probe {
  readonly reads: Temperature;
  /** Time rested off the heat, or held at that temperature. */
  readonly seconds?: number | null;
  /** It is boiling all over. */
  readonly boiling?: boolean | null;
}

export interface ProbeAnswer {
  readonly reached: boolean;
  /** What is still wanted. */
  readonly wanted: Temperature;
  readonly moreSeconds: number | null;
  readonly reasons: readonly Reason[];
}

const reason = (code: ReasonCode, args: Reason['args'], source: Reason['source']): Reason => ({
  code,
  args,
  source,
});

/** Whether what the thermometer reads is what guidance asks for. */
export const checkProbe = (wanted: CookTemperature, probe: Probe, tables = safetyTables()): ProbeAnswer => {
  const scale = wanted.temperature.scale;
  const reads = inScale(probe.reads, scale);
  const source = wanted.source;
  const values: Reason['args'] = {
    reached: { kind: 'temperature', ...probe.reads },
    wanted: { kind: 'temperature', ...wanted.temperature },
  };
  const answer = (
    reached: boolean,
    reasons: readonly Reason[],
    moreSeconds: number | null = null,
  ): ProbeAnswer => ({
    reached,
    wanted: wanted.temperature,
    moreSeconds,
    reasons,
  });
  if (wanted.boil) {
    return probe.boiling === true
      ? answer(true, [reason('hot-enough', values, source)])
      : answer(false, [reason('boil-wanted', values, source)]);
  }
  if (wanted.holdSeconds !== null && scale === 'celsius') {
    // The pairs offered to a home cook: 70 °C and hotter.
    const pair = tables.ukTimeTemperature
      .filter((each) => each.offered_to_cooks && each.celsius <= reads + 1e-9)
      .sort((a, b) => b.celsius - a.celsius)[0];
    if (pair === undefined) return answer(false, [reason('not-yet-hot', values, source)]);
    const held = probe.seconds ?? 0;
    return held >= pair.seconds
      ? answer(true, [reason('hot-enough', values, cite(tables, pair))])
      : answer(
          false,
          [
            reason(
              'held-too-short',
              { reached: { kind: 'temperature', ...probe.reads }, seconds: held, wanted: pair.seconds },
              cite(tables, pair),
            ),
          ],
          pair.seconds - held,
        );
  }
  if (reads < wanted.temperature.degrees - 1e-9)
    return answer(false, [reason('not-yet-hot', values, source)]);
  const rest = wanted.restSeconds ?? 0;
  const rested = probe.seconds ?? 0;
  if (rest > rested) {
    const more = rest - rested;
    return answer(false, [reason('rest-more', { ...values, minutes: Math.ceil(more / 60) }, source)], more);
  }
  return answer(true, [reason('hot-enough', values, source)]);
};

/** Whether a fridge is cold enough: US home 40 °F or below, UK 0 to 5 °C. */
export const fridgeReading = (reads: Temperature, region: Region | null, tables = safetyTables()): Reason =>
  thermometerReading('fridge', reads, region, tables);

/** The same of a fridge or a freezer: US 0 °F, UK minus eighteen. */
export const thermometerReading = (
  which: 'fridge' | 'freezer',
  reads: Temperature,
  region: Region | null,
  tables = safetyTables(),
): Reason => {
  const { thermometerRows, scale } = regionFacts(region);
  const rule = tables.holding.get(thermometerRows[which]);
  if (rule === undefined) throw new Error(`holding-temperatures.csv lacks the ${which} rows`);
  const limit =
    scale === 'celsius'
      ? { degrees: rule.high_c ?? 0, scale: 'celsius' as const }
      : { degrees: rule.high_f ?? 0, scale: 'fahrenheit' as const };
  const warm = inScale(reads, limit.scale) > limit.degrees + 1e-6;
  return reason(
    warm ? 'fridge-too-warm' : 'fridge-in-range',
    { reached: { kind: 'temperature', ...reads }, wanted: { kind: 'temperature', ...limit } },
    cite(tables, rule),
  );
};
