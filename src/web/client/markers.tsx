/** Markers: what a hand finds on each, what it stands on, how it is looked after; and new ones. */
import type { ComponentChildren } from 'preact';
import { useCallback, useEffect, useState } from 'preact/hooks';
import {
  counted as countedWords,
  fastenings,
  shapes,
  spots,
  textures,
} from '../../../grammars/en/words/touch.json';
import type { Marker } from '../../../shared/client/http.js';
import { ServiceProblem } from '../../../shared/client/http.js';
import { Field, SaidHere, useDoing } from './form.js';
import { recordWord, t } from './language.js';
import { nameOf } from './marker-words.js';
import { plainly, service } from './service.js';

type Touch = Marker['touch'];

/** The words that the record keeps, and that are heard. */
const KNOWN = {
  fastening: Object.keys(fastenings),
  texture: Object.keys(textures),
  shape: Object.keys(shapes),
  spot: Object.keys(spots),
  counted: Object.keys(countedWords),
} as const;
type Part = keyof typeof KNOWN;
const PARTS = ['fastening', 'texture', 'shape', 'spot'] as const satisfies readonly Part[];

interface Draft extends Readonly<Record<Part, string>> {
  readonly fastenings: string;
  readonly dots: string;
  readonly care: string;
}

const draftOf = (marker: Marker | null): Draft => {
  const touch = marker?.touch ?? {};
  return {
    fastening: touch.fastening ?? '',
    texture: touch.texture ?? '',
    shape: touch.shape ?? '',
    spot: touch.spot ?? '',
    counted: touch.counted ?? 'dot',
    fastenings: touch.fastenings === undefined ? '' : String(touch.fastenings),
    dots: touch.dots === undefined ? '' : String(touch.dots),
    care: marker?.care ?? '',
  };
};

const touchOf = (draft: Draft): Touch => ({
  ...Object.fromEntries(PARTS.filter((part) => draft[part] !== '').map((part) => [part, draft[part]])),
  ...(draft.fastenings === '' ? {} : { fastenings: Number(draft.fastenings) }),
  ...(draft.dots === '' ? {} : { dots: Number(draft.dots), counted: draft.counted }),
});

/** One of the words that are heard; the household's own word stays where it has one. */
const Choice = ({
  id,
  part,
  value,
  choose,
}: {
  id: string;
  part: Part;
  value: string;
  choose: (value: string) => void;
}) => {
  const words: readonly string[] = KNOWN[part];
  const offered = value === '' || words.includes(value) ? words : [value, ...words];
  return (
    <Field id={id} label={t(`marker-${part}`)}>
      <select id={id} value={value} onChange={(event) => choose(event.currentTarget.value)}>
        {part !== 'counted' && <option value="">{t('marker-not-said')}</option>}
        {offered.map((word) => (
          <option key={word} value={word}>
            {part === 'counted' ? t(`marker-counted-${word}`) : recordWord(word)}
          </option>
        ))}
      </select>
    </Field>
  );
};

const Count = ({
  id,
  label,
  value,
  set,
}: {
  id: string;
  label: string;
  value: string;
  set: (value: string) => void;
}) => (
  <Field id={id} label={label}>
    <input
      id={id}
      class="number"
      inputMode="numeric"
      value={value}
      onInput={(event) => set(event.currentTarget.value)}
    />
  </Field>
);

