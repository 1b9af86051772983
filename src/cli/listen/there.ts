/** Talk with a service elsewhere: a small board in the kitchen is its ear and mouth. */
import WebSocket from 'ws';
import { openConversation, type SocketLike } from '../../../shared/client/conversation.js';
import { createClient, ServiceProblem } from '../../../shared/client/http.js';
import type { Talker, TalkerEvents } from './talker.js';

export interface There {
  readonly service: string;
  /** This device's key. */
  readonly key: string;
}

/** @throws Error in plain words when the service does not know the key. Where it is not there yet, it is waited for. */
export const talkThere = async ({ service, key }: There, events: TalkerEvents): Promise<Talker> => {
  const base = service.replace(/\/$/, '');
  const client = createClient({ base, token: key });
  let locale: string | null = null;
  const ask = async (): Promise<void> => {
    locale = (await client.me()).household.locale;
  };
  try {
    await ask();
  } catch (error) {
    if (error instanceof ServiceProblem)
      throw new Error(`${base} does not let this device in: ${error.message}`, { cause: error });
    events.tell(`${base} cannot be reached yet; it is tried again.`);
  }
  let lost = false;
  const conversation = openConversation({
    connect: () =>
      new WebSocket(`${base.replace(/^http/, 'ws')}/v1/conversation`, ['tellshelf.v1'], {
        headers: { authorization: `Bearer ${key}` },
      }) as unknown as SocketLike,
    onState: (state) => {
      if (state === 'lost' && !lost) events.tell('The service was lost; it is tried again.');
      if (state === 'open' && lost) events.tell('The service is there again.');
      // While it was away, anybody may have changed anything.
      if (state === 'open') {
        events.onChanged();
        ask().catch(() => undefined);
      }
      if (state === 'lost' || state === 'open') lost = state === 'lost';
    },
    onMessage: (message) => {
      if (message.type === 'changed') events.onChanged();
      if (message.type === 'unasked')
        void events.onUnasked(message.speech).then(() => conversation.send({ type: 'ack', id: message.id }));
    },
  });
  const lists: Talker['lists'] = async (form) => {
    const response = await fetch(`${base}/v1/kitchen/biasing?as=${form}`, {
      headers: { authorization: `Bearer ${key}` },
      signal: AbortSignal.timeout(10_000),
    });
    if (!response.ok) throw new Error(`The names could not be had: the service answered ${response.status}.`);
    return response.text();
  };
  return {
    turn: (request) => conversation.turn(request),
    lists,
    locale: () => locale,
    close: () => Promise.resolve(conversation.close()),
  };
};
