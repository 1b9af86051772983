/** What is told on the first day: what keeps food, who eats here and what they must not, and how to talk. */

/** A fridge, a freezer, a cupboard, and how it is divided as far as that was said. */
export interface SaidWhole {
  /** As said, without article: "chest freezer". */
  readonly name: string;
  /** Kind of a place record. */
  readonly kind: string;
  readonly parts: readonly { readonly kind: string; readonly count: number }[];
  /** There is none of that kind: "no freezer". */
  readonly none?: true;
}

export interface SaidEater {
  /** `me`: who speaks; `last`: a pronoun, for who was named before; `whose`: told of nobody. */
  readonly who: 'me' | 'named' | 'last' | 'whose';
  /** As said, else what they are to her ("grandson"); of `me` only where she says it; else null. */
  readonly name: string | null;
  readonly relation: string | null;
  /** Groups of the tables, and foods that are in none by their own names. */
  readonly allergens: readonly string[];
  /** "Nuts", without saying which. */
  readonly nuts: boolean;
  readonly diets: readonly string[];
  readonly risks: readonly string[];
  /** Must not have something that was not made out. */
  readonly unclear?: true;
  /** Taken back: nobody of that name eats here, or not they but another must not have what is told. */
  readonly none?: true;
}

export interface SaidManner {
  readonly length?: 'short' | 'usual' | 'full';
  readonly rate?: 'slower' | 'faster';
  readonly volume?: 'louder' | 'quieter';
  readonly whisper?: true;
}
