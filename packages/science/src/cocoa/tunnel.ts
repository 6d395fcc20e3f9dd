import { BadInput, requireRange } from '../errors.js';
import { butterLatentHeat, solidFatUnchecked, type FatBlend } from './fat.js';
import { growthOf, type GrowthMode } from './growth.js';
import type { Celsius, Kilogram, Metre, MetrePerSecond, Second } from '../units.js';

/** One layer of the centre, from the bottom up. */
export interface CentreLayer {
  readonly height: Metre;
  readonly density: number;
  readonly specificHeat: number;
  readonly conductivity: number;
}

/** The coat round the centre. */
export interface CoatLayer {
  readonly top: Metre;
  readonly side: Metre;
  readonly bottom: Metre;
  readonly density: number;
  /** Without heat of crystallisation. */
  readonly specificHeat: number;
  readonly conductivity: number;
  readonly fat: number;
  readonly blend: FatBlend;
  /** Crystals at the start, share of the fat: the temper. */
  readonly crystals: number;
  readonly growthRate?: number;
  /** Latent heat per kg of solid fat; left out: 157 kJ/kg. */
  readonly latentHeat?: number;
}

/** A zone of the tunnel along the belt. */
export interface TunnelZone {
  readonly length: Metre;
  readonly air: Celsius;
  /** Under the belt: cooled plate, bottom air, or the air itself. */
  readonly belt: Celsius;
  /** W/(m² K): top, sides, and bottom through the belt. */
  readonly topCoefficient: number;
  readonly sideCoefficient: number;
  readonly bottomCoefficient: number;
}

export interface TunnelTask {
  readonly width: Metre;
  readonly length: Metre;
  readonly centre: readonly CentreLayer[];
  readonly coat: CoatLayer;
  readonly coatStart: Celsius;
  readonly centreStart: Celsius;
  readonly zones: readonly TunnelZone[];
  readonly beltSpeed: MetrePerSecond;
  readonly mode: GrowthMode;
  /** Time step, s; left out: 2.5. */
  readonly step?: Second;
}

export interface TunnelHistory {
  /** s from the inlet, and along with it: */
  readonly time: readonly number[];
  readonly topSurface: readonly number[];
  readonly centre: readonly number[];
  readonly mean: readonly number[];
  /** Solid share of the fat in the coat, mean. */
  readonly solids: readonly number[];
  readonly exit: {
    readonly topSurface: Celsius;
    readonly sideSurface: Celsius;
    readonly bottomSurface: Celsius;
    readonly coldestSurface: Celsius;
    readonly centre: Celsius;
    /** Of the whole bar, by heat content. */
    readonly mean: Celsius;
    readonly coatMean: Celsius;
    readonly solids: number;
    readonly leastSolids: number;
    /** Heat of crystals still to come at 20 °C, J per kg coat. */
    readonly latentLeft: number;
  };
  readonly dwell: Second;
  /** Heat given up by a bar, J, and per zone. */
  readonly heat: number;
  readonly heatByZone: readonly number[];
  readonly mass: Kilogram;
}

const coatCells = 2;
const halfCells = 6;

/**
 * Cooling of a coated bar through a tunnel: the cross-section (half the width, all the height) by implicit finite volumes, width and
 * height in turn, with heat of crystallisation in the coat. Ends of the bar are left out (the section stands for the finished length).
 * About 170 cells and 220 steps: a millisecond or so.
 *
 * @throws BadInput for no layer, no zone, or a belt that stands; OutOfRange for sizes and properties outside physics
 * @see franke-1998 (form: conduction with a heat source that depends on temperature and on what has crystallised)
 */
