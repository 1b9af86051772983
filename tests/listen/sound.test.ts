/** Sound files as they come, with SoX and without. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, describe, expect, it, vi } from 'vitest';
import { prepare, recorder, waker } from '../../src/cli/listen/sound.js';
import { isAsWanted, readWav } from '../../src/cli/listen/wav.js';

const folder = mkdtempSync(join(tmpdir(), 'sound-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
afterEach(() => vi.unstubAllEnvs());

const tone = (name: string, rate: number, channels: number): string => {
  const file = join(folder, name);
  const args = [
    '-n',
    '-r',
    String(rate),
    '-c',
    String(channels),
    '-b',
    '16',
    file,
    'synth',
    '0.2',
    'sine',
    '300',
  ];
  if (spawnSync('sox', args).status !== 0) throw new Error('sox is not installed.');
  return file;
};

describe('a WAV file', () => {
  it('is read with its form and its samples, and nothing else is', () => {
    const wav = readWav(readFileSync(tone('wide.wav', 44_100, 2)));
    expect(wav).toMatchObject({ form: 1, channels: 2, rate: 44_100, bits: 16 });
    expect(wav?.samples.length).toBe(0.2 * 44_100 * 4);
    expect(wav && isAsWanted(wav)).toBe(false);
    for (const other of ['', 'RIFF', 'RIFF....AVI LIST', 'hello '.repeat(20)])
      expect(readWav(Buffer.from(other))).toBeNull();
    // One that says to be longer than it is ends where it ends.
    const whole = readFileSync(tone('cut.wav', 16_000, 1));
    expect(readWav(whole.subarray(0, 60))?.samples.length).toBe(60 - (whole.length - 0.2 * 32_000));
    expect(readWav(whole.subarray(0, 20))).toBeNull();
  });

  it('of any kind is made as recognisers want it', async () => {
    const to = join(folder, 'made.wav');
    await prepare(tone('any.wav', 44_100, 2), to);
    const made = readWav(readFileSync(to));
    expect(made && isAsWanted(made)).toBe(true);
    // Three tenths of a second of silence before it, four after.
    expect(made?.samples.length).toBe(0.9 * 32_000);
  });

  it('that is so already is taken as it is where there is no SoX; any other names what is missing', async () => {
    const [right, wrong] = [tone('right.wav', 16_000, 1), tone('wrong.wav', 8_000, 1)];
    vi.stubEnv('PATH', join(folder, 'nothing'));
    const to = join(folder, 'taken.wav');
    await prepare(right, to);
    expect(readFileSync(to)).toEqual(readFileSync(right));
    await expect(prepare(wrong, to)).rejects.toThrow('sox is not installed.');
  });
});

describe('a recorder and a waker of one’s own', () => {
  it('are run by the shell: the recorder given its file last, the waker waited for', async () => {
    const to = join(folder, 'recorded here.wav');
    writeFileSync(join(folder, 'record'), '#!/bin/sh\nprintf "%s" "$1" > "$2"\n', { mode: 0o755 });
    await recorder(`${join(folder, 'record')} five`)(to);
    expect(readFileSync(to, 'utf8')).toBe('five');
    await waker('true', false)();
    await expect(waker('exit 3', false)()).rejects.toThrow('The wake command ended with 3.');
    await expect(recorder('exit 4; :')(to)).rejects.toThrow('The recording command ended with 4.');
    await waker(undefined, false)();
  });
});
