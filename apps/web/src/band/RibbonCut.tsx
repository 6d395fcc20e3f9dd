import type { BandDrawing } from '@barwright/drawing';
import { useCut, type Cut } from './cut.js';

/** The plumb on the ribbon: where the material of the cut is; stretches that are opened below stand bold on the clock. */
export function RibbonCut({ cut, drawn }: { readonly cut: Cut; readonly drawn: BandDrawing }) {
  useCut(cut);
  if (cut.length === 0) return null;
  const minute = cut.from + cut.minute;
  const x = drawn.x(minute);
  const run = drawn.at(minute);
  return (
    <svg className="ribbon-cut" width={drawn.width} height={drawn.height} aria-hidden="true" data-minute={minute.toFixed(3)}>
      {cut.opened.map(([from, to]) => (
        <line key={from} className="ribbon-opened" x1={drawn.x(from)} x2={drawn.x(to)} y1={drawn.clockY} y2={drawn.clockY} />
      ))}
      <line x1={x} x2={x} y1={(run?.top ?? 60) - 14} y2={drawn.clockY} />
      {run ? <circle cx={x} cy={(run.top + run.bottom) / 2} r={6.5} /> : null}
    </svg>
  );
}
