/**
 * A language is offered when it is whole: every list of the readers is filled, every phrase is worded at every
 * length and in its own words, and every request there is can be said. Each line below turns green for a language
 * as its folder grows; DEVELOPERS.md tells in what order.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { projectFile } from '../../src/project-files.js';
import { INTENTS } from '../../src/understanding/intents.js';
import { linesOf } from '../../src/understanding/word-lists.js';
import { createPlayer, type Player } from '../accuracy/talk-play.js';
import { talkItemOf } from '../accuracy/talk-items.js';

const data = join(import.meta.dirname, '../data');

interface Lists {
  readonly [name: string]: unknown;
}
const json = (language: string, file: string): Lists =>
  JSON.parse(readFileSync(projectFile('grammars', language, file), 'utf8')) as Lists;

/** Names of all lists in a file, two deep: "deeds.stored". Keys that are a language's own words are none. */
const OF_THE_LANGUAGE = new Set([
  'about',
  'one',
  'clitics',
  'endings',
  'dietsOf',
  'relations',
  'stores',
  'beside',
]);
const listNames = (lists: Lists): readonly string[] =>
  Object.entries(lists).flatMap(([name, value]) => {
    if (OF_THE_LANGUAGE.has(name)) return [];
    if (Array.isArray(value)) return value.length > 0 ? [name] : [];
    return Object.entries(value as Lists).flatMap(([inner, of]) =>
      Array.isArray(of) && of.length > 0 ? [`${name}.${inner}`] : [],
    );
  });

/** What English needs and Spanish says otherwise: "bajarlo" holds what it points at, and a name wants its own article. */
const ENGLISH_ONLY = new Set(['words.is the', 'words.position', 'after.listed', 'pointing.words']);

/** All there are in English: a reader whose file a language lacks says nothing, and nobody would notice. */
const englishFiles = readdirSync(projectFile('grammars', 'en')).filter((file) => file.endsWith('.json'));

describe('every list of the readers that English has', () => {
  test.each(englishFiles)('%s', (file) => {
    expect(existsSync(projectFile('grammars', 'es', file))).toBe(true);
    const spanish = new Set(listNames(json('es', file)));
    expect(listNames(json('en', file)).length).toBeGreaterThan(0);
    const lacking = listNames(json('en', file)).filter(
      (name) => !spanish.has(name) && !ENGLISH_ONLY.has(name),
    );
    expect(lacking).toEqual([]);
  });

  const partsOf = (language: string): ReadonlyMap<string, readonly string[]> => {
    const parts = new Map<string, string[]>();
    let part: string[] = [];
    for (const line of readFileSync(projectFile('grammars', language, 'questions.txt'), 'utf8').split('\n')) {
      if (line.startsWith('[')) parts.set(line, (part = []));
      else if (line.includes(': ') && !line.startsWith('#')) part.push(line.slice(0, line.indexOf(': ')));
    }
    return parts;
  };
  test('questions.txt: words, what is asked, matters and allergens', () => {
    const [english, spanish] = [partsOf('en'), partsOf('es')];
    for (const [part, names] of english)
      expect([...new Set(names)].filter((name) => !spanish.get(part)?.includes(name))).toEqual([]);
  });

  test('steps.txt and step-figures.txt', () => {
    for (const list of ['steps', 'step-figures']) {
      const classes = (language: string) => linesOf(language, list).map((line) => line.split(':')[0]);
      const english =
        list === 'steps'
          ? classes('en').filter((name) => !classes('en').slice(-3).includes(name))
          : classes('en');
      expect(english.filter((name) => !classes('es').includes(name))).toEqual([]);
    }
  });

  test('words of whole files', () => {
    const lists = [
      'adverbs',
      'cookery',
      'elsewhere',
      'foods',
      'food-modifiers',
      'goods',
      'guidance',
      'kitchen-verbs',
    ];
    for (const list of [...lists, 'ordinary', 'other-names'])
      expect([list, linesOf('es', list).length > 0]).toEqual([list, true]);
  });
});

interface Message {
  readonly text: string;
  readonly lengths: ReadonlySet<string>;
}
const messagesOf = (language: string): ReadonlyMap<string, Message> => {
  const folder = projectFile('grammars', language, 'phrases');
  const messages = new Map<string, { text: string; lengths: Set<string> }>();
  for (const name of readdirSync(folder)) {
    let here: { text: string; lengths: Set<string> } | null = null;
    for (const line of readFileSync(join(folder, name), 'utf8').split('\n')) {
      const head = /^([a-z][\w-]*) =/.exec(line)?.[1];
      if (head) messages.set(head, (here = { text: '', lengths: new Set() }));
      const length = /^\s+\.(short|full) =/.exec(line)?.[1];
      if (here && length) here.lengths.add(length);
      if (here && (head ?? /^\s/.test(line))) here.text += `${line}\n`;
    }
  }
  return messages;
};

