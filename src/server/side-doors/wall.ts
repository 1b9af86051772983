/** The page for a tablet on the wall: no script and nothing to press. */
import { htmlText } from '../html.js';

export interface WallSection {
  readonly heading: string;
  readonly lines: readonly string[];
  readonly none: string;
}

const section = ({ heading, lines, none }: WallSection): string =>
  `<section><h2>${htmlText(heading)}</h2>${
    lines.length === 0
      ? `<p>${htmlText(none)}</p>`
      : `<ul>${lines.map((line) => `<li>${htmlText(line)}</li>`).join('')}</ul>`
  }</section>`;

/**
 * Everything that came from a household is escaped. `every`: seconds after which it is read anew; null where nobody
 * asked for that, for a page that changes under somebody who reads it is a barrier (WCAG 2.2.1).
 */
export const wallPage = (
  household: string,
  locale: string,
  sections: readonly WallSection[],
  foot: readonly string[],
  every: number | null,
): string => `<!doctype html>
<html lang="${htmlText(locale)}">
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <meta name="color-scheme" content="light dark" />
${every === null ? '' : `    <meta http-equiv="refresh" content="${every}" />\n`}    <title>${htmlText(household)}</title>
    <link rel="stylesheet" href="/style.css" />
  </head>
  <body>
    <main>
      <h1>${htmlText(household)}</h1>
      ${sections.map(section).join('\n      ')}
      <footer>${foot.map((line) => `<p>${htmlText(line)}</p>`).join('')}</footer>
    </main>
  </body>
</html>
`;
