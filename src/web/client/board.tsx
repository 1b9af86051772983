/** The board: the last answer, tonight, and every place; one page to leave open on the fridge door. */
import { render } from 'preact';
import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { ConversationState } from '../../../shared/client/conversation.js';
import type { Me } from '../../../shared/client/http.js';
import type { BoardItem } from '../../../shared/wire/board.js';
import { AddForm } from './add-form.js';
import { EditItem } from './edit-item.js';
import { Gate } from './gate.js';
import { KeptHere } from './kept-here.js';
import { t } from './language.js';
import { Listening } from './listening.js';
import { Menu } from './menu.js';
import { Notices } from './notices.js';
import { Places } from './places.js';
import { Said } from './said.js';
import { ReaderQuestion } from './reader-question.js';
import { useSettings } from './settings.js';
import { TalkButton } from './talk-button.js';
import { Tonight } from './tonight.js';
import { useBoard } from './use-board.js';
import { useRoom } from './use-room.js';
import { useTalk } from './use-talk.js';
import { useUnsent, useUnsentList } from './use-unsent.js';
import { canListen } from './voice/ear.js';
import { clockTime } from './words.js';

const stateInWords = (state: ConversationState): string => (state === 'open' ? '' : t(`talk-${state}`));

/** Keeps the screen on while steps are read or something is timed, where the browser can. */
const useScreenOn = (wanted: boolean): void => {
  useEffect(() => {
    if (!wanted || !('wakeLock' in navigator)) return;
    let lock: WakeLockSentinel | null = null;
    let over = false;
    const ask = (): void => {
      if (document.visibilityState !== 'visible') return;
      navigator.wakeLock.request('screen').then(
        (got) => {
          if (over) void got.release();
          else lock = got;
        },
        () => undefined,
      );
    };
    ask();
    document.addEventListener('visibilitychange', ask);
    return () => {
      over = true;
      document.removeEventListener('visibilitychange', ask);
      void lock?.release();
    };
  }, [wanted]);
};

const Correct = ({
  item,
  places,
  state,
  close,
}: Pick<Parameters<typeof EditItem>[0], 'item' | 'places' | 'state' | 'close'>) => {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog ref={dialog} aria-labelledby="edit-heading" onClose={close}>
      <EditItem item={item} places={places} state={state} close={() => dialog.current?.close()} />
    </dialog>
  );
};

const Board = ({ me }: { me: Me }) => {
  const { locale, timeZone } = me.household;
  const [settings, change] = useSettings();
  const list = useUnsentList(me.device.id);
  const dayOf = useMemo(() => {
    const day = new Intl.DateTimeFormat('en-CA', { timeZone });
    return (at: string): string => day.format(new Date(at));
  }, [timeZone]);
  const state = useBoard(list, dayOf);
  const { board, refresh } = state;
  const talk = useTalk(
    locale,
    settings,
    change,
    useCallback(() => void refresh(), [refresh]),
    list,
    dayOf,
  );
  const { unsent, again, forget, takeBack } = useUnsent(list, talk, state, dayOf);
  const [typed, setTyped] = useState('');
  const [correcting, correct] = useState<BoardItem | null>(null);
  const { say, send, connection } = talk;

  useEffect(() => {
    const escape = (event: KeyboardEvent): void => {
      if (event.key === 'Escape') send({ on: 'stop' });
    };
    document.addEventListener('keydown', escape);
    return () => document.removeEventListener('keydown', escape);
  }, [send]);
  useEffect(() => {
    if (connection === 'open') void refresh();
  }, [connection, refresh]);
  useRoom(talk.lines.findLast(({ who }) => who !== 'you')?.id);
  useScreenOn(talk.reply?.expects.kind === 'step' || talk.timers.length > 0);

  const isRinging = talk.voice.doing.is === 'ringing';
  return (
    <>
      <main id="main" class="board">
        <h1 class="hidden">{me.household.name}</h1>
        <Said talk={talk} undo={() => takeBack() || say(t('say-undo'))} />
        <div
          role="status"
          class="hidden"
          id="announcement"
          lang={talk.lines.findLast(({ who }) => who !== 'you')?.lang}
        >
          {talk.announcement}
        </div>
        <p role="status" class="state warn">
          {stateInWords(connection)}
          {state.isOld && board !== null && connection !== 'open'
            ? ` ${t('talk-record-as-of', { time: clockTime(board.at, locale, timeZone) })}`
            : ''}
        </p>
        <p role="alert" class="notice">
          {talk.notice}
        </p>
        <KeptHere
          unsent={unsent}
          now={new Date().toISOString()}
          dayOf={dayOf}
          when={(at) =>
            new Intl.DateTimeFormat(locale, {
              weekday: 'long',
              hour: 'numeric',
              minute: '2-digit',
              timeZone,
            }).format(new Date(at))
          }
          again={again}
          forget={forget}
        />
        <ReaderQuestion change={change} />
        {board === null ? (
          <p>{t('one-moment')}</p>
        ) : (
          <>
            <Tonight board={board} state={state} correct={correct} unsent={unsent} />
            <AddForm board={board} state={state} />
            <Places board={board} state={state} correct={correct} unsent={unsent} />
          </>
        )}
        <details>
          <summary>{t('talk-said-here')}</summary>
          {talk.lines.length === 0 ? (
            <p>{t('talk-nothing-yet')}</p>
          ) : (
            <ol class="transcript">
              {talk.lines.map((line) => (
                <li key={line.id} class={line.who}>
                  <span class="who">{t(`talk-${line.who}`)}</span> <span lang={line.lang}>{line.text}</span>
                </li>
              ))}
            </ol>
          )}
        </details>
        <Listening lang={locale} settings={settings} change={change} say={say} />
        <Notices />
        {correcting !== null && board !== null && (
          <Correct item={correcting} places={board.places} state={state} close={() => correct(null)} />
        )}
      </main>
      <section class="ear" aria-label={t('talk-ear')}>
        {canListen() ? (
          <TalkButton talk={talk} way={settings.press} />
        ) : isRinging ? (
          <button type="button" class="talk" onClick={() => send({ on: 'stop' })}>
            {t('talk-stop-ringing')}
          </button>
        ) : (
          <p class="hint">{t('talk-cannot-listen')}</p>
        )}
        <form
          class="row"
          onSubmit={(event) => {
            event.preventDefault();
            if (typed.trim() === '') return;
            say(typed.trim());
            setTyped('');
          }}
        >
          <label for="typed" class="hidden">
            {t('talk-type')}
          </label>
          <input
            id="typed"
            name="typed"
            autocomplete="off"
            placeholder={t('talk-type')}
            maxLength={2000}
            value={typed}
            onInput={(event) => setTyped(event.currentTarget.value)}
          />
          <button type="submit">{t('talk-send')}</button>
        </form>
      </section>
    </>
  );
};

const Page = () => (
  <Gate here="board">
    {(me) => (
      <>
        <Menu here="board" household={me.household.name} />
        <Board me={me} />
      </>
    )}
  </Gate>
);

const root = document.getElementById('page');
if (root !== null) render(<Page />, root);
