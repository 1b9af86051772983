/** Lets in a page that has a key; helps one that has none yet; says so when it was sent away. */
import type { ComponentChildren } from 'preact';
import { useCallback, useEffect, useState } from 'preact/hooks';
import {
  ServiceProblem,
  ServiceUnreachable,
  type Me,
  type PairingStarted,
} from '../../../shared/client/http.js';
import { forget, keepMe, keptMe, onOtherHousehold } from './kept.js';
import { Menu, type PageId } from './menu.js';
import { askToBeLetIn, goOnFromKept, onSentAway, plainly, service, startSession } from './service.js';

type Where =
  | { readonly at: 'asking' }
  | { readonly at: 'out'; readonly error: string | null; readonly sentAway: boolean }
  | { readonly at: 'in'; readonly me: Me };

const ASK_AGAIN_MS = 3_000;
/** A page without a network asks whether it is back so often. */
const LOOK_AGAIN_MS = 15_000;

const notLetIn = (error: unknown): boolean => error instanceof ServiceProblem && error.problem.status === 401;

/** What to call a page that asks to be let in, for the list of devices; its person may say otherwise. */
const usualName = (): string => {
  const agent = navigator.userAgent;
  if (/iPhone/.test(agent)) return 'phone';
  if (/iPad/.test(agent)) return 'tablet';
  if (/Android/.test(agent)) return /Mobile/.test(agent) ? 'phone' : 'tablet';
  return 'computer';
};

const notKept = (): string =>
  location.protocol === 'http:'
    ? 'The key is right, but a browser keeps it only over https. Open this page by its https address; or, on a home network that you trust, whoever runs the service sets SECURE_COOKIES=false and starts it again.'
    : 'The key is right, but this browser did not keep it. Allow cookies for this address.';

export const Gate = ({ here, children }: { here: PageId; children: (me: Me) => ComponentChildren }) => {
  const [where, go] = useState<Where>({ at: 'asking' });
  const [token, setToken] = useState('');
  const [name, setName] = useState(usualName);
  const [pairing, setPairing] = useState<PairingStarted | null>(null);

  const enter = useCallback(async (given?: string) => {
    try {
      await startSession(given);
      const me = await service.me();
      keepMe(me);
      go({ at: 'in', me });
    } catch (error) {
      const kept = keptMe();
      // Without a network the page shows what it kept; it was let in when it kept it.
      if (error instanceof ServiceUnreachable && given === undefined && kept !== null) {
        goOnFromKept();
        go({ at: 'in', me: kept });
        return;
      }
      const wasIn = notLetIn(error) && given === undefined && kept !== null;
      if (wasIn) forget();
      go({
        at: 'out',
        sentAway: wasIn,
        error: !notLetIn(error) ? plainly(error) : given === undefined ? null : 'That key is not known here.',
      });
    }
  }, []);

  /** With a key: a right key that the browser does not keep is another thing than a wrong one. */
  const enterWith = useCallback(
    async (given: string) => {
      try {
        await startSession(given);
      } catch (error) {
        go({
          at: 'out',
          sentAway: false,
          error: notLetIn(error) ? 'That key is not known here.' : plainly(error),
        });
        return;
      }
      try {
        await service.me();
      } catch (error) {
        if (notLetIn(error)) return go({ at: 'out', sentAway: false, error: notKept() });
      }
      await enter();
    },
    [enter],
  );

  useEffect(() => void enter(), [enter]);
  // Whichever page comes first: from then on all of them open without a network.
  useEffect(() => {
    if ('serviceWorker' in navigator) void navigator.serviceWorker.register('/service-worker.js');
  }, []);
  useEffect(
    () =>
      onSentAway(() => {
        forget();
        go({ at: 'out', sentAway: true, error: null });
      }),
    [],
  );
  useEffect(
    () => (where.at === 'in' ? onOtherHousehold(where.me, () => location.reload()) : undefined),
    [where],
  );
  useEffect(() => {
    if (where.at !== 'out' || where.error === null) return;
    const timer = setInterval(() => {
      startSession().then(
        () => void enter(),
        () => undefined,
      );
    }, LOOK_AGAIN_MS);
    return () => clearInterval(timer);
  }, [where, enter]);

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
    <>
      <Menu here={here} household={null} />
      <main id="main">
        <h1>{where.sentAway ? 'This page is no longer let in' : 'This page is not let in yet'}</h1>
        {where.sentAway && (
          <p role="status">
            An owner of the kitchen took its key back, or it was signed out. What this page knew of the
            kitchen is forgotten here.
          </p>
        )}
        <h2>Ask to be let in</h2>
        <form
          onSubmit={(event) => {
            event.preventDefault();
            void askToBeLetIn(name.trim() === '' ? 'page' : name.trim()).then(setPairing, (error: unknown) =>
              go({ at: 'out', sentAway: false, error: plainly(error) }),
            );
          }}
        >
          <label for="device-name">What to call this device, for example Ruth’s phone</label>
          <div class="row">
            <input
              id="device-name"
              maxLength={60}
              value={name}
              onInput={(event) => setName(event.currentTarget.value)}
            />
            <button type="submit">Get a code</button>
          </div>
        </form>
        <div role="status">
          {pairing !== null && (
            <p>
              The code is{' '}
              <strong class="code" role="img" aria-label={pairing.spoken}>
                {pairing.code.slice(0, 4)} {pairing.code.slice(4)}
              </strong>
              . An owner of the kitchen says on a device that is let in: “let in the device with code” and the
              digits, or confirms it on its Home page. This page then opens by itself. The code lasts ten
              minutes.
            </p>
          )}
        </div>
        <h2>Or use a key</h2>
        <form
          onSubmit={(event) => {
            event.preventDefault();
            void enterWith(token.trim());
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
      </main>
    </>
  );
};
