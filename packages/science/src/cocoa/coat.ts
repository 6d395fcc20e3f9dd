import { requireRange } from '../errors.js';
import { gravity, meanDrainedThickness, staticThickness, wipedThickness } from './film.js';
import type { Kilogram, KilogramPerCubicMetre, Metre, MetrePerSecond, Pascal, PascalSecond, Second } from '../units.js';

/** A centre under the curtain, and what the enrober does to its coat. */
export interface CoatTask {
  readonly length: Metre;
  readonly width: Metre;
  readonly height: Metre;
  readonly centreMass: Kilogram;
  /** Casson values of the tempered chocolate at the enrober. */
  readonly yieldValue: Pascal;
  readonly plasticViscosity: PascalSecond;
  readonly density: KilogramPerCubicMetre;
  /** What the curtain and flow pan leave at first, all round. */
  readonly firstThickness: Metre;
  /** From curtain to where the coat sets or lies on a closed belt. */
  readonly drainTime: Second;
  readonly beltSpeed: MetrePerSecond;
  /** Air at the blower mouth, m/s; 0: no blower. */
  readonly blowerSpeed: MetrePerSecond;
  /** Distance over which the jet's pressure falls, about the slot width at the bar. */
  readonly jetWidth: Metre;
  /** Shaker: amplitude and frequency of the mesh. */
  readonly shakerAmplitude: Metre;
  readonly shakerFrequency: number;
  readonly shakerTime: Second;
  /** Measured coat over computed coat of this plant; 1 where nothing was measured. */
  readonly calibration: number;
}

export interface Coat {
  readonly top: Metre;
  readonly side: Metre;
  readonly bottom: Metre;
  readonly mass: Kilogram;
  readonly mean: Metre;
  /** Coat over finished bar. */
  readonly pickUp: number;
  /** What sets the top: the blower, levelling over the edges, or the curtain. */
  readonly topSetBy: 'blower' | 'levelling' | 'curtain';
}

const airDensity = 1.19; // kg/m³ at 23 °C

/** Mean acceleration that drains a film on a shaken wall: gravity plus the mean of a sine, and its peak for what finally stands still. */
function shaken(amplitude: Metre, frequency: number): number {
  return amplitude * (2 * Math.PI * frequency) ** 2;
}

/**
 * Coat of a bar from film theory, without adjustable constants but `calibration`. Not validated against measured coats: no pair of
 * yield value and thickness could be found in print. Trends are those of the physics: a higher yield value or viscosity gives a thicker
 * coat; more blower, shaking or time a thinner one.
 *
 * Sides and ends: kinematic drainage of a Casson film under gravity; while the mesh shakes, the peak of its acceleration adds to gravity.
 * Top: the thinner of what an air jet of pressure ρu²/2 falling over `jetWidth` leaves at belt speed (jet wiping), of what levels over the
 * edges (h² = 2 τ0 x/(ρ g), static slump), and of the first thickness.
 * Bottom: chocolate squeezed between bar and mesh until the yield value carries the bar, h = τ0 w/(4 p) with p the weight per area.
 */
export function coatOfBar(task: CoatTask): Coat {
  checkTask(task);
  const { yieldValue: tau, plasticViscosity: eta, density: rho } = task;
  const acceleration = shaken(task.shakerAmplitude, task.shakerFrequency);
  const shakeTime = Math.min(task.shakerTime, task.drainTime);
  const still = gravity * rho;
  const strong = rho * (gravity + acceleration);

  // While shaken the film drains towards a thinner end; before and after, under gravity alone.
  const calm = task.drainTime - shakeTime;
  const afterCalm = meanDrainedThickness(task.height, calm, task.firstThickness, tau, eta, still);
  const side =
    shakeTime > 0 && acceleration > 0 ? meanDrainedThickness(task.height, shakeTime, afterCalm, tau, eta, strong) : continued(task, still);

  const levelled = (2 / 3) * Math.sqrt((2 * tau * (Math.min(task.width, task.length) / 2)) / strong);
  const blown = blownThickness(task);
  const top = Math.min(task.firstThickness, levelled, blown);
  const topSetBy = top === blown ? 'blower' : top === levelled ? 'levelling' : 'curtain';

  const weight = (task.centreMass * gravity * (1 + acceleration / gravity)) / (task.length * task.width);
  const bottom = Math.min(task.firstThickness, (tau * Math.min(task.width, task.length)) / (4 * weight));

  return assemble(task, top, side, bottom, topSetBy);
}

function continued(task: CoatTask, force: number): Metre {
  return meanDrainedThickness(task.height, task.drainTime, task.firstThickness, task.yieldValue, task.plasticViscosity, force);
}

function blownThickness(task: CoatTask): Metre {
  if (task.blowerSpeed === 0) return Infinity;
  const gradient = (0.5 * airDensity * task.blowerSpeed ** 2) / task.jetWidth;
  return Math.max(
    staticThickness(task.yieldValue, gradient),
    wipedThickness(task.beltSpeed, task.yieldValue, task.plasticViscosity, gradient),
  );
}

