/**
 * Compiles linked rules into one flat state network that the chart walks.
 *
 * Every rule is a small graph with one start and one accept state. Beside each state lie three facts that let
 * the chart drop hopeless paths before it follows them: the tokens and host rules a path from here can begin
 * with, whether the rule can end here without another token, and a set of tokens one of which must still come.
 */
import { collapse } from './characters.js';
import { DTMF_KEY_NAMES, wordsOfToken } from './words.js';
import type { Library, Target } from './library.js';
import type { Expansion, Offset } from './syntax.js';
import type { GrammarDocument } from './syntax.js';

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
      readonly document: GrammarDocument;
      readonly at: Offset;
      readonly index: number;
    }
  | { readonly kind: 'reference'; readonly target: Target; readonly inline: boolean }
  | { readonly kind: 'garbage' };

export interface Network {
  readonly stateCount: number;
  readonly stateRule: Int32Array;
  /** Edges of state s are `edgeStart[s]` up to `edgeStart[s + 1]`. */
  readonly edgeStart: Int32Array;
  readonly edgeKind: Uint8Array;
  readonly edgeArg: Int32Array;
  readonly edgeTarget: Int32Array;
  readonly edgeWeight: Float64Array;
  /** Index into `labels`, or -1. */
  readonly edgeLabel: Int32Array;
  readonly labels: readonly Label[];
  readonly ruleStart: Int32Array;
  readonly ruleAccept: Int32Array;
  /** 1 when an accept state can be reached at all. */
  readonly alive: Uint8Array;
  /** 1 when the rule can end here without another token. */
  readonly canEnd: Uint8Array;
  /** Bits of the tokens that can come first, `firstWords` 32-bit words a state. */
  readonly firstBits: Int32Array;
  readonly firstWords: number;
  /** Bits of the host rules that can come first; those beyond 30 share bit 30. */
  readonly firstHost: Int32Array;
  readonly firstGarbage: Uint8Array;
  /** Number of a set of tokens one of which must come at or after this state, or -1. */
  readonly need: Int32Array;
  readonly needCount: number;
  /** For each token the need sets it is in. */
  readonly needsOfToken: readonly Int32Array[];
  /** For a state with many alternatives: by first token, the edges to try. */
  readonly dispatch: readonly (Map<number, Int32Array> | undefined)[];
  /** Edges to try whatever the token. */
  readonly dispatchAlways: readonly (Int32Array | undefined)[];
  readonly tokens: ReadonlyMap<string, number>;
  readonly tokenTexts: readonly string[];
  readonly hostUris: readonly string[];
}

/** Weight of each token that $GARBAGE swallows: any other reading wins. */
const GARBAGE_WEIGHT = Math.log(0.01);
/** Stands in for weight or probability zero, which must not change what is accepted (section 2.4.1). */
const TINY = 1e-9;
const NEED_LIMIT = 24;
const INLINE_COPIES = 3;
const MAX_COPIES = 2000;
const DISPATCH_FROM = 4;

export class TooLargeError extends Error {
  constructor(
    readonly document: GrammarDocument,
    readonly at: Offset,
    message: string,
  ) {
    super(message);
  }
}

/** A set of tokens one of which must occur; null when nothing is known. */
type Need = ReadonlySet<number> | null;

