import { celsius, kilogramPerHour, percent, type Builder } from '@barwright/bar';
import type { Component, Line, Plant, Stage, Station } from '@barwright/plant';
import { at, dryBasis, heatDemand, peanutMoisture, type Composition, type Table } from '@barwright/science';
import { constantOr } from './given.js';

/** Heat of roasting where nobody measured it. */
const usualRoaster = {
  source: 'common-practice',
  standing: 'memory',
  note: 'Gas efficiency of roasters 0.35 to 0.6. End moisture by the drying curve of one study: half-width 0.5 points, our estimate.',
  valid: { moistureDry: [0.004, 0.065], temperature: [130, 180] },
  values: { efficiency: 0.475, lowEfficiency: 0.35, highEfficiency: 0.6, moistureHalf: 0.005, start: 20 },
} as const satisfies Table;

const { values, valid } = usualRoaster;

/** Roasters of the line: water driven off, heat, fuel for each tonne, and for peanuts the moisture that a drying curve expects. */
export function roasterSteps(b: Builder, plant: Plant, line: Line): void {
  for (const station of line.stations) {
    const component = station.works === undefined ? undefined : plant.components.get(station.works);
    const stage = component?.stages.find((other) => other.does === 'roast' && other.name === station.stage && other.toMoisture);
    if (component && stage && b.has(`flow.${component.slug}.in`)) roaster(b, station, component, stage);
  }
}

function roaster(b: Builder, station: Station, component: Component, stage: Stage): void {
  const c = component.slug;
  const s = `station.${station.slug}`;
  const k = `${c}.stage.${stage.slug}`;
  const temperature = settingOf(b, station, component, stage, 'temperature');
  const efficiency = constantOr(b, station, 'efficiency', {
    meaning: `share of the fuel's heat that reaches product in the ${station.name}`,
    value: values.efficiency,
    look: { ...percent, decimals: 0 },
    note: 'nobody entered one; common practice 35 to 60 %, no source',
    from: usualRoaster,
  });
  if (!temperature) return;
  b.step({
    title: `Heat of the ${station.name}`,
    inputs: [`${k}.in_composition`, `${k}.to_moisture`, temperature, `flow.${c}.in`, `${k}.in_mass`, `${c}.charge_sum`, efficiency],
    outputs: [
      { id: `${s}.evaporated`, meaning: `water driven off in the ${station.name}`, ...kilogramPerHour, decimals: 1 },
      { id: `${s}.heat`, meaning: `heat into product in the ${station.name}`, unit: 'W', show: 'kW', decimals: 1 },
      {
        id: `${s}.heat_per_kg`,
        meaning: `heat into product for a kg that leaves the ${station.name}`,
        unit: 'J/kg',
        show: 'kJ/kg',
        decimals: 0,
      },
      { id: `${s}.fuel_per_kg`, meaning: `fuel for a kg that leaves the ${station.name}`, unit: 'J/kg', show: 'kJ/kg', decimals: 0 },
    ],
    equation: 'dry matter to the set temperature + water to 100 °C + evaporation there; fuel = heat / efficiency',
    sources: ['common-practice'],
    standing: 'memory',
    note: 'Product is taken as warm as the set temperature: pieces leave an air roaster some K cooler, so this is an upper estimate. Standing by is not in it.',
    run: (inside: Composition, end: number, t: number, flow: number, mass: number, charge: number, share: number) => {
      const fed = (flow * mass) / charge;
      const demand = heatDemand({
        mass: 1,
        moistureIn: inside[at.water]!,
        moistureOut: end,
        temperatureIn: values.start,
        temperatureOut: t,
      });
      return [fed * demand.evaporated, (fed / 3600) * demand.heat, demand.heat / demand.product, demand.heat / demand.product / share];
    },
    uncertainty: (_, [, heat, perKg, fuel]) => [0, 0.1 * (heat as number), 0.1 * (perKg as number), 0.3 * (fuel as number)],
  });
  const time = settingOf(b, station, component, stage, 'time');
  if (!time || !/peanut/i.test(`${component.texture} ${component.name}`)) return;
  b.step({
    title: `Moisture after the ${station.name} by a drying curve`,
    inputs: [`${k}.in_composition`, temperature, time],
    outputs: [
      {
        id: `${s}.predicted_moisture`,
        meaning: `moisture of ${component.name} after the ${station.name} by a published drying curve`,
        ...percent,
      },
    ],
    equation: 'two first-order stages, fast to 2.41 % and slow below (dry basis), at the set temperature and the least time',
    sources: ['weissburg-2024', 'sanders-1998', 'common-practice'],
    note: 'Roasts that end on colour left 1.1 to 1.4 % whatever the raw moisture was (sanders-1998). Moisture and colour never prove a kill step.',
    run: (inside: Composition, t: number, seconds: number) => {
      const dry = peanutMoisture(dryBasis(inside[at.water]!), t, seconds / 60);
      return dry / (1 + dry);
    },
    uncertainty: () => [values.moistureHalf],
    findings: ([inside, t]) => {
      const raw = dryBasis((inside as Composition)[at.water]!);
      const said = (words: string) => ({
        code: 'OUTSIDE_FITTED_RANGE',
        level: 'note' as const,
        quantity: `${s}.predicted_moisture`,
        message: words,
      });
      return [
        ...(raw > valid.moistureDry[1] + 5e-4
          ? [
              said(
                `Raw ${component.name} hold ${(100 * raw).toFixed(1)} % water on dry matter; the drying curve begins at ${100 * valid.moistureDry[1]} %.`,
              ),
            ]
          : []),
        ...((t as number) < valid.temperature[0] || (t as number) > valid.temperature[1]
          ? [
              said(
                `The ${station.name} is set to ${(t as number).toFixed(0)} °C; the drying curve is taken to hold from ${valid.temperature[0]} to ${valid.temperature[1]} °C.`,
              ),
            ]
          : []),
      ];
    },
  });
}

/** The set point of the roaster that gives its temperature or its least time, else that of the stage. */
function settingOf(b: Builder, station: Station, component: Component, stage: Stage, what: 'temperature' | 'time'): string | undefined {
  const point = station.setPoints.find((other) => other.value.dimension === what && !/cool|exit|after/i.test(other.name));
  if (point) return `set.${station.slug}.${point.slug}`;
  const written = stage[what];
  return (
    written &&
    b.entered(
      `${component.slug}.stage.${stage.slug}.${what}`,
      `${what} at ${stage.name} of ${component.name}`,
      written,
      what === 'temperature' ? celsius : { unit: 's', show: 'min', decimals: 1 },
    )
  );
}
