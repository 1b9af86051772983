/**
 * Seventy worked cases. The figures are published; the source stands with each case. The counting
 * conventions (day nought, single limits, strict "above") are ours and stand in `src/safety/gate`.
 */
import { describe, expect, it } from 'vitest';
import {
  checkClaim,
  checkCooling,
  checkHotHoldReheat,
  checkProbe,
  cookTemperature,
  dateMark,
  formulaUntil,
  fridgeReading,
  fridgeThawHours,
  guidanceFor,
  leftOut,
  mayFreeze,
  mayRefreeze,
  powerCutFor,
  printedTime,
  reheatPlan,
  scalePortions,
  scaleTime,
  waterThawHours,
} from '../../src/safety/index.js';
import { datesPrinted } from '../../src/kitchen/index.js';
import { isGtin } from '../../src/kitchen/codes/gtin.js';
import type { GuidanceQuestion, PowerCutQuestion, Region, Temperature } from './types.js';

const zone = 'America/Chicago';
const noon = (day: string) => ({ now: `${day}T18:00:00.000Z`, timeZone: zone });
type More = Partial<Omit<GuidanceQuestion, 'food' | 'clock' | 'region'>>;
const ask = (food: string, today: string, more: More = {}, region: Region = 'us') =>
  guidanceFor({ food, where: 'fridge', region, clock: noon(today), ...more });
const said = (...parts: Parameters<typeof ask>) => {
  const found = ask(...parts);
  return [found.verdict, found.lastDay] as const;
};
const F = (degrees: number): Temperature => ({ degrees, scale: 'fahrenheit' });
const C = (degrees: number): Temperature => ({ degrees, scale: 'celsius' });
const probe = (
  food: string,
  reads: Temperature,
  more: {
    region?: Region;
    seconds?: number;
    boiling?: boolean;
    reheating?: boolean;
    plantSealed?: boolean;
  } = {},
) =>
  checkProbe(
    cookTemperature({
      food,
      region: more.region ?? 'us',
      reheating: more.reheating ?? false,
      plantSealed: more.plantSealed ?? false,
    }),
    { reads, seconds: more.seconds ?? null, boiling: more.boiling ?? null },
  );
const outFor = (food: string, minutes: number, air: Temperature | null, region: Region = 'us') =>
  leftOut({
    food,
    since: new Date(Date.parse('2026-07-04T18:00:00Z') - minutes * 60_000).toISOString(),
    clock: noon('2026-07-04'),
    region,
    air,
  }).verdict;
const outage = (
  food: string,
  hours: number,
  more: Partial<PowerCutQuestion> = {},
  where: 'fridge' | 'freezer' = 'fridge',
) =>
  powerCutFor(
    { name: food, where },
    {
      since: new Date(Date.parse('2026-07-04T18:00:00Z') - hours * 3_600_000).toISOString(),
      backAt: '2026-07-04T18:00:00.000Z',
      doors: 'shut',
      fullness: 'half',
      ...more,
    },
    noon('2026-07-04'),
  ).verdict;
const at = (time: string, night = 0) =>
  new Date(Date.parse(`2026-11-0${1 + night}T${time}:00Z`)).toISOString();

describe('leftovers, FoodSafety.gov Cold Food Storage Chart: 3 to 4 days', () => {
  const chicken = { dates: { made: '2026-11-22' } };
  it('1: two days in, fine; last day the 26th', () =>
    expect(said('cooked chicken', '2026-11-24', chicken)).toEqual(['fine', '2026-11-26']));
  it('2: three days in, use it up, one day left', () => {
    expect(said('cooked chicken', '2026-11-25', chicken)[0]).toBe('use-soon');
    expect(ask('cooked chicken', '2026-11-25', chicken).daysLeft).toBe(1);
  });
  it('3: four days in, last day', () =>
    expect(said('cooked chicken', '2026-11-26', chicken)[0]).toBe('last-day'));
  it('4: five days in, throw out', () => {
    const found = ask('cooked chicken', '2026-11-27', chicken);
    expect([found.verdict, found.daysUsed]).toEqual(['throw-out', 5]);
  });
  it('5: the same under UK rules, Food Standards Agency: two days', () =>
    expect(said('cooked chicken', '2026-11-26', chicken, 'uk')).toEqual(['throw-out', '2026-11-24']));
  it('15: soup takes the date of its oldest part (Food Code 3-501.17(C))', () =>
    expect(
      ask('soup', '2026-11-24', { dates: { made: '2026-11-24' }, oldestPart: '2026-11-22' }).lastDay,
    ).toBe('2026-11-26'));
});

