/** WAV files (RIFF: chunks of four letters, a length, content, padded to even). */

export interface Wav {
  /** 1: plain samples. */
  readonly form: number;
  readonly channels: number;
  /** Samples a second. */
  readonly rate: number;
  readonly bits: number;
  readonly samples: Buffer;
}

/** Null for what is none. */
export const readWav = (file: Buffer): Wav | null => {
  if (
    file.length < 12 ||
    file.toString('latin1', 0, 4) !== 'RIFF' ||
    file.toString('latin1', 8, 12) !== 'WAVE'
  )
    return null;
  let format: Buffer | null = null;
  for (let at = 12; at + 8 <= file.length;) {
    const name = file.toString('latin1', at, at + 4);
    const length = file.readUInt32LE(at + 4);
    const content = file.subarray(at + 8, at + 8 + length);
    if (name === 'fmt ' && content.length >= 16) format = content;
    if (name === 'data' && format !== null)
      return {
        form: format.readUInt16LE(0),
        channels: format.readUInt16LE(2),
        rate: format.readUInt32LE(4),
        bits: format.readUInt16LE(14),
        samples: content,
      };
    at += 8 + length + (length % 2);
  }
  return null;
};

/** As recognisers here take it: mono, 16 bits, 16,000 a second. */
export const isAsWanted = ({ form, channels, rate, bits }: Wav): boolean =>
  form === 1 && channels === 1 && rate === 16_000 && bits === 16;
