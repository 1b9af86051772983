/** What somebody should see to today: food, timers, messages, the list to buy. */
import { useState } from 'preact/hooks';
import type { Board, BoardItem } from '../../../shared/wire/board.js';
import { Card } from './card.js';
import { t } from './language.js';
import { Shopping } from './shopping.js';
import { Timers } from './timers.js';
import type { Unsent } from './unsent.js';
import type { BoardState } from './use-board.js';

const SHOWN = 6;
const nothing = new Set<string>();

export const Tonight = ({
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
  const [all, setAll] = useState(false);
  const byId = new Map(board.items.map((item) => [item.id, item]));
  const now = board.tonight.flatMap((id) => byId.get(id) ?? []);
  const gone = (state.outcome?.gone ?? []).filter(
    ({ id }) => state.outcome?.where === `tonight-${id}` && !byId.has(id),
  );
  const shown = [...gone, ...(all ? now : now.slice(0, SHOWN))];
  return (
    <section aria-labelledby="tonight">
      <h2 id="tonight">{t('tonight')}</h2>
      <Timers timers={board.reminders} state={state} />
      {board.messages.length > 0 && (
        <section aria-labelledby="messages">
          <h3 id="messages">{t('messages')}</h3>
          <ul>
            {board.messages.map(({ id, from, text }) => (
              <li key={id}>{from === null ? text : t('message-from', { from, text })}</li>
            ))}
          </ul>
        </section>
      )}
      <h3>{t('use-first')}</h3>
      {now.length === 0 && gone.length === 0 && <p>{t('nothing-urgent')}</p>}
      <div class="cards">
        {shown.map((item) => (
          <Card
            key={item.id}
            item={item}
            board={board}
            state={state}
            place={{
              part: 'tonight',
              showPlace: true,
              open: false,
              picked: null,
              pick: () => nothing,
              correct,
              unsent,
            }}
          />
        ))}
      </div>
      {now.length > SHOWN && (
        <p>
          <button type="button" aria-expanded={all} onClick={() => setAll(!all)}>
            {all ? t('show-fewer') : t('show-all', { count: now.length })}
          </button>
        </p>
      )}
      <Shopping board={board} state={state} />
    </section>
  );
};
