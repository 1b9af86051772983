/** The one big button: hold or press it to talk; while something rings it stops that. */
import { useEffect, useRef } from 'preact/hooks';
import type { Talk } from './use-talk.js';
import { attachPress, type PressWay } from './voice/press.js';
import type { Voice } from './voice/machine.js';

const words = ({ doing }: Voice): string => {
  switch (doing.is) {
    case 'listening':
      return doing.phase === 'opening'
        ? 'One moment'
        : doing.phase === 'ending'
          ? 'Heard'
          : 'Listening. Press when done';
    case 'ringing':
      return 'Stop the ringing';
    default:
      return 'Talk';
  }
};

const hints: Readonly<Record<PressWay, string>> = {
  both: 'Hold the button and talk, or press it once to start and once when done.',
  hold: 'Hold the button while you talk.',
  tap: 'Press the button once to start and once when done.',
};

export const TalkButton = ({ talk, way }: { talk: Talk; way: PressWay }) => {
  const button = useRef<HTMLButtonElement>(null);
  const latest = useRef({ voice: talk.voice, way });
  latest.current = { voice: talk.voice, way };
  const { send, setNotice } = talk;
  useEffect(() => {
    if (button.current === null) return;
    return attachPress(button.current, {
      way: () => latest.current.way,
      isListening: () => latest.current.voice.doing.is === 'listening',
      talk: () => send({ on: 'talk' }),
      talked: () => send({ on: 'talked' }),
      dropped: () => send({ on: 'dropped' }),
      tooShort: () => setNotice(hints.hold),
    });
  }, [send, setNotice]);
  return (
    <>
      <button
        ref={button}
        type="button"
        class="talk"
        data-doing={talk.voice.doing.is}
        aria-describedby="talk-hint"
      >
        {words(talk.voice)}
      </button>
      <p class={talk.lines.length > 0 ? 'hidden' : 'hint'} id="talk-hint">
        {hints[way]}
      </p>
    </>
  );
};
