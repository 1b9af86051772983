/** `tellshelf guidance FOOD`: any single question to the reference tables, with its row and source. */
import { InvalidArgumentError, Option } from 'commander';
import type { Command } from 'commander';
// Not by the room's door, which would load all of it before a question is asked.
import { datesPrinted } from '../kitchen/codes/gs1-dates.js';
import { checkDigit, isGtin } from '../kitchen/codes/gtin.js';
import type { HeatMethod, Item, Region } from '../kitchen/model.js';
import type * as Safety from '../safety/index.js';
import { plusDays, today as dayToday } from '../terms/dates.js';
import type { Clock } from '../terms/dates.js';
import { linesOf } from './guidance/print.js';
import {
  dayFrom,
  minutesFrom,
  momentsFrom,
  numberFrom,
  secondsFrom,
  temperatureOf,
} from './guidance/read.js';
import { instantOf } from './wall-time.js';

type Temperature = ReturnType<typeof temperatureOf>;

interface Options {
  readonly where?: Safety.Where;
  readonly region?: Region | 'unset';
  readonly days?: number;
  readonly hours?: number;
  readonly raw?: boolean;
  readonly cooked?: boolean;
  readonly made?: string;
  readonly bought?: string;
  readonly opened?: string | true;
  readonly frozen?: string | true;
  readonly thawed?: string | true;
  readonly useBy?: string;
  readonly bestBefore?: string;
  readonly oldestPart?: string;
  readonly withinOpening?: number;
  readonly reheated?: number;
  readonly atRisk?: boolean;
  readonly today?: string;
  readonly now?: string;
  readonly zone: string;
  readonly temp?: boolean;
  readonly reads?: Temperature;
  readonly rested?: number;
  readonly held?: number;
  readonly boiling?: boolean;
  readonly reheating?: boolean;
  readonly plantSealed?: boolean;
  readonly fridgeReads?: Temperature;
  readonly leftOut?: number | 'unknown';
  readonly air?: Temperature;
  readonly reheat?: HeatMethod;
  readonly pack?: string;
  readonly watts?: number;
  readonly stand?: number;
  readonly portions?: number;
  readonly thaw?: number | 'unknown';
  readonly by?: string;
  readonly freeze?: boolean;
  readonly refreeze?: 'fridge' | 'cold-water' | 'microwave' | 'left-out';
  readonly powerCut?: number;
  readonly doors?: 'shut' | 'open';
  readonly fullness?: 'full' | 'half';
  readonly above40?: number;
  readonly ice?: boolean;
  readonly microwave?: string;
  readonly scalePortions?: string;
  readonly allergens?: boolean;
  readonly claim?: string;
  readonly amount?: number;
  readonly grams?: number;
  readonly gs1?: string;
  readonly gtin?: string;
  readonly cooling?: string[];
  readonly hotHold?: string[];
  readonly dateMark?: string;
  readonly formula?: string[];
  readonly eggPack?: number;
  readonly frontOfPack?: string;
  readonly dailyValue?: number;
  readonly homeCanned?: number;
  readonly boilTest?: number;
  readonly printed?: string;
  readonly letter?: string;
  readonly packageDates?: boolean;
  readonly rows?: boolean;
  readonly json?: boolean;
}

type Room = typeof Safety;
type Answer = (food: string, options: Options, clock: Clock, room: Room) => unknown;

const regionOf = (options: Options): Region | null =>
  options.region === undefined || options.region === 'unset' ? null : options.region;
const stateOf = (options: Options): Safety.CookState =>
  options.raw ? 'raw' : options.cooked ? 'cooked' : null;
const needed = (food: string): string => {
  if (food === '')
    throw new InvalidArgumentError('Name a food, e.g. tellshelf guidance "cooked rice" --days 2.');
  return food;
};

