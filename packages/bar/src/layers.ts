import type { Bar, Coat, Layer, LayerAmount, Loss, Plant } from '@barwright/plant';
import { gram, millimetre, percent, windowOf, type Builder } from './builder.js';

/** A part of the bar that has a mass of its own: every layer and the coat. */
export interface BarPart {
  /** Prefix of its ids: 'layer.nougat' or 'coat'. */
  readonly id: string;
  readonly name: string;
  /** Slug of the component it is made of. */
  readonly component: string;
  readonly amount: LayerAmount;
  readonly loss: Loss | undefined;
  readonly variation: Layer['variation'];
  readonly layer?: Layer;
}

export function barParts(plant: Plant, bar: Bar): readonly BarPart[] {
  const layers = bar.layers.map((layer): BarPart => ({
    id: `layer.${layer.slug}`,
    name: layer.name,
    component: plant.components.get(layer.component)!.slug,
    amount: layer.amount,
    loss: layer.loss,
    variation: layer.variation,
    layer,
  }));
  if (!bar.coat) return layers;
  return [...layers, coatPart(plant, bar.coat)];
}

function coatPart(plant: Plant, coat: Coat): BarPart {
  const component = plant.components.get(coat.component)!;
  return { id: 'coat', name: component.name, component: component.slug, amount: coat.amount, loss: coat.loss, variation: coat.variation };
}

/** Cut size, layers to thickness and back, the centre, the coat, the size of the finished bar. */
export function layerSteps(b: Builder, plant: Plant, bar: Bar): void {
  const parts = barParts(plant, bar);
  const length = b.entered('bar.cut_length', 'length the guillotine cuts', bar.cutLength, { ...millimetre, decimals: 1 });
  const width = b.entered('bar.cut_width', 'width the slitter cuts', bar.cutWidth, { ...millimetre, decimals: 1 });
  b.entered('bar.nominal', 'declared mass of a bar', bar.nominal, { ...gram, decimals: 1 });
  b.entered('bar.target', 'mass of a bar aimed at', bar.target, { ...gram, decimals: 1 }, windowOf(bar.target).window);
  b.step({
    title: 'Footprint of a bar',
    inputs: [length, width],
    outputs: [{ id: 'bar.area', meaning: 'footprint of a cut bar', unit: 'm²', show: 'cm²', decimals: 2 }],
    equation: 'A = length · width',
    run: (l: number, w: number) => l * w,
  });
  for (const layer of bar.layers.filter((other) => other.sunkInto === undefined)) hostSteps(b, plant, bar, layer);
  restStep(b, parts);
  for (const layer of bar.layers.filter((other) => other.sunkInto === undefined)) thicknessStep(b, plant, bar, layer);
  centreSteps(b, bar);
  if (bar.coat) coatSteps(b, plant, bar.coat);
  sizeSteps(b, bar);
}

/** Mass of a layer and of what has sunk into it, from whatever the plant wrote down. */
function hostSteps(b: Builder, plant: Plant, bar: Bar, host: Layer): void {
  const guests = bar.layers.filter((layer) => layer.sunkInto === host.name);
  for (const guest of guests) massStep(b, plant, guest, []);
  massStep(b, plant, host, guests);
}

function massStep(b: Builder, plant: Plant, layer: Layer, guests: readonly Layer[]): void {
  const id = `layer.${layer.slug}`;
  const mass = { id: `${id}.mass`, meaning: `${layer.name} on a bar`, ...gram };
  const rho = `${plant.components.get(layer.component)!.slug}.density`;
  const { amount } = layer;
  if (amount.by === 'mass') {
    b.entered(mass.id, mass.meaning, amount.mass, gram, undefined, spread(layer.variation, amount.mass));
  } else if (amount.by === 'mass per area') {
    const per = b.entered(
      `${id}.mass_per_area`,
      `${layer.name} laid per area`,
      amount.massPerArea,
      { unit: 'kg/m²', decimals: 2 },
      undefined,
      spread(layer.variation, amount.massPerArea),
    );
    b.step({
      title: `Mass of ${layer.name}`,
      inputs: [per, 'bar.area'],
      outputs: [mass],
      equation: 'm = mass per area · A',
      run: (m: number, a: number) => m * a,
    });
  } else if (amount.by === 'thickness') {
    const thickness = b.entered(
      `${id}.thickness`,
      `thickness of ${layer.name}`,
      amount.thickness,
      millimetre,
      undefined,
      spread(layer.variation, amount.thickness),
    );
    const voids = voidsOf(b, layer, guests);
    const sunk = guests.flatMap((guest) => [`layer.${guest.slug}.mass`, `${plant.components.get(guest.component)!.slug}.density`]);
    b.step({
      title: `Mass of ${layer.name}`,
      inputs: [thickness, 'bar.area', rho, voids, ...sunk],
      outputs: [mass],
      equation: guests.length ? 'm = ρ · (t · A · (1 − voids) − volume of what sank in)' : 'm = ρ · t · A · (1 − voids)',
      run: (t: number, a: number, density: number, v: number, ...others: number[]) => {
        let volume = t * a * (1 - v);
        for (let i = 0; i < others.length; i += 2) volume -= others[i]! / others[i + 1]!;
        if (volume < 0)
          throw new RangeError(`what sinks into ${layer.name} takes more room than a layer ${(1000 * t).toFixed(2)} mm thick has`);
        return density * volume;
      },
    });
  }
}

