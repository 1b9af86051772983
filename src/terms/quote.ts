/** Words as they were said, to be said back and for nothing else: whoever decides can hold them and not read them. */
declare const sealed: unique symbol;

export interface Quote {
  readonly kind: 'quote';
  /** Only for the compiler: nothing but `quote` makes one. */
  readonly [sealed]: true;
}

interface Quoted {
  readonly kind: 'quote';
  readonly words: string;
}

export const quote = (words: string): Quote => {
  const made: Quoted = { kind: 'quote', words };
  return made as unknown as Quote;
};

/** For whoever says it back. */
export const wordsOf = (quoted: Quote): string => (quoted as unknown as Quoted).words;