const keeping: Answer = (food, options, clock, room) => {
  const day = dayToday(clock);
  const ago = options.days === undefined ? undefined : plusDays(day, -options.days);
  /** A date given with its option, or the option alone with `--days`. */
  const dated = (value: string | true | undefined): string | undefined => (value === true ? ago : value);
  const dates: Record<string, string> = {};
  const given = {
    made: options.made,
    bought: options.bought,
    opened: dated(options.opened),
    frozen: dated(options.frozen),
    thawed: dated(options.thawed),
    useBy: options.useBy,
    bestBefore: options.bestBefore,
  };
  for (const [kind, value] of Object.entries(given)) if (value !== undefined) dates[kind] = value;
  const judge = (where: Safety.Where): Safety.Assessment =>
    room.guidanceFor({
      food: needed(food),
      where,
      region: regionOf(options),
      state: stateOf(options),
      opened: options.opened !== undefined,
      thawed: options.thawed !== undefined,
      days: options.days ?? null,
      hours: options.hours ?? null,
      dates: dates as Item['dates'],
      oldestPart: options.oldestPart ?? null,
      withinDaysOfOpening: options.withinOpening ?? null,
      timesReheated: options.reheated ?? 0,
      atRisk: options.atRisk === true,
      clock,
    });
  // Nobody said where: no place is taken for granted.
  const places: readonly Safety.Where[] = options.where ? [options.where] : ['fridge', 'freezer', 'pantry'];
  const found = places.map((where) => judge(where));
  return found.length === 1 ? found[0] : found;
};

const temperature: Answer = (food, options, _clock, room) => {
  const wanted = room.cookTemperature({
    food: needed(food),
    region: regionOf(options),
    state: stateOf(options),
    reheating: options.reheating === true,
    plantSealed: options.plantSealed === true,
  });
  if (options.reads === undefined) return wanted;
  const seconds = options.held ?? (options.rested === undefined ? null : options.rested * 60);
  return {
    ...room.checkProbe(wanted, { reads: options.reads, seconds, boiling: options.boiling === true }),
    row: wanted.row,
    source: wanted.source,
  };
};

const out: Answer = (food, options, clock, room) => {
  const minutes = options.leftOut;
  return room.leftOut({
    food: needed(food),
    since:
      typeof minutes === 'number' ? new Date(Date.parse(clock.now) - minutes * 60_000).toISOString() : null,
    clock,
    region: regionOf(options),
    state: stateOf(options),
    air: options.air ?? null,
  });
};

const heating: Answer = (food, options, _clock, room) => {
  const [time = '', watts] = (options.pack ?? '').split('@');
  return room.reheatPlan({
    food: needed(food),
    method: options.reheat ?? 'microwave',
    from: options.where === 'freezer' ? 'freezer' : 'fridge',
    region: regionOf(options),
    watts: options.watts ?? null,
    portions: options.portions ?? null,
    timesReheated: options.reheated ?? 0,
    state: stateOf(options),
    preparations:
      options.pack === undefined
        ? []
        : [
            {
              method: options.reheat ?? 'microwave',
              from: 'any',
              steps: [],
              minutes: secondsFrom(time) / 60,
              watts: watts === undefined ? null : numberFrom(watts),
              standMinutes: options.stand ?? null,
              heat: null,
              portions: 1,
            },
          ],
  });
};

const thawing: Answer = (food, options, clock, room) => {
  const pounds = typeof options.thaw === 'number' ? options.thaw : null;
  const wantedAt =
    options.by === undefined
      ? new Date(Date.parse(clock.now) + 7 * 86_400_000).toISOString()
      : instantOf(options.by, options.zone);
  return room.thawPlan({ food: needed(food), pounds, wantedAt, clock, region: regionOf(options) });
};

const outage: Answer = (food, options, clock, room) => {
  const freezer = options.where === 'freezer';
  const since = new Date(Date.parse(clock.now) - (options.powerCut ?? 0) * 3_600_000).toISOString();
  const question = {
    since,
    backAt: clock.now,
    doors: options.doors ?? null,
    fullness: options.fullness ?? null,
    fridgeReads: freezer ? null : (options.reads ?? null),
    freezerReads: freezer ? (options.reads ?? null) : null,
    hoursAbove40: options.above40 ?? null,
    iceCrystals: options.ice ?? null,
  };
  if (food !== '')
    return room.powerCutFor({ name: food, where: freezer ? 'freezer' : 'fridge' }, question, clock);
  return room.powerCut({ places: new Map(), items: new Map() }, question, clock);
};

