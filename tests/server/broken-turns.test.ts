/** What breaks unforeseen inside a turn is answered to the cook, logged with an id, and changes nothing. */
import { once } from 'node:events';
import { afterEach, describe, expect, it } from 'vitest';
import WebSocket from 'ws';
import { turnReply, type TurnReply } from '../../shared/wire/turn.js';
import { openSqliteStore } from '../../src/store/index.js';
import { createTongues, type Tongues } from '../../src/turn/index.js';
import { bearer, say, startService, type Service } from '../support/service.js';

const PLAIN = 'Something went wrong on my side. Nothing was changed.';
const SECRET = 'heliotrope';

/** Real ears and a real voice, one of which breaks at a word. */
const breaking = (where: 'understand' | 'decide'): Tongues => {
  const real = createTongues((error) => {
    throw error;
  });
  return {
    warm: (now) => real.warm(now),
    beside: (tongue) => real.beside(tongue),
    for: (asked, household) => {
      const tongue = real.for(asked, household);
      return {
        ...tongue,
        understander: {
          begins: (words, ...rest) => {
            if (words.includes(SECRET)) throw new TypeError(`no such slot: ${words}`);
            return tongue.understander.begins(words, ...rest);
          },
          understand: (guesses, ...rest) => {
            if (!guesses[0]?.text.includes(SECRET)) return tongue.understander.understand(guesses, ...rest);
            if (where === 'understand') throw new TypeError(`no such slot: ${guesses[0].text}`);
            // A reading whose parts are of no use to who decides.
            const readings = [{ acts: null, confidence: 1, heard: SECRET }] as never;
            return { readings, margin: 1, verdict: 'act' };
          },
        },
      };
    },
  };
};

let service: Service | undefined;
afterEach(async () => {
  await service?.close();
  service = undefined;
});

describe.each(['understand', 'decide'] as const)('a turn that breaks when it should %s', (where) => {
  it('is answered like any other, and nothing was changed', async () => {
    service = await startService({}, { tongues: breaking(where) });
    await say(service, 'put the pickled beets away');
    const before = await service.store.loadKitchen('marta');
    const reply = await say(service, `put the ${SECRET} marmalade in the fridge`);
    expect(turnReply.parse(reply)).toEqual(reply);
    expect(reply.speech.text).toBe(PLAIN);
    expect(reply.changes).toEqual([]);
    expect(reply.fault).toMatch(/^f\w+$/);
    expect(await service.store.loadKitchen('marta')).toEqual(before);
    // The question it broke into is still open.
    const done = await say(service, 'the second shelf of the fridge');
    expect(done.changes[0]?.verb).toBe('put away');
  });

  it('is in the log by its id, without a word of it', async () => {
    service = await startService({}, { tongues: breaking(where) });
    const { fault } = await say(service, `where is the ${SECRET} marmalade`);
    const line = service.logged.find((one) => one['fault'] === fault && one['where'] !== undefined);
    expect(line).toMatchObject({ household: 'marta', error: 'TypeError' });
    expect(JSON.stringify(service.logged)).not.toContain(SECRET);
  });

  it('lets go of a conversation that breaks twice running', async () => {
    service = await startService({}, { tongues: breaking(where) });
    await say(service, 'put the pickled beets away');
    await say(service, SECRET);
    expect((await say(service, SECRET)).speech.text).toMatch(/^Something went wrong on my side again\./);
    const done = await say(service, 'the second shelf of the fridge');
    expect(done.changes).toEqual([]);
    expect((await say(service, 'where is the milk')).fault).toBeUndefined();
  });

  it('is answered over a socket too', async () => {
    service = await startService({}, { tongues: breaking(where) });
    const address = await service.app.listen({ port: 0, host: '127.0.0.1' });
    const socket = new WebSocket(`${address.replace('http', 'ws')}/v1/conversation`, {
      headers: bearer(service.tokens.speak),
    });
    await once(socket, 'open');
    const replied = new Promise<TurnReply>((resolve) =>
      socket.on('message', (data: Buffer) => {
        const message = JSON.parse(data.toString()) as { type: string; reply: TurnReply };
        if (message.type === 'reply') resolve(message.reply);
      }),
    );
    const turn = { id: 't', conversation: 'c', hypotheses: [{ text: SECRET }] };
    socket.send(JSON.stringify({ type: 'partial', conversation: 'c', text: SECRET }));
    socket.send(JSON.stringify({ type: 'turn', turn }));
    expect((await replied).speech.text).toBe(PLAIN);
    socket.terminate();
  });

  it('says it in the language it was asked in', async () => {
    service = await startService({}, { tongues: breaking(where) });
    const reply = await say(service, SECRET, { locale: 'es-MX' });
    expect(reply.speech.text).toMatch(/^Algo falló/);
  });
});

describe('a kitchen that cannot be read', () => {
  it('is told plainly, and the service goes on', async () => {
    const store = openSqliteStore(':memory:');
    const unreadable = {
      ...store,
      loadKitchen: () => Promise.reject(new SyntaxError('Unexpected end of JSON')),
    };
    service = await startService({}, { store: unreadable });
    const reply = await say(service, 'where is the milk');
    expect(reply).toMatchObject({ changes: [], speech: { text: PLAIN } });
    await service.close();
    await store.close();
    service = undefined;
  });
});
