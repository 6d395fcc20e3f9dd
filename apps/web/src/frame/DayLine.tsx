import { dayLine } from '@barwright/drawing';
import { useMemo } from 'react';
import { Picture } from '../drawing/Marks.js';
import type { PlanTimes } from '../engine/protocol.js';
import { useSize } from '../lib/useSize.js';

/** The hours of the order. Nothing has run yet, so all of it is dotted: a plan. */
export function DayLine({ plan }: { readonly plan: PlanTimes }) {
  const [ref, { width }] = useSize<HTMLDivElement>();
  const drawn = useMemo(() => {
    if (width < 200) return undefined;
    const from = Math.floor(plan.startUp / 60) * 60;
    return dayLine({ width, from, to: Math.ceil((plan.end + 1) / 60) * 60, runs: [], plumb: plan.firstSlab, known: from });
  }, [width, plan.startUp, plan.firstSlab, plan.end]);
  const words = `Planned: start-up ${clock(plan.startUp)}, first slab ${clock(plan.firstSlab)}, order made ${clock(plan.end)}${plan.end >= 1440 ? ' next day' : ''}`;
  return (
    <div className="day-line" ref={ref} role="img" aria-label={words} title={words}>
      {drawn ? <Picture marks={drawn.marks} width={drawn.width} height={drawn.height} /> : null}
      <span className="day-line-words">
        {plan.date ? `${plan.date}, ` : ''}first slab as planned; order made {clock(plan.end)}
        {plan.end >= 1440 ? ' next day' : ''}
      </span>
    </div>
  );
}

export function clock(minute: number): string {
  const within = ((Math.round(minute) % 1440) + 1440) % 1440;
  return `${String(Math.floor(within / 60)).padStart(2, '0')}:${String(within % 60).padStart(2, '0')}`;
}
