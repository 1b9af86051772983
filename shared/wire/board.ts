/** The board: everything the page on the fridge door shows, in one answer. */
import { z } from 'zod';
import { scope } from './devices.js';
import { amount, day, place, purchase, words } from './kitchen.js';
import { reminderView } from './reminders.js';

export const boardItem = z
  .strictObject({
    id: z.string(),
    name: z.string(),
    amount: amount.nullable(),
    howMuch: z.string().nullable().describe('The amount in print: "2 portions".'),
    feels: z.string().nullable().describe('Container and marker, as a hand finds them.'),
    placeId: z.string().nullable(),
    spot: z.string().nullable(),
    maker: z.string().nullable(),
    diets: z.array(z.string()),
    contains: z.array(z.string()).describe('What is not listed is unknown, never absent.'),
    warnings: z
      .array(
        z.strictObject({
          person: z.string(),
          allergen: z.string(),
          how: z.enum(['said-to-contain', 'usually-contains', 'conflict']),
        }),
      )
      .describe('Of people of this household.'),
    cautions: z.array(z.string()),
    since: z.strictObject({ kind: z.string(), day }).nullable().describe('The day its age is told from.'),
    dates: z.record(z.string(), day),
    state: z.string().describe('Where it stands against published guidance.'),
    lastDay: day.nullable(),
    daysLeft: z.number().nullable(),
    says: z.string().nullable().describe('Title and year of the guidance this rests on.'),
  })
  .meta({ id: 'BoardItem' });

export const board = z
  .strictObject({
    household: z.strictObject({ name: z.string(), locale: z.string(), timeZone: z.string() }),
    may: scope.describe('What this device may do.'),
    version: z.number().int(),
    at: z.iso.datetime().describe('When this was so.'),
    today: day,
    places: z.array(place),
    items: z.array(boardItem).describe('What to use first foremost.'),
    tonight: z.array(z.string()).describe('Ids of items to see to today, most urgent first.'),
    purchases: z.array(purchase),
    reminders: z.array(reminderView),
    messages: z.array(z.strictObject({ id: z.string(), from: z.string().nullable(), text: z.string() })),
    known: z.array(z.string()).describe('Names of foods this kitchen has had.'),
    spareMarkers: z.array(z.strictObject({ id: z.string(), feels: z.string() })),
    people: z.array(z.strictObject({ id: z.string(), name: z.string() })),
  })
  .meta({ id: 'Board' });
export type Board = z.infer<typeof board>;
export type BoardItem = z.infer<typeof boardItem>;

const share = z.strictObject({
  count: z.number().min(0.01).max(100_000).nullable().default(null),
  unit: words(40).default('portion'),
  placeId: z.string().max(128).nullable().default(null),
  markerId: z.string().max(128).nullable().default(null),
});

export const newItem = z
  .strictObject({
    name: words(120),
    shares: z.array(share).min(1).max(30).describe('One for each place it is put in.'),
    dates: z
      .partialRecord(z.enum(['made', 'bought', 'opened', 'frozen', 'thawed', 'bestBefore', 'useBy']), day)
      .default({}),
    maker: words(120).nullable().default(null),
    contains: z.array(words(60)).max(40).default([]),
  })
  .meta({ id: 'NewItem' });
export type NewItem = z.input<typeof newItem>;

export const takeSome = z
  .union([
    z.strictObject({ count: z.number().min(0.01).max(100_000).describe('In what it is counted in.') }),
    z.strictObject({ left: z.number().min(0).max(100_000).describe('So many are left.') }),
    z.strictObject({ fraction: z.number().min(0.01).max(1).describe('A share of what is left.') }),
  ])
  .meta({ id: 'TakeSome' });
