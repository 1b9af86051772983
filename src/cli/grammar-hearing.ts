/** What the grammar commands hear with: our own grammars as the program hears them, any other plainly. */
import { relative } from 'node:path';
import type { DynamicRule } from '../grammar/index.js';
import type { OpenGrammar } from '../grammar/tools.js';
import { projectFile } from '../project-files.js';

export interface Hearing {
  /** What stands for the rules a host supplies. */
  readonly hosts: ReadonlyMap<string, DynamicRule>;
  readonly tokensOf: (text: string) => string[];
}

const isOurs = (file: string): boolean => !relative(projectFile('grammars'), file).startsWith('..');

/** With the names of the demo kitchen for our own grammars; with stand-ins for any words for others. */
export const hearingFor = async (file: string, grammar: OpenGrammar): Promise<Hearing> => {
  const { anyWords, exampleTokens } = await import('../grammar/tools.js');
  if (!isOurs(file)) {
    return {
      hosts: new Map(grammar.network.hostUris.map((uri) => [uri, anyWords])),
      tokensOf: exampleTokens,
    };
  }
  const [{ demoKitchen }, { namesOf }, { rulesFor }, { normalise }] = await Promise.all([
    import('../kitchen/index.js'),
    import('../turn/names.js'),
    import('../understanding/grammar-files.js'),
    import('../understanding/words/index.js'),
  ]);
  const clock = { now: new Date().toISOString(), timeZone: 'UTC' };
  const kitchen = demoKitchen(clock);
  return {
    hosts: rulesFor(namesOf(kitchen), kitchen.household.locale, clock),
    tokensOf: (text) => [...normalise(text, kitchen.household.locale).tokens],
  };
};
