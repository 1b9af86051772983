/** A recogniser that speaks the Wyoming protocol, as its specification has it, in whatever pieces it comes. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { createServer, type AddressInfo, type Server, type Socket } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { earByWyoming } from '../../src/cli/listen/adapters/wyoming.js';

const folder = mkdtempSync(join(tmpdir(), 'wyoming-'));
const sound = join(folder, 'sound.wav');
beforeAll(() => {
  const args = ['-n', '-r', '16000', '-c', '1', '-b', '16', sound, 'synth', '0.55', 'sine', '300'];
  if (spawnSync('sox', args).status !== 0) throw new Error('sox is not installed.');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Heard {
  readonly type: string;
  readonly data: Record<string, unknown>;
  readonly payload: Buffer;
}

/** Reads events by the specification: header line, data, payload. */
const eventsIn = (bytes: Buffer): Heard[] => {
  const events: Heard[] = [];
  for (let at = 0; at < bytes.length;) {
    const end = bytes.indexOf('\n', at);
    const header = JSON.parse(bytes.toString('utf8', at, end)) as Record<string, number | string>;
    const data = end + 1 + Number(header['data_length'] ?? 0);
    const payload = data + Number(header['payload_length'] ?? 0);
    if (end < 0 || payload > bytes.length) break;
    events.push({
      type: String(header['type']),
      data: JSON.parse(bytes.toString('utf8', end + 1, data) || '{}') as Record<string, unknown>,
      payload: bytes.subarray(data, payload),
    });
    at = payload;
  }
  return events;
};

let server: Server;
const open: Socket[] = [];
/** Answers once it has heard the end of the sound. */
const serve = async (answer: (socket: Socket, heard: Heard[]) => void): Promise<string> => {
  server = createServer((socket) => {
    open.push(socket);
    socket.on('error', () => undefined);
    let bytes = Buffer.alloc(0);
    socket.on('data', (part) => {
      bytes = Buffer.concat([bytes, part]);
      const heard = eventsIn(bytes);
      if (heard.at(-1)?.type === 'audio-stop') answer(socket, heard);
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return `wyoming://127.0.0.1:${(server.address() as AddressInfo).port}`;
};
afterEach(() => {
  for (const socket of open.splice(0)) socket.destroy();
  server.close();
});

const transcript = '{"text":"where is the crème fraîche"}';

it('sends all of the sound, and takes the transcript', async () => {
  let heard: Heard[] = [];
  const url = await serve((socket, events) => {
    heard = events;
    socket.write(
      `{"type":"info","data":{}}\n{"type":"transcript","data_length":${Buffer.byteLength(transcript)}}\n${transcript}`,
    );
  });
  expect((await earByWyoming(url).hear(sound)).map(({ text }) => text)).toEqual([
    'where is the crème fraîche',
  ]);
  expect(heard[0]).toMatchObject({ type: 'transcribe', data: { language: 'en' } });
  expect(heard[1]).toMatchObject({ type: 'audio-start', data: { rate: 16_000, width: 2, channels: 1 } });
  const chunks = heard.filter(({ type }) => type === 'audio-chunk').map(({ payload }) => payload);
  expect(Buffer.concat(chunks)).toEqual(readFileSync(sound).subarray(statSync(sound).size - 0.55 * 32_000));
});

it('reads an answer byte by byte, its text in the header or after it, and silence', async () => {
  const url = await serve((socket) => {
    const bytes = Buffer.from(
      `{"type":"transcript","data_length":${Buffer.byteLength(transcript)}}\n${transcript}`,
    );
    const next = (at: number): void => {
      if (at < bytes.length) socket.write(bytes.subarray(at, at + 1), () => setImmediate(next, at + 1));
    };
    next(0);
  });
  expect((await earByWyoming(url).hear(sound))[0]?.text).toBe('where is the crème fraîche');
  server.close();
  const inHeader = await serve((socket) => socket.write('{"type":"transcript","data":{"text":"stop"}}\n'));
  expect((await earByWyoming(inHeader).hear(sound))[0]?.text).toBe('stop');
  server.close();
  const silent = await serve((socket) => socket.write('{"type":"transcript","data":{"text":""}}\n'));
  expect(await earByWyoming(silent).hear(sound)).toEqual([]);
});

it.each([
  [
    'an error',
    /something went wrong there/,
    (socket) => socket.write('{"type":"error","data":{"text":"x"}}\n'),
  ],
  ['no event', /no event of the protocol/, (socket) => socket.write('hello\n')],
  ['nothing', /within 0.3 seconds/, () => undefined],
  ['the hanging up', /hung up/, (socket) => socket.end()],
  ['too much', /too long/, (socket) => socket.write('x'.repeat(70_000))],
  ['no text', /neither/, (socket) => socket.write('{"type":"transcript"}\n')],
] satisfies [string, RegExp, (socket: Socket) => void][])('names %s', async (_what, why, answer) => {
  await expect(earByWyoming(await serve(answer), 0.3).hear(sound)).rejects.toThrow(why);
});

it('names that nobody is there', async () => {
  const url = await serve(() => undefined);
  await new Promise((resolve) => server.close(resolve));
  await expect(earByWyoming(url).hear(sound)).rejects.toThrow(/cannot be reached/);
});
