import { kilogramPerHour, lookOfWritten, percent, type Builder, type Look } from '@barwright/bar';
import type { Bar, Component, Line, Plant, Station } from '@barwright/plant';

/** Load, utilisation, cover and dwell of every station; the first that cannot. */
export function stationSteps(b: Builder, plant: Plant, bar: Bar, line: Line): void {
  const loaded: { station: Station; id: string }[] = [];
  for (const station of line.stations) {
    const id = `station.${station.slug}`;
    const load = loadOf(b, plant, bar, station);
    if (station.rate && load) {
      utilisation(b, station, id, load);
      loaded.push({ station, id });
    }
    if (station.holds && load) cover(b, station, id, load.flow);
    if (station.length) dwell(b, line, station, id);
    if (station.count > 1 && station.rate?.by === 'packs' && line.accumulation) buffer(b, line, station, id);
    for (const point of station.setPoints) setPoint(b, station, point);
  }
  if (loaded.length > 0) limits(b, loaded);
  for (const point of line.transit) {
    b.entered(`transit.${point.slug}`, `time from the cutter to the ${point.to}`, point.time, { unit: 's', show: 'min', decimals: 1 });
  }
}

interface Load {
  /** Flow in the unit of the rate. */
  readonly flow: string;
  readonly per: number;
  readonly look: Look;
}

/** What passes the station, counted as its rate counts. */
function loadOf(b: Builder, plant: Plant, bar: Bar, station: Station): Load | undefined {
  const { rate, works } = station;
  const bars: Look = { unit: '1/min', show: 'bars/min', decimals: 0 };
  if (rate?.by === 'bars') return { flow: 'line.rate', per: 1, look: bars };
  if (rate?.by === 'packs')
    return { flow: 'line.rate', per: bar.pack.barsPerPack, look: { unit: '1/min', show: 'packs/min', decimals: 0 } };
  if (rate?.by === 'cases')
    return {
      flow: 'line.rate',
      per: bar.pack.barsPerPack * (bar.pack.case?.packs ?? 1),
      look: { unit: '1/min', show: 'cases/min', decimals: 1 },
    };
  if (works === undefined) return undefined;
  const component = plant.components.get(works);
  if (component && station.stage !== undefined)
    return { flow: stageFlow(b, component, station.stage, station.counts), per: 1, look: kilogramPerHour };
  const flow = component ? `flow.${component.slug}.${station.counts}` : `flow.material.${plant.materials.get(works)?.slug}`;
  return b.has(flow) ? { flow, per: 1, look: kilogramPerHour } : undefined;
}

/** What goes into, or comes out of, one stage of a component. */
function stageFlow(b: Builder, component: Component, name: string, counts: 'in' | 'out'): string {
  const stage = component.stages.find((other) => other.name === name)!;
  const c = component.slug;
  const id = `flow.${c}.${stage.slug}_${counts}`;
  if (b.has(id)) return id;
  const word = counts === 'in' ? 'going into' : 'coming out of';
  return b.step({
    title: `Flow ${word} ${stage.name}`,
    inputs: [`flow.${c}.in`, `${c}.stage.${stage.slug}.${counts === 'in' ? 'in_mass' : 'mass'}`, `${c}.charge_sum`],
    outputs: [{ id, meaning: `${component.name} ${word} ${stage.name} at rated speed`, ...kilogramPerHour }],
    equation: 'charged · mass at the stage per kg charged',
    run: (flow: number, mass: number, charge: number) => (flow * mass) / charge,
  });
}

function utilisation(b: Builder, station: Station, id: string, load: Load): void {
  const { rate } = station;
  if (!rate) return;
  const one =
    rate.by === 'loads'
      ? b.step({
          title: `Rate of one ${station.name}`,
          inputs: [
            b.entered(`${id}.load`, `one load of the ${station.name}`, rate.load, { unit: 'kg', decimals: 0 }),
            b.entered(`${id}.cycle`, `cycle of the ${station.name}, filling and emptying included`, rate.cycle, {
              unit: 's',
              show: 'h',
              decimals: 1,
            }),
          ],
          outputs: [{ id: `${id}.rate_each`, meaning: `rate of one ${station.name}`, ...kilogramPerHour }],
          equation: 'load / cycle',
          run: (mass: number, cycle: number) => (3600 * mass) / cycle,
        })
      : b.entered(`${id}.rate_each`, `rate of one ${station.name}`, rate.rate, load.look);
  const count = b.root({
    id: `${id}.count`,
    meaning: `${station.name}s side by side`,
    unit: '1',
    decimals: 0,
    value: station.count,
    origin: 'entered',
    place: station.place,
  });
  const elsewhere = station.usedElsewhere
    ? b.entered(`${id}.used_elsewhere`, `what other lines take of the ${station.name}`, station.usedElsewhere, load.look)
    : undefined;
  b.step({
    title: `How much of the ${station.name} is used`,
    inputs: [load.flow, one, count, ...(elsewhere ? [elsewhere] : [])],
    outputs: [
      { id: `${id}.flow`, meaning: `load of the ${station.name} at rated speed`, ...load.look },
      { id: `${id}.rate`, meaning: `what the ${station.name} can do`, ...load.look },
      {
        id: `${id}.utilisation`,
        meaning: `share of the ${station.name} that is used at rated speed`,
        ...percent,
        decimals: 1,
        window: { high: 1, reason: 'it cannot do more than its rate', source: station.place },
      },
    ],
    equation: elsewhere ? 'utilisation = (load + other lines) / (rate · count)' : 'utilisation = load / (rate · count)',
    run: (flow: number, each: number, n: number, other = 0) => {
      const own = flow / load.per;
      return [own, each * n, (own + other) / (each * n)];
    },
    findings: (inputs, [flow, can, used]) => {
      if ((used as number) <= 1 + 1e-9) return [];
      const unit = load.look.show ?? load.look.unit;
      const others = elsewhere ? ` and ${show(inputs[3] as number)} by other lines` : '';
      return [
        {
          code: 'STATION_OVERLOADED',
          level: 'incident',
          quantity: `${id}.utilisation`,
          message: `${capital(station.name)} cannot: ${show(flow as number)} ${unit} asked${others}, ${show(can as number)} possible.`,
        },
      ];
    },
  });
}

