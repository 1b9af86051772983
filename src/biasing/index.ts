/**
 * What a recogniser should listen for in one household: the listening grammar with its names in the format a
 * recogniser takes, or its names alone with weights. English; the names are the household's own.
 */
import { dirname } from 'node:path';
import { openGrammarFile, toJsgf, toSrgsXml, type OpenGrammar } from '../grammar/tools.js';
import type { Kitchen } from '../kitchen/model.js';
import { projectFile } from '../project-files.js';
import { phrasesOf } from './phrases.js';
import { weightedPhrases } from './weighted.js';

/** `jsgf`: JSpeech Grammar Format. `srgs`: SRGS 1.0, XML form. `words`: a line each, weight, tab, phrase. */
export const BIASING_FORMS = ['words', 'jsgf', 'srgs'] as const;
export type BiasingForm = (typeof BIASING_FORMS)[number];

export interface WhichGrammar {
  /** The listening grammar when left out. */
  readonly file?: string | undefined;
  /** The rule to make public; the root when left out. */
  readonly rule?: string | undefined;
}

const LISTENING = projectFile('grammars', 'en', 'listen.gram');
let listening: OpenGrammar | undefined;
const open = (file: string | undefined): OpenGrammar =>
  file === undefined
    ? (listening ??= openGrammarFile(LISTENING, { roots: [dirname(LISTENING)] }))
    : openGrammarFile(file, { roots: [dirname(file)] });

/** @throws RangeError where that grammar has no such rule, GrammarError where it cannot be read */
export const biasingFor = (
  kitchen: Kitchen,
  form: BiasingForm,
  { file, rule }: WhichGrammar = {},
): string => {
  if (form === 'words')
    return weightedPhrases(kitchen)
      .map(({ weight, phrase }) => `${weight}\t${phrase}\n`)
      .join('');
  const { library } = open(file);
  const options = { phrases: phrasesOf(kitchen), ...(rule === undefined ? {} : { rule }) };
  return form === 'jsgf' ? toJsgf(library, { ...options, name: 'tellshelf' }) : toSrgsXml(library, options);
};
