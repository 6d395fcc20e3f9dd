import type { Step, Value } from '@barwright/chain';
import { slugOf, type Component, type CookPressure, type Entered, type Stage } from '@barwright/plant';
import {
  at,
  boilingEstimate,
  boilingPoint,
  boilingPointElevation,
  boilingSensitivityAt,
  compositionKeys,
  solutionOf,
  waterForBoiling,
  type Composition,
} from '@barwright/science';
import { celsius, kelvin, percent, vector, windowOf, type Builder } from './builder.js';
import { cookReadings } from './cook-readings.js';
import { perKilogramCharge, withoutWater, type Drive, type Part } from './parts.js';

/** Sources behind the boiling point of what is in a cooker. */
const boilingSources = ['starzak-peacock-1997', 'norrish-1966', 'iapws-if97'];

/**
 * A cook: water leaves until the finished component holds its moisture, or until the vessel boils at a temperature.
 * Boiling belongs to the dissolved phase of what is in the vessel at that moment.
 * @returns the id of the water driven off, per kg charged
 */
export function cookSteps(b: Builder, component: Component, parts: readonly Part[], stage: Stage, s: string, drive: Drive): string {
  const c = component.slug;
  const k = component.stages.find((other) => other.cook) === stage ? c : s;
  const cook = stage.cook!;
  const pressure = pressureIn(b, component, cook.pressure, k);
  const offset = cook.modelOffset
    ? b.entered(`${k}.cook_model_offset`, `the plant's own correction of the boiling point of ${component.name}`, cook.modelOffset, kelvin)
    : b.byDefault(
        `${k}.cook_model_offset`,
        `the plant's own correction of the boiling point of ${component.name}`,
        0,
        kelvin,
        'not calibrated yet',
      );
  const probe = cook.probeOffset
    ? b.entered(`${k}.cook_probe_offset`, `what the cook probe of ${component.name} shows less the truth`, cook.probeOffset, kelvin)
    : b.byDefault(
        `${k}.cook_probe_offset`,
        `what the cook probe of ${component.name} shows less the truth`,
        0,
        kelvin,
        'probe not checked',
      );
  const temperature = `${k}.cook_temperature`;
  const evaporated = {
    id: `${s}.evaporated`,
    meaning: `water boiled away from ${component.name}, per kg charged`,
    ...perKilogramCharge,
  };

  const driven = drive.cookTemperature?.[c];
  const moisture = cook.end.by === 'temperature' ? undefined : cook.end.moisture;
  if (k === c && driven !== undefined && moisture) {
    b.root({
      id: temperature,
      meaning: `cook temperature of ${component.name}`,
      ...celsius,
      value: driven,
      origin: 'entered',
      place: moisture.place,
      note: 'set by temperature for this trial',
    });
    byTemperature(b, component, s, evaporated, temperature, offset, pressure);
  } else if (cook.end.by === 'temperature') {
    b.entered(temperature, `cook temperature of ${component.name}`, cook.end.temperature, celsius);
    byTemperature(b, component, s, evaporated, temperature, offset, pressure);
  } else if (cook.end.by === 'moisture') {
    const to = b.entered(`${s}.to_moisture`, `moisture in the cooker of ${component.name} at the end`, cook.end.moisture, percent);
    b.step({
      title: `${stage.name}: water boiled away`,
      inputs: [`${s}.in_mass`, `${s}.in_composition`, to],
      outputs: [evaporated],
      equation: 'water = mass · (w₀ − w₁) / (1 − w₁)',
      run: (mass: number, composition: Composition, target: number) =>
        possible(component, (mass * (composition[at.water]! - target)) / (1 - target), mass * composition[at.water]!),
    });
    contents(b, component, s, evaporated.id);
    boiling(b, component, s, k, offset, pressure);
  } else {
    byFinishedMoisture(b, component, parts, stage, s, evaporated, cook.end.moisture);
    contents(b, component, s, evaporated.id);
    boiling(b, component, s, k, offset, pressure);
    if (k === c && component.stages.every((other) => other.losses.length === 0))
      temperatureWindow(b, component, s, cook.end.moisture, offset, pressure);
  }
  if (driven !== undefined || cook.end.by === 'temperature') contents(b, component, s, evaporated.id);
  b.step({
    title: `What the probe must show`,
    inputs: [temperature, probe],
    outputs: [{ id: `${k}.cook_indicated`, meaning: `cook temperature of ${component.name} as its probe shows it`, ...celsius }],
    equation: 'shown = true + probe offset',
    run: (t: number, o: number) => t + o,
  });
  b.step({
    title: `Boiling point against pressure`,
    inputs: [`${s}.contents`, pressure, temperature, offset],
    outputs: [
      {
        id: `${k}.cook_per_kpa`,
        meaning: `change of the cook temperature of ${component.name} for each kPa of pressure`,
        unit: 'K/kPa',
        decimals: 2,
      },
    ],
    equation: 'dT/dp at constant solids',
    sources: boilingSources,
    run: (inside: Composition, p: number, t: number, correction: number) => boilingSensitivityAt(solutionOf(inside), t - correction, p),
  });
  b.step({
    title: `Dissolved solids in the cooker`,
    inputs: [`${s}.contents`],
    outputs: [
      { id: `${k}.cook_solids`, meaning: `solids of the dissolved phase in the cooker of ${component.name} at the end`, ...percent },
    ],
    equation: 'dissolved solids / (dissolved solids + water)',
    run: (inside: Composition) => {
      const solution = solutionOf(inside);
      let all = 0;
      for (const [key, value] of Object.entries(solution)) if (key !== 'higherSaccharidesMol') all += value as number;
      return 1 - solution.water / all;
    },
  });
  cookReadings(b, component, stage, { k, s, evaporated: evaporated.id, pressure, offset });
  return evaporated.id;
}

