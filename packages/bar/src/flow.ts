import type { Component } from '@barwright/plant';
import { atMoisture, caramelPlantFactor, caramelViscosity, extensionalViscosity, type Composition } from '@barwright/science';
import { celsius, percent, windowOf, type Builder, type Look } from './builder.js';

const viscosity: Look = { unit: 'Pa·s', decimals: 1 };
/** Bite and knife, and the store. */
const pulledAt = 35;
const storedAt = 20;

const sources = ['crc-102-solutions', 'gordon-taylor-table-2016', 'krieger-dougherty-1959'];

/** Whether a component flows as a caramel: cooked, with no gas whipped in. */
export function flowsAsCaramel(component: Component): boolean {
  return component.stages.some((stage) => stage.cook) && !component.stages.some((stage) => stage.does === 'whip');
}

/** Viscosity of a caramel where it is laid, where it is pulled and where it is stored. */
export function flowSteps(b: Builder, component: Component): void {
  if (!flowsAsCaramel(component)) return;
  const c = component.slug;
  const factor = factorOf(b, component);
  const known = component.measuredViscosity !== undefined;
  const spread = (value: number) => (known ? 0.2 : 0.7) * value;
  const last = component.stages.findLast((stage) => (stage.does === 'cool' || stage.does === 'blend') && stage.temperature);
  if (last) {
    const laid = b.entered(`${c}.deposit_temperature`, `temperature at which ${component.name} is laid`, last.temperature!, celsius, windowOf(last.temperature!).window); // prettier-ignore
    const target = component.targets.find(({ name }) => /viscosity/i.test(name));
    b.step({
      title: `Viscosity of ${component.name} as it is laid`,
      inputs: [`${c}.composition`, laid, factor],
      outputs: [
        {
          id: `${c}.viscosity`,
          meaning: `viscosity of ${component.name} as it is laid`,
          ...viscosity,
          ...(target ? windowOf(target.value) : {}),
        },
      ],
      equation: 'syrup phase (WLF above its glass transition) · suspension of fat, protein and crystals · the plant’s own factor',
      sources,
      run: (x: Composition, t: number, own: number) => caramelViscosity(x, t, own),
      uncertainty: (_, [value]) => [spread(value as number)],
    });
  }
  b.step({
    title: `Viscosity of ${component.name} in the store`,
    inputs: [`${c}.composition`, factor],
    outputs: [
      {
        id: `${c}.viscosity_stored`,
        meaning: `viscosity of ${component.name} at ${storedAt} °C`,
        unit: 'Pa·s',
        show: 'kPa·s',
        decimals: 0,
      },
    ],
    equation: 'as laid, at 20 °C: the temperature is far from where the plant measures, so read the direction',
    sources,
    note: 'Half-width our estimate: 70 % either way, however the level was set.',
    run: (x: Composition, own: number) => caramelViscosity(x, storedAt, own),
    uncertainty: (_, [value]) => [0.7 * (value as number)],
  });
  const trouton = b.byDefault(`${c}.trouton_ratio`, `extensional over shear viscosity of ${component.name}`, 3, { unit: '1', decimals: 0 }, 'a Newtonian liquid; 10 to 40 are reported for caramel with gums or protein network'); // prettier-ignore
  b.step({
    title: `Stretch of ${component.name}`,
    inputs: [`${c}.composition`, factor, trouton],
    outputs: [
      {
        id: `${c}.stretch`,
        meaning: `resistance of ${component.name} to being drawn, at ${pulledAt} °C`,
        unit: 'Pa·s',
        show: 'kPa·s',
        decimals: 1,
      },
    ],
    equation: 'Trouton ratio · viscosity at 35 °C; lower draws longer and softer, higher is tougher',
    sources: [...sources, 'barra-2004'],
    run: (x: Composition, own: number, ratio: number) => extensionalViscosity(caramelViscosity(x, pulledAt, own), ratio),
    uncertainty: (_, [value]) => [0.7 * (value as number)],
  });
}

/** The plant's own factor: from a viscosity it measured, else 1. */
function factorOf(b: Builder, component: Component): string {
  const c = component.slug;
  const id = `${c}.viscosity_factor`;
  const meaning = `measured over computed viscosity of ${component.name}, the plant’s own`;
  const look: Look = { unit: '1', decimals: 2 };
  const measured = component.measuredViscosity;
  if (!measured)
    return b.byDefault(
      id,
      meaning,
      1,
      look,
      'not measured yet; milk protein that has formed a network makes a caramel 5 to 20 times as thick',
    );
  const inputs = [
    `${c}.composition`,
    b.entered(`${c}.measured_viscosity`, `viscosity of ${component.name} as the plant measured it`, measured.viscosity, viscosity),
    b.entered(`${c}.measured_viscosity_temperature`, `temperature of that measurement`, measured.temperature, celsius),
    b.entered(`${c}.measured_viscosity_moisture`, `moisture of what was measured`, measured.moisture, percent),
  ];
  return b.step({
    title: `The plant's own factor of the viscosity of ${component.name}`,
    inputs,
    outputs: [{ id, meaning, ...look }],
    equation: 'measured / computed for the same recipe at the moisture and temperature of the measurement',
    sources,
    run: (x: Composition, value: number, t: number, moisture: number) =>
      caramelPlantFactor({ composition: atMoisture(x, moisture), temperature: t, viscosity: value }),
  });
}
