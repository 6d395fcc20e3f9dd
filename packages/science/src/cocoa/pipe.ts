import { requireRange } from '../errors.js';
import type { Metre, MetrePerSecond, Pascal, PascalSecond } from '../units.js';

/**
 * Flow of a Casson fluid in a round pipe, m³/s, laminar: Q = (πR⁴/8η)(Δp/L)[1 - (16/7)√φ + (4/3)φ - φ⁴/21], φ = yield over wall stress.
 * @returns 0 where the wall stress does not pass the yield value
 */
export function cassonPipeFlow(yieldValue: Pascal, plasticViscosity: PascalSecond, diameter: Metre, length: Metre, drop: Pascal): number {
  const radius = diameter / 2;
  const wall = (drop * radius) / (2 * length);
  if (!(wall > yieldValue)) return 0;
  const phi = yieldValue / wall;
  const shape = 1 - (16 / 7) * Math.sqrt(phi) + (4 / 3) * phi - phi ** 4 / 21;
  return ((Math.PI * radius ** 4) / (8 * plasticViscosity)) * (drop / length) * shape;
}

/** Pressure drop, Pa, that moves a Casson fluid at a mean speed through a pipe. At speed 0: the drop that just starts the flow. */
export function cassonPipeDrop(
  yieldValue: Pascal,
  plasticViscosity: PascalSecond,
  diameter: Metre,
  length: Metre,
  speed: MetrePerSecond,
): Pascal {
  requireRange('speed_m_s', speed, [0, 100], 'physics');
  const start = (4 * length * yieldValue) / diameter;
  if (speed === 0) return start;
  const flow = (speed * Math.PI * diameter ** 2) / 4;
  let low = start;
  let high = start + (32 * plasticViscosity * length * speed) / diameter ** 2;
  while (cassonPipeFlow(yieldValue, plasticViscosity, diameter, length, high) < flow) high *= 2;
  for (let i = 0; i < 100 && high - low > 1e-10 * high; i++) {
    const middle = (low + high) / 2;
    if (cassonPipeFlow(yieldValue, plasticViscosity, diameter, length, middle) < flow) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Pressure drop, Pa, of a power-law fluid, laminar, with the generalised consistency K' = K ((3n + 1)/4n)ⁿ (Metzner and Reed). */
export function powerLawPipeDrop(
  generalisedConsistency: number,
  index: number,
  diameter: Metre,
  length: Metre,
  speed: MetrePerSecond,
): Pascal {
  return ((4 * generalisedConsistency * length) / diameter) * ((8 * speed) / diameter) ** index;
}

/** Reynolds number of a power-law fluid, Metzner and Reed; laminar below about 2100. */
export function powerLawReynolds(
  generalisedConsistency: number,
  index: number,
  diameter: Metre,
  speed: MetrePerSecond,
  density: number,
): number {
  return (diameter ** index * speed ** (2 - index) * density) / (generalisedConsistency * 8 ** (index - 1));
}
