/**
 * Best-first reading of the chart: the best derivation of every useful item, and, when asked for, the next
 * best ones lazily (Huang and Chiang, "Better k-best parsing", 2005, algorithm 3). Only what the wanted parses
 * need is ever looked at.
 */
import type { Chart } from './chart.js';
import { NO_CHILD } from './chart.js';
import type { Label, Network } from './network.js';

/** A derivation tree: one rule and, in order, what it matched. Positions count input tokens. */
export interface Derivation {
  /** Index of the rule in the network. */
  readonly rule: number;
  readonly from: number;
  readonly to: number;
  readonly steps: readonly Step[];
}

export type Step =
  | {
      readonly kind: 'token';
      readonly label: Label & { kind: 'token' };
      readonly from: number;
      readonly to: number;
    }
  | { readonly kind: 'tag'; readonly label: Label & { kind: 'tag' }; readonly at: number }
  | {
      readonly kind: 'rule';
      readonly label: Label & { kind: 'reference' };
      readonly derivation: Derivation;
      readonly from: number;
      readonly to: number;
    }
  | {
      readonly kind: 'host';
      readonly label: Label & { kind: 'reference' };
      readonly match: number;
      readonly from: number;
      readonly to: number;
    }
  | { readonly kind: 'garbage'; readonly from: number; readonly to: number };

export interface RankedDerivation {
  readonly score: number;
  /** Which of the chart's goals. */
  readonly goal: number;
  readonly derivation: Derivation;
}

interface Choice {
  readonly link: number;
  readonly previousRank: number;
  readonly childRank: number;
  readonly score: number;
}

const EMPTY_CHOICE: Choice = { link: -1, previousRank: 0, childRank: 0, score: 0 };

/** Reads one chart at a time. `begin` takes a chart, `next` gives its parses, best first; ties by goal, then grammar order. */
export interface Ranker {
  begin(chart: Chart): void;
  next(): RankedDerivation | null;
}

interface RankedChoices {
  readonly found: Choice[];
  readonly open: Choice[];
  /** Which combinations were offered already; made when first needed. */
  seen: Set<number> | null;
  busy: boolean;
}

const NEW = 0;
const OPEN = 1;
const DONE = 2;
/** Ranks beyond this are not looked for: a bound on memory, far above what anyone asks. */
const MAX_RANK = 50_000;

