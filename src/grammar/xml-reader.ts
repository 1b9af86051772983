/** Reads the XML form of SRGS 1.0, so that ABNF grammars can refer to it (section 1.3). */
import { GrammarError } from './problems.js';
import type { GrammarDocument } from './syntax.js';

/** Throws `GrammarError`. */
export const readXml = (_text: string, file: string, _encoding = 'UTF-8'): GrammarDocument => {
  throw new GrammarError([
    { file, line: 1, column: 1, message: 'The XML form is not read yet.', expected: 'the ABNF form' },
  ]);
};
