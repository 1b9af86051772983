/** Coming in with an invitation: the link's last part says who invites and as what; one press takes it. */
import { useState } from 'preact/hooks';
import type { InvitationGrant } from '../../../shared/wire/devices.js';
import { ServiceProblem } from '../../../shared/client/http.js';
import { t } from './language.js';
import { ReaderQuestion } from './reader-question.js';
import { acceptInvitation, plainly } from './service.js';
import { useSettings } from './settings.js';

export interface Invitation {
  readonly text: string;
  readonly household: string;
  readonly householdName: string;
  readonly scope: InvitationGrant['scope'];
}

const start = '#join=';

/** The invitation this page was opened with; `unreadable` when it is not whole; null when there is none. */
export const invitationHere = (): Invitation | 'unreadable' | null => {
  if (!location.hash.startsWith(start)) return null;
  const text = location.hash.slice(start.length);
  try {
    const bytes = Uint8Array.from(
      atob((text.split('.')[0] ?? '').replace(/-/g, '+').replace(/_/g, '/')),
      (char) => char.charCodeAt(0),
    );
    const { household, householdName, scope } = JSON.parse(
      new TextDecoder().decode(bytes),
    ) as Partial<InvitationGrant>;
    return household === undefined || householdName === undefined || scope === undefined
      ? 'unreadable'
      : { text, household, householdName, scope };
  } catch {
    return 'unreadable';
  }
};

/** Takes the invitation out of the address: it is of no use any more, and no one's business. */
export const forgetInvitation = (): void => history.replaceState(null, '', location.pathname);

export const Join = ({
  invitation,
  enter,
}: {
  invitation: Invitation | 'unreadable';
  /** With the new device's key. */
  enter: (token: string) => Promise<void>;
}) => {
  const [error, setError] = useState('');
  const [busy, setBusy] = useState(false);
  const [, change] = useSettings();
  if (invitation === 'unreadable')
    return (
      <main id="main">
        <h1>{t('join-unreadable')}</h1>
      </main>
    );
  const join = async (): Promise<void> => {
    setBusy(true);
    try {
      const token = await acceptInvitation(invitation.text);
      forgetInvitation();
      await enter(token);
    } catch (reason) {
      const isOver = reason instanceof ServiceProblem && reason.problem.code === 'invitation-not-valid';
      setError(isOver ? t('join-not-valid') : plainly(reason));
      setBusy(false);
    }
  };
  return (
    <main id="main">
      <h1>{t('join-title', { household: invitation.householdName })}</h1>
      <p>{t(`join-as-${invitation.scope}`)}</p>
      <ReaderQuestion change={change} />
      <p>
        <button type="submit" disabled={busy} onClick={() => void join()}>
          {t('join-go-in')}
        </button>
      </p>
      <p role="alert" class="notice">
        {error}
      </p>
    </main>
  );
};
