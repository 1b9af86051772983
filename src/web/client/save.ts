/** Gives a file that the service made to the browser to keep. */
import type { z } from 'zod';
import type { labelFile } from '../../../shared/wire/labels.js';

export const save = ({ file, name, type }: z.infer<typeof labelFile>): void => {
  const bytes = Uint8Array.from(atob(file), (char) => char.charCodeAt(0));
  const address = URL.createObjectURL(new Blob([bytes], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
};
