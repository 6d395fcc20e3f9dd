import { useEffect, useState } from 'react';
import { useSheet, useShown, useView } from '../engine/sheet.js';
import type { KnobLine, RemedyLine } from '../engine/protocol.js';
import { digits } from '../number/words.js';
import { Part } from './Part.js';

/** What would bring the number to a value: each knob by itself, least disturbing first, and doing nothing. */
export function WhatWouldMakeIt({
  id,
  knobs,
  uncertainty = 0,
}: {
  readonly id: string;
  readonly knobs: readonly KnobLine[];
  readonly uncertainty?: number | undefined;
}) {
  const sheet = useSheet();
  const view = useView();
  const shown = useShown(id)!;
  const { meta } = shown;
  const first = wish(meta.window, shown.truth, uncertainty, meta.unit);
  const [text, setText] = useState(() => digits(first, meta));
  const [lines, setLines] = useState<readonly RemedyLine[]>();
  const wanted = read(text);
  const asked = knobs
    .slice(0, 3)
    .map((knob) => knob.id)
    .join(' ');
  useEffect(() => {
    if (wanted === undefined) return undefined;
    let dropped = false;
    const timer = setTimeout(() => {
      sheet.engine.ask('remedies', { id, value: wanted, knobs: asked.split(' ') }).then(
        (next) => !dropped && setLines(next),
        () => !dropped && setLines([]),
      );
    }, 200);
    return () => {
      dropped = true;
      clearTimeout(timer);
    };
  }, [sheet, id, wanted, asked, view]);
  return (
    <Part name="what would make it">
      <p className="wish">
        <input
          aria-label={`What ${meta.meaning} should be${meta.unit === '' ? '' : `, ${meta.unit}`}`}
          inputMode="decimal"
          size={7}
          value={text}
          onChange={(event) => setText(event.target.value)}
        />
        {meta.unit === '' ? null : <span className="figure-unit">{meta.unit}</span>}
        {wanted === undefined ? <span className="said-act"> ‘{text}’ is no number. Write it as 9.5.</span> : null}
      </p>
      <ol className="remedies">
        {(lines ?? []).map((line, at) => (
          <li key={at} className={line.kind === 'set' || line.kind === 'nothing' ? '' : 'remedy-cannot'}>
            <span className="remedy-title">{line.title}</span>
            <span className="remedy-detail">{line.detail}</span>
            {line.set ? (
              <button type="button" className="button" onClick={() => sheet.engine.pull(line.set!, true)}>
                Try
              </button>
            ) : null}
          </li>
        ))}
      </ol>
    </Part>
  );
}

/** The aim; else the limit, as far inside as the model may be off; else a twentieth less than it is, or a degree. */
function wish(
  window: { readonly low?: number; readonly high?: number; readonly aim?: number } | undefined,
  value: number,
  uncertainty: number,
  unit: string,
): number {
  const { low, high, aim } = window ?? {};
  if (aim !== undefined) return aim;
  if (high !== undefined) return value > high ? high : Math.max(0, high - (uncertainty || 0.1 * Math.abs(high)));
  if (low !== undefined) return value < low ? low : low + (uncertainty || 0.1 * Math.abs(low));
  return /^°/.test(unit) ? value - 1 : 0.95 * value;
}

/** '48.7', '48,7' and '1 050' are numbers. */
function read(text: string): number | undefined {
  const value = Number(
    text
      .replace(/[\s\u2009\u202f]/g, '')
      .replace('−', '-')
      .replace(/,(?=\d+$)/, '.'),
  );
  return text.trim() === '' || !Number.isFinite(value) ? undefined : value;
}
