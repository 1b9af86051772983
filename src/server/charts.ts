/** `GET /v1/charts`: ages, the use-by calendar, and what became of things. */
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { chartView } from '../../shared/wire/charts.js';
import { problem } from '../../shared/wire/problem.js';
import { livingItems } from '../kitchen/index.js';
import { agesPlot, calendarPlot, useAndWastePlot, type Plot } from '../plots/index.js';
import { rankUseFirst } from '../safety/index.js';
import { today } from '../terms/dates.js';
import type { Context } from './context.js';
import { deviceOf } from './identify.js';

export const charts: FastifyPluginAsyncZod<Context> = async (app, { households }) => {
  app.get(
    '/v1/charts',
    {
      config: { needs: 'speak' },
      schema: {
        tags: ['kitchen'],
        summary: 'Counts worth a look, each with a sentence that says the same',
        response: { 200: z.array(chartView), '4xx': problem },
      },
    },
    async (request) => {
      const around = await households.look(deviceOf(request).householdId);
      const { kitchen, clock } = around;
      const day = today(clock);
      const words = (parts: Plot['groups']): string[] =>
        parts.map((part) => {
          const say =
            typeof part === 'object' && part.kind === 'say'
              ? part
              : ({ kind: 'say', phrase: 'plot-group', args: { group: part } } as const);
          return households.say(around, { parts: [say] }).text.replace(/\.$/, '');
        });
      const view = (plot: Plot) => ({
        id: plot.id,
        title: words([plot.title])[0] ?? '',
        sentence: households.say(around, { parts: [plot.sentence] }).text,
        groups: words(plot.groups),
        days: plot.groups.map((group) =>
          typeof group === 'object' && group.kind === 'date'
            ? group.monthOnly === true
              ? group.day.slice(0, 7)
              : group.day
            : null,
        ),
        series: plot.series.map(({ name, counts }) => ({
          name: words([name])[0] ?? '',
          counts: [...counts],
        })),
      });
      return [
        agesPlot(livingItems(kitchen), day),
        calendarPlot(
          rankUseFirst(kitchen, clock).map(({ assessment }) => assessment),
          day,
        ),
        useAndWastePlot([...kitchen.items.values()], day, clock.timeZone),
      ].map(view);
    },
  );
};
