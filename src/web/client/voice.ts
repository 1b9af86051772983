/** The page's own ear and mouth: the W3C Web Speech API, where the browser has it. */
import type { Hypothesis } from './types.js';

interface RecognitionEvent {
  readonly resultIndex: number;
  readonly results: ArrayLike<
    ArrayLike<{ readonly transcript: string; readonly confidence: number }> & { readonly isFinal: boolean }
  >;
}
interface Recognition {
  lang: string;
  continuous: boolean;
  interimResults: boolean;
  maxAlternatives: number;
  start(): void;
  stop(): void;
  abort(): void;
  onresult: ((event: RecognitionEvent) => void) | null;
  onerror: ((event: { readonly error: string }) => void) | null;
  onend: (() => void) | null;
}

const recognitionMaker = (): (new () => Recognition) | undefined => {
  const global = window as unknown as Record<string, (new () => Recognition) | undefined>;
  return global['SpeechRecognition'] ?? global['webkitSpeechRecognition'];
};

export const canListen = (): boolean => recognitionMaker() !== undefined;
export const canSpeak = (): boolean => 'speechSynthesis' in window;

export interface Ear {
  /** No more is coming; what was heard is delivered. */
  stop(): void;
  abort(): void;
}

/** Listens for one utterance. `heard` is called once, with an empty list when nothing was made out. */
export const listen = (options: {
  readonly lang: string;
  readonly partial: (text: string) => void;
  readonly heard: (hypotheses: readonly Hypothesis[]) => void;
  readonly failed: (reason: string) => void;
}): Ear | null => {
  const Maker = recognitionMaker();
  if (Maker === undefined) return null;
  const recognition = new Maker();
  recognition.lang = options.lang;
  recognition.continuous = false;
  recognition.interimResults = true;
  recognition.maxAlternatives = 5;
  let last: readonly Hypothesis[] = [];
  let failure: string | null = null;
  let aborted = false;
  recognition.onresult = (event) => {
    const result = event.results[event.results.length - 1];
    if (result === undefined) return;
    const guesses = Array.from({ length: result.length }, (_, index) => result[index]).filter(
      (guess) => guess !== undefined,
    );
    last = guesses.map(({ transcript, confidence }) =>
      // Some browsers give 0 for "not known"; a recogniser without a confidence leaves it out.
      confidence > 0 ? { text: transcript, confidence: Math.min(1, confidence) } : { text: transcript },
    );
    if (!result.isFinal && last[0] !== undefined) options.partial(last[0].text);
  };
  recognition.onerror = (event) => {
    if (event.error !== 'no-speech' && event.error !== 'aborted') failure = event.error;
  };
  recognition.onend = () => {
    if (aborted) return;
    if (failure !== null) options.failed(failure);
    else options.heard(last);
  };
  recognition.start();
  return {
    stop: () => recognition.stop(),
    abort: () => {
      aborted = true;
      recognition.abort();
    },
  };
};

export interface Mouth {
  /** Speaks sentences in order; the promise ends when all are spoken or it was cut off. */
  say(sentences: readonly string[]): Promise<void>;
  /** Cuts off; the name of the mark reached, or null when nothing was being spoken. */
  hush(): string | null;
}

export const createMouth = (
  settings: () => { readonly rate: number; readonly volume: number; readonly lang: string },
): Mouth => {
  let reached: string | null = null;
  let turn = 0;
  return {
    say: async (sentences) => {
      if (!canSpeak()) return;
      const mine = ++turn;
      speechSynthesis.cancel();
      for (const [index, sentence] of sentences.entries()) {
        if (mine !== turn) return;
        await new Promise<void>((resolve) => {
          const utterance = new SpeechSynthesisUtterance(sentence);
          const { rate, volume, lang } = settings();
          utterance.rate = rate;
          utterance.volume = volume;
          utterance.lang = lang;
          utterance.onstart = () => {
            if (mine === turn) reached = `s${index + 1}`;
          };
          utterance.onend = () => resolve();
          utterance.onerror = () => resolve();
          speechSynthesis.speak(utterance);
        });
      }
      if (mine === turn) reached = null;
    },
    hush: () => {
      const mark = reached;
      reached = null;
      turn += 1;
      if (canSpeak()) speechSynthesis.cancel();
      return mark;
    },
  };
};
