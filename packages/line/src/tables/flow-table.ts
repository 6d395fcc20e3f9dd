import { flowTableFault, type FlowPoint } from '@barwright/science';
import { readNumbers, type Wanted } from './columns.js';
import { BadTable } from './bad-table.js';
import { tableOf } from './table.js';

/** A viscometer's table: points of the ramp up and, where there is one, of the ramp down. */
export interface FlowTable {
  readonly up: readonly FlowPoint[];
  readonly down: readonly FlowPoint[];
  readonly said: readonly string[];
}

/**
 * Shear rate and stress (or viscosity) from a viscometer. Ramps part where the rate turns.
 * @throws BadTable where a column is missing or fewer than three points are left
 */
export function flowTable(rows: readonly (readonly string[])[], name: string): FlowTable {
  const table = tableOf(rows, name);
  const said = [...table.said];
  const read = (wanted: Wanted) => readNumbers(table, wanted, said)?.values;
  // The unit table counts 1/s among rates per minute.
  const rates = read({
    what: 'shear rate',
    match: /rate|gamma|γ|^d$|shear/,
    not: /stress|visco/,
    dimension: 'count rate',
    unit: '1/s',
  })?.map((perMinute) => perMinute / 60);
  const stresses = read({ what: 'shear stress', match: /stress|tau|τ/, dimension: 'pressure', unit: 'Pa' });
  const viscosities = stresses ? undefined : read({ what: 'viscosity', match: /visco|eta|η/, dimension: 'viscosity', unit: 'Pa·s' });
  if (!rates || !(stresses ?? viscosities)) {
    const names = table.columns.map(({ header }) => `"${header}"`).join(', ');
    throw new BadTable(`${name} has the columns ${names}; a shear rate in 1/s and a stress in Pa, or a viscosity in Pa·s, are expected`);
  }
  if (viscosities) said.push('Stress is viscosity times shear rate: the table gives no stress.');
  const points: FlowPoint[] = [];
  let left = 0;
  for (let i = 0; i < rates.length; i++) {
    const rate = rates[i]!;
    const stress = stresses ? stresses[i]! : viscosities![i]! * rate;
    if (rate > 0 && stress > 0 && Number.isFinite(rate) && Number.isFinite(stress)) points.push({ rate, stress });
    else left++;
  }
  if (left > 0) said.push(`${left} lines of ${name} without a rate and a stress above 0 were left out.`);
  if (points.length < 3)
    throw new BadTable(`${name} has ${points.length} usable points; at least 3 are needed for a flow curve. ${said.join(' ')}`.trim());
  const top = points.reduce((best, point, i) => (point.rate > points[best]!.rate ? i : best), 0);
  const down = points.slice(top + 1);
  const oneRamp = points[0]!.rate > points.at(-1)!.rate && top === 0;
  if (oneRamp) said.push('The table runs from fast to slow; it is read as one ramp.');
  const up = oneRamp ? points.toReversed() : points.slice(0, top + 1);
  const fault = flowTableFault(up);
  if (fault) said.unshift(fault.message);
  return { up, down: oneRamp ? [] : down, said };
}
