/** Bringing in a list somebody has already: what each heading and row is taken for is shown before any is taken. */
import { useState } from 'preact/hooks';
import type { z } from 'zod';
import { textOfFile } from '../../../shared/exchange/file-text.js';
import type { importDone, importRequest } from '../../../shared/wire/exchange.js';
import { Field, SaidHere, useDoing } from './form.js';
import { newId } from './ids.js';
import { langOfRecord, t } from './language.js';
import { service } from './service.js';

type Looked = z.infer<typeof importDone>;
type Asked = z.input<typeof importRequest>;

/** Rows that are shown; what is wrong is told of all. */
const SHOWN = 20;

interface Draft {
  readonly file: Pick<Asked, 'text' | 'form'> | null;
  readonly makePlaces: boolean;
  readonly looked: Looked | null;
}

const column = (name: string | null): string =>
  name === null ? t('bring-left-out') : t(`column-${name.replaceAll(' ', '-')}`);

const summary = ({ items, places, already }: Looked): string =>
  [
    t('bring-items', { count: items }),
    places.length > 0 ? t('bring-places', { places: places.join(', ') }) : '',
    already > 0 ? t('bring-already', { count: already }) : '',
  ]
    .filter((part) => part !== '')
    .join(' ');

const Guessed = ({ guessed }: { guessed: NonNullable<Looked['guessed']> }) => (
  <>
    <h3>{t('bring-headings')}</h3>
    <ul>
      {guessed.headings.map(({ heading, column: name }, at) => (
        <li key={at}>{t('bring-pair', { what: heading.trim(), value: column(name) })}</li>
      ))}
    </ul>
    <h3>{t('bring-rows')}</h3>
    <ul>
      {guessed.rows.slice(0, SHOWN).map(({ row, cells }) => (
        <li key={row}>
          {t('bring-row', {
            row,
            cells: cells
              .map(({ column: name, value }) => t('bring-pair', { what: column(name), value }))
              .join('; '),
          })}
        </li>
      ))}
    </ul>
    {guessed.rows.length > SHOWN && <p>{t('bring-more-rows', { count: guessed.rows.length - SHOWN })}</p>}
  </>
);

const Faults = ({ faults }: { faults: Looked['faults'] }) => (
  <div role="alert" class="notice">
    <p>{t('bring-wrong')}</p>
    <ul>
      {faults.map(({ row, column: name, problem }, at) => (
        <li key={at} lang={langOfRecord()}>
          {name === null ? `${row}: ${problem}` : `${row}, ${name}: ${problem}`}
        </li>
      ))}
    </ul>
    {faults.some((fault) => fault.column === 'place') && <p>{t('bring-make-places-hint')}</p>}
  </div>
);

export const BringIn = ({ refresh }: { refresh: () => Promise<void> }) => {
  const [draft, setDraft] = useState<Draft>({ file: null, makePlaces: false, looked: null });
  const { said, run } = useDoing();
  const { file, makePlaces, looked } = draft;

  const look = async (next: Pick<Draft, 'file' | 'makePlaces'>): Promise<void> => {
    setDraft({ ...next, looked: null });
    if (next.file === null) return;
    const body: Asked = { ...next.file, makePlaces: next.makePlaces, dryRun: true };
    await run(async () => {
      const seen = await service.call<Looked>('POST', '/v1/household/import', body);
      setDraft({ ...next, looked: seen });
    }, '');
  };
  const open = async (chosen: File | undefined): Promise<void> => {
    const form = chosen?.name.toLowerCase().endsWith('.json') === true ? 'json' : 'csv';
    const text = chosen === undefined ? null : textOfFile(new Uint8Array(await chosen.arrayBuffer()));
    await look({ file: text === null ? null : { text, form }, makePlaces });
  };
  const bring = (): Promise<boolean> =>
    run(
      async () => {
        const body: Asked = { ...file!, makePlaces };
        await service.call<Looked>('POST', '/v1/household/import', body, newId());
        setDraft({ file: null, makePlaces, looked: null });
        await refresh();
      },
      t('bring-done', { count: looked?.items ?? 0 }),
    );

  const fine = looked !== null && looked.faults.length === 0;
  return (
    <section aria-labelledby="bring">
      <h2 id="bring">{t('bring')}</h2>
      <Field id="bring-file" label={t('bring-file')} hint={t('bring-hint')}>
        <input
          id="bring-file"
          type="file"
          accept=".csv,.tsv,.txt,.json,text/csv,text/plain,application/json"
          aria-describedby="bring-file-hint"
          onChange={(event) => void open(event.currentTarget.files?.[0])}
        />
      </Field>
      <label>
        <input
          type="checkbox"
          checked={makePlaces}
          onChange={() => void look({ file, makePlaces: !makePlaces })}
        />
        {t('bring-make-places')}
      </label>
      {looked?.guessed && <Guessed guessed={looked.guessed} />}
      {looked !== null && looked.faults.length > 0 && <Faults faults={looked.faults} />}
      <p role="status">{fine ? summary(looked) : ''}</p>
      {fine && looked.items > 0 && (
        <button type="button" onClick={() => void bring()}>
          {t('bring-do')}
        </button>
      )}
      <SaidHere said={said} />
    </section>
  );
};
