/**
 * The weights that `npm run learn` fitted: `grammars/<language>/learned/weights.tsv`. Its first row
 * names the requests; then one feature a line with what it counts for each that it counts for, by
 * number from 0 (`feature<TAB>number weight<TAB>number weight …`).
 * A sum for each request, made into shares that add up to one; `none` is what is not ours.
 */
import { existsSync, readFileSync } from 'node:fs';
import { prepared } from '../../prepared.js';
import { projectFile } from '../../project-files.js';

export interface Weights {
  readonly labels: readonly string[];
  /** Features by their row. */
  readonly rowOf: ReadonlyMap<string, number>;
  /** Entries of row r are `starts[r]` up to `starts[r + 1]`. */
  readonly starts: Int32Array;
  /** Of each entry the label's number, */
  readonly labelOf: Uint16Array;
  /** and what it weighs. */
  readonly weightOf: Float32Array;
}

/** Each feature's row: label, weight, label, weight … */
export const weightsFrom = (
  labels: readonly string[],
  rows: Iterable<readonly [feature: string, entries: readonly number[]]>,
): Weights => {
  const rowOf = new Map<string, number>();
  const starts = [0];
  const labelOf: number[] = [];
  const weightOf: number[] = [];
  for (const [feature, entries] of rows) {
    rowOf.set(feature, rowOf.size);
    for (let at = 0; at < entries.length; at += 2) {
      labelOf.push(entries[at]!);
      weightOf.push(entries[at + 1]!);
    }
    starts.push(labelOf.length);
  }
  return {
    labels,
    rowOf,
    starts: Int32Array.from(starts),
    labelOf: Uint16Array.from(labelOf),
    weightOf: Float32Array.from(weightOf),
  };
};

const readTable = (text: string): Weights => {
  const rows = text.split('\n').filter((line) => line !== '' && !line.startsWith('# '));
  const labels = rows[0]?.split('\t') ?? [];
  return weightsFrom(
    labels,
    rows.slice(1).map((line) => {
      const [feature, ...entries] = line.split('\t');
      const row = entries.flatMap((entry) => {
        const space = entry.indexOf(' ');
        const label = Number(entry.slice(0, space));
        const weight = Number(entry.slice(space + 1));
        if (space < 1 || Number.isNaN(weight) || labels[label] === undefined)
          throw new Error(`weights.tsv: "${entry}" is no weight`);
        return [label, weight];
      });
      return [feature!, row];
    }),
  );
};

/** Null for a language that nothing was learned of. Throws `Error` for a line that is none. */
export const readWeights = (language: string): Weights | null => {
  const file = projectFile('grammars', language, 'learned', 'weights.tsv');
  return existsSync(file)
    ? prepared(`weights-${language}`, [file], () => readTable(readFileSync(file, 'utf8')))
    : null;
};

export interface Judged {
  readonly label: string;
  /** 0 to 1. */
  readonly share: number;
}

/** Every label with its share, the greatest first. */
export const judge = (
  features: readonly string[],
  { labels, rowOf, starts, labelOf, weightOf }: Weights,
): readonly Judged[] => {
  const sums = new Float64Array(labels.length);
  for (const feature of features) {
    const row = rowOf.get(feature);
    if (row !== undefined)
      for (let at = starts[row]!; at < starts[row + 1]!; at += 1) sums[labelOf[at]!]! += weightOf[at]!;
  }
  const most = Math.max(...sums);
  const parts = sums.map((sum) => Math.exp(sum - most));
  const all = parts.reduce((total, part) => total + part, 0);
  return labels.map((label, at) => ({ label, share: parts[at]! / all })).sort((a, b) => b.share - a.share);
};
