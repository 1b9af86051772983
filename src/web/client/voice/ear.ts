/** The browser's recogniser (W3C Web Speech API), held to its word: it answers once, whatever its events do. */
import type { EarFailure, Hypothesis } from './machine.js';

interface RecognitionEvent {
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
  onstart: (() => void) | null;
  onresult: ((event: RecognitionEvent) => void) | null;
  onerror: ((event: { readonly error: string }) => void) | null;
  onend: (() => void) | null;
}

const recognitionMaker = (): (new () => Recognition) | undefined => {
  const global = window as unknown as Record<string, (new () => Recognition) | undefined>;
  return global['SpeechRecognition'] ?? global['webkitSpeechRecognition'];
};

export const canListen = (): boolean => recognitionMaker() !== undefined;

/** A recogniser that says nothing for so long after it was asked never will. */
const OPENS_WITHIN_MS = 8_000;
const ENDS_WITHIN_MS = 4_000;
/** The longest anybody talks at once; an ear forgotten open closes itself. */
const OPEN_AT_MOST_MS = 60_000;

export interface Ear {
  /** No more is coming; what was heard is delivered. */
  end(): void;
  /** Nothing of it is delivered. */
  abort(): void;
}

export interface EarHears {
  readonly open: () => void;
  readonly partial: (text: string) => void;
  /** Empty when nothing was made out. */
  readonly heard: (hypotheses: readonly Hypothesis[]) => void;
  readonly failed: (reason: EarFailure) => void;
}

const failureOf = (error: string): EarFailure =>
  error === 'not-allowed' || error === 'service-not-allowed'
    ? 'not-allowed'
    : error === 'audio-capture'
      ? 'no-microphone'
      : 'failed';

/** Listens for one utterance. Exactly one of `heard` and `failed` is called, once, unless it is aborted. */
export const openEar = (lang: string, hears: EarHears): Ear => {
  const Maker = recognitionMaker();
  let over = false;
  let isOpen = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let last: readonly Hypothesis[] = [];
  let failure: EarFailure | null = null;
  let recognition: Recognition | null = null;

  const finish = (tell: () => void): void => {
    if (over) return;
    over = true;
    clearTimeout(timer);
    tell();
  };
  const giveUp = (): void => {
    finish(() => {
      if (last.length > 0) hears.heard(last);
      else hears.failed('failed');
    });
    try {
      recognition?.abort();
    } catch {
      // It never began.
    }
  };
  const opened = (): void => {
    if (over || isOpen) return;
    isOpen = true;
    clearTimeout(timer);
    timer = setTimeout(end, OPEN_AT_MOST_MS);
    hears.open();
  };
  const end = (): void => {
    if (over) return;
    clearTimeout(timer);
    timer = setTimeout(giveUp, ENDS_WITHIN_MS);
    try {
      recognition?.stop();
    } catch {
      giveUp();
    }
  };

  const start = (): void => {
    if (Maker === undefined) throw new Error('no recogniser');
    recognition = new Maker();
    recognition.lang = lang;
    recognition.continuous = false;
    recognition.interimResults = true;
    recognition.maxAlternatives = 5;
    recognition.onstart = opened;
    recognition.onresult = (event) => {
      opened();
      const result = event.results[event.results.length - 1];
      if (over || result === undefined) return;
      last = Array.from({ length: result.length }, (_, index) => result[index])
        .filter((guess) => guess !== undefined)
        .map(({ transcript, confidence }) =>
          // Some browsers give 0 for "not known"; a recogniser without a confidence leaves it out.
          confidence > 0 ? { text: transcript, confidence: Math.min(1, confidence) } : { text: transcript },
        );
      if (!result.isFinal && last[0] !== undefined) hears.partial(last[0].text);
    };
    recognition.onerror = ({ error }) => {
      if (error !== 'no-speech' && error !== 'aborted') failure = failureOf(error);
      // The end that should follow an error does not always come.
      clearTimeout(timer);
      timer = setTimeout(giveUp, 500);
    };
    recognition.onend = () =>
      finish(() => {
        if (failure !== null && last.length === 0) hears.failed(failure);
        else hears.heard(last);
      });
    recognition.start();
  };

  timer = setTimeout(giveUp, OPENS_WITHIN_MS);
  try {
    start();
  } catch {
    // In its own time: whoever opens an ear is not answered before he has it.
    setTimeout(() => finish(() => hears.failed('failed')));
  }
  return {
    end,
    abort: () =>
      finish(() => {
        try {
          recognition?.abort();
        } catch {
          // It never began.
        }
      }),
  };
};
