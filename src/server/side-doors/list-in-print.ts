/** The list to buy as plain text: a line each, under its section where it has one. */

export interface PrintedLine {
  readonly section: string | null;
  /** "butter, two pounds, for Dele" */
  readonly words: string;
}

/** @param lines by section, those of one section together, as `shoppingList` gives them */
export const listInPrint = (lines: readonly PrintedLine[]): string => {
  const out: string[] = [];
  let section: string | null = null;
  for (const one of lines) {
    if (one.section !== section) out.push('', ...(one.section === null ? [] : [`${one.section}:`]));
    section = one.section;
    out.push(one.words);
  }
  return out.length === 0 ? '' : `${out.join('\n').trimStart()}\n`;
};
