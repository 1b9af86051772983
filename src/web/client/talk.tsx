/** The talk page: hold anywhere to talk, or press space, or type. */
import { render } from 'preact';
import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import {
  openConversation,
  TurnRefused,
  type ConversationState,
  type OpenConversation,
} from '../../../shared/client/conversation.js';
import type { ServerMessage } from '../../../shared/wire/socket.js';
import type { TurnReply } from '../../../shared/wire/turn.js';
import { Gate } from './gate.js';
import { newId } from './ids.js';
import { Menu } from './menu.js';
import { useSettings } from './settings.js';
import { Timers, useTimers } from './timers.js';
import type { Hypothesis } from './types.js';
import { canListen, canSpeak, createMouth, listen, type Ear, type Mouth } from './voice.js';

interface Line {
  readonly id: string;
  readonly who: 'you' | 'kitchen';
  readonly text: string;
}

const states: Record<ConversationState, string> = {
  connecting: 'Connecting to the kitchen.',
  open: 'Connected.',
  lost: 'The connection was lost. Trying again.',
  closed: 'Not connected.',
};

/** A held press shorter than this is a press: it starts listening and the next press ends it. */
const HOLD_MS = 400;

const socketAddress = (): string => {
  const address = new URL('/v1/conversation', location.href);
  address.protocol = address.protocol === 'https:' ? 'wss:' : 'ws:';
  return address.href;
};

/** The thing this page was opened with, from a touched or photographed code. */
const touchedThing = (): string | null => (location.pathname.startsWith('/this/') ? location.href : null);

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const steps = [
  { label: 'Next step', say: 'next' },
  { label: 'Repeat step', say: 'repeat' },
  { label: 'Step back', say: 'back' },
] as const;

