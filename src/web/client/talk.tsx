/** The talk page: hold or press the button and talk, or type; the last answer stays on the screen. */
import { render } from 'preact';
import { useCallback, useEffect, useState } from 'preact/hooks';
import type { ConversationState } from '../../../shared/client/conversation.js';
import { Gate } from './gate.js';
import { Listening } from './listening.js';
import { Menu } from './menu.js';
import { Said } from './said.js';
import { useSettings } from './settings.js';
import { TalkButton } from './talk-button.js';
import { Timers } from './timers.js';
import { useTalk } from './use-talk.js';
import { canListen } from './voice/ear.js';

const states: Record<ConversationState, string> = {
  connecting: 'Connecting to the kitchen.',
  open: 'Connected.',
  lost: 'The connection was lost. Trying again.',
  closed: 'Not connected.',
};

const Talk = ({ lang }: { lang: string }) => {
  const [settings, change] = useSettings();
  const talk = useTalk(
    lang,
    settings,
    change,
    useCallback(() => undefined, []),
  );
  const [typed, setTyped] = useState('');
  const { say, send } = talk;

  useEffect(() => {
    const escape = (event: KeyboardEvent): void => {
      if (event.key === 'Escape') send({ on: 'stop' });
    };
    document.addEventListener('keydown', escape);
    return () => document.removeEventListener('keydown', escape);
  }, [send]);

  return (
    <>
      <p role="status" class={talk.connection === 'open' ? 'state' : 'state warn'}>
        {states[talk.connection]}
      </p>
      <main id="main">
        <h1>Talk to your kitchen</h1>
        <Said talk={talk} lang={lang} />
        <div role="status" class="hidden" id="announcement" lang={lang}>
          {talk.announcement}
        </div>
        <p role="alert" class="notice">
          {talk.notice}
        </p>
        {canListen() ? (
          <TalkButton talk={talk} way={settings.press} />
        ) : (
          <>
            {talk.voice.doing.is === 'ringing' && (
              <button type="button" class="talk" onClick={() => send({ on: 'stop' })}>
                Stop the ringing
              </button>
            )}
            <p class="hint">
              This browser does not listen. Type what you would say, or dictate to your keyboard.
            </p>
          </>
        )}
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
        <Timers timers={talk.timers} />
        <section aria-labelledby="before">
          <h2 id="before">What was said</h2>
          {talk.lines.length === 0 ? (
            <p>Nothing yet.</p>
          ) : (
            <ol class="transcript" lang={lang}>
              {talk.lines.map((line) => (
                <li key={line.id} class={line.who}>
                  <span class="who" lang="en">
                    {line.who === 'you' ? 'You: ' : 'Kitchen: '}
                  </span>
                  {line.text}
                </li>
              ))}
            </ol>
          )}
        </section>
        <Listening lang={lang} settings={settings} change={change} say={say} />
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
