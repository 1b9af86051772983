/** The browser's voice (W3C Web Speech API), held to its word: a sentence is spoken, or it is known that it was not. */

export const canSpeak = (): boolean => 'speechSynthesis' in window;

/** A sentence that has not begun by then is given to the screen reader instead. */
const BEGINS_WITHIN_MS = 900;
/** A voice that has spoken already may take a breath before the next sentence. */
const GOES_ON_WITHIN_MS = 3_000;
/** Slower than anybody sets a voice, in characters a second at rate 1; a sentence longer on its way is lost. */
const SLOWEST = 6;
const SPARE_MS = 4_000;

export interface MouthSettings {
  readonly rate: number;
  readonly volume: number;
  readonly lang: string;
  /** `voiceURI`; empty for the browser's own choice. */
  readonly voice: string;
}

export interface MouthTells {
  readonly sentence: (at: number) => void;
  readonly said: () => void;
  /** From this sentence on nothing was spoken. */
  readonly failed: (at: number) => void;
}

export interface Mouth {
  /** Speaks from a sentence on. Ends with `said` or `failed`, once, unless hushed or asked to say something else. */
  say(sentences: readonly string[], from: number, tells: MouthTells): void;
  hush(): void;
}

export const createMouth = (settings: () => MouthSettings): Mouth => {
  let turn = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const hush = (): void => {
    turn += 1;
    clearTimeout(timer);
    if (canSpeak()) speechSynthesis.cancel();
  };

  const say: Mouth['say'] = (sentences, from, tells) => {
    hush();
    const mine = turn;
    const failed = (at: number): void => {
      if (mine !== turn) return;
      hush();
      tells.failed(at);
    };
    if (!canSpeak()) {
      setTimeout(() => failed(from));
      return;
    }
    const one = (at: number): void => {
      const sentence = sentences[at];
      if (sentence === undefined) {
        turn += 1;
        clearTimeout(timer);
        tells.said();
        return;
      }
      const { rate, volume, lang, voice } = settings();
      const utterance = new SpeechSynthesisUtterance(sentence);
      const chosen = speechSynthesis.getVoices().find(({ voiceURI }) => voiceURI === voice);
      if (chosen !== undefined) utterance.voice = chosen;
      utterance.rate = rate;
      utterance.volume = volume;
      utterance.lang = lang;
      let isOver = false;
      const current = (): boolean => mine === turn && !isOver;
      utterance.onstart = () => {
        if (!current()) return;
        clearTimeout(timer);
        timer = setTimeout(
          () => failed(at),
          (sentence.length / SLOWEST / Math.max(0.1, rate)) * 1_000 + SPARE_MS,
        );
        tells.sentence(at);
      };
      utterance.onend = () => {
        if (!current()) return;
        isOver = true;
        clearTimeout(timer);
        one(at + 1);
      };
      utterance.onerror = () => {
        if (current()) failed(at);
      };
      timer = setTimeout(() => failed(at), at === from ? BEGINS_WITHIN_MS : GOES_ON_WITHIN_MS);
      try {
        speechSynthesis.speak(utterance);
      } catch {
        setTimeout(() => failed(at));
      }
    };
    one(from);
  };

  return { say, hush };
};
