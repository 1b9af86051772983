/** The conversation that the README shows and `talk --play` speaks is the one that is held. */
import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { EVENING, play, readCast } from '../../src/cli/talk/play.js';
import { projectFile } from '../../src/project-files.js';

const folder = mkdtempSync(join(tmpdir(), 'play-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const cast = readCast(readFileSync(EVENING, 'utf8'));

describe('talk --play', () => {
  it('answers each turn as it was written down, and speaks both sides in order by the command named', async () => {
    const voice = join(folder, 'voice');
    writeFileSync(voice, `#!/bin/sh\ncat >> ${join(folder, 'spoken')}\necho >> ${join(folder, 'spoken')}\n`);
    chmodSync(voice, 0o755);
    const printed: string[] = [];
    await play({ quiet: false, mouth: voice, print: (line) => printed.push(line) });
    expect(printed).toEqual(cast.turns.flatMap(({ said, answered }) => [`> ${said}`, `${answered}\n`]));
    const spoken = readFileSync(join(folder, 'spoken'), 'utf8').trim().split('\n');
    expect(spoken).toHaveLength(cast.turns.length * 2);
    expect(spoken[0]).toBe(`<speak>${cast.turns[0]?.said}</speak>`);
    expect(spoken[1]).toMatch(/^<speak version="1.1".*<mark name="s1"\/>/);
  });

  it('is what the README shows', () => {
    const [, shown = ''] =
      /```text\n([\s\S]*?)```/.exec(readFileSync(projectFile('README.md'), 'utf8')) ?? [];
    const wanted = new Map(cast.turns.map(({ said, answered }) => [said, answered]));
    const turns = shown.trim().split('\n\n');
    expect(turns.length).toBeGreaterThan(5);
    for (const turn of turns) {
      const [said = '', ...answer] = turn.split('\n');
      expect(wanted.get(said.replace(/^> /, '')), said).toBe(answer.join(' '));
    }
  });

  it('goes on where the voice cannot be run, and holds one of one’s own', async () => {
    const own = join(folder, 'own.cast');
    writeFileSync(own, 'at 2026-05-14T18:00\n> where is the milk\n');
    const printed: string[] = [];
    await play({
      file: own,
      quiet: false,
      mouth: join(folder, 'no-such-voice'),
      print: (line) => printed.push(line),
    });
    expect(printed).toEqual(['> where is the milk', expect.stringMatching(/^The milk is .*\n$/)]);
  });

  it('says which line of a conversation cannot be read', () => {
    expect(() => readCast('at 2026-05-14T18:00\n> hello\nwhat\n')).toThrow(/^Line 3 /);
  });
});
