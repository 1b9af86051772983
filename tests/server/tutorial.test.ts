/** What `deploy/api.md` tells a stranger to write is run as it stands there, with the package's own client. */
import { execFile, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import type { z } from 'zod';
import type { sideDoors } from '../../shared/wire/side-doors.js';
import { projectFile } from '../../src/project-files.js';
import { bearer, startService, type Service } from '../support/service.js';

// Processes of their own, the compiler among them.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });
const run = promisify(execFile);

const told = readFileSync(projectFile('deploy', 'api.md'), 'utf8');
const block = (language: string, holding: string): string =>
  [...told.matchAll(/```(\w+)\n([\s\S]*?)```/g)].find(
    ([, in_, text]) => in_ === language && text?.includes(holding),
  )?.[2] ?? '';

let service: Service;
let base: string;
let folder: string;
beforeAll(async () => {
  service = await startService();
  base = await service.app.listen({ host: '127.0.0.1', port: 0 });
  // A stranger's folder: the package as it is packed, and ws.
  folder = mkdtempSync(join(tmpdir(), 'stranger-'));
  const own = join(folder, 'node_modules', 'tellshelf');
  mkdirSync(own, { recursive: true });
  const bundler = projectFile('.bundle.mjs');
  const { bundleClient } = (await import(bundler)) as { bundleClient: (folder: string) => Promise<void> };
  await bundleClient(join(own, 'dist', 'client'));
  writeFileSync(join(own, 'package.json'), readFileSync(projectFile('package.json')));
  symlinkSync(projectFile('node_modules', 'ws'), join(folder, 'node_modules', 'ws'));
});
afterAll(async () => {
  await service.close();
  rmSync(folder, { recursive: true, force: true });
});

/** A program of the stranger's, with what it printed so far. */
const start = (file: string) => {
  const child = spawn(process.execPath, [file], { cwd: folder, env: { ...process.env, SERVICE: base } });
  let printed = '';
  let errors = '';
  child.stdout.on('data', (data: Buffer) => (printed += data.toString()));
  child.stderr.on('data', (data: Buffer) => (errors += data.toString()));
  const ended = new Promise<number | null>((resolve) => child.on('close', resolve));
  return {
    type: (words: string) => child.stdin.write(`${words}\n`),
    leave: () => child.stdin.end(),
    ended,
    errors: () => errors,
    prints: (what: RegExp) =>
      vi.waitFor(
        () => {
          const found = what.exec(printed);
          if (!found) throw new Error(`${what} not printed, but: ${printed}${errors}`);
          return found;
        },
        { timeout: 30_000, interval: 20 },
      ),
  };
};

describe('a client in thirty lines', () => {
  it('pairs, talks, is told when a timer is done, and leaves', async () => {
    const client = block('js', 'pair(');
    expect(client.split('\n').length).toBeLessThanOrEqual(31);
    writeFileSync(join(folder, 'typewriter.mjs'), client);
    const stranger = start('typewriter.mjs');
    const [, spoken = ''] = await stranger.prints(/Let me in with the code ([\d ,]+)/);
    const confirmed = await service.app.inject({
      method: 'POST',
      url: '/v1/pairings/confirm',
      headers: bearer(service.tokens.own),
      payload: { code: spoken.replace(/\D/g, '') },
    });
    expect(confirmed.statusCode).toBe(201);
    await stranger.prints(/Talk to me\./);
    stranger.type('where is the caraway sauerkraut');
    await stranger.prints(/The caraway sauerkraut is on the second shelf of the fridge/);
    stranger.type('set a rice timer for ten minutes');
    await stranger.prints(/rice timer/i);
    service.setNow('2026-05-14T23:10:01.000Z');
    await stranger.prints(/The rice timer is done\./);
    stranger.type('goodbye');
    stranger.leave();
    expect(await stranger.ended, stranger.errors()).toBe(0);
    expect(stranger.errors()).toBe('');
  });

  it('is typed without any library beside it', async () => {
    const program = `
import { createClient, openConversation, ServiceProblem, type Item, type ServerMessage, type TurnReply } from 'tellshelf/client';
const client = createClient({ base: '${base}', token: 'none' });
export const first = async (): Promise<Item | undefined> => (await client.items())[0];
export const said = ({ speech, expects }: TurnReply): string => (expects.kind === 'yes-no' ? speech.ssml : speech.text);
export const turn = client.turn({ id: 't1', hypotheses: [{ text: 'undo' }] });
export const kind = (message: ServerMessage): string => (message.type === 'unasked' ? message.kind : message.type);
export const why = (error: unknown): string | null => (error instanceof ServiceProblem ? error.problem.code : null);
export const open = openConversation;
// @ts-expect-error a turn needs an id
void client.turn({ hypotheses: [] });
// @ts-expect-error there is no such verdict
export const wrong = (reply: TurnReply): boolean => reply.understood.verdict === 'perhaps';
`;
    writeFileSync(join(folder, 'typed.ts'), program);
    writeFileSync(join(folder, 'package.json'), '{ "type": "module" }');
    const options = [
      '--strict',
      '--noEmit',
      '--module',
      'nodenext',
      '--target',
      'es2022',
      '--typeRoots',
      'none',
    ];
    const typed = await run(projectFile('node_modules', '.bin', 'tsc'), [...options, 'typed.ts'], {
      cwd: folder,
    }).catch((error: { stdout: string }) => error);
    expect(typed.stdout).toBe('');
  });

  it('tries again while the service cannot be reached, and does not fall over', async () => {
    writeFileSync(
      join(folder, 'early.mjs'),
      `import { openConversation } from 'tellshelf/client';
import WebSocket from 'ws';
const talk = openConversation({
  connect: () => new WebSocket('ws://127.0.0.1:9/v1/conversation'),
  delays: [1],
  onState: (state) => {
    console.log(state);
    if (state === 'lost' && ++lost === 3) talk.close();
  },
  onMessage: () => {},
});
let lost = 0;
`,
    );
    const early = start('early.mjs');
    await early.prints(/lost[\s\S]*lost[\s\S]*lost[\s\S]*closed/);
    expect(early.errors()).toBe('');
    expect(await early.ended).toBe(0);
  });
});

describe('another speech front', () => {
  it('posts by the commands that are told, and gets SSML', async () => {
    const got = await service.app.inject({ url: '/v1/feeds', headers: bearer(service.tokens.speak) });
    const { turns } = got.json<z.infer<typeof sideDoors>>();
    // The commands sign with the machine's own clock.
    service.setNow(new Date().toISOString());
    const { pathname } = new URL(turns.url);
    const commands = block('sh', 'webhook-signature').replace(
      /^url=… secret=….*$/m,
      `url='${base}${pathname}' secret='${turns.secret}'`,
    );
    const { stdout } = await run('bash', ['-euo', 'pipefail', '-c', commands]);
    expect(stdout).toMatch(/^<speak .*<\/speak>$/);
  });
});
