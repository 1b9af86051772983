import { describe, expect, it } from 'vitest';
import { EARCON_NAMES, earconsAt, soundOf } from '../../src/speech/index.js';
import { say, startService } from '../support/service.js';

describe('earcons', () => {
  it.each(EARCON_NAMES)('%s is a short WAV file that neither clicks nor shouts', (name) => {
    const wav = Buffer.from(soundOf(name));
    expect(wav.toString('latin1', 0, 4)).toBe('RIFF');
    expect(wav.readUInt32LE(4)).toBe(wav.length - 8);
    expect(wav.readUInt32LE(40)).toBe(wav.length - 44);
    const seconds = (wav.length - 44) / 2 / wav.readUInt32LE(24);
    expect(seconds).toBeGreaterThan(0.05);
    expect(seconds).toBeLessThan(0.5);
    const samples = Array.from({ length: (wav.length - 44) / 2 }, (_, i) => wav.readInt16LE(44 + i * 2));
    expect(Math.max(...samples.map(Math.abs))).toBeLessThan(10_000);
    expect(Math.abs(samples[0] ?? 1)).toBe(0);
    expect(Math.abs(samples.at(-1) ?? 9_999)).toBeLessThan(400);
  });

  it('are all different', () => {
    expect(new Set(EARCON_NAMES.map((name) => Buffer.from(soundOf(name)).toString('base64'))).size).toBe(
      EARCON_NAMES.length,
    );
    expect(earconsAt('/sounds').done).toMatchObject({ src: '/sounds/done.wav', text: '' });
  });
});

describe('the service', () => {
  it('sends a sound’s address only to a client that plays them, and serves the sound', async () => {
    const service = await startService();
    try {
      const plain = await say(service, 'put oats on the list');
      expect(plain.speech.ssml).not.toContain('<audio');
      const done = await say(service, 'put rice on the list', { sounds: true });
      expect(done.speech.ssml).toContain('<audio src="/sounds/done.wav">');
      const lost = await say(service, 'who won the cup', { sounds: true });
      expect(lost.speech.ssml).toContain('/sounds/problem.wav');
      const file = await service.app.inject({ url: '/sounds/done.wav' });
      expect(file.statusCode).toBe(200);
      expect(file.headers['content-type']).toBe('audio/wav');
      expect(file.rawPayload.equals(Buffer.from(soundOf('done')))).toBe(true);
      expect((await service.app.inject({ url: '/sounds/other.wav' })).statusCode).toBe(400);
    } finally {
      await service.close();
    }
  });
});