const Talk = ({ lang }: { lang: string }) => {
  const [settings, change] = useSettings();
  const [connection, setConnection] = useState<ConversationState>('connecting');
  const [lines, setLines] = useState<readonly Line[]>([]);
  const [reply, setReply] = useState<TurnReply | null>(null);
  const [hearing, setHearing] = useState(false);
  const [partial, setPartial] = useState('');
  const [notice, setNotice] = useState('');
  const [typed, setTyped] = useState('');
  const [answer, setAnswer] = useState('');
  const timers = useTimers();

  const talk = useRef<OpenConversation | null>(null);
  const ear = useRef<Ear | null>(null);
  const latest = useRef(settings);
  latest.current = settings;
  const mouth = useRef<Mouth | null>(null);
  mouth.current ??= createMouth(() => ({ rate: latest.current.rate, volume: latest.current.volume, lang }));
  const touched = useRef<string | null>(touchedThing());

  const add = useCallback((who: Line['who'], text: string) => {
    setLines((before) => [...before.slice(-199), { id: newId(), who, text }]);
  }, []);

  /** Says it by the page's voice, or leaves it to the live region: never both at once. */
  const speak = useCallback((sentences: readonly string[]): void => {
    if (latest.current.reader === 'page' && canSpeak()) void mouth.current?.say(sentences);
    else setAnswer(sentences.join(' '));
  }, []);

  const send = useCallback(
    async (hypotheses: readonly Hypothesis[], cutAt: string | null): Promise<void> => {
      add('you', hypotheses[0]?.text ?? '(nothing heard)');
      setAnswer('');
      setNotice('');
      const thing = touched.current;
      touched.current = null;
      try {
        const got = await talk.current?.turn({
          id: newId(),
          conversation: 'page',
          hypotheses: [...hypotheses],
          ...(cutAt === null ? {} : { cutAt }),
          ...(thing === null ? {} : { touched: thing }),
        });
        if (got === undefined) return;
        setReply(got);
        add('kitchen', got.speech.text);
        speak(got.speech.sentences);
      } catch (error) {
        const text =
          error instanceof TurnRefused
            ? `The kitchen could not take that. ${error.message}`
            : 'That was not sent. The connection closed.';
        setNotice(text);
      }
    },
    [add, speak],
  );

  const say = useCallback((text: string) => void send([{ text }], mouth.current?.hush() ?? null), [send]);

  const onMessage = useCallback(
    (message: Exclude<ServerMessage, { type: 'reply' }>) => {
      if (message.type === 'unasked') {
        add('kitchen', message.speech.text);
        speak(message.speech.sentences);
        talk.current?.send({ type: 'ack', id: message.id });
        timers.refresh();
      } else if (message.type === 'changed') timers.refresh();
      else if (message.type === 'error') setNotice(message.problem.detail ?? message.problem.title);
    },
    [add, speak, timers.refresh],
  );

  useEffect(() => {
    const open = openConversation({
      connect: () => new WebSocket(socketAddress(), 'tellshelf.v1'),
      onState: setConnection,
      onMessage,
    });
    talk.current = open;
    if (touched.current !== null) void send([{ text: "what's this" }], null);
    return () => open.close();
  }, [onMessage, send]);

  const startHearing = useCallback(() => {
    if (ear.current !== null) return;
    const cutAt = mouth.current?.hush() ?? null;
    setPartial('');
    setNotice('');
    ear.current = listen({
      lang,
      partial: (text) => {
        setPartial(text);
        talk.current?.send({ type: 'partial', conversation: 'page', text });
      },
      heard: (hypotheses) => {
        ear.current = null;
        setHearing(false);
        void send(hypotheses, cutAt);
      },
      failed: (reason) => {
        ear.current = null;
        setHearing(false);
        setNotice(
          reason === 'not-allowed'
            ? 'This page may not use the microphone. Allow it in the browser, or type below.'
            : 'The microphone did not work. Try again, or type below.',
        );
      },
    });
    setHearing(ear.current !== null);
  }, [lang, send]);

  const stopHearing = useCallback(() => ear.current?.stop(), []);

  // Hold to talk, by finger anywhere or by space bar; a short press starts, the next one ends.
  const pressedAt = useRef<number | null>(null);
  const press = useCallback(
    (at: number) => {
      if (ear.current !== null) {
        stopHearing();
        return;
      }
      pressedAt.current = at;
      startHearing();
    },
    [startHearing, stopHearing],
  );
  const release = useCallback(
    (at: number) => {
      const from = pressedAt.current;
      pressedAt.current = null;
      if (from !== null && at - from >= HOLD_MS) stopHearing();
    },
    [stopHearing],
  );

  useEffect(() => {
    if (!canListen()) return;
    const own = (target: EventTarget | null): boolean =>
      target instanceof Element &&
      target.closest('a,button,input,select,textarea,summary,label,[data-own-touch]') !== null;
    const keyDown = (event: KeyboardEvent): void => {
      if (event.key === 'Escape') {
        ear.current?.abort();
        ear.current = null;
        setHearing(false);
        mouth.current?.hush();
      }
      if (event.code !== 'Space' || event.repeat || own(event.target)) return;
      event.preventDefault();
      press(event.timeStamp);
    };
    const keyUp = (event: KeyboardEvent): void => {
      if (event.code === 'Space' && !own(event.target)) release(event.timeStamp);
    };
    const down = (event: PointerEvent): void => {
      if (event.isPrimary && event.button === 0 && !own(event.target)) press(event.timeStamp);
    };
    const up = (event: PointerEvent): void => release(event.timeStamp);
    document.addEventListener('keydown', keyDown);
    document.addEventListener('keyup', keyUp);
    document.addEventListener('pointerdown', down);
    document.addEventListener('pointerup', up);
    return () => {
      document.removeEventListener('keydown', keyDown);
      document.removeEventListener('keyup', keyUp);
      document.removeEventListener('pointerdown', down);
      document.removeEventListener('pointerup', up);
    };
  }, [press, release]);

  const choices = reply?.expects.choices ?? [];
  const yesNo = reply?.expects.kind === 'yes-no' && choices.length === 0;
  const buttons =
    reply?.expects.kind === 'step' && choices.length === 0
      ? steps
      : yesNo
        ? [
            { label: 'Yes', say: 'yes' },
            { label: 'No', say: 'no' },
          ]
        : choices;

  return (
    <>
      <p role="status" class={connection === 'open' ? 'state' : 'state warn'}>
        {states[connection]}
      </p>
      <main id="main">
        <h1>Talk to your kitchen</h1>
        {canListen() ? (
          <>
            <button
              type="button"
              class="talk"
              aria-pressed={hearing}
              onClick={() => (ear.current === null ? startHearing() : stopHearing())}
            >
              {hearing ? 'Listening. Press when done' : 'Talk'}
            </button>
            <p class="hint" id="talk-hint">
              Hold a finger anywhere on the page, or hold the space bar, and talk. A short press works too.
            </p>
          </>
        ) : (
          <p class="hint">This browser does not listen. Type what you would say.</p>
        )}
        <p class="partial" aria-hidden="true">
          {partial}
        </p>
        <form
          onSubmit={(event) => {
            event.preventDefault();
            if (typed.trim() === '') return;
            say(typed.trim());
            setTyped('');
          }}
        >
          <label for="typed">Or type it</label>
          <div class="row">
            <input
              id="typed"
              name="typed"
              autocomplete="off"
              maxLength={2000}
              value={typed}
              onInput={(event) => setTyped(event.currentTarget.value)}
            />
            <button type="submit">Send</button>
          </div>
        </form>
        <p role="alert" class="notice">
          {notice}
        </p>
        <div aria-live="polite" class="answer" id="answer">
          {answer}
        </div>
        {buttons.length > 0 && (
          <section aria-labelledby="choices">
            <h2 id="choices">You can say</h2>
            <ul class="choices">
              {buttons.map((choice) => (
                <li key={choice.say}>
                  <button type="button" onClick={() => say(choice.say)}>
                    {capital(choice.label)}
                  </button>
                </li>
              ))}
            </ul>
          </section>
        )}
        <Timers timers={timers.list} />
        <section aria-labelledby="said">
          <h2 id="said">What was said</h2>
          {lines.length === 0 ? (
            <p>Nothing yet.</p>
          ) : (
            <ol class="transcript" data-own-touch>
              {lines.map((line) => (
                <li key={line.id} class={line.who}>
                  <span class="who">{line.who === 'you' ? 'You: ' : 'Kitchen: '}</span>
                  {line.text}
                </li>
              ))}
            </ol>
          )}
        </section>
        <section aria-labelledby="hearing" data-own-touch>
          <h2 id="hearing">How answers are read</h2>
          {canSpeak() ? (
            <fieldset>
              <legend>Who reads answers</legend>
              <label>
                <input
                  type="radio"
                  name="reader"
                  checked={settings.reader === 'page'}
                  onChange={() => change({ reader: 'page' })}
                />
                This page
              </label>
              <label>
                <input
                  type="radio"
                  name="reader"
                  checked={settings.reader === 'screen-reader'}
                  onChange={() => {
                    mouth.current?.hush();
                    change({ reader: 'screen-reader' });
                  }}
                />
                My screen reader
              </label>
            </fieldset>
          ) : (
            <p>This browser has no voice. Your screen reader reads the answers.</p>
          )}
          <label for="rate">Rate: {settings.rate} times usual</label>
          <input
            id="rate"
            type="range"
            min="0.5"
            max="3"
            step="0.1"
            value={settings.rate}
            aria-valuetext={`${settings.rate} times the usual rate`}
            onInput={(event) => change({ rate: Number(event.currentTarget.value) })}
          />
          <label for="volume">Volume: {Math.round(settings.volume * 100)} percent</label>
          <input
            id="volume"
            type="range"
            min="0"
            max="1"
            step="0.1"
            value={settings.volume}
            aria-valuetext={`${Math.round(settings.volume * 100)} percent`}
            onInput={(event) => change({ volume: Number(event.currentTarget.value) })}
          />
        </section>
      </main>
    </>
  );
};

const Page = () => (
  <>
    <Menu here="talk" />
    <Gate>{(me) => <Talk lang={me.household.locale} />}</Gate>
  </>
);

const root = document.getElementById('page');
if (root !== null) render(<Page />, root);
if ('serviceWorker' in navigator) void navigator.serviceWorker.register('/service-worker.js');
