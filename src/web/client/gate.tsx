/** Lets in a page that has a key; helps one that has none yet; says so when it was sent away. */
import type { ComponentChildren } from 'preact';
import { useCallback, useEffect, useState } from 'preact/hooks';
import {
  ServiceProblem,
  ServiceUnreachable,
  type Me,
  type PairingStarted,
} from '../../../shared/client/http.js';
import { forgetInvitation, invitationHere, Join } from './join.js';
import { forget, keepMe, keptMe, onOtherHousehold } from './kept.js';
import { speak, t } from './language.js';
import { Menu, type PageId } from './menu.js';
import { ReaderQuestion } from './reader-question.js';
import { askToBeLetIn, goOnFromKept, onSentAway, plainly, service, startSession } from './service.js';
import { useSettings } from './settings.js';

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
  if (/iPhone/.test(agent)) return t('device-phone');
  if (/iPad/.test(agent)) return t('device-tablet');
  if (/Android/.test(agent)) return t(/Mobile/.test(agent) ? 'device-phone' : 'device-tablet');
  return t('device-computer');
};

const notKept = (): string => t(location.protocol === 'http:' ? 'gate-needs-https' : 'gate-needs-cookies');

export const Gate = ({ here, children }: { here: PageId; children: (me: Me) => ComponentChildren }) => {
  const [where, setWhere] = useState<Where>({ at: 'asking' });
  /** Inside, the page speaks the household's language. */
  const go = useCallback((to: Where): void => {
    speak(to.at === 'in' ? to.me.household.locale : (keptMe()?.household.locale ?? null));
    setWhere(to);
  }, []);
  const [invitation, setInvitation] = useState(invitationHere);
  const [token, setToken] = useState('');
  const [name, setName] = useState(usualName);
  const [pairing, setPairing] = useState<PairingStarted | null>(null);
  const [, change] = useSettings();

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
        error: !notLetIn(error) ? plainly(error) : given === undefined ? null : t('gate-wrong-key'),
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
          error: notLetIn(error) ? t('gate-wrong-key') : plainly(error),
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

  const isHere =
    where.at === 'in' &&
    invitation !== null &&
    invitation !== 'unreadable' &&
    invitation.household === where.me.household.id;
  useEffect(() => {
    // Who is in already needs no invitation to the same kitchen.
    if (!isHere) return;
    forgetInvitation();
    setInvitation(null);
  }, [isHere]);

  if (where.at !== 'asking' && invitation !== null && !isHere)
    return (
      <Join
        invitation={invitation}
        enter={async (given) => {
          await enterWith(given);
          setInvitation(null);
        }}
      />
    );
  if (where.at === 'in') return <>{children(where.me)}</>;
  if (where.at === 'asking')
    return (
      <main id="main">
        <p role="status">{t('one-moment')}</p>
      </main>
    );
  return (
    <>
      <Menu here={here} household={null} />
      <main id="main">
        <h1>{t(where.sentAway ? 'gate-sent-away-title' : 'gate-title')}</h1>
        {where.sentAway && <p role="status">{t('gate-sent-away')}</p>}
        <ReaderQuestion change={change} />
        <h2>{t('gate-ask')}</h2>
        <form
          onSubmit={(event) => {
            event.preventDefault();
            void askToBeLetIn(name.trim() === '' ? t('device-page') : name.trim()).then(
              setPairing,
              (error: unknown) => go({ at: 'out', sentAway: false, error: plainly(error) }),
            );
          }}
        >
          <label for="device-name">{t('gate-name')}</label>
          <div class="row">
            <input
              id="device-name"
              maxLength={60}
              value={name}
              onInput={(event) => setName(event.currentTarget.value)}
            />
            <button type="submit">{t('gate-get-code')}</button>
          </div>
        </form>
        <div role="status">
          {pairing !== null && (
            <p>
              {t('gate-code-is')}{' '}
              <strong class="code" role="img" aria-label={pairing.spoken}>
                {pairing.code.slice(0, 4)} {pairing.code.slice(4)}
              </strong>
              . {t('gate-code-then')}
            </p>
          )}
        </div>
        <h2>{t('gate-key-heading')}</h2>
        <form
          onSubmit={(event) => {
            event.preventDefault();
            void enterWith(token.trim());
          }}
        >
          <label for="token">{t('gate-key')}</label>
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
            <button type="submit">{t('gate-go-in')}</button>
          </div>
          <p id="token-error" role="alert" class="notice">
            {where.error ?? ''}
          </p>
        </form>
      </main>
    </>
  );
};