describe('raw meat, eggs and cured meat, FoodSafety.gov Cold Food Storage Chart', () => {
  it('6: raw ground turkey, 1 to 2 days, over the end of February', () => {
    const bought = { dates: { bought: '2026-02-26' } };
    expect(said('raw ground turkey', '2026-02-28', bought)[0]).toBe('last-day');
    expect(said('raw ground turkey', '2026-03-01', bought)[0]).toBe('throw-out');
  });
  it('7: raw chicken pieces for three days', () =>
    expect(said('raw chicken pieces', '2026-02-28', { days: 3 })[0]).toBe('throw-out'));
  it.each([
    ['2026-11-20', 'fine'],
    ['2026-12-06', 'last-day'],
    ['2026-12-07', 'throw-out'],
  ])('8: eggs in the shell bought 1 November, on %s: %s', (today, verdict) =>
    expect(said('eggs', today, { dates: { bought: '2026-11-01' } })[0]).toBe(verdict),
  );
  it('9: hard-cooked eggs, one week', () =>
    expect(ask('hard-cooked eggs', '2026-11-21', { dates: { made: '2026-11-20' } }).lastDay).toBe(
      '2026-11-27',
    ));
  it('10: hot dogs for eight days, opened and not', () => {
    expect(said('hot dogs', '2026-11-21', { days: 8, opened: true })[0]).toBe('throw-out');
    const unopened = ask('hot dogs', '2026-11-21', { days: 8 });
    expect([unopened.verdict, unopened.daysLeft]).toEqual(['fine', 6]);
  });
  it('11: beef stew frozen six months is past best quality, not past keeping', () => {
    const found = ask('beef stew', '2026-12-10', { where: 'freezer', dates: { frozen: '2026-06-10' } });
    expect(found.verdict).toBe('past-best-quality');
    expect(found.qualityUntil).toEqual({ from: '2026-08-10', to: '2026-09-10' });
    expect(found.reasons.map(({ code }) => code)).toContain('frozen-keeps');
  });
  it('12: bacon opened 29 December, last day next year', () =>
    expect(ask('bacon', '2026-12-30', { dates: { opened: '2026-12-29' } }).lastDay).toBe('2027-01-05'));
  it('13: deli-sliced turkey, last day, and at-risk people heat it (CDC Listeria)', () => {
    const found = ask('deli-sliced turkey', '2026-11-25', { dates: { opened: '2026-11-20' }, atRisk: true });
    expect(found.verdict).toBe('last-day');
    expect(found.cautions.map(({ code }) => code)).toContain('at-risk-deli');
  });
  it('43: raw steak, 3 to 5 days', () => {
    const bought = { dates: { bought: '2026-01-30' } };
    expect(said('raw steak', '2026-02-02', bought)[0]).toBe('use-soon');
    expect(said('raw steak', '2026-02-04', bought)[0]).toBe('last-day');
    expect(said('raw steak', '2026-02-05', bought)[0]).toBe('throw-out');
  });
  it('44: salmon frozen 1 June, 2 to 3 months of quality', () => {
    const found = ask('salmon', '2026-09-15', { where: 'freezer', dates: { frozen: '2026-06-01' } });
    expect([found.verdict, found.qualityUntil]).toEqual([
      'past-best-quality',
      { from: '2026-08-01', to: '2026-09-01' },
    ]);
  });
  it('45: cod frozen 31 January, months clamped to their end', () =>
    expect(
      ask('cod', '2026-02-01', { where: 'freezer', dates: { frozen: '2026-01-31' } }).qualityUntil,
    ).toEqual({ from: '2026-07-31', to: '2026-09-30' }));
  it('46: prosciutto, 2 to 3 months; freezer 1 month', () => {
    const found = ask('prosciutto', '2026-03-15', { dates: { opened: '2026-01-15' } });
    expect([found.verdict, found.useSoonFrom, found.lastDay]).toEqual([
      'use-soon',
      '2026-03-15',
      '2026-04-15',
    ]);
    const frozen = ask('prosciutto', '2026-01-16', { where: 'freezer', dates: { frozen: '2026-01-15' } });
    expect(frozen.qualityUntil?.to).toBe('2026-02-15');
  });
  it('48: shop eggnog, 3 to 5 days (egg chart)', () => {
    const found = ask('eggnog', '2026-12-26', { dates: { bought: '2026-12-23' } });
    expect([found.useSoonFrom, found.lastDay]).toEqual(['2026-12-26', '2026-12-28']);
  });
});

