/**
 * The CMU pronouncing dictionary, as sorted lines of text that are searched where they lie: a hundred thousand words
 * made into one object take seven times the room.
 */
import { preparedLater } from '../../prepared.js';

const LINE = 0x0a;
const TAB = 0x09;

const pack = async (): Promise<Uint8Array> => {
  const { dictionary } = await import('cmu-pronouncing-dictionary');
  const lines = Object.entries(dictionary).map(([word, sounds]) => `${word}\t${sounds}`);
  return Buffer.from(`\n${lines.sort().join('\n')}\n`, 'latin1');
};

// Without files of its own: it changes with the program, which carries it.
const kept = await preparedLater('pronunciations', [], pack);
const text = Buffer.from(kept.buffer, kept.byteOffset, kept.byteLength);

/** How a word sounds, in the dictionary's symbols with a space between; null for a word that is not in it. */
export const pronunciationOf = (word: string): string | null => {
  // Its words hold nothing but these; what is said may hold anything.
  if (!/^[!-~]+$/.test(word)) return null;
  const wanted = Buffer.from(`${word}\t`, 'latin1');
  let from = 0;
  let to = text.length - 1;
  while (from < to) {
    const middle = (from + to) >> 1;
    const start = text.lastIndexOf(LINE, middle) + 1;
    const end = text.indexOf(LINE, start);
    if (end < 0) {
      to = middle;
      continue;
    }
    const order = Buffer.compare(text.subarray(start, Math.min(end, start + wanted.length)), wanted);
    if (order === 0) return text.toString('latin1', text.indexOf(TAB, start) + 1, end);
    if (order < 0) from = Math.max(end, middle + 1);
    else to = Math.min(start - 1, middle);
  }
  return null;
};
