/**
 * What the page's ear and mouth do, as one pure state machine: silent, listening, speaking or ringing, with
 * what waits its turn. Whatever happens (a press, a word, a failure, silence where an event should have come)
 * is an event; what is to be done about it comes back as effects. Nothing here touches the browser, so that
 * every order of events can be tried, late ones and twofold ones too.
 *
 * Two promises: an answer is always either spoken or put where a screen reader finds it; and what was told
 * unasked is acknowledged only once it was heard, a timer only by a person who stopped it.
 */

export interface Hypothesis {
  readonly text: string;
  readonly confidence?: number;
}

/** Sentences to say. `telling` is the id to acknowledge, where the service spoke first. */
export interface Saying {
  readonly sentences: readonly string[];
  readonly telling: string | null;
}

/** A timer or reminder that came due. It rings until a person stops it, on this device or another. */
export interface Ring {
  readonly id: string;
  readonly sentences: readonly string[];
}

/** A saying, and the sentence it goes on with. */
interface Place {
  readonly saying: Saying;
  readonly at: number;
}

export type Doing =
  | { readonly is: 'silent' }
  /** `cutAt`: the mark at which the answer was cut off to listen. */
  | { readonly is: 'listening'; readonly phase: 'opening' | 'open' | 'ending'; readonly cutAt: string | null }
  /** The answer to what was said is on its way. */
  | { readonly is: 'awaiting' }
  | ({ readonly is: 'speaking' } & Place)
  | { readonly is: 'ringing'; readonly ring: Ring };

export interface Voice {
  readonly doing: Doing;
  /** What is said once the present doing is over, first first. */
  readonly waiting: readonly Place[];
  readonly rings: readonly Ring[];
  /** Who reads answers out. */
  readonly reader: 'page' | 'screen-reader';
  /** The page's voice failed: answers go to the screen reader until it is asked for again. */
  readonly voiceFailed: boolean;
  /** The last answer, for saying it again. */
  readonly last: readonly string[];
}

export type VoiceEvent =
  | { readonly on: 'talk' }
  | { readonly on: 'talked' }
  | { readonly on: 'dropped' }
  | { readonly on: 'ear-open' }
  | { readonly on: 'ear-heard'; readonly hypotheses: readonly Hypothesis[] }
  | { readonly on: 'ear-failed'; readonly reason: EarFailure }
  /** Something said by typing or by a button. */
  | { readonly on: 'typed'; readonly text: string }
  /** No answer will come. */
  | { readonly on: 'no-answer' }
  /** The answer to what was said. */
  | { readonly on: 'answer'; readonly sentences: readonly string[] }
  /** The service spoke first, but not of a timer: a summary, a note. */
  | { readonly on: 'told'; readonly id: string; readonly sentences: readonly string[] }
  | { readonly on: 'due'; readonly id: string; readonly sentences: readonly string[] }
  /** Stopped on another device. */
  | { readonly on: 'stopped-elsewhere'; readonly id: string }
  | { readonly on: 'ring-again' }
  | { readonly on: 'sentence'; readonly at: number }
  | { readonly on: 'said' }
  | { readonly on: 'mouth-failed'; readonly at: number }
  | { readonly on: 'stop' }
  | { readonly on: 'again' }
  | { readonly on: 'reader'; readonly reader: Voice['reader'] };

export type EarFailure = 'not-allowed' | 'no-microphone' | 'failed';
export type Tone = 'open' | 'closed' | 'failed' | 'ring';
export type Notice = EarFailure | 'voice-failed';