/** Standard deviation of what is dosed, from its coefficient of variation. */
function spread(variation: Layer['variation'], of: { readonly value: number }): number | undefined {
  return variation && variation.value * of.value;
}

/** Air left in the layer: that of the layer itself, or of what sinks into it. */
function voidsOf(b: Builder, layer: Layer, guests: readonly Layer[]): string {
  const id = `layer.${layer.slug}.voids`;
  const written = layer.voids ?? guests.find((guest) => guest.voids)?.voids;
  const meaning = `air left in the ${layer.name} layer, share of its volume`;
  return written
    ? b.entered(id, meaning, written, { ...percent, decimals: 1 })
    : b.byDefault(id, meaning, 0, { ...percent, decimals: 1 }, 'no voids entered');
}

/** The one part that is "what is missing to the bar's mass". */
function restStep(b: Builder, parts: readonly BarPart[]): void {
  const rest = parts.find((part) => part.amount.by === 'rest');
  if (!rest) return;
  const others = parts.filter((part) => part !== rest);
  for (const part of others)
    if (part.id === 'coat' && part.amount.by === 'mass') b.entered('coat.mass', `${part.name} on a bar`, part.amount.mass, gram);
  b.step({
    title: `${rest.name}: what is missing to the mass aimed at`,
    inputs: ['bar.target', ...others.map((part) => `${part.id}.mass`)],
    outputs: [{ id: `${rest.id}.mass`, meaning: `${rest.name} on a bar`, ...gram }],
    equation: 'm = mass aimed at − Σ the others',
    run: (target: number, ...masses: number[]) => {
      let left = target;
      for (const mass of masses) left -= mass;
      if (left < 0)
        throw new RangeError(
          `the other parts weigh ${(1000 * (target - left)).toFixed(2)} g already, more than the ${(1000 * target).toFixed(2)} g aimed at`,
        );
      return left;
    },
  });
}

function thicknessStep(b: Builder, plant: Plant, bar: Bar, host: Layer): void {
  const id = `layer.${host.slug}.thickness`;
  if (b.has(id)) return;
  const guests = bar.layers.filter((layer) => layer.sunkInto === host.name);
  const voids = voidsOf(b, host, guests);
  const together = [host, ...guests].flatMap((layer) => [
    `layer.${layer.slug}.mass`,
    `${plant.components.get(layer.component)!.slug}.density`,
  ]);
  b.step({
    title: `Thickness of ${host.name}`,
    inputs: ['bar.area', voids, ...together],
    outputs: [{ id, meaning: `thickness of ${[host, ...guests].map((layer) => layer.name).join(' with ')}`, ...millimetre }],
    equation: 't = Σ m / ρ / (1 − voids) / A',
    run: (area: number, v: number, ...others: number[]) => {
      let volume = 0;
      for (let i = 0; i < others.length; i += 2) volume += others[i]! / others[i + 1]!;
      return volume / (1 - v) / area;
    },
  });
}

function centreSteps(b: Builder, bar: Bar): void {
  const hosts = bar.layers.filter((layer) => layer.sunkInto === undefined);
  b.step({
    title: 'The centre before the coat',
    inputs: bar.layers.map((layer) => `layer.${layer.slug}.mass`),
    outputs: [{ id: 'bar.centre_mass', meaning: 'mass of a centre before the coat', ...gram }],
    equation: 'Σ layers',
    run: sum,
  });
  b.step({
    title: 'Height of the centre',
    inputs: hosts.map((layer) => `layer.${layer.slug}.thickness`),
    outputs: [{ id: 'bar.centre_height', meaning: 'height of a centre', ...millimetre }],
    equation: 'Σ thicknesses of the layers',
    run: sum,
  });
}

