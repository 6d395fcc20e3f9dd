import type { BandDrawing } from '@barwright/drawing';
import { useEffect, useMemo, useState } from 'react';
import type { AlongAnswer, SlabStretch, TunnelStretch } from '../engine/along-protocol.js';
import { isIn, minuteIn, readingWords, stateAt } from '../engine/along/reading.js';
import { clockWords } from '../engine/band-times.js';
import { useAddress } from '../lib/useAddress.js';
import { useSize } from '../lib/useSize.js';
import '../styles/along.css';
import { paces, useCut, type Cut } from './cut.js';
import { SlabStrip } from './SlabStrip.js';
import { StretchTable } from './StretchTable.js';
import { TunnelStrip } from './TunnelStrip.js';
import { useAlong } from './useAlong.js';

type Drawn = SlabStretch | TunnelStretch;
const drawnOf = (answer: AlongAnswer): readonly Drawn[] => [answer.slab, answer.tunnel].filter((one): one is Drawn => one.kind !== 'none');

/** The places of the line in which the product changes its temperature, and one cut that travels through them with the material. */
export function Along({ cut, ribbon }: { readonly cut: Cut; readonly ribbon: BandDrawing | undefined }) {
  const answer = useAlong();
  const [ref, { width }] = useSize<HTMLDivElement>();
  const stretches = useMemo(() => (typeof answer === 'object' ? drawnOf(answer) : []), [answer]);
  useEffect(() => {
    cut.along(stretches.map(({ from, to }) => [from, to] as const));
  }, [cut, stretches]);
  useEffect(() => () => cut.pause(), [cut]);
  useCutInAddress(cut);
  return (
    <section className={answer === undefined ? 'along along-waiting' : 'along'} aria-label="Temperatures along the line" ref={ref}>
      {typeof answer === 'string' ? <p className="along-none">{answer}</p> : null}
      {typeof answer === 'object' ? <Stretches cut={cut} answer={answer} stretches={stretches} width={width} ribbon={ribbon} /> : null}
    </section>
  );
}

interface StretchesProps {
  readonly cut: Cut;
  readonly answer: AlongAnswer;
  readonly stretches: readonly Drawn[];
  readonly width: number;
  readonly ribbon: BandDrawing | undefined;
}

function Stretches({ cut, answer, stretches, width, ribbon }: StretchesProps) {
  return (
    <>
      {stretches.length > 0 ? <Drive cut={cut} stretches={stretches} day={answer.dayAtCutter} /> : null}
      {[answer.slab, answer.tunnel].map((one, k) =>
        one.kind === 'none' ? (
          <p key={k} className="along-none">
            {one.sentence}
          </p>
        ) : (
          <article key={k} className="along-stretch" aria-label={one.station}>
            <h2 className={one.act ? 'along-title along-act' : 'along-title'}>
              {one.act ? <span className="along-said">act: </span> : null}
              {one.title}
            </h2>
            <p className="along-sub">{one.sub}</p>
            {width > 0 && one.kind === 'slab' ? <SlabStrip cut={cut} stretch={one} width={width} ribbon={ribbon} /> : null}
            {width > 0 && one.kind === 'tunnel' ? <TunnelStrip cut={cut} stretch={one} width={width} /> : null}
            <StretchTable stretch={one} />
          </article>
        ),
      )}
    </>
  );
}

/** Play, pace, where the cut is, and the same said aloud when it rests or something changes. */
function Drive({ cut, stretches, day }: { readonly cut: Cut; readonly stretches: readonly Drawn[]; readonly day: number | undefined }) {
  useCut(cut);
  const clock = clockWords(day);
  const place = whereWords(cut, stretches);
  return (
    <div className="along-drive">
      <button type="button" className="button along-play no-print" onClick={() => cut.toggle()}>
        {cut.playing ? 'Pause' : 'Play'}
      </button>
      <p className="choices no-print" role="group" aria-label="Pace of the cut">
        {paces.map((pace) => (
          <button key={pace} type="button" className="choice" aria-pressed={cut.pace === pace} onClick={() => cut.setPace(pace)}>
            {pace === 1 ? 'real time' : `${pace} times`}
          </button>
        ))}
      </p>
      <p className="along-where">
        <span className="along-clock">{clock(cut.from + cut.minute)}</span> {place}
        {cut.beyond === undefined
          ? ''
          : ` The address asks for ${cut.beyond.toFixed(1)} min; the line is followed for ${cut.length.toFixed(1)}.`}
      </p>
      <Spoken cut={cut} stretches={stretches} />
    </div>
  );
}

/** In which stretch the cut is, or between which. */
function whereWords(cut: Cut, stretches: readonly Drawn[]): string {
  const minute = cut.from + cut.minute;
  const inside = stretches.find((one) => isIn(one, minute));
  if (inside) return `${Math.max(0, minuteIn(inside, minute)).toFixed(1)}\u202fmin in the ${inside.station}.`;
  const next = stretches.find(({ from }) => from > minute);
  return next ? `${(next.from - minute).toFixed(1)}\u202fmin before the ${next.station}.` : '';
}

function spokenWords(cut: Cut, stretches: readonly Drawn[]): string {
  const minute = cut.from + cut.minute;
  const inside = stretches.find((one) => isIn(one, minute));
  return `${whereWords(cut, stretches)} ${inside ? readingWords(inside, minuteIn(inside, minute)) : ''}`.trim();
}

/** Said when the cut rests, and on the way when the knives could do something else with it. */
function Spoken({ cut, stretches }: { readonly cut: Cut; readonly stretches: readonly Drawn[] }) {
  const [words, setWords] = useState('');
  const slab = stretches.find((one) => one.kind === 'slab');
  const minute = cut.from + cut.minute;
  const state = slab && isIn(slab, minute) ? stateAt(slab, minuteIn(slab, minute)) : '';
  const key = cut.playing ? state : cut.snapshot();
  useEffect(() => {
    const timer = setTimeout(() => setWords(spokenWords(cut, stretches)), 350);
    return () => clearTimeout(timer);
  }, [cut, stretches, key]);
  return (
    <p className="along-said" role="status" aria-live="polite">
      {words}
    </p>
  );
}

/** The address follows when the cut rests, and never while it plays. */
function useCutInAddress(cut: Cut): void {
  const [, go] = useAddress();
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    let written = cut.minute;
    const stop = cut.subscribe(() => {
      clearTimeout(timer);
      if (cut.playing || cut.beyond !== undefined || cut.minute === written) return;
      timer = setTimeout(() => {
        written = cut.minute;
        go({ cut: cut.minute }, true);
      }, 300);
    });
    return () => {
      stop();
      clearTimeout(timer);
    };
  }, [cut, go]);
}
