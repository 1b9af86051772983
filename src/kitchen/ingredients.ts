/** What was told to be in a food and is no allergen of the tables: kept with its notes, and found again there. */
const ending = ' in it';

export const ingredientNote = (what: string): string => `${what}${ending}`;

/** The ingredient that a note is of; null for any other note. */
export const ingredientIn = (note: string): string | null =>
  note.endsWith(ending) ? note.slice(0, -ending.length) : null;
