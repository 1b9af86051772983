/** Every place in order with its cards, folded; and finding among all of them. */
import { useMemo, useState } from 'preact/hooks';
import type { Board, BoardItem } from '../../../shared/wire/board.js';
import { buy, Card, finishItem, moveItem, PlaceChoice, type CardPlace } from './card.js';
import { recordWord, t } from './language.js';
import { OutcomeHere } from './outcome.js';
import { fitOf, isAsked, searchable } from './search.js';
import type { Edit, Unsent } from './unsent.js';
import type { BoardState } from './use-board.js';
import { placeOf } from './words.js';

/** As many cards as are put on the page for one search. */
const FOUND_AT_MOST = 40;
/** So few foods need no folding. */
const FOLDED_FROM = 25;

interface Shown {
  readonly id: string;
  readonly name: string;
  readonly items: readonly BoardItem[];
}

const byPlace = (board: Board, items: readonly BoardItem[]): readonly Shown[] => {
  const at = new Map<string | null, BoardItem[]>();
  for (const item of items) at.set(item.placeId, [...(at.get(item.placeId) ?? []), item]);
  return [
    ...board.places.map((place) => ({
      id: place.id,
      name: place.path.join(', '),
      items: at.get(place.id) ?? [],
    })),
    { id: 'nowhere', name: t('place-not-known'), items: at.get(null) ?? [] },
  ].filter(({ items: here }) => here.length > 0);
};

const PlaceHere = ({
  shown,
  board,
  state,
  place,
  startsOpen,
}: {
  shown: Shown;
  board: Board;
  state: BoardState;
  place: Omit<CardPlace, 'part'>;
  startsOpen: boolean;
}) => {
  const [isOpen, setOpen] = useState(startsOpen);
  const count = t('foods', { count: shown.items.length });
  return (
    <section aria-labelledby={`place-${shown.id}`}>
      <h3 id={`place-${shown.id}`}>
        <button type="button" class="plain" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          {shown.name} <span class="count">({count})</span>
        </button>
      </h3>
      {isOpen && (
        <div class="cards">
          {shown.items.map((item) => (
            <Card
              key={item.id}
              item={item}
              board={board}
              state={state}
              place={{ ...place, part: 'place', showPlace: false }}
            />
          ))}
        </div>
      )}
    </section>
  );
};

/** What is done with several foods at once. */
const Several = ({
  board,
  state,
  picked,
  clear,
}: {
  board: Board;
  state: BoardState;
  picked: ReadonlySet<string>;
  clear: () => void;
}) => {
  const [placeId, setPlace] = useState('');
  const items = board.items.filter(({ id }) => picked.has(id));
  const names = items.map(({ name }) => name).join(', ');
  const act = (done: (names: string) => string, edit: (item: BoardItem) => Edit): void => {
    if (items.length === 0) return;
    void state
      .act({
        where: 'several',
        done: done(names),
        about: items.map(({ id }) => id),
        edits: items.map(edit),
        doneEach: items.map(({ name }) => done(name)),
      })
      .then((fine) => fine && clear());
  };
  return (
    <div class="several">
      <p role="status">{items.length === 0 ? t('pick-by-box') : t('picked', { names })}</p>
      <ul class="choices">
        <li>
          <button
            type="button"
            onClick={() =>
              act(
                (name) => t('card-is-used-up', { name }),
                ({ id }) => finishItem(id, 'used'),
              )
            }
          >
            {t('card-used-up')}
          </button>
        </li>
        <li>
          <button
            type="button"
            onClick={() =>
              act(
                (name) => t('card-is-thrown-out', { name }),
                ({ id }) => finishItem(id, 'thrown out'),
              )
            }
          >
            {t('card-threw-out')}
          </button>
        </li>
        <li>
          <button
            type="button"
            onClick={() =>
              act(
                (all) => t('are-to-buy', { names: all }),
                ({ name }) => buy(name),
              )
            }
          >
            {t('card-to-buy')}
          </button>
        </li>
      </ul>
      <label for="several-place">{t('move-them')}</label>
      <div class="row">
        <PlaceChoice
          id="several-place"
          board={board}
          value={placeId}
          choose={setPlace}
          empty={t('choose-place')}
        />
        <button
          type="button"
          onClick={() =>
            placeId !== '' &&
            act(
              (all) => t('are-moved', { names: all, place: placeOf(board, placeId) }),
              ({ id }) => moveItem(id, placeId),
            )
          }
        >
          {t('card-move')}
        </button>
      </div>
    </div>
  );
};

