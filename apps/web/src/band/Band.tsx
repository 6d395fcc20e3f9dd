import { band, type BandDrawing, type Box } from '@barwright/drawing';
import { useEffect, useMemo, useState, type MouseEvent } from 'react';
import { Picture } from '../drawing/Marks.js';
import type { BandMeasure, BandPicture } from '../engine/protocol.js';
import { useSheet, useView } from '../engine/sheet.js';
import { useScale } from '../frame/scale-words.js';
import { useInspector } from '../inspector/opening.js';
import { usePrefs } from '../lib/prefs.js';
import { useAddress } from '../lib/useAddress.js';
import { useSize, useWindowHeight } from '../lib/useSize.js';
import '../styles/band.css';
import { Along } from './Along.js';
import { Cut } from './cut.js';
import { RibbonCut } from './RibbonCut.js';

const measures: readonly (readonly [BandMeasure, string])[] = [
  ['kg', 'kg'],
  ['money', 'money'],
  ['bars', 'bars'],
  ['water', 'water'],
];

/** The line from what is charged to what is cased, as a ribbon along its transit: width is flow, the frame is what machines could do. */
export function Band() {
  const { catalog } = useSheet();
  const [ref, { width }] = useSize<HTMLDivElement>();
  const view = useView();
  const { units } = usePrefs();
  const [measure, setMeasure] = useState<BandMeasure>('kg');
  const [address] = useAddress();
  const [cut] = useState(() => new Cut(address.cut));
  // Below this the ribbon is no longer read: it scrolls at its true scale instead.
  const drawnWidth = Math.max(width, 1200);
  const height = Math.max(460, Math.min(760, useWindowHeight() - 280));
  const picture = usePicture(measure, drawnWidth, height, width > 0);
  const drawn = useMemo(() => picture && band(picture.spec), [picture]);
  if (!catalog!.line)
    return <p className="cannot">This bar names no line, so there is nothing to draw along. Write ‘line: …’ in its file.</p>;
  return (
    <section className="band" aria-label="The line as a ribbon">
      <p className="choices band-choices" role="group" aria-label="What the width of the ribbon is">
        {measures.map(([name, word]) => (
          <button key={name} type="button" className="choice" aria-pressed={name === measure} onClick={() => setMeasure(name)}>
            {name === 'money' ? catalog!.currency : name === 'kg' && units === 'us' ? 'lb' : word}
          </button>
        ))}
      </p>
      <div className="band-room" ref={ref} tabIndex={0} role="region" aria-label="Ribbon">
        {picture && drawn ? <Ribbon picture={picture} drawn={drawn} cut={cut} /> : null}
      </div>
      {drawn ? <Along cut={cut} ribbon={drawn} /> : null}
      <p className="caption band-words">
        The clock belongs to {view?.plan ? 'the first bar of the order' : 'one bar, in minutes from the cutter'}. Times come from the
        transits, belts and leads the plant entered; between them things stand evenly. Pale frames are what machines could do: their rim is
        the room.
      </p>
      {picture ? <BandTable picture={picture} /> : null}
    </section>
  );
}

function Ribbon({ picture, drawn, cut }: { readonly picture: BandPicture; readonly drawn: BandDrawing; readonly cut: Cut }) {
  const { open } = useInspector();
  const { catalog } = useSheet();
  useScale(picture.scaleWords);
  // Painting order: what is drawn last lies on top, and a press means it.
  const hits = drawn.hits.flatMap(({ id, box }) => {
    const quantity = opensOf(picture.opens, id);
    return quantity ? [{ id, box, quantity }] : [];
  });
  const [over, setOver] = useState<(typeof hits)[number]>();
  const meaning = (id: string) => catalog!.metas.find((meta) => meta.id === id)?.meaning ?? id;
  const under = (event: MouseEvent<HTMLElement>) => {
    const sheet = event.currentTarget.getBoundingClientRect();
    return topmost(hits, event.clientX - sheet.left, event.clientY - sheet.top);
  };
  // Thin strips are true to scale and too thin for a target of their own: the sheet takes the press, the table has them all.
  return (
    <div
      className={over ? 'ribbon ribbon-over' : 'ribbon'}
      tabIndex={-1}
      title={over && meaning(over.quantity)}
      onPointerMove={(event) => setOver(under(event))}
      onPointerLeave={() => setOver(undefined)}
      onClick={(event) => {
        const hit = under(event);
        if (hit) open(hit.quantity, event.currentTarget);
      }}
    >
      <Picture
        marks={drawn.marks}
        width={drawn.width}
        height={drawn.height}
        name="The line as a ribbon; the same numbers stand in the table below"
      />
      <RibbonCut cut={cut} drawn={drawn} />
      {hits.map(({ id, box, quantity }, at) => (
        <span
          key={`${id}/${at}`}
          className={over?.box === box ? 'ribbon-hit ribbon-hit-over' : 'ribbon-hit'}
          data-quantity={quantity}
          aria-hidden="true"
          style={{ left: box.x, top: box.y, width: box.w, height: box.h }}
        />
      ))}
    </div>
  );
}

/** The last thing painted that holds the point, or all but holds it. */
function topmost<T extends { readonly box: Box }>(hits: readonly T[], x: number, y: number): T | undefined {
  const holds = (box: Box, near: number) =>
    x >= box.x - near && x <= box.x + box.w + near && y >= box.y - near && y <= box.y + box.h + near;
  return hits.findLast(({ box }) => holds(box, 0)) ?? hits.findLast(({ box }) => holds(box, 6));
}

/** 'layer.nougat.note' opens what 'layer.nougat' opens; 'coat.over' what 'coat' does. */
function opensOf(opens: Readonly<Record<string, string>>, id: string): string | undefined {
  return (
    opens[id] ??
    opens[id.replace(/\.(note|narrowest|over|under|narrowest\.note)$/, '')] ??
    opens[id.replace(/\.(narrowest\.note|narrowest|note)$/, '')]
  );
}

function BandTable({ picture }: { readonly picture: BandPicture }) {
  const { open } = useInspector();
  return (
    <details className="as-table">
      <summary>As a table</summary>
      <table>
        <caption>What flows at rated speed, what leaves, then stations from the fullest</caption>
        <thead>
          <tr>
            <th scope="col">what</th>
            <th scope="col">flow or use</th>
            <th scope="col">room</th>
          </tr>
        </thead>
        <tbody>
          {picture.rows.map(({ what, id, value, room }) => (
            <tr key={`${id}/${what}`}>
              <th scope="row">
                <button type="button" className="word" onClick={(event) => open(id, event.currentTarget)}>
                  {what}
                </button>
              </th>
              <td>{value}</td>
              <td>{room ?? '–'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

/** The band in the measure asked for, as it is after each frame. */
function usePicture(measure: BandMeasure, width: number, height: number, ready: boolean): BandPicture | undefined {
  const sheet = useSheet();
  const view = useView();
  const [picture, setPicture] = useState<BandPicture>();
  useEffect(() => {
    if (!ready) return undefined;
    let dropped = false;
    sheet.engine.ask('band', { measure, width, height }).then(
      (next) => !dropped && setPicture(next),
      () => undefined,
    );
    return () => {
      dropped = true;
    };
  }, [sheet, view, measure, width, height, ready]);
  return picture;
}
