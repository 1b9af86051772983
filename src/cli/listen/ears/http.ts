/** A recogniser behind an address: the sound is posted as `audio/wav`, guesses come back as text or JSON. */
import { readFile } from 'node:fs/promises';
import type { Guess } from '../combine.js';
import { EAR_SECONDS, EarFault, type Ear } from './ear.js';
import { asText, LONGEST_ANSWER, readGuesses, readJsonGuesses } from './guesses.js';

const textOf = async (response: Response): Promise<string> => {
  const parts: Uint8Array[] = [];
  let length = 0;
  const reader = response.body?.getReader();
  for (let part = await reader?.read(); part?.value !== undefined; part = await reader?.read()) {
    length += part.value.length;
    if (length > LONGEST_ANSWER) {
      await reader?.cancel();
      throw new EarFault("The recogniser's answer is too long to be a list of guesses.");
    }
    parts.push(part.value);
  }
  return asText(parts);
};

/** What something on the way says in its place, a page to sign in at for instance, is not what was heard. */
const readerFor = (response: Response): ((answer: string) => Guess[]) => {
  const [type = ''] = (response.headers.get('content-type') ?? 'text/plain').toLowerCase().split(';');
  if (/[/+]json$/.test(type.trim())) return readJsonGuesses;
  if (type.trim() === 'text/plain') return readGuesses;
  throw new EarFault("The recogniser's answer is neither text/plain nor JSON.");
};

export const earByHttp = (url: string, seconds = EAR_SECONDS): Ear => ({
  deafTo: [],
  hear: async (file) => {
    try {
      const response = await fetch(url, {
        method: 'POST',
        headers: { 'content-type': 'audio/wav', accept: 'text/plain, application/json' },
        body: await readFile(file),
        // Sound of somebody's kitchen goes where it was told to go, and nowhere else.
        redirect: 'error',
        signal: AbortSignal.timeout(seconds * 1000),
      });
      const answer = await textOf(response);
      if (!response.ok) throw new EarFault(`The recogniser answered ${response.status}.`);
      return readerFor(response)(answer);
    } catch (error) {
      if (error instanceof EarFault) throw error;
      if ((error as Error).name === 'TimeoutError')
        throw new EarFault(`The recogniser did not answer within ${seconds} seconds.`);
      throw new EarFault('The recogniser cannot be reached.');
    }
  },
  // It asks for the names itself: `GET /v1/kitchen/biasing`.
  learn: () => Promise.resolve(),
  close: () => Promise.resolve(),
});
