/**
 * The W3C's cases with two grammars of our own beside them, which stand in for grammars that two cases refer to
 * and the published part lacks.
 */
import { cpSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { projectFile } from '../../src/project-files.js';
import { outsideFile } from '../support/outside.js';

/** A folder with all of it; the caller takes it away. */
export const suiteFolder = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'tellshelf-srgs-'));
  for (const from of [outsideFile('w3c-srgs'), projectFile('tests', 'data', 'srgs')])
    cpSync(from, folder, { recursive: true });
  return folder;
};