describe('older charts, USDA FSIS', () => {
  it('41: summer sausage opened, 3 weeks, said to be older guidance', () => {
    const opened = { dates: { opened: '2026-11-01' } };
    const found = ask('summer sausage', '2026-11-22', opened);
    expect(found.verdict).toBe('last-day');
    expect(found.reasons.map(({ code }) => code)).toContain('older-guidance');
    expect(said('summer sausage', '2026-11-23', opened)[0]).toBe('throw-out');
  });
  it('42: corned beef in its pouch, 5 to 7 days', () => {
    const found = ask('corned beef', '2026-03-15', { dates: { bought: '2026-03-10' } });
    expect([found.verdict, found.useSoonFrom, found.lastDay]).toEqual([
      'use-soon',
      '2026-03-15',
      '2026-03-17',
    ]);
  });
});

describe('botulism, National Center for Home Food Preservation', () => {
  it('14: home-made garlic in oil, 4 days; throw out and do not taste', () => {
    const found = ask('home-made garlic in oil', '2026-11-25', { dates: { made: '2026-11-20' } });
    expect([found.verdict, found.daysUsed]).toEqual(['throw-out', 5]);
    expect(found.cautions.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['do-not-taste', 'botulism-garlic-oil']),
    );
  });
});

describe('food service date marking, FDA Food Code 3-501.17: day of preparation is day one', () => {
  it('16: potato salad, trade and home', () => {
    expect(dateMark({ prepared: '2026-07-01' }).lastDay).toBe('2026-07-07');
    expect(ask('potato salad', '2026-07-02', { dates: { made: '2026-07-01' } }).lastDay).toBe('2026-07-05');
  });
  it('53: cooked 1 October, frozen the 3rd, thawed the 10th (North Carolina Food Code sheet)', () =>
    expect(dateMark({ prepared: '2026-10-01', frozen: '2026-10-03', thawed: '2026-10-10' }).lastDay).toBe(
      '2026-10-14',
    ));
  it('54: burgers of 1 June in a chili of 3 June (Southern Nevada Health District)', () =>
    expect(dateMark({ prepared: '2026-06-01' }).lastDay).toBe('2026-06-07'));
});

describe('frozen and thawed: freezing stops the clock (Minnesota Department of Agriculture)', () => {
  const curry = { dates: { made: '2026-11-22', frozen: '2026-11-24', thawed: '2026-12-10' } };
  it('17: curry with two days used, US', () => {
    const found = ask('curry', '2026-12-10', curry);
    expect([found.daysUsed, found.lastDay]).toEqual([2, '2026-12-12']);
  });
  it('17: the same, UK: within 24 hours of defrosting (FSA Chilling)', () =>
    expect(ask('curry', '2026-12-10', curry, 'uk').lastDay).toBe('2026-12-11'));
  it('49: hot dogs opened, frozen and back, three days used', () => {
    const dates = { opened: '2026-05-01', frozen: '2026-05-04', thawed: '2026-06-10' };
    const found = ask('hot dogs', '2026-06-10', { dates });
    expect([found.daysUsed, found.lastDay]).toEqual([3, '2026-06-14']);
  });
  it('59: ground beef thawed in the fridge, 1 to 2 days (The Big Thaw)', () => {
    const dates = { thawed: '2026-11-23' };
    expect(said('ground beef', '2026-11-25', { dates })[0]).toBe('last-day');
    expect(said('ground beef', '2026-11-26', { dates })[0]).toBe('throw-out');
  });
});

