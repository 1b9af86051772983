/** Every transcript goes as written, change for change. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { INTENTS } from '../../src/understanding/intents.js';
import { changesOf, replay, type Replayed } from './replay.js';
import { answersAs, readTalk } from './script.js';

const folder = join(import.meta.dirname, 'talks');
const files = readdirSync(folder).filter((name) => name.endsWith('.talk'));

const heldTalks: Replayed[] = [];

describe('conversations', () => {
  test.each(files)('%s', async (file) => {
    const talk = readTalk(readFileSync(join(folder, file), 'utf8'));
    const replies = await replay(talk);
    heldTalks.push(...replies);
    const wrong = replies
      .filter(({ turn, reply }) => turn.expected.length > 0 && !answersAs(turn.expected, reply.speech.text))
      .map(({ turn, reply }) => ({
        line: turn.line,
        said: turn.said,
        expected: turn.expected.join(' '),
        got: reply.speech.text,
      }));
    expect(wrong).toEqual([]);
    for (const { turn, reply } of replies) {
      if (turn.changes.length === 0) continue;
      const expected = turn.changes.includes('nothing') ? [] : turn.changes;
      expect({ line: turn.line, changes: changesOf(reply) }).toEqual({ line: turn.line, changes: expected });
    }
    expect(replies.every(({ turn }) => turn.expected.length > 0)).toBe(true);
    expect(replies.length).toBeGreaterThanOrEqual(10);
  });

  test('together they use every intent', () => {
    const used = new Set(heldTalks.flatMap(({ reply }) => reply.understood.intents));
    expect(INTENTS.filter((intent) => !used.has(intent))).toEqual([]);
  });
});