export type Effect =
  | { readonly do: 'open-ear' }
  | { readonly do: 'end-ear' }
  | { readonly do: 'abort-ear' }
  | { readonly do: 'deliver'; readonly hypotheses: readonly Hypothesis[]; readonly cutAt: string | null }
  | { readonly do: 'speak'; readonly sentences: readonly string[]; readonly from: number }
  | { readonly do: 'hush' }
  /** To the screen reader. `telling` is acknowledged once the page is seen. */
  | { readonly do: 'announce'; readonly sentences: readonly string[]; readonly telling: string | null }
  | { readonly do: 'tone'; readonly tone: Tone }
  | { readonly do: 'ack'; readonly id: string }
  /** Send `ring-again` after a while. */
  | { readonly do: 'ring-later' }
  | { readonly do: 'notice'; readonly notice: Notice };

export interface Step {
  readonly voice: Voice;
  readonly effects: readonly Effect[];
}

export const silence = (reader: Voice['reader']): Voice => ({
  doing: { is: 'silent' },
  waiting: [],
  rings: [],
  reader,
  voiceFailed: false,
  last: [],
});

const same = (voice: Voice): Step => ({ voice, effects: [] });
const then = ({ voice, effects }: Step, ...more: Effect[]): Step => ({
  voice,
  effects: [...effects, ...more],
});
const first = (effects: readonly Effect[], step: Step): Step => ({
  voice: step.voice,
  effects: [...effects, ...step.effects],
});

const byVoice = (voice: Voice): boolean => voice.reader === 'page' && !voice.voiceFailed;

/** Takes up what waits: a ring first, then what was interrupted or queued. To be called when nothing is done. */
const goOn = (voice: Voice): Step => {
  const [ring] = voice.rings;
  if (ring !== undefined) return ringOut({ ...voice, doing: { is: 'ringing', ring } }, ring);
  const [next, ...waiting] = voice.waiting;
  if (next === undefined) return same({ ...voice, doing: { is: 'silent' } });
  const rest = next.saying.sentences.slice(next.at);
  if (rest.length === 0) return goOn({ ...voice, waiting });
  if (byVoice(voice))
    return {
      voice: { ...voice, doing: { is: 'speaking', ...next }, waiting },
      effects: [{ do: 'speak', sentences: next.saying.sentences, from: next.at }],
    };
  return first(
    [{ do: 'announce', sentences: rest, telling: next.saying.telling }],
    goOn({ ...voice, doing: { is: 'silent' }, waiting }),
  );
};

/** One round of a ring: its sound, and its words by the way answers are read. */
const ringOut = (voice: Voice, ring: Ring): Step => ({
  voice,
  effects: [
    { do: 'tone', tone: 'ring' },
    byVoice(voice)
      ? { do: 'speak', sentences: ring.sentences, from: 0 }
      : { do: 'announce', sentences: ring.sentences, telling: null },
    { do: 'ring-later' },
  ],
});

/** Cuts off what is spoken. A telling cut off is told again later; an answer is kept when asked to. */
const interrupt = (voice: Voice, keepAnswer: boolean): Step => {
  const { doing } = voice;
  if (doing.is === 'ringing') return { voice, effects: [{ do: 'hush' }] };
  if (doing.is !== 'speaking') return same(voice);
  const kept = keepAnswer || doing.saying.telling !== null;
  const at = doing.saying.telling !== null && !keepAnswer ? 0 : doing.at;
  return {
    voice: {
      ...voice,
      doing: { is: 'silent' },
      waiting: kept ? [{ saying: doing.saying, at }, ...voice.waiting] : voice.waiting,
    },
    effects: [{ do: 'hush' }],
  };
};

/** Answers not spoken yet make way for a newer one; tellings stay. */
const tellingsOnly = (waiting: readonly Place[]): readonly Place[] =>
  waiting.filter(({ saying }) => saying.telling !== null);

const markOf = (doing: Doing): string | null => (doing.is === 'speaking' ? `s${doing.at + 1}` : null);

const stopRing = (voice: Voice, ring: Ring): Step =>
  first(
    [{ do: 'hush' }, { do: 'ack', id: ring.id }],
    goOn({ ...voice, rings: voice.rings.filter(({ id }) => id !== ring.id), doing: { is: 'silent' } }),
  );