describe('left out, USDA FSIS two-hour rule', () => {
  it('18: lasagne at 72 °F for 1 h 45 and 2 h 10', () => {
    expect(outFor('lasagne', 105, F(72))).toBe('refrigerate-now');
    expect(outFor('lasagne', 130, F(72))).toBe('throw-out');
  });
  it('18: two hours exactly is the last minute', () =>
    expect(outFor('lasagne', 120, F(72))).toBe('refrigerate-now'));
  it('19: potato salad for 75 minutes at 92 °F and at 90 °F', () => {
    expect(outFor('potato salad', 75, F(92))).toBe('throw-out');
    expect(outFor('potato salad', 75, F(90))).toBe('refrigerate-now');
  });
});

describe('UK rice, Food Standards Agency Home food fact checker', () => {
  it('20: cooked rice for 26 hours', () =>
    expect(said('cooked rice', '2026-11-25', { hours: 26 }, 'uk')[0]).toBe('throw-out'));
  it('21: reheated once already: not again', () =>
    expect(
      reheatPlan({
        food: 'cooked rice',
        method: 'microwave',
        from: 'fridge',
        region: 'uk',
        watts: 800,
        timesReheated: 1,
      }),
    ).toMatchObject({ kind: 'refused', refusal: 'reheated-already' }));
});

describe('what the thermometer reads, USDA FSIS Safe Minimum Internal Temperature Chart 2025', () => {
  it('22: leftover casserole at 160 °F: 165 °F', () => {
    const found = probe('leftover casserole', F(160), { reheating: true, seconds: 120 });
    expect([found.reached, found.wanted]).toEqual([false, F(165)]);
  });
  it('23: gravy steaming but not boiling: a rolling boil (FSIS Leftovers)', () => {
    const wanted = cookTemperature({ food: 'leftover gravy', region: 'us', reheating: true });
    expect(wanted.boil).toBe(true);
    expect(probe('leftover gravy', F(180), { reheating: true, boiling: false }).reasons[0]?.code).toBe(
      'boil-wanted',
    );
  });
  it('24: pork chop 145 °F rested two minutes: one more', () => {
    const found = probe('pork chop', F(145), { seconds: 120 });
    expect([found.reached, found.moreSeconds]).toEqual([false, 60]);
    expect(probe('pork chop', F(145), { seconds: 180 }).reached).toBe(true);
  });
  it('25: ground beef 155 °F: 160 °F', () => {
    const found = probe('ground beef', F(155));
    expect([found.reached, found.wanted]).toEqual([false, F(160)]);
  });
  it('26: cooked ham at 150 °F, plant-sealed and deli-sliced', () => {
    expect(probe('vacuum sealed ham', F(150), { reheating: true, plantSealed: true }).reached).toBe(true);
    const sliced = probe('sliced ham', F(150), { reheating: true });
    expect([sliced.reached, sliced.wanted]).toEqual([false, F(165)]);
  });
  it('27: a fridge at 41 °F: too warm at home in the US, in range in the UK (FSS 0 to 5 °C)', () => {
    expect(fridgeReading(F(41), 'us').code).toBe('fridge-too-warm');
    expect(fridgeReading(F(41), 'uk').code).toBe('fridge-in-range');
    expect(fridgeReading(C(5), 'us').code).toBe('fridge-too-warm');
    expect(fridgeReading(F(40), 'us').code).toBe('fridge-in-range');
  });
  it('28: UK core 75 °C for 20 seconds, 70 °C for two minutes (FSA Cooking your food)', () => {
    expect(probe('stew', C(75), { region: 'uk', seconds: 20 }).reached).toBe(false);
    expect(probe('stew', C(70), { region: 'uk', seconds: 120 }).reached).toBe(true);
  });
});

