/** Which lines of the list to buy were meant. */
import { lastGone, likeness, purchaseOf, shoppingList } from '../../kitchen/index.js';
import type { Kitchen, Purchase } from '../../kitchen/model.js';
import type { Value } from '../../speech/answer.js';
import type { Mention, Slots } from '../../understanding/intents.js';
import { type Turn, say } from '../handler.js';
import type { State } from '../state.js';

/** "Four lemons": how much, and of what. */
export const lineName = ({ name, amount }: Purchase): Value =>
  amount ? say('item-amount', { amount: { kind: 'amount', amount }, name }) : name;

/** And where from, for whom and which kind, where that was said. */
export const lineWords = ({ people }: Kitchen, line: Purchase): Value => {
  const { shop = null, note = null, forPersonId = null } = line;
  const person = forPersonId ? (people.get(forPersonId)?.name ?? null) : null;
  return shop === null && note === null && person === null
    ? lineName(line)
    : say('line-whole', {
        item: lineName(line),
        shop: shop ?? 'none',
        person: person ?? 'none',
        note: note ?? 'none',
      });
};

/** True while the talk is of the list: "it" is a line then, not a food in the kitchen. */
export const ofTheList = ({ state: { told }, memory }: Turn): boolean =>
  told?.act?.intent.startsWith('buy-') === true && memory.purchases.length > 0;

const linesPointedAt = (turn: Turn): Purchase[] =>
  turn.memory.purchases.flatMap((id) => turn.kitchen.purchases.get(id) ?? []);

/** "How many eggs are there", of which there are none: the eggs. */
export const namedBefore = ({ told, turns }: State): readonly string[] => {
  if (!told?.act || turns - (told.turn ?? -9) > 1) return [];
  const { item, items = [], query } = told.act.slots;
  const asked = (query?.where ?? []).flatMap((filter) => (filter.by === 'named' ? [filter.mention] : []));
  return [...(item ? [item] : []), ...items, ...asked].flatMap(({ words }) => words ?? []);
};

/** A food of the kitchen that was just spoken of, or what the last talk of the list was about. */
const namesPointedAt = (turn: Turn, { pointer }: Mention): string[] => {
  const lines = ofTheList(turn) ? linesPointedAt(turn).map(({ name }) => name) : [];
  const items = turn.memory.items.flatMap((id) => turn.kitchen.items.get(id)?.name ?? []);
  const known = lines.length > 0 ? lines : items.length > 0 ? items : namedBefore(turn.state);
  if (pointer === 'last-added') return known.slice(-1);
  return known.slice(0, pointer === 'them' || pointer === 'all' ? known.length : 1);
};

/** What was named, in the household's own words where it has some. */
export const namesSaid = (turn: Turn, slots: Slots): string[] => {
  const mentions: readonly Mention[] = slots.items ?? (slots.item ? [slots.item] : []);
  const names = mentions.flatMap((mention) => {
    if (mention.words) return [mention.words];
    if (mention.pointer) return namesPointedAt(turn, mention);
    return mention.candidates.flatMap(({ id }) => turn.kitchen.items.get(id)?.name ?? []).slice(0, 1);
  });
  if (names.length > 0) return [...new Set(names)];
  return slots.words && slots.asked !== 'section' ? [slots.words] : [];
};

export interface LinesSaid {
  readonly lines: readonly Purchase[];
  readonly unknown: readonly string[];
  /** "It", where several lines were spoken of. */
  readonly several?: readonly Purchase[];
}

/** Lines of the list that a name or a pointer means. */
export const linesSaid = (turn: Turn, slots: Slots): LinesSaid => {
  const all = shoppingList(turn.kitchen);
  const { pointer, ordinal } = slots.item ?? { pointer: null, ordinal: null };
  const at = ordinal ?? slots.ordinal ?? null;
  if (at) {
    const line = at < 0 ? all.at(at) : all[at - 1];
    return { lines: line ? [line] : [], unknown: [] };
  }
  if (pointer && !slots.item?.words) {
    if (pointer === 'all') return { lines: [...all], unknown: [] };
    const lines = linesPointedAt(turn);
    // "Take that last one off again": what was put on last.
    if (pointer === 'last-added' && lines.length > 0) return { lines: lines.slice(-1), unknown: [] };
    const one = pointer === 'it' || pointer === 'that' || pointer === 'this';
    if (one && lines.length > 1) return { lines: [], unknown: [], several: lines };
    if (lines.length > 0) return { lines, unknown: [] };
    const named = namesPointedAt(turn, slots.item!);
    return { lines: named.flatMap((name) => purchaseOf(turn.kitchen, name) ?? []), unknown: named };
  }
  const lines: Purchase[] = [];
  const unknown: string[] = [];
  for (const name of namesSaid(turn, slots)) {
    const near = nearLine(turn, name);
    if (near) lines.push(near);
    else unknown.push(name);
  }
  return { lines, unknown };
};

/** The line for that food; "flour" is the bread flour, when no other flour is on it. */
export const nearLine = (turn: Turn, name: string): Purchase | null =>
  purchaseOf(turn.kitchen, name) ??
  shoppingList(turn.kitchen).find((line) => likeness(line.name, name) > 0) ??
  null;

/** The finished food that a line replaces. */
export const replacedBy = (turn: Turn, name: string): string | null =>
  lastGone(turn.kitchen, name)?.id ?? null;
