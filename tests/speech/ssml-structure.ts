/**
 * The structure of SSML 1.1 (W3C Recommendation, 7 September 2010, section 3), as far as Tellshelf writes it, from
 * memory of that text. Stricter in one thing: elements and attributes that are never written (`voice`, `phoneme`,
 * `lexicon`, `token`, `lookup`) are unknown here, so that one of them appearing is found.
 */
import { SaxesParser } from 'saxes';

type Values = RegExp;
interface Element {
  /** The elements it may hold. */
  readonly holds: readonly string[];
  /** Whether words may stand in it. */
  readonly words: boolean;
  readonly attributes: Readonly<Record<string, Values>>;
  readonly needs?: readonly string[];
}

const ANY: Values = /^/;
const WORD: Values = /^\S+$/;
const LANGUAGE: Values = /^[a-zA-Z]{1,8}(-[a-zA-Z0-9]{1,8})*$/;
const inSentence = ['break', 'emphasis', 'mark', 'prosody', 'sub', 'say-as', 'lang', 'audio'];

const elements: Readonly<Record<string, Element>> = {
  speak: {
    holds: [...inSentence, 'p', 's'],
    words: true,
    attributes: {
      version: /^1\.1$/,
      xmlns: /^http:\/\/www\.w3\.org\/2001\/10\/synthesis$/,
      'xml:lang': LANGUAGE,
      'xml:base': ANY,
      onlangfailure: WORD,
      startmark: WORD,
      endmark: WORD,
    },
    needs: ['version', 'xmlns', 'xml:lang'],
  },
  p: { holds: [...inSentence, 's'], words: true, attributes: { 'xml:lang': LANGUAGE } },
  s: { holds: inSentence, words: true, attributes: { 'xml:lang': LANGUAGE } },
  emphasis: {
    holds: inSentence,
    words: true,
    attributes: { level: /^(strong|moderate|none|reduced)$/ },
  },
  sub: { holds: [], words: true, attributes: { alias: ANY }, needs: ['alias'] },
  'say-as': {
    holds: [],
    words: true,
    attributes: { 'interpret-as': WORD, format: ANY, detail: ANY },
    needs: ['interpret-as'],
  },
  lang: {
    holds: [...inSentence, 'p', 's'],
    words: true,
    attributes: { 'xml:lang': LANGUAGE },
    needs: ['xml:lang'],
  },
  mark: { holds: [], words: false, attributes: { name: WORD }, needs: ['name'] },
  break: {
    holds: [],
    words: false,
    attributes: { strength: /^(none|x-weak|weak|medium|strong|x-strong)$/, time: /^\+?\d*\.?\d+(ms|s)$/ },
  },
  prosody: {
    holds: [...inSentence, 'p', 's'],
    words: true,
    attributes: {
      rate: /^(\d+(\.\d+)?%|x-slow|slow|medium|fast|x-fast|default)$/,
      volume: /^(silent|x-soft|soft|medium|loud|x-loud|default|[+-]\d+(\.\d+)?dB)$/,
    },
  },
  audio: { holds: ['desc', ...inSentence, 'p', 's'], words: true, attributes: { src: ANY } },
  desc: { holds: [], words: true, attributes: { 'xml:lang': LANGUAGE } },
};

/** What is wrong with a document: not well formed, or not built as the standard has it. */
export const problemsInSsml = (document: string): readonly string[] => {
  const problems: string[] = [];
  const open: string[] = [];
  const parser = new SaxesParser();
  parser.on('error', (error) => problems.push(error.message));
  parser.on('opentag', ({ name, attributes }) => {
    const element = elements[name];
    const parent = open.at(-1);
    open.push(name);
    if (!element) {
      problems.push(`<${name}> is not known`);
      return;
    }
    if (parent === undefined ? name !== 'speak' : !elements[parent]?.holds.includes(name))
      problems.push(`<${name}> may not stand in ${parent ?? 'the document'}`);
    for (const [key, value] of Object.entries(attributes))
      if (!Object.hasOwn(element.attributes, key) || !element.attributes[key]!.test(value))
        problems.push(`<${name}> may not have ${key}="${value}"`);
    for (const key of element.needs ?? [])
      if (!Object.hasOwn(attributes, key)) problems.push(`<${name}> lacks ${key}`);
  });
  parser.on('closetag', () => void open.pop());
  parser.on('text', (text) => {
    if (text.trim() !== '' && !elements[open.at(-1) ?? '']?.words)
      problems.push(`words may not stand in ${open.at(-1) ?? 'the document'}`);
  });
  try {
    parser.write(document).close();
  } catch (error) {
    problems.push((error as Error).message);
  }
  return problems;
};
