import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  silence,
  step,
  type Effect,
  type Voice,
  type VoiceEvent,
} from '../../src/web/client/voice/machine.js';

const run = (
  events: readonly VoiceEvent[],
  reader: Voice['reader'] = 'page',
): { voice: Voice; effects: readonly Effect[] } => {
  let voice = silence(reader);
  const effects: Effect[] = [];
  for (const event of events) {
    const done = step(voice, event);
    voice = done.voice;
    effects.push(...done.effects);
  }
  return { voice, effects };
};
const does = (events: readonly VoiceEvent[], reader?: Voice['reader']): string[] =>
  run(events, reader).effects.map((effect) => effect.do);

const answer = (...sentences: string[]): VoiceEvent => ({ on: 'answer', sentences });
const heard: VoiceEvent = { on: 'ear-heard', hypotheses: [{ text: 'where is the rice' }] };
const timer: VoiceEvent = { on: 'due', id: 'timer.r1.1', sentences: ['The rice timer is done.'] };
const note: VoiceEvent = { on: 'told', id: 'note.1', sentences: ['Dele took the ham.'] };

describe('ear and mouth', () => {
  it('what was held and said is sent, with the mark at which the answer was cut off', () => {
    const { effects } = run([
      answer('One.', 'Two.'),
      { on: 'sentence', at: 1 },
      { on: 'talk' },
      { on: 'ear-open' },
      { on: 'talked' },
      heard,
    ]);
    expect(effects.map((effect) => effect.do)).toEqual([
      'speak',
      'hush',
      'open-ear',
      'tone',
      'end-ear',
      'tone',
      'deliver',
    ]);
    expect(effects.at(-1)).toMatchObject({ cutAt: 's2' });
  });

  it('takes what is heard once, though the recogniser ends twice', () => {
    expect(
      does([{ on: 'talk' }, heard, heard, { on: 'ear-failed', reason: 'failed' }]).filter(
        (what) => what === 'deliver',
      ),
    ).toHaveLength(1);
  });

  it('never speaks into an open ear: what was told waits for the answer', () => {
    const before: VoiceEvent[] = [{ on: 'talk' }, { on: 'ear-open' }, note];
    expect(does(before)).not.toContain('speak');
    expect(does([...before, heard])).not.toContain('speak');
    const { effects } = run([...before, heard, answer('On the shelf.'), { on: 'said' }, { on: 'said' }]);
    expect(effects.filter((effect) => effect.do === 'speak').map((effect) => effect.sentences)).toEqual([
      ['On the shelf.'],
      ['Dele took the ham.'],
    ]);
    expect(effects.at(-1)).toEqual({ do: 'ack', id: 'note.1' });
  });

  it('a timer whose speech failed is not acknowledged, and goes on ringing', () => {
    const { voice, effects } = run([
      timer,
      { on: 'mouth-failed', at: 0 },
      { on: 'ring-again' },
      { on: 'said' },
    ]);
    expect(effects.map((effect) => effect.do)).not.toContain('ack');
    expect(voice.doing.is).toBe('ringing');
    expect(effects.filter((effect) => effect.do === 'announce').length).toBeGreaterThan(0);
  });

  it('a timer is acknowledged when a person stops it, by Stop or by the big button', () => {
    for (const press of ['stop', 'talk'] as const) {
      const { voice, effects } = run([timer, { on: press }]);
      expect(effects).toContainEqual({ do: 'ack', id: 'timer.r1.1' });
      expect(effects.map((effect) => effect.do)).not.toContain('open-ear');
      expect(voice.doing.is).toBe('silent');
    }
  });

  it('stops ringing, and acknowledges nothing, when another device stopped it', () => {
    const { voice, effects } = run([timer, { on: 'stopped-elsewhere', id: 'timer.r1.1' }]);
    expect(voice.doing.is).toBe('silent');
    expect(effects.map((effect) => effect.do)).not.toContain('ack');
  });

  it('a timer pauses an answer, which goes on at its sentence', () => {
    const { effects } = run([
      answer('One.', 'Two.', 'Three.'),
      { on: 'sentence', at: 1 },
      timer,
      { on: 'stop' },
    ]);
    expect(effects.filter((effect) => effect.do === 'speak').at(-1)).toEqual({
      do: 'speak',
      sentences: ['One.', 'Two.', 'Three.'],
      from: 1,
    });
  });

  it('gives a screen reader what the voice could not speak, and says once that it failed', () => {
    const { effects } = run([
      answer('One.', 'Two.'),
      { on: 'sentence', at: 0 },
      { on: 'mouth-failed', at: 1 },
      answer('Three.'),
    ]);
    expect(effects.filter((effect) => effect.do === 'announce').map((effect) => effect.sentences)).toEqual([
      ['Two.'],
      ['Three.'],
    ]);
    expect(effects.filter((effect) => effect.do === 'notice')).toHaveLength(1);
  });

  it('leaves everything to the screen reader where that was chosen', () => {
    expect(does([answer('One.'), note], 'screen-reader')).toEqual(['announce', 'announce']);
  });

  const anyEvent: fc.Arbitrary<VoiceEvent> = fc.oneof(
    ...(
      ['talk', 'talked', 'dropped', 'ear-open', 'ring-again', 'said', 'stop', 'again', 'no-answer'] as const
    ).map((on) => fc.constant<VoiceEvent>({ on })),
    fc.constant(heard),
    fc.constant<VoiceEvent>({ on: 'ear-failed', reason: 'failed' }),
    fc.constant<VoiceEvent>({ on: 'typed', text: 'next' }),
    fc.nat({ max: 5 }).map((n): VoiceEvent => answer(`Answer ${n}.`, 'And more.')),
    fc.nat({ max: 3 }).map((n): VoiceEvent => ({ on: 'told', id: `t${n}`, sentences: [`Told ${n}.`] })),
    fc.nat({ max: 3 }).map((n): VoiceEvent => ({ on: 'due', id: `r${n}`, sentences: [`Due ${n}.`] })),
    fc.nat({ max: 3 }).map((n): VoiceEvent => ({ on: 'stopped-elsewhere', id: `r${n}` })),
    fc.nat({ max: 3 }).map((at): VoiceEvent => ({ on: 'sentence', at })),
    fc.nat({ max: 3 }).map((at): VoiceEvent => ({ on: 'mouth-failed', at })),
    fc
      .constantFrom<Voice['reader']>('page', 'screen-reader')
      .map((reader): VoiceEvent => ({ on: 'reader', reader })),
  );

  it('whatever happens in whatever order: nothing is spoken into the ear, no ring ends by itself, nothing told is lost', () => {
    fc.assert(
      fc.property(fc.array(anyEvent, { maxLength: 40 }), (events) => {
        let voice = silence('page');
        const told = new Set<string>();
        const settled = new Set<string>();
        for (const event of events) {
          const ringing = new Set(voice.rings.map(({ id }) => id));
          const { voice: after, effects } = step(voice, event);
          if (event.on === 'told' && !settled.has(event.id)) told.add(event.id);
          if (event.on === 'stopped-elsewhere') settled.add(event.id);
          for (const effect of effects) {
            if (effect.do === 'ack') settled.add(effect.id);
            if (effect.do === 'announce' && effect.telling !== null) settled.add(effect.telling);
            if (effect.do === 'speak' || effect.do === 'announce')
              expect(after.doing.is).not.toBe('listening');
          }
          for (const id of ringing)
            if (!after.rings.some((ring) => ring.id === id))
              expect(['stop', 'talk', 'stopped-elsewhere']).toContain(event.on);
          for (const id of told) {
            const kept =
              settled.has(id) ||
              after.waiting.some(({ saying }) => saying.telling === id) ||
              (after.doing.is === 'speaking' && after.doing.saying.telling === id);
            expect(kept, `${id} after ${event.on}`).toBe(true);
          }
          voice = after;
        }
        // Left to itself, nothing waits for ever behind a silence.
        if (voice.doing.is === 'silent') expect([voice.waiting.length, voice.rings.length]).toEqual([0, 0]);
      }),
    );
  });
});
