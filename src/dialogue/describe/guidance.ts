/** What the safety room found, as phrases: reasons, cautions, sources. */
import type { Assessment, Caution, Citation, Fact, Reason } from '../../safety/api.js';
import type { Say, Value } from '../../speech/answer.js';
import { day, list, say } from '../handler.js';

/** Adds the span in words where a finding has one. */
const spoken = (args: Readonly<Record<string, Fact>>): Record<string, Value> => {
  const { low, high, unit, allergens } = args;
  if (typeof allergens === 'string') return { ...args, allergens: list(allergens.split(', ')) };
  if (typeof low !== 'number' || typeof high !== 'number' || typeof unit !== 'string') return { ...args };
  return { ...args, span: spanWords({ low, high, unit }) };
};

export const spanWords = ({ low, high, unit }: { low: number; high: number; unit: string }): Say =>
  low === high ? say('span-single', { high, unit }) : say('span-range', { low, high, unit });

/** How long frozen food tastes best is no matter of days. */
const monthly: ReadonlySet<string> = new Set(['frozen-quality']);
const inMonths = (args: Readonly<Record<string, Value>>): Record<string, Value> =>
  Object.fromEntries(
    Object.entries(args).map(([key, value]) => [
      key,
      typeof value === 'object' && 'kind' in value && value.kind === 'date'
        ? { ...value, monthOnly: true }
        : value,
    ]),
  );

export const reasonWords = ({ code, args }: Reason): Say =>
  say(`safety-${code}`, monthly.has(code) ? inMonths(spoken(args)) : spoken(args));
export const cautionWords = ({ code, args }: Caution): Say => say(`caution-${code}`, spoken(args));

export const sourceWords = (source: Citation | null): Say[] => {
  if (!source) return [];
  const { agency, document, year, section, basis } = source;
  const cited = say('source-cited', {
    agency,
    // "Food Code 3-403.11": a paragraph's number is for the eye; the table keeps it.
    document: document.replace(/\s\d+-[\d.]+/g, ''),
    ...(year ? { year } : {}),
    ...(section ? { section } : {}),
  });
  if (basis === 'from-memory') return [say('source-memory')];
  return basis === 'common-practice' ? [say('source-practice')] : [cited];
};

export const distinct = (of: readonly Say[]): Say[] => [
  ...new Map(of.map((one) => [JSON.stringify(one), one])).values(),
];

/** Each source once. */
export const sourcesOf = (found: readonly { readonly source: Citation | null }[]): Say[] =>
  distinct(found.flatMap(({ source }) => sourceWords(source)));

/** What guidance comes to, in one sentence; with the food's name when it leads the answer. */
export const verdictWords = (found: Assessment, name: Value | null, many = false): Say =>
  say(`verdict-${found.verdict}`, {
    ...(name ? { name } : {}),
    ...(found.lastDay ? { last: day(found.lastDay) } : {}),
    many: many ? 'yes' : 'no',
  });

/** The reasons worth a second sentence: the deciding one; the rest is for "why". */
export const reasonsOf = (found: Assessment): { first: Say[]; rest: Say[]; sources: Say[] } => {
  const [first, ...rest] = found.reasons;
  const row = found.row ? [{ source: found.row.source }] : [];
  return {
    first: first ? [reasonWords(first)] : [],
    rest: [...rest.map(reasonWords), ...found.cautions.map(cautionWords)],
    sources: sourcesOf([...row, ...found.reasons]),
  };
};

/** Cautions that belong into the answer: people at risk, a baby's food, what poisons without a sign. */
const first = ['at-risk', 'infant', 'botulism', 'do-not-taste', 'raw-dough'];

/** What stands before a verdict at every length; at most two. `toldOf`: the question is about somebody at risk. */
export const mustSay = (found: Pick<Assessment, 'cautions'>, toldOf = false): Say[] =>
  found.cautions
    .filter(
      ({ code }) => first.some((begin) => code.startsWith(begin)) || (toldOf && code === 'ask-clinician'),
    )
    .slice(0, 2)
    .map(cautionWords);

/** What the chart says, where the figure gone by is another table's; where it is the chart's own, "why" tells the other. */
export const otherTable = ({ reasons }: Pick<Assessment, 'reasons'>): Say[] =>
  reasons.filter(({ code, args }) => code === 'other-table' && args['table'] === 'chart').map(reasonWords);
