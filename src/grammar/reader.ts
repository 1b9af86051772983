/**
 * Reads the ABNF form of SRGS 1.0 into a syntax tree (sections 2 to 4, appendix D).
 *
 * One plain recursive descent over the characters. A mistake inside one declaration or rule is noted
 * and reading goes on after its semicolon, so that one run tells all mistakes.
 */
import type { GrammarProblem } from './api.js';
import { collapse, isNameChar, isNameStart, isSpace } from './characters.js';
import { GrammarError, lineAndColumn } from './problems.js';
import type {
  Example,
  Expansion,
  GrammarDocument,
  MetaDeclaration,
  Option,
  RuleDefinition,
} from './syntax.js';

const MAX_PROBLEMS = 50;
/** Deeper nesting than any person writes; keeps hostile files from exhausting the stack. */
const MAX_DEPTH = 200;
const LANGUAGE = /^[A-Za-z]{1,8}(-[A-Za-z0-9]{1,8})*$/;
const NUMBER = /^([0-9]+\.?[0-9]*|\.[0-9]+)$/;

class Mistake extends Error {
  constructor(
    readonly offset: number,
    message: string,
    readonly expected?: string,
    readonly hint?: string,
  ) {
    super(message);
  }
}

/**
 * Reads one ABNF document. `encoding` is what the bytes were decoded from.
 * Throws `GrammarError` with every mistake found.
 */
