/** Looks a loaded grammar over for what the standard allows but its writer will not have meant. */
import type { DynamicRule, GrammarProblem } from './api.js';
import { collapse } from './characters.js';
import type { OpenGrammar } from './grammar.js';
import { visitExpansion } from './library.js';
import { wordsOfToken } from './words.js';
import { lineAndColumn } from './problems.js';
import type { GrammarDocument, Offset } from './syntax.js';

export interface Finding extends GrammarProblem {
  /** `error`: an example is not accepted. `warning`: probably not meant. `note`: worth a look. */
  readonly severity: 'error' | 'warning' | 'note';
}

/** Stands in for host rules: any one to four words, each less liked than a word of the grammar. */
export const anyWords: DynamicRule = {
  matchesAt: (tokens, from) =>
    Array.from({ length: Math.min(4, tokens.length - from) }, (_, i) => ({
      length: i + 1,
      value: tokens.slice(from, from + i + 1).join(' '),
      weight: 0.1 ** (i + 1),
    })),
};

/** Words of an example as they would be heard; the word `<epsilon>` stands for silence. */
export const exampleTokens = (text: string): string[] => {
  const words = collapse(text.replace(/"/gu, ' '));
  return words === '' || words === '<epsilon>' ? [] : words.split(' ');
};

/** Everything found in the grammar's own file, in file order. */
export const lintGrammar = (
  grammar: OpenGrammar,
  { hosts, tokensOf }: { hosts: ReadonlyMap<string, DynamicRule>; tokensOf: (text: string) => string[] },
): Finding[] => {
  const { library, network } = grammar;
  const document = library.main;
  const findings: Finding[] = [];
  const find = (severity: Finding['severity'], at: Offset, message: string, hint: string): void => {
    findings.push({ severity, file: document.file, ...lineAndColumn(document.text, at), message, hint });
  };

  /** True when the rule leads to a host rule: what is ambiguous then depends on the host. */
  const usesHosts = (index: number, seen = new Set<number>()): boolean => {
    if (seen.has(index)) return false;
    seen.add(index);
    let found = false;
    visitExpansion(library.rules[index]!.definition.body, (expansion) => {
      if (found || expansion.kind !== 'reference') return;
      const target = library.targetOf(expansion.reference);
      found = target.kind === 'dynamic' || usesHosts(target.rule, seen);
    });
    return found;
  };

  const reached = new Set<number>();
  const reach = (index: number): void => {
    if (reached.has(index)) return;
    reached.add(index);
    visitExpansion(library.rules[index]!.definition.body, (expansion) => {
      if (expansion.kind !== 'reference') return;
      const target = library.targetOf(expansion.reference);
      if (target.kind === 'rule') reach(target.rule);
    });
  };
  for (const rule of document.rules.values()) {
    if (rule.scope === 'public' || rule.name === document.root?.name)
      reach(library.ruleOf(document, rule.name)!.index);
  }
  if (document.rules.size === 0)
    find('warning', 0, 'The grammar has no rules.', 'Nothing can be said by it.');

  const uses = wordUses(document);
  for (const rule of document.rules.values()) {
    const { index } = library.ruleOf(document, rule.name)!;
    if (!reached.has(index)) {
      find(
        'warning',
        rule.at,
        `No public rule leads to $${rule.name}.`,
        'Use it, make it public, or remove it.',
      );
    }
    if (network.alive[network.ruleStart[index]!] === 0) {
      find(
        'warning',
        rule.at,
        `The rule $${rule.name} can never match.`,
        'It needs a way without $VOID or itself.',
      );
    }
    for (const example of rule.examples) {
      const tokens = tokensOf(example.text);
      const parses = grammar.parseRule(rule.name, tokens, { dynamic: hosts, limit: 2 });
      if (parses.length === 0) {
        find(
          'error',
          example.at,
          `The example "${example.text}" is not accepted by $${rule.name}.`,
          'Mend either.',
        );
      } else if (!usesHosts(index) && parses.length > 1 && parses[0]!.score === parses[1]!.score) {
        const [one, other] = parses.map((parse) => JSON.stringify(parse.value));
        find(
          'warning',
          example.at,
          `The example "${example.text}" has two equal meanings: ${one} and ${other}.`,
          'Give one alternative a weight.',
        );
      }
    }
  }
  for (const [word, { rules, at }] of uses) {
    if (rules.size === 1 && word.length > 3) {
      find('note', at, `The word "${word}" is in no other rule.`, 'Is it spelled as meant?');
    }
  }
  return findings.sort((a, b) => a.line - b.line || a.column - b.column);
};

const wordUses = (document: GrammarDocument): Map<string, { rules: Set<string>; at: Offset }> => {
  const uses = new Map<string, { rules: Set<string>; at: Offset }>();
  for (const rule of document.rules.values()) {
    visitExpansion(rule.body, (expansion) => {
      if (expansion.kind !== 'token') return;
      for (const word of wordsOfToken(expansion.text, document.mode)) {
        const use = uses.get(word);
        if (use === undefined) uses.set(word, { rules: new Set([rule.name]), at: expansion.at });
        else use.rules.add(rule.name);
      }
    });
  }
  return uses;
};

/**
 * Public rules of files that others refer to, but that none of the grammars looked at uses. A file no other refers
 * to is a grammar of its own: its public rules are what it is for.
 */
export const unusedPublicRules = (grammars: readonly OpenGrammar[]): Finding[] => {
  const used = new Set<string>();
  const referred = new Set<string>();
  for (const { library } of grammars) {
    const fileOf = new Map(library.rules.map((rule) => [rule.index, rule.document.file]));
    for (const { document, definition } of library.rules) {
      visitExpansion(definition.body, (expansion) => {
        if (expansion.kind !== 'reference') return;
        const target = library.targetOf(expansion.reference);
        if (target.kind !== 'rule') return;
        const file = fileOf.get(target.rule)!;
        used.add(`${file}#${target.name}`);
        if (file !== document.file) referred.add(file);
      });
    }
  }
  const findings: Finding[] = [];
  for (const { library } of grammars) {
    const { file, rules, text, root } = library.main;
    if (!referred.has(file)) continue;
    for (const rule of rules.values()) {
      if (rule.scope !== 'public' || rule.name === root?.name || used.has(`${file}#${rule.name}`)) continue;
      findings.push({
        severity: 'warning',
        file,
        ...lineAndColumn(text, rule.at),
        message: `No grammar refers to the public rule $${rule.name}.`,
        hint: 'Refer to it, or remove it.',
      });
    }
  }
  return findings;
};
