/** What was taken off the record a moment ago, put back as it was: by its name, or all that a check took off. */
import { applyChange, isRefused, likeness, standing, undo, undoOf } from '../../kitchen/index.js';
import type { Change, Id, Item, JournalEntry } from '../../kitchen/model.js';
import type { Act, Mention } from '../../understanding/intents.js';
import { placeAt } from '../describe/place.js';
import { type Reply, type Turn, about, list, say } from '../handler.js';

/** One thing an entry took off the record, as it was. */
interface TakenOff {
  readonly entry: JournalEntry;
  readonly item: Item;
}

/** "The last minutes": long enough for a check of one place. Common practice of talk, and no guidance. */
const minutesLately = 60;

export const isLately = (turn: Turn, { at }: JournalEntry): boolean =>
  Date.parse(turn.clock.now) - Date.parse(at) <= minutesLately * 60_000;

/** What is gone now that was here before one of these entries, the last first. */
const takenOff = (turn: Turn, entries: readonly JournalEntry[]): readonly TakenOff[] =>
  standing(entries)
    .filter((entry) => entry.verb !== 'undid' && isLately(turn, entry))
    .flatMap((entry) =>
      entry.ops.flatMap((op) => {
        if (op.kind !== 'item' || !op.before || op.before.gone || !op.after?.gone) return [];
        return turn.kitchen.items.get(op.id)?.gone ? [{ entry, item: op.before }] : [];
      }),
    );

const fitsOf = (name: string, { words, candidates }: Mention, id: Id): number =>
  Math.max(words ? likeness(name, words) : 0, candidates.some((one) => one.id === id) ? leastFit : 0);
const leastFit = 0.5;

/** Those that the words fit best; lots of one name that went together come back together. */
const called = (off: readonly TakenOff[], mention: Mention): readonly TakenOff[] => {
  const fits = off.map((one) => ({ one, fit: fitsOf(one.item.name, mention, one.item.id) }));
  const best = Math.max(0, ...fits.map(({ fit }) => fit));
  const [first, ...others] = fits.filter(({ fit }) => fit > 0 && fit === best).map(({ one }) => one);
  if (!first) return [];
  const together = others.filter(
    ({ entry, item }) => entry.id === first.entry.id && item.name === first.item.name,
  );
  return [first, ...together];
};

const inCheck = ({ entry: { ops } }: TakenOff): boolean => ops.some(({ kind }) => kind === 'stockTake');

const backReply = (turn: Turn, off: readonly TakenOff[]): Reply | null => {
  const changes: Change[] = [];
  let kitchen = turn.kitchen;
  for (const entry of new Set(off.map((one) => one.entry))) {
    const ids = off.filter((one) => one.entry === entry).map(({ item }) => item.id);
    const change = undoOf({ ...turn, kitchen }, entry, ids);
    if (isRefused(change)) continue;
    changes.push(change);
    kitchen = applyChange(kitchen, change);
  }
  const back = off.flatMap(({ item: { id } }) => {
    const item = kitchen.items.get(id);
    return item && !item.gone ? [item] : [];
  });
  const [first] = back;
  if (!first) return null;
  const names = [...new Set(back.map(({ name }) => name))];
  const places = new Set(back.map(({ placeId }) => placeId));
  const at = places.size === 1 && first.placeId ? { at: placeAt(turn.kitchen, first.placeId) } : {};
  return {
    parts: [say('brought-back', { about: list(names), count: names.length, ...at })],
    changes,
    dropFrames: true,
    memory: about({ ...turn, kitchen }, back),
    names,
  };
};

/** Taken off a moment ago by that name; null where nothing called so was. */
export const bringBack = (turn: Turn, own: readonly JournalEntry[], mention: Mention): Reply | null => {
  const off = called(takenOff(turn, own), mention);
  return off.length > 0 ? backReply(turn, off) : null;
};

/** "Undo all that gone business": what checks took off, else whatever was taken off last. */
export const bringAllBack = (turn: Turn, own: readonly JournalEntry[]): Reply | null => {
  const off = takenOff(turn, own);
  const checked = off.filter(inCheck);
  const last = off.filter(({ entry }) => entry.turnId === off[0]?.entry.turnId);
  return backReply(turn, checked.length > 0 ? checked : last);
};

/** "Undo the celery": what was done to it last, whatever that was. Null where it is none of a moment ago. */
export const undoByName = (turn: Turn, own: readonly JournalEntry[], { slots }: Act): Reply | null => {
  const mention = slots.item;
  const words = mention?.words;
  if (!mention || !words) return null;
  const back = bringBack(turn, own, mention);
  if (back) return back;
  const entry = standing(own).find(
    (one) =>
      one.verb !== 'undid' && isLately(turn, one) && one.about.some((name) => likeness(name, words) > 0),
  );
  if (!entry) return { parts: [say('nothing-to-undo-of', { name: words })] };
  const ids = entry.ops.flatMap((op) => {
    const name = op.kind === 'item' ? (op.after ?? op.before)?.name : undefined;
    return name && likeness(name, words) > 0 ? [op.id] : [];
  });
  const change = ids.length > 0 ? undoOf(turn, entry, ids) : undo(turn, entry);
  if (isRefused(change)) return null;
  const made = entry.ops.some((op) => op.kind === 'item' && ids.includes(op.id) && op.before === null);
  const verb = made ? 'put-away' : 'amended';
  return {
    parts: [say('undone', { verb, about: list(change.about) })],
    changes: [change],
    dropFrames: true,
    memory: { items: ids.filter((id) => turn.kitchen.items.has(id) && !made) },
  };
};