describe('cooling and hot holding, FDA Food Code 3-501.14 and 3-403.11', () => {
  it('29: stock to 41 °F at 17:55 passes, at 18:05 fails', () => {
    const cool = (at41: string) =>
      checkCooling({ start: at('12:00'), at70: at('13:50'), at41: at(at41) }).passes;
    expect([cool('17:55'), cool('18:05')]).toEqual([true, false]);
  });
  it('55: over midnight, time saved in stage one may be spent in stage two', () => {
    const cool = (at41: string, night: number) =>
      checkCooling({ start: at('18:00'), at70: at('19:00'), at41: at(at41, night) }).passes;
    expect([cool('23:50', 0), cool('00:05', 1)]).toEqual([true, false]);
  });
  it('29: missing 70 °F within two hours fails whatever comes after', () =>
    expect(checkCooling({ start: at('12:00'), at70: at('14:10'), at41: at('15:00') }).passes).toBe(false));
  it('56: salad of room-warm tins, four hours', () => {
    const cool = (at41: string) => checkCooling({ start: at('14:00'), at41: at(at41), ambient: true }).passes;
    expect([cool('17:55'), cool('18:05')]).toEqual([true, false]);
  });
  it('57: to 165 °F for 15 seconds within two hours', () => {
    const heat = (at165: string) =>
      checkHotHoldReheat({ start: at('11:00'), at165: at(at165), heldSeconds: 15 }).passes;
    expect([heat('12:50'), heat('13:10')]).toEqual([true, false]);
  });
});

describe('thawing, USDA FSIS The Big Thaw', () => {
  it('30: a twelve-pound turkey', () => {
    expect(fridgeThawHours(12)).toEqual({ low: 72, high: 72 });
    expect(waterThawHours(12, true).low).toBe(6);
  });
  it('58: an eighteen-pound turkey: 4 to 5 days; 9 hours by rule, chart to 10', () => {
    expect(fridgeThawHours(18)).toEqual({ low: 96, high: 120 });
    expect(waterThawHours(18, true)).toEqual({ low: 9, high: 10 });
  });
  it.each([
    ['31', 'raw chicken', 'microwave', 'cook-first'],
    ['32', 'beef roast', 'fridge', 'yes'],
    ['60', 'raw shrimp', 'cold-water', 'cook-first'],
  ] as const)('%s: %s thawed in the %s: %s', (_number, food, thawedIn, may) =>
    expect(mayRefreeze({ food, thawedIn, region: 'us', clock: noon('2026-11-24') }).may).toBe(may),
  );
  it('32: a beef roast thawed in the fridge yesterday keeps 3 to 5 days', () => {
    const found = ask('beef roast', '2026-11-24', { dates: { thawed: '2026-11-23' } });
    expect([found.verdict, found.useSoonFrom, found.lastDay]).toEqual(['fine', '2026-11-26', '2026-11-28']);
  });
});

