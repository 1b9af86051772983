/**
 * No regular expression of ours can be made to run away. Each literal in the sources is judged by
 * recheck; what people send is at most 2,000 characters a hypothesis, so quadratic time is bearable
 * and anything worse is not. OWASP ASVS 5.0 V1 (encoding and sanitization).
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkSync } from 'recheck';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { projectFile } from '../../src/project-files.js';

interface Found {
  readonly where: string;
  readonly source: string;
  readonly flags: string;
}

const literalsIn = (path: string): Found[] => {
  const file = ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.Latest, true);
  const found: Found[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isRegularExpressionLiteral(node)) {
      const end = node.text.lastIndexOf('/');
      const { line } = file.getLineAndCharacterOfPosition(node.getStart());
      found.push({
        where: `${path.slice(projectFile().length)}:${line + 1}`,
        source: node.text.slice(1, end),
        flags: node.text.slice(end + 1),
      });
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
};

const sources = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name));

const literals = ['src', 'shared'].flatMap((folder) => sources(projectFile(folder)).flatMap(literalsIn));

describe('regular expressions', () => {
  it('are found', () => expect(literals.length).toBeGreaterThan(50));

  it('cannot be made to run away', { timeout: 600_000 }, () => {
    const distinct = [...new Map(literals.map((one) => [`${one.source}/${one.flags}`, one])).values()];
    const bad = distinct.flatMap(({ where, source, flags }) => {
      // The checker does not know these two flags; neither changes how long matching takes.
      const judged = checkSync(source, flags.replace(/[vd]/g, ''), { timeout: 120_000 });
      if (judged.status === 'safe') return [];
      if (judged.status === 'unknown') return [`${where} /${source}/${flags}: not judged`];
      const { complexity } = judged;
      const bearable = complexity.type === 'polynomial' && complexity.degree <= 2;
      return bearable ? [] : [`${where} /${source}/${flags}: ${complexity.summary}`];
    });
    expect(bad).toEqual([]);
  });
});
