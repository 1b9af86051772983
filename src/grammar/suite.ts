/**
 * Runs a table of cases in the form of the W3C's SRGS 1.0 implementation report: a grammar file, an input, and
 * the logical parse expected, or REJECT.
 */
import { parse as parseCsv } from 'csv-parse/sync';
import { basename, dirname, join } from 'node:path';
import { collapse } from './characters.js';
import type { OpenGrammar } from './grammar.js';
import { openGrammar, openGrammarFile } from './grammar.js';
import { logicalParse } from './logical.js';
import { GrammarError } from './problems.js';

export interface SuiteCase {
  readonly file: string;
  readonly n: string;
  readonly input: string;
  readonly verdict: 'ACCEPT' | 'REJECT';
  readonly expected: string;
  readonly note: string;
}

export interface SuiteResult {
  readonly case: SuiteCase;
  readonly passed: boolean;
  /** Why it failed, or, when it passed, what was special about it. */
  readonly detail: string;
}

/** Reads a table with the columns file, n, input, verdict, expected_parse and note. */
export const readSuite = (table: string): SuiteCase[] => {
  const rows: Record<string, string>[] = parseCsv(table, {
    columns: true,
    delimiter: '\t',
    quote: null,
    relax_column_count: true,
    skip_empty_lines: true,
    bom: true,
  });
  return rows.map((row) => ({
    file: row['file'] ?? '',
    n: row['n'] ?? '',
    input: row['input'] ?? '',
    verdict: row['verdict'] === 'REJECT' ? 'REJECT' : 'ACCEPT',
    expected: row['expected_parse'] ?? '',
    note: row['note'] ?? '',
  }));
};

/** At most this many parses of an ambiguous input are compared: any of them is right (section 2 of appendix H). */
const MAX_PARSES = 1000;

/**
 * What is compared: how much speech $GARBAGE takes is the processor's affair, so it is left out, and white space
 * between entities means nothing.
 */
const comparable = (parse: string): string =>
  parse
    .trim()
    .replace(/,\s+(?=["${])/gu, ',')
    .replace(/\$GARBAGE(\[("[^"]*",?)*\])?/gu, '')
    .replace(/,{2,}/gu, ',')
    .replace(/\[,/gu, '[')
    .replace(/,\]/gu, ']');

const tokensOf = (input: string): string[] => {
  const text = collapse(input.replace(/"/gu, ' '));
  return text === '' ? [] : text.split(' ');
};

/** The root, and beside it the public rule the expected parse begins with: some cases activate several rules. */
const activeRules = (grammar: OpenGrammar, asked: string | null): string[] => {
  const rules = grammar.root === null ? [] : [grammar.root];
  if (asked !== null && asked !== grammar.root && grammar.publicRules.includes(asked)) rules.push(asked);
  return rules.length > 0 ? rules : [...grammar.publicRules];
};

/**
 * Some cases activate grammars beside the case's own: those it refers to, by their root or a public rule. Then the
 * expected parse begins with the reference, or with a rule that only the other grammar has.
 */
const otherGrammars = (grammar: OpenGrammar, asked: string | null, head: string): OpenGrammar[] => {
  const { main, documents } = grammar.library;
  const [path] = head.startsWith('$<') ? head.slice(2, -1).split('#') : [];
  return documents
    .filter((document) => document !== main)
    .filter((document) =>
      path === undefined
        ? asked !== null && !main.rules.has(asked) && document.rules.has(asked)
        : basename(document.file) === basename(path),
    )
    .map((document) => openGrammar(document, { ...LOADING, roots: [dirname(main.file)] }));
};

const LOADING = { dynamic: [], flat: true, interpretTags: false };

/** Runs one case against the grammar files in `dir`. */
export const runCase = (one: SuiteCase, dir: string): SuiteResult => {
  const verdict = (passed: boolean, detail: string): SuiteResult => ({ case: one, passed, detail });
  let grammar: OpenGrammar;
  try {
    grammar = openGrammarFile(join(dir, one.file), {
      ...LOADING,
      roots: [dir],
    });
  } catch (error) {
    if (!(error instanceof GrammarError)) throw error;
    return verdict(one.verdict === 'REJECT', `the grammar is refused: ${error.message}`);
  }
  const tokens = tokensOf(one.input);
  if (one.verdict === 'REJECT') {
    const rules = activeRules(grammar, null);
    const accepted = rules.length > 0 && grammar.parse(tokens, { rules }).length > 0;
    return verdict(!accepted, accepted ? 'the input is accepted' : '');
  }
  const head = /^\$(<[^>]*>|[^[]*)/u.exec(one.expected)?.[0] ?? '';
  const asked = head.startsWith('$<') ? (/#([^>]*)>$/u.exec(head)?.[1] ?? null) : head.slice(1) || null;
  const wanted = comparable(one.expected);
  let first: string | null = null;
  let count = 0;
  for (const active of [grammar, ...otherGrammars(grammar, asked, head)]) {
    const rules = activeRules(active, asked);
    if (rules.length === 0) continue;
    for (const parse of active.derivations(tokens, { rules })) {
      const own = logicalParse(parse.derivation, active.library, tokens);
      const shown = active === grammar || !head.startsWith('$<') ? own : own.replace(/^\$[^[]*/u, () => head);
      first ??= shown;
      // A case that only says ACCEPT is content with any parse.
      if (wanted === '' || comparable(shown) === wanted) {
        return verdict(true, count === 0 ? '' : `as parse ${count + 1} of an ambiguous input`);
      }
      if (++count >= MAX_PARSES) break;
    }
  }
  return verdict(false, first === null ? 'the input is not accepted' : `parsed as ${first}`);
};
