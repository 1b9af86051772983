/**
 * A grammar with the host's names written in and its tags left out: what is written out for recognisers, which
 * know neither. Rules that can match nothing (an open vocabulary cannot be listed) are gone, with what needs them.
 */
import type { Library, LinkedRule } from './library.js';
import type { Expansion, Reference } from './syntax.js';

export type Closed =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'words'; readonly text: string }
  | { readonly kind: 'rule'; readonly name: string }
  | { readonly kind: 'all'; readonly parts: readonly Closed[] }
  /** `optional`: or nothing. */
  | {
      readonly kind: 'one';
      readonly of: readonly { readonly weight: number; readonly body: Closed }[];
      readonly optional: boolean;
    }
  /** `max` may be `Infinity`. */
  | { readonly kind: 'times'; readonly body: Closed; readonly min: number; readonly max: number };

export interface ClosedGrammar {
  /** The name of the rule to begin with. */
  readonly root: string;
  /** Names are letters, digits and underscores. What a rule needs stands before it, host rules at the end. */
  readonly rules: readonly { readonly name: string; readonly body: Closed }[];
}

export interface ClosedOptions {
  /** The rule that becomes public; the root when left out. */
  readonly rule?: string;
  /** Phrases of a host rule, by its URI. A host rule without phrases matches nothing. */
  readonly phrases: (uri: string) => readonly string[];
}

const NOTHING: Closed = { kind: 'nothing' };

/** Throws `RangeError` when the rule is unknown or, without the host rules' phrases, matches nothing. */
export const closeGrammar = (library: Library, options: ClosedOptions): ClosedGrammar => {
  const root = options.rule ?? library.main.root?.name;
  const start = root === undefined ? undefined : library.ruleOf(library.main, root);
  if (start === undefined) throw new RangeError(`The grammar has no rule "${root ?? 'root'}".`);

  // Two files may name a rule alike, so names carry their rule's number.
  const nameOf = (rule: LinkedRule): string => `${rule.definition.name}_${rule.index}`;
  const hosts = new Map<string, { readonly name: string; readonly phrases: readonly string[] }>();
  const hostOf = (uri: string) => {
    let host = hosts.get(uri);
    if (host === undefined) {
      const phrases = [...new Set(options.phrases(uri).map((phrase) => phrase.trim()))].filter(Boolean);
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

  /** Null when it can match nothing. */
  const close = (expansion: Expansion): Closed | null => {
    switch (expansion.kind) {
      case 'token':
        return { kind: 'words', text: expansion.text };
      case 'tag':
        return NOTHING;
      case 'special':
        return expansion.name === 'NULL' ? NOTHING : null;
      case 'reference': {
        const { name, works } = targetOf(expansion.reference);
        return works ? { kind: 'rule', name } : null;
      }
      case 'sequence': {
        const parts: Closed[] = [];
        for (const item of expansion.items) {
          const part = close(item);
          if (part === null) return null;
          if (part.kind !== 'nothing') parts.push(part);
        }
        return parts.length === 0 ? NOTHING : parts.length === 1 ? parts[0]! : { kind: 'all', parts };
      }
      case 'choice': {
        const of = expansion.options.flatMap(({ body, weight }) => {
          const part = close(body);
          return part === null ? [] : [{ weight, body: part }];
        });
        const spoken = of.filter(({ body }) => body.kind !== 'nothing');
        if (of.length === 0) return null;
        return spoken.length === 0
          ? NOTHING
          : { kind: 'one', of: spoken, optional: spoken.length < of.length };
      }
      case 'repeat': {
        if (expansion.max === 0) return NOTHING;
        const body = close(expansion.body);
        if (body === null) return expansion.min === 0 ? NOTHING : null;
        return body.kind === 'nothing'
          ? NOTHING
          : { kind: 'times', body, min: expansion.min, max: expansion.max };
      }
    }
  };

  for (let grew = true; grew;) {
    grew = false;
    for (const rule of library.rules)
      if (!productive.has(rule.index) && close(rule.definition.body) !== null) {
        productive.add(rule.index);
        grew = true;
      }
  }
  if (!productive.has(start.index))
    throw new RangeError(`The rule "${start.definition.name}" matches nothing.`);

  // Only what the root reaches is kept.
  const rules = new Map<string, Closed>();
  const byName = new Map(library.rules.map((rule) => [nameOf(rule), rule]));
  const phrasesByName = (name: string): readonly string[] | undefined =>
    [...hosts.values()].find((host) => host.name === name)?.phrases;
  const used: string[] = [];
  const seen = new Set<string>();
  const follow = (body: Closed): void => {
    if (body.kind === 'all') body.parts.forEach(follow);
    else if (body.kind === 'one') body.of.forEach((option) => follow(option.body));
    else if (body.kind === 'times') follow(body.body);
    else if (body.kind === 'rule') visit(body.name);
  };
  const visit = (name: string): void => {
    if (seen.has(name)) return;
    seen.add(name);
    const rule = byName.get(name);
    if (rule === undefined) {
      used.push(name);
      return;
    }
    const body = close(rule.definition.body) ?? NOTHING;
    follow(body);
    rules.set(name, body);
  };
  visit(nameOf(start));
  for (const name of used)
    rules.set(name, {
      kind: 'one',
      optional: false,
      of: (phrasesByName(name) ?? []).map((text) => ({ weight: 1, body: { kind: 'words', text } })),
    });
  return { root: nameOf(start), rules: [...rules].map(([name, body]) => ({ name, body })) };
};
