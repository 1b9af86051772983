/**
 * Brings what SQLite has committed to the disk, without holding up the process.
 *
 * In write-ahead mode SQLite either syncs the log within every commit (synchronous=FULL), blocking
 * the thread that everything else runs on, or leaves it to the next checkpoint (NORMAL). Here commits
 * are made as NORMAL and the log is synced on a thread of Node's pool; whoever must not be answered
 * before his change is on the disk waits for it. One sync serves all that were committed before it
 * began, so many who write at once share it. Order is kept: the log is one file, and what is in it
 * is on the disk only with all that came before.
 */
import { close, fdatasync, fsync, open } from 'node:fs';
import { dirname } from 'node:path';
import { promisify } from 'node:util';
import { StoreError } from './errors.js';

const [openFile, syncData, syncAll, closeFile] = [open, fdatasync, fsync, close].map((work) =>
  promisify(work),
) as unknown as [
  (path: string, flags: string) => Promise<number>,
  (fd: number) => Promise<void>,
  (fd: number) => Promise<void>,
  (fd: number) => Promise<void>,
];

export interface DiskSync {
  /** Settles when everything committed before the call is on the disk. */
  reached(): Promise<void>;
  /** The same for what others wait for already; nothing is synced for its own sake. */
  othersReached(): Promise<void>;
  /** Once a sync has failed, nothing more is to be written: it could not be promised. */
  readonly failed: StoreError | null;
  close(): Promise<void>;
}

export interface DiskSyncOptions {
  /** Brings a file's data to the disk. Default: fdatasync. */
  readonly syncData?: (fd: number) => Promise<void>;
  /** Called once, when the disk has failed. */
  readonly onFailed?: (error: StoreError) => void;
}

/** @param path the database's; null for one in memory, which has no disk to reach. */
export const createDiskSync = (path: string | null, options: DiskSyncOptions = {}): DiskSync => {
  if (path === null) {
    const nothing = async (): Promise<void> => undefined;
    return { reached: nothing, othersReached: nothing, failed: null, close: nothing };
  }
  let log: Promise<number> | null = null;
  let running: Promise<void> | null = null;
  let next: Promise<void> | null = null;
  /** A failed sync may have lost pages for good, and a second would not tell: nothing is promised any more. */
  let failed: StoreError | null = null;

  /** The log is there as soon as anything was written, and stays as long as the store is open. */
  const openLog = async (): Promise<number> => {
    const folder = await openFile(dirname(path), 'r');
    const file = await openFile(`${path}-wal`, 'r');
    // Its name must be on the disk too.
    await syncAll(folder);
    await closeFile(folder);
    return file;
  };

  const sync = async (): Promise<void> => {
    if (failed) throw failed;
    try {
      log ??= openLog();
      await (options.syncData ?? syncData)(await log);
    } catch (cause) {
      failed ??= new StoreError(
        'not-known',
        'the disk does not keep what is written; what was asked last may or may not be there after a restart',
        { cause },
      );
      options.onFailed?.(failed);
      throw failed;
    }
  };

  const start = (): Promise<void> => {
    const mine = sync().finally(() => {
      running = null;
    });
    running = mine;
    mine.catch(() => undefined);
    return mine;
  };

  return {
    reached: () => {
      if (!running) return start();
      // The one under way began before this was committed; the next serves all who come meanwhile.
      next ??= running
        .catch(() => undefined)
        .then(() => {
          next = null;
          return start();
        });
      return next;
    },
    othersReached: async () => {
      await (next ?? running);
    },
    get failed() {
      return failed;
    },
    close: async () => {
      await next?.catch(() => undefined);
      await running?.catch(() => undefined);
      await log?.then(closeFile).catch(() => undefined);
    },
  };
};
