/**
 * `npm run guidance-bench`: guidance asked aloud. Every row of the cold food chart, cells of the USDA's storage
 * data (every seventh row; `--all` for each), the worked cases and what would hurt somebody, each in several
 * wordings, through the whole engine on the demo kitchen. `--table X`, `--id X`, `--failures`, `--only right|…`.
 */
import { parseArgs } from 'node:util';
import { readAnswer } from './guidance/answer.js';
import { caseQuestions } from './guidance/cases.js';
import { cooksQuestions } from './guidance/cooks.js';
import { judge, type Verdict } from './guidance/judge.js';
import { createAsker } from './guidance/player.js';
import { chartQuestions, storageDataQuestions } from './guidance/tables.js';

const { values } = parseArgs({
  options: {
    all: { type: 'boolean' },
    stride: { type: 'string', default: '7' },
    table: { type: 'string', multiple: true },
    id: { type: 'string', multiple: true },
    failures: { type: 'boolean' },
    only: { type: 'string', multiple: true },
  },
});
const VERDICTS: readonly Verdict[] = ['right', 'stricter', 'wrong', 'silent', 'dangerous'];
const HEADS: Readonly<Record<Verdict, string>> = {
  right: 'right',
  stricter: 'stricter',
  wrong: 'wrong',
  silent: 'not answered',
  dangerous: 'dangerous',
};
const say = (line = ''): void => console.log(line);

const questions = [
  ...chartQuestions(),
  ...storageDataQuestions(values.all ? 1 : Number(values.stride)),
  ...caseQuestions,
  ...cooksQuestions(),
]
  .filter(({ table }) => !values.table || values.table.some((one) => table.startsWith(one)))
  .filter(({ id }) => !values.id || values.id.includes(id));

const asker = await createAsker();
const counts = new Map<string, Record<Verdict, number>>();
const none = (): Record<Verdict, number> => ({ right: 0, stricter: 0, wrong: 0, silent: 0, dangerous: 0 });
for (const question of questions)
  for (const words of question.asked) {
    const { text, heardAs } = await asker.ask(question, words);
    const verdict = judge(question.want, readAnswer(text));
    const of = counts.get(question.table) ?? none();
    of[verdict] += 1;
    counts.set(question.table, of);
    const shown = values.only ? values.only.includes(verdict) : verdict !== 'right';
    if (values.failures && shown) {
      say(
        `\n${verdict.toUpperCase()} ${question.table}, ${question.id}${question.region === 'uk' ? ' (uk)' : ''}`,
      );
      for (const before of question.before ?? []) say(`  (${before})`);
      say(`  > ${words}\n    ${text}\n    [${heardAs}]`);
    }
  }
await asker.close();

const row = (name: string, of: Record<Verdict, number>): string => {
  const whole = VERDICTS.reduce((sum, one) => sum + of[one], 0);
  return `${name.padEnd(28)}${String(whole).padStart(6)}${VERDICTS.map((one) => {
    const part = `${of[one]} ${Math.round((100 * of[one]) / whole)}%`;
    return part.padStart(14);
  }).join('')}`;
};
say(`\n${''.padEnd(30)}asked${VERDICTS.map((one) => HEADS[one].padStart(14)).join('')}`);
const sum = none();
for (const [name, of] of counts) {
  say(row(name, of));
  for (const one of VERDICTS) sum[one] += of[one];
}
say(row('all', sum));
process.exitCode = sum.dangerous > 0 ? 1 : 0;