const talk = (voice: Voice): Step => {
  const { doing } = voice;
  if (doing.is === 'listening') return same(voice);
  // The one big button stops what rings: nobody should have to find another.
  if (doing.is === 'ringing') return stopRing(voice, doing.ring);
  const cutAt = markOf(doing);
  const cut = interrupt(voice, false);
  return then(
    { ...cut, voice: { ...cut.voice, doing: { is: 'listening', phase: 'opening', cutAt } } },
    { do: 'open-ear' },
  );
};

const hear = (voice: Voice, event: Extract<VoiceEvent, { on: 'ear-heard' | 'ear-failed' }>): Step => {
  const { doing } = voice;
  if (doing.is !== 'listening') return same(voice);
  if (event.on === 'ear-failed')
    return first(
      [
        { do: 'tone', tone: 'failed' },
        { do: 'notice', notice: event.reason },
      ],
      goOn({ ...voice, doing: { is: 'silent' } }),
    );
  return first(
    [
      { do: 'tone', tone: 'closed' },
      { do: 'deliver', hypotheses: event.hypotheses, cutAt: doing.cutAt },
    ],
    awaitAnswer(voice),
  );
};

/** Only a ring does not wait for an answer that is on its way. */
const awaitAnswer = (voice: Voice): Step =>
  voice.rings.length > 0
    ? goOn({ ...voice, doing: { is: 'silent' } })
    : same({ ...voice, doing: { is: 'awaiting' } });

const type = (voice: Voice, text: string): Step => {
  const cutAt = markOf(voice.doing);
  const deliver: Effect = { do: 'deliver', hypotheses: [{ text }], cutAt };
  // What rings goes on ringing: typing is no answer to it.
  if (voice.doing.is === 'ringing') return { voice, effects: [deliver] };
  const cut =
    voice.doing.is === 'listening'
      ? { voice, effects: [{ do: 'abort-ear' } as const] }
      : interrupt(voice, false);
  return first([...cut.effects, deliver], awaitAnswer(cut.voice));
};

/** Something to say now, or in its turn while the ear is open or something rings. */
const say = (voice: Voice, saying: Saying): Step => {
  const place: Place = { saying, at: 0 };
  const { doing } = voice;
  if (saying.telling === null) {
    const known = { ...voice, last: saying.sentences, waiting: tellingsOnly(voice.waiting) };
    if (doing.is === 'listening' || doing.is === 'ringing')
      return same({ ...known, waiting: [place, ...known.waiting] });
    const cut = interrupt(known, false);
    return first(cut.effects, goOn({ ...cut.voice, waiting: [place, ...cut.voice.waiting] }));
  }
  const isKnown =
    voice.waiting.some((one) => one.saying.telling === saying.telling) ||
    (doing.is === 'speaking' && doing.saying.telling === saying.telling);
  if (isKnown) return same(voice);
  const queued = { ...voice, waiting: [...voice.waiting, place] };
  return doing.is === 'silent' ? goOn(queued) : same(queued);
};

const due = (voice: Voice, ring: Ring): Step => {
  if (voice.rings.some(({ id }) => id === ring.id)) return same(voice);
  const known = { ...voice, rings: [...voice.rings, ring] };
  if (voice.doing.is === 'listening' || voice.doing.is === 'ringing') return same(known);
  const cut = interrupt(known, true);
  return first(cut.effects, goOn(cut.voice));
};

const failMouth = (voice: Voice, at: number): Step => {
  const { doing } = voice;
  const failed = { ...voice, voiceFailed: true };
  const told: readonly Effect[] = voice.voiceFailed ? [] : [{ do: 'notice', notice: 'voice-failed' }];
  if (doing.is === 'ringing')
    return {
      voice: failed,
      effects: [...told, { do: 'announce', sentences: doing.ring.sentences, telling: null }],
    };
  if (doing.is !== 'speaking') return same(failed);
  const last = doing.saying.sentences.length - 1;
  const rest: Place = { saying: doing.saying, at: Math.min(Math.max(at, 0), last) };
  return first(told, goOn({ ...failed, doing: { is: 'silent' }, waiting: [rest, ...failed.waiting] }));
};

