import { memo } from 'react';
import { Picture } from '../drawing/Marks.js';
import type { Cell, FigureTable } from '../engine/trial-protocol.js';
import { useInspector } from '../inspector/opening.js';

/** Longer tables are unfolded by whoever wants them. */
const short = 14;

/** Numbers of an answer; those of the chain open where they come from. */
export const Figures = memo(function Figures({ table }: { readonly table: FigureTable }) {
  if (table.rows.length === 0) return null;
  if (table.rows.length <= short) return <Room table={table} />;
  return (
    <details className="as-table">
      <summary>{table.caption}, as a table</summary>
      <Room table={table} />
    </details>
  );
});

function Room({ table: { caption, head, rows, words = [] } }: { readonly table: FigureTable }) {
  return (
    <div className="table-room" tabIndex={0} role="region" aria-label={caption}>
      <table className="trial-table">
        <caption>{caption}</caption>
        <thead>
          <tr>
            <td />
            {head.map((word, at) => (
              <th key={at} scope="col" className={words.includes(at) ? 'trial-words' : ''}>
                {word === '' ? <span className="unseen">what follows</span> : word}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, id, cells }, at) => (
            <tr key={`${at} ${name}`}>
              <th scope="row">{id === undefined ? name : <Opens id={id}>{name}</Opens>}</th>
              {cells.map((cell, i) => (
                <td key={i} className={words.includes(i) ? 'trial-words' : ''}>
                  <CellView cell={cell} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function CellView({ cell: { text, id, act, sill } }: { readonly cell: Cell }) {
  return (
    <span className={act ? 'said-act trial-cell' : 'trial-cell'}>
      {act && text !== '' ? <span className="unseen">act: </span> : null}
      {id === undefined ? text : <Opens id={id}>{text}</Opens>}
      {sill ? <Picture className="sill" marks={sill.marks} width={sill.width} height={sill.height} /> : null}
    </span>
  );
}

function Opens({ id, children }: { readonly id: string; readonly children: string }) {
  const { open } = useInspector();
  return (
    <button type="button" className="word" data-quantity={id} onClick={(event) => open(id, event.currentTarget)}>
      {children}
    </button>
  );
}
