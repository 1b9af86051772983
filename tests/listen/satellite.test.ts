/** A small board as ear and mouth of a service: what is heard goes there, what is due is said here. */
import { spawnSync } from 'node:child_process';
import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { listen, type ListenOptions } from '../../src/cli/listen/listen.js';
import { talkThere } from '../../src/cli/listen/there.js';
import type { Unasked } from '../../src/cli/listen/talker.js';
import { openSqliteStore } from '../../src/store/index.js';
import { bearer, say, startService, THURSDAY, type Service } from '../support/service.js';

vi.setConfig({ testTimeout: 60_000 });

const folder = mkdtempSync(join(tmpdir(), 'satellite-'));
const file = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  chmodSync(path, 0o755);
  return path;
};
const silence = join(folder, 'silence.wav');
beforeAll(() => {
  const made = spawnSync('sox', ['-n', '-r', '16000', '-c', '1', '-b', '16', silence, 'trim', '0', '0.5']);
  if (made.status !== 0) throw new Error('sox is not installed.');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let service: Service;
let address: string;
beforeEach(async () => {
  service = await startService();
  address = await service.app.listen({ host: '127.0.0.1', port: 0 });
});
afterEach(() => service.close());

/** What `tellshelf listen` prints to whom, until its sound files are answered. */
const run = async (options: Partial<ListenOptions>): Promise<{ out: string; err: string; code: unknown }> => {
  let [out, err] = ['', ''];
  const spies = [
    vi.spyOn(process.stdout, 'write').mockImplementation((text) => Boolean((out += String(text)))),
    vi.spyOn(process.stderr, 'write').mockImplementation((text) => Boolean((err += String(text)))),
  ];
  try {
    await listen({
      wav: [silence],
      grammar: true,
      data: join(folder, 'none'),
      service: address,
      key: service.tokens.speak,
      quiet: true,
      ...options,
    });
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
  const code = process.exitCode;
  process.exitCode = 0;
  return { out, err, code };
};

describe('tellshelf listen --service', () => {
  it('sends a plugged recogniser’s guesses, and has the answer spoken by a plugged voice', async () => {
    const ear = file('ear', '#!/bin/sh\nprintf "0.9\\twhere is the lentil stew\\n0.1\\tlentils\\n"\n');
    const voice = file('voice', `#!/bin/sh\ncat > ${join(folder, 'spoken')}\n`);
    const { out, err } = await run({ ear, mouth: voice, quiet: false });
    expect(out).toMatch(/^heard: where is the lentil stew\nsaid: The lentil stew is on the first shelf/);
    expect(err).toBe('');
    expect(readFileSync(join(folder, 'spoken'), 'utf8')).toMatch(/^<speak .*lentil stew.*<\/speak>$/);
  });

  it('gives the recogniser this household’s names, not the demo’s', async () => {
    await say(service, 'put the quince paste on the second shelf of the fridge');
    const ear = file(
      'names',
      '#!/bin/sh\ngrep -c "quince paste" "$BIASING/words.tsv" "$BIASING/kitchen.jsgf" "$BIASING/kitchen.grxml" >&2\n: "$1"\n',
    );
    const seen = join(folder, 'seen');
    await run({ ear: `sh -c '${ear} "$@" 2> ${seen}' ear` });
    expect(readFileSync(seen, 'utf8').match(/:[1-9]/g)).toHaveLength(3);
  });

  it('says that its hearing failed where the recogniser’s answer cannot be read, and tells why beside', async () => {
    const ear = file('broken', '#!/bin/sh\nprintf "very\\tsure\\n"\n');
    const { out, err, code } = await run({ ear });
    expect(out).toBe('said: My hearing failed just now. Say it again.\n');
    expect(err).toMatch(/line 1 begins with no confidence/);
    expect(code).toBe(1);
    expect((await service.households.look('marta')).kitchen.version).toBe(service.kitchen.version);
  });

  it('says so after three failures running that it does not work, in the household’s language', async () => {
    const ear = file('dead', '#!/bin/sh\nexit 3\n');
    const wav = [silence, silence, silence];
    expect((await run({ ear, wav })).out.trim().split('\n')).toEqual([
      'said: My hearing failed just now. Say it again.',
      'said: My hearing failed just now. Say it again.',
      expect.stringMatching(/^said: My hearing does not work\./),
    ]);
    await service.app.inject({
      method: 'PATCH',
      url: '/v1/household',
      headers: bearer(service.tokens.own),
      payload: { locale: 'es-ES' },
    });
    expect((await run({ ear })).out).toBe('said: Me falló el oído. Dilo otra vez.\n');
    // One that hears in between begins anew; that it heard nothing is the service's to say.
    const flaky = file('flaky', `#!/bin/sh\nif mkdir ${folder}/once 2>/dev/null; then exit 3; fi\n`);
    expect((await run({ ear: flaky, wav: [silence, silence] })).out).toMatch(
      /^said: Me falló.*\nheard: \(nothing\)\nsaid: No /,
    );
  });

  it('names a sound file that cannot be read', async () => {
    const ear = file('unheard', '#!/bin/sh\n');
    await expect(run({ ear, wav: [join(folder, 'none.wav')] })).rejects.toThrow(
      /none\.wav cannot be read as sound/,
    );
    await expect(run({ ear, wav: [ear] })).rejects.toThrow(/unheard cannot be read as sound/);
  });

  it('says at once that the service does not know its key, or that there is none', async () => {
    const ear = file('unused', '#!/bin/sh\n');
    await expect(run({ ear, key: `tsf_${'a'.repeat(43)}` })).rejects.toThrow(
      /does not let this device in: No valid key/,
    );
    const { key: _key, ...keyless } = { key: '', ear, service: address };
    await expect(
      listen({ ...keyless, grammar: true, data: folder, wav: [silence], quiet: true }),
    ).rejects.toThrow(/--key/);
  });
});

describe('what a satellite is told', () => {
  it('rings for a timer once, when it was said', async () => {
    const said: Unasked[] = [];
    const talker = await talkThere(
      { service: `${address}/`, key: service.tokens.speak },
      {
        tell: () => undefined,
        onChanged: () => undefined,
        onUnasked: (unasked) => {
          said.push(unasked);
          return Promise.resolve();
        },
      },
    );
    const reply = await talker.turn({
      id: 'set',
      conversation: 'listen',
      hypotheses: [{ text: 'set a rice timer for ten minutes' }],
    });
    expect(reply.changes).toHaveLength(1);
    service.setNow(new Date(Date.parse(THURSDAY) + 10 * 60_000 + 1_000).toISOString());
    await vi.waitFor(() => expect(said).toHaveLength(1), { timeout: 20_000 });
    expect(said[0]?.text).toBe('The rice timer is done.');
    expect(said[0]?.ssml).toMatch(/^<speak /);
    // Acknowledged: nobody is told again.
    await vi.waitFor(
      async () => {
        const { kitchen } = await service.households.look('marta');
        expect([...kitchen.reminders.values()].some(({ deliveredAt }) => deliveredAt !== null)).toBe(true);
      },
      { timeout: 20_000 },
    );
    await talker.close();
  });

  it('hears of changes, with the names as they are then; waits for a service that is not there yet', async () => {
    let changed = 0;
    const told: string[] = [];
    const talker = await talkThere(
      { service: address, key: service.tokens.speak },
      {
        tell: (line) => told.push(line),
        onUnasked: () => Promise.resolve(),
        onChanged: () => (changed += 1),
      },
    );
    await vi.waitFor(() => expect(changed).toBeGreaterThan(0), { timeout: 20_000 });
    const before = changed;
    await say(service, 'put the quince paste on the second shelf of the fridge');
    await vi.waitFor(() => expect(changed).toBeGreaterThan(before), { timeout: 20_000 });
    expect(await talker.lists('words')).toMatch(/^1\tquince paste$/m);
    await talker.close();
    expect(told).toEqual([]);

    const early = await talkThere(
      { service: 'http://127.0.0.1:9', key: 'none' },
      { tell: (line) => told.push(line), onUnasked: () => Promise.resolve(), onChanged: () => undefined },
    );
    expect(told[0]).toMatch(/cannot be reached yet/);
    await early.close();
  });

  it('comes back when the service does, with what was said meanwhile', async () => {
    const store = openSqliteStore(':memory:');
    const first = await startService({}, { store });
    const at = await first.app.listen({ host: '127.0.0.1', port: 0 });
    const told: string[] = [];
    const talker = await talkThere(
      { service: at, key: first.tokens.speak },
      { tell: (line) => told.push(line), onUnasked: () => Promise.resolve(), onChanged: () => undefined },
    );
    const turn = (id: string, text: string) =>
      talker.turn({ id, conversation: 'listen', hypotheses: [{ text }] });
    await turn('one', 'where is the lentil stew');
    await first.app.close();
    await vi.waitFor(() => expect(told).toEqual(['The service was lost; it is tried again.']), {
      timeout: 20_000,
    });
    const waiting = turn('two', 'put oats on the list');
    const second = await startService({}, { store });
    await second.app.listen({ host: '127.0.0.1', port: Number(new URL(at).port) });
    expect((await waiting).changes).toHaveLength(1);
    expect(told.at(-1)).toBe('The service is there again.');
    await talker.close();
    await second.close();
    await store.close();
  });
});
