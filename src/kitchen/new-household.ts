/** What a household starts with before its cook has said how she likes things. */
import type { Household, Id } from './model.js';

export interface HouseholdGiven {
  readonly id: Id;
  readonly name: string;
  /** An IANA zone, e.g. `Europe/London`. */
  readonly timeZone: string;
  /** BCP 47, e.g. `en-GB`. */
  readonly locale: string;
}

/** Countries where guidance of the United Kingdom is the nearer of the two we hold. */
const NEAR_UK = new Set(['GB', 'IE', 'IM', 'JE', 'GG']);
/** Countries that cook and weigh by the customary measures of the United States. */
const CUSTOMARY = new Set(['US', 'LR', 'MM']);

/**
 * Whose guidance and which measures, by the country of the locale; a summary at eight in the evening
 * and quiet from ten to seven, which the cook may change by voice. The microwave's power is unknown.
 */
export const newHousehold = ({ id, name, timeZone, locale }: HouseholdGiven): Household => {
  const country = new Intl.Locale(locale).maximize().region ?? '';
  return {
    id,
    name,
    timeZone,
    locale,
    region: NEAR_UK.has(country) ? 'uk' : 'us',
    measures: CUSTOMARY.has(country) ? 'us' : 'metric',
    microwaveWatts: null,
    summaryAt: '20:00',
    quietHours: { from: '22:00', to: '07:00' },
    dotMeanings: {},
  };
};