describe('power cut, FoodSafety.gov tables', () => {
  it.each(['milk', 'cheddar block', 'butter', 'mayonnaise'])(
    '33: 3 h 30 with the fridge shut keeps %s',
    (food) => expect(outage(food, 3.5)).toBe('keep'),
  );
  it.each([
    ['milk', 'discard', F(45)],
    ['cheddar block', 'keep', F(45)],
    ['butter', 'keep', F(45)],
    ['mayonnaise', 'keep', F(52)],
  ] as const)('33: above 40 °F for 3 hours: %s, %s', (food, verdict, fridgeReads) =>
    expect(outage(food, 6, { hoursAbove40: 3, fridgeReads })).toBe(verdict),
  );
  it('34: half-full freezer for 30 hours: unknown until checked; then by ice crystals', () => {
    expect(outage('chicken', 30, {}, 'freezer')).toBe('check');
    expect(outage('chicken', 30, { iceCrystals: true }, 'freezer')).toBe('refreeze');
    expect(outage('ice cream', 30, { iceCrystals: true }, 'freezer')).toBe('discard');
  });
  it.each([
    ['orange juice', 'refreeze'],
    ['peas', 'use-now'],
    ['pizza', 'discard'],
  ])('35: thawed, above 40 °F for 3 hours: %s, %s', (food, verdict) =>
    expect(outage(food, 60, { iceCrystals: false, hoursAbove40: 3 }, 'freezer')).toBe(verdict),
  );
  it('61: fridge shut 4 hours keeps; 5 hours without a thermometer goes by the table', () => {
    expect(outage('milk', 4)).toBe('keep');
    expect(outage('milk', 5)).toBe('discard');
    expect(outage('quandong', 5)).toBe('discard-in-doubt');
  });
  it.each([
    ['butter', 'keep'],
    ['soy sauce', 'keep'],
    ['fish sauce', 'discard'],
    ['vinegar dressing', 'keep'],
    ['creamy dressing', 'discard'],
    ['cooked rice', 'discard'],
    ['cut melon', 'discard'],
    ['whole apple', 'keep'],
    ['tortillas', 'keep'],
    ['cheesecake', 'discard'],
  ])('62: above 40 °F for 2 h 30: %s, %s', (food, verdict) =>
    expect(outage(food, 6, { hoursAbove40: 2.5, fridgeReads: F(45) })).toBe(verdict),
  );
  it('63: mayonnaise at 55 °F for 7 and 9 hours', () => {
    expect(outage('opened mayonnaise', 12, { hoursAbove40: 7, fridgeReads: F(55) })).toBe('keep');
    expect(outage('opened mayonnaise', 12, { hoursAbove40: 9, fridgeReads: F(55) })).toBe('discard');
  });
  it.each([
    ['milk', 'refreeze-with-loss'],
    ['frozen yogurt', 'discard'],
    ['bread dough', 'refreeze-with-loss'],
    ['shredded cheese', 'refreeze'],
  ])('64: ice crystals left: %s, %s', (food, verdict) =>
    expect(outage(food, 60, { iceCrystals: true }, 'freezer')).toBe(verdict),
  );
});

describe('microwave: energy-equal, up to five seconds (handbooks of the UK heating-category scheme)', () => {
  it('36: 4:00 at 650 W for 750 W; standing stays', () => {
    expect(scaleTime({ seconds: 240, fromWatts: 650, toWatts: 750 })?.seconds).toBe(210);
    const plan = reheatPlan({
      food: 'lasagne',
      method: 'microwave',
      from: 'fridge',
      region: 'us',
      watts: 750,
      preparations: [
        {
          method: 'microwave',
          from: 'any',
          steps: [],
          minutes: 4,
          watts: 650,
          standMinutes: 1,
          heat: null,
          portions: 1,
        },
      ],
    });
    if (plan.kind !== 'plan') throw new Error(plan.refusal);
    const seconds = (code: string) => plan.steps.find((step) => step.code === code)?.seconds;
    expect((seconds('set-microwave') ?? 0) + (seconds('heat-again') ?? 0)).toBe(210);
    expect(seconds('stand')).toBe(60);
    const codes = plan.steps.map(({ code }) => code);
    expect(codes.indexOf('stir')).toBe(codes.indexOf('set-microwave') + 1);
  });
  it('37: 5:00 at 1000 W for 700 W', () => {
    const found = scaleTime({ seconds: 300, fromWatts: 1000, toWatts: 700 });
    expect(found?.seconds).toBe(430);
    expect(found?.exactSeconds).toBeCloseTo(428.57, 1);
  });
  it('65: 3:30 at 1800 W for 1400 W, as the handbook prints', () =>
    expect(scaleTime({ seconds: 210, fromWatts: 1800, toWatts: 1400 })?.seconds).toBe(270));
  it('66: a printed column beats the formula', () =>
    expect(
      printedTime({ B: 360, D: 300, '650': 360, '750': 300 }, { watts: 750, letter: 'D' })?.seconds,
    ).toBe(300));
  it('67: two plates take 1.75 to 2 times one', () => {
    const found = scalePortions(180, 1, 2);
    expect([found?.seconds, found?.latestSeconds]).toEqual([315, 360]);
  });
  it('68: a defrost stage of the same power is not scaled', () =>
    expect(scaleTime({ seconds: 480, fromWatts: 340, toWatts: 340 })?.seconds).toBe(480));
});

