import { useEffect, useState } from 'react';
import type { VersionComparison } from '../engine/protocol.js';
import { useSheet, useView } from '../engine/sheet.js';
import { useInspector } from '../inspector/opening.js';
import { getDefinition, listVersions, type VersionLine } from '../lib/api.js';
import { useAddress } from '../lib/useAddress.js';
import type { BenchProps } from './Bench.js';

/** Every version with who and why; one opens, or stands beside what is on the screen. */
export function Versions({ opened }: Pick<BenchProps, 'opened'>) {
  const [versions, setVersions] = useState<readonly VersionLine[]>();
  const [refused, setRefused] = useState<string>();
  const [beside, setBeside] = useState<number>();
  const [, go] = useAddress();
  const { id, latest } = opened.plant;
  useEffect(() => {
    listVersions(id).then(setVersions, (error: Error) => setRefused(error.message));
  }, [id, latest, opened.version]);
  return (
    <section className="versions" aria-label="Versions">
      <h2 className="does-title">Versions</h2>
      {refused ? <p className="said-act">{refused}</p> : null}
      <ol className="version-list">
        {(versions ?? []).map(({ number, author, reason, createdAt }) => (
          <li key={number} className={number === opened.version ? 'version-open' : ''}>
            <span className="version-number">{number}</span>
            <span className="version-why">
              “{reason}”{' '}
              <span className="caption">
                {author}, {when(createdAt)}
              </span>
            </span>
            <span className="version-ways">
              {number === opened.version ? (
                <span className="caption">open</span>
              ) : (
                <button
                  type="button"
                  className="word"
                  onClick={() => go({ version: number === latest ? undefined : number, changes: {}, open: undefined })}
                >
                  Open
                </button>
              )}
              <button
                type="button"
                className="word"
                aria-pressed={beside === number}
                onClick={() => setBeside(beside === number ? undefined : number)}
              >
                {beside === number ? 'Put away' : 'Lay beside'}
              </button>
            </span>
          </li>
        ))}
      </ol>
      {beside === undefined ? null : <Beside plant={id} number={beside} open={opened.version} />}
    </section>
  );
}

function Beside({ plant, number, open }: { readonly plant: string; readonly number: number; readonly open: number }) {
  const sheet = useSheet();
  const view = useView();
  const inspector = useInspector();
  const [compared, setCompared] = useState<VersionComparison>();
  const [refused, setRefused] = useState<string>();
  useEffect(() => {
    let dropped = false;
    getDefinition(plant, number)
      .then(({ wire }) => sheet.engine.ask('compare', { wire }))
      .then(
        (next) => !dropped && setCompared(next),
        (error: Error) => !dropped && setRefused(error.message),
      );
    return () => {
      dropped = true;
    };
  }, [sheet, plant, number, view]);
  if (refused) return <p className="said-act">{refused}</p>;
  if (!compared) return null;
  const { differences } = compared;
  if (differences.length === 0) return <p className="does-hint">Nothing differs between version {number} and what is on the screen.</p>;
  return (
    <div className="table-room">
      <table className="beside">
        <caption>
          Version {number} beside version {open}
          {view?.bent.length ? ' as pulled here' : ''}: {differences.length} numbers differ. What the plant entered stands first.
        </caption>
        <thead>
          <tr>
            <th scope="col">number</th>
            <th scope="col">version {number}</th>
            <th scope="col">here</th>
            <th scope="col">change</th>
          </tr>
        </thead>
        <tbody>
          {differences.slice(0, 40).map(({ id, meaning, before, after, relative, kind }) => (
            <tr key={id} className={kind === 'entered' ? 'beside-entered' : ''}>
              <th scope="row">
                <button type="button" className="word" onClick={(event) => inspector.open(id, event.currentTarget)}>
                  {meaning}
                </button>
              </th>
              <td>{before}</td>
              <td>{after}</td>
              <td>{relative === undefined ? '' : `${relative < 0 ? '−' : '+'}${Math.abs(100 * relative).toFixed(1)} %`}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {differences.length > 40 ? <p className="caption">and {differences.length - 40} more, all smaller</p> : null}
    </div>
  );
}

const when = (iso: string): string =>
  new Date(iso).toLocaleString('en-GB', { day: 'numeric', month: 'short', year: 'numeric', hour: '2-digit', minute: '2-digit' });
