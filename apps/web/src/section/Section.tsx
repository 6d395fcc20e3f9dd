import { section, type SectionDrawing, type SectionSpec } from '@barwright/drawing';
import { useMemo } from 'react';
import { Picture } from '../drawing/Marks.js';
import { useSheet, useShown, useView } from '../engine/sheet.js';
import { useScale } from '../frame/scale-words.js';
import { useSize, useWindowHeight } from '../lib/useSize.js';
import { Figure } from '../number/Figure.js';
import { withUnit } from '../number/words.js';
import { Edge } from './Edge.js';
import { edgePlaces, rowPlaces, scaleFor } from './layout.js';
import { Rows } from './Rows.js';
import { SectionTable } from './SectionTable.js';
import { SideView } from './SideView.js';
import { useRehearsal } from './useRehearsal.js';
import { WhatItDoes } from './WhatItDoes.js';

/** The bar cut open, true to scale, its layers joined to their grams, water and cents. */
export function Section() {
  const [ref, { width }] = useSize<HTMLElement>();
  const height = useWindowHeight();
  const view = useView();
  const spec = view?.picture;
  return (
    <section className="section" ref={ref} aria-label="The bar, cut open">
      {width > 0 ? (
        spec ? (
          <Plate spec={spec} width={width} room={height} />
        ) : (
          <p className="cannot">Cannot draw the bar: a thickness has no value. {view?.sentence.title}</p>
        )
      ) : null}
      <SectionTable />
    </section>
  );
}

const headroom = 22;
const lane = 56;

function Plate({ spec, width, room }: { readonly spec: SectionSpec; readonly width: number; readonly room: number }) {
  const { catalog } = useSheet();
  const parts = catalog!.parts;
  const across = useShown('bar.width');
  const unit = across?.meta.unit ?? 'mm';
  const wide = width >= 1040;
  const forBar = wide ? Math.min(width * 0.475, width - 700) : Math.max(width - lane - 60, 190);
  const tallest = wide ? Math.max(300, Math.min(620, room - 500)) : Math.max(190, Math.min(430, room * 0.34));
  // The scale stays while a hand pulls: it belongs to the truth.
  const scale = useTruthScale(spec, forBar, tallest);
  const drawn = useMemo(() => section({ ...spec, scale }), [spec, scale]);
  useRehearsal(scale);
  const size = `${across ? withUnit(across.value, across.meta) : ''}`;
  useScale(`${size} across, drawn ${drawn.timesLifeSize.toFixed(1)} times life size`);
  const floor = headroom + Math.round(truthHeight(spec) * scale) + 12;
  const top = floor - drawn.height;
  const middle = lane + forBar / 2;
  const left = wide ? lane + 4 : middle - drawn.width / 2;
  const edges = edgePlaces(parts, drawn, spec, top);
  const plateHeight = Math.max(floor, parts.length * 64 + headroom);
  const rows = rowPlaces(parts, drawn, top, wide ? 62 : 60);
  const right = left + restingWidth(drawn, spec, scale);
  return (
    <>
      <div className={wide ? 'plate plate-wide' : 'plate'} style={{ height: wide ? plateHeight : floor + 8 }}>
        <span className="caption plate-mm">{unit}</span>
        <div className="plate-bar" style={{ left, top }}>
          <Picture marks={drawn.marks} width={forBar} height={tallest} />
        </div>
        {thicknesses(spec, parts, top, drawn).map(({ id, y, words }) => (
          <span key={id} className="plate-number" style={{ top: y, width: left - 8 }}>
            <Figure id={id} size="plain" />
            <span className="caption">{words}</span>
          </span>
        ))}
        {edges.map((edge) => (
          <Edge key={edge.id} edge={edge} left={left + drawn.box.x} width={drawn.box.w + 26} />
        ))}
        {wide ? (
          <Rows
            rows={rows}
            steps={catalog!.steps}
            edges={edges}
            left={right + 48}
            width={width - right - 48}
            height={plateHeight}
            from={right}
          />
        ) : null}
      </div>
      <div className="plate-foot" style={{ paddingLeft: wide ? left + 6 : 0 }}>
        <Dimension
          width={wide ? drawn.box.w : Math.min(drawn.box.w, width)}
          words={`${size} · drawn ${drawn.timesLifeSize.toFixed(1)} times life size`}
          offset={wide ? 0 : left + drawn.box.x}
        />
      </div>
      {wide ? null : (
        <Rows rows={rows} steps={catalog!.steps} edges={[]} left={0} width={width} height={parts.length * 60 + 34} from={0} stacked />
      )}
      <div
        className={wide ? 'below below-wide' : 'below'}
        style={wide ? { gridTemplateColumns: `${right + 48}px minmax(0, 1fr)` } : undefined}
      >
        <SideView width={wide ? forBar : Math.min(width, 520)} indent={wide ? left + 6 : 0} />
        <WhatItDoes />
      </div>
    </>
  );
}

/** How much wider than in truth the bar may grow, px, before what stands beside it gives way. */
const leeway = 24;

/** The width that the columns keep clear of: they stay in place while a hand makes the bar a little wider or narrower. */
function restingWidth(drawn: SectionDrawing, spec: SectionSpec, scale: number): number {
  const margins = drawn.width - Math.max(spec.width, spec.target?.width ?? 0) * scale;
  return Math.max((spec.target?.width ?? spec.width) * scale + margins, drawn.width - leeway);
}

/** The scale for the bar as it is in truth, so that a pulled edge moves under the hand and not the whole drawing. */
function useTruthScale(spec: SectionSpec, width: number, height: number): number {
  const at = spec.target?.width ?? spec.width;
  const tall = truthHeight(spec);
  return useMemo(
    () => scaleFor({ width: at, layers: [{ id: 'all', name: '', thickness: tall, texture: 'plain' }], scale: 1 }, width, height),
    [at, tall, width, height],
  );
}

function truthHeight(spec: SectionSpec): number {
  return (
    spec.target?.height ??
    spec.layers.reduce((sum, layer) => sum + layer.thickness, 0) +
      (spec.coat?.top ?? 0) +
      (spec.underside === 'open' ? 0 : (spec.coat?.bottom ?? 0))
  );
}

function thicknesses(
  spec: SectionSpec,
  parts: readonly { readonly slug: string; readonly name: string; readonly within?: string }[],
  top: number,
  drawn: ReturnType<typeof section>,
) {
  const layers = drawn.layers.map(({ id, y0, y1 }) => {
    const guest = parts.find((part) => part.within === id);
    return {
      id: `layer.${id}.thickness`,
      y: top + (y0 + y1) / 2,
      words: guest ? `${parts.find((part) => part.slug === id)!.name}, ${guest.name}` : parts.find((part) => part.slug === id)!.name,
    };
  });
  if (!spec.coat) return layers;
  const over = { id: 'coat.thickness_top', y: top + (drawn.box.y + drawn.core.y) / 2, words: 'top' };
  const bottom = drawn.core.y + drawn.core.h;
  const under = { id: 'coat.thickness_bottom', y: top + (bottom + drawn.box.y + drawn.box.h) / 2, words: 'under' };
  return spec.underside === 'open' ? [over, ...layers] : [over, ...layers, under];
}

function Dimension({ width, words, offset }: { readonly width: number; readonly words: string; readonly offset: number }) {
  return (
    <div className="dimension" style={{ width, marginLeft: offset }}>
      <span className="dimension-line" />
      <span className="caption">{words}</span>
    </div>
  );
}
