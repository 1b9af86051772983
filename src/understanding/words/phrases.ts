/** A table of word sequences, looked up at a position of a sentence. */
interface Node<T> {
  next: Map<string, Node<T>> | null;
  value: T | undefined;
}

export interface PhraseHit<T> {
  readonly length: number;
  readonly value: T;
}

export interface PhraseTable<T> {
  /** The longest phrase that starts at `from`, or null. */
  longestAt(tokens: readonly string[], from: number): PhraseHit<T> | null;
  /** Every phrase that starts at `from`, shortest first. */
  allAt(tokens: readonly string[], from: number): PhraseHit<T>[];
  has(token: string): boolean;
}

/** Phrases are words split by single spaces. A later entry replaces an equal earlier one. */
export const phraseTable = <T>(entries: Iterable<readonly [string, T]>): PhraseTable<T> => {
  const root: Node<T> = { next: null, value: undefined };
  for (const [phrase, value] of entries) {
    let node = root;
    for (const word of phrase.split(' ')) {
      node.next ??= new Map();
      let child = node.next.get(word);
      if (!child) node.next.set(word, (child = { next: null, value: undefined }));
      node = child;
    }
    node.value = value;
  }
  const allAt = (tokens: readonly string[], from: number): PhraseHit<T>[] => {
    const hits: PhraseHit<T>[] = [];
    let node: Node<T> | undefined = root;
    for (let at = from; at < tokens.length; at += 1) {
      node = node.next?.get(tokens[at]!);
      if (!node) break;
      if (node.value !== undefined) hits.push({ length: at - from + 1, value: node.value });
    }
    return hits;
  };
  return {
    allAt,
    longestAt(tokens, from) {
      if (!root.next?.has(tokens[from] ?? '')) return null;
      return allAt(tokens, from).at(-1) ?? null;
    },
    has: (token) => root.next?.has(token) ?? false,
  };
};

/** A table from each way of saying to the word that is kept. */
export const synonymTable = (
  synonyms: Readonly<Record<string, readonly string[]>>,
  more: (said: string) => readonly string[] = () => [],
): PhraseTable<string> =>
  phraseTable(
    Object.entries(synonyms).flatMap(([kept, ways]) =>
      ways.flatMap((said) => [said, ...more(said)].map((way) => [way, kept] as const)),
    ),
  );

/** A table that only tells whether a phrase is there. */
export const phraseSet = (phrases: readonly string[]): PhraseTable<true> =>
  phraseTable(phrases.map((phrase) => [phrase, true] as const));
