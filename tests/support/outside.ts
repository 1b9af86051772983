/**
 * Sets of other people's that checks are run on, and that are not ours to hand on. They are read from the folder
 * that TELLSHELF_OUTSIDE names, else from `shared/data` beside the checkout. A folder that is named must hold
 * them all; where none is, the checks on them are skipped, and `outside-setup.ts` says so in one line.
 */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { projectFile } from '../../src/project-files.js';

/** What each set is: whose, and where it was published. */
export const OUTSIDE_SETS = {
  clinc: 'CLINC150 (Larson et al., EMNLP-IJCNLP 2019, github.com/clinc/oos-eval)',
  slurp:
    'SLURP (Bastianelli et al., EMNLP 2020, github.com/pswietojanski/slurp) and HWU64 (Liu et al., IWSDS 2019, github.com/xliuhw/NLU-Evaluation-Data)',
  'w3c-srgs':
    'the SRGS 1.0 implementation report suite (W3C Voice Browser Working Group, 2002, www.w3.org/TR/speech-grammar)',
} as const;
export type OutsideSet = keyof typeof OUTSIDE_SETS;

const named = process.env['TELLSHELF_OUTSIDE'];
export const outsideFolder =
  named === undefined || named === '' ? projectFile('..', 'shared', 'data') : named;

/** The sets that are not here. */
export const missingOutside = (): OutsideSet[] =>
  (Object.keys(OUTSIDE_SETS) as OutsideSet[]).filter((set) => !existsSync(join(outsideFolder, set)));

/** @throws Error naming each missing set, where a folder was named. */
export const requireNamedOutside = (): void => {
  const missing = missingOutside();
  if (named !== undefined && named !== '' && missing.length > 0)
    throw new Error(`TELLSHELF_OUTSIDE is ${named}, which lacks ${missing.join(', ')}.`);
};

/** Whether a set is here: `describe.skipIf(!hasOutside('clinc'))`. */
export const hasOutside = (set: OutsideSet): boolean => !missingOutside().includes(set);

/** A file of a set, or the set's folder. @throws Error with where it is published, when the set is missing. */
export const outsideFile = (set: OutsideSet, ...parts: string[]): string => {
  if (!hasOutside(set)) throw new Error(`${set} is not in ${outsideFolder}: ${OUTSIDE_SETS[set]}.`);
  return join(outsideFolder, set, ...parts);
};
