/** One food: what is known of it, and what can be done with it in one press. */
import { useState } from 'preact/hooks';
import type { NewPurchase } from '../../../shared/client/http.js';
import type { Board, BoardItem } from '../../../shared/wire/board.js';
import { amountWords, langOfRecord, recordWord, t, unitWord } from './language.js';
import { OutcomeHere } from './outcome.js';
import type { Edit, Unsent } from './unsent.js';
import { wordsOf } from './unsent.js';
import type { BoardState } from './use-board.js';
import { ageOf, allergensOf, placeOf, untilOf } from './words.js';

export interface CardPlace {
  /** Cards stand in several parts of the page; ids must differ. */
  readonly part: string;
  readonly showPlace: boolean;
  /** Buttons shown without opening the card. */
  readonly open: boolean;
  /** Null: one card at a time. */
  readonly picked: ReadonlySet<string> | null;
  readonly pick: (id: string) => void;
  readonly correct: (item: BoardItem) => void;
  /** What is kept here to be sent later. */
  readonly unsent: readonly Unsent[];
}

const path = (id: string, deed: string): string => `/v1/kitchen/items/${encodeURIComponent(id)}/${deed}`;
export const finishItem = (id: string, how: 'used' | 'thrown out'): Edit => ({
  method: 'POST',
  path: path(id, 'finish'),
  body: { how },
});
export const moveItem = (id: string, placeId: string): Edit => ({
  method: 'POST',
  path: path(id, 'move'),
  body: { placeId },
});
export const buy = (name: string, more: Omit<NewPurchase, 'name'> = {}): Edit => ({
  method: 'POST',
  path: '/v1/kitchen/list',
  body: { name, ...more },
});

const TakeForm = ({ item, where, state, close }: Doing) => {
  const [count, setCount] = useState('1');
  const unit = item.amount?.unit ?? null;
  const counted = unit !== null;
  const take = (body: unknown, done: string): void => {
    void state
      .act({ where, done, about: [item.id], edits: [{ method: 'POST', path: path(item.id, 'take'), body }] })
      .then((fine) => fine && close());
  };
  return (
    <form
      class="small-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (Number(count) > 0) take({ count: Number(count) }, t('card-is-taken', { count, name: item.name }));
      }}
    >
      {counted && (
        <>
          <label for={`${where}-take`}>
            {unit === 'piece' ? t('take-how-many') : t('take-how-many-of', { unit: unitWord(unit) })}
          </label>
          <div class="row">
            <input
              id={`${where}-take`}
              inputMode="decimal"
              class="number"
              value={count}
              onInput={(event) => setCount(event.currentTarget.value)}
            />
            <button type="submit">{t('take')}</button>
          </div>
        </>
      )}
      <ul class="choices">
        <li>
          <button
            type="button"
            onClick={() => take({ fraction: 0.5 }, t('card-half-taken', { name: item.name }))}
          >
            {t('take-half')}
          </button>
        </li>
        <li>
          <button type="button" onClick={close}>
            {t('leave-it')}
          </button>
        </li>
      </ul>
    </form>
  );
};

export const PlaceChoice = ({
  id,
  board,
  value,
  choose,
  empty,
}: {
  id: string;
  board: Board;
  value: string;
  choose: (placeId: string) => void;
  empty: string;
}) => (
  <select id={id} value={value} onChange={(event) => choose(event.currentTarget.value)}>
    <option value="">{empty}</option>
    {board.places.map((place) => (
      <option key={place.id} value={place.id}>
        {place.path.join(', ')}
      </option>
    ))}
  </select>
);

const MoveForm = ({ item, where, state, board, close }: Doing & { board: Board }) => {
  const [placeId, setPlace] = useState('');
  return (
    <form
      class="small-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (placeId === '') return;
        void state
          .act({
            where,
            done: t('card-is-moved', { name: item.name, place: placeOf(board, placeId) }),
            about: [item.id],
            edits: [moveItem(item.id, placeId)],
          })
          .then((fine) => fine && close());
      }}
    >
      <label for={`${where}-place`}>{t('where-to')}</label>
      <div class="row">
        <PlaceChoice
          id={`${where}-place`}
          board={board}
          value={placeId}
          choose={setPlace}
          empty={t('choose-place')}
        />
        <button type="submit">{t('card-move')}</button>
        <button type="button" onClick={close}>
          {t('leave-it')}
        </button>
      </div>
    </form>
  );
};

