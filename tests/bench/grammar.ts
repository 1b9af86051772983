/**
 * How fast the grammar engine is: beside general toolkits and a classifier on the same sentences in one run, by
 * length of sentence, by number of names, and on the shipped grammar; and where the time goes.
 */
import { trainClassifier } from './classifier.js';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createRecogniser } from '../../src/grammar/chart.js';
import { createTokenIndex } from '../../src/grammar/index.js';
import type { DynamicRule } from '../../src/grammar/index.js';
import { anyWords, createSampler, openGrammarFile } from '../../src/grammar/tools.js';
import type { OpenGrammar } from '../../src/grammar/tools.js';
import { readAbnf } from '../../src/grammar/reader.js';
import { projectFile } from '../../src/project-files.js';
import { names, sentences } from './kitchen-words.js';
import { nearleyFrom, ohmFrom } from './other-toolkits.js';

const here = dirname(fileURLToPath(import.meta.url));
const file = join(here, 'kitchen.gram');
const say = (line: string): void => void process.stdout.write(`${line}\n`);

interface Times {
  readonly p50: number;
  readonly p99: number;
}

/** Milliseconds a call, each sentence apart, after warming up. */
const measure = (
  inputs: readonly (readonly string[])[],
  rounds: number,
  run: (tokens: readonly string[]) => unknown,
): Times => {
  for (let i = 0; i < Math.max(3, rounds / 5); i++) for (const input of inputs) run(input);
  const times: number[] = [];
  for (let i = 0; i < rounds; i++) {
    for (const input of inputs) {
      const start = performance.now();
      run(input);
      times.push(performance.now() - start);
    }
  }
  times.sort((a, b) => a - b);
  const at = (share: number): number => times[Math.min(times.length - 1, Math.floor(times.length * share))]!;
  return { p50: at(0.5), p99: at(0.99) };
};

const ms = (value: number): string => value.toFixed(value < 1 ? 4 : 2).padStart(9);
const line = (name: string, { p50, p99 }: Times, more = ''): void =>
  say(`  ${name.padEnd(52)} p50 ${ms(p50)} ms   p99 ${ms(p99)} ms${more}`);

const indexOf = (count: number): DynamicRule => {
  const index = createTokenIndex();
  names(count).forEach((name, i) => index.add(name, `n${i}`, { id: `n${i}`, name: name.join(' ') }));
  return index;
};

const ourKitchen = (count: number): { grammar: OpenGrammar; dynamic: Map<string, DynamicRule> } => ({
  grammar: openGrammarFile(file, { roots: [here] }),
  dynamic: new Map([['kitchen:item', indexOf(count)]]),
});

const besideToolkits = (): Times => {
  say('The same grammar and 500 names, the same sentences:');
  const document = readAbnf(readFileSync(file, 'utf8'), file);
  const { grammar, dynamic } = ourKitchen(500);
  const ours = measure(sentences, 200, (tokens) => {
    if (grammar.parse(tokens, { dynamic }).length === 0) throw new Error(`ours refuses ${tokens.join(' ')}`);
  });
  line('ours, with the meaning', ours);
  const toolkits = { nearley: nearleyFrom(document, names(500)), 'ohm-js': ohmFrom(document, names(500)) };
  for (const [name, accepts] of Object.entries(toolkits)) {
    let refused = 0;
    for (const tokens of sentences) if (!accepts(tokens)) refused++;
    const theirs = measure(sentences, 5, accepts);
    const note = refused === 0 ? '' : `, refuses ${refused} of ${sentences.length}`;
    line(`${name}, parse only`, theirs, `   ${(theirs.p50 / ours.p50).toFixed(0)} times ours${note}`);
  }
  return ours;
};

const besideClassifier = async (ours: Times): Promise<void> => {
  const { grammar } = ourKitchen(500);
  const sample = createSampler(grammar);
  let state = 1;
  const random = (): number => (state = (state * 48271) % 2147483647) / 2147483647;
  const all = names(500);
  const examples = Array.from({ length: 600 }, () => {
    const made = sample('request', {
      random,
      host: () => {
        const tokens = all[Math.floor(random() * all.length)]!;
        return { tokens, value: tokens.join(' ') };
      },
    });
    return {
      text: made.tokens.join(' '),
      intent: String((made.value as { intent?: string }).intent),
    };
  });
  const { classify } = await trainClassifier(
    examples,
    all.map((name) => name.join(' ')),
  );
  for (const withNames of [true, false]) {
    for (const tokens of sentences) await classify(tokens.join(' '), withNames);
    const times: number[] = [];
    for (let i = 0; i < 5; i++) {
      for (const tokens of sentences) {
        const text = tokens.join(' ');
        const start = performance.now();
        await classify(text, withNames);
        times.push(performance.now() - start);
      }
    }
    times.sort((a, b) => a - b);
    const theirs = { p50: times[times.length >> 1]!, p99: times[Math.floor(times.length * 0.99)]! };
    line(
      withNames ? '@nlpjs/basic, intent and 500 names' : '@nlpjs/basic, intent only',
      theirs,
      `   ${(theirs.p50 / ours.p50).toFixed(1)} times ours`,
    );
  }
};

