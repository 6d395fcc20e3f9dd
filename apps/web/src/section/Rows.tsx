import type { StepInfo } from '../engine/protocol.js';
import { useShown } from '../engine/sheet.js';
import { Figure } from '../number/Figure.js';
import type { EdgePlace, RowPlace } from './layout.js';
import { Water } from './Water.js';

interface RowsProps {
  readonly rows: readonly RowPlace[];
  readonly steps: readonly StepInfo[];
  readonly edges: readonly EdgePlace[];
  readonly left: number;
  readonly width: number;
  readonly height: number;
  /** Right edge of the bar, where the hairs begin. */
  readonly from: number;
  /** Under the drawing: rows stand evenly. */
  readonly stacked?: boolean;
}

/** Layer, grams, water, cents: one row for each part, joined to it by hairs. */
export function Rows({ rows, steps, edges, left, width, height, from, stacked = false }: RowsProps) {
  const columns = columnsFor(width);
  // A phone has no room for the levels; the table below has them.
  const narrow = width < 430;
  const placed = stacked ? rows.map((row, i) => ({ ...row, y: 60 + i * 60, y0: 34 + i * 60, y1: 92 + i * 60 })) : rows;
  const water = width - columns.water - columns.cents - 12;
  const foot = stacked ? height + 26 : height;
  return (
    <div className={stacked ? 'rows rows-stacked' : 'rows'} style={stacked ? { height: foot + 74 } : undefined}>
      {edges.length > 0 ? (
        <svg className="hairs" width={left + columns.water + water} height={height} aria-hidden="true">
          {edges.slice(1).map(({ id, y }) => (
            <line key={id} x1={from + 26} x2={left + columns.water + water} y1={y} y2={y} />
          ))}
        </svg>
      ) : null}
      <div className="columns" style={{ left, width }}>
        <span className="caption column-head" style={{ left: 0 }}>
          layer
        </span>
        <span className="caption column-head" style={{ left: columns.grams }}>
          <Unit id={`${rows[0]!.part.id}.mass`} />
        </span>
        {narrow ? null : (
          <span className="caption column-head" style={{ left: columns.water }}>
            water activity
          </span>
        )}
        <span className="caption column-head column-right">
          <Unit id={`${rows[0]!.part.id}.cost`} />
        </span>
        {placed.map(({ part, y }) => (
          <div key={part.id} className="part-row" style={{ top: y }}>
            <span className="part-name">{part.name.charAt(0).toUpperCase() + part.name.slice(1)}</span>
            <span className="part-grams" style={{ left: columns.grams }}>
              <Figure id={`${part.id}.mass`} />
            </span>
            <span className="part-cents">
              <Figure id={`${part.id}.cost`} size="plain" />
            </span>
          </div>
        ))}
        {narrow ? null : (
          <div className="water" style={{ left: columns.water, width: water, height: stacked ? height + 18 : height }}>
            <Water rows={placed} steps={steps} width={water} height={stacked ? height + 18 : height} />
          </div>
        )}
        <WholeBar top={stacked ? foot : height + 18} grams={columns.grams} water={columns.water} words={!narrow} />
      </div>
    </div>
  );
}

function columnsFor(width: number): { readonly grams: number; readonly water: number; readonly cents: number } {
  if (width >= 520) return { grams: Math.round(width * 0.235), water: Math.round(width * 0.44), cents: 74 };
  if (width >= 430) return { grams: Math.round(width * 0.28), water: Math.round(width * 0.52), cents: 54 };
  return { grams: Math.round(width * 0.48), water: 0, cents: 54 };
}

function WholeBar({
  top,
  grams,
  water,
  words,
}: {
  readonly top: number;
  readonly grams: number;
  readonly water: number;
  readonly words: boolean;
}) {
  return (
    <div className="whole" style={{ top }}>
      <span className="part-name">Whole bar</span>
      <span className="part-grams" style={{ left: grams }}>
        <Figure id="bar.mass" unit />
      </span>
      {words ? (
        <span className="whole-words" style={{ left: water }}>
          <Named id="bar.mass_sd" before="σ" />
          <Named id="bar.giveaway" before="given away" />
        </span>
      ) : null}
      <span className="part-cents">
        <Figure id="bar.cost" size="plain" />
      </span>
    </div>
  );
}

function Named({ id, before }: { readonly id: string; readonly before: string }) {
  return useShown(id) ? (
    <span className="named">
      {before} <Figure id={id} size="small" unit />
    </span>
  ) : null;
}

function Unit({ id }: { readonly id: string }) {
  const unit = useShown(id)?.meta.unit ?? '';
  return unit === 'g' ? 'grams' : unit === 'oz' ? 'ounces' : unit === 'ct' ? 'cents' : unit;
}
