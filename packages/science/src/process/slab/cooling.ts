import { BadInput, NoSolution, requireRange } from '../../errors.js';
import type { Celsius, Metre, Second } from '../../units.js';

/** One layer of the slab, from the belt upwards. */
export interface SlabLayer {
  readonly thickness: Metre;
  /** kg/m³, gas included. */
  readonly density: number;
  /** J/(kg K), without heat of melting. */
  readonly specificHeat: number;
  /** W/(m K), gas included. */
  readonly conductivity: number;
  readonly start: Celsius;
  /** Fat that sets on the way: heat per kg of layer (J/kg), middle (°C) and half width (K) of its range. */
  readonly melting?: { readonly heat: number; readonly temperature: Celsius; readonly halfWidth: number };
}

/** What can be a layer: m, kg/m³, J/(kg K), W/(m K). */
export const slabRanges = {
  thickness: [1e-6, 10],
  density: [1e-2, 1e5],
  specificHeat: [1e-2, 1e5],
  conductivity: [1e-6, 1e4],
} as const;

/** A stretch of the belt: what the slab meets above and below, and for how long. */
export interface CoolingSection {
  readonly duration: Second;
  readonly topTemperature: Celsius;
  /** W/(m² K); 0 insulates. A chilled drum or belt counts with its contact coefficient. */
  readonly topCoefficient: number;
  readonly bottomTemperature: Celsius;
  readonly bottomCoefficient: number;
}

/** Temperatures after each time step. Arrays are made once and refilled by every run. */
export interface SlabRun {
  /** Middle of each cell, m above the belt. */
  readonly position: Float64Array;
  /** Cell temperatures at the end, °C. */
  readonly temperature: Float64Array;
  readonly time: Float64Array;
  readonly mean: Float64Array;
  readonly top: Float64Array;
  readonly bottom: Float64Array;
  readonly hottest: Float64Array;
  readonly coldest: Float64Array;
  /** Heat taken out through both faces up to each time, J/m². */
  readonly heat: Float64Array;
  /** Cell temperatures at every time, `time.length` rows of `position.length`. */
  readonly profiles: Float64Array;
  /** Cools the slab through the sections, from the layers' start; returns itself. @throws NoSolution where fat does not settle */
  readonly run: (sections: readonly CoolingSection[]) => SlabRun;
}

/**
 * A slab of layers cooled from both faces: conduction through the thickness by finite volumes, fat that sets by its enthalpy.
 * Implicit (backward Euler for the first steps of a section, Crank-Nicolson after), energy conserved.
 *
 * @param layers - from the belt upwards, at least one
 * @param cells - shared out by thickness, at least two per layer
 * @param steps - time steps over the whole belt
 * @throws BadInput without layers; OutOfRange for a property that is not positive
 * @example slabRun([{ thickness: 0.013, density: 1330, specificHeat: 2100, conductivity: 0.28, start: 60 }], 200, 100)
 */
