/** The labels page: pick things, pick a sheet, get print and Braille. */
import { render } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Item, Marker } from '../../../shared/client/http.js';
import type { HouseholdView } from '../../../shared/wire/home.js';
import type { labelFile } from '../../../shared/wire/labels.js';
import type { z } from 'zod';
import { Gate } from './gate.js';
import { langOfRecord, t } from './language.js';
import { nameOf } from './marker-words.js';
import { Menu } from './menu.js';
import { Nfc } from './nfc.js';
import { save } from './save.js';
import { plainly, service } from './service.js';

type LabelFile = z.infer<typeof labelFile>;

const Key = () => {
  const [news, setNews] = useState('');
  const [error, setError] = useState('');
  const get = async (kind: 'pdf' | 'brf'): Promise<void> => {
    try {
      const made = await service.call<LabelFile>('GET', `/v1/labels/guide?kind=${kind}`);
      save(made);
      setError('');
      setNews([t('labels-ready', { name: made.name }), ...made.notes].join(' '));
    } catch (reason) {
      setNews('');
      setError(plainly(reason));
    }
  };
  return (
    <section aria-labelledby="key">
      <h2 id="key">{t('guide-heading')}</h2>
      <p>{t('guide-how')}</p>
      <div class="row">
        <button type="button" onClick={() => void get('pdf')}>
          {t('guide-print')}
        </button>
        <button type="button" onClick={() => void get('brf')}>
          {t('guide-emboss')}
        </button>
      </div>
      <p role={error === '' ? 'status' : 'alert'} class={error === '' ? 'outcome' : 'notice'}>
        {error === '' ? news : error}
      </p>
    </section>
  );
};

interface Stock {
  readonly id: string;
  readonly name: string;
}

const toggled = (set: ReadonlySet<string>, id: string): ReadonlySet<string> => {
  const next = new Set(set);
  if (!next.delete(id)) next.add(id);
  return next;
};

const Picks = ({
  what,
  things,
  picked,
  pick,
}: {
  what: 'items' | 'markers';
  things: readonly { readonly id: string; readonly name: string }[];
  picked: ReadonlySet<string>;
  pick: (picked: ReadonlySet<string>) => void;
}) =>
  things.length === 0 ? null : (
    <fieldset>
      <legend>{t(`labels-${what}`)}</legend>
      <div class="row">
        <button type="button" onClick={() => pick(new Set(things.map((thing) => thing.id)))}>
          {t(`labels-all-${what}`)}
        </button>
        <button type="button" onClick={() => pick(new Set())}>
          {t(`labels-no-${what}`)}
        </button>
      </div>
      <ul class="picks">
        {things.map((thing) => (
          <li key={thing.id}>
            <label>
              <input
                type="checkbox"
                checked={picked.has(thing.id)}
                onChange={() => pick(toggled(picked, thing.id))}
              />
              {thing.name}
            </label>
          </li>
        ))}
      </ul>
    </fieldset>
  );

