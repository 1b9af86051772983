/** Which grammar listens and which phrases speak, by locale. */
import { readTables } from '../safety/index.js';
import { createVoice, earconsAt, type PhraseError, type Voice } from '../speech/index.js';
import { createHouseholdNames, createUnderstander, type Understander } from '../understanding/index.js';

export interface Tongue {
  readonly locale: string;
  readonly understander: Understander;
  readonly voice: Voice;
}

export interface Tongues {
  /** The tongue for what a request asks for, else for the household's locale, else English. */
  for(asked: string | undefined, household: string): Tongue;
  /** The tongue that hears what another cannot yet: English, which can do everything; null for itself. */
  beside(tongue: Tongue): Tongue | null;
  /** Reads and makes now what the first turn of each language would wait for. */
  warm(now: string): void;
}

/** Languages with a grammar and phrases. */
const SPOKEN = ['en', 'es'] as const;
const FALLBACK = 'en-US';

/** The language of a locale: "es" of `es-MX`. */
export const language = (locale: string): string => locale.split('-')[0]?.toLowerCase() ?? '';
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
    const made = tongues.get(locale);
    if (made) return made;
    const known = understanders.get(language(locale)) ?? createUnderstander(locale);
    understanders.set(language(locale), known);
    const tongue = {
      locale,
      understander: known,
      voice: createVoice(locale, { onProblem: onPhraseProblem, earcons: earconsAt('/sounds') }),
    };
    if (tongues.size < 32) tongues.set(locale, tongue);
    return tongue;
  };
  /** The locale spoken for what was asked; what a client may send is endless, so only so many are kept. */
  const spoken = new Map<string, string | null>();
  const spokenFor = (asked: string): string | null => {
    const known = spoken.get(asked);
    if (known !== undefined) return known;
    const locale = canonical(asked);
    const found = locale !== null && isSpoken(locale) ? locale : null;
    if (spoken.size < 200) spoken.set(asked, found);
    return found;
  };
  /** Three words that nobody says go the way of a sentence to its end, past every reader. */
  const unheard = [{ text: 'qx zw qz' }];
  return {
    warm(now) {
      for (const known of SPOKEN) {
        const { locale, understander } = make(known === language(FALLBACK) ? FALLBACK : known);
        const around = { now, timeZone: 'UTC', locale, expecting: 'anything' } as const;
        const names = createHouseholdNames(locale);
        understander.understand(unheard, names, around);
        // Steps have a grammar of their own.
        understander.understand(unheard, names, {
          ...around,
          steps: { title: 'qx', dish: null, held: false, texts: ['qx'], at: 0, waiting: false },
        });
      }
      readTables();
    },
    beside: ({ locale }) => (language(locale) === language(FALLBACK) ? null : make(FALLBACK)),
    for(asked, household) {
      const locale = (asked ? spokenFor(asked) : null) ?? spokenFor(household) ?? FALLBACK;
      return make(locale);
    },
  };
};
