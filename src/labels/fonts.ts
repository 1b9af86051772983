/** The two fonts of everything printed. */
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { projectFile } from '../project-files.js';

/** In a package the fonts lie beside the program. */
export const fontFile = (name: string): string => {
  const packed = projectFile('dist', 'fonts', `${name}.ttf`);
  return existsSync(packed)
    ? packed
    : createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`);
};
