/** How to get a dish ready, as said, turned into what a record holds. */
import type { HeatMethod, Preparation } from '../../kitchen/model.js';
import type { SaidPreparation } from '../../understanding/intents.js';

const methods: readonly HeatMethod[] = [
  'microwave',
  'oven',
  'hob',
  'air fryer',
  'steamer',
  'slow cooker',
  'toaster',
  'none',
];
const alsoCalled: Readonly<Record<string, HeatMethod>> = {
  stove: 'hob',
  stovetop: 'hob',
  'stove top': 'hob',
  pan: 'hob',
  pot: 'hob',
  saucepan: 'hob',
  skillet: 'hob',
  cooker: 'hob',
  crockpot: 'slow cooker',
  airfryer: 'air fryer',
};

/** The method a word names; null when it names none we know. */
export const methodNamed = (word: string | null | undefined): HeatMethod | null => {
  const plain = word?.toLowerCase().trim();
  if (!plain) return null;
  return methods.find((method) => method === plain) ?? alsoCalled[plain] ?? null;
};

export const preparationOf = (said: SaidPreparation, from: Preparation['from'] = 'any'): Preparation => ({
  method:
    methodNamed(said.method) ??
    (said.watts !== null ? 'microwave' : said.degrees !== null ? 'oven' : 'microwave'),
  from,
  steps: said.words ? [said.words] : [],
  minutes: said.minutes,
  watts: said.watts,
  standMinutes: said.standMinutes,
  heat: said.degrees === null ? null : { degrees: said.degrees, scale: said.scale ?? 'fahrenheit' },
  portions: null,
});
