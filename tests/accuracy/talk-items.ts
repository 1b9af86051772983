/** Talk items: what was said before, what is said, what must hold after. The form is told in `../shared/data/talk/README.md`. */
import { readFileSync } from 'node:fs';
import { z } from 'zod';

const pattern = z.string().transform((text, context) => {
  try {
    return new RegExp(text, 'iu');
  } catch {
    context.addIssue({ code: 'custom', message: `not a regular expression: ${text}` });
    return z.NEVER;
  }
});
const amount = z.union([z.number(), z.tuple([z.number(), z.number()])]);

export const wantedState = z.union([
  z.strictObject({ nothing: z.literal(true) }),
  z.strictObject({ item: z.string(), gone: z.literal(true) }),
  z.strictObject({
    item: z.string(),
    field: z.enum(['maker', 'owner', 'marker', 'notes', 'cautions', 'contains', 'diets', 'name']),
    has: pattern,
  }),
  z.strictObject({
    item: z.string(),
    place: z.string().optional(),
    amount: amount.optional(),
    date: z.record(z.string(), z.string()).optional(),
  }),
  z.strictObject({ list: z.string(), on: z.boolean() }),
  z.strictObject({ timer: z.number() }),
  z.strictObject({ reminder: z.string(), due: z.string() }),
]);
export type WantedState = z.output<typeof wantedState>;

const talkItem = z.object({
  id: z.string(),
  class: z.string(),
  /** Who says it: somebody of the household, or a kind of person who is nobody on record. */
  speaker: z.string(),
  /** What the speaker's device speaks, where that is not what the household does: `es-ES`. */
  locale: z.string().optional(),
  /** Household wall time. */
  at: z.string(),
  before: z.array(z.string()),
  say: z.string(),
  want: z.object({
    answer: z.array(pattern).default([]),
    not: z.array(pattern).default([]),
    state: z.array(wantedState).default([]),
    ask_ok: z.boolean().default(false),
  }),
  note: z.string().default(''),
});
export type TalkItem = z.output<typeof talkItem>;

/** @throws ZodError for another form. */
export const talkItemOf = (given: unknown): TalkItem => talkItem.parse(given);

/** @throws Error that names the line that is not of the form. */
export const readTalkItems = (file: string): readonly TalkItem[] =>
  readFileSync(file, 'utf8')
    .split('\n')
    .flatMap((line, at) => {
      if (line.trim() === '') return [];
      const read = talkItem.safeParse(JSON.parse(line));
      if (!read.success) throw new Error(`${file}, line ${at + 1}: ${z.prettifyError(read.error)}`);
      return [read.data];
    });
