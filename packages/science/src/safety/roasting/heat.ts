import { BadInput, NoSolution, requireRange } from '../../errors.js';
import { roastHeat } from '../data/roasting.js';

export interface RoastCharge {
  /** kg, at the moisture in. */ readonly mass: number;
  /** Wet basis. */ readonly moistureIn: number;
  /** Wet basis. */ readonly moistureOut: number;
  /** °C */ readonly temperatureIn: number;
  /** °C, above 100 */ readonly temperatureOut: number;
  /** J/(kg K) of dry matter. */ readonly dryHeatCapacity?: number;
}

export interface HeatDemand {
  /** J, total. */ readonly heat: number;
  /** J into dry matter. */ readonly solids: number;
  /** J into water, warming and evaporating. */ readonly water: number;
  /** kg evaporated. */ readonly evaporated: number;
  /** kg out. */ readonly product: number;
}

/**
 * Heat to roast a charge: solids to the end temperature, all water to 100 °C, the evaporated part leaves there, the rest goes on.
 *
 * @throws BadInput when the product should come out wetter than it went in; OutOfRange outside what is possible
 */
export function heatDemand(charge: RoastCharge): HeatDemand {
  requireRange('moisture', charge.moistureIn, [0, 0.99], 'a roast charge');
  requireRange('moisture_out', charge.moistureOut, [0, 0.99], 'a roast charge');
  requireRange('temperature_in_c', charge.temperatureIn, [-40, 100], 'a roast charge');
  requireRange('temperature_out_c', charge.temperatureOut, [100, 300], 'a roast charge');
  if (charge.moistureOut > charge.moistureIn)
    throw new BadInput(`Moisture goes from ${charge.moistureIn} to ${charge.moistureOut}, but a roaster only dries`);
  const dry = charge.mass * (1 - charge.moistureIn);
  const product = dry / (1 - charge.moistureOut);
  const evaporated = charge.mass - product;
  const water = charge.mass - dry;
  const v = roastHeat.values;
  const solids = dry * (charge.dryHeatCapacity ?? v.dry) * (charge.temperatureOut - charge.temperatureIn);
  const wet =
    water * v.water * (100 - charge.temperatureIn) +
    evaporated * v.evaporation +
    (water - evaporated) * v.water * (charge.temperatureOut - 100);
  return { heat: solids + wet, solids, water: wet, evaporated, product };
}

export interface AirBalance {
  /** kg/s of dry air drawn through. */ readonly airFlow: number;
  /** °C */ readonly outlet: number;
  /** Heat taken by product and losses over heat in the air above ambient. */ readonly efficiency: number;
}

/**
 * Outlet air of a continuous (belt) roaster by energy balance.
 *
 * @param power - heat into product and through the walls, W
 * @param airFlow - kg/s
 * @param inlet - °C
 * @param ambient - °C, what the burner starts from
 * @throws NoSolution where the air cannot carry that heat
 */
export function airBalance(power: number, airFlow: number, inlet: number, ambient: number): AirBalance {
  requireRange('air_flow_kg_s', airFlow, [1e-9, 1e6], 'an air balance');
  const outlet = inlet - power / (airFlow * AIR_HEAT);
  if (outlet < ambient)
    throw new NoSolution(
      `Air of ${inlet} °C at ${airFlow} kg/s cannot give ${Math.round(power)} W: it would leave at ${outlet.toFixed(0)} °C`,
    );
  return { airFlow, outlet, efficiency: (inlet - outlet) / (inlet - ambient) };
}

/** J/(kg K) of dry air near 150 °C. */
export const AIR_HEAT = 1017;

/**
 * Time for a lump to cool to a limit: T = Ta + (T0 - Ta) exp(-h A t / (m c)).
 *
 * @param rate - h A / (m c), 1/s
 * @returns s; 0 when it is at the limit already
 * @throws NoSolution where the air is not colder than the limit
 */
export function coolingTime(from: number, to: number, air: number, rate: number): number {
  if (from <= to) return 0;
  if (!(air < to)) throw new NoSolution(`Air of ${air} °C cannot cool to ${to} °C`);
  return Math.log((from - air) / (to - air)) / rate;
}

/** Temperature of a lump after a time in air. */
export function cooledTo(from: number, air: number, rate: number, seconds: number): number {
  return air + (from - air) * Math.exp(-rate * seconds);
}

/**
 * Cooling rate h A / (m c) of spheres in a stream of air, 1/s, by Wakao's law of a packed bed.
 *
 * @param diameter - m
 * @param density - of the piece, kg/m³
 * @param heatCapacity - J/(kg K)
 * @param velocity - superficial, m/s
 * @param film - temperature at which the air's properties are taken, °C
 */
export function pieceRate(diameter: number, density: number, heatCapacity: number, velocity: number, film: number): number {
  return (6 * bedCoefficient(diameter, velocity, film)) / (diameter * density * heatCapacity);
}

/** Heat transfer coefficient air to pieces in a packed bed: Nu = 2 + 1.1 Pr^(1/3) Re^0.6. W/(m² K). */
export function bedCoefficient(diameter: number, velocity: number, temperature: number): number {
  requireRange('diameter', diameter, [1e-5, 0.2], 'wakao-1979');
  requireRange('air_velocity_m_s', velocity, [0, 30], 'wakao-1979');
  const air = airAt(temperature);
  const reynolds = (air.density * velocity * diameter) / air.viscosity;
  return (air.conductivity / diameter) * (2 + 1.1 * Math.cbrt(0.7) * reynolds ** 0.6);
}

/** Dry air at 101 325 Pa: density of an ideal gas, Sutherland's viscosity, conductivity by a Prandtl number of 0.70. */
export function airAt(temperature: number): { density: number; viscosity: number; conductivity: number } {
  const kelvin = temperature + 273.15;
  const viscosity = (1.458e-6 * kelvin ** 1.5) / (kelvin + 110.4);
  return { density: 101_325 / (287.05 * kelvin), viscosity, conductivity: (viscosity * AIR_HEAT) / 0.7 };
}
