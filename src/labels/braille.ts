/**
 * Unified English Braille by liblouis, through Debian's `lou_translate` (package liblouis-bin).
 * Where the program is missing, labels are printed without Braille and the caller is told so.
 */
import { spawn } from 'node:child_process';

export type BrailleGrade = 1 | 2;

/** Thrown when `lou_translate` is not installed or refuses its table. */
export class BrailleUnavailable extends Error {
  override readonly name = 'BrailleUnavailable';
}

const tables: Record<BrailleGrade, string> = { 1: 'en-ueb-g1.ctb', 2: 'en-ueb-g2.ctb' };

/** Fractions as single characters make true Braille fractions; "1/2" would be two numbers and a slash. */
const fractions: readonly (readonly [RegExp, string])[] = [
  [/(?<![\d/])1\/2(?![\d/])/g, '½'],
  [/(?<![\d/])1\/4(?![\d/])/g, '¼'],
  [/(?<![\d/])3\/4(?![\d/])/g, '¾'],
  [/(?<![\d/])1\/3(?![\d/])/g, '⅓'],
  [/(?<![\d/])2\/3(?![\d/])/g, '⅔'],
];

const oneLine = (text: string): string =>
  fractions
    .reduce((line, [pattern, sign]) => line.replace(pattern, sign), text)
    .replace(/[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]+/gu, ' ')
    .trim();

const run = (
  direction: '--forward' | '--backward',
  table: string,
  lines: readonly string[],
): Promise<string[]> =>
  new Promise((resolve, reject) => {
    const child = spawn('lou_translate', [direction, table], {
      stdio: ['pipe', 'pipe', 'pipe'],
      env: { ...process.env, LC_ALL: 'C.UTF-8' },
    });
    let out = '';
    let complaint = '';
    child.stdout.setEncoding('utf8').on('data', (chunk: string) => (out += chunk));
    child.stderr.setEncoding('utf8').on('data', (chunk: string) => (complaint += chunk));
    child.on('error', (error) =>
      reject(new BrailleUnavailable(`lou_translate cannot be run: ${error.message}`)),
    );
    child.on('close', (code) => {
      const answers = out.replace(/\n$/, '').split('\n');
      if (code !== 0 || answers.length !== lines.length)
        reject(
          new BrailleUnavailable(
            complaint.trim() || `lou_translate gave ${answers.length} lines for ${lines.length}`,
          ),
        );
      else resolve(answers);
    });
    child.stdin.on('error', () => undefined);
    child.stdin.end(lines.map((line) => `${line}\n`).join(''));
  });

/** True for cells of six dots. Letters the English table does not hold come out as eight-dot escapes. */
const sixDots = (cells: string): boolean => /^[\u2800-\u283f]*$/u.test(cells);

/**
 * Each text as Unicode Braille cells (U+2800 to U+283F), one string a text;
 * null for a text with letters that the English table does not hold.
 *
 * @throws BrailleUnavailable when liblouis is not installed.
 */
export const toBraille = async (
  texts: readonly string[],
  grade: BrailleGrade,
): Promise<(string | null)[]> => {
  // lou_translate drops empty lines' answers, so they are not sent.
  const lines = texts.map(oneLine);
  const asked = lines.filter((line) => line !== '');
  if (asked.length === 0) return lines;
  const answers = (await run('--forward', `unicode.dis,${tables[grade]}`, asked)).values();
  return lines.map((line) => {
    const cells = line === '' ? '' : (answers.next().value ?? '');
    return sixDots(cells) ? cells : null;
  });
};

/** Cells back to print, for checking what was made. */
export const fromBraille = async (cells: readonly string[], grade: BrailleGrade): Promise<string[]> =>
  run('--backward', `unicode.dis,${tables[grade]}`, cells);

/** The dots (1 to 6) of one Unicode Braille cell. */
export const dotsOf = (cell: string): number[] => {
  const bits = (cell.codePointAt(0) ?? 0x2800) - 0x2800;
  return [1, 2, 3, 4, 5, 6].filter((dot) => (bits >> (dot - 1)) & 1);
};
