/** The plots page: each plot as a sentence, a drawing and a table that say the same. */
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

const bar = 22;
const gap = 6;
const labelWidth = 190;
const width = 640;

/** Bars of one hue in different fills, so that series are told apart without colour. */
const Drawing = ({ plot }: { plot: PlotView }) => {
  const most = Math.max(1, ...plot.series.flatMap((series) => series.counts));
  const rowHeight = plot.series.length * bar + gap;
  const room = width - labelWidth - 40;
  return (
    <svg
      viewBox={`0 0 ${width} ${plot.groups.length * rowHeight}`}
      role="img"
      aria-label={plot.sentence}
      class="plot"
    >
      {plot.groups.map((group, row) => (
        <g key={group}>
          <text
            x={labelWidth - 8}
            y={row * rowHeight + rowHeight / 2}
            text-anchor="end"
            dominant-baseline="middle"
          >
            {group}
          </text>
          {plot.series.map((series, index) => {
            const count = series.counts[row] ?? 0;
            const length = (count / most) * room;
            const y = row * rowHeight + index * bar;
            return (
              <g key={series.name}>
                <rect x={labelWidth} y={y} width={length} height={bar - 4} class={`bar bar-${index}`} />
                {count > 0 && (
                  <text x={labelWidth + length + 6} y={y + bar / 2} dominant-baseline="middle">
                    {count}
                  </text>
                )}
              </g>
            );
          })}
        </g>
      ))}
    </svg>
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
      <div class="wide" role="region" aria-labelledby={plot.id} tabIndex={0}>
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
      <h1>Plots</h1>
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
