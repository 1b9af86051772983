/**
 * Reads the XML form of SRGS 1.0 into the same syntax tree, so that ABNF grammars can refer to XML ones
 * (section 1.3). Element by element as in sections 2 to 4; what the ABNF reader checks is checked here too.
 */
import { SaxesParser } from 'saxes';
import type { SaxesTagPlain } from 'saxes';
import type { GrammarProblem } from './api.js';
import { collapse } from './characters.js';
import { GrammarError, lineAndColumn } from './problems.js';
import type {
  Example,
  Expansion,
  GrammarDocument,
  MetaDeclaration,
  Offset,
  Option,
  RuleDefinition,
} from './syntax.js';

interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: (Element | string)[];
  readonly at: Offset;
}

const MAX_DEPTH = 200;

class Mistake extends Error {
  constructor(
    readonly offset: Offset,
    message: string,
    readonly expected?: string,
  ) {
    super(message);
  }
}

/** The element tree. Namespace prefixes are dropped; there is one vocabulary. */
const elementsOf = (text: string): Element => {
  const parser = new SaxesParser();
  const stack: Element[] = [];
  let root: Element | null = null;
  parser.on('error', (error) => {
    throw new Mistake(parser.position, error.message.replace(/^[0-9:]+ /u, ''));
  });
  parser.on('opentag', (tag: SaxesTagPlain) => {
    const attributes: Record<string, string> = Object.create(null) as Record<string, string>;
    for (const [name, value] of Object.entries(tag.attributes)) attributes[name] = value;
    const element = { name: tag.name.replace(/^.*:/u, ''), attributes, children: [], at: parser.position };
    if (stack.length > MAX_DEPTH)
      throw new Mistake(element.at, `Elements are nested more than ${MAX_DEPTH} deep.`);
    stack[stack.length - 1]?.children.push(element);
    root ??= element;
    stack.push(element);
  });
  const addText = (part: string): void => void stack[stack.length - 1]?.children.push(part);
  parser.on('text', addText);
  parser.on('cdata', addText);
  parser.on('closetag', () => void stack.pop());
  parser.write(text).close();
  if (root === null) throw new Mistake(0, 'The file holds no element.', '<grammar>');
  return root;
};

const isElement = (child: Element | string): child is Element => typeof child !== 'string';
const textOf = (element: Element): string =>
  element.children.map((child) => (isElement(child) ? textOf(child) : child)).join('');

const NUMBER = /^([0-9]+\.?[0-9]*|\.[0-9]+)$/u;

const numberOf = (element: Element, attribute: string): number | null => {
  const value = element.attributes[attribute];
  if (value === undefined) return null;
  if (!NUMBER.test(value.trim())) {
    throw new Mistake(
      element.at,
      `"${value}" is not a number for ${attribute}.`,
      'digits and at most one point',
    );
  }
  return Number(value);
};

const expansionOf = (element: Element): Expansion => {
  const items: Expansion[] = [];
  for (const child of element.children) {
    if (isElement(child)) {
      const one = elementExpansion(child);
      if (one !== null) items.push(one);
    } else items.push(...tokensOf(child, element.at));
  }
  const only = items[0];
  if (only === undefined) return { kind: 'special', name: 'NULL', at: element.at };
  if (items.length === 1) return only;
  return { kind: 'sequence', items, at: element.at };
};

/** Words of character data; "several words in quotes" are one token (section 2.1). */
const tokensOf = (text: string, at: Offset): Expansion[] => {
  const found: Expansion[] = [];
  for (const match of text.matchAll(/"([^"]*)"|[^\s"]+/gu)) {
    const token = collapse(match[1] ?? match[0]);
    if (token !== '') found.push({ kind: 'token', text: token, at });
  }
  return found;
};

const withLanguage = (expansion: Expansion, element: Element): Expansion => {
  const language = element.attributes['xml:lang'];
  if (language === undefined || expansion.kind === 'special' || expansion.kind === 'tag') return expansion;
  return expansion.kind === 'repeat'
    ? { ...expansion, body: { kind: 'sequence', items: [expansion.body], language, at: expansion.at } }
    : { ...expansion, language };
};

