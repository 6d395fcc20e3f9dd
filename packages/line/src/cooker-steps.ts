import { celsius, componentsOf, kelvin, kilogramPerHour, lookOfWritten, percent, type Builder, type Look } from '@barwright/bar';
import type { Bar, Component, Plant, Stage } from '@barwright/plant';
import { at, latentHeatOfVaporisation, saturationTemperature, specificHeat, type Composition } from '@barwright/science';
import { boilingHeat, steamCarries } from './cooker-heat.js';

const kilowatt: Look = { unit: 'W', show: 'kW', decimals: 0 };
const minutes: Look = { unit: 's', show: 'min', decimals: 1 };
const kilograms: Look = { unit: 'kg', decimals: 1 };
const wattPerKelvin: Look = { unit: 'W/K', decimals: 0 };
const sources = ['choi-okos-1986', 'sugar-liquor-thermal', 'iapws-sr1-86', 'iapws-if97'];

/** One cook and the names that its quantities begin with. */
export interface CookPlace {
  readonly component: Component;
  readonly stage: Stage;
  /** The component for its first cook, else the stage. */
  readonly k: string;
  readonly s: string;
}

/** Every cook of the bar, in the order in which components are made. */
export function cookPlaces(plant: Plant, bar: Bar): readonly CookPlace[] {
  return componentsOf(plant, bar).flatMap((component) => {
    const cooks = component.stages.filter(({ cook }) => cook);
    return cooks.map((stage, i) => {
      const s = `${component.slug}.stage.${stage.slug}`;
      return { component, stage, k: i === 0 ? component.slug : s, s };
    });
  });
}

/** Duty, steam, time and spread of every cook, as far as the plant says what its cooker is. Nothing stands in for what it leaves out. */
export function cookerSteps(b: Builder, plant: Plant, bar: Bar): void {
  for (const place of cookPlaces(plant, bar)) {
    const duty = dutyStep(b, place);
    const steam = steamStep(b, place, duty);
    const warm = steam && wallSteps(b, place, steam);
    spreadStep(b, place, warm);
  }
}

function entered(
  b: Builder,
  { component, stage, k }: CookPlace,
): (key: Own, name: string, words: string, look?: Look) => string | undefined {
  return (key, name, words, look) => {
    const written = stage.cook!.cooker?.[key];
    return written && b.entered(`${k}.${name}`, `${words} ${component.name}`, written, look ?? lookOfWritten(written));
  };
}
type Own = Exclude<keyof NonNullable<NonNullable<Stage['cook']>['cooker']>, 'kind'>;

/** Heat per hour at rated speed and the water it drives off; nothing without a line. */
function dutyStep(b: Builder, place: CookPlace): string | undefined {
  const { component, stage, k, s } = place;
  const c = component.slug;
  if (!b.has(`flow.${c}.in`)) return undefined;
  const own = entered(b, place);
  const loss = own('heatLoss', 'heat_loss', 'heat that the cooker loses to the room making');
  const efficiency = own('boilerEfficiency', 'boiler_efficiency', 'heat in the steam over heat in the fuel, for');
  b.step({
    title: `${stage.name}: duty of the cooker`,
    inputs: [`flow.${c}.in`, `${c}.charge_sum`, `${k}.cook_heat`, `${s}.evaporated`, ...(loss ? [loss] : [])],
    outputs: [
      { id: `${k}.cook_duty`, meaning: `heat that the cooker of ${component.name} asks for at rated speed, on the mean`, ...kilowatt },
      { id: `${k}.cook_evaporation`, meaning: `water that the cooker of ${component.name} drives off at rated speed`, ...kilogramPerHour },
    ],
    equation: `charged per hour · heat of the cook per kg charged${loss ? ' + heat lost to the room' : '; losses of the cooker not entered'}`,
    sources,
    run: (flow: number, charge: number, heat: number, water: number, lost = 0) => [
      (flow * heat) / charge / 3600 + lost,
      (flow * water) / charge,
    ],
    uncertainty: (_, [duty]) => [0.05 * (duty as number), 0],
  });
  if (efficiency)
    b.step({
      title: `${stage.name}: heat in the fuel`,
      inputs: [`${k}.cook_duty`, efficiency],
      outputs: [{ id: `${k}.cook_fuel`, meaning: `heat in the fuel for the cooker of ${component.name} at rated speed`, ...kilowatt }],
      equation: 'duty / efficiency of the boiler',
      run: (duty: number, share: number) => duty / share,
    });
  return `${k}.cook_duty`;
}

