/** Home: who lives here, which devices are let in, how the household is set up. */
import { render } from 'preact';
import { useCallback, useEffect, useState } from 'preact/hooks';
import type { JournalRow, Me, Place } from '../../../shared/client/http.js';
import type { HouseholdView, PersonView } from '../../../shared/wire/home.js';
import { BringIn } from './bring-in.js';
import { Devices } from './devices.js';
import { Field, SaidHere, useDoing } from './form.js';
import { Gate } from './gate.js';
import { forget } from './kept.js';
import { t } from './language.js';
import { unsentOf } from './unsent.js';
import { Markers } from './markers.js';
import { Menu } from './menu.js';
import { People } from './people.js';
import { plainly, service } from './service.js';

const Settings = ({
  household,
  own,
  refresh,
}: {
  household: HouseholdView;
  own: boolean;
  refresh: () => Promise<void>;
}) => {
  const [draft, setDraft] = useState({
    name: household.name,
    region: household.region,
    measures: household.measures,
    locale: household.locale,
    watts: household.microwaveWatts === null ? '' : String(household.microwaveWatts),
    summaryAt: household.summaryAt ?? '',
    from: household.quietHours?.from ?? '',
    to: household.quietHours?.to ?? '',
  });
  const { said, run } = useDoing();
  const set = (change: Partial<typeof draft>): void => setDraft({ ...draft, ...change });
  const save = (): Promise<boolean> =>
    run(async () => {
      const quietHours = draft.from !== '' && draft.to !== '' ? { from: draft.from, to: draft.to } : null;
      const wanted = {
        name: draft.name.trim(),
        region: draft.region,
        measures: draft.measures,
        locale: draft.locale,
        microwaveWatts: draft.watts === '' ? null : Number(draft.watts),
        summaryAt: draft.summaryAt === '' ? null : draft.summaryAt,
        quietHours,
      };
      // Only what was changed is sent, so that two owners do not undo each other.
      const changed = Object.fromEntries(
        Object.entries(wanted).filter(
          ([key, value]) => JSON.stringify(value) !== JSON.stringify(household[key as keyof HouseholdView]),
        ),
      );
      if (Object.keys(changed).length > 0) await service.call('PATCH', '/v1/household', changed);
      await refresh();
      // The page's own words are in that language from the next time it opens.
      if (changed['locale'] !== undefined) location.reload();
    }, t('settings-saved'));
  return (
    <section aria-labelledby="settings">
      <h2 id="settings">{t('settings')}</h2>
      <form
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void save();
        }}
      >
        <fieldset disabled={!own}>
          <legend>{household.name}</legend>
          <Field id="household-name" label={t('settings-name')}>
            <input
              id="household-name"
              maxLength={80}
              value={draft.name}
              onInput={(event) => set({ name: event.currentTarget.value })}
            />
          </Field>
          <Field id="region" label={t('settings-region')}>
            <select
              id="region"
              value={draft.region}
              onChange={(event) => set({ region: event.currentTarget.value as 'us' | 'uk' })}
            >
              <option value="us">{t('settings-us')}</option>
              <option value="uk">{t('settings-uk')}</option>
            </select>
          </Field>
          <Field id="measures" label={t('settings-measures')}>
            <select
              id="measures"
              value={draft.measures}
              onChange={(event) => set({ measures: event.currentTarget.value as 'us' | 'metric' })}
            >
              <option value="us">{t('settings-measures-us')}</option>
              <option value="metric">{t('settings-measures-metric')}</option>
            </select>
          </Field>
          <Field id="language" label={t('settings-language')} hint={t('settings-language-hint')}>
            <select
              id="language"
              value={draft.locale}
              aria-describedby="language-hint"
              onChange={(event) => set({ locale: event.currentTarget.value })}
            >
              {[
                ['en-US', 'English, United States'],
                ['en-GB', 'English, United Kingdom'],
                ['es-US', 'Español, Estados Unidos'],
                ['es-MX', 'Español, México'],
                ['es-ES', 'Español, España'],
              ].map(([locale, name]) => (
                <option key={locale} value={locale} lang={locale}>
                  {name}
                </option>
              ))}
            </select>
          </Field>
          <Field id="watts" label={t('settings-watts')} hint={t('settings-watts-hint')}>
            <input
              id="watts"
              inputMode="numeric"
              aria-describedby="watts-hint"
              value={draft.watts}
              onInput={(event) => set({ watts: event.currentTarget.value })}
            />
          </Field>
          <Field id="summary-at" label={t('settings-summary')} hint={t('settings-summary-hint')}>
            <input
              id="summary-at"
              type="time"
              aria-describedby="summary-at-hint"
              value={draft.summaryAt}
              onInput={(event) => set({ summaryAt: event.currentTarget.value })}
            />
          </Field>
          <Field id="quiet-from" label={t('settings-quiet-from')} hint={t('settings-quiet-hint')}>
            <input
              id="quiet-from"
              type="time"
              aria-describedby="quiet-from-hint"
              value={draft.from}
              onInput={(event) => set({ from: event.currentTarget.value })}
            />
          </Field>
          <Field id="quiet-to" label={t('settings-quiet-to')}>
            <input
              id="quiet-to"
              type="time"
              value={draft.to}
              onInput={(event) => set({ to: event.currentTarget.value })}
            />
          </Field>
          {own && <button type="submit">{t('settings-save')}</button>}
        </fieldset>
        <SaidHere said={said} />
      </form>
      <p>
        {t('settings-address', { address: household.address })}
        {household.addressIsLocal && ` ${t('settings-address-local')}`}
      </p>
    </section>
  );
};