export function coolBar(task: TunnelTask): TunnelHistory {
  checkTask(task);
  const mesh = meshOf(task);
  const { nx, ny, count } = mesh;
  const t = new Float64Array(count);
  const s = new Float64Array(count);
  const isCoat = mesh.isCoat;
  const coatPlaces = Int32Array.from({ length: count }, (_, i) => i).filter((i) => isCoat[i] === 1);
  for (let i = 0; i < count; i++) {
    t[i] = isCoat[i] ? task.coatStart : task.centreStart;
    s[i] = isCoat[i] ? task.coat.crystals : 0;
  }
  const latent = task.coat.latentHeat ?? butterLatentHeat;
  const warming = (task.coat.fat * latent) / task.coat.specificHeat;
  const width = emptySweep(count);
  const height = emptySweep(count);
  const grow = growthOf(task.coat.blend, task.mode, task.coat.growthRate);
  const finishedLength = task.length + 2 * task.coat.side;

  const history = { time: [0], topSurface: [] as number[], centre: [] as number[], mean: [] as number[], solids: [] as number[] };
  const heatByZone: number[] = [];
  const dwell = task.zones.reduce((sum, z) => sum + z.length, 0) / task.beltSpeed;
  const record = (zone: TunnelZone) => {
    history.topSurface.push(surface(mesh, t, zone, 'top'));
    history.centre.push(t[mesh.middle]!);
    history.mean.push(meanTemperature(mesh, t));
    history.solids.push(coatMean(mesh, s));
  };
  record(task.zones[0]!);
  let now = 0;
  let sinceRecord = 0;
  for (const zone of task.zones) {
    const stay = zone.length / task.beltSpeed;
    const steps = Math.max(1, Math.ceil(stay / (task.step ?? 2.5)));
    const dt = stay / steps;
    factor(width, mesh, dt, 'width', { h: 0, t: 0 }, { h: zone.sideCoefficient, t: zone.air });
    factor(height, mesh, dt, 'height', { h: zone.bottomCoefficient, t: zone.belt }, { h: zone.topCoefficient, t: zone.air });
    const before = heatContent(mesh, t, s, task.coat.fat * latent * task.coat.density);
    for (let n = 0; n < steps; n++) {
      for (let c = 0; c < coatPlaces.length; c++) {
        const i = coatPlaces[c]!;
        const grown = grow(t[i]!, s[i]!, dt);
        s[i]! += grown;
        t[i]! += warming * grown;
      }
      apply(width, t, ny, nx, 1, nx);
      apply(height, t, nx, ny, nx, 1);
      now += dt;
      if (++sinceRecord === 4 || n === steps - 1) {
        sinceRecord = 0;
        history.time.push(now);
        record(zone);
      }
    }
    const after = heatContent(mesh, t, s, task.coat.fat * latent * task.coat.density);
    heatByZone.push(2 * (before - after) * finishedLength); // the section is half the bar
  }
  const last = task.zones.at(-1)!;
  const surfaces = { top: surface(mesh, t, last, 'top'), side: surface(mesh, t, last, 'side'), bottom: surface(mesh, t, last, 'bottom') };
  const solids = coatMean(mesh, s);
  let leastSolids = 1;
  for (let i = 0; i < count; i++) if (isCoat[i]) leastSolids = Math.min(leastSolids, s[i]!);
  return {
    ...history,
    exit: {
      topSurface: surfaces.top,
      sideSurface: surfaces.side,
      bottomSurface: surfaces.bottom,
      coldestSurface: Math.min(surfaces.top, surfaces.side, surfaces.bottom),
      centre: t[mesh.middle]!,
      mean: meanTemperature(mesh, t),
      coatMean: coatMean(mesh, t),
      solids,
      leastSolids,
      latentLeft: Math.max(0, solidFatUnchecked(20, task.coat.blend) - solids) * task.coat.fat * latent,
    },
    dwell,
    heat: heatByZone.reduce((a, b) => a + b, 0),
    heatByZone,
    mass: 2 * mesh.massPerLength * finishedLength,
  };
}

interface Mesh {
  readonly nx: number;
  readonly ny: number;
  readonly count: number;
  /** Cell i + nx j: i across from the middle plane, j up. */
  readonly dx: Float64Array;
  readonly dy: Float64Array;
  readonly isCoat: Uint8Array;
  /** Volumetric heat capacity, J/(m³ K), and conductivity. */
  readonly capacity: Float64Array;
  readonly conductivity: Float64Array;
  readonly middle: number;
  readonly massPerLength: number;
}