const stop = (voice: Voice): Step => {
  const { doing } = voice;
  switch (doing.is) {
    case 'ringing':
      return stopRing(voice, doing.ring);
    case 'listening':
      return first(
        [{ do: 'abort-ear' }, { do: 'tone', tone: 'closed' }],
        goOn({ ...voice, doing: { is: 'silent' } }),
      );
    case 'speaking': {
      // Who stops a telling has heard what she wants of it.
      const ack: readonly Effect[] =
        doing.saying.telling === null ? [] : [{ do: 'ack', id: doing.saying.telling }];
      return {
        voice: { ...voice, doing: { is: 'silent' }, waiting: tellingsOnly(voice.waiting) },
        effects: [{ do: 'hush' }, ...ack],
      };
    }
    case 'awaiting':
      return goOn({ ...voice, doing: { is: 'silent' } });
    case 'silent':
      return same(voice);
  }
};

/** One event: the state after it, and what to do. */
export const step = (voice: Voice, event: VoiceEvent): Step => {
  const { doing } = voice;
  switch (event.on) {
    case 'talk':
      return talk(voice);
    case 'talked':
      return doing.is === 'listening' && doing.phase !== 'ending'
        ? { voice: { ...voice, doing: { ...doing, phase: 'ending' } }, effects: [{ do: 'end-ear' }] }
        : same(voice);
    case 'dropped':
      return doing.is === 'listening' ? stop(voice) : same(voice);
    case 'ear-open':
      return doing.is === 'listening' && doing.phase === 'opening'
        ? {
            voice: { ...voice, doing: { ...doing, phase: 'open' } },
            effects: [{ do: 'tone', tone: 'open' }],
          }
        : same(voice);
    case 'ear-heard':
    case 'ear-failed':
      return hear(voice, event);
    case 'typed':
      return type(voice, event.text);
    case 'no-answer':
      return doing.is === 'awaiting' ? goOn({ ...voice, doing: { is: 'silent' } }) : same(voice);
    case 'answer':
      return say(voice, { sentences: event.sentences, telling: null });
    case 'told':
      return say(voice, { sentences: event.sentences, telling: event.id });
    case 'due':
      return due(voice, { id: event.id, sentences: event.sentences });
    case 'stopped-elsewhere': {
      const rings = voice.rings.filter(({ id }) => id !== event.id);
      if (doing.is === 'ringing' && doing.ring.id === event.id)
        return first([{ do: 'hush' }], goOn({ ...voice, rings, doing: { is: 'silent' } }));
      return same({ ...voice, rings });
    }
    case 'ring-again':
      return doing.is === 'ringing' ? ringOut(voice, doing.ring) : same(voice);
    case 'sentence':
      return doing.is === 'speaking' ? same({ ...voice, doing: { ...doing, at: event.at } }) : same(voice);
    case 'said':
      if (doing.is !== 'speaking') return same(voice);
      return first(
        doing.saying.telling === null ? [] : [{ do: 'ack', id: doing.saying.telling }],
        goOn({ ...voice, doing: { is: 'silent' } }),
      );
    case 'mouth-failed':
      return failMouth(voice, event.at);
    case 'stop':
      return stop(voice);
    case 'again':
      return voice.last.length === 0 || doing.is === 'ringing'
        ? same(voice)
        : say(voice, { sentences: voice.last, telling: null });
    case 'reader': {
      const chosen = { ...voice, reader: event.reader, voiceFailed: false };
      if (event.reader === 'page') return same(chosen);
      const cut = interrupt(chosen, true);
      return doing.is === 'speaking'
        ? first(cut.effects, goOn(cut.voice))
        : { voice: chosen, effects: cut.effects };
    }
  }
};
