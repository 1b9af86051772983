/** The pages' scripts, bundled from `src/web/client` when the service starts. */
import { build } from 'esbuild';
import { projectFile } from '../project-files.js';

const entries = ['board', 'home', 'labels', 'charts', 'service-worker'] as const;

/** Script text by file name (`talk.js`). Takes about a tenth of a second. */
export const bundlePages = async (): Promise<ReadonlyMap<string, Uint8Array>> => {
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
    legalComments: 'none',
  });
  return new Map(built.outputFiles.map((file) => [file.path.split(/[\\/]/).at(-1) ?? '', file.contents]));
};