function meshOf(task: TunnelTask): Mesh {
  const { coat } = task;
  const xs = [...fill(task.width / 2, halfCells), ...fill(coat.side, coat.side > 0 ? coatCells : 0)];
  const heights = task.centre.reduce((sum, layer) => sum + layer.height, 0);
  const ys: number[] = [];
  const layerOf: number[] = [];
  const add = (height: number, cells: number, layer: number) => {
    for (const cell of fill(height, cells)) {
      ys.push(cell);
      layerOf.push(layer);
    }
  };
  add(coat.bottom, coat.bottom > 0 ? coatCells : 0, -1);
  task.centre.forEach((layer, k) => add(layer.height, Math.max(2, Math.round((12 * layer.height) / heights)), k));
  add(coat.top, coat.top > 0 ? coatCells : 0, -1);
  const nx = xs.length;
  const ny = ys.length;
  const count = nx * ny;
  const isCoat = new Uint8Array(count);
  const capacity = new Float64Array(count);
  const conductivity = new Float64Array(count);
  let massPerLength = 0;
  for (let j = 0; j < ny; j++) {
    for (let i = 0; i < nx; i++) {
      const layer = i >= halfCells ? -1 : layerOf[j]!;
      const what = layer < 0 ? coat : task.centre[layer]!;
      const at = i + nx * j;
      isCoat[at] = layer < 0 ? 1 : 0;
      capacity[at] = what.density * what.specificHeat;
      conductivity[at] = what.conductivity;
      massPerLength += what.density * xs[i]! * ys[j]!;
    }
  }
  return {
    nx,
    ny,
    count,
    dx: Float64Array.from(xs),
    dy: Float64Array.from(ys),
    isCoat,
    capacity,
    conductivity,
    middle: nx * middleRow(ys),
    massPerLength,
  };
}

function fill(length: number, cells: number): number[] {
  return new Array<number>(cells).fill(length / Math.max(1, cells));
}

function middleRow(ys: readonly number[]): number {
  const half = ys.reduce((a, b) => a + b, 0) / 2;
  let sum = 0;
  return Math.max(
    0,
    ys.findIndex((dy) => (sum += dy) >= half),
  );
}

/** Thomas' elimination of one direction, worked out once per zone: T = (store T + inner T(before) + known)/pivot, then back with gain. */
interface Sweep {
  readonly store: Float64Array;
  readonly inner: Float64Array;
  readonly known: Float64Array;
  readonly inversePivot: Float64Array;
  readonly gain: Float64Array;
}

function emptySweep(count: number): Sweep {
  const make = () => new Float64Array(count);
  return { store: make(), inner: make(), known: make(), inversePivot: make(), gain: make() };
}

/** Conductance between a cell and the next, or the medium outside, W/(m² K). */
function conductance(here: number, beyond: number): number {
  return here === Infinity || beyond === Infinity ? 0 : 1 / (here + beyond);
}

/** Factors for lines of cells `stride` apart, from the first face (coefficient, temperature) to the last. */
function factor(
  sweep: Sweep,
  mesh: Mesh,
  dt: number,
  direction: 'width' | 'height',
  first: { readonly h: number; readonly t: number },
  last: { readonly h: number; readonly t: number },
): void {
  const { nx, ny, capacity, conductivity } = mesh;
  const across = direction === 'width';
  const [lines, length, stride, jump, size] = across ? [ny, nx, 1, nx, mesh.dx] : [nx, ny, nx, 1, mesh.dy];
  for (let line = 0; line < lines; line++) {
    let inner = 0;
    for (let k = 0; k < length; k++) {
      const at = line * jump + k * stride;
      const half = size[k]! / (2 * conductivity[at]!);
      const toLast = k === length - 1;
      const outer = conductance(half, toLast ? 1 / last.h : size[k + 1]! / (2 * conductivity[at + stride]!));
      const toFirst = k === 0 ? conductance(half, 1 / first.h) : 0;
      const store = (capacity[at]! * size[k]!) / dt;
      const back = k > 0 ? inner * sweep.gain[at - stride]! : 0;
      const pivot = store + inner + outer + toFirst - back;
      sweep.store[at] = store;
      sweep.inner[at] = inner;
      sweep.known[at] = toFirst * first.t + (toLast ? outer * last.t : 0);
      sweep.inversePivot[at] = 1 / pivot;
      sweep.gain[at] = toLast ? 0 : outer / pivot;
      inner = outer;
    }
  }
}

/** One implicit step along every line. */
function apply(sweep: Sweep, t: Float64Array, lines: number, length: number, stride: number, jump: number): void {
  const { store, inner, known, inversePivot, gain } = sweep;
  for (let line = 0; line < lines; line++) {
    let at = line * jump;
    t[at] = (store[at]! * t[at]! + known[at]!) * inversePivot[at]!;
    for (let k = 1; k < length; k++) {
      at += stride;
      t[at] = (store[at]! * t[at]! + known[at]! + inner[at]! * t[at - stride]!) * inversePivot[at]!;
    }
    for (let k = 1; k < length; k++) {
      at -= stride;
      t[at]! += gain[at]! * t[at + stride]!;
    }
  }
}

