/** Charts: what the counts say in sentences first, then each count on a line of its own with its bar. */
import { render } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Item, Me } from '../../../shared/client/http.js';
import type { chartView } from '../../../shared/wire/charts.js';
import type { z } from 'zod';
import { Gate } from './gate.js';
import { amountWords, t } from './language.js';
import { Menu } from './menu.js';
import { plainly, service } from './service.js';
import { daysBetween } from './words.js';

type Chart = z.infer<typeof chartView>;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A group's name in figures where it is a day or a month, else its words. */
const nameOf = (chart: Chart, row: number, locale: string): string => {
  const day = chart.days?.[row] ?? null;
  if (day === null) return capital(chart.groups[row] ?? '');
  const isMonth = day.length === 7;
  return new Intl.DateTimeFormat(
    locale,
    isMonth
      ? { month: 'long', year: 'numeric', timeZone: 'UTC' }
      : { weekday: 'long', day: 'numeric', month: 'long', timeZone: 'UTC' },
  ).format(new Date(`${isMonth ? `${day}-01` : day}T00:00:00Z`));
};

const OneChart = ({ chart, locale }: { chart: Chart; locale: string }) => {
  const most = Math.max(0, ...chart.series.flatMap(({ counts }) => counts));
  const rows = chart.groups
    .map((_, row) => ({
      row,
      counts: chart.series.map(({ name, counts }) => ({ name, count: counts[row] ?? 0 })),
    }))
    .filter(({ counts }) => counts.some(({ count }) => count > 0));
  return (
    <section aria-labelledby={chart.id}>
      <h2 id={chart.id}>{chart.title}</h2>
      <p lang={locale}>{chart.sentence}</p>
      {most > 0 && (
        <ul class="chart" aria-labelledby={chart.id}>
          {rows.map(({ row, counts }) => (
            <li key={row}>
              <b>{nameOf(chart, row, locale)}</b>
              {counts.map(({ name, count }, index) =>
                count === 0 ? null : (
                  <span class="chart-line" key={name}>
                    <span>
                      {chart.series.length > 1 ? `${name}: ` : ''}
                      {count}
                    </span>
                    <span
                      class={`bar bar-${index}`}
                      style={{ inlineSize: `${(count / most) * 60}%` }}
                      aria-hidden="true"
                    />
                  </span>
                ),
              )}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
};

const THROWN_DAYS = 60;

/** What was thrown out lately, newest first, with how old it had become: the record keeps no reason. */
const ThrownOut = ({ items, me }: { items: readonly Item[]; me: Me }) => {
  const { locale, timeZone } = me.household;
  const dayOf = (at: string): string => new Intl.DateTimeFormat('en-CA', { timeZone }).format(new Date(at));
  const today = dayOf(new Date().toISOString());
  const newest = items.reduce(
    (latest, { gone }) => (gone !== null && gone.at > latest ? gone.at : latest),
    '',
  );
  const from = newest === '' ? today : dayOf(newest);
  const thrown = items
    .filter(({ gone }) => gone?.how === 'thrown out' && daysBetween(dayOf(gone.at), from) <= THROWN_DAYS)
    .sort((one, other) => (other.gone?.at ?? '').localeCompare(one.gone?.at ?? ''));
  const about = (item: Item): string => {
    const at = dayOf(item.gone?.at ?? '');
    const start = item.dates.thawed ?? item.dates.opened ?? item.dates.made ?? item.dates.bought;
    const age = start === undefined ? null : daysBetween(start, at);
    const what =
      item.dates.thawed !== undefined ? 'thawed' : item.dates.opened !== undefined ? 'opened' : 'kept';
    return [
      amountWords(item.amount, item.howMuch),
      age === null ? t('thrown-age-unknown') : t(`thrown-${what}`, { days: age }),
      new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeZone: 'UTC' }).format(
        new Date(`${at}T00:00:00Z`),
      ),
    ]
      .filter((part) => part !== null)
      .join(' · ');
  };
  return (
    <section aria-labelledby="thrown">
      <h2 id="thrown">{t('thrown-heading')}</h2>
      {thrown.length === 0 ? (
        <p>{t('thrown-nothing')}</p>
      ) : (
        <ul>
          {thrown.map((item) => (
            <li key={item.id}>
              <b>{item.name}</b>: {about(item)}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
};

const Charts = ({ me }: { me: Me }) => {
  const [charts, setCharts] = useState<readonly Chart[] | null>(null);
  const [items, setItems] = useState<readonly Item[]>([]);
  const [error, setError] = useState('');
  useEffect(() => {
    Promise.all([
      service.call<Chart[]>('GET', '/v1/charts'),
      service.call<Item[]>('GET', '/v1/kitchen/items?gone=true'),
    ]).then(
      ([all, every]) => {
        setCharts(all);
        setItems(every);
      },
      (reason: unknown) => setError(plainly(reason)),
    );
  }, []);
  const isEmpty = items.length === 0;
  return (
    <main id="main">
      <h1>{t('charts-title')}</h1>
      <p role="alert" class="notice">
        {error}
      </p>
      {charts === null && error === '' && <p>{t('one-moment')}</p>}
      {charts !== null && isEmpty && <p>{t('charts-nothing')}</p>}
      {charts !== null && !isEmpty && (
        <>
          <ThrownOut items={items} me={me} />
          {charts.map((chart) => (
            <OneChart key={chart.id} chart={chart} locale={me.household.locale} />
          ))}
        </>
      )}
    </main>
  );
};

const Page = () => (
  <Gate here="charts">
    {(me) => (
      <>
        <Menu here="charts" household={me.household.name} />
        <Charts me={me} />
      </>
    )}
  </Gate>
);

const root = document.getElementById('page');
if (root !== null) render(<Page />, root);
