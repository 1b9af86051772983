/**
 * Facts about the states of a network, found once so that the chart can look ahead: which states are of use,
 * where a rule can end, and what a path can begin with.
 */
import { CALL, EPSILON, GARBAGE, HOST, hostBit, TOKEN } from './network.js';
import type { Network } from './network.js';

/** The network without what is found here. */
export type BareNetwork = Pick<
  Network,
  | 'stateCount'
  | 'stateRule'
  | 'edgeStart'
  | 'edgeKind'
  | 'edgeArg'
  | 'edgeTarget'
  | 'ruleStart'
  | 'ruleAccept'
  | 'tokenTexts'
>;

type Facts = Pick<
  Network,
  | 'alive'
  | 'canEnd'
  | 'firstToken'
  | 'firstBits'
  | 'firstWords'
  | 'firstHost'
  | 'firstGarbage'
  | 'dispatch'
  | 'dispatchAlways'
  | 'dispatchStart'
  | 'dispatchEdges'
>;

/** States with at least this many edges get a table by first token. */
const DISPATCH_FROM = 4;

export const analyse = (net: BareNetwork): Facts => {
  const order = dependenciesFirst(net);
  const { alive, canEnd } = findEnds(net, order);
  const first = findFirst(net, order, alive, canEnd);
  return { alive, canEnd, ...first, ...findDispatch(net, alive, canEnd, first) };
};

/** All states, each after those its edges lead to or call, as far as there are no circles. */
const dependenciesFirst = (net: BareNetwork): Int32Array => {
  const { stateCount, edgeStart, edgeKind, edgeArg, edgeTarget, ruleStart } = net;
  const order = new Int32Array(stateCount);
  const seen = new Uint8Array(stateCount);
  const nextEdge = Int32Array.from(edgeStart);
  /** 1 when the call of the next edge has been visited and only its target remains. */
  const called = new Uint8Array(stateCount);
  const stack: number[] = [];
  let placed = 0;
  for (let begin = 0; begin < stateCount; begin++) {
    if (seen[begin]) continue;
    seen[begin] = 1;
    stack.push(begin);
    while (stack.length > 0) {
      const state = stack[stack.length - 1]!;
      const edge = nextEdge[state]!;
      if (edge === edgeStart[state + 1]!) {
        order[placed++] = state;
        stack.pop();
        continue;
      }
      let visit: number;
      if (edgeKind[edge] === CALL && !called[state]) {
        called[state] = 1;
        visit = ruleStart[edgeArg[edge]!]!;
      } else {
        called[state] = 0;
        nextEdge[state] = edge + 1;
        visit = edgeTarget[edge]!;
      }
      if (!seen[visit]) {
        seen[visit] = 1;
        stack.push(visit);
      }
    }
  }
  return order;
};

const findEnds = (net: BareNetwork, order: Int32Array): { alive: Uint8Array; canEnd: Uint8Array } => {
  const { stateCount, edgeStart, edgeKind, edgeArg, edgeTarget, ruleStart, ruleAccept } = net;
  const alive = new Uint8Array(stateCount);
  const canEnd = new Uint8Array(stateCount);
  for (const accept of ruleAccept) alive[accept] = canEnd[accept] = 1;
  for (let changed = true; changed;) {
    changed = false;
    for (const s of order) {
      for (let e = edgeStart[s]!, end = edgeStart[s + 1]!; e < end; e++) {
        const target = edgeTarget[e]!;
        const kind = edgeKind[e]!;
        const callee = kind === CALL ? ruleStart[edgeArg[e]!]! : -1;
        if (!alive[s] && alive[target] && (callee < 0 || alive[callee])) {
          alive[s] = 1;
          changed = true;
        }
        if (!canEnd[s] && canEnd[target] && (kind === EPSILON || (callee >= 0 && canEnd[callee]))) {
          canEnd[s] = 1;
          changed = true;
        }
      }
    }
  }
  return { alive, canEnd };
};

type First = Pick<Facts, 'firstToken' | 'firstBits' | 'firstWords' | 'firstHost' | 'firstGarbage'>;

