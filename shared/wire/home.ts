/** The household itself, on the wire: who lives here, how it is set up. */
import { z } from 'zod';
import { day, words } from './kitchen.js';

const list = z.array(words(60)).max(40);

export const person = z
  .strictObject({
    id: z.string(),
    name: z.string(),
    eatsHere: z.boolean(),
    allergens: z.array(z.string()),
    diets: z.array(z.string()),
    atRisk: z.boolean().describe('Only when they chose to say so: age, pregnancy, weakened immunity.'),
    needs: z.array(z.string()).describe('How their food is to be, as it was told: "cut up small".'),
    comesOn: day.nullable().describe('The day a guest comes, the last that was told, past ones too.'),
  })
  .meta({ id: 'Person' });
export type PersonView = z.infer<typeof person>;

export const personChange = z
  .strictObject({
    name: words(80).optional(),
    eatsHere: z.boolean().optional(),
    allergens: list.optional().describe('The whole list: what is left out is taken away.'),
    diets: list.optional(),
    atRisk: z.boolean().optional(),
    needs: z.array(words(120)).max(20).optional().describe('The whole list.'),
    comesOn: day.nullable().optional().describe('null: on no day that is known.'),
  })
  .meta({ id: 'PersonChange' });
export const newPerson = personChange.extend({ name: words(80) }).meta({ id: 'NewPerson' });

const wallTime = z.string().regex(/^(?:[01]\d|2[0-3]):[0-5]\d$/, 'a time as HH:MM');

export const householdView = z
  .strictObject({
    id: z.string(),
    name: z.string(),
    timeZone: z.string(),
    locale: z.string(),
    region: z.enum(['us', 'uk']).describe('Whose food-safety guidance is reported.'),
    measures: z.enum(['us', 'metric']),
    microwaveWatts: z.number().nullable(),
    summaryAt: z.string().nullable(),
    quietHours: z.strictObject({ from: z.string(), to: z.string() }).nullable(),
    meanings: z
      .array(z.strictObject({ count: z.int(), meaning: z.string() }))
      .describe('What so many raised points on a marker mean here.'),
    allergens: z.array(z.string()).describe('Groups that the law of its region names, to offer.'),
    address: z.string().describe('Where labels and codes say this service is reached.'),
    addressIsLocal: z.boolean().describe('That address works on the machine itself only.'),
  })
  .meta({ id: 'Household' });
export type HouseholdView = z.infer<typeof householdView>;

export const householdChange = z
  .strictObject({
    name: words(80).optional(),
    timeZone: z.string().max(60).optional(),
    locale: z.enum(['en-US', 'en-GB', 'es-US', 'es-MX', 'es-ES']).optional(),
    region: z.enum(['us', 'uk']).optional(),
    measures: z.enum(['us', 'metric']).optional(),
    microwaveWatts: z.int().min(300).max(2_000).nullable().optional(),
    summaryAt: wallTime.nullable().optional(),
    quietHours: z.strictObject({ from: wallTime, to: wallTime }).nullable().optional(),
  })
  .meta({ id: 'HouseholdChange' });

export const newPlace = z
  .strictObject({
    name: words(60),
    kind: z.enum([
      'fridge',
      'freezer',
      'pantry',
      'counter',
      'cupboard',
      'shelf',
      'drawer',
      'basket',
      'door',
      'side',
    ]),
    parentId: z.string().max(128).nullable().default(null),
  })
  .meta({ id: 'NewPlace' });
