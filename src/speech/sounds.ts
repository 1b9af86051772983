/**
 * Earcons: short sounds before an answer that say of what kind it is, for listeners who like
 * them. Made from notes, so that anyone can change them; each differs in number and direction
 * of its notes, not in pitch alone.
 */
import type { Answer } from './answer.js';
import type { Earcon } from './ssml.js';

export type EarconName = NonNullable<Answer['earcon']>;

/** Frequency in hertz; 0 is a rest. Seconds. */
interface Note {
  readonly hertz: number;
  readonly seconds: number;
}
const note = (hertz: number, seconds = 0.09): Note => ({ hertz, seconds });

const NOTES: Readonly<Record<EarconName, { readonly desc: string; readonly notes: readonly Note[] }>> = {
  done: { desc: 'two rising notes', notes: [note(523), note(784)] },
  question: { desc: 'one note, twice', notes: [note(659, 0.07), note(0, 0.05), note(659, 0.07)] },
  step: { desc: 'one short note', notes: [note(587, 0.07)] },
  alert: { desc: 'three notes, the middle one high', notes: [note(659), note(880), note(659, 0.14)] },
  problem: { desc: 'two falling notes', notes: [note(440), note(294, 0.14)] },
};

export const EARCON_NAMES = Object.keys(NOTES) as readonly EarconName[];

const RATE = 22_050;
/** Quiet beside speech. */
const LOUDNESS = 0.25;
/** Seconds over which a note swells and fades, so that it does not click. */
const FADE = 0.012;

const samplesOf = ({ hertz, seconds }: Note): number[] =>
  Array.from({ length: Math.round(seconds * RATE) }, (_, i) => {
    const at = i / RATE;
    const edge = Math.min(1, at / FADE, (seconds - at) / FADE);
    return Math.sin(2 * Math.PI * hertz * at) * LOUDNESS * Math.max(0, edge);
  });

/** The sound as a WAV file: one channel, 16 bits, 22,050 samples a second. */
export const soundOf = (name: EarconName): Uint8Array => {
  const samples = NOTES[name].notes.flatMap(samplesOf);
  const bytes = new Uint8Array(44 + samples.length * 2);
  const view = new DataView(bytes.buffer);
  const text = (at: number, word: string): void => {
    for (let i = 0; i < word.length; i++) view.setUint8(at + i, word.charCodeAt(i));
  };
  text(0, 'RIFF');
  view.setUint32(4, bytes.length - 8, true);
  text(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true); // PCM
  view.setUint16(22, 1, true); // channels
  view.setUint32(24, RATE, true);
  view.setUint32(28, RATE * 2, true); // bytes a second
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  text(36, 'data');
  view.setUint32(40, samples.length * 2, true);
  samples.forEach((sample, i) => view.setInt16(44 + i * 2, Math.round(sample * 32_767), true));
  return bytes;
};

/** Where each sound is, below a web address or path. A client that cannot play it says nothing instead. */
export const earconsAt = (base: string): Readonly<Record<EarconName, Earcon>> =>
  Object.fromEntries(
    EARCON_NAMES.map((name) => [name, { src: `${base}/${name}.wav`, desc: NOTES[name].desc, text: '' }]),
  ) as Record<EarconName, Earcon>;
