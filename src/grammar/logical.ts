/**
 * The logical parse structure of SRGS 1.0 appendix H: `$rule["token",$other["token"],{!{tag}!}]`.
 * $NULL contributes nothing; what $GARBAGE swallowed is not part of the structure.
 */
import type { Derivation, Step } from './best.js';
import type { Library } from './library.js';

const entity = (step: Step, library: Library, tokens: readonly string[]): string | null => {
  switch (step.kind) {
    case 'token':
      return `"${step.label.text}"`;
    case 'tag':
      return `{!{${step.label.text}}!}`;
    case 'rule':
      return `${step.label.target.shown}[${entities(step.derivation, library, tokens)}]`;
    case 'host':
      return `${step.label.target.shown}["${tokens.slice(step.from, step.to).join(' ')}"]`;
    case 'garbage':
      return null;
  }
};

const entities = (derivation: Derivation, library: Library, tokens: readonly string[]): string =>
  derivation.steps
    .map((step) => entity(step, library, tokens))
    .filter((text) => text !== null)
    .join(',');

/** The derivation of an activated rule in the notation of appendix H. */
export const logicalParse = (derivation: Derivation, library: Library, tokens: readonly string[]): string => {
  const name = library.rules[derivation.rule]!.definition.name;
  return `$${name}[${entities(derivation, library, tokens)}]`;
};
