/** Carries out what the state machine asks for: ear, mouth, tones, live region. */
import { openEar, type Ear } from './ear.js';
import {
  silence,
  step,
  type Effect,
  type Hypothesis,
  type Notice,
  type Voice,
  type VoiceEvent,
} from './machine.js';
import { createMouth, type MouthSettings } from './mouth.js';
import { createTones } from './tones.js';

const RINGS_AGAIN_AFTER_MS = 8_000;

export interface DriverOptions {
  /** `hears`: the language that is listened for; `lang` is the answer's. */
  readonly settings: () => MouthSettings & { readonly reader: Voice['reader']; readonly hears: string };
  /** What was said, to be sent; the answer comes back as an event. */
  readonly deliver: (hypotheses: readonly Hypothesis[], cutAt: string | null) => void;
  readonly partial: (text: string) => void;
  readonly ack: (id: string) => void;
  /** Words for the screen reader's live region. */
  readonly announce: (text: string) => void;
  readonly notice: (notice: Notice) => void;
  readonly changed: (voice: Voice) => void;
}

export interface Driver {
  send(event: VoiceEvent): void;
  close(): void;
}

export const createDriver = (options: DriverOptions): Driver => {
  let voice = silence(options.settings().reader);
  let ear: Ear | null = null;
  let ringTimer: ReturnType<typeof setTimeout> | undefined;
  let closed = false;
  const mouth = createMouth(options.settings);
  const tones = createTones(() => options.settings().volume);

  /** What a screen reader is to read waits until the page is seen: a hidden page is not read. */
  const unread: Extract<Effect, { do: 'announce' }>[] = [];
  const readOut = (): void => {
    if (document.visibilityState !== 'visible') return;
    const now = unread.splice(0);
    if (now.length === 0) return;
    options.announce(now.flatMap(({ sentences }) => sentences).join(' '));
    for (const { telling } of now) if (telling !== null) options.ack(telling);
  };
  document.addEventListener('visibilitychange', readOut);

  const leave = (): void => send({ on: 'dropped' });
  window.addEventListener('pagehide', leave);

  const perform = (effect: Effect): void => {
    switch (effect.do) {
      case 'open-ear':
        options.partial('');
        ear = openEar(options.settings().hears, {
          open: () => send({ on: 'ear-open' }),
          partial: options.partial,
          heard: (hypotheses) => send({ on: 'ear-heard', hypotheses }),
          failed: (reason) => send({ on: 'ear-failed', reason }),
        });
        return;
      case 'end-ear':
        return ear?.end();
      case 'abort-ear':
        ear?.abort();
        ear = null;
        return options.partial('');
      case 'deliver':
        ear = null;
        options.partial('');
        return options.deliver(effect.hypotheses, effect.cutAt);
      case 'speak':
        return mouth.say(effect.sentences, effect.from, {
          sentence: (at) => send({ on: 'sentence', at }),
          said: () => send({ on: 'said' }),
          failed: (at) => send({ on: 'mouth-failed', at }),
        });
      case 'hush':
        clearTimeout(ringTimer);
        tones.stop();
        return mouth.hush();
      case 'announce':
        unread.push(effect);
        return readOut();
      case 'tone':
        return tones.play(effect.tone);
      case 'ack':
        return options.ack(effect.id);
      case 'ring-later':
        clearTimeout(ringTimer);
        ringTimer = setTimeout(() => send({ on: 'ring-again' }), RINGS_AGAIN_AFTER_MS);
        return;
      case 'notice':
        return options.notice(effect.notice);
    }
  };

  /** Events that effects cause wait until the effects before them are done. */
  const events: VoiceEvent[] = [];
  let busy = false;
  const send = (event: VoiceEvent): void => {
    if (closed) return;
    events.push(event);
    if (busy) return;
    busy = true;
    try {
      for (let next = events.shift(); next !== undefined; next = events.shift()) {
        const done = step(voice, next);
        voice = done.voice;
        for (const effect of done.effects) perform(effect);
      }
    } finally {
      busy = false;
    }
    options.changed(voice);
  };

  return {
    send,
    close: () => {
      closed = true;
      clearTimeout(ringTimer);
      document.removeEventListener('visibilitychange', readOut);
      window.removeEventListener('pagehide', leave);
      ear?.abort();
      tones.stop();
      mouth.hush();
    },
  };
};
