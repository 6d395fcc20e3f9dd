import { buildChain, evaluate } from '@barwright/chain';
import type { Component, Entered, Plant } from '@barwright/plant';
import {
  at,
  flowRatio,
  flowShift,
  requireRange,
  usualEffects,
  type Composition,
  type FlowEffects,
  type FlowRecipe,
} from '@barwright/science';
import { Builder, percent, windowOf, type Look } from './builder.js';
import { ladder, usualFlow } from './chocolate-ladder.js';
import { componentSteps } from './component.js';
import { additionsOf } from './parts.js';
import { plantSteps } from './plant.js';

const pascal = { unit: 'Pa', decimals: 1 } as const;
const pascalSecond = { unit: 'Pa·s', decimals: 2 } as const;
const micrometre = { unit: 'm', show: 'µm', decimals: 1 } as const;

/** A component that is a chocolate or a fat coating: it has a name of chocolate in law, or is drawn as one. */
export function isChocolate(component: Component): boolean {
  return component.legalName !== undefined || /chocolate|coating|couverture|compound/i.test(component.texture);
}

/** Ids of the numbers that shift the flow of a chocolate, in the order of `FlowRecipe`. */
function recipeIds(c: string): readonly [fat: string, lecithin: string, e476: string, moisture: string, fineness: string] {
  return [`${c}.fat`, `${c}.lecithin`, `${c}.e476`, `${c}.moisture`, `${c}.fineness`];
}

/**
 * Yield value and plastic viscosity of a chocolate, melted, at 40 °C: what the plant entered for the recipe as written, moved by what
 * fat, lecithin, E476, water and fineness do to it. At the recipe as written they are what was entered.
 */
export function chocolateSteps(b: Builder, plant: Plant, component: Component): void {
  const c = component.slug;
  emulsifierStep(b, plant, component);
  finenessStep(b, component);
  constant(b, component, {
    id: `${c}.temper_crystals`,
    slug: 'temper_crystals',
    meaning: `crystals in tempered ${component.name}, share of its fat`,
    look: percent,
    value: usualFlow.values.temperCrystals,
    note: 'common practice, 0.5 to 3 %; no source. Fit it to a temper curve or a heat balance of the temperer',
  });
  const written = writtenRecipe(plant, component);
  const before = beforeRoots(b, component, written.recipe, written.fineness);
  const effects = ladder.map(({ key, id, meaning, look }) =>
    constant(b, component, {
      id: `${c}.flow.${id}`,
      slug: id,
      meaning: `${component.name}: ${meaning}`,
      look,
      value: usualEffects[key],
      note: "middle of published trends and trade rules; replace it by the plant's own ladder",
    }),
  );
  const yieldBase = baseRoot(b, component, /yield/i, 'casson_yield_value', 'Casson yield value', usualFlow.values.yieldValue, pascal);
  const plasticBase = baseRoot(
    b,
    component,
    /plastic/i,
    'casson_plastic_viscosity',
    'Casson plastic viscosity',
    usualFlow.values.plasticViscosity,
    pascalSecond,
  );
  const words = (of: string) => `${of} of ${component.name} against that of the recipe as written`;
  const melted = (of: string) => `Casson ${of} of ${component.name}, melted, at 40 °C`;
  b.step({
    title: `Flow of ${component.name}`,
    inputs: [...recipeIds(c), ...before, ...effects, yieldBase.id, plasticBase.id],
    outputs: [
      { id: `${c}.yield_value`, meaning: melted('yield value'), ...pascal, ...windowFrom(yieldBase.entered) },
      { id: `${c}.plastic_viscosity`, meaning: melted('plastic viscosity'), ...pascalSecond, ...windowFrom(plasticBase.entered) },
      { id: `${c}.flow.yield_factor`, meaning: words('yield value'), ...percent, decimals: 1 },
      { id: `${c}.flow.plastic_factor`, meaning: words('plastic viscosity'), ...percent, decimals: 1 },
    ],
    equation:
      'as entered · factor; factor = now / recipe as written: fat and water through the packing (1 − φ/φm)^(−2.5 φm), lecithin as butter up to its optimum, E476 floor + (1 − floor) e^(−x/scale), fineness d90^(−n)',
    sources: ['krieger-dougherty-1959', 'chocolate-flow-trends', 'afoakwa-2008', 'schantz-rohm-2005'],
    standing: 'memory',
    note: 'Directions are published, sizes are ranges: the interval is theirs until the plant enters its own ladder. Laboratories differ by much: compare readings of one instrument only.',
    run: (...values: number[]) => {
      const now = possible(component, recipeOf(values, 0));
      const { yieldValue, plastic } = flowRatio(recipeOf(values, 5), now, effectsOf(values));
      return [values.at(-2)! * yieldValue, values.at(-1)! * plastic, yieldValue, plastic];
    },
    uncertainty: (inputs) => {
      const values = inputs as number[];
      const shift = flowShift(recipeOf(values, 5), recipeOf(values, 0), ownEffects(values));
      const [onYield, onPlastic] = [shift.yieldValue, shift.plastic].map(({ low, high }) => (high - low) / 2) as [number, number];
      return [values.at(-2)! * onYield, values.at(-1)! * onPlastic, onYield, onPlastic];
    },
    findings: (inputs) => outsideFitted(component, recipeOf(inputs as number[], 0)),
  });
}

