import type { Component, Stage } from '@barwright/plant';
import { holdUpFor, overrun, whippedDensity, whippingPressure, type Table } from '@barwright/science';
import { celsius, density, percent, type Builder, type Look } from './builder.js';

/** A whip of which nobody wrote the temperature, and gas that nobody measured being lost. */
export const usualWhip = {
  source: 'common-practice',
  standing: 'memory',
  note: 'A nougat is whipped at some 60 to 90 °C and sheeted at 35 to 45 °C. No published share of the gas is known that fat and shear drive out: all is kept until the plant measures density before and after.',
  valid: { temperature: [40, 110], kept: [0.5, 1] },
  values: { temperature: 75, laid: 20, kept: 1 },
} as const satisfies Table;

const { values } = usualWhip;
const bar: Look = { unit: 'Pa', show: 'bar', decimals: 2 };
/** Step of the whipping pressure at which its effect is told, Pa. */
const tenth = 10_000;

/**
 * Gas in a whipped component: overrun, the share of gas the foam holds inside the whip, and what a tenth of a bar or ten kelvin there
 * move. The density stays the one that was entered; these tell what it rests on.
 */
export function foamSteps(b: Builder, component: Component): void {
  const at = component.stages.findIndex((stage) => stage.does === 'whip');
  const whip = component.stages[at];
  if (!whip) return;
  const c = component.slug;
  const [own, free, activity] = [`${c}.density`, `${c}.gas_free_density`, `${c}.water_activity`];
  b.step({
    title: `Overrun of ${component.name}`,
    inputs: [own, free],
    outputs: [{ id: `${c}.overrun`, meaning: `gas in ${component.name} by the volume of the rest`, ...percent, decimals: 0 }],
    equation: 'overrun = ρ gas-free / ρ − 1',
    run: (rho: number, dense: number) => overrun(rho, dense),
  });
  if (!whip.pressure || !b.has(activity)) return;
  const pressure = b.entered(`${c}.whip_pressure`, `absolute pressure at which ${component.name} is whipped`, whip.pressure, bar);
  const hot = whip.temperature
    ? b.entered(`${c}.whip_temperature`, `temperature at which ${component.name} is whipped`, whip.temperature, celsius)
    : b.root({
        id: `${c}.whip_temperature`,
        meaning: `temperature at which ${component.name} is whipped`,
        ...celsius,
        value: values.temperature,
        origin: 'default',
        source: usualWhip.source,
        standing: usualWhip.standing,
        note: 'nobody entered one; 60 to 90 °C are common practice, no source',
      });
  const later = component.stages.slice(at + 1).findLast((stage) => stage.temperature);
  const laid = later?.temperature
    ? b.entered(`${c}.foam_laid_temperature`, `temperature at which ${component.name} is laid, for its gas`, later.temperature, celsius)
    : b.byDefault(`${c}.foam_laid_temperature`, `temperature at which ${component.name} is laid, for its gas`, values.laid, celsius, 'nobody entered one'); // prettier-ignore
  const kept = keptStep(b, component, at);
  const inputs = [own, free, activity, pressure, hot, laid, kept, 'plant.pressure'];
  b.step({
    title: `Gas held in the whip of ${component.name}`,
    inputs,
    outputs: [
      { id: `${c}.gas_held`, meaning: `gas in ${component.name} inside the whip, share of volume`, ...percent, decimals: 1 },
      {
        id: `${c}.density_per_tenth_bar`,
        meaning: `change of the density of ${component.name} for a tenth of a bar more in the whip, gas held there as now`,
        ...density,
        decimals: 4,
      },
      {
        id: `${c}.density_per_ten_kelvin`,
        meaning: `change of the density of ${component.name} for a whip ten kelvin warmer, gas held there as now`,
        ...density,
        decimals: 4,
      },
    ],
    equation:
      'gas per liquid = h / (1 − h) · (P − aw psat)ₕ / Tₕ · T / (P − aw psat) · share kept: the gas that the density asks for, compressed into the whip',
    sources: ['ideal-gas', 'iapws-if97'],
    note: 'What h comes to is the plant’s own: albumen, speed and time set it. The whipping pressure counts as absolute; a gauge shows about a bar less.',
    run: (rho: number, dense: number, aw: number, p: number, t: number, end: number, share: number, outside: number) => {
      const after = { pressure: outside, temperature: end, waterActivity: aw };
      const whipAt = (dp: number, dt: number) => ({ pressure: p + dp, temperature: t + dt, waterActivity: aw });
      const held = holdUpFor(rho, dense, whipAt(0, 0), after, share);
      const change = (dp: number, dt: number) => whippedDensity(held, dense, whipAt(dp, dt), after, share).density - rho;
      return [held, change(tenth, 0), change(0, 10)];
    },
    // A gas-free density 2 % off, as volumes add by composition.
    uncertainty: ([rho, dense], [held]) => {
      const h = held as number;
      return [(0.02 * h * (1 - h) * (dense as number)) / ((dense as number) - (rho as number)), 0, 0];
    },
  });
  pressureWindow(b, component, [`${c}.gas_held`, free, activity, hot, laid, kept, 'plant.pressure']);
  if (whip.holdUp) densityStep(b, component, whip.holdUp, [free, activity, pressure, hot, laid, kept, 'plant.pressure']);
}

