import { describe, expect, it } from 'vitest';
import {
  allergenIn,
  allergenNamed,
  allergenWarnings,
  eatingCautions,
  watchesFor,
} from '../../src/safety/index.js';
import { item, kitchen, person } from './items.js';

describe('allergens in an item', () => {
  it.each([
    ['soup', ['peanuts'], [], 'peanut', 'said-to-contain'],
    ['soup', ['almonds'], [], 'tree nuts', 'said-to-contain'],
    ['soup', ['nuts'], [], 'almonds', 'said-to-contain'],
    ['soup', ['prawns'], [], 'shellfish', 'said-to-contain'],
    ['soup', [], [], 'peanuts', 'unknown'],
    ['soup', [], ['peanuts'], 'peanuts', 'said-free-from'],
    ['bread', [], [], 'gluten', 'usually-contains'],
    ['bread', [], ['gluten'], 'gluten', 'conflict'],
    ['cake', [], ['gluten'], 'wheat', 'usually-contains'],
    ['cheese', [], [], 'dairy', 'usually-contains'],
    ['apple', [], [], 'kiwi', 'unknown'],
    // What its name names besides its kind.
    ['cream of leek soup', [], [], 'milk', 'usually-contains'],
    ['walnut bread', [], [], 'tree nuts', 'usually-contains'],
    ['prawn curry', [], [], 'shellfish', 'usually-contains'],
    ['almond milk', [], [], 'tree nuts', 'usually-contains'],
    ['oat milk', [], [], 'milk', 'unknown'],
    ['peanut butter', [], [], 'milk', 'unknown'],
    ['butter beans', [], [], 'milk', 'unknown'],
    // What a name claims not to hold is neither that nor proven.
    ['dairy-free cheese', [], [], 'milk', 'conflict'],
    ['nut free granola', [], [], 'nuts', 'unknown'],
    ['lactose free milk', [], [], 'milk', 'usually-contains'],
    // Whoever watches for a food by its own name.
    ['sliced ham', [], [], 'ham', 'said-to-contain'],
    ['peanut stew', [], [], 'peanut stew', 'said-to-contain'],
    ['beef stew', [], [], 'peanut stew', 'unknown'],
    ['salad', ['kiwi'], [], 'kiwi', 'said-to-contain'],
  ] as const)('%s, contains %j, free from %j: %s is %s', (name, contains, freeFrom, asked, answer) =>
    expect(allergenIn({ name, contains, freeFrom }, asked).answer).toBe(answer),
  );
  it('gluten free is not free from wheat (21 CFR 101.91), nor is free from almonds free from nuts', () => {
    expect(allergenIn({ name: 'soup', contains: [], freeFrom: ['gluten'] }, 'wheat').answer).toBe('unknown');
    expect(allergenIn({ name: 'soup', contains: [], freeFrom: ['almonds'] }, 'nuts').answer).toBe('unknown');
    expect(allergenIn({ name: 'soup', contains: [], freeFrom: ['nuts'] }, 'almonds').answer).toBe(
      'said-free-from',
    );
  });
  it('shellfish is of both groups: what is free from one is not free from it', () => {
    const soup = { name: 'soup', contains: [], freeFrom: ['crustaceans'] };
    expect(allergenIn(soup, 'shellfish').answer).toBe('unknown');
    expect(allergenIn({ ...soup, contains: ['molluscs'] }, 'shellfish').answer).toBe('said-to-contain');
    expect(allergenIn({ ...soup, freeFrom: ['shellfish'] }, 'shellfish').answer).toBe('said-free-from');
    expect(watchesFor({ allergens: ['shellfish'] }, 'crustacean shellfish')).toBe(true);
    expect(watchesFor({ allergens: ['crustacean shellfish'] }, 'shellfish')).toBe(false);
  });
  it('a group by another word is watched for already', () => {
    expect(watchesFor({ allergens: ['crustacean shellfish'] }, 'crustaceans')).toBe(true);
    expect(watchesFor({ allergens: ['crustacean shellfish'] }, 'milk')).toBe(false);
    expect(watchesFor({ allergens: ['strawberries'] }, 'strawberries and cream')).toBe(false);
  });
  it('what is not recorded is never absent', () => {
    for (const asked of ['milk', 'egg', 'sesame', 'mustard', 'lupin', 'celery']) {
      expect(allergenIn({ name: 'mystery tub', contains: [], freeFrom: [] }, asked).answer).toBe('unknown');
    }
  });
});

describe('words for them', () => {
  it.each([
    ['groundnuts', ['peanuts']],
    ['tahini', ['sesame']],
    ['squid', ['molluscs']],
    ['prawn', ['crustaceans']],
    ['tofu', ['soy']],
    ['strawberries', []],
  ])('%s: %j', (word, ids) => expect(allergenNamed(word)).toEqual(ids));
});

describe('the people who eat here', () => {
  const dele = person('Dele', { allergens: ['peanuts'] });
  it('are warned of what is in it and of what usually is', () => {
    const stew = item('groundnut stew', { contains: ['peanuts'] });
    expect(allergenWarnings(stew, [dele])).toEqual([
      { allergen: 'peanuts', answer: 'said-to-contain', personId: 'Dele' },
    ]);
    const spread = item('peanut butter');
    expect(eatingCautions(kitchen([spread], [dele]), spread).map(({ code }) => code)).toEqual([
      'allergen-usual',
    ]);
  });
  it('are told when nothing is recorded and somebody watches for something', () => {
    const tub = item('mystery tub');
    const hear = (...people: ReturnType<typeof person>[]) =>
      eatingCautions(kitchen([tub], people), tub).map(({ code }) => code);
    expect(hear(dele)).toEqual(['allergens-unknown']);
    expect(hear(person('Marta'))).toEqual([]);
  });
  it('hear allergens and spice first', () => {
    const curry = item('curry', { contains: ['milk'], cautions: ['very spicy', 'bones in it'] });
    expect(eatingCautions(kitchen([curry]), curry).map(({ code }) => code)).toEqual([
      'allergen',
      'spicy',
      'recorded',
    ]);
  });
});

describe('what was told to be in it, and is no allergen of the tables', () => {
  const soup = { name: 'vegetable soup', contains: [], freeFrom: [] };
  it.each([
    [['celery in it'], 'celery', 'said-to-contain'],
    [['strawberries in it'], 'strawberry', 'said-to-contain'],
    [['celery in it'], 'mustard', 'unknown'],
    [['goes with celery'], 'celery', 'unknown'],
    [[], 'celery', 'unknown'],
  ] as const)('%j, asked for %s: %s', (notes, allergen, answer) => {
    expect(allergenIn({ ...soup, notes }, allergen).answer).toBe(answer);
  });
});
