/** `tellshelf talk`: a conversation in a terminal, or from a pipe, with the engine the service runs. */
import { randomUUID } from 'node:crypto';
import { createInterface } from 'node:readline/promises';
import type { Command } from 'commander';
import { limits, type TurnReply } from '../../../shared/wire/turn.js';
import type { WhyMove } from '../../turn/index.js';
import type { Mouth } from '../mouth.js';
import type { Engine } from './engine.js';
import type { Line } from './read-line.js';

interface Flags {
  readonly json?: true;
  readonly why?: true;
  readonly quiet?: true;
  readonly at?: string;
  readonly data: string;
  readonly fresh?: true;
  readonly household?: string;
  readonly locale?: string;
  readonly kitchen?: string;
  readonly mouth?: string;
  readonly play?: string | true;
}

interface Taken {
  readonly reply: TurnReply;
  /** How it came to it, where that was asked for. */
  readonly moves: readonly WhyMove[];
}

type TurnLine = Extract<Line, { kind: 'turn' }>['turn'];

const CONVERSATION = 'terminal';
// Who may run this can read and write the store itself.
const NOBODY_KNOWN = { personId: null, deviceId: null, owner: true };

const whatFailed = (error: unknown): string => {
  const fault = (error as { fault?: unknown } | null)?.fault;
  switch (fault) {
    case 'disk-full':
      return 'There is no room left to keep that. Nothing was changed.';
    case 'busy':
    case 'unavailable':
      return 'I cannot get at the record just now. Nothing was changed. Say it again in a moment.';
    default:
      return 'The record failed me. I do not know whether that was kept: ask me before you say it again.';
  }
};

const talkIn = async (engine: Engine, flags: Flags): Promise<void> => {
  const [{ readLine }, { asJsonLine, asPlainLine }, { asWhyLines }] = await Promise.all([
    import('./read-line.js'),
    import('./print.js'),
    import('./why.js'),
  ]);
  const speaker = { householdId: engine.householdId, ...NOBODY_KNOWN };
  // A conversation of its own each time: yesterday's open question is not asked again.
  const conversation = `${CONVERSATION}.${randomUUID()}`;

  const take = async (turn: TurnLine): Promise<Taken> => {
    let moves: readonly WhyMove[] = [];
    const reply = await engine.households.takeTurn(
      speaker,
      {
        id: randomUUID(),
        conversation,
        ...(flags.locale === undefined ? {} : { locale: flags.locale }),
        ...turn,
      },
      [],
      flags.why ? (why) => (moves = why) : undefined,
    );
    return { reply, moves };
  };
  const show = ({ reply, moves }: Taken): string => {
    if (flags.json) return asJsonLine(reply, flags.why ? moves : undefined);
    return flags.why ? `${asPlainLine(reply)}\n${asWhyLines(moves)}` : asPlainLine(reply);
  };

  const tooLong = (turn: TurnLine): boolean =>
    turn.hypotheses.some(({ text }) => text.length > limits.utterance);

  const answer = async (
    text: string,
  ): Promise<{ readonly said: string; readonly reply: TurnReply | null }> => {
    const line = readLine(text);
    if (line.kind === 'unknown') return { said: plain(line.why), reply: null };
    if (line.kind === 'at') {
      try {
        engine.clock.hold(line.wall);
      } catch (error) {
        return { said: plain((error as Error).message), reply: null };
      }
      return { said: plain(`It is ${line.wall}.`), reply: null };
    }
    if (tooLong(line.turn))
      return { said: plain('That was too long for me. Say it in fewer words.'), reply: null };
    try {
      const taken = await take(line.turn);
      return { said: show(taken), reply: taken.reply };
    } catch (error) {
      // The store, not the turn: the conversation goes on when it can be reached again.
      console.error(`(${error instanceof Error ? error.message : String(error)})`);
      return { said: plain(whatFailed(error)), reply: null };
    }
  };
  const plain = (words: string): string => (flags.json ? JSON.stringify({ note: words }) : words);

  if (process.stdin.isTTY) await interactive(engine, flags, answer);
  else await piped(answer);
};

