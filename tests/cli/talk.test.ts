/** `tellshelf talk` as a person or a script runs it: a process with pipes. */
import { spawn } from 'node:child_process';
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { readLine } from '../../src/cli/talk/read-line.js';
import { instantOf } from '../../src/cli/wall-time.js';
import { projectFile } from '../../src/project-files.js';

// Each test starts several processes, one after the other.
vi.setConfig({ testTimeout: 180_000 });

const folders: string[] = [];
afterEach(async () => {
  for (const folder of folders.splice(0)) await rm(folder, { recursive: true, force: true });
});
const folder = async (): Promise<string> => {
  const made = await mkdtemp(join(tmpdir(), 'tellshelf-'));
  folders.push(made);
  return made;
};

interface Ran {
  readonly lines: string[];
  readonly errors: string;
  readonly code: number | null;
}
const run = (args: readonly string[], input = ''): Promise<Ran> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [projectFile('.run.mjs'), ...args], {
      cwd: projectFile(),
      env: { ...process.env, DATABASE_URL: '' },
    });
    let [out, errors] = ['', ''];
    child.stdout.on('data', (data: Buffer) => (out += data.toString()));
    child.stderr.on('data', (data: Buffer) => (errors += data.toString()));
    child.on('error', reject);
    child.on('close', (code) => resolve({ lines: out.split('\n').slice(0, -1), errors, code }));
    child.stdin.end(input);
  });
const talk = async (data: string, lines: readonly string[], ...flags: string[]): Promise<Ran> =>
  run(
    ['talk', '--data', data, '--at', '2026-05-14T18:00', ...flags],
    lines.map((line) => `${line}\n`).join(''),
  );

describe('tellshelf talk, fed by a pipe', () => {
  it('answers one line for each line', async () => {
    const lines = ['what should I use first', 'where is the milk', '', 'colourless green ideas', 'undo'];
    const ran = await talk(await folder(), lines);
    expect(ran.errors).toBe('');
    expect(ran.lines).toHaveLength(lines.length);
    for (const line of ran.lines) expect(line.trim()).not.toBe('');
  });

  it('prints each turn as JSON', async () => {
    const ran = await talk(await folder(), ['put oats on the list', 'colourless green ideas'], '--json');
    const [put, odd] = ran.lines.map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(put).toMatchObject({
      heard: 'put oats on the list',
      intent: 'buy-add',
      changes: [{ verb: 'put on the list', about: ['oats'] }],
      at: '2026-05-14T23:00:00.000Z',
    });
    expect(put).toHaveProperty('speech.ssml');
    expect(put?.['confidence']).toBeGreaterThan(0.5);
    expect(odd).toMatchObject({ intent: null, changes: [] });
  });

  it('says why it answered so, in files, handlers and phrases that there are', async () => {
    const said = ['where is the milk', 'Put oats on the list. Where is the rice?', 'is the', 'no'];
    const [json, plain] = [
      await talk(await folder(), said, '--json', '--why'),
      await talk(await folder(), said, '--why'),
    ];
    interface Why {
      readonly words: string;
      readonly kinds: readonly string[];
      readonly mood: { readonly name: string };
      readonly by: readonly string[];
      readonly phrases: readonly string[];
    }
    const turns = json.lines.map((line) => (JSON.parse(line) as { why: readonly Why[] }).why);
    expect(turns[0]).toMatchObject([
      { words: said[0], kinds: ['find'], mood: { name: 'asked' }, by: ['find: find'] },
    ]);
    expect(turns[1]).toHaveLength(2);
    const each = turns.flat();
    const room = (file: string) => readFile(projectFile('src', 'dialogue', file), 'utf8');
    const handlers = await room('table.ts');
    // A file, perhaps with a function in it; or an intent with its handler.
    for (const by of each.flatMap((move) => move.by)) {
      const [, file, name = '', handler = ''] =
        /^(?:([\w/-]+\.ts)(?: (\w+))?)?(?: ?[\w-]+: (\w+))?$/.exec(by) ?? [];
      expect(file ?? handler, by).not.toBe('');
      if (file) expect(await room(file), by).toContain(name);
      expect(handlers, by).toContain(handler);
    }
    const phrases = await readdir(projectFile('grammars', 'en', 'phrases'));
    const worded = (
      await Promise.all(
        phrases.map((file) => readFile(projectFile('grammars', 'en', 'phrases', file), 'utf8')),
      )
    ).join('\n');
    for (const name of each.flatMap((move) => move.phrases.join(' ').match(/[a-z][a-z-]+/g) ?? []))
      expect(worded, name).toContain(`\n${name} =`);
    expect(each.every(({ by, phrases: told }) => by.length > 0 && told.length > 0)).toBe(true);
    expect(plain.lines).toContain('  by      find: find');
  });

  it('begins from a kitchen file in place of the demo kitchen, and goes on in it', async () => {
    const [data, other] = [await folder(), await folder()];
    const file = join(other, 'kitchen.json');
    const demo = JSON.parse(await readFile(projectFile('shared', 'demo', 'marta-okafor.json'), 'utf8')) as {
      household: object;
    };
    const household = { ...demo.household, id: 'hut', name: 'The hut', timeZone: 'Europe/Vienna' };
    await writeFile(
      file,
      JSON.stringify({ ...demo, household, items: [], markers: [], toBuy: [], notes: [] }),
    );
    await talk(data, ['put oats on the list']);
    const hut = await talk(data, ["what's on the list", 'put soap on the list'], '--kitchen', file, '--json');
    expect(hut.errors).toBe('');
    expect(hut.lines[0]).not.toContain('oats');
    expect(JSON.parse(hut.lines[0] ?? '{}')).toMatchObject({ at: '2026-05-14T16:00:00.000Z' });
    const again = await talk(data, ["what's on the list"], '--kitchen', file);
    expect(again.lines[0]).toContain('soap');
    const fresh = await talk(data, ["what's on the list"], '--kitchen', file, '--fresh');
    expect(fresh.lines[0]).not.toContain('soap');
    const demoStill = await talk(data, ["what's on the list"], '--household', 'demo');
    expect(demoStill.lines[0]).toContain('oats');
  });

  it('says what is wrong with a kitchen file, and makes nothing of it', async () => {
    const data = await folder();
    const missing = await talk(data, ['help'], '--kitchen', join(data, 'nowhere.json'));
    expect(missing).toMatchObject({ code: 1, lines: [] });
    expect(missing.errors).toMatch(/^The kitchen file cannot be read: .*nowhere/);
    const wrong = await talk(data, ['help'], '--kitchen', projectFile('package.json'));
    expect(wrong).toMatchObject({ code: 1, lines: [] });
    expect(wrong.errors).toMatch(/package\.json is no kitchen file:\n.*→ at about$/ms);
    const both = await talk(data, ['help'], '--kitchen', 'x.json', '--household', 'demo');
    expect(both.errors).toMatch(/--kitchen or --household/);
  });

  it('keeps what it was told, until it starts fresh', async () => {
    const data = await folder();
    await talk(data, ['put the barley soup on the top shelf of the fridge']);
    const again = await talk(data, ['where is the barley soup']);
    expect(again.lines[0]).toMatch(/(top|first) shelf/i);
    const fresh = await talk(data, ['where is the barley soup'], '--fresh', '--json');
    expect(JSON.parse(fresh.lines[0] ?? '{}')).not.toMatchObject({
      speech: { text: expect.stringMatching(/(top|first) shelf/i) },
    });
  });

  it('says in plain words what is wrong with a time, a household or a line', async () => {
    const data = await folder();
    const bad = await run(['talk', '--data', data, '--at', 'teatime'], 'hello\n');
    expect(bad.code).not.toBe(0);
    expect(bad.errors).toMatch(/not a time/);
    expect(bad.errors).not.toMatch(/\n\s+at /);
    const ran = await talk(data, ['!sing', 'x'.repeat(3_000)]);
    expect(ran.lines[0]).toMatch(/!touch/);
    expect(ran.lines[1]).toMatch(/too long/);
  });
});

