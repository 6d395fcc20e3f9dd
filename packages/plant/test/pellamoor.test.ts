import { describe, expect, it } from 'vitest';
import { at, composition, constituents, mix, share, type Composition } from '@barwright/science';
import type { Component, Plant } from '../src/index.js';
import { examplePlant } from './folder.js';

// The figures that the invented plant states for itself (its recipe sheet). Plain arithmetic on what the loader gives; no model.
const plant = await examplePlant('pellamoor');

function component(name: string): Component {
  return plant.components.get(name)!;
}

function compositionOf(of: Plant, name: string): Composition {
  return of.materials.get(name)?.composition ?? of.components.get(name)?.composition?.value ?? chargeOf(of.components.get(name)!);
}

function additions(of: Component): readonly (readonly [share: number, name: string])[] {
  return of.stages.flatMap(({ adds }) => adds.map(({ name, share }) => [share.value, name] as const));
}

function chargeOf(of: Component): Composition {
  return mix(additions(of).map(([part, name]) => [part, compositionOf(plant, name)] as const));
}

/** Kilograms out of 100 kg charged, from the water that must go. */
function yieldAt(of: Component, moisture: number): number {
  return (100 * (1 - chargeOf(of)[at.water]!)) / (1 - moisture);
}

function costOfCharge(of: Component, priceOf: (name: string) => number): number {
  return additions(of).reduce((sum, [part, name]) => sum + part * priceOf(name), 0);
}

const price = (name: string): number => plant.materials.get(name)!.price!.value;

describe('the demo plant', () => {
  it('has its materials priced, composed and labelled', () => {
    expect(plant.materials.size).toBe(22);
    for (const material of plant.materials.values()) {
      expect(material.price?.value, material.name).toBeGreaterThan(0);
      expect(share(material.composition, constituents), material.name).toBeCloseTo(1, 12);
      expect(['found', 'secondhand', 'memory', 'plant', 'entered']).toContain(material.compositionStanding);
    }
    expect(plant.materials.get('water')!.composition).toEqual(composition({ water: 1 }));
  });

  it.each([
    ['caramel', 0.095, 85.74],
    ['nougat', 0.09, 91.12],
  ] as const)('yields of %s at moisture %d: %d kg from 100 kg', (name, moisture, expected) => {
    expect(Math.abs(yieldAt(component(name), moisture) - expected)).toBeLessThan(0.03);
  });

  it.each([
    ['fat with emulsifiers', ['milk_fat', 'cocoa_butter', 'vegetable_fat', 'nut_oil', 'emulsifier'], 33.7],
    ['milk fat', ['milk_fat'], 7.2],
    ['dry cocoa solids', ['cocoa_butter', 'nonfat_cocoa_solids'], 31.3],
    ['dry milk solids', ['milk_fat', 'nonfat_milk_solids'], 22.8],
    ['non-fat cocoa solids', ['nonfat_cocoa_solids'], 5.3],
  ] as const)('milk chocolate: %s', (_what, keys, expected) => {
    expect(Number((share(chargeOf(component('milk chocolate')), keys) * 100).toFixed(1))).toBe(expected);
  });

  it('costs what the plant says per kg made', () => {
    const liquorYield = 0.988 * ((1 - 0.069) / (1 - 0.018)) * (1 - 0.005) * (1 - 0.128) * 0.994 * 0.997;
    const liquor = price('cocoa beans') / liquorYield + component('cocoa liquor').conversionCost!.value;
    const caramel = costOfCharge(component('caramel'), price) / (yieldAt(component('caramel'), 0.095) / 100);
    const nougat = costOfCharge(component('nougat'), price) / (yieldAt(component('nougat'), 0.09) / 100);
    const chocolate = costOfCharge(component('milk chocolate'), (name) => (name === 'cocoa liquor' ? liquor : price(name)));
    expect(caramel.toFixed(3)).toBe('1.424');
    expect(nougat.toFixed(3)).toBe('1.083');
    expect(chocolate.toFixed(3)).toBe('4.892');
  });

  it('lays 33.8 g of centre and 15 g of coat on a slab of 779 mm', () => {
    const bar = plant.bars.get('Kestrowan')!;
    const masses = bar.layers.map(({ amount }) => (amount.by === 'mass' ? amount.mass.value : NaN));
    expect(masses.reduce((a, b) => a + b)).toBeCloseTo(0.0338, 12);
    const line = plant.lines.get('Line 2')!;
    expect(line.lanes.value * bar.cutWidth.value + 2 * line.edgeTrim.value).toBeCloseTo(0.779, 12);
    expect(line.stations.find(({ name }) => name === 'flow wrappers')).toMatchObject({ count: 3, counts: 'out', rate: { by: 'packs' } });
    expect(line.stations.filter(({ counts }) => counts === 'in').map(({ name }) => name)).toEqual([
      'bean roaster',
      'winnower',
      'liquor mill',
      'peanut roaster',
    ]);
  });

  it('plans 80 pallets', () => {
    const { pack } = plant.bars.get('Kestrowan')!;
    const perPallet = pack.barsPerPack * pack.case!.packs * pack.pallet!.casesPerLayer * pack.pallet!.layers;
    expect(plant.plans[0]!.order.value / perPallet).toBe(80);
    expect(plant.plans[0]!.plannedOee!.value).toBe(0.79);
  });

  it('words every caution at its station and marks the critical control points', () => {
    const said = plant.lines
      .get('Line 2')!
      .stations.flatMap(({ cautions }) => cautions)
      .join(' ');
    for (const word of [
      'above 110 °C',
      'Relief valves',
      'Fire',
      'explode',
      'lock off',
      'Egg',
      'Peanut',
      'Soya',
      'Milk',
      'Salmonella',
      'HACCP team',
      'manual',
    ]) {
      expect(said.toLowerCase()).toContain(word.toLowerCase());
    }
    const critical = new Set(plant.checks.filter(({ kind }) => kind === 'critical').map(({ at: where }) => where));
    expect(critical).toEqual(new Set(['bean roast', 'peanut roast', 'metal detector']));
  });
});
