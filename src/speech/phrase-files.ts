/**
 * Reads the phrase files of a language and checks them whole, so that a slip of whoever
 * edited one is told with its file, line and message instead of being left out in silence.
 */
import { readdirSync, readFileSync, existsSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { FluentResource } from '@fluent/bundle';
import { parse, Visitor, type Attribute, type Message, type Resource } from '@fluent/syntax';
import type * as Ftl from '@fluent/syntax';
import { prepared } from '../prepared.js';

export interface PhraseProblem {
  readonly file: string;
  /** 1-based. */
  readonly line: number;
  /** The message, or null when it is not even one. */
  readonly phrase: string | null;
  readonly problem: string;
}

/** Phrase files that cannot be used, with every problem in them. */
export class PhraseFilesError extends Error {
  override readonly name = 'PhraseFilesError';
  constructor(readonly problems: readonly PhraseProblem[]) {
    super(
      `${problems.length} problem(s) in the phrase files:\n` +
        problems.map((p) => `${p.file}:${p.line} ${p.phrase ?? ''} ${p.problem}`).join('\n'),
    );
  }
}

/** What one pattern (a message's value or one attribute) takes. */
export interface Wants {
  /** Argument names; true when the phrase may do without. */
  readonly args: ReadonlyMap<string, boolean>;
  /** Words an argument can be chosen by. */
  readonly keys: ReadonlyMap<string, ReadonlySet<string>>;
}

/** One message with what each of its patterns takes; `''` is the value. */
export interface PhraseShape {
  readonly file: string;
  readonly patterns: ReadonlyMap<string, Wants>;
}

interface Found {
  readonly args: Map<string, boolean>;
  readonly keys: Map<string, Set<string>>;
  readonly messages: string[];
  readonly terms: string[];
  readonly functions: string[];
}

class Finder extends Visitor {
  readonly found: Found = { args: new Map(), keys: new Map(), messages: [], terms: [], functions: [] };

  override visitSelectExpression(node: Ftl.SelectExpression): void {
    if (node.selector.type === 'VariableReference') {
      const name = (node.selector as Ftl.VariableReference).id.name;
      const keys = this.found.keys.get(name) ?? new Set<string>();
      for (const variant of node.variants)
        if (variant.key.type === 'Identifier') keys.add((variant.key as Ftl.Identifier).name);
      this.found.keys.set(name, keys);
    }
    this.genericVisit(node);
  }
  override visitVariableReference(node: Ftl.VariableReference): void {
    if (!this.found.args.has(node.id.name)) this.found.args.set(node.id.name, false);
  }
  override visitMessageReference(node: Ftl.MessageReference): void {
    this.found.messages.push(node.id.name);
  }
  override visitTermReference(node: Ftl.TermReference): void {
    this.found.terms.push(node.id.name);
    this.genericVisit(node);
  }
  override visitFunctionReference(node: Ftl.FunctionReference): void {
    this.found.functions.push(node.id.name);
    this.genericVisit(node);
  }
}

const lineAt = (text: string, offset: number): number => text.slice(0, offset).split('\n').length;
const startOf = (node: { span?: { start: number } }): number => node.span?.start ?? 0;

interface Read {
  readonly file: string;
  readonly text: string;
  readonly resource: Resource;
}

const ftlIn = (folder: string): string[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.ftl'))
    .sort();

const readFolder = (folder: string): Read[] =>
  ftlIn(folder).map((name) => {
    const text = readFileSync(join(folder, name), 'utf8');
    return { file: name, text, resource: parse(text, { withSpans: true }) };
  });

/** The files of a language, checked: plain data. */
export interface PhraseFiles {
  /** In the order to be added; a later layer replaces messages of an earlier. Each is what a `FluentResource` holds. */
  readonly layers: readonly FluentResource['body'][];
  readonly shapes: ReadonlyMap<string, PhraseShape>;
}

const checkPhraseFiles = (folders: readonly string[], functions: ReadonlySet<string>): PhraseFiles => {
  const problems: PhraseProblem[] = [];
  const layers: FluentResource['body'][] = [];
  const entries = new Map<string, { read: Read; message: Message }>();
  const terms = new Set<string>();
  const all: { read: Read; id: string; where: string; found: Found; line: number }[] = [];

  for (const folder of folders.filter((path) => existsSync(path))) {
    const here = new Map<string, string>();
    const reads = readFolder(folder);
    layers.push(new FluentResource(reads.map((read) => read.text).join('\n')).body);
    for (const read of reads) {
      const complain = (node: { span?: { start: number } }, phrase: string | null, problem: string): void => {
        problems.push({ file: read.file, line: lineAt(read.text, startOf(node)), phrase, problem });
      };
      for (const entry of read.resource.body) {
        if (entry.type === 'Junk') {
          const junk = entry as Ftl.Junk;
          const id = /^-?[a-zA-Z][\w-]*/.exec(junk.content)?.[0] ?? null;
          const notes = junk.annotations as { message?: string; span?: { start: number } }[];
          const why = notes.map((note) => note.message).join('; ') || 'cannot be read';
          complain(notes[0]?.span ? { span: notes[0].span } : junk, id, why);
          continue;
        }
        if (entry.type !== 'Message' && entry.type !== 'Term') continue;
        const message = entry as Message;
        const id = (entry.type === 'Term' ? '-' : '') + message.id.name;
        const earlier = here.get(id);
        if (earlier !== undefined) complain(message, id, `is already in ${earlier}`);
        here.set(id, read.file);
        if (entry.type === 'Term') terms.add(message.id.name);
        else entries.set(id, { read, message });
        if (message.value === null) complain(message, id, 'has no value of its own, only attributes');
        const patterns: [string, Ftl.Pattern | null][] = [
          ['', message.value],
          ...message.attributes.map((a: Attribute): [string, Ftl.Pattern] => [a.id.name, a.value]),
        ];
        for (const [where, pattern] of patterns) {
          if (pattern === null) continue;
          const finder = new Finder();
          finder.visit(pattern);
          all.push({ read, id, where, found: finder.found, line: lineAt(read.text, startOf(message)) });
        }
      }
    }
  }

  const founds = new Map<string, Found>();
  for (const one of all) founds.set(`${one.id}|${one.where}`, one.found);
  const wantsOf = (id: string, where: string, seen: Set<string>): Wants => {
    const key = `${id}|${where}`;
    const found = founds.get(key);
    const args = new Map<string, boolean>();
    const keys = new Map<string, Set<string>>();
    if (found === undefined || seen.has(key)) return { args, keys };
    seen.add(key);
    const parts = [found, ...found.messages.map((ref) => wantsOf(ref, '', seen))];
    for (const part of parts) {
      for (const name of part.args.keys()) args.set(name, false);
      for (const [name, words] of part.keys) keys.set(name, new Set([...(keys.get(name) ?? []), ...words]));
    }
    for (const name of args.keys()) args.set(name, keys.get(name)?.has('none') ?? false);
    return { args, keys };
  };

  for (const { read, id, found, line } of all) {
    const complain = (problem: string): void => {
      problems.push({ file: read.file, line, phrase: id, problem });
    };
    for (const name of found.messages)
      if (!entries.has(name)) complain(`speaks of ${name}, which is nowhere`);
    for (const name of found.terms) if (!terms.has(name)) complain(`speaks of -${name}, which is nowhere`);
    for (const name of found.functions)
      if (!functions.has(name)) complain(`calls ${name}, which is not one of ${[...functions].join(', ')}`);
  }
  if (layers.length === 0)
    problems.push({ file: folders.join(', '), line: 1, phrase: null, problem: 'no phrase files' });
  if (problems.length > 0) throw new PhraseFilesError(problems);

  const shapes = new Map<string, PhraseShape>();
  for (const [id, { read, message }] of entries) {
    const patterns = new Map<string, Wants>();
    for (const where of ['', ...message.attributes.map((a) => a.id.name)])
      patterns.set(where, wantsOf(id, where, new Set()));
    shapes.set(id, { file: read.file, patterns });
  }
  return { layers, shapes };
};

/**
 * Reads `*.ftl` of each folder that exists, in order: the language's, then its region's, which
 * replaces single messages. Within one folder an id may stand once only.
 *
 * @param functions names that phrases may call
 * @throws PhraseFilesError with every problem found
 */
export const readPhraseFiles = (folders: readonly string[], functions: ReadonlySet<string>): PhraseFiles => {
  const there = folders.filter((folder) => existsSync(folder));
  const files = there.flatMap((folder) => ftlIn(folder).map((file) => join(folder, file)));
  const name = `phrases-${there.map((folder) => basename(dirname(folder))).join('+')}`;
  return prepared(name, files, () => checkPhraseFiles(folders, functions));
};
