/** What is kept on this page: shown, and sent whenever the kitchen is there again. */
import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { ConversationState } from '../../../shared/client/conversation.js';
import type { TurnReply } from '../../../shared/wire/turn.js';
import { t } from './language.js';
import { sendKept, type Sent } from './sending.js';
import { unsentOf, wordsOf, type Unsent, type UnsentList } from './unsent.js';
import type { BoardState } from './use-board.js';
import type { Talk } from './use-talk.js';

/** What could not be taken just now is tried again after so long. */
const TRY_AGAIN_MS = 15_000;
/** A turn on its way is shown as kept only when it takes this long. */
const SHOWN_AFTER_MS = 4_000;

export const useUnsentList = (deviceId: string): UnsentList => useMemo(() => unsentOf(deviceId), [deviceId]);

/** What came of it, as sentences. */
export const toldOf = ({ turns, edits, refused, asked }: Sent, asksAnew: boolean): readonly string[] => [
  ...turns.flatMap(({ words, reply }) => [t('kept-sent', { words }), ...reply.speech.sentences]),
  ...(edits === 0 ? [] : [t('kept-edits-sent', { count: edits })]),
  ...refused.map(({ words, why }) => t('kept-not-taken', { words, why })),
  ...(asksAnew && asked.length > 0 ? [t('kept-waits', { count: asked.length })] : []),
];

/** One tab of the browser sends at a time, where the browser can see to that. */
const alone = async (work: () => Promise<void>): Promise<void> => {
  if (!('locks' in navigator)) return work();
  await navigator.locks.request('tellshelf.unsent', { ifAvailable: true }, async (lock) => {
    if (lock !== null) await work();
  });
};

export interface KeptOnPage {
  /** What is shown as kept: not what is just on its way. */
  readonly unsent: readonly Unsent[];
  readonly again: (id: string) => void;
  readonly forget: (id: string) => void;
  /** Without the kitchen: forgets what was kept last. False where there is nothing to take back here. */
  readonly takeBack: () => boolean;
}

export const useUnsent = (
  list: UnsentList,
  talk: Talk,
  { send, refresh, isOld }: BoardState,
  dayOf: (at: string) => string,
): KeptOnPage => {
  const [all, setAll] = useState<readonly Unsent[]>(() => list.all());
  const [, look] = useState(0);
  useEffect(() => list.listen(() => setAll(list.all())), [list]);
  const { connection, reply, turn, isOnItsWay, takeUp } = talk;
  const latest = useRef<{ connection: ConversationState; reply: TurnReply | null }>({ connection, reply });
  latest.current = { connection, reply };
  const busy = useRef(false);
  /** The reply that asked something while kept turns were sent: the rest of them wait for its answer. */
  const asking = useRef<string | null>(null);
  const told = useRef(new Set<string>());

  const flush = useCallback(async (): Promise<void> => {
    if (busy.current || list.all().length === 0) return;
    busy.current = true;
    try {
      await alone(async () => {
        const sent = await sendKept(
          list,
          { turn, edit: send },
          { now: () => new Date().toISOString(), today: dayOf },
          { onItsWay: isOnItsWay, byQuestion: latest.current.reply?.id === asking.current },
        );
        const last = sent.turns.at(-1)?.reply;
        if (last !== undefined) asking.current = last.expects.kind === 'open' ? null : last.id;
        const sentences = toldOf(
          sent,
          sent.asked.some(({ id }) => !told.current.has(id)),
        );
        for (const { id } of sent.asked) told.current.add(id);
        if (sentences.length > 0) takeUp(sent.turns, sentences);
        if (sent.edits > 0) await refresh();
      });
    } finally {
      busy.current = false;
    }
  }, [list, turn, send, dayOf, isOnItsWay, takeUp, refresh]);

  const waits = all.length;
  useEffect(() => {
    if (connection === 'open' || !isOld) void flush();
  }, [connection, isOld, reply, flush]);
  useEffect(() => {
    if (waits === 0) return;
    const shown = setTimeout(() => look((times) => times + 1), SHOWN_AFTER_MS);
    const timer = setInterval(() => {
      if (latest.current.connection === 'open') void flush();
    }, TRY_AGAIN_MS);
    return () => {
      clearTimeout(shown);
      clearInterval(timer);
    };
  }, [waits, flush]);

  const now = Date.now();
  return {
    unsent: all.filter(
      (one) => !isOnItsWay(one.id) || connection !== 'open' || now - Date.parse(one.at) > SHOWN_AFTER_MS,
    ),
    again: (id) => {
      list.change(id, { refused: null, wanted: true });
      void flush();
    },
    forget: (id) => list.drop(id),
    takeBack: () => {
      const last = list.all().at(-1);
      if (connection === 'open' || last === undefined || isOnItsWay(last.id)) return false;
      list.drop(last.id);
      takeUp([], [t('kept-taken-back', { words: wordsOf(last) })]);
      return true;
    },
  };
};
