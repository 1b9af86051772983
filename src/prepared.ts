/**
 * What takes long to make of the project's data (compiled grammars, fitted weights, checked phrases and tables) is
 * kept as it came out, so that a start reads it back in place of making it. `.run.mjs` names the folder for this very
 * state of the program; a file in it begins with the hash of the data it was made of and of what follows, which is
 * deflated: a fifth of the room, and read back no slower. Without the folder, as in tests, and for data changed since,
 * all is made anew.
 */
import { createHash, randomUUID } from 'node:crypto';
import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { deflateRawSync, inflateRawSync } from 'node:zlib';
import { projectFile } from './project-files.js';

const HASH = 32;
/** Of deflating: what takes longer saves little more. */
const LEVEL = 3;
const hashOf = (...parts: readonly Uint8Array[]): Buffer => {
  const hash = createHash('sha256');
  for (const part of parts) hash.update(part);
  return hash.digest();
};

/** The names count too, as they stand in the project: a file that came or went is a change. */
const hashOfFiles = (files: readonly string[]): Buffer => {
  const home = projectFile();
  return hashOf(
    ...files.flatMap((file) => [hashOf(Buffer.from(relative(home, file))), hashOf(readFileSync(file))]),
  );
};

interface Place {
  readonly file: string;
  /** Hash of what it is made of. */
  readonly made: Buffer;
}

const readBack = ({ file, made }: Place): { readonly value: unknown } | null => {
  try {
    const bytes = readFileSync(file);
    const content = bytes.subarray(2 * HASH);
    return bytes.subarray(0, HASH).equals(made) && bytes.subarray(HASH, 2 * HASH).equals(hashOf(content))
      ? { value: deserialize(inflateRawSync(content)) }
      : null;
  } catch {
    // Not there, or written by a newer Node: made anew.
    return null;
  }
};

const keep = ({ file, made }: Place, value: unknown): void => {
  const content = deflateRawSync(serialize(value), { level: LEVEL });
  const making = `${file}.${randomUUID()}`;
  try {
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(making, Buffer.concat([made, hashOf(content), content]));
    renameSync(making, file);
  } catch {
    // Nobody may write there: it is made at each start.
  }
};

const placeOf = (name: string, files: readonly string[]): Place | null => {
  const folder = process.env['TELLSHELF_PREPARED'];
  return folder === undefined ? null : { file: join(folder, `${name}.bin`), made: hashOfFiles(files) };
};

/**
 * What `make` gives, or gave when it was asked of these very files.
 *
 * @param name of the file it is kept in; one thing a name
 * @param files absolute paths of all that it is made of, in a settled order
 * @param make gives plain data: what the structured clone algorithm can copy
 */
export const prepared = <T>(name: string, files: readonly string[], make: () => T): T => {
  const place = placeOf(name, files);
  const kept = place && readBack(place);
  if (kept) return kept.value as T;
  const value = make();
  if (place) keep(place, value);
  return value;
};

/** As `prepared`, of what takes waiting to make. */
export const preparedLater = async <T>(
  name: string,
  files: readonly string[],
  make: () => Promise<T>,
): Promise<T> => {
  const place = placeOf(name, files);
  const kept = place && readBack(place);
  if (kept) return kept.value as T;
  const value = await make();
  if (place) keep(place, value);
  return value;
};