function cover(b: Builder, station: Station, id: string, flow: string): void {
  const holds = b.entered(`${id}.holds`, `what the ${station.name} holds`, station.holds!, { unit: 'kg', decimals: 0 });
  b.step({
    title: `Cover of the ${station.name}`,
    inputs: [holds, flow],
    outputs: [{ id: `${id}.cover`, meaning: `time a full ${station.name} lasts at rated speed`, unit: 's', show: 'h', decimals: 1 }],
    equation: 'what it holds / what is taken',
    run: (mass: number, out: number) => (3600 * mass) / out,
  });
}

/** Time on the belt: slab coolers run at slab speed, what lies behind the spreader at belt speed. */
function dwell(b: Builder, line: Line, station: Station, id: string): void {
  const cutter = line.stations.findIndex((other) => /guillotine|cutter/i.test(other.name));
  const behind = cutter >= 0 && line.stations.indexOf(station) > cutter;
  const length = b.entered(`${id}.length`, `length of the ${station.name}`, station.length!, { unit: 'm', decimals: 1 });
  b.step({
    title: `Dwell in the ${station.name}`,
    inputs: [length, behind ? 'line.belt_speed' : 'line.slab_speed'],
    outputs: [{ id: `${id}.dwell`, meaning: `time in the ${station.name}`, unit: 's', show: 'min', decimals: 2 }],
    equation: 'length / belt speed',
    run: (l: number, v: number) => l / v,
  });
}

/** How long the accumulation bears one machine of a group standing still. */
function buffer(b: Builder, line: Line, station: Station, id: string): void {
  const room = b.entered('line.accumulation', 'bars that the accumulation takes', line.accumulation!, {
    unit: '1',
    show: 'bars',
    decimals: 0,
  });
  b.step({
    title: `One ${station.name} down`,
    inputs: [room, `${id}.flow`, `${id}.rate_each`, `${id}.count`],
    outputs: [
      {
        id: `${id}.one_down`,
        meaning: `time the accumulation lasts with one ${station.name} down, full speed upstream`,
        unit: 's',
        show: 'min',
        decimals: 1,
      },
    ],
    equation: 'accumulation / (rate − what the others take); a day where they take it all',
    run: (bars: number, flow: number, each: number, n: number) => {
      const deficit = flow - each * (n - 1);
      return deficit <= 0 ? 86_400 : Math.min(86_400, (60 * bars) / deficit);
    },
  });
}

function setPoint(b: Builder, station: Station, point: Station['setPoints'][number]): void {
  b.entered(`set.${station.slug}.${point.slug}`, `${point.name} at the ${station.name}`, point.value, lookOfWritten(point.value));
}

function limits(b: Builder, loaded: readonly { station: Station; id: string }[]): void {
  b.step({
    title: 'The first station that cannot',
    inputs: ['line.rate', ...loaded.map(({ id }) => `${id}.utilisation`)],
    outputs: [
      {
        id: 'line.max_rate',
        meaning: 'most bars per minute before the first station is full',
        unit: '1/min',
        show: 'bars/min',
        decimals: 0,
      },
      { id: 'line.next_rate', meaning: 'bars per minute at which the next station is full', unit: '1/min', show: 'bars/min', decimals: 0 },
    ],
    equation: 'rate / largest utilisation; rate / second largest',
    run: (rate: number, ...used: number[]) => {
      const sorted = [...used].sort((a, z) => z - a);
      return [rate / sorted[0]!, rate / (sorted[1] ?? sorted[0]!)];
    },
  });
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function show(value: number): string {
  return value >= 100 ? Math.round(value).toLocaleString('en-GB').replaceAll(',', '\u202f') : value.toFixed(1);
}
