/** Sentences written by somebody who had not seen the grammar: `text<TAB>label<TAB>item<TAB>place<TAB>style`. */
import { readFileSync } from 'node:fs';
import type { Case } from './cases.js';
import { clincLabels } from './labels.js';
import type { Understander } from '../../src/understanding/index.js';
import type { HouseholdNames } from '../../src/understanding/names/index.js';
import { destroys, gotOf, runCases, type Result } from './score.js';
import { wrongSlots } from './slots.js';

interface BlindCase extends Case {
  readonly style: string;
}
type BlindResult = Result & { readonly heard: BlindCase };

export const runBlind = (
  cases: readonly BlindCase[],
  understander: Understander,
  names: HouseholdNames,
): BlindResult[] =>
  runCases(cases, understander, names).map((result, at) => ({ ...result, heard: cases[at]! }));

/** Styles: `clinc` has that set's labels, `kitchen` our intents, `other` is not ours (label `none`). */
export const blindCases = (file: string): BlindCase[] =>
  readFileSync(file, 'utf8')
    .split(/\r?\n/)
    .filter((line) => line.trim() !== '' && !line.startsWith('#'))
    .map((line, at) => {
      const [text, label, item, place, style] = line.split('\t');
      if (!text || !label || style === undefined)
        throw new Error(`${file}:${at + 1}: expected text, label, item, place, style`);
      const slots = { ...(item ? { item } : {}), ...(place ? { place } : {}) };
      return { hypotheses: [{ text }], label, style, slots };
    });

const blindRight = ({ heard, got }: BlindResult): boolean => {
  if (heard.label === 'none') return got === null;
  const meant: readonly string[] = clincLabels[heard.label!] ?? [heard.label!];
  return got?.split('+').every((intent) => meant.includes(intent)) ?? false;
};

/** The things and places it names are the ones meant. */
const blindSlotsRight = (
  { heard, understanding }: BlindResult,
  nameOf: (id: string) => string | undefined,
): boolean =>
  Object.entries(heard.slots ?? {}).every(
    ([slot, words]) =>
      wrongSlots({ [slot]: words }, understanding.readings[0]?.acts ?? [], nameOf).length === 0,
  );

const percent = (part: number, whole: number): string =>
  whole === 0 ? '-' : `${((100 * part) / whole).toFixed(1)}%`;

export const reportBlind = (
  title: string,
  results: readonly BlindResult[],
  nameOf: (id: string) => string | undefined,
  wantsMisses: boolean,
  say: (line: string) => void,
): void => {
  say(`\n== ${title}: ${results.length} sentences`);
  for (const style of new Set(results.map(({ heard }) => heard.style))) {
    const of = results.filter(({ heard }) => heard.style === style);
    const right = of.filter(blindRight);
    const named = right.filter(({ heard }) => Object.keys(heard.slots ?? {}).length > 0);
    const exact = named.filter((result) => blindSlotsRight(result, nameOf));
    say(
      `${style}: ${right.length} of ${of.length} right (${percent(right.length, of.length)})` +
        (named.length > 0
          ? `; of ${named.length} of these that name a thing or place, ${exact.length} with just these (${percent(exact.length, named.length)})`
          : '') +
        `; lost something unasked by a wrong intent: ${of.filter((result) => destroys(result) && !blindRight(result)).length}`,
    );
    const labels = new Map<string, BlindResult[]>();
    for (const result of of)
      labels.set(result.heard.label!, [...(labels.get(result.heard.label!) ?? []), result]);
    say(
      [...labels]
        .map(([label, some]) => `${label} ${some.filter(blindRight).length}/${some.length}`)
        .join(', '),
    );
  }
  if (!wantsMisses) return;
  for (const result of results) {
    const right = blindRight(result);
    if (right && blindSlotsRight(result, nameOf)) continue;
    const { heard, understanding } = result;
    const best = understanding.readings[0];
    const { item, items, place } = best?.acts[0]?.slots ?? {};
    const words = (items ?? (item ? [item] : []))
      .map((mention) => mention.words ?? mention.pointer)
      .join(' & ');
    say(
      `  ${heard.label}: ${heard.hypotheses[0]!.text} -> ${gotOf(understanding) ?? 'declined'} (${understanding.verdict}${best ? ` ${best.confidence.toFixed(2)}` : ''})` +
        (Object.keys(heard.slots ?? {}).length > 0
          ? ` meant ${JSON.stringify(heard.slots)} got ${words} / ${place?.words ?? item?.at?.words ?? ''}`
          : ''),
    );
  }
};
