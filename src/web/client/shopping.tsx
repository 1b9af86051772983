/** The list to buy: each line with what was said of it, and putting one on. */
import { useState } from 'preact/hooks';
import type { NewPurchase, Purchase } from '../../../shared/client/http.js';
import type { Board } from '../../../shared/wire/board.js';
import { buy } from './card.js';
import { Field } from './form.js';
import { amountWords, t, unitOf } from './language.js';
import { OutcomeHere } from './outcome.js';
import type { BoardState } from './use-board.js';

/** "oats, 2 bags, rolled, from: corner shop, for Dele". A board kept from before may lack what is newer. */
const lineWords = ({ name, amount, howMuch, note, shop, forPerson }: Purchase): string =>
  [
    name,
    amountWords(amount, howMuch),
    note,
    shop ? t('list-from', { shop }) : null,
    forPerson ? t('list-for', { person: forPerson }) : null,
  ]
    .filter((part) => part)
    .join(', ');

interface Draft {
  readonly name: string;
  readonly count: string;
  readonly unit: string;
  readonly note: string;
  readonly shop: string;
  readonly forPersonId: string;
}

const nothing: Draft = { name: '', count: '', unit: '', note: '', shop: '', forPersonId: '' };

const saidOf = ({ count, unit, note, shop, forPersonId }: Draft): Omit<NewPurchase, 'name'> => ({
  ...(count.trim() === ''
    ? {}
    : { amount: { value: Number(count), unit: unit.trim() === '' ? 'piece' : unitOf(unit) } }),
  ...(note.trim() === '' ? {} : { note: note.trim() }),
  ...(shop.trim() === '' ? {} : { shop: shop.trim() }),
  ...(forPersonId === '' ? {} : { forPersonId }),
});

const wrong = ({ name, count }: Draft): { readonly field: string; readonly text: string } | null => {
  if (name.trim() === '') return { field: 'buy', text: t('list-write') };
  return count.trim() === '' || Number(count) > 0 ? null : { field: 'buy-count', text: t('add-no-count') };
};

const PutOn = ({ board, state }: { board: Board; state: BoardState }) => {
  const [draft, setDraft] = useState(nothing);
  const [error, setError] = useState<ReturnType<typeof wrong>>(null);
  const set = (change: Partial<Draft>): void => setDraft((before) => ({ ...before, ...change }));

  const put = async (): Promise<void> => {
    const problem = wrong(draft);
    setError(problem);
    if (problem !== null) {
      document.getElementById(problem.field)?.focus();
      return;
    }
    const name = draft.name.trim();
    const fine = await state.act({
      where: 'list',
      done: t('list-is-on', { name }),
      edits: [buy(name, saidOf(draft))],
    });
    if (fine) setDraft(nothing);
  };

  const text = (key: 'note' | 'shop', label: string, longest: number) => (
    <Field id={`buy-${key}`} label={label}>
      <input
        id={`buy-${key}`}
        maxLength={longest}
        value={draft[key]}
        onInput={(event) => set({ [key]: event.currentTarget.value })}
      />
    </Field>
  );
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void put();
      }}
    >
      <label for="buy">{t('list-put-on')}</label>
      <div class="row">
        <input
          id="buy"
          maxLength={120}
          value={draft.name}
          aria-invalid={error?.field === 'buy'}
          aria-describedby="buy-error"
          onInput={(event) => set({ name: event.currentTarget.value })}
        />
        <button type="submit">{t('list-add')}</button>
      </div>
      <p id="buy-error" role="alert" class="notice">
        {error?.text ?? ''}
      </p>
      <details>
        <summary>{t('list-more')}</summary>
        <div class="row">
          <Field id="buy-count" label={t('list-count')}>
            <input
              id="buy-count"
              class="number"
              inputMode="decimal"
              value={draft.count}
              aria-invalid={error?.field === 'buy-count'}
              aria-describedby="buy-error"
              onInput={(event) => set({ count: event.currentTarget.value })}
            />
          </Field>
          <Field id="buy-unit" label={t('list-unit')}>
            <input
              id="buy-unit"
              class="unit"
              list="units"
              maxLength={40}
              value={draft.unit}
              onInput={(event) => set({ unit: event.currentTarget.value })}
            />
          </Field>
        </div>
        {text('note', t('list-note'), 120)}
        {text('shop', t('list-shop'), 60)}
        <Field id="buy-for" label={t('list-whom')}>
          <select
            id="buy-for"
            value={draft.forPersonId}
            onChange={(event) => set({ forPersonId: event.currentTarget.value })}
          >
            <option value="">{t('list-nobodys')}</option>
            {board.people.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </Field>
      </details>
    </form>
  );
};

export const Shopping = ({ board, state }: { board: Board; state: BoardState }) => (
  <section aria-labelledby="list">
    <h3 id="list">{t('list')}</h3>
    {board.purchases.length === 0 ? (
      <p>{t('list-empty')}</p>
    ) : (
      <ul class="lines">
        {board.purchases.map((purchase) => (
          <li key={purchase.id}>
            <span>{lineWords(purchase)}</span>
            <button
              type="button"
              onClick={() => {
                void state.act({
                  where: 'list',
                  done: t('list-is-off', { name: purchase.name }),
                  edits: [{ method: 'DELETE', path: `/v1/kitchen/list/${encodeURIComponent(purchase.id)}` }],
                });
              }}
            >
              {t('list-take-off')}
              <span class="hidden"> {purchase.name}</span>
            </button>
          </li>
        ))}
      </ul>
    )}
    <PutOn board={board} state={state} />
    <OutcomeHere state={state} where="list" />
  </section>
);
