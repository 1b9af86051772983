/** A stand-in for the browser's Web Speech API whose events come when, and as often as, a test says. */
import type { Page } from 'playwright-core';

export interface FakeSpeech {
  /** What the recogniser makes out; null: it never says anything again once stopped. */
  readonly hears?: string | null;
  /** Milliseconds until it opens. */
  readonly opensAfter?: number;
  /** Every event comes twice. */
  readonly twice?: boolean;
  /** `none`: no event ever comes. */
  readonly voice?: 'works' | 'fails' | 'none';
  /** Milliseconds a sentence takes. */
  readonly sentence?: number;
}

export interface Logged {
  readonly at: number;
  readonly what: 'ear-start' | 'ear-stop' | 'ear-abort' | 'speak' | 'cancel' | 'down' | 'up';
  readonly text?: string;
}

export const fakeSpeech = async (page: Page, fake: FakeSpeech = {}): Promise<void> => {
  await page.addInitScript((how: FakeSpeech) => {
    const log: { at: number; what: string; text?: string }[] = [];
    const note = (what: string, text?: string): void =>
      void log.push({ at: performance.now(), what, ...(text === undefined ? {} : { text }) });
    const times = how.twice === true ? 2 : 1;
    const often = (tell: () => void): void => {
      for (let n = 0; n < times; n++) tell();
    };
    class Recognition {
      onstart: (() => void) | null = null;
      onresult: ((event: unknown) => void) | null = null;
      onerror: ((event: unknown) => void) | null = null;
      onend: (() => void) | null = null;
      #alive = true;
      start(): void {
        note('ear-start');
        setTimeout(() => often(() => this.#alive && this.onstart?.()), how.opensAfter ?? 20);
      }
      stop(): void {
        note('ear-stop');
        if (how.hears === null) return;
        setTimeout(() => {
          const guess = Object.assign([{ transcript: how.hears ?? 'where are the eggs', confidence: 0.9 }], {
            isFinal: true,
          });
          often(() => this.onresult?.({ results: [guess] }));
          often(() => this.onend?.());
        }, 20);
      }
      abort(): void {
        note('ear-abort');
        this.#alive = false;
        setTimeout(() => often(() => this.onend?.()), 20);
      }
    }
    const synthesis = new EventTarget() as EventTarget & Record<string, unknown>;
    let now: { cut: boolean } | null = null;
    Object.assign(synthesis, {
      speaking: false,
      getVoices: () => [],
      cancel: () => {
        note('cancel');
        if (now !== null) now.cut = true;
        now = null;
      },
      speak: (utterance: SpeechSynthesisUtterance) => {
        note('speak', utterance.text);
        const mine = { cut: false };
        now = mine;
        if (how.voice === 'none') return;
        if (how.voice === 'fails') {
          setTimeout(
            () =>
              often(() => utterance.onerror?.({ error: 'synthesis-failed' } as SpeechSynthesisErrorEvent)),
            10,
          );
          return;
        }
        setTimeout(() => often(() => utterance.onstart?.({} as SpeechSynthesisEvent)), 10);
        setTimeout(() => {
          if (!mine.cut) often(() => utterance.onend?.({} as SpeechSynthesisEvent));
        }, how.sentence ?? 60);
      },
    });
    const define = (name: string, value: unknown): void =>
      void Object.defineProperty(window, name, { value, configurable: true, writable: true });
    define('SpeechRecognition', Recognition);
    define('webkitSpeechRecognition', Recognition);
    define('speechSynthesis', synthesis);
    define(
      'SpeechSynthesisUtterance',
      class {
        onstart = null;
        onend = null;
        onerror = null;
        constructor(readonly text: string) {}
      },
    );
    define('speechLog', log);
    // What a screen reader would be given: each change of a live region, in order.
    const said: string[] = [];
    define('regionLog', said);
    document.addEventListener('DOMContentLoaded', () =>
      new MutationObserver((changes) => {
        for (const { target } of changes) {
          const element = target instanceof Element ? target : target.parentElement;
          const text = element?.closest('#announcement')?.textContent?.trim() ?? '';
          if (text !== '' && said.at(-1) !== text) said.push(text);
        }
      }).observe(document.body, { subtree: true, childList: true, characterData: true }),
    );
    for (const [event, what] of [
      ['pointerdown', 'down'],
      ['pointerup', 'up'],
      ['keydown', 'down'],
      ['keyup', 'up'],
    ] as const)
      document.addEventListener(event, () => note(what), true);
  }, fake);
};

export const logOf = (page: Page): Promise<readonly Logged[]> =>
  page.evaluate(() => (window as unknown as { speechLog: Logged[] }).speechLog);

/** What the live region for answers was given, in order. */
export const readOut = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => (window as unknown as { regionLog: string[] }).regionLog);
