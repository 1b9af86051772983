/**
 * Runs a table of cases in the form of the W3C's SRGS 1.0 implementation report: a grammar file, an input, and
 * the logical parse expected, or REJECT.
 */
import { parse as parseCsv } from 'csv-parse/sync';
import { join } from 'node:path';
import { collapse } from './characters.js';
import type { OpenGrammar } from './grammar.js';
import { openGrammarFile } from './grammar.js';
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
const activeRules = (grammar: OpenGrammar, expected: string): string[] => {
  const asked = /^\$([^[<]+)\[/u.exec(expected)?.[1];
  const rules = grammar.root === null ? [] : [grammar.root];
  if (asked !== undefined && asked !== grammar.root && grammar.publicRules.includes(asked)) rules.push(asked);
  return rules.length > 0 ? rules : [...grammar.publicRules];
};

/** Runs one case against the grammar files in `dir`. */
export const runCase = (one: SuiteCase, dir: string): SuiteResult => {
  const verdict = (passed: boolean, detail: string): SuiteResult => ({ case: one, passed, detail });
  let grammar: OpenGrammar;
  try {
    grammar = openGrammarFile(join(dir, one.file), {
      roots: [dir],
      dynamic: [],
      flat: true,
      interpretTags: false,
    });
  } catch (error) {
    if (!(error instanceof GrammarError)) throw error;
    return verdict(one.verdict === 'REJECT', `the grammar is refused: ${error.message}`);
  }
  const rules = activeRules(grammar, one.expected);
  if (rules.length === 0) return verdict(one.verdict === 'REJECT', 'the grammar has no rule to activate');
  const tokens = tokensOf(one.input);
  const found: string[] = [];
  const wanted = comparable(one.expected);
  for (const parse of grammar.derivations(tokens, { rules })) {
    if (one.verdict === 'REJECT') break;
    const shown = logicalParse(parse.derivation, grammar.library, tokens);
    found.push(shown);
    // A case that only says ACCEPT is content with any parse.
    if (wanted === '' || comparable(shown) === wanted) {
      return verdict(true, found.length === 1 ? '' : `as parse ${found.length} of an ambiguous input`);
    }
    if (found.length >= MAX_PARSES) break;
  }
  if (one.verdict === 'REJECT') {
    const accepted = grammar.parse(tokens, { rules }).length > 0;
    return verdict(!accepted, accepted ? 'the input is accepted' : '');
  }
  return verdict(false, found.length === 0 ? 'the input is not accepted' : `parsed as ${found[0]!}`);
};