function windowFrom(entered: Entered | undefined) {
  return entered ? windowOf(entered) : {};
}

interface Constant {
  readonly id: string;
  /** A target of this name in the definition takes the place of the default. */
  readonly slug: string;
  readonly meaning: string;
  readonly look: Look;
  readonly value: number;
  readonly note: string;
}

/** A constant of the plant under one id: its own target where it wrote one, else the default, marked so. */
function constant(b: Builder, component: Component, { id, slug, meaning, look, value, note }: Constant): string {
  if (component.targets.some((target) => target.slug === slug))
    return b.step({
      title: meaning,
      inputs: [`${component.slug}.target.${slug}`],
      outputs: [{ id, meaning, ...look }],
      equation: 'as the plant wrote it',
      run: (written: number) => written,
    });
  return b.root({ id, meaning, ...look, value, origin: 'default', source: usualFlow.source, standing: usualFlow.standing, note });
}

/** The target that the plant wrote, or a default one under the same kind of id. */
function baseRoot(
  b: Builder,
  component: Component,
  name: RegExp,
  slug: string,
  words: string,
  usual: number,
  look: { readonly unit: string; readonly decimals: number },
): { readonly id: string; readonly entered?: Entered } {
  const written = component.targets.find((target) => name.test(target.name) && /pressure|viscosity/.test(target.value.dimension ?? ''));
  if (written) return { id: `${component.slug}.target.${written.slug}`, entered: written.value };
  const id = b.root({
    id: `${component.slug}.target.${slug}`,
    meaning: `${words} of ${component.name}`,
    ...look,
    value: usual,
    origin: 'default',
    source: usualFlow.source,
    standing: usualFlow.standing,
    note: 'nobody entered one; middle of what enrobing chocolate shows',
  });
  return { id };
}

function emulsifierStep(b: Builder, plant: Plant, component: Component): void {
  const c = component.slug;
  const e476 = additionsOf(component).filter(
    ({ addition }) => isE476(addition.name) || isE476(plant.materials.get(addition.name)?.label ?? ''),
  );
  b.step({
    title: `Emulsifiers of ${component.name}`,
    inputs: [
      `${c}.composition`,
      `${c}.yield`,
      `${c}.charge_sum`,
      ...e476.flatMap(({ id, addition }) => [id, `material.${plant.materials.get(addition.name)!.slug}.composition`]),
    ],
    outputs: [
      { id: `${c}.lecithin`, meaning: `lecithin in ${component.name}`, ...percent },
      { id: `${c}.e476`, meaning: `E476 in ${component.name}`, ...percent },
    ],
    equation: 'E476 = Σ share / (charge · yield); lecithin = emulsifier of the composition less what E476 brings of it',
    run: (composition: Composition, made: number, charge: number, ...rest: (number | Composition)[]) => {
      let own = 0;
      let asEmulsifier = 0;
      for (let i = 0; i < rest.length; i += 2) {
        const share = (rest[i] as number) / (made * charge);
        own += share;
        asEmulsifier += share * (rest[i + 1] as Composition)[at.emulsifier]!;
      }
      return [Math.max(0, composition[at.emulsifier]! - asEmulsifier), own];
    },
  });
}

/** Polyglycerol polyricinoleate by any of its names. */
export function isE476(name: string): boolean {
  return /e ?-?476|pgpr|polyricinoleate/i.test(name);
}

function finenessStep(b: Builder, component: Component): void {
  const c = component.slug;
  const target = component.targets.find((other) => /fineness|d90/i.test(other.name) && other.value.dimension === 'length');
  const from = target
    ? `${c}.target.${target.slug}`
    : b.byDefault(
        `${c}.target.fineness_d90`,
        `fineness d90 of ${component.name}`,
        usualFlow.values.fineness,
        micrometre,
        'nobody entered one; common practice, no source',
      );
  b.step({
    title: `Fineness of ${component.name}`,
    inputs: [from],
    outputs: [
      {
        id: `${c}.fineness`,
        meaning: `90 % of the particle volume of ${component.name} is finer`,
        ...micrometre,
        ...(target ? windowOf(target.value) : {}),
      },
    ],
    equation: 'as aimed at, until it is measured',
    run: (d90: number) => d90,
  });
}

