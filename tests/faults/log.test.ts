/** The log's disk is full: lines are lost, the service is not. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, openSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { createLogLines } from '../../src/cli/serve/log-lines.js';
import { projectFile } from '../../src/project-files.js';
import { freePort } from '../support/free-port.js';

// Writing to this device fails as a full disk does.
const FULL = '/dev/full';

it.skipIf(!existsSync(FULL))(
  'answers, and ends when asked, with nowhere to write a line',
  async () => {
    const data = mkdtempSync(join(tmpdir(), 'tellshelf-log-'));
    const port = await freePort();
    const service = spawn(process.execPath, [projectFile('.run.mjs'), 'serve'], {
      cwd: projectFile(),
      env: { ...process.env, DATABASE_URL: '', DATA_DIR: data, PORT: String(port), LOG_LEVEL: 'trace' },
      stdio: ['ignore', openSync(FULL, 'w'), 'inherit'],
    });
    const ended = once(service, 'exit');
    try {
      let ready = false;
      for (let n = 0; n < 600 && !ready && service.exitCode === null; n += 1) {
        ready = (await fetch(`http://127.0.0.1:${port}/health/ready`).catch(() => null))?.ok === true;
        await sleep(100);
      }
      expect(ready).toBe(true);
      for (let n = 0; n < 20; n += 1) {
        const answer = await fetch(`http://127.0.0.1:${port}/v1/me`);
        expect(answer.status).toBe(401);
      }
      service.kill('SIGTERM');
      expect(await ended).toEqual([0, null]);
    } finally {
      service.kill('SIGKILL');
      rmSync(data, { recursive: true, force: true });
    }
  },
  120_000,
);

it('tells how many lines were lost once there is room', async () => {
  const written: string[] = [];
  let full = true;
  const lines = createLogLines(1, (_fd, text, done) =>
    setImmediate(() => {
      if (full) return done(new Error('ENOSPC'), 0);
      written.push(text.toString());
      // A disk may take a part at a time.
      done(null, text.length);
    }),
  );
  lines.write('one\n');
  lines.write('two\n');
  lines.write('three\n');
  await lines.close(1_000);
  full = false;
  lines.write('four\n');
  await lines.close(1_000);
  expect(written.join('')).toMatch(/^four\n\{.*"dropped":3\}\n$/);
  expect(lines.dropped).toBe(3);
});

it('keeps a bounded number of lines for a reader that stands still', () => {
  const lines = createLogLines(1, () => undefined);
  const line = `${'x'.repeat(1023)}\n`;
  for (let n = 0; n < 3000; n += 1) lines.write(line);
  // One batch is under way, a megabyte waits.
  expect(lines.dropped).toBe(3000 - 1 - 1024);
});