/** Temperature of the steam, and how much of it condenses. @returns id of its temperature */
function steamStep(b: Builder, place: CookPlace, duty: string | undefined): string | undefined {
  const { component, stage, k } = place;
  const c = component.slug;
  const pressure = entered(b, place)('steam', 'steam_pressure', 'absolute pressure of the steam that heats');
  if (!pressure) return undefined;
  b.step({
    title: `${stage.name}: temperature of the steam`,
    inputs: [pressure],
    outputs: [{ id: `${k}.steam_temperature`, meaning: `temperature at which steam condenses around ${component.name}`, ...celsius }],
    equation: 'saturation temperature at its absolute pressure; no air in it, not superheated',
    sources: ['iapws-if97'],
    run: (p: number) => saturationTemperature(p),
  });
  if (duty)
    b.step({
      title: `${stage.name}: steam`,
      inputs: [duty, `${k}.steam_temperature`],
      outputs: [{ id: `${k}.steam_flow`, meaning: `steam condensed making ${component.name} at rated speed`, ...kilogramPerHour }],
      equation: 'duty / latent heat at the temperature of the steam; its condensate leaves boiling hot',
      sources: ['iapws-if97'],
      run: (w: number, t: number) => (3600 * w) / latentHeatOfVaporisation(t),
      uncertainty: (_, [flow]) => [0.05 * (flow as number)],
    });
  if (b.has(`${c}.batch_charge`))
    b.step({
      title: `${stage.name}: steam for a batch`,
      inputs: [`${c}.batch_charge`, `${c}.charge_sum`, `${k}.cook_heat`, `${k}.steam_temperature`],
      outputs: [
        { id: `${k}.steam_batch`, meaning: `steam condensed for a batch of ${component.name}, losses of the cooker apart`, ...kilograms },
      ],
      equation: 'charge · heat of the cook per kg charged / latent heat',
      sources: ['iapws-if97'],
      run: (mass: number, charge: number, heat: number, t: number) => (mass * heat) / charge / latentHeatOfVaporisation(t),
      uncertainty: (_, [mass]) => [0.05 * (mass as number)],
    });
  return `${k}.steam_temperature`;
}

/** What the wall of the cooker can do: times of a kettle, conductance of a film. @returns id of the conductance that a film needs */
function wallSteps(b: Builder, place: CookPlace, steam: string): string | undefined {
  const { component, stage, k, s } = place;
  const c = component.slug;
  const own = entered(b, place);
  const surface = own('surface', 'heating_surface', 'heating surface of the cooker of');
  const coefficient = own('heatTransfer', 'heat_transfer', 'heat transfer from the steam to');
  const film = stage.cook!.cooker!.kind === 'film';
  const amount = film ? `flow.${c}.in` : `${c}.batch_charge`;
  if (film) residence(b, place);
  if (!b.has(amount) || (!film && !(surface && coefficient))) return undefined;
  const pressure = `${k}.cook_pressure`;
  const shared = [`${s}.in_mass`, `${s}.in_composition`, `${s}.evaporated`, `${k}.cook_feed_temperature`, `${k}.cook_model_offset`, pressure, steam, amount, `${c}.charge_sum`]; // prettier-ignore
  if (film) {
    const needed = `${k}.conductance_needed`;
    b.step({
      title: `${stage.name}: what the wall must carry`,
      inputs: shared,
      outputs: [
        {
          id: needed,
          meaning: `heat per kelvin that the wall of the film cooker of ${component.name} must carry at rated speed`,
          ...wattPerKelvin,
        },
      ],
      equation: '∫ dQ / (T of the steam − T boiling), from the feed to the end',
      sources,
      run: (
        mass: number,
        inside: Composition,
        water: number,
        feed: number,
        offset: number,
        p: number,
        t: number,
        flow: number,
        charge: number,
      ) => {
        const { warm, boil } = boilingHeat(inside, mass, water, feed, p, offset, steamCarries(t, component.name));
        return ((warm + boil) * flow) / charge / 3600;
      },
      uncertainty: (_, [value]) => [0.1 * (value as number)],
    });
    if (surface && coefficient)
      b.step({
        title: `${stage.name}: how much of the wall is needed`,
        inputs: [needed, surface, coefficient],
        outputs: [
          {
            id: `${k}.wall_use`,
            meaning: `share of the wall of the film cooker of ${component.name} that rated speed needs`,
            ...percent,
            decimals: 0,
            window: { high: 1, reason: 'the wall cannot carry more', source: stage.place },
          },
        ],
        equation: 'needed / (heat transfer · surface)',
        run: (conductance: number, area: number, u: number) => conductance / (area * u),
      });
    return needed;
  }
  b.step({
    title: `${stage.name}: time of a batch`,
    inputs: [...shared, surface!, coefficient!],
    outputs: [
      { id: `${k}.warm_time`, meaning: `time to bring a batch of ${component.name} to the boil`, ...minutes },
      { id: `${k}.boil_time`, meaning: `time to boil a batch of ${component.name} down`, ...minutes },
      { id: `${k}.boil_rate`, meaning: `water boiled off a batch of ${component.name} per hour, on the mean`, ...kilogramPerHour },
    ],
    equation: '∫ dQ / (U · A · (T of the steam − T of the mass)); losses of the cooker not in it; filling and emptying not in it',
    sources,
    run: (...values: readonly (number | Composition)[]) => {
      const [mass, inside, water, feed, offset, p, t, batch, charge, area, u] = values as [number, Composition, ...number[]];
      const { warm, boil } = boilingHeat(inside, mass, water!, feed!, p!, offset!, steamCarries(t!, component.name));
      const per = batch! / charge! / (area! * u!);
      return [warm * per, boil * per, (3600 * water! * batch!) / charge! / (boil * per)];
    },
    uncertainty: (_, [warm, boil, rate]) => [0.1 * (warm as number), 0.1 * (boil as number), 0.1 * (rate as number)],
  });
  if (b.has(`flow.${c}.in`))
    b.step({
      title: `${stage.name}: kettles`,
      inputs: [`${k}.warm_time`, `${k}.boil_time`, amount, `flow.${c}.in`],
      outputs: [
        {
          id: `${k}.kettles_needed`,
          meaning: `kettles of ${component.name} that rated speed keeps boiling, filling and emptying apart`,
          unit: '1',
          decimals: 2,
        },
      ],
      equation: '(time to the boil + time of the boil) / time in which the line takes a batch',
      run: (warm: number, boil: number, batch: number, flow: number) => ((warm + boil) * flow) / (3600 * batch),
      uncertainty: (_, [count]) => [0.1 * (count as number)],
    });
  return undefined;
}

