/**
 * Talk drawn at random, with all that a conversation can be in the middle of: sentences of the written talks and of
 * the talk items, whole, broken and joined, answers to whatever was asked, markers touched, answers cut off, several
 * guesses, two languages, and a clock that runs, jumps and is set back.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { demoKitchen } from '../../src/kitchen/index.js';
import { projectFile } from '../../src/project-files.js';
import { createVoice } from '../../src/speech/index.js';
import { openSqliteStore } from '../../src/store/index.js';
import { createHouseholds, createTongues } from '../../src/turn/index.js';
import type { TurnReply, TurnRequest } from '../../shared/wire/turn.js';
import { readTalk } from '../conversations/script.js';

export interface Broken {
  readonly household: string;
  readonly said: string;
  readonly why: string;
}

export interface AnyTalk {
  readonly turns: number;
  readonly changes: number;
  readonly verdicts: ReadonlyMap<string, number>;
  /** Turns that threw, were answered with a fault, or whose phrase was at fault in English. */
  readonly broken: readonly Broken[];
  /** Milliseconds of processor time of each turn. */
  readonly spent: Float64Array;
  /** The dearest, dearest first. */
  readonly dearest: readonly { readonly turn: number; readonly said: string; readonly spent: number }[];
}

type Random = () => number;

/** The same numbers for the same seed (Park and Miller's). */
export const randomFrom = (seed: number): Random => {
  let state = (seed % 2_147_483_646) + 1;
  return () => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647;
};

const answers =
  'yes|no|the first|the second one|both|all of them|neither|two|half|about a cup|tomorrow|last friday|the fridge|more|stop|undo that|never mind|go on|repeat that|next|done|skip that|why|what|the other one|not that one|him|it|two pounds|yes but the small one|no the blue one|i do not know|thanks'.split(
    '|',
  );
const joints = [' and ', ' no wait ', ' then ', ', ', ' i mean ', ' but ', ' and then '];

/** Everything said in the project's own talks. */
const corpus = (): readonly string[] => {
  const talks = projectFile('tests', 'conversations', 'talks');
  const written = readdirSync(talks)
    .filter((name) => name.endsWith('.talk'))
    .flatMap((name) => readTalk(readFileSync(join(talks, name), 'utf8')).turns.map((turn) => turn.said));
  const items = projectFile('tests', 'data', 'talk');
  const told = readdirSync(items)
    .filter((name) => name.endsWith('.jsonl'))
    .flatMap((name) => readFileSync(join(items, name), 'utf8').split('\n'))
    .filter((line) => line.startsWith('{'))
    .flatMap((line) => {
      const { say, said, before } = JSON.parse(line) as { say?: unknown; said?: unknown; before?: unknown };
      return [say, said, before].flat().filter((one): one is string => typeof one === 'string');
    });
  return [...new Set([...written, ...told])].filter((text) => text !== '').sort();
};

const broken = (text: string, other: string, random: Random): string => {
  const words = text.split(' ');
  const at = Math.floor(random() * words.length);
  switch (Math.floor(random() * 6)) {
    case 0:
      return words.filter((_, n) => n !== at).join(' ');
    case 1:
      return words.slice(0, at + 1).join(' ');
    case 2:
      return words.slice(at).join(' ');
    case 3:
      return [...words.slice(0, at), words[at], ...words.slice(at)].join(' ');
    case 4:
      return [...words.slice(0, at), other.split(' ')[0], ...words.slice(at + 1)].join(' ');
    default:
      return `${text}${joints[Math.floor(random() * joints.length)]!}${other}`;
  }
};

/** A household is talked to so often before the next is begun. */
const TURNS_A_HOUSEHOLD = 400;
const BEGUN = Date.parse('2026-05-14T23:00:00.000Z');
const MINUTE = 60_000;

