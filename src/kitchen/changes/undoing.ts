/** Taking back, and doing again after all. */
import type { Id, JournalEntry, Op, RecordKind, Records, StockTake } from '../model.js';
import { op, refuse, type Doing, type Result } from '../doing.js';
import { changedSince, invertChange } from '../apply.js';

const nameOf = (op: Op): string | null => {
  const record = (op.after ?? op.before) as Records[RecordKind] | null;
  return record && 'name' in record ? record.name : null;
};

/**
 * A check that went on since is no hindrance: only what this entry noted in it is taken out of its notes.
 * Null where there is nothing to take out of them.
 */
const notesBack = ({ kitchen }: Doing, { id, before, after }: StockTakeOp, only: Only): Op | null => {
  const now = kitchen.stockTakes.get(id);
  if (!now || !before || !after) return null;
  const noted = notedIn(before, after).filter((item) => only === null || only.has(item));
  const kept = Object.entries(now.seen).filter(([item]) => !noted.includes(item));
  const was = Object.entries(before.seen).filter(([item]) => noted.includes(item));
  const ended =
    only === null && before.finishedAt !== after.finishedAt && now.finishedAt === after.finishedAt;
  const seen = Object.fromEntries([...kept, ...was]);
  return {
    ...op('stockTake', id, now, { ...now, seen, ...(ended ? { finishedAt: before.finishedAt } : {}) }),
  };
};
const notedIn = (before: StockTake, after: StockTake): readonly Id[] =>
  Object.keys({ ...before.seen, ...after.seen }).filter((item) => before.seen[item] !== after.seen[item]);
type StockTakeOp = Extract<Op, { readonly kind: 'stockTake' }>;
type Only = ReadonlySet<Id> | null;

const takeBack = (doing: Doing, entry: JournalEntry, verb: 'undid' | 'redid', only: Only = null): Result => {
  const takes = entry.ops.filter(
    (one): one is StockTakeOp => one.kind === 'stockTake' && one.before !== null && one.after !== null,
  );
  const others = entry.ops.filter((one) => !takes.includes(one as StockTakeOp));
  const items = [
    ...others.flatMap(({ kind, id }) => (kind === 'item' ? [id] : [])),
    ...takes.flatMap(({ before, after }) => (before && after ? notedIn(before, after) : [])),
  ];
  const whole = only === null || items.every((id) => only.has(id));
  const ops = whole ? others : others.filter(({ kind, id }) => kind === 'item' && only.has(id));
  const changed = changedSince(doing.kitchen, { ops });
  if (changed.length > 0) {
    return refuse('changed-since', {
      ids: changed.map(({ id }) => id),
      about: [...new Set(changed.flatMap((each) => nameOf(each) ?? []))],
    });
  }
  const names = ops.flatMap((one) => (one.kind === 'item' ? (nameOf(one) ?? []) : []));
  return {
    verb,
    about: whole ? entry.about : [...new Set(names)],
    ops: [...invertChange({ ops }), ...takes.flatMap((take) => notesBack(doing, take, only) ?? [])],
    ...(whole ? { undoes: entry.id } : {}),
  };
};

/**
 * Takes an entry back, when every record it changed is still as it left it.
 * Refused: changed-since, with ids and names of what somebody changed after it.
 */
export const undo = (doing: Doing, entry: JournalEntry): Result => takeBack(doing, entry, 'undid');

/** Takes back what an entry did to these things alone. Refused: changed-since. */
export const undoOf = (doing: Doing, entry: JournalEntry, ids: readonly Id[]): Result =>
  takeBack(doing, entry, 'undid', new Set(ids));

/** Takes an `undid` entry back. Refused: changed-since; nothing-to-undo when it is another verb. */
export const redo = (doing: Doing, undone: JournalEntry): Result =>
  undone.verb === 'undid' ? takeBack(doing, undone, 'redid') : refuse('nothing-to-undo');

/** Entries that still stand: neither taken back nor a taking back that was itself taken back. */
export const standing = (newestFirst: readonly JournalEntry[]): readonly JournalEntry[] => {
  const takenBack = new Set<Id>();
  return newestFirst.filter((entry) => {
    if (takenBack.has(entry.id)) return false;
    if (entry.undoes !== undefined) takenBack.add(entry.undoes);
    return true;
  });
};

/** The newest entry to take back: that person's own, or anyone's when `personId` is left out. */
export const lastUndoable = (
  newestFirst: readonly JournalEntry[],
  personId?: Id | null,
): JournalEntry | null =>
  standing(newestFirst).find(
    (entry) =>
      entry.verb !== 'undid' &&
      entry.verb !== 'told' &&
      (personId === undefined || entry.personId === personId),
  ) ?? null;

/** The entry to do again: the newest standing one, when it is an undoing. */
export const lastRedoable = (
  newestFirst: readonly JournalEntry[],
  personId?: Id | null,
): JournalEntry | null => {
  const newest = standing(newestFirst).find(
    (entry) => entry.verb !== 'told' && (personId === undefined || entry.personId === personId),
  );
  return newest?.verb === 'undid' ? newest : null;
};
