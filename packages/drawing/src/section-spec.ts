import { requireBetween } from './errors.js';
import type { Chocolate } from './textures/contours.js';
import type { Filling } from './textures/face.js';

/** One layer of the bar, named from below. */
export interface SectionLayer extends Filling {
  readonly id: string;
  readonly name: string;
  /** mm, above 0. */
  readonly thickness: number;
  /** Keeps the face of the layer the same wherever it lies; default from `id`. */
  readonly seed?: number;
  /** Two straps across the layer: it is held. */
  readonly held?: boolean;
  /** A computed front, such as oil or water moving: depth in mm from the top or bottom of the layer, hatched as an estimate. */
  readonly front?: { readonly from: 'top' | 'bottom'; readonly depth: number };
}

/** Coat around the layers, thickness in mm on each side; 0 where there is none. */
export interface SectionCoat {
  readonly top: number;
  readonly left: number;
  readonly right: number;
  /** Ignored when the underside is open. */
  readonly bottom: number;
  readonly chocolate: Chocolate;
  readonly held?: boolean;
}

/** Where the coat stands above target, and how that is known: computed is hatched, measured is a solid line. */
export interface SectionExcess {
  readonly sides: readonly ('top' | 'left' | 'right' | 'bottom')[];
  readonly standing: 'computed' | 'measured';
}

export interface SectionSpec {
  /** Width of the finished bar, coat included, mm. */
  readonly width: number;
  /** From below. */
  readonly layers: readonly SectionLayer[];
  readonly coat?: SectionCoat;
  /** `open`: the coat covers top and sides only. Default closed. */
  readonly underside?: 'closed' | 'open';
  /** What the bar should be: finished width and height, mm, and layer thicknesses from below. */
  readonly target?: {
    readonly width: number;
    readonly height: number;
    readonly coat?: Omit<SectionCoat, 'chocolate' | 'held'>;
    readonly thickness?: readonly number[];
  };
  readonly excess?: SectionExcess;
  /** px per mm; 24 is about 6.3 times life size. */
  readonly scale: number;
  /** Size of textures; default by scale, so that small drawings stay readable. Shares of area do not depend on it. */
  readonly grain?: number;
  /** Paper around the bar, px; default 6, with an excess 18, so that its mark has room. */
  readonly margin?: number;
}

/** Throws DrawingError naming the first thing that cannot be drawn. */
export function checkSection(spec: SectionSpec): void {
  requireBetween('scale', spec.scale, 0.5, 400, 'px per mm');
  requireBetween('width', spec.width, 0.5, 2000, 'mm');
  const coat = spec.coat;
  if (coat !== undefined) {
    for (const side of ['top', 'left', 'right', 'bottom'] as const) requireBetween(`coat.${side}`, coat[side], 0, spec.width / 2.2, 'mm');
  }
  requireBetween('number of layers', spec.layers.length, 1, 40);
  spec.layers.forEach((layer, at) => {
    const place = `layers[${at}] (${layer.id})`;
    requireBetween(`${place}.thickness`, layer.thickness, 0.05, 500, 'mm');
    requireBetween(`${place}.air`, layer.air ?? 0, 0, 0.95);
    requireBetween(`${place}.voids`, layer.voids ?? 0, 0, 0.3);
    requireBetween(`${place}.sheets`, layer.sheets ?? 4, 1, 40);
    requireBetween(`${place}.fillingShare`, layer.fillingShare ?? 0.45, 0, 0.8);
    const pieces = (layer.pieces ?? []).reduce((sum, part) => sum + part.share, 0);
    requireBetween(`${place}.pieces, summed share`, pieces, 0, 0.7);
    for (const part of layer.pieces ?? []) {
      requireBetween(`${place}.pieces (${part.kind}).share`, part.share, 0, 0.7);
      if (part.length !== undefined) {
        requireBetween(`${place}.pieces (${part.kind}).length[0]`, part.length[0], 0.3, 60, 'mm');
        requireBetween(`${place}.pieces (${part.kind}).length[1]`, part.length[1], part.length[0], 60, 'mm');
      }
    }
    if (layer.front !== undefined) requireBetween(`${place}.front.depth`, layer.front.depth, 0, layer.thickness, 'mm');
  });
  if (spec.target !== undefined) {
    requireBetween('target.width', spec.target.width, 0.5, 2000, 'mm');
    requireBetween('target.height', spec.target.height, 0.1, 2000, 'mm');
  }
}
