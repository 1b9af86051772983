/**
 * The weights that `npm run learn` fitted: `grammars/<language>/learned/weights.tsv`. Its first row
 * names the requests; then one feature a line with what it counts for each that it counts for, by
 * number from 0 (`feature<TAB>number weight<TAB>number weight …`).
 * A sum for each request, made into shares that add up to one; `none` is what is not ours.
 */
import { existsSync, readFileSync } from 'node:fs';
import { projectFile } from '../../project-files.js';

export interface Weights {
  readonly labels: readonly string[];
  /** For each feature: label, weight, label, weight … */
  readonly byFeature: ReadonlyMap<string, Float32Array>;
}

/** Null for a language that nothing was learned of. Throws `Error` for a line that is none. */
export const readWeights = (language: string): Weights | null => {
  const file = projectFile('grammars', language, 'learned', 'weights.tsv');
  if (!existsSync(file)) return null;
  const rows = readFileSync(file, 'utf8')
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('# '));
  const labels = rows[0]?.split('\t') ?? [];
  const byFeature = new Map<string, Float32Array>();
  for (const line of rows.slice(1)) {
    const [feature, ...entries] = line.split('\t');
    const row = new Float32Array(entries.length * 2);
    entries.forEach((entry, at) => {
      const space = entry.indexOf(' ');
      const label = Number(entry.slice(0, space));
      const weight = Number(entry.slice(space + 1));
      if (space < 1 || Number.isNaN(weight) || labels[label] === undefined)
        throw new Error(`weights.tsv: "${entry}" is no weight`);
      row[2 * at] = label;
      row[2 * at + 1] = weight;
    });
    byFeature.set(feature!, row);
  }
  return { labels, byFeature };
};

export interface Judged {
  readonly label: string;
  /** 0 to 1. */
  readonly share: number;
}

/** Every label with its share, the greatest first. */
export const judge = (features: readonly string[], { labels, byFeature }: Weights): readonly Judged[] => {
  const sums = new Float64Array(labels.length);
  for (const feature of features) {
    const row = byFeature.get(feature);
    if (row) for (let at = 0; at < row.length; at += 2) sums[row[at]!]! += row[at + 1]!;
  }
  const most = Math.max(...sums);
  const parts = sums.map((sum) => Math.exp(sum - most));
  const all = parts.reduce((total, part) => total + part, 0);
  return labels.map((label, at) => ({ label, share: parts[at]! / all })).sort((a, b) => b.share - a.share);
};
