/** `GET /v1/kitchen/board`: everything the board shows, in one answer, so that it can be kept for when there is no network. */
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import type { z } from 'zod';
import { board, type boardItem } from '../../../shared/wire/board.js';
import { problem } from '../../../shared/wire/problem.js';
import {
  notesFor,
  openReminders,
  placesBelow,
  placesIn,
  shoppingList,
  spareMarkers,
  type DateKind,
  type Item,
  type Kitchen,
} from '../../kitchen/index.js';
import { touchInPrint } from '../../labels/index.js';
import { allergenWarnings, rankUseFirst } from '../../safety/index.js';
import type { RankedItem } from '../../safety/index.js';
import { today } from '../../terms/dates.js';
import type { Context } from '../context.js';
import { deviceOf } from '../identify.js';
import { amountInPrint, viewPlace, viewPurchase, viewReminder } from './views.js';

/** States in which somebody should do something today. */
const TONIGHT = new Set(['throw-out', 'refrigerate-now', 'last-day', 'cook-thoroughly', 'use-soon']);
/** The day an age is told from, the latest event that counts first. */
const SINCE: readonly DateKind[] = ['thawed', 'frozen', 'opened', 'made', 'bought'];
const KNOWN_AT_MOST = 600;

/** Container and marker as a hand finds them; null when nobody said. */
const feelsOf = (kitchen: Kitchen, item: Item): string | null => {
  const marker = item.markerId === null ? undefined : kitchen.markers.get(item.markerId);
  const parts = [touchInPrint(item.touch), marker === undefined ? '' : touchInPrint(marker.touch)];
  const felt = parts.filter((part) => part !== '').join('; ');
  return felt === '' ? null : felt;
};

const sinceOf = ({ dates }: Item): { kind: string; day: string } | null => {
  for (const kind of SINCE) {
    const day = dates[kind];
    if (day !== undefined) return { kind, day };
  }
  return null;
};

const viewOf = (kitchen: Kitchen, { item, assessment }: RankedItem): z.infer<typeof boardItem> => ({
  id: item.id,
  name: item.name,
  amount: item.amount,
  howMuch: item.amount && amountInPrint(item.amount),
  feels: feelsOf(kitchen, item),
  placeId: item.placeId,
  spot: item.spot,
  maker: item.maker,
  diets: [...item.diets],
  contains: [...item.contains],
  warnings: allergenWarnings(item, kitchen.people.values()).flatMap(({ personId, allergen, answer }) => {
    const person = kitchen.people.get(personId)?.name;
    return person === undefined || answer === 'said-free-from' || answer === 'unknown'
      ? []
      : [{ person, allergen, how: answer }];
  }),
  cautions: [...item.cautions],
  since: sinceOf(item),
  dates: item.dates,
  state: assessment.verdict,
  lastDay: assessment.lastDay,
  daysLeft: assessment.daysLeft,
  says: assessment.row
    ? [assessment.row.source.agency, assessment.row.source.document, assessment.row.source.year]
        .filter((part) => part !== null)
        .join(', ')
    : null,
});

const knownNames = (kitchen: Kitchen): string[] => {
  const names = new Set<string>();
  for (const item of [...kitchen.items.values()].reverse()) {
    if (names.size >= KNOWN_AT_MOST) break;
    names.add(item.name);
  }
  return [...names].sort((one, other) => one.localeCompare(other));
};

export const kitchenBoard: FastifyPluginAsyncZod<Context> = async (app, { households }) => {
  app.get(
    '/v1/kitchen/board',
    {
      config: { needs: 'speak' },
      schema: {
        tags: ['kitchen'],
        summary: 'Everything the board shows',
        description:
          'Reports what published guidance says of each item’s age. It never says that food is safe.',
        response: { 200: board, '4xx': problem },
      },
    },
    async (request) => {
      const device = deviceOf(request);
      const { kitchen, clock } = await households.look(device.householdId);
      const ranked = rankUseFirst(kitchen, clock);
      const { name, locale, timeZone } = kitchen.household;
      return {
        household: { name, locale, timeZone },
        may: device.scope,
        version: kitchen.version,
        at: clock.now,
        today: today(clock),
        places: placesIn(kitchen, null)
          .flatMap((whole) => placesBelow(kitchen, whole.id))
          .map((one) => viewPlace(kitchen, one)),
        items: ranked.map((one) => viewOf(kitchen, one)),
        tonight: ranked
          .filter(({ assessment }) => TONIGHT.has(assessment.verdict))
          .map(({ item }) => item.id),
        purchases: shoppingList(kitchen).map((line) => viewPurchase(kitchen, line)),
        reminders: openReminders(kitchen).map(viewReminder),
        messages: notesFor(kitchen, device.personId).map(({ id, fromPersonId, text }) => ({
          id,
          from: fromPersonId === null ? null : (kitchen.people.get(fromPersonId)?.name ?? null),
          text,
        })),
        known: knownNames(kitchen),
        spareMarkers: spareMarkers(kitchen).map(({ id, touch }) => ({
          id,
          feels: touchInPrint(touch) || 'marker',
        })),
        people: [...kitchen.people.values()].map(({ id, name: own }) => ({ id, name: own })),
      };
    },
  );
};
