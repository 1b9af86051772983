/**
 * The recogniser: an Earley chart over the state network, with every way of reaching an item kept as a link,
 * so that the chart is the shared forest of all parses.
 *
 * An item is a state, the call (a rule begun at a position) it belongs to, and a position. A link says how the
 * item was reached: from which earlier item, over which edge, and with which finished rule or host match.
 * Numbers live in arrays that are kept from one parse to the next; the inner loop allocates nothing.
 */
import type { DynamicMatch, DynamicRule } from './api.js';
import { foldToken } from './characters.js';
import { CALL, EPSILON, GARBAGE, HOST, hostBit, TOKEN } from './network.js';
import type { Network } from './network.js';

/** What the links' `child` means: an item of a finished rule, -1 for none, or `-2 - n` for host match n. */
export const NO_CHILD = -1;

export interface Chart {
  readonly network: Network;
  readonly tokens: readonly string[];
  /** Items of finished active rules over the whole input, in the order the rules were given; -1 where none. */
  readonly goals: readonly number[];
  /** Live items at the end of the input; more than 0 when the tokens begin some sentence. */
  readonly liveAtEnd: number;
  readonly items: ItemTable;
  readonly links: LinkTable;
  readonly hostMatches: readonly DynamicMatch[];
}

export interface ItemTable {
  readonly count: number;
  readonly state: Int32Array;
  readonly call: Int32Array;
  readonly position: Int32Array;
  readonly firstLink: Int32Array;
  readonly callStart: Int32Array;
}

export interface LinkTable {
  readonly count: number;
  readonly previous: Int32Array;
  readonly edge: Int32Array;
  readonly child: Int32Array;
  readonly next: Int32Array;
}

export interface RecogniseOptions {
  /** Keep paths that end in mid-sentence, for "what could come next". */
  readonly prefix?: boolean;
}

export interface Recogniser {
  recognise(
    tokens: readonly string[],
    rules: readonly number[],
    hosts: ReadonlyMap<string, DynamicRule> | undefined,
    options?: RecogniseOptions,
  ): Chart;
}

const grow = (array: Int32Array<ArrayBuffer>): Int32Array<ArrayBuffer> => {
  const bigger = new Int32Array(array.length * 2);
  bigger.set(array);
  return bigger;
};

/** More tokens than anyone says in one breath; longer inputs are not read. */
export const MAX_TOKENS = 1000;
/** A grammar and an input so ambiguous that there are more ways than this through them are given up. */
const MAX_LINKS = 4_000_000;
/** Arrays longer than this are not kept for the next parse. */
const KEPT = 262_144;