function residence(b: Builder, place: CookPlace): void {
  const { component, stage, k, s } = place;
  const c = component.slug;
  const holds = entered(b, place)('holds', 'film_holds', 'mass in the film cooker while it runs, of');
  if (!holds || !b.has(`flow.${c}.in`)) return;
  b.step({
    title: `${stage.name}: time in the film`,
    inputs: [holds, `flow.${c}.in`, `${c}.charge_sum`, `${s}.in_mass`, `${s}.evaporated`],
    outputs: [
      { id: `${k}.residence`, meaning: `time that ${component.name} stays in the film cooker, on the mean`, ...minutes, decimals: 2 },
    ],
    equation: 'mass in it / mean of what comes and what leaves',
    run: (mass: number, flow: number, charge: number, inside: number, water: number) =>
      (3600 * mass * charge) / (flow * (inside - water / 2)),
  });
}

/** Spread of the final moisture: of the end temperature, and in a film of its level too. */
function spreadStep(b: Builder, place: CookPlace, needed: string | undefined): void {
  const { component, stage, k, s } = place;
  const own = entered(b, place);
  const temperature = own('temperatureSpread', 'temperature_spread', 'standard deviation of the true end temperature of', kelvin);
  const level = own('levelSpread', 'level_spread', 'standard deviation of the level in the cooker of, share of it,', percent);
  if (!temperature) return;
  const byLevel = level !== undefined && needed !== undefined;
  const film = byLevel
    ? [level, needed, `${k}.steam_temperature`, `${k}.cook_temperature`, `${s}.in_mass`, `${s}.contents`, `${s}.evaporated`, `flow.${component.slug}.in`, `${component.slug}.charge_sum`] // prettier-ignore
    : [];
  b.step({
    title: `${stage.name}: spread of the final moisture`,
    inputs: [`${k}.moisture_per_kelvin`, temperature, ...film],
    outputs: [
      {
        id: `${k}.moisture_sd`,
        meaning: `standard deviation of the moisture in the cooker of ${component.name}, from end temperature${byLevel ? ' and level' : ''}`,
        ...percent,
      },
    ],
    equation: byLevel
      ? '√((dw/dT · sd of T)² + (dw/d ln level · sd of level)²), taken as independent; a film that holds more stays longer, as if its wall were larger'
      : 'dw/dT · sd of T; a kettle that ends by its temperature does not ask how full it is',
    run: (slope: number, sd: number, ...rest: readonly (number | Composition)[]) => {
      if (!byLevel) return Math.abs(slope) * sd;
      const [share, conductance, steam, end, mass, inside, water, flow, charge] = rest as [number, number, number, number, number, Composition, ...number[]]; // prettier-ignore
      const left = mass - water!;
      const w = inside[at.water]!;
      const perWater = (1 - w) / left; // dw for a kg of water more in the vessel
      const heat = latentHeatOfVaporisation(end) + (left * specificHeat(inside, end) * perWater) / Math.abs(slope);
      const byOne = ((conductance * (steam - end)) / heat / ((flow! / 3600) * (1 / charge!))) * perWater;
      return Math.hypot(slope * sd, byOne * share);
    },
    uncertainty: (_, [sd]) => [0.15 * (sd as number)],
  });
}
