/** Putting food on the record. The form stays open for the next one, with the place that was used last. */
import { useRef, useState } from 'preact/hooks';
import type { Board, NewItem } from '../../../shared/wire/board.js';
import { PlaceChoice } from './card.js';
import { t, unitOf, unitWord } from './language.js';
import { OutcomeHere } from './outcome.js';
import type { BoardState } from './use-board.js';
import { placeOf } from './words.js';

const lastPlaceKey = 'tellshelf.last-place';
const dateKinds = [
  { kind: 'made', label: 'add-made' },
  { kind: 'bought', label: 'add-bought' },
  { kind: 'frozen', label: 'add-frozen' },
  { kind: 'other', label: 'add-other' },
  { kind: 'none', label: 'add-no-date' },
] as const;
type DateChoice = (typeof dateKinds)[number]['kind'];

interface Share {
  readonly count: string;
  readonly placeId: string;
}

interface Draft {
  readonly name: string;
  readonly unit: string;
  readonly shares: readonly Share[];
  readonly date: DateChoice;
  readonly madeOn: string;
  readonly useBy: string;
  readonly contains: string;
  readonly maker: string;
  readonly markerId: string;
}

const lastPlace = (board: Board): string => {
  try {
    const id = localStorage.getItem(lastPlaceKey) ?? '';
    return board.places.some((place) => place.id === id) ? id : '';
  } catch {
    return '';
  }
};

const emptyDraft = (placeId: string): Draft => ({
  name: '',
  unit: unitWord('tub'),
  shares: [{ count: '1', placeId }],
  date: 'made',
  madeOn: '',
  useBy: '',
  contains: '',
  maker: '',
  markerId: '',
});

const datesOf = (draft: Draft, today: string): NonNullable<NewItem['dates']> => {
  const useBy = draft.useBy === '' ? {} : { useBy: draft.useBy };
  switch (draft.date) {
    case 'made':
      return { made: today, ...useBy };
    case 'bought':
      return { bought: today, ...useBy };
    case 'frozen':
      return { made: today, frozen: today, ...useBy };
    case 'other':
      return draft.madeOn === '' ? useBy : { made: draft.madeOn, ...useBy };
    case 'none':
      return useBy;
  }
};

const wordsOf = (text: string): string[] =>
  text
    .split(/[\n,]/)
    .map((part) => part.trim())
    .filter((part) => part !== '');

const wrong = (draft: Draft): { readonly field: string; readonly text: string } | null => {
  if (draft.name.trim() === '') return { field: 'add-name', text: t('add-no-name') };
  const at = draft.shares.findIndex(({ count }) => count !== '' && !(Number(count) > 0));
  if (at >= 0) return { field: `add-count-${at}`, text: t('add-no-count') };
  if (draft.date === 'other' && draft.madeOn === '') return { field: 'add-day', text: t('add-no-day') };
  return null;
};

const units = (): readonly string[] =>
  t('units')
    .split(',')
    .map((unit) => unitWord(unit.trim()));

