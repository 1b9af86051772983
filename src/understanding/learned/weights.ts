/**
 * The weights that `npm run learn` fitted: `grammars/<language>/learned/weights.tsv`, one feature a
 * line with what it counts for each request (`feature<TAB>request weight<TAB>request weight …`).
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
  const labels = new Map<string, number>();
  const byFeature = new Map<string, Float32Array>();
  for (const line of readFileSync(file, 'utf8').split('\n')) {
    if (line === '' || line.startsWith('# ')) continue;
    const [feature, ...entries] = line.split('\t');
    const row = new Float32Array(entries.length * 2);
    entries.forEach((entry, at) => {
      const space = entry.lastIndexOf(' ');
      const weight = Number(entry.slice(space + 1));
      if (space < 0 || Number.isNaN(weight)) throw new Error(`weights.tsv: "${entry}" is no weight`);
      const label = entry.slice(0, space);
      if (!labels.has(label)) labels.set(label, labels.size);
      row[2 * at] = labels.get(label)!;
      row[2 * at + 1] = weight;
    });
    byFeature.set(feature!, row);
  }
  return { labels: [...labels.keys()], byFeature };
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
