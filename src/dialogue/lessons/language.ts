/** Lessons are told by language, not by country. */
export const languageOf = (locale: string): string => locale.split('-')[0]!.toLowerCase();