const elementExpansion = (element: Element): Expansion | null => {
  const at = element.at;
  switch (element.name) {
    case 'token': {
      const text = collapse(textOf(element));
      if (text === '') throw new Mistake(at, 'A token is empty.', 'at least one word');
      return withLanguage({ kind: 'token', text: collapse(text.replace(/^"(.*)"$/u, '$1')), at }, element);
    }
    case 'tag':
      return { kind: 'tag', text: textOf(element), at };
    case 'ruleref':
      return withLanguage(rulerefOf(element), element);
    case 'one-of': {
      const options: Option[] = [];
      for (const child of element.children.filter(isElement)) {
        if (child.name !== 'item') {
          throw new Mistake(child.at, `<${child.name}> stands in a <one-of>.`, '<item>');
        }
        options.push({ weight: numberOf(child, 'weight') ?? 1, body: itemOf(child) });
      }
      if (options.length === 0) throw new Mistake(at, 'A <one-of> has no <item>.', '<item>');
      return withLanguage({ kind: 'choice', options, at }, element);
    }
    case 'item':
      return itemOf(element);
    case 'example':
    case 'meta':
    case 'metadata':
      return null;
    default:
      throw new Mistake(at, `<${element.name}> is not an expansion.`, 'token, ruleref, item, one-of or tag');
  }
};

const itemOf = (element: Element): Expansion => {
  const body = withLanguage(expansionOf(element), element);
  const repeat = element.attributes['repeat'];
  const probability = numberOf(element, 'repeat-prob');
  if (probability !== null && probability > 1)
    throw new Mistake(element.at, 'A probability is at most 1.', '0 to 1');
  if (repeat === undefined) return body;
  const match = /^\s*([0-9]+)(-([0-9]*))?\s*$/u.exec(repeat);
  if (match === null) throw new Mistake(element.at, `"${repeat}" is not a repeat.`, 'n, m-n or m-');
  const min = Number(match[1]);
  const max = match[2] === undefined ? min : match[3] === '' ? Infinity : Number(match[3]);
  if (max < min) throw new Mistake(element.at, `The repeat ${repeat} counts down.`, `${max}-${min}`);
  return { kind: 'repeat', body, min, max, probability, at: element.at };
};

const rulerefOf = (element: Element): Expansion => {
  const { uri, special, type } = element.attributes;
  const at = element.at;
  if ((uri === undefined) === (special === undefined)) {
    throw new Mistake(at, 'A <ruleref> needs either uri or special.', 'uri="#rule" or special="NULL"');
  }
  if (special !== undefined) {
    if (special !== 'NULL' && special !== 'VOID' && special !== 'GARBAGE') {
      throw new Mistake(at, `"${special}" is not a special rule.`, 'NULL, VOID or GARBAGE');
    }
    return { kind: 'special', name: special, at };
  }
  const reference = uri!.startsWith('#')
    ? ({ kind: 'local', name: uri!.slice(1) } as const)
    : ({ kind: 'external', uri: uri!, mediaType: type ?? null } as const);
  return { kind: 'reference', reference, at };
};

const ruleOf = (element: Element): RuleDefinition => {
  const name = element.attributes['id'];
  const at = element.at;
  if (name === undefined || !/^[\p{L}_][^\s.:-]*$/u.test(name)) {
    throw new Mistake(at, `"${name ?? ''}" is not a rule name.`, 'an id of letters, digits and underscores');
  }
  if (name === 'NULL' || name === 'VOID' || name === 'GARBAGE') {
    throw new Mistake(at, `The special rule ${name} cannot be defined.`, 'another rule name');
  }
  const scope = element.attributes['scope'] ?? 'private';
  if (scope !== 'public' && scope !== 'private') {
    throw new Mistake(at, `"${scope}" is not a scope.`, 'public or private');
  }
  const examples: Example[] = element.children
    .filter(isElement)
    .filter((child) => child.name === 'example')
    .map((child) => ({ text: collapse(textOf(child)), at: child.at }));
  const empty = element.children.every((child) => !isElement(child) && child.trim() === '');
  if (empty) throw new Mistake(at, `The rule ${name} is empty.`, 'an expansion');
  return { name, scope, body: withLanguage(expansionOf(element), element), about: '', examples, at };
};

