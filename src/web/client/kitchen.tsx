/** The kitchen page: the record as a sighted helper or a low-vision cook reads and mends it. */
import { render } from 'preact';
import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import { openConversation } from '../../../shared/client/conversation.js';
import type {
  ChangeDone,
  Item,
  JournalRow,
  Place,
  Purchase,
  UseFirstRow,
} from '../../../shared/client/http.js';
import { EditItem } from './edit-item.js';
import { Gate } from './gate.js';
import { Menu } from './menu.js';
import { plainly, service } from './service.js';

interface Record {
  readonly places: readonly Place[];
  readonly items: readonly Item[];
  readonly useFirst: readonly UseFirstRow[];
  readonly purchases: readonly Purchase[];
  readonly journal: readonly JournalRow[];
}

const load = async (): Promise<Record> => {
  const [places, items, useFirst, purchases, journal] = await Promise.all([
    service.places(),
    service.items(),
    service.useFirst(),
    service.purchases(),
    service.journal(),
  ]);
  return { places, items, useFirst, purchases, journal };
};

const howMuch = ({ amount }: Pick<Item, 'amount'>): string | null =>
  amount && `${amount.rough === true ? 'about ' : ''}${Number(amount.value.toFixed(2))} ${amount.unit}`;

/** How an item feels, in words. */
const feel = (item: Item): string =>
  [item.touch.size, item.touch.texture, item.touch.container].filter(Boolean).join(' ') || 'not described';

/** Words for where an item stands against guidance. The bar says the same again, never more. */
const standing: Readonly<{ [state: string]: string | undefined }> = {
  fine: 'within guidance',
  'use-soon': 'use up',
  'last-day': 'last day',
  'throw-out': 'past guidance: throw it out',
  'past-best-quality': 'past best quality',
  unknown: 'not known',
};

const leftInWords = (row: UseFirstRow): string => {
  if (row.daysLeft === null) return 'no date known';
  if (row.daysLeft < 0) return `${-row.daysLeft} ${row.daysLeft === -1 ? 'day' : 'days'} past`;
  return row.daysLeft === 0
    ? 'today is the last day'
    : `${row.daysLeft} ${row.daysLeft === 1 ? 'day' : 'days'} left`;
};

