/**
 * Every row of FoodSafety.gov's two power-outage tables, asked by foods a cook would name.
 * Fridge: "Food Safety During Power Outage" (2022; meat to eggs in the agency's own text), held above 40 °F for
 * more than two hours. Freezer: "Frozen Food and Power Outages" (reviewed 28 January 2021).
 * Hours for a shut door: FDA and FSIS, "Keeping Food Safe During an Emergency".
 */
import { describe, expect, it } from 'vitest';
import { powerCut, powerCutFor } from '../../src/safety/index.js';
import type { PowerCutQuestion } from './types.js';

const backAt = '2026-07-04T18:00:00.000Z';
const clock = { now: backAt, timeZone: 'America/Chicago' };
const hoursAgo = (hours: number): string => new Date(Date.parse(backAt) - hours * 3_600_000).toISOString();
const ask = (name: string, where: 'fridge' | 'freezer', more: Partial<PowerCutQuestion>) =>
  powerCutFor(
    { name, where },
    { since: hoursAgo(10), backAt, doors: 'shut', fullness: 'full', ...more },
    clock,
  );
const warm: Partial<PowerCutQuestion> = {
  hoursAbove40: 3,
  fridgeReads: { degrees: 48, scale: 'fahrenheit' },
};

const DISCARD = [
  'raw chicken',
  'leftover roast beef',
  'salmon',
  'tofu',
  'chicken salad',
  'tuna salad',
  'egg salad',
  'gravy',
  'stuffing',
  'broth',
  'lunchmeat',
  'hot dogs',
  'bacon',
  'sausage',
  'pizza',
  'refrigerated canned ham',
  'canned tuna',
  'casserole',
  'soup',
  'stew',
  'blue cheese',
  'Roquefort',
  'Brie',
  'Camembert',
  'cottage cheese',
  'cream cheese',
  'Monterey Jack',
  'ricotta',
  'mozzarella',
  'Muenster',
  'queso fresco',
  'shredded cheese',
  'low-fat cheese',
  'milk',
  'cream',
  'sour cream',
  'buttermilk',
  'yogurt',
  'eggnog',
  'soy milk',
  'baby formula',
  'eggs',
  'hard-cooked eggs',
  'custard',
  'pudding',
  'quiche',
  'cut fruit',
  'shredded coconut',
  'fish sauce',
  'oyster sauce',
  'creamy dressing',
  'spaghetti sauce',
  'refrigerator biscuits',
  'cookie dough',
  'cooked pasta',
  'cooked rice',
  'mashed potatoes',
  'pasta salad',
  'fresh pasta',
  'cheesecake',
  'cream-filled pastry',
  'custard pie',
  'cut vegetables',
  'packaged greens',
  'cooked vegetables',
  'vegetable juice',
  'baked potato',
  'commercial garlic in oil',
  'potato salad',
];
const KEEP = [
  'Cheddar',
  'Colby',
  'Swiss cheese',
  'Parmesan',
  'provolone',
  'Romano',
  'processed cheese',
  'grated Parmesan in a jar',
  'butter',
  'margarine',
  'uncut fruit apples',
  'orange juice',
  'canned fruit',
  'raisins',
  'dates',
  'peanut butter',
  'jelly',
  'relish',
  'taco sauce',
  'mustard',
  'catsup',
  'olives',
  'pickles',
  'Worcestershire sauce',
  'soy sauce',
  'barbecue sauce',
  'hoisin sauce',
  'vinegar-based dressing',
  'bread',
  'rolls',
  'muffins',
  'quick bread',
  'tortillas',
  'waffles',
  'pancakes',
  'bagels',
  'fruit pie',
  'carrots',
  'mushrooms',
  'herbs',
];

describe('fridge above 40 °F for more than two hours', () => {
  it.each(DISCARD)('%s: discard', (food) => expect(ask(food, 'fridge', warm).verdict).toBe('discard'));
  it.each(KEEP)('%s: keep', (food) => expect(ask(food, 'fridge', warm).verdict).toBe('keep'));
  it('at exactly two hours, discard (the text: two hours or more)', () =>
    expect(ask('milk', 'fridge', { hoursAbove40: 2 }).verdict).toBe('discard'));
  it('below two hours, not yet', () =>
    expect(ask('milk', 'fridge', { hoursAbove40: 1.9 }).verdict).toBe('use-now'));
  it.each(['mayonnaise', 'tartar sauce', 'horseradish'])(
    '%s: only after more than eight hours above 50 °F',
    (food) => {
      const at = (hoursAbove40: number, degrees: number) =>
        ask(food, 'fridge', { hoursAbove40, fridgeReads: { degrees, scale: 'fahrenheit' } }).verdict;
      expect([at(8, 55), at(9, 55), at(9, 50)]).toEqual(['keep', 'discard', 'keep']);
    },
  );
});

