/** The one big button: hold or press it to talk; while something rings it stops that. */
import { useEffect, useRef } from 'preact/hooks';
import { t } from './language.js';
import type { Talk } from './use-talk.js';
import { attachPress, type PressWay } from './voice/press.js';
import type { Voice } from './voice/machine.js';

const words = ({ doing }: Voice): string => {
  switch (doing.is) {
    case 'listening':
      return doing.phase === 'opening'
        ? t('talk-opening')
        : doing.phase === 'ending'
          ? t('talk-heard')
          : t('talk-listening');
    case 'ringing':
      return t('talk-stop-ringing');
    default:
      return t('talk-button');
  }
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
      tooShort: () => setNotice(t('talk-hint-hold')),
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
        {t(`talk-hint-${way}`)}
      </p>
    </>
  );
};
