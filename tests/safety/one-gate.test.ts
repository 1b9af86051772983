/**
 * One gate: what is past, due or lost is said by `src/safety/gate`, and every other room asks it. That is a rule of
 * `npm run check` (`.eslint.config.mjs`, `.dependency-cruiser.cjs`): here it is held to what it must catch.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { ESLint } from 'eslint';
import { describe, expect, it } from 'vitest';
import { leftOut, mayFreeze, mayRefreeze, powerCutFor } from '../../src/safety/index.js';
import { projectFile } from '../../src/project-files.js';

const eslint = new ESLint({ cwd: projectFile(), overrideConfigFile: projectFile('.eslint.config.mjs') });
const caught = async (code: string, filePath: string): Promise<number> => {
  const [result] = await eslint.lintText(code, { filePath: projectFile(filePath) });
  return result!.messages.filter(({ ruleId }) => ruleId === 'no-restricted-syntax').length;
};

const PAST = "export const past = (of: { useBy?: string }, day: string) => (of.useBy ?? '') < day;";
const VERDICT = "export const found = { verdict: 'throw-out' };";
const RULES = 'export const rows = (tables: any) => tables.timeRules.leftOut;';

describe('what food has come to', () => {
  it.each([
    ['src/labels/any.ts', PAST],
    ['src/web/client/any.tsx', PAST],
    ['src/server/any.ts', VERDICT],
    ['src/schedule/any.ts', VERDICT],
    ['src/cli/any.ts', PAST],
    ['src/dialogue/any.ts', VERDICT],
    ['src/safety/any.ts', RULES],
  ])('is reckoned nowhere but in the gate: %s', async (file, code) =>
    expect(await caught(code, file)).toBe(1),
  );

  it.each([
    ['src/safety/gate/any.ts', PAST],
    ['src/safety/gate/any.ts', VERDICT],
    ['src/safety/gate/any.ts', RULES],
    ['src/labels/any.ts', "export const printed = (of: { useBy?: string }) => of.useBy ?? '';"],
    ['src/dialogue/any.ts', "export const isPast = (of: { verdict: string }) => of.verdict === 'throw-out';"],
  ])('and is told and asked of anywhere: %s', async (file, code) => expect(await caught(code, file)).toBe(0));

  it('is imported by its doors: a file that goes round them fails the check of directions', () => {
    const folder = mkdtempSync(join(tmpdir(), 'doors-'));
    const write = (file: string, text: string): void => {
      mkdirSync(join(folder, dirname(file)), { recursive: true });
      writeFileSync(join(folder, file), text);
    };
    try {
      write('tsconfig.json', '{}');
      write('src/safety/gate/index.ts', 'export const judgeFor = 1;\n');
      write('src/safety/power-cut.ts', 'export const cut = 1;\n');
      write('src/safety/guidance.ts', "export { judgeFor } from './gate/index.js';\n");
      write(
        'src/safety/round.ts',
        "export { judgeFor } from './gate/index.js';\nexport * from './power-cut.js';\n",
      );
      write('src/labels/round.ts', "export { judgeFor } from '../safety/guidance.js';\n");
      const { status, stdout } = spawnSync(
        projectFile('node_modules', '.bin', 'depcruise'),
        ['--config', projectFile('.dependency-cruiser.cjs'), 'src'],
        { cwd: folder, encoding: 'utf8' },
      );
      const broken = [...stdout.matchAll(/error ([a-z-]+): (\S+)/gu)].map(
        ([, rule, file]) => `${rule} ${file}`,
      );
      expect(broken.sort()).toEqual([
        'guidance-by-its-door src/labels/round.ts',
        'labels-looks-down-only src/labels/round.ts',
        'power-by-the-gate src/safety/round.ts',
        'the-gate-has-two-doors src/safety/round.ts',
      ]);
      expect(status).not.toBe(0);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

const clock = { now: '2026-05-14T23:00:00.000Z', timeZone: 'America/Chicago' };

describe('a food that is not on record', () => {
  it('is frozen today by the gate: what was past before is not', () => {
    const may = (made: string) =>
      mayFreeze({ food: 'chicken soup', region: 'us', state: 'cooked', dates: { made }, clock }).may;
    expect([may('2026-05-11'), may('2026-05-10'), may('2026-05-09')]).toEqual(['yes', 'yes', 'no']);
  });

  it('is frozen again by the gate: within its hours out of the cold, and not past them', () => {
    const may = (minutes: number) =>
      mayRefreeze({
        food: 'raw shrimp',
        region: 'us',
        thawedIn: 'fridge',
        out: { minutes, hot: false, atLeast: false, now: true },
        clock,
      }).may;
    expect([may(120), may(121)]).toEqual(['yes', 'no']);
  });

  it('is past in a power cut for its age as well as for its hours', () => {
    const cut = {
      since: '2026-05-14T21:00:00.000Z',
      backAt: clock.now,
      doors: 'shut' as const,
      fullness: null,
    };
    const past = (bought: string) =>
      powerCutFor({ name: 'raw chicken', where: 'fridge', dates: { bought } }, cut, clock);
    expect([past('2026-05-12').past, past('2026-05-12').verdict]).toEqual([null, 'keep']);
    expect(past('2026-05-11').past?.verdict).toBe('throw-out');
  });

  it('has its hours for human milk up to seventy-seven degrees, and none in warmer air', () => {
    const out = (hours: number, degrees: number) =>
      leftOut({
        food: 'breast milk',
        since: new Date(Date.parse(clock.now) - hours * 3_600_000).toISOString(),
        clock,
        region: 'us',
        air: { degrees, scale: 'fahrenheit' },
      }).verdict;
    expect([out(4, 77), out(4, 78), out(4.1, 77)]).toEqual(['refrigerate-now', 'unknown', 'throw-out']);
  });
});
