/**
 * Lessons as data: `grammars/<language>/lessons`, a kitchen of its own and one file a lesson, in the order
 * of their names. Each task is judged by what must hold after it, whatever it was said with.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { z } from 'zod';
import { kitchenFromFile } from '../../kitchen/index.js';
import type { Kitchen } from '../../kitchen/model.js';
import { projectFile } from '../../project-files.js';
import type { Clock } from '../../terms/dates.js';

const condition = z.union([
  /** An answer was about it; `also`: about these as well. */
  z.strictObject({ told: z.string(), also: z.array(z.string()).default([]) }),
  /** It is on record, in that place, with that date, with a marker, as far as each is named. */
  z.strictObject({
    there: z.strictObject({
      name: z.string(),
      in: z.string().optional(),
      date: z.string().optional(),
      marked: z.boolean().optional(),
    }),
  }),
  z.strictObject({ gone: z.string() }),
  z.strictObject({ listed: z.string() }),
  /** One of these was asked or done. */
  z.strictObject({ act: z.array(z.string()).min(1) }),
  z.strictObject({ procedure: z.string() }),
  /** At least so many steps on. */
  z.strictObject({ step: z.int().positive() }),
  z.strictObject({ session: z.string() }),
  z.strictObject({ ended: z.enum(['procedure', 'count']) }),
  z.strictObject({ doors: z.enum(['shut', 'open']) }),
]);
export type Condition = z.output<typeof condition>;

const lesson = z.strictObject({
  key: z.string(),
  name: z.string(),
  purpose: z.string(),
  cautions: z.array(z.string()),
  tasks: z
    .array(z.strictObject({ say: z.string(), hints: z.array(z.string()).min(1), done: condition }))
    .min(1),
});
export type Lesson = z.output<typeof lesson>;

const folderOf = (language: string): string => projectFile('grammars', language, 'lessons');

const known = new Map<string, readonly Lesson[]>();

/** In order; none for a language without lessons. Throws `ZodError` for a file of another form. */
export const lessonsIn = (language: string): readonly Lesson[] => {
  let found = known.get(language);
  if (!found) {
    const folder = folderOf(language);
    found = !existsSync(folder)
      ? []
      : readdirSync(folder)
          .filter((name) => Number.parseInt(name, 10) > 0 && name.endsWith('.json'))
          .toSorted((a, b) => Number.parseInt(a, 10) - Number.parseInt(b, 10))
          .map((name) => lesson.parse(JSON.parse(readFileSync(`${folder}/${name}`, 'utf8'))));
    known.set(language, found);
  }
  return found;
};

/** The lesson kitchen as it is when a lesson begins, in the household's own guidance, measures and time. */
export const lessonKitchen = (household: Kitchen['household'], clock: Clock): Kitchen => {
  const language = household.locale.split('-')[0]!.toLowerCase();
  const kitchen = kitchenFromFile(readFileSync(`${folderOf(language)}/kitchen.json`, 'utf8'), clock);
  return { ...kitchen, household: { ...kitchen.household, ...keptOf(household) } };
};

const keptOf = ({ id, timeZone, locale, region, measures }: Kitchen['household']) => ({
  id,
  timeZone,
  locale,
  region,
  measures,
});