/** One recogniser reuses its arrays: a chart is valid until the next call of `recognise`. */
export const createRecogniser = (network: Network): Recogniser => {
  const {
    alive,
    canEnd,
    dispatch,
    dispatchAlways,
    dispatchEdges,
    dispatchStart,
    edgeArg,
    edgeKind,
    edgeStart,
    edgeTarget,
    firstBits,
    firstToken,
    firstGarbage,
    firstHost,
    firstWords,
    need,
    needStart,
    needsOfToken,
    ruleAccept,
    ruleStart,
    stateCount,
    stateRule,
  } = network;

  let itemState = new Int32Array(1024);
  let itemCall = new Int32Array(1024);
  let itemPosition = new Int32Array(1024);
  let itemFirstLink = new Int32Array(1024);
  let itemQueued = new Int32Array(1024);
  let itemCount = 0;

  let linkPrevious = new Int32Array(1024);
  let linkEdge = new Int32Array(1024);
  let linkChild = new Int32Array(1024);
  let linkNext = new Int32Array(1024);
  let linkCount = 0;

  let callStart = new Int32Array(256);
  let callFirstWaiter = new Int32Array(256);
  let callEmptyItem = new Int32Array(256);
  let callCount = 0;

  let waiterItem = new Int32Array(512);
  let waiterEdge = new Int32Array(512);
  let waiterNext = new Int32Array(512);
  let waiterCount = 0;

  // Items by (state, call, position): open addressing, emptied by raising the stamp.
  let slots = new Int32Array(4096);
  let slotStamps = new Int32Array(4096);
  let stamp = 0;

  let queueHead = new Int32Array(64);
  let queueTail = new Int32Array(64);
  let input = new Int32Array(64);
  let hostKnown = new Int32Array(64);
  let hostActive = new Int32Array(64);
  const needLast = new Int32Array(network.needCount + 1);

  const callOfRule = new Int32Array(ruleStart.length);
  const callOfRuleStamp = new Float64Array(ruleStart.length);
  let positionStamp = 0;

  // What the parse now running is about. The functions below are made once, not once a parse.
  let tokens: readonly string[] = [];
  let length = 0;
  let prefix = false;
  let hostRules: readonly (DynamicRule | undefined)[] = [];
  let hostMatches: DynamicMatch[] = [];
  /** By host and position: where its matches lie in `hostMatches`, or -1 while not asked. */
  let matchStart = new Int32Array(64);
  let matchEnd = new Int32Array(64);
  /** In prefix mode: host phrases the input breaks off in. */
  let begun = 0;
  const hostCount = network.hostUris.length;
  /** A host rule that calls back into the same grammar would overwrite what it is asked from. */
  let busy = false;

  const findHostMatches = (host: number, j: number): void => {
    const slot = host * (length + 1) + j;
    if (matchStart[slot]! >= 0) return;
    matchStart[slot] = hostMatches.length;
    const rule = hostRules[host];
    if (rule !== undefined) {
      for (const match of rule.matchesAt(tokens, j)) {
        if (match.length >= 1 && j + match.length <= length) hostMatches.push(match);
      }
    }
    matchEnd[slot] = hostMatches.length;
  };

  /** True when one of the host rules in `bits` matches at j. Asks each host rule once a position. */
  const hostCouldMatch = (bits: number, j: number): boolean => {
    if ((bits & hostActive[j]!) !== 0) return true;
    let unknown = bits & ~hostKnown[j]!;
    if (unknown === 0) return false;
    for (let host = 0; host < hostCount && unknown !== 0; host++) {
      const bit = hostBit(host);
      if ((unknown & bit) === 0) continue;
      findHostMatches(host, j);
      const slot = host * (length + 1) + j;
      if (matchEnd[slot]! > matchStart[slot]!) hostActive[j]! |= bit;
      if (host < 30) {
        hostKnown[j]! |= bit;
        unknown &= ~bit;
      } else if (host === hostCount - 1) hostKnown[j]! |= bit;
    }
    return (bits & hostActive[j]!) !== 0;
  };

  /** True when the input at j can begin what the set (a state's, or a rule's followers') begins with. */
  const couldBegin = (set: number, j: number): boolean => {
    const token = input[j]!;
    if (token >= 0) {
      const first = firstToken[set]!;
      if (first === token) return true;
      if (first < -1 && (firstBits[(-2 - first) * firstWords + (token >> 5)]! & (1 << (token & 31))) !== 0)
        return true;
    }
    if (firstGarbage[set] === 1) return true;
    const bits = firstHost[set]!;
    return bits !== 0 && (hostCouldMatch(bits, j) || (prefix && hostBegins(bits, j)));
  };

  /** False when a word that must come at or after the state does not come at or after j. */
  const stillToCome = (state: number, j: number): boolean => {
    const needed = need[state]!;
    return needed < 0 || prefix || needLast[needed]! >= j;
  };

  /** False when no path from the state can go on at j: see `Network`. */
  const hopeful = (state: number, j: number): boolean => {
    if (j === length) return prefix ? alive[state] === 1 : canEnd[state] === 1;
    if (!stillToCome(state, j)) return false;
    return couldBegin(state, j) || (canEnd[state] === 1 && couldBegin(stateCount + stateRule[state]!, j));
  };

  /** In prefix mode: true when the rest of the input begins a phrase of one of the host rules. */
  const hostBegins = (bits: number, j: number): boolean => {
    for (let host = 0; host < hostCount; host++) {
      if ((bits & hostBit(host)) !== 0 && hostRules[host]?.beginsAt?.(tokens, j) === true) return true;
    }
    return false;
  };

  const link = (item: number, previous: number, edge: number, child: number): void => {
    if (linkCount === linkPrevious.length) {
      linkPrevious = grow(linkPrevious);
      linkEdge = grow(linkEdge);
      linkChild = grow(linkChild);
      linkNext = grow(linkNext);
    }
    linkPrevious[linkCount] = previous;
    linkEdge[linkCount] = edge;
    linkChild[linkCount] = child;
    linkNext[linkCount] = itemFirstLink[item]!;
    itemFirstLink[item] = linkCount++;
  };

  const findSlot = (state: number, call: number, j: number): number => {
    const mask = slots.length - 1;
    let slot = (Math.imul(state, 0x9e3779b1) ^ Math.imul(call, 0x85ebca6b) ^ Math.imul(j, 0xc2b2ae35)) >>> 7;
    for (slot &= mask; slotStamps[slot] === stamp; slot = (slot + 1) & mask) {
      const item = slots[slot]!;
      if (itemState[item] === state && itemCall[item] === call && itemPosition[item] === j) return slot;
    }
    return slot;
  };

  const growSlots = (): void => {
    slots = new Int32Array(slots.length * 2);
    slotStamps = new Int32Array(slots.length);
    for (let item = 0; item < itemCount; item++) {
      const slot = findSlot(itemState[item]!, itemCall[item]!, itemPosition[item]!);
      slots[slot] = item;
      slotStamps[slot] = stamp;
    }
  };

  /** Adds an item, or only a link when the item is there. `previous` -1 marks the start of a rule. */
  const add = (
    state: number,
    call: number,
    j: number,
    previous: number,
    edge: number,
    child: number,
  ): void => {
    if (!hopeful(state, j)) return;
    const slot = findSlot(state, call, j);
    let item: number;
    if (slotStamps[slot] === stamp) item = slots[slot]!;
    else {
      if (itemCount === itemState.length) {
        itemState = grow(itemState);
        itemCall = grow(itemCall);
        itemPosition = grow(itemPosition);
        itemFirstLink = grow(itemFirstLink);
        itemQueued = grow(itemQueued);
      }
      item = itemCount++;
      itemState[item] = state;
      itemCall[item] = call;
      itemPosition[item] = j;
      itemFirstLink[item] = -1;
      itemQueued[item] = -1;
      slots[slot] = item;
      slotStamps[slot] = stamp;
      if (itemCount * 2 > slots.length) growSlots();
      if (queueHead[j]! < 0) queueHead[j] = item;
      else itemQueued[queueTail[j]!] = item;
      queueTail[j] = item;
    }
    if (previous >= 0) link(item, previous, edge, child);
  };

  const beginCall = (rule: number, j: number): number => {
    if (callOfRuleStamp[rule] === positionStamp) return callOfRule[rule]!;
    if (callCount === callStart.length) {
      callStart = grow(callStart);
      callFirstWaiter = grow(callFirstWaiter);
      callEmptyItem = grow(callEmptyItem);
    }
    const call = callCount++;
    callStart[call] = j;
    callFirstWaiter[call] = -1;
    callEmptyItem[call] = -1;
    callOfRule[rule] = call;
    callOfRuleStamp[rule] = positionStamp;
    add(ruleStart[rule]!, call, j, -1, -1, NO_CHILD);
    return call;
  };

  const follow = (edge: number, item: number, call: number, j: number): void => {
    const target = edgeTarget[edge]!;
    switch (edgeKind[edge]) {
      case EPSILON:
        add(target, call, j, item, edge, NO_CHILD);
        return;
      case TOKEN:
        if (j < length && input[j] === edgeArg[edge]) add(target, call, j + 1, item, edge, NO_CHILD);
        return;
      case GARBAGE:
        if (j < length) add(target, call, j + 1, item, edge, NO_CHILD);
        return;
      case HOST: {
        if (j >= length || !stillToCome(target, j)) return;
        const host = edgeArg[edge]!;
        findHostMatches(host, j);
        if (prefix && hostRules[host]?.beginsAt?.(tokens, j) === true) begun++;
        const slot = host * (length + 1) + j;
        for (let match = matchStart[slot]!; match < matchEnd[slot]!; match++) {
          add(target, call, j + hostMatches[match]!.length, item, edge, -2 - match);
        }
        return;
      }
      case CALL: {
        const rule = edgeArg[edge]!;
        if (!alive[target] || !stillToCome(target, j) || !hopeful(ruleStart[rule]!, j)) return;
        const callee = beginCall(rule, j);
        if (waiterCount === waiterItem.length) {
          waiterItem = grow(waiterItem);
          waiterEdge = grow(waiterEdge);
          waiterNext = grow(waiterNext);
        }
        waiterItem[waiterCount] = item;
        waiterEdge[waiterCount] = edge;
        waiterNext[waiterCount] = callFirstWaiter[callee]!;
        callFirstWaiter[callee] = waiterCount++;
        // The rule may already have matched nothing here: then this late waiter goes on at once.
        const empty = callEmptyItem[callee]!;
        if (empty >= 0) add(target, call, j, item, edge, empty);
      }
    }
  };

  /** Follows the edges of a list of `dispatch`. */
  const followAll = (list: number, item: number, call: number, j: number): void => {
    for (let i = dispatchStart[list]!, end = dispatchStart[list + 1]!; i < end; i++)
      follow(dispatchEdges[i]!, item, call, j);
  };

  /** Walks the network over the input. Returns the calls of the active rules, -1 for those that cannot begin. */
  const walk = (rules: readonly number[]): number[] => {
    const rootCalls: number[] = [];
    positionStamp++;
    for (let i = 0; i < rules.length; i++) {
      const rule = rules[i]!;
      rootCalls.push(hopeful(ruleStart[rule]!, 0) ? beginCall(rule, 0) : -1);
    }
    for (let j = 0; j <= length && linkCount < MAX_LINKS; j++) {
      if (j > 0) positionStamp++;
      for (let item = queueHead[j]!; item >= 0 && linkCount < MAX_LINKS; item = itemQueued[item]!) {
        const state = itemState[item]!;
        const call = itemCall[item]!;
        if (state === ruleAccept[stateRule[state]!]) {
          if (callStart[call] === j) callEmptyItem[call] = item;
          for (let waiter = callFirstWaiter[call]!; waiter >= 0; waiter = waiterNext[waiter]!) {
            const waiting = waiterItem[waiter]!;
            const edge = waiterEdge[waiter]!;
            add(edgeTarget[edge]!, itemCall[waiting]!, j, waiting, edge, item);
          }
          continue;
        }
        const byToken = dispatch[state];
        if (byToken !== undefined && j < length) {
          followAll(dispatchAlways[state]!, item, call, j);
          const list = byToken.get(input[j]!);
          if (list !== undefined) followAll(list, item, call, j);
        } else {
          for (let e = edgeStart[state]!, end = edgeStart[state + 1]!; e < end; e++) follow(e, item, call, j);
        }
      }
    }

    return rootCalls;
  };

  /** Gives back what one odd input made grow. */
  const shrink = (): void => {
    if (linkPrevious.length > KEPT) {
      linkPrevious = new Int32Array(1024);
      linkEdge = new Int32Array(1024);
      linkChild = new Int32Array(1024);
      linkNext = new Int32Array(1024);
    }
    if (itemState.length > KEPT) {
      itemState = new Int32Array(1024);
      itemCall = new Int32Array(1024);
      itemPosition = new Int32Array(1024);
      itemFirstLink = new Int32Array(1024);
      itemQueued = new Int32Array(1024);
      slots = new Int32Array(4096);
      slotStamps = new Int32Array(4096);
    }
  };

  const hostsFor = (
    hosts: ReadonlyMap<string, DynamicRule> | undefined,
  ): readonly (DynamicRule | undefined)[] => network.hostUris.map((uri) => hosts?.get(uri));

  return {
    recognise(given, rules, hosts, options) {
      if (busy) throw new Error('A host rule called the grammar that is asking it.');
      tokens = given.length <= MAX_TOKENS ? given : given.slice(0, MAX_TOKENS);
      length = tokens.length;
      prefix = options?.prefix === true;
      begun = 0;
      itemCount = linkCount = callCount = waiterCount = 0;
      shrink();
      stamp++;
      while (queueHead.length < length + 2) {
        queueHead = grow(queueHead);
        queueTail = grow(queueTail);
        input = grow(input);
        hostKnown = grow(hostKnown);
        hostActive = grow(hostActive);
      }
      while (matchStart.length < hostCount * (length + 1)) {
        matchStart = grow(matchStart);
        matchEnd = grow(matchEnd);
      }
      matchStart.fill(-1, 0, hostCount * (length + 1));
      hostMatches = [];
      hostRules = hostsFor(hosts);
      needLast.fill(-1);
      for (let j = 0; j <= length; j++) {
        queueHead[j] = -1;
        queueTail[j] = -1;
        hostKnown[j] = 0;
        hostActive[j] = 0;
        if (j === length) break;
        const token = tokens[j]!;
        const id = network.tokens.get(token) ?? network.tokens.get(foldToken(token)) ?? -1;
        input[j] = id;
        if (id >= 0) {
          for (let i = needStart[id]!; i < needStart[id + 1]!; i++) needLast[needsOfToken[i]!] = j;
        }
      }

      let rootCalls: number[];
      busy = true;
      try {
        rootCalls = given.length <= MAX_TOKENS ? walk(rules) : rules.map(() => -1);
      } finally {
        busy = false;
      }
      const goals = rootCalls.map((call, i) => {
        if (call < 0 || linkCount >= MAX_LINKS) return -1;
        const slot = findSlot(ruleAccept[rules[i]!]!, call, length);
        return slotStamps[slot] === stamp ? slots[slot]! : -1;
      });
      let liveAtEnd = begun;
      if (linkCount < MAX_LINKS) {
        for (let item = queueHead[length]!; item >= 0; item = itemQueued[item]!) liveAtEnd++;
      }
      return {
        network,
        tokens,
        goals,
        liveAtEnd,
        items: {
          count: itemCount,
          state: itemState,
          call: itemCall,
          position: itemPosition,
          firstLink: itemFirstLink,
          callStart,
        },
        links: { count: linkCount, previous: linkPrevious, edge: linkEdge, child: linkChild, next: linkNext },
        hostMatches,
      };
    },
  };
};
