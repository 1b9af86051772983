/**
 * The grammar engine's public types. The engine knows nothing of kitchens: it reads
 * W3C SRGS 1.0 ABNF files, parses token sequences and evaluates SISR 1.0 tags.
 */

/** What a tag or a dynamic rule can produce. Objects have no prototype. */
export type SemanticValue =
  string | number | boolean | null | readonly SemanticValue[] | { readonly [key: string]: SemanticValue };

/** A rule a host fills at run time: an index that changes in place, never text compiled again. */
export interface DynamicRule {
  /**
   * All matches that start at `from` in `tokens`.
   * `length` counts tokens (at least 1); `weight` multiplies the parse's weight (1 is neutral).
   */
  matchesAt(tokens: readonly string[], from: number): readonly DynamicMatch[];
  /** True when the tokens from `from` to the end begin, without finishing, some phrase of this rule. */
  beginsAt?(tokens: readonly string[], from: number): boolean;
}
export interface DynamicMatch {
  readonly length: number;
  readonly value: SemanticValue;
  readonly weight?: number;
}

/** By the URI grammars refer to: `$<kitchen:item>` is `kitchen:item`. */
export type DynamicRules = ReadonlyMap<string, DynamicRule>;

export interface GrammarProblem {
  readonly file: string;
  /** 1-based. */
  readonly line: number;
  readonly column: number;
  readonly message: string;
  readonly expected?: string;
  /** How to mend it, in one sentence. */
  readonly hint?: string;
}

export interface Parse {
  /** Which of the activated rules matched the whole input. */
  readonly rule: string;
  readonly value: SemanticValue;
  /** Natural logarithm of the weight; higher is better. */
  readonly score: number;
}

export interface ParseOptions {
  /** Public rules tried in parallel; the root when left out. */
  readonly rules?: readonly string[];
  readonly dynamic?: DynamicRules;
  /** At most this many parses, best first. Default 1. */
  readonly limit?: number;
}

export interface Grammar {
  readonly publicRules: readonly string[];
  readonly root: string | null;
  /** Whole-input parses, best first; ties in grammar order. Empty when the input is not in the language. */
  parse(tokens: readonly string[], options?: ParseOptions): Parse[];
  /** True when the tokens begin some sentence of the rules. */
  acceptsPrefix(tokens: readonly string[], options?: ParseOptions): boolean;
  /** What could come next after the tokens of a partial transcript. */
  following(tokens: readonly string[], options?: ParseOptions): Following;
}

export interface Following {
  /** Words, in alphabetical order. Empty when nothing that begins so can be finished. */
  readonly words: readonly string[];
  /** Host rules that could begin here, by their URI, in alphabetical order. */
  readonly hosts: readonly string[];
  /** True when the tokens are a whole sentence already. */
  readonly complete: boolean;
}

/** `loadGrammar(rootFile, { roots: [dir] })` in `index.ts` makes one; it throws `GrammarError` with problems. */
export interface LoadOptions {
  /** Directories that grammar references may be read from. Nothing else is opened. */
  readonly roots: readonly string[];
  /** The only host rules a grammar may refer to (`kitchen:item`, …). Any, when left out. */
  readonly dynamic?: readonly string[];
  /** False leaves tags unread, for tools that only want the parse. */
  readonly interpretTags?: boolean;
  /** Look for `dir/file.gram` also as `file.gram` beside the main file: for collections copied flat. */
  readonly flat?: boolean;
}
