/** Ears that are plugged in, as a stranger would write them: a script, a small web service. */
import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type RequestListener, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, describe, expect, it, vi } from 'vitest';
import { earByCommand } from '../../src/cli/listen/ears/command.js';
import { earByHttp } from '../../src/cli/listen/ears/http.js';
import { asText, readGuesses, readJsonGuesses } from '../../src/cli/listen/ears/guesses.js';

const folder = mkdtempSync(join(tmpdir(), 'ears-'));
const sound = join(folder, 'a sound.wav');
writeFileSync(sound, 'RIFF….WAVE');
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const script = (text: string): string => {
  const file = join(folder, `ear-${Math.random().toString(36).slice(2)}`);
  writeFileSync(file, `#!/bin/sh\n${text}\n`);
  chmodSync(file, 0o755);
  return file;
};

describe('what a recogniser prints', () => {
  it('is a guess a line: confidence, tab, words; the surest first', () => {
    expect(readGuesses('0.2\twhere is the mill\n0.7\twhere is the milk\r\n\n')).toEqual([
      { text: 'where is the milk', confidence: 0.7 },
      { text: 'where is the mill', confidence: 0.2 },
    ]);
    expect(readGuesses('\n \n')).toEqual([]);
  });

  it('may have no confidences: then the first counts most', () => {
    const guesses = readGuesses('where is the milk\nwhere is the mill\n');
    expect(guesses.map(({ text }) => text)).toEqual(['where is the milk', 'where is the mill']);
    expect(guesses[0]!.confidence).toBeGreaterThan(guesses[1]!.confidence);
  });

  it('is told by its line where it cannot be read, and never repeated', () => {
    for (const [answer, line] of [
      ['0.5\tfine\nhigh\tnope', 2],
      ['1.01\tnope', 1],
      ['-0.1\tnope', 1],
      ['\tnope', 1],
      ['NaN\tnope', 1],
    ] as const) {
      expect(() => readGuesses(answer)).toThrow(new RegExp(`line ${line} `));
      expect(() => readGuesses(answer)).not.toThrow(/nope/);
    }
    for (const edge of ['0\tyes', '1\tyes']) expect(readGuesses(edge)).toHaveLength(1);
    expect(readGuesses('a'.repeat(2_000))).toHaveLength(1);
    expect(() => readGuesses('a'.repeat(2_001))).toThrow(/2000 letters/);
    expect(readGuesses('a\n'.repeat(30))).toHaveLength(10);
  });

  it('may be JSON', () => {
    expect(readGuesses('{"hypotheses":[{"text":"stop","confidence":0.9}]}\n')).toEqual([
      { text: 'stop', confidence: 0.9 },
    ]);
    expect(() => readGuesses('{"hypotheses":[')).toThrow(/no whole JSON/);
    expect(readJsonGuesses('{"hypotheses":[{"text":"stop","confidence":0.9,"more":1}]}')).toEqual([
      { text: 'stop', confidence: 0.9 },
    ]);
    expect(readJsonGuesses('{"text":" where is the milk "}')[0]?.text).toBe('where is the milk');
    expect(readJsonGuesses('{"text":""}')).toEqual([]);
    expect(() => readJsonGuesses('{"text"')).toThrow(/no whole JSON/);
    for (const other of ['{"words":"stop"}', 'null', '[{"text":"stop"}]', '"stop"'])
      expect(() => readJsonGuesses(other)).toThrow(/neither/);
    for (const confidence of [97, -1, '"high"'])
      expect(() =>
        readJsonGuesses(`{"hypotheses":[{"text":"stop"},{"text":"nope","confidence":${confidence}}]}`),
      ).toThrow(/hypothesis 2 has .*confidence/);
    expect(() => readJsonGuesses(`{"text":"${'a'.repeat(2_001)}"}`)).toThrow(/too long/);
  });

  it('is UTF-8, and named where it is not', () => {
    expect(asText([Buffer.from('jalape'), Buffer.from('ños')])).toBe('jalapeños');
    expect(() => asText([Buffer.from([0x77, 0xff, 0xfe])])).toThrow(/not UTF-8/);
  });
});

