import { memo } from 'react';
import { useShown, useSheet } from '../engine/sheet.js';
import { useInspector } from '../inspector/opening.js';
import { Sill } from './Sill.js';
import { useScrub } from './useScrub.js';
import { digits, spoken, stepOf } from './words.js';

export interface FigureProps {
  readonly id: string;
  /** 'row' 24 px over a sill of 84, 'cell' 17 over 46, 'plain' without a sill. */
  readonly size?: 'row' | 'cell' | 'plain' | 'small';
  readonly unit?: boolean;
}

/** A number on its window: a press opens where it comes from, a pull bends it, the arrow keys step it. */
export const Figure = memo(function Figure({ id, size = 'row', unit = false }: FigureProps) {
  const shown = useShown(id);
  const { engine } = useSheet();
  const { open } = useInspector();
  const meta = shown?.meta;
  const window = meta?.window;
  const wide =
    window?.low !== undefined && window.high !== undefined
      ? (window.high - window.low) / 120
      : Math.abs(shown?.truth || shown?.value || 1) / 400;
  const { handlers, wasPull } = useScrub({
    start: () => shown?.value ?? NaN,
    perPx: wide,
    step: meta ? stepOf(meta, shown.value) : 1,
    pull: (value, end) => engine.pull({ [id]: value }, end),
    off: !meta?.bend || Number.isNaN(shown?.value),
  });
  if (!shown || !meta) return <span className={`figure figure-${size} figure-none`}>–</span>;
  const missing = Number.isNaN(shown.value);
  const bent = !missing && digits(shown.value, meta) !== digits(shown.truth, meta);
  const className = [
    'figure',
    `figure-${size}`,
    meta.bend ? 'figure-bends' : '',
    shown.outside !== 0 ? 'figure-act' : '',
    missing ? 'figure-none' : '',
  ]
    .filter(Boolean)
    .join(' ');
  return (
    <button
      type="button"
      className={className}
      data-quantity={id}
      aria-label={spoken(shown)}
      onClick={(event) => {
        if (!wasPull.current) open(id, event.currentTarget);
        wasPull.current = false;
      }}
      {...handlers}
    >
      <span className="figure-digits">
        {missing ? 'cannot tell' : digits(shown.value, meta)}
        {unit && !missing && meta.unit !== '' ? <span className="figure-unit">{meta.unit}</span> : null}
      </span>
      {bent && size === 'row' ? <span className="figure-truth">{digits(shown.truth, meta)}</span> : null}
      {size === 'row' || size === 'cell' ? <Sill shown={shown} width={size === 'row' ? 84 : 46} /> : null}
    </button>
  );
});
