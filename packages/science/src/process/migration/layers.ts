import { saturationPressure } from '../../core/saturation.js';
import { BadInput, requireRange } from '../../errors.js';
import type { Isotherm } from './isotherm.js';
import type { Celsius, Metre, Second, SquareMetrePerSecond, WaterActivity } from '../../units.js';

/** One layer of a bar. */
export interface MoistureLayer {
  readonly thickness: Metre;
  /** Dry matter by volume of layer, kg/m³; fat may be left in or out as long as the isotherm counts the same way. */
  readonly dryDensity: number;
  readonly isotherm: Isotherm;
  /** Of water in the layer on its moisture, m²/s: a number, or a function of water activity. */
  readonly diffusivity: SquareMetrePerSecond | ((aw: WaterActivity) => SquareMetrePerSecond);
  readonly start: WaterActivity;
}

/** Resistance of a film by its permeance, kg/(m² s Pa); Infinity for none, 0 for a perfect seal. */
export interface OuterFace {
  readonly permeance: number;
  readonly waterActivity: WaterActivity;
}

export interface Migration {
  /** As asked, s. */
  readonly times: Float64Array;
  /** Mean water activity and moisture (kg/kg dry) of each layer at each time: `times.length` rows of `layers.length`. */
  readonly meanActivity: Float64Array;
  readonly meanMoisture: Float64Array;
  /** Water activity on both sides of each contact, from below: rows of 2 (layers - 1). */
  readonly contactActivity: Float64Array;
  /** Water that came in through the outer faces since the start, kg/m². */
  readonly gained: Float64Array;
  /** Profile at the last time. */
  readonly position: Float64Array;
  readonly activity: Float64Array;
}

/** What can be a layer of food: m, kg/m³, m²/s, s, and water by volume and unit of activity, kg/m³. */
export const migrationRanges = {
  thickness: [1e-7, 10],
  dryDensity: [1e-3, 1e5],
  diffusivity: [1e-25, 1e-3],
  time: [0, 1e11],
  capacity: [1e-3, 1e6],
} as const;

const gamma = 2 - Math.SQRT2;

/**
 * Moisture that moves between the layers of a bar on water activity, and through its outer faces:
 * ρ ∂m/∂t = ∂/∂x (ρ D dm/daw ∂aw/∂x); activity and flux are continuous at a contact, a film between layers is a resistance.
 * Finite volumes, refined at the contacts; implicit in two stages of second order (TR-BDF2), water conserved.
 *
 * @param layers - in order, at least one
 * @param films - permeance (kg/(m² s Pa)) of the film between layer i and i + 1; Infinity or left out: bare contact
 * @param outer - first and last face; left out: sealed
 * @param t - °C, sets the vapour pressure that drives through films
 * @param times - s, rising, at which to report
 * @param cells - per layer
 * @throws BadInput for missing layers or times that do not rise; OutOfRange for impossible properties
 * @see crank-1975; labuza-hyman-1998 for the use of water activity
 */
