/**
 * Semantic interpretation (SISR 1.0): from a derivation to a value.
 *
 * Each rule has its own `out`. Tags run in the order of the text, only those on the branch taken. A rule without
 * tags on its way gives the value of its last reference, else the text it matched.
 */
import type { DynamicMatch, GrammarProblem, SemanticValue } from './api.js';
import type { Derivation } from './best.js';
import type { Library } from './library.js';
import type { Network } from './network.js';
import { GrammarError, lineAndColumn } from './problems.js';
import type { Script, ScriptScope, ScriptValue } from './script.js';
import { compileScript, emptyRecord, ScriptError } from './script.js';
import type { GrammarDocument } from './syntax.js';

export type TagFormat = 'script' | 'literals' | 'opaque';

export const tagFormatOf = (document: GrammarDocument): TagFormat => {
  switch (document.tagFormat) {
    case 'semantics/1.0':
      return 'script';
    case 'semantics/1.0-literals':
      return 'literals';
    default:
      return document.tagFormat === null ? 'literals' : 'opaque';
  }
};

export interface Interpreter {
  evaluate(
    derivation: Derivation,
    tokens: readonly string[],
    matches: readonly DynamicMatch[],
  ): SemanticValue;
}

interface CompiledTag {
  readonly literal?: string;
  readonly script?: Script;
}

/** Compiles all tags. Throws `GrammarError` when a script is outside the safe subset. */
export const createInterpreter = (library: Library, network: Network, interpretTags = true): Interpreter => {
  const problems: GrammarProblem[] = [];
  const compile = (text: string, document: GrammarDocument, at: number): CompiledTag => {
    const format = interpretTags ? tagFormatOf(document) : 'opaque';
    if (format === 'opaque') return {};
    if (format === 'literals') return { literal: text.trim() };
    try {
      return { script: compileScript(text) };
    } catch (error) {
      if (!(error instanceof ScriptError)) throw error;
      const offset = at + (document.text.startsWith('{!{', at) ? 3 : 1) + error.offset;
      problems.push({
        file: document.file,
        ...lineAndColumn(document.text, offset),
        message: error.message,
        ...(error.expected === undefined ? {} : { expected: error.expected }),
        hint: 'The script of tags is described in src/grammar/README.md.',
      });
      return {};
    }
  };
  const tags = new Map<number, CompiledTag>();
  network.labels.forEach((label, i) => {
    if (label.kind === 'tag') tags.set(i, compile(label.text, label.document, label.at));
  });
  const byLabel = new Map(network.labels.map((label, i) => [label, tags.get(i)]));
  /** Values of header tags (section 4.12), the same for every parse. */
  const globals = new Map<GrammarDocument, ReadonlyMap<string, ScriptValue>>();
  for (const document of library.documents) {
    const variables = new Map<string, ScriptValue>();
    for (const tag of document.tags) {
      const { script } = compile(tag.text, document, tag.at);
      script?.({
        out: undefined,
        variables,
        rule: () => undefined,
        latestRule: () => undefined,
        textOf: () => undefined,
        latestText: () => undefined,
        scoreOf: () => undefined,
      });
    }
    globals.set(document, variables);
  }
  if (problems.length > 0) throw new GrammarError(problems);

  const evaluate = (
    derivation: Derivation,
    tokens: readonly string[],
    matches: readonly DynamicMatch[],
  ): ScriptValue => {
    const textBetween = (from: number, to: number): string => {
      if (to === from + 1) return tokens[from]!;
      return tokens.slice(from, to).join(' ');
    };
    const document = library.rules[derivation.rule]?.document;
    const parts: { name: string; value: ScriptValue; from: number; to: number }[] = [];
    const lastNamed = (name: string) => {
      for (let i = parts.length - 1; i >= 0; i--) if (parts[i]!.name === name) return parts[i];
      return undefined;
    };
    let reached = derivation.from;
    let scope: ScriptScope | null = null;
    let tagged = false;
    let literal: string | undefined;

    const openScope = (): ScriptScope => {
      const shared = document === undefined ? undefined : globals.get(document);
      return {
        out: emptyRecord(),
        variables: new Map(shared),
        rule: (name) => lastNamed(name)?.value,
        latestRule: () => parts[parts.length - 1]?.value,
        textOf: (name) => {
          if (name === null) return textBetween(derivation.from, reached);
          const part = lastNamed(name);
          return part === undefined ? undefined : textBetween(part.from, part.to);
        },
        latestText: () => {
          const part = parts[parts.length - 1];
          return part === undefined ? undefined : textBetween(part.from, part.to);
        },
        scoreOf: (name) => (name === null || name === '' || lastNamed(name) !== undefined ? 1 : undefined),
      };
    };

    for (const step of derivation.steps) {
      switch (step.kind) {
        case 'token':
        case 'garbage':
          reached = step.to;
          break;
        case 'rule':
          parts.push({
            name: step.label.target.name,
            value: evaluate(step.derivation, tokens, matches),
            from: step.from,
            to: step.to,
          });
          reached = step.to;
          break;
        case 'host':
          parts.push({
            name: step.label.target.name,
            value: matches[step.match]!.value,
            from: step.from,
            to: step.to,
          });
          reached = step.to;
          break;
        case 'tag': {
          const tag = byLabel.get(step.label);
          if (tag?.literal !== undefined) {
            tagged = true;
            literal = tag.literal;
          } else if (tag?.script !== undefined) {
            tagged = true;
            scope ??= openScope();
            tag.script(scope);
          }
        }
      }
    }
    if (literal !== undefined) return literal;
    if (tagged && scope !== null) return scope.out;
    return parts.length > 0 ? parts[parts.length - 1]!.value : textBetween(derivation.from, derivation.to);
  };

  return {
    evaluate: (derivation, tokens, matches) => {
      const value = evaluate(derivation, tokens, matches);
      return countParts(value, MAX_PARTS) < 0 ? null : finished(value);
    },
  };
};

/** Values may share parts, so a few repeats could make one that is endless when written out. None may be larger. */
const MAX_PARTS = 20_000;

/** What is left of `budget` after counting every part of the value; less than 0 when there are too many. */
const countParts = (value: ScriptValue, budget: number): number => {
  let left = budget - 1;
  if (typeof value !== 'object' || value === null || left < 0) return left;
  for (const part of Array.isArray(value) ? value : Object.values(value)) {
    left = countParts(part as ScriptValue, left);
    if (left < 0) return left;
  }
  return left;
};

/** What cannot be written as JSON (`undefined`, not a number) becomes null; the rest stays the same object. */
const finished = (value: ScriptValue): SemanticValue => {
  if (value === undefined || (typeof value === 'number' && !Number.isFinite(value))) return null;
  if (Array.isArray(value)) {
    const parts = value as readonly ScriptValue[];
    const done = parts.map(finished);
    return done.every((part, i) => part === parts[i]) ? (parts as readonly SemanticValue[]) : done;
  }
  if (typeof value !== 'object' || value === null) return value as SemanticValue;
  let copy: Record<string, SemanticValue> | null = null;
  for (const [key, part] of Object.entries(value)) {
    const done = finished(part as ScriptValue);
    if (done !== part)
      (copy ??= Object.assign(emptyRecord(), value) as Record<string, SemanticValue>)[key] = done;
  }
  return copy ?? (value as SemanticValue);
};
