import { sideView, type SectionSpec } from '@barwright/drawing';
import { memo, useDeferredValue, useMemo } from 'react';
import { Picture } from '../drawing/Marks.js';
import { useShown } from '../engine/sheet.js';
import { Figure } from '../number/Figure.js';

/** The bar along its length, thin: the cut and what the coat adds at both ends. It follows when the section itself has been painted. */
export function SideView({ spec, width, indent }: { readonly spec: SectionSpec; readonly width: number; readonly indent: number }) {
  const length = useShown('bar.length');
  const mm = length ? length.truth * (length.meta.unit === 'in' ? 25.4 : 1) : NaN;
  const now = length ? length.value * (length.meta.unit === 'in' ? 25.4 : 1) : NaN;
  const scale = Math.floor(Math.min(6, (width * 0.62) / mm) * 10) / 10;
  const settled = useDeferredValue(spec);
  const long = useDeferredValue(now);
  const drawn = useMemo(
    () => (Number.isFinite(long) && scale > 0.5 ? sideView({ ...settled, scale }, long, settled.coat?.left ?? 0) : undefined),
    [settled, scale, long],
  );
  if (!drawn) return null;
  return (
    <div className="side-view" style={{ paddingLeft: indent }}>
      <Still marks={drawn.marks} width={drawn.width} height={drawn.height} />
      <p className="caption side-words">
        <Figure id="bar.length" size="small" unit /> long, cut at <Figure id="bar.cut_length" size="small" unit />,{' '}
        <Figure id="bar.height" size="small" unit /> high; drawn {drawn.timesLifeSize.toFixed(1)} times life size
      </p>
    </div>
  );
}

const Still = memo(Picture);
