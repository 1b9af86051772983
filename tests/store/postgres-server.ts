/**
 * A real PostgreSQL for tests. `TELLSHELF_TEST_POSTGRES` names one; else one on this machine's usual
 * port; else Debian's is started in a temporary folder. Each caller gets a database of its own.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync, chownSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';

export interface TestPostgres {
  readonly url: string;
  readonly close: () => Promise<void>;
}

const answers = async (url: string): Promise<boolean> => {
  const client = new pg.Client({ connectionString: url, connectionTimeoutMillis: 2_000 });
  client.on('error', () => undefined);
  try {
    await client.connect();
    await client.query('select 1');
    return true;
  } catch {
    return false;
  } finally {
    await client.end().catch(() => undefined);
  }
};

const DEBIAN = '/usr/lib/postgresql';

/** Starts Debian's server on a free port, as the user postgres where we are root (it refuses to run as root). */
const startDebians = (): { url: string; stop: () => void } | null => {
  const versions = existsSync(DEBIAN) ? readdirSync(DEBIAN).sort((a, b) => Number(b) - Number(a)) : [];
  const bin = versions[0] && join(DEBIAN, versions[0], 'bin');
  if (!bin || !existsSync(join(bin, 'pg_ctl'))) return null;
  const root = process.getuid?.() === 0;
  const folder = mkdtempSync(join(tmpdir(), 'tellshelf-pg-'));
  const run = (program: string, args: readonly string[]): void => {
    const command = join(bin, program);
    if (root) execFileSync('runuser', ['-u', 'postgres', '--', command, ...args], { stdio: 'ignore' });
    else execFileSync(command, args, { stdio: 'ignore' });
  };
  if (root) {
    const uid = Number(execFileSync('id', ['-u', 'postgres'], { encoding: 'utf8' }));
    chownSync(folder, uid, -1);
  }
  const data = join(folder, 'data');
  const port = 20_000 + (process.pid % 20_000);
  run('initdb', ['-D', data, '-U', 'postgres', '-A', 'trust']);
  run('pg_ctl', [
    '-D',
    data,
    '-w',
    '-o',
    `-p ${port} -k ${folder} -c listen_addresses=127.0.0.1`,
    '-l',
    join(folder, 'log'),
    'start',
  ]);
  return {
    url: `postgres://postgres@127.0.0.1:${port}/postgres`,
    stop: () => {
      run('pg_ctl', ['-D', data, '-m', 'immediate', 'stop']);
      rmSync(folder, { recursive: true, force: true });
    },
  };
};

/** A fresh database, or null when no PostgreSQL can be had on this machine. */
export const startPostgres = async (name: string): Promise<TestPostgres | null> => {
  const given = process.env['TELLSHELF_TEST_POSTGRES'];
  const usual = ['postgres://postgres@127.0.0.1:5432/postgres', 'postgres://root@127.0.0.1:5432/test'];
  let url: string | null = null;
  for (const candidate of given ? [given] : usual)
    if (url === null && (await answers(candidate))) url = candidate;
  const started = url === null && !given ? startDebians() : null;
  url ??= started?.url ?? null;
  if (url === null) return null;
  const admin = new pg.Client({ connectionString: url });
  await admin.connect();
  const database = `tellshelf_${name}_${process.pid}`;
  await admin.query(`drop database if exists ${database} with (force)`);
  await admin.query(`create database ${database}`);
  const ours = new URL(url);
  ours.pathname = `/${database}`;
  return {
    url: ours.href,
    close: async () => {
      await admin.query(`drop database if exists ${database} with (force)`);
      await admin.end();
      started?.stop();
    },
  };
};
