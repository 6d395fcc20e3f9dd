import type { Table } from '../../sources.js';

/** Overall heat transfer of a jacketed kettle, steam to a stirred watery liquid, W/(m² K). */
export const kettleCoefficient = {
  source: 'coulson-richardson-6',
  standing: 'memory',
  note: 'Jacketed vessels, steam to dilute aqueous solutions. From memory: check before use. A thick syrup, a fouled wall or a slow scraper lies below it.',
  valid: { heat_transfer: [500, 700] },
  values: { heat_transfer: [500, 700] },
} as const satisfies Table;

/** Overall heat transfer of an agitated film, steam to a Newtonian liquid of 10 Pa·s down to 0.1 Pa·s, W/(m² K). */
export const filmCoefficient = {
  source: 'mccabe-smith-harriott',
  standing: 'memory',
  note: 'Agitated-film evaporators, Newtonian liquids: 600 at 10 Pa·s, 1500 at 0.1 Pa·s. From memory: check before use.',
  valid: { viscosity_pa_s: [0.1, 10] },
  values: { heat_transfer: [600, 1500] },
} as const satisfies Table;
