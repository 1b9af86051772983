/** Home: who lives here, which devices are let in, how the household is set up. */
import { render } from 'preact';
import { useCallback, useEffect, useState } from 'preact/hooks';
import type { JournalRow, Me, Place } from '../../../shared/client/http.js';
import type { HouseholdView, PersonView } from '../../../shared/wire/home.js';
import { Devices } from './devices.js';
import { Field, SaidHere, useDoing } from './form.js';
import { Gate } from './gate.js';
import { forget } from './kept.js';
import { unsentOf } from './unsent.js';
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
    }, 'The settings are saved.');
  return (
    <section aria-labelledby="settings">
      <h2 id="settings">Settings</h2>
      <form
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void save();
        }}
      >
        <fieldset disabled={!own}>
          <legend>{household.name}</legend>
          <Field id="household-name" label="Name of the household">
            <input
              id="household-name"
              maxLength={80}
              value={draft.name}
              onInput={(event) => set({ name: event.currentTarget.value })}
            />
          </Field>
          <Field id="region" label="Whose food-safety guidance is told">
            <select
              id="region"
              value={draft.region}
              onChange={(event) => set({ region: event.currentTarget.value as 'us' | 'uk' })}
            >
              <option value="us">United States</option>
              <option value="uk">United Kingdom</option>
            </select>
          </Field>
          <Field id="measures" label="Measures">
            <select
              id="measures"
              value={draft.measures}
              onChange={(event) => set({ measures: event.currentTarget.value as 'us' | 'metric' })}
            >
              <option value="us">Cups, pounds, Fahrenheit</option>
              <option value="metric">Litres, kilograms, Celsius</option>
            </select>
          </Field>
          <Field
            id="language"
            label="Language"
            hint="Spanish hears and answers part of what English does, and says where it cannot."
          >
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
                <option key={locale} value={locale}>
                  {name}
                </option>
              ))}
            </select>
          </Field>
          <Field
            id="watts"
            label="Power of the microwave, in watts"
            hint="It stands on its back or in its door."
          >
            <input
              id="watts"
              inputMode="numeric"
              aria-describedby="watts-hint"
              value={draft.watts}
              onInput={(event) => set({ watts: event.currentTarget.value })}
            />
          </Field>
          <Field id="summary-at" label="Time of the evening summary" hint="Empty: none.">
            <input
              id="summary-at"
              type="time"
              aria-describedby="summary-at-hint"
              value={draft.summaryAt}
              onInput={(event) => set({ summaryAt: event.currentTarget.value })}
            />
          </Field>
          <Field id="quiet-from" label="Quiet from" hint="Nothing is spoken unasked then; timers whisper.">
            <input
              id="quiet-from"
              type="time"
              aria-describedby="quiet-from-hint"
              value={draft.from}
              onInput={(event) => set({ from: event.currentTarget.value })}
            />
          </Field>
          <Field id="quiet-to" label="Quiet until">
            <input
              id="quiet-to"
              type="time"
              value={draft.to}
              onInput={(event) => set({ to: event.currentTarget.value })}
            />
          </Field>
          {own && <button type="submit">Save the settings</button>}
        </fieldset>
        <SaidHere said={said} />
      </form>
      <p>
        Labels and codes say that this kitchen is reached at <b>{household.address}</b>.
        {household.addressIsLocal &&
          ' Only the machine itself can open that: no phone can. Whoever runs the service sets PUBLIC_URL.'}
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
      <h2 id="home-places">Places and markers</h2>
      <ul>
        {places
          .filter(({ parentId }) => parentId === null)
          .map((whole) => (
            <li key={whole.id}>
              {whole.name}
              {places.some(({ path }) => path.length > 1 && path[0] === whole.name) &&
                `: ${places
                  .filter(({ path, id }) => path[0] === whole.name && id !== whole.id)
                  .map(({ path }) => path.slice(1).join(', '))
                  .join('; ')}`}
            </li>
          ))}
      </ul>
      {mayBuild && (
        <details class="card">
          <summary>Add a place</summary>
          <form
            noValidate
            onSubmit={(event) => {
              event.preventDefault();
              void run(async () => {
                await service.call('POST', '/v1/kitchen/places', {
                  name: draft.name,
                  kind: draft.kind,
                  parentId: draft.parentId || null,
                });
                setDraft({ ...draft, name: '' });
                await refresh();
              }, `${draft.name} is a place now.`);
            }}
          >
            <Field id="place-name" label="What it is called, for example chest freezer">
              <input
                id="place-name"
                maxLength={60}
                value={draft.name}
                onInput={(event) => setDraft({ ...draft, name: event.currentTarget.value })}
              />
            </Field>
            <Field id="place-kind" label="What it is">
              <select
                id="place-kind"
                value={draft.kind}
                onChange={(event) => setDraft({ ...draft, kind: event.currentTarget.value })}
              >
                {kinds.map((kind) => (
                  <option key={kind}>{kind}</option>
                ))}
              </select>
            </Field>
            <Field id="place-in" label="Within">
              <select
                id="place-in"
                value={draft.parentId}
                onChange={(event) => setDraft({ ...draft, parentId: event.currentTarget.value })}
              >
                <option value="">Nothing: it stands by itself</option>
                {places.map((place) => (
                  <option key={place.id} value={place.id}>
                    {place.path.join(', ')}
                  </option>
                ))}
              </select>
            </Field>
            <button type="submit">Add the place</button>
            <SaidHere said={said} />
          </form>
        </details>
      )}
      {meanings.length > 0 && (
        <>
          <h3>What points to feel mean here</h3>
          <ul>
            {meanings.map(({ count, meaning }) => (
              <li key={count}>
                {count}: {meaning}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
};

/** Verbs of the journal as a sentence about somebody: "Dele put away rice". */
const deedOf = (row: JournalRow): string => {
  const what = row.about.join(', ');
  const who = row.person ?? 'Somebody';
  switch (row.verb) {
    case 'told':
      return `${what === '' ? 'A timer, reminder or summary' : what} was heard`;
    case 'set':
      return `${who} set ${what}`;
    case 'undid':
      return `${who} took back a change to ${what === '' ? 'the record' : what}`;
    case 'redid':
      return `${who} made a change to ${what === '' ? 'the record' : what} again`;
    case 'finished':
      return `${who} used up ${what}`;
    case 'took':
      return `${who} took some of ${what}`;
    case 'amended':
      return `${who} corrected ${what}`;
    default:
      return `${who} ${row.verb} ${what}`;
  }
};

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
  if (rows === null) return <p>One moment.</p>;
  if (rows.length === 0) return <p>Nothing has been changed yet.</p>;
  return (
    <ol class="history">
      {rows.slice(0, 40).map((row) => (
        <li key={row.id}>
          <time dateTime={row.at}>{when.format(new Date(row.at))}</time>: {deedOf(row)}
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
    }, 'kitchen.json holds all that is kept of this household.');
  return (
    <section aria-labelledby="leave">
      <h2 id="leave">Take along, sign out</h2>
      <div class="row">
        {own && (
          <button type="button" onClick={() => void take()}>
            Take everything along (JSON)
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
            }, 'Signed out.');
          }}
        >
          {sure ? 'Sign out and forget what was not sent' : 'Sign this page out'}
        </button>
      </div>
      <p role="status">
        {sure &&
          `${unsent === 1 ? 'One thing is' : `${unsent} things are`} kept on the board of this page and not sent yet. Signing out forgets ${unsent === 1 ? 'it' : 'them'}.`}
      </p>
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
      <h1>{me.household.name}: home</h1>
      <p>
        This page is let in as <b>{me.device.name}</b>,{' '}
        {own ? 'an owner.' : me.device.scope === 'help' ? 'a helper.' : 'to talk.'}
        {!own && ' People, devices and settings are changed by an owner.'}
      </p>
      <p role="alert" class="notice">
        {error}
      </p>
      {household === null ? (
        error === '' && <p>One moment.</p>
      ) : (
        <>
          <People people={people} groups={household.allergens} own={own} refresh={refresh} />
          {own && <Devices people={people} locale={household.locale} />}
          <PlacesHere
            places={places}
            meanings={household.meanings}
            mayBuild={me.device.scope !== 'speak'}
            refresh={refresh}
          />
          <Settings key={JSON.stringify(household)} household={household} own={own} refresh={refresh} />
          {me.device.scope !== 'speak' && (
            <section aria-labelledby="history">
              <h2 id="history">What was changed</h2>
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
