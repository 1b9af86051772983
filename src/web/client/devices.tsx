/** Devices of the household: let one in, name it, say what it may do, send it away. */
import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import type { z } from 'zod';
import type { device } from '../../../shared/wire/devices.js';
import type { PersonView } from '../../../shared/wire/home.js';
import { PersonChoice, RoleChoice, type Scope } from './device-choices.js';
import { Field, SaidHere, useDoing } from './form.js';
import { Invite } from './invitation.js';
import { t } from './language.js';
import { service } from './service.js';

type Device = z.infer<typeof device>;

const OneDevice = ({
  device: one,
  people,
  refresh,
  gone,
  locale,
}: {
  device: Device;
  people: readonly PersonView[];
  refresh: () => Promise<void>;
  /** It was sent away: its own place on the page is no more. */
  gone: (name: string) => void;
  locale: string;
}) => {
  const [draft, setDraft] = useState({ name: one.name, scope: one.scope, personId: one.personId ?? '' });
  const [sure, setSure] = useState(false);
  const { said, run } = useDoing();
  const line = t(one.thisOne ? 'device-this-one' : 'device-line', {
    name: one.name,
    role: t(`device-is-${one.scope}`),
  });
  const path = `/v1/devices/${encodeURIComponent(one.id)}`;
  const when = (at: string): string =>
    new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'short' }).format(new Date(at));
  return (
    <details class="card">
      <summary>
        {one.lastSeenAt === null ? line : t('device-last-heard', { line, when: when(one.lastSeenAt) })}
      </summary>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void run(
            async () => {
              await service.call('PATCH', path, { ...draft, personId: draft.personId || null });
              await refresh();
            },
            t('device-changed', { name: draft.name }),
          );
        }}
      >
        <Field id={`name-${one.id}`} label={t('device-name')}>
          <input
            id={`name-${one.id}`}
            maxLength={60}
            value={draft.name}
            onInput={(event) => setDraft({ ...draft, name: event.currentTarget.value })}
          />
        </Field>
        <Field id={`role-${one.id}`} label={t('device-role')}>
          <RoleChoice
            id={`role-${one.id}`}
            value={draft.scope}
            choose={(scope) => setDraft({ ...draft, scope })}
          />
        </Field>
        <Field id={`whose-${one.id}`} label={t('device-whose')}>
          <PersonChoice
            id={`whose-${one.id}`}
            people={people}
            value={draft.personId}
            choose={(personId) => setDraft({ ...draft, personId })}
          />
        </Field>
        <div class="row">
          <button type="submit">{t('save')}</button>
          <button
            type="button"
            onClick={() => {
              if (!sure) setSure(true);
              else
                void run(async () => {
                  await service.call('DELETE', path);
                  gone(one.name);
                  await refresh();
                }, '');
            }}
          >
            {sure ? t('device-send-away-sure', { name: one.name }) : t('device-send-away')}
          </button>
        </div>
        <SaidHere said={said} />
      </form>
    </details>
  );
};

/** Said where the device stood; focus comes here, for the pressed button went with it. */
const SentAway = ({ name }: { name: string | null }) => {
  const line = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    if (name !== null) line.current?.focus();
  }, [name]);
  return (
    <p ref={line} tabIndex={-1} role="status" class="outcome">
      {name === null ? '' : t('device-sent-away', { name })}
    </p>
  );
};

export const Devices = ({
  people,
  locale,
  timeZone,
}: {
  people: readonly PersonView[];
  locale: string;
  timeZone: string;
}) => {
  const [all, setAll] = useState<readonly Device[]>([]);
  const [gone, setGone] = useState<string | null>(null);
  const [code, setCode] = useState('');
  const [scope, setScope] = useState<Scope>('help');
  const [personId, setPerson] = useState('');
  const { said, run } = useDoing();
  const refresh = useCallback(async () => {
    setAll(
      (await service.call<Device[]>('GET', '/v1/devices')).filter(({ revokedAt }) => revokedAt === null),
    );
  }, []);
  useEffect(() => void refresh().catch(() => undefined), [refresh]);
  return (
    <section aria-labelledby="devices">
      <h2 id="devices">{t('devices')}</h2>
      {all.map((one) => (
        <OneDevice
          key={one.id}
          device={one}
          people={people}
          refresh={refresh}
          gone={setGone}
          locale={locale}
        />
      ))}
      <SentAway name={gone} />
      <Invite people={people} locale={locale} timeZone={timeZone} />
      <h3>{t('device-let-in-heading')}</h3>
      <p>{t('device-let-in-how')}</p>
      <form
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void run(async () => {
            await service.call('POST', '/v1/pairings/confirm', { code, scope, personId: personId || null });
            setCode('');
            await refresh();
          }, t('device-is-let-in'));
        }}
      >
        <Field id="code" label={t('device-code')}>
          <input
            id="code"
            inputMode="numeric"
            autocomplete="off"
            maxLength={20}
            value={code}
            onInput={(event) => setCode(event.currentTarget.value)}
          />
        </Field>
        <Field id="code-role" label={t('device-role')}>
          <RoleChoice id="code-role" value={scope} choose={setScope} />
        </Field>
        <Field id="code-whose" label={t('device-whose')}>
          <PersonChoice id="code-whose" people={people} value={personId} choose={setPerson} />
        </Field>
        <button type="submit">{t('device-let-in')}</button>
        <SaidHere said={said} />
      </form>
    </section>
  );
};
