import type { Bar, Plant } from '@barwright/plant';
import { gram, percent, type Builder } from './builder.js';
import { barParts, sum } from './layers.js';

/** Mass of the bar and its standard deviation, with the share of variance each source brings. */
export function massSteps(b: Builder, plant: Plant, bar: Bar): void {
  const parts = barParts(plant, bar);
  const { low, high } = bar.target;
  const cutting = cuttingDeviations(b, bar);
  b.step({
    title: 'Mass of the bar',
    inputs: ['bar.centre_mass', ...(bar.coat ? ['coat.mass'] : []), ...cutting],
    outputs: [
      {
        id: 'bar.mass',
        meaning: 'mass of a bar',
        ...gram,
        window: {
          low: bar.nominal.value,
          aim: bar.target.value,
          ...(bar.maximum ? { high: bar.maximum.value } : high === undefined ? {} : { high }),
          reason: low === undefined ? 'declared mass; largest accepted' : 'declared mass is the least lawful mean; above it is given away',
          source: bar.nominal.place,
        },
      },
    ],
    equation: cutting.length > 0 ? 'centre · Π (1 + deviation of the cut) + coat' : 'centre + coat',
    run: (centre: number, ...rest: number[]) => {
      const first = bar.coat ? 1 : 0;
      let cut = centre;
      for (let i = first; i < rest.length; i++) cut *= 1 + rest[i]!;
      return cut + (bar.coat ? rest[0]! : 0);
    },
  });
  b.step({
    title: 'Given away',
    inputs: ['bar.mass', 'bar.nominal'],
    outputs: [{ id: 'bar.giveaway', meaning: 'mass above the declared mass', ...gram }],
    equation: 'mean − declared',
    run: (mass: number, nominal: number) => mass - nominal,
  });
  for (const part of parts) {
    b.step({
      title: `Share of ${part.name}`,
      inputs: [`${part.id}.mass`, 'bar.mass'],
      outputs: [{ id: `${part.id}.share`, meaning: `${part.name} in the bar, share of its mass`, ...percent, decimals: 1 }],
      equation: 'm / bar mass',
      run: (mass: number, whole: number) => mass / whole,
    });
  }
  variationSteps(b, plant, bar);
}

/** How far the cut is from its set length and width, as a share; 0 unless measured. A longer cut carries more of the centre. */
function cuttingDeviations(b: Builder, bar: Bar): string[] {
  const cuts = [
    ['length', bar.cutLengthVariation],
    ['width', bar.cutWidthVariation],
  ] as const;
  return cuts.flatMap(([name, variation]) => {
    if (!variation) return [];
    return [
      b.root({
        id: `deviation.cut_${name}`,
        meaning: `deviation of the cut ${name} from what is set`,
        ...percent,
        value: 0,
        sd: variation.value,
        origin: 'default',
        note: 'as set, unless measured',
        place: variation.place,
      }),
    ];
  });
}

function variationSteps(b: Builder, plant: Plant, bar: Bar): void {
  const sources: { name: string; meaning: string; id: string; of: string }[] = [];
  const add = (name: string, meaning: string, variation: typeof bar.cutLengthVariation, of: string) => {
    if (!variation) return;
    const id = b.entered(`variation.${name}`, `coefficient of variation of ${meaning}`, variation, { ...percent, decimals: 1 });
    sources.push({ name, meaning, id, of });
  };
  for (const part of barParts(plant, bar)) add(part.id.replace('layer.', ''), part.name, part.variation, `${part.id}.mass`);
  add('cut_length', 'the cut length', bar.cutLengthVariation, 'bar.centre_mass');
  add('cut_width', 'the cut width', bar.cutWidthVariation, 'bar.centre_mass');
  if (sources.length === 0) return;
  b.step({
    title: 'Standard deviation of the bar mass',
    inputs: sources.flatMap((source) => [source.id, source.of]),
    outputs: [
      { id: 'bar.mass_sd', meaning: 'standard deviation of the bar mass', ...gram },
      ...sources.map((source) => ({
        id: `variance.${source.name}`,
        meaning: `share of ${source.meaning} in the variance of the bar mass`,
        ...percent,
        decimals: 0,
      })),
    ],
    equation: 'σ² = Σ (variation · mass)²; independent; cutting acts on the centre only',
    run: (...values: number[]) => {
      const variances = sources.map((_, i) => (values[2 * i]! * values[2 * i + 1]!) ** 2);
      const total = sum(...variances);
      return [Math.sqrt(total), ...variances.map((variance) => (total > 0 ? variance / total : 0))];
    },
  });
}
