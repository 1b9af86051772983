import { spawnSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { projectFile } from '../../src/project-files.js';
import { createVoice, listAnswer, type Listener } from '../../src/speech/index.js';
import { escapeXml, rateAttribute } from '../../src/speech/ssml.js';
import { problemsInSsml } from './ssml-structure.js';
import { american, answer, listener, say, us } from './helpers.js';

const problemsIn = (documents: readonly string[]): readonly string[] => documents.flatMap(problemsInSsml);

const NASTY = [
  '<script>&amp;"\'</script>',
  'rice & beans <3',
  'سوپ عدس',
  '\u202Eabc\u202C',
  '🍲👩🏽‍🍳',
  'a\u0000b\u0008c\u001Fd\uFFFFe',
  '\uD800 half a pair',
  ']]>',
  'two\nlines\ttab',
  '\uE000our own marks\uE001',
];

describe('SSML', () => {
  it('is a whole document of version 1.1 with rate, marks and sentences', () => {
    const { ssml } = american.render(answer(say('test-extra')), { ...listener, rate: 1.25 }, us);
    expect(ssml).toBe(
      '<speak version="1.1" xmlns="http://www.w3.org/2001/10/synthesis" xml:lang="en-US">' +
        '<prosody rate="125%"><p><mark name="s1"/><s>You may also freeze it.</s></p></prosody></speak>',
    );
  });

  it('fits the structure of the standard, whatever is in a name and however one listens', async () => {
    const voice = createVoice('en-US', {
      folders: [projectFile('grammars'), projectFile('tests', 'data', 'phrases')],
      earcons: { done: { src: 'sounds/done.wav?a=1&b=2', desc: 'a rising "ping"', text: '' } },
    });
    const listeners: Listener[] = [
      listener,
      { ...listener, rate: 0.1, volume: 'silent' },
      { ...listener, rate: 99, whisper: true, earcons: true },
    ];
    const documents = NASTY.flatMap((name) =>
      listeners.map(
        (who) =>
          voice.render(
            {
              ...listAnswer([name, 'b', 'c', 'd', name], { lead: say('test-nested', { place: name }) }),
              earcon: 'done',
            },
            who,
            us,
          ).ssml,
      ),
    );
    expect(problemsIn(documents)).toEqual([]);
  });

  it('would be found wrong by the check if it were', async () => {
    const good = american.render(answer(say('test-extra')), listener, us).ssml;
    for (const bad of [
      good.replace(' version="1.1"', ''),
      good.replace('<s>', '<s><p>').replace('</s>', '</p></s>'),
      good.replace('100%', 'quickly'),
      good.replace('freeze', '<b>freeze</b>'),
      good.replace('</speak>', ''),
      good.replace('<s>', '<mark/><s>'),
      good.replace('name="s1"', 'name="s1" lang="en"'),
      good.replace('<s>', '<break>now</break><s>'),
    ])
      expect(problemsIn([bad]), bad).not.toEqual([]);
  });

  it('gives back any text after escaping', async () => {
    const texts = fc.sample(fc.string({ unit: 'binary', maxLength: 40 }), 100);
    const documents = texts.map((text) =>
      american.render(answer(say('test-nested', { place: text || 'x' })), listener, us),
    );
    expect(problemsIn(documents.map((one) => one.ssml))).toEqual([]);
  });

  it('escapes so that nothing but the text is left when read back', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        const escaped = escapeXml(text);
        expect(escaped).not.toMatch(/[<>"']/);
        expect(escaped).not.toMatch(/&(?!(?:amp|lt|gt|quot|apos);)/);
        const back = escaped
          .replaceAll('&lt;', '<')
          .replaceAll('&gt;', '>')
          .replaceAll('&quot;', '"')
          .replaceAll('&apos;', "'")
          .replaceAll('&amp;', '&');
        expect(back.replace(/\s+/gu, ' ')).toBe(text.replace(/\s+/gu, ' ').trim());
      }),
    );
  });

  it('keeps the pace within what can be followed', () => {
    expect([0.1, 0.5, 1, 1.333, 3, 10, Number.NaN].map(rateAttribute)).toEqual([
      '50%', '50%', '100%', '133%', '300%', '300%', '100%',
    ]); // prettier-ignore
  });

  it('whispers softly, and not louder than asked', () => {
    const ssmlFor = (change: Partial<Listener>): string =>
      american.render(answer(say('test-extra')), { ...listener, ...change }, us).ssml;
    expect(ssmlFor({ whisper: true })).toContain('volume="soft"');
    expect(ssmlFor({ whisper: true, volume: 'x-soft' })).toContain('volume="x-soft"');
    expect(ssmlFor({ volume: 'loud' })).toContain('volume="loud"');
    expect(ssmlFor({})).not.toContain('volume');
  });

  it('plays a sound only for who wants one, with its fallback inside', () => {
    const voice = createVoice('en-US', {
      earcons: { problem: { src: 'https://example.org/p.wav', desc: 'low note', text: 'Problem.' } },
    });
    const one = { parts: [say('list-done')], earcon: 'problem' } as const;
    expect(voice.render(one, listener, us).ssml).not.toContain('audio');
    expect(voice.render(one, { ...listener, earcons: true }, us).ssml).toContain(
      '<audio src="https://example.org/p.wav"><desc>low note</desc>Problem.</audio><mark name="s1"/>',
    );
    expect(voice.render({ ...one, earcon: 'done' }, { ...listener, earcons: true }, us).ssml).not.toContain(
      'audio',
    );
  });

  it('pauses between groups of a list', () => {
    const { ssml } = american.render(
      listAnswer(['a', 'b', 'c', 'd', 'e'], { lead: say('test-extra'), groups: 2, group: 3 }),
      listener,
      us,
    );
    expect(ssml.match(/<break strength="medium"\/>/g)).toHaveLength(1);
  });
});

