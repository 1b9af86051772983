/** The charts page: each chart as a sentence, a drawing and a table that say the same. */
import { render } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Gate } from './gate.js';
import { Menu } from './menu.js';
import { plainly, service } from './service.js';

interface PlotView {
  readonly id: string;
  readonly title: string;
  readonly sentence: string;
  readonly groups: readonly string[];
  readonly series: readonly { readonly name: string; readonly counts: readonly number[] }[];
}

/**
 * Bars of one hue in different fills, so that series are told apart without colour. The table below
 * says the same, so a screen reader is given the sentence alone.
 */
const Drawing = ({ plot }: { plot: PlotView }) => {
  const most = Math.max(1, ...plot.series.flatMap((series) => series.counts));
  return (
    <div role="img" aria-label={plot.sentence} class="plot">
      {plot.groups.map((group, row) => (
        <div class="plot-row" key={group}>
          <span>{group}</span>
          <span>
            {plot.series.map((series, index) => {
              const count = series.counts[row] ?? 0;
              return (
                <span class="plot-bar" key={series.name}>
                  <svg width={`${(count / most) * 80}%`} height="18">
                    <rect width="100%" height="18" class={`bar bar-${index}`} />
                  </svg>
                  {count > 0 && ` ${count}`}
                </span>
              );
            })}
          </span>
        </div>
      ))}
    </div>
  );
};

const OnePlot = ({ plot }: { plot: PlotView }) => (
  <section aria-labelledby={plot.id}>
    <h2 id={plot.id}>{plot.title}</h2>
    <p>{plot.sentence}</p>
    {plot.series.length > 1 && (
      <ul class="key" aria-label="Bars">
        {plot.series.map((series, index) => (
          <li key={series.name}>
            <svg width="24" height="16" aria-hidden="true">
              <rect width="24" height="16" class={`bar bar-${index}`} />
            </svg>{' '}
            {series.name}
          </li>
        ))}
      </ul>
    )}
    <Drawing plot={plot} />
    <details>
      <summary>As a table</summary>
      <div class="wide" role="region" aria-label={`${plot.title}, as a table`} tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th scope="col">Group</th>
              {plot.series.map((series) => (
                <th scope="col" key={series.name}>
                  {series.name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {plot.groups.map((group, row) => (
              <tr key={group}>
                <th scope="row">{group}</th>
                {plot.series.map((series) => (
                  <td key={series.name}>{series.counts[row] ?? 0}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  </section>
);

const Plots = () => {
  const [plots, setPlots] = useState<readonly PlotView[] | null>(null);
  const [error, setError] = useState('');
  useEffect(() => {
    service
      .call<PlotView[]>('GET', '/v1/plots')
      .then(setPlots, (reason: unknown) => setError(plainly(reason)));
  }, []);
  return (
    <main id="main">
      <h1>Charts</h1>
      <p role="alert" class="notice">
        {error}
      </p>
      {plots === null && error === '' && <p>One moment.</p>}
      {plots?.map((plot) => (
        <OnePlot key={plot.id} plot={plot} />
      ))}
    </main>
  );
};

const Page = () => (
  <>
    <Menu here="plots" />
    <Gate>{() => <Plots />}</Gate>
  </>
);

const root = document.getElementById('page');
if (root !== null) render(<Page />, root);
