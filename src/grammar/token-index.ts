/**
 * A rule a host fills: a trie of token sequences with payloads, changed in place.
 * Adding or removing one entry touches only that entry's tokens.
 */
import type { DynamicMatch, DynamicRule, SemanticValue } from './api.js';
import { foldToken } from './characters.js';

export interface TokenIndex extends DynamicRule {
  /** How many entries it holds. */
  readonly size: number;
  /** Adds an entry. The same tokens may carry several; `key` tells them apart and replaces on repetition. */
  add(tokens: readonly string[], key: string, value: SemanticValue, weight?: number): void;
  /** Removes the entry with this key under these tokens. True when there was one. */
  remove(tokens: readonly string[], key: string): boolean;
}

interface Entry {
  readonly key: string;
  readonly match: DynamicMatch;
}
interface Node {
  next: Map<string, Node> | null;
  entries: Entry[] | null;
}

const NONE: readonly DynamicMatch[] = [];

export const createTokenIndex = (): TokenIndex => {
  const root: Node = { next: null, entries: null };
  let size = 0;
  const step = (node: Node, token: string): Node | undefined =>
    node.next === null ? undefined : (node.next.get(token) ?? node.next.get(foldToken(token)));

  return {
    get size() {
      return size;
    },
    add(tokens, key, value, weight) {
      if (tokens.length === 0) throw new RangeError('An entry needs at least one token.');
      let node = root;
      for (const token of tokens) {
        const folded = foldToken(token);
        node.next ??= new Map();
        let child = node.next.get(folded);
        if (child === undefined) {
          child = { next: null, entries: null };
          node.next.set(folded, child);
        }
        node = child;
      }
      const match = { length: tokens.length, value, ...(weight === undefined ? {} : { weight }) };
      node.entries ??= [];
      const at = node.entries.findIndex((entry) => entry.key === key);
      if (at >= 0) node.entries[at] = { key, match };
      else {
        node.entries.push({ key, match });
        size++;
      }
    },
    remove(tokens, key) {
      const path: Node[] = [root];
      const folded = tokens.map(foldToken);
      for (const token of folded) {
        const child = path[path.length - 1]!.next?.get(token);
        if (child === undefined) return false;
        path.push(child);
      }
      const last = path[path.length - 1]!;
      const at = last.entries?.findIndex((entry) => entry.key === key) ?? -1;
      if (at < 0) return false;
      last.entries!.splice(at, 1);
      if (last.entries!.length === 0) last.entries = null;
      size--;
      for (let i = folded.length; i > 0; i--) {
        const node = path[i]!;
        if (node.entries !== null || (node.next !== null && node.next.size > 0)) break;
        path[i - 1]!.next!.delete(folded[i - 1]!);
      }
      return true;
    },
    matchesAt(tokens, from) {
      let found: DynamicMatch[] | null = null;
      let node: Node | undefined = root;
      for (let i = from; i < tokens.length; i++) {
        node = step(node, tokens[i]!);
        if (node === undefined) break;
        if (node.entries !== null) for (const entry of node.entries) (found ??= []).push(entry.match);
      }
      // The longest first: "lentil soup" before "lentil".
      return found === null ? NONE : found.length === 1 ? found : found.sort((a, b) => b.length - a.length);
    },
    beginsAt(tokens, from) {
      let node: Node | undefined = root;
      for (let i = from; i < tokens.length; i++) {
        node = step(node, tokens[i]!);
        if (node === undefined) return false;
      }
      return node.next !== null && node.next.size > 0;
    },
  };
};
