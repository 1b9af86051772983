/** Settings of the household. */
import type { Household } from '../model.js';
import { change, op, refuse, type Doing, type Result } from '../doing.js';

export type Settings = Partial<Omit<Household, 'id' | 'dotMeanings'>>;

const isWallTime = (time: string): boolean => /^(?:[01]\d|2[0-3]):[0-5]\d$/.test(time);

const isTimeZone = (zone: string): boolean => {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
};

/** Kitchen microwave ovens run from about 300 to 2,000 watts; beyond is a mishearing. From memory. */
const isPower = (watts: number): boolean => watts >= 300 && watts <= 2000;

const isRight = ({ summaryAt, quietHours, microwaveWatts, timeZone, name }: Settings): boolean =>
  (typeof summaryAt !== 'string' || isWallTime(summaryAt)) &&
  (!quietHours || (isWallTime(quietHours.from) && isWallTime(quietHours.to))) &&
  (typeof microwaveWatts !== 'number' || isPower(microwaveWatts)) &&
  (timeZone === undefined || isTimeZone(timeZone)) &&
  (name === undefined || name.trim() !== '');

/** Changes settings of the household. Refused: bad-setting, nothing-changes. */
export const setHousehold = (doing: Doing, settings: Settings): Result => {
  const { household } = doing.kitchen;
  if (!isRight(settings)) return refuse('bad-setting');
  const after: Household = { ...household, ...settings };
  if (JSON.stringify(after) === JSON.stringify(household)) return refuse('nothing-changes');
  return change('set', Object.keys(settings), [op('household', household.id, household, after)]);
};