/** Reads one XML document. Throws `GrammarError`. */
export const readXml = (text: string, file: string, encoding = 'UTF-8'): GrammarDocument => {
  const problem = (mistake: Mistake): GrammarProblem => ({
    file,
    ...lineAndColumn(text, mistake.offset),
    message: mistake.message,
    ...(mistake.expected === undefined ? {} : { expected: mistake.expected }),
  });
  try {
    return documentOf(elementsOf(text), text, file, encoding);
  } catch (error) {
    if (error instanceof Mistake) throw new GrammarError([problem(error)]);
    throw error;
  }
};

const documentOf = (grammar: Element, text: string, file: string, encoding: string): GrammarDocument => {
  const { attributes, at } = grammar;
  if (grammar.name !== 'grammar')
    throw new Mistake(at, `The file begins with <${grammar.name}>.`, '<grammar>');
  if (attributes['version'] !== '1.0')
    throw new Mistake(at, 'The grammar has no version 1.0.', 'version="1.0"');
  const mode = attributes['mode'] ?? 'voice';
  if (mode !== 'voice' && mode !== 'dtmf') throw new Mistake(at, `"${mode}" is not a mode.`, 'voice or dtmf');
  const language = attributes['xml:lang'] ?? null;
  if (mode === 'voice' && language === null)
    throw new Mistake(at, 'The grammar names no language.', 'xml:lang="…"');
  const rules = new Map<string, RuleDefinition>();
  const metas: MetaDeclaration[] = [];
  const lexicons: string[] = [];
  const tags: { text: string; at: Offset }[] = [];
  for (const child of grammar.children) {
    if (!isElement(child)) {
      if (child.trim() !== '') throw new Mistake(at, `"${collapse(child)}" stands outside a rule.`, '<rule>');
      continue;
    }
    switch (child.name) {
      case 'rule': {
        const rule = ruleOf(child);
        if (rules.has(rule.name)) throw new Mistake(child.at, `The rule ${rule.name} is defined twice.`);
        rules.set(rule.name, rule);
        break;
      }
      case 'meta': {
        const { name, content } = child.attributes;
        const equivalent = child.attributes['http-equiv'];
        if ((name === undefined) === (equivalent === undefined) || content === undefined) {
          throw new Mistake(child.at, 'A <meta> is incomplete.', 'name or http-equiv, and content');
        }
        metas.push({ kind: name === undefined ? 'http-equiv' : 'meta', name: name ?? equivalent!, content });
        break;
      }
      case 'lexicon':
        if (child.attributes['uri'] === undefined)
          throw new Mistake(child.at, 'A <lexicon> has no uri.', 'uri="…"');
        lexicons.push(child.attributes['uri']);
        break;
      case 'tag':
        tags.push({ text: textOf(child), at: child.at });
        break;
      case 'metadata':
        break;
      default:
        throw new Mistake(
          child.at,
          `<${child.name}> is not a declaration.`,
          '<rule>, <meta>, <lexicon> or <tag>',
        );
    }
  }
  const rootName = attributes['root'];
  if (rootName !== undefined && !rules.has(rootName)) {
    throw new Mistake(at, `The root rule ${rootName} is not defined.`, 'the id of a rule in this file');
  }
  return {
    file,
    form: 'xml',
    text,
    encoding,
    language,
    mode,
    root: rootName === undefined ? null : { name: rootName, at },
    tagFormat: attributes['tag-format'] ?? null,
    base: attributes['xml:base'] ?? null,
    lexicons,
    metas,
    tags,
    rules,
  };
};
