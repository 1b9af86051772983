/** A socket client for tests, with the messages it received in order. */
import WebSocket from 'ws';
import { serverMessage, type ServerMessage } from '../../shared/wire/socket.js';
import type { Service } from './service.js';

export interface TestSocket {
  readonly socket: WebSocket;
  send(message: unknown): void;
  /** The next message of a type, also one that came before and was not taken yet. */
  next<T extends ServerMessage['type']>(type: T): Promise<Extract<ServerMessage, { type: T }>>;
  readonly closed: Promise<{ code: number; reason: string }>;
}

export const listen = async (service: Service): Promise<string> => {
  const address = await service.app.listen({ host: '127.0.0.1', port: 0 });
  return address.replace(/^http/, 'ws') + '/v1/conversation';
};

export const connect = (url: string, headers: Record<string, string>): TestSocket => {
  const socket = new WebSocket(url, ['tellshelf.v1'], { headers });
  const waiting: ServerMessage[] = [];
  const wanting: { type: string; take: (message: ServerMessage) => void }[] = [];
  socket.on('message', (data: Buffer) => {
    const message = serverMessage.parse(JSON.parse(data.toString('utf8')));
    const n = wanting.findIndex((want) => want.type === message.type);
    if (n >= 0) wanting.splice(n, 1)[0]?.take(message);
    else waiting.push(message);
  });
  socket.on('error', () => undefined);
  return {
    socket,
    send: (message) =>
      socket.send(
        typeof message === 'string' || Buffer.isBuffer(message) ? message : JSON.stringify(message),
      ),
    next: (type) =>
      new Promise((resolve, reject) => {
        const n = waiting.findIndex((message) => message.type === type);
        if (n >= 0) return resolve(waiting.splice(n, 1)[0] as never);
        const timer = setTimeout(() => reject(new Error(`no ${type} came`)), 25_000);
        wanting.push({
          type,
          take: (message) => {
            clearTimeout(timer);
            resolve(message as never);
          },
        });
      }),
    closed: new Promise((resolve) =>
      socket.on('close', (code, reason) => resolve({ code, reason: reason.toString() })),
    ),
  };
};

/** The status a refused upgrade got. */
export const refusedStatus = (url: string, headers: Record<string, string>): Promise<number> =>
  new Promise((resolve, reject) => {
    const socket = new WebSocket(url, { headers });
    socket.on('unexpected-response', (_request, response) => {
      resolve(response.statusCode ?? 0);
      socket.terminate();
    });
    socket.on('open', () => reject(new Error('it was let in')));
    socket.on('error', () => undefined);
  });