export const AddForm = ({ board, state }: { board: Board; state: BoardState }) => {
  const [draft, setDraft] = useState<Draft>(() => emptyDraft(lastPlace(board)));
  const [error, setError] = useState<{ field: string; text: string } | null>(null);
  const name = useRef<HTMLInputElement>(null);
  const set = (change: Partial<Draft>): void => setDraft((before) => ({ ...before, ...change }));
  const setShare = (at: number, change: Partial<Share>): void =>
    set({ shares: draft.shares.map((share, index) => (index === at ? { ...share, ...change } : share)) });

  const add = async (): Promise<void> => {
    const problem = wrong(draft);
    setError(problem);
    if (problem !== null) {
      document.getElementById(problem.field)?.focus();
      return;
    }
    const food = draft.name.trim();
    const body: NewItem = {
      name: food,
      shares: draft.shares.map(({ count, placeId }, index) => ({
        count: count === '' ? null : Number(count),
        unit: draft.unit.trim() === '' ? 'portion' : unitOf(draft.unit),
        placeId: placeId === '' ? null : placeId,
        markerId: index === 0 && draft.markerId !== '' ? draft.markerId : null,
      })),
      dates: datesOf(draft, board.today),
      contains: wordsOf(draft.contains),
      maker: draft.maker.trim() === '' ? null : draft.maker.trim(),
    };
    const where = draft.shares
      .map(({ count, placeId }) => {
        const place = placeOf(board, placeId || null);
        return count === '' ? place : t('add-count-at', { count, place });
      })
      .join('; ');
    const fine = await state.act({
      where: 'add',
      done: t('add-done', { name: food, where }),
      edits: [{ method: 'POST', path: '/v1/kitchen/items', body }],
    });
    if (!fine) return;
    const placeId = draft.shares[0]?.placeId ?? '';
    try {
      localStorage.setItem(lastPlaceKey, placeId);
    } catch {
      // Kept until the page closes, then.
    }
    setDraft({ ...emptyDraft(placeId), unit: draft.unit, date: draft.date, madeOn: draft.madeOn });
    name.current?.focus();
  };

  return (
    <section aria-labelledby="add">
      <h2 id="add">{t('add-heading')}</h2>
      <form
        noValidate
        class="add"
        onSubmit={(event) => {
          event.preventDefault();
          void add();
        }}
      >
        <div class="field">
          <label for="add-name">{t('add-name')}</label>
          <input
            id="add-name"
            ref={name}
            list="known-foods"
            maxLength={120}
            autocomplete="off"
            value={draft.name}
            aria-invalid={error?.field === 'add-name'}
            aria-describedby="add-error"
            onInput={(event) => set({ name: event.currentTarget.value })}
          />
          <datalist id="known-foods">
            {board.known.map((food) => (
              <option key={food} value={food} />
            ))}
          </datalist>
        </div>
        {draft.shares.map((share, at) => (
          <div class="row" key={at}>
            <div class="field">
              <label for={`add-count-${at}`}>
                {at === 0 ? t('add-count') : t('add-count-in', { number: at + 1 })}
              </label>
              <input
                id={`add-count-${at}`}
                class="number"
                inputMode="decimal"
                value={share.count}
                aria-invalid={error?.field === `add-count-${at}`}
                aria-describedby="add-error"
                onInput={(event) => setShare(at, { count: event.currentTarget.value })}
              />
            </div>
            {at === 0 && (
              <div class="field">
                <label for="add-unit">{t('add-unit')}</label>
                <input
                  id="add-unit"
                  class="unit"
                  list="units"
                  maxLength={40}
                  value={draft.unit}
                  onInput={(event) => set({ unit: event.currentTarget.value })}
                />
                <datalist id="units">
                  {units().map((unit) => (
                    <option key={unit} value={unit} />
                  ))}
                </datalist>
              </div>
            )}
            <div class="field grow">
              <label for={`add-place-${at}`}>
                {at === 0 ? t('add-place') : t('add-place-in', { number: at + 1 })}
              </label>
              <PlaceChoice
                id={`add-place-${at}`}
                board={board}
                value={share.placeId}
                choose={(placeId) => setShare(at, { placeId })}
                empty={t('add-not-said')}
              />
            </div>
          </div>
        ))}
        <p class="row">
          <button
            type="button"
            onClick={() => set({ shares: [...draft.shares, { count: '1', placeId: '' }] })}
          >
            {t('add-another')}
          </button>
          {draft.shares.length > 1 && (
            <button type="button" onClick={() => set({ shares: draft.shares.slice(0, -1) })}>
              {t('add-one-less')}
            </button>
          )}
        </p>
        <div class="field">
          <label for="add-date">{t('add-date')}</label>
          <select
            id="add-date"
            value={draft.date}
            onChange={(event) => set({ date: event.currentTarget.value as DateChoice })}
          >
            {dateKinds.map(({ kind, label }) => (
              <option key={kind} value={kind}>
                {t(label)}
              </option>
            ))}
          </select>
        </div>
        {draft.date === 'other' && (
          <div class="field">
            <label for="add-day">{t('add-day')}</label>
            <input
              id="add-day"
              type="date"
              max={board.today}
              value={draft.madeOn}
              aria-describedby="add-error"
              onInput={(event) => set({ madeOn: event.currentTarget.value })}
            />
          </div>
        )}
        <details>
          <summary>{t('add-more')}</summary>
          <div class="field">
            <label for="add-contains">{t('add-contains')}</label>
            <p class="hint" id="add-contains-hint">
              {t('add-contains-hint')}
            </p>
            <input
              id="add-contains"
              maxLength={400}
              aria-describedby="add-contains-hint"
              value={draft.contains}
              onInput={(event) => set({ contains: event.currentTarget.value })}
            />
          </div>
          <div class="field">
            <label for="add-use-by">{t('add-use-by')}</label>
            <input
              id="add-use-by"
              type="date"
              value={draft.useBy}
              onInput={(event) => set({ useBy: event.currentTarget.value })}
            />
          </div>
          <div class="field">
            <label for="add-marker">{t('add-marker')}</label>
            <select
              id="add-marker"
              value={draft.markerId}
              onChange={(event) => set({ markerId: event.currentTarget.value })}
            >
              <option value="">{t('nothing-there')}</option>
              {board.spareMarkers.map((marker) => (
                <option key={marker.id} value={marker.id}>
                  {marker.feels}
                </option>
              ))}
            </select>
          </div>
          <div class="field">
            <label for="add-maker">{t('add-maker')}</label>
            <input
              id="add-maker"
              maxLength={120}
              value={draft.maker}
              onInput={(event) => set({ maker: event.currentTarget.value })}
            />
          </div>
        </details>
        <p id="add-error" role="alert" class="notice">
          {error?.text ?? ''}
        </p>
        <button type="submit">{t('add-do')}</button>
        <OutcomeHere state={state} where="add" />
      </form>
    </section>
  );
};
