/** Devices of the household: let one in, name it, say what it may do, send it away. */
import { useCallback, useEffect, useState } from 'preact/hooks';
import type { z } from 'zod';
import type { device } from '../../../shared/wire/devices.js';
import type { PersonView } from '../../../shared/wire/home.js';
import { Field, SaidHere, useDoing } from './form.js';
import { service } from './service.js';

type Device = z.infer<typeof device>;
type Scope = Device['scope'];

const roles: readonly { readonly scope: Scope; readonly name: string }[] = [
  { scope: 'speak', name: 'Talks, and does on the board what may be said' },
  { scope: 'help', name: 'Helper: also corrects the record' },
  { scope: 'own', name: 'Owner: also people, devices and settings' },
];

const RoleChoice = ({ id, value, choose }: { id: string; value: Scope; choose: (scope: Scope) => void }) => (
  <select id={id} value={value} onChange={(event) => choose(event.currentTarget.value as Scope)}>
    {roles.map(({ scope, name }) => (
      <option key={scope} value={scope}>
        {name}
      </option>
    ))}
  </select>
);

const PersonChoice = ({
  id,
  people,
  value,
  choose,
}: {
  id: string;
  people: readonly PersonView[];
  value: string;
  choose: (id: string) => void;
}) => (
  <select id={id} value={value} onChange={(event) => choose(event.currentTarget.value)}>
    <option value="">Everybody’s</option>
    {people.map((person) => (
      <option key={person.id} value={person.id}>
        {person.name}
      </option>
    ))}
  </select>
);

const OneDevice = ({
  device: one,
  people,
  refresh,
  locale,
}: {
  device: Device;
  people: readonly PersonView[];
  refresh: () => Promise<void>;
  locale: string;
}) => {
  const [draft, setDraft] = useState({ name: one.name, scope: one.scope, personId: one.personId ?? '' });
  const [sure, setSure] = useState(false);
  const { said, run } = useDoing();
  const path = `/v1/devices/${encodeURIComponent(one.id)}`;
  const when = (at: string): string =>
    new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'short' }).format(new Date(at));
  return (
    <details class="card">
      <summary>
        {one.name}
        {one.thisOne ? ' (this one)' : ''},{' '}
        {one.scope === 'own' ? 'owner' : one.scope === 'help' ? 'helper' : 'talks'}
        {one.lastSeenAt === null ? '' : `, last heard ${when(one.lastSeenAt)}`}
      </summary>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void run(async () => {
            await service.call('PATCH', path, { ...draft, personId: draft.personId || null });
            await refresh();
          }, `${draft.name} is changed.`);
        }}
      >
        <Field id={`name-${one.id}`} label="Name">
          <input
            id={`name-${one.id}`}
            maxLength={60}
            value={draft.name}
            onInput={(event) => setDraft({ ...draft, name: event.currentTarget.value })}
          />
        </Field>
        <Field id={`role-${one.id}`} label="What it may do">
          <RoleChoice
            id={`role-${one.id}`}
            value={draft.scope}
            choose={(scope) => setDraft({ ...draft, scope })}
          />
        </Field>
        <Field id={`whose-${one.id}`} label="Whose it is">
          <PersonChoice
            id={`whose-${one.id}`}
            people={people}
            value={draft.personId}
            choose={(personId) => setDraft({ ...draft, personId })}
          />
        </Field>
        <div class="row">
          <button type="submit">Save</button>
          <button
            type="button"
            onClick={() => {
              if (!sure) setSure(true);
              else
                void run(async () => {
                  await service.call('DELETE', path);
                  await refresh();
                }, `${one.name} is sent away.`);
            }}
          >
            {sure ? `Yes, send ${one.name} away` : 'Send it away'}
          </button>
        </div>
        <SaidHere said={said} />
      </form>
    </details>
  );
};

export const Devices = ({ people, locale }: { people: readonly PersonView[]; locale: string }) => {
  const [all, setAll] = useState<readonly Device[]>([]);
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
      <h2 id="devices">Devices</h2>
      {all.map((one) => (
        <OneDevice
          key={`${one.id}-${one.name}-${one.scope}-${one.personId ?? ''}`}
          device={one}
          people={people}
          refresh={refresh}
          locale={locale}
        />
      ))}
      <h3>Let a device in</h3>
      <p>
        Open this address on the new device and press “Get a code” there. Then write that code here, or say
        “let in the device with code” and its digits.
      </p>
      <form
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void run(async () => {
            await service.call('POST', '/v1/pairings/confirm', { code, scope, personId: personId || null });
            setCode('');
            await refresh();
          }, 'It is let in. Its page opens by itself.');
        }}
      >
        <Field id="code" label="Its code, eight digits">
          <input
            id="code"
            inputMode="numeric"
            autocomplete="off"
            maxLength={20}
            value={code}
            onInput={(event) => setCode(event.currentTarget.value)}
          />
        </Field>
        <Field id="code-role" label="What it may do">
          <RoleChoice id="code-role" value={scope} choose={setScope} />
        </Field>
        <Field id="code-whose" label="Whose it is">
          <PersonChoice id="code-whose" people={people} value={personId} choose={setPerson} />
        </Field>
        <button type="submit">Let it in</button>
        <SaidHere said={said} />
      </form>
    </section>
  );
};
