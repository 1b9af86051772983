/** What the ear says by itself, because what it would ask cannot be asked: of that no phrase file is at hand. */
export interface OwnWords {
  /** What was heard did not reach the service. */
  readonly lost: string;
  /** The recogniser failed. That nothing was heard would be untrue: she would only talk louder. */
  readonly deaf: string;
  /** It failed several times running. */
  readonly deafStill: string;
}

// Nobody who grew up speaking Spanish has reviewed these.
const WORDS: Readonly<Record<string, OwnWords>> = {
  en: {
    lost: 'That did not get through. Say it again.',
    deaf: 'My hearing failed just now. Say it again.',
    deafStill: 'My hearing does not work. Somebody has to look at it. Until then, use a page or a telephone.',
  },
  es: {
    lost: 'Eso no llegó. Dilo otra vez.',
    deaf: 'Me falló el oído. Dilo otra vez.',
    deafStill:
      'No me funciona el oído. Alguien tiene que mirarlo. Mientras tanto, usa una página o un teléfono.',
  },
};

/** In the household's language; in English while it is not known. */
export const ownWords = (locale: string | null): OwnWords =>
  WORDS[(locale ?? 'en').slice(0, 2).toLowerCase()] ?? (WORDS['en'] as OwnWords);
