import { Builder, celsius, isChocolate, kelvin, percent } from '@barwright/bar';
import type { Bar, Line, Plant, Station } from '@barwright/plant';
import { dewPoint, type Table } from '@barwright/science';
import { constantOr, defaulted, setPointOr, stationNamed } from './given.js';

/** A tunnel and a packing room that nobody described. */
const usualTunnel = {
  source: 'enrober-practice',
  standing: 'placeholder',
  note: 'Heat transfer of air over bars 15 to 40 W/(m² K); growth of crystals chosen, not measured; room 18 to 22 °C at 45 to 55 %. Fit heat transfer and offset on a logged bar.',
  valid: { heatTransfer: [5, 60] },
  values: { top: 25, bottom: 20, growth: 0.06, centre: 24, chocolate: 30, room: 20, humidity: 0.55 },
} as const satisfies Table;

const watts = { unit: 'W/m²/K', decimals: 0 } as const;
const from = usualTunnel;
const { values } = usualTunnel;

/** Ids of what the tunnel model reads of a line. */
export interface TunnelIds {
  readonly station: Station;
  /** Air temperature of each zone, in order. */
  readonly zones: readonly string[];
  readonly top: string;
  readonly bottom: string;
  readonly growth: string;
  readonly offset: string;
  readonly centre: string;
  readonly chocolate: string;
  readonly dewPoint: string;
}

/** The set points that name a zone and its air: 'zone 1', 'zone 2 air'. */
function zonesOf(station: Station) {
  return station.setPoints.filter((point) => /zone/i.test(point.name) && point.value.dimension === 'temperature');
}

/** What the tunnel model will read; nothing where the line has no tunnel with zones or the bar no chocolate coat. */
export function tunnelIds(plant: Plant, bar: Bar, line: Line | undefined): TunnelIds | undefined {
  return line && tunnelRoots(new Builder(), plant, bar, line);
}

/** Roots of the tunnel and the room, and the dew point of the room. */
export function tunnelSteps(b: Builder, plant: Plant, bar: Bar, line: Line): void {
  if (!tunnelRoots(b, plant, bar, line)) return;
  const temperature = defaulted(b, 'plant.room_temperature', {
    meaning: 'air temperature of the packing room',
    value: values.room,
    look: celsius,
    note: 'nobody entered one; common practice, no source',
    from,
  });
  const humidity = defaulted(b, 'plant.room_humidity', {
    meaning: 'relative humidity of the packing room',
    value: values.humidity,
    look: { ...percent, decimals: 0 },
    note: 'nobody entered one; upper end of common practice, no source',
    from,
  });
  b.step({
    title: 'Dew point of the packing room',
    inputs: [temperature, humidity],
    outputs: [{ id: 'plant.room_dew_point', meaning: 'dew point of the packing room', ...celsius }],
    equation: 'T where psat(T) = humidity · psat(room)',
    sources: ['ashrae-2017-ch1'],
    run: dewPoint,
  });
}

function tunnelRoots(b: Builder, plant: Plant, bar: Bar, line: Line): TunnelIds | undefined {
  const station = line.stations.find((other) => /tunnel/i.test(other.name) && zonesOf(other).length > 0 && other.length);
  const coat = bar.coat && plant.components.get(bar.coat.component)!;
  if (!station || !coat || !isChocolate(coat)) return undefined;
  const enrober = stationNamed(line, /enrob/i);
  const temperer = stationNamed(line, /temper/i);
  const warm = [enrober, temperer].flatMap((other) =>
    (other?.setPoints ?? [])
      .filter((point) => /temperature/i.test(point.name) && !/centre|center|air|coolant|bottom/i.test(point.name))
      .filter((point) => point.value.dimension === 'temperature')
      .map((point) => `set.${other!.slug}.${point.slug}`),
  );
  const note = 'fit it on a logged bar; a set point of this name in the definition takes its place';
  return {
    station,
    zones: zonesOf(station).map((point) => `set.${station.slug}.${point.slug}`),
    top: constantOr(b, station, 'heat_transfer_top', {
      meaning: `heat transfer to top and sides of a bar in the ${station.name}`,
      value: values.top,
      look: watts,
      note,
      from,
    }),
    bottom: constantOr(b, station, 'heat_transfer_bottom', {
      meaning: `heat transfer through the belt of the ${station.name}`,
      value: values.bottom,
      look: watts,
      note,
      from,
    }),
    growth: constantOr(b, station, 'crystal_growth', {
      meaning: 'growth of cocoa butter crystals in the coat at 10 K of undercooling',
      value: values.growth,
      look: { unit: '1/s', decimals: 3 },
      note: 'a placeholder, chosen and not measured: fit it to a temper curve or a logged bar',
      from,
    }),
    offset: constantOr(b, station, 'exit_offset', {
      meaning: `the plant's own correction of the exit temperature of the ${station.name}`,
      value: 0,
      look: kelvin,
      note: "not calibrated yet; 'barwright tunnel --log' says what a log asks for",
    }),
    centre: setPointOr(b, enrober ?? station, 'centre_temperature', /cent(re|er).*temperature/i, 'temperature', {
      meaning: `temperature of a centre before the coat`,
      value: values.centre,
      look: celsius,
      note: 'nobody entered one; common practice 20 to 26 °C, no source',
      from,
    }),
    chocolate:
      warm[0] ??
      defaulted(b, `set.${(enrober ?? station).slug}.chocolate_temperature`, {
        meaning: 'chocolate at the enrober',
        value: values.chocolate,
        look: celsius,
        note: 'nobody entered one; common practice, no source',
        from,
      }),
    dewPoint: 'plant.room_dew_point',
  };
}
