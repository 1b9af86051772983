/** One conversation of this page with its kitchen: the socket, the ear and the mouth, and what was said last. */
import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import {
  ConversationClosed,
  openConversation,
  TurnRefused,
  type ConversationState,
  type OpenConversation,
} from '../../../shared/client/conversation.js';
import type { Reminder } from '../../../shared/client/http.js';
import type { ServerMessage } from '../../../shared/wire/socket.js';
import type { TurnReply, TurnRequest } from '../../../shared/wire/turn.js';
import { newId } from './ids.js';
import { keepRung, keepTalk, keptBoard, keptRung, keptTalk } from './kept.js';
import { t } from './language.js';
import { isForLater } from './sending.js';
import { closeNotice } from './notices.js';
import { service } from './service.js';
import type { ChangeSettings, Settings } from './settings.js';
import type { UnsentList } from './unsent.js';
import { createDriver, type Driver } from './voice/driver.js';
import { silence, type Hypothesis, type Notice, type Voice } from './voice/machine.js';

export interface Line {
  readonly id: string;
  /** `page`: what the page says itself, without the kitchen. */
  readonly who: 'you' | 'kitchen' | 'page';
  readonly text: string;
  /** The language of an answer: the household's, or another that it was asked in. */
  readonly lang?: string;
}

interface Kept {
  readonly lines: readonly Line[];
  readonly reply: TurnReply | null;
}

export interface Talk {
  readonly connection: ConversationState;
  readonly voice: Voice;
  /** What was said and answered on this page, oldest first. */
  readonly lines: readonly Line[];
  readonly reply: TurnReply | null;
  readonly partial: string;
  /** Something that did not work, in a sentence. */
  readonly notice: string;
  /** What the screen reader is to read now. */
  readonly announcement: string;
  readonly timers: readonly Reminder[];
  /** Says it as if it had been spoken. */
  readonly say: (text: string) => void;
  readonly send: Driver['send'];
  readonly setNotice: (notice: string) => void;
  /** Sends a turn that was kept; it resolves with the reply, across reconnects. */
  readonly turn: (request: TurnRequest) => Promise<TurnReply>;
  /** True while a turn is on its way. */
  readonly isOnItsWay: (id: string) => boolean;
  /** Takes up what came of sending what was kept, and says it. */
  readonly takeUp: (
    turns: readonly { readonly id: string; readonly words: string; readonly reply: TurnReply }[],
    sentences: readonly string[],
  ) => void;
}

const socketAddress = (): string => {
  const address = new URL('/v1/conversation', location.href);
  address.protocol = address.protocol === 'https:' ? 'wss:' : 'ws:';
  return address.href;
};

/** Messages that say what did not work. */
const notices: Readonly<Record<Notice, string>> = {
  'not-allowed': 'talk-mic-not-allowed',
  'no-microphone': 'talk-no-microphone',
  failed: 'talk-mic-failed',
  'voice-failed': 'talk-voice-failed',
};

/** A ring of this page's own, for when the kitchen cannot be reached; shaped as the service's ids are. */
const ringOf = (reminderId: string): string => `here.${reminderId}.due`;
const isOurs = (ringId: string): boolean => ringId.startsWith('here.');
/** What was due longer ago than this was most likely heard on another device. */
const RINGS_LATE_MS = 60 * 60_000;
/** Browsers count waiting in 32 bits of milliseconds. */
const WAITS_AT_MOST_MS = 24 * 24 * 60 * 60_000;

/** A live region is read when it changes; left full, a reader meets its words a second time on the page. */
const READ_WITHIN_MS = 10_000;

/** The thing this page was opened with, from a touched or photographed code. */
const touchedThing = (): string | null => (location.pathname.startsWith('/this/') ? location.href : null);

/** How fast and how loud the listener's record asks for, and in which language, from the answer's own SSML. */
const paceOf = (
  ssml: string,
): { readonly rate: number; readonly loudness: number; readonly lang: string | null } => {
  const rate = /<prosody rate="([\d.]+)%"/.exec(ssml)?.[1];
  const volume = /<prosody [^>]*volume="([a-z-]+)"/.exec(ssml)?.[1] ?? 'medium';
  const loudness: Readonly<Record<string, number>> = { silent: 0, 'x-soft': 0.3, soft: 0.5, medium: 0.8 };
  const lang = /<speak [^>]*xml:lang="([\w-]+)"/.exec(ssml)?.[1] ?? null;
  return { rate: rate === undefined ? 1 : Number(rate) / 100, loudness: loudness[volume] ?? 1, lang };
};

/** True when the reminder that this ring came from (`timer.<id>.<seconds>`) is among these. */
const isOpen = (ringId: string, timers: readonly Reminder[]): boolean =>
  timers.some(({ id }) => ringId.includes(`.${id}.`));

