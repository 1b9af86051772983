/** Reads a grammar and every grammar it refers to, and ties references to rules (SRGS 1.0 section 2.2). */
import { readFileSync, realpathSync } from 'node:fs';
import { basename, dirname, join, relative, resolve, sep } from 'node:path';
import type { GrammarProblem, LoadOptions } from './api.js';
import { decode, EncodingError } from './encoding.js';
import { GrammarError, lineAndColumn } from './problems.js';
import { readAbnf } from './reader.js';
import type {
  Expansion,
  GrammarDocument,
  Offset,
  Reference,
  RuleDefinition,
  TokenExpansion,
} from './syntax.js';
import { isDtmfKey, wordsOfToken } from './words.js';
import { readXml } from './xml-reader.js';

/** A rule of some document, with a number for the network. */
export interface LinkedRule {
  readonly index: number;
  readonly document: GrammarDocument;
  readonly definition: RuleDefinition;
}

/** What a reference leads to. `shown` is the reference as appendix H prints it. */
export type Target =
  | { readonly kind: 'rule'; readonly rule: number; readonly name: string; readonly shown: string }
  | { readonly kind: 'dynamic'; readonly uri: string; readonly name: string; readonly shown: string };

export interface Library {
  readonly main: GrammarDocument;
  readonly documents: readonly GrammarDocument[];
  readonly rules: readonly LinkedRule[];
  readonly ruleOf: (document: GrammarDocument, name: string) => LinkedRule | undefined;
  readonly targetOf: (reference: Reference) => Target;
}

const MEDIA_TYPES: Readonly<Record<string, 'abnf' | 'xml'>> = {
  'application/srgs': 'abnf',
  // Names of the drafts, still met in older collections.
  'application/grammar': 'abnf',
  'application/srgs+xml': 'xml',
  'application/grammar+xml': 'xml',
};
const SCHEME = /^[A-Za-z][A-Za-z0-9+.-]*:/u;
const NETWORK = /^(https?|ftp|ws|wss):/iu;

/** Visits an expansion and all inside it. */
export const visitExpansion = (expansion: Expansion, visit: (expansion: Expansion) => void): void => {
  visit(expansion);
  if (expansion.kind === 'sequence') for (const item of expansion.items) visitExpansion(item, visit);
  else if (expansion.kind === 'choice')
    for (const option of expansion.options) visitExpansion(option.body, visit);
  else if (expansion.kind === 'repeat') visitExpansion(expansion.body, visit);
};

const decodePath = (path: string): string => {
  try {
    return decodeURIComponent(path);
  } catch {
    return path;
  }
};

/** Reads one document from bytes, whichever form it has. */
export const readDocument = (bytes: Uint8Array, file: string): GrammarDocument => {
  let decoded: { text: string; encoding: string };
  try {
    decoded = decode(bytes);
  } catch (error) {
    if (!(error instanceof EncodingError)) throw error;
    throw new GrammarError([
      {
        file,
        line: 1,
        column: 1,
        message: error.message,
        hint: 'Save it as UTF-8, or name its encoding in the first line.',
      },
    ]);
  }
  const read = /^\s*</u.test(decoded.text) ? readXml : readAbnf;
  return read(decoded.text, file, decoded.encoding);
};

