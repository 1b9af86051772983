/** This page's calls to its own service: the cookie says who it is, the CSRF token that it meant it. */
import {
  createClient,
  ServiceProblem,
  ServiceUnreachable,
  type Client,
  type PairingStarted,
} from '../../../shared/client/http.js';
import { t } from './language.js';

let csrfToken: string | null = null;
/** This page was let in: a refusal to know it means that it was sent away. */
let isIn = false;
const listeners = new Set<() => void>();

/** Called when the service no longer knows this page: its device was sent away, or its session ended. */
export const onSentAway = (hear: () => void): (() => void) => {
  listeners.add(hear);
  return () => void listeners.delete(hear);
};

const bare = createClient({ base: '', csrfToken: () => csrfToken });

const inside = createClient({
  base: '',
  csrfToken: () => csrfToken,
  fetch: async (input, init) => {
    const response = await fetch(input, init);
    if (response.status === 401 && isIn) {
      isIn = false;
      csrfToken = null;
      for (const hear of listeners) hear();
    }
    return response;
  },
});

/** Starts or goes on with a session. Rejects with a ServiceProblem when the page is not let in. */
export const startSession = async (token?: string): Promise<void> => {
  const session = await bare.call<{ csrfToken: string }>(
    token === undefined ? 'GET' : 'POST',
    '/v1/session',
    token === undefined ? undefined : { token },
  );
  // A session that was only now begun is not known to be kept by the browser: a refusal is no sending away.
  csrfToken = token === undefined ? session.csrfToken : null;
  isIn = token === undefined;
};

/** The page goes on without a network from what it kept: it was let in when it kept it. */
export const goOnFromKept = (): void => {
  isIn = true;
};

export const askToBeLetIn = (name: string): Promise<PairingStarted> =>
  bare.call('POST', '/v1/pairings', { name });

/** Comes in with an invitation; answers with this device's key. */
export const acceptInvitation = async (invitation: string): Promise<string> => {
  const { token } = await bare.call<{ token: string }>('POST', '/v1/invitations/accept', { invitation });
  return token;
};

/** Every call of a page that was let in; a refusal to know it is told to the gate. */
export const service: Pick<Client, 'me' | 'places' | 'items' | 'markers' | 'journal' | 'reminders' | 'call'> =
  {
    ...inside,
    call: async (method, path, body, key) => {
      // Opened without a network, a page has no session's token until the first change goes out.
      if (method !== 'GET' && csrfToken === null && isIn) await startSession();
      return inside.call(method, path, body, key);
    },
  };

/** What went wrong, in a sentence for the person at the page. */
export const plainly = (error: unknown): string => {
  if (error instanceof ServiceUnreachable) return t('not-reached');
  if (error instanceof ServiceProblem) {
    const { detail, title, errors } = error.problem;
    if (errors !== undefined && errors.length > 0)
      return errors.map(({ path, message }) => t('wrong-field', { field: path, why: message })).join(' ');
    const text = detail ?? title;
    return text.charAt(0).toUpperCase() + text.slice(1);
  }
  return error instanceof Error && error.message !== '' ? error.message : t('did-not-work');
};