export const compileNetwork = (library: Library): Network => {
  const tokens = new Map<string, number>();
  const tokenTexts: string[] = [];
  const tokenUses: number[] = [];
  const hosts = new Map<string, number>();
  const labels: Label[] = [];

  const stateRule: number[] = [];
  const outgoing: number[][] = [];
  const need: Need[] = [];
  const edgeKind: number[] = [];
  const edgeArg: number[] = [];
  const edgeTarget: number[] = [];
  const edgeWeight: number[] = [];
  const edgeLabel: number[] = [];
  const ruleStart: number[] = [];
  const ruleAccept: number[] = [];

  const tokenId = (word: string): number => {
    let id = tokens.get(word);
    if (id === undefined) {
      id = tokenTexts.length;
      tokens.set(word, id);
      tokenTexts.push(word);
      tokenUses.push(0);
    }
    return id;
  };
  const hostId = (uri: string): number => {
    let id = hosts.get(uri);
    if (id === undefined) {
      id = hosts.size;
      hosts.set(uri, id);
    }
    return id;
  };
  const newState = (rule: number, needed: Need): number => {
    stateRule.push(rule);
    outgoing.push([]);
    need.push(needed);
    return stateRule.length - 1;
  };
  const newEdge = (from: number, kind: number, arg: number, to: number, weight = 0, label = -1): void => {
    outgoing[from]!.push(edgeKind.length);
    edgeKind.push(kind);
    edgeArg.push(arg);
    edgeTarget.push(to);
    edgeWeight.push(weight);
    edgeLabel.push(label);
  };
  const newLabel = (label: Label): number => labels.push(label) - 1;

  // --- which tokens must occur -------------------------------------------------------------------------------
  for (const { document, definition } of library.rules) {
    countTokens(definition.body, document.mode);
  }
  function countTokens(expansion: Expansion, mode: 'voice' | 'dtmf'): void {
    if (expansion.kind === 'token')
      for (const word of wordsOfToken(expansion.text, mode)) tokenUses[tokenId(word)]!++;
    else if (expansion.kind === 'sequence') for (const item of expansion.items) countTokens(item, mode);
    else if (expansion.kind === 'choice')
      for (const option of expansion.options) countTokens(option.body, mode);
    else if (expansion.kind === 'repeat') countTokens(expansion.body, mode);
  }
  const cost = (needed: ReadonlySet<number>): number => {
    let sum = 0;
    for (const token of needed) sum += tokenUses[token]! + 2;
    return sum;
  };
  /** The rarer set; on near ties the later one, since the first token is checked anyway. */
  const better = (earlier: Need, later: Need): Need => {
    if (earlier === null) return later;
    if (later === null) return earlier;
    return cost(later) <= 3 * cost(earlier) ? later : earlier;
  };
  const either = (needs: readonly Need[]): Need => {
    const union = new Set<number>();
    for (const one of needs) {
      if (one === null) return null;
      for (const token of one) union.add(token);
    }
    return union.size <= NEED_LIMIT ? union : null;
  };
  const ruleNeeds = new Map<number, Need>();
  const needOfRule = (rule: number): Need => {
    const known = ruleNeeds.get(rule);
    if (known !== undefined) return known;
    ruleNeeds.set(rule, null); // inside a recursion nothing is known
    const { definition, document } = library.rules[rule]!;
    const found = needOf(definition.body, document.mode);
    ruleNeeds.set(rule, found);
    return found;
  };
  const expansionNeeds = new Map<Expansion, Need>();
  function needOf(expansion: Expansion, mode: 'voice' | 'dtmf'): Need {
    const known = expansionNeeds.get(expansion);
    if (known !== undefined) return known;
    const found = findNeed(expansion, mode);
    expansionNeeds.set(expansion, found);
    return found;
  }
  function findNeed(expansion: Expansion, mode: 'voice' | 'dtmf'): Need {
    switch (expansion.kind) {
      case 'token':
        return wordsOfToken(expansion.text, mode)
          .map((word): Need => new Set([tokenId(word)]))
          .reduce(better);
      case 'reference': {
        const target = library.targetOf(expansion.reference);
        return target.kind === 'rule' ? needOfRule(target.rule) : null;
      }
      case 'sequence':
        return expansion.items.map((item) => needOf(item, mode)).reduce(better, null);
      case 'choice':
        return either(expansion.options.map((option) => needOf(option.body, mode)));
      case 'repeat':
        return expansion.min > 0 ? needOf(expansion.body, mode) : null;
      default:
        return null;
    }
  }

  // --- states and edges --------------------------------------------------------------------------------------
  interface Place {
    readonly rule: number;
    readonly document: GrammarDocument;
  }
  const anonymous: { body: Expansion; document: GrammarDocument }[] = [];

  /** Adds a path for the expansion from a state to a state. `rest` is what must come after it. */
  const build = (
    expansion: Expansion,
    from: number,
    to: number,
    rest: Need,
    place: Place,
    language?: string,
  ): void => {
    switch (expansion.kind) {
      case 'token': {
        const words = wordsOfToken(expansion.text, place.document.mode);
        const spoken = expansion.language ?? language;
        const text = place.document.mode === 'dtmf' ? words.join(' ') : collapse(expansion.text);
        const label = newLabel({
          kind: 'token',
          text,
          length: words.length,
          ...(spoken === undefined ? {} : { language: spoken }),
        });
        let state = from;
        words.forEach((word, i) => {
          const last = i === words.length - 1;
          const next = last ? to : newState(place.rule, rest);
          newEdge(state, TOKEN, tokenId(word), next, 0, last ? label : -1);
          state = next;
        });
        return;
      }
      case 'special':
        if (expansion.name === 'NULL') newEdge(from, EPSILON, 0, to);
        else if (expansion.name === 'GARBAGE') {
          const loop = newState(place.rule, rest);
          newEdge(from, EPSILON, 0, loop);
          newEdge(loop, EPSILON, 0, to);
          newEdge(loop, GARBAGE, 0, loop, GARBAGE_WEIGHT, newLabel({ kind: 'garbage' }));
        }
        return;
      case 'tag':
        newEdge(
          from,
          EPSILON,
          0,
          to,
          0,
          newLabel({
            kind: 'tag',
            text: expansion.text,
            document: place.document,
            at: expansion.at,
            index: labels.length,
          }),
        );
        return;
      case 'reference': {
        const target = library.targetOf(expansion.reference);
        const label = newLabel({ kind: 'reference', target, inline: false });
        if (target.kind === 'rule') newEdge(from, CALL, target.rule, to, 0, label);
        else newEdge(from, HOST, hostId(target.uri), to, 0, label);
        return;
      }
      case 'sequence': {
        const spoken = expansion.language ?? language;
        const rests: Need[] = [];
        let after = rest;
        for (let i = expansion.items.length - 1; i >= 0; i--) {
          rests[i] = after;
          after = better(needOf(expansion.items[i]!, place.document.mode), after);
        }
        let state = from;
        expansion.items.forEach((item, i) => {
          const last = i === expansion.items.length - 1;
          const following = rests[i]!;
          const next = last ? to : newState(place.rule, following);
          build(item, state, next, following, place, spoken);
          state = next;
        });
        return;
      }
      case 'choice': {
        const spoken = expansion.language ?? language;
        for (const option of expansion.options) {
          const start = newState(place.rule, better(needOf(option.body, place.document.mode), rest));
          newEdge(from, EPSILON, 0, start, Math.log(Math.max(option.weight, TINY)));
          build(option.body, start, to, rest, place, spoken);
        }
        return;
      }
      case 'repeat':
        buildRepeat(expansion, from, to, rest, place, language);
    }
  };

  const onlyTags = (expansion: Expansion): boolean =>
    expansion.kind === 'tag' ||
    (expansion.kind === 'special' && expansion.name === 'NULL') ||
    (expansion.kind === 'sequence' && expansion.items.every(onlyTags)) ||
    (expansion.kind === 'repeat' && onlyTags(expansion.body));

  const buildRepeat = (
    repeat: Extract<Expansion, { kind: 'repeat' }>,
    from: number,
    to: number,
    rest: Need,
    place: Place,
    language?: string,
  ): void => {
    let { min, max } = repeat;
    const more = repeat.probability === null ? 0 : Math.log(Math.max(repeat.probability, TINY));
    const stop = repeat.probability === null ? 0 : Math.log(Math.max(1 - repeat.probability, TINY));
    // Matching nothing again and again adds nothing: a lone tag counts once however often it is repeated.
    if (onlyTags(repeat.body)) {
      max = Math.min(max, 1);
      min = Math.min(min, 1);
    }
    const copies = max === Infinity ? min : max;
    if (copies > MAX_COPIES) {
      throw new TooLargeError(place.document, repeat.at, `A repeat goes up to ${copies}.`);
    }
    const bodyNeed = needOf(repeat.body, place.document.mode);
    let body = repeat.body;
    // Many copies of something large would bloat the network: make it an unnamed rule that is called instead.
    if (copies > INLINE_COPIES && body.kind !== 'token' && body.kind !== 'reference' && body.kind !== 'tag') {
      const index = library.rules.length + anonymous.length;
      anonymous.push({ body, document: place.document });
      const target: Target = { kind: 'rule', rule: index, name: '', shown: '' };
      const label = newLabel({ kind: 'reference', target, inline: true });
      body = { kind: 'special', name: 'NULL', at: repeat.at };
      const copy = (start: number, end: number): void => newEdge(start, CALL, index, end, 0, label);
      chain(copy);
      return;
    }
    chain((start, end, after) => build(body, start, end, after, place, language));

    function chain(copy: (start: number, end: number, after: Need) => void): void {
      let state = from;
      for (let i = 0; i < min; i++) {
        const after = i < min - 1 ? better(bodyNeed, rest) : rest;
        const next = newState(place.rule, after);
        copy(state, next, after);
        state = next;
      }
      if (max === Infinity) {
        const loop = newState(place.rule, rest);
        newEdge(state, EPSILON, 0, loop);
        const again = newState(place.rule, better(bodyNeed, rest));
        newEdge(loop, EPSILON, 0, again, more);
        newEdge(loop, EPSILON, 0, to, stop);
        const end = newState(place.rule, rest);
        copy(again, end, rest);
        newEdge(end, EPSILON, 0, loop);
        return;
      }
      for (let i = min; i < max; i++) {
        const again = newState(place.rule, better(bodyNeed, rest));
        const next = newState(place.rule, rest);
        newEdge(state, EPSILON, 0, again, more);
        newEdge(state, EPSILON, 0, to, stop);
        copy(again, next, rest);
        state = next;
      }
      newEdge(state, EPSILON, 0, to);
    }
  };

  for (const rule of library.rules) {
    ruleStart.push(newState(rule.index, needOfRule(rule.index)));
    ruleAccept.push(newState(rule.index, null));
  }
  library.rules.forEach((rule, i) => {
    build(
      rule.definition.body,
      ruleStart[i]!,
      ruleAccept[i]!,
      null,
      { rule: i, document: rule.document },
      undefined,
    );
  });
  for (let i = 0; i < anonymous.length; i++) {
    const index = library.rules.length + i;
    const { body, document } = anonymous[i]!;
    ruleStart.push(newState(index, needOf(body, document.mode)));
    ruleAccept.push(newState(index, null));
    build(body, ruleStart[index]!, ruleAccept[index]!, null, { rule: index, document });
  }

  if (library.main.mode === 'dtmf') {
    for (const [name, key] of DTMF_KEY_NAMES) {
      const id = tokens.get(key);
      if (id !== undefined) tokens.set(name, id);
    }
  }

  // --- flatten -----------------------------------------------------------------------------------------------
  const stateCount = stateRule.length;
  const edgeStart = new Int32Array(stateCount + 1);
  const order: number[] = [];
  for (let s = 0; s < stateCount; s++) {
    edgeStart[s] = order.length;
    order.push(...outgoing[s]!);
  }
  edgeStart[stateCount] = order.length;
  const flat = {
    stateCount,
    stateRule: Int32Array.from(stateRule),
    edgeStart,
    edgeKind: Uint8Array.from(order, (e) => edgeKind[e]!),
    edgeArg: Int32Array.from(order, (e) => edgeArg[e]!),
    edgeTarget: Int32Array.from(order, (e) => edgeTarget[e]!),
    edgeWeight: Float64Array.from(order, (e) => edgeWeight[e]!),
    edgeLabel: Int32Array.from(order, (e) => edgeLabel[e]!),
    labels,
    ruleStart: Int32Array.from(ruleStart),
    ruleAccept: Int32Array.from(ruleAccept),
    tokens,
    tokenTexts,
    hostUris: [...hosts.keys()],
  };
  return { ...flat, ...analyse(flat), ...internNeeds(need, tokenTexts.length) };
};