/** Surface temperature: conduction through the half cell equals what the air takes; the middle of the face. */
function surface(mesh: Mesh, t: Float64Array, zone: TunnelZone, face: 'top' | 'side' | 'bottom'): number {
  const { nx, ny, dx, dy, conductivity } = mesh;
  const [at, size, h, outside] =
    face === 'top'
      ? [nx * (ny - 1), dy[ny - 1]!, zone.topCoefficient, zone.air]
      : face === 'bottom'
        ? [0, dy[0]!, zone.bottomCoefficient, zone.belt]
        : [nx - 1 + (mesh.middle / nx) * nx, dx[nx - 1]!, zone.sideCoefficient, zone.air];
  const inside = (2 * conductivity[at]!) / size;
  return (inside * t[at]! + h * outside) / (inside + h);
}

function meanTemperature(mesh: Mesh, t: Float64Array): number {
  let heat = 0;
  let capacity = 0;
  for (let j = 0; j < mesh.ny; j++) {
    for (let i = 0; i < mesh.nx; i++) {
      const at = i + mesh.nx * j;
      const c = mesh.capacity[at]! * mesh.dx[i]! * mesh.dy[j]!;
      heat += c * t[at]!;
      capacity += c;
    }
  }
  return heat / capacity;
}

/** Mean over the area of the coat. */
function coatMean(mesh: Mesh, of: Float64Array): number {
  let sum = 0;
  let area = 0;
  for (let j = 0; j < mesh.ny; j++) {
    for (let i = 0; i < mesh.nx; i++) {
      const at = i + mesh.nx * j;
      if (!mesh.isCoat[at]) continue;
      sum += of[at]! * mesh.dx[i]! * mesh.dy[j]!;
      area += mesh.dx[i]! * mesh.dy[j]!;
    }
  }
  return area > 0 ? sum / area : 0;
}

/** J per metre of bar and half section, from 0 °C and liquid fat. */
function heatContent(mesh: Mesh, t: Float64Array, s: Float64Array, latentPerVolume: number): number {
  let heat = 0;
  for (let j = 0; j < mesh.ny; j++) {
    for (let i = 0; i < mesh.nx; i++) {
      const at = i + mesh.nx * j;
      heat += (mesh.capacity[at]! * t[at]! - (mesh.isCoat[at] ? latentPerVolume * s[at]! : 0)) * mesh.dx[i]! * mesh.dy[j]!;
    }
  }
  return heat;
}

function checkTask(task: TunnelTask): void {
  if (task.centre.length === 0) throw new BadInput('the bar has no centre layer; at least one is needed');
  if (task.zones.length === 0) throw new BadInput('the tunnel has no zone; at least one is needed');
  const above = [1e-9, Infinity] as const;
  requireRange('width_m', task.width, above, 'physics');
  requireRange('length_m', task.length, above, 'physics');
  requireRange('belt_speed_m_s', task.beltSpeed, [1e-6, 100], 'physics');
  requireRange('coat_temperature_c', task.coatStart, [-60, 120], 'physics');
  requireRange('centre_temperature_c', task.centreStart, [-60, 120], 'physics');
  for (const layer of [...task.centre, task.coat]) {
    requireRange('density_kg_m3', layer.density, [10, 5000], 'physics');
    requireRange('specific_heat_j_kg_k', layer.specificHeat, [100, 6000], 'physics');
    requireRange('thermal_conductivity_w_m_k', layer.conductivity, [0.005, 10], 'physics');
  }
  for (const layer of task.centre) requireRange('layer_height_m', layer.height, above, 'physics');
  for (const thickness of [task.coat.top, task.coat.side, task.coat.bottom]) requireRange('coat_thickness_m', thickness, [0, 1], 'physics');
  requireRange('fat', task.coat.fat, [0, 1], 'physics');
  requireRange('crystals', task.coat.crystals, [0, 1], 'physics');
  for (const zone of task.zones) {
    requireRange('zone_length_m', zone.length, above, 'physics');
    requireRange('zone_air_c', zone.air, [-60, 120], 'physics');
    requireRange('zone_belt_c', zone.belt, [-60, 120], 'physics');
    for (const h of [zone.topCoefficient, zone.sideCoefficient, zone.bottomCoefficient]) {
      requireRange('heat_transfer_coefficient_w_m2_k', h, [0, 10_000], 'physics');
    }
  }
}
