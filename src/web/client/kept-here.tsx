/** What is kept on this page because the kitchen could not be reached, and what its person may do about it. */
import { t } from './language.js';
import { nextOf, wordsOf, type Unsent } from './unsent.js';

export const KeptHere = ({
  unsent,
  now,
  dayOf,
  when,
  again,
  forget,
}: {
  unsent: readonly Unsent[];
  now: string;
  dayOf: (at: string) => string;
  /** An instant in words. */
  when: (at: string) => string;
  again: (id: string) => void;
  forget: (id: string) => void;
}) => {
  if (unsent.length === 0) return null;
  return (
    <section aria-labelledby="kept-here" class="first">
      <h2 id="kept-here">{t('kept-heading')}</h2>
      <ul class="lines">
        {unsent.map((one) => {
          const next = nextOf(one, now, dayOf(now));
          return (
            <li key={one.id}>
              <span>
                {one.kind === 'turn' ? `“${wordsOf(one)}”` : wordsOf(one)} <small>({when(one.at)})</small>
                {next === 'refused' && (
                  <span class="warn"> {t('kept-refused', { why: one.refused ?? '' })}</span>
                )}
                {next === 'ask' && <span class="warn"> {t('kept-ask')}</span>}
              </span>
              <span class="row">
                {next !== 'send' && (
                  <button type="button" onClick={() => again(one.id)}>
                    {t(next === 'ask' ? 'kept-send' : 'kept-try-again')}
                    <span class="hidden"> {wordsOf(one)}</span>
                  </button>
                )}
                <button type="button" onClick={() => forget(one.id)}>
                  {t('kept-forget')}
                  <span class="hidden"> {wordsOf(one)}</span>
                </button>
              </span>
            </li>
          );
        })}
      </ul>
    </section>
  );
};
