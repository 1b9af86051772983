/** The board's record, followed as it changes, and what its buttons do. */
import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import { ServiceUnreachable, type ChangeDone } from '../../../shared/client/http.js';
import type { Board, BoardItem } from '../../../shared/wire/board.js';
import { newId } from './ids.js';
import { keepBoard, keptBoard } from './kept.js';
import { t } from './language.js';
import { isForLater } from './sending.js';
import { plainly, service } from './service.js';
import type { Edit, UnsentList } from './unsent.js';

/** What came of a press, shown where it was. */
export interface Outcome {
  /** The card, or the part of the page, that was pressed. */
  readonly where: string;
  readonly text: string;
  readonly isError: boolean;
  /** Versions its changes made, for undoing them. */
  readonly versions: readonly number[];
  /** Changes that are kept here until the kitchen is reached; undone by forgetting them. */
  readonly kept: readonly string[];
  /** Cards that go with it stay in their places until the next press. */
  readonly gone: readonly BoardItem[];
}

export interface Acting {
  readonly where: string;
  /** Where a refusal is shown, when not there too. */
  readonly wrongAt?: string;
  /** What was done, in words. */
  readonly done: string;
  readonly edits: readonly Edit[];
  /** What each of several edits did, in words. */
  readonly doneEach?: readonly string[];
  /** The foods it is about, by id. */
  readonly about?: readonly string[];
  readonly gone?: readonly BoardItem[];
}

export interface BoardState {
  readonly board: Board | null;
  /** The board is the last one kept: there is no network. */
  readonly isOld: boolean;
  readonly outcome: Outcome | null;
  /** True when all of it was done, or is kept here until it can be. */
  readonly act: (acting: Acting) => Promise<boolean>;
  readonly undo: () => Promise<void>;
  readonly refresh: () => Promise<void>;
  /** Sends one change; the same id twice does it once. */
  readonly send: (edit: Edit, id: string) => Promise<ChangeDone>;
}

export const useBoard = (unsent: UnsentList, dayOf: (at: string) => string): BoardState => {
  const [board, setBoard] = useState<Board | null>(keptBoard);
  const [isOld, setOld] = useState(true);
  const [outcome, setOutcome] = useState<Outcome | null>(null);
  const asked = useRef(0);
  /** The version that each change made, by its id. */
  const made = useRef(new Map<string, number>());
  const send = useCallback(async ({ method, path, body }: Edit, id: string): Promise<ChangeDone> => {
    const change = await service.call<ChangeDone>(method, path, body, id);
    made.current.set(id, change.version);
    return change;
  }, []);

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
    async ({
      where,
      wrongAt = where,
      done,
      edits,
      doneEach,
      about = [],
      gone = [],
    }: Acting): Promise<boolean> => {
      const versions: number[] = [];
      const kept: string[] = [];
      const keep = (edit: Edit, id: string, index: number): void => {
        const at = new Date().toISOString();
        unsent.add({
          kind: 'edit',
          id,
          at,
          day: dayOf(at),
          edit,
          done: doneEach?.[index] ?? done,
          about: doneEach === undefined ? about : about.slice(index, index + 1),
          refused: null,
          wanted: false,
        });
        kept.push(id);
      };
      try {
        for (const [index, edit] of edits.entries()) {
          const key = newId();
          // What follows something that is kept is kept too: they stay in their order.
          if (kept.length > 0) {
            keep(edit, key, index);
            continue;
          }
          try {
            versions.push((await send(edit, key)).version);
          } catch (error) {
            if (!isForLater(error)) throw error;
            keep(edit, key, index);
          }
        }
        const text = kept.length > 0 ? t('kept-done', { done }) : done;
        setOutcome({ where, text, isError: false, versions, kept, gone: kept.length > 0 ? [] : gone });
      } catch (error) {
        const half =
          versions.length > 0 ? ` ${t('some-were-done', { done: versions.length, all: edits.length })}` : '';
        setOutcome({
          where: wrongAt,
          text: `${plainly(error)}${half}`,
          isError: true,
          versions,
          kept,
          gone: [],
        });
        return false;
      } finally {
        await refresh();
      }
      return true;
    },
    [dayOf, refresh, send, unsent],
  );

  const undo = useCallback(async (): Promise<void> => {
    if (outcome === null) return;
    try {
      for (const id of outcome.kept) unsent.drop(id);
      // What was kept may have been sent meanwhile.
      const sent = outcome.kept.flatMap((id) => made.current.get(id) ?? []);
      for (const version of [...outcome.versions, ...sent].reverse())
        await service.call('POST', '/v1/kitchen/undo', { version });
      setOutcome({ ...outcome, text: t('undone'), isError: false, versions: [], kept: [], gone: [] });
    } catch (error) {
      setOutcome({ ...outcome, text: plainly(error), isError: true, versions: [], kept: [] });
    }
    await refresh();
  }, [outcome, refresh, unsent]);

  return { board, isOld, outcome, act, undo, refresh, send };
};