describe('claims', () => {
  it('38: low sodium, 21 CFR 101.61: 140 yes, 141 no; 90 mg is not sodium free', () => {
    const low = (amount: number) => checkClaim({ claim: 'us-low-sodium', amount })?.met;
    expect([low(140), low(141), low(90)]).toEqual([true, false, true]);
    expect(checkClaim({ claim: 'us-sodium-free', amount: 90 })?.met).toBe(false);
  });
  it('39: gluten at 20 ppm: US below 20 (21 CFR 101.91), EU at most 20 (828/2014)', () => {
    expect(checkClaim({ claim: 'us-gluten-free', amount: 20 })?.met).toBe(false);
    expect(checkClaim({ claim: 'uk-gluten-free', amount: 20 })?.met).toBe(true);
    expect(checkClaim({ claim: 'us-gluten-free', amount: 19 })?.note).toMatch(/Contains/);
  });
  it('69: a meal is reckoned per 100 g; EU salt 0.30 and 0.31 g', () => {
    const meal = (amount: number) => checkClaim({ claim: 'us-low-sodium-meal', amount, grams: 300 })?.met;
    expect([meal(400), meal(430)]).toEqual([true, false]);
    const salt = (amount: number) => checkClaim({ claim: 'uk-low-salt', amount })?.met;
    expect([salt(0.3), salt(0.31)]).toEqual([true, false]);
  });
});

describe('package codes, GS1 General Specifications and Syntax Dictionary, read in 2026', () => {
  it.each([
    ['40', '(17)270200', { kind: 'expiry', day: '2027-02-28' }],
    ['40', '(15)280200', { kind: 'bestBefore', day: '2028-02-29' }],
    ['40', '(13)261125', { kind: 'packaging', day: '2026-11-25' }],
    ['40', '(17)760101', { kind: 'expiry', day: '2076-01-01' }],
    ['40', '(17)770101', { kind: 'expiry', day: '1977-01-01' }],
    ['70', '(15)261200', { kind: 'bestBefore', day: '2026-12-31' }],
    ['70', '(17)270229', { kind: 'expiry', problem: 'no-such-day' }],
  ])('%s: %s', (_number, text, expected) => expect(datesPrinted(text, 2026)[0]).toMatchObject(expected));
  it.each([
    ['6291041500213', true],
    ['6291041500214', false],
    ['4006381333931', true],
    ['4006381333932', false],
    ['036000291452', true],
    ['1234567890128', true],
    ['7601000000002', true],
    ['23456785', true],
    ['10614141000415', true],
    ['5012345678900', true],
    ['96385074', true],
  ])('check digit of %s: %s (General Specifications 7.9.1)', (digits, valid) =>
    expect(isGtin(digits)).toBe(valid),
  );
});

describe('infants, CDC', () => {
  it('47: a bottle made at 10:00, feed begun 11:20: until noon', () =>
    expect(formulaUntil({ made: at('10:00'), feedBegan: at('11:20') }).until).toBe(at('12:00')));
});

describe('UK printed dates, Food Standards Agency', () => {
  it('50: use by and days after opening: the earlier', () =>
    expect(
      ask(
        'ham',
        '2026-11-25',
        { dates: { useBy: '2026-11-26', opened: '2026-11-25' }, withinDaysOfOpening: 3 },
        'uk',
      ).lastDay,
    ).toBe('2026-11-26'));
  it('51: freeze until midnight of the use-by day, never after (Chilling)', () => {
    const may = (now: string) =>
      mayFreeze({
        food: 'chicken',
        region: 'uk',
        dates: { useBy: '2026-11-25' },
        clock: { now, timeZone: 'Europe/London' },
      }).may;
    expect(may('2026-11-25T23:30:00.000Z')).toBe('yes');
    expect(may('2026-11-26T00:10:00.000Z')).toBe('no');
  });
  it('52: eggs up to two days past their best before, cooked thoroughly', () => {
    const eggs = (today: string) => said('eggs', today, { dates: { bestBefore: '2026-11-23' } }, 'uk')[0];
    expect([eggs('2026-11-25'), eggs('2026-11-26')]).toEqual(['cook-thoroughly', 'throw-out']);
  });
});
