/**
 * Transcripts: a conversation as it should go, readable by anyone.
 *
 *     # What it is about. Lines with a hash are notes.
 *     kitchen demo            (or `empty`: a household with nothing recorded; `quiroga`: one that speaks Spanish)
 *     locale es-ES            what is spoken from here on, where that is not what the household speaks
 *     at 2026-05-14 18:00     wall time of the household; may come again later, to let time pass
 *     as Dele                 who speaks from here on; her own device and conversation
 *     touch glass-bead-code   touched together with the next thing said
 *     cut s2                  the next thing said cut the answer off at this mark
 *     > what is said          (`>` alone: nothing was heard)
 *     < what is answered, whole; … stands for any words. More `<` lines go on with the same answer.
 *     = finished sliced ham   a change this made: its verb and what it was about. `= nothing`: none.
 */
export interface TalkTurn {
  readonly line: number;
  readonly at: string;
  readonly speaker: string | null;
  readonly touched: string | null;
  readonly cutAt: string | null;
  readonly locale: string | null;
  readonly said: string;
  readonly expected: readonly string[];
  readonly changes: readonly string[];
}

export interface Talk {
  readonly about: string;
  readonly kitchen: 'demo' | 'empty' | 'quiroga';
  readonly turns: readonly TalkTurn[];
}

type Draft = { -readonly [K in keyof TalkTurn]: TalkTurn[K] } & { expected: string[]; changes: string[] };

/** @throws Error naming the line that cannot be read. */
export const readTalk = (text: string): Talk => {
  let kitchen: Talk['kitchen'] = 'demo';
  let at = '2026-05-14 18:00';
  let speaker: string | null = null;
  let touched: string | null = null;
  let cutAt: string | null = null;
  let locale: string | null = null;
  const about: string[] = [];
  const turns: Draft[] = [];
  for (const [index, raw] of text.split('\n').entries()) {
    const line = raw.trim();
    const rest = line.replace(/^\S+\s*/, '');
    const turn = turns.at(-1);
    if (line === '') continue;
    if (line.startsWith('#')) {
      if (turns.length === 0) about.push(rest);
    } else if (line.startsWith('>')) {
      turns.push({
        line: index + 1,
        at,
        speaker,
        touched,
        cutAt,
        locale,
        said: line.slice(1).trim(),
        expected: [],
        changes: [],
      });
      touched = null;
      cutAt = null;
    } else if (line.startsWith('<') && turn) turn.expected.push(line.slice(1).trim());
    else if (line.startsWith('=') && turn) turn.changes.push(line.slice(1).trim());
    else if (/^kitchen (demo|empty|quiroga)$/.test(line)) kitchen = rest as Talk['kitchen'];
    else if (/^at \d{4}-\d\d-\d\d \d\d:\d\d$/.test(line)) at = rest;
    else if (/^as \S+$/.test(line)) speaker = rest === 'nobody' ? null : rest;
    else if (/^locale [a-z]{2}-[A-Z]{2}$/.test(line)) locale = rest;
    else if (line.startsWith('touch ')) touched = rest;
    else if (/^cut s\d+$/.test(line)) cutAt = rest;
    else throw new Error(`line ${index + 1} is no part of a transcript: ${line}`);
  }
  if (turns.length === 0) throw new Error('nothing is said in this transcript');
  return { about: about.join(' '), kitchen, turns };
};

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** Whether an answer is as expected: word for word, with … for any words. */
export const answersAs = (expected: readonly string[], answer: string): boolean => {
  const pattern = expected
    .join(' ')
    .trim()
    .split('…')
    .map((part) => escaped(part.trim()))
    .join('[\\s\\S]*');
  return new RegExp(`^\\s*${pattern.replaceAll('[\\s\\S]*', '[\\s\\S]*?')}\\s*$`).test(answer);
};
