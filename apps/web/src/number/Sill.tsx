import { sill, type Mark, type NumberStanding, type SillSpec } from '@barwright/drawing';
import { memo } from 'react';
import { Picture } from '../drawing/Marks.js';
import type { Shown } from '../engine/sheet.js';
import { digits } from './words.js';

const standings: Readonly<Record<Shown['origin'], NumberStanding>> = {
  computed: 'computed',
  measured: 'measured',
  entered: 'measured',
  assumed: 'assumed',
  default: 'default',
};

/** The window under a number; what the plant entered stands on a thin line, since only a reading is measured. */
export const Sill = memo(function Sill({ shown, width }: { readonly shown: Shown; readonly width: number }) {
  const { meta, value, truth, origin } = shown;
  const { window } = meta;
  if (!window || (window.low === undefined && window.high === undefined)) return null;
  const bent = !Number.isNaN(truth) && digits(value, meta) !== digits(truth, meta);
  const spec: SillSpec = {
    width,
    standing: Number.isNaN(value) ? 'missing' : standings[origin],
    window: { ...(window.low === undefined ? {} : { lo: window.low }), ...(window.high === undefined ? {} : { hi: window.high }) },
    ...(window.aim === undefined ? {} : { aim: window.aim }),
    ...(Number.isNaN(value) ? {} : bent ? { value: truth, bent: value } : { value }),
  };
  const drawn = sill(spec);
  return (
    <Picture className="sill" marks={origin === 'entered' ? drawn.marks.map(thin) : drawn.marks} width={width} height={drawn.height} />
  );
});

function thin(mark: Mark): Mark {
  return mark.tag === 'line' && mark.width === 2.4 ? { ...mark, width: 1 } : mark;
}