const kinds = ['fridge', 'freezer', 'pantry', 'counter', 'cupboard', 'shelf', 'drawer', 'basket', 'door'];

const PlacesHere = ({
  places,
  meanings,
  mayBuild,
  refresh,
}: {
  places: readonly Place[];
  meanings: HouseholdView['meanings'];
  mayBuild: boolean;
  refresh: () => Promise<void>;
}) => {
  const [draft, setDraft] = useState({ name: '', kind: 'shelf', parentId: '' });
  const { said, run } = useDoing();
  return (
    <section aria-labelledby="home-places">
      <h2 id="home-places">{t('home-places')}</h2>
      {places.length === 0 ? (
        <p>{t('home-no-places')}</p>
      ) : (
        <ul>
          {places
            .filter(({ parentId }) => parentId === null)
            .map((whole) => (
              <li key={whole.id}>
                {places.some(({ path }) => path.length > 1 && path[0] === whole.name)
                  ? t('home-place-with', {
                      place: whole.name,
                      parts: places
                        .filter(({ path, id }) => path[0] === whole.name && id !== whole.id)
                        .map(({ path }) => path.slice(1).join(', '))
                        .join('; '),
                    })
                  : whole.name}
              </li>
            ))}
        </ul>
      )}
      {mayBuild && (
        <details class="card">
          <summary>{t('home-add-place')}</summary>
          <form
            noValidate
            onSubmit={(event) => {
              event.preventDefault();
              void run(
                async () => {
                  await service.call('POST', '/v1/kitchen/places', {
                    name: draft.name,
                    kind: draft.kind,
                    parentId: draft.parentId || null,
                  });
                  setDraft({ ...draft, name: '' });
                  await refresh();
                },
                t('home-place-added', { name: draft.name }),
              );
            }}
          >
            <Field id="place-name" label={t('home-place-name')}>
              <input
                id="place-name"
                maxLength={60}
                value={draft.name}
                onInput={(event) => setDraft({ ...draft, name: event.currentTarget.value })}
              />
            </Field>
            <Field id="place-kind" label={t('home-place-kind')}>
              <select
                id="place-kind"
                value={draft.kind}
                onChange={(event) => setDraft({ ...draft, kind: event.currentTarget.value })}
              >
                {kinds.map((kind) => (
                  <option key={kind} value={kind}>
                    {t(`kind-${kind}`)}
                  </option>
                ))}
              </select>
            </Field>
            <Field id="place-in" label={t('home-place-within')}>
              <select
                id="place-in"
                value={draft.parentId}
                onChange={(event) => setDraft({ ...draft, parentId: event.currentTarget.value })}
              >
                <option value="">{t('home-place-alone')}</option>
                {places.map((place) => (
                  <option key={place.id} value={place.id}>
                    {place.path.join(', ')}
                  </option>
                ))}
              </select>
            </Field>
            <button type="submit">{t('home-place-add')}</button>
            <SaidHere said={said} />
          </form>
        </details>
      )}
      {meanings.length > 0 && (
        <>
          <h3>{t('home-points')}</h3>
          <ul>
            {meanings.map(({ count, meaning }) => (
              <li key={count}>{t('home-point', { count, meaning })}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
};

/** A row of the journal as a sentence about somebody: "Dele put away rice". */
const deedOf = (row: JournalRow): string =>
  t(`deed-${row.verb.replaceAll(' ', '-')}`, {
    who: row.person ?? t('somebody'),
    what: row.about.length === 0 ? 'none' : row.about.join(', '),
  });

const History = ({ household }: { household: HouseholdView }) => {
  const [rows, setRows] = useState<readonly JournalRow[] | null>(null);
  useEffect(() => {
    service.journal().then(setRows, () => setRows([]));
  }, []);
  const when = new Intl.DateTimeFormat(household.locale, {
    dateStyle: 'medium',
    timeStyle: 'short',
    timeZone: household.timeZone,
  });
  if (rows === null) return <p>{t('one-moment')}</p>;
  if (rows.length === 0) return <p>{t('changed-nothing')}</p>;
  return (
    <ol class="history">
      {rows.slice(0, 40).map((row) => (
        <li key={row.id}>
          <time dateTime={row.at}>
            {t('changed-line', { when: when.format(new Date(row.at)), deed: deedOf(row) })}
          </time>
        </li>
      ))}
    </ol>
  );
};

const Leave = ({ me }: { me: Me }) => {
  const { said, run } = useDoing();
  const own = me.device.scope === 'own';
  const [sure, setSure] = useState(false);
  const unsent = unsentOf(me.device.id).all().length;
  const take = (): Promise<boolean> =>
    run(async () => {
      const archive = await service.call<unknown>('GET', '/v1/household/export');
      const address = URL.createObjectURL(new Blob([JSON.stringify(archive)], { type: 'application/json' }));
      const link = document.createElement('a');
      link.href = address;
      link.download = 'kitchen.json';
      link.click();
      URL.revokeObjectURL(address);
    }, t('leave-taken'));
  return (
    <section aria-labelledby="leave">
      <h2 id="leave">{t('leave-heading')}</h2>
      <div class="row">
        {own && (
          <button type="button" onClick={() => void take()}>
            {t('leave-take')}
          </button>
        )}
        <button
          type="button"
          onClick={() => {
            if (unsent > 0 && !sure) return setSure(true);
            void run(async () => {
              await service.call('DELETE', '/v1/session');
              forget();
              location.assign('/');
            }, t('leave-signed-out'));
          }}
        >
          {t(sure ? 'leave-out-sure' : 'leave-out')}
        </button>
      </div>
      <p role="status">{sure && t('leave-unsent', { count: unsent })}</p>
      <SaidHere said={said} />
    </section>
  );
};

const Home = ({ me }: { me: Me }) => {
  const [household, setHousehold] = useState<HouseholdView | null>(null);
  const [people, setPeople] = useState<readonly PersonView[]>([]);
  const [places, setPlaces] = useState<readonly Place[]>([]);
  const [error, setError] = useState('');
  const own = me.device.scope === 'own';
  const refresh = useCallback(async () => {
    const [one, all, where] = await Promise.all([
      service.call<HouseholdView>('GET', '/v1/household'),
      service.call<PersonView[]>('GET', '/v1/kitchen/people'),
      service.places(),
    ]);
    setHousehold(one);
    setPeople(all);
    setPlaces(where);
  }, []);
  useEffect(() => void refresh().catch((reason: unknown) => setError(plainly(reason))), [refresh]);
  return (
    <main id="main">
      <h1>{t('home-title', { household: me.household.name })}</h1>
      <p>{t(`home-as-${me.device.scope}`, { device: me.device.name })}</p>
      <p role="alert" class="notice">
        {error}
      </p>
      {household === null ? (
        error === '' && <p>{t('one-moment')}</p>
      ) : (
        <>
          <People
            people={people}
            groups={household.allergens}
            own={own}
            locale={household.locale}
            today={new Intl.DateTimeFormat('en-CA', { timeZone: household.timeZone }).format(new Date())}
            refresh={refresh}
          />
          {own && <Devices people={people} locale={household.locale} timeZone={household.timeZone} />}
          <PlacesHere
            places={places}
            meanings={household.meanings}
            mayBuild={me.device.scope !== 'speak'}
            refresh={refresh}
          />
          <Markers mayBuild={me.device.scope !== 'speak'} />
          {me.device.scope !== 'speak' && <BringIn refresh={refresh} />}
          <Settings household={household} own={own} refresh={refresh} />
          {me.device.scope !== 'speak' && (
            <section aria-labelledby="history">
              <h2 id="history">{t('changed-heading')}</h2>
              <History household={household} />
            </section>
          )}
          <Leave me={me} />
        </>
      )}
    </main>
  );
};

const Page = () => (
  <Gate here="home">
    {(me) => (
      <>
        <Menu here="home" household={me.household.name} />
        <Home me={me} />
      </>
    )}
  </Gate>
);

const root = document.getElementById('page');
if (root !== null) render(<Page />, root);
