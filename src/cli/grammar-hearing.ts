/** What the grammar commands hear with: our own grammars as the program hears them, any other plainly. */
import { relative, sep } from 'node:path';
import type { DynamicRule } from '../grammar/index.js';
import type { OpenGrammar } from '../grammar/tools.js';
import { projectFile } from '../project-files.js';

export interface Hearing {
  /** What stands for the rules a host supplies. */
  readonly hosts: ReadonlyMap<string, DynamicRule>;
  readonly tokensOf: (text: string) => string[];
}

/** The language of one of our own grammar files, by its folder; null for any other file. */
const languageOf = (file: string): string | null => {
  const [folder] = relative(projectFile('grammars'), file).split(sep);
  return folder === undefined || folder === '..' ? null : folder;
};

/** With the names of the demo kitchen for our own grammars; with stand-ins for any words for others. */
export const hearingFor = async (file: string, grammar: OpenGrammar): Promise<Hearing> => {
  const { anyWords, exampleTokens } = await import('../grammar/tools.js');
  const language = languageOf(file);
  if (language === null) {
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
  const itsLanguage = kitchen.household.locale.startsWith(language);
  const locale = itsLanguage ? kitchen.household.locale : language;
  const hosts = new Map(rulesFor(namesOf(kitchen), locale, clock));
  // The demo kitchen's names are no use in another language: there any words may be a name.
  if (!itsLanguage)
    for (const uri of grammar.network.hostUris) if (uri.startsWith('kitchen:')) hosts.set(uri, anyWords);
  return {
    hosts,
    tokensOf: (text) => [...normalise(text, locale).tokens],
  };
};
