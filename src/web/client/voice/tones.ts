/** Short sounds and a tremble of the phone: the ear opened, closed, failed; something rings. */
import type { Tone } from './machine.js';

/** Hertz and seconds; 0 hertz is a rest. They differ in number and direction, not in pitch alone. */
const notes: Readonly<Record<Tone, readonly (readonly [number, number])[]>> = {
  open: [
    [523, 0.06],
    [784, 0.06],
  ],
  closed: [
    [784, 0.06],
    [523, 0.06],
  ],
  failed: [
    [330, 0.12],
    [0, 0.05],
    [247, 0.2],
  ],
  ring: [
    [659, 0.16],
    [880, 0.16],
    [659, 0.16],
    [0, 0.2],
    [659, 0.16],
    [880, 0.16],
    [659, 0.3],
  ],
};

/** Milliseconds on, off, on, for `navigator.vibrate`. */
const trembles: Readonly<Record<Tone, readonly number[]>> = {
  open: [40],
  closed: [25, 60, 25],
  failed: [200],
  ring: [300, 150, 300, 150, 300],
};

const FADE = 0.012;

export interface Tones {
  play(tone: Tone): void;
  stop(): void;
}

export const createTones = (volume: () => number): Tones => {
  let audio: AudioContext | null = null;
  let sounding: OscillatorNode | null = null;

  const sound = (tone: Tone): void => {
    audio ??= new AudioContext();
    void audio.resume();
    const oscillator = audio.createOscillator();
    const gain = audio.createGain();
    oscillator.connect(gain).connect(audio.destination);
    gain.gain.value = 0;
    let at = audio.currentTime + 0.01;
    for (const [hertz, seconds] of notes[tone]) {
      if (hertz > 0) {
        oscillator.frequency.setValueAtTime(hertz, at);
        gain.gain.setValueAtTime(0, at);
        gain.gain.linearRampToValueAtTime(0.25 * volume(), at + FADE);
        gain.gain.setValueAtTime(0.25 * volume(), at + seconds - FADE);
        gain.gain.linearRampToValueAtTime(0, at + seconds);
      }
      at += seconds;
    }
    oscillator.start();
    oscillator.stop(at + 0.05);
    sounding = oscillator;
  };

  return {
    play: (tone) => {
      try {
        sound(tone);
      } catch {
        // No sound device: the tremble and the words are left.
      }
      if ('vibrate' in navigator) navigator.vibrate([...trembles[tone]]);
    },
    stop: () => {
      sounding?.stop();
      sounding = null;
      if ('vibrate' in navigator) navigator.vibrate(0);
    },
  };
};