const carriedOver: Answer = (_food, options, _clock, room) => {
  const [, time = '', from = '', to = ''] = /^([\d:]+)@(\d+)-(\d+)$/.exec(options.microwave ?? '') ?? [];
  if (time === '') throw new InvalidArgumentError('Write it like --microwave 4:00@650-750.');
  return room.scaleTime({ seconds: secondsFrom(time), fromWatts: Number(from), toWatts: Number(to) });
};

const portions: Answer = (_food, options, _clock, room) => {
  const [, time = '', from = '', to = ''] =
    /^([\d:]+)@([\d.]+)-([\d.]+)$/.exec(options.scalePortions ?? '') ?? [];
  if (time === '') throw new InvalidArgumentError('Write it like --scale-portions 3:00@1-2.');
  return room.scalePortions(secondsFrom(time), Number(from), Number(to)) ?? { refusal: 'portions-beyond' };
};

const allergens: Answer = (food, options, _clock, room) =>
  food === ''
    ? { allergens: room.allergensOf(regionOf(options) ?? 'uk') }
    : {
        food,
        usuallyContains: room.usualAllergens(food),
        note: 'a caution only: what is not listed is unknown, never absent',
      };

const claim: Answer = (_food, options, _clock, room) => {
  const found = room.checkClaim({
    claim: options.claim ?? '',
    amount: options.amount ?? 0,
    grams: options.grams ?? null,
  });
  if (found === null) {
    const known = [...room.claimsOf('us'), ...room.claimsOf('uk')].map((row) => row.id);
    throw new InvalidArgumentError(`There is no claim "${options.claim}". There are: ${known.join(', ')}.`);
  }
  return found;
};

const yearOf = (clock: Clock): number => Number(dayToday(clock).slice(0, 4));

/** Which question was asked: the first option present decides; none is "how long does it keep". */
const QUESTIONS: readonly (readonly [(options: Options) => boolean, Answer])[] = [
  [(o) => o.rows === true, (_f, o, _c, room) => ({ rows: room.storageRows(regionOf(o) ?? 'us') })],
  [
    (o) => o.gs1 !== undefined,
    (_f, o, clock, _room) => ({ dates: datesPrinted(o.gs1 ?? '', yearOf(clock)) }),
  ],
  [
    (o) => o.gtin !== undefined,
    (_f, o) => ({
      valid: isGtin(o.gtin ?? ''),
      checkDigit: checkDigit((o.gtin ?? '').slice(0, -1)),
    }),
  ],
  [(o) => o.cooling !== undefined, (_f, o, _c, room) => cooling(o, room)],
  [
    (o) => o.hotHold !== undefined,
    (_f, o, _c, room) => {
      const [start = '', at165 = ''] = o.hotHold ?? [];
      return room.checkHotHoldReheat({ start, at165, heldSeconds: o.held ?? 15 });
    },
  ],
  [
    (o) => o.dateMark !== undefined,
    (_f, o, _c, room) =>
      room.dateMark({
        prepared: o.dateMark ?? '',
        frozen: typeof o.frozen === 'string' ? o.frozen : null,
        thawed: typeof o.thawed === 'string' ? o.thawed : null,
      }),
  ],
  [(o) => o.formula !== undefined, (_f, o, _c, room) => formula(o, room)],
  [
    (o) => o.packageDates === true,
    (_f, o, _c, room) => ({
      dates: room.packageDates(regionOf(o)),
    }),
  ],
  [
    (o) => o.eggPack !== undefined,
    (_f, o, clock, room) =>
      room.eggCarton(o.eggPack ?? 0, yearOf(clock)) ?? { problem: 'no such day in that year' },
  ],
  [
    (o) => o.frontOfPack !== undefined,
    (_f, o, _c, room) =>
      room.frontOfPack({
        nutrient: o.frontOfPack ?? '',
        per100g: o.amount ?? 0,
        portionGrams: o.grams ?? null,
      }) ?? {
        problem: 'give fat, saturates, sugars or salt',
      },
  ],
  [(o) => o.dailyValue !== undefined, (_f, o, _c, room) => room.dailyValue(o.dailyValue ?? 0)],
  [(o) => o.homeCanned !== undefined, (_f, o, _c, room) => room.homeCannedBoil(o.homeCanned ?? 0)],
  [
    (o) => o.boilTest !== undefined,
    (_f, o, _c, room) =>
      room.wattsByBoiling(o.boilTest ?? 0) ?? { watts: 'unknown: the test says nothing between' },
  ],
  [(o) => o.printed !== undefined, (_f, o, _c, room) => printed(o, room)],
  [(o) => o.claim !== undefined, claim],
  [(o) => o.allergens === true, allergens],
  [(o) => o.microwave !== undefined, carriedOver],
  [(o) => o.scalePortions !== undefined, portions],
  [(o) => o.powerCut !== undefined, outage],
  [
    (o) => o.fridgeReads !== undefined,
    (_f, o, _c, room) => o.fridgeReads && room.fridgeReading(o.fridgeReads, regionOf(o)),
  ],
  [(o) => o.temp === true, temperature],
  [(o) => o.leftOut !== undefined, out],
  [
    (o) => o.refreeze !== undefined,
    (food, o, clock, room) =>
      room.mayRefreeze({ food: needed(food), thawedIn: o.refreeze ?? null, region: regionOf(o), clock }),
  ],
  [
    (o) => o.freeze === true,
    (food, o, clock, room) =>
      room.mayFreeze({
        food: needed(food),
        region: regionOf(o),
        dates: o.useBy ? { useBy: o.useBy } : {},
        state: o.cooked === true ? 'cooked' : null,
        clock,
      }),
  ],
  [(o) => o.reheat !== undefined, heating],
  [(o) => o.thaw !== undefined, thawing],
];

