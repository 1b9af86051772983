import { describe, expect, test } from 'vitest';
import { answersAs, readTalk } from './script.js';

describe('transcripts', () => {
  test('are read line by line', () => {
    const talk = readTalk(
      '# Two turns\nkitchen empty\nat 2026-01-02 07:30\nas Dele\n> hello\n< Hello …\n= nothing\ntouch ab12\n>\n< What\n< is this?',
    );
    expect(talk.about).toBe('Two turns');
    expect(talk.kitchen).toBe('empty');
    expect(talk.turns).toEqual([
      {
        line: 5,
        at: '2026-01-02 07:30',
        speaker: 'Dele',
        touched: null,
        cutAt: null,
        locale: null,
        said: 'hello',
        expected: ['Hello …'],
        changes: ['nothing'],
      },
      {
        line: 9,
        at: '2026-01-02 07:30',
        speaker: 'Dele',
        touched: 'ab12',
        cutAt: null,
        locale: null,
        said: '',
        expected: ['What', 'is this?'],
        changes: [],
      },
    ]);
  });
  test('name the line that is no part of one', () => {
    expect(() => readTalk('> a\nnonsense')).toThrow('line 2');
  });
  test('expect answers word for word, … for any words', () => {
    expect(answersAs(['The milk is …'], 'The milk is on the door.')).toBe(true);
    expect(answersAs(['The milk is on the door.'], 'The milk is on the door. More?')).toBe(false);
    expect(answersAs(['The milk', 'is on …'], 'The milk is on the door.')).toBe(true);
    expect(answersAs(['a.c'], 'abc')).toBe(false);
  });
});