/** Item, with ice crystals, thawed and above 40 °F for over two hours. */
const FREEZER: readonly (readonly [string, string, string])[] = [
  ['ground beef', 'refreeze', 'discard'],
  ['chicken', 'refreeze', 'discard'],
  ['shrimp', 'refreeze-with-loss', 'discard'],
  ['beef stew', 'refreeze', 'discard'],
  ['soup', 'refreeze', 'discard'],
  ['milk', 'refreeze-with-loss', 'discard'],
  ['egg whites', 'refreeze', 'discard'],
  ['ice cream', 'discard', 'discard'],
  ['frozen yogurt', 'discard', 'discard'],
  ['brie', 'refreeze-with-loss', 'discard'],
  ['cheddar', 'refreeze', 'refreeze'],
  ['shredded cheese', 'refreeze', 'discard'],
  ['casserole', 'refreeze', 'discard'],
  ['cheesecake', 'refreeze', 'discard'],
  ['apple juice', 'refreeze', 'refreeze'],
  ['frozen berries', 'refreeze-with-loss', 'refreeze'],
  ['bread', 'refreeze', 'refreeze'],
  ['muffins', 'refreeze', 'refreeze'],
  ['cream-filled pastry', 'refreeze', 'discard'],
  ['pie crust', 'refreeze-with-loss', 'refreeze-with-loss'],
  ['bread dough', 'refreeze-with-loss', 'refreeze-with-loss'],
  ['pasta bake', 'refreeze', 'discard'],
  ['flour', 'refreeze', 'refreeze'],
  ['walnuts', 'refreeze', 'refreeze'],
  ['waffles', 'refreeze', 'refreeze'],
  ['frozen dinner', 'refreeze', 'discard'],
  ['pizza', 'refreeze', 'discard'],
  ['meat pie', 'refreeze', 'discard'],
];

describe('freezer', () => {
  it.each(FREEZER)('%s: with ice %s, thawed %s', (food, icy, thawed) => {
    expect(ask(food, 'freezer', { iceCrystals: true }).verdict).toBe(icy);
    expect(ask(food, 'freezer', { iceCrystals: false, hoursAbove40: 2.5 }).verdict).toBe(thawed);
  });
  it.each(['vegetable juice', 'frozen vegetables'])('%s: six hours above 40 °F', (food) => {
    const after = (hoursAbove40: number) =>
      ask(food, 'freezer', { iceCrystals: false, hoursAbove40 }).verdict;
    expect([after(5.5), after(6)]).toEqual(['use-now', 'discard']);
  });
  it.each(['apple juice', 'frozen berries'])('%s: refreeze unless mouldy, yeasty or slimy', (food) =>
    expect(ask(food, 'freezer', { iceCrystals: false, hoursAbove40: 3 }).reason).toBe('check-signs'),
  );
  it('at 40 °F or below by the thermometer counts as icy', () =>
    expect(ask('chicken', 'freezer', { freezerReads: { degrees: 40, scale: 'fahrenheit' } }).verdict).toBe(
      'refreeze',
    ));
});

describe('hours with the doors shut', () => {
  const report = (hours: number, more: Partial<PowerCutQuestion>) =>
    powerCut(
      { places: new Map(), items: new Map() },
      { since: hoursAgo(hours), backAt, doors: 'shut', fullness: null, ...more },
      clock,
    );
  it('fridge 4; freezer 48 full, 24 half, and 24 when nobody knows', () => {
    expect(report(1, {}).fridge.hours).toBe(4);
    expect(report(1, { fullness: 'full' }).freezer.hours).toBe(48);
    expect(report(1, { fullness: 'half' }).freezer.hours).toBe(24);
    expect(report(1, {}).freezer.hours).toBe(24);
  });
  it('holds up to the hour and not past it', () => {
    expect(report(4, {}).fridge.state).toBe('holding');
    expect(report(4.1, {}).fridge.state).toBe('past');
    expect(report(48, { fullness: 'full' }).freezer.state).toBe('holding');
  });
  it('with doors opened nobody can say', () => {
    expect(report(1, { doors: 'open' }).fridge.state).toBe('unknown');
    expect(ask('milk', 'fridge', { doors: 'open', since: hoursAgo(1) }).verdict).toBe('discard-in-doubt');
    expect(ask('butter', 'fridge', { doors: 'open', since: hoursAgo(1) }).verdict).toBe('keep');
  });
  it('tells to keep doors shut while it is out, and never to taste once it is back', () => {
    const out = powerCut(
      { places: new Map(), items: new Map() },
      { since: hoursAgo(1), backAt: null, doors: 'shut', fullness: 'full' },
      clock,
    );
    expect(out.steps.map(({ code }) => code)).toContain('keep-doors-shut');
    expect(report(9, {}).steps.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['read-thermometer', 'never-taste', 'when-in-doubt']),
    );
  });
});
