/**
 * A grammar written out in the JSpeech Grammar Format (W3C Note, 5 June 2000), for recognisers that
 * take only that. Tags are dropped: meaning is found afterwards, from the words.
 */
import type { Library, LinkedRule } from './library.js';
import type { Expansion, Reference } from './syntax.js';

export interface JsgfOptions {
  /** The rule that becomes public; the root when left out. */
  readonly rule?: string;
  /** The `grammar` name in the header: letters, digits and underscores. */
  readonly name: string;
  /**
   * Phrases of a host rule, by its URI. A host rule without phrases matches nothing,
   * and neither does anything that needs it: an open vocabulary cannot be listed.
   */
  readonly phrases: (uri: string) => readonly string[];
}

/** Words that may stand bare; anything else is quoted (section 2.5 of the Note). */
const BARE = /^[\p{L}\p{N}'’-]+$/u;

const token = (text: string): string =>
  BARE.test(text) ? text : `"${text.replaceAll('\\', '\\\\').replaceAll('"', '\\"')}"`;

const words = (phrase: string): string => phrase.split(/\s+/u).filter(Boolean).map(token).join(' ');

/**
 * Throws `RangeError` when the rule is unknown or, without the host rules' phrases, matches nothing.
 */
export const toJsgf = (library: Library, options: JsgfOptions): string => {
  const root = options.rule ?? library.main.root?.name;
  const start = root === undefined ? undefined : library.ruleOf(library.main, root);
  if (start === undefined) throw new RangeError(`The grammar has no rule "${root ?? 'root'}".`);

  // Two files may name a rule alike, so names carry their rule's number.
  const nameOf = (rule: LinkedRule): string => `${rule.definition.name}_${rule.index}`;
  const hosts = new Map<string, { readonly name: string; readonly phrases: readonly string[] }>();
  const hostOf = (uri: string) => {
    let host = hosts.get(uri);
    if (host === undefined) {
      const phrases = [...new Set(options.phrases(uri).map(words))].filter((phrase) => phrase !== '');
      host = { name: `host_${uri.replace(/\W+/gu, '_')}`, phrases };
      hosts.set(uri, host);
    }
    return host;
  };

  /** Rules known so far to match something; grown until nothing is added. */
  const productive = new Set<number>();
  const targetOf = (reference: Reference): { readonly name: string; readonly works: boolean } => {
    const target = library.targetOf(reference);
    if (target.kind === 'dynamic') {
      const host = hostOf(target.uri);
      return { name: host.name, works: host.phrases.length > 0 };
    }
    const rule = library.rules[target.rule];
    return { name: rule === undefined ? '' : nameOf(rule), works: productive.has(target.rule) };
  };

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

  /** The expansion in JSGF; '' when it says nothing, null when it can match nothing. */
  const write = (expansion: Expansion): string | null => {
    switch (expansion.kind) {
      case 'token':
        return words(expansion.text);
      case 'tag':
        return '';
      case 'special':
        return expansion.name === 'NULL' ? '' : null;
      case 'reference': {
        const { name, works } = targetOf(expansion.reference);
        return works ? `<${name}>` : null;
      }
      case 'sequence': {
        const parts = expansion.items.map(write);
        return parts.some((part) => part === null) ? null : parts.filter((part) => part !== '').join(' ');
      }
      case 'choice': {
        const options = expansion.options.flatMap(({ body, weight }) => {
          const part = write(body);
          return part === null ? [] : [{ part, weight }];
        });
        const spoken = options.filter(({ part }) => part !== '');
        if (options.length === 0) return null;
        if (spoken.length === 0) return '';
        const weighted = spoken.some(({ weight }) => weight !== 1);
        const list = spoken.map(({ part, weight }) => (weighted ? `/${weight}/ ${part}` : part)).join(' | ');
        return spoken.length < options.length ? `[${list}]` : `(${list})`;
      }
      case 'repeat': {
        if (expansion.max === 0) return '';
        const body = write(expansion.body);
        if (body === null) return expansion.min === 0 ? '' : null;
        return body === '' ? '' : repeat(body, expansion.min, expansion.max);
      }
    }
  };

  for (let grew = true; grew;) {
    grew = false;
    for (const rule of library.rules)
      if (!productive.has(rule.index) && write(rule.definition.body) !== null) {
        productive.add(rule.index);
        grew = true;
      }
  }
  if (!productive.has(start.index))
    throw new RangeError(`The rule "${start.definition.name}" matches nothing.`);

  // Only what the root reaches is written.
  const reached: string[] = [];
  const seen = new Set<string>();
  const visit = (rule: LinkedRule): void => {
    if (seen.has(nameOf(rule))) return;
    seen.add(nameOf(rule));
    const body = write(rule.definition.body);
    const follow = (expansion: Expansion): void => {
      if (expansion.kind === 'sequence') expansion.items.forEach(follow);
      else if (expansion.kind === 'choice') expansion.options.forEach((option) => follow(option.body));
      else if (expansion.kind === 'repeat') follow(expansion.body);
      else if (expansion.kind === 'reference') {
        const target = library.targetOf(expansion.reference);
        const next = target.kind === 'rule' ? library.rules[target.rule] : undefined;
        if (next !== undefined && productive.has(next.index)) visit(next);
      }
    };
    follow(rule.definition.body);
    reached.push(`<${nameOf(rule)}> = ${body === null || body === '' ? '<NULL>' : body};`);
  };
  visit(start);
  const text = reached.join('\n');
  const used = [...hosts.values()].filter(
    ({ name, phrases }) => phrases.length > 0 && text.includes(`<${name}>`),
  );
  return [
    '#JSGF V1.0 UTF-8;',
    `grammar ${options.name};`,
    `public <${options.name}> = <${nameOf(start)}>;`,
    text,
    ...used.map(({ name, phrases }) => `<${name}> = ${phrases.join(' | ')};`),
    '',
  ].join('\n');
};
