/** Lets a paired page in; helps one that is not yet paired. */
import type { ComponentChildren } from 'preact';
import { useCallback, useEffect, useState } from 'preact/hooks';
import { ServiceProblem, type Me, type PairingStarted } from '../../../shared/client/http.js';
import { plainly, service, startSession } from './service.js';

type Where =
  | { readonly at: 'asking' }
  | { readonly at: 'out'; readonly error: string | null }
  | { readonly at: 'in'; readonly me: Me };

const ASK_AGAIN_MS = 3_000;

const notLetIn = (error: unknown): boolean => error instanceof ServiceProblem && error.problem.status === 401;

export const Gate = ({ children }: { children: (me: Me) => ComponentChildren }) => {
  const [where, go] = useState<Where>({ at: 'asking' });
  const [token, setToken] = useState('');
  const [pairing, setPairing] = useState<PairingStarted | null>(null);

  const enter = useCallback(async (given?: string) => {
    try {
      await startSession(given);
      go({ at: 'in', me: await service.me() });
    } catch (error) {
      go({
        at: 'out',
        error: notLetIn(error)
          ? given === undefined
            ? null
            : 'That token is not known here.'
          : plainly(error),
      });
    }
  }, []);

  useEffect(() => void enter(), [enter]);

  // A page that waits for its code to be confirmed asks now and then whether it was.
  useEffect(() => {
    if (pairing === null || where.at !== 'out') return;
    const timer = setInterval(() => {
      startSession(pairing.token).then(
        () => void enter(),
        () => undefined,
      );
    }, ASK_AGAIN_MS);
    return () => clearInterval(timer);
  }, [pairing, where.at, enter]);

  if (where.at === 'in') return <>{children(where.me)}</>;
  if (where.at === 'asking')
    return (
      <main id="main">
        <p role="status">One moment.</p>
      </main>
    );
  return (
    <main id="main">
      <h1>This page is not paired yet</h1>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void enter(token.trim());
        }}
      >
        <label for="token">Key of a device of this kitchen (the service prints one when it starts)</label>
        <div class="row">
          <input
            id="token"
            name="token"
            autocomplete="off"
            spellcheck={false}
            required
            aria-invalid={where.error !== null}
            aria-describedby="token-error"
            value={token}
            onInput={(event) => setToken(event.currentTarget.value)}
          />
          <button type="submit">Go in</button>
        </div>
        <p id="token-error" role="alert" class="notice">
          {where.error ?? ''}
        </p>
      </form>
      <h2>Or ask to be let in</h2>
      <button
        type="button"
        onClick={() =>
          void service
            .call<PairingStarted>('POST', '/v1/pairings', { name: 'Page' })
            .then(setPairing, (error: unknown) => go({ at: 'out', error: plainly(error) }))
        }
      >
        Get a code
      </button>
      <div role="status">
        {pairing !== null && (
          <p>
            The code is <strong class="code">{pairing.code}</strong>. Somebody who owns this kitchen confirms
            it on a paired device; this page then opens by itself. It lasts ten minutes.
          </p>
        )}
      </div>
    </main>
  );
};
