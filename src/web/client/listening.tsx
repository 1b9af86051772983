/** How answers are read and how the button is pressed, on this device. */
import { useEffect, useState } from 'preact/hooks';
import { t } from './language.js';
import type { ChangeSettings, Settings } from './settings.js';
import { canListen } from './voice/ear.js';
import { canSpeak } from './voice/mouth.js';
import type { PressWay } from './voice/press.js';

/** The browser's voices for a language; they come late in some browsers. */
const useVoices = (lang: string): readonly SpeechSynthesisVoice[] => {
  const [voices, set] = useState<readonly SpeechSynthesisVoice[]>([]);
  useEffect(() => {
    if (!canSpeak()) return;
    const read = (): void => {
      const start = lang.slice(0, 2).toLowerCase();
      set(speechSynthesis.getVoices().filter((voice) => voice.lang.toLowerCase().startsWith(start)));
    };
    read();
    speechSynthesis.addEventListener('voiceschanged', read);
    return () => speechSynthesis.removeEventListener('voiceschanged', read);
  }, [lang]);
  return voices;
};

const ways: readonly PressWay[] = ['both', 'tap', 'hold'];
const wishes = ['slower', 'faster', 'shorter', 'longer'] as const;

export const Listening = ({
  lang,
  settings,
  change,
  say,
}: {
  lang: string;
  settings: Settings;
  change: ChangeSettings;
  say: (text: string) => void;
}) => {
  const voices = useVoices(lang);
  return (
    <section aria-labelledby="hearing">
      <h2 id="hearing">{t('reading-heading')}</h2>
      {canSpeak() ? (
        <fieldset>
          <legend>{t('reading-who')}</legend>
          <label>
            <input
              type="radio"
              name="reader"
              checked={settings.reader === 'page'}
              onChange={() => change({ reader: 'page' })}
            />
            {t('reading-page')}
          </label>
          <label>
            <input
              type="radio"
              name="reader"
              checked={settings.reader === 'screen-reader'}
              onChange={() => change({ reader: 'screen-reader' })}
            />
            {t('talk-screen-reader')}
          </label>
        </fieldset>
      ) : (
        <p>{t('reading-no-voice')}</p>
      )}
      {canListen() && (
        <fieldset>
          <legend>{t('reading-button')}</legend>
          {ways.map((way) => (
            <label key={way}>
              <input
                type="radio"
                name="press"
                checked={settings.press === way}
                onChange={() => change({ press: way })}
              />
              {t(`reading-${way}`)}
            </label>
          ))}
        </fieldset>
      )}
      <p>{t('reading-yours')}</p>
      <ul class="choices">
        {wishes.map((wish) => (
          <li key={wish}>
            <button type="button" onClick={() => say(t(`say-${wish}`))}>
              {t(`reading-${wish}`)}
            </button>
          </li>
        ))}
      </ul>
      {voices.length > 1 && (
        <div class="field">
          <label for="voice">{t('reading-voice')}</label>
          <select
            id="voice"
            value={settings.voice}
            onChange={(event) => change({ voice: event.currentTarget.value })}
          >
            <option value="">{t('reading-browser-choice')}</option>
            {voices.map((voice) => (
              <option key={voice.voiceURI} value={voice.voiceURI}>
                {voice.name}
              </option>
            ))}
          </select>
        </div>
      )}
      <div class="field">
        <label for="volume">{t('reading-volume', { percent: Math.round(settings.volume * 100) })}</label>
        <input
          id="volume"
          type="range"
          min="0"
          max="1"
          step="0.1"
          value={settings.volume}
          aria-valuetext={t('reading-percent', { percent: Math.round(settings.volume * 100) })}
          onInput={(event) => change({ volume: Number(event.currentTarget.value) })}
        />
      </div>
    </section>
  );
};
