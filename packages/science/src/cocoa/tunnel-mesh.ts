import type { TunnelTask, TunnelZone } from './tunnel-task.js';

const coatCells = 2;
const halfCells = 6;

/** Cells of the cross-section: half the width, all the height. */
export interface Mesh {
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

/** Two cells across each coat, six across half the centre, about twelve up it. */
export function meshOf(task: TunnelTask): Mesh {
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

/** Surface temperature: conduction through the half cell equals what the air takes; the middle of the face. */
export function surface(mesh: Mesh, t: Float64Array, zone: TunnelZone, face: 'top' | 'side' | 'bottom'): number {
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

/** Mean by heat capacity. */
export function meanTemperature(mesh: Mesh, t: Float64Array): number {
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
export function coatMean(mesh: Mesh, of: Float64Array): number {
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
export function heatContent(mesh: Mesh, t: Float64Array, s: Float64Array, latentPerVolume: number): number {
  let heat = 0;
  for (let j = 0; j < mesh.ny; j++) {
    for (let i = 0; i < mesh.nx; i++) {
      const at = i + mesh.nx * j;
      heat += (mesh.capacity[at]! * t[at]! - (mesh.isCoat[at] ? latentPerVolume * s[at]! : 0)) * mesh.dx[i]! * mesh.dy[j]!;
    }
  }
  return heat;
}
