/** The form that changes one item. Errors stand by their field and are listed first. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Place } from '../../../shared/client/http.js';
import type { BoardItem } from '../../../shared/wire/board.js';
import type { ItemChange } from '../../../shared/wire/kitchen.js';
import { t, unitOf, unitWord } from './language.js';
import { OutcomeHere } from './outcome.js';
import type { BoardState } from './use-board.js';

const dateKinds = ['made', 'bought', 'opened', 'frozen', 'thawed', 'bestBefore', 'useBy'] as const;

const lines = (text: string): string[] =>
  text
    .split(/[\n,]/)
    .map((part) => part.trim())
    .filter((part) => part !== '');

interface Draft {
  readonly name: string;
  readonly value: string;
  readonly unit: string;
  readonly placeId: string;
  readonly maker: string;
  readonly diets: string;
  readonly contains: string;
  readonly dates: Readonly<Partial<{ [kind in (typeof dateKinds)[number]]: string }>>;
}

const draftOf = (item: BoardItem): Draft => ({
  name: item.name,
  value: item.amount === null ? '' : String(item.amount.value),
  unit: item.amount === null ? '' : unitWord(item.amount.unit),
  placeId: item.placeId ?? '',
  maker: item.maker ?? '',
  diets: item.diets.join(', '),
  contains: item.contains.join(', '),
  dates: item.dates,
});

type Errors = Readonly<{ [field: string]: string | undefined }>;

/** Field ids in the order of the form, so that the first error is the first field. */
const check = (draft: Draft): Errors => ({
  ...(draft.name.trim() === '' ? { name: t('edit-no-name') } : {}),
  ...(draft.value !== '' && !(Number(draft.value) >= 0) ? { amount: t('edit-no-amount') } : {}),
  ...(draft.value !== '' && draft.unit.trim() === '' ? { unit: t('edit-no-unit') } : {}),
});

/** Only what was changed is sent, so that two people mending one item do not undo each other. */
const changeOf = (item: BoardItem, draft: Draft): ItemChange => {
  const before = draftOf(item);
  const dates = Object.fromEntries(
    dateKinds
      .filter((kind) => (draft.dates[kind] ?? '') !== (before.dates[kind] ?? ''))
      .map((kind) => [
        kind,
        draft.dates[kind] === undefined || draft.dates[kind] === '' ? null : draft.dates[kind],
      ]),
  );
  return {
    ...(draft.name.trim() === before.name ? {} : { name: draft.name.trim() }),
    ...(draft.value === before.value && draft.unit === before.unit
      ? {}
      : { amount: draft.value === '' ? null : { value: Number(draft.value), unit: unitOf(draft.unit) } }),
    ...(draft.placeId === before.placeId || draft.placeId === '' ? {} : { placeId: draft.placeId }),
    ...(draft.maker === before.maker ? {} : { maker: draft.maker.trim() === '' ? null : draft.maker.trim() }),
    ...(draft.diets === before.diets ? {} : { diets: lines(draft.diets) }),
    ...(draft.contains === before.contains ? {} : { contains: lines(draft.contains) }),
    ...(Object.keys(dates).length === 0 ? {} : { dates }),
  };
};

export const EditItem = ({
  item,
  places,
  state,
  close,
}: {
  item: BoardItem;
  places: readonly Place[];
  state: BoardState;
  /** Called once the change is made, or left. */
  close: () => void;
}) => {
  const [draft, setDraft] = useState(() => draftOf(item));
  const [errors, setErrors] = useState<Errors>({});
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const set = (change: Partial<Draft>): void => setDraft((before) => ({ ...before, ...change }));

  const field = (id: keyof Draft & string, label: string, hint?: string) => (
    <div class="field">
      <label for={id}>{label}</label>
      {hint !== undefined && (
        <p class="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <input
        id={id}
        value={draft[id] as string}
        maxLength={400}
        aria-invalid={errors[id] !== undefined}
        aria-describedby={[hint === undefined ? '' : `${id}-hint`, `${id}-error`].filter(Boolean).join(' ')}
        onInput={(event) => set({ [id]: event.currentTarget.value })}
      />
      <p id={`${id}-error`} class="notice">
        {errors[id] ?? ''}
      </p>
    </div>
  );

  return (
    <form
      noValidate
      aria-labelledby="edit-heading"
      onSubmit={(event) => {
        event.preventDefault();
        const wrong = check(draft);
        setErrors(wrong);
        const first = Object.keys(wrong)[0];
        if (first !== undefined) {
          document.getElementById(first === 'amount' ? 'value' : first)?.focus();
          return;
        }
        void state
          .act({
            where: `place-${item.id}`,
            wrongAt: 'edit',
            done: t('edit-done', { name: draft.name.trim() }),
            about: [item.id],
            edits: [
              {
                method: 'PATCH',
                path: `/v1/kitchen/items/${encodeURIComponent(item.id)}`,
                body: changeOf(item, draft),
              },
            ],
          })
          .then((fine) => fine && close());
      }}
    >
      <h2 id="edit-heading" ref={heading} tabIndex={-1}>
        {t('edit-heading', { name: item.name })}
      </h2>
      {field('name', t('edit-name'))}
      <div class="field">
        <label for="value">{t('edit-left')}</label>
        <input
          id="value"
          inputMode="decimal"
          value={draft.value}
          aria-invalid={errors['amount'] !== undefined}
          aria-describedby="value-error"
          onInput={(event) => set({ value: event.currentTarget.value })}
        />
        <p id="value-error" class="notice">
          {errors['amount'] ?? ''}
        </p>
      </div>
      {field('unit', t('edit-unit'), t('edit-unit-hint'))}
      <div class="field">
        <label for="place">{t('edit-place')}</label>
        <select
          id="place"
          value={draft.placeId}
          onChange={(event) => set({ placeId: event.currentTarget.value })}
        >
          {item.placeId === null && <option value="">{t('edit-place-unknown')}</option>}
          {places.map((place) => (
            <option key={place.id} value={place.id}>
              {place.path.join(', ')}
            </option>
          ))}
        </select>
      </div>
      {field('maker', t('edit-maker'))}
      {field('diets', t('edit-diets'), t('edit-diets-hint'))}
      {field('contains', t('edit-contains'), t('edit-contains-hint'))}
      <fieldset>
        <legend>{t('edit-dates')}</legend>
        {dateKinds.map((kind) => (
          <div class="field" key={kind}>
            <label for={`date-${kind}`}>{t(`edit-${kind}`)}</label>
            <input
              id={`date-${kind}`}
              type="date"
              value={draft.dates[kind] ?? ''}
              onInput={(event) => set({ dates: { ...draft.dates, [kind]: event.currentTarget.value } })}
            />
          </div>
        ))}
      </fieldset>
      <p role="alert" class="notice">
        {Object.values(errors).filter(Boolean).join(' ')}
      </p>
      <OutcomeHere state={state} where="edit" />
      <div class="row">
        <button type="submit">{t('save')}</button>
        <button type="button" onClick={close}>
          {t('leave-as-it-was')}
        </button>
      </div>
    </form>
  );
};
