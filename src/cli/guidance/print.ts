/** A finding as short lines that a screen reader reads well. `--json` prints the finding itself. */
import type { Assessment, Caution, Citation, Fact, Reason, Span, Step } from '../../safety/index.js';

const BASIS: Readonly<Record<Citation['basis'], string>> = {
  'agency-text': "the agency's own text",
  copy: "a copy of the agency's text",
  'from-memory': 'from memory, to be checked',
  derived: 'reckoned from published figures',
  'common-practice': 'common practice',
};

const citation = (source: Citation): string => {
  const parts = [source.agency, source.document, source.section, source.year, source.edition];
  return `${parts.filter((part) => part !== null).join(', ')} (${source.region.toUpperCase()}; ${BASIS[source.basis]})`;
};

const span = (limit: Span): string =>
  limit.low === limit.high
    ? `${limit.high} ${limit.high === 1 ? limit.unit.slice(0, -1) : limit.unit}`
    : `${limit.low} to ${limit.high} ${limit.unit}`;

const fact = (value: Fact): string => {
  if (typeof value !== 'object') return String(value);
  switch (value.kind) {
    case 'date':
      return value.day;
    case 'days':
      return `${value.days} days`;
    case 'time':
      return value.at;
    case 'duration':
      return `${value.seconds} seconds`;
    case 'temperature':
      return `${value.degrees} degrees ${value.scale}`;
    case 'amount':
      return `${value.amount.value} ${value.amount.unit}`;
  }
};

const coded = ({ code, args }: Pick<Reason | Caution | Step, 'code' | 'args'>): string => {
  const values = Object.entries(args).map(([name, value]) => `${name} ${fact(value)}`);
  return values.length === 0 ? code : `${code}: ${values.join(', ')}`;
};

const assessment = (found: Assessment): string[] => {
  const { match, row } = found;
  const lines = [`Verdict: ${found.verdict}`];
  lines.push(
    match.food === null
      ? `Food: "${found.name}" is not in the table; the cautious general answer is given`
      : `Food: ${match.food} (${match.family}; ${match.sure})`,
  );
  if (found.daysUsed !== null) lines.push(`Days used: ${found.atLeast ? 'at least ' : ''}${found.daysUsed}`);
  if (found.lastDay !== null)
    lines.push(`Last day: ${found.lastDay}, use up from ${found.useSoonFrom ?? 'then'}`);
  if (found.qualityUntil !== null) {
    const { from, to } = found.qualityUntil;
    lines.push(`Best quality until: ${from === to ? to : `${from} to ${to}`}`);
  }
  if (row !== null) {
    const limit = row.limit === null ? 'no figure' : `${span(row.limit)} (${row.kind})`;
    lines.push(
      `Row: ${row.id}: ${row.food}, ${row.type}: ${limit}${row.note === null ? '' : `; ${row.note}`}`,
    );
    lines.push(`Source: ${citation(row.source)}`);
  } else lines.push('Row: none');
  for (const reason of found.reasons) lines.push(`Why: ${coded(reason)}`);
  for (const caution of found.cautions) lines.push(`Caution: ${coded(caution)}`);
  lines.push(`Region: ${found.region.toUpperCase()}`);
  return lines;
};

const isAssessment = (value: object): value is Assessment => 'verdict' in value && 'clock' in value;
const isCoded = (value: object): value is Reason => 'code' in value && 'args' in value;
const isCitation = (value: object): value is Citation => 'agency' in value && 'document' in value;

/** Any finding, name by name; codes, sources and steps in their own short form. */
const general = (value: unknown, name: string): string[] => {
  if (value === null || value === undefined) return [];
  if (typeof value !== 'object') return [`${name}: ${String(value)}`];
  if (Array.isArray(value)) return value.flatMap((part) => general(part, name));
  if (isCitation(value)) return [`${name}: ${citation(value)}`];
  if (isCoded(value)) {
    const step = value as unknown as Partial<Step>;
    const extra = [
      step.caution ? `caution first: ${step.caution.code}` : '',
      typeof step.seconds === 'number' ? `timer ${step.seconds} seconds` : '',
      step.temperature ? `${step.temperature.degrees} degrees ${step.temperature.scale}` : '',
      step.words ?? '',
    ].filter((part) => part !== '');
    return [`${name}: ${[coded(value), ...extra].join('; ')}`];
  }
  return Object.entries(value).flatMap(([part, inner]) =>
    general(inner, name === '' ? part : `${name} ${part}`),
  );
};

const isAssessed = (found: unknown): found is Assessment =>
  typeof found === 'object' && found !== null && isAssessment(found);

/** A finding, or one for each place where nobody said which. */
export const linesOf = (found: unknown): string[] => {
  if (isAssessed(found)) return assessment(found);
  if (Array.isArray(found) && found.length > 0 && found.every(isAssessed))
    return found.flatMap((one) => [`Where: ${one.where ?? 'unknown'}`, ...assessment(one)]);
  return general(found, '');
};