describe('a line', () => {
  it.each([
    ['where is the milk', { kind: 'turn', turn: { hypotheses: [{ text: 'where is the milk' }] } }],
    ['', { kind: 'turn', turn: { hypotheses: [] } }],
    ['!touch C12', { kind: 'turn', turn: { touched: 'C12', hypotheses: [] } }],
    [
      '!touch C12 what is this',
      { kind: 'turn', turn: { touched: 'C12', hypotheses: [{ text: 'what is this' }] } },
    ],
    [
      '!touch "marker twelve" what is this',
      { kind: 'turn', turn: { touched: 'marker twelve', hypotheses: [{ text: 'what is this' }] } },
    ],
    ['!cut s2 go on', { kind: 'turn', turn: { cutAt: 's2', hypotheses: [{ text: 'go on' }] } }],
    ['!heard milk | silk', { kind: 'turn', turn: { hypotheses: [{ text: 'milk' }, { text: 'silk' }] } }],
    ['!at 2026-05-14T18:30', { kind: 'at', wall: '2026-05-14T18:30' }],
  ])('%j', (line, meaning) => expect(readLine(line)).toEqual(meaning));
});

describe('a wall time', () => {
  it.each([
    ['2026-05-14T18:00', 'America/Chicago', '2026-05-14T23:00:00.000Z'],
    ['2026-01-14 18:00', 'America/Chicago', '2026-01-15T00:00:00.000Z'],
    ['2026-05-14', 'Europe/London', '2026-05-14T11:00:00.000Z'],
    ['2026-05-14T18:00Z', 'America/Chicago', '2026-05-14T18:00:00.000Z'],
  ])('%s in %s', (text, zone, instant) => expect(instantOf(text, zone)).toBe(instant));
  it.each(['teatime', '2026-02-30', '2026-13-01T10:00', ''])('refuses %j', (text) => {
    expect(() => instantOf(text, 'America/Chicago')).toThrow(/not a time/);
  });
});

describe('devices on the command line', () => {
  it('are let in, listed, renamed and revoked', async () => {
    const data = await folder();
    await talk(data, ['hello']);
    const paired = await run(['pair', '--data', data, '--name', 'by the sink', '--scope', 'speak']);
    expect(paired.lines[0]).toMatch(/^tsf_[\w-]{43}$/);
    const listed = await run(['devices', 'list', '--data', data]);
    expect(listed.lines[0]).toMatch(/\tby the sink\tspeak\tpaired/);
    const id = listed.lines[0]?.split('\t')[0] ?? '';
    await run(['devices', 'rename', id, 'pantry', '--data', data]);
    await run(['devices', 'revoke', id, '--data', data]);
    expect((await run(['devices', 'list', '--data', data])).lines[0]).toMatch(/\tpantry\tspeak\t.*revoked/);
    const wrong = await run(['devices', 'revoke', 'nobody', '--data', data]);
    expect(wrong.code).toBe(1);
    expect(wrong.errors).toMatch(/no such device/);
  });
});