const UseFirst = ({ rows }: { rows: readonly UseFirstRow[] }) => (
  <section aria-labelledby="first">
    <h2 id="first">Use first</h2>
    {rows.length === 0 ? (
      <p>Nothing needs using up.</p>
    ) : (
      <div class="wide" role="region" aria-label="Use first, as a table" tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th scope="col">Item</th>
              <th scope="col">Where</th>
              <th scope="col">Time left</th>
              <th scope="col">Guidance</th>
            </tr>
          </thead>
          <tbody>
            {rows.slice(0, 12).map((row) => (
              <tr key={row.itemId}>
                <th scope="row">{row.name}</th>
                <td>{row.placePath.join(', ')}</td>
                <td>
                  {row.daysLeft !== null && (
                    <meter
                      min={0}
                      max={7}
                      low={1}
                      high={3}
                      optimum={7}
                      value={Math.max(0, Math.min(7, row.daysLeft))}
                      aria-hidden="true"
                    />
                  )}
                  {leftInWords(row)}
                </td>
                <td>
                  {standing[row.state] ?? row.state}
                  {row.says !== null && <small> ({row.says})</small>}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    )}
  </section>
);

const Places = ({ record, edit }: { record: Record; edit: (item: Item) => void }) => {
  const [wanted, want] = useState('');
  const fits = (item: Item): boolean => item.name.toLowerCase().includes(wanted.trim().toLowerCase());
  const living = record.items.filter((item) => item.gone === null && fits(item));
  const rows = [
    ...record.places.map((place) => ({ place, items: living.filter((item) => item.placeId === place.id) })),
    { place: null, items: living.filter((item) => item.placeId === null) },
  ].filter(({ place, items }) => items.length > 0 || (place !== null && wanted === ''));
  return (
    <section aria-labelledby="places">
      <h2 id="places">Places and what stands there</h2>
      <label for="wanted">Find an item</label>
      <input id="wanted" type="search" value={wanted} onInput={(event) => want(event.currentTarget.value)} />
      <p role="status">
        {living.length} {living.length === 1 ? 'item' : 'items'}
      </p>
      <div class="wide" role="region" aria-label="Places, as a table" tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th scope="col">Place</th>
              <th scope="col">Item</th>
              <th scope="col">How much</th>
              <th scope="col">How it feels</th>
              <th scope="col">Change</th>
            </tr>
          </thead>
          {rows.map(({ place, items }) => (
            <tbody key={place?.id ?? 'nowhere'}>
              {(items.length === 0 ? [null] : items).map((item, index) => (
                <tr key={item?.id ?? 'empty'}>
                  {index === 0 && (
                    <th scope="rowgroup" rowSpan={Math.max(1, items.length)}>
                      {place === null ? 'Place not known' : place.path.join(', ')}
                    </th>
                  )}
                  {item === null ? (
                    <td colSpan={4}>Nothing recorded here itself.</td>
                  ) : (
                    <>
                      <td>{item.name}</td>
                      <td>{howMuch(item) ?? 'not known'}</td>
                      <td>{feel(item)}</td>
                      <td>
                        <button type="button" id={`edit-${item.id}`} onClick={() => edit(item)}>
                          Change<span class="hidden"> {item.name}</span>
                        </button>
                      </td>
                    </>
                  )}
                </tr>
              ))}
            </tbody>
          ))}
        </table>
      </div>
    </section>
  );
};

const Shopping = ({
  purchases,
  act,
}: {
  purchases: readonly Purchase[];
  act: (work: Promise<ChangeDone>, done: string) => void;
}) => {
  const [name, setName] = useState('');
  const [error, setError] = useState('');
  return (
    <section aria-labelledby="list">
      <h2 id="list">List to buy</h2>
      {purchases.length === 0 ? (
        <p>The list is empty.</p>
      ) : (
        <ul>
          {purchases.map((purchase) => (
            <li key={purchase.id}>
              {purchase.name}
              {purchase.amount !== null && ` (${howMuch(purchase)})`}{' '}
              <button
                type="button"
                onClick={() => act(service.removePurchase(purchase.id), `${purchase.name} is off the list.`)}
              >
                Take off<span class="hidden"> {purchase.name}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      <form
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          const wanted = name.trim();
          if (wanted === '') {
            setError('Write what to buy, for example oats.');
            document.getElementById('buy')?.focus();
            return;
          }
          setError('');
          setName('');
          act(service.addPurchase(wanted), `${wanted} is on the list.`);
        }}
      >
        <label for="buy">Put on the list</label>
        <div class="row">
          <input
            id="buy"
            maxLength={120}
            value={name}
            aria-invalid={error !== ''}
            aria-describedby="buy-error"
            onInput={(event) => setName(event.currentTarget.value)}
          />
          <button type="submit">Add</button>
        </div>
        <p id="buy-error" role="alert" class="notice">
          {error}
        </p>
      </form>
    </section>
  );
};

const History = ({
  journal,
  locale,
  timeZone,
  undo,
}: {
  journal: readonly JournalRow[];
  locale: string;
  timeZone: string;
  undo: () => void;
}) => {
  const when = new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'short', timeZone });
  return (
    <section aria-labelledby="history">
      <h2 id="history">History</h2>
      <button type="button" onClick={undo}>
        Undo this page’s last change
      </button>
      {journal.length === 0 ? (
        <p>Nothing has been changed yet.</p>
      ) : (
        <ol class="history">
          {journal.slice(0, 30).map((row) => (
            <li key={row.id}>
              <time dateTime={row.at}>{when.format(new Date(row.at))}</time>: {row.person ?? 'Somebody'}{' '}
              {row.verb} {row.about.join(', ')}
            </li>
          ))}
        </ol>
      )}
    </section>
  );
};

const Kitchen = ({ locale, timeZone }: { locale: string; timeZone: string }) => {
  const [record, setRecord] = useState<Record | null>(null);
  const [news, setNews] = useState('');
  const [error, setError] = useState('');
  const [editing, edit] = useState<Item | null>(null);

  /** Newest version this page itself made: news of it from the socket is no news. */
  const made = useRef(0);
  const asked = useRef(0);
  const refresh = useCallback(async (): Promise<void> => {
    const mine = ++asked.current;
    try {
      const loaded = await load();
      // An answer that was overtaken by a later one is old.
      if (mine !== asked.current) return;
      setRecord(loaded);
      setError('');
    } catch (reason) {
      setError(plainly(reason));
    }
  }, []);

  useEffect(() => {
    void refresh();
    const address = new URL('/v1/conversation', location.href);
    address.protocol = address.protocol === 'https:' ? 'wss:' : 'ws:';
    const open = openConversation({
      connect: () => new WebSocket(address.href, 'tellshelf.v1'),
      onState: (state) => {
        if (state === 'lost') setNews('The connection was lost. Trying again.');
        if (state === 'open') {
          setNews('');
          void refresh();
        }
      },
      onMessage: (message) => {
        if (message.type !== 'changed' || message.version <= made.current) return;
        setNews(
          `Just now: ${message.changes.map(({ verb, about }) => `${verb} ${about.join(', ')}`).join('; ')}.`,
        );
        void refresh();
      },
    });
    return () => open.close();
  }, [refresh]);

  const act = (work: Promise<ChangeDone>, done: string): void => {
    work.then(
      (change) => {
        made.current = Math.max(made.current, change.version);
        setNews(done);
        return refresh();
      },
      (reason: unknown) => setError(plainly(reason)),
    );
  };

  const close = (id: string): void => {
    edit(null);
    // Focus goes back to where the form was opened, once the page shows it again.
    setTimeout(() => document.getElementById(`edit-${id}`)?.focus());
  };

  return (
    <main id="main">
      <h1>Kitchen</h1>
      <p role="status" class="state">
        {news}
      </p>
      <p role="alert" class="notice">
        {error}
      </p>
      {record === null ? (
        <p>One moment.</p>
      ) : editing !== null ? (
        <EditItem
          item={editing}
          places={record.places}
          save={(work, text) => {
            act(work, text);
            close(editing.id);
          }}
          cancel={() => close(editing.id)}
        />
      ) : (
        <>
          <UseFirst rows={record.useFirst} />
          <Shopping purchases={record.purchases} act={act} />
          <Places record={record} edit={edit} />
          <History
            journal={record.journal}
            locale={locale}
            timeZone={timeZone}
            undo={() => act(service.undo(), 'The last change is undone.')}
          />
        </>
      )}
    </main>
  );
};

const Page = () => (
  <>
    <Menu here="kitchen" />
    <Gate>{(me) => <Kitchen locale={me.household.locale} timeZone={me.household.timeZone} />}</Gate>
  </>
);

const root = document.getElementById('page');
if (root !== null) render(<Page />, root);
