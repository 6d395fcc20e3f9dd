import { celsius, isChocolate, kilogramPerHour, type Builder } from '@barwright/bar';
import type { Bar, Line, Plant } from '@barwright/plant';
import { chocolateSpecificHeat, tempererDuty, type Table } from '@barwright/science';
import { constantOr, setPointOr, stationNamed, type Usual } from './given.js';

/** A temperer that nobody described. */
const usualTemperer = {
  source: 'enrober-practice',
  standing: 'memory',
  note: 'Common practice, no source: melted at 45 °C, cooled to 26 to 28 °C, coolant 10 to 14 °C, throughput at least 1.1 times what bars carry away.',
  valid: {},
  values: { inlet: 45, coldest: 27, coolant: 12, coolantFlow: 6000, excess: 1.1 },
} as const satisfies Table;

const note = 'nobody entered one; common practice, no source';
const from = usualTemperer;
const { values } = usualTemperer;
const warm = (meaning: string, value: number): Usual => ({ meaning, value, look: celsius, note, from });
/** Water heats by 4.19 kJ/(kg K). */
const waterHeat = 4190;
const watt = { unit: 'W', show: 'kW', decimals: 1 } as const;

/** What the temperer reads: ids by name, for the log of the temperer too. */
export interface TempererIds {
  readonly station: string;
  readonly chocolate: string;
  readonly inlet: string;
  readonly coldest: string;
  readonly coolant: string;
  readonly coolantFlow: string;
  readonly throughput: string;
}

/**
 * Heat balance of the temperer: station.<temperer>.throughput, .duty, .crystal_heat, .coolant_out.
 * @returns the ids, or nothing where the line has no temperer or the bar no chocolate coat
 */
export function tempererSteps(b: Builder, plant: Plant, bar: Bar, line: Line): TempererIds | undefined {
  const station = stationNamed(line, /temper/i);
  const coat = bar.coat && plant.components.get(bar.coat.component)!;
  if (!station || !coat || !isChocolate(coat)) return undefined;
  const c = coat.slug;
  const s = `station.${station.slug}`;
  const tank = stationNamed(line, /(chocolate|coating).*tank|kettle.*chocolate/i);
  const inlet = setPointOr(
    b,
    tank ?? station,
    tank ? 'temperature' : 'inlet_temperature',
    tank ? /^temperature$/i : /inlet/i,
    'temperature',
    warm('chocolate into the temperer', values.inlet),
  );
  const coldest = setPointOr(
    b,
    station,
    'coldest_temperature',
    /coldest|seed.*temperature/i,
    'temperature',
    warm('coldest chocolate in the temperer', values.coldest),
  );
  const coolant = setPointOr(
    b,
    station,
    'coolant_temperature',
    /coolant|cooling water/i,
    'temperature',
    warm('coolant into the temperer', values.coolant),
  );
  const coolantFlow = constantOr(b, station, 'coolant_flow', {
    meaning: `coolant through the ${station.name}`,
    value: values.coolantFlow,
    look: kilogramPerHour,
    note,
    from,
  });
  const excess = constantOr(b, station, 'throughput_excess', {
    meaning: `chocolate through the ${station.name} over what bars carry away`,
    value: values.excess,
    look: { unit: '1', decimals: 2 },
    note,
    from,
  });
  const throughput = b.step({
    title: `Throughput of the ${station.name}`,
    inputs: [`flow.${c}.out`, excess],
    outputs: [{ id: `${s}.throughput`, meaning: `chocolate through the ${station.name}`, ...kilogramPerHour }],
    equation: 'what bars carry away, losses included · excess',
    run: (flow: number, over: number) => flow * over,
  });
  b.step({
    title: `Heat balance of the ${station.name}`,
    inputs: [throughput, inlet, coldest, `${c}.fat`, `${c}.sugars`, `${c}.temper_crystals`, coolant, coolantFlow],
    outputs: [
      { id: `${s}.duty`, meaning: `heat that the coolant of the ${station.name} takes`, ...watt },
      { id: `${s}.crystal_heat`, meaning: `part of it that crystals give off`, ...watt },
      { id: `${s}.coolant_out`, meaning: `coolant out of the ${station.name}`, ...celsius },
    ],
    equation: 'duty = flow · (cp ΔT + fat · crystals · 157 kJ/kg); coolant out = in + duty / (flow · 4.19 kJ/(kg K)); shaft work left out',
    sources: ['beckett-constants-2009', 'mohos-2010-app'],
    run: (flow: number, hot: number, cold: number, fat: number, sugar: number, crystals: number, coldIn: number, water: number) => {
      const load = {
        throughput: flow,
        inlet: hot,
        coldest: cold,
        fat,
        crystals,
        specificHeat: chocolateSpecificHeat(fat, sugar, (hot + cold) / 2, 0),
        shaftPower: 0,
      };
      const duty = tempererDuty(load);
      return [duty, duty - tempererDuty({ ...load, crystals: 0 }), coldIn + duty / ((water / 3600) * waterHeat)];
    },
    uncertainty: (_, [duty, crystals]) => [0.1 * (duty as number), 0.5 * (crystals as number), 0],
  });
  return { station: station.slug, chocolate: c, inlet, coldest, coolant, coolantFlow, throughput };
}
