/** What can go wrong in a store, in words the rest of the service can tell apart. */

export type StoreFault =
  /** No household of that id. */
  | 'no-such-household'
  /** The id is in use: a household, a device. */
  | 'taken'
  /** No device of that id in that household. */
  | 'no-such-device'
  /** An id that cannot be one: empty, too long, or with characters outside letters, digits and `_.:-`. */
  | 'bad-id'
  /** No room left where the data is kept. Nothing of the change was written; earlier changes are safe. */
  | 'disk-full'
  /** Another process held the store too long. Worth trying again. */
  | 'busy'
  /** The database cannot be reached or is going down. Worth trying again. */
  | 'unavailable'
  /**
   * It failed while being kept: whether it was is not known. Asked again with the same id, a turn is
   * answered from the record or done, never twice.
   */
  | 'not-known'
  /** The file is not one of ours, or is damaged; or a newer version of the program wrote it. */
  | 'unreadable'
  /** A rule of the data would be broken (a marker on two living items). A fault in the program. */
  | 'broken-rule'
  | 'unknown';

export class StoreError extends Error {
  override readonly name = 'StoreError';
  constructor(
    readonly fault: StoreFault,
    message: string,
    options?: { readonly cause?: unknown },
  ) {
    super(message, options);
  }
}

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';

/** SQLite result code names and PostgreSQL SQLSTATEs (appendix A of its manual), by their beginning. */
const FAULTS: readonly (readonly [RegExp, StoreFault, string])[] = [
  [/^(?:SQLITE_FULL|53100)/, 'disk-full', 'no room left on the disk; nothing of this change was kept'],
  [/^(?:SQLITE_BUSY|SQLITE_LOCKED|40001|40P01|55P03|57014)/, 'busy', 'the store is busy'],
  [/^(?:SQLITE_NOTADB|SQLITE_CORRUPT|SQLITE_IOERR)/, 'unreadable', 'the store file cannot be read'],
  [/^(?:SQLITE_CONSTRAINT|23)/, 'broken-rule', 'the change breaks a rule of the store'],
  [
    /^(?:SQLITE_CANTOPEN|08|57P|25P03|53300|ECONN|ENOTFOUND|ETIMEDOUT|EPIPE|EHOSTUNREACH|ENETUNREACH)/,
    'unavailable',
    'the store cannot be reached',
  ],
];

/** What a failed commit means: whether the server did it before it was lost, nobody knows. */
export const commitErrorOf = (error: unknown): StoreError => {
  const known = storeErrorOf(error);
  return known.fault === 'unavailable' || known.fault === 'unknown'
    ? new StoreError('not-known', 'it is not known whether this was kept', { cause: error })
    : known;
};

/** The database's own error as one of ours; what is ours already stays as it is. */
export const storeErrorOf = (error: unknown): StoreError => {
  if (error instanceof StoreError) return error;
  const code = codeOf(error);
  const found = FAULTS.find(([pattern]) => pattern.test(code));
  if (found) return new StoreError(found[1], found[2], { cause: error });
  const lost =
    error instanceof Error && /Connection terminated|not queryable|timeout exceeded/i.test(error.message);
  return lost
    ? new StoreError('unavailable', 'the store cannot be reached', { cause: error })
    : new StoreError(
        'unknown',
        `the store failed: ${error instanceof Error ? error.message : String(error)}`,
        { cause: error },
      );
};
