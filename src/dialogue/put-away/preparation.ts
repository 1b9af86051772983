/** How to get a dish ready, as said, turned into what a record holds. */
import type { Preparation } from '../../kitchen/model.js';
import { heatMethodIn } from '../../understanding/index.js';
import type { SaidPreparation } from '../../understanding/intents.js';
import type { Turn } from '../handler.js';

export const preparationOf = (
  said: SaidPreparation,
  { locale }: Pick<Turn, 'locale'>,
  from: Preparation['from'] = 'any',
): Preparation => ({
  method:
    (said.method === null ? null : heatMethodIn(said.method, locale)) ??
    (said.watts !== null ? 'microwave' : said.degrees !== null ? 'oven' : 'microwave'),
  from,
  steps: said.steps ?? (said.words ? [said.words] : []),
  minutes: said.minutes,
  watts: said.watts,
  standMinutes: said.standMinutes,
  heat: said.degrees === null ? null : { degrees: said.degrees, scale: said.scale ?? 'fahrenheit' },
  portions: null,
});