export const readAbnf = (text: string, file: string, encoding = 'UTF-8'): GrammarDocument => {
  const problems: GrammarProblem[] = [];
  const note = (mistake: Mistake): void => {
    if (problems.length >= MAX_PROBLEMS) return;
    problems.push({
      file,
      ...lineAndColumn(text, mistake.offset),
      message: mistake.message,
      ...(mistake.expected === undefined ? {} : { expected: mistake.expected }),
      ...(mistake.hint === undefined ? {} : { hint: mistake.hint }),
    });
  };

  let at = 0;
  let docComment: { start: number; end: number } | null = null;

  const peek = (): string => {
    const code = text.codePointAt(at);
    return code === undefined ? '' : String.fromCodePoint(code);
  };
  const shown = (): string => (at >= text.length ? 'the end of the file' : `"${peek()}"`);

  /** White space and comments (section 4.13). Remembers the last documentation comment. */
  const skip = (): void => {
    for (;;) {
      while (at < text.length && isSpace(text[at]!)) at++;
      if (text.startsWith('//', at)) {
        while (at < text.length && text[at] !== '\n' && text[at] !== '\r') at++;
      } else if (text.startsWith('/*', at)) {
        const end = text.indexOf('*/', at + 2);
        if (end < 0) {
          const start = at;
          at = text.length;
          throw new Mistake(start, 'This comment is never closed.', '"*/"', 'Add */ where the comment ends.');
        }
        if (text.startsWith('/**', at) && end > at + 2) docComment = { start: at + 3, end };
        at = end + 2;
      } else return;
    }
  };

  const expectChar = (char: string, why: string, hint?: string): void => {
    skip();
    if (text[at] !== char) throw new Mistake(at, `Found ${shown()} ${why}.`, `"${char}"`, hint);
    at++;
  };

  const nmtoken = (): string => {
    const start = at;
    for (let char = peek(); char !== '' && isNameChar(char); char = peek()) at += char.length;
    return text.slice(start, at);
  };

  /** `$name` without the dollar, which is already read. Names hold no `.`, `:` or `-` (section 3.1). */
  const ruleName = (): string => {
    const start = at;
    if (!isNameStart(peek())) {
      throw new Mistake(at, `Found ${shown()} after "$".`, 'a rule name', 'Rule names begin with a letter.');
    }
    const name = nmtoken();
    if (/[.:-]/u.test(name)) {
      throw new Mistake(
        start,
        `The rule name $${name} holds a ".", ":" or "-".`,
        'letters, digits and underscores',
        `Write $${name.replace(/[.:-]/gu, '_')} instead.`,
      );
    }
    return name;
  };

  const angleBracketed = (what: string): string => {
    const start = at;
    if (text[at] !== '<') throw new Mistake(at, `Found ${shown()}.`, `"<" before ${what}`);
    const end = text.indexOf('>', at);
    if (end < 0) throw new Mistake(start, `This ${what} is never closed.`, '">"');
    const content = text.slice(at + 1, end).trim();
    if (content === '' || /[\s"<{}|\\^`]/u.test(content)) {
      throw new Mistake(start, `"${collapse(content)}" is not a ${what}.`, `a ${what} without white space`);
    }
    at = end + 1;
    return content;
  };

  /** Section 4.11: quoted with double or single quotes. */
  const quoted = (): string => {
    skip();
    const quote = text[at];
    if (quote !== '"' && quote !== "'") throw new Mistake(at, `Found ${shown()}.`, 'text in quotes');
    const end = text.indexOf(quote, at + 1);
    if (end < 0) throw new Mistake(at, 'These quotes are never closed.', quote);
    const content = text.slice(at + 1, end);
    at = end + 1;
    return content;
  };

  /** Section 2.6: `{…}` up to the first `}`, or `{!{…}!}`. */
  const tag = (): { text: string; at: number } => {
    const start = at;
    const long = text.startsWith('{!{', at);
    const close = long ? '}!}' : '}';
    const from = at + (long ? 3 : 1);
    const end = text.indexOf(close, from);
    if (end < 0) {
      throw new Mistake(start, 'This tag is never closed.', `"${close}"`, `Add ${close} where the tag ends.`);
    }
    at = end + close.length;
    return { text: text.slice(from, end), at: start };
  };

  const languageCode = (): string => {
    const start = at;
    const code = nmtoken();
    if (!LANGUAGE.test(code)) {
      throw new Mistake(start, `"${code}" is not a language code.`, 'a code such as en or en-US');
    }
    return code;
  };

  /** `/n/` with n, n., .n or n.n (sections 2.4.1 and 2.5). The first slash is at the cursor. */
  const slashedNumber = (what: string): number => {
    const start = at;
    at++;
    while (at < text.length && isSpace(text[at]!)) at++;
    const from = at;
    while (at < text.length && text[at] !== '/' && !isSpace(text[at]!)) at++;
    const digits = text.slice(from, at);
    while (at < text.length && isSpace(text[at]!)) at++;
    if (text[at] !== '/' || !NUMBER.test(digits)) {
      throw new Mistake(
        start,
        `"${digits}" is not a ${what}.`,
        `a ${what} such as /2/, /0.5/ or /.5/`,
        'Use digits and at most one point, between two slashes.',
      );
    }
    at++;
    return Number(digits);
  };

  const token = (): Expansion => {
    const start = at;
    if (text[at] === '"') {
      const end = text.indexOf('"', at + 1);
      if (end < 0) throw new Mistake(at, 'These quotes are never closed.', '"\\""');
      const content = collapse(text.slice(at + 1, end));
      if (content === '') {
        throw new Mistake(at, 'A quoted token is empty.', 'at least one word', 'Write $NULL for nothing.');
      }
      at = end + 1;
      return { kind: 'token', text: content, at: start };
    }
    // Appendix D makes a bare token an Nmtoken. An apostrophe between letters is let through as well
    // ("don't"): no other reading of it is possible, and every English grammar needs it.
    for (let char = peek(); char !== ''; char = peek()) {
      const inner = (char === "'" || char === '’') && at > start;
      if (inner && isNameChar(text.slice(at + char.length, at + char.length + 1))) at += char.length;
      else if (isNameChar(char)) at += char.length;
      else break;
    }
    return { kind: 'token', text: text.slice(start, at), at: start };
  };

  const reference = (): Expansion => {
    const start = at;
    at++;
    if (text[at] === '<') {
      const uri = angleBracketed('grammar reference');
      let mediaType: string | null = null;
      if (text[at] === '~') {
        at++;
        mediaType = angleBracketed('media type');
      }
      return { kind: 'reference', reference: { kind: 'external', uri, mediaType }, at: start };
    }
    const name = ruleName();
    if (name === 'NULL' || name === 'VOID' || name === 'GARBAGE') return { kind: 'special', name, at: start };
    return { kind: 'reference', reference: { kind: 'local', name }, at: start };
  };

  /** `<n>`, `<m-n>`, `<m->`, each with an optional `/probability/` (section 2.5). */
  const repeatBounds = (): { min: number; max: number; probability: number | null } => {
    const start = at;
    at++;
    while (at < text.length && isSpace(text[at]!)) at++;
    const match = /^([0-9]+)(-([0-9]*))?/u.exec(text.slice(at, at + 40));
    if (match === null) {
      throw new Mistake(
        start,
        'This repeat is not understood.',
        '<n>, <m-n> or <m->',
        'To refer to a rule in another file write a dollar before the bracket: $<file#rule>.',
      );
    }
    at += match[0].length;
    const min = Number(match[1]);
    const max = match[2] === undefined ? min : match[3] === '' ? Infinity : Number(match[3]);
    if (max < min) {
      throw new Mistake(start, `This repeat counts down, from ${min} to ${max}.`, `<${max}-${min}>`);
    }
    skip();
    let probability: number | null = null;
    if (text[at] === '/') {
      const where = at;
      probability = slashedNumber('probability');
      if (probability > 1)
        throw new Mistake(where, `A probability is at most 1, not ${probability}.`, '0 to 1');
    }
    expectChar('>', 'inside a repeat');
    return { min, max, probability };
  };

  const element = (depth: number): Expansion => {
    const start = at;
    const char = text[at]!;
    let body: Expansion;
    if (char === '{') {
      body = { kind: 'tag', ...tag() };
    } else if (char === '(' || char === '[') {
      if (depth > MAX_DEPTH) throw new Mistake(at, `Brackets are nested more than ${MAX_DEPTH} deep.`);
      at++;
      skip();
      const close = char === '(' ? ')' : ']';
      if (char === '(' && text[at] === ')') body = { kind: 'special', name: 'NULL', at: start };
      else body = expansion(depth + 1);
      expectChar(close, `where the "${char}" opened before should be closed`);
    } else if (char === '$') {
      body = reference();
    } else if (char === '"' || isNameChar(peek())) {
      body = token();
    } else {
      throw new Mistake(
        at,
        `Found ${shown()} in a rule.`,
        'a token, a rule reference, a tag or a group',
        '*+?'.includes(char)
          ? 'Repeats are written <0->, <1-> and <0-1>.'
          : char === '}'
            ? 'A tag that holds a } is written {!{ … }!}.'
            : 'To match it as a word, put it in double quotes.',
      );
    }
    const afterBody = at;
    skip();
    if (text[at] === '!') {
      if (char === '{') throw new Mistake(at, 'A tag takes no language.', 'a token or a group before "!"');
      at++;
      const language = languageCode();
      if (
        body.kind === 'sequence' ||
        body.kind === 'choice' ||
        body.kind === 'token' ||
        body.kind === 'reference'
      )
        body = { ...body, language };
    } else at = afterBody;
    if (char === '[') body = { kind: 'repeat', body, min: 0, max: 1, probability: null, at: start };
    // Only the element just before is repeated (section 2.8); a second repeat has nothing to repeat.
    const beforeRepeat = at;
    skip();
    if (text[at] === '<') {
      body = { kind: 'repeat', body, ...repeatBounds(), at: start };
      skip();
      if (text[at] === '<') {
        throw new Mistake(
          at,
          'Two repeats stand one after the other.',
          'one repeat',
          'Put brackets round the first.',
        );
      }
    } else at = beforeRepeat;
    return body;
  };

  const alternative = (depth: number): Option => {
    skip();
    const start = at;
    let weight = 1;
    if (text[at] === '/') weight = slashedNumber('weight');
    const items: Expansion[] = [];
    for (;;) {
      skip();
      const char = text[at];
      if (char === undefined || char === '|' || char === ')' || char === ']' || char === ';') break;
      items.push(element(depth));
    }
    if (items.length === 0) {
      throw new Mistake(
        at,
        `Found ${shown()} where something to match should be.`,
        'a token or a reference',
        'Write $NULL for nothing.',
      );
    }
    return { weight, body: items.length === 1 ? items[0]! : { kind: 'sequence', items, at: start } };
  };

  const expansion = (depth: number): Expansion => {
    const start = at;
    const options = [alternative(depth)];
    skip();
    while (text[at] === '|') {
      at++;
      options.push(alternative(depth));
      skip();
    }
    const only = options[0]!;
    return options.length === 1 && only.weight === 1 ? only.body : { kind: 'choice', options, at: start };
  };

  /** To just after the next semicolon that is not inside quotes, a tag or a comment. */
  const recover = (): void => {
    while (at < text.length) {
      const char = text[at]!;
      if (char === ';') {
        at++;
        return;
      }
      if (char === '"') {
        const end = text.indexOf('"', at + 1);
        at = end < 0 ? text.length : end + 1;
      } else if (char === '{') {
        const close = text.startsWith('{!{', at) ? '}!}' : '}';
        const end = text.indexOf(close, at + 1);
        at = end < 0 ? text.length : end + close.length;
      } else if (text.startsWith('/*', at)) {
        const end = text.indexOf('*/', at + 2);
        at = end < 0 ? text.length : end + 2;
      } else if (text.startsWith('//', at)) {
        while (at < text.length && text[at] !== '\n' && text[at] !== '\r') at++;
      } else at++;
    }
  };

  let language: string | null = null;
  let mode: 'voice' | 'dtmf' | null = null;
  let root: GrammarDocument['root'] = null;
  let tagFormat: string | null = null;
  let base: string | null = null;
  const lexicons: string[] = [];
  const metas: MetaDeclaration[] = [];
  const tags: { text: string; at: number }[] = [];
  const rules = new Map<string, RuleDefinition>();
  const seen = new Set<string>();

  const once = (keyword: string, start: number): void => {
    if (seen.has(keyword)) {
      throw new Mistake(
        start,
        `There is a second "${keyword}" declaration.`,
        `at most one`,
        'Remove one of them.',
      );
    }
    seen.add(keyword);
  };

  const metaDeclaration = (kind: 'meta' | 'http-equiv'): void => {
    const name = quoted();
    skip();
    const start = at;
    if (nmtoken() !== 'is')
      throw new Mistake(start, `Found "${text.slice(start, at)}" after the name.`, '"is"');
    metas.push({ kind, name, content: quoted() });
  };

  const declaration = (keyword: string, start: number): void => {
    skip();
    switch (keyword) {
      case 'language':
        once(keyword, start);
        language = languageCode();
        break;
      case 'mode': {
        once(keyword, start);
        const where = at;
        const word = nmtoken();
        if (word !== 'voice' && word !== 'dtmf') {
          throw new Mistake(where, `"${word}" is not a mode.`, 'voice or dtmf');
        }
        mode = word;
        break;
      }
      case 'root': {
        once(keyword, start);
        const where = at;
        if (text[at] !== '$') throw new Mistake(at, `Found ${shown()}.`, 'a rule name such as $main');
        at++;
        root = { name: ruleName(), at: where };
        break;
      }
      case 'tag-format':
        once(keyword, start);
        tagFormat = angleBracketed('tag format');
        break;
      case 'base':
        once(keyword, start);
        base = angleBracketed('base');
        break;
      case 'lexicon':
        lexicons.push(angleBracketed('lexicon'));
        if (text[at] === '~') {
          at++;
          angleBracketed('media type');
        }
        break;
      case 'meta':
      case 'http-equiv':
        metaDeclaration(keyword);
        break;
      default:
        throw new Mistake(
          start,
          `"${keyword}" is not a declaration.`,
          'language, mode, root, tag-format, base, lexicon, meta, http-equiv, or a rule',
          'Rules are written "public $name = … ;".',
        );
    }
    expectChar(';', `after the ${keyword} declaration`, 'Every declaration ends with a semicolon.');
  };

  const ruleDefinition = (scope: 'public' | 'private', doc: { start: number; end: number } | null): void => {
    const start = at;
    if (text[at] !== '$')
      throw new Mistake(at, `Found ${shown()} after "${scope}".`, 'a rule name such as $main');
    at++;
    const name = ruleName();
    if (name === 'NULL' || name === 'VOID' || name === 'GARBAGE') {
      throw new Mistake(start, `$${name} is a special rule and cannot be defined.`, 'another rule name');
    }
    if (rules.has(name)) {
      throw new Mistake(
        start,
        `The rule $${name} is defined twice.`,
        'one definition',
        'Rename one, or join them with |.',
      );
    }
    expectChar('=', `after the rule name $${name}`);
    const body = expansion(0);
    expectChar(';', `in the rule $${name}`, 'Every rule ends with a semicolon.');
    rules.set(name, { name, scope, body, ...readDocComment(text, doc), at: start });
  };

  const header = (): void => {
    const match = /^#ABNF 1\.0(?: ([A-Za-z][A-Za-z0-9._-]*))?;[ \t]*(?:\r\n|\r|\n|\u0085|$)/u.exec(text);
    if (match === null) {
      const offset = /^#ABNF/u.test(text) ? 5 : 0;
      throw new Mistake(
        offset,
        'The file does not begin with the ABNF header on a line of its own.',
        '"#ABNF 1.0;" or "#ABNF 1.0 UTF-8;"',
        'Make it the first line, with nothing before it.',
      );
    }
    at = match[0].length;
  };

  try {
    header();
  } catch (error) {
    if (!(error instanceof Mistake)) throw error;
    note(error);
    throw new GrammarError(problems);
  }

  for (;;) {
    try {
      docComment = null;
      skip();
      if (at >= text.length) break;
      const start = at;
      const doc = docComment;
      const char = text[at]!;
      if (char === '$') {
        ruleDefinition('private', doc);
      } else if (char === '{') {
        const header = tag();
        if (rules.size > 0)
          throw new Mistake(start, 'A header tag comes after a rule.', 'declarations before rules');
        expectChar(';', 'after the header tag', 'Every declaration ends with a semicolon.');
        tags.push(header);
      } else {
        const word = nmtoken();
        if (word === '') {
          throw new Mistake(at, `Found ${shown()}.`, 'a declaration or a rule');
        }
        if (word === 'public' || word === 'private') {
          skip();
          ruleDefinition(word, doc);
        } else {
          if (rules.size > 0) {
            throw new Mistake(
              start,
              `"${word}" stands after a rule.`,
              'a rule',
              'Declarations come before all rules; rules begin with $, public or private.',
            );
          }
          declaration(word, start);
        }
      }
    } catch (error) {
      if (!(error instanceof Mistake)) throw error;
      note(error);
      recover();
    }
  }

  const metaBase = metas.find((meta) => meta.kind === 'meta' && meta.name.toLowerCase() === 'base');
  const document: GrammarDocument = {
    file,
    form: 'abnf',
    text,
    encoding,
    language,
    mode: mode ?? 'voice',
    root,
    tagFormat,
    base: base ?? metaBase?.content ?? null,
    lexicons,
    metas,
    tags,
    rules,
  };
  if (problems.length === 0) {
    if (document.mode === 'voice' && language === null) {
      note(
        new Mistake(
          0,
          'The grammar names no language.',
          '"language en-US;" or another code',
          'Add it after the first line (section 4.5 requires it for voice).',
        ),
      );
    }
    const named = document.root;
    if (named !== null && !rules.has(named.name)) {
      note(
        new Mistake(
          named.at,
          `The root rule $${named.name} is not defined.`,
          'the name of a rule in this file',
        ),
      );
    }
  }
  if (problems.length > 0) throw new GrammarError(problems);
  return document;
};

/** Splits a documentation comment into its prose and its `@example` lines (section 3.3). */
const readDocComment = (
  text: string,
  doc: { start: number; end: number } | null,
): { about: string; examples: Example[] } => {
  if (doc === null) return { about: '', examples: [] };
  const examples: Example[] = [];
  const body = text.slice(doc.start, doc.end);
  const parts = body.split(/(?=@[a-z])/u);
  let offset = doc.start;
  let about = '';
  for (const part of parts) {
    const prose = part.replace(/^[ \t]*\*+/gmu, ' ');
    if (part.startsWith('@example')) {
      examples.push({ text: collapse(prose.slice('@example'.length)), at: offset });
    } else if (!part.startsWith('@')) about += prose;
    offset += part.length;
  }
  return { about: collapse(about), examples };
};
