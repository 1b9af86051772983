/** The pages' words: the same in every language, all used, none left in code, and heard as they are meant. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse, type Entry } from '@fluent/syntax';
import ts from 'typescript';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { projectFile } from '../../src/project-files.js';
import { say, startService, type Service } from '../support/service.js';

const languages = ['en', 'es'] as const;
type Language = (typeof languages)[number];

/** Messages by name, each with the names of what goes into it. */
const messagesOf = (language: Language): ReadonlyMap<string, readonly string[]> => {
  const folder = projectFile('grammars', language, 'pages');
  const messages = new Map<string, readonly string[]>();
  const take = (entry: Entry): void => {
    if (entry.type === 'Junk') throw new Error(`${language}: ${entry.content}`);
    if (entry.type !== 'Message') return;
    expect(messages.has(entry.id.name), `${language}: ${entry.id.name} twice`).toBe(false);
    const names = new Set<string>();
    JSON.stringify(entry, (_key, value: unknown) => {
      const node = value as { type?: string; id?: { name: string } } | null;
      if (node?.type === 'VariableReference' && node.id) names.add(node.id.name);
      return value;
    });
    messages.set(entry.id.name, [...names].sort());
  };
  for (const file of readdirSync(folder))
    for (const entry of parse(readFileSync(join(folder, file), 'utf8'), {}).body) take(entry);
  return messages;
};

const pages = projectFile('src', 'web');
const sources = (readdirSync(pages, { recursive: true }) as string[])
  .filter((file) => /\.tsx?$/.test(file) && !file.endsWith('.d.ts'))
  .map((file) => ({ file, text: readFileSync(join(pages, file), 'utf8') }));

describe('messages of the pages', () => {
  it('are the same in every language, with the same to put in', () => {
    const [english, ...others] = languages.map(messagesOf);
    for (const other of others) expect([...other].sort()).toEqual([...(english ?? [])].sort());
  });

  it('are all used, and none is asked for that is not there', () => {
    const known = messagesOf('en');
    const code = sources.map(({ text }) => text).join('\n');
    const exact = new Set([...code.matchAll(/'([a-z]+(?:-[\w]+)*)'/g)].map((found) => found[1] ?? ''));
    const begun = [...code.matchAll(/\bt\(\s*`([\w-]+)\$\{/g)].map((found) => found[1] ?? '');
    const asked = [...code.matchAll(/\bt\(\s*'([\w-]+)'/g)].map((found) => found[1] ?? '');
    expect(asked.filter((id) => !known.has(id))).toEqual([]);
    for (const start of begun)
      expect(
        [...known.keys()].some((id) => id.startsWith(start)),
        start,
      ).toBe(true);
    const unused = [...known.keys()].filter(
      (id) => !exact.has(id) && !begun.some((start) => id.startsWith(start)),
    );
    expect(unused).toEqual([]);
  });

  it('has one for every deed of the journal', () => {
    const model = readFileSync(projectFile('src', 'kitchen', 'model.ts'), 'utf8');
    const verbs = /export type Verb =([^;]*);/.exec(model)?.[1]?.matchAll(/\| '([^']+)'/g) ?? [];
    const names = [...verbs].map((found) => `deed-${(found[1] ?? '').replaceAll(' ', '-')}`);
    expect(names.length).toBeGreaterThan(20);
    expect(names.filter((name) => !messagesOf('en').has(name))).toEqual([]);
  });
});

describe('the code of the pages', () => {
  /** Attributes that somebody reads or hears. */
  const read = new Set([
    'label',
    'hint',
    'placeholder',
    'aria-label',
    'title',
    'alt',
    'empty',
    'aria-valuetext',
  ]);
  /** Names that are the same in every language. */
  const sameEverywhere = /^(Español|English)/;

  /** A string that begins as a sentence does, or ends as one. */
  const sentence = (node: ts.Node): string => {
    const text = ts.isStringLiteral(node) ? node.text : ts.isTemplateExpression(node) ? node.getText() : '';
    return /^`?\p{Lu}.* \p{Ll}|\p{L}[.!?]`?$/u.test(text) ? text : '';
  };

  it('holds no words of its own', () => {
    const found: string[] = [];
    for (const { file, text } of sources.filter((source) => source.file.endsWith('.tsx'))) {
      const tree = ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true, ts.ScriptKind.TSX);
      const look = (node: ts.Node): void => {
        const words = ts.isJsxText(node)
          ? node.text
          : ts.isJsxAttribute(node) &&
              read.has(node.name.getText()) &&
              node.initializer !== undefined &&
              ts.isStringLiteral(node.initializer)
            ? node.initializer.text
            : sentence(node);
        const isCode =
          ts.isStringLiteral(node) &&
          (ts.isImportDeclaration(node.parent) ||
            (ts.isJsxAttribute(node.parent) && !read.has(node.parent.name.getText())));
        if (!isCode && /\p{L}{2}/u.test(words) && !sameEverywhere.test(words.trim()))
          found.push(`${file}: ${words.trim()}`);
        ts.forEachChild(node, look);
      };
      look(tree);
    }
    expect(found).toEqual([]);
  });
});

describe.each([
  ['en', 'en-US'],
  ['es', 'es-MX'],
] as const)('what a button says for its person (%s)', (language, locale) => {
  let service: Service;
  beforeAll(async () => {
    service = await startService();
  });
  afterAll(() => service.close());
  const words = (id: string): string => {
    const folder = projectFile('grammars', language, 'pages');
    for (const file of readdirSync(folder))
      for (const entry of parse(readFileSync(join(folder, file), 'utf8'), {}).body)
        if (entry.type === 'Message' && entry.id.name === id)
          return (
            entry.value?.elements.map((each) => ('value' in each ? String(each.value) : '')).join('') ?? ''
          );
    throw new Error(`no ${id}`);
  };

  it.each([
    ['say-undo', 'undo'],
    ['say-slower', 'slower'],
    ['say-faster', 'faster'],
    ['say-shorter', 'shorter'],
    ['say-longer', 'longer'],
    ['say-what-is-this', 'whats-this'],
    ['say-repeat', 'repeat'],
    ['say-next', 'next'],
    ['say-back', 'back'],
    ['say-yes', 'yes'],
    ['say-no', 'no'],
  ])('%s is heard as %s', async (id, intent) => {
    const reply = await say(service, words(id), { locale });
    expect(reply.understood.intents).toEqual([intent]);
  });
});
