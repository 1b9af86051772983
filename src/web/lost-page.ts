/** The page at a wrong address: it says so and leads back. Needs no script and holds nothing private. */
import { readFileSync } from 'node:fs';
import { FluentBundle, FluentResource } from '@fluent/bundle';
import { projectFile } from '../project-files.js';

const languages = ['en', 'es'] as const;

/** The first language of an Accept-Language header (RFC 9110, 12.5.4) that the pages speak; weights are not read. */
const languageOf = (accepted: string | undefined): (typeof languages)[number] =>
  (accepted ?? '')
    .split(',')
    .map((part) => part.trim().slice(0, 2).toLowerCase())
    .flatMap((wanted) => languages.find((language) => language === wanted) ?? [])[0] ?? 'en';

const made = new Map<string, string>();

const make = (language: string): string => {
  const words = new FluentBundle(language, { useIsolating: false });
  words.addResource(
    new FluentResource(readFileSync(projectFile('grammars', language, 'pages', 'lost.ftl'), 'utf8')),
  );
  const t = (id: string): string => {
    const pattern = words.getMessage(id)?.value ?? null;
    return pattern === null ? id : words.formatPattern(pattern);
  };
  return `<!doctype html>
<html lang="${language}">
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <meta name="color-scheme" content="light dark" />
    <title>${t('lost-title')} — Tellshelf</title>
    <link rel="stylesheet" href="/style.css" />
  </head>
  <body>
    <main id="main">
      <h1>${t('lost-heading')}</h1>
      <ul>
        <li><a href="/">${t('lost-board')}</a></li>
        <li><a href="/home">${t('lost-home')}</a></li>
        <li><a href="/labels">${t('lost-labels')}</a></li>
        <li><a href="/charts">${t('lost-charts')}</a></li>
      </ul>
    </main>
  </body>
</html>
`;
};

/** @param accepted the request's Accept-Language header */
export const lostPage = (accepted: string | undefined): string => {
  const language = languageOf(accepted);
  const page = made.get(language) ?? make(language);
  made.set(language, page);
  return page;
};