/** Absolute pressure above the cook. An open kettle follows the weather, and can be put under another pressure for a trial. */
function pressureIn(b: Builder, component: Component, written: CookPressure, k: string): string {
  const quantity = { id: `${k}.cook_pressure`, meaning: `absolute pressure in the cooker of ${component.name}`, unit: 'Pa', show: 'mbar', decimals: 0 }; // prettier-ignore
  if (written.by === 'absolute') return b.entered(quantity.id, quantity.meaning, written.pressure, quantity);
  return b.step({
    title: 'Pressure above an open cook',
    inputs: ['plant.pressure'],
    outputs: [quantity],
    equation: 'the air pressure of the day',
    run: (p: number) => p,
  });
}

function contents(b: Builder, component: Component, s: string, evaporated: string): void {
  b.step({
    title: 'In the cooker at the end',
    inputs: [`${s}.in_mass`, `${s}.in_composition`, evaporated],
    outputs: [
      { id: `${s}.contents`, meaning: `composition in the cooker of ${component.name} at the end`, ...vector, labels: compositionKeys },
    ],
    equation: 'what went in, less the water boiled away',
    run: (mass: number, composition: Composition, water: number) => withoutWater(composition, water / mass),
  });
}

function boiling(b: Builder, component: Component, s: string, k: string, offset: string, pressure: string): void {
  // A correction that the plant has measured with its spread takes the place of the model's own band.
  const written = component.stages.find((stage) => stage.cook && (k === component.slug || k.endsWith(`.${stage.slug}`)))?.cook?.modelOffset;
  const known = written?.low === undefined || written.high === undefined ? undefined : (written.high - written.low) / 2;
  b.step({
    title: `Boiling point of the dissolved phase`,
    inputs: [`${s}.contents`, pressure, offset],
    outputs: [{ id: `${k}.cook_temperature`, meaning: `cook temperature of ${component.name}`, ...celsius }],
    equation: 'T where aw(dissolved phase, T) · psat(T) = p, plus the plant’s own correction',
    sources: boilingSources,
    run: (inside: Composition, p: number, correction: number) => boilingPoint(solutionOf(inside), p) + correction,
    uncertainty: ([inside, p], [t]) => {
      if (known !== undefined) return [known];
      const { low, high } = boilingEstimate(t as number, boilingPointElevation(solutionOf(inside as Composition), p as number), 'mixture');
      return [(high! - low!) / 2];
    },
  });
}

function byTemperature(
  b: Builder,
  component: Component,
  s: string,
  evaporated: Step['outputs'][number],
  temperature: string,
  offset: string,
  pressure: string,
): void {
  b.step({
    title: 'Water left where it boils at the set temperature',
    inputs: [`${s}.in_mass`, `${s}.in_composition`, temperature, offset, pressure],
    outputs: [evaporated],
    equation: 'water left: aw(dissolved phase, T) · psat(T) = p at T less the plant’s own correction',
    sources: boilingSources,
    run: (mass: number, composition: Composition, t: number, correction: number, p: number) => {
      const left = waterForBoiling(solutionOf(composition), t - correction, p);
      return possible(component, mass * (composition[at.water]! - left), mass * composition[at.water]!);
    },
  });
}