/** Seconds of sound espeak-ng makes of a document. */
const secondsSpoken = (ssml: string): number => {
  const run = spawnSync('espeak-ng', ['-m', '-v', 'en-us', '-s', '175', '--stdin', '--stdout'], {
    input: ssml,
    maxBuffer: 64 * 1024 * 1024,
  });
  if (run.error !== undefined || run.status !== 0)
    throw new Error(
      'espeak-ng is needed to hear whether the answers can be spoken: install the Debian package "espeak-ng"',
      { cause: run.error },
    );
  // A 44-byte WAV header, then 16-bit samples, one channel.
  return (run.stdout.length - 44) / 2 / run.stdout.readUInt32LE(24);
};

describe('espeak-ng', () => {
  const long = answer(
    say('test-found', {
      item: 'lentil stew with <smoked> paprika & cumin',
      where: 'on the second shelf of the upright freezer, left side',
      days: { kind: 'days', days: 12 },
    }),
    say('test-digits'),
  );
  const sound = (change: Partial<Listener>): number =>
    secondsSpoken(american.render(long, { ...listener, ...change }, us).ssml);

  it('speaks an answer at about the pace of speech', () => {
    const { text } = american.render(long, listener, us);
    const wordsAMinute = (text.split(/\s+/).length / sound({})) * 60;
    expect(wordsAMinute).toBeGreaterThan(100);
    expect(wordsAMinute).toBeLessThan(230);
  });

  it('keeps to the listener’s rate', () => {
    const usual = sound({});
    expect(sound({ rate: 2 }) / usual).toBeLessThan(0.75);
    expect(sound({ rate: 0.5 }) / usual).toBeGreaterThan(1.5);
  });

  it('says the fallback of a sound it cannot play', () => {
    const voice = createVoice('en-US', {
      earcons: {
        alert: { src: 'file:///nowhere/alert.wav', desc: 'alarm', text: 'Attention please, listen now.' },
      },
    });
    const one = { parts: [say('list-done')], earcon: 'alert' } as const;
    const without = secondsSpoken(voice.render(one, listener, us).ssml);
    expect(secondsSpoken(voice.render(one, { ...listener, earcons: true }, us).ssml)).toBeGreaterThan(
      without + 0.8,
    );
  });
});