export const talkAtRandom = async (
  turns: number,
  seed: number,
  each: (reply: TurnReply) => void = () => undefined,
): Promise<AnyTalk> => {
  const random = randomFrom(seed);
  const one = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)]!;
  const sentences = corpus();
  const store = openSqliteStore(':memory:');
  await store.migrate();
  let at = BEGUN;
  const now = (): string => new Date(at).toISOString();
  const faults: Broken[] = [];
  let household = '';
  let said = '';
  const wrong = (why: string): void => void faults.push({ household, said, why });
  const english = createVoice('en-US');
  const households = createHouseholds({
    store,
    tongues: createTongues((error) => {
      // What only Spanish has no wording for yet is said to be so.
      if (!/is in no phrase file|has no wording/.test(error.problem) || !english.phrases.has(error.phrase))
        wrong(error.message);
    }),
    now,
    onFault: ({ error }) => wrong(error instanceof Error ? (error.stack ?? error.message) : String(error)),
  });
  const verdicts = new Map<string, number>();
  const spent = new Float64Array(turns);
  const all: string[] = [];
  let changes = 0;
  let markers: readonly string[] = [];

  const sentence = (): string => {
    const draw = random();
    if (draw < 0.5) return one(sentences);
    if (draw < 0.75) return one(answers);
    return broken(one(sentences), one(sentences), random);
  };
  const draw = (id: string): TurnRequest => {
    const text = random() < 0.02 ? '' : sentence();
    const guesses = random() < 0.1 ? 1 + Math.floor(random() * 5) : 0;
    const others = Array.from({ length: guesses }, () => broken(text || 'the', one(sentences), random));
    const asked: TurnRequest = {
      id,
      conversation: one(['a', 'b']),
      hypotheses: [text, ...others]
        .filter((some) => some !== '')
        .map((some) => ({ text: some.slice(0, 2_000) })),
    };
    if (random() < 0.05) asked.touched = random() < 0.8 ? one(markers) : 'nobody knows this';
    if (random() < 0.05) asked.cutAt = one(['s1', 's2', 's9', '']);
    if (random() < 0.06) asked.locale = one(['es-MX', 'en-GB', 'de-DE']);
    return asked;
  };
  /** On by seconds mostly, by hours and days now and then; back by up to a day. */
  const pass = (): void => {
    const how = random();
    if (how < 0.8) at += random() * 2 * MINUTE;
    else if (how < 0.95) at += random() * 240 * MINUTE;
    else if (how < 0.98) at += random() * 3 * 1440 * MINUTE;
    else at -= random() * 1440 * MINUTE;
  };

  for (let n = 0; n < turns; n += 1) {
    if (n % TURNS_A_HOUSEHOLD === 0) {
      household = `h${n}`;
      at = BEGUN + random() * 300 * 1440 * MINUTE;
      const kitchen = demoKitchen({ now: now(), timeZone: 'America/Chicago' });
      markers = [...kitchen.markers.values()].map((marker) => marker.codes[0] ?? marker.id);
      await store.createHousehold({ ...kitchen, household: { ...kitchen.household, id: household } }, now());
    }
    const asked = draw(`t${n}`);
    said = asked.hypotheses.map(({ text }) => text).join(' | ');
    all.push(said);
    const before = process.cpuUsage();
    try {
      const reply = await households.takeTurn(
        { householdId: household, deviceId: one(['d1', 'd2']), personId: null, owner: random() < 0.5 },
        asked,
      );
      verdicts.set(reply.understood.verdict, (verdicts.get(reply.understood.verdict) ?? 0) + 1);
      changes += reply.changes.length;
      each(reply);
    } catch (error) {
      wrong(error instanceof Error ? (error.stack ?? error.message) : String(error));
    }
    const { user, system } = process.cpuUsage(before);
    spent[n] = (user + system) / 1000;
    pass();
  }
  await store.close();
  const dearest = [...spent.keys()]
    .sort((a, b) => spent[b]! - spent[a]!)
    .slice(0, 20)
    .map((n) => ({ turn: n, said: all[n]!, spent: spent[n]! }));
  return { turns, changes, verdicts, broken: faults, spent, dearest };
};
