/**
 * The shapes of the reference tables in this folder. A row that does not fit stops the program
 * at its start, with the file and line, rather than giving a wrong figure later.
 */
import { z } from 'zod';

const id = z.string().regex(/^[a-z0-9-]+$/);
const text = z.string();
const region = z.enum(['us', 'uk']);
/** How a figure is known; see `Basis` in the safety room. */
const basis = z.enum(['agency-text', 'copy', 'from-memory', 'derived', 'common-practice']);
const cited = { basis, source: id, section: text.nullable().transform((s) => (s === '' ? null : s)) };

/** An empty cell is null. */
const orNull = <T extends z.ZodType>(inner: T) =>
  z.preprocess((cell) => (cell === '' ? null : cell), inner.nullable());
const cell = orNull(text);
const numberCell = orNull(z.coerce.number());
const list = text.transform((cellText) => cellText.split('|').filter((part) => part !== ''));
const yes = z.enum(['yes', 'no', '']).transform((answer) => answer === 'yes');

/** "3-4 days", "1 week", "24 hours". */
const span = text
  .regex(/^\d+(-\d+)? (hour|day|week|month|year)s?$/, 'must be like "3-4 days"')
  .transform((written) => {
    const [range = '', unit = ''] = written.split(' ');
    const [low = '', high = low] = range.split('-');
    return {
      low: Number(low),
      high: Number(high),
      unit: `${unit.replace(/s$/, '')}s` as 'hours' | 'days' | 'weeks' | 'months' | 'years',
    };
  });

export const sourceRow = z.object({
  id,
  region,
  agency: text.min(1),
  document: text.min(1),
  /** Null when not known: a year is never made up. */
  year: numberCell,
  edition: cell,
});

export const storageRow = z.object({
  id,
  food: text.min(1),
  type: text.min(1),
  fridge: orNull(span),
  freezer: orNull(span),
  freezer_note: cell,
  /** The day that counts as day nought. */
  counts_from: z.enum(['earliest', 'opened', 'made', 'thawed']),
  standing: z.enum(['current', 'older', 'guide']),
  ...cited,
  note: cell,
});

/** A product of the USDA's storage-time data; the row's id is the data set's own with `usda-` before it. */
export const storageDataRow = z.object({
  id,
  food: text.min(1),
  type: text,
  pantry: orNull(span),
  pantry_opened: orNull(span),
  fridge: orNull(span),
  fridge_opened: orNull(span),
  fridge_thawed: orNull(span),
  freezer: orNull(span),
  note: cell,
});

export const foodKind = z.object({
  id,
  label: text.min(1),
  state: z.enum(['raw', 'cooked']),
  us: cell,
  us_opened: cell,
  uk: id,
  power_fridge: cell,
  power_freezer: cell,
  /** Row of `cooking-temperatures.csv` in the US. */
  cook: cell,
  after_thaw: cell,
  hazard: z.enum(['high', 'medium', 'low', 'none']),
  /** `tin`: sold shelf-stable too, perishable once opened or home-made. */
  room: z.enum(['perishable', 'stable', 'tin', 'unknown']),
  at_risk: cell,
  hazard_row: cell,
  /** The row it rests on; which foods are of one kind is common practice where no row says so. */
  ...cited,
});

export const foodRow = z
  .object({
    food: text.min(1),
    also: list,
    bought: cell,
    cooked: cell,
    /** What is meant when nobody says: as bought, cooked, or either. */
    usual: z.enum(['bought', 'cooked', 'either']),
    /** Allergens such food usually holds. A caution only. */
    contains: list,
    /** Where a published row names it; that it is of its kind is common practice where none does. */
    ...cited,
  })
  .refine((row) => row.bought !== null || row.cooked !== null, 'needs a kind, bought or cooked');

/** A name in another language, and the words of these tables it stands for. */
export const foreignNameRow = z.object({
  /** A food of `foods.csv`; how it was treated ("crudo"); or a word that joins ("de", "con"). */
  kind: z.enum(['food', 'manner', 'joint']),
  spanish: list,
  english: text.min(1),
});