/** Faces with their edges: the finished block less the centre, each pair of faces carrying its own thickness. */
function assemble(task: CoatTask, top0: Metre, side0: Metre, bottom0: Metre, topSetBy: Coat['topSetBy']): Coat {
  const k = task.calibration;
  const [top, side, bottom] = [k * top0, k * side0, k * bottom0];
  const { length, width, height } = task;
  // Edges are rounded: a quarter round of the mean of two thicknesses stands in for the full corner, π/4 of it.
  const faces = length * width * (top + bottom) + 2 * height * (length + width) * side;
  const verticalEdges = Math.PI * side * side * height;
  const rim = (2 * (length + width) * side * (top + bottom) * Math.PI) / 4;
  const volume = faces + verticalEdges + rim;
  const mass = volume * task.density;
  const area = 2 * (length * width + length * height + width * height);
  return { top, side, bottom, mass, mean: volume / area, pickUp: mass / (mass + task.centreMass), topSetBy };
}

function checkTask(task: CoatTask): void {
  const above = [Number.MIN_VALUE, Infinity] as const;
  requireRange('length_m', task.length, above, 'physics');
  requireRange('width_m', task.width, above, 'physics');
  requireRange('height_m', task.height, above, 'physics');
  requireRange('centre_mass_kg', task.centreMass, above, 'physics');
  requireRange('yield_value_pa', task.yieldValue, [0, Infinity], 'physics');
  requireRange('plastic_viscosity_pa_s', task.plasticViscosity, above, 'physics');
  requireRange('density_kg_m3', task.density, above, 'physics');
  requireRange('first_thickness_m', task.firstThickness, above, 'physics');
  requireRange('drain_time_s', task.drainTime, above, 'physics');
  requireRange('belt_speed_m_s', task.beltSpeed, [0, 10], 'physics');
  requireRange('blower_speed_m_s', task.blowerSpeed, [0, 200], 'physics');
  requireRange('jet_width_m', task.jetWidth, above, 'physics');
  requireRange('shaker_amplitude_m', task.shakerAmplitude, [0, 0.1], 'physics');
  requireRange('shaker_frequency_hz', task.shakerFrequency, [0, 500], 'physics');
  requireRange('shaker_time_s', task.shakerTime, [0, Infinity], 'physics');
  requireRange('calibration', task.calibration, above, 'physics');
}

/** Factor that brings the computed coat to a measured mass; solved on the assembled volume, edges included. */
export function coatCalibration(task: CoatTask, measured: Kilogram): number {
  requireRange('measured_coat_kg', measured, [Number.MIN_VALUE, Infinity], 'physics');
  let low = 1e-3;
  let high = 1e3;
  for (let i = 0; i < 80; i++) {
    const middle = Math.sqrt(low * high);
    if (coatOfBar({ ...task, calibration: middle }).mass < measured) low = middle;
    else high = middle;
  }
  return Math.sqrt(low * high);
}

/** Chocolate that must fall on the belt, and what returns: flows in kg/h. */
export function enroberFlows(
  coat: Kilogram,
  barsPerMinute: number,
  multiple: number,
): { readonly coatFlow: number; readonly curtainFlow: number; readonly returnFlow: number; readonly pickUpShare: number } {
  requireRange('curtain_multiple', multiple, [1, 100], 'physics');
  requireRange('bars_per_minute', barsPerMinute, [0, 1e6], 'physics');
  const coatFlow = coat * barsPerMinute * 60;
  return { coatFlow, curtainFlow: coatFlow * multiple, returnFlow: coatFlow * (multiple - 1), pickUpShare: 1 / multiple };
}

/**
 * Foot: chocolate that drains off the sides after the bar left the mesh, spread on a closed belt until its yield value holds it.
 * A heap of volume v per length has the profile h² = 2 τ0 x/(ρ g); its width is (3v/2)^(2/3)/(2 τ0/(ρ g))^(1/3).
 */
export function footWidth(volumePerLength: number, yieldValue: Pascal, density: KilogramPerCubicMetre): Metre {
  requireRange('volume_per_length_m2', volumePerLength, [0, 1], 'physics');
  requireRange('yield_value_pa', yieldValue, [Number.MIN_VALUE, Infinity], 'physics');
  return (1.5 * volumePerLength) ** (2 / 3) / ((2 * yieldValue) / (density * gravity)) ** (1 / 3);
}

/** Volume per length of side that still drains in a time after the mesh, m². */
export function lateDrainage(task: CoatTask, lateTime: Second): number {
  const before = coatOfBar(task).side;
  const later = meanDrainedThickness(task.height, lateTime, before, task.yieldValue, task.plasticViscosity, gravity * task.density);
  return Math.max(0, before - later) * task.height;
}

/**
 * Tail: thread that a bar draws when it leaves the mesh. A viscous thread of radius R breaks after 14.1 R η/σ (capillary thinning),
 * if capillary pressure beats the yield value, σ/R > √3 τ0; a thicker thread never breaks by itself.
 */
export function tailLength(
  threadRadius: Metre,
  beltSpeed: MetrePerSecond,
  yieldValue: Pascal,
  plasticViscosity: PascalSecond,
  surfaceTension: number,
): { readonly breaks: boolean; readonly breakTime: Second; readonly length: Metre } {
  requireRange('thread_radius_m', threadRadius, [Number.MIN_VALUE, 0.1], 'physics');
  requireRange('surface_tension_n_m', surfaceTension, [Number.MIN_VALUE, 1], 'physics');
  const drive = surfaceTension / threadRadius - Math.sqrt(3) * yieldValue;
  if (drive <= 0) return { breaks: false, breakTime: Infinity, length: Infinity };
  // Newtonian time with the part of the capillary pressure that is left after the yield value.
  const breakTime = (14.1 * plasticViscosity) / drive;
  return { breaks: true, breakTime, length: beltSpeed * breakTime };
}
