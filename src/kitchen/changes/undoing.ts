/** Taking back, and doing again after all. */
import type { Change, Id, JournalEntry, Op, RecordKind, Records } from '../model.js';
import { refuse, type Doing, type Result } from '../doing.js';
import { changedSince, invertChange } from '../apply.js';

const nameOf = (op: Op): string | null => {
  const record = (op.after ?? op.before) as Records[RecordKind] | null;
  return record && 'name' in record ? record.name : null;
};

const takeBack = (doing: Doing, entry: JournalEntry, verb: 'undid' | 'redid'): Result => {
  const changed = changedSince(doing.kitchen, entry);
  if (changed.length > 0) {
    return refuse('changed-since', {
      ids: changed.map(({ id }) => id),
      about: [...new Set(changed.flatMap((each) => nameOf(each) ?? []))],
    });
  }
  const change: Change = { verb, about: entry.about, ops: invertChange(entry), undoes: entry.id };
  return change;
};

/**
 * Takes an entry back, when every record it changed is still as it left it.
 * Refused: changed-since, with ids and names of what somebody changed after it.
 */
export const undo = (doing: Doing, entry: JournalEntry): Result => takeBack(doing, entry, 'undid');

/** Takes an `undid` entry back. Refused: changed-since; nothing-to-undo when it is another verb. */
export const redo = (doing: Doing, undone: JournalEntry): Result =>
  undone.verb === 'undid' ? takeBack(doing, undone, 'redid') : refuse('nothing-to-undo');

/** Entries that still stand: neither taken back nor a taking back that was itself taken back. */
const standing = (newestFirst: readonly JournalEntry[]): readonly JournalEntry[] => {
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
