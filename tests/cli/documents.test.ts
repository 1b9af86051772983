/** What is written for readers: short where it must be, and it leads somewhere. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Command } from 'commander';
import { describe, expect, it } from 'vitest';
import { projectFile } from '../../src/project-files.js';
import { readConfig } from '../../src/server/index.js';

const documents = [
  'README.md',
  'DEVELOPERS.md',
  ...readdirSync(projectFile('deploy'))
    .filter((name) => name.endsWith('.md'))
    .map((name) => join('deploy', name)),
];
const read = (document: string): string => readFileSync(projectFile(document), 'utf8');

/** As a heading's address is made on the sites that show such files. */
const anchors = (text: string): string[] =>
  [...text.matchAll(/^#+ (.*)$/gm)].map(([, heading = '']) =>
    heading
      .toLowerCase()
      .replace(/[^\p{L}\p{N} -]/gu, '')
      .replaceAll(' ', '-'),
  );

describe('the README', () => {
  it('begins with the job in one paragraph, then the two commands, and is read in five minutes', () => {
    const text = read('README.md');
    expect(text.split('\n').length).toBeLessThan(150);
    const [title, job, next, , commands] = text.split('\n\n');
    expect(title).toBe('# Tellshelf');
    expect(job).toMatch(/^A cook who works by touch and ear/);
    expect(next).toBe('## Two commands');
    expect(commands).toBe('```sh\nnpm ci && npm run talk\nnpm ci && npm test\n```');
  });
});

describe('every link within the documents', () => {
  it.each(documents)('of %s leads to a file and a heading that are there', (document) => {
    for (const [whole, to = ''] of read(document).matchAll(/\]\((?!https?:)([^)\s]+)\)/g)) {
      const [path = '', anchor] = to.split('#');
      const file = path === '' ? document : join(dirname(document), path);
      expect(existsSync(projectFile(file)), `${document}: ${whole}`).toBe(true);
      if (anchor !== undefined) expect(anchors(read(file)), `${document}: ${whole}`).toContain(anchor);
    }
  });
});

describe('what the documents tell', () => {
  it('of commands is all that there are', async () => {
    const sources = readFileSync(projectFile('src', 'cli', 'main.ts'), 'utf8');
    const program = new Command();
    for (const [, add = '', file = ''] of sources.matchAll(/import \{ (add\w+) \} from '(.*?)\.js'/g)) {
      const path = projectFile('src', 'cli', `${file}.ts`);
      ((await import(path)) as Record<string, (program: Command) => void>)[add]?.(program);
    }
    const table = read('deploy/commands.md').split('\n## ')[0] ?? '';
    expect(program.commands.length).toBeGreaterThan(10);
    for (const command of program.commands) expect(table, command.name()).toContain(`\`${command.name()}`);
  });

  it('of settings are settings', () => {
    const [, table = ''] = /\| setting([\s\S]*?)\n\n/.exec(read('deploy/settings.md')) ?? [];
    const named = [...table.matchAll(/`([A-Z][A-Z_]+)`/g)].map(([, name]) => name ?? '');
    expect(named.length).toBeGreaterThan(10);
    const known = Object.keys(readConfig({}));
    const optional = [
      ...['DATABASE_URL', 'PUBLIC_URL', 'WEBHOOK_URL', 'WEBHOOK_SECRET', 'MQTT_URL'],
      ...['NOTICE_PUBLIC_KEY', 'NOTICE_PRIVATE_KEY', 'NOTICE_CONTACT'],
    ];
    for (const name of named) expect([...known, ...optional]).toContain(name);
  });
});

describe('the table of what it stands on', () => {
  it('has every library that the program imports, and none that it does not', () => {
    const sources = ['src', 'shared'].flatMap((folder) =>
      readdirSync(projectFile(folder), { recursive: true, encoding: 'utf8' })
        .filter((name) => /\.tsx?$/.test(name))
        .map((name) => readFileSync(projectFile(folder, name), 'utf8')),
    );
    const { devDependencies, optionalDependencies } = JSON.parse(read('package.json')) as Record<
      string,
      object
    >;
    const installed = new Set([devDependencies, optionalDependencies].flatMap((of) => Object.keys(of ?? {})));
    const imported = new Set(
      sources.flatMap((text) =>
        [...text.matchAll(/(?:from|import\(|require\()\s*'((?:@[\w-]+\/)?[\w.-]+)[^']*'/g)]
          .map(([, name = '']) => name)
          // A checkout bundles its pages itself; a package carries them.
          .filter((name) => installed.has(name) && name !== 'esbuild'),
      ),
    );
    const [, table = ''] =
      /### What it stands on\n([\s\S]*?)\nEverything else/.exec(read('DEVELOPERS.md')) ?? [];
    const first = table
      .split('\n')
      .filter((line) => line.startsWith('|'))
      .map((line) => line.split('|')[1] ?? '')
      .join('\n');
    const named = [...first.matchAll(/`([@\w/.*-]+)`/g)].map(([, name = '']) => name);
    const stands = (library: string): boolean =>
      named.some(
        (name) =>
          name === library ||
          library === `@fastify/${name}` ||
          (name.endsWith('/*') && library.startsWith(name.slice(0, -1))),
      );
    expect([...imported].filter((library) => !stands(library))).toEqual([]);
    const known = [...imported];
    for (const name of named)
      expect(
        known.some((library) => library === name || library === `@fastify/${name}` || name.endsWith('/*')),
        name,
      ).toBe(true);
  });
});
