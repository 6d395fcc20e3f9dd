import type { Component, Entered, Stage } from '@barwright/plant';
import {
  arrheniusFactor,
  at,
  browningEnergy,
  latentHeatOfVaporisation,
  refractometerReading,
  solutionOf,
  specificHeat,
  waterForBoiling,
  type Composition,
} from '@barwright/science';
import { celsius, percent, type Builder } from './builder.js';

/** Temperature at which a cooled sample is read, °C; instruments correct to it. */
const readAt = 20;
/** Temperature to which browning is referred, and of a charge whose own nobody entered, °C. */
const brownedAt = 118;
const coldFeed = 20;

/** The names that a cook's quantities begin with: of the component, of the stage, and what it sends away as steam. */
export interface CookNames {
  readonly k: string;
  readonly s: string;
  readonly evaporated: string;
  readonly pressure: string;
  readonly offset: string;
}

/** What a cook shows beside its temperature: refractometer, what a kelvin of error does, heat, browning. */
export function cookReadings(b: Builder, component: Component, stage: Stage, names: CookNames): void {
  refractometer(b, component, stage, names);
  perKelvin(b, component, names);
  heat(b, component, stage, names);
  if (stage.cook!.hold) browning(b, component, stage.cook!.hold, names);
}

function refractometer(b: Builder, component: Component, stage: Stage, { k, s }: CookNames): void {
  const written = stage.cook!.refractometerOffset;
  const meaning = `what the refractometer shows of ${component.name} less what the model expects`;
  const offset = written
    ? b.entered(`${k}.refractometer_offset`, meaning, written, percent)
    : b.byDefault(`${k}.refractometer_offset`, meaning, 0, percent, 'not calibrated yet');
  b.step({
    title: 'What the refractometer shows at the end of the cook',
    inputs: [`${s}.contents`, offset],
    outputs: [{ id: `${k}.refractometer`, meaning: `reading of a refractometer, sucrose scale, of ${component.name} at the end of the cook`, ...percent, decimals: 1 }], // prettier-ignore
    equation:
      'refractive index of water and what is dissolved (fat and protein scatter and do not count), on the sucrose scale, plus the plant’s own correction',
    sources: ['icumsa-sps-3', 'iso-1743'],
    note: `Read at ${readAt} °C or corrected to it. Fat blurs the line: calibrate on good cooks. Half-width our estimate.`,
    run: (inside: Composition, correction: number) => refractometerReading(solutionOf(inside), readAt, true) + correction,
    uncertainty: () => [0.01],
  });
}

/** Moisture of the vessel's contents if they boil at a temperature, wet basis; at the one they boil at it is what they hold. */
function moistureAt(inside: Composition, t: number, pressure: number): number {
  const water = waterForBoiling(solutionOf(inside), t, pressure);
  return water / (water + 1 - inside[at.water]!);
}

function perKelvin(b: Builder, component: Component, { k, s, pressure, offset }: CookNames): void {
  const step = 0.05;
  b.step({
    title: 'What a kelvin of the probe does',
    inputs: [`${s}.contents`, `${k}.cook_temperature`, offset, pressure],
    outputs: [
      {
        id: `${k}.moisture_per_kelvin`,
        meaning: `change of moisture in the cooker of ${component.name} for each kelvin of end temperature`,
        unit: '1/K',
        show: '%/K',
        decimals: 2,
      },
    ],
    equation: 'dw/dT along the boiling line: a probe that reads 1 K high leaves this much more water',
    sources: ['starzak-peacock-1997', 'norrish-1966', 'iapws-if97'],
    run: (inside: Composition, t: number, correction: number, p: number) =>
      (moistureAt(inside, t - correction + step, p) - inside[at.water]!) / step,
    uncertainty: (_, [slope]) => [0.1 * Math.abs(slope as number)],
  });
}

function heat(b: Builder, component: Component, stage: Stage, { k, s, evaporated }: CookNames): void {
  const before = stage.takes.map((name) => component.stages.find((other) => other.name === name)?.temperature).find((t) => t !== undefined);
  const feed = before
    ? b.entered(`${k}.cook_feed_temperature`, `temperature at which ${component.name} comes to the cooker`, before, celsius)
    : b.byDefault(
        `${k}.cook_feed_temperature`,
        `temperature at which ${component.name} comes to the cooker`,
        coldFeed,
        celsius,
        'nobody entered one',
      );
  b.step({
    title: 'Heat of the cook',
    inputs: [`${s}.in_mass`, `${s}.in_composition`, evaporated, feed, `${k}.cook_temperature`],
    outputs: [
      {
        id: `${k}.cook_heat`,
        meaning: `heat to warm and boil ${component.name}, per kg charged`,
        unit: 'J/kg',
        show: 'kJ/kg',
        decimals: 0,
      },
    ],
    equation: 'mass · cp · (end − feed) + water boiled away · its latent heat; losses of the cooker not in it',
    sources: ['choi-okos-1986', 'sugar-liquor-thermal', 'iapws-sr1-86'],
    run: (mass: number, inside: Composition, water: number, from: number, to: number) => {
      const middle = (from + to) / 2;
      // What boils away is warm only up to where it leaves; half of it, on the mean, is warmed with the rest.
      return (mass - water / 2) * specificHeat(inside, middle) * (to - from) + water * latentHeatOfVaporisation(middle + (to - middle) / 2);
    },
    uncertainty: (_, [q]) => [0.05 * (q as number)],
  });
}

function browning(b: Builder, component: Component, hold: Entered, { k }: CookNames): void {
  const held = b.entered(`${k}.cook_hold`, `time ${component.name} is held near its end temperature`, hold, {
    unit: 's',
    show: 'min',
    decimals: 1,
  });
  b.step({
    title: 'Browning of the hold',
    inputs: [held, `${k}.cook_temperature`],
    outputs: [
      {
        id: `${k}.browning`,
        meaning: `minutes at ${brownedAt} °C that brown ${component.name} as much as its hold does`,
        unit: 's',
        show: 'min',
        decimals: 1,
      },
    ],
    equation: 'hold · exp(−E/R · (1/T − 1/T₁₁₈)); the heating up and the cooling are not in it',
    sources: ['pagliarini-milk-colour', 'rozycki-2007'],
    run: (time: number, t: number) => time * arrheniusFactor(browningEnergy.values.milk, brownedAt, t),
    uncertainty: ([time, t]) => {
      const [low, high] = browningEnergy.values.sweetened_milk;
      const ends = [low, high].map((energy) => arrheniusFactor(energy, brownedAt, t as number));
      return [((time as number) * Math.abs(ends[1]! - ends[0]!)) / 2];
    },
  });
}