const Labels = () => {
  const [isLoading, setLoading] = useState(true);
  const [items, setItems] = useState<readonly Item[]>([]);
  const [markers, setMarkers] = useState<readonly Marker[]>([]);
  const [stocks, setStocks] = useState<readonly Stock[]>([]);
  const [pickedItems, pickItems] = useState<ReadonlySet<string>>(new Set());
  const [pickedMarkers, pickMarkers] = useState<ReadonlySet<string>>(new Set());
  const [stock, setStock] = useState('a4-2x4');
  const [size, setSize] = useState({ width: '90', height: '60' });
  const [grade, setGrade] = useState('2');
  const [household, setHousehold] = useState<HouseholdView | null>(null);
  const [error, setError] = useState('');
  const [news, setNews] = useState('');

  useEffect(() => {
    service.call<HouseholdView>('GET', '/v1/household').then(setHousehold, () => undefined);
    Promise.all([service.items(), service.markers(), service.call<Stock[]>('GET', '/v1/labels/stocks')]).then(
      ([allItems, allMarkers, allStocks]) => {
        setItems(
          allItems
            .filter((item) => item.gone === null)
            .sort((one, other) => one.name.localeCompare(other.name, langOfRecord())),
        );
        setMarkers(allMarkers);
        setStocks(allStocks);
        setLoading(false);
      },
      (reason: unknown) => {
        setError(plainly(reason));
        setLoading(false);
      },
    );
  }, []);
  const isNothing = items.length + markers.length === 0;

  const one = pickedItems.size + pickedMarkers.size === 1;
  const item = one ? items.find(({ id }) => pickedItems.has(id)) : undefined;
  const marker = one ? markers.find(({ id }) => pickedMarkers.has(id)) : undefined;
  const only =
    item !== undefined
      ? ({ kind: 'item', id: item.id, name: item.name } as const)
      : marker !== undefined
        ? ({ kind: 'marker', id: marker.id, name: nameOf(marker) } as const)
        : null;

  const make = async (kind: 'pdf' | 'brf'): Promise<void> => {
    if (pickedItems.size + pickedMarkers.size === 0) {
      setError(t('labels-pick-one'));
      return;
    }
    setError('');
    try {
      const made = await service.call<LabelFile>('POST', '/v1/labels', {
        kind,
        items: [...pickedItems],
        markers: [...pickedMarkers],
        grade: grade === 'none' ? null : Number(grade),
        ...(stock === 'free' ? { size: [Number(size.width), Number(size.height)] } : { stock }),
      });
      save(made);
      setNews([t('labels-ready', { name: made.name }), ...made.notes].join(' '));
    } catch (reason) {
      setError(plainly(reason));
    }
  };

  return (
    <main id="main">
      <h1>{t('labels-title')}</h1>
      <p>{t('labels-how')}</p>
      {household?.addressIsLocal === true && (
        <p class="warn">{t('labels-local', { address: household.address })}</p>
      )}
      {isNothing && error === '' && <p>{t(isLoading ? 'one-moment' : 'labels-nothing')}</p>}
      <Picks
        what="items"
        things={items.map((item) => ({
          id: item.id,
          name: [item.name, ...[...item.placePath].reverse()].join(', '),
        }))}
        picked={pickedItems}
        pick={pickItems}
      />
      <Picks
        what="markers"
        things={markers.map((marker) => ({ id: marker.id, name: nameOf(marker) }))}
        picked={pickedMarkers}
        pick={pickMarkers}
      />
      {!isNothing && (
        <>
          <div class="field">
            <label for="stock">{t('labels-sheet')}</label>
            <select id="stock" value={stock} onChange={(event) => setStock(event.currentTarget.value)}>
              {stocks.map((each) => (
                <option key={each.id} value={each.id} lang={langOfRecord()}>
                  {each.name}
                </option>
              ))}
              <option value="free">{t('labels-own-size')}</option>
            </select>
          </div>
          {stock === 'free' && (
            <fieldset>
              <legend>{t('labels-millimetres')}</legend>
              {(['width', 'height'] as const).map((side) => (
                <div class="field" key={side}>
                  <label for={side}>{t(`labels-${side}`)}</label>
                  <input
                    id={side}
                    inputMode="numeric"
                    value={size[side]}
                    onInput={(event) => setSize({ ...size, [side]: event.currentTarget.value })}
                  />
                </div>
              ))}
            </fieldset>
          )}
          <div class="field">
            <label for="grade">{t('labels-braille')}</label>
            <select id="grade" value={grade} onChange={(event) => setGrade(event.currentTarget.value)}>
              <option value="2">{t('labels-grade-2')}</option>
              <option value="1">{t('labels-grade-1')}</option>
              <option value="none">{t('labels-no-braille')}</option>
            </select>
          </div>
          <div class="row">
            <button type="button" onClick={() => void make('pdf')}>
              {t('labels-print')}
            </button>
            <button type="button" disabled={grade === 'none'} onClick={() => void make('brf')}>
              {t('labels-emboss')}
            </button>
          </div>
        </>
      )}
      <p role="alert" class="notice">
        {error}
      </p>
      <p role="status" class="outcome">
        {news}
      </p>
      {only !== null && household !== null && (
        <Nfc
          key={only.id}
          name={only.name}
          address={`${household.address}/this/${only.kind}/${encodeURIComponent(only.id)}`}
        />
      )}
      <Key />
    </main>
  );
};

const Page = () => (
  <Gate here="labels">
    {(me) => (
      <>
        <Menu here="labels" household={me.household.name} />
        <Labels />
      </>
    )}
  </Gate>
);

const root = document.getElementById('page');
if (root !== null) render(<Page />, root);
