/** What must be said with a verdict. */
import type { Caution, Verdict } from '../api.js';
import { caution, kindCautions } from '../cautions.js';
import { kindOf, matchFood } from '../match.js';
import { regionFacts } from '../regions/index.js';
import { cite, type SafetyTables } from '../tables.js';
import type { Case } from './case.js';

const MOULDS = /^(whole-|mushrooms|bread|hard-cheese|fruit-pie)/;

/** "Deli turkey sandwich", "feta salad": what a dish is named after is in it, and not for everybody whatever holds it. */
const partsAtRisk = (name: string, tables: SafetyTables): readonly Caution[] => {
  const words = name.split(' ');
  for (let many = words.length - 1; many > 0; many -= 1) {
    const part = matchFood(words.slice(0, many).join(' '), {}, tables);
    if (part.sure !== 'exact') continue;
    const { atRisk } = kindCautions(kindOf(part, tables), tables);
    if (atRisk.length > 0) return atRisk;
  }
  return [];
};

export const cautionsOf = ({ subject, kind, region, tables }: Case, verdict: Verdict): readonly Caution[] => {
  const { always, ...ofKind } = kindCautions(kind, tables);
  const atRisk =
    subject.atRisk && ofKind.atRisk.length === 0 ? partsAtRisk(subject.name, tables) : ofKind.atRisk;
  const bad = verdict === 'throw-out' || verdict === 'unknown';
  const botulism = bad && (kind.hazard_row === 'garlic-oil' || kind.hazard_row === 'home-canned');
  const rice = regionFacts(region).riceByItself && /rice/.test(kind.id);
  const noChances = subject.atRisk && verdict === 'last-day' && kind.hazard === 'high';
  // A bulging tin is a tin's trouble: not said of a pot of home-made soup.
  const here =
    kind.hazard_row === 'damaged-can' && (subject.where !== 'pantry' || subject.homeMade) ? [] : always;
  // What no table dates is judged by its state: common practice, and only for what goes mouldy first.
  const mould =
    kind.room === 'stable' &&
    subject.where !== 'freezer' &&
    /^(no-figure|past-best-quality|fine)$/.test(verdict)
      ? MOULDS.test(kind.id)
      : false;
  const formula = kind.id.startsWith('formula') && subject.dates.useBy !== undefined;
  if (
    !bad &&
    !rice &&
    !noChances &&
    !mould &&
    !formula &&
    here.length === 0 &&
    !(subject.atRisk && atRisk.length > 0)
  )
    return [];
  return [
    ...(botulism ? [caution('do-not-taste')] : []),
    ...here,
    ...(subject.atRisk ? atRisk : []),
    ...(noChances ? [caution('at-risk-general')] : []),
    ...(formula ? [caution('infant-use-by')] : []),
    ...(mould ? [caution('mould')] : []),
    ...(rice
      ? [caution('rice', {}, cite(tables, tables.storage.uk.get('uk-rice') ?? tables.timeRules.ukReheatOnce))]
      : []),
    ...(bad ? [caution('look-and-smell')] : []),
  ];
};
