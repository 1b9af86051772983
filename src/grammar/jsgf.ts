/**
 * A grammar written out in the JSpeech Grammar Format (W3C Note, 5 June 2000), for recognisers that
 * take only that. Tags are dropped: meaning is found afterwards, from the words.
 */
import { closeGrammar, type Closed, type ClosedOptions } from './closed.js';
import type { Library } from './library.js';

export interface JsgfOptions extends ClosedOptions {
  /** The `grammar` name in the header: letters, digits and underscores. */
  readonly name: string;
}

/** Words that may stand bare; anything else is quoted (section 2.5 of the Note). */
const BARE = /^[\p{L}\p{N}'’-]+$/u;

const token = (text: string): string =>
  BARE.test(text) ? text : `"${text.replaceAll('\\', '\\\\').replaceAll('"', '\\"')}"`;

const words = (phrase: string): string => phrase.split(/\s+/u).filter(Boolean).map(token).join(' ');

const repeat = (body: string, min: number, max: number): string => {
  const group = `(${body})`;
  const must = Array.from({ length: min }, () => group).join(' ');
  if (max === Infinity) return min === 0 ? `${group}*` : `${must} ${group}*`;
  const may = Array.from({ length: max - min }).reduce<string>(
    (inner) => (inner === '' ? `[${body}]` : `[${body} ${inner}]`),
    '',
  );
  return [must, may].filter((part) => part !== '').join(' ');
};

const write = (closed: Closed): string => {
  switch (closed.kind) {
    case 'nothing':
      return '<NULL>';
    case 'words':
      return words(closed.text);
    case 'rule':
      return `<${closed.name}>`;
    case 'all':
      return closed.parts.map(write).join(' ');
    case 'one': {
      const weighted = closed.of.some(({ weight }) => weight !== 1);
      const list = closed.of
        .map(({ weight, body }) => (weighted ? `/${weight}/ ${write(body)}` : write(body)))
        .join(' | ');
      return closed.optional ? `[${list}]` : `(${list})`;
    }
    case 'times':
      return repeat(write(closed.body), closed.min, closed.max);
  }
};

/** Throws `RangeError` when the rule is unknown or, without the host rules' phrases, matches nothing. */
export const toJsgf = (library: Library, options: JsgfOptions): string => {
  const { root, rules } = closeGrammar(library, options);
  return [
    '#JSGF V1.0 UTF-8;',
    `grammar ${options.name};`,
    `public <${options.name}> = <${root}>;`,
    ...rules.map(({ name, body }) => `<${name}> = ${write(body)};`),
    '',
  ].join('\n');
};
