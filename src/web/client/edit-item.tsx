/** The form that changes one item. Errors stand by their field and are listed first. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Place } from '../../../shared/client/http.js';
import type { BoardItem } from '../../../shared/wire/board.js';
import type { ItemChange } from '../../../shared/wire/kitchen.js';
import { OutcomeHere } from './outcome.js';
import type { BoardState } from './use-board.js';

const dateKinds = [
  { kind: 'made', label: 'Made' },
  { kind: 'bought', label: 'Bought' },
  { kind: 'opened', label: 'Opened' },
  { kind: 'frozen', label: 'Frozen' },
  { kind: 'thawed', label: 'Thawed' },
  { kind: 'bestBefore', label: 'Best before' },
  { kind: 'useBy', label: 'Use by' },
] as const;

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
  readonly dates: Readonly<Partial<{ [kind in (typeof dateKinds)[number]['kind']]: string }>>;
}

const draftOf = (item: BoardItem): Draft => ({
  name: item.name,
  value: item.amount === null ? '' : String(item.amount.value),
  unit: item.amount?.unit ?? '',
  placeId: item.placeId ?? '',
  maker: item.maker ?? '',
  diets: item.diets.join(', '),
  contains: item.contains.join(', '),
  dates: item.dates,
});

type Errors = Readonly<{ [field: string]: string | undefined }>;

/** Field ids in the order of the form, so that the first error is the first field. */
const check = (draft: Draft): Errors => ({
  ...(draft.name.trim() === '' ? { name: 'Give the item a name.' } : {}),
  ...(draft.value !== '' && !(Number(draft.value) >= 0)
    ? { amount: 'Write the amount as a number, for example 2 or 0.5.' }
    : {}),
  ...(draft.value !== '' && draft.unit.trim() === ''
    ? { unit: 'Say what is counted, for example tub.' }
    : {}),
});

/** Only what was changed is sent, so that two people mending one item do not undo each other. */
const changeOf = (item: BoardItem, draft: Draft): ItemChange => {
  const before = draftOf(item);
  const dates = Object.fromEntries(
    dateKinds
      .filter(({ kind }) => (draft.dates[kind] ?? '') !== (before.dates[kind] ?? ''))
      .map(({ kind }) => [
        kind,
        draft.dates[kind] === undefined || draft.dates[kind] === '' ? null : draft.dates[kind],
      ]),
  );
  return {
    ...(draft.name.trim() === before.name ? {} : { name: draft.name.trim() }),
    ...(draft.value === before.value && draft.unit === before.unit
      ? {}
      : { amount: draft.value === '' ? null : { value: Number(draft.value), unit: draft.unit.trim() } }),
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
            done: `${draft.name.trim()} is changed.`,
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
        Change {item.name}
      </h2>
      {field('name', 'Name')}
      <div class="field">
        <label for="value">How much is left</label>
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
      {field('unit', 'Of what', 'One of them: tub, jar, portion, gram.')}
      <div class="field">
        <label for="place">Place</label>
        <select
          id="place"
          value={draft.placeId}
          onChange={(event) => set({ placeId: event.currentTarget.value })}
        >
          {item.placeId === null && <option value="">Not known</option>}
          {places.map((place) => (
            <option key={place.id} value={place.id}>
              {place.path.join(', ')}
            </option>
          ))}
        </select>
      </div>
      {field('maker', 'Made by')}
      {field('diets', 'Diet marks', 'Separate with commas: hot, vegan.')}
      {field(
        'contains',
        'Contains (allergens)',
        'Separate with commas. What is not listed is not known to be absent.',
      )}
      <fieldset>
        <legend>Dates</legend>
        {dateKinds.map(({ kind, label }) => (
          <div class="field" key={kind}>
            <label for={`date-${kind}`}>{label}</label>
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
        <button type="submit">Save</button>
        <button type="button" onClick={close}>
          Leave it as it was
        </button>
      </div>
    </form>
  );
};
