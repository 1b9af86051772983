/** `POST /v1/household/import`: a list somebody has already, all of it or none. */
import { randomUUID } from 'node:crypto';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { importDone, importRequest } from '../../../shared/wire/exchange.js';
import { problem } from '../../../shared/wire/problem.js';
import { mendOf, readList, type Doing, type ReadList } from '../../kitchen/index.js';
import type { Context } from '../context.js';
import { deviceOf } from '../identify.js';
import { makeChange } from '../kitchen/make-change.js';
import { ProblemError } from '../problems.js';

/** As many faults as a person mends before looking again. */
const TOLD = 50;

const faultsOf = ({ plan }: ReadList) =>
  plan.faults.slice(0, TOLD).map(({ row, column, problem: what }) => ({
    row,
    column,
    problem: mendOf(column, what).slice(0, 300),
  }));

const told = ({ plan, guessed }: ReadList) => ({
  items: plan.items,
  markers: plan.markers,
  places: [...plan.places],
  already: plan.already,
  guessed: guessed && {
    headings: [...guessed.headings],
    rows: guessed.rows.map(({ row, cells }) => ({
      row,
      cells: cells.map(([column, value]) => ({ column, value })),
    })),
  },
});

export const importing: FastifyPluginAsyncZod<Context> = async (app, context) => {
  app.post(
    '/v1/household/import',
    {
      config: { needs: 'help' },
      bodyLimit: 2 * 1024 * 1024,
      schema: {
        tags: ['household'],
        summary: 'Bring in a list of food',
        description:
          'All of it, or none and why: with `dryRun` in the answer, else as the errors of a problem. Headings, days and amounts of somebody’s own list are guessed by the household’s country; ask with `dryRun` first and show what was guessed. One change, undone as any other.',
        body: importRequest,
        response: { 200: importDone, '4xx': problem },
      },
    },
    async (request) => {
      const { text, form, dryRun, makePlaces } = request.body;
      const read = (doing: Doing): ReadList => readList(doing, text, form, { makePlaces });
      const look = async (): Promise<ReadList> => {
        const around = await context.households.look(deviceOf(request).householdId);
        return read({ ...around, speaker: { personId: null }, newId: randomUUID });
      };
      const first = await look();
      if (dryRun) return { ...told(first), faults: faultsOf(first), done: null };
      let last = first;
      const refuse = (of: ReadList): never => {
        throw new ProblemError('refused', {
          detail: 'Nothing was imported.',
          errors: faultsOf(of).map(({ row, column, problem: what }) => ({
            path: column === null ? `row ${row}` : `row ${row}, ${column}`,
            message: what,
          })),
        });
      };
      if (first.plan.faults.length > 0) refuse(first);
      if (first.plan.change === null) return { ...told(first), faults: [], done: null };
      const done = await makeChange(context, request, (around) => {
        last = read(around);
        if (last.plan.faults.length > 0) refuse(last);
        if (last.plan.change !== null) return last.plan.change;
        // Somebody else brought the same in at this very moment.
        throw new ProblemError('refused', { detail: 'It is all there already.' });
      });
      return { ...told(last), faults: [], done };
    },
  );
};
