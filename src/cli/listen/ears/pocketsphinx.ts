/** The ear that is part of the program: two recognisers by PocketSphinx, an open one and one held to the grammar. */
import { combine, type Guess } from '../combine.js';
import { openRecogniser, type Recogniser } from '../recogniser.js';
import type { Ear } from './ear.js';

/** What two recognisers make of recordings, as guesses for a turn. */
const hear = async (
  files: readonly string[],
  open: Recogniser,
  closed: Recogniser | null,
): Promise<Guess[][]> => {
  const [free, held] = await Promise.all([
    open.recognise(files),
    closed === null ? files.map(() => []) : closed.recognise(files),
  ]);
  return free.map((guesses, index) => combine(guesses, held[index] ?? []));
};

/** `grammar`: with the closed one beside the open one. @throws RecogniserMissing */
export const earByPocketSphinx = async (grammar: boolean): Promise<Ear> => {
  const open = await openRecogniser(null);
  let closed: Recogniser | null = null;
  let heldTo = '';
  return {
    get deafTo() {
      return closed?.deafTo ?? [];
    },
    hear: async (file) => (await hear([file], open, closed))[0] ?? [],
    learn: async (lists) => {
      if (!grammar) return;
      const jsgf = await lists('jsgf');
      if (jsgf === heldTo) return;
      const before = closed;
      closed = await openRecogniser(jsgf);
      heldTo = jsgf;
      await before?.close();
    },
    close: async () => void (await Promise.all([open.close(), closed?.close()])),
  };
};
