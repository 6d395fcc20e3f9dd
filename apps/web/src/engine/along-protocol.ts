import type { BeltSpec, ThroughSpec } from '@barwright/drawing';
import type { SlitState } from '@barwright/line';
import type { FigureTable } from './trial-protocol.js';

/** One number along a stretch of the line, at the minutes of the stretch. */
export interface AlongLine {
  readonly name: string;
  readonly values: readonly number[];
  readonly unit: string;
  readonly decimals: number;
}

/** A stretch of the line in which the temperature of the product is followed. */
export interface Stretch {
  readonly station: string;
  /** On the clock of the ribbon, minutes from the cutter. */
  readonly from: number;
  readonly to: number;
  /** Minutes since it came in, at which everything below is known; the last is the time in the station. */
  readonly minutes: readonly number[];
  readonly place: AlongLine;
  /** What is read at the cut. */
  readonly lines: readonly AlongLine[];
  /** One sentence that can be disputed. */
  readonly title: string;
  readonly sub: string;
  readonly act: boolean;
  readonly table: FigureTable;
  readonly said: readonly string[];
}
export interface SlabStretch extends Stretch {
  readonly kind: 'slab';
  /** What the knives could do with it at each minute. */
  readonly states: readonly SlitState[];
  readonly spec: Omit<ThroughSpec, 'width' | 'left' | 'cutWidth' | 'opensFrom' | 'pxPerMm'>;
}
export interface TunnelStretch extends Stretch {
  readonly kind: 'tunnel';
  readonly spec: Omit<BeltSpec, 'width' | 'height'>;
}
/** Why nothing is drawn, in a sentence. */
export interface NoStretch {
  readonly kind: 'none';
  readonly sentence: string;
}
export interface AlongAnswer {
  /** Minutes of the day at which the first bar is at the cutter. */
  readonly dayAtCutter?: number;
  readonly slab: SlabStretch | NoStretch;
  readonly tunnel: TunnelStretch | NoStretch;
}