/** Share of the gas that is still in it: what the plant says each stage loses, one after another; all of it where nobody says. */
function keptStep(b: Builder, component: Component, whip: number): string {
  const c = component.slug;
  const kept = {
    id: `${c}.gas_kept`,
    meaning: `share of the gas of ${component.name} that fat, shear and rest leave in it`,
    ...percent,
    decimals: 0,
  };
  const losing = component.stages.slice(whip).filter(({ airLoss }) => airLoss);
  if (losing.length === 0)
    return b.root({
      ...kept,
      value: values.kept,
      origin: 'default',
      source: usualWhip.source,
      standing: usualWhip.standing,
      note: 'nobody measured it; from the density cup before and after the fat',
    });
  return b.step({
    title: `Gas that stays in ${component.name}`,
    inputs: losing.map((stage) =>
      b.entered(
        `${c}.stage.${stage.slug}.air_loss`,
        `share of its gas that ${component.name} loses at ${stage.name}`,
        stage.airLoss!,
        percent,
      ),
    ),
    outputs: [kept],
    equation: 'Π(1 − share of the gas that the stage loses)',
    run: (...losses: number[]) => losses.reduce((share, loss) => share * (1 - loss), 1),
  });
}

/** The pressures at which the density reaches the ends of its window, the gas held in the whip as it is; a denser mass has less of it. */
function pressureWindow(b: Builder, component: Component, inputs: readonly string[]): void {
  const { slug: c, density: written, name } = component;
  if (written?.low === undefined || written.high === undefined) return;
  const ends = [written.high, written.low];
  b.step({
    title: `Pressures that keep the density of ${name} in its window`,
    inputs: [...inputs],
    outputs: [
      { id: `${c}.whip_pressure_min`, meaning: `absolute pressure in the whip at which ${name} is at its densest`, ...bar },
      { id: `${c}.whip_pressure_max`, meaning: `absolute pressure in the whip at which ${name} is at its lightest`, ...bar },
    ],
    equation: 'P at which the gas held, let out, gives either end of the window of the density',
    sources: ['ideal-gas', 'iapws-if97'],
    run: (held: number, free: number, aw: number, hot: number, laid: number, kept: number, outside: number) => {
      const whip = { temperature: hot, waterActivity: aw };
      const after = { pressure: outside, temperature: laid, waterActivity: aw };
      return ends.map((rho) => whippingPressure(rho, held, free, whip, after, kept));
    },
  });
}

/** The density that the plant's own hold-up gives, beside the one it entered; what the bar rests on stays the entered one. */
function densityStep(b: Builder, component: Component, written: NonNullable<Stage['holdUp']>, rest: readonly string[]): void {
  const c = component.slug;
  const holdUp = b.entered(
    `${c}.hold_up`,
    `gas that the whip of ${component.name} holds, share of volume, as its good batches teach`,
    written,
    {
      ...percent,
      decimals: 1,
    },
  );
  b.step({
    title: `Density of ${component.name} by its whip`,
    inputs: [holdUp, ...rest, `${c}.density`],
    outputs: [
      { id: `${c}.foam_density`, meaning: `density of ${component.name} that its whip gives, beside the one entered`, ...density },
      { id: `${c}.foam_ratio`, meaning: `density of ${component.name} as entered over that its whip gives`, unit: '1', decimals: 3 },
    ],
    equation: 'ρ = ρ gas-free / (1 + h / (1 − h) · (P − aw psat)ₕ / Tₕ · T / (P − aw psat) · share kept)',
    sources: ['ideal-gas', 'iapws-if97'],
    note: 'The hold-up is the plant’s own for this albumen, speed and syrup: learn it anew when one of them changes.',
    run: (h: number, free: number, aw: number, p: number, t: number, end: number, share: number, outside: number, own: number) => {
      const whip = { pressure: p, temperature: t, waterActivity: aw };
      const rho = whippedDensity(h, free, whip, { pressure: outside, temperature: end, waterActivity: aw }, share).density;
      return [rho, own / rho];
    },
    uncertainty: ([h, free], [rho, ratio]) => {
      // The hold-up by its own tolerance; without one the 2 % of a gas-free density that volumes give.
      const spread = written.high === undefined || written.low === undefined ? 0 : (written.high - written.low) / 2;
      const [x, dense, own] = [h as number, free as number, rho as number];
      const byHoldUp = x > 0 && x < 1 ? (spread / (x * (1 - x))) * (1 - own / dense) : 0;
      const share = Math.hypot(0.02, byHoldUp);
      return [share * own, share * (ratio as number)];
    },
  });
}
