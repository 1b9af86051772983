/** Lessons on the wire: what there is to practise, and, where the client said yes aloud, how it went. */
import { z } from 'zod';

export const taskHow = z
  .enum(['alone', 'hint', 'passed', 'open'])
  .describe('`alone`: without a hint; `hint`: with one; `passed`: passed over; `open`: not come to.');

export const lessonView = z
  .strictObject({
    number: z.int().positive(),
    key: z.string(),
    name: z.string(),
    purpose: z.string(),
    cautions: z.array(z.string()),
    tasks: z.array(z.strictObject({ say: z.string(), hints: z.array(z.string()) })),
  })
  .meta({ id: 'Lesson' });

export const lessonHeld = z
  .strictObject({
    key: z.string(),
    name: z.string(),
    at: z.iso.datetime(),
    tasks: z.array(z.strictObject({ say: z.string(), how: taskHow })),
  })
  .meta({ id: 'LessonHeld' });

export const lessonsView = z
  .strictObject({
    lessons: z.array(lessonView),
    sharing: z
      .enum(['yes', 'no', 'not asked'])
      .describe('Whether a teacher may see how they went: asked aloud, and taken back aloud.'),
    held: z.array(lessonHeld).describe('Empty unless `sharing` is `yes`.'),
  })
  .meta({ id: 'Lessons' });
