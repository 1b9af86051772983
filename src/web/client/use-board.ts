/** The board's record, followed as it changes, and what its buttons do. */
import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import { ServiceUnreachable, type ChangeDone } from '../../../shared/client/http.js';
import type { Board, BoardItem } from '../../../shared/wire/board.js';
import { keepBoard, keptBoard } from './kept.js';
import { plainly, service } from './service.js';

/** What came of a press, shown where it was. */
export interface Outcome {
  /** The card, or the part of the page, that was pressed. */
  readonly where: string;
  readonly text: string;
  readonly isError: boolean;
  /** Versions its changes made, for undoing them. */
  readonly versions: readonly number[];
  /** Cards that go with it stay in their places until the next press. */
  readonly gone: readonly BoardItem[];
}

export interface Acting {
  readonly where: string;
  readonly done: string;
  readonly work: readonly (() => Promise<ChangeDone>)[];
  readonly gone?: readonly BoardItem[];
}

export interface BoardState {
  readonly board: Board | null;
  /** The board is the last one kept: there is no network. */
  readonly isOld: boolean;
  readonly outcome: Outcome | null;
  /** True when all of it was done. */
  readonly act: (acting: Acting) => Promise<boolean>;
  readonly undo: () => Promise<void>;
  readonly refresh: () => Promise<void>;
}

export const useBoard = (): BoardState => {
  const [board, setBoard] = useState<Board | null>(keptBoard);
  const [isOld, setOld] = useState(true);
  const [outcome, setOutcome] = useState<Outcome | null>(null);
  const asked = useRef(0);

  const refresh = useCallback(async (): Promise<void> => {
    const mine = ++asked.current;
    try {
      const got = await service.call<Board>('GET', '/v1/kitchen/board');
      // An answer that was overtaken by a later one is old.
      if (mine !== asked.current) return;
      setBoard(got);
      setOld(false);
      keepBoard(got);
    } catch (error) {
      if (error instanceof ServiceUnreachable) setOld(true);
    }
  }, []);
  useEffect(() => {
    void refresh();
    const again = (): void => void refresh();
    window.addEventListener('online', again);
    return () => window.removeEventListener('online', again);
  }, [refresh]);

  const act = useCallback(
    async ({ where, done, work, gone = [] }: Acting): Promise<boolean> => {
      const versions: number[] = [];
      try {
        for (const one of work) versions.push((await one()).version);
        setOutcome({ where, text: done, isError: false, versions, gone });
      } catch (error) {
        const half = versions.length > 0 ? ` ${versions.length} of ${work.length} were done.` : '';
        setOutcome({ where, text: `${plainly(error)}${half}`, isError: true, versions, gone: [] });
        return false;
      } finally {
        await refresh();
      }
      return true;
    },
    [refresh],
  );

  const undo = useCallback(async (): Promise<void> => {
    if (outcome === null) return;
    try {
      for (const version of [...outcome.versions].reverse())
        await service.call('POST', '/v1/kitchen/undo', { version });
      setOutcome({ ...outcome, text: 'Undone.', isError: false, versions: [], gone: [] });
    } catch (error) {
      setOutcome({ ...outcome, text: plainly(error), isError: true, versions: [] });
    }
    await refresh();
  }, [outcome, refresh]);

  return { board, isOld, outcome, act, undo, refresh };
};
