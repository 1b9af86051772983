/** The understander everybody uses: the grammar's and what was learned, with the guidance ear before them. */
import { createUnderstander as createReader, type Understander } from '../understand.js';
import { withQualifiers } from '../qualifiers.js';
import { withLimit } from '../too-long.js';
import { withGuidance } from './index.js';

/** Makes nothing of anything. */
const deaf: Understander = {
  begins: () => false,
  understand: () => ({ readings: [], margin: 1, verdict: 'nothing-heard' }),
};

/** `without`: leaves out the last resorts, to see what each is worth. */
export const createUnderstander = (locale: string, how?: Parameters<typeof createReader>[1]): Understander =>
  withQualifiers(withLimit(withGuidance(createReader(locale, how), locale), withGuidance(deaf, locale)));
