/** The kitchen for pages and sighted helpers: what there is, and the few changes a page can make. */
import { z } from 'zod';
import { changeMade, speech } from './turn.js';

export const day = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}$/, 'a day as YYYY-MM-DD')
  .describe('Calendar day in the household’s time zone, `YYYY-MM-DD`.');
const instant = z.iso.datetime();
/** Text that people will hear or read: no control or direction-changing characters. */
export const words = (longest: number) =>
  z
    .string()
    .trim()
    .min(1)
    .max(longest)
    // eslint-disable-next-line no-control-regex
    .regex(/^[^\u0000-\u001f\u007f\u202a-\u202e\u2066-\u2069]+$/, 'no control or direction characters');

export const amount = z
  .strictObject({
    value: z.number().min(0).max(100_000),
    unit: z.string().min(1).max(40).describe('Singular: "tub", "gram"; "piece" when the food counts itself.'),
    rough: z.boolean().exactOptional(),
  })
  .meta({ id: 'Amount' });

export const touch = z
  .strictObject({
    size: words(40).optional(),
    container: words(40).optional(),
    texture: words(40).optional(),
    shape: words(40).optional(),
    fastening: words(40).optional(),
    fastenings: z.number().int().min(0).max(20).optional(),
    spot: words(60).optional(),
    dots: z.number().int().min(0).max(20).optional(),
    counted: words(40)
      .optional()
      .describe('What `dots` counts, where it is no dot: "knot", "ridge", "notch".'),
  })
  .describe('What a hand finds on a container or marker.')
  .meta({ id: 'Touch' });

export const place = z
  .strictObject({
    id: z.string(),
    parentId: z.string().nullable(),
    name: z.string(),
    kind: z.string(),
    position: z.number().nullable().describe('Counted from the top, or from the left for sides.'),
    aliases: z.array(z.string()),
    path: z.array(z.string()).describe('Names from the whole appliance down to this place.'),
    items: z.number().int().describe('How many items stand here, places inside it included.'),
  })
  .meta({ id: 'Place' });

export const marker = z
  .strictObject({
    id: z.string(),
    touch,
    codes: z.array(z.string()),
    care: z.string().nullable(),
    onItemId: z.string().nullable().describe('Null: in the spare box.'),
  })
  .meta({ id: 'Marker' });

const feel = touch.pick({
  texture: true,
  shape: true,
  fastening: true,
  fastenings: true,
  spot: true,
  dots: true,
  counted: true,
});
const anyway = z
  .boolean()
  .default(false)
  .describe('True: though it would feel like another marker, which is refused else.');

export const newMarker = z
  .strictObject({ touch: feel, care: words(120).nullable().default(null), anyway })
  .meta({ id: 'NewMarker' });

/** What a page may change of a marker. A part left out stays as it is. */
export const markerChange = z
  .strictObject({
    touch: feel.optional().describe('All that a hand finds on it: what is left out here is taken away.'),
    care: words(120).nullable().optional(),
    anyway,
  })
  .meta({ id: 'MarkerChange' });

const dateKind = z.enum(['made', 'bought', 'opened', 'frozen', 'thawed', 'bestBefore', 'useBy']);

export const preparation = z
  .strictObject({
    method: z.string(),
    from: z.string(),
    steps: z.array(z.string()),
    minutes: z.number().nullable(),
    watts: z.number().nullable(),
    standMinutes: z.number().nullable(),
    heat: z.strictObject({ degrees: z.number(), scale: z.enum(['fahrenheit', 'celsius']) }).nullable(),
    portions: z.number().nullable(),
  })
  .meta({ id: 'Preparation' });

export const item = z
  .strictObject({
    id: z.string(),
    name: z.string(),
    amount: amount.nullable(),
    howMuch: z.string().nullable().describe('The amount in print: "2 portions".'),
    touch,
    placeId: z.string().nullable(),
    placePath: z.array(z.string()),
    spot: z.string().nullable(),
    markerId: z.string().nullable(),
    dates: z.partialRecord(dateKind, day),
    maker: z.string().nullable(),
    ownerId: z.string().nullable(),
    diets: z.array(z.string()),
    contains: z
      .array(z.string())
      .describe('Allergens it is said to contain. What is not listed is unknown, never absent.'),
    freeFrom: z.array(z.string()),
    cautions: z.array(z.string()),
    preparations: z.array(preparation),
    notes: z.array(z.string()),
    batchId: z.string().nullable(),
    addedAt: instant,
    gone: z.strictObject({ at: instant, how: z.enum(['used', 'thrown out', 'given away']) }).nullable(),
  })
  .meta({ id: 'Item' });
export type ItemView = z.infer<typeof item>;

/** What a page may change of an item. A part left out stays as it is; null clears it. */
export const itemChange = z
  .strictObject({
    name: words(120).optional(),
    amount: amount.nullable().optional(),
    touch: touch.optional(),
    placeId: z.string().max(128).optional().describe('Moves it there.'),
    spot: words(120).nullable().optional(),
    dates: z.partialRecord(dateKind, day.nullable()).optional().describe('null: the date is not known.'),
    maker: words(120).nullable().optional(),
    diets: z.array(words(60)).max(30).optional(),
    contains: z.array(words(60)).max(40).optional(),
    freeFrom: z.array(words(60)).max(40).optional(),
    cautions: z.array(words(200)).max(20).optional(),
    notes: z.array(words(500)).max(50).optional(),
  })
  .meta({ id: 'ItemChange' });
export type ItemChange = z.infer<typeof itemChange>;

export const useFirstRow = z
  .strictObject({
    itemId: z.string(),
    name: z.string(),
    placePath: z.array(z.string()),
    state: z.string().describe('Where it stands against the guidance.'),
    daysLeft: z.number().nullable().describe('Negative: past it. Null: unknown.'),
    says: z.string().nullable().describe('Title and year of the guidance this rests on.'),
  })
  .meta({ id: 'UseFirst' });

export const journalRow = z
  .strictObject({
    id: z.string(),
    version: z.number().int(),
    at: instant,
    verb: z.string(),
    about: z.array(z.string()),
    person: z.string().nullable(),
    deviceId: z.string().nullable(),
  })
  .meta({ id: 'JournalEntry' });

export const purchase = z
  .strictObject({
    id: z.string(),
    name: z.string(),
    amount: amount.nullable(),
    howMuch: z.string().nullable().describe('The amount in print: "2 bags".'),
    section: z.string().nullable().describe('Section of a shop: "dairy".'),
    shop: z.string().nullable().describe('Where it is to be bought: "fish market".'),
    note: z.string().nullable().describe('Which kind, or what it is for: "unsalted".'),
    forPersonId: z.string().nullable().describe('Who it is for; null: nobody was named.'),
    forPerson: z.string().nullable().describe('The same by name.'),
    addedAt: instant,
  })
  .meta({ id: 'Purchase' });

export const purchaseRequest = z
  .strictObject({
    name: words(120),
    amount: amount.nullable().default(null),
    section: words(60).nullable().default(null),
    shop: words(60).nullable().default(null),
    note: words(120).nullable().default(null),
    forPersonId: z.string().max(128).nullable().default(null),
  })
  .meta({ id: 'NewPurchase' });

export const changeDone = z
  .strictObject({
    version: z.number().int(),
    changes: z.array(changeMade),
    speech: speech.optional().describe('What was done, in words, for a live region.'),
  })
  .meta({ id: 'ChangeDone' });