/** Grows the sets of first tokens until none grows; a state with only one token needs no set of its own. */
const findFirst = (net: BareNetwork, order: Int32Array, alive: Uint8Array, canEnd: Uint8Array): First => {
  const { stateCount, edgeStart, edgeKind, edgeArg, edgeTarget, ruleStart, stateRule } = net;
  const setsCount = stateCount + ruleStart.length;
  const firstWords = Math.max(1, (net.tokenTexts.length + 31) >> 5);
  const firstToken = new Int32Array(setsCount).fill(-1);
  const firstHost = new Int32Array(setsCount);
  const firstGarbage = new Uint8Array(setsCount);
  let firstBits = new Int32Array(firstWords * 64);
  let setCount = 0;
  let changed = false;

  const newSet = (): number => {
    if ((setCount + 1) * firstWords > firstBits.length) {
      const bigger = new Int32Array(firstBits.length * 2);
      bigger.set(firstBits);
      firstBits = bigger;
    }
    return setCount++;
  };
  const addToken = (state: number, token: number): void => {
    const known = firstToken[state]!;
    if (known === token) return;
    if (known === -1) {
      firstToken[state] = token;
      changed = true;
      return;
    }
    let set = -2 - known;
    if (known >= 0) {
      set = newSet();
      firstToken[state] = -2 - set;
      firstBits[set * firstWords + (known >> 5)]! |= 1 << (known & 31);
    }
    const at = set * firstWords + (token >> 5);
    const bit = 1 << (token & 31);
    if ((firstBits[at]! & bit) === 0) {
      firstBits[at]! |= bit;
      changed = true;
    }
  };
  const merge = (into: number, from: number): void => {
    const hosts = firstHost[into]! | firstHost[from]!;
    const garbage = firstGarbage[into]! | firstGarbage[from]!;
    if (hosts !== firstHost[into] || garbage !== firstGarbage[into]) {
      firstHost[into] = hosts;
      firstGarbage[into] = garbage;
      changed = true;
    }
    const theirs = firstToken[from]!;
    if (theirs === -1) return;
    if (theirs >= 0) return addToken(into, theirs);
    const mine = firstToken[into]!;
    if (mine >= -1) {
      firstToken[into] = -2 - newSet();
      if (mine >= 0) addToken(into, mine);
      changed = true;
    }
    const to = (-2 - firstToken[into]!) * firstWords;
    const source = (-2 - theirs) * firstWords;
    for (let w = 0; w < firstWords; w++) {
      const before = firstBits[to + w]!;
      const after = before | firstBits[source + w]!;
      if (after !== before) {
        firstBits[to + w] = after;
        changed = true;
      }
    }
  };

  do {
    changed = false;
    for (const s of order) {
      if (!alive[s]) continue;
      for (let e = edgeStart[s]!, end = edgeStart[s + 1]!; e < end; e++) {
        const target = edgeTarget[e]!;
        if (!alive[target]) continue;
        const arg = edgeArg[e]!;
        switch (edgeKind[e]) {
          case EPSILON:
            // A state with one way on shares the set of where it leads, once that has one.
            if (end - edgeStart[s]! === 1) {
              if (firstToken[s] !== firstToken[target]) {
                firstToken[s] = firstToken[target]!;
                changed = true;
              }
              if (firstHost[s] !== firstHost[target] || firstGarbage[s] !== firstGarbage[target]) {
                firstHost[s] = firstHost[target]!;
                firstGarbage[s] = firstGarbage[target]!;
                changed = true;
              }
            } else merge(s, target);
            break;
          case TOKEN:
            addToken(s, arg);
            break;
          case HOST:
            if ((firstHost[s]! & hostBit(arg)) === 0) {
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
          case CALL: {
            const callee = ruleStart[arg]!;
            if (!alive[callee]) break;
            merge(s, callee);
            if (canEnd[callee]) merge(s, target);
          }
        }
      }
    }
  } while (changed);
  // What can follow a rule: what its callers go on with, and what can follow those that may end there.
  do {
    changed = false;
    for (let i = stateCount - 1; i >= 0; i--) {
      const s = order[i]!;
      if (!alive[s]) continue;
      for (let e = edgeStart[s]!, end = edgeStart[s + 1]!; e < end; e++) {
        const target = edgeTarget[e]!;
        if (edgeKind[e] !== CALL || !alive[target]) continue;
        const follow = stateCount + edgeArg[e]!;
        merge(follow, target);
        if (canEnd[target]) merge(follow, stateCount + stateRule[s]!);
      }
    }
  } while (changed);
  return { firstToken, firstBits, firstWords, firstHost, firstGarbage };
};

const findDispatch = (
  net: BareNetwork,
  alive: Uint8Array,
  canEnd: Uint8Array,
  first: First,
): Pick<Facts, 'dispatch' | 'dispatchAlways' | 'dispatchStart' | 'dispatchEdges'> => {
  const { stateCount, edgeStart, edgeKind, edgeArg, edgeTarget, ruleStart } = net;
  const { firstToken, firstBits, firstWords, firstHost, firstGarbage } = first;
  const dispatch: (Map<number, number> | undefined)[] = new Array(stateCount);
  const dispatchAlways = new Int32Array(stateCount).fill(-1);
  const starts = [0];
  const edges: number[] = [];
  const listOf = (some: readonly number[]): number => {
    for (const edge of some) edges.push(edge);
    return starts.push(edges.length) - 2;
  };
  for (let s = 0; s < stateCount; s++) {
    const from = edgeStart[s]!;
    const to = edgeStart[s + 1]!;
    if (to - from <= DISPATCH_FROM) continue;
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
      if (edgeKind[e] === TOKEN) {
        put(edgeArg[e]!, e);
        continue;
      }
      const begins = edgeKind[e] === EPSILON ? target : edgeKind[e] === CALL ? ruleStart[edgeArg[e]!]! : -1;
      if (begins < 0 || canEnd[begins] || firstHost[begins] || firstGarbage[begins]) always.push(e);
      else if (firstToken[begins]! >= 0) put(firstToken[begins]!, e);
      else if (firstToken[begins]! < -1) {
        const set = (-2 - firstToken[begins]!) * firstWords;
        for (let w = 0; w < firstWords; w++) {
          for (let bits = firstBits[set + w]!; bits !== 0; bits &= bits - 1) {
            put((w << 5) + (31 - Math.clz32(bits & -bits)), e);
          }
        }
      }
    }
    dispatch[s] = new Map([...byToken].map(([token, some]) => [token, listOf(some)]));
    dispatchAlways[s] = listOf(always);
  }
  return {
    dispatch,
    dispatchAlways,
    dispatchStart: Int32Array.from(starts),
    dispatchEdges: Int32Array.from(edges),
  };
};
