/**
 * The words of the pages, in the household's language: Fluent messages from `grammars/<language>/pages`, bundled
 * with each page so that they are there without a network. Before a page is let in, the browser's language
 * decides.
 */
import { FluentBundle, FluentResource, type FluentVariable } from '@fluent/bundle';
import enBoard from '../../../grammars/en/pages/board.ftl';
import enCharts from '../../../grammars/en/pages/charts.ftl';
import enEverywhere from '../../../grammars/en/pages/everywhere.ftl';
import enGate from '../../../grammars/en/pages/gate.ftl';
import enHome from '../../../grammars/en/pages/home.ftl';
import enLabels from '../../../grammars/en/pages/labels.ftl';
import enTeach from '../../../grammars/en/pages/teach.ftl';
import enTalk from '../../../grammars/en/pages/talk.ftl';
import esBoard from '../../../grammars/es/pages/board.ftl';
import esCharts from '../../../grammars/es/pages/charts.ftl';
import esEverywhere from '../../../grammars/es/pages/everywhere.ftl';
import esGate from '../../../grammars/es/pages/gate.ftl';
import esHome from '../../../grammars/es/pages/home.ftl';
import esLabels from '../../../grammars/es/pages/labels.ftl';
import esTeach from '../../../grammars/es/pages/teach.ftl';
import esTalk from '../../../grammars/es/pages/talk.ftl';
import esTouch from '../../../grammars/es/phrases/touch.ftl';
import esUnits from '../../../grammars/es/phrases/units.ftl';
import esWords from '../../../grammars/es/phrases/words.ftl';

const files: Readonly<Record<string, readonly string[]>> = {
  en: [enEverywhere, enGate, enTalk, enBoard, enHome, enLabels, enCharts, enTeach],
  es: [esEverywhere, esGate, esTalk, esBoard, esHome, esLabels, esCharts, esTeach, esTouch, esUnits, esWords],
};

const languageOf = (locale: string): string => locale.slice(0, 2).toLowerCase();

const bundleOf = (locale: string): FluentBundle => {
  const bundle = new FluentBundle(locale, { useIsolating: false });
  for (const text of files[languageOf(locale)] ?? files['en'] ?? [])
    bundle.addResource(new FluentResource(text));
  return bundle;
};

/** The first of the browser's languages that the pages speak. */
const ofBrowser = (): string =>
  (typeof navigator === 'undefined' ? [] : navigator.languages).find(
    (locale) => languageOf(locale) in files,
  ) ?? 'en';

let locale = '';
let bundle: FluentBundle;

/** The pages speak this language from now on; what is drawn next shows it. Null: the browser's. */
export const speak = (wanted: string | null): void => {
  const next = wanted !== null && languageOf(wanted) in files ? wanted : ofBrowser();
  if (next === locale) return;
  locale = next;
  bundle = bundleOf(next);
  if (typeof document !== 'undefined') document.documentElement.lang = next;
};
speak(null);

type Args = Readonly<Record<string, FluentVariable>>;

/** A message by its name. All languages have all of them: `tests/web/page-words.test.ts`. */
export const t = (id: string, args?: Args): string => {
  const pattern = bundle.getMessage(id)?.value ?? null;
  return pattern === null ? id : bundle.formatPattern(pattern, args);
};

const slug = (words: string): string => words.toLowerCase().replace(/[^a-z0-9]+/g, '-');

/** A message that need not be: a word of the record in this language. */
const maybe = (id: string, attribute?: string): string | null => {
  const message = bundle.getMessage(id);
  const pattern = attribute === undefined ? message?.value : message?.attributes[attribute];
  return pattern ? bundle.formatPattern(pattern) : null;
};

/** A word of the record (an allergen, a diet, a side) as this language says it; the household's own stay. */
export const recordWord = (word: string): string =>
  maybe(`word-${slug(word)}`) ?? maybe(`touch-${slug(word)}`) ?? word;

/** What is counted, as this language says it, and back: the record keeps its own word. */
export const unitWord = (unit: string): string => maybe(`unit-${slug(unit)}`) ?? unit;
export const unitOf = (word: string): string =>
  t('units')
    .split(',')
    .map((unit) => unit.trim())
    .find((unit) => unitWord(unit).toLowerCase() === word.trim().toLowerCase()) ?? word.trim();

/** "2 portions", "about ½ tub": `print` is how the record's own language prints it. */
export const amountWords = (
  amount: { readonly value: number; readonly unit: string; readonly rough?: boolean | undefined } | null,
  print: string | null,
): string | null => {
  if (amount === null || print === null || languageOf(locale) === 'en') return print;
  const figure = new Intl.NumberFormat(locale, { maximumFractionDigits: 2 }).format(amount.value);
  const many = amount.value > 1 ? maybe(`unit-${slug(amount.unit)}`, 'many') : null;
  const words = amount.unit === 'piece' ? figure : `${figure} ${many ?? unitWord(amount.unit)}`;
  return amount.rough === true ? t('amount-about', { amount: words }) : words;
};

/** The language of what comes from the record or the service in English whatever the household speaks. */
export const langOfRecord = (): 'en' | undefined => (languageOf(locale) === 'en' ? undefined : 'en');
