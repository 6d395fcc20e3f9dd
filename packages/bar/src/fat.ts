import type { Component } from '@barwright/plant';
import {
  at,
  fatBlend,
  fats,
  latentHeatAt,
  share,
  solidFat,
  solidFatSpread,
  temperatureOfSolidFat,
  type Composition,
} from '@barwright/science';
import { celsius, percent, type Builder } from './builder.js';

const sources = ['cocoa-butter-sfc', 'beckett-constants-2009'];
/** Milk fat and oil up to which the softening is taken to hold, and vegetable fat up to which it passes as cocoa butter; shares of the fat. */
const fitted = { milkFat: 0.35, oil: 0.2, vegetableFat: 0.15 };

/** Solid fat of a chocolate at three temperatures of the year, the heat it holds in its crystals, the end of its melting. */
export function fatSteps(b: Builder, component: Component): void {
  const c = component.slug;
  const inside = `${c}.composition`;
  for (const t of [20, 25, 30]) {
    b.step({
      title: `Solid fat of ${component.name} at ${t} °C`,
      inputs: [inside],
      outputs: [
        {
          id: `${c}.solid_fat_${t}`,
          meaning: `solid fat of ${component.name} at ${t} °C, well tempered, share of its fat`,
          ...percent,
          decimals: 1,
        },
      ],
      equation:
        '1 − m − o of cocoa butter read at T + 15 m + 20 o, and m of milk fat read at T + 15 (1 − m − o) + 20 o; m milk fat, o oil and emulsifier as shares of the fat',
      sources,
      standing: 'memory',
      run: (x: Composition) => solidFat(t, fatBlend(x)),
      uncertainty: (_, [solids]) => [solidFatSpread(solids as number)],
      ...(t === 20 ? { findings: ([x]) => outside(component, x as Composition) } : {}),
    });
  }
  b.step({
    title: `Heat of crystals of ${component.name}`,
    inputs: [inside],
    outputs: [
      {
        id: `${c}.latent_heat`,
        meaning: `heat of the fat crystals of ${component.name} at 20 °C, per kg`,
        unit: 'J/kg',
        show: 'kJ/kg',
        decimals: 1,
      },
    ],
    equation: 'fat · solid fat at 20 °C · 157 kJ/kg',
    sources,
    standing: 'memory',
    run: (x: Composition) => latentHeatAt(share(x, fats), 20, fatBlend(x)),
    uncertainty: ([x], [heat]) => {
      const solids = solidFat(20, fatBlend(x as Composition));
      return [((heat as number) * solidFatSpread(solids)) / solids];
    },
  });
  b.step({
    title: `End of melting of ${component.name}`,
    inputs: [inside],
    outputs: [{ id: `${c}.melting_end`, meaning: `temperature at which 1 % of the fat of ${component.name} is solid`, ...celsius }],
    equation: 'T where solid fat = 1 %',
    sources,
    standing: 'memory',
    run: (x: Composition) => temperatureOfSolidFat(0.01, fatBlend(x)),
    uncertainty: () => [1.5],
  });
}

function outside(component: Component, x: Composition) {
  const { milkFat, oil } = fatBlend(x);
  const vegetable = x[at.vegetable_fat]! / share(x, fats);
  const told = (words: string, value: number, most: number) =>
    value <= most
      ? []
      : [
          {
            code: 'OUTSIDE_FITTED_RANGE',
            level: 'note' as const,
            quantity: `${component.slug}.solid_fat_20`,
            message: `${words} is ${(100 * value).toFixed(0)} % of the fat of ${component.name}; its solid fat is known up to ${100 * most} %. Take it from the fat maker's own curve.`,
          },
        ];
  return [
    ...told('Milk fat', milkFat, fitted.milkFat),
    ...told('Liquid oil and emulsifier', oil, fitted.oil),
    ...told('Vegetable fat', vegetable, fitted.vegetableFat),
  ];
}
