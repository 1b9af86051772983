/**
 * `tellshelf talk --play [FILE]`: a conversation written down (`shared/demo/evening.cast`) is held anew with a
 * demo kitchen of its own, printed and, where there is a voice, spoken: the cook in one voice, the answers in another.
 */
import { randomUUID } from 'node:crypto';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { projectFile } from '../../project-files.js';
import { findMouth, mouthBy, silentMouth } from '../mouth.js';
import { openEngine } from './engine.js';

export interface CastTurn {
  readonly said: string;
  /** The answer when it was written down; null where none was. */
  readonly answered: string | null;
}

export interface Cast {
  /** Household wall time it begins at. */
  readonly at: string | null;
  readonly turns: readonly CastTurn[];
}

/** @throws Error naming the line that cannot be read. */
export const readCast = (text: string): Cast => {
  let at: string | null = null;
  const turns: { said: string; answered: string | null }[] = [];
  for (const [index, line] of text.split(/\r?\n/).entries()) {
    const [, sign, words = ''] = /^(at|[><])\s+(.*\S)\s*$/.exec(line) ?? [];
    const last = turns.at(-1);
    if (sign === '>') turns.push({ said: words, answered: null });
    else if (sign === '<' && last) last.answered = last.answered ? `${last.answered} ${words}` : words;
    else if (sign === 'at' && turns.length === 0) at = words;
    else if (line.trim() !== '' && !line.startsWith('#'))
      throw new Error(`Line ${index + 1} of the conversation is none of: "at TIME", "> words", "< words".`);
  }
  return { at, turns };
};

export const EVENING = projectFile('shared', 'demo', 'evening.cast');

export interface PlayOptions {
  /** A cast of one's own; the evening that comes with the program when left out. */
  readonly file?: string | undefined;
  readonly quiet: boolean;
  /** A command that speaks SSML, in place of espeak-ng. */
  readonly mouth?: string | undefined;
  readonly print: (line: string) => void;
}

const escaped = (text: string): string =>
  text.replace(/[&<>]/g, (char) => ({ '&': '&amp;', '<': '&lt;' })[char] ?? '&gt;');

export const play = async ({ file, quiet, mouth, print }: PlayOptions): Promise<void> => {
  const cast = readCast(await readFile(file ?? EVENING, 'utf8'));
  const own = mouth === undefined ? findMouth : () => mouthBy(mouth);
  const [cook, service] = quiet
    ? [silentMouth(), silentMouth()]
    : [own('en+f3') ?? silentMouth(), own() ?? silentMouth()];
  const folder = await mkdtemp(join(tmpdir(), 'tellshelf-play-'));
  const engine = await openEngine({
    data: folder,
    fresh: true,
    ...(cast.at === null ? {} : { at: cast.at }),
  });
  try {
    for (const { said } of cast.turns) {
      print(`> ${said}`);
      await cook.say(`<speak>${escaped(said)}</speak>`);
      const { speech } = await engine.households.takeTurn(
        { householdId: engine.householdId, personId: null, deviceId: null, owner: true },
        { id: randomUUID(), conversation: 'cast', hypotheses: [{ text: said }] },
      );
      print(`${speech.text}\n`);
      await service.say(speech.ssml);
    }
  } finally {
    await engine.store.close();
    await rm(folder, { recursive: true, force: true });
  }
};
