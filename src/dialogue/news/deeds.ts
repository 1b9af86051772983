/** Which of others' deeds are worth a word. */
import type { JournalEntry, Verb } from '../../kitchen/model.js';
import type { Speaker } from '../api.js';

/** Deeds after which food is not where, or not as, one thought. */
const MATTERING: ReadonlySet<Verb> = new Set<Verb>([
  'finished',
  'threw out',
  'gave away',
  'took',
  'moved',
  'froze',
  'thawed',
  'took out',
  'reheated',
]);

export const matters = ({ verb }: JournalEntry): boolean => MATTERING.has(verb);

export const byOthers = ({ personId, deviceId }: Speaker, entry: JournalEntry): boolean =>
  entry.personId === null || personId === null ? entry.deviceId !== deviceId : entry.personId !== personId;
