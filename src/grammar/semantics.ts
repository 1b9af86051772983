/**
 * Semantic interpretation (SISR 1.0): from a derivation to a value.
 *
 * Each rule has its own `out`. Tags run in the order of the text, only those on the branch taken. A rule without
 * tags on its way gives the value of its last reference, else the text it matched.
 */
import type { DynamicMatch, GrammarProblem, SemanticValue } from './api.js';
import type { Derivation } from './best.js';
import { visitExpansion } from './library.js';
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

/** What the tags of one rule can see while they run. A class, since one is made for every rule matched. */
class RuleScope implements ScriptScope {
  out: ScriptValue = undefined;
  reached: number;
  readonly parts: {
    readonly name: string;
    readonly value: ScriptValue;
    readonly from: number;
    readonly to: number;
  }[] = [];
  private own: Map<string, ScriptValue> | null = null;

  constructor(
    private readonly derivation: Derivation,
    private readonly tokens: readonly string[],
    private readonly globals: ReadonlyMap<string, ScriptValue> | undefined,
  ) {
    this.reached = derivation.from;
  }
  pass(name: string, value: ScriptValue, from: number, to: number): void {
    this.parts.push({ name, value, from, to });
    this.reached = to;
  }
  get variables(): Map<string, ScriptValue> {
    return (this.own ??= new Map(this.globals));
  }
  private last(name: string) {
    for (let i = this.parts.length - 1; i >= 0; i--) if (this.parts[i]!.name === name) return this.parts[i];
    return undefined;
  }
  private text(from: number, to: number): string {
    return to === from + 1 ? this.tokens[from]! : this.tokens.slice(from, to).join(' ');
  }
  rule(name: string): ScriptValue {
    return this.last(name)?.value;
  }
  latestRule(): ScriptValue {
    return this.parts[this.parts.length - 1]?.value;
  }
  textOf(name: string | null): ScriptValue {
    if (name === null) return this.text(this.derivation.from, this.reached);
    const part = this.last(name);
    return part === undefined ? undefined : this.text(part.from, part.to);
  }
  latestText(): ScriptValue {
    const part = this.parts[this.parts.length - 1];
    return part === undefined ? undefined : this.text(part.from, part.to);
  }
  scoreOf(name: string | null): ScriptValue {
    return name === null || name === '' || this.last(name) !== undefined ? 1 : undefined;
  }
}

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

/** What interpreting needs to know of a document: plain data. */
export interface TagDocument {
  readonly format: TagFormat;
  /** Header tags (section 4.12), in the order of the text. */
  readonly tags: readonly string[];
}

const compileTag = (text: string, format: TagFormat): CompiledTag => {
  if (format === 'opaque') return {};
  return format === 'literals' ? { literal: text.trim() } : { script: compileScript(text) };
};

/**
 * The documents of a library as interpreting needs them.
 * Throws `GrammarError` when a script is outside the safe subset.
 */
export const checkTags = (library: Library, interpretTags = true): readonly TagDocument[] => {
  const problems: GrammarProblem[] = [];
  const formats = new Map<GrammarDocument, TagFormat>(
    library.documents.map((document) => [document, interpretTags ? tagFormatOf(document) : 'opaque']),
  );
  const check = (text: string, document: GrammarDocument, at: number): void => {
    try {
      compileTag(text, formats.get(document)!);
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
    }
  };
  for (const { document, definition } of library.rules) {
    visitExpansion(definition.body, (expansion) => {
      if (expansion.kind === 'tag') check(expansion.text, document, expansion.at);
    });
  }
  for (const document of library.documents)
    for (const tag of document.tags) check(tag.text, document, tag.at);
  if (problems.length > 0) throw new GrammarError(problems);
  return library.documents.map((document) => ({
    format: formats.get(document)!,
    tags: document.tags.map((tag) => tag.text),
  }));
};

/** `documentOfRule`: the number of the document each rule stands in. Tags are compiled when first met. */
export const createInterpreter = (
  network: Network,
  documents: readonly TagDocument[],
  documentOfRule: readonly number[],
): Interpreter => {
  const tags: (CompiledTag | undefined)[] = [];
  /** Values of header tags, the same for every parse. */
  const globals = documents.map(({ format, tags: headers }) => {
    const variables = new Map<string, ScriptValue>();
    for (const text of headers) {
      compileTag(text, format).script?.({
        out: undefined,
        variables,
        rule: () => undefined,
        latestRule: () => undefined,
        textOf: () => undefined,
        latestText: () => undefined,
        scoreOf: () => undefined,
      });
    }
    return variables;
  });

  const evaluate = (
    derivation: Derivation,
    tokens: readonly string[],
    matches: readonly DynamicMatch[],
  ): ScriptValue => {
    const scope = new RuleScope(derivation, tokens, globals[documentOfRule[derivation.rule]!]);
    let tagged = false;
    for (const step of derivation.steps) {
      switch (step.kind) {
        case 'token':
        case 'garbage':
          scope.reached = step.to;
          break;
        case 'rule':
          scope.pass(step.label.target.name, evaluate(step.derivation, tokens, matches), step.from, step.to);
          break;
        case 'host':
          scope.pass(step.label.target.name, matches[step.match]!.value, step.from, step.to);
          break;
        case 'tag': {
          const { index, text, document } = step.label;
          const tag = (tags[index] ??= compileTag(text, documents[document]!.format));
          if (tag.literal !== undefined) {
            tagged = true;
            scope.out = tag.literal;
          } else if (tag.script !== undefined) {
            if (!tagged) scope.out = emptyRecord();
            tagged = true;
            tag.script(scope);
          }
        }
      }
    }
    if (tagged) return scope.out;
    return scope.parts.length > 0 ? scope.latestRule() : scope.textOf(null);
  };

  return {
    evaluate: (derivation, tokens, matches) => finished(evaluate(derivation, tokens, matches)),
  };
};

/** Values may share parts, so a few repeats could make one that is endless when written out. None may be larger. */
const MAX_PARTS = 20_000;

/**
 * The value as it is given out: what cannot be written as JSON (`undefined`, not a number) becomes null, and so does
 * a value of too many parts; all else stays the same object.
 */
const finished = (value: ScriptValue): SemanticValue => {
  let left = MAX_PARTS;
  const finish = (part: ScriptValue): SemanticValue => {
    if (--left < 0) return null;
    switch (typeof part) {
      case 'undefined':
        return null;
      case 'number':
        return Number.isFinite(part) ? part : null;
      case 'object':
        break;
      default:
        return part;
    }
    if (part === null) return null;
    if (Array.isArray(part)) {
      const done = (part as readonly ScriptValue[]).map(finish);
      return done.every((one, i) => one === part[i]) ? (part as SemanticValue) : done;
    }
    const record = part as Record<string, ScriptValue>;
    let copy: Record<string, SemanticValue> | null = null;
    for (const key in record) {
      const done = finish(record[key]);
      if (done !== record[key]) {
        copy ??= Object.assign(emptyRecord(), record) as Record<string, SemanticValue>;
        copy[key] = done;
      }
    }
    return copy ?? (part as SemanticValue);
  };
  const done = finish(value);
  return left < 0 ? null : done;
};