/** Reads `main` and what it refers to. Throws `GrammarError` with all problems of all files. */
export const loadLibrary = (main: GrammarDocument, options: LoadOptions): Library => {
  const roots = options.roots.map((root) => {
    try {
      return realpathSync(resolve(root));
    } catch {
      return resolve(root);
    }
  });
  const problems: GrammarProblem[] = [];
  const documents: GrammarDocument[] = [main];
  const byPath = new Map<string, GrammarDocument | GrammarProblem[]>([[resolve(main.file), main]]);
  const rules: LinkedRule[] = [];
  const byDocument = new Map<GrammarDocument, Map<string, LinkedRule>>();
  const targets = new Map<Reference, Target>();

  const problemAt = (
    document: GrammarDocument,
    at: Offset,
    message: string,
    expected?: string,
    hint?: string,
  ): void => {
    problems.push({
      file: document.file,
      ...lineAndColumn(document.text, at),
      message,
      ...(expected === undefined ? {} : { expected }),
      ...(hint === undefined ? {} : { hint }),
    });
  };

  const register = (document: GrammarDocument): void => {
    const own = new Map<string, LinkedRule>();
    for (const definition of document.rules.values()) {
      const linked = { index: rules.length, document, definition };
      rules.push(linked);
      own.set(definition.name, linked);
    }
    byDocument.set(document, own);
  };
  register(main);

  /** The real path if the file exists under a root, else why not. */
  const allowedPath = (path: string): { path: string } | { refused: string } => {
    let real: string;
    try {
      real = realpathSync(path);
    } catch {
      return { refused: `There is no file "${basename(path)}" where this refers to.` };
    }
    const inside = roots.some((root) => {
      const way = relative(root, real);
      return way === '' || (!way.startsWith(`..${sep}`) && way !== '..' && resolve(root, way) === real);
    });
    return inside
      ? { path: real }
      : { refused: 'This refers to a file outside the folders grammars are read from.' };
  };

  const openDocument = (path: string): GrammarDocument | string => {
    let found = allowedPath(path);
    if ('refused' in found && options.flat === true) {
      const beside = allowedPath(join(dirname(main.file), basename(path)));
      if ('path' in beside) found = beside;
    }
    if ('refused' in found) return found.refused;
    const known = byPath.get(found.path) ?? byPath.get(path);
    if (known !== undefined) return Array.isArray(known) ? 'The grammar it refers to has mistakes.' : known;
    try {
      const document = readDocument(readFileSync(found.path), path);
      byPath.set(found.path, document);
      documents.push(document);
      register(document);
      return document;
    } catch (error) {
      const found = error instanceof GrammarError ? [...error.problems] : [];
      problems.push(...found);
      byPath.set(path, found);
      return error instanceof GrammarError
        ? 'The grammar it refers to has mistakes.'
        : 'The grammar it refers to cannot be read.';
    }
  };

  const link = (document: GrammarDocument, reference: Reference, at: Offset): void => {
    const own = byDocument.get(document)!;
    if (reference.kind === 'local') {
      const rule = own.get(reference.name);
      if (rule === undefined) {
        const close = [...own.keys()].find((name) => name.toLowerCase() === reference.name.toLowerCase());
        problemAt(
          document,
          at,
          `There is no rule $${reference.name} in this file.`,
          'the name of a rule',
          close === undefined
            ? 'Define it, or mend the name.'
            : `Did you mean $${close}? Names mind capitals.`,
        );
      } else {
        targets.set(reference, {
          kind: 'rule',
          rule: rule.index,
          name: reference.name,
          shown: `$${reference.name}`,
        });
      }
      return;
    }
    const based =
      document.base !== null && !SCHEME.test(reference.uri) && !reference.uri.startsWith('/')
        ? document.base.replace(/[^/]*$/u, '') + reference.uri
        : reference.uri;
    if (NETWORK.test(based) && options.flat !== true) {
      problemAt(
        document,
        at,
        'Grammars are not fetched from a network.',
        'a file',
        'Keep a copy beside this file.',
      );
      return;
    }
    if (SCHEME.test(based) && !/^file:/iu.test(based) && !NETWORK.test(based)) {
      const name = /([^/:#?]+)[/]?$/u.exec(based)?.[1] ?? based;
      if (options.dynamic !== undefined && !options.dynamic.includes(based)) {
        problemAt(document, at, `There is no host rule "${based}".`, options.dynamic.join(', ') || 'a file');
        return;
      }
      targets.set(reference, { kind: 'dynamic', uri: based, name, shown: `$<${based}>` });
      return;
    }
    const hash = based.indexOf('#');
    const pathPart = decodePath(
      (hash < 0 ? based : based.slice(0, hash)).replace(/^file:(\/\/)?/iu, '').replace(NETWORK, '.'),
    );
    const fragment = hash < 0 ? null : decodePath(based.slice(hash + 1));
    const target = pathPart === '' ? document : openDocument(resolve(dirname(document.file), pathPart));
    if (typeof target === 'string') {
      problemAt(
        document,
        at,
        target,
        'a grammar file',
        'Mend the path; it is read from this file’s own folder.',
      );
      return;
    }
    if (reference.mediaType !== null && MEDIA_TYPES[reference.mediaType] !== target.form) {
      problemAt(
        document,
        at,
        `The file is in the ${target.form === 'abnf' ? 'ABNF' : 'XML'} form, not "${reference.mediaType}".`,
        target.form === 'abnf' ? 'application/srgs' : 'application/srgs+xml',
      );
      return;
    }
    if (target.mode !== document.mode) {
      problemAt(
        document,
        at,
        `A ${document.mode} grammar refers to a ${target.mode} grammar.`,
        'the same mode',
      );
      return;
    }
    if (fragment === null && target.root === null) {
      problemAt(
        document,
        at,
        'That grammar names no root rule.',
        'a reference with #rule',
        'Add # and the name of a public rule.',
      );
      return;
    }
    const name = fragment ?? target.root!.name;
    const rule = byDocument.get(target)!.get(name);
    if (rule === undefined) {
      problemAt(document, at, `That grammar has no rule $${name}.`, 'the name of a public rule there');
    } else if (rule.definition.scope !== 'public' && target !== document && fragment !== null) {
      problemAt(
        document,
        at,
        `The rule $${name} is private to its file.`,
        'a public rule',
        `Write "public" before $${name} there.`,
      );
    } else {
      targets.set(reference, { kind: 'rule', rule: rule.index, name, shown: `$<${based}>` });
    }
  };

  const checkKeys = (document: GrammarDocument, token: TokenExpansion): void => {
    const strange = wordsOfToken(token.text, 'dtmf').find((word) => !isDtmfKey(word));
    if (strange !== undefined) {
      problemAt(
        document,
        token.at,
        `"${strange}" is not a key of a telephone.`,
        '0 to 9, star, pound, or A to D',
      );
    }
  };

  for (let i = 0; i < rules.length; i++) {
    const { document, definition } = rules[i]!;
    visitExpansion(definition.body, (expansion) => {
      if (expansion.kind === 'reference') link(document, expansion.reference, expansion.at);
      else if (expansion.kind === 'token' && document.mode === 'dtmf') checkKeys(document, expansion);
    });
  }
  if (problems.length > 0) throw new GrammarError(problems);
  return {
    main,
    documents,
    rules,
    ruleOf: (document, name) => byDocument.get(document)?.get(name),
    targetOf: (reference) => targets.get(reference)!,
  };
};
