/** The labels page: pick things, pick a sheet, get print and Braille. */
import { render } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Item, Marker } from '../../../shared/client/http.js';
import type { HouseholdView } from '../../../shared/wire/home.js';
import { Gate } from './gate.js';
import { Menu } from './menu.js';
import { Nfc } from './nfc.js';
import { plainly, service } from './service.js';

interface Stock {
  readonly id: string;
  readonly name: string;
}

const counted = (dots: number | undefined, what = 'dot'): string | undefined =>
  dots === undefined ? undefined : `${dots} ${dots === 1 ? what : what === 'notch' ? 'notches' : `${what}s`}`;

const nameOf = (marker: Marker): string =>
  [
    marker.touch.texture,
    marker.touch.shape,
    marker.touch.fastening,
    counted(marker.touch.dots, marker.touch.counted),
    marker.touch.spot,
  ]
    .filter(Boolean)
    .join(', ') || 'marker';

const toggled = (set: ReadonlySet<string>, id: string): ReadonlySet<string> => {
  const next = new Set(set);
  if (!next.delete(id)) next.add(id);
  return next;
};

const Picks = ({
  legend,
  things,
  picked,
  pick,
}: {
  legend: string;
  things: readonly { readonly id: string; readonly name: string }[];
  picked: ReadonlySet<string>;
  pick: (picked: ReadonlySet<string>) => void;
}) => (
  <fieldset>
    <legend>{legend}</legend>
    <div class="row">
      <button type="button" onClick={() => pick(new Set(things.map((thing) => thing.id)))}>
        Pick all<span class="hidden"> of {legend.toLowerCase()}</span>
      </button>
      <button type="button" onClick={() => pick(new Set())}>
        Pick none<span class="hidden"> of {legend.toLowerCase()}</span>
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
        setItems(allItems.filter((item) => item.gone === null));
        setMarkers(allMarkers);
        setStocks(allStocks);
      },
      (reason: unknown) => setError(plainly(reason)),
    );
  }, []);

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
      setError('Pick at least one item or marker.');
      return;
    }
    setError('');
    try {
      const made = await service.call<{ file: string; name: string; type: string; notes: string[] }>(
        'POST',
        '/v1/labels',
        {
          kind,
          items: [...pickedItems],
          markers: [...pickedMarkers],
          grade: grade === 'none' ? null : Number(grade),
          ...(stock === 'free' ? { size: [Number(size.width), Number(size.height)] } : { stock }),
        },
      );
      const bytes = Uint8Array.from(atob(made.file), (char) => char.charCodeAt(0));
      const address = URL.createObjectURL(new Blob([bytes], { type: made.type }));
      const link = document.createElement('a');
      link.href = address;
      link.download = made.name;
      link.click();
      URL.revokeObjectURL(address);
      setNews([`${made.name} is ready.`, ...made.notes].join(' '));
    } catch (reason) {
      setError(plainly(reason));
    }
  };

  return (
    <main id="main">
      <h1>Labels</h1>
      <p>
        Large print, Braille lines and a square code with thick corners. Raise the corners with tactile paint
        or tape, so that a finger finds the code. Braille from an ordinary printer cannot be felt: it shows a
        sighted helper where to emboss, or goes through a heater on swell paper; an embosser takes the BRF
        file.
      </p>
      {household?.addressIsLocal === true && (
        <p class="warn">
          The square codes would hold {household.address}, which only the machine itself can open. Whoever
          runs the service sets PUBLIC_URL to the address that phones reach it by.
        </p>
      )}
      <Picks
        legend="Items"
        things={items.map((item) => ({
          id: item.id,
          name: [item.name, ...[...item.placePath].reverse()].join(', '),
        }))}
        picked={pickedItems}
        pick={pickItems}
      />
      <Picks
        legend="Markers"
        things={markers.map((marker) => ({ id: marker.id, name: nameOf(marker) }))}
        picked={pickedMarkers}
        pick={pickMarkers}
      />
      <div class="field">
        <label for="stock">Sheet</label>
        <select id="stock" value={stock} onChange={(event) => setStock(event.currentTarget.value)}>
          {stocks.map((each) => (
            <option key={each.id} value={each.id}>
              {each.name}
            </option>
          ))}
          <option value="free">A size of my own</option>
        </select>
      </div>
      {stock === 'free' && (
        <fieldset>
          <legend>Size in millimetres</legend>
          {(['width', 'height'] as const).map((side) => (
            <div class="field" key={side}>
              <label for={side}>{side === 'width' ? 'Width' : 'Height'}</label>
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
        <label for="grade">Braille</label>
        <select id="grade" value={grade} onChange={(event) => setGrade(event.currentTarget.value)}>
          <option value="2">Unified English Braille, contracted (grade 2)</option>
          <option value="1">Unified English Braille, uncontracted (grade 1)</option>
          <option value="none">None</option>
        </select>
      </div>
      <div class="row">
        <button type="button" onClick={() => void make('pdf')}>
          Get the print sheet (PDF)
        </button>
        <button type="button" disabled={grade === 'none'} onClick={() => void make('brf')}>
          Get the embosser file (BRF)
        </button>
      </div>
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