export const cookingRow = z.object({
  id,
  region,
  food: text,
  fahrenheit: z.coerce.number(),
  celsius: z.coerce.number(),
  rest_minutes: numberCell,
  hold_seconds: numberCell,
  boil: yes,
  ...cited,
  note: cell,
});

/** How long it is over the heat, by its size; what ends it is the temperature inside. */
export const roastingRow = z.object({
  id,
  food: text.min(1),
  type: text,
  method: z.enum(['oven', 'grill', 'braise', 'simmer', 'skillet', 'slow-cooker']),
  /** The size the time is for; null: any. */
  size_low: numberCell,
  size_high: numberCell,
  size_unit: orNull(z.enum(['pounds', 'ounces', 'inches'])),
  oven_low_f: numberCell,
  oven_high_f: numberCell,
  minutes_low: z.coerce.number().positive(),
  minutes_high: z.coerce.number().positive(),
  per_pound: yes,
  ...cited,
  note: cell,
});

export const timeTemperatureRow = z.object({
  celsius: z.coerce.number(),
  seconds: z.coerce.number(),
  offered_to_cooks: yes,
  ...cited,
  note: cell,
});

export const holdingRow = z.object({
  id,
  region,
  what: text,
  low_c: numberCell,
  high_c: numberCell,
  low_f: numberCell,
  high_f: numberCell,
  ...cited,
  note: cell,
});

export const powerFridgeRow = z.object({
  id,
  group: text,
  item: text,
  verdict: z.enum(['keep', 'discard']),
  /** Degrees Fahrenheit above which the hours count. */
  above_f: z.coerce.number(),
  hours: z.coerce.number(),
  ...cited,
  note: cell,
});

const freezerVerdict = z.enum(['refreeze', 'refreeze-with-loss', 'discard']);
export const powerFreezerRow = z.object({
  id,
  item: text,
  ice_crystals: freezerVerdict,
  thawed: freezerVerdict,
  thawed_hours: numberCell,
  check_signs: yes,
  ...cited,
  note: cell,
});

export const allergenRow = z.object({
  id,
  name: text,
  also: list,
  regions: list.pipe(z.array(region)),
  basis,
  source_us: cell,
  source_uk: cell,
  note: cell,
});

export const claimRow = z.object({
  id,
  region,
  claim: text,
  nutrient: text,
  at_most: numberCell,
  below: numberCell,
  unit: text,
  per: text,
  also_per: cell,
  ...cited,
  note: cell,
});

export const frontOfPackRow = z.object({
  nutrient: text,
  low_at_most: z.coerce.number(),
  high_above: z.coerce.number(),
  high_per_portion_above: z.coerce.number(),
  unit: text,
  ...cited,
});

export const atRiskRow = z.object({
  id,
  caution: text,
  foods: text,
  who: text,
  ...cited,
  note: cell,
});

export const hazardRow = z.object({ id, caution: text, what: text, advice: text, ...cited });

/** Food gone mouldy that may be cut: by kind of food. What is in no row is thrown out. */
export const mouldRow = z.object({ id, kinds: list, cut_inches: z.coerce.number(), ...cited, note: cell });

export const packageDateRow = z.object({ id, region, kind: text, meaning: text, ...cited, note: cell });

const fact = z.object(cited);

export const timeRules = z.object({
  leftOut: z.array(
    z.object({
      id,
      region,
      what: text,
      minutes: z.number(),
      strictlyAboveF: z.number().nullable(),
      /** In warmer air the time is not known. */
      upToF: z.number().nullable().default(null),
      ...cited,
      note: text,
    }),
  ),
  cooling: z.array(
    z.object({
      id,
      region,
      what: text,
      stages: z.array(z.object({ fromF: z.number().nullable(), toF: z.number(), minutes: z.number() })),
      ...cited,
      note: text,
    }),
  ),
  hotHoldReheat: fact.extend({
    region,
    toF: z.number(),
    holdSeconds: z.number(),
    withinMinutes: z.number(),
  }),
  dateMarking: fact.extend({
    region,
    days: z.number(),
    preparationIsDay: z.literal(1),
    undatedFrozenHoursAfterThaw: z.number(),
    note: text,
  }),
  refreezing: z.array(
    z.object({ id, region, when: text, may: z.enum(['yes', 'cook-first', 'no']), ...cited, note: text }),
  ),
  fridgeAfterFreezing: fact.extend({ region, rule: text }),
  ukUseByFreeze: fact.extend({ region, rule: text }),
  ukReheatOnce: fact.extend({ region, rule: text, times: z.number() }),
  ukEggs: fact.extend({ region, daysAfterBestBefore: z.number() }),
  homeCanned: fact.extend({
    region,
    boilMinutes: z.number(),
    belowFeet: z.number(),
    moreMinutes: z.number(),
    perFeet: z.number(),
    note: text,
  }),
});