export function migrate(
  layers: readonly MoistureLayer[],
  films: readonly number[],
  outer: { readonly first?: OuterFace; readonly last?: OuterFace },
  t: Celsius,
  times: readonly Second[],
  cells = 32,
): Migration {
  if (layers.length === 0) throw new BadInput('Migration needs at least one layer');
  if (times.length === 0 || times.some((time, i) => !(time >= (i > 0 ? times[i - 1]! : 0)))) {
    throw new BadInput('Times of a migration must rise from 0');
  }
  requireRange('time', times[times.length - 1]!, migrationRanges.time, 'crank-1975');
  const vapour = saturationPressure(t);
  const n = layers.length * cells;
  const grid = layOut(layers, cells, n);
  const { width, position, layerOf } = grid;
  const film = new Float64Array(layers.length + 1); // resistance at each face of layers, m² s/kg per unit of activity
  for (let f = 1; f < layers.length; f++) film[f] = resistance(films[f - 1] ?? Infinity, vapour);
  const faces = [outer.first, outer.last].map((face) => {
    if (face) requireRange('water activity outside', face.waterActivity, [0, 1], 'crank-1975');
    return face && face.permeance > 0 ? { resistance: resistance(face.permeance, vapour), activity: face.waterActivity } : undefined;
  });
  const linear = layers.every((layer) => layer.isotherm.linear && typeof layer.diffusivity === 'number');

  const reach = rangeOf(layers, outer);
  const tables = layers.map((layer) => tabulate(layer, reach));

  const a = new Float64Array(n); // water activity
  const held = new Float64Array(n); // water, kg/m²
  const slope = new Float64Array(n); // kg/m² per unit of activity
  const conductivity = new Float64Array(n); // ρ D dm/daw, kg/(m s)
  const link = new Float64Array(n + 1);
  const target = new Float64Array(n);
  const oldHeld = new Float64Array(n);
  const upper = new Float64Array(n);
  const right = new Float64Array(n);
  for (let c = 0; c < n; c++) a[c] = layers[layerOf[c]!]!.start;

  function readWater(): void {
    for (let l = 0; l < layers.length; l++) {
      const { water, conductivity: k } = tables[l]!;
      for (let c = l * cells; c < (l + 1) * cells; c++) {
        const at = (a[c]! - reach.low) * reach.perStep;
        const i = at <= 0 ? 0 : at >= tableSize - 1 ? tableSize - 2 : at | 0;
        const share = at - i;
        const rise = water[i + 1]! - water[i]!;
        held[c] = width[c]! * (water[i]! + share * rise);
        slope[c] = width[c]! * rise * reach.perStep;
        conductivity[c] = k[i]! + share * (k[i + 1]! - k[i]!);
      }
    }
  }

  function readLinks(): void {
    for (let f = 1; f < n; f++) {
      const [k0, k1, w0, w1] = [conductivity[f - 1]!, conductivity[f]!, width[f - 1]!, width[f]!];
      link[f] = f % cells === 0 ? 1 / (w0 / 2 / k0 + film[f / cells]! + w1 / 2 / k1) : (k0 + k1) / (w0 + w1);
    }
    link[0] = faces[0] ? 1 / (faces[0].resistance + width[0]! / 2 / conductivity[0]!) : 0;
    link[n] = faces[1] ? 1 / (faces[1].resistance + width[n - 1]! / 2 / conductivity[n - 1]!) : 0;
  }

  /** Net inflow of a cell by the present links and activities. */
  function inflow(c: number): number {
    const below = c > 0 ? a[c - 1]! : (faces[0]?.activity ?? 0);
    const above = c < n - 1 ? a[c + 1]! : (faces[1]?.activity ?? 0);
    return link[c]! * (below - a[c]!) + link[c + 1]! * (above - a[c]!);
  }

  /** Solves held(a) = target + weight · inflow(a) by Newton's method. */
  function solve(weight: number): void {
    for (let iteration = 0; iteration < 20; iteration++) {
      let previousRight = 0;
      let open = 1; // 1 - upper of the cell below, carried without cancellation however fast the exchange
      for (let c = 0; c < n; c++) {
        const lower = weight * link[c]!;
        const next = weight * link[c + 1]!;
        const residual = held[c]! - target[c]! - weight * inflow(c);
        const base = slope[c]! + lower * open; // an outer face pulls towards a fixed activity: fully open
        const pivot = 1 / (base + next);
        previousRight = ((c > 0 ? lower * previousRight : 0) - residual) * pivot;
        open = base * pivot;
        upper[c] = next * pivot;
        right[c] = previousRight;
      }
      let change = right[n - 1]!;
      let largest = Math.abs(change);
      a[n - 1]! += change;
      for (let c = n - 2; c >= 0; c--) {
        change = right[c]! + upper[c]! * change;
        a[c]! += change;
        if (change > largest) largest = change;
        else if (-change > largest) largest = -change;
      }
      readWater();
      if (linear) return;
      readLinks();
      if (largest < 1e-7) return;
    }
  }

  /** One step of TR-BDF2; the water that came in through the outer faces is what the total has gained. */
  function step(dt: number): void {
    oldHeld.set(held);
    for (let c = 0; c < n; c++) target[c] = held[c]! + (gamma / 2) * dt * inflow(c);
    solve((gamma / 2) * dt);
    const w = 1 / (gamma * (2 - gamma));
    const v = (1 - gamma) ** 2 * w;
    for (let c = 0; c < n; c++) target[c] = w * held[c]! - v * oldHeld[c]!;
    solve(((1 - gamma) / (2 - gamma)) * dt);
  }

  const rows = times.length;
  const perRow = layers.length;
  const result: Migration = {
    times: Float64Array.from(times),
    meanActivity: new Float64Array(rows * perRow),
    meanMoisture: new Float64Array(rows * perRow),
    contactActivity: new Float64Array(rows * 2 * (perRow - 1)),
    gained: new Float64Array(rows),
    position,
    activity: a,
  };
  readWater();
  readLinks();
  const atStart = sum(held);
  let now = 0;
  let dt = firstStep();
  for (let row = 0; row < rows; row++) {
    while (times[row]! - now > 1e-9 * times[row]!) {
      const left = times[row]! - now;
      const pieces = Math.ceil(left / dt - 1e-9);
      step(left / Math.max(1, pieces));
      now += left / Math.max(1, pieces);
      dt = Math.max(dt, Math.min(dt * 1.3, 0.15 * now));
    }
    record(row);
  }
  return result;

  /** Time in which the finest cell answers. */
  function firstStep(): number {
    let shortest = Infinity;
    for (let c = 0; c < n; c++) {
      const rate = (link[c]! + link[c + 1]!) / slope[c]!;
      if (rate > 0) shortest = Math.min(shortest, 1 / rate);
    }
    return Math.min(2 * shortest, times[rows - 1]! || 1);
  }

  function record(row: number): void {
    result.gained[row] = sum(held) - atStart;
    for (let l = 0; l < perRow; l++) {
      let activity = 0;
      let water = 0;
      for (let c = l * cells; c < (l + 1) * cells; c++) {
        activity += a[c]! * width[c]!;
        water += held[c]!;
      }
      const { thickness, dryDensity } = layers[l]!;
      result.meanActivity[row * perRow + l] = activity / thickness;
      result.meanMoisture[row * perRow + l] = water / (thickness * dryDensity);
      if (l > 0) {
        const f = l * cells;
        const flux = link[f]! * (a[f - 1]! - a[f]!);
        const at = row * 2 * (perRow - 1) + 2 * (l - 1);
        result.contactActivity[at] = a[f - 1]! - (flux * width[f - 1]!) / 2 / conductivity[f - 1]!;
        result.contactActivity[at + 1] = a[f]! + (flux * width[f]!) / 2 / conductivity[f]!;
      }
    }
  }
}

