/** `tellshelf listen`: a small home computer as ear and mouth, with nothing leaving the house. */
import { spawnSync } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { randomUUID } from 'node:crypto';
import type { Command } from 'commander';
import type { TurnReply, TurnRequest } from '../../../shared/wire/turn.js';
import { exportJsgf } from '../grammar-export.js';
import { combine, type Guess } from './combine.js';
import { phrasesOf } from './phrases.js';
import { openRecogniser, run, type Recogniser } from './recogniser.js';

interface Options {
  readonly wav?: readonly string[];
  readonly grammar: boolean;
  readonly quiet?: boolean;
  readonly data: string;
  readonly household?: string;
  readonly service?: string;
  readonly token?: string;
}

/** Any sound file as the recogniser wants it, with a little silence at both ends. */
const prepare = async (from: string, to: string): Promise<void> =>
  run('sox', ['-G', from, '-r', '16000', '-c', '1', '-b', '16', to, 'pad', '0.3', '0.4']);

/** Records from the default microphone until two seconds of silence. */
const record = async (to: string): Promise<void> =>
  run('rec', [
    ...['-q', '-r', '16000', '-c', '1', '-b', '16', to],
    ...['silence', '1', '0.1', '2%', '1', '2.0', '2%', 'trim', '0', '20'],
  ]);

/** What two recognisers make of recordings, as guesses for a turn. */
export const hear = async (
  files: readonly string[],
  open: Recogniser,
  closed: Recogniser | null,
): Promise<Guess[][]> => {
  const [free, held] = await Promise.all([
    open.recognise(files),
    closed === null ? files.map(() => []) : closed.recognise(files),
  ]);
  return free.map((guesses, index) => combine(guesses, held[index] ?? []));
};

const speak = (ssml: string): void => {
  spawnSync('espeak-ng', ['-m', ssml], { stdio: 'ignore' });
};

const listen = async (options: Options): Promise<void> => {
  const { openEngine } = await import('../talk/engine.js');
  const { createClient } = await import('../../../shared/client/http.js');
  const engine = await openEngine({ data: options.data, fresh: false, household: options.household });
  const remote =
    options.service === undefined
      ? null
      : createClient({
          base: options.service,
          ...(options.token === undefined ? {} : { token: options.token }),
        });
  const take = (request: TurnRequest): Promise<TurnReply> =>
    remote === null
      ? engine.households.takeTurn(
          { householdId: engine.householdId, deviceId: 'listen', personId: null },
          request,
        )
      : remote.turn(request);

  const open = await openRecogniser(null);
  const closed = options.grammar ? await openRecogniser(await exportJsgf(phrasesOf(engine.kitchen))) : null;
  const folder = await mkdtemp(join(tmpdir(), 'tellshelf-sound-'));
  const answer = async (file: string): Promise<void> => {
    const [guesses = []] = await hear([file], open, closed);
    const reply = await take({ id: randomUUID(), conversation: 'listen', hypotheses: guesses });
    process.stdout.write(`heard: ${guesses[0]?.text ?? '(nothing)'}\nsaid: ${reply.speech.text}\n`);
    if (options.quiet !== true) speak(reply.speech.ssml);
  };
  try {
    if (closed !== null && closed.deafTo.length > 0)
      process.stderr.write(`(These names cannot be recognised: ${closed.deafTo.join(', ')}.)\n`);
    const sound = join(folder, 'turn.wav');
    if (options.wav !== undefined) {
      for (const file of options.wav) {
        await prepare(resolve(file), sound);
        await answer(sound);
      }
      return;
    }
    process.stdout.write('Listening. Talk, then pause. Control-C ends.\n');
    for (;;) {
      const raw = join(folder, 'raw.wav');
      await record(raw);
      await prepare(raw, sound);
      await answer(sound);
    }
  } finally {
    await Promise.all([open.close(), closed?.close(), rm(folder, { recursive: true, force: true })]);
    await engine.store.close();
  }
};

export const addListenCommand = (program: Command): void => {
  program
    .command('listen')
    .description(
      'hear by microphone or from sound files, answer aloud; offline (needs pocketsphinx, sox, flite, espeak-ng)',
    )
    .option('--wav <files...>', 'sound files to answer, one utterance each, instead of the microphone')
    .option('--no-grammar', 'only the open recogniser, without the listening grammar beside it')
    .option('--quiet', 'print the answers without speaking them')
    .option('--data <dir>', 'folder of the embedded store', '.data')
    .option('--household <id>', 'which household, when there are several')
    .option('--service <url>', 'ask a running service instead of the store here')
    .option('--token <token>', 'this device’s key for that service')
    .action((options: Options) => listen(options));
};
