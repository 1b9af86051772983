/** What was learned from examples: only where no rule speaks, and never carrying out a change. */
import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { projectFile } from '../../src/project-files.js';
import { CHANGING_INTENTS, createUnderstander, INTENTS, type Intent } from '../../src/understanding/index.js';
import { readWeights } from '../../src/understanding/learned/weights.js';
import { thresholds } from '../../src/understanding/thresholds.js';
import { hearing, martasNames } from './household.js';

const understander = createUnderstander('en-US', { without: ['told'] });
const rulesAlone = createUnderstander('en-US', { without: ['told', 'learned', 'cues'] });
const names = martasNames();
const hear = (text: string) => understander.understand([{ text }], names, hearing());
const changing: ReadonlySet<Intent> = new Set(CHANGING_INTENTS);

describe('wording that no rule covers', () => {
  it.each([
    ['hidden away somewhere there ought to be lentil stew where would it be', 'find', 'act'],
    ['roughly what quantity of jollof rice remains', 'count', 'act'],
    ['my spoken answers please make them a great deal briefer', 'shorter', 'act'],
  ] as const)('hears: %s', (text, intent, verdict) => {
    expect(rulesAlone.understand([{ text }], names, hearing()).readings[0]?.acts[0]?.intent).not.toBe(intent);
    const heard = hear(text);
    expect(heard.readings[0]?.acts.map((act) => act.intent)).toEqual([intent]);
    expect(heard.verdict).toBe(verdict);
  });

  it('proposes a change with what was named, whatever the order of words', () => {
    const { readings, verdict } = hear('over to the pantry i shifted that olive oil last night');
    const [act] = readings[0]!.acts;
    expect(verdict).toBe('confirm');
    expect(act).toMatchObject({
      intent: 'move',
      slots: { item: { words: 'olive oil' }, place: { words: 'pantry' } },
    });
  });

  it('finds the thing among tubs and markers, and a place of which there are two', () => {
    const { readings } = hear('would anybody kindly unclip the glass bead from that jar of olive oil');
    expect(readings[0]?.acts[0]).toMatchObject({
      intent: 'unmark',
      slots: { item: { words: 'olive oil' }, marker: { words: 'the glass bead' } },
    });
    const [act] = hear('roughly what quantity of jollof rice remains in the freezer').readings[0]!.acts;
    expect(act).toMatchObject({ intent: 'count', slots: { place: { words: 'freezer' } } });
  });

  it('takes words that nothing is known of for the name of a food', () => {
    const { readings } = hear('we really could do with some more xolotto from the shops');
    expect(readings[0]?.acts[0]).toMatchObject({ intent: 'buy-add', slots: { item: { words: 'xolotto' } } });
  });

  it.each(['zig the lentil stew wobble freezer', 'what is the capital of peru', 'who scored in the final'])(
    'leaves alone: %s',
    (text) => {
      expect(['ask-again', 'out-of-scope']).toContain(hear(text).verdict);
    },
  );
});

describe('what was learned', () => {
  it('knows no request but those there are', () => {
    const labels = readWeights('en')!.labels;
    expect(
      labels.filter((label) => label !== 'none' && !(INTENTS as readonly string[]).includes(label)),
    ).toEqual([]);
    expect(labels).toContain('none');
  });

  it('never carries out a change, whatever is said', () => {
    const words = readFileSync(projectFile('grammars', 'en', 'learned', 'senses.txt'), 'utf8')
      .split('\n')
      .filter((line) => line !== '' && !line.startsWith('#'))
      .flatMap((line) => line.slice(line.indexOf(':') + 1).split(','))
      .map((word) => word.trim());
    const said = fc.array(fc.constantFrom(...words, 'lentil stew', 'the fridge', 'it', 'the', 'all'), {
      minLength: 2,
      maxLength: 7,
    });
    fc.assert(
      fc.property(said, (parts) => {
        const text = parts.join(' ');
        const alone = rulesAlone.understand([{ text }], names, hearing());
        const { readings, verdict } = hear(text);
        const best = readings[0];
        const learned = best && best.evidence === undefined;
        if (!learned || !best.acts.some(({ intent }) => changing.has(intent))) return;
        expect(verdict).toBe('confirm');
        expect(best.confidence).toBeLessThan(thresholds.change);
        // Nor do the rules: a question may be answered.
        expect(
          alone.verdict === 'act' && alone.readings[0]!.acts.some((act) => changing.has(act.intent)),
        ).toBe(false);
      }),
      { numRuns: 300, seed: 4 },
    );
  });
});
