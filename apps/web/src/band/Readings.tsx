import { sill } from '@barwright/drawing';
import { Picture } from '../drawing/Marks.js';
import type { SlabStretch, TunnelStretch } from '../engine/along-protocol.js';
import { isIn, lineWords, minuteIn, readAt, stateAt } from '../engine/along/reading.js';
import { useCut, type Cut } from './cut.js';

/** The numbers at the cut. The core stands on the window in which it slits. */
export function Readings({ cut, stretch }: { readonly cut: Cut; readonly stretch: SlabStretch | TunnelStretch }) {
  useCut(cut);
  const minute = cut.from + cut.minute;
  if (!isIn(stretch, minute))
    return (
      <p className="readings readings-away caption no-print">
        {minute < stretch.from ? `The cut has not come to the ${stretch.station} yet.` : `The cut has left the ${stretch.station}.`} Take
        hold of the strip to bring it here.
      </p>
    );
  const at = minuteIn(stretch, minute);
  const window = stretch.kind === 'slab' ? stretch.spec.window : undefined;
  return (
    <dl className="readings">
      {[stretch.place, ...stretch.lines].map((line) => {
        const [digits, unit] = lineWords(line, stretch.minutes, at).split('\u202f');
        // The window is asked of the core as it leaves: on the way there is nothing to act on.
        const onWindow =
          stretch.kind === 'slab' &&
          window !== undefined &&
          line.name.startsWith('core') &&
          at >= stretch.minutes.at(-1)! - 0.05 &&
          stretch.states.at(-1) !== 'cannot tell';
        const drawn = onWindow
          ? sill({
              width: 84,
              standing: 'computed',
              window: { lo: window.lo, hi: window.hi },
              value: readAt(stretch.minutes, line.values, at),
            })
          : undefined;
        return (
          <div key={line.name} className="reading">
            <dt className="caption">{line.name}</dt>
            <dd>
              <span className="reading-digits">
                {digits}
                <span className="figure-unit">{unit}</span>
              </span>
              {drawn ? <Picture className="sill" marks={drawn.marks} width={84} height={drawn.height} /> : null}
            </dd>
          </div>
        );
      })}
      {stretch.kind === 'slab' ? (
        <div className="reading reading-state">
          <dt className="caption">at a knife</dt>
          <dd>{stateAt(stretch, at)}</dd>
        </div>
      ) : null}
    </dl>
  );
}