/** "B=6:00,D=5:00,650=6:00,750=5:00": the columns a label prints. */
const printed = (options: Options, room: Room): unknown => {
  const columns = Object.fromEntries(
    (options.printed ?? '').split(',').map((part) => {
      const [column = '', time = ''] = part.split('=');
      return [column.trim(), secondsFrom(time)];
    }),
  );
  return (
    room.printedTime(columns, { watts: options.watts ?? null, letter: options.letter ?? null }) ?? {
      problem: 'no column fits',
    }
  );
};

const cooling = (options: Options, room: Room): unknown => {
  const times = options.cooling ?? [];
  const [start = '', second = '', third] = times;
  return third === undefined
    ? room.checkCooling({ start, at41: second, ambient: true })
    : room.checkCooling({ start, at70: second, at41: third });
};

const formula = (options: Options, room: Room): unknown => {
  const [made = '', feedBegan, now] = options.formula ?? [];
  const found = room.formulaUntil({ made, feedBegan: feedBegan ?? null });
  return now === undefined
    ? found
    : { ...found, verdict: now <= found.until ? 'may-be-finished' : 'discard' };
};

const clockFrom = (options: Options): Clock => {
  if (options.now !== undefined) return { now: instantOf(options.now, options.zone), timeZone: options.zone };
  if (options.today !== undefined)
    return { now: instantOf(options.today, options.zone), timeZone: options.zone };
  return { now: new Date().toISOString(), timeZone: options.zone };
};

const orUnknown =
  (read: (text: string) => number) =>
  (text: string): number | 'unknown' =>
    text === 'unknown' ? 'unknown' : read(text);