/** The recipe as the definition has it: what the entered yield value belongs to. Later what-ifs are held against it. */
function beforeRoots(b: Builder, component: Component, written: FlowRecipe, fineness: number): readonly string[] {
  const c = component.slug;
  const list = [
    ['fat', 'fat', written.fat, percent],
    ['lecithin', 'lecithin', written.lecithin, percent],
    ['e476', 'E476', written.pgpr, percent],
    ['moisture', 'water', written.moisture, percent],
    ['fineness', 'fineness d90', fineness, micrometre],
  ] as const;
  return list.map(([id, words, value, look]) =>
    b.root({
      id: `${c}.flow.written_${id}`,
      meaning: `${words} of ${component.name} in the recipe as written`,
      ...look,
      value,
      origin: 'entered',
      place: component.place,
      note: 'follows from the definition; the entered flow values belong to it',
    }),
  );
}

/** Fat, emulsifiers, water and fineness by the definition alone. @throws never: what the definition does not give stays NaN */
function writtenRecipe(plant: Plant, component: Component): { readonly recipe: FlowRecipe; readonly fineness: number } {
  const b = new Builder();
  plantSteps(b, plant);
  componentSteps(b, plant, component, {});
  emulsifierStep(b, plant, component);
  finenessStep(b, component);
  const state = evaluate(buildChain(b.roots, b.steps));
  const number = (id: string) => state.number(id);
  return { recipe: flowRecipeOf(component.slug, number), fineness: number(`${component.slug}.fineness`) };
}

/** Five numbers from `first` on as a recipe; fineness comes in metres. */
function recipeOf(values: readonly number[], first: number): FlowRecipe {
  return {
    fat: values[first]!,
    lecithin: values[first + 1]!,
    pgpr: values[first + 2]!,
    moisture: values[first + 3]!,
    d90: 1e6 * values[first + 4]!,
  };
}

function effectsOf(values: readonly number[]): FlowEffects {
  const effects: Record<string, number> = {};
  for (let i = 0; i < ladder.length; i++) effects[ladder[i]!.key] = values[10 + i]!;
  return effects as unknown as FlowEffects;
}

/** What differs from the usual sizes is the plant's own, and carries no published range. */
function ownEffects(values: readonly number[]): Partial<FlowEffects> {
  return Object.fromEntries(Object.entries(effectsOf(values)).filter(([key, value]) => value !== usualEffects[key as keyof FlowEffects]));
}

/** The effects of one chocolate in a state, only what the plant replaced. */
export function ladderOf(c: string, number: (id: string) => number): Partial<FlowEffects> {
  return Object.fromEntries(
    ladder.map(({ key, id }) => [key, number(`${c}.flow.${id}`)] as const).filter(([key, value]) => value !== usualEffects[key]),
  );
}

/** The recipe of one chocolate in a state. */
export function flowRecipeOf(c: string, number: (id: string) => number): FlowRecipe {
  return recipeOf(recipeIds(c).map(number), 0);
}

/** @throws OutOfRange for a recipe that is no chocolate */
function possible(component: Component, recipe: FlowRecipe): FlowRecipe {
  requireRange(`fat of ${component.name}`, recipe.fat, [0.2, 0.6], 'krieger-dougherty-1959');
  requireRange(`lecithin of ${component.name}`, recipe.lecithin, [0, 0.03], 'chocolate-flow-trends');
  requireRange(`E476 of ${component.name}`, recipe.pgpr, [0, 0.02], 'chocolate-flow-trends');
  requireRange(`water of ${component.name}`, recipe.moisture, [0, 0.03], 'chocolate-flow-trends');
  requireRange(`fineness of ${component.name} in µm`, recipe.d90, [5, 200], 'chocolate-flow-trends');
  return recipe;
}

function outsideFitted(component: Component, recipe: FlowRecipe) {
  const { valid } = usualFlow;
  return (Object.keys(valid) as (keyof typeof valid)[]).flatMap((key) => {
    const [low, high] = valid[key];
    const value = recipe[key];
    if (value >= low && value <= high) return [];
    const [scale, unit] = key === 'd90' ? [1, 'µm'] : [100, '%'];
    return [
      {
        code: 'OUTSIDE_FITTED_RANGE',
        level: 'note' as const,
        quantity: `${component.slug}.flow.yield_factor`,
        message: `${names[key]} of ${component.name} is ${(scale * value).toFixed(2)} ${unit}; what recipes do to its flow is known from ${+(scale * low).toFixed(2)} to ${+(scale * high).toFixed(2)} ${unit}.`,
      },
    ];
  });
}

const names = { fat: 'Fat', lecithin: 'Lecithin', pgpr: 'E476', moisture: 'Water', d90: 'Fineness d90' } as const;