const MarkerForm = ({ marker, done }: { marker: Marker | null; done: () => Promise<void> }) => {
  const [draft, setDraft] = useState(() => draftOf(marker));
  /** It would feel like another: said once, and done at the second press. */
  const [alike, setAlike] = useState(false);
  const { said, run } = useDoing();
  const id = `marker-${marker?.id ?? 'new'}`;
  const set = (change: Partial<Draft>): void => {
    setAlike(false);
    setDraft({ ...draft, ...change });
  };
  const isAsItWas = JSON.stringify(draft) === JSON.stringify(draftOf(marker));
  const save = (): Promise<boolean> =>
    run(
      async () => {
        if (Object.keys(touchOf(draft)).length === 0) throw new Error(t('marker-no-touch'));
        if (isAsItWas) return;
        const body = { touch: touchOf(draft), care: draft.care.trim() || null, anyway: alike };
        try {
          await (marker === null
            ? service.call('POST', '/v1/kitchen/markers', body)
            : service.call('PATCH', `/v1/kitchen/markers/${encodeURIComponent(marker.id)}`, body));
        } catch (error) {
          // What is left to refuse of a marker is that it feels like another.
          if (error instanceof ServiceProblem && error.problem.code === 'refused') setAlike(true);
          throw error;
        }
        setAlike(false);
        if (marker === null) setDraft(draftOf(null));
        await done();
      },
      marker === null ? t('marker-added') : t('marker-changed'),
    );
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      {PARTS.map((part) => (
        <Choice
          key={part}
          id={`${id}-${part}`}
          part={part}
          value={draft[part]}
          choose={(value) => set({ [part]: value })}
        />
      ))}
      <Count
        id={`${id}-fastenings`}
        label={t('marker-fastenings')}
        value={draft.fastenings}
        set={(value) => set({ fastenings: value })}
      />
      <Count
        id={`${id}-dots`}
        label={t('marker-dots')}
        value={draft.dots}
        set={(value) => set({ dots: value })}
      />
      {draft.dots !== '' && (
        <Choice
          id={`${id}-counted`}
          part="counted"
          value={draft.counted}
          choose={(value) => set({ counted: value })}
        />
      )}
      <Field id={`${id}-care`} label={t('marker-care')}>
        <input
          id={`${id}-care`}
          maxLength={120}
          value={draft.care}
          onInput={(event) => set({ care: event.currentTarget.value })}
        />
      </Field>
      <button type="submit">
        {alike ? t('marker-anyway') : marker === null ? t('marker-add') : t('save')}
      </button>
      <SaidHere said={said} />
    </form>
  );
};

/** A form that is there once it is opened: a kitchen may have hundreds of markers. */
const Fold = ({ line, children }: { line: string; children: () => ComponentChildren }) => {
  const [isOpen, setOpen] = useState(false);
  return (
    <details class="card" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{line}</summary>
      {isOpen && children()}
    </details>
  );
};

/** Folded by itself; what came of a change stands by the button, so it stays open. */
const OneMarker = ({
  marker,
  on,
  mayBuild,
  refresh,
}: {
  marker: Marker;
  /** The food it stands on. */
  on: string | null;
  mayBuild: boolean;
  refresh: () => Promise<void>;
}) => {
  const where = on === null ? t('marker-spare') : t('marker-on', { item: on });
  const line = [t('marker-line', { marker: nameOf(marker), where }), marker.care]
    .filter((part) => part !== null)
    .join('; ');
  return mayBuild ? (
    <Fold line={line}>{() => <MarkerForm marker={marker} done={refresh} />}</Fold>
  ) : (
    <p>{line}</p>
  );
};

export const Markers = ({ mayBuild }: { mayBuild: boolean }) => {
  const [markers, setMarkers] = useState<readonly Marker[] | null>(null);
  const [names, setNames] = useState<ReadonlyMap<string, string>>(new Map());
  const [error, setError] = useState('');
  const refresh = useCallback(async () => {
    const [all, items] = await Promise.all([service.markers(), service.items()]);
    setNames(new Map(items.map(({ id, name }) => [id, name])));
    setMarkers(all);
  }, []);
  useEffect(() => void refresh().catch((reason: unknown) => setError(plainly(reason))), [refresh]);
  return (
    <section aria-labelledby="home-markers">
      <h2 id="home-markers">{t('markers')}</h2>
      <p role="alert" class="notice">
        {error}
      </p>
      {markers === null ? (
        error === '' && <p>{t('one-moment')}</p>
      ) : (
        <>
          {markers.length === 0 ? (
            <p>{t('markers-none')}</p>
          ) : (
            <details>
              <summary>{t('markers-all', { count: markers.length })}</summary>
              {markers.map((marker) => (
                <OneMarker
                  key={marker.id}
                  marker={marker}
                  on={marker.onItemId === null ? null : (names.get(marker.onItemId) ?? null)}
                  mayBuild={mayBuild}
                  refresh={refresh}
                />
              ))}
            </details>
          )}
          {mayBuild && (
            <Fold line={t('marker-add-one')}>{() => <MarkerForm marker={null} done={refresh} />}</Fold>
          )}
        </>
      )}
    </section>
  );
};