type Answer = (text: string) => Promise<{ readonly said: string; readonly reply: TurnReply | null }>;

/** One utterance a line in, one answer a line out. */
const piped = async (answer: Answer): Promise<void> => {
  const lines = createInterface({ input: process.stdin, crlfDelay: Infinity });
  for await (const line of lines) process.stdout.write(`${(await answer(line)).said}\n`);
};

const isGoodbye = (reply: TurnReply | null): boolean => reply?.understood.intents[0] === 'goodbye';

const interactive = async (engine: Engine, flags: Flags, answer: Answer): Promise<void> => {
  const { findMouth, mouthBy, silentMouth } = await import('../mouth.js');
  const voice = (): Mouth | null => (flags.mouth === undefined ? findMouth() : mouthBy(flags.mouth));
  const mouth: Mouth = flags.quiet ? silentMouth() : (voice() ?? silentMouth());
  const terminal = createInterface({ input: process.stdin, output: process.stdout, prompt: 'You: ' });
  const { unaskedIn } = await import('./unasked.js');
  const stop = unaskedIn(engine, (spoken) => {
    process.stdout.write(`\r${spoken.text}\n`);
    void mouth.say(spoken.ssml);
    terminal.prompt(true);
  });
  process.stdout.write(
    `${engine.kitchen.household.name}. Say what you would to a helper, or "help". "Goodbye" leaves.\n`,
  );
  terminal.prompt();
  for await (const line of terminal) {
    mouth.hush();
    if (line.trim() !== '') {
      const { said, reply } = await answer(line);
      process.stdout.write(`${said}\n`);
      if (reply) void mouth.say(reply.speech.ssml);
      if (isGoodbye(reply)) break;
    }
    terminal.prompt();
  }
  stop();
  terminal.close();
};

export const addTalkCommand = (program: Command): void => {
  program
    .command('talk')
    .description('Hold a conversation in the terminal. The first time, it is about a demo kitchen.')
    .option('--json', 'print each turn as one JSON line: intent, slots, confidence, changes, speech')
    .option(
      '--why',
      'under each answer, what was heard, what was left over, who took it and which phrases said so',
    )
    .option('--quiet', 'do not speak aloud')
    .option('--at <time>', 'hold the clock at a household time, e.g. 2026-05-14T18:00')
    .option('--data <dir>', 'folder of the store', process.env['DATA_DIR'] ?? '.data')
    .option('--household <id>', 'which household, where there are several')
    .option(
      '--locale <tag>',
      'language of this conversation, e.g. es-MX; names stay as the household has them',
    )
    .option(
      '--kitchen <file>',
      'begin from this kitchen file, of the form of shared/demo, not the demo kitchen',
    )
    .option('--mouth <command>', 'speak by this command, which reads SSML, in place of espeak-ng')
    .option('--play [file]', 'hold a conversation that was written down, with a demo kitchen of its own')
    .option('--fresh', 'start again from that kitchen; what was in it before is gone')
    .addHelpText(
      'after',
      `
Fed by a pipe it answers one utterance a line. Lines that begin with ! do what a keyboard cannot:
  !touch CODE [words]    touch the marker with that code
  !cut MARK [words]      the answer was cut off at that mark (s1, s2 …)
  !heard A | B           the recogniser's guesses, best first
  !at 2026-05-14T18:30   hold the clock at that household time`,
    )
    .action(async (flags: Flags) => {
      if (flags.play !== undefined) {
        const { play } = await import('./play.js');
        return play({
          file: flags.play === true ? undefined : flags.play,
          quiet: flags.quiet === true,
          mouth: flags.mouth,
          print: (line) => void process.stdout.write(`${line}\n`),
        });
      }
      const { openEngine } = await import('./engine.js');
      const engine = await openEngine({
        data: flags.data,
        databaseUrl: process.env['DATABASE_URL'],
        at: flags.at,
        fresh: flags.fresh === true,
        household: flags.household,
        kitchen: flags.kitchen,
      });
      try {
        await talkIn(engine, flags);
      } finally {
        await engine.store.close();
      }
    });
};
