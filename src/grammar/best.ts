/**
 * Best-first reading of the chart: the best derivation of every useful item, and, when asked for, the next
 * best ones lazily (Huang and Chiang, "Better k-best parsing", 2005, algorithm 3). Only what the wanted parses
 * need is ever looked at.
 */
import type { Chart } from './chart.js';
import { NO_CHILD } from './chart.js';
import type { Label } from './network.js';

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

/** Parses of the chart, best first; ties by goal, then by grammar order. */
export function* rankedDerivations(chart: Chart): Generator<RankedDerivation> {
  const { items, links, network } = chart;
  const { edgeWeight } = network;
  const count = items.count;
  const best = new Float64Array(count);
  const bestLink = new Int32Array(count).fill(-1);
  /** 0 not seen, 1 on the stack, 2 done. */
  const phase = new Uint8Array(count);
  let cyclic = false;

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
      if (readyOnly && (phase[previous] !== 2 || (child >= 0 && phase[child] !== 2))) continue;
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

  const prepare = (goal: number): void => {
    const stack: number[] = [goal];
    const finished: number[] = [];
    while (stack.length > 0) {
      const item = stack[stack.length - 1]!;
      if (phase[item] === 2) {
        stack.pop();
        continue;
      }
      if (phase[item] === 0) {
        phase[item] = 1;
        for (let link = items.firstLink[item]!; link >= 0; link = links.next[link]!) {
          const previous = links.previous[link]!;
          const child = links.child[link]!;
          if (phase[previous] === 0) stack.push(previous);
          else if (phase[previous] === 1) cyclic = true;
          if (child >= 0) {
            if (phase[child] === 0) stack.push(child);
            else if (phase[child] === 1) cyclic = true;
          }
        }
        continue;
      }
      stack.pop();
      phase[item] = 2;
      finished.push(item);
      if (!cyclic && items.firstLink[item]! >= 0) settle(item, false);
    }
    if (cyclic) settleCycles(finished);
  };

  /**
   * With cycles (an infinitely ambiguous grammar) an item is settled once, from items settled before it, so
   * that no derivation contains itself. Repeats until all are settled; each round settles at least one.
   */
  const settleCycles = (finished: readonly number[]): void => {
    let waiting = finished.filter((item) => items.firstLink[item]! >= 0);
    for (const item of waiting) phase[item] = 1;
    while (waiting.length > 0) {
      const still: number[] = [];
      for (const item of waiting) {
        if (settle(item, true)) phase[item] = 2;
        else still.push(item);
      }
      if (still.length === waiting.length) break;
      waiting = still;
    }
  };

  const goals: { goal: number; item: number }[] = [];
  for (let goal = 0; goal < chart.goals.length; goal++) {
    const item = chart.goals[goal]!;
    if (item < 0) continue;
    if (phase[item] !== 2) prepare(item);
    goals.push({ goal, item });
  }

  // --- next best -------------------------------------------------------------------------------------------
  const ranked = new Map<number, { found: Choice[]; open: Choice[]; seen: Set<string>; busy: boolean }>();
  const rankedOf = (item: number) => {
    let entry = ranked.get(item);
    if (entry === undefined) {
      entry = { found: [], open: [], seen: new Set(), busy: false };
      if (items.firstLink[item]! < 0) entry.found.push(EMPTY_CHOICE);
      else {
        const first = bestLink[item]!;
        entry.found.push({ link: first, previousRank: 0, childRank: 0, score: best[item]! });
        for (let link = items.firstLink[item]!; link >= 0; link = links.next[link]!) {
          entry.seen.add(`${link} 0 0`);
          if (link === first) continue;
          const child = links.child[link]!;
          const score = best[links.previous[link]!]! + own(link) + (child >= 0 ? best[child]! : 0);
          entry.open.push({ link, previousRank: 0, childRank: 0, score });
        }
      }
      ranked.set(item, entry);
    }
    return entry;
  };

  const choiceAt = (item: number, rank: number): Choice | undefined => {
    const entry = rankedOf(item);
    while (entry.found.length <= rank) {
      if (items.firstLink[item]! < 0 || entry.busy) return undefined;
      entry.busy = true;
      const last = entry.found[entry.found.length - 1]!;
      const previous = links.previous[last.link]!;
      const child = links.child[last.link]!;
      const offer = (previousRank: number, childRank: number): void => {
        const key = `${last.link} ${previousRank} ${childRank}`;
        if (entry.seen.has(key)) return;
        entry.seen.add(key);
        const one = choiceAt(previous, previousRank);
        const other = child >= 0 ? choiceAt(child, childRank) : EMPTY_CHOICE;
        if (one === undefined || other === undefined) return;
        entry.open.push({
          link: last.link,
          previousRank,
          childRank,
          score: one.score + own(last.link) + other.score,
        });
      };
      offer(last.previousRank + 1, last.childRank);
      if (child >= 0) offer(last.previousRank, last.childRank + 1);
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
      rule: network.stateRule[items.state[item]!]!,
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
      const labelIndex = network.edgeLabel[links.edge[link]!]!;
      if (labelIndex >= 0) {
        const label = network.labels[labelIndex]!;
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

  const nextRank = new Array<number>(goals.length).fill(0);
  for (;;) {
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
    if (winner < 0) return;
    const { goal, item } = goals[winner]!;
    yield { score, goal, derivation: derive(item, nextRank[winner]!) };
    nextRank[winner]!++;
  }
}
