/**
 * `npm run cookdial`: each recipe of CookDial as a preparation of a thing in the fridge, the cook's turns one
 * after another, each at the step the human helper stood at. `--failures` lists what was not right, `--limit N` reads
 * only the first N recipes, `--id X` only that one.
 */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { kitchenFromFile } from '../../src/kitchen/index.js';
import type { Kitchen } from '../../src/kitchen/model.js';
import type { Conversation } from '../../src/dialogue/api.js';
import { stateOf } from '../../src/dialogue/state.js';
import { openSqliteStore } from '../../src/store/index.js';
import { createHouseholds, createTongues } from '../../src/turn/index.js';
import { normalise } from '../../src/understanding/words/index.js';
import type { TurnReply } from '../../shared/wire/turn.js';
import { outsideFolder } from '../support/outside.js';
import { type CookDialogue, type CookTurn, cookTurns, readDialogues } from './cookdial-read.js';
import { changed } from './talk-verdict.js';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { failures: { type: 'boolean' }, limit: { type: 'string' }, id: { type: 'string' } },
});

const NOW = '2026-05-14T23:00:00.000Z';
const ZONE = 'America/Chicago';
const CODE = 'the dish';

const kitchenOf = ({ id, title, steps }: CookDialogue): Kitchen =>
  kitchenFromFile(
    JSON.stringify({
      about: 'One dish and how it is made.',
      household: {
        id: `cook-${id}`,
        name: 'A kitchen',
        timeZone: ZONE,
        locale: 'en-US',
        region: 'us',
        measures: 'us',
        microwaveWatts: 900,
        summaryAt: null,
        quietHours: null,
        dotMeanings: {},
      },
      people: [],
      places: [{ key: 'fridge', name: 'fridge', kind: 'fridge' }],
      markers: [{ key: 'bead', touch: { fastening: 'bead' }, codes: [CODE] }],
      items: [
        {
          key: 'dish',
          name: title
            .toLowerCase()
            .replace(/[^a-z' ]+/gu, ' ')
            .trim(),
          at: 'fridge',
          marker: 'bead',
          dates: { made: 0 },
          preparations: [{ method: 'oven', from: 'any', steps }],
        },
      ],
    }),
    { now: NOW, timeZone: ZONE },
  );

const tokens = (text: string): readonly string[] => normalise(text, 'en-US').tokens;

/** Whether most of what a step says is in an answer, in its own words. */
const tells = (answer: string, step: string): boolean => {
  const [said, wanted] = [tokens(answer).join(' '), tokens(step)];
  if (said.includes(wanted.join(' '))) return true;
  const there = new Set(said.split(' '));
  return wanted.length > 0 && wanted.filter((word) => there.has(word)).length / wanted.length >= 0.85;
};

/** A part of a step in its own words: four in a row, or all of a shorter one. */
const tellsPart = (answer: string, step: string): boolean => {
  const [said, words] = [` ${tokens(answer).join(' ')} `, tokens(step)];
  const size = Math.min(4, words.length);
  return words.some(
    (_, at) => at + size <= words.length && said.includes(` ${words.slice(at, at + size).join(' ')} `),
  );
};

const NUMBER_WORD =
  /^(\d.*|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|\w+teen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|half)$/u;

/** Each figure as it is spoken: "three hundred fifty". */
const numbersIn = (text: string): ReadonlySet<string> => {
  const runs = tokens(text)
    .map((token) => (NUMBER_WORD.test(token) ? token : '|'))
    .join(' ')
    .split('|')
    .map((run) => run.trim());
  return new Set(runs.filter((run) => run !== ''));
};

type Kind = 'next' | 'report' | 'repeat' | 'figure' | 'finished' | 'meanwhile' | 'other';

const REQUESTS = [
  ['next', 'req_instruction'],
  ['repeat', 'req_repeat'],
  ['figure', 'req_duration'],
  ['figure', 'req_temperature'],
  ['finished', 'req_is_recipe_finished'],
  ['finished', 'req_is_recipe_ongoing'],
  ['meanwhile', 'req_parallel_action'],
] as const;

const kindOf = ({ intents, then }: CookTurn): Kind => {
  const asked = [...intents].filter((intent) => intent.startsWith('req_'));
  if (asked.length > 1) return 'other';
  const kind = REQUESTS.find(([, intent]) => intent === asked[0])?.[0];
  if (kind === 'next' && then === null) return 'other';
  if (kind !== undefined) return kind;
  const plain = [...intents].every((intent) => ['confirm', 'thank', 'affirm'].includes(intent));
  return plain && intents.has('confirm') && then !== null ? 'report' : 'other';
};

interface Judged {
  readonly dialogue: string;
  readonly kind: Kind;
  readonly turn: CookTurn;
  readonly said: string;
  readonly reply: TurnReply;
  /** Null where nothing could be held to it. */
  readonly right: boolean | null;
  /** Something was changed or ended that should not have been. */
  readonly wrong: boolean;
  /** Another step was read though nothing was reported and no next one asked for. */
  readonly moved: boolean;
}

const FINISHED = /\b(last step|that was all|over|finished)\b/iu;
const NOT_YET = /\b(not yet|steps? (left|to go|more)|more steps?)\b/iu;

/** What the helper's turn holds an answer to; null where its own text gives nothing to go by. */
const judge = (kind: Kind, turn: CookTurn, dialogue: CookDialogue, answer: string, timed: boolean) => {
  const { at, then } = turn;
  const told = (step: number): boolean => tells(answer, dialogue.steps[step] ?? '');
  const upTo = (last: number): boolean =>
    Array.from({ length: last - at }, (_, n) => at + 1 + n).some((step) => told(step));
  switch (kind) {
    case 'next':
      return upTo(then!);
    case 'report':
      return upTo(then!) || timed;
    case 'repeat': {
      const again = turn.acts.flatMap((act) => /^repeat\((?:inst|ac)-(\d+)/u.exec(act)?.[1] ?? []);
      if (again.length === 0) return null;
      return again.some((step) => tellsPart(answer, dialogue.steps[Number(step)] ?? ''));
    }
    case 'figure': {
      const asked = numbersIn(turn.text);
      const wanted = [...numbersIn(turn.answer)].filter(
        (figure) => !asked.has(figure) && dialogue.steps.some((step) => numbersIn(step).has(figure)),
      );
      if (wanted.length > 0) return wanted.some((figure) => numbersIn(answer).has(figure));
      const sign = turn.acts.flatMap((act) => /^inform_duration\(cond-(\d+)/u.exec(act)?.[1] ?? []);
      return sign.length > 0
        ? sign.some((step) => tellsPart(answer, dialogue.steps[Number(step)] ?? ''))
        : null;
    }
    case 'finished': {
      if (at + 1 >= dialogue.steps.length) return FINISHED.test(answer) || NOT_YET.test(answer);
      return told(at + 1) || NOT_YET.test(answer);
    }
    case 'meanwhile':
      return then === null ? null : upTo(then);
    case 'other':
      return null;
  }
};

const store = openSqliteStore(':memory:');
await store.migrate();
const households = createHouseholds({
  store,
  tongues: createTongues((error) => {
    throw error;
  }),
  now: () => NOW,
});

const play = async (dialogue: CookDialogue, plainly: boolean): Promise<readonly Judged[]> => {
  const kitchen = kitchenOf(dialogue);
  const householdId = `${kitchen.household.id}${plainly ? '-plain' : ''}`;
  await store.createHousehold({ ...kitchen, household: { ...kitchen.household, id: householdId } }, NOW);
  const speaker = { householdId, personId: null, deviceId: null, owner: true };
  let count = 0;
  const say = (text: string, touched?: string): Promise<TurnReply> =>
    households.takeTurn(speaker, {
      id: `turn-${(count += 1)}`,
      conversation: 'cook',
      hypotheses: [{ text }],
      ...(touched === undefined ? {} : { touched }),
    });
  const procedure = async () => {
    const [conversation] = await store.recentConversations(householdId, '1970-01-01T00:00:00.000Z', 1);
    return conversation ? stateOf(conversation as Conversation).procedure : null;
  };
  /** Stands at a step with that step just read. */
  const standAt = async (step: number): Promise<void> => {
    const now = await procedure();
    if (now && now.at === step && !now.paused && !now.unread) return;
    if (!now) await say('how do i heat this', CODE);
    await say(`go to step ${step + 1}`);
    const then = await procedure();
    if (then?.at !== step) throw new Error(`recipe ${dialogue.id}: could not go to step ${step + 1}`);
  };
  const judged: Judged[] = [];
  for (const turn of cookTurns(dialogue)) {
    await standAt(turn.at);
    const { kitchen: before } = await households.look(householdId);
    const said = plainly
      ? turn.text
          .toLowerCase()
          .replace(/[.,!?;:"]+/gu, ' ')
          .replace(/\s+/gu, ' ')
          .trim()
      : turn.text;
    const reply = await say(said);
    const { kitchen: after } = await households.look(householdId);
    const now = await procedure();
    const kind = kindOf(turn);
    const timers = after.reminders.size > before.reminders.size;
    const record = changed({
      before: { ...before, reminders: new Map() },
      after: { ...after, reminders: new Map() },
    });
    const last = turn.at + 1 >= dialogue.steps.length;
    judged.push({
      dialogue: dialogue.id,
      kind,
      turn,
      said,
      reply,
      right: judge(kind, turn, dialogue, reply.speech.text, timers),
      moved:
        now !== null &&
        now.at !== turn.at &&
        !['confirm', 'affirm', 'req_instruction', 'req_is_recipe_ongoing'].some((intent) =>
          turn.intents.has(intent),
        ),
      wrong: record || (timers && !turn.intents.has('confirm')) || (now === null && !last && !timers),
    });
  }
  households.forget(householdId);
  return judged;
};

const percent = (part: number, whole: number): string =>
  whole === 0 ? '-' : `${((100 * part) / whole).toFixed(1)}%`;
const say = (line = ''): void => console.log(line);

const report = (title: string, judged: readonly Judged[]): void => {
  say(`\n== CookDial, ${title}: ${judged.length} turns at a step`);
  const held = judged.filter(({ right }) => right !== null);
  const line = (name: string, kinds: readonly Kind[], aim: string): void => {
    const of = held.filter(({ kind }) => kinds.includes(kind));
    const right = of.filter((one) => one.right).length;
    say(
      `${name.padEnd(38)}${String(right).padStart(5)} of ${String(of.length).padStart(4)}  ${percent(right, of.length).padStart(6)}  ${aim}`,
    );
  };
  line('next step given when asked', ['next'], 'aim 92%');
  line('after a report alone', ['report'], '');
  line('questions about steps', ['repeat', 'figure', 'finished', 'meanwhile'], 'aim 75%');
  line('  say it again', ['repeat'], '');
  line('  how long, how hot, how do I know', ['figure'], '');
  line('  is it finished', ['finished'], '');
  line('  what can I do meanwhile', ['meanwhile'], '');
  const wrong = judged.filter((one) => one.wrong).length;
  say(
    `${'wrong acts'.padEnd(38)}${String(wrong).padStart(5)} of ${String(judged.length).padStart(4)}  ${percent(wrong, judged.length).padStart(6)}  aim 1%`,
  );
  const moved = judged.filter((one) => one.moved).length;
  say(
    `${'another step read unasked'.padEnd(38)}${String(moved).padStart(5)} of ${String(judged.length).padStart(4)}  ${percent(moved, judged.length).padStart(6)}`,
  );
  const missed = judged.filter(({ reply }) =>
    ['ask-again', 'out-of-scope'].includes(reply.understood.verdict),
  );
  say(
    `${'not understood'.padEnd(38)}${String(missed.length).padStart(5)} of ${String(judged.length).padStart(4)}  ${percent(missed.length, judged.length).padStart(6)}`,
  );
};

const tellFailures = (judged: readonly Judged[]): void => {
  for (const { dialogue, kind, turn, said, reply, right, wrong, moved } of judged) {
    if (right !== false && !wrong && !moved) continue;
    const { verdict, intents, confidence } = reply.understood;
    say(
      `${dialogue} at ${turn.at + 1} ${kind}${wrong ? ' WRONG ACT' : ''}${moved ? ' MOVED' : ''}${right === null ? ' (not held)' : ''}`,
    );
    say(`  > ${said}`);
    say(
      `    ${reply.speech.text.replace(/\s+/gu, ' ').trim()}   [${verdict} ${intents.join('+')} ${confidence.toFixed(2)}]`,
    );
    say(`    helper: ${turn.answer} [${turn.acts.join(' ')}]`);
  }
};

const file = positionals[0] ?? join(outsideFolder, 'cookdial', 'dialogues.jsonl');
if (!existsSync(file)) say(`Skipped: there is no ${file}.`);
else {
  const dialogues = readDialogues(file)
    .filter(({ id }) => values.id === undefined || id === values.id)
    .slice(0, values.limit === undefined ? undefined : Number(values.limit));
  for (const plainly of [false, true]) {
    const judged: Judged[] = [];
    for (const dialogue of dialogues) judged.push(...(await play(dialogue, plainly)));
    if (values.failures) tellFailures(judged);
    report(plainly ? 'without punctuation' : 'as written', judged);
  }
}
await store.close();
