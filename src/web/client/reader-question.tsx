/** The first question of all: whether answers go to this page's voice or to the listener's own screen reader. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { t } from './language.js';
import { isSettled, type ChangeSettings, type Settings } from './settings.js';
import { canSpeak } from './voice/mouth.js';

const readers = [
  ['talk-own-voice', 'page'],
  ['talk-screen-reader', 'screen-reader'],
] as const satisfies readonly (readonly [string, Settings['reader']])[];

/** Asked until it is answered, once in a browser: at the gate, and on the board where it was passed over there. */
export const ReaderQuestion = ({ change }: { change: ChangeSettings }) => {
  const [asks] = useState(() => canSpeak() && !isSettled());
  const [chosen, choose] = useState<Settings['reader'] | null>(null);
  const said = useRef<HTMLParagraphElement>(null);
  // The pressed button is gone: whoever goes by ear or keyboard goes on from what came of it.
  useEffect(() => {
    if (chosen !== null) said.current?.focus();
  }, [chosen]);
  if (!asks) return null;
  if (chosen !== null)
    return (
      <p class="outcome" tabIndex={-1} ref={said}>
        {t(`talk-read-by-${chosen}`)}
      </p>
    );
  return (
    <section aria-labelledby="first-question" class="first">
      <h2 id="first-question">{t('talk-first-question')}</h2>
      <ul class="choices">
        {readers.map(([label, reader]) => (
          <li key={reader}>
            <button
              type="button"
              onClick={() => {
                change({ reader });
                choose(reader);
              }}
            >
              {t(label)}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
};
