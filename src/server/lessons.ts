/** `/v1/lessons`: what there is to practise, and how it went, where the client said aloud that a teacher may see it. */
import { stringify } from 'csv-stringify/sync';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { labelFile } from '../../shared/wire/labels.js';
import { lessonsView } from '../../shared/wire/lessons.js';
import { problem } from '../../shared/wire/problem.js';
import type { SharedLessons } from '../turn/index.js';
import { today } from '../terms/dates.js';
import type { Context } from './context.js';
import { deviceOf } from './identify.js';
import { ProblemError } from './problems.js';

const tags = ['lessons'];

const sharingOf = ({ may }: SharedLessons): 'yes' | 'no' | 'not asked' =>
  may === null ? 'not asked' : may ? 'yes' : 'no';

/** A row a task; the words of the heading and of `how` are those of the API. */
const tableOf = ({ held }: SharedLessons, timeZone: string): string =>
  stringify(
    held.flatMap(({ name, at, tasks }) =>
      tasks.map(({ say, how }, n) => [name, today({ now: at, timeZone }), n + 1, say, how]),
    ),
    // A byte order mark, so that spreadsheets read it as UTF-8; no cell of it is a formula.
    { header: true, columns: ['lesson', 'day', 'task', 'what', 'how'], bom: true, escape_formulas: true },
  );

export const lessons: FastifyPluginAsyncZod<Context> = async (app, { households }) => {
  app.get(
    '/v1/lessons',
    {
      config: { needs: 'help' },
      schema: {
        tags,
        summary: 'Lessons, and how they went',
        description:
          'How they went is there only where it was said aloud that a teacher may see it; it is kept as long as the conversation, seven days after its last turn.',
        response: { 200: lessonsView, '4xx': problem },
      },
    },
    async (request) => {
      const { householdId } = deviceOf(request);
      const shared = await households.lessons(householdId);
      return {
        lessons: shared.lessons.map(({ key, name, purpose, cautions, tasks }, n) => ({
          number: n + 1,
          key,
          name,
          purpose,
          cautions,
          tasks: tasks.map(({ say, hints }) => ({ say, hints })),
        })),
        sharing: sharingOf(shared),
        held: shared.held.map((one) => ({ ...one, tasks: [...one.tasks] })),
      };
    },
  );

  app.get(
    '/v1/lessons/report',
    {
      config: { needs: 'help' },
      schema: {
        tags,
        summary: 'How the lessons went, as a table',
        description: 'CSV, a row a task. Refused where it was not said aloud that a teacher may see it.',
        response: { 200: labelFile, '4xx': problem },
      },
    },
    async (request) => {
      const { householdId } = deviceOf(request);
      const { kitchen, clock } = await households.look(householdId);
      const shared = await households.lessons(householdId);
      if (shared.may !== true)
        throw new ProblemError('refused', {
          detail: 'Nobody has said aloud yet that a teacher may see how the lessons went.',
        });
      const { timeZone } = kitchen.household;
      return {
        name: `lessons-${today(clock)}.csv`,
        type: 'text/csv',
        file: Buffer.from(tableOf(shared, timeZone), 'utf8').toString('base64'),
        notes: [],
      };
    },
  );
};
