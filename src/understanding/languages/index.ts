import type { WordForms } from './api.js';
import { english } from './english.js';
import { spanish } from './spanish/index.js';

export type { SpellingLists, WordForms } from './api.js';

const known: Readonly<Record<string, WordForms>> = { en: english, es: spanish };

/** How words are built in a language; for one nobody described, as in English. */
export const wordFormsOf = (language: string): WordForms => known[language] ?? english;
