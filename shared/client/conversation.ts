/**
 * One conversation over the socket: reconnects by itself, and sends an unanswered turn again
 * with the same id, so that nothing said is lost and nothing is done twice.
 */
import type { ClientMessage, ServerMessage, TurnReply, TurnRequest } from './types.js';

/** What of the W3C WebSocket interface is used; browsers' and Node's both fit. */
export interface SocketLike {
  readonly readyState: number;
  send(data: string): void;
  close(code?: number, reason?: string): void;
  addEventListener(
    type: 'open' | 'close' | 'message' | 'error',
    listener: (event: { readonly data?: unknown }) => void,
  ): void;
}

export type ConversationState = 'connecting' | 'open' | 'lost' | 'closed';

export interface ConversationOptions {
  /** Makes a new connection; called again after each loss. */
  readonly connect: () => SocketLike;
  readonly onState: (state: ConversationState) => void;
  /** Everything but replies to turns: timers, changes others made, partial results, errors. */
  readonly onMessage: (message: Exclude<ServerMessage, { type: 'reply' }>) => void;
  /** Milliseconds before each try to reconnect; the last repeats. */
  readonly delays?: readonly number[];
}

export interface OpenConversation {
  /** Resolves with the reply, across reconnects. Rejects when the service refuses the turn or on close. */
  turn(request: TurnRequest): Promise<TurnReply>;
  /** Sent when connected, else dropped: for partial words, acknowledgements and pings. */
  send(message: ClientMessage): void;
  close(): void;
}

interface Waiting {
  readonly request: TurnRequest;
  readonly resolve: (reply: TurnReply) => void;
  readonly reject: (error: Error) => void;
}

const OPEN = 1;

/** The service refused a turn sent over the socket; `code` is from its list of problems. */
export class TurnRefused extends Error {
  override readonly name = 'TurnRefused';
  constructor(
    readonly code: string,
    detail: string,
  ) {
    super(detail);
  }
}

/** The conversation was closed here before the turn was answered; it may be sent again with the same id. */
export class ConversationClosed extends Error {
  override readonly name = 'ConversationClosed';
}

/** Opens a conversation. */
export const openConversation = (options: ConversationOptions): OpenConversation => {
  const delays = options.delays ?? [500, 1_000, 2_000, 5_000, 10_000];
  const waiting = new Map<string, Waiting>();
  let tries = 0;
  let closed = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let socket: SocketLike;

  const transmit = (message: ClientMessage): boolean => {
    if (socket.readyState !== OPEN) return false;
    socket.send(JSON.stringify(message));
    return true;
  };

  const receive = (data: unknown): void => {
    if (typeof data !== 'string') return;
    const message = JSON.parse(data) as ServerMessage;
    if (message.type === 'reply') {
      waiting.get(message.reply.id)?.resolve(message.reply);
      waiting.delete(message.reply.id);
      return;
    }
    const refused =
      message.type === 'error' && message.turn !== undefined ? waiting.get(message.turn) : undefined;
    if (refused !== undefined && message.type === 'error') {
      waiting.delete(refused.request.id);
      refused.reject(new TurnRefused(message.problem.code, message.problem.detail ?? message.problem.title));
      return;
    }
    options.onMessage(message);
  };

  const start = (): void => {
    options.onState('connecting');
    socket = options.connect();
    socket.addEventListener('open', () => {
      tries = 0;
      options.onState('open');
      for (const { request } of waiting.values()) transmit({ type: 'turn', turn: request });
    });
    socket.addEventListener('message', (event) => receive(event.data));
    // A close always follows. Where nobody listens, Node's own kind of socket would end the process.
    socket.addEventListener('error', () => undefined);
    socket.addEventListener('close', () => {
      if (closed) return;
      options.onState('lost');
      timer = setTimeout(start, delays[Math.min(tries, delays.length - 1)]);
      tries += 1;
    });
  };
  start();

  return {
    turn: (request) =>
      new Promise((resolve, reject) => {
        waiting.set(request.id, { request, resolve, reject });
        transmit({ type: 'turn', turn: request });
      }),
    send: (message) => void transmit(message),
    close: () => {
      closed = true;
      clearTimeout(timer);
      socket.close(1000);
      options.onState('closed');
      for (const { reject } of waiting.values())
        reject(new ConversationClosed('the conversation was closed'));
      waiting.clear();
    },
  };
};
