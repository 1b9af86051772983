/**
 * `npm run talk-bench -- FILE`: talk items (see `../shared/data/talk/README.md`) played on the kitchen file beside them.
 * `--kitchen FILE` another kitchen; `--class X` and `--id X` (each may be given more than once) only those;
 * `--failures` lists what was not right at once.
 */
import { existsSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { outsideFolder } from '../support/outside.js';
import { readTalkItems } from './talk-items.js';
import { createPlayer, type Played } from './talk-play.js';
import type { Verdict } from './talk-verdict.js';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    kitchen: { type: 'string' },
    class: { type: 'string', multiple: true },
    id: { type: 'string', multiple: true },
    failures: { type: 'boolean' },
  },
});

const VERDICTS: readonly Verdict[] = ['right', 'asked', 'question', 'missed', 'wrong'];
const say = (line = ''): void => console.log(line);
const percent = (part: number, whole: number): string => `${Math.round((100 * part) / whole)}%`;

const row = (name: string, played: readonly Played[]): string => {
  const counts = VERDICTS.map((verdict) => played.filter((one) => one.verdict === verdict).length);
  return `${name.padEnd(18)}${String(played.length).padStart(5)}${counts
    .map((count) => `${String(count).padStart(5)} ${percent(count, played.length).padStart(4)}`)
    .join('')}`;
};

const tell = ({ item, verdict, turns, lacking }: Played): void => {
  say(`\n${verdict.toUpperCase()} ${item.id} ${item.class} (${item.speaker})`);
  for (const { said, reply } of turns) {
    const { verdict: heardAs, intents, confidence } = reply.understood;
    say(`  > ${said}`);
    say(`    ${reply.speech.text.replace(/\s+/gu, ' ').trim()}`);
    const changes = reply.changes.map(({ verb, about }) => [verb, ...about].join(' ')).join('; ');
    say(`    [${heardAs} ${intents.join('+')} ${confidence.toFixed(2)}]${changes && ` changed: ${changes}`}`);
  }
  for (const one of lacking) say(`  ${one}`);
  if (item.note) say(`  (${item.note})`);
};

const chosen = (given: readonly string[] | undefined, value: string): boolean =>
  given === undefined || given.includes(value);

const run = async (file: string): Promise<void> => {
  const kitchen = values.kitchen ?? resolve(dirname(file), 'brandt-kitchen.json');
  const missing = [file, kitchen].find((one) => !existsSync(one));
  if (missing !== undefined) {
    say(`Skipped: there is no ${missing}.`);
    return;
  }
  const items = readTalkItems(file).filter(
    (item) => chosen(values.class, item.class) && chosen(values.id, item.id),
  );
  if (items.length === 0) {
    say('Skipped: no item is of that class or id.');
    return;
  }
  const player = await createPlayer(kitchen);
  const played: Played[] = [];
  for (const item of items) played.push(await player.play(item));
  await player.close();

  if (values.failures) played.filter(({ verdict }) => verdict !== 'right').forEach(tell);
  say(`\n== ${file}`);
  say(`${''.padEnd(20)}of ${VERDICTS.map((verdict) => verdict.padStart(10)).join('')}`);
  for (const name of [...new Set(items.map((item) => item.class))].sort())
    say(
      row(
        name,
        played.filter(({ item }) => item.class === name),
      ),
    );
  say(row('all', played));
  const helped = played.filter(({ verdict }) => ['right', 'asked', 'question'].includes(verdict)).length;
  say(
    `right ${percent(played.filter(({ verdict }) => verdict === 'right').length, played.length)} (aim 75%), with one yes or a question ${percent(helped, played.length)} (aim 90%), wrong ${percent(played.filter(({ verdict }) => verdict === 'wrong').length, played.length)} (aim 4%)`,
  );
};

await run(positionals[0] ?? join(outsideFolder, 'talk', 'items.jsonl'));