function coatSteps(b: Builder, plant: Plant, coat: Coat): void {
  const component = plant.components.get(coat.component)!;
  const allRound = coat.covers === 'all round';
  b.step({
    title: 'Surface that the coat covers',
    inputs: ['bar.cut_length', 'bar.cut_width', 'bar.centre_height'],
    outputs: [{ id: 'coat.area', meaning: `surface of a centre that is coated (${coat.covers})`, unit: 'm²', show: 'cm²', decimals: 1 }],
    equation: allRound ? 'the six faces of the centre' : 'the five faces of the centre without the underside',
    run: (l: number, w: number, h: number) => (allRound ? 2 : 1) * l * w + 2 * (l + w) * h,
  });
  const mass = { id: 'coat.mass', meaning: `${component.name} on a bar`, ...gram };
  const rho = `${component.slug}.density`;
  const thickness = { id: 'coat.thickness', meaning: 'mean thickness of the coat', ...millimetre };
  const { amount } = coat;
  if (amount.by === 'thickness') {
    b.entered(thickness.id, thickness.meaning, amount.thickness, millimetre);
    b.step({
      title: 'Mass of the coat',
      inputs: [thickness.id, 'coat.area', rho],
      outputs: [mass],
      equation: 'm = t · A · ρ',
      run: (t: number, a: number, r: number) => t * a * r,
    });
  } else {
    if (amount.by === 'mass') b.entered(mass.id, mass.meaning, amount.mass, gram, undefined, spread(coat.variation, amount.mass));
    if (amount.by === 'mass per area') {
      const per = b.entered('coat.mass_per_area', 'coat per area of centre', amount.massPerArea, { unit: 'kg/m²', decimals: 3 });
      b.step({
        title: 'Mass of the coat',
        inputs: [per, 'coat.area'],
        outputs: [mass],
        equation: 'm = mass per area · A',
        run: (m: number, a: number) => m * a,
      });
    }
    b.step({
      title: 'Mean thickness of the coat',
      inputs: [mass.id, 'coat.area', rho],
      outputs: [thickness],
      equation: 't = m / (ρ · A)',
      run: (m: number, a: number, r: number) => m / (a * r),
    });
  }
  faceSteps(b, coat);
}

/** Thickness on each face: the mean everywhere, until a drainage model tells the faces apart. */
function faceSteps(b: Builder, coat: Coat): void {
  const minimum = { top: coat.minimum.top, side: coat.minimum.side, bottom: coat.minimum.bottom };
  const faces = coat.covers === 'all round' ? (['top', 'side', 'bottom'] as const) : (['top', 'side'] as const);
  for (const face of faces) {
    const least = minimum[face];
    const low = least && (least.low ?? least.value);
    b.step({
      title: `Coat on the ${face}`,
      inputs: ['coat.thickness'],
      outputs: [
        {
          id: `coat.thickness_${face}`,
          meaning: `thickness of the coat, ${face}`,
          ...millimetre,
          ...(low === undefined ? {} : { window: { low, reason: 'house limit', ...(least ? { source: least.place } : {}) } }),
        },
      ],
      equation: 'the mean on every face: no drainage model yet',
      run: (t: number) => t,
      uncertainty: (_, [t]) => [0.3 * (t as number)],
    });
  }
}

/** Length, width and height of the finished bar as drawn, beside the size the plant measured. */
function sizeSteps(b: Builder, bar: Bar): void {
  const names = ['length', 'width', 'height'] as const;
  const inner = ['bar.cut_length', 'bar.cut_width', 'bar.centre_height'];
  const faces = [2, 2, bar.coat?.covers === 'without underside' ? 1 : 2];
  names.forEach((name, i) => {
    const measured = bar.size?.[i];
    if (measured)
      b.entered(`bar.${name}_entered`, `${name} of the finished bar as the plant entered it`, measured, { ...millimetre, decimals: 1 });
    b.step({
      title: `Finished ${name}`,
      inputs: [inner[i]!, ...(bar.coat ? ['coat.thickness'] : []), ...(measured ? [`bar.${name}_entered`] : [])],
      outputs: [{ id: `bar.${name}`, meaning: `${name} of the finished bar`, ...millimetre, decimals: 1 }],
      equation: bar.coat ? `centre + ${faces[i]} · coat` : 'the centre',
      run: (x: number, t: number) => x + (bar.coat ? faces[i]! * t : 0),
      findings: (inputs, [size]) => {
        const entered = measured ? (inputs.at(-1) as number) : undefined;
        if (entered === undefined || Math.abs(entered - (size as number)) <= 0.03 * entered) return [];
        return [
          {
            code: 'SIZE_DISAGREES',
            level: 'query',
            quantity: `bar.${name}`,
            message: `The ${name} follows as ${(1000 * (size as number)).toFixed(1)} mm, but ${(1000 * entered).toFixed(1)} mm was entered. Density, coat or the measurement is off.`,
          },
        ];
      },
    });
  });
}

export function sum(...values: number[]): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}
