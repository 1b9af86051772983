/** Which grammar listens and which phrases speak, by locale. */
import { createVoice, earconsAt, type PhraseError, type Voice } from '../speech/index.js';
import { createUnderstander, type Understander } from '../understanding/index.js';

export interface Tongue {
  readonly locale: string;
  readonly understander: Understander;
  readonly voice: Voice;
}

export interface Tongues {
  /** The tongue for what a request asks for, else for the household's locale, else English. */
  for(asked: string | undefined, household: string): Tongue;
}

/** Languages with a grammar and phrases. */
const SPOKEN = ['en'] as const;
const FALLBACK = 'en-US';

const language = (locale: string): string => locale.split('-')[0]?.toLowerCase() ?? '';
const isSpoken = (locale: string): boolean => SPOKEN.some((known) => known === language(locale));

const canonical = (locale: string): string | null => {
  try {
    return Intl.getCanonicalLocales(locale)[0] ?? null;
  } catch {
    return null;
  }
};

/**
 * Grammars are compiled once a language, voices made once a locale, when first needed.
 * @param onPhraseProblem told of a fault in a phrase file; the cook hears a stand-in sentence.
 */
export const createTongues = (onPhraseProblem: (error: PhraseError) => void): Tongues => {
  const understanders = new Map<string, Understander>();
  const tongues = new Map<string, Tongue>();
  const make = (locale: string): Tongue => {
    const known = understanders.get(language(locale)) ?? createUnderstander(locale);
    understanders.set(language(locale), known);
    return {
      locale,
      understander: known,
      voice: createVoice(locale, { onProblem: onPhraseProblem, earcons: earconsAt('/sounds') }),
    };
  };
  return {
    for(asked, household) {
      const wanted = [asked, household].flatMap((locale) => (locale ? (canonical(locale) ?? []) : []));
      const locale = wanted.find(isSpoken) ?? FALLBACK;
      // A client may send any region: only so many voices are kept.
      const tongue = tongues.get(locale) ?? make(locale);
      if (tongues.size < 32) tongues.set(locale, tongue);
      return tongue;
    },
  };
};
