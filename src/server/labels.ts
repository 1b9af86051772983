/** `/v1/labels`: print sheets and Braille files for items and markers. */
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { guideQuery, labelFile, labelRequest, labelStock } from '../../shared/wire/labels.js';
import { problem } from '../../shared/wire/problem.js';
import {
  BrailleUnavailable,
  brfFile,
  familyGuide,
  freeStock,
  guideLines,
  guidePage,
  labelForItem,
  labelForMarker,
  labelSheet,
  loadStocks,
  toBraille,
  type Label,
  type Stock,
} from '../labels/index.js';
import type { Context } from './context.js';
import { isLocal, publicAddress } from './home/public-address.js';
import { deviceOf } from './identify.js';
import { ProblemError } from './problems.js';

const tags = ['labels'];

const notInTable = (text: string): string =>
  `${text}: left out, for it has letters that the English Braille table does not hold.`;

/** @throws ProblemError where the program that makes Braille is not installed. */
const inBraille = async (texts: readonly string[], grade: 1 | 2): Promise<readonly (string | null)[]> => {
  try {
    return await toBraille([...texts], grade);
  } catch (error) {
    if (error instanceof BrailleUnavailable)
      throw new ProblemError('refused', { detail: 'Braille is missing here: liblouis is not installed.' });
    throw error;
  }
};

const base64 = (text: string): string => Buffer.from(text, 'ascii').toString('base64');

export const labels: FastifyPluginAsyncZod<Context> = async (app, { households, config }) => {
  const stocks = loadStocks();

  const stockOf = (id: string | undefined, size: readonly [number, number] | undefined): Stock => {
    if (size !== undefined) {
      try {
        return freeStock(size);
      } catch (error) {
        throw new ProblemError('refused', {
          detail: error instanceof RangeError ? error.message : 'No such size.',
        });
      }
    }
    const found = stocks.find((stock) => stock.id === (id ?? 'a4-2x4'));
    if (found === undefined) throw new ProblemError('not-found', { detail: 'No such sheet of labels.' });
    return found;
  };

  const brf = async (all: readonly Label[], grade: 1 | 2, page: { cells: number; lines: number }) => {
    const texts = all.map((label) => [label.title, ...label.brailleLines]);
    const cells = (await inBraille(texts.flat(), grade)).values();
    const notes: string[] = [];
    const lines = texts.map((own) => {
      const ours = own.map(() => cells.next().value ?? null);
      if (ours.every((line) => line !== null)) return ours;
      notes.push(notInTable(own[0] ?? ''));
      return [];
    });
    return { text: brfFile(lines, page), notes };
  };

  app.get(
    '/v1/labels/stocks',
    {
      config: { needs: 'speak' },
      schema: {
        tags,
        summary: 'Sheets of labels by size',
        response: { 200: z.array(labelStock), '4xx': problem },
      },
    },
    async () => stocks.map(({ id, name, size }) => ({ id, name, size })),
  );

  app.get(
    '/v1/labels/guide',
    {
      config: { needs: 'speak' },
      schema: {
        tags,
        summary: 'The key to this household’s touch',
        description:
          'One page for family and visitors: what nobody here must be given, what markers mean, where things are, what to say.',
        querystring: guideQuery,
        response: { 200: labelFile, '4xx': problem },
      },
    },
    async (request) => {
      const { kind, grade } = request.query;
      const { kitchen } = await households.look(deviceOf(request).householdId);
      const whole = familyGuide(kitchen);
      if (kind === 'pdf') {
        const { pdf, printed } = await guidePage(whole);
        const missing = guideLines(whole).length - guideLines(printed).length;
        return {
          name: 'key.pdf',
          type: 'application/pdf',
          file: pdf.toString('base64'),
          notes: missing > 0 ? ['Not all of it had room on the page: the page says where.'] : [],
        };
      }
      const lines = guideLines(whole);
      const cells = await inBraille(lines, grade === '1' ? 1 : 2);
      return {
        name: 'key.brf',
        type: 'text/plain',
        file: base64(brfFile([cells.filter((line) => line !== null)], { cells: 40, lines: 25 })),
        notes: lines.filter((_line, at) => cells[at] === null).map(notInTable),
      };
    },
  );

  app.post(
    '/v1/labels',
    {
      config: { needs: 'speak' },
      schema: {
        tags,
        summary: 'Labels for items and markers',
        description:
          'Large print with Braille and a square code as PDF, or Braille alone as BRF. Changes nothing.',
        body: labelRequest,
        response: { 200: labelFile, '4xx': problem },
      },
    },
    async (request) => {
      const { kind, items, markers, grade, stock, size, skip, cells, lines } = request.body;
      // A size that cannot be is refused before any work is done for it.
      const sheetOf = kind === 'pdf' ? stockOf(stock, size) : null;
      const { kitchen } = await households.look(deviceOf(request).householdId);
      const service = publicAddress(config, request);
      const all: Label[] = [
        ...items.map((id) => {
          const item = kitchen.items.get(id);
          if (item === undefined)
            throw new ProblemError('not-found', { detail: 'One of the items is not here.' });
          return labelForItem(kitchen, item, service);
        }),
        ...markers.map((id) => {
          const marker = kitchen.markers.get(id);
          if (marker === undefined)
            throw new ProblemError('not-found', { detail: 'One of the markers is not here.' });
          return labelForMarker(kitchen, marker, service);
        }),
      ];
      if (all.length === 0)
        throw new ProblemError('refused', { detail: 'Pick at least one item or marker.' });
      if (sheetOf === null) {
        const made = await brf(all, grade ?? 2, { cells, lines });
        return {
          name: 'labels.brf',
          type: 'text/plain',
          file: base64(made.text),
          notes: made.notes,
        };
      }
      const sheet = await labelSheet(all, { stock: sheetOf, grade, skip });
      return {
        name: 'labels.pdf',
        type: 'application/pdf',
        file: sheet.pdf.toString('base64'),
        notes: [
          ...sheet.notes,
          ...(isLocal(service)
            ? [
                `The square codes hold ${service}, which only this machine can open. Whoever runs the service sets PUBLIC_URL to the address that phones reach it by.`,
              ]
            : []),
        ],
      };
    },
  );
};