export function slabRun(layers: readonly SlabLayer[], cells = 200, steps = 100): SlabRun {
  if (layers.length === 0) throw new BadInput('A slab needs at least one layer');
  const total = layers.reduce((sum, layer) => sum + layer.thickness, 0);
  const counts = layers.map((layer) => {
    for (const key of ['thickness', 'density', 'specificHeat', 'conductivity'] as const) {
      requireRange(`${key} of a layer`, layer[key], slabRanges[key], 'carslaw-jaeger-1959');
    }
    requireRange('start temperature of a layer', layer.start, [-100, 300], 'carslaw-jaeger-1959');
    return Math.max(2, Math.round((cells * layer.thickness) / total));
  });
  const n = counts.reduce((a, b) => a + b, 0);
  const width = new Float64Array(n);
  const capacity = new Float64Array(n); // J/(m² K) without melting
  const half = new Float64Array(n); // k / (dx/2)
  const latent = new Float64Array(n); // J/m² of melting
  const middle = new Float64Array(n);
  const sharpness = new Float64Array(n);
  const start = new Float64Array(n);
  const position = new Float64Array(n);
  let melts = false;
  let narrowest = Infinity;
  let i = 0;
  let z = 0;
  layers.forEach((layer, l) => {
    const dx = layer.thickness / counts[l]!;
    for (let c = 0; c < counts[l]!; c++, i++) {
      width[i] = dx;
      capacity[i] = layer.density * layer.specificHeat * dx;
      half[i] = (2 * layer.conductivity) / dx;
      start[i] = layer.start;
      position[i] = z + dx / 2;
      z += dx;
      if (layer.melting && layer.melting.heat > 0) {
        melts = true;
        latent[i] = layer.density * layer.melting.heat * dx;
        middle[i] = layer.melting.temperature;
        sharpness[i] = 0.5 / layer.melting.halfWidth;
        narrowest = Math.min(narrowest, layer.melting.halfWidth);
      }
    }
  });
  const link = new Float64Array(n + 1); // conductance between cell i - 1 and i, W/(m² K)
  for (let f = 1; f < n; f++) link[f] = 1 / (1 / half[f - 1]! + 1 / half[f]!);

  const temperature = new Float64Array(n);
  const old = new Float64Array(n);
  const oldFlux = new Float64Array(n);
  const store = new Float64Array(n); // heat capacity at the guess, fat included
  const source = new Float64Array(n); // temperature that this capacity would have held before
  const upper = new Float64Array(n);
  const pivot = new Float64Array(n);
  const guess = new Float64Array(n);
  const oldLiquid = new Float64Array(n);
  const right = new Float64Array(n);
  const time = new Float64Array(steps + 1);
  const mean = new Float64Array(steps + 1);
  const top = new Float64Array(steps + 1);
  const bottom = new Float64Array(steps + 1);
  const hottest = new Float64Array(steps + 1);
  const coldest = new Float64Array(steps + 1);
  const heat = new Float64Array(steps + 1);
  const profiles = new Float64Array((steps + 1) * n);

  // The loops below take these into variables of their own: read from here each time, they would cost twice the time.
  const cellsOf = {
    temperature,
    old,
    oldFlux,
    store,
    source,
    upper,
    pivot,
    right,
    capacity,
    latent,
    middle,
    sharpness,
    oldLiquid,
    link,
    guess,
  } as const;

  /** The enthalpy of each cell as its tangent at the guess (Newton): energy is kept to the square of what a guess is off. */
  function updateStore(): void {
    const { temperature, old, store, source, capacity, latent, middle, sharpness, oldLiquid } = cellsOf;
    for (let c = 0; c < n; c++) {
      const fat = latent[c]!;
      const t = temperature[c]!;
      const x = 0.5 + sharpness[c]! * (t - middle[c]!);
      const rise = x > 0 && x < 1 ? fat * sharpness[c]! * 6 * x * (1 - x) : 0;
      const held = capacity[c]! * old[c]! + fat * (oldLiquid[c]! - liquid(x)) + rise * t;
      const value = capacity[c]! + rise;
      store[c] = value;
      source[c] = held / value;
    }
  }

  /** The temperature at which each cell holds the heat that its tangent says it holds. */
  function guessByEnthalpy(): void {
    const { temperature, guess, store, capacity, latent, middle, sharpness } = cellsOf;
    for (let c = 0; c < n; c++) {
      const fat = latent[c]!;
      if (fat === 0) continue;
      const at = (t: number) => capacity[c]! * t + fat * liquid(0.5 + sharpness[c]! * (t - middle[c]!));
      const held = at(guess[c]!) + store[c]! * (temperature[c]! - guess[c]!);
      const halfWidth = 0.5 / sharpness[c]!;
      let low = middle[c]! - halfWidth;
      let high = middle[c]! + halfWidth;
      if (held <= at(low)) temperature[c] = held / capacity[c]!;
      else if (held >= at(high)) temperature[c] = (held - fat) / capacity[c]!;
      else {
        for (let i = 0; i < 50; i++) {
          const between = (low + high) / 2;
          if (at(between) < held) low = between;
          else high = between;
        }
        temperature[c] = (low + high) / 2;
      }
    }
  }

  /** Factors of the tridiagonal matrix; kept while time step, coefficients and stores stay the same. */
  function factorise(stored: Float64Array, dt: number, theta: number, uBottom: number, uTop: number): void {
    const { link, pivot, upper } = cellsOf;
    let previous = 0;
    for (let c = 0; c < n; c++) {
      const lower = theta * link[c]!; // link[0] is 0
      const next = theta * link[c + 1]!; // and so is link[n]
      let diagonal = stored[c]! / dt + lower + next - lower * previous;
      if (c === 0) diagonal += theta * uBottom;
      if (c === n - 1) diagonal += theta * uTop;
      const inverse = 1 / diagonal;
      pivot[c] = inverse;
      previous = next * inverse;
      upper[c] = previous;
    }
  }

  function solve(stored: Float64Array, before: Float64Array, dt: number, theta: number, fluxBottom: number, fluxTop: number): void {
    const { temperature, oldFlux, pivot, right, upper, link } = cellsOf;
    const perTime = 1 / dt;
    let value = (stored[0]! * perTime * before[0]! + oldFlux[0]! + fluxBottom) * pivot[0]!;
    right[0] = value;
    const last = n - 1;
    for (let c = 1; c < last; c++) {
      value = (stored[c]! * perTime * before[c]! + oldFlux[c]! + theta * link[c]! * value) * pivot[c]!;
      right[c] = value;
    }
    value = (stored[last]! * perTime * before[last]! + oldFlux[last]! + fluxTop + theta * link[last]! * value) * pivot[last]!;
    temperature[last] = value;
    for (let c = last - 1; c >= 0; c--) {
      value = right[c]! + upper[c]! * value;
      temperature[c] = value;
    }
  }

  const older = { temperature: new Float64Array(n), dt: 0 };
  const factored = { dt: 0, theta: 0, uBottom: 0, uTop: 0 };

  /** One implicit step; heat out of both faces is returned, J/m². */
  function step(dt: number, theta: number, hBottom: number, tBottom: number, hTop: number, tTop: number): number {
    const { temperature, old, oldFlux, link, middle, sharpness, oldLiquid, guess } = cellsOf;
    const before = older.temperature;
    const uBottom = hBottom > 0 ? 1 / (1 / hBottom + 1 / half[0]!) : 0;
    const uTop = hTop > 0 ? 1 / (1 / hTop + 1 / half[n - 1]!) : 0;
    old.set(temperature);
    const explicit = 1 - theta;
    if (explicit > 0) {
      let below = explicit * uBottom * (tBottom - old[0]!);
      for (let c = 0; c < n - 1; c++) {
        const above = explicit * link[c + 1]! * (old[c + 1]! - old[c]!);
        oldFlux[c] = below + above;
        below = -above;
      }
      oldFlux[n - 1] = below + explicit * uTop * (tTop - old[n - 1]!);
    } else oldFlux.fill(0);
    const fluxBottom = theta * uBottom * tBottom;
    const fluxTop = theta * uTop * tTop;
    if (!melts) {
      if (factored.dt !== dt || factored.theta !== theta || factored.uBottom !== uBottom || factored.uTop !== uTop) {
        factorise(capacity, dt, theta, uBottom, uTop);
        Object.assign(factored, { dt, theta, uBottom, uTop });
      }
      solve(capacity, old, dt, theta, fluxBottom, fluxTop);
    } else {
      // First guess: the last step goes on. It saves most of the iterations.
      const onward = older.dt > 0 ? dt / older.dt : 0;
      for (let c = 0; c < n; c++) {
        temperature[c]! += onward * (old[c]! - before[c]!);
        oldLiquid[c] = liquid(0.5 + sharpness[c]! * (old[c]! - middle[c]!));
      }
      older.temperature.set(old);
      older.dt = dt;
      let settled = false;
      for (let iteration = 0; iteration < 200 && !settled; iteration++) {
        // What Newton's steps do not settle (much heat in a narrow range) starts again, each guess by the enthalpy it stands for.
        if (iteration === 8) temperature.set(old);
        updateStore();
        factorise(store, dt, theta, uBottom, uTop);
        guess.set(temperature);
        solve(store, source, dt, theta, fluxBottom, fluxTop);
        let change = 0;
        for (let c = 0; c < n; c++) change = Math.max(change, Math.abs(temperature[c]! - guess[c]!));
        // The error left is of the order of its square over the width of the range.
        settled = change < 0.004 * narrowest;
        if (!settled && iteration >= 8) guessByEnthalpy();
      }
      if (!settled)
        throw new NoSolution(`Fat that sets over ${2 * narrowest} K with this much heat does not settle; take a wider range or more steps`);
    }
    const outNew = uBottom * (temperature[0]! - tBottom) + uTop * (temperature[n - 1]! - tTop);
    const outOld = uBottom * (old[0]! - tBottom) + uTop * (old[n - 1]! - tTop);
    return dt * (theta * outNew + explicit * outOld);
  }

  function record(row: number, at: number, out: number, section: CoolingSection): void {
    const { temperature, capacity } = cellsOf;
    let sum = 0;
    let high = -Infinity;
    let low = Infinity;
    for (let c = 0; c < n; c++) {
      const t = temperature[c]!;
      sum += t * capacity[c]!;
      if (t > high) high = t;
      if (t < low) low = t;
    }
    time[row] = at;
    heat[row] = out;
    mean[row] = sum / heatCapacity;
    bottom[row] = face(half[0]!, temperature[0]!, section.bottomCoefficient, section.bottomTemperature);
    top[row] = face(half[n - 1]!, temperature[n - 1]!, section.topCoefficient, section.topTemperature);
    hottest[row] = Math.max(high, bottom[row]!, top[row]!);
    coldest[row] = Math.min(low, bottom[row]!, top[row]!);
    profiles.set(temperature, row * n);
  }
  const heatCapacity = capacity.reduce((a, b) => a + b, 0);

  const self: SlabRun = { position, temperature, time, mean, top, bottom, hottest, coldest, heat, profiles, run };
  return self;

  function run(sections: readonly CoolingSection[]): SlabRun {
    if (sections.length === 0) throw new BadInput('Cooling needs at least one section');
    let belt = 0;
    for (const section of sections) {
      requireRange('duration of a section', section.duration, [0, 1e9], 'carslaw-jaeger-1959');
      requireRange('coefficient above', section.topCoefficient, [0, 1e6], 'carslaw-jaeger-1959');
      requireRange('coefficient below', section.bottomCoefficient, [0, 1e6], 'carslaw-jaeger-1959');
      requireRange('temperature above', section.topTemperature, [-200, 300], 'carslaw-jaeger-1959');
      requireRange('temperature below', section.bottomTemperature, [-200, 300], 'carslaw-jaeger-1959');
      belt += section.duration;
    }
    temperature.set(start);
    older.dt = 0;
    record(0, 0, 0, { ...sections[0]!, topCoefficient: 0, bottomCoefficient: 0 });
    let row = 0;
    let at = 0;
    let out = 0;
    let passed = 0;
    sections.forEach((section, s) => {
      passed += section.duration;
      // Rows are shared out by time; the last section takes what is left.
      const last = s === sections.length - 1;
      const end = last ? steps : belt > 0 ? Math.max(row, Math.round((steps * passed) / belt)) : row;
      const rows = end - row;
      for (let r = 0; r < Math.max(1, rows); r++) {
        const dt = section.duration / Math.max(1, rows);
        if (!(dt > 1e-9)) break; // nothing happens in a nanosecond
        // The jump at the start of a section: quarter steps of backward Euler, which damps it; then Crank-Nicolson.
        const pieces = r === 0 ? 8 : r === 1 ? 4 : 1;
        for (let piece = 0; piece < pieces; piece++) {
          const theta = r < 2 ? 1 : 0.5;
          out += step(
            dt / pieces,
            theta,
            section.bottomCoefficient,
            section.bottomTemperature,
            section.topCoefficient,
            section.topTemperature,
          );
        }
        at += dt;
        if (rows > 0) record(++row, at, out, section);
      }
    });
    while (row < steps) record(++row, at, out, sections[sections.length - 1]!);
    return self;
  }
}