const tableSize = 257;

/** No activity can leave the range of the starts and the outside: there the layers are tabulated. */
function rangeOf(layers: readonly MoistureLayer[], outer: { readonly first?: OuterFace; readonly last?: OuterFace }) {
  const values = layers.map((layer) => layer.start);
  for (const face of [outer.first, outer.last]) if (face && face.permeance > 0) values.push(face.waterActivity);
  const low = Math.max(0, Math.min(...values) - 1e-3);
  const high = Math.min(1, Math.max(...values) + 1e-3);
  return { low, perStep: (tableSize - 1) / (high - low) };
}

/** Water (kg/m³) and conductivity ρ D dm/daw (kg/(m s)) of a layer on an even grid of activities. */
function tabulate(layer: MoistureLayer, reach: { readonly low: number; readonly perStep: number }) {
  const water = new Float64Array(tableSize);
  const conductivity = new Float64Array(tableSize);
  for (let i = 0; i < tableSize; i++) {
    const aw = reach.low + i / reach.perStep;
    const d = typeof layer.diffusivity === 'number' ? layer.diffusivity : layer.diffusivity(aw);
    water[i] = layer.dryDensity * layer.isotherm.moisture(aw);
    conductivity[i] = layer.dryDensity * d * layer.isotherm.slope(aw);
  }
  return { water, conductivity };
}

function sum(of: Float64Array): number {
  let total = 0;
  for (let i = 0; i < of.length; i++) total += of[i]!;
  return total;
}

/** Activity difference by flux of a film. */
function resistance(permeance: number, vapour: number): number {
  requireRange('permeance', permeance, [0, Infinity], 'crank-1975');
  return permeance === 0 ? Infinity : 1 / (permeance * vapour);
}

/** Cells that are fine at both faces of each layer (cosine spacing). */
function layOut(layers: readonly MoistureLayer[], cells: number, n: number) {
  const width = new Float64Array(n);
  const position = new Float64Array(n);
  const layerOf = new Uint16Array(n);
  let z = 0;
  layers.forEach((layer, l) => {
    requireRange('thickness of a layer', layer.thickness, migrationRanges.thickness, 'crank-1975');
    requireRange('dry density of a layer', layer.dryDensity, migrationRanges.dryDensity, 'crank-1975');
    requireRange('water activity of a layer', layer.start, [0, 1], 'crank-1975');
    if (typeof layer.diffusivity === 'number')
      requireRange('diffusivity of a layer', layer.diffusivity, migrationRanges.diffusivity, 'crank-1975');
    for (let c = 0; c < cells; c++) {
      const from = (1 - Math.cos((Math.PI * c) / cells)) / 2;
      const to = (1 - Math.cos((Math.PI * (c + 1)) / cells)) / 2;
      const i = l * cells + c;
      width[i] = layer.thickness * (to - from);
      position[i] = z + (layer.thickness * (from + to)) / 2;
      layerOf[i] = l;
    }
    z += layer.thickness;
  });
  return { width, position, layerOf };
}
