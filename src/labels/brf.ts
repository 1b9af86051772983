/**
 * Braille-ready files for an embosser: ASCII Braille, fixed lines and pages, form feeds between pages.
 */

/**
 * North American ASCII Braille: the character for each six-dot cell, U+2800 to U+283F.
 * Checked in tests against liblouis' own default table.
 */
const ascii = ' A1B\'K2L@CIF/MSP"E3H9O6R^DJG>NTQ,*5<-U8V.%[$+X!&;:4\\0Z7(_?W]#Y)=';

const toAscii = (cells: string): string =>
  [...cells].map((cell) => ascii[(cell.codePointAt(0) ?? 0x2800) - 0x2800] ?? ' ').join('');

/**
 * Cells broken into lines at spaces; a word longer than the line is broken where it must be.
 *
 * @throws RangeError when a line holds not even one cell: nothing could ever be put on it.
 */
export const wrapCells = (cells: string, width: number): string[] => {
  if (!(width >= 1)) throw new RangeError('A line holds at least one Braille cell.');
  const lines: string[] = [];
  let line = '';
  for (const word of cells.split(/[\u2800 ]+/).filter((part) => part !== '')) {
    let rest = word;
    if (line !== '' && line.length + 1 + rest.length > width) {
      lines.push(line);
      line = '';
    }
    while (rest.length > width) {
      lines.push(rest.slice(0, width));
      rest = rest.slice(width);
    }
    line = line === '' ? rest : `${line}\u2800${rest}`;
  }
  if (line !== '') lines.push(line);
  return lines;
};

export interface BrfPage {
  /** Cells in a line. Common practice: 40. */
  readonly cells: number;
  /** Lines in a page. Common practice: 25. */
  readonly lines: number;
}

/**
 * A BRF file: each label's lines kept together on one page where they fit, a blank line between labels.
 *
 * @param labels each a list of Unicode Braille strings, one a line of the label
 */
export const brfFile = (labels: readonly (readonly string[])[], page: BrfPage): string => {
  const pages: string[][] = [[]];
  for (const label of labels) {
    const lines = label.flatMap((text) => wrapCells(text, page.cells)).map(toAscii);
    if (lines.length === 0) continue;
    let current = pages.at(-1) ?? [];
    const gap = current.length === 0 ? 0 : 1;
    if (current.length + gap + lines.length > page.lines && current.length > 0) {
      current = [];
      pages.push(current);
    } else if (gap === 1) current.push('');
    for (const line of lines) {
      if (current.length === page.lines) {
        current = [];
        pages.push(current);
      }
      current.push(line);
    }
  }
  return pages.map((lines) => lines.map((line) => `${line}\r\n`).join('')).join('\f');
};