interface Doing {
  readonly item: BoardItem;
  readonly where: string;
  readonly state: BoardState;
  readonly close: () => void;
}

export const Card = ({
  item,
  board,
  state,
  place,
}: {
  item: BoardItem;
  board: Board;
  state: BoardState;
  place: CardPlace;
}) => {
  const [isOpen, setOpen] = useState(place.open);
  const [form, setForm] = useState<'take' | 'move' | null>(null);
  const { locale } = board.household;
  const where = `${place.part}-${item.id}`;
  const isGone = state.outcome?.where === where && state.outcome.gone.some(({ id }) => id === item.id);
  if (isGone) return <OutcomeHere state={state} where={where} takesFocus />;

  const finish = (how: 'used' | 'thrown out'): void => {
    void state.act({
      where,
      done: t(how === 'used' ? 'card-is-used-up' : 'card-is-thrown-out', { name: item.name }),
      about: [item.id],
      edits: [finishItem(item.id, how)],
      gone: [item],
    });
  };
  const waiting = place.unsent.filter((one) => one.kind === 'edit' && one.about.includes(item.id));
  const warnings = allergensOf(item);
  const urgent = board.tonight.includes(item.id);
  const facts = [
    amountWords(item.amount, item.howMuch),
    untilOf(item, board.today, locale),
    ageOf(item, board.today, locale),
    ...(place.showPlace ? [placeOf(board, item.placeId)] : []),
    ...(item.spot === null ? [] : [recordWord(item.spot)]),
  ].filter((fact) => fact !== null);
  const button = (label: string, press: () => void) => (
    <li>
      <button type="button" onClick={press}>
        {label}
        <span class="hidden"> {item.name}</span>
      </button>
    </li>
  );
  return (
    <article class={urgent ? 'card urgent' : 'card'} aria-labelledby={`${where}-name`}>
      <h4 id={`${where}-name`}>
        {place.picked !== null ? (
          <label class="pick">
            <input type="checkbox" checked={place.picked.has(item.id)} onChange={() => place.pick(item.id)} />
            {item.name}
          </label>
        ) : (
          <button
            type="button"
            class="plain"
            aria-expanded={isOpen}
            onClick={() => {
              setOpen(!isOpen);
              setForm(null);
            }}
          >
            {item.name}
          </button>
        )}
      </h4>
      {warnings.map((warning) => (
        <p key={warning} class="warn">
          {warning}
        </p>
      ))}
      <p>{facts.join(' · ')}</p>
      {waiting.map((one) => (
        <p key={one.id} class="waiting">
          {t('kept-on-card', { done: wordsOf(one) })}
        </p>
      ))}
      {item.cautions.length > 0 && <p>{item.cautions.map(recordWord).join('. ')}</p>}
      {isOpen && (
        <>
          {item.feels !== null && <p lang={langOfRecord()}>{t('card-feels', { feels: item.feels })}</p>}
          {item.diets.length > 0 && <p>{item.diets.map(recordWord).join(', ')}</p>}
          {item.maker !== null && <p>{t('card-from', { maker: item.maker })}</p>}
          {item.says !== null && (
            <p class="source" lang={langOfRecord()}>
              {t('card-says', { source: item.says })}
            </p>
          )}
          {place.picked === null && (
            <ul class="choices" aria-label={t('card-what-to-do', { name: item.name })}>
              {button(t('card-used-up'), () => finish('used'))}
              {button(t('card-took-some'), () => setForm(form === 'take' ? null : 'take'))}
              {button(t('card-threw-out'), () => finish('thrown out'))}
              {button(t('card-move'), () => setForm(form === 'move' ? null : 'move'))}
              {board.may !== 'speak' && button(t('card-dates'), () => place.correct(item))}
              {button(t('card-to-buy'), () => {
                void state.act({
                  where,
                  done: t('card-is-to-buy', { name: item.name }),
                  edits: [buy(item.name)],
                });
              })}
            </ul>
          )}
          {form === 'take' && (
            <TakeForm item={item} where={where} state={state} close={() => setForm(null)} />
          )}
          {form === 'move' && (
            <MoveForm item={item} where={where} state={state} board={board} close={() => setForm(null)} />
          )}
        </>
      )}
      <OutcomeHere state={state} where={where} />
    </article>
  );
};