describe('a command as an ear', () => {
  it('is given the sound file last, whatever its name, and options of its own before', async () => {
    const ear = await earByCommand(`${script('printf "0.9\\t%s %s\\n" "$1" "$2"')} --fast`);
    expect(await ear.hear(sound)).toEqual([{ text: `--fast ${sound}`, confidence: 0.9 }]);
    await ear.close();
  });

  it('finds the household’s names in the folder that BIASING names, anew after each change', async () => {
    const ear = await earByCommand(script('cat "$BIASING/words.tsv" | cut -f2; ls "$BIASING" >&2; : "$1"'));
    let names = '2\tjollof rice\n';
    await ear.learn((form) => Promise.resolve(form === 'words' ? names : form));
    expect((await ear.hear(sound)).map(({ text }) => text)).toEqual(['jollof rice']);
    names = '1\tegusi soup\n';
    await ear.learn((form) => Promise.resolve(form === 'words' ? names : form));
    expect((await ear.hear(sound)).map(({ text }) => text)).toEqual(['egusi soup']);
    await ear.close();
  });

  it('is named where it fails, is missing, never ends or never stops talking, and is ended', async () => {
    for (const [command, why] of [
      [script('echo 0.9; exit 3'), /ended with 3/],
      [join(folder, 'no-such-recogniser'), /ended with 127/],
      [script('yes'), /too long/],
    ] as const) {
      const ear = await earByCommand(command);
      await expect(ear.hear(sound)).rejects.toThrow(why);
      await ear.close();
    }
    const lived = join(folder, 'lived');
    const ear = await earByCommand(script(`(sleep 3; touch ${lived}) & wait`), 0.3);
    await expect(ear.hear(sound)).rejects.toThrow(/within 0.3 seconds/);
    await new Promise((resolve) => setTimeout(resolve, 3_500));
    expect(existsSync(lived)).toBe(false);
    await ear.close();
  });
});

describe('an address as an ear', () => {
  let server: Server;
  const serve = async (answer: RequestListener): Promise<string> => {
    server = createServer(answer);
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    return `http://127.0.0.1:${(server.address() as AddressInfo).port}/hear`;
  };
  afterEach(() => {
    server.closeAllConnections();
    server.close();
  });

  it('is posted the sound and answers text or JSON', async () => {
    const got: { type: string | undefined; body: string }[] = [];
    const types = ['text/plain', 'application/json; charset=utf-8'];
    const url = await serve((request, response) => {
      const parts: Buffer[] = [];
      request.on('data', (part: Buffer) => parts.push(part));
      request.on('end', () => {
        got.push({ type: request.headers['content-type'], body: Buffer.concat(parts).toString() });
        const type = types[got.length - 1]!;
        response.setHeader('content-type', type);
        response.end(type === 'text/plain' ? '0.8\tnext step\n' : '{"text":"next step"}');
      });
    });
    const ear = earByHttp(url);
    expect(await ear.hear(sound)).toEqual([{ text: 'next step', confidence: 0.8 }]);
    expect((await ear.hear(sound))[0]?.text).toBe('next step');
    expect(got).toEqual([
      { type: 'audio/wav', body: readFileSync(sound, 'utf8') },
      { type: 'audio/wav', body: readFileSync(sound, 'utf8') },
    ]);
  });

  it('that says nothing of its type is taken as text', async () => {
    const url = await serve((_request, response) => void response.end('next step'));
    expect((await earByHttp(url).hear(sound))[0]?.text).toBe('next step');
  });

  it.each([
    [
      'answers with a page',
      /neither text\/plain nor JSON/,
      (_request, response) => {
        response.setHeader('content-type', 'text/html; charset=utf-8');
        response.end('<p>finish the rice</p>');
      },
    ],
    ['refuses', /answered 503/, (_request, response) => response.writeHead(503).end()],
    [
      'sends elsewhere',
      /cannot be reached/,
      (_request, response) => response.writeHead(302, { location: '/else' }).end(),
    ],
    ['never answers', /within 0.3 seconds/, () => undefined],
    [
      'stops half way',
      /cannot be reached/,
      (_request, response) => {
        response.write('0.9\t');
        setTimeout(() => response.destroy(), 20);
      },
    ],
    [
      'never stops',
      /too long/,
      (_request, response) => {
        const more = () => response.write('x'.repeat(10_000), () => setImmediate(more));
        more();
      },
    ],
  ] satisfies [string, RegExp, RequestListener][])('is named where it %s', async (_what, why, answer) => {
    await expect(earByHttp(await serve(answer), 0.3).hear(sound)).rejects.toThrow(why);
  });

  it('is named where nobody is there', async () => {
    const url = await serve(() => undefined);
    await new Promise((resolve) => server.close(resolve));
    await expect(earByHttp(url).hear(sound)).rejects.toThrow(/cannot be reached/);
  });
});

vi.setConfig({ testTimeout: 30_000 });
