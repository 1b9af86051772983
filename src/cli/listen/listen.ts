/** `tellshelf listen`: a small computer as ear and mouth, for the store on it or for a service elsewhere. */
import { randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { Option, type Command } from 'commander';
import type { TurnReply } from '../../../shared/wire/turn.js';
import type { Mouth } from '../mouth.js';
import { EarFault, type Ear } from './ears/ear.js';
import type { Guess } from './combine.js';
import { ownWords, type OwnWords } from './own-words.js';
import { RecogniserMissing } from './recogniser.js';
import type { Talker, TalkerEvents } from './talker.js';

export interface ListenOptions {
  readonly wav?: readonly string[];
  readonly ear?: string;
  readonly grammar: boolean;
  readonly mouth?: string;
  readonly quiet?: boolean;
  readonly record?: string;
  readonly wake?: string;
  readonly press?: boolean;
  readonly data: string;
  readonly household?: string;
  readonly service?: string;
  readonly key?: string;
}

const openEar = async ({ ear, grammar }: ListenOptions): Promise<Ear> => {
  if (ear === undefined) return (await import('./ears/pocketsphinx.js')).earByPocketSphinx(grammar);
  if (/^https?:\/\//.test(ear)) return (await import('./ears/http.js')).earByHttp(ear);
  if (/^wyoming:\/\//.test(ear)) return (await import('./adapters/wyoming.js')).earByWyoming(ear);
  return (await import('./ears/command.js')).earByCommand(ear);
};

const openMouth = async ({ quiet, mouth }: ListenOptions): Promise<Mouth> => {
  const { findMouth, mouthBy, silentMouth } = await import('../mouth.js');
  if (quiet === true) return silentMouth();
  return mouth === undefined ? (findMouth() ?? silentMouth()) : mouthBy(mouth);
};

const openTalker = async (options: ListenOptions, events: TalkerEvents): Promise<Talker> => {
  if (options.service === undefined) return (await import('./here.js')).talkHere(options, events);
  if (options.key === undefined)
    throw new Error('Say this device’s key for that service: --key, or TELLSHELF_KEY in the environment.');
  return (await import('./there.js')).talkThere({ service: options.service, key: options.key }, events);
};

/** Milliseconds that changes are gathered for before the names are taken anew. */
const GATHER = 1_000;
/** A recogniser that failed so often running does not work. */
const FAILS = 3;

/** Ends when the sound files are answered, or never. */
export const listen = async (options: ListenOptions): Promise<void> => {
  const print = (line: string): void => void process.stdout.write(`${line}\n`);
  const tell = (line: string): void => void process.stderr.write(`(${line})\n`);
  const [ear, mouth] = await Promise.all([openEar(options), openMouth(options)]);

  let learning = Promise.resolve();
  const learn = (): Promise<void> =>
    (learning = learning
      .then(() => ear.learn(talker.lists))
      .catch((error: unknown) => tell(error instanceof Error ? error.message : String(error))));
  let gathering: NodeJS.Timeout | undefined;
  const talker = await openTalker(options, {
    tell,
    onChanged: () => {
      clearTimeout(gathering);
      gathering = setTimeout(() => void learn(), GATHER).unref();
    },
    onUnasked: async ({ text, ssml }) => {
      print(`said: ${text}`);
      await mouth.say(ssml);
    },
  });
  await learn();

  const sayOwn = async (which: keyof OwnWords): Promise<null> => {
    const words = ownWords(talker.locale())[which];
    print(`said: ${words}`);
    await mouth.say(`<speak>${words}</speak>`);
    return null;
  };
  let fails = 0;
  /** Null: the recogniser failed. */
  const guessesOf = async (file: string): Promise<readonly Guess[] | null> => {
    try {
      const guesses = await ear.hear(file);
      fails = 0;
      return guesses;
    } catch (error) {
      if (!(error instanceof EarFault)) throw error;
      // The cook is told that it failed; why, whoever watches over it.
      tell(error.message);
      process.exitCode = 1;
      fails += 1;
      return null;
    }
  };
  const answer = async (file: string): Promise<TurnReply | null> => {
    const guesses = await guessesOf(file);
    if (guesses === null) return sayOwn(fails < FAILS ? 'deaf' : 'deafStill');
    print(`heard: ${guesses[0]?.text ?? '(nothing)'}`);
    try {
      const reply = await talker.turn({ id: randomUUID(), conversation: 'listen', hypotheses: [...guesses] });
      print(`said: ${reply.speech.text}`);
      await mouth.say(reply.speech.ssml);
      return reply;
    } catch (error) {
      tell(error instanceof Error ? error.message : String(error));
      return sayOwn('lost');
    }
  };

  const { prepare, recorder, waker } = await import('./sound.js');
  const folder = await mkdtemp(join(tmpdir(), 'tellshelf-sound-'));
  try {
    if (ear.deafTo.length > 0) tell(`These names cannot be recognised: ${ear.deafTo.join(', ')}.`);
    const sound = join(folder, 'turn.wav');
    if (options.wav !== undefined) {
      for (const file of options.wav) {
        await prepare(resolve(file), sound).catch((error: unknown) => {
          if (error instanceof RecogniserMissing) throw error;
          throw new Error(`${file} cannot be read as sound.`, { cause: error });
        });
        await answer(sound);
      }
      return;
    }
    const [record, awake] = [recorder(options.record), waker(options.wake, options.press === true)];
    print(
      options.wake === undefined && options.press !== true
        ? 'Listening. Talk, then pause. Control-C ends.'
        : 'Ready. Control-C ends.',
    );
    for (let asked = false; ;) {
      // Who was asked something may answer at once.
      if (!asked) await awake();
      mouth.hush();
      const raw = join(folder, 'raw.wav');
      await record(raw);
      await prepare(raw, sound);
      const reply = await answer(sound);
      asked = reply !== null && reply.expects.kind !== 'open';
    }
  } finally {
    clearTimeout(gathering);
    await learning;
    await Promise.all([ear.close(), talker.close(), rm(folder, { recursive: true, force: true })]);
  }
};

export const addListenCommand = (program: Command): void => {
  program
    .command('listen')
    .description(
      'hear by microphone or from sound files, answer aloud; offline, or as ear and mouth of a service elsewhere',
    )
    .option('--wav <files...>', 'sound files to answer, one utterance each, instead of the microphone')
    .option(
      '--ear <command or address>',
      'a recogniser in place of the offline one: a command given a sound file, or an address to post it to',
    )
    .option('--no-grammar', 'only the offline ear’s open recogniser, without the listening grammar beside it')
    .option('--mouth <command>', 'speak by this command, which reads SSML, in place of espeak-ng')
    .option('--quiet', 'print the answers without speaking them')
    .option('--record <command>', 'record by this command, given the file to write, in place of SoX')
    .option('--wake <command>', 'wait before each talk until this command ends: a button, a wake word')
    .option('--press', 'wait before each talk for the Enter key')
    .option('--data <dir>', 'folder of the embedded store', process.env['DATA_DIR'] ?? '.data')
    .option('--household <id>', 'which household, when there are several')
    .addOption(
      new Option('--service <url>', 'ask a running service, not the store here').env('TELLSHELF_SERVICE'),
    )
    .addOption(new Option('--key <key>', 'this device’s key for that service').env('TELLSHELF_KEY'))
    .action((options: ListenOptions) => listen(options));
};
