/** A small made-up household that speaks Spanish: names of foods, places and people are its own. */
import { kitchenFromFile } from '../../src/kitchen/index.js';
import type { Kitchen } from '../../src/kitchen/model.js';
import { createHouseholdNames, type HouseholdNames } from '../../src/understanding/names/index.js';

/** A Thursday, five in the afternoon in Mexico City. */
export const JUEVES = { now: '2026-05-14T23:00:00.000Z', timeZone: 'America/Mexico_City' } as const;

const tub = (value: number) => ({ value, unit: 'tub' });

const file = {
  about: 'Made up for the tests.',
  household: {
    id: 'ines',
    name: 'Cocina de Inés',
    timeZone: 'America/Mexico_City',
    locale: 'es-MX',
    region: 'us',
    measures: 'metric',
    microwaveWatts: 1000,
    summaryAt: null,
    quietHours: null,
    dotMeanings: { 1: 'para Ruth' },
  },
  people: [
    { key: 'ines', name: 'Inés', eatsHere: true },
    { key: 'chayo', name: 'Chayo', eatsHere: false },
  ],
  places: [
    { key: 'refri', name: 'refrigerador', kind: 'fridge', aliases: ['refri'] },
    { key: 'r1', name: 'primera repisa', kind: 'shelf', in: 'refri', position: 1 },
    { key: 'r2', name: 'segunda repisa', kind: 'shelf', in: 'refri', position: 2 },
    { key: 'puerta', name: 'puerta', kind: 'door', in: 'refri' },
    { key: 'congelador', name: 'congelador', kind: 'freezer' },
    { key: 'canasta', name: 'canasta izquierda', kind: 'basket', in: 'congelador', position: 1 },
    { key: 'despensa', name: 'despensa', kind: 'pantry' },
  ],
  markers: [
    { key: 'cuenta', touch: { fastening: 'bead', texture: 'wooden' } },
    { key: 'liga', touch: { fastening: 'band' } },
    { key: 'cuerda', touch: { fastening: 'string', dots: 1, counted: 'knot' } },
  ],
  items: [
    {
      key: 'guiso',
      name: 'guiso de lentejas',
      at: 'r2',
      amount: tub(2),
      touch: { size: 'large', container: 'tub', texture: 'plastic' },
      marker: 'cuenta',
      dates: { made: -2 },
      preparations: [
        {
          method: 'microwave',
          from: 'fridge',
          steps: [],
          minutes: 3,
          watts: 800,
          standMinutes: 2,
          heat: null,
          portions: 1,
        },
      ],
    },
    {
      key: 'arroz',
      name: 'arroz blanco',
      at: 'r1',
      amount: tub(1),
      touch: { container: 'tub' },
      dates: { made: -5 },
      marker: 'liga',
    },
    {
      key: 'leche',
      name: 'leche',
      at: 'puerta',
      amount: { value: 1, unit: 'carton' },
      dates: { bought: -3, opened: -1 },
      contains: ['milk'],
    },
    {
      key: 'frijoles1',
      name: 'frijoles negros',
      at: 'canasta',
      amount: tub(1),
      touch: { container: 'tub', size: 'small' },
      dates: { frozen: -30 },
      maker: 'Chayo',
    },
    {
      key: 'frijoles2',
      name: 'frijoles negros',
      at: 'r1',
      amount: tub(1),
      touch: { container: 'jar', size: 'large' },
      dates: { made: -1 },
      marker: 'cuerda',
    },
    {
      key: 'salsa',
      name: 'salsa verde',
      at: 'puerta',
      amount: { value: 1, unit: 'jar' },
      touch: { container: 'jar', texture: 'glass' },
    },
    { key: 'huevos', name: 'huevos', at: 'r1', amount: { value: 6, unit: 'piece' }, dates: { bought: -6 } },
    {
      key: 'atun',
      name: 'atún',
      at: 'despensa',
      amount: { value: 3, unit: 'can' },
      dates: { bestBefore: 300 },
    },
  ],
};

export const spanishKitchen = (): Kitchen => kitchenFromFile(JSON.stringify(file), JUEVES);

export const spanishNames = (): HouseholdNames => {
  const kitchen = spanishKitchen();
  const names = createHouseholdNames('es-MX');
  for (const item of kitchen.items.values()) names.set('item', item);
  for (const place of kitchen.places.values()) names.set('place', place);
  for (const person of kitchen.people.values()) names.set('person', person);
  for (const marker of kitchen.markers.values()) names.set('marker', marker);
  return names;
};