export const Places = ({
  board,
  state,
  correct,
  unsent,
}: {
  board: Board;
  state: BoardState;
  correct: (item: BoardItem) => void;
  unsent: readonly Unsent[];
}) => {
  const [wanted, want] = useState('');
  const [picked, setPicked] = useState<ReadonlySet<string> | null>(null);
  const index = useMemo(
    () =>
      board.items.map((item) => ({
        item,
        words: searchable(
          item.name,
          placeOf(board, item.placeId),
          item.maker,
          item.feels,
          ...item.contains,
          ...item.contains.map(recordWord),
          ...item.diets,
          ...item.diets.map(recordWord),
        ),
      })),
    [board],
  );
  const found = useMemo(
    () =>
      isAsked(wanted)
        ? index
            .map(({ item, words }) => ({ item, fit: fitOf(wanted, words) }))
            .filter(({ fit }) => fit > 0)
            .sort((one, other) => other.fit - one.fit)
            .map(({ item }) => item)
        : null,
    [index, wanted],
  );
  // What was just used up stays in its place until the next press.
  const gone = (state.outcome?.gone ?? []).filter(({ id }) => !board.items.some((item) => item.id === id));
  const shown = useMemo(() => byPlace(board, [...board.items, ...gone]), [board, gone.length]);
  const pick = (id: string): void => {
    const next = new Set(picked ?? []);
    if (!next.delete(id)) next.add(id);
    setPicked(next);
  };
  const place = { showPlace: false, open: false, picked, pick, correct, unsent };
  const empty = board.places.filter(({ items }) => items === 0);
  return (
    <section aria-labelledby="places">
      <h2 id="places">{t('places')}</h2>
      {board.items.length === 0 && <p>{t('places-empty')}</p>}
      <div class="field">
        <label for="wanted">{t('find')}</label>
        <input
          id="wanted"
          type="search"
          autocomplete="off"
          value={wanted}
          onInput={(event) => want(event.currentTarget.value)}
        />
      </div>
      <p role="status">
        {found === null
          ? ''
          : found.length === 0
            ? t('find-nothing')
            : found.length > FOUND_AT_MOST
              ? t('find-some', { count: found.length, shown: FOUND_AT_MOST })
              : t('find-count', { count: found.length })}
      </p>
      <p>
        <button
          type="button"
          aria-pressed={picked !== null}
          onClick={() => setPicked(picked === null ? new Set() : null)}
        >
          {t('pick-several')}
        </button>
      </p>
      {picked !== null && (
        <Several board={board} state={state} picked={picked} clear={() => setPicked(new Set())} />
      )}
      <OutcomeHere state={state} where="several" />
      {found !== null ? (
        <div class="cards">
          <h3 class="hidden">{t('find-heading')}</h3>
          {[...found.slice(0, FOUND_AT_MOST), ...gone].map((item) => (
            <Card
              key={item.id}
              item={item}
              board={board}
              state={state}
              place={{ ...place, part: 'found', showPlace: true }}
            />
          ))}
        </div>
      ) : (
        shown.map((one) => (
          <PlaceHere
            key={one.id}
            shown={one}
            board={board}
            state={state}
            place={place}
            startsOpen={board.items.length < FOLDED_FROM}
          />
        ))
      )}
      {found === null && empty.length > 0 && (
        <p>{t('nothing-in', { places: empty.map(({ path }) => path.join(', ')).join('; ') })}</p>
      )}
    </section>
  );
};
