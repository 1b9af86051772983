/** Figures as a person types them: temperatures, times of day, lengths of time. */
import { InvalidArgumentError } from 'commander';
import { isPlainDate } from '../../terms/dates.js';
import type { PlainDate } from '../../terms/dates.js';

/** "155F", "70 C", "5c". @throws InvalidArgumentError */
export const temperatureOf = (text: string): { degrees: number; scale: 'fahrenheit' | 'celsius' } => {
  const [, degrees, scale = ''] = /^(-?\d+(?:\.\d+)?)\s*°?\s*([fc])/i.exec(text) ?? [];
  if (degrees === undefined)
    throw new InvalidArgumentError(`"${text}" is not a temperature. Write it like 155F or 70C.`);
  return { degrees: Number(degrees), scale: scale.toLowerCase() === 'c' ? 'celsius' : 'fahrenheit' };
};

/** "2026-11-22". @throws InvalidArgumentError */
export const dayFrom = (text: string): PlainDate => {
  if (!isPlainDate(text)) throw new InvalidArgumentError(`"${text}" is not a day. Write it like 2026-11-22.`);
  return text;
};

/** A number not below zero. @throws InvalidArgumentError */
export const numberFrom = (text: string): number => {
  const number = Number(text);
  if (text.trim() === '' || !Number.isFinite(number) || number < 0) {
    throw new InvalidArgumentError(`"${text}" is not a number.`);
  }
  return number;
};

/** Minutes: "105", "1h45", "2h", "45m". @throws InvalidArgumentError */
export const minutesFrom = (text: string): number => {
  const [, hours, minutes] = /^(?:(\d+(?:\.\d+)?)\s*h)?\s*(?:(\d+)\s*m?)?$/i.exec(text.trim()) ?? [];
  if (hours === undefined && minutes === undefined) {
    throw new InvalidArgumentError(`"${text}" is not a length of time. Write it like 1h45 or 105.`);
  }
  return Number(hours ?? 0) * 60 + Number(minutes ?? 0);
};

/** Seconds of "4:00" or "90". @throws InvalidArgumentError */
export const secondsFrom = (text: string): number => {
  const [, minutes, seconds] = /^(?:(\d+):)?(\d+)$/.exec(text.trim()) ?? [];
  if (seconds === undefined) throw new InvalidArgumentError(`"${text}" is not a time. Write it like 4:00.`);
  return Number(minutes ?? 0) * 60 + Number(seconds);
};

/**
 * Times of one night in order, "18:00,19:00,00:05", as moments; each later than the one before.
 * @throws InvalidArgumentError
 */
export const momentsFrom = (text: string): string[] => {
  let before = -1;
  return text.split(',').map((part) => {
    const [, hour, minute] = /^(\d{1,2}):(\d{2})$/.exec(part.trim()) ?? [];
    if (hour === undefined || minute === undefined) {
      throw new InvalidArgumentError(`"${part}" is not a time of day. Write them like 12:00,13:50,17:55.`);
    }
    let minutes = Number(hour) * 60 + Number(minute);
    while (minutes < before) minutes += 24 * 60;
    before = minutes;
    return new Date(Date.UTC(2000, 0, 1) + minutes * 60_000).toISOString();
  });
};
