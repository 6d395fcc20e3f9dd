import { requireRange } from '../errors.js';
import type { Celsius, Metre, MetrePerSecond } from '../units.js';

/** Properties of air at the film temperature. */
export interface AirProperties {
  readonly density: number;
  readonly viscosity: number;
  readonly conductivity: number;
  readonly prandtl: number;
}

/** Air at 1 atm, -20 to 60 °C: ideal gas density, Sutherland viscosity, straight conductivity. From memory, within 1 %. */
export function airProperties(t: Celsius): AirProperties {
  requireRange('temperature_c', t, [-60, 120], 'enrober-practice');
  const T = t + 273.15;
  const viscosity = (1.458e-6 * T ** 1.5) / (T + 110.4);
  const conductivity = 0.02364 + 7.4e-5 * t;
  return { density: 353.05 / T, viscosity, conductivity, prandtl: (1006 * viscosity) / conductivity };
}

/** Reynolds number at which a flat plate turns turbulent. */
const transition = 3e5;

/** Heat transfer of air along a flat plate, mean over its length, W/(m² K): Nu = 0.664 Re^½ Pr^⅓, turbulent 0.0366 Re^0.8 Pr^⅓. */
export function flatPlateCoefficient(speed: MetrePerSecond, length: Metre, air: AirProperties): number {
  requireRange('air_speed_m_s', speed, [0, 100], 'geankoplis-transport');
  requireRange('length_m', length, [1e-6, 100], 'geankoplis-transport');
  const reynolds = (air.density * speed * length) / air.viscosity;
  const prandtl = Math.cbrt(air.prandtl);
  const nusselt = reynolds < transition ? 0.664 * Math.sqrt(reynolds) * prandtl : 0.0366 * reynolds ** 0.8 * prandtl;
  return (nusselt * air.conductivity) / length;
}

/** Heat transfer of air past a sphere, W/(m² K): Nu = 2 + 0.6 Re^½ Pr^⅓. */
export function sphereCoefficient(speed: MetrePerSecond, diameter: Metre, air: AirProperties): number {
  requireRange('air_speed_m_s', speed, [0, 100], 'geankoplis-transport');
  const reynolds = (air.density * speed * diameter) / air.viscosity;
  return ((2 + 0.6 * Math.sqrt(reynolds) * Math.cbrt(air.prandtl)) * air.conductivity) / diameter;
}

/** Radiation between bodies near one another in temperature, W/(m² K): 4 ε σ T³. */
export function radiationCoefficient(t: Celsius, emissivity = 0.9): number {
  requireRange('emissivity', emissivity, [0, 1], 'physics');
  return 4 * emissivity * 5.670374e-8 * (t + 273.15) ** 3;
}