/** The finished component is to hold a moisture: what the other ingredients bring must be boiled away here. */
function byFinishedMoisture(
  b: Builder,
  component: Component,
  parts: readonly Part[],
  stage: Stage,
  s: string,
  evaporated: Step['outputs'][number],
  moisture: Entered,
): void {
  const c = component.slug;
  const target = b.entered(`${c}.moisture`, `water in ${component.name}, wet basis`, moisture, percent, windowOf(moisture).window);
  const survival = survivalOf(component);
  const losses = component.stages.flatMap((other) => other.losses.map((loss) => `${c}.stage.${other.slug}.loss.${slugOf(loss.name)}`));
  if (losses.length === 0) {
    b.step({
      title: `${stage.name}: water to boil away`,
      inputs: [`${c}.charge_sum`, `${c}.charge_dry`, target, `${s}.in_mass`, `${s}.in_composition`],
      outputs: [evaporated],
      equation: 'water = charge · (1 − dry / (1 − finished moisture))',
      run: (charge: number, dry: number, w: number, mass: number, inside: Composition) =>
        possible(component, charge * (1 - dry / (1 - moistureIn(component, w))), mass * inside[at.water]!),
    });
    return;
  }
  for (const other of component.stages) {
    for (const loss of other.losses) {
      b.entered(
        `${c}.stage.${other.slug}.loss.${slugOf(loss.name)}`,
        `${loss.name} at ${other.name} of ${component.name}`,
        loss.share,
        percent,
      );
    }
  }
  b.step({
    title: `${stage.name}: water to boil away`,
    inputs: [target, ...parts.map((part) => part.share), ...parts.map((part) => part.composition), ...losses],
    outputs: [evaporated],
    equation:
      'water = Σ water that would survive the losses − finished moisture / (1 − finished moisture) · Σ dry that survives, over what survives from here on',
    run: (w: number, ...values: Value[]) => {
      const n = parts.length;
      const loss = values.slice(2 * n) as number[];
      let water = 0;
      let dry = 0;
      let inside = 0;
      parts.forEach((part, i) => {
        const kept = survival(part.stage, loss) * (values[i] as number);
        const wet = (values[n + i] as Composition)[at.water]!;
        water += kept * wet;
        dry += kept * (1 - wet);
        inside += (values[i] as number) * wet;
      });
      return possible(component, (water - (w / (1 - w)) * dry) / survival(stage, loss), inside);
    },
  });
}

/** Product of what survives from a stage to the end, for losses listed in the order of the stages. */
function survivalOf(component: Component): (from: Stage, losses: readonly number[]) => number {
  const next = new Map<string, Stage>();
  component.stages.forEach((stage) => stage.takes.forEach((name) => next.set(name, stage)));
  const first = new Map<Stage, number>();
  let count = 0;
  for (const stage of component.stages) {
    first.set(stage, count);
    count += stage.losses.length;
  }
  return (from, losses) => {
    let kept = 1;
    for (let stage: Stage | undefined = from; stage; stage = next.get(stage.name)) {
      for (let i = 0; i < stage.losses.length; i++) kept *= 1 - losses[first.get(stage)! + i]!;
    }
    return kept;
  };
}

/** The cook temperatures at which the moisture reaches the ends of its window. */
function temperatureWindow(b: Builder, component: Component, s: string, moisture: Entered, offset: string, pressure: string): void {
  const ends = [
    ['cook_temperature_min', moisture.high, 'wettest'],
    ['cook_temperature_max', moisture.low, 'driest'],
  ] as const;
  for (const [name, end, word] of ends) {
    if (end === undefined) continue;
    const c = component.slug;
    const at_ = b.root({
      id: `${c}.moisture_${word}`,
      meaning: `${word} ${component.name} permitted`,
      ...percent,
      value: end,
      origin: 'entered',
      place: moisture.place,
    });
    b.step({
      title: `Cook temperature for the ${word} ${component.name} permitted`,
      inputs: [`${c}.charge_sum`, `${c}.charge_dry`, at_, `${s}.in_mass`, `${s}.in_composition`, pressure, offset],
      outputs: [{ id: `${c}.${name}`, meaning: `cook temperature at which ${component.name} is at its ${word}`, ...celsius }],
      equation: 'the boiling point where charge · (1 − dry / (1 − end of the moisture window)) has boiled away',
      sources: boilingSources,
      run: (charge: number, dry: number, end_: number, mass: number, inside: Composition, p: number, correction: number) => {
        const water = possible(component, charge * (1 - dry / (1 - end_)), mass * inside[at.water]!);
        return boilingPoint(solutionOf(withoutWater(inside, water / mass)), p) + correction;
      },
    });
  }
}

function moistureIn(component: Component, moisture: number): number {
  if (moisture >= 0 && moisture < 1) return moisture;
  throw new RangeError(`${component.name} cannot hold ${(100 * moisture).toFixed(1)} % of water; a moisture lies from 0 to below 100 %`);
}

function possible(component: Component, water: number, available: number): number {
  if (water < 0) {
    throw new RangeError(`${component.name} is drier before the cook than it is to be at the end; add water or allow more moisture`);
  }
  if (water >= available) {
    throw new RangeError(
      `${component.name} would have to lose ${(100 * water).toFixed(1)} kg of water per 100 kg charged, but its cooker holds ${(100 * available).toFixed(1)} kg`,
    );
  }
  return water;
}
