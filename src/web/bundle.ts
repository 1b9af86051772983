/** The pages' scripts: bundled from `src/web/client` when the service starts, or ready made in a package. */
import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { projectFile } from '../project-files.js';

const entries = ['board', 'home', 'labels', 'charts', 'teach', 'service-worker'] as const;

/** Script text by file name (`talk.js`). Takes about a tenth of a second. */
export const bundlePages = async (): Promise<ReadonlyMap<string, Uint8Array>> => {
  const made = projectFile('dist', 'pages');
  // Beside the sources nothing ready made is trusted: it may be older than they are.
  if (!existsSync(projectFile('src', 'web', 'client')))
    return new Map(
      await Promise.all(
        (await readdir(made)).map(
          async (name) => [name, await readFile(projectFile('dist', 'pages', name))] as const,
        ),
      ),
    );
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