const HELP = `
Without a question option: what guidance says of food kept so long. Give --days, or dates, or
neither to hear how long it keeps. With no --region the stricter of both is taken.

  tellshelf guidance "cooked rice" --days 5 --region us
  tellshelf guidance "hot dogs" --opened 2026-05-01 --frozen 2026-05-04 --thawed 2026-06-10 --today 2026-06-12
  tellshelf guidance "beef stew" --where freezer --frozen 2026-06-10 --today 2026-12-10 --region us
  tellshelf guidance ham --use-by 2026-11-26 --opened 2026-11-25 --within-opening 3 --region uk
  tellshelf guidance "pork chop" --temp --reads 145F --rested 2 --region us
  tellshelf guidance soup --temp --reheating --reads 75C --held 20 --region uk
  tellshelf guidance "potato salad" --left-out 75 --air 92F --region us
  tellshelf guidance lasagne --reheat microwave --pack 4:00@650 --watts 750 --region us
  tellshelf guidance turkey --thaw 18 --by 2026-11-26T12:00 --region us
  tellshelf guidance shrimp --refreeze cold-water --region us
  tellshelf guidance mayonnaise --power-cut 9 --above40 9 --reads 55F
  tellshelf guidance "frozen peas" --where freezer --power-cut 30 --above40 3 --no-ice
  tellshelf guidance --microwave 5:00@1000-700
  tellshelf guidance --claim us-low-sodium-meal --amount 400 --grams 300
  tellshelf guidance --gs1 "(17)270200" --today 2026-11-25
  tellshelf guidance --cooling 12:00,13:50,17:55
  tellshelf guidance --formula 10:00,11:20,11:55

It reports what guidance says. Labels, local food authorities and clinicians come first.`;

const answer = async (words: readonly string[], options: Options): Promise<void> => {
  const room = await import('../safety/index.js');
  const [, ask] = QUESTIONS.find(([asked]) => asked(options)) ?? [null, keeping];
  const found = ask(words.join(' ').trim(), options, clockFrom(options), room);
  const text = options.json === true ? JSON.stringify(found, null, 2) : linesOf(found).join('\n');
  process.stdout.write(`${text}\n`);
};