describe('every phrase', () => {
  const [english, spanish] = [messagesOf('en'), messagesOf('es')];

  test('is worded, at every length it has in English', () => {
    expect(english.size).toBeGreaterThan(1200);
    const lacking = [...english].flatMap(([id, { lengths }]) => {
      const own = spanish.get(id);
      return own ? [...lengths].filter((one) => !own.lengths.has(one)).map((one) => `${id}.${one}`) : [id];
    });
    expect(lacking).toEqual([]);
  });

  test('holds no English word', () => {
    const words =
      /(?<![\p{L}-])(?:the|is|are|was|were|of|with|and|not|you|your|it|in|on|at|from|yes|for|this|that|what|which|there|shelf|fridge|freezer|drawer|food|nothing)(?![\p{L}-])/iu;
    const strangers = [...spanish].flatMap(([id, { text }]) => {
      // What stands in braces is no word of the phrase; names of the guidance's agencies stay as they are.
      const said = text
        .replace(/^[a-z][\w-]* =/gmu, '')
        .replace(/^\s+\.\w+ =/gmu, '')
        .replace(/\*?\[[\w-]+\]/gu, '')
        .replace(/\{[^{}]*\}/gu, ' ')
        .replace(/\{[^\n]*->/gu, ' ')
        .replace(/Food Standards Agency/gu, '');
      const found = words.exec(said)?.[0];
      return found ? [`${id}: ${found}`] : [];
    });
    expect(strangers).toEqual([]);
  });
});

const sentences = readFileSync(join(data, 'spanish/every-request.tsv'), 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .map((line) => line.split('\t'))
  .map(([intent = '', heard = '', said = '']) => ({ intent, heard, said: said.split(' > ') }));

describe('every request', () => {
  let player: Player;
  beforeAll(async () => {
    player = await createPlayer(join(data, 'talk/quiroga-kitchen.json'));
  });
  afterAll(() => player.close());

  test('has a sentence', () => {
    const said = new Set(sentences.map(({ intent }) => intent));
    expect(INTENTS.filter((intent) => !said.has(intent) && intent !== 'tell')).toEqual([]);
  });

  test.each(sentences)('$intent: $said', async ({ intent, heard, said }) => {
    const item = talkItemOf({
      id: `every-${intent}`,
      class: 'every',
      speaker: 'Amparo',
      at: '2026-05-14T18:00',
      before: said.slice(0, -1),
      say: said.at(-1),
      want: {},
    });
    const { turns } = await player.play(item);
    const last = turns.find(({ said: words }, at) => words === said.at(-1) && at === said.length - 1)!;
    expect(last.reply.understood.intents).toContain(heard);
    expect(last.reply.speech.text).not.toMatch(/\b(?:the|is|are|of|with|and|not|you)\b/u);
  });
});

describe('what is only planned, nearly done or denied', () => {
  let player: Player;
  beforeAll(async () => {
    player = await createPlayer(join(data, 'talk/quiroga-kitchen.json'));
  });
  afterAll(() => player.close());

  const linesIn = (name: string): readonly string[] =>
    readFileSync(join(data, 'spanish', name), 'utf8')
      .split('\n')
      .filter((line) => line !== '' && !line.startsWith('#'));
  let played = 0;
  const changesOf = async (say: string): Promise<number> => {
    const { turns } = await player.play(
      talkItemOf({
        id: `planned-${(played += 1)}`,
        class: 'planned',
        speaker: 'Amparo',
        at: '2026-05-14T18:00',
        before: [],
        say,
        want: {},
      }),
    );
    return turns[0]!.reply.changes.length;
  };

  test.each(linesIn('not-done.txt'))('changes nothing: %s', async (said) => {
    expect(await changesOf(said)).toBe(0);
  });
  test.each(linesIn('done.txt'))('done, it is done: %s', async (said) => {
    expect(await changesOf(said)).toBe(1);
  });
});

test('lessons and their kitchen are the one thing not there yet', () => {
  expect(existsSync(projectFile('grammars', 'es', 'lessons'))).toBe(false);
});
