/** People of the household: what they must not eat, and whether guidance is stricter for them. */
import { useState } from 'preact/hooks';
import type { PersonView } from '../../../shared/wire/home.js';
import { Field, SaidHere, useDoing } from './form.js';
import { recordWord, t } from './language.js';
import { service } from './service.js';
import { dayInWords } from './words.js';

interface Draft {
  readonly name: string;
  readonly eatsHere: boolean;
  readonly atRisk: boolean;
  readonly allergens: readonly string[];
  readonly other: string;
  readonly diets: string;
  readonly needs: string;
  /** Empty: no day is known. */
  readonly comesOn: string;
}

const listOf = (text: string): string[] =>
  text
    .split(/[\n,]/)
    .map((part) => part.trim())
    .filter((part) => part !== '');

const PersonForm = ({
  id,
  person,
  groups,
  own,
  save,
}: {
  id: string;
  person: PersonView | null;
  groups: readonly string[];
  /** Only an owner changes people. */
  own: boolean;
  save: (body: object, name: string) => Promise<boolean>;
}) => {
  const start = (): Draft => ({
    name: person?.name ?? '',
    eatsHere: person?.eatsHere ?? true,
    atRisk: person?.atRisk ?? false,
    allergens: (person?.allergens ?? []).filter((allergen) => groups.includes(allergen)),
    other: (person?.allergens ?? []).filter((allergen) => !groups.includes(allergen)).join(', '),
    diets: (person?.diets ?? []).join(', '),
    needs: (person?.needs ?? []).join(', '),
    comesOn: person?.comesOn ?? '',
  });
  const [draft, setDraft] = useState(start);
  const [error, setError] = useState('');
  const set = (change: Partial<Draft>): void => setDraft({ ...draft, ...change });
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (draft.name.trim() === '') {
          setError(t('person-no-name'));
          document.getElementById(`${id}-name`)?.focus();
          return;
        }
        setError('');
        void save(
          {
            name: draft.name.trim(),
            eatsHere: draft.eatsHere,
            atRisk: draft.atRisk,
            allergens: [...draft.allergens, ...listOf(draft.other)],
            diets: listOf(draft.diets),
            needs: listOf(draft.needs),
            comesOn: draft.comesOn === '' ? null : draft.comesOn,
          },
          draft.name.trim(),
        ).then((fine) => fine && person === null && setDraft(start()));
      }}
    >
      <fieldset disabled={!own}>
        <legend>{person === null ? t('person-new') : person.name}</legend>
        <Field id={`${id}-name`} label={t('person-name')}>
          <input
            id={`${id}-name`}
            maxLength={80}
            value={draft.name}
            aria-invalid={error !== ''}
            aria-describedby={`${id}-error`}
            onInput={(event) => set({ name: event.currentTarget.value })}
          />
          <p id={`${id}-error`} role="alert" class="notice">
            {error}
          </p>
        </Field>
        <label>
          <input
            type="checkbox"
            checked={draft.eatsHere}
            onChange={() => set({ eatsHere: !draft.eatsHere })}
          />
          {t('person-eats-here')}
        </label>
        <label>
          <input type="checkbox" checked={draft.atRisk} onChange={() => set({ atRisk: !draft.atRisk })} />
          {t('person-at-risk')}
        </label>
        <fieldset>
          <legend>{t('person-must-not')}</legend>
          <ul class="picks">
            {groups.map((group) => (
              <li key={group}>
                <label>
                  <input
                    type="checkbox"
                    checked={draft.allergens.includes(group)}
                    onChange={() =>
                      set({
                        allergens: draft.allergens.includes(group)
                          ? draft.allergens.filter((one) => one !== group)
                          : [...draft.allergens, group],
                      })
                    }
                  />
                  {recordWord(group)}
                </label>
              </li>
            ))}
          </ul>
          <Field id={`${id}-other`} label={t('person-and')}>
            <input
              id={`${id}-other`}
              maxLength={400}
              value={draft.other}
              onInput={(event) => set({ other: event.currentTarget.value })}
            />
          </Field>
        </fieldset>
        <Field id={`${id}-diets`} label={t('person-diets')}>
          <input
            id={`${id}-diets`}
            maxLength={400}
            value={draft.diets}
            onInput={(event) => set({ diets: event.currentTarget.value })}
          />
        </Field>
        <Field id={`${id}-needs`} label={t('person-needs')}>
          <input
            id={`${id}-needs`}
            maxLength={400}
            value={draft.needs}
            onInput={(event) => set({ needs: event.currentTarget.value })}
          />
        </Field>
        <Field id={`${id}-comes`} label={t('person-comes')}>
          <input
            id={`${id}-comes`}
            type="date"
            value={draft.comesOn}
            onInput={(event) => set({ comesOn: event.currentTarget.value })}
          />
        </Field>
        {own && <button type="submit">{person === null ? t('person-add') : t('save')}</button>}
      </fieldset>
    </form>
  );
};

export const People = ({
  people,
  groups,
  own,
  locale,
  today,
  refresh,
}: {
  people: readonly PersonView[];
  groups: readonly string[];
  own: boolean;
  locale: string;
  /** The household's. */
  today: string;
  refresh: () => Promise<void>;
}) => {
  const { said, run } = useDoing();
  const summary = (person: PersonView): string =>
    [
      person.name,
      person.allergens.length > 0
        ? t('person-not', { allergens: person.allergens.map(recordWord).join(', ') })
        : '',
      person.diets.map(recordWord).join(', '),
      person.atRisk ? t('person-strict') : '',
      person.eatsHere ? '' : t('person-away'),
      person.needs.length > 0 ? t('person-has-needs', { needs: person.needs.join(', ') }) : '',
      person.comesOn !== null && person.comesOn >= today
        ? t('person-is-coming', { day: dayInWords(person.comesOn, today, locale) })
        : '',
    ]
      .filter((part) => part !== '')
      .join('; ');
  return (
    <section aria-labelledby="people">
      <h2 id="people">{t('people')}</h2>
      <p>{t('people-unknown')}</p>
      {people.map((person) => (
        <details class="card" key={`${person.id}-${summary(person)}`}>
          <summary>{summary(person)}</summary>
          <PersonForm
            id={`person-${person.id}`}
            person={person}
            groups={groups}
            own={own}
            save={(body, name) =>
              run(
                async () => {
                  await service.call('PATCH', `/v1/kitchen/people/${encodeURIComponent(person.id)}`, body);
                  await refresh();
                },
                t('person-changed', { name }),
              )
            }
          />
        </details>
      ))}
      {own && (
        <details class="card">
          <summary>{t('people-add')}</summary>
          <PersonForm
            id="person-new"
            person={null}
            groups={groups}
            own
            save={(body, name) =>
              run(
                async () => {
                  await service.call('POST', '/v1/kitchen/people', body);
                  await refresh();
                },
                t('person-added', { name }),
              )
            }
          />
        </details>
      )}
      <SaidHere said={said} />
    </section>
  );
};
