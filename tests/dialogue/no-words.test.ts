/**
 * What was said is read in `src/understanding`, by lists of the language's folder. `src/dialogue` is given what it
 * comes to, and holds no words of any language: neither regular expressions over words nor the sentence itself.
 * What is left is counted here by file; a count may fall, and a file that is not listed has none.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { projectFile } from '../../src/project-files.js';

/** Two letters in a row, beside classes and escapes: a pattern over words, not over figures or marks. */
const holdsWords = (literal: string): boolean =>
  /[a-z]{2}/i.test(
    literal
      .slice(0, literal.lastIndexOf('/'))
      .replace(/\\p\{\w+\}/g, '')
      .replace(/\\\w/g, ''),
  );

const isReading = (node: ts.Node): boolean =>
  (ts.isRegularExpressionLiteral(node) && holdsWords(node.text)) ||
  (ts.isNewExpression(node) && node.expression.getText() === 'RegExp') ||
  (ts.isPropertyAccessExpression(node) && node.name.text === 'heard') ||
  (ts.isBindingElement(node) && node.name.getText() === 'heard');

const readingsIn = (path: string): number => {
  const file = ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.Latest, true);
  let count = 0;
  const visit = (node: ts.Node): void => {
    if (isReading(node)) count += 1;
    ts.forEachChild(node, visit);
  };
  visit(file);
  return count;
};

const room = projectFile('src', 'dialogue');
const counted = (): Record<string, number> =>
  Object.fromEntries(
    readdirSync(room, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
      .map((entry) => join(entry.parentPath, entry.name))
      .map((path) => [relative(room, path), readingsIn(path)] as const)
      .filter(([, count]) => count > 0)
      .sort(([a], [b]) => a.localeCompare(b)),
  );

/** As many as there are now. */
const left: Record<string, number> = {
  'allergens/allergens.ts': 1,
  'decide.ts': 7,
  'describe/buttons.ts': 1,
  'describe/guidance.ts': 1,
  'describe/place.ts': 1,
  'devices/guests.ts': 1,
  'find/find.ts': 1,
  'find/whats-this.ts': 4,
  'guidance/guidance.ts': 2,
  'history/history.ts': 1,
  'lessons/files.ts': 1,
  'markers/dots.ts': 5,
  'moves.ts': 2,
  'people/people.ts': 4,
  'put-away/amend.ts': 1,
  'put-away/known.ts': 4,
  'refer/choose.ts': 2,
  'refer/items.ts': 3,
  'refer/places.ts': 1,
  'reheat/reheat.ts': 1,
  'sessions/setup.ts': 1,
  'summary/lines.ts': 1,
  'talk/controls.ts': 1,
  'talk/steps.ts': 2,
  'timers/timers.ts': 1,
  'turn/ask-sure.ts': 1,
  'turn/doubt.ts': 2,
  'turn/fill.ts': 2,
  'turn/frames.ts': 3,
  'turn/work.ts': 2,
};

describe('words in dialogue', () => {
  it('are read in understanding, but for those counted here', () => expect(counted()).toEqual(left));
});
