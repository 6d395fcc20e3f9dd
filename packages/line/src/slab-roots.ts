import { celsius, type Builder } from '@barwright/bar';
import type { Bar, Line, Plant, Station } from '@barwright/plant';
import type { Table } from '@barwright/science';
import { constantOr, defaulted, setPointOr } from './given.js';

/** A slab cooler that nobody described. */
const usualCooler = {
  source: 'common-practice',
  standing: 'memory',
  note: 'Air of 2 to 4 m/s over a slab 20 to 60 W/(m² K), belt on a chilled bed 30 to 120; a caramel and nougat slab is slit at a core of 24 to 28 °C. Fit the two coefficients on a logged core temperature. Heat of setting of milk fat and hard vegetable fats 70 to 130 kJ/kg; in a syrup they set over some 15 to 35 °C.',
  valid: { heatTransfer: [5, 200] },
  values: { top: 40, bottom: 60, air: 10, low: 24, high: 28, kernels: 30, room: 20, fatHeat: 100_000, fatMiddle: 25, fatHalf: 10 },
} as const satisfies Table;

const { values } = usualCooler;
const from = usualCooler;
const watts = { unit: 'W/m²/K', decimals: 0 } as const;

/** Ids of what the slab model reads. */
export interface SlabIds {
  readonly station: Station;
  readonly air: string;
  /** Of the bed or drum below, where the plant wrote one; left out: the air is on both sides. */
  readonly bed?: string;
  readonly top: string;
  readonly bottom: string;
  readonly low: string;
  readonly high: string;
  /** Heat of the fat that sets, per kg of it, and the middle and half width of the range over which it does. */
  readonly fatHeat: string;
  readonly fatMiddle: string;
  readonly fatHalf: string;
  /** Start temperature of each layer, by slug. */
  readonly starts: ReadonlyMap<string, string>;
}

/** Roots of the cooler and of the slab that comes to it; nothing where the line has none with a length. */
export function slabRoots(b: Builder, plant: Plant, bar: Bar, line: Line | undefined): SlabIds | undefined {
  const station = line?.stations.find(({ name, length }) => length && /slab/i.test(name) && /cool/i.test(name));
  if (!line || !station) return undefined;
  const note = 'nobody entered one; a set point of this name in the definition takes its place';
  const starts = new Map(
    bar.layers.map((layer) => {
      const component = plant.components.get(layer.component)!;
      const last = component.stages.findLast((stage) => stage.temperature && ['cool', 'blend', 'whip', 'cook'].includes(stage.does));
      const id = `layer.${layer.slug}.laid_at`;
      const meaning = `temperature of ${layer.name} as it is laid`;
      if (last?.temperature) return [layer.slug, b.entered(id, meaning, last.temperature, celsius)] as const;
      const value = layer.sunkInto === undefined ? values.room : values.kernels;
      return [layer.slug, defaulted(b, id, { meaning, value, look: celsius, note: 'nobody entered one', from })] as const;
    }),
  );
  const bed = station.setPoints.find(({ name, value }) => value.dimension === 'temperature' && /\b(bed|belt|drum|plate)\b/i.test(name));
  return {
    station,
    ...(bed ? { bed: b.entered(`set.${station.slug}.${bed.slug}`, `${bed.name} at the ${station.name}`, bed.value, celsius) } : {}),
    fatHeat: constantOr(b, station, 'fat_setting_heat', {
      meaning: 'heat that a kg of milk fat or hard fat gives off as it sets',
      value: values.fatHeat,
      look: { unit: 'J/kg', show: 'kJ/kg', decimals: 0 },
      note: `70 to 130 kJ/kg by kind, from memory; nut oil stays liquid; ${note}`,
      from,
    }),
    fatMiddle: constantOr(b, station, 'fat_sets_at', {
      meaning: 'middle of the range in which fat in the slab sets',
      value: values.fatMiddle,
      look: celsius,
      note: `from memory; ${note}`,
      from,
    }),
    fatHalf: constantOr(b, station, 'fat_setting_half_range', {
      meaning: 'half of the range in which fat in the slab sets',
      value: values.fatHalf,
      look: { unit: 'K', decimals: 1 },
      note: `from memory; ${note}`,
      from,
    }),
    air: setPointOr(b, station, 'air_temperature', /air/i, 'temperature', {
      meaning: `air of the ${station.name}`,
      value: values.air,
      look: celsius,
      note,
      from,
    }),
    top: constantOr(b, station, 'heat_transfer_top', {
      meaning: `heat transfer to the top of the slab in the ${station.name}`,
      value: values.top,
      look: watts,
      note: `fit it on a logged core temperature; ${note}`,
      from,
    }),
    bottom: constantOr(b, station, 'heat_transfer_bottom', {
      meaning: `heat transfer through the belt of the ${station.name}`,
      value: values.bottom,
      look: watts,
      note: `fit it on a logged core temperature; ${note}`,
      from,
    }),
    low: constantOr(b, station, 'slit_from', {
      meaning: 'coldest core of a slab that still slits without cracking',
      value: values.low,
      look: celsius,
      note,
      from,
    }),
    high: constantOr(b, station, 'slit_below', {
      meaning: 'hottest core of a slab that slits without smearing',
      value: values.high,
      look: celsius,
      note,
      from,
    }),
    starts,
  };
}