const byLength = (): void => {
  say('By length of sentence (a shopping list; ours, with the meaning):');
  const { grammar, dynamic } = ourKitchen(500);
  const all = names(100);
  let first = 0;
  for (const words of [10, 25, 50, 100, 200]) {
    const tokens = ['add'];
    for (let i = 0; tokens.length < words - 3; i++)
      tokens.push(...(i === 0 ? [] : ['and']), ...all[i % 100]!);
    tokens.push('to', 'the', 'list');
    const times = measure([tokens], 2000, (input) => grammar.parse(input, { dynamic }));
    const each = (times.p50 / tokens.length) * 1000;
    first ||= each;
    line(
      `${tokens.length} words`,
      times,
      `   ${each.toFixed(2)} µs a word, ${(each / first).toFixed(2)} times the first`,
    );
  }
};

const byNames = (): void => {
  say('By number of names:');
  let first = 0;
  for (const count of [100, 500, 2000, 10_000]) {
    const { grammar, dynamic } = ourKitchen(count);
    const times = measure(sentences, 200, (tokens) => grammar.parse(tokens, { dynamic }));
    first ||= times.p50;
    line(`${count} names`, times, `   ${(times.p50 / first).toFixed(2)} times the first`);
  }
  const index = createTokenIndex();
  names(10_000).forEach((name, i) => index.add(name, `n${i}`, i));
  const start = performance.now();
  for (let i = 0; i < 1000; i++) {
    index.add(['a', 'new', 'name'], 'new', i);
    index.remove(['a', 'new', 'name'], 'new');
  }
  say(`  adding and removing one name among 10,000: ${(performance.now() - start).toFixed(2)} µs`);
};

const whereTimeGoes = (): void => {
  say('Where the time goes (500 names):');
  const { grammar, dynamic } = ourKitchen(500);
  const recogniser = createRecogniser(grammar.network);
  const root = [grammar.library.ruleOf(grammar.library.main, 'request')!.index];
  const item = dynamic.get('kitchen:item')!;
  const { tokens: known } = grammar.network;
  const floor = measure(sentences, 300, (tokens) => {
    let found = 0;
    tokens.forEach((token, i) => (found += (known.get(token) ?? 0) + item.matchesAt(tokens, i).length));
    return found;
  });
  line('the floor: each word looked up, names matched', floor);
  const chart = measure(sentences, 300, (tokens) => recogniser.recognise(tokens, root, dynamic));
  line('the chart', chart);
  line(
    'all, with best parse and meaning',
    measure(sentences, 300, (tokens) => grammar.parse(tokens, { dynamic })),
  );
};

const shippedGrammar = (): void => {
  say('The shipped grammar, all requests active, words standing in for the household’s names:');
  const start = process.cpuUsage();
  const main = projectFile('grammars', 'en', 'main.gram');
  const grammar = openGrammarFile(main, { roots: [projectFile('grammars')] });
  const { user, system } = process.cpuUsage(start);
  say(
    `  read and compiled in ${Math.round((user + system) / 1000)} ms of processor time: ${grammar.library.rules.length} rules, ${grammar.network.stateCount} states, ${grammar.network.tokenTexts.length} words`,
  );
  const dynamic = new Map<string, DynamicRule>(
    grammar.network.hostUris.map((uri) => [
      uri,
      /item|food/u.test(uri) ? indexOf(500) : /words/u.test(uri) ? anyWords : createTokenIndex(),
    ]),
  );
  line(
    'one parse',
    measure(sentences, 100, (tokens) => grammar.parse(tokens, { dynamic })),
  );
  line(
    'the four best parses',
    measure(sentences, 100, (tokens) => grammar.parse(tokens, { dynamic, limit: 4 })),
  );
  const talk =
    'well you know the soup from yesterday was really good and i think we should put some of it in the freezer because there is too much'.split(
      ' ',
    );
  for (const words of [10, 50, 100, 200]) {
    const tokens = Array.from({ length: words }, (_, i) => talk[i % talk.length]!);
    const times = measure([tokens], 1000, (input) => grammar.parse(input, { dynamic }));
    line(`${words} words of talk`, times, `   ${((times.p50 / words) * 1000).toFixed(2)} µs a word`);
  }
  const out = [
    'tell me a joke about penguins',
    'what is the weather in paris tomorrow',
    'play some music in the kitchen',
  ];
  line(
    'nothing of ours',
    measure(
      out.map((text) => text.split(' ')),
      300,
      (tokens) => grammar.parse(tokens, { dynamic }),
    ),
  );
};

export const benchGrammar = async (): Promise<void> => {
  const ours = besideToolkits();
  await besideClassifier(ours);
  byLength();
  byNames();
  whereTimeGoes();
  shippedGrammar();
};
