/**
 * A recogniser that speaks the Wyoming protocol (openly specified: a line of JSON for each event, then
 * `data_length` bytes of more JSON and `payload_length` bytes of sound, over TCP). As an ear: `transcribe`, the
 * sound, `audio-stop`; back comes a `transcript`.
 */
import { readFile } from 'node:fs/promises';
import { connect } from 'node:net';
import { EAR_SECONDS, EarFault, type Ear } from '../ears/ear.js';
import { LONGEST_ANSWER, readJsonGuesses } from '../ears/guesses.js';
import { readWav } from '../wav.js';

interface Event {
  readonly type: string;
  readonly data?: Readonly<Record<string, unknown>>;
}

/** Bytes of one event. */
const encode = ({ type, data = {} }: Event, payload?: Buffer): Buffer => {
  const more = Buffer.from(JSON.stringify(data));
  const header = { type, data_length: more.length, ...(payload ? { payload_length: payload.length } : {}) };
  return Buffer.concat([Buffer.from(`${JSON.stringify(header)}\n`), more, payload ?? Buffer.alloc(0)]);
};

/** Takes events off the front of what came so far; null while the first is not whole. @throws EarFault */
const takeEvent = (bytes: Buffer): { readonly event: Event; readonly rest: Buffer } | null => {
  const end = bytes.indexOf('\n');
  if (end < 0) return null;
  try {
    const header = JSON.parse(bytes.subarray(0, end).toString('utf8')) as Record<string, unknown>;
    const length = (name: string): number => (typeof header[name] === 'number' ? header[name] : 0);
    const from = end + 1;
    const to = from + length('data_length');
    const after = to + length('payload_length');
    if (bytes.length < after) return null;
    const more = to > from ? (JSON.parse(bytes.subarray(from, to).toString('utf8')) as object) : {};
    const event = {
      type: String(header['type']),
      data: { ...(header['data'] as object | undefined), ...more },
    };
    return { event, rest: bytes.subarray(after) };
  } catch {
    throw new EarFault("The recogniser's answer cannot be read: it is no event of the protocol.");
  }
};

const RATE = { rate: 16_000, width: 2, channels: 1 };
/** A tenth of a second. Bytes. */
const CHUNK = (RATE.rate * RATE.width) / 10;

const say = (samples: Buffer): Buffer => {
  const chunks: Buffer[] = [];
  for (let at = 0; at < samples.length; at += CHUNK)
    chunks.push(encode({ type: 'audio-chunk', data: RATE }, samples.subarray(at, at + CHUNK)));
  return Buffer.concat([
    encode({ type: 'transcribe', data: { language: 'en' } }),
    encode({ type: 'audio-start', data: RATE }),
    ...chunks,
    encode({ type: 'audio-stop' }),
  ]);
};

/** The transcript's data, as JSON. */
const ask = (host: string, port: number, sound: Buffer, seconds: number): Promise<string> =>
  new Promise((resolve, reject) => {
    const socket = connect({ host, port });
    const finish = (done: () => void): void => {
      clearTimeout(tooLong);
      socket.destroy();
      done();
    };
    const fail = (why: string): void => finish(() => reject(new EarFault(why)));
    const tooLong = setTimeout(
      () => fail(`The recogniser did not answer within ${seconds} seconds.`),
      seconds * 1000,
    );
    let waiting: Buffer = Buffer.alloc(0);
    socket.on('connect', () => socket.write(sound));
    socket.on('error', () => fail('The recogniser cannot be reached.'));
    socket.on('close', () => fail('The recogniser hung up.'));
    socket.on('data', (part) => {
      waiting = Buffer.concat([waiting, part]);
      try {
        for (let taken = takeEvent(waiting); taken !== null; taken = takeEvent(waiting)) {
          const { event, rest } = taken;
          waiting = rest;
          if (event.type === 'transcript') return finish(() => resolve(JSON.stringify(event.data)));
          if (event.type === 'error') return fail('The recogniser answered that something went wrong there.');
        }
      } catch (error) {
        return finish(() => reject(error as EarFault));
      }
      if (waiting.length > LONGEST_ANSWER)
        fail("The recogniser's answer is too long to be a list of guesses.");
    });
  });

/** `wyoming://HOST:PORT`. */
export const earByWyoming = (address: string, seconds = EAR_SECONDS): Ear => {
  const { hostname, port } = new URL(address);
  return {
    deafTo: [],
    hear: async (file) => {
      const wav = readWav(await readFile(file));
      if (wav === null) throw new EarFault('The sound file holds no sound.');
      const sound = say(wav.samples);
      return readJsonGuesses(await ask(hostname, Number(port || 10_300), sound, seconds));
    },
    // The protocol has no way to tell a recogniser names.
    learn: () => Promise.resolve(),
    close: () => Promise.resolve(),
  };
};
