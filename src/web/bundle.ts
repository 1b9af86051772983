/** The pages' scripts, bundled from `src/web/client`: with the program, or by a service run from sources. */
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { projectFile } from '../project-files.js';

const entries = ['board', 'home', 'labels', 'charts', 'teach', 'service-worker'] as const;

/** Bundles them. Script text by file name (`board.js`). Takes about a tenth of a second. */
export const makePages = async (): Promise<ReadonlyMap<string, Uint8Array>> => {
  const { build } = await import('esbuild');
  const built = await build({
    entryPoints: entries.map((entry) => ({
      in: projectFile('src', 'web', 'client', entry === 'service-worker' ? `${entry}.ts` : `${entry}.tsx`),
      out: entry,
    })),
    outdir: '/js',
    bundle: true,
    write: false,
    format: 'esm',
    target: 'es2022',
    minify: true,
    jsx: 'automatic',
    jsxImportSource: 'preact',
    loader: { '.ftl': 'text' },
    legalComments: 'none',
  });
  return new Map(built.outputFiles.map((file) => [file.path.split(/[\\/]/).at(-1) ?? '', file.contents]));
};

/** Script text by file name: read where `.run.mjs` says they lie ready, made where nobody says so. */
export const readPages = async (): Promise<ReadonlyMap<string, Uint8Array>> => {
  const folder = process.env['TELLSHELF_PAGES'];
  if (folder === undefined) return makePages();
  const names = await readdir(folder);
  return new Map(
    await Promise.all(names.map(async (name) => [name, await readFile(join(folder, name))] as const)),
  );
};
