/** What whoever installs is told where SQLite cannot be had: two lines, the second of which says how to get it. */
import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, expect, it, vi } from 'vitest';
import { projectFile } from '../../src/project-files.js';

vi.setConfig({ testTimeout: 120_000 });
const folder = mkdtempSync(join(tmpdir(), 'setup-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A machine with Node and npm, the programs named, no compiler, and no registry that answers. */
const setUp = (): { lines: string[]; status: number | null } => {
  const [programs, home] = ['bin', 'home'].map((name) => join(folder, name)) as [string, string];
  for (const made of [programs, home]) mkdirSync(made, { recursive: true });
  for (const file of ['.setup.mjs', '.cache-folder.mjs']) copyFileSync(projectFile(file), join(folder, file));
  symlinkSync(process.execPath, join(programs, 'node'));
  for (const program of ['sh', 'env', 'npm']) {
    const found = (process.env['PATH'] ?? '').split(':').find((at) => existsSync(join(at, program)));
    if (found === undefined) throw new Error(`There is no ${program} here.`);
    symlinkSync(realpathSync(join(found, program)), join(programs, program));
  }
  const ran = spawnSync(process.execPath, ['.setup.mjs'], {
    cwd: folder,
    encoding: 'utf8',
    env: {
      PATH: programs,
      HOME: home,
      npm_config_registry: 'http://127.0.0.1:9/',
      npm_config_fetch_retries: '0',
    },
  });
  return { lines: ran.stderr.trimEnd().split('\n'), status: ran.status };
};

it('says in two lines what is missing and how to get it, and lets the rest be installed', () => {
  const { lines, status } = setUp();
  expect(status).toBe(0);
  expect(lines).toHaveLength(2);
  const [what, how] = lines as [string, string];
  if (Number.parseInt(process.versions.node, 10) >= 22) {
    expect(what).toMatch(/^SQLite \(better-sqlite3 13\) could not be fetched/);
    expect(how).toContain(`"node .setup.mjs" in ${dirname(join(folder, 'x'))}`);
  } else {
    expect(what).toBe('SQLite must be compiled for Node 20, and this machine lacks python3, make, g++.');
    expect(how).toMatch(
      /apt-get install python3 make g\+\+.*Node 22 or later, which needs no compiler.*DATABASE_URL/,
    );
  }
});

it('a checkout whose cache nobody may make says so in two lines, and does nothing', () => {
  const ran = spawnSync(process.execPath, [projectFile('.run.mjs'), 'talk'], {
    encoding: 'utf8',
    // Nobody may make a folder in a file, root neither.
    env: { ...process.env, XDG_CACHE_HOME: projectFile('package.json') },
  });
  expect(ran.status).toBe(1);
  expect(ran.stderr.trimEnd().split('\n')).toEqual([
    expect.stringMatching(/package\.json\/tellshelf\/\w+ cannot be made \(E\w+\)\.$/),
    expect.stringMatching(/XDG_CACHE_HOME.*npm run build && npm prune --omit=dev/),
  ]);
});