/** Liquid share of fat at a place in its range, 0 to 1: a cubic step. */
function liquid(x: number): number {
  return x <= 0 ? 0 : x >= 1 ? 1 : x * x * (3 - 2 * x);
}

/** Temperature of a face between the middle of the outer cell and the medium. */
function face(half: number, cell: Celsius, coefficient: number, medium: Celsius): Celsius {
  return (half * cell + coefficient * medium) / (half + coefficient);
}

/** When a slab can be slit: from when its hottest place has cooled to `high` until its coldest falls below `low`. */
export interface SlitWindow {
  /** s; Infinity when it does not happen on this belt. */
  readonly opens: Second;
  readonly closes: Second;
  /** Spread between hottest and coldest place when it opens, K. */
  readonly spread: number;
}

/** Finds the slitting window in a run; times between steps are interpolated. */
export function slitWindow(run: SlabRun, low: Celsius, high: Celsius): SlitWindow {
  const opens = firstBelow(run.time, run.hottest, high);
  const closes = firstBelow(run.time, run.coldest, low);
  const spread = opens < Infinity ? high - interpolate(run.time, run.coldest, opens) : NaN;
  return { opens, closes, spread: Number.isNaN(spread) ? run.hottest.at(-1)! - run.coldest.at(-1)! : spread };
}

/** When a falling series first is at a level or below it, s; between steps along a straight line, Infinity where it never is. */
export function firstBelow(time: Float64Array, series: Float64Array, level: number): Second {
  if (series[0]! <= level) return 0;
  for (let i = 1; i < time.length; i++) {
    if (series[i]! <= level) {
      const share = (series[i - 1]! - level) / (series[i - 1]! - series[i]!);
      return time[i - 1]! + share * (time[i]! - time[i - 1]!);
    }
  }
  return Infinity;
}

function interpolate(time: Float64Array, series: Float64Array, at: number): number {
  let i = 1;
  while (i < time.length - 1 && time[i]! < at) i++;
  const length = time[i]! - time[i - 1]!;
  const share = length > 0 ? (at - time[i - 1]!) / length : 0;
  return series[i - 1]! + share * (series[i]! - series[i - 1]!);
}
