/** The syntax tree of one grammar document, the same for the ABNF and the XML form (SRGS 1.0 sections 2 to 4). */

/** Offset in characters from the start of the document's text. */
export type Offset = number;

export type Expansion =
  | TokenExpansion
  | {
      readonly kind: 'reference';
      readonly reference: Reference;
      readonly language?: string;
      readonly at: Offset;
    }
  | { readonly kind: 'special'; readonly name: 'NULL' | 'VOID' | 'GARBAGE'; readonly at: Offset }
  | { readonly kind: 'tag'; readonly text: string; readonly at: Offset }
  | {
      readonly kind: 'sequence';
      readonly items: readonly Expansion[];
      readonly language?: string;
      readonly at: Offset;
    }
  | {
      readonly kind: 'choice';
      readonly options: readonly Option[];
      readonly language?: string;
      readonly at: Offset;
    }
  | RepeatExpansion;

/** One token (section 2.1). A quoted token may hold several words but stays one token. */
export interface TokenExpansion {
  readonly kind: 'token';
  readonly text: string;
  readonly language?: string;
  readonly at: Offset;
}

/** One alternative and its weight, 1 when none was given (section 2.4). */
export interface Option {
  readonly weight: number;
  readonly body: Expansion;
}

/** `max` may be `Infinity`; `probability` is that of one more repetition (section 2.5). */
export interface RepeatExpansion {
  readonly kind: 'repeat';
  readonly body: Expansion;
  readonly min: number;
  readonly max: number;
  readonly probability: number | null;
  readonly at: Offset;
}

/** Section 2.2: `$name`, or `$<uri#name>` with an optional media type. */
export type Reference =
  | { readonly kind: 'local'; readonly name: string }
  | { readonly kind: 'external'; readonly uri: string; readonly mediaType: string | null };

export interface RuleDefinition {
  readonly name: string;
  readonly scope: 'public' | 'private';
  readonly body: Expansion;
  /** The text of the documentation comment before the rule, without its `@` lines (section 3.3). */
  readonly about: string;
  readonly examples: readonly Example[];
  readonly at: Offset;
}

export interface Example {
  readonly text: string;
  readonly at: Offset;
}

export interface MetaDeclaration {
  readonly kind: 'meta' | 'http-equiv';
  readonly name: string;
  readonly content: string;
}

export interface GrammarDocument {
  readonly file: string;
  readonly form: 'abnf' | 'xml';
  readonly text: string;
  readonly encoding: string;
  readonly language: string | null;
  readonly mode: 'voice' | 'dtmf';
  readonly root: { readonly name: string; readonly at: Offset } | null;
  readonly tagFormat: string | null;
  /** From `base`, else from a meta named "base" (section 4.9). */
  readonly base: string | null;
  readonly lexicons: readonly string[];
  readonly metas: readonly MetaDeclaration[];
  /** Header tags (section 4.12), run before all others. */
  readonly tags: readonly { readonly text: string; readonly at: Offset }[];
  readonly rules: ReadonlyMap<string, RuleDefinition>;
}
