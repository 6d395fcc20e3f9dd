import { Kept } from '../geometry/cache.js';
import { seeded } from '../geometry/random.js';

/** Rings that never touch, on a tile that repeats without a seam. Any leading part of the list is itself a fair sample. */
export interface RingField {
  readonly w: number;
  readonly h: number;
  /** x, y, r one after another, mm. */
  readonly rings: Float64Array;
}

const tile = { w: 31, h: 17 } as const;
/** Fields by the share they can serve: the emptier the foam, the wider its rings keep apart, so that none lies bare. */
const kinds = [
  { upTo: 0.2, share: 0.22, fill: 0, wall: 0.26 },
  { upTo: 0.35, share: 0.38, fill: 0.4, wall: 0.12 },
  { upTo: 0.44, share: 0.48, fill: 0.5, wall: 0.06 },
  { upTo: 1, share: 0.6, fill: 0.67, wall: 0.03 },
] as const;
type Grade = (typeof kinds)[number];
/** Number of fields to choose from, the emptiest first. */
export const grades = kinds.length;

/** The emptiest field that serves a share of air. */
export const gradeFor = (air: number): number => kinds.findIndex(({ upTo }) => air <= upTo);

const fields = new Kept<RingField>(12);

/** The ring field of a seed and grade; radii .1 to .51 mm times `grain`, smaller ones filling the gaps late in the list. */
export function ringField(seed: number, grade: number, grain: number): RingField {
  const base = fields.get(`${seed}/${grade}`, () => grow(seed, kinds[grade]!));
  if (grain === 1) return base;
  return fields.get(`${seed}/${grade}/${grain}`, () => ({ w: base.w * grain, h: base.h * grain, rings: base.rings.map((v) => v * grain) }));
}

/** Neighbouring cells, the own one first: most places are refused there. */
const around = [
  [0, 0],
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [-1, 1],
  [1, -1],
  [-1, -1],
] as const;

function grow(seed: number, { share, fill, wall }: Grade): RingField {
  const random = seeded(seed);
  const { w, h } = tile;
  const step = 1.3; // two widest rings and a wall: only neighbouring cells of the grid can touch
  const columns = Math.floor(w / step);
  const rows = Math.floor(h / step);
  const grid: number[][] = Array.from({ length: columns * rows }, () => []);
  const rings: number[] = [];
  let filled = 0;
  // sizes first, skewed to the small side as bubbles are; the big ones find their places before the small
  const sizes: number[] = [];
  for (let sum = 0; sum < share * w * h; sum += Math.PI * sizes[sizes.length - 1]! ** 2) sizes.push(0.1 + 0.41 * Math.pow(random(), 2.2));
  sizes.sort((a, b) => b - a);
  for (const r of sizes) {
    for (let attempt = 0; attempt < 400; attempt += 1) {
      const x = random() * w;
      const y = random() * h;
      if (clearance(x, y, r, r) < r) continue;
      add(x, y, r);
      break;
    }
  }
  const placed = rings.length / 3;
  for (let misses = 0; filled < fill * w * h && misses < 3000;) {
    const x = random() * w;
    const y = random() * h;
    const room = clearance(x, y, 0.2, 0.085);
    if (room > 0.085) add(x, y, room);
    else misses += 1;
  }
  return { w, h, rings: evenOrder() };

  /** An order in which any leading part of the list covers every patch of the tile alike; the fillers come last. */
  function evenOrder(): Float64Array {
    const patch = 2.1;
    const covered = new Map<string, number>();
    const shuffled = Array.from({ length: rings.length / 3 }, (_, at) => ({ at, key: random() })).sort((one, other) => one.key - other.key);
    const order = shuffled.map(({ at }) => {
      const own = `${Math.floor(rings[3 * at]! / patch)}/${Math.floor(rings[3 * at + 1]! / patch)}`;
      const before = covered.get(own) ?? 0;
      const size = Math.PI * rings[3 * at + 2]! ** 2;
      if (at >= placed) return { at, key: 1e6 + random() };
      covered.set(own, before + size);
      return { at, key: before + size * random() };
    });
    order.sort((one, other) => one.key - other.key);
    return Float64Array.from(order.flatMap(({ at }) => [rings[3 * at]!, rings[3 * at + 1]!, rings[3 * at + 2]!]));
  }
  function cellOf(x: number, y: number): [number, number] {
    return [Math.min(columns - 1, Math.floor((x / w) * columns)), Math.min(rows - 1, Math.floor((y / h) * rows))];
  }
  /** Largest radius that fits at (x, y), up to `want`; below `least` the search stops early. */
  function clearance(x: number, y: number, want: number, least: number): number {
    const [cx, cy] = cellOf(x, y);
    let room = want;
    for (const [i, j] of around) {
      const cell = grid[((cy + j + rows) % rows) * columns + ((cx + i + columns) % columns)]!;
      for (let k = 0; k < cell.length; k += 1) {
        const at = cell[k]!;
        let dx = Math.abs(rings[at]! - x);
        let dy = Math.abs(rings[at + 1]! - y);
        if (dx > w / 2) dx = w - dx;
        if (dy > h / 2) dy = h - dy;
        room = Math.min(room, Math.sqrt(dx * dx + dy * dy) - rings[at + 2]! - wall);
        if (room < least) return room;
      }
    }
    return room;
  }
  function add(x: number, y: number, r: number): void {
    const [cx, cy] = cellOf(x, y);
    grid[cy * columns + cx]!.push(rings.length);
    rings.push(x, y, r);
    filled += Math.PI * r * r;
  }
}
