import { useEffect, useState } from 'react';
import { useSheet } from '../engine/sheet.js';
import { getRunSheet, runSheetAddress } from '../lib/api.js';
import { usePrefs } from '../lib/prefs.js';
import type { Opened } from '../lib/useOpenVersion.js';
import '../styles/papers.css';
import { RunSheet } from './RunSheet.js';

/** The run sheet of the open version as it prints. */
export function Papers({ opened }: { readonly opened: Extract<Opened, { state: 'open' }> }) {
  const { catalog } = useSheet();
  const { units } = usePrefs();
  const [html, setHtml] = useState<string>();
  const [refused, setRefused] = useState<string>();
  const bar = catalog!.bar.slug;
  const { version, plant } = opened;
  useEffect(() => {
    let dropped = false;
    getRunSheet(plant.id, version, bar, units).then(
      (text) => {
        if (dropped) return;
        setHtml(text);
        setRefused(undefined);
      },
      (error: Error) => !dropped && setRefused(error.message),
    );
    return () => {
      dropped = true;
    };
  }, [plant.id, version, bar, units]);
  return (
    <section className="papers" aria-label="Run sheet">
      <div className="opening no-print">
        <h1 className="title">
          The run sheet of {catalog!.bar.name}, version {version}.
        </h1>
        <p className="sub">As it prints, on A4. A press on what is checked opens where its number comes from.</p>
        <p className="papers-ways">
          <a className="button button-main" href={runSheetAddress(plant.id, version, bar, units, 'pdf')} target="_blank" rel="noreferrer">
            PDF
          </a>
          <a className="button" href={runSheetAddress(plant.id, version, bar, units, 'html')} target="_blank" rel="noreferrer">
            As a page of its own
          </a>
          <button type="button" className="button" onClick={() => window.print()}>
            Print
          </button>
        </p>
      </div>
      {refused ? <p className="cannot said-act">{refused}</p> : null}
      {html === undefined ? refused ? null : <p className="waiting">The sheet is being laid out.</p> : <RunSheet html={html} />}
    </section>
  );
}