/** Its arrays are kept from chart to chart. */
export const createRanker = (network: Network): Ranker => {
  const { edgeWeight, edgeLabel, stateRule, labels } = network;
  let best = new Float64Array(1024);
  let bestLink = new Int32Array(1024);
  let phase = new Uint8Array(1024);
  let stack = new Int32Array(1024);
  let cyclic = false;
  /** With cycles: when each item was settled, counting up. Only what was settled before may be part of it. */
  const settledAt = new Map<number, number>();
  let chart: Chart;
  let items: Chart['items'];
  let links: Chart['links'];
  let goals: { readonly goal: number; readonly item: number }[] = [];
  let nextRank: number[] = [];
  let ranked = new Map<number, RankedChoices>();

  const own = (link: number): number => {
    const child = links.child[link]!;
    let weight = edgeWeight[links.edge[link]!]!;
    if (child < NO_CHILD) {
      const factor = chart.hostMatches[-2 - child]!.weight;
      if (factor !== undefined) weight += Math.log(Math.max(factor, 1e-9));
    }
    return weight;
  };

  /** True when link a goes before link b among equals: grammar order, then the longer earlier part. */
  const goesBefore = (a: number, b: number): boolean => {
    if (links.edge[a] !== links.edge[b]) return links.edge[a]! < links.edge[b]!;
    const reachA = items.position[links.previous[a]!]!;
    const reachB = items.position[links.previous[b]!]!;
    if (reachA !== reachB) return reachA > reachB;
    const childA = links.child[a]!;
    const childB = links.child[b]!;
    // Host matches are numbered downwards from -2, in the order the host gave them.
    return childA < NO_CHILD && childB < NO_CHILD ? childA > childB : childA < childB;
  };

  const settle = (item: number, readyOnly: boolean): boolean => {
    let winner = -1;
    let score = -Infinity;
    for (let link = items.firstLink[item]!; link >= 0; link = links.next[link]!) {
      const previous = links.previous[link]!;
      const child = links.child[link]!;
      if (readyOnly && (phase[previous] !== DONE || (child >= 0 && phase[child] !== DONE))) continue;
      const total = best[previous]! + own(link) + (child >= 0 ? best[child]! : 0);
      if (winner < 0 || total > score || (total === score && goesBefore(link, winner))) {
        winner = link;
        score = total;
      }
    }
    if (winner < 0) return false;
    bestLink[item] = winner;
    best[item] = score;
    return true;
  };

  /** Settles the goal and all it is made of, parts first, without recursion: inputs may be long. */
  const prepare = (goal: number): void => {
    let top = 0;
    const finished: number[] = [];
    stack[top++] = goal;
    while (top > 0) {
      const item = stack[top - 1]!;
      if (phase[item] === DONE) top--;
      else if (phase[item] === NEW) {
        phase[item] = OPEN;
        for (let link = items.firstLink[item]!; link >= 0; link = links.next[link]!) {
          if (top + 2 > stack.length) {
            const bigger = new Int32Array(stack.length * 2);
            bigger.set(stack);
            stack = bigger;
          }
          const previous = links.previous[link]!;
          if (phase[previous] === NEW) stack[top++] = previous;
          else if (phase[previous] === OPEN) cyclic = true;
          const child = links.child[link]!;
          if (child >= 0) {
            if (phase[child] === NEW) stack[top++] = child;
            else if (phase[child] === OPEN) cyclic = true;
          }
        }
      } else {
        top--;
        phase[item] = DONE;
        finished.push(item);
        if (!cyclic && items.firstLink[item]! >= 0) settle(item, false);
      }
    }
    if (cyclic) settleCycles(finished);
  };

  /**
   * With cycles (an infinitely ambiguous grammar) an item is settled once, from items settled before it, so
   * that no derivation contains itself. Repeats until all are settled; each round settles at least one.
   */
  const settleCycles = (finished: readonly number[]): void => {
    let waiting = finished.filter((item) => items.firstLink[item]! >= 0);
    for (const item of waiting) phase[item] = OPEN;
    while (waiting.length > 0) {
      const still: number[] = [];
      for (const item of waiting) {
        if (settle(item, true)) {
          phase[item] = DONE;
          settledAt.set(item, settledAt.size);
        } else still.push(item);
      }
      if (still.length === waiting.length) break;
      waiting = still;
    }
  };

  const comesAfterItsParts = (item: number, link: number): boolean => {
    const when = (part: number): number => (part < 0 ? -1 : (settledAt.get(part) ?? -1));
    const own = settledAt.get(item);
    // Settled before any cycle was met: all its links are sound.
    if (own === undefined) return true;
    return own > when(links.previous[link]!) && own > when(links.child[link]!);
  };

  const rankedOf = (item: number): RankedChoices => {
    let entry = ranked.get(item);
    if (entry === undefined) {
      entry = { found: [], open: [], seen: null, busy: false };
      if (items.firstLink[item]! < 0) entry.found.push(EMPTY_CHOICE);
      else {
        const first = bestLink[item]!;
        entry.found.push({ link: first, previousRank: 0, childRank: 0, score: best[item]! });
        for (let link = items.firstLink[item]!; link >= 0; link = links.next[link]!) {
          if (link === first || (cyclic && !comesAfterItsParts(item, link))) continue;
          const child = links.child[link]!;
          const score = best[links.previous[link]!]! + own(link) + (child >= 0 ? best[child]! : 0);
          entry.open.push({ link, previousRank: 0, childRank: 0, score });
        }
      }
      ranked.set(item, entry);
    }
    return entry;
  };

  /** Offers the derivation over the same link with other ranks of its parts, once. */
  const offer = (entry: RankedChoices, link: number, previousRank: number, childRank: number): void => {
    const key = (link * MAX_RANK + previousRank) * MAX_RANK + childRank;
    if (previousRank >= MAX_RANK || childRank >= MAX_RANK || entry.seen?.has(key) === true) return;
    (entry.seen ??= new Set()).add(key);
    const child = links.child[link]!;
    const one = choiceAt(links.previous[link]!, previousRank);
    if (one === undefined) return;
    const other = child >= 0 ? choiceAt(child, childRank) : EMPTY_CHOICE;
    if (other === undefined) return;
    entry.open.push({ link, previousRank, childRank, score: one.score + own(link) + other.score });
  };

  const choiceAt = (item: number, rank: number): Choice | undefined => {
    const entry = rankedOf(item);
    while (entry.found.length <= rank) {
      if (items.firstLink[item]! < 0 || entry.busy) return undefined;
      entry.busy = true;
      const last = entry.found[entry.found.length - 1]!;
      offer(entry, last.link, last.previousRank + 1, last.childRank);
      if (links.child[last.link]! >= 0) offer(entry, last.link, last.previousRank, last.childRank + 1);
      entry.busy = false;
      let at = -1;
      for (let i = 0; i < entry.open.length; i++) {
        if (at < 0) at = i;
        else {
          const difference = entry.open[i]!.score - entry.open[at]!.score;
          if (difference > 0 || (difference === 0 && goesBefore(entry.open[i]!.link, entry.open[at]!.link)))
            at = i;
        }
      }
      if (at < 0) return undefined;
      entry.found.push(entry.open.splice(at, 1)[0]!);
    }
    return entry.found[rank];
  };

  const derive = (item: number, rank: number): Derivation => {
    const steps: Step[] = [];
    collect(item, rank, steps);
    steps.reverse();
    return {
      rule: stateRule[items.state[item]!]!,
      from: items.callStart[items.call[item]!]!,
      to: items.position[item]!,
      steps,
    };
  };

  /** Appends the steps of an item's derivation, last first. */
  const collect = (item: number, rank: number, steps: Step[]): void => {
    while (items.firstLink[item]! >= 0) {
      let link: number;
      let previousRank = 0;
      let childRank = 0;
      if (rank === 0) link = bestLink[item]!;
      else {
        const choice = choiceAt(item, rank)!;
        link = choice.link;
        previousRank = choice.previousRank;
        childRank = choice.childRank;
      }
      const previous = links.previous[link]!;
      const child = links.child[link]!;
      const labelIndex = edgeLabel[links.edge[link]!]!;
      if (labelIndex >= 0) {
        const label = labels[labelIndex]!;
        const from = items.position[previous]!;
        const to = items.position[item]!;
        if (label.kind === 'token') steps.push({ kind: 'token', label, from: to - label.length, to });
        else if (label.kind === 'tag') steps.push({ kind: 'tag', label, at: to });
        else if (label.kind === 'garbage') steps.push({ kind: 'garbage', from, to });
        else if (child < NO_CHILD) steps.push({ kind: 'host', label, match: -2 - child, from, to });
        else if (label.inline) collect(child, childRank, steps);
        else steps.push({ kind: 'rule', label, derivation: derive(child, childRank), from, to });
      }
      item = previous;
      rank = previousRank;
    }
  };

  return {
    begin(given) {
      chart = given;
      items = chart.items;
      links = chart.links;
      cyclic = false;
      settledAt.clear();
      const { count } = items;
      if (best.length < count) {
        best = new Float64Array(count * 2);
        bestLink = new Int32Array(count * 2);
        phase = new Uint8Array(count * 2);
      }
      best.fill(0, 0, count);
      phase.fill(NEW, 0, count);
      goals = [];
      nextRank = [];
      if (ranked.size > 0) ranked = new Map();
      for (let goal = 0; goal < chart.goals.length; goal++) {
        const item = chart.goals[goal]!;
        if (item < 0) continue;
        if (phase[item] !== DONE) prepare(item);
        goals.push({ goal, item });
        nextRank.push(0);
      }
    },
    next() {
      let winner = -1;
      let score = -Infinity;
      for (let i = 0; i < goals.length; i++) {
        const rank = nextRank[i]!;
        const total = rank === 0 ? best[goals[i]!.item]! : choiceAt(goals[i]!.item, rank)?.score;
        if (total !== undefined && (winner < 0 || total > score)) {
          winner = i;
          score = total;
        }
      }
      if (winner < 0) return null;
      const { goal, item } = goals[winner]!;
      return { score, goal, derivation: derive(item, nextRank[winner]!++) };
    },
  };
};
