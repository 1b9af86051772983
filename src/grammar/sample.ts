/**
 * Random sentences of a rule: a walk through the state network that takes each way as often as its weight says.
 * The walk keeps its derivation, so a sample comes with the meaning it was made with.
 */
import type { DynamicMatch, SemanticValue } from './api.js';
import type { Derivation, Step } from './best.js';
import type { OpenGrammar } from './grammar.js';
import { CALL, HOST, TOKEN } from './network.js';
import type { Network } from './network.js';

export interface SampleOptions {
  /** From 0 up to 1, like `Math.random`: an argument, so that samples can be repeated. */
  readonly random: () => number;
  /** What to say for a host rule; without an answer its name in brackets is said. */
  readonly host?: (uri: string, random: () => number) => { tokens: readonly string[]; value: SemanticValue };
}

export interface Sample {
  readonly tokens: readonly string[];
  readonly value: SemanticValue;
}

/** Calls deeper than this take the shortest way out. */
const DEPTH = 8;
const MAX_STEPS = 400;

/** By state, the least number of edges to the end of its rule, calls included. */
const distances = (network: Network): Float64Array => {
  const { stateCount, edgeStart, edgeKind, edgeArg, edgeTarget, ruleStart, ruleAccept } = network;
  const distance = new Float64Array(stateCount).fill(Infinity);
  for (const accept of ruleAccept) distance[accept] = 0;
  for (let changed = true; changed;) {
    changed = false;
    for (let s = 0; s < stateCount; s++) {
      for (let e = edgeStart[s]!; e < edgeStart[s + 1]!; e++) {
        const call = edgeKind[e] === CALL ? distance[ruleStart[edgeArg[e]!]!]! : 0;
        const through = 1 + call + distance[edgeTarget[e]!]!;
        if (through < distance[s]!) {
          distance[s] = through;
          changed = true;
        }
      }
    }
  }
  return distance;
};

/** Throws `RangeError` when the rule is unknown or matches nothing. */
export const createSampler = (grammar: OpenGrammar): ((rule: string, options: SampleOptions) => Sample) => {
  const { network, library } = grammar;
  const { edgeStart, edgeKind, edgeArg, edgeTarget, edgeWeight, edgeLabel, ruleStart, ruleAccept } = network;
  const distance = distances(network);

  return (rule, { random, host }) => {
    const linked = library.ruleOf(library.main, rule);
    if (linked === undefined) throw new RangeError(`The grammar has no rule "${rule}".`);
    if (distance[ruleStart[linked.index]!] === Infinity)
      throw new RangeError(`The rule "${rule}" matches nothing.`);
    const tokens: string[] = [];
    const matches: DynamicMatch[] = [];
    let taken = 0;

    const pick = (state: number, depth: number): number => {
      const from = edgeStart[state]!;
      const to = edgeStart[state + 1]!;
      const cost = (e: number): number =>
        (edgeKind[e] === CALL ? distance[ruleStart[edgeArg[e]!]!]! : 0) + distance[edgeTarget[e]!]!;
      if (depth > DEPTH || taken > MAX_STEPS) {
        let shortest = from;
        for (let e = from; e < to; e++) if (cost(e) < cost(shortest)) shortest = e;
        return shortest;
      }
      let sum = 0;
      for (let e = from; e < to; e++) if (cost(e) < Infinity) sum += Math.exp(edgeWeight[e]!);
      let left = random() * sum;
      let last = from;
      for (let e = from; e < to; e++) {
        if (cost(e) === Infinity) continue;
        last = e;
        left -= Math.exp(edgeWeight[e]!);
        if (left < 0) break;
      }
      return last;
    };

    const walk = (index: number, depth: number, steps: Step[]): void => {
      let state = ruleStart[index]!;
      while (state !== ruleAccept[index]) {
        taken++;
        const e = pick(state, depth);
        const label = network.labels[edgeLabel[e]!];
        const from = tokens.length;
        if (edgeKind[e] === TOKEN) tokens.push(network.tokenTexts[edgeArg[e]!]!);
        if (edgeKind[e] === HOST && label?.kind === 'reference') {
          const uri = network.hostUris[edgeArg[e]!]!;
          const said = host?.(uri, random) ?? { tokens: [`<${uri}>`], value: uri };
          tokens.push(...said.tokens);
          matches.push({ length: said.tokens.length, value: said.value });
          steps.push({ kind: 'host', label, match: matches.length - 1, from, to: tokens.length });
        } else if (edgeKind[e] === CALL && label?.kind === 'reference') {
          if (label.inline) walk(edgeArg[e]!, depth + 1, steps);
          else {
            const derivation = derive(edgeArg[e]!, depth + 1);
            steps.push({ kind: 'rule', label, derivation, from, to: tokens.length });
          }
        } else if (label?.kind === 'token') {
          steps.push({ kind: 'token', label, from: tokens.length - label.length, to: tokens.length });
        } else if (label?.kind === 'tag') steps.push({ kind: 'tag', label, at: from });
        state = edgeTarget[e]!;
        // $GARBAGE says nothing in a sample: its edge adds a token to no list.
      }
    };
    const derive = (index: number, depth: number): Derivation => {
      const steps: Step[] = [];
      const from = tokens.length;
      walk(index, depth, steps);
      return { rule: index, from, to: tokens.length, steps };
    };

    const derivation = derive(linked.index, 0);
    return { tokens, value: grammar.interpret(derivation, tokens, matches) };
  };
};
