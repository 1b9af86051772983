/** What differs between languages in how words are built and ordered, for readers that know none. */
import type { DynamicRules } from '../../grammar/api.js';
import type { PhraseTable } from '../words/phrases.js';

export interface Spelled {
  readonly tokens: readonly string[];
  /** Before which of the tokens somebody paused. */
  readonly pauses: ReadonlySet<number>;
}

/** What the lists of a language say of its spelling; `MovesLexicon` is more than that. */
export interface SpellingLists {
  /** Every phrase of the lists. */
  readonly phrases: PhraseTable<unknown>;
  /** Endings that are a word of their own, with that word: "'s" is "is". */
  readonly clitics: readonly (readonly [string, string])[];
  /** Endings as they are spoken, with what is meant: "thawin" is "thawing". */
  readonly endings: readonly (readonly [string, string])[];
}

export interface WordForms {
  /**
   * Words as the readers of moves want them: endings and pronouns that lean on a verb stand by themselves,
   * a subject that the verb's ending tells is said. Pauses stay before the words they stood before.
   */
  spelledOut(
    said: readonly string[],
    pauses: ReadonlySet<number>,
    rules: DynamicRules,
    lists: SpellingLists,
  ): Spelled;
  /** Every form of a phrase in a word list; "~meter" stands for all forms in which people tell of it. */
  formsOf(phrase: string): readonly string[];
  /** A phrase of a list as it is said, and as `spelledOut` leaves it. */
  asSpelled(phrase: string): readonly string[];
  /** What is the same in one, several and small of a word. */
  stemOf(word: string): string;
  /** "Sopa de fideo", "queso fresco": what something is is said first, and what kind of it after. */
  readonly headFirst: boolean;
  /** How many words join two parts of a name there: "de la" of "frijoles de la olla"; 0 for none. */
  joinAt(tokens: readonly string[], at: number): number;
  /** What kind of place a name names: "shelf" of "middle shelf". */
  kindOf(place: string): string;
  /** A place in another, as it is said. */
  inside(inner: string, outer: string): string;
  /** Of "bottom drawer of the freezer" the freezer; empty where nothing is said of it. */
  outerOf(place: string): string;
  /** "The bottom one", after a drawer was named: its position and its kind, as a place is said. */
  partOf(position: readonly string[], kind: string): readonly string[];
  /** A question mark was written where a recogniser heard one, and only there. */
  readonly asksInWriting: RegExp | null;
}
