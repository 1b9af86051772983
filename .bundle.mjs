/**
 * Makes the program's bundles with esbuild. Run by itself (`npm run build`) it makes `dist`, which is what a
 * package carries beside `grammars` and `shared`: `program` with its libraries inside, what that reads at its start
 * (`prepared`), `pages`, `fonts`, `client` and the licences of what is inside.
 */
import { spawnSync } from 'node:child_process';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const home = dirname(fileURLToPath(import.meta.url));
const dist = join(home, 'dist');

/** Installed beside the program, or not at all: see optionalDependencies and peerDependencies. */
const beside = [
  'better-sqlite3',
  '@opentelemetry/sdk-trace-node',
  '@opentelemetry/exporter-trace-otlp-http',
  '@opentelemetry/resources',
  'esbuild',
  'pg-native',
];

const program = {
  absWorkingDir: home,
  entryPoints: ['src/cli/main.ts'],
  outExtension: { '.js': '.mjs' },
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  logLevel: 'error',
};

/** What libraries written for CommonJS ask for. */
const forCommonJs = {
  js: "import{createRequire as __libRequire}from'node:module';import{fileURLToPath as __libPath}from'node:url';import{dirname as __libFolder}from'node:path';const require=__libRequire(import.meta.url),__filename=__libPath(import.meta.url),__dirname=__libFolder(__filename);",
};

/** The pages' scripts, made by the very code that makes them for a service run from sources. */
const bundlePages = async (folder) => {
  const { build } = await import('esbuild');
  const maker = join(folder, 'make-pages.mjs');
  await build({
    ...program,
    entryPoints: ['src/web/bundle.ts'],
    splitting: false,
    outfile: maker,
    packages: 'external',
    define: { 'process.env.TELLSHELF_HOME': JSON.stringify(home) },
  });
  const { makePages } = await import(pathToFileURL(maker).href);
  mkdirSync(join(folder, 'pages'));
  for (const [name, script] of await makePages()) writeFileSync(join(folder, 'pages', name), script);
  rmSync(maker);
};

/**
 * The program with its libraries inside, for a folder outside the checkout; its data stays where it is.
 * A library that reads files of its own is left outside, as those of a package are.
 */
export const bundleSources = async (folder) => {
  const { build } = await import('esbuild');
  await build({
    ...program,
    outdir: folder,
    external: beside,
    sourcemap: true,
    sourcesContent: false,
    define: { 'process.env.TELLSHELF_HOME': JSON.stringify(home) },
    banner: forCommonJs,
  });
  await bundlePages(folder);
};

/** `tellshelf/client`: one file without libraries, and its types. */
export const bundleClient = async (folder) => {
  const [{ build }, { writeClientTypes }] = await Promise.all([
    import('esbuild'),
    import('./.client-types.mjs'),
  ]);
  await build({
    absWorkingDir: home,
    entryPoints: ['shared/client/index.ts'],
    outfile: join(folder, 'index.js'),
    bundle: true,
    format: 'esm',
    platform: 'neutral',
    target: 'es2022',
    logLevel: 'error',
  });
  await writeClientTypes(folder);
};

/** Every file of a bundle that is a library's, by the library's folder. */
const librariesIn = (inputs) => {
  const folders = new Set();
  for (const file of inputs) {
    const found = /^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+/.exec(file);
    if (found) folders.add(join(home, found[0]));
  }
  return [...folders].sort();
};

/** Their names, versions and licences, which must go with every copy. */
const licencesOf = (folders) =>
  folders
    .map((folder) => {
      const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
      const files = readdirSync(folder).filter((file) => /^(licen[cs]e|copying|notice)/i.test(file));
      const texts = files.map((file) => readFileSync(join(folder, file), 'utf8').trim());
      return [`${name} ${version}: ${license ?? 'see below'}`, ...texts].join('\n\n');
    })
    .join(`\n\n${'-'.repeat(60)}\n\n`);

const bundlePackage = async () => {
  const { build } = await import('esbuild');
  rmSync(dist, { recursive: true, force: true });
  const { metafile } = await build({
    ...program,
    outdir: join(dist, 'program'),
    external: beside,
    // Names and lines stay, so that a fault says where it was.
    minifySyntax: true,
    legalComments: 'none',
    metafile: true,
    banner: forCommonJs,
  });

  await bundlePages(dist);
  await bundleClient(join(dist, 'client'));

  mkdirSync(join(dist, 'fonts'));
  const fonts = join(home, 'node_modules', 'dejavu-fonts-ttf');
  for (const name of ['DejaVuSans', 'DejaVuSans-Bold'])
    copyFileSync(join(fonts, 'ttf', `${name}.ttf`), join(dist, 'fonts', `${name}.ttf`));
  const folders = [...librariesIn(Object.keys(metafile.inputs)), fonts, join(home, 'node_modules', 'preact')];
  writeFileSync(join(dist, 'licences.txt'), `${licencesOf(folders.filter(existsSync))}\n`);

  // Grammars compiled, weights and tables read: what each start would do again.
  const ran = spawnSync(process.execPath, [join(dist, 'program', 'main.mjs'), 'prepare'], {
    env: { ...process.env, TELLSHELF_PREPARED: join(dist, 'prepared') },
    stdio: 'inherit',
  });
  if (ran.status !== 0) throw new Error('What the program reads at its start could not be prepared.');
};

if (process.argv[1] === fileURLToPath(import.meta.url)) await bundlePackage();
