/** An owner invites somebody: a square code to show, a link to send; it lets one device in, once. */
import QRCode from 'qrcode';
import { useEffect, useState } from 'preact/hooks';
import type { InvitationMade } from '../../../shared/wire/devices.js';
import type { PersonView } from '../../../shared/wire/home.js';
import { PersonChoice, RoleChoice, type Scope } from './device-choices.js';
import { Field, SaidHere, useDoing } from './form.js';
import { t } from './language.js';
import { service } from './service.js';

/** As an image: a picture of a code is one thing to a screen reader, and keeps its light edge on a dark page. */
const useSquareCode = (address: string): string | null => {
  const [image, set] = useState<string | null>(null);
  useEffect(() => {
    let over = false;
    QRCode.toString(address, { type: 'svg', margin: 4, errorCorrectionLevel: 'L' }).then(
      (svg) => {
        if (!over) set(`data:image/svg+xml,${encodeURIComponent(svg)}`);
      },
      () => undefined,
    );
    return () => {
      over = true;
    };
  }, [address]);
  return image;
};

const Made = ({
  made,
  name,
  until,
  close,
}: {
  made: InvitationMade;
  name: string;
  until: string;
  close: () => void;
}) => {
  const image = useSquareCode(made.address);
  const { said, run } = useDoing();
  return (
    <div class="card">
      <p role="status">{t('invite-made', { name, until })}</p>
      {made.addressIsLocal && <p class="warn">{t('invite-local')}</p>}
      {image !== null && <img class="square-code" src={image} alt={t('invite-code', { name })} />}
      <ul class="choices">
        {'share' in navigator && (
          <li>
            <button
              type="button"
              onClick={() => {
                // Who thinks better of it in the browser's own window has done nothing wrong.
                navigator.share({ url: made.address }).catch(() => undefined);
              }}
            >
              {t('invite-send')}
            </button>
          </li>
        )}
        <li>
          <button
            type="button"
            onClick={() => void run(() => navigator.clipboard.writeText(made.address), t('invite-copied'))}
          >
            {t('invite-copy')}
          </button>
        </li>
        <li>
          <button type="button" onClick={close}>
            {t('invite-take-back')}
          </button>
        </li>
      </ul>
      <SaidHere said={said} />
    </div>
  );
};

export const Invite = ({
  people,
  locale,
  timeZone,
}: {
  people: readonly PersonView[];
  locale: string;
  timeZone: string;
}) => {
  const [name, setName] = useState('');
  const [scope, setScope] = useState<Scope>('help');
  const [personId, setPerson] = useState('');
  const [made, setMade] = useState<(InvitationMade & { readonly name: string }) | null>(null);
  const [error, setError] = useState('');
  const { said, run } = useDoing();
  const make = async (): Promise<void> => {
    const wanted = name.trim();
    if (wanted === '') {
      setError(t('invite-no-name'));
      document.getElementById('invite-name')?.focus();
      return;
    }
    setError('');
    await run(async () => {
      const got = await service.call<InvitationMade>('POST', '/v1/invitations', {
        name: wanted,
        scope,
        personId: personId || null,
      });
      setMade({ ...got, name: wanted });
      setName('');
    }, '');
  };
  return (
    <>
      <h3>{t('invite-heading')}</h3>
      <p>{t('invite-how')}</p>
      <form
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void make();
        }}
      >
        <Field id="invite-name" label={t('invite-name')}>
          <input
            id="invite-name"
            maxLength={60}
            autocomplete="off"
            value={name}
            aria-invalid={error !== ''}
            aria-describedby="invite-error"
            onInput={(event) => setName(event.currentTarget.value)}
          />
          <p id="invite-error" role="alert" class="notice">
            {error}
          </p>
        </Field>
        <Field id="invite-role" label={t('device-role')}>
          <RoleChoice id="invite-role" value={scope} choose={setScope} />
        </Field>
        <Field id="invite-whose" label={t('device-whose')}>
          <PersonChoice id="invite-whose" people={people} value={personId} choose={setPerson} />
        </Field>
        <button type="submit">{t('invite-make')}</button>
      </form>
      {made !== null && (
        <Made
          key={made.invitation}
          made={made}
          name={made.name}
          until={new Intl.DateTimeFormat(locale, { timeStyle: 'short', timeZone }).format(
            new Date(made.expiresAt),
          )}
          close={() =>
            void run(async () => {
              await service.call('POST', '/v1/invitations/withdraw', { invitation: made.invitation });
              setMade(null);
            }, t('invite-taken-back'))
          }
        />
      )}
      <SaidHere said={said} />
    </>
  );
};
