import { describe, expect, it } from 'vitest';
import { Session, solve } from '@barwright/chain';
import { plantChain, UnknownBar } from '../src/index.js';
import { examplePlant } from './pellamoor.js';

describe('a cook driven by temperature', () => {
  it('gives back the moisture that gave the temperature', async () => {
    const plant = await examplePlant('pellamoor');
    const plain = new Session(plantChain(plant).chain);
    const t = plain.number('caramel.cook_temperature');
    const driven = new Session(plantChain(plant, undefined, { cookTemperature: { caramel: t } }).chain);
    expect(driven.number('caramel.moisture')).toBeCloseTo(0.095, 7);
    expect(driven.number('caramel.yield')).toBeCloseTo(plain.number('caramel.yield'), 7);
    expect(driven.number('bar.cost')).toBeCloseTo(plain.number('bar.cost'), 9);
  });

  it('can be solved for a water activity, and the moisture found gives that temperature', async () => {
    const plant = await examplePlant('pellamoor');
    const { chain } = plantChain(plant, undefined, { cookTemperature: { caramel: 118 } });
    const found = solve(chain, new Session(chain).snapshot(), {
      target: 'caramel.water_activity',
      value: 0.54,
      knob: 'caramel.cook_temperature',
      low: 105,
      high: 130,
    });
    expect(found.found).toBe(true);
    if (!found.found) return;
    const plain = new Session(plantChain(plant).chain);
    plain.set('caramel.moisture', found.state.number('caramel.moisture'));
    expect(plain.number('caramel.water_activity')).toBeCloseTo(0.54, 6);
    expect(plain.number('caramel.cook_temperature')).toBeCloseTo(found.knobValue, 4);
  });

  it('refuses a bar that the plant does not make, naming those it does', async () => {
    const plant = await examplePlant('pellamoor');
    expect(() => plantChain(plant, 'Kestrel')).toThrow(UnknownBar);
    expect(() => plantChain(plant, 'Kestrel')).toThrow(/it has Kestrowan/);
  });
});
