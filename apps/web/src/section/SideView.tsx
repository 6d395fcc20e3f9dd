import { sideView } from '@barwright/drawing';
import { memo, useMemo } from 'react';
import { Picture } from '../drawing/Marks.js';
import { useCalmView, useSheet } from '../engine/sheet.js';
import { Figure } from '../number/Figure.js';

/** The bar along its length, thin: the cut and what the coat adds at both ends. Under a hand it follows at the pace of the words. */
export const SideView = memo(function SideView({ width, indent }: { readonly width: number; readonly indent: number }) {
  const sheet = useSheet();
  const view = useCalmView();
  const drawn = useMemo(() => {
    const length = sheet.get('bar.length');
    if (!view?.picture || !length) return undefined;
    const perUnit = length.meta.unit === 'in' ? 25.4 : 1;
    const scale = Math.floor(Math.min(6, (width * 0.62) / (length.truth * perUnit)) * 10) / 10;
    if (!Number.isFinite(length.value) || !(scale > 0.5)) return undefined;
    return sideView({ ...view.picture, scale }, length.value * perUnit, view.picture.coat?.left ?? 0);
  }, [sheet, view, width]);
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
});

const Still = memo(Picture);