export const useTalk = (
  lang: string,
  settings: Settings,
  change: ChangeSettings,
  onChanged: (message: Extract<ServerMessage, { type: 'changed' }>) => void,
  unsent: UnsentList,
  dayOf: (at: string) => string,
): Talk => {
  const [connection, setConnection] = useState<ConversationState>('connecting');
  const [voice, setVoice] = useState<Voice>(() => silence(settings.reader));
  const [lines, setLines] = useState<readonly Line[]>(() => keptTalk<Kept>()?.lines ?? []);
  const [reply, setReply] = useState<TurnReply | null>(() => keptTalk<Kept>()?.reply ?? null);
  const [partial, setPartial] = useState('');
  const [notice, setNotice] = useState('');
  const [announcement, setAnnouncement] = useState('');
  const [timers, setTimers] = useState<readonly Reminder[]>(() => keptBoard()?.reminders ?? []);

  const latest = useRef({ settings, change, onChanged, voice, reply });
  latest.current = { settings, change, onChanged, voice, reply };
  const onItsWay = useRef(new Set<string>());
  const isLost = useRef(false);
  const talk = useRef<OpenConversation | null>(null);
  const driver = useRef<Driver | null>(null);
  const touched = useRef<string | null>(touchedThing());
  /** Acknowledged here. One that was lost on the way is sent again when the service tells again. */
  const heard = useRef(new Set<string>(keptRung()));

  const add = useCallback((who: Line['who'], text: string, id: string = newId(), lang?: string) => {
    const line: Line = { id, who, text, ...(lang === undefined ? {} : { lang }) };
    setLines((before) => (before.some((one) => one.id === id) ? before : [...before.slice(-199), line]));
  }, []);
  const sayKept = useCallback(() => {
    pace.current = { ...pace.current, lang: null };
    const kept = t('talk-kept');
    add('page', kept);
    driver.current?.send({ on: 'answer', sentences: [kept] });
  }, [add]);

  const announce = useCallback((text: string) => {
    setAnnouncement('');
    // Twice the same is a change only with nothing in between.
    setTimeout(() => setAnnouncement(text), 50);
  }, []);
  useEffect(() => {
    if (announcement === '') return;
    const timer = setTimeout(() => setAnnouncement(''), READ_WITHIN_MS);
    return () => clearTimeout(timer);
  }, [announcement]);

  useEffect(() => {
    if (lines.length > 0) keepTalk({ lines: lines.slice(-20), reply } satisfies Kept);
  }, [lines, reply]);

  const pace = useRef<ReturnType<typeof paceOf>>({ rate: settings.rate, loudness: 0.8, lang: null });
  const takePace = useCallback((ssml: string): string | undefined => {
    const asked = paceOf(ssml);
    if (asked.rate !== pace.current.rate) latest.current.change({ rate: asked.rate });
    pace.current = asked;
    return asked.lang ?? undefined;
  }, []);

  const ack = useCallback((id: string) => {
    heard.current.add(id);
    closeNotice(id);
    if (isOurs(id)) keepRung([...keptRung(), id].slice(-50));
    else talk.current?.send({ type: 'ack', id });
  }, []);

  const refreshTimers = useCallback(() => {
    service.reminders().then(
      (open) => {
        setTimers(open);
        for (const { id } of latest.current.voice.rings)
          if (!isOpen(id, open)) driver.current?.send({ on: 'stopped-elsewhere', id });
      },
      () => undefined,
    );
  }, []);

  const deliver = useCallback(
    async (hypotheses: readonly Hypothesis[], cutAt: string | null): Promise<void> => {
      const id = newId();
      add('you', hypotheses[0]?.text ?? t('talk-nothing-heard'), id);
      setNotice('');
      const thing = touched.current;
      touched.current = null;
      const request: TurnRequest = {
        id,
        conversation: 'page',
        hypotheses: [...hypotheses],
        ...(cutAt === null ? {} : { cutAt }),
        ...(thing === null ? {} : { touched: thing }),
      };
      const at = new Date().toISOString();
      const asked = latest.current.reply?.expects.kind ?? 'open';
      // Kept before it goes out: whatever becomes of the page or the network, it is not lost.
      if (hypotheses.length > 0)
        unsent.add({
          kind: 'turn',
          id,
          at,
          day: dayOf(at),
          request,
          isAnswer: asked !== 'open',
          refused: null,
          wanted: false,
        });
      if (isLost.current) return sayKept();
      onItsWay.current.add(id);
      try {
        const got = await talk.current?.turn(request);
        if (got === undefined) return;
        unsent.drop(id);
        setReply(got);
        add('kitchen', got.speech.text, undefined, takePace(got.speech.ssml));
        driver.current?.send({ on: 'answer', sentences: got.speech.sentences });
      } catch (error) {
        if (!(error instanceof ConversationClosed)) {
          setNotice(t('talk-not-taken', { why: error instanceof TurnRefused ? error.message : '' }));
          if (!isForLater(error)) unsent.drop(id);
        }
        driver.current?.send({ on: 'no-answer' });
      } finally {
        onItsWay.current.delete(id);
      }
    },
    [add, dayOf, sayKept, takePace, unsent],
  );

  const onMessage = useCallback(
    (message: Exclude<ServerMessage, { type: 'reply' }>) => {
      if (message.type === 'unasked') {
        const { id, kind, speech } = message;
        if (heard.current.has(id)) return talk.current?.send({ type: 'ack', id });
        // It rang here before the kitchen was reached again: stopped here, it is heard; else the kitchen rings on.
        const mine = [...heard.current, ...latest.current.voice.rings.map((ring) => ring.id)].find(
          (one) => isOurs(one) && id.includes(one.slice('here'.length, -'due'.length)),
        );
        if (mine !== undefined && heard.current.has(mine)) return ack(id);
        if (mine !== undefined) driver.current?.send({ on: 'stopped-elsewhere', id: mine });
        add('kitchen', speech.text, undefined, takePace(speech.ssml));
        const rings = kind === 'timer' || kind === 'reminder';
        driver.current?.send({ on: rings ? 'due' : 'told', id, sentences: speech.sentences });
        refreshTimers();
      } else if (message.type === 'changed') {
        refreshTimers();
        latest.current.onChanged(message);
      } else if (message.type === 'error') setNotice(message.problem.detail ?? message.problem.title);
    },
    [ack, add, refreshTimers, takePace],
  );

  useEffect(() => {
    driver.current = createDriver({
      settings: () => {
        const { settings: own } = latest.current;
        const { rate, loudness, lang: answered } = pace.current;
        return {
          ...own,
          hears: lang,
          lang: answered ?? lang,
          rate,
          volume: Math.min(1, own.volume * (loudness / 0.8)),
        };
      },
      deliver: (hypotheses, cutAt) => void deliver(hypotheses, cutAt),
      partial: (text) => {
        setPartial(text);
        if (text !== '') talk.current?.send({ type: 'partial', conversation: 'page', text });
      },
      ack,
      announce,
      notice: (what) => setNotice(t(notices[what])),
      changed: setVoice,
    });
    return () => driver.current?.close();
  }, [lang, deliver, ack, announce]);

  useEffect(() => {
    const open = openConversation({
      connect: () => new WebSocket(socketAddress(), 'tellshelf.v1'),
      onState: (state) => {
        setConnection(state);
        if (state === 'lost' && !isLost.current) {
          isLost.current = true;
          if (onItsWay.current.size > 0) sayKept();
        }
        if (state === 'open') {
          isLost.current = false;
          refreshTimers();
        }
        // A page that was sent away loses its socket too: asking tells the gate which of both it is.
        if (state === 'lost') service.me().catch(() => undefined);
      },
      onMessage,
    });
    talk.current = open;
    if (touched.current !== null) driver.current?.send({ on: 'typed', text: t('say-what-is-this') });
    return () => open.close();
  }, [onMessage, refreshTimers, sayKept]);

  // Without the kitchen the page rings by itself for what it knows of.
  useEffect(() => {
    if (connection === 'open') return;
    const waits = timers.flatMap(({ id, kind, label, due }) => {
      const left = Date.parse(due) - Date.now();
      const ring = ringOf(id);
      if (left < -RINGS_LATE_MS || left > WAITS_AT_MOST_MS || heard.current.has(ring)) return [];
      const sentence = t('talk-due', { label: label ?? t(kind) });
      return setTimeout(
        () => {
          if (isLost.current) driver.current?.send({ on: 'due', id: ring, sentences: [sentence] });
        },
        Math.max(0, left),
      );
    });
    return () => waits.forEach(clearTimeout);
  }, [connection, timers]);

  useEffect(() => driver.current?.send({ on: 'reader', reader: settings.reader }), [settings.reader]);

  const send = useCallback<Driver['send']>((event) => driver.current?.send(event), []);
  const say = useCallback((text: string) => driver.current?.send({ on: 'typed', text }), []);
  const turn = useCallback(async (request: TurnRequest): Promise<TurnReply> => {
    if (talk.current === null || isLost.current) throw new ConversationClosed('there is no connection');
    onItsWay.current.add(request.id);
    try {
      return await talk.current.turn(request);
    } finally {
      onItsWay.current.delete(request.id);
    }
  }, []);
  const isOnItsWay = useCallback((id: string) => onItsWay.current.has(id), []);
  const takeUp = useCallback<Talk['takeUp']>(
    (turns, sentences) => {
      for (const { id, words, reply: got } of turns) {
        add('you', words, id);
        add('kitchen', got.speech.text, undefined, takePace(got.speech.ssml));
        setReply(got);
      }
      if (turns.length === 0) add('page', sentences.join(' '));
      driver.current?.send({ on: 'answer', sentences });
    },
    [add, takePace],
  );
  return {
    connection,
    voice,
    lines,
    reply,
    partial,
    notice,
    announcement,
    timers,
    say,
    send,
    setNotice,
    turn,
    isOnItsWay,
    takeUp,
  };
};
