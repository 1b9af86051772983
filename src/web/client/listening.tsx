/** How answers are read and how the button is pressed, on this device. */
import { useEffect, useState } from 'preact/hooks';
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

const ways: readonly { readonly way: PressWay; readonly label: string }[] = [
  { way: 'both', label: 'Hold it while talking, or press once to start and once when done' },
  { way: 'tap', label: 'Only press: once to start, once when done' },
  { way: 'hold', label: 'Only hold: short presses do nothing' },
];

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
              onChange={() => change({ reader: 'screen-reader' })}
            />
            My screen reader
          </label>
        </fieldset>
      ) : (
        <p>This browser has no voice. Your screen reader reads the answers.</p>
      )}
      {canListen() && (
        <fieldset>
          <legend>The Talk button</legend>
          {ways.map(({ way, label }) => (
            <label key={way}>
              <input
                type="radio"
                name="press"
                checked={settings.press === way}
                onChange={() => change({ press: way })}
              />
              {label}
            </label>
          ))}
        </fieldset>
      )}
      <p>These are yours wherever you talk to this kitchen; asking for them aloud does the same.</p>
      <ul class="choices">
        {['Slower', 'Faster', 'Shorter', 'Longer'].map((wish) => (
          <li key={wish}>
            <button type="button" onClick={() => say(wish.toLowerCase())}>
              {wish} answers
            </button>
          </li>
        ))}
      </ul>
      {voices.length > 1 && (
        <div class="field">
          <label for="voice">Voice</label>
          <select
            id="voice"
            value={settings.voice}
            onChange={(event) => change({ voice: event.currentTarget.value })}
          >
            <option value="">The browser’s own choice</option>
            {voices.map((voice) => (
              <option key={voice.voiceURI} value={voice.voiceURI}>
                {voice.name}
              </option>
            ))}
          </select>
        </div>
      )}
      <div class="field">
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
      </div>
    </section>
  );
};