const pair = z.tuple([z.number(), z.number()]);
export const thawing = z.object({
  fridge: fact.extend({ hoursPer: z.number(), poundsLow: z.number(), poundsHigh: z.number() }),
  coldWater: fact.extend({
    minutesPerPound: z.number(),
    changeWaterMinutes: z.number(),
    small: z.array(z.object({ uptoPounds: z.number(), hoursLow: z.number(), hoursHigh: z.number() })),
  }),
  microwave: fact.extend({ rule: text }),
  never: fact.extend({ places: z.array(text) }),
  fromFrozen: fact.extend({ timeFactor: z.number() }),
  runningWater: fact.extend({ maxFahrenheit: z.number(), note: text }),
  turkey: z.array(
    fact.extend({ poundsFrom: z.number(), poundsTo: z.number(), fridgeDays: pair, coldWaterHours: pair }),
  ),
});

const hours = fact.extend({ hours: z.number() });
export const powerRules = z.object({
  fridgeShutHours: hours,
  freezerFullHours: hours,
  freezerHalfHours: hours,
  discardAbove: hours.extend({ fahrenheit: z.number(), inclusive: z.boolean(), note: text }),
  refreezeAtOrBelow: fact.extend({ fahrenheit: z.number() }),
  dryIce: fact.extend({ pounds: z.number(), cubicFeet: z.number(), days: z.number() }),
  neverTaste: fact,
  rawJuice: fact,
  noSnow: fact,
});

export const labelRules = z.object({
  eggCarton: fact.extend({
    region,
    sellByWithinDays: z.number(),
    useByWithinDays: z.number(),
    note: text,
  }),
  percentDailyValue: fact.extend({
    region,
    lowAtMost: z.number(),
    highAtLeast: z.number(),
    sodiumDailyMilligrams: z.number(),
  }),
  saltPerSodium: fact.extend({ region, factor: z.number() }),
  mayContain: fact.extend({ region, rule: text }),
  speciesNamed: fact.extend({ region, rule: text }),
});

const bySetting = z.record(text, z.number());
export const microwave = z.object({
  rules: fact.extend({
    stepSeconds: z.number(),
    ratioLow: z.number(),
    ratioHigh: z.number(),
    note: text,
  }),
  portions: fact.extend({ doubleLow: z.number(), doubleHigh: z.number(), note: text }),
  standSeconds: fact.extend({ seconds: z.number(), note: text }),
  boilTest: z.array(
    fact.extend({
      cups: z.number(),
      boilsWithinSeconds: z.number().optional(),
      boilsAfterSeconds: z.number().optional(),
      about: z.number(),
    }),
  ),
  categories: fact.extend({ letters: z.array(text), fastest: text, note: text }),
  specimens: z.array(fact.extend({ pack: text, standSeconds: z.number().nullable(), times: bySetting })),
  foodList: z.array(z.object({ food: text, seconds: bySetting })),
  foodListSource: fact.extend({ note: text }),
});

export type StorageRow = z.infer<typeof storageRow>;
export type StorageDataRow = z.infer<typeof storageDataRow>;
export type RoastingRow = z.infer<typeof roastingRow>;
export type FoodKind = z.infer<typeof foodKind>;
export type ForeignNameRow = z.infer<typeof foreignNameRow>;
export type FoodRow = z.infer<typeof foodRow>;
export type PowerFridgeRow = z.infer<typeof powerFridgeRow>;
export type PowerFreezerRow = z.infer<typeof powerFreezerRow>;
export type AllergenRow = z.infer<typeof allergenRow>;
export type ClaimRow = z.infer<typeof claimRow>;
export type PackageDateRow = z.infer<typeof packageDateRow>;
