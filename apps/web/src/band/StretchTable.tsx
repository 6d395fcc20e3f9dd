import { memo } from 'react';
import type { SlabStretch, TunnelStretch } from '../engine/along-protocol.js';

/** The numbers of a strip, minute by minute, and what the model says of itself. */
export const StretchTable = memo(function StretchTable({ stretch }: { readonly stretch: SlabStretch | TunnelStretch }) {
  const { table, said, station } = stretch;
  return (
    <details className="as-table along-table">
      <summary>As a table: {station}</summary>
      <div className="table-room" tabIndex={0} role="region" aria-label={table.caption}>
        <table>
          <caption>{table.caption}</caption>
          <thead>
            <tr>
              <th scope="col">after</th>
              {table.head.map((word) => (
                <th key={word} scope="col">
                  {word}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {table.rows.map(({ name, cells }) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                {cells.map(({ text }, k) => (
                  <td key={k}>{text}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <ul className="along-notes">
        {said.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </details>
  );
});