type Flat = Omit<
  Network,
  | 'alive'
  | 'canEnd'
  | 'firstBits'
  | 'firstWords'
  | 'firstHost'
  | 'firstGarbage'
  | 'need'
  | 'needCount'
  | 'needsOfToken'
  | 'dispatch'
  | 'dispatchAlways'
>;

export const hostBit = (host: number): number => 1 << Math.min(host, 30);

/** Fixed points over the network: which states are useful, can end, and what they can begin with. */
const analyse = (net: Flat) => {
  const { stateCount, edgeStart, edgeKind, edgeArg, edgeTarget, ruleStart, ruleAccept } = net;
  const alive = new Uint8Array(stateCount);
  const canEnd = new Uint8Array(stateCount);
  for (const accept of ruleAccept) alive[accept] = canEnd[accept] = 1;
  for (let changed = true; changed;) {
    changed = false;
    for (let s = stateCount - 1; s >= 0; s--) {
      for (let e = edgeStart[s]!; e < edgeStart[s + 1]!; e++) {
        const target = edgeTarget[e]!;
        const kind = edgeKind[e]!;
        const callee = kind === CALL ? ruleStart[edgeArg[e]!]! : -1;
        if (!alive[s] && alive[target] && (kind !== CALL || alive[callee])) {
          alive[s] = 1;
          changed = true;
        }
        if (!canEnd[s] && canEnd[target] && (kind === EPSILON || (kind === CALL && canEnd[callee]))) {
          canEnd[s] = 1;
          changed = true;
        }
      }
    }
  }
  const firstWords = Math.max(1, (net.tokenTexts.length + 31) >> 5);
  const firstBits = new Int32Array(stateCount * firstWords);
  const firstHost = new Int32Array(stateCount);
  const firstGarbage = new Uint8Array(stateCount);
  for (let changed = true; changed;) {
    changed = false;
    const merge = (into: number, from: number): void => {
      for (let w = 0; w < firstWords; w++) {
        const before = firstBits[into * firstWords + w]!;
        const after = before | firstBits[from * firstWords + w]!;
        if (after !== before) {
          firstBits[into * firstWords + w] = after;
          changed = true;
        }
      }
      const hosts = firstHost[into]! | firstHost[from]!;
      const garbage = firstGarbage[into]! | firstGarbage[from]!;
      if (hosts !== firstHost[into] || garbage !== firstGarbage[into]) {
        firstHost[into] = hosts;
        firstGarbage[into] = garbage;
        changed = true;
      }
    };
    for (let s = stateCount - 1; s >= 0; s--) {
      if (!alive[s]) continue;
      for (let e = edgeStart[s]!; e < edgeStart[s + 1]!; e++) {
        const target = edgeTarget[e]!;
        if (!alive[target]) continue;
        const arg = edgeArg[e]!;
        switch (edgeKind[e]) {
          case EPSILON:
            merge(s, target);
            break;
          case TOKEN: {
            const at = s * firstWords + (arg >> 5);
            const bit = 1 << (arg & 31);
            if (!(firstBits[at]! & bit)) {
              firstBits[at]! |= bit;
              changed = true;
            }
            break;
          }
          case HOST:
            if (!(firstHost[s]! & hostBit(arg))) {
              firstHost[s]! |= hostBit(arg);
              changed = true;
            }
            break;
          case GARBAGE:
            if (!firstGarbage[s]) {
              firstGarbage[s] = 1;
              changed = true;
            }
            break;
          case CALL:
            if (!alive[ruleStart[arg]!]) break;
            merge(s, ruleStart[arg]!);
            if (canEnd[ruleStart[arg]!]) merge(s, target);
        }
      }
    }
  }
  const dispatch: (Map<number, Int32Array> | undefined)[] = new Array(stateCount);
  const dispatchAlways: (Int32Array | undefined)[] = new Array(stateCount);
  for (let s = 0; s < stateCount; s++) {
    const from = edgeStart[s]!;
    const to = edgeStart[s + 1]!;
    let branches = to - from > DISPATCH_FROM;
    for (let e = from; branches && e < to; e++) branches = edgeKind[e] === EPSILON || edgeKind[e] === TOKEN;
    if (!branches) continue;
    const always: number[] = [];
    const byToken = new Map<number, number[]>();
    const put = (token: number, edge: number): void => {
      const list = byToken.get(token);
      if (list === undefined) byToken.set(token, [edge]);
      else list.push(edge);
    };
    for (let e = from; e < to; e++) {
      const target = edgeTarget[e]!;
      if (!alive[target]) continue;
      if (edgeKind[e] === TOKEN) put(edgeArg[e]!, e);
      else if (canEnd[target] || firstHost[target] || firstGarbage[target]) always.push(e);
      else {
        for (let w = 0; w < firstWords; w++) {
          for (let bits = firstBits[target * firstWords + w]!; bits !== 0; bits &= bits - 1) {
            put((w << 5) + (31 - Math.clz32(bits & -bits)), e);
          }
        }
      }
    }
    dispatch[s] = new Map([...byToken].map(([token, edges]) => [token, Int32Array.from(edges)]));
    dispatchAlways[s] = Int32Array.from(always);
  }
  return { alive, canEnd, firstBits, firstWords, firstHost, firstGarbage, dispatch, dispatchAlways };
};

const internNeeds = (needs: readonly Need[], tokenCount: number) => {
  const ids = new Map<string, number>();
  const known = new Map<ReadonlySet<number>, number>();
  const ofToken: number[][] = Array.from({ length: tokenCount }, () => []);
  const need = Int32Array.from(needs, (set) => {
    if (set === null) return -1;
    let id = known.get(set);
    if (id !== undefined) return id;
    const members = [...set].sort((a, b) => a - b);
    const key = members.join(',');
    id = ids.get(key);
    if (id === undefined) {
      id = ids.size;
      ids.set(key, id);
      for (const token of members) ofToken[token]!.push(id);
    }
    known.set(set, id);
    return id;
  });
  return { need, needCount: ids.size, needsOfToken: ofToken.map((list) => Int32Array.from(list)) };
};