export const addGuidanceCommand = (program: Command): void => {
  program
    .command('guidance')
    .description('What published guidance says of one food: verdict, row and source.')
    .argument('[food...]', 'the food, as a cook names it')
    .addOption(
      new Option('--where <place>', 'where it is kept; unset tells of each place').choices([
        'fridge',
        'freezer',
        'pantry',
        'counter',
      ]),
    )
    .addOption(
      new Option('--region <region>', 'whose guidance; unset takes the stricter').choices([
        'us',
        'uk',
        'unset',
      ]),
    )
    .option('--days <n>', 'days it has been there', numberFrom)
    .option('--hours <n>', 'hours it has been there', numberFrom)
    .option('--raw', 'it is raw')
    .option('--cooked', 'it is cooked, or home-made')
    .option('--made <day>', 'day it was made', dayFrom)
    .option('--bought <day>', 'day it was bought or put away', dayFrom)
    .option('--opened [day]', 'it is open, since that day', dayFrom)
    .option('--frozen [day]', 'day it was frozen', dayFrom)
    .option('--thawed [day]', 'day it was moved to the fridge to thaw', dayFrom)
    .option('--use-by <day>', 'printed use-by', dayFrom)
    .option('--best-before <day>', 'printed best-before', dayFrom)
    .option('--oldest-part <day>', 'date of its oldest part', dayFrom)
    .option('--within-opening <n>', 'label: use within so many days of opening', numberFrom)
    .option('--reheated <n>', 'times reheated already', numberFrom)
    .option('--at-risk', 'somebody at higher risk eats it')
    .option('--today <day>', 'take this as today', dayFrom)
    .option('--now <time>', 'take this as now, e.g. 2026-11-25T23:30')
    .option('--zone <name>', 'time zone', Intl.DateTimeFormat().resolvedOptions().timeZone)
    .option('--temp', 'question: what the thermometer should read')
    .option('--reads <temperature>', 'what a thermometer reads, e.g. 155F or 70C', temperatureOf)
    .option('--rested <minutes>', 'minutes rested', numberFrom)
    .option('--held <seconds>', 'seconds held at that temperature', numberFrom)
    .option('--boiling', 'it boils all over')
    .option('--reheating', 'it is being reheated')
    .option('--plant-sealed', 'cooked ham sealed at an inspected plant')
    .option('--fridge-reads <temperature>', 'question: is the fridge cold enough', temperatureOf)
    .option(
      '--left-out <time>',
      'question: out so long, e.g. 1h45, 105 (minutes) or unknown',
      orUnknown(minutesFrom),
    )
    .option('--air <temperature>', 'temperature where it stood', temperatureOf)
    .addOption(
      new Option('--reheat <method>', 'question: steps to reheat').choices([
        'microwave',
        'oven',
        'hob',
        'air fryer',
        'steamer',
        'slow cooker',
        'toaster',
        'none',
      ]),
    )
    .option('--pack <time@watts>', "the label's time, e.g. 4:00@650")
    .option('--watts <n>', "the household's microwave", numberFrom)
    .option('--stand <minutes>', "the label's standing time", numberFrom)
    .option('--portions <n>', 'portions to heat; the pack is for one', numberFrom)
    .option('--thaw <pounds>', 'question: a thawing plan; pounds or unknown', orUnknown(numberFrom))
    .option('--by <time>', 'when it should be thawed, e.g. 2026-11-26T16:00')
    .option('--freeze', 'question: may it be frozen now')
    .addOption(
      new Option('--refreeze <how>', 'question: may it be frozen again, thawed how').choices([
        'fridge',
        'cold-water',
        'microwave',
        'left-out',
      ]),
    )
    .option('--power-cut <hours>', 'question: power was out so many hours', numberFrom)
    .addOption(new Option('--doors <state>', 'doors during the cut').choices(['shut', 'open']))
    .addOption(new Option('--fullness <state>', 'how full the freezer is').choices(['full', 'half']))
    .option('--above40 <hours>', 'hours the food was above 40 degrees Fahrenheit', numberFrom)
    .option('--ice', 'ice crystals remain')
    .option('--no-ice', 'no ice crystals remain')
    .option('--microwave <time@from-to>', 'question: the time for other watts, e.g. 4:00@650-750')
    .option('--scale-portions <time@from-to>', 'question: the time for other portions, e.g. 3:00@1-2')
    .option('--allergens', "question: the region's allergens, or what a food usually contains")
    .option('--claim <id>', 'question: does an amount meet a label claim')
    .option('--amount <n>', 'amount for --claim', numberFrom)
    .option('--grams <n>', 'weight of the meal for --claim', numberFrom)
    .option('--gs1 <text>', 'question: dates in a package code, e.g. "(17)270200"')
    .option('--gtin <digits>', 'question: is the check digit right')
    .option(
      '--cooling <times>',
      'question (food service): 135, 70 and 41 degrees Fahrenheit at these times; two times for room-warm parts',
      momentsFrom,
    )
    .option(
      '--hot-hold <times>',
      'question (food service): start and 165 degrees Fahrenheit at these times',
      momentsFrom,
    )
    .option('--date-mark <day>', 'question (food service): last day of food prepared on this day', dayFrom)
    .option('--formula <times>', 'question: bottle made, feed began, and now', momentsFrom)
    .option('--package-dates', 'what printed dates mean')
    .option('--egg-pack <day>', 'question: a US egg carton packed on this day of the year', numberFrom)
    .option(
      '--front-of-pack <nutrient>',
      'question (UK): level of fat, saturates, sugars or salt; --amount per 100 g, --grams the portion',
    )
    .option('--daily-value <percent>', 'question (US): is a percent of daily value low or high', numberFrom)
    .option(
      '--home-canned <feet>',
      'question: minutes to boil doubtful home-canned food at this altitude',
      numberFrom,
    )
    .option(
      '--boil-test <seconds>',
      'question: about how many watts, by the time a cup of water takes to boil',
      numberFrom,
    )
    .option(
      '--printed <columns>',
      'question: the time a label prints for this oven, e.g. B=6:00,D=5:00,650=6:00,750=5:00',
    )
    .option('--letter <letter>', 'heating category of the oven')
    .option('--rows', "the region's storage rows")
    .option('--json', 'the whole finding as JSON')
    .addHelpText('after', HELP)
    .action(answer);
};
