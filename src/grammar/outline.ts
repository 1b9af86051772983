/**
 * A parse as an outline for a terminal that is listened to: one line a part, numbered, since a screen reader
 * tells numbers but not indentation. Rule first, then the words, no brackets or arrows.
 */
import type { Derivation } from './best.js';
import type { Library } from './library.js';

/** Lines such as `1.2 place: top shelf`, indented two spaces a level. */
export const outlineOf = (derivation: Derivation, library: Library, tokens: readonly string[]): string[] => {
  const lines: string[] = [];
  const told = (from: number, to: number): string =>
    from === to ? 'nothing' : tokens.slice(from, to).join(' ');
  const visit = (one: Derivation, name: string, number: string, indent: string): void => {
    lines.push(`${indent}${number} ${name}: ${told(one.from, one.to)}`);
    let part = 0;
    for (const step of one.steps) {
      if (step.kind === 'rule')
        visit(step.derivation, step.label.target.name, `${number}.${++part}`, `${indent}  `);
      else if (step.kind === 'host') {
        lines.push(`${indent}  ${number}.${++part} ${step.label.target.name}: ${told(step.from, step.to)}`);
      }
    }
  };
  visit(derivation, library.rules[derivation.rule]!.definition.name, '1', '');
  return lines;
};
