import { memo, useMemo, useState } from 'react';
import { Picture } from '../drawing/Marks.js';
import type { EvidenceRow, ModelLine } from '../lib/api.js';
import { deviationStrip } from './deviations.js';

const wide = 190;

/** One model: its name, its checks on their window, and behind it every check with its source. */
export const ModelRow = memo(function ModelRow({
  model,
  rows,
  outside,
}: {
  readonly model: ModelLine;
  readonly rows: readonly EvidenceRow[];
  readonly outside: number;
}) {
  const [isOpen, setOpen] = useState(false);
  const marks = useMemo(() => deviationStrip(rows, wide), [rows]);
  const said = rows.length === 0 ? 'no check of its own' : outside === 0 ? `${rows.length} inside` : `${outside} of ${rows.length} outside`;
  return (
    <li className="model">
      <button type="button" className="model-line" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
        <span className="model-title">{model.title}</span>
        <span className="model-strip">{rows.length > 0 ? <Picture marks={marks} width={wide} height={24} /> : null}</span>
        <span className={outside > 0 ? 'model-said said-act' : 'model-said'}>{said}</span>
      </button>
      {isOpen ? <Checks model={model} rows={rows} /> : null}
    </li>
  );
});

function Checks({ model, rows }: { readonly model: ModelLine; readonly rows: readonly EvidenceRow[] }) {
  return (
    <div className="model-checks">
      <p className="model-about">{model.about}</p>
      <ul className="sources">
        {model.sources.map(({ key, title, address }) => (
          <li key={key}>
            {title}
            {address ? <span className="caption"> {address}</span> : null}
          </li>
        ))}
        <li className="caption">Standing: {model.standing}.</li>
      </ul>
      {rows.length === 0 ? null : (
        <div className="table-room" tabIndex={0} role="region" aria-label={`Checks of ${model.title}`}>
          <table>
            <thead>
              <tr>
                <th scope="col">at</th>
                <th scope="col">outside value</th>
                <th scope="col">ours</th>
                <th scope="col">off by</th>
                <th scope="col">may be off</th>
                <th scope="col">how known</th>
                <th scope="col">source</th>
              </tr>
            </thead>
            <tbody>
              {[...rows]
                .sort((a, b) => Number(a.inside) - Number(b.inside))
                .map((row) => (
                  <tr key={row.id} className={row.inside ? '' : 'said-act'}>
                    <th scope="row">
                      {row.inside ? '' : '▼ '}
                      {inputsOf(row)}
                    </th>
                    <td>
                      {expectedOf(row)} {row.unit === '1' ? '' : row.unit}
                    </td>
                    <td>{row.error ?? numberOf(row.computed)}</td>
                    <td>{row.deviation === null ? '–' : numberOf(row.deviation)}</td>
                    <td>{row.tolerance === 0 ? 'exact' : `± ${numberOf(row.tolerance)}`}</td>
                    <td>
                      {row.kind}, {row.standing}
                    </td>
                    <td className="check-source">
                      {row.source.title}
                      {row.note ? <span className="caption"> {row.note}</span> : null}
                    </td>
                  </tr>
                ))}
            </tbody>
          </table>
        </div>
      )}
    </div>
  );
}

/** 'temperature c 26.85, solids 0.8' */
function inputsOf({ inputs, output }: EvidenceRow): string {
  const list = Object.entries(inputs)
    .map(
      ([key, value]) =>
        `${key.replaceAll('_', ' ')} ${typeof value === 'number' ? numberOf(value) : typeof value === 'object' ? '…' : String(value)}`,
    )
    .slice(0, 4);
  return list.length > 0 ? list.join(', ') : output.replaceAll('_', ' ');
}

function expectedOf({ expected }: EvidenceRow): string {
  if (typeof expected === 'string') return expected.replaceAll('_', ' ');
  if (typeof expected === 'number') return numberOf(expected);
  const [low = null, high = null] = expected;
  return low === null ? `up to ${numberOf(high)}` : high === null ? `from ${numberOf(low)}` : `${numberOf(low)}–${numberOf(high)}`;
}

/** Four significant digits, as a person would write them. */
function numberOf(value: number | string | null): string {
  if (value === null) return '–';
  if (typeof value === 'string') return value.replaceAll('_', ' ');
  if (value === 0) return '0';
  const size = Math.abs(value);
  const text =
    size >= 1e6 || size < 1e-4 ? value.toExponential(2).replace('e', '·10^') : String(Number(value.toPrecision(size >= 1000 ? 5 : 4)));
  return text.replace('-', '−');
}
