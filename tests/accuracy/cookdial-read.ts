/**
 * Human cooks led through a recipe by a human helper (CookDial: Jiang, Zaporojets, Deleu, Demeester, Develder,
 * Applied Intelligence 2022): what each turn asks, and what the helper told.
 */
import { readFileSync } from 'node:fs';
import { z } from 'zod';

const dialogue = z.object({
  id: z.string(),
  title: z.string(),
  steps: z.array(z.string()),
  turns: z.array(
    z.union([
      z.object({
        who: z.literal('cook'),
        text: z.string(),
        intents: z.array(z.string()),
        section: z.string().nullish(),
      }),
      z.object({ who: z.literal('agent'), text: z.string(), acts: z.array(z.string()).default([]) }),
    ]),
  ),
});
export type CookDialogue = z.output<typeof dialogue>;

export const readDialogues = (file: string): readonly CookDialogue[] =>
  readFileSync(file, 'utf8')
    .split('\n')
    .filter((line) => line.trim() !== '')
    .map((line) => dialogue.parse(JSON.parse(line)));

/** One thing a cook said while a step was at hand, and what the helper made of it. */
export interface CookTurn {
  readonly text: string;
  readonly intents: ReadonlySet<string>;
  /** The step at hand: the last the helper told; 0 is the first. */
  readonly at: number;
  /** The last step the helper told in answer, when it is a new one. */
  readonly then: number | null;
  readonly answer: string;
  readonly acts: readonly string[];
}

const TELLS = /^(?:inform_instruction|simplify_begin|simplify_continue|fetch)\((?:inst|ac)-(\d+)/;

/** The highest step these acts tell. */
const toldBy = (acts: readonly string[]): number | null => {
  const steps = acts.flatMap((act) => {
    const step = TELLS.exec(act)?.[1];
    return step === undefined ? [] : [Number(step)];
  });
  return steps.length > 0 ? Math.max(...steps) : null;
};

/** What the cook said once a step had been told, in order. */
export const cookTurns = ({ turns }: CookDialogue): readonly CookTurn[] => {
  const found: CookTurn[] = [];
  let at = -1;
  turns.forEach((turn, index) => {
    if (turn.who === 'agent') {
      at = Math.max(at, toldBy(turn.acts) ?? -1);
      return;
    }
    const reply = turns[index + 1];
    const acts = reply?.who === 'agent' ? reply.acts : [];
    const told = toldBy(acts);
    if (at >= 0)
      found.push({
        text: turn.text,
        intents: new Set(turn.intents),
        at,
        then: told !== null && told > at ? told : null,
        answer: reply?.text ?? '',
        acts,
      });
  });
  return found;
};
