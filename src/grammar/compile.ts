/** Compiles linked rules into a network (see `network.ts`). */
import { analyse } from './analyse.js';
import { visitExpansion } from './library.js';
import type { Library, Target } from './library.js';
import { CALL, EPSILON, GARBAGE, HOST, TOKEN } from './network.js';
import type { Label, Network } from './network.js';
import type { Expansion, GrammarDocument, Offset } from './syntax.js';
import { DTMF_KEY_NAMES, shownToken, wordsOfToken } from './words.js';

/** Weight of each token that $GARBAGE swallows: any other reading wins. */
const GARBAGE_WEIGHT = Math.log(0.01);
/** Stands in for weight or probability zero, which must not change what is accepted (section 2.4.1). */
const TINY = 1e-9;
const NEED_LIMIT = 300;
const INLINE_COPIES = 3;
const MAX_COPIES = 2000;

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
  const firstEdge: number[] = [];
  const lastEdge: number[] = [];
  const nextEdge: number[] = [];
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
  const idsByText = new Map<string, readonly number[]>();
  /** The words of a token, numbered. All documents of a library have one mode. */
  const tokenIds = (text: string): readonly number[] => {
    let ids = idsByText.get(text);
    if (ids === undefined) {
      ids = wordsOfToken(text, library.main.mode).map(tokenId);
      idsByText.set(text, ids);
    }
    return ids;
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
    firstEdge.push(-1);
    lastEdge.push(-1);
    need.push(needed);
    return stateRule.length - 1;
  };
  const newEdge = (from: number, kind: number, arg: number, to: number, weight = 0, label = -1): void => {
    const edge = edgeKind.length;
    if (lastEdge[from]! < 0) firstEdge[from] = edge;
    else nextEdge[lastEdge[from]!] = edge;
    lastEdge[from] = edge;
    nextEdge.push(-1);
    edgeKind.push(kind);
    edgeArg.push(arg);
    edgeTarget.push(to);
    edgeWeight.push(weight);
    edgeLabel.push(label);
  };
  const labelIds = new Map<string, number>();
  const labelId = (label: Label): number => {
    const key = JSON.stringify(label);
    let id = labelIds.get(key);
    if (id === undefined) {
      id = labels.push(label.kind === 'tag' ? { ...label, index: labels.length } : label) - 1;
      labelIds.set(key, id);
    }
    return id;
  };
  const documentNumbers = new Map(library.documents.map((document, number) => [document, number]));

  // --- which tokens must occur -------------------------------------------------------------------------------
  for (const { definition } of library.rules) {
    visitExpansion(definition.body, (expansion) => {
      if (expansion.kind === 'token') for (const id of tokenIds(expansion.text)) tokenUses[id]!++;
    });
  }
  const costs = new Map<ReadonlySet<number>, number>();
  const cost = (needed: ReadonlySet<number>): number => {
    let sum = costs.get(needed);
    if (sum === undefined) {
      sum = 0;
      for (const token of needed) sum += tokenUses[token]! + 2;
      costs.set(needed, sum);
    }
    return sum;
  };
  const singles: Need[] = [];
  const needOfToken = (id: number): Need => (singles[id] ??= new Set([id]));
  /** The rarer set; on near ties the later one, since the first token is checked anyway. */
  const better = (earlier: Need, later: Need): Need => {
    if (earlier === null) return later;
    if (later === null) return earlier;
    return cost(later) <= 3 * cost(earlier) ? later : earlier;
  };
  const either = (needs: readonly Need[]): Need => {
    if (needs.every((one) => one === needs[0])) return needs[0] ?? null;
    const union = new Set<number>();
    for (const one of needs) {
      if (one === null) return null;
      for (const token of one) union.add(token);
      if (union.size > NEED_LIMIT) return null;
    }
    return union;
  };
  const ruleNeeds = new Map<number, Need>();
  const needOfRule = (rule: number): Need => {
    const known = ruleNeeds.get(rule);
    if (known !== undefined) return known;
    ruleNeeds.set(rule, null); // inside a recursion nothing is known
    const found = needOf(library.rules[rule]!.definition.body);
    ruleNeeds.set(rule, found);
    return found;
  };
  const expansionNeeds = new Map<Expansion, Need>();
  function needOf(expansion: Expansion): Need {
    const known = expansionNeeds.get(expansion);
    if (known !== undefined) return known;
    const found = findNeed(expansion);
    expansionNeeds.set(expansion, found);
    return found;
  }
  function findNeed(expansion: Expansion): Need {
    switch (expansion.kind) {
      case 'token':
        return tokenIds(expansion.text).map(needOfToken).reduce(better);
      case 'reference': {
        const target = library.targetOf(expansion.reference);
        return target.kind === 'rule' ? needOfRule(target.rule) : null;
      }
      case 'sequence':
        return expansion.items.map((item) => needOf(item)).reduce(better, null);
      case 'choice':
        return either(expansion.options.map((option) => needOf(option.body)));
      case 'repeat':
        return expansion.min > 0 ? needOf(expansion.body) : null;
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

  /** True when the expansion's first edge can carry a weight, so that it needs no state of its own to begin in. */
  const startsPlainly = (expansion: Expansion): boolean =>
    expansion.kind === 'token' ||
    expansion.kind === 'reference' ||
    (expansion.kind === 'sequence' && startsPlainly(expansion.items[0]!));

  /** As `build`, for one way among several: with a weight, and its own look-ahead. */
  const enter = (
    expansion: Expansion,
    from: number,
    to: number,
    rest: Need,
    place: Place,
    weight: number,
    language?: string,
  ): void => {
    if (startsPlainly(expansion)) return build(expansion, from, to, rest, place, language, weight);
    const start = newState(place.rule, better(needOf(expansion), rest));
    newEdge(from, EPSILON, 0, start, weight);
    build(expansion, start, to, rest, place, language);
  };

  /**
   * Adds a path for the expansion from a state to a state. `rest` is what must come after it. Only an expansion
   * that starts plainly may have a weight.
   */
  const build = (
    expansion: Expansion,
    from: number,
    to: number,
    rest: Need,
    place: Place,
    language?: string,
    weight = 0,
  ): void => {
    switch (expansion.kind) {
      case 'token': {
        const ids = tokenIds(expansion.text);
        const spoken = expansion.language ?? language;
        const label = labelId({
          kind: 'token',
          text: shownToken(expansion.text, library.main.mode),
          length: ids.length,
          ...(spoken === undefined ? {} : { language: spoken }),
        });
        let state = from;
        ids.forEach((id, i) => {
          const last = i === ids.length - 1;
          const next = last ? to : newState(place.rule, better(needOfToken(ids[i + 1]!), rest));
          newEdge(state, TOKEN, id, next, i === 0 ? weight : 0, last ? label : -1);
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
          newEdge(loop, GARBAGE, 0, loop, GARBAGE_WEIGHT, labelId({ kind: 'garbage' }));
        }
        return;
      case 'tag':
        newEdge(
          from,
          EPSILON,
          0,
          to,
          0,
          labelId({
            kind: 'tag',
            text: expansion.text,
            document: documentNumbers.get(place.document)!,
            index: -1,
          }),
        );
        return;
      case 'reference': {
        const target = library.targetOf(expansion.reference);
        const label = labelId({ kind: 'reference', target, inline: false });
        if (target.kind === 'rule') newEdge(from, CALL, target.rule, to, weight, label);
        else newEdge(from, HOST, hostId(target.uri), to, weight, label);
        return;
      }
      case 'sequence': {
        const spoken = expansion.language ?? language;
        const rests: Need[] = [];
        let after = rest;
        for (let i = expansion.items.length - 1; i >= 0; i--) {
          rests[i] = after;
          after = better(needOf(expansion.items[i]!), after);
        }
        let state = from;
        expansion.items.forEach((item, i) => {
          const last = i === expansion.items.length - 1;
          const following = rests[i]!;
          const next = last ? to : newState(place.rule, following);
          build(item, state, next, following, place, spoken, i === 0 ? weight : 0);
          state = next;
        });
        return;
      }
      case 'choice': {
        const spoken = expansion.language ?? language;
        for (const option of expansion.options) {
          enter(option.body, from, to, rest, place, Math.log(Math.max(option.weight, TINY)), spoken);
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
    const bodyNeed = needOf(repeat.body);
    let add = (start: number, end: number, after: Need, weight: number): void =>
      enter(repeat.body, start, end, after, place, weight, language);
    // Many copies of something large would bloat the network: make it an unnamed rule that is called instead.
    if (copies > INLINE_COPIES && !isSmall(repeat.body)) {
      const index = library.rules.length + anonymous.length;
      anonymous.push({ body: repeat.body, document: place.document });
      const target: Target = { kind: 'rule', rule: index, name: '', shown: '' };
      const label = labelId({ kind: 'reference', target, inline: true });
      add = (start, end, _, weight) => newEdge(start, CALL, index, end, weight, label);
    }

    let state = from;
    for (let i = 0; i < min; i++) {
      const after = i < min - 1 ? better(bodyNeed, rest) : rest;
      const next = newState(place.rule, after);
      add(state, next, after, 0);
      state = next;
    }
    if (max === Infinity) {
      const loop = newState(place.rule, rest);
      newEdge(state, EPSILON, 0, loop);
      const end = newState(place.rule, rest);
      add(loop, end, rest, more);
      newEdge(end, EPSILON, 0, loop);
      newEdge(loop, EPSILON, 0, to, stop);
      return;
    }
    for (let i = min; i < max; i++) {
      const next = newState(place.rule, rest);
      add(state, next, rest, more);
      newEdge(state, EPSILON, 0, to, stop);
      state = next;
    }
    newEdge(state, EPSILON, 0, to);
  };

  const isSmall = (expansion: Expansion): boolean =>
    expansion.kind === 'token' || expansion.kind === 'reference' || expansion.kind === 'tag';

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
    ruleStart.push(newState(index, needOf(body)));
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
    for (let e = firstEdge[s]!; e >= 0; e = nextEdge[e]!) order.push(e);
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
  const needStart = new Int32Array(tokenCount + 1);
  ofToken.forEach((list, token) => (needStart[token + 1] = needStart[token]! + list.length));
  return { need, needCount: ids.size, needStart, needsOfToken: Int32Array.from(ofToken.flat()) };
};
