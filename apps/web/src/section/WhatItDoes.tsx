import { useCalmView, useSheet, useView } from '../engine/sheet.js';
import { useInspector } from '../inspector/opening.js';
import { useAddress } from '../lib/useAddress.js';
import { Variance } from './Variance.js';

/** What a pull does, largest first; without one, what makes the mass of the bar vary. */
export function WhatItDoes() {
  const view = useCalmView();
  if (!view) return null;
  if (view.bent.length > 0) return <Consequences />;
  return (
    <div className="does">
      <Variance />
      <p className="does-hint">
        Pull an edge of the bar, a water level or any number, or press the arrow keys on it: everything answers. Press a number to see where
        it comes from.
      </p>
      <TrialButtons />
    </div>
  );
}

function Consequences() {
  const view = useCalmView()!;
  const { open } = useInspector();
  return (
    <div className="does">
      <div className="does-head">
        <h2 className="does-title">What this does</h2>
        <TrialButtons />
      </div>
      <ul className="does-list">
        {view.consequences.map(({ id, meaning, truth, now, breaks, mends }) => (
          <li key={id} className={breaks ? 'does-breaks' : ''}>
            <button type="button" className="does-line" data-quantity={id} onClick={(event) => open(id, event.currentTarget)}>
              <span className="does-name">
                {breaks ? <span aria-label="act:">▼ </span> : null}
                {meaning}
              </span>
              <span className="does-from">{truth}</span>
              <span className="does-arrow" aria-label="becomes">
                →
              </span>
              <span className="does-to">{now}</span>
              <span className="does-word">{breaks ?? (mends ? 'comes right' : '')}</span>
            </button>
          </li>
        ))}
        {view.consequences.length === 0 ? <li className="does-none">Nothing that shows in the digits.</li> : null}
      </ul>
    </div>
  );
}

/** Undo, redo, back to the truth, and on to the bench. */
export function TrialButtons() {
  const view = useView()!;
  const { engine } = useSheet();
  const [address, go] = useAddress();
  const bent = view.bent.length > 0;
  if (!bent && !view.canUndo && !view.canRedo) return null;
  return (
    <p className="trial-buttons">
      {bent ? (
        <button type="button" className="button button-main" onClick={() => engine.step('truth')}>
          Back to truth
        </button>
      ) : null}
      <button type="button" className="button" disabled={!view.canUndo} onClick={() => engine.step('undo')}>
        Undo
      </button>
      <button type="button" className="button" disabled={!view.canRedo} onClick={() => engine.step('redo')}>
        Redo
      </button>
      {bent && address.screen !== 'bench' ? (
        <button type="button" className="button" onClick={() => go({ screen: 'bench', open: undefined })}>
          Keep it at the Bench
        </button>
      ) : null}
    </p>
  );
}
