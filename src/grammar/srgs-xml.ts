/**
 * A grammar written out in the XML form of SRGS 1.0 (W3C Recommendation, 16 March 2004), for recognisers that take
 * that. Tags are dropped: meaning is found afterwards, from the words.
 */
import { closeGrammar, type Closed, type ClosedOptions } from './closed.js';
import type { Library } from './library.js';

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text: string): string => text.replace(/[&<>"]/g, (char) => ENTITIES[char] ?? '');

/** Section 2.5: "2", "0-1", "1-". */
const times = (min: number, max: number): string =>
  max === Infinity ? `${min}-` : min === max ? String(min) : `${min}-${max}`;

const write = (closed: Closed): string => {
  switch (closed.kind) {
    case 'nothing':
      return '<ruleref special="NULL"/>';
    case 'words':
      return escaped(closed.text);
    case 'rule':
      return `<ruleref uri="#${closed.name}"/>`;
    case 'all':
      return closed.parts.map(write).join(' ');
    case 'one': {
      const items = closed.of.map(
        ({ weight, body }) => `<item${weight === 1 ? '' : ` weight="${weight}"`}>${write(body)}</item>`,
      );
      const list = `<one-of>${items.join('')}</one-of>`;
      return closed.optional ? `<item repeat="0-1">${list}</item>` : list;
    }
    case 'times':
      return `<item repeat="${times(closed.min, closed.max)}">${write(closed.body)}</item>`;
  }
};

/** Throws `RangeError` when the rule is unknown or, without the host rules' phrases, matches nothing. */
export const toSrgsXml = (library: Library, options: ClosedOptions): string => {
  const { root, rules } = closeGrammar(library, options);
  const language = library.main.language ?? 'en';
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<grammar xmlns="http://www.w3.org/2001/06/grammar" version="1.0" xml:lang="${escaped(language)}" mode="voice" root="${root}">`,
    ...rules.map(
      ({ name, body }) => `<rule id="${name}"${name === root ? ' scope="public"' : ''}>${write(body)}</rule>`,
    ),
    '</grammar>',
    '',
  ].join('\n');
};
