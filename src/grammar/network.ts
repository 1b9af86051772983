/**
 * The flat state network that grammars are compiled into and that the chart walks.
 *
 * Every rule is a small graph with one start and one accept state. Beside each state lie three facts that let
 * the chart drop hopeless paths before it follows them: the tokens and host rules a path from here can begin
 * with, whether the rule can end here without another token, and a set of tokens one of which must still come.
 */
import type { Target } from './library.js';

export const EPSILON = 0;
export const TOKEN = 1;
export const CALL = 2;
export const HOST = 3;
export const GARBAGE = 4;

/** What passing an edge contributes to the derivation. */
export type Label =
  | { readonly kind: 'token'; readonly text: string; readonly length: number; readonly language?: string }
  | {
      readonly kind: 'tag';
      readonly text: string;
      /** Which of the library's documents it stands in, by number. */
      readonly document: number;
      /** Its own place among the labels. */
      readonly index: number;
    }
  | { readonly kind: 'reference'; readonly target: Target; readonly inline: boolean }
  | { readonly kind: 'garbage' };

/** Plain data throughout, so that it can be kept in a file and read back. */
export interface Network {
  readonly stateCount: number;
  readonly stateRule: Int32Array;
  /** Edges of state s are `edgeStart[s]` up to `edgeStart[s + 1]`. */
  readonly edgeStart: Int32Array;
  readonly edgeKind: Uint8Array;
  readonly edgeArg: Int32Array;
  readonly edgeTarget: Int32Array;
  readonly edgeWeight: Float64Array;
  /** Index into `labels`, or -1. Edges that say the same share a label. */
  readonly edgeLabel: Int32Array;
  readonly labels: readonly Label[];
  readonly ruleStart: Int32Array;
  readonly ruleAccept: Int32Array;
  /** 1 when an accept state can be reached at all. */
  readonly alive: Uint8Array;
  /** 1 when the rule can end here without another token. */
  readonly canEnd: Uint8Array;
  /**
   * The one token that can come first; -1 for none, or `-2 - n` for the set of tokens n. The `first…` arrays hold
   * one entry a state, then one a rule for what can follow that rule in any other.
   */
  readonly firstToken: Int32Array;
  /** Bits of the sets of tokens, `firstWords` 32-bit words a set. */
  readonly firstBits: Int32Array;
  readonly firstWords: number;
  /** Bits of the host rules that can come first; those beyond 30 share bit 30. */
  readonly firstHost: Int32Array;
  readonly firstGarbage: Uint8Array;
  /** Number of a set of tokens one of which must come at or after this state, or -1. */
  readonly need: Int32Array;
  readonly needCount: number;
  /** The need sets that token t is in are `needsOfToken[needStart[t]]` up to `needStart[t + 1]`. */
  readonly needStart: Int32Array;
  readonly needsOfToken: Int32Array;
  /** For a state with many alternatives: by first token, the number of a list of edges to try. */
  readonly dispatch: readonly (ReadonlyMap<number, number> | undefined)[];
  /** For such a state the number of the list to try whatever the token, else -1. */
  readonly dispatchAlways: Int32Array;
  /** List n is `dispatchEdges[dispatchStart[n]]` up to `dispatchStart[n + 1]`. */
  readonly dispatchStart: Int32Array;
  readonly dispatchEdges: Int32Array;
  readonly tokens: ReadonlyMap<string, number>;
  readonly tokenTexts: readonly string[];
  readonly hostUris: readonly string[];
}

export const hostBit = (host: number): number => 1 << Math.min(host, 30);
