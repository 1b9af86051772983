/** This page's calls to its own service: the cookie says who it is, the CSRF token that it meant it. */
import { createClient } from '../../../shared/client/http.js';

let csrfToken: string | null = null;

export const service = createClient({ base: '', csrfToken: () => csrfToken });

/** Starts or goes on with a session. Rejects with a ServiceProblem when the page is not let in. */
export const startSession = async (token?: string): Promise<void> => {
  const session = await service.call<{ csrfToken: string }>(
    token === undefined ? 'GET' : 'POST',
    '/v1/session',
    token === undefined ? undefined : { token },
  );
  csrfToken = session.csrfToken;
};

/** What went wrong, in a sentence for the person at the page. */
export const plainly = (error: unknown): string =>
  error instanceof Error && error.message !== '' ? error.message : 'That did not work.';
